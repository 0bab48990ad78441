//! The run length that is set is the one that is had, and a slip is found as soon as the theory of the test says.

#[path = "support/live/mod.rs"]
mod live_support;

use live_support::random::Random;
use live_support::sensors::{KINDS, Kind};
use live_support::watch::{Setting, poisson_bound, unit};
use trainwright::live::*;

const SIXTH: i8 = 6;
const OUTPUT_RPM: f64 = 1200.3;

/// A steady drive in sixth, whose ratio is 1: speeds with the noise and the step of the bus.
struct Steady {
    plan: LivePlan,
    monitor: LiveMonitor,
    events: LiveEvents,
    random: Random,
    spread_rpm: [f64; 2],
    step_rpm: f64,
    period_s: f64,
    steps: u64,
}

impl Steady {
    fn new(kind: Kind, setting: Setting, seed: u64) -> Self {
        let mut unit = unit(kind, setting);
        unit.limits.skew_s = 0.0;
        let plan = unit.plan().unwrap();
        Self {
            plan,
            monitor: LiveMonitor::new(&plan),
            events: LiveEvents::NONE,
            random: Random::new(seed),
            spread_rpm: [unit.input.noise_rpm, unit.output.noise_rpm].map(f64::from),
            step_rpm: f64::from(unit.input.step_rpm),
            period_s: f64::from(unit.sample_s),
            steps: 0,
        }
    }

    /// One sample with this slip; whether it alarmed.
    fn step(&mut self, slip_rpm: f64) -> bool {
        let [input_rpm, output_rpm] = self.spread_rpm.map(|spread_rpm| spread_rpm * self.random.normal());
        let sent = |rpm: f64| SpeedReading::bus(((rpm / self.step_rpm).round() * self.step_rpm) as f32);
        let sample = LiveSample {
            time_us: (self.steps as f64 * self.period_s * 1e6) as u64,
            input: sent(OUTPUT_RPM + slip_rpm + input_rpm),
            output: sent(OUTPUT_RPM + output_rpm),
            commanded: SIXTH,
            ..LiveSample::EMPTY
        };
        self.steps += 1;
        self.monitor.push(&self.plan, &sample, &mut self.events);
        self.events.found().iter().any(|event| event.kind == LiveEventKind::Slip)
    }

    fn settle(&mut self) {
        for _ in 0..300 {
            self.step(0.0);
        }
    }
}

/// Standard deviation of one slip in sixth, from what the sensors say of themselves.
fn spread_rpm(unit: &LiveUnit) -> f32 {
    let of = |sensor: &SpeedSensor| sensor.spread().unwrap().variance(OUTPUT_RPM as f32, unit.sample_s, 1.0);
    (of(&unit.input) + of(&unit.output)).sqrt()
}

#[test]
fn the_run_length_that_is_set_is_the_one_that_is_had() {
    let kind = Kind::Heavy;
    for run_length_s in [20.0, 60.0, 200.0] {
        // A slip so small that its reference is half a standard deviation: the sum lives from the noise.
        let slip_rpm = spread_rpm(&unit(kind, Setting { slip_rpm: 1.0, run_length_s }));
        let mut steady = Steady::new(kind, Setting { slip_rpm, run_length_s }, 7);
        steady.settle();
        let samples = 600_000;
        let alarms = (0..samples).filter(|_| steady.step(0.0)).count();
        let expected = f64::from(samples) * steady.period_s / f64::from(run_length_s);
        println!("run length {run_length_s} s: {alarms} false alarms, {expected} expected");
        assert!(alarms <= poisson_bound(expected));
        assert!(alarms as f64 >= 0.6 * expected, "the test is deafer than its setting: {alarms} of {expected}");
    }
}

#[test]
fn a_slip_is_found_as_soon_as_the_theory_says() {
    for kind in KINDS.into_iter().filter(|kind| matches!(kind, Kind::Noisy | Kind::Heavy)) {
        let run_length_s = 36_000.0;
        let slip_rpm = spread_rpm(&unit(kind, Setting { slip_rpm: 1.0, run_length_s }));
        let setting = Setting { slip_rpm, run_length_s };
        let (unit, spread) = (unit(kind, setting), slip_rpm);
        let samples = run_length_s / unit.sample_s;
        let h = threshold_for(samples, 0.5).unwrap();
        for slip_in_spreads in [1.0, 1.5, 2.0, 3.0] {
            let values = run_length(h, 0.5, 0.5 + clipped(slip_in_spreads - 0.5)).unwrap();
            let expected_s = values * unit.sample_s / news_share(&unit);
            let delay = |seed| {
                let mut steady = Steady::new(kind, setting, seed);
                steady.settle();
                (1..10_000).find(|_| steady.step(f64::from(slip_in_spreads * spread))).unwrap()
            };
            let trials = 60;
            let mean_s = f64::from((0..trials).map(delay).sum::<i32>()) / trials as f64 * steady_period(&unit);
            println!(
                "{}: slip {:.2} rpm found after {mean_s:.3} s, theory {expected_s:.3} s",
                kind.name(),
                slip_in_spreads * spread
            );
            let ratio = mean_s / f64::from(expected_s);
            // The sum is not always 0 when the slip begins, so that the delay is a little shorter than from 0.
            assert!((0.8..1.1).contains(&ratio), "{ratio}");
        }
    }
}

/// Share of the samples that are judged: not those in which both speeds repeat, or one for the second time. Two values of a
/// noise σ that hides the step q are the same with a chance of q/(2σ√π).
fn news_share(unit: &LiveUnit) -> f32 {
    let [input, output] = [unit.input, unit.output].map(|sensor| {
        let dithered = sensor.source == SpeedSource::Bus && sensor.noise_rpm >= 0.5 * sensor.step_rpm;
        if dithered { sensor.step_rpm / (2.0 * sensor.noise_rpm * std::f32::consts::PI.sqrt()) } else { 0.0 }
    });
    1.0 - input * output - input * input - output * output
}

/// Mean of a normal value that counts 2.5 at most (live.judge_slip).
fn clipped(mean: f32) -> f32 {
    let beyond = f64::from(2.5 - mean);
    let density = libm::exp(-0.5 * beyond * beyond) / std::f64::consts::TAU.sqrt();
    let above = 0.5 * libm::erfc(beyond * std::f64::consts::FRAC_1_SQRT_2);
    mean - (density - beyond * above) as f32
}

fn steady_period(unit: &LiveUnit) -> f64 {
    f64::from(unit.sample_s)
}

#[test]
fn a_growing_slip_is_found_as_soon_as_the_theory_says() {
    for kind in [Kind::Noisy, Kind::Heavy] {
        let setting = Setting { slip_rpm: 2.0, run_length_s: 36_000.0 };
        let unit = unit(kind, setting);
        let (spread, sample_s) = (spread_rpm(&unit), unit.sample_s);
        let h = threshold_for(setting.run_length_s / sample_s, (0.5 * setting.slip_rpm / spread).min(1.0)).unwrap();
        for rpm_per_s in [0.5_f32, 2.0, 10.0] {
            // The drift of the sum is 0 at half the slip, then the sum grows with the square of the time.
            let expected_s = 0.5 * setting.slip_rpm / rpm_per_s + (2.0 * h * spread * sample_s / rpm_per_s).sqrt();
            let trials = 30;
            let mean_s = (0..trials)
                .map(|seed| {
                    let mut steady = Steady::new(kind, setting, seed);
                    steady.settle();
                    let slip = |step: u32| f64::from(rpm_per_s * sample_s) * f64::from(step);
                    let found = (1..20_000).find(|&step| steady.step(slip(step))).unwrap();
                    f64::from(found) * f64::from(sample_s)
                })
                .sum::<f64>()
                / f64::from(trials as u32);
            println!(
                "{}: slip growing by {rpm_per_s} rpm/s found after {mean_s:.2} s, theory {expected_s:.2} s",
                kind.name()
            );
            assert!((0.75..1.15).contains(&(mean_s / f64::from(expected_s))), "{mean_s} {expected_s}");
        }
    }
}
