//! What the monitor says when a sensor fails, and how soon. A few drives here; the table of DEVELOPERS.md has more of them.

#[path = "support/live/mod.rs"]
mod live_support;

use live_support::faults::{Effort, FAULTS, Fault, outcome};
use live_support::sensors::{KINDS, Wrong};

const EFFORT: Effort = Effort { seeds: 2, before_s: 60.0, after_s: 180.0 };

fn each(of: impl Fn(&Fault) -> bool, check: impl Fn(&str, &Fault, live_support::faults::Outcome)) {
    for fault in FAULTS.iter().filter(|fault| of(fault)) {
        for kind in KINDS.into_iter().filter(|&kind| (fault.of)(kind)) {
            check(&format!("{}, {}", fault.name, kind.name()), fault, outcome(fault, kind, EFFORT));
        }
    }
}

#[test]
fn a_fault_that_should_be_found_is_found() {
    println!("{} drives for each fault and kind of sensors; more: cargo bench --bench live_alarms", EFFORT.seeds);
    each(
        |fault| fault.found_as.is_some(),
        |name, fault, outcome| {
            assert_eq!(outcome.before, 0, "{name}: alarms before it");
            let found = outcome.delays_s.len();
            // Edges doubled here and there look like slip in every gear, and seldom like a tooth count.
            let something = matches!(fault.wrong, Wrong::Chatter(_)) && !outcome.others.is_empty();
            assert!(found > 0 || something, "{name}: not found, others {:?}", outcome.others);
        },
    );
}

#[test]
fn what_is_no_fault_of_the_unit_stays_silent() {
    each(
        |fault| fault.found_as.is_none(),
        |name, fault, outcome| {
            assert_eq!(outcome.before, 0, "{name}: alarms before it");
            // Counts over a time that is stamped wrong by 8 % are speeds that are wrong by 8 %.
            let may = matches!(fault.wrong, Wrong::Jitter(_)) && name.ends_with("teeth counted");
            assert!(may || outcome.others.is_empty(), "{name}: {:?}", outcome.others);
        },
    );
}

/// The table of DEVELOPERS.md is written by `WRITE_TABLES=1 cargo bench --bench live_alarms`; none of its rows may be missing.
#[test]
fn the_committed_table_has_every_fault() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/DEVELOPERS.md");
    let text = std::fs::read_to_string(path).unwrap();
    for fault in FAULTS {
        let said = fault.found_as.map_or("nothing", |kind| kind.name());
        let row = format!("| {} | {said} | ", fault.name);
        assert!(text.contains(&row), "DEVELOPERS.md lacks {row}");
    }
}
