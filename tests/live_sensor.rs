//! Speed sensors of the live monitor: uncertainties from the way they work, against counts and rounded noise as they come.

#[path = "support/screen.rs"]
#[allow(dead_code)]
mod screen;
mod support;

use screen::Random;
use support::{Row, vectors};
use trainwright::duty::{BusMeaning, BusNetwork, bus_signal};
use trainwright::live::*;
use trainwright::train::{PulseCount, TimedEdges, counted_ratio, timed_ratio};

/// A sensor from the columns that begin with `prefix`.
fn sensor(row: &Row, prefix: &str) -> SpeedSensor {
    let number = |name: &str| row.number(&format!("{prefix}{name}")) as f32;
    SpeedSensor {
        source: match row.text(&format!("{prefix}reading")) {
            "bus" => SpeedSource::Bus,
            "counted" => SpeedSource::Counted,
            "edges" => SpeedSource::Edges,
            other => panic!("{other}: no such source"),
        },
        teeth: row.count(&format!("{prefix}teeth")),
        step_rpm: number("step_rpm"),
        noise_rpm: number("noise_rpm"),
        tick_s: number("tick_s"),
        age_limit_s: 0.1,
        greatest_rpm: 8000.0,
    }
}

#[test]
fn published_and_derived_values() {
    vectors("live_step_bias_rpm", |row| {
        Ok([step_bias_rpm(row.number("step_rpm") as f32, row.number("noise_rpm") as f32)?.into()])
    });
    vectors("live_u_rpm", |row| {
        let (rpm, window) = (row.number("rpm") as f32, row.number("window_s") as f32);
        Ok([sensor(row, "").u_rpm(rpm, window, row.count("values"))?.into()])
    });
    vectors("live_ratio_window_s", |row| {
        let pair = SpeedPair {
            input: sensor(row, "input_").spread()?,
            output: sensor(row, "output_").spread()?,
            sample_s: row.number("sample_s") as f32,
        };
        let number = |name| row.number(name) as f32;
        Ok([pair.ratio_window_s(number("input_rpm"), number("ratio"), number("u_rel"))?.into()])
    });
}

/// The two formulas of `train` with the same counts: job J7 and the fifty milliseconds of step 14.
#[test]
fn a_ratio_has_the_uncertainty_that_the_gear_train_gives_it() {
    let counter = |teeth| SpeedSensor::counted(teeth, 0.0, 0.1, 8000.0).unwrap().spread().unwrap();
    let pair = SpeedPair { input: counter(40), output: counter(30), sample_s: 0.01 };
    for (input_pulses, output_pulses, seconds) in [(13_360, 5710, 10.0), (13_360, 7245, 10.0), (67, 28, 0.05)] {
        let counts = PulseCount { input_pulses, output_pulses, input_teeth: 40, output_teeth: 30 };
        let ratio = counted_ratio(counts).unwrap();
        let rpm = |pulses: u32, teeth: f32| 60.0 * pulses as f32 / (teeth * seconds);
        let u = pair.ratio_variance(rpm(input_pulses, 40.0), rpm(output_pulses, 30.0), seconds).sqrt();
        approx::assert_relative_eq!(f64::from(u), ratio.u / ratio.value, max_relative = 1e-5);
    }
    let stamped = |teeth| SpeedSensor::edges(teeth, 0.5e-6, 0.0, 0.1, 8000.0).unwrap().spread().unwrap();
    let pair = SpeedPair { input: stamped(40), output: stamped(30), sample_s: 0.01 };
    let edges = TimedEdges {
        input_s: 0.049,
        output_s: 0.049,
        tick_us: 0.5,
        input_intervals: 66,
        output_intervals: 28,
        input_teeth: 40,
        output_teeth: 30,
    };
    let ratio = timed_ratio(edges).unwrap();
    approx::assert_relative_eq!(
        f64::from(pair.ratio_variance(2020.4, 1142.9, 0.049).sqrt()),
        ratio.u / ratio.value,
        max_relative = 1e-5
    );
}

/// Step 14 of the job: 1.6 % in fourth, 3.5 % in first, counted in 50 ms at 2000 1/min.
#[test]
fn the_window_follows_the_gear() {
    let counter = |teeth| SpeedSensor::counted(teeth, 0.0, 0.1, 8000.0).unwrap().spread().unwrap();
    let pair = SpeedPair { input: counter(40), output: counter(30), sample_s: 0.01 };
    let u_pct = |ratio: f32| 100.0 * pair.ratio_variance(2000.0, 2000.0 / ratio, 0.05).sqrt();
    let (fourth, first) = (65.0 / 37.0, 854_760.0 / 201_019.0);
    assert_eq!((format!("{:.1}", u_pct(fourth)), format!("{:.1}", u_pct(first))), ("1.6".into(), "3.5".into()));
    let window = |ratio| pair.ratio_window_s(2000.0, ratio, 0.004).unwrap();
    assert!(window(first) > 2.2 * window(fourth));
    let u = pair.ratio_variance(2000.0, 2000.0 / first, window(first)).sqrt();
    approx::assert_relative_eq!(u, 0.004, max_relative = 1e-4);
}

/// Pulses of a wheel that turns evenly, from any phase: the spread is that of the model, and windows end to end add nothing.
#[test]
fn counted_windows_telescope() {
    let mut random = Random(7);
    let (teeth, rpm, window_s, windows) = (30, 1138.46, 0.05, 10);
    let sensor = SpeedSensor::counted(teeth, 0.0, 0.1, 8000.0).unwrap();
    let per_window = rpm / 60.0 * f64::from(teeth) * window_s;
    let (mut one, mut all, times) = (0.0, 0.0, 40_000);
    for _ in 0..times {
        // Both ends of a window are free against the teeth: the window itself begins and ends with another clock.
        let (start, jitter) = (random.unit(), random.unit());
        let count = |first: f64, span: f64| (first + span).floor() - first.floor();
        let (single, whole) = (count(start, per_window + jitter) - jitter, 0.0_f64);
        one += (single - per_window).powi(2);
        let span = per_window * f64::from(windows) + jitter;
        let mut sum = whole;
        for k in 0..windows {
            let (from, to) = (start + span * f64::from(k) / 10.0, start + span * f64::from(k + 1) / 10.0);
            sum += to.floor() - from.floor();
        }
        all += (sum - span).powi(2);
    }
    let scale = 60.0 / (f64::from(teeth) * window_s);
    let u_one = (one / f64::from(times)).sqrt() * scale;
    let u_all = (all / f64::from(times)).sqrt() * scale / f64::from(windows);
    let model = |values: u32| f64::from(sensor.u_rpm(rpm as f32, 0.05 * values as f32, values).unwrap());
    approx::assert_relative_eq!(u_one, model(1), max_relative = 0.02);
    approx::assert_relative_eq!(u_all, model(windows), max_relative = 0.02);
}

/// Rounded noise at every place between two steps: bias and scatter of means, against the formulas.
#[test]
fn rounding_to_a_step_with_and_without_noise() {
    let mut random = Random(11);
    let mut normal = move || (0..12).map(|_| random.unit()).sum::<f64>() - 6.0;
    for (step, noise, values) in
        [(1.0_f64, 0.0, 20_u32), (1.0, 0.15, 20), (1.0, 0.3, 20), (8.0, 4.0, 50), (0.5, 0.9, 10)]
    {
        let bound = f64::from(step_bias_rpm(step as f32, noise as f32).unwrap());
        let sensor = SpeedSensor::bus(step as f32, noise as f32, 0.1, 8000.0).unwrap();
        let (mut square, places, means) = (0.0, 40, 500);
        for place in 0..places {
            let x = 600.0 + step * (f64::from(place) + 0.5) / f64::from(places);
            let mut total = 0.0;
            for _ in 0..means {
                let mean = (0..values).map(|_| ((x + noise * normal()) / step).round() * step).sum::<f64>()
                    / f64::from(values);
                square += (mean - x).powi(2);
                total += mean - x;
            }
            let bias = (total / f64::from(means)).abs();
            let scatter = (noise.powi(2) + step.powi(2) / 4.0).sqrt() / f64::from(means * values as i32).sqrt();
            assert!(bias <= bound + 4.0 * scatter, "step {step}, noise {noise}, at {x}: {bias} over {bound}");
        }
        let u = (square / f64::from(places * means)).sqrt();
        let model = f64::from(sensor.u_rpm(600.0, 1.0, values).unwrap());
        approx::assert_relative_eq!(u, model, max_relative = 0.02);
    }
}

/// Every raw value of 16 bits is what `duty::decode` says it is.
#[test]
fn marks_of_the_bus_are_those_of_duty() {
    let output = bus_signal(BusNetwork::J1939, 191).unwrap();
    for raw in 0..=u16::MAX {
        let (reading, value) = (SpeedReading::marked(raw, 0.125), output.decode(raw.into()).unwrap());
        let state = match value.meaning {
            BusMeaning::Value => ReadingState::Value,
            BusMeaning::NotAvailable => ReadingState::NotAvailable,
            BusMeaning::Error => ReadingState::SensorError,
            _ => ReadingState::Reserved,
        };
        assert_eq!(reading.state, state, "{raw:#x}");
        assert!(state != ReadingState::Value || f64::from(reading.rpm) == value.value, "{raw:#x}");
    }
}
