//! Random readings, limits and rules.

use super::*;

fn any_rule() -> impl Strategy<Value = Rule> {
    prop_oneof![
        Just(Rule::simple_acceptance()),
        (0.51..0.999).prop_map(|p| Rule::conformance(p).unwrap()),
        (0.5..4.0).prop_map(|k| Rule::expanded_guard(k).unwrap()),
        (0.51..0.999, 0.001..0.49).prop_map(|(go, no_go)| Rule::stated_chances(go, no_go).unwrap()),
    ]
}

proptest! {
    #[test]
    fn a_stated_chance_is_kept(reading in any_reading(), limits in any_limits(), go in 0.51..0.999, no_go in 0.001..0.49) {
        let outcome = judge(reading, limits, Rule::stated_chances(go, no_go).unwrap()).unwrap();
        match outcome.verdict {
            Verdict::Go => prop_assert!(outcome.chance >= go - 1e-12),
            Verdict::NoGo => prop_assert!(outcome.chance <= no_go + 1e-12 && !limits.holds(reading.value)),
            Verdict::NotProven => prop_assert!(
                (outcome.chance < go + 1e-12 && outcome.chance > no_go - 1e-12) || limits.holds(reading.value)
            ),
        }
    }

    #[test]
    fn the_value_that_would_be_go_is_go(reading in any_reading(), limits in any_limits(), rule in any_rule()) {
        let outcome = judge(reading, limits, rule).unwrap();
        if outcome.value_to_go.is_finite() {
            let there = Reading { value: outcome.value_to_go, ..reading };
            prop_assert_eq!(judge(there, limits, rule).unwrap().verdict, Verdict::Go);
        }
    }

    #[test]
    fn the_uncertainty_that_would_decide_decides(reading in any_reading(), limits in any_limits(), rule in any_rule()) {
        let u = judge(reading, limits, rule).unwrap().u_to_decide;
        let at = |u: f64| judge(Reading { u, ..reading }, limits, rule).unwrap().verdict;
        if u.is_finite() && u > 1e-6 {
            prop_assert_ne!(at(u * (1.0 - 1e-9)), Verdict::NotProven);
            prop_assert_eq!(at(u * (1.0 + 1e-9)), Verdict::NotProven);
        } else if u.is_infinite() {
            prop_assert_ne!(at(reading.u), Verdict::NotProven);
        }
    }

    #[test]
    fn mirrored_readings_mirror_the_decision(reading in any_reading(), limits in any_limits(), rule in any_rule()) {
        let mirrored = judge(
            Reading { value: -reading.value, ..reading },
            Limits { lower: -limits.upper, upper: -limits.lower },
            rule,
        ).unwrap();
        let outcome = judge(reading, limits, rule).unwrap();
        prop_assert!((outcome.chance - mirrored.chance).abs() < 1e-14);
        prop_assert!((outcome.u_to_decide - mirrored.u_to_decide).abs() <= 1e-12 * outcome.u_to_decide || outcome.u_to_decide.is_infinite());
    }

    #[test]
    fn quantiles_undo_their_distributions(p in 1e-12..0.999_999_9, freedom in 1.0..200.0) {
        prop_assert!((normal_cdf(normal_quantile(p).unwrap()).unwrap() - p).abs() <= 1e-13 * p.min(1.0 - p).max(1e-3));
        prop_assert!((student_cdf(student_quantile(p, freedom).unwrap(), freedom).unwrap() - p).abs() <= 1e-12);
    }

    #[test]
    fn shares_add_up_and_order_does_not_matter(terms in prop::collection::vec((-10.0..10.0, 0.0..5.0), 1..MAX_INPUTS)) {
        let mut inputs: Vec<_> = terms.iter().map(|&(c, u)| Input::new(c, u).unwrap()).collect();
        let budget = combine(&inputs).unwrap();
        let plain = terms.iter().map(|(c, u)| (c * u) * (c * u)).sum::<f64>().sqrt();
        prop_assert!((budget.u - plain).abs() <= 1e-13 * plain);
        if budget.u > 0.0 {
            prop_assert!((budget.share.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        }
        inputs.reverse();
        prop_assert!((combine(&inputs).unwrap().u - budget.u).abs() <= 1e-13 * plain);
    }

    #[test]
    fn any_bits_give_an_answer_or_an_error(bits in prop::array::uniform8(any::<u64>()), kind in -2..6) {
        let [value, u, lower, upper, go, no_go, k, freedom] = bits.map(f64::from_bits);
        let rule = Rule { go, no_go, k, kind: RuleKind(kind) };
        if let Ok(outcome) = judge(Reading { value, u }, Limits { lower, upper }, rule) {
            prop_assert!((0.0..=1.0).contains(&outcome.chance));
        }
        let _ = combine(&[Input { sensitivity: value, u, freedom }]);
        let _ = expand(Reading { value, u }, freedom, go);
    }
}
