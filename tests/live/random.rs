//! Any stream of samples leaves the monitor defined.

use super::*;

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
