//! The unit and the trace of the demonstration, for the tests and the bench of the live monitor.

use std::fs;

use trainwright::live::*;
use trainwright::practice;
use trainwright::record::{Family, LiveWatch, NamedLiveUnit, Record};

pub fn demo(file: &str) -> String {
    let path = format!("{}/python/trainwright/demo/{file}", env!("CARGO_MANIFEST_DIR"));
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// Limits by practice, with the demonstration's wish for small slips.
pub fn limits() -> LiveLimits {
    LiveLimits {
        standing_rpm: practice::STANDING_OUTPUT_RPM as f32,
        slip_rpm: 0.6,
        run_length_s: (practice::FALSE_ALARM_RUN_H * 3600.0) as f32,
        skew_s: 0.0,
        ratio_u_rel: 1e-4,
        settle_s: practice::SHIFT_SETTLE_S as f32,
        follow_s: practice::SHIFT_FOLLOW_S as f32,
        flare_rpm: practice::FLARE_LOW_RPM as f32,
        dip_share: practice::TIE_UP_DIP_SHARE as f32,
        lockup_slip_rpm: practice::LOCKUP_SLIP_NORMAL_RPM as f32,
        cold_c: practice::SHIFT_COLD_C as f32,
        hot_c: practice::SUMP_ALARM_LOW_C as f32,
        warm_up_s: practice::WARM_UP_S as f32,
    }
}

/// Sensors with the steps and the noise that `truth.toml` states.
pub fn watch() -> LiveWatch {
    LiveWatch {
        input: SpeedSensor::bus(0.5, 0.9, 0.035, 8000.0).unwrap(),
        output: SpeedSensor::bus(0.5, 0.7, 0.035, 8000.0).unwrap(),
        engine: SpeedSensor::bus(1.0, 4.0, 0.1, 8000.0).unwrap(),
        limits: limits(),
        sample_s: 0.01,
    }
}

pub fn wren() -> NamedLiveUnit {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    family.train("wren").unwrap().live_unit(&watch()).unwrap()
}

/// The samples of `trace.csv`.
pub fn trace() -> Vec<LiveSample> {
    demo("trace/trace.csv")
        .lines()
        .skip(1)
        .map(|line| {
            let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
            let [time_s, input, output, engine, line_kpa, sump_c, _throttle, commanded, lockup] = cells[..] else {
                panic!("{line}: nine columns")
            };
            LiveSample {
                time_us: (time_s * 1e6).round() as u64,
                input: SpeedReading::bus(input as f32),
                output: SpeedReading::bus(output as f32),
                engine: SpeedReading::bus(engine as f32),
                pressure_kpa: line_kpa as f32,
                temp_c: sump_c as f32,
                engine_torque_nm: f32::NAN,
                commanded: commanded as i8,
                lockup: lockup as i8,
            }
        })
        .collect()
}

/// Every event of a run, and the last state.
pub fn run(unit: &LiveUnit, samples: &[LiveSample]) -> (Vec<LiveEvent>, LiveMonitor, LiveState) {
    let plan = unit.plan().unwrap();
    let mut monitor = LiveMonitor::new(&plan);
    let mut events = LiveEvents::NONE;
    let mut all = Vec::new();
    let mut state = None;
    for sample in samples {
        state = Some(monitor.push(&plan, sample, &mut events));
        all.extend_from_slice(events.found());
    }
    (all, monitor, state.unwrap())
}
