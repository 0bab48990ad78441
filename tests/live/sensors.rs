//! Sensors that are wrong, exchanged, lost or of another kind.

use super::*;

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
