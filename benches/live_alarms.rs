//! A hundred hours of clean driving with each kind of sensors: alarms against what the setting allows. `LIVE_HOURS=1` for less.

use std::time::Instant;

#[path = "../tests/support/live/mod.rs"]
mod support;

use support::false_alarms::{SETTING, clean_run};
use support::sensors::KINDS;
use support::watch::poisson_bound;
use trainwright::live::LiveEventKind;

fn main() {
    let hours = std::env::var("LIVE_HOURS").map_or(100.0, |hours| hours.parse().expect("LIVE_HOURS is a number"));
    println!(
        "Clean driving, {hours} h with each kind of sensors; one false slip alarm in {} h in gear allowed",
        SETTING.run_length_s / 3600.0
    );
    println!(
        "| sensors | samples, million | judged, h | slip alarms | expected, at most | bound | other alarms | million samples/s |"
    );
    println!("|---|---|---|---|---|---|---|---|");
    let mut held = true;
    for kind in KINDS {
        let start = Instant::now();
        let run = clean_run(kind, SETTING, hours);
        let seconds = start.elapsed().as_secs_f64();
        let expected = run.judged_s / f64::from(SETTING.run_length_s);
        let (slips, most) = (run.count(LiveEventKind::Slip), poisson_bound(expected));
        let other = run.alarms.len() - slips;
        let million = run.samples as f64 / 1e6;
        println!(
            "| {} | {million:.1} | {:.1} | {slips} | {expected:.1} | {most} | {other} | {:.1} |",
            kind.name(),
            run.judged_s / 3600.0,
            million / seconds,
        );
        held &= slips <= most && other == 0;
    }
    assert!(held, "more alarms than the setting allows");
}
