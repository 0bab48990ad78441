//! What turns a verdict, and the judgment in words.

use super::*;

fn judged_at(value: f64, u: f64, limits: Limits) -> Result<Judgment, Error> {
    judge(Reading::new(value, u)?, limits, Rule::conformance(0.95)?)
}

#[test]
fn the_value_at_which_a_verdict_turns_is_the_edge_of_acceptance() -> Result<(), Error> {
    let limits = Limits::between(25.0, 75.0)?;
    let zone = judged_at(72.0, 3.0, limits)?.acceptance;
    let search = Limits::between(0.0, 100.0)?;
    let becomes = turning_value(72.0, search, |value| judged_at(value, 3.0, limits))?;
    assert!(!becomes.go_now && (becomes.value - zone.upper).abs() < 1e-12 && becomes.judgment.verdict == Verdict::Go);
    assert!((becomes.change - (zone.upper - 72.0)).abs() < 1e-12);
    let ceases = turning_value(32.0, search, |value| judged_at(value, 3.0, limits))?;
    assert!(ceases.go_now && (ceases.value - zone.lower).abs() < 1e-12 && ceases.judgment.verdict == Verdict::Go);
    Ok(())
}

#[test]
fn an_input_that_turns_nothing_is_refused() -> Result<(), Error> {
    let (at_least, search) = (Limits::at_least(1.0)?, Limits::between(0.0, 2.0)?);
    let none = turning_value(1.0, search, |_| judged_at(1.0, 0.1, at_least));
    assert_eq!(none.map_err(|e| e.kind()), Err("NO_ANSWER"));
    let outside = turning_value(3.0, search, |value| judged_at(value, 0.1, at_least));
    assert_eq!(outside.map_err(|e| (e.kind(), e.parameter())), Err(("OUT_OF_RANGE", "now")));
    let open = turning_value(1.0, at_least, |value| judged_at(value, 0.1, at_least));
    assert_eq!(open.map_err(|e| e.kind()), Err("NOT_FINITE"));
    let failing = turning_value(1.0, search, |_| Err(Error::Missing { name: "pack", why: "it is needed" }));
    assert_eq!(failing.map_err(|e| e.kind()), Err("MISSING"));
    Ok(())
}

#[test]
fn where_an_input_has_no_answer_it_is_not_go() -> Result<(), Error> {
    let (at_least, search) = (Limits::at_least(1.0)?, Limits::between(0.0, 9.0)?);
    let turning = turning_value(2.0, search, |value| {
        if value > 5.0 { Err(Error::NoAnswer { name: "x", why: "none" }) } else { judged_at(value, 0.1, at_least) }
    })?;
    assert!((turning.value - 1.164_485_362_695_147_2).abs() < 1e-12, "the nearer turn, not the end of the answers");
    Ok(())
}

proptest! {
    /// In any case the turn is tight: GO there, not GO a hair farther from GO.
    #[test]
    fn a_turn_is_tight(now in -10.0..10.0f64, u in 0.01..2.0f64, lower in -5.0..5.0f64, slope in prop_oneof![-3.0..-0.1f64, 0.1..3.0f64]) {
        let limits = Limits::at_least(lower).unwrap();
        let at = |x: f64| judged_at(slope * x, u, limits);
        let go_now = at(now).unwrap().verdict == Verdict::Go;
        let turning = turning_value(now, Limits::between(-1000.0, 1000.0).unwrap(), at).unwrap();
        prop_assert_eq!(turning.go_now, go_now);
        prop_assert_eq!(turning.judgment.verdict, Verdict::Go);
        let hair = 1e-9 * slope.signum();
        prop_assert_eq!(at(turning.value + hair).unwrap().verdict, Verdict::Go);
        prop_assert!(at(turning.value - hair).unwrap().verdict != Verdict::Go);
        prop_assert!((turning.value - (lower + 1.644_853_626_951_472_7 * u) / slope).abs() < 1e-9);
    }

    /// The input that `settle` names is the one of the largest contribution, and `settle_by` says the same of it.
    #[test]
    fn settle_is_settle_by_the_largest(value in -5.0..5.0f64, u in prop::collection::vec(0.01..2.0f64, 1..6)) {
        let inputs: Vec<_> = u.iter().map(|&u| Input::new(1.0, u).unwrap()).collect();
        let budget = combine(&inputs).unwrap();
        let judgment = judged_at(value, budget.u, Limits::at_least(0.0).unwrap()).unwrap();
        let largest = settle(&judgment, &budget).unwrap();
        prop_assert_eq!(settle_by(&judgment, &budget, largest.input).unwrap(), largest);
        for position in 0..budget.count {
            let one = settle_by(&judgment, &budget, position).unwrap();
            prop_assert!(!one.enough || largest.enough, "if any input settles it, the largest does");
        }
    }
}

#[test]
fn a_judgment_in_words() -> Result<(), Error> {
    let budget = combine(&[Input::new(7332.43, 0.009)?, Input::new(821.232, 0.02)?, Input::new(1.0, 0.0)?])?;
    let limits = Limits::at_least(0.0)?;
    let held = judge(Reading::new(37.6581, budget.u)?, limits, Rule::stated_chances(0.95, 0.05)?)?;
    let text = explain(&held, Some(&budget), &["friction", "geometry"], "N·m").to_string();
    let expected = "Judged: 37.6581 N·m, standard uncertainty 68.0051 N·m, against at least 0 N·m. The chance that the true value lies there is 71 %: NOT PROVEN. The rule: GO from a chance of 95 %, NO-GO to 5 %.\n\
        With this uncertainty it is GO from 111.858 N·m, 74.2004 N·m more. As it is, the value is decided by a standard uncertainty of 22.8945 N·m or less.\n\
        The uncertainty comes from\n  \
        friction: sensitivity 7332.43, its standard uncertainty 0.009 brings 65.9919 N·m, 94.2 % of the variance; known to 0.00217521 it alone would decide\n  \
        geometry: sensitivity 821.232, its standard uncertainty 0.02 brings 16.4246 N·m, 5.8 % of the variance; it alone cannot decide\n  \
        input 3: taken as exact";
    assert_eq!(text, expected);
    let words = |value: f64, u: f64, limits| -> Result<String, Error> {
        Ok(explain(&judged_at(value, u, limits)?, None, &[], "mm").to_string())
    };
    assert!(
        words(50.0, 3.0, Limits::between(25.0, 75.0)?)?
            .contains("GO for 29.9346 to 70.0654 mm, and this value stays GO up to a standard uncertainty of")
    );
    assert!(words(80.0, 3.0, Limits::between(25.0, 75.0)?)?.contains("it is GO from 70.0654 mm, 9.93456 mm less."));
    assert!(words(1.9, 1.0, Limits::between(0.0, 2.0)?)?.contains("no value is GO: the limits lie too close together"));
    assert!(words(1.0, 0.1, Limits::at_least(1.0)?)?.contains("It lies on its limit: no measurement decides it."));
    assert!(words(1.4, 0.1, Limits::at_least(1.0)?)?.contains("is over 99.9 %: GO"));
    assert!(words(1.0, 0.0, Limits::at_least(1.0)?)?.contains("is 100 %: GO"));
    assert!(words(0.0, 0.1, Limits::at_least(1.0)?)?.contains("is under 0.1 %: NO-GO"));
    Ok(())
}

#[test]
fn a_judgment_as_html_and_json() -> Result<(), Error> {
    let budget = combine(&[Input::new(1.0, 0.1)?])?;
    let judgment = judge(Reading::new(1.1, 0.1)?, Limits::at_least(1.0)?, Rule::conformance(0.95)?)?;
    let judged = explain(&judgment, Some(&budget), &["<b> & \"c\""], "N·m");
    let mut html = String::new();
    judged.write_html(&mut html).unwrap();
    assert!(html.contains("&lt;b&gt; &amp; &quot;c&quot;") && !html.contains("<b>"));
    let mut json = String::new();
    judged.write_json(&mut json).unwrap();
    let found: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(found["verdict"], "NOT PROVEN");
    assert_eq!(found["upper"], serde_json::Value::Null);
    assert_eq!(found["inputs"][0]["name"], "<b> & \"c\"");
    assert_eq!(found["chance"].as_f64().unwrap().to_bits(), judgment.chance.to_bits(), "every digit");
    Ok(())
}
