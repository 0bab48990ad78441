//! Which tooth counts a measured ratio fits: demonstration job J7.

use proptest::prelude::*;
use std::fs;
use trainwright::judge::Reading;
use trainwright::record::{Family, NamedTrain, Record};
use trainwright::train::*;

fn family(variant: &str) -> NamedTrain {
    let path = format!("{}/python/trainwright/demo/family.toml", env!("CARGO_MANIFEST_DIR"));
    Family::from_toml("family.toml", &fs::read_to_string(path).unwrap()).unwrap().train(variant).unwrap()
}

fn ratio(named: &NamedTrain, id: &str) -> Fraction {
    named.train.resolve(named.gear(id).unwrap().closed, Load::Drive).unwrap().ratio
}

/// `J7/*` of the demonstration's expected answers.
#[test]
fn corrib_j7() {
    let (teal, heron) = (family("teal"), family("heron"));
    for (id, output_pulses, expected, u, z_teal, z_heron) in [
        ("4", 5710, 1.7548161120840629, 0.0001364429365473827, -14.223123027102876, -0.7233637674191552),
        ("5", 7245, 1.3830227743271222, 8.865346091347176e-05, 0.4968889247384067, 0.49688892472087426),
    ] {
        let count = PulseCount { input_pulses: 13_360, output_pulses, input_teeth: 40, output_teeth: 30 };
        let measured = counted_ratio(count).unwrap();
        assert!((measured.value - expected).abs() <= 1e-9 * expected);
        assert!((measured.u - u).abs() <= 1e-6 * u);
        let fits = [&teal, &heron].map(|named| fit_ratio(measured, ratio(named, id), 0.99).unwrap());
        assert!((fits[0].z - z_teal).abs() <= 0.001 && (fits[1].z - z_heron).abs() <= 0.001, "{fits:?}");
        assert_eq!(fits.map(|fit| fit.excluded), [id == "4", false]);
    }
    let gears: Vec<_> =
        teal.gears.iter().map(|gear| Commanded { closed: gear.closed, one_way: gear.one_way }).collect();
    let tell = teal.train.gears_that_tell_trains(&heron.train, &gears).unwrap();
    let ids: Vec<_> =
        teal.gears.iter().enumerate().filter(|(i, _)| tell & (1 << i) != 0).map(|(_, gear)| gear.id.as_str()).collect();
    assert_eq!(ids, ["1", "1B", "2", "2B", "4", "7", "R"], "1, 2, 4, 7 and R, with and without engine braking");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]
    /// The stated uncertainty is that of a count with a free phase at the start of the window.
    #[test]
    fn counting_scatters_as_stated(input_hz in 300.0..4000.0, output_hz in 300.0..4000.0) {
        let (mut sum, mut squares, runs) = (0.0, 0.0, 400);
        let (true_ratio, mut u) = (input_hz / output_hz, 0.0);
        for run in 0..runs {
            // Low-discrepancy phases: one for each counter.
            let phase = |step: f64| (f64::from(run) * step).fract();
            let count = |hz: f64, phase: f64| (hz + phase).floor() as u32;
            let count = PulseCount {
                input_pulses: count(input_hz, phase(0.754_877_666)),
                output_pulses: count(output_hz, phase(0.569_840_291)),
                input_teeth: 40,
                output_teeth: 40,
            };
            let measured = counted_ratio(count).unwrap();
            u = measured.u;
            sum += measured.value - true_ratio;
            squares += (measured.value - true_ratio).powi(2);
        }
        let spread = (squares / f64::from(runs)).sqrt();
        // A whole number of pulses in the window hides its phase, half a one shows it most: 0 to 1.22 times the mean u.
        prop_assert!(spread < 1.35 * u, "{spread} {u}");
        prop_assert!((sum / f64::from(runs)).abs() < 0.5 * u);
    }

    #[test]
    fn a_train_never_differs_from_itself(closed in 0_u32..64) {
        let teal = family("teal");
        let gears = [Commanded { closed, one_way: 0 }];
        prop_assert_eq!(teal.train.gears_that_tell_trains(&teal.train, &gears).unwrap(), 0);
    }
}

#[test]
fn wrong_inputs_are_refused() {
    let count = PulseCount { input_pulses: 100, output_pulses: 100, input_teeth: 40, output_teeth: 30 };
    let kind = |count| counted_ratio(count).map_err(|e| e.kind());
    assert_eq!(kind(PulseCount { input_pulses: 0, ..count }), Err("NOT_POSITIVE"));
    assert_eq!(kind(PulseCount { output_teeth: 0, ..count }), Err("NOT_POSITIVE"));
    let edges = TimedEdges {
        input_s: 0.05,
        output_s: 0.05,
        tick_us: 0.5,
        input_intervals: 66,
        output_intervals: 28,
        input_teeth: 40,
        output_teeth: 30,
    };
    let kind = |edges| timed_ratio(edges).map_err(|e| e.kind());
    assert_eq!(kind(TimedEdges { input_s: f64::NAN, ..edges }), Err("NOT_FINITE"));
    assert_eq!(kind(TimedEdges { tick_us: 0.0, ..edges }), Err("NOT_POSITIVE"));
    assert_eq!(kind(TimedEdges { output_intervals: 0, ..edges }), Err("NOT_POSITIVE"));
    let measured = Reading { value: 1.75, u: 0.001 };
    let kind = |measured, candidate, coverage| fit_ratio(measured, candidate, coverage).map_err(|e| e.kind());
    assert_eq!(kind(Reading { u: 0.0, ..measured }, Fraction::ONE, 0.99), Err("NOT_POSITIVE"));
    assert_eq!(kind(measured, Fraction::OPEN, 0.99), Err("MISSING"));
    assert_eq!(kind(measured, Fraction::ONE, 1.0), Err("OUT_OF_RANGE"));
    let teal = family("teal");
    let many = [Commanded { closed: 0, one_way: 0 }; 33];
    assert_eq!(teal.train.gears_that_tell_trains(&teal.train, &many).map_err(|e| e.kind()), Err("COUNT"));
}
