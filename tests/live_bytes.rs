//! Any bytes at all, taken for samples: the monitor stays in a defined state, and finds the gear again afterwards.

#[path = "support/live/mod.rs"]
mod live_support;

use live_support::drive::Drive;
use live_support::random::Random;
use live_support::sensors::{KINDS, Kind, Sensors};
use live_support::watch::{Setting, unit};
use proptest::prelude::*;
use trainwright::live::*;

const SETTING: Setting = Setting { slip_rpm: 10.0, run_length_s: 36_000.0 };

/// Reads samples from bytes; past their end everything is 0.
struct Bytes<'a>(std::slice::Iter<'a, u8>);

impl Bytes<'_> {
    fn byte(&mut self) -> u8 {
        self.0.next().copied().unwrap_or(0)
    }

    fn word(&mut self) -> u32 {
        u32::from_le_bytes([self.byte(), self.byte(), self.byte(), self.byte()])
    }

    /// Any float there is, or one that a shaft could have.
    fn float(&mut self) -> f32 {
        let kind = self.byte();
        let word = self.word();
        match kind {
            0..100 => (word % 4000) as f32 / 2.0,
            100..200 => f32::from_bits(word),
            200..210 => f32::NAN,
            210..220 => f32::INFINITY,
            220..230 => -f32::INFINITY,
            230..240 => f32::from_bits(word & 0x007F_FFFF),
            240..250 => f32::MAX,
            _ => -0.0,
        }
    }

    fn reading(&mut self) -> SpeedReading {
        let state = match self.byte() {
            0..200 => ReadingState::Value,
            200..215 => ReadingState::Missing,
            215..230 => ReadingState::NotAvailable,
            230..245 => ReadingState::SensorError,
            _ => ReadingState::Reserved,
        };
        let small = self.byte() < 200;
        let (pulses, ticks) = (self.word(), self.word());
        let (pulses, ticks) = if small { (pulses % 20, ticks % 20_000) } else { (pulses, ticks) };
        SpeedReading { rpm: self.float(), pulses, ticks, state }
    }

    fn sample(&mut self, time_us: &mut u64) -> LiveSample {
        *time_us = match self.byte() {
            0..200 => time_us.wrapping_add(10_000),
            200..210 => *time_us,
            210..220 => time_us.wrapping_sub(u64::from(self.word())),
            220..235 => time_us.wrapping_add(u64::from(self.word())),
            235..245 => u64::from(self.word()) << 32 | u64::from(self.word()),
            _ => time_us.wrapping_add(1),
        };
        LiveSample {
            time_us: *time_us,
            input: self.reading(),
            output: self.reading(),
            engine: self.reading(),
            pressure_kpa: self.float(),
            temp_c: self.float(),
            engine_torque_nm: self.float(),
            commanded: self.byte() as i8,
            lockup: self.byte() as i8,
        }
    }
}

/// Bytes of one sample, at most.
const SAMPLE_BYTES: usize = 72;

fn number_or_unknown(value: f32) -> bool {
    !value.is_infinite()
}

fn check(plan: &LivePlan, gears: u8, monitor: &LiveMonitor, state: &LiveState, events: &LiveEvents) {
    assert!((-3..gears as i8).contains(&state.gear), "{state:?}");
    for value in [state.ratio, state.ratio_u, state.slip_rpm, state.slip_u_rpm, state.converter_slip_rpm] {
        assert!(number_or_unknown(value), "{state:?}");
    }
    assert!([state.ratio_u, state.slip_u_rpm].iter().all(|u| u.is_nan() || *u >= 0.0), "{state:?}");
    assert!(events.count as usize <= MAX_LIVE_EVENTS && events.found().len() == events.count as usize);
    for event in events.found() {
        assert!(event.at_us <= event.found_us, "{event:?}");
        assert!((-3..gears as i8).contains(&event.gear) && (-3..gears as i8).contains(&event.other_gear), "{event:?}");
        assert!(number_or_unknown(event.value) && number_or_unknown(event.u), "{event:?}");
    }
    let chances = monitor.gear_chances(plan);
    assert!(chances.iter().all(|chance| (0.0..=1.0).contains(chance)), "{chances:?}");
    assert!((chances.iter().sum::<f32>() - 1.0).abs() < 1e-4, "{chances:?}");
}

/// Drives on after whatever came before: the monitor must see the gears again.
fn finds_the_gear_again(plan: &LivePlan, monitor: &mut LiveMonitor, kind: Kind) {
    let (mut right, mut judged) = (0, 0);
    let trace: Vec<f64> = (0..40).map(|second| f64::from(second).min(25.0)).collect();
    let mut sensors = Sensors::new(kind, 1);
    let mut events = LiveEvents::NONE;
    for truth in Drive::new(&trace, 1) {
        let Some(sample) = sensors.read(&truth) else { continue };
        let state = monitor.push(plan, &sample, &mut events);
        if truth.time_s > 30.0 {
            judged += 1;
            right += i32::from(truth.in_gear.map(|place| place as i8) == Some(state.gear));
        }
    }
    assert!(judged > 100 && right > judged * 9 / 10, "{}: {right} of {judged}", kind.name());
}

fn samples(bytes: &[u8], count: usize, kind: Kind) {
    let unit = unit(kind, SETTING);
    let plan = unit.plan().unwrap();
    let mut monitor = LiveMonitor::new(&plan);
    let mut events = LiveEvents::NONE;
    let mut bytes = Bytes(bytes.iter());
    let mut time_us = 0;
    for _ in 0..count {
        let sample = bytes.sample(&mut time_us);
        let state = monitor.push(&plan, &sample, &mut events);
        check(&plan, unit.gear_count, &monitor, &state, &events);
    }
    let counts = monitor.counts();
    assert_eq!(counts.samples as usize, count);
    assert!(counts.used <= counts.samples);
    finds_the_gear_again(&plan, &mut monitor, kind);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn any_bytes_leave_a_defined_state(
        bytes in proptest::collection::vec(any::<u8>(), 0..SAMPLE_BYTES * 60),
        kind in 0..KINDS.len(),
    ) {
        samples(&bytes, bytes.len() / SAMPLE_BYTES + 1, KINDS[kind]);
    }
}

#[test]
fn long_nonsense_leaves_a_defined_state() {
    for kind in KINDS {
        let mut random = Random::new(kind as u64);
        let bytes: Vec<u8> = (0..SAMPLE_BYTES * 20_000).map(|_| random.bits() as u8).collect();
        samples(&bytes, 20_000, kind);
    }
}

#[test]
fn a_new_monitor_finds_the_gear() {
    for kind in KINDS {
        let plan = unit(kind, SETTING).plan().unwrap();
        let mut monitor = LiveMonitor::new(&plan);
        finds_the_gear_again(&plan, &mut monitor, kind);
    }
}
