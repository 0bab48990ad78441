//! Families and orders that cannot be.

use super::*;

#[test]
fn a_family_that_cannot_be_is_refused() {
    let size = |lower, upper| Limits { lower, upper };
    let fit = Joint { kind: JointKind::Running, first: 0, second: 1, limit: 0.1 };
    let own = [Sides { first: size(10.0, 10.01), second: size(10.02, 10.03) }; 2];
    let rule = Machining { joint: 0, part: 0, from: 1, to_fit: 2, finish_mm: size(9.0, 9.1), runout_limit_mm: 0.02 };
    let refused = |parts, variants, joint: Joint, sizes: &[Sides], rule: Machining| {
        let (joints, machining) = ([joint], [rule]);
        let family = Joints {
            parts,
            variants,
            joints: &joints,
            sizes,
            machining: &machining,
            fixed: PartSet::EMPTY,
            alias: PartSet::EMPTY,
        };
        let error = family.checked().err().map(|error| (error.kind(), error.parameter()));
        let mut crossings = [Crossing::BLANK];
        let crossed = family.crossings(0, 1, &mut crossings);
        let set = crossed.and_then(|()| family.close_set(&crossings, 0));
        // What is refused by the check never panics where nobody checks.
        assert!(error.is_some() || set.is_ok());
        error
    };
    let reversed = [Sides { first: size(10.1, 10.0), second: size(10.2, 10.3) }; 2];
    for (found, expected) in [
        (refused(2, 2, fit, &own, rule), None),
        (refused(0, 2, fit, &own, rule), Some(("COUNT", "parts"))),
        (refused(257, 2, fit, &own, rule), Some(("COUNT", "parts"))),
        (refused(2, 1, fit, &own[..1], rule), Some(("COUNT", "variants"))),
        (refused(2, 33, fit, &own, rule), Some(("COUNT", "variants"))),
        (refused(2, 2, fit, &own[..1], rule), Some(("COUNT", "sizes"))),
        (refused(2, 2, fit, &reversed, rule), Some(("REVERSED", "shaft_mm"))),
        (refused(2, 2, Joint { second: 2, ..fit }, &own, rule), Some(("OUT_OF_RANGE", "second"))),
        (refused(2, 2, Joint { second: 0, ..fit }, &own, rule), Some(("INCONSISTENT", "joint"))),
        (refused(2, 2, Joint { limit: f64::NAN, ..fit }, &own, rule), Some(("NOT_FINITE", "limit_mm"))),
        (refused(2, 2, fit, &own, Machining { joint: 1, ..rule }), Some(("OUT_OF_RANGE", "joint"))),
        (refused(2, 2, fit, &own, Machining { part: 5, ..rule }), Some(("INCONSISTENT", "machining"))),
        (refused(2, 2, fit, &own, Machining { finish_mm: size(2.0, 1.0), ..rule }), Some(("REVERSED", "finish_mm"))),
        (
            refused(2, 2, fit, &own, Machining { finish_mm: size(0.0, 1.0), ..rule }),
            Some(("NOT_POSITIVE", "finish_mm")),
        ),
        (
            refused(2, 2, fit, &own, Machining { runout_limit_mm: -1.0, ..rule }),
            Some(("OUT_OF_RANGE", "runout_limit_mm")),
        ),
        (refused(2, 2, Joint { kind: JointKind::Match, ..fit }, &own, rule), Some(("INCONSISTENT", "machining"))),
    ] {
        assert_eq!(found, expected);
    }
}

/// Nothing forces one way or the other: an order says that it gives up, instead of searching forever.
#[test]
fn an_order_with_too_many_ways_is_refused() {
    let parts = 120_u16;
    let joints: Vec<_> = (0..900_u32)
        .map(|place| {
            let first = (place * 7919 % 120) as u16;
            let second = (first + 1 + (place * 104_729 % 119) as u16) % parts;
            Joint { kind: JointKind::Running, first, second, limit: 0.12 }
        })
        .collect();
    // The unit's variant lies between the other two: it goes with either, and they not with one another.
    let sides = [0.05, 0.0, 0.10].map(|more| Sides {
        first: Limits { lower: 10.0 + more, upper: 10.0 + more },
        second: Limits { lower: 10.05 + more, upper: 10.05 + more },
    });
    let sizes: Vec<_> = joints.iter().flat_map(|_| sides).collect();
    let found: Vec<_> = (0..parts).map(|part| 1 + (part % 2) as u8).collect();
    let prices: Vec<_> = (0..parts).map(|part| f64::from(part * 31 % 17 + 1)).collect();
    let family = Joints {
        parts,
        variants: 3,
        joints: &joints,
        sizes: &sizes,
        machining: &[],
        fixed: PartSet::EMPTY,
        alias: PartSet::EMPTY,
    };
    let wanted = vec![AS_FOUND; usize::from(parts)];
    let job = Job {
        unit: 0,
        found: &found,
        wanted: &wanted,
        measured: &[],
        rule: Rule::simple_acceptance(),
        spread: Spread::RECTANGULAR,
        part_prices: &prices,
        machining_prices: &[],
        aim: Aim::CHEAPEST,
    };
    let (mut orders, mut states) = (wanted.clone(), vec![JointState::BLANK; joints.len()]);
    let refused = family.order(&job, &mut orders, &mut states).unwrap_err();
    assert_eq!((refused.kind(), refused.parameter()), ("NO_ANSWER", "order"));
    assert!(refused.to_string().ends_with("ask for fewer parts at a time"));
}
