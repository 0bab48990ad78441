//! Clean driving must not alarm more often than the setting says, whatever the sensors.

#[path = "support/live/mod.rs"]
mod live_support;

use live_support::false_alarms::{SETTING, clean_run};
use live_support::sensors::KINDS;
use live_support::watch::poisson_bound;
use trainwright::live::LiveEventKind;

/// Time driven with each kind of sensors here.
const HOURS: f64 = 0.8;

#[test]
fn clean_driving_alarms_no_more_than_the_setting_says() {
    println!("{HOURS} h with each kind of sensors; 100 h with each: cargo bench --bench live_alarms");
    for kind in KINDS {
        let run = clean_run(kind, SETTING, HOURS);
        let expected = run.judged_s / f64::from(SETTING.run_length_s);
        let (slips, most) = (run.count(LiveEventKind::Slip), poisson_bound(expected));
        println!(
            "{}: {} samples, {slips} slip alarms, {expected:.2} expected, at most {most}",
            kind.name(),
            run.samples
        );
        let shown: Vec<_> = run.alarms.iter().take(5).collect();
        assert!(slips <= most, "{}: {shown:#?}", kind.name());
        assert_eq!(run.alarms.len(), slips, "{}: {shown:#?}", kind.name());
    }
}
