//! A hundred hours of clean driving with each kind of sensors: alarms against what the setting allows; then faults: what is found,
//! and how soon, in twenty drives for each. `LIVE_HOURS=1 LIVE_DRIVES=2` for less; `WRITE_TABLES=1` writes both tables into
//! DEVELOPERS.md.

use std::time::Instant;

#[path = "../tests/support/live/mod.rs"]
mod support;

use support::false_alarms::{SETTING, clean_run};
use support::faults::{Effort, table};
use support::sensors::{KINDS, Kind};
use support::watch::{Run, poisson_bound};
use trainwright::live::LiveEventKind;

fn row(kind: Kind, run: &Run) -> (String, bool) {
    let expected = run.judged_s / f64::from(SETTING.run_length_s);
    let (slips, most) = (run.count(LiveEventKind::Slip), poisson_bound(expected));
    let other = run.alarms.len() - slips;
    let (million, hours) = (run.samples as f64 / 1e6, run.judged_s / 3600.0);
    let name = kind.name();
    (format!("| {name} | {million:.1} | {hours:.1} | {expected:.1} | {most} | {slips} | {other} |\n"), slips <= most)
}

fn main() {
    let number = |name, usual| std::env::var(name).map_or(usual, |text| text.parse().expect("a number"));
    let (hours, drives) = (number("LIVE_HOURS", 100.0), number("LIVE_DRIVES", 20.0));
    let mut clean = format!("{hours} h of driving with each kind of sensors:\n\n");
    clean.push_str(
        "| sensors | million samples | judged, h | slip alarms expected, at most | bound | slip alarms | other alarms |\n|---|---|---|---|---|---|---|\n",
    );
    let mut held = true;
    for kind in KINDS {
        let start = Instant::now();
        let run = clean_run(kind, SETTING, hours);
        let (row, holds) = row(kind, &run);
        let rate = run.samples as f64 / 1e6 / start.elapsed().as_secs_f64();
        println!(
            "{}: {:.1} million samples, {rate:.1} million/s with the simulation",
            kind.name(),
            run.samples as f64 / 1e6
        );
        for (event, truth) in run.alarms.iter().take(10) {
            println!("  {event:?}\n  {truth:?}");
        }
        (clean, held) = (clean + &row, held && holds);
    }
    let faults = table(Effort { seeds: drives as u64, before_s: 60.0, after_s: 180.0 });
    let faults = format!("{drives} drives for each cell:\n\n{faults}");
    println!("{clean}\n{faults}");
    if std::env::var_os("WRITE_TABLES").is_some() {
        write(&[("clean driving", &clean), ("faults", &faults)]);
    }
    assert!(held, "more slip alarms than the setting allows");
}

/// Puts each table between its marks.
fn write(tables: &[(&str, &str)]) {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/DEVELOPERS.md");
    let mut text = std::fs::read_to_string(path).expect("DEVELOPERS.md");
    for (name, table) in tables {
        let (begin, end) = (format!("<!-- live alarms: {name} -->\n"), "<!-- end -->");
        let at = text.find(&begin).expect("the mark of the table") + begin.len();
        let to = at + text[at..].find(end).expect("the end of the table");
        text.replace_range(at..to, &format!("\n{table}\n"));
    }
    std::fs::write(path, text).expect("DEVELOPERS.md");
}
