//! The judge chapter against its sources.

#[path = "../support/mod.rs"]
mod support;

mod random;
mod turning;
mod vectors;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::judge::*;

#[test]
fn readings_from_what_is_known_of_the_instrument() -> Result<(), Error> {
    assert!((Reading::triangular(1.0, 0.6)?.u - 0.6 / 6f64.sqrt()).abs() < 1e-16);
    assert!((Reading::arcsine(19.9, 0.5)?.u - 0.35).abs() < 0.005, "JCGM 100:2008, H.1.3.4: ±0.5 °C cyclic is 0.35 °C");
    assert!((Reading::quantized(2000.0, 0.5)?.u - 0.5 / 12f64.sqrt()).abs() < 1e-15);
    assert!((Reading::relative(-840.0, 0.02)?.u - 16.8).abs() < 1e-12);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(Reading::exact(bad).map_err(|e| e.kind()), Err("NOT_FINITE"));
        assert_eq!(Reading::rectangular(0.0, bad).map_err(|e| e.kind()), Err("NOT_FINITE"));
        assert_eq!(Reading::of_class(0.0, bad, 1.6).map_err(|e| e.kind()), Err("NOT_FINITE"));
        assert_eq!(mean_of(&[1.0, bad]).map_err(|e| e.kind()), Err("NOT_FINITE"));
    }
    assert_eq!(Reading::triangular(0.0, -1.0).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    assert_eq!(Reading::arcsine(0.0, -1.0).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    assert_eq!(Reading::quantized(0.0, -1.0).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    assert_eq!(Reading::relative(0.0, -1.0).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    assert_eq!(Reading::of_class(0.0, 0.0, 1.6).map_err(|e| e.kind()), Err("NOT_POSITIVE"));
    assert_eq!(Reading::of_class(0.0, 2500.0, 101.0).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    Ok(())
}

/// JCGM 100:2008, 4.4.3 and table 1 (from memory): twenty temperatures, mean 100.14 °C, s = 1.49 °C, u = 0.33 °C.
#[test]
fn mean_of_the_guides_twenty_temperatures() -> Result<(), Error> {
    let temperatures_c = [
        96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11,
        101.20, 101.57, 101.84, 102.36, 102.72,
    ];
    let mean = mean_of(&temperatures_c)?;
    assert!((mean.reading.value - 100.14).abs() < 0.005 + 1e-9, "{mean:?}");
    assert!((mean.deviation - 1.49).abs() < 0.005, "{mean:?}");
    assert!((mean.reading.u - 0.33).abs() < 0.005, "{mean:?}");
    assert!((mean.freedom - 19.0).abs() < 1e-15);
    assert_eq!(mean_of(&[1.0]).map_err(|e| e.kind()), Err("COUNT"));
    Ok(())
}

/// JCGM 100:2008, H.2 (from memory): resistance, reactance and impedance from five simultaneous readings each of voltage,
/// current and phase. The guide prints 0.295 for the reactance, as the spread of the five computed reactances gives
/// (0.29549, its approach 2); to first order it is 0.29559, so there the last digit differs by its rounding.
#[test]
fn the_guides_correlated_example() -> Result<(), Error> {
    let sets = [
        [5.007, 4.994, 5.005, 4.990, 4.999],
        [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3],
        [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
    ];
    let [v, i, phi] = sets.map(|set| mean_of(&set).unwrap());
    let r = |a: usize, b: usize| {
        let (a, b) = ((sets[a], mean_of(&sets[a]).unwrap()), (sets[b], mean_of(&sets[b]).unwrap()));
        let products = a.0.iter().zip(b.0).map(|(x, y)| (x - a.1.reading.value) * (y - b.1.reading.value));
        products.sum::<f64>() / 4.0 / (a.1.deviation * b.1.deviation)
    };
    assert!((r(0, 1) + 0.36).abs() < 0.005 && (r(0, 2) - 0.86).abs() < 0.005 && (r(1, 2) + 0.65).abs() < 0.005);
    let correlation = [1.0, r(0, 1), r(0, 2), r(0, 1), 1.0, r(1, 2), r(0, 2), r(1, 2), 1.0];
    let combined = |by_v: f64, by_i: f64, by_phi: f64| {
        let inputs = [(by_v, v), (by_i, i), (by_phi, phi)].map(|(c, mean)| Input::new(c, mean.reading.u).unwrap());
        combine_correlated(&inputs, &correlation).unwrap()
    };
    let [v, i, phi] = [v, i, phi].map(|mean| mean.reading.value);
    let (cos, sin) = (phi.cos(), phi.sin());
    let resistance = combined(cos / i, -v * cos / (i * i), -v * sin / i);
    let reactance = combined(sin / i, -v * sin / (i * i), v * cos / i);
    let impedance = combined(1.0 / i, -v / (i * i), 0.0);
    for (value, u, published, published_u) in [
        (v / i * cos, resistance.u, 127.732, 0.071),
        (v / i * sin, reactance.u, 219.847, 0.2956),
        (v / i, impedance.u, 254.260, 0.236),
    ] {
        assert!((value - published).abs() <= 0.0005, "{value}, published {published}");
        assert!((u - published_u).abs() <= 0.0005, "{u}, published {published_u}");
    }
    assert!((resistance.share.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    Ok(())
}

#[test]
fn a_wrong_correlation_is_refused() -> Result<(), Error> {
    let two = [Input::new(1.0, 1.0)?, Input::new(1.0, 1.0)?];
    let kind = |inputs: &[Input], r: &[f64]| combine_correlated(inputs, r).map_err(|e| e.kind());
    assert_eq!(kind(&two, &[1.0, 0.0, 0.0]), Err("COUNT"));
    assert_eq!(kind(&[], &[]), Err("COUNT"));
    assert_eq!(kind(&two, &[1.0, 0.5, 0.4, 1.0]), Err("INCONSISTENT"));
    assert_eq!(kind(&two, &[0.9, 0.5, 0.5, 1.0]), Err("INCONSISTENT"));
    assert_eq!(kind(&two, &[1.0, 1.5, 1.5, 1.0]), Err("OUT_OF_RANGE"));
    assert_eq!(kind(&two, &[1.0, f64::NAN, f64::NAN, 1.0]), Err("NOT_FINITE"));
    let three = [Input::new(1.0, 1.0)?; 3];
    let impossible = [1.0, -0.9, -0.9, -0.9, 1.0, -0.9, -0.9, -0.9, 1.0];
    assert_eq!(kind(&three, &impossible), Err("INCONSISTENT"));
    let guessed = Input { freedom: 3.0, ..two[0] };
    assert_eq!(kind(&[guessed, two[1]], &[1.0, 0.0, 0.0, 1.0]), Err("NO_ANSWER"));
    assert!((combine_correlated(&two, &[1.0, -1.0, -1.0, 1.0])?.u).abs() < 1e-15, "what one adds the other takes");
    Ok(())
}

#[test]
fn wrong_inputs_of_a_combination_are_refused() {
    let kind = |inputs: &[Input]| combine(inputs).map_err(|e| e.kind());
    assert_eq!(kind(&[]), Err("COUNT"));
    let fine = Input { sensitivity: 1.0, u: 1.0, freedom: f64::INFINITY };
    assert_eq!(kind(&[fine; MAX_INPUTS + 1]), Err("COUNT"));
    assert_eq!(kind(&[Input { sensitivity: f64::NAN, ..fine }]), Err("NOT_FINITE"));
    assert_eq!(kind(&[Input { u: -1.0, ..fine }]), Err("OUT_OF_RANGE"));
    assert_eq!(kind(&[Input { freedom: 0.5, ..fine }]), Err("OUT_OF_RANGE"));
    assert_eq!(kind(&[Input { sensitivity: 1e200, u: 1e200, ..fine }]), Err("NOT_FINITE"));
}

#[test]
fn a_small_uncertainty_of_a_large_value_is_not_lost_in_rounding() -> Result<(), Error> {
    for u in [1e-3, 1e-6, 1e-9, 1e-12, 1e-300] {
        let square = propagate([Reading::new(65_536.0, u)?], |[x]| Ok(x * x))?;
        assert!((square.reading.u / u / 131_072.0 - 1.0).abs() < 1e-6, "{u}: {square:?}");
    }
    Ok(())
}

#[test]
fn a_formula_without_an_answer_nearby_gives_no_answer() -> Result<(), Error> {
    let refuses_below_one =
        |[x]: [f64; 1]| if x < 1.0 { Err(Error::NotPositive { name: "x", value: x }) } else { Ok(x) };
    assert!(propagate([Reading::new(2.0, 0.5)?], refuses_below_one).is_ok());
    assert!(propagate([Reading::new(1.2, 0.5)?], refuses_below_one).is_err());
    assert_eq!(propagate([Reading::new(1.0, 0.1)?], |_| Ok(f64::NAN)).map_err(|e| e.kind()), Err("NOT_FINITE"));
    assert_eq!(propagate([], |[]| Ok(1.0)).map_err(|e| e.kind()), Err("COUNT"));
    Ok(())
}

/// Demonstration job J4: a shim from readings of gap and gasket; `expected.json` of the scenario.
#[test]
fn corrib_j4_shims() -> Result<(), Error> {
    let gap = Reading::new(2.153, 0.010)?;
    let gasket = Reading::new(0.0, 0.028)?;
    let limits = Limits::between(0.20, 0.60)?;
    let expected = [
        (1.55, 0.603, 0.4627263918887873),
        (1.70, 0.453, 0.9999977279378596),
        (1.85, 0.303, 0.9993420324262065),
        (2.00, 0.153, 0.0713391658644218),
    ];
    for (shim_mm, play_mm, chance) in expected {
        let play =
            propagate([gap, gasket, Reading::new(shim_mm, 0.012)?], |[gap, gasket, shim]| Ok(gap + gasket - shim))?;
        assert!((play.reading.value - play_mm).abs() < 1e-12);
        assert!((play.reading.u - 0.0321).abs() < 5e-5);
        assert!((chance_inside(play.reading, limits)? - chance).abs() < 1e-9 * chance.max(1e-3));
        assert_eq!(play.budget.largest, 1, "the gasket is what to measure");
    }
    Ok(())
}

#[test]
fn limits_too_close_for_the_instrument_can_never_be_go() -> Result<(), Error> {
    let rule = Rule::conformance(0.95)?;
    let narrow = judge(Reading::new(0.0, 1.0)?, Limits::between(-1.9, 1.9)?, rule)?;
    assert_eq!(narrow.verdict, Verdict::NotProven);
    assert!(narrow.acceptance.lower > narrow.acceptance.upper && narrow.value_to_go.is_infinite());
    assert!(1.9 - 1.6448 * narrow.reading.u > 0.0, "a one-sided guard alone would have called it GO");
    assert!((narrow.u_to_decide - 1.9 / 1.959963984540054).abs() < 1e-12);
    let hair = judge(Reading::new(0.0, 1.0)?, Limits::between(-0.01, 0.01)?, rule)?;
    assert_eq!(hair.verdict, Verdict::NotProven, "inside the limits is never a proven NO-GO");
    Ok(())
}

#[test]
fn the_measurement_that_settles_it() -> Result<(), Error> {
    let margin = propagate([Reading::new(0.112, 0.009)?, Reading::new(1.0, 0.02)?], |[mu, g]| Ok(mu * g / 0.107))?;
    let rule = Rule::stated_chances(0.95, 0.05)?;
    let at_least = |lower| Limits::at_least(lower);
    let open = judge(margin.reading, at_least(1.0)?, rule)?;
    assert_eq!(open.verdict, Verdict::NotProven);
    let next = settle(&open, &margin.budget)?;
    assert!((next.u_now - 0.009).abs() < 1e-12);
    let again = propagate([Reading::new(0.112, next.u_needed * 0.999)?, Reading::new(1.0, 0.02)?], |[mu, g]| {
        Ok(mu * g / 0.107)
    })?;
    assert_eq!(judge(again.reading, at_least(1.0)?, rule)?.verdict, Verdict::Go);
    let on_the_limit = judge(margin.reading, at_least(margin.reading.value)?, rule)?;
    let hopeless = settle(&on_the_limit, &margin.budget)?;
    assert!(!hopeless.enough && hopeless.u_needed.abs() < 1e-15);
    let other = judge(Reading::new(1.0, 0.5)?, at_least(1.0)?, rule)?;
    assert_eq!(settle(&other, &margin.budget).map_err(|e| e.kind()), Err("INCONSISTENT"));
    let certain = combine(&[Input::new(1.0, 0.0)?])?;
    let exact = judge(Reading::exact(2.0)?, at_least(1.0)?, rule)?;
    assert_eq!(settle(&exact, &certain).map_err(|e| e.kind()), Err("NO_ANSWER"));
    Ok(())
}

#[test]
fn rules_out_of_range_are_refused() -> Result<(), Error> {
    for p in [0.5, 1.0, 0.3, -1.0] {
        assert_eq!(Rule::conformance(p).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    }
    assert_eq!(Rule::stated_chances(0.95, 0.5).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    assert_eq!(Rule::stated_chances(f64::NAN, 0.05).map_err(|e| e.kind()), Err("NOT_FINITE"));
    assert_eq!(Rule::expanded_guard(-1.0).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    assert_eq!(Limits::between(2.0, 1.0).map_err(|e| e.kind()), Err("REVERSED"));
    assert_eq!(Limits::at_least(f64::NAN).map_err(|e| e.kind()), Err("NOT_FINITE"));
    assert_eq!(Limits::at_most(f64::INFINITY).map_err(|e| e.kind()), Err("NOT_FINITE"));
    Ok(())
}

fn any_reading() -> impl Strategy<Value = Reading> {
    (-50.0..50.0, 0.01..20.0).prop_map(|(value, u)| Reading { value, u })
}

fn any_limits() -> impl Strategy<Value = Limits> {
    prop_oneof![
        (-30.0..30.0, 0.0..40.0).prop_map(|(lower, width)| Limits { lower, upper: lower + width }),
        (-30.0..30.0).prop_map(|lower| Limits { lower, upper: f64::INFINITY }),
        (-30.0..30.0).prop_map(|upper| Limits { lower: f64::NEG_INFINITY, upper }),
    ]
}
