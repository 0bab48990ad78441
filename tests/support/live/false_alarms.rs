//! Clean driving with each kind of sensors.

use super::drive::{Drive, Trace, cycle, invented_trace};
use super::random::Random;
use super::sensors::{Kind, Sensors};
use super::watch::{Run, Setting, run, unit};

pub const SETTING: Setting = Setting { slip_rpm: 10.0, run_length_s: 36_000.0 };

/// The cycles of 40 CFR, where they are, and invented drives.
fn traces() -> Vec<Trace> {
    let mut random = Random::new(40);
    let mut traces = vec![invented_trace(1800, &mut random)];
    for name in ["udds", "hwfet", "us06"] {
        match cycle(name) {
            Ok(trace) => traces.push(trace),
            Err(why) => println!("left out, the other drives are run: {why}"),
        }
    }
    traces.push(invented_trace(1800, &mut random));
    traces
}

/// Drives until so many hours are full, each drive with a driver and sensors of its own.
pub fn clean_run(kind: Kind, setting: Setting, hours: f64) -> Run {
    let plan = unit(kind, setting).plan().unwrap();
    let traces = traces();
    let mut all = Run::default();
    let mut left_s = hours * 3600.0;
    for (seed, trace) in (0..).zip(traces.iter().cycle()) {
        if left_s <= 0.0 {
            break;
        }
        let seconds = trace.len().min(left_s as usize + 2);
        let seed = seed + 1_000_000 * kind as u64;
        all.merge(run(&plan, kind, Drive::new(&trace[..seconds], seed), Sensors::new(kind, seed)));
        left_s -= seconds as f64;
    }
    all
}
