//! The live monitor: its size, what it refuses, what it finds in made-up drives, and that any stream leaves it defined.

use proptest::prelude::*;
use trainwright::Error;
use trainwright::live::*;

#[path = "support/live.rs"]
#[allow(dead_code)]
mod support;

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

/// A sensor wheel with one tooth in forty more than it was told: no gear fits, and all are wrong by the same factor.
#[test]
fn a_wrong_tooth_count_is_no_slip_for_long() {
    let named = wren();
    for factor in [1.025, 0.975] {
        let [third, fourth, fifth] =
            ["3", "4", "5"].map(|id| LiveGear { ratio: gear(&named, id).1.ratio * factor, ..gear(&named, id).1 });
        let mut drive = Drive::new(13);
        drive.hold(&third, 10.0, (700.0, 800.0), |_| 0.0);
        drive.shift(&third, &fourth, 800.0);
        drive.hold(&fourth, 10.0, (800.0, 900.0), |_| 0.0);
        drive.shift(&fourth, &fifth, 900.0);
        drive.hold(&fifth, 10.0, (900.0, 1000.0), |_| 0.0);
        let (events, _, state) = run(&named.unit, &drive.samples);
        let [wrong] = of_kind(&events, LiveEventKind::WrongTeeth)[..] else { panic!("{factor}: {events:#?}") };
        assert!((wrong.value - factor).abs() < 4.0 * wrong.u + 1e-4, "{wrong:?}");
        assert!(!state.alarm, "{state:?}");
        let alarms = of_kind(&events, LiveEventKind::Slip);
        assert!(alarms.iter().all(|alarm| alarm.found_us <= wrong.found_us), "{alarms:?} {wrong:?}");
        assert_eq!(alarms.is_empty(), factor < 1.0, "{alarms:?}");
    }
}

#[test]
fn exchanged_sensors() {
    let named = wren();
    for commanded in [true, false] {
        let (_, third) = gear(&named, "3");
        let mut drive = Drive { commanded, ..Drive::new(17) };
        drive.hold(&third, 10.0, (700.0, 800.0), |_| 0.0);
        for sample in &mut drive.samples {
            core::mem::swap(&mut sample.input, &mut sample.output);
        }
        let (events, ..) = run(&named.unit, &drive.samples);
        let [swapped] = of_kind(&events, LiveEventKind::Swapped)[..] else { panic!("{commanded}: {events:#?}") };
        assert!((swapped.value * third.ratio - 1.0).abs() < 0.003, "{swapped:?}");
        assert!(
            of_kind(&events, LiveEventKind::Slip).is_empty() && of_kind(&events, LiveEventKind::WrongTeeth).is_empty()
        );
    }
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
fn sensors_lost_stale_and_back() {
    let named = wren();
    let (_, fourth) = gear(&named, "4");
    let mut drive = Drive::new(23);
    drive.hold(&fourth, 12.0, (1000.0, 1300.0), |_| 0.0);
    for (count, sample) in drive.samples.iter_mut().enumerate() {
        match count {
            300..400 => sample.input = SpeedReading::MISSING,
            400..410 => sample.input.state = ReadingState::SensorError,
            410..420 => sample.input.state = ReadingState::NotAvailable,
            420..430 => sample.input.state = ReadingState::Reserved,
            430..440 => sample.input.rpm = 60_000.0,
            700..800 => sample.output.rpm = 1175.0,
            _ => {}
        }
    }
    let (events, monitor, state) = run(&named.unit, &drive.samples);
    let about: Vec<(LiveEventKind, LiveSpeed)> =
        events.iter().filter(|event| event.speed != LiveSpeed::None).map(|event| (event.kind, event.speed)).collect();
    use LiveEventKind::{Back, Lost, Stale};
    use LiveSpeed::{Input, Output};
    assert_eq!(about, [(Lost, Input), (Back, Input), (Stale, Output), (Back, Output)]);
    let counts = monitor.counts();
    assert_eq!((counts.missing, counts.sensor_error, counts.not_available, counts.reserved), (100, 10, 10, 10));
    assert_eq!((counts.impossible, counts.gaps, counts.samples), (10, 2, 1200));
    assert!(counts.stale > 90 && counts.used > 900, "{counts:?}");
    assert!(of_kind(&events, LiveEventKind::Slip).is_empty(), "{events:?}");
    assert_eq!(state.phase, ShiftPhase::InGear);
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

/// A pulse counter and time-stamped edges see the same drive.
#[test]
fn counted_and_timed_speeds() {
    let mut named = wren();
    let (place, fourth) = gear(&named, "4");
    named.unit.input = SpeedSensor::counted(40, 0.0, 0.2, 8000.0).unwrap();
    named.unit.output = SpeedSensor::edges(30, 1e-6, 0.3, 0.2, 8000.0).unwrap();
    named.unit.limits.ratio_u_rel = 2e-4;
    let (mut turns_in, mut turns_out, mut last_edge_us) = (0.0, 0.0, 0.0);
    let mut samples = vec![];
    for step in 1..6000 {
        let output = 1000.0 + 0.01 * f64::from(step);
        let input = output * f64::from(fourth.ratio);
        let before = ((turns_in * 40.0_f64).floor(), (turns_out * 30.0_f64).floor());
        turns_in += input / 60.0 * 0.01;
        turns_out += output / 60.0 * 0.01;
        let after = ((turns_in * 40.0).floor(), (turns_out * 30.0).floor());
        let edges = after.1 - before.1;
        // When the last edge came, from how far the wheel has turned since.
        let edge_us = f64::from(step) * 10_000.0 - (turns_out * 30.0 - after.1) / (30.0 * output / 60.0) * 1e6;
        let sample = LiveSample {
            time_us: step as u64 * 10_000,
            input: SpeedReading::counted((after.0 - before.0) as u32),
            output: SpeedReading::edges(edges as u32, (edge_us - last_edge_us).round() as u32),
            commanded: fourth.number,
            ..LiveSample::EMPTY
        };
        last_edge_us = edge_us;
        samples.push(sample);
    }
    let (events, monitor, state) = run(&named.unit, &samples);
    assert_eq!(state.gear, place);
    assert!(of_kind(&events, LiveEventKind::Slip).is_empty(), "{events:?}");
    let ratio = monitor.ratio(&named.unit.plan().unwrap(), place as u8);
    assert!(ratio.windows > 10 && (ratio.ratio - fourth.ratio).abs() < 4.0 * ratio.u, "{ratio:?} {}", fourth.ratio);
}

fn any_state() -> impl Strategy<Value = ReadingState> {
    use ReadingState::{Missing, NotAvailable, Reserved, SensorError, Value};
    prop_oneof![6 => Just(Value), 1 => Just(Missing), 1 => Just(NotAvailable), 1 => Just(SensorError), 1 => Just(Reserved)]
}

fn any_rpm() -> impl Strategy<Value = f32> {
    prop_oneof![4 => 0.0_f32..6000.0, 1 => any::<f32>(), 1 => Just(f32::NAN), 1 => Just(0.0), 1 => Just(1e-30)]
}

prop_compose! {
    fn any_reading()(rpm in any_rpm(), pulses in prop_oneof![0..50_u32, any::<u32>()], ticks in prop_oneof![0..20_000_u32, any::<u32>()], state in any_state()) -> SpeedReading {
        SpeedReading { rpm, pulses, ticks, state }
    }
}

prop_compose! {
    fn any_sample()(
        step in prop_oneof![8 => 5_000..20_000_u64, 1 => any::<u64>(), 1 => Just(0)],
        input in any_reading(), output in any_reading(), engine in any_reading(),
        others in (any::<f32>(), any::<f32>(), any::<f32>()),
        commanded in any::<i8>(), near in -2..9_i8, listed in any::<bool>(), lockup in -1..2_i8,
    ) -> LiveSample {
        let (pressure_kpa, temp_c, engine_torque_nm) = others;
        let commanded = if listed { near } else { commanded };
        LiveSample { time_us: step, input, output, engine, pressure_kpa, temp_c, engine_torque_nm, commanded, lockup }
    }
}

fn finite_or_nan(values: &[f32]) -> bool {
    values.iter().all(|value| !value.is_infinite())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, ..ProptestConfig::default() })]

    /// Any stream leaves the monitor defined; after two seconds of a clean drive it works again.
    #[test]
    fn any_stream_leaves_it_defined(
        stream in prop::collection::vec(any_sample(), 1..300),
        sources in prop::array::uniform3(0..3_u8),
        place in 0..8_usize,
        run_on in any::<bool>(),
    ) {
        let named = wren();
        let mut unit = named.unit;
        let sensor = |source: u8| match source {
            0 => SpeedSensor::bus(0.5, 0.7, 0.035, 8000.0).unwrap(),
            1 => SpeedSensor::counted(60, 0.0, 0.1, 8000.0).unwrap(),
            _ => SpeedSensor::edges(60, 1e-6, 0.3, 0.1, 8000.0).unwrap(),
        };
        [unit.input, unit.output, unit.engine] = sources.map(sensor);
        unit.elements[0] = LiveElement { heat_capacity_j_k: 900.0, cooling_s: 50.0, limit_c: 200.0 };
        let plan = unit.plan().unwrap();
        let mut monitor = LiveMonitor::new(&plan);
        let mut events = LiveEvents::NONE;
        let mut time_us = 0_u64;
        for mut sample in stream {
            time_us = time_us.wrapping_add(sample.time_us);
            sample.time_us = time_us;
            let state = monitor.push(&plan, &sample, &mut events);
            prop_assert!(finite_or_nan(&[state.ratio, state.ratio_u, state.slip_rpm, state.slip_u_rpm, state.converter_slip_rpm]), "{state:?}");
            prop_assert!((-3..9).contains(&state.gear));
            prop_assert!((events.count as usize) < MAX_LIVE_EVENTS, "{events:?}");
            for event in events.found() {
                prop_assert!(finite_or_nan(&[event.value, event.u]), "{event:?}");
            }
            let chances = monitor.gear_chances(&plan);
            prop_assert!((chances.iter().sum::<f32>() - 1.0).abs() < 1e-4, "{chances:?}");
            let LiveShift { fill_s, torque_s, inertia_s, duration_s, flare_rpm, dip_rpm, slip_rad, energy_j, .. } = monitor.last_shift(&plan);
            // The torque may be any number, and with it the energy.
            prop_assert!(finite_or_nan(&[fill_s, torque_s, inertia_s, duration_s, flare_rpm, dip_rpm, slip_rad]));
            prop_assert!(energy_j.is_nan() || energy_j >= 0.0);
            for place in 0..9 {
                let ratio = monitor.ratio(&plan, place);
                prop_assert!(finite_or_nan(&[ratio.ratio, ratio.u, ratio.slip_share]), "{ratio:?}");
            }
            for suspect in monitor.suspects(&plan).ranked() {
                prop_assert!(!suspect.ln_odds.is_nan());
            }
        }
        // A clean drive on the same clock, if that can run on, or after it was set back.
        let mut plan = plan;
        if sources != [0, 0, 0] {
            unit = named.unit;
            plan = unit.plan().unwrap();
        }
        let gear = unit.gears[place];
        let mut drive = Drive::new(31);
        drive.time_us = if run_on && time_us < u64::MAX / 2 { time_us + 10_000 } else { 1_000 };
        drive.hold(&gear, 2.0 + 2.0, (900.0, 1000.0), |_| 0.0);
        let mut state = None;
        for (step, sample) in drive.samples.iter().enumerate() {
            state = Some(monitor.push(&plan, sample, &mut events));
            if step > 200 {
                prop_assert_eq!(state.map(|state| state.gear), Some(place as i8), "{} {:?}", step, state);
            }
        }
        prop_assert_eq!(state.map(|state| (state.phase, state.used)), Some((ShiftPhase::InGear, true)));
    }
}

#[test]
fn a_unit_without_an_engine_speed() {
    let named = wren();
    let (place, fourth) = gear(&named, "4");
    let mut drive = Drive::new(37);
    drive.hold(&fourth, 4.0, (1000.0, 1050.0), |_| 0.0);
    for sample in &mut drive.samples {
        sample.engine = SpeedReading::MISSING;
    }
    let (events, monitor, state) = run(&named.unit, &drive.samples);
    assert_eq!((monitor.counts().missing, state.gear), (0, place));
    assert!(state.converter_slip_rpm.is_nan());
    assert!(events.iter().all(|event| event.speed == LiveSpeed::None), "{events:?}");
}
