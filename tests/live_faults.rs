//! What the monitor says when a sensor fails, and how soon: the table of DEVELOPERS.md.

#[path = "support/live/mod.rs"]
mod live_support;

use live_support::faults::{EFFORT, table};

#[test]
fn the_table_of_faults() {
    println!("{}", table(EFFORT));
}
