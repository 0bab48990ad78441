//! The judge chapter against its sources.

mod support;

use support::vectors;
use trainwright::judge::{Limits, Reading, chance_inside};

#[test]
fn chance_inside_vectors() {
    vectors("judge_chance_inside", |row| {
        let reading = Reading { value: row.number("value"), u: row.number("u") };
        let limits = Limits { lower: row.number("lower"), upper: row.number("upper") };
        Ok([chance_inside(reading, limits)?])
    });
}
