//! The live monitor: its size, what it refuses, what it finds in made-up drives, and that any stream leaves it defined.

#[path = "../support/live.rs"]
#[allow(dead_code)]
mod support;

mod random;
mod sensors;

use proptest::prelude::*;
use trainwright::Error;
use trainwright::live::*;

use support::{run, wren};

#[test]
fn plan_and_monitor_fit_a_kibibyte() {
    let (plan, monitor) = (size_of::<LivePlan>(), size_of::<LiveMonitor>());
    println!("plan {plan} bytes, monitor {monitor} bytes");
    assert!(plan + monitor <= 1024, "{plan} + {monitor}");
}

#[test]
fn a_plan_names_what_is_wrong() {
    let good = wren().unit;
    assert!(good.plan().is_ok());
    let wrong = |change: &dyn Fn(&mut LiveUnit)| {
        let mut unit = good;
        change(&mut unit);
        let error = unit.plan().unwrap_err();
        (error.kind(), error.parameter())
    };
    assert_eq!(wrong(&|unit| unit.gear_count = 0), ("COUNT", "gears"));
    assert_eq!(wrong(&|unit| unit.gear_count = 13), ("COUNT", "gears"));
    assert_eq!(wrong(&|unit| unit.element_count = 9), ("COUNT", "elements"));
    assert_eq!(wrong(&|unit| unit.element_count = 1), ("INCONSISTENT", "suspect.element"));
    assert_eq!(wrong(&|unit| unit.gears[0].ratio = f32::NAN), ("NOT_FINITE", "ratio"));
    assert_eq!(wrong(&|unit| unit.gears[0].ratio = 0.01), ("OUT_OF_RANGE", "ratio"));
    assert_eq!(wrong(&|unit| unit.gears[0].ratio *= -1.0), ("INCONSISTENT", "gear.number"));
    assert_eq!(wrong(&|unit| unit.gears[0].number = 2), ("INCONSISTENT", "gears"));
    assert_eq!(wrong(&|unit| unit.gears[0].ratio = unit.gears[1].ratio * 1.004), ("INCONSISTENT", "gears"));
    assert_eq!(wrong(&|unit| unit.gears[0].suspect_count = 5), ("COUNT", "suspects"));
    assert_eq!(wrong(&|unit| unit.sample_s = 0.0), ("OUT_OF_RANGE", "sample_s"));
    assert_eq!(wrong(&|unit| unit.limits.slip_rpm = 0.0), ("NOT_POSITIVE", "slip_rpm"));
    assert_eq!(wrong(&|unit| unit.limits.run_length_s = f32::INFINITY), ("NOT_FINITE", "run_length_s"));
    assert_eq!(wrong(&|unit| unit.limits.ratio_u_rel = 0.5), ("OUT_OF_RANGE", "ratio_u_rel"));
    assert_eq!(wrong(&|unit| unit.limits.cold_c = 150.0), ("REVERSED", "cold_c, hot_c"));
    assert_eq!(wrong(&|unit| unit.input.greatest_rpm = -1.0), ("NOT_POSITIVE", "greatest_rpm"));
    let mut unit = good;
    unit.limits.skew_s = -0.25;
    assert_eq!(unit.plan().unwrap_err(), Error::OutOfRange { name: "skew_s", value: -0.25, low: 0.0, high: 10.0 });
}

/// Numbers with a normal distribution, always the same (Box and Muller, with a 64-bit congruential generator).
struct Noise(u64);

impl Noise {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        (-2.0 * self.uniform().ln()).sqrt() * (std::f64::consts::TAU * self.uniform()).cos()
    }
}

/// A drive that is made up: output speed and gear are given, the sensors of the demonstration read them.
struct Drive {
    noise: Noise,
    time_us: u64,
    samples: Vec<LiveSample>,
    torque_nm: f32,
    commanded: bool,
}

impl Drive {
    fn new(seed: u64) -> Self {
        Self { noise: Noise(seed), time_us: 1_000_000, samples: vec![], torque_nm: 300.0, commanded: true }
    }

    fn read(&mut self, rpm: f64, deviation: f64) -> SpeedReading {
        SpeedReading::bus((((rpm + deviation * self.noise.normal()) / 0.5).round() * 0.5).max(0.0) as f32)
    }

    /// One sample 10 ms after the one before.
    fn sample(&mut self, input: f64, output: f64, number: i8) {
        let engine = input + 20.0;
        let sample = LiveSample {
            time_us: self.time_us,
            input: self.read(input, 0.9),
            output: self.read(output, 0.7),
            engine: self.read(engine, 4.0),
            temp_c: 80.0,
            engine_torque_nm: self.torque_nm,
            commanded: if self.commanded { number } else { GEAR_NOT_COMMANDED },
            lockup: 1,
            ..LiveSample::EMPTY
        };
        self.samples.push(sample);
        self.time_us += 10_000;
    }

    /// So long in a gear: output from one speed to another, slip at the input by time.
    fn hold(&mut self, gear: &LiveGear, seconds: f64, output: (f64, f64), slip: impl Fn(f64) -> f64) {
        let count = (seconds * 100.0) as usize;
        for step in 0..count {
            let share = step as f64 / count as f64;
            let output = output.0 + (output.1 - output.0) * share;
            self.sample(output * f64::from(gear.ratio.abs()) + slip(share * seconds), output, gear.number);
        }
    }

    /// A clean shift at one output speed: 0.2 s of fill and torque phase, then the input runs to the new gear in 0.4 s.
    fn shift(&mut self, from: &LiveGear, to: &LiveGear, output: f64) {
        for step in 0..60 {
            let x = (f64::from(step) / 40.0 - 0.5).clamp(0.0, 1.0);
            let share = x * x * (3.0 - 2.0 * x);
            let ratio = f64::from(from.ratio) * (1.0 - share) + f64::from(to.ratio) * share;
            self.sample(ratio * output, output, to.number);
        }
    }
}

fn of_kind(events: &[LiveEvent], kind: LiveEventKind) -> Vec<LiveEvent> {
    events.iter().filter(|event| event.kind == kind).copied().collect()
}

fn gear(named: &trainwright::record::NamedLiveUnit, id: &str) -> (i8, LiveGear) {
    let place = named.gears.iter().position(|name| name == id).unwrap();
    (place as i8, named.unit.gears[place])
}

#[test]
fn every_gear_is_found_with_its_ratio() {
    let named = wren();
    for (place, gear) in named.unit.gears.iter().enumerate().take(named.gears.len()) {
        for commanded in [true, false] {
            let mut drive = Drive { commanded, ..Drive::new(7) };
            drive.hold(gear, 20.0, (700.0, 900.0), |_| 0.0);
            let (events, monitor, state) = run(&named.unit, &drive.samples);
            assert_eq!(state.gear, place as i8, "{} {commanded}", named.gears[place]);
            let reached = of_kind(&events, LiveEventKind::GearReached);
            assert_eq!(reached.len(), 1, "{}: {events:?}", named.gears[place]);
            assert!(of_kind(&events, LiveEventKind::Slip).is_empty(), "{events:?}");
            let plan = named.unit.plan().unwrap();
            let ratio = monitor.ratio(&plan, place as u8);
            assert!(ratio.windows >= 3 && ratio.slipping == 0, "{ratio:?}");
            assert!((ratio.ratio - gear.ratio.abs()).abs() < 4.0 * ratio.u, "{ratio:?} {}", gear.ratio);
            let chances = monitor.gear_chances(&plan);
            assert!((chances.iter().sum::<f32>() - 1.0).abs() < 1e-5 && chances[place] > 0.99, "{chances:?}");
        }
    }
}

#[test]
fn energy_turn_and_heat_of_a_shift() {
    let mut named = wren();
    let ((_, third), (_, fourth)) = (gear(&named, "3"), gear(&named, "4"));
    let c3 = named.elements.iter().position(|name| name == "C3").unwrap();
    named.unit.elements[c3] = LiveElement { heat_capacity_j_k: 1200.0, cooling_s: 60.0, limit_c: 82.0 };
    let mut drive = Drive::new(3);
    drive.hold(&third, 3.0, (790.0, 790.0), |_| 0.0);
    drive.shift(&third, &fourth, 790.0);
    drive.hold(&fourth, 1.0, (790.0, 790.0), |_| 0.0);
    let (events, monitor, _) = run(&named.unit, &drive.samples);
    let plan = named.unit.plan().unwrap();
    let shift = monitor.last_shift(&plan);
    assert_eq!(usize::from(shift.element), c3);
    // The slip in fourth falls from (i3 − i4)·n along x²(3 − 2x): its mean over 0.4 s is half of it.
    let slip_rad = f64::from(third.ratio - fourth.ratio) * 790.0 * std::f64::consts::PI / 30.0 * 0.5 * 0.4;
    let energy = 300.0 * slip_rad;
    // What slips before the speeds show that the old ratio is left, three hundredths of a second at full slip, is missing.
    let seen = f64::from(shift.energy_j) / energy;
    assert!((0.90..1.0).contains(&seen), "{} {energy}", shift.energy_j);
    let factor = f64::from(
        fourth.suspects.iter().find(|suspect| usize::from(suspect.element) == c3).unwrap().slip_per_input_slip.abs(),
    );
    assert!((f64::from(shift.slip_rad) / (factor * slip_rad) / seen - 1.0).abs() < 1e-3, "{}", shift.slip_rad);
    assert!(
        (shift.rise_k - shift.energy_j / 1200.0).abs() < 1e-3 && (shift.plate_c - 80.0 - shift.rise_k).abs() < 1e-3
    );
    assert!(shift.rise_k > 2.0 && shift.shifts_to_overheat == 0.0, "{shift:?}");
    let [hot] = of_kind(&events, LiveEventKind::Overheated)[..] else { panic!("{events:?}") };
    assert_eq!((hot.suspects, hot.value), (1 << c3, shift.plate_c));
}

#[test]
fn a_step_of_slip_is_found_and_its_end() {
    let named = wren();
    let (place, fourth) = gear(&named, "4");
    let mut drive = Drive::new(11);
    drive.hold(&fourth, 10.0, (1000.0, 1100.0), |_| 0.0);
    let start_us = drive.time_us;
    drive.hold(&fourth, 5.0, (1100.0, 1150.0), |_| 30.0);
    let end_us = drive.time_us;
    drive.hold(&fourth, 5.0, (1150.0, 1200.0), |_| 0.0);
    let (events, monitor, state) = run(&named.unit, &drive.samples);
    let [alarm] = of_kind(&events, LiveEventKind::Slip)[..] else { panic!("{events:?}") };
    assert_eq!(alarm.gear, place);
    assert!(alarm.found_us - start_us < 200_000 && alarm.at_us.abs_diff(start_us) < 400_000, "{alarm:?} {start_us}");
    let [gone] = of_kind(&events, LiveEventKind::SlipGone)[..] else { panic!("{events:?}") };
    assert!(gone.found_us > end_us && gone.found_us - end_us < 1_500_000, "{gone:?} {end_us}");
    assert!(!state.alarm);
    let plan = named.unit.plan().unwrap();
    let ratio = monitor.ratio(&plan, place as u8);
    let share = 30.0 / (1125.0 * fourth.ratio + 30.0);
    assert!(ratio.slipping > 3 && (ratio.slip_share / share - 1.0).abs() < 0.1, "{ratio:?} {share}");
}

/// Slip in third but not in fifth: that is C1, whose gears are 3 and 4 of these; the monitor's evidence says so.
#[test]
fn suspects_from_the_evidence_of_three_gears() {
    let named = wren();
    let plan = named.unit.plan().unwrap();
    let [third, fourth, fifth] = ["3", "4", "5"].map(|id| gear(&named, id).1);
    let mut drive = Drive::new(5);
    drive.hold(&third, 6.0, (700.0, 800.0), |_| 40.0);
    drive.shift(&third, &fourth, 800.0);
    drive.hold(&fourth, 6.0, (800.0, 900.0), |_| 40.0);
    drive.shift(&fourth, &fifth, 900.0);
    drive.hold(&fifth, 6.0, (900.0, 1000.0), |_| 0.0);
    let (events, monitor, _) = run(&named.unit, &drive.samples);
    let suspects = monitor.suspects(&plan);
    let first = suspects.ranked().first().unwrap_or_else(|| panic!("no suspect: {events:#?}"));
    assert_eq!(named.elements[usize::from(first.element)], "C1", "{suspects:?}");
}

#[test]
fn a_gear_that_does_not_come() {
    let named = wren();
    let ((at, fourth), (asked, fifth)) = (gear(&named, "4"), gear(&named, "5"));
    let mut drive = Drive::new(19);
    drive.hold(&fourth, 4.0, (1000.0, 1050.0), |_| 0.0);
    let commanded_us = drive.time_us;
    drive.hold(&LiveGear { number: fifth.number, ..fourth }, 6.0, (1050.0, 1100.0), |_| 0.0);
    let (events, _, state) = run(&named.unit, &drive.samples);
    let [other] = of_kind(&events, LiveEventKind::OtherGear)[..] else { panic!("{events:#?}") };
    assert_eq!((other.gear, other.other_gear, other.at_us), (at, asked, commanded_us));
    assert_eq!((state.gear, state.phase), (at, ShiftPhase::InGear));
    assert!(of_kind(&events, LiveEventKind::Slip).is_empty());
}

#[test]
fn standing_and_a_clock_that_goes_back() {
    let named = wren();
    let (place, first) = gear(&named, "1");
    let mut drive = Drive::new(29);
    drive.hold(&first, 1.0, (0.0, 20.0), |_| 600.0);
    drive.hold(&first, 5.0, (100.0, 200.0), |_| 0.0);
    let plan = named.unit.plan().unwrap();
    let mut monitor = LiveMonitor::new(&plan);
    let mut events = LiveEvents::NONE;
    let states: Vec<LiveState> = drive.samples.iter().map(|sample| monitor.push(&plan, sample, &mut events)).collect();
    assert_eq!(states[0].gear, GEAR_NOT_KNOWN);
    assert!(states[1..100].iter().all(|state| state.gear == GEAR_STANDS && state.ratio.is_nan()));
    assert_eq!(states.last().unwrap().gear, place);
    monitor.push(&plan, &drive.samples[0], &mut events);
    let [fault] = events.found() else { panic!("{events:?}") };
    assert_eq!(fault.kind, LiveEventKind::TimeFault);
    assert!((fault.value - 5.99).abs() < 1e-3);
    let again: Vec<LiveState> = drive.samples.iter().map(|sample| monitor.push(&plan, sample, &mut events)).collect();
    assert_eq!(again.last().unwrap().gear, place);
    assert_eq!((monitor.counts().reversed, monitor.counts().duplicate), (1, 1));
}
