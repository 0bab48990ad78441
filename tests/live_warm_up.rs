//! A temperature that stands while a cold unit is driven: when its sensor counts as stuck.

use trainwright::live::*;

const STEP_S: f32 = 0.1;
const COLD_C: f32 = 40.0;

/// One gear, whose sensor of the temperature may stand for a minute.
fn unit(warm_up_s: f32) -> LiveUnit {
    let mut gears = [LiveGear::NONE; MAX_LIVE_GEARS];
    gears[0] = LiveGear::new(1, 2.0);
    let speed = SpeedSensor::bus(0.5, 0.0, 1.0, 8000.0).unwrap();
    LiveUnit {
        gears,
        gear_count: 1,
        elements: [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS],
        element_count: 0,
        input: speed,
        output: speed,
        engine: speed,
        limits: LiveLimits {
            standing_rpm: 30.0,
            slip_rpm: 5.0,
            run_length_s: 360_000.0,
            skew_s: 0.0,
            ratio_u_rel: 1e-3,
            settle_s: 0.3,
            follow_s: 2.0,
            flare_rpm: 50.0,
            dip_share: 0.02,
            lockup_slip_rpm: 50.0,
            cold_c: COLD_C,
            hot_c: 120.0,
            warm_up_s,
        },
        sample_s: STEP_S,
    }
}

/// Times at which the sensor counts as stuck, s, in ten minutes with this output speed and temperature.
fn stuck_at_s(output_rpm: fn(f32) -> f32, temp_c: fn(f32) -> f32) -> Vec<f32> {
    let plan = unit(60.0).plan().unwrap();
    let mut monitor = LiveMonitor::new(&plan);
    let mut events = LiveEvents::NONE;
    let mut times = Vec::new();
    for step in 0..6000_u32 {
        let time_s = step as f32 * STEP_S;
        let output = output_rpm(time_s);
        let sample = LiveSample {
            time_us: u64::from(step) * 100_000,
            input: SpeedReading::bus(2.0 * output),
            output: SpeedReading::bus(output),
            temp_c: temp_c(time_s),
            ..LiveSample::EMPTY
        };
        monitor.push(&plan, &sample, &mut events);
        let stuck = |event: &&LiveEvent| event.kind == LiveEventKind::TempStuck;
        times.extend(events.found().iter().filter(stuck).map(|_| time_s));
    }
    times
}

fn close(found: &[f32], expected: &[f32]) {
    let near = found.iter().zip(expected).all(|(found, expected)| (found - expected).abs() < 0.35);
    assert!(found.len() == expected.len() && near, "{found:?}, expected {expected:?}");
}

#[test]
fn the_limit_counts_driving_time_with_one_value() {
    let drives = |_| 1000.0;
    close(&stuck_at_s(drives, |_| 15.0), &[60.0, 120.0, 180.0, 240.0, 300.0, 360.0, 420.0, 480.0, 540.0]);
    // Standing for a hundred seconds out of two hundred.
    let stop_and_go = |time_s: f32| if time_s % 200.0 < 100.0 { 0.0 } else { 1000.0 };
    close(&stuck_at_s(stop_and_go, |_| 15.0), &[160.0, 320.0, 380.0, 540.0]);
}

#[test]
fn a_value_that_moves_or_is_warm_or_missing_is_not_stuck() {
    let drives = |_| 1000.0;
    close(&stuck_at_s(drives, |time_s| 15.0 + (time_s / 50.0).floor()), &[]);
    close(
        &stuck_at_s(drives, |time_s| if time_s < 50.0 { 15.0 } else { 16.0 }),
        &[110.0, 170.0, 230.0, 290.0, 350.0, 410.0, 470.0, 530.0, 590.0],
    );
    close(&stuck_at_s(drives, |_| COLD_C), &[]);
    close(&stuck_at_s(drives, |_| f32::NAN), &[]);
    close(&stuck_at_s(|_| 0.0, |_| 15.0), &[]);
}

#[test]
fn the_limit_is_checked() {
    for wrong in [0.0, 3601.0, f32::NAN] {
        assert_eq!(unit(wrong).plan().unwrap_err().parameter(), "warm_up_s");
    }
}
