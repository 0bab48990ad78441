//! The train chapter against its sources.

#[path = "../support/mod.rs"]
mod support;

mod laws;
mod vectors;

use proptest::collection::vec;
use proptest::prelude::*;
use support::trains::{built, train};
use support::vectors;
use trainwright::Error;
use trainwright::judge::Reading;
use trainwright::train::*;

fn number(fraction: Fraction) -> f64 {
    fraction.value().unwrap_or(f64::INFINITY)
}

/// Torque from outside on each member per unit input torque, or nothing where it is indeterminate.
fn outside(train: &Train, state: &State, member: u8) -> Fraction {
    let mut torque = Fraction::ZERO;
    for (at, part) in
        [(train.input(), Fraction::ONE), (train.output(), state.output_torque), (train.fixed(), state.case_torque)]
    {
        if at == member {
            torque = torque.plus(part).unwrap();
        }
    }
    torque
}

/// The laws that every solved state keeps.
fn keeps_the_laws(train: &Train, state: &State) {
    // speeds: each row that is known sums to zero, closed elements do not slip
    for row in train.rows() {
        let sum = row.terms().try_fold(Fraction::ZERO, |sum, (member, coefficient)| {
            sum.plus(state.speed(member).times(Fraction { num: coefficient, den: 1 })?)
        });
        if let Ok(sum) = sum {
            assert!(!sum.is_known() || sum == Fraction::ZERO, "{row:?} {sum:?}");
        }
    }
    for (number, element) in train.elements().iter().enumerate() {
        let slip = state.slips[number];
        if state.closed >> number & 1 == 1 {
            assert_eq!(slip, Fraction::ZERO);
        }
        let (first, second) = (state.speed(element.first), state.speed(element.second));
        if let (true, true, Ok(difference)) = (first.is_known(), second.is_known(), first.minus(second)) {
            assert_eq!(slip, difference);
        }
    }
    // torques: every member is in equilibrium where all of its torques are known
    if !state.carries_torque() {
        assert!(state.shares.iter().all(|share| !share.is_known()));
        return;
    }
    let mut whole = state.kind == StateKind::Gear;
    for member in 0..train.members() {
        let mut sum = Ok(outside(train, state, member));
        for (row, multiplier) in train.rows().iter().zip(state.multipliers) {
            for (at, coefficient) in row.terms().filter(|&(at, _)| at == member) {
                assert_eq!(at, member);
                sum = sum.and_then(|sum| sum.plus(multiplier.times(Fraction { num: coefficient, den: 1 })?));
            }
        }
        for (element, share) in train.elements().iter().zip(state.shares) {
            if element.first == member {
                sum = sum.and_then(|sum| sum.plus(share));
            } else if element.second == member {
                sum = sum.and_then(|sum| sum.minus(share));
            }
        }
        match sum {
            Ok(sum) if sum.is_known() => assert_eq!(sum, Fraction::ZERO, "member {member}"),
            _ => whole = false,
        }
    }
    // power: what goes in comes out, exactly
    if state.kind == StateKind::Gear {
        let output = state.output_torque.times(state.speed(train.output())).unwrap();
        assert_eq!(Fraction::ONE.plus(output).unwrap(), Fraction::ZERO);
        assert_eq!(state.output_torque, state.ratio.negated());
    }
    if whole {
        assert_eq!(state.redundant, 0, "a redundant closure leaves some torque open");
    }
}

fn published_trains() -> Vec<Train> {
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/vectors/train_solve.csv")).unwrap();
    let mut texts: Vec<&str> = text.lines().skip(4).filter_map(|line| line.split(',').next()).collect();
    texts.dedup();
    texts.into_iter().filter_map(|text| train(text).ok()).collect()
}

/// An element that lets go while another one closes slips as the speeds of that other gear say: no torque is needed for it.
#[test]
fn slip_of_an_element_is_what_a_neighboring_gear_shows() {
    let mut compared = 0;
    for train in published_trains() {
        let gears: Vec<State> = train.engagements().map(|closed| train.solve(closed).unwrap()).collect();
        for gear in gears.iter().filter(|state| state.kind == StateKind::Gear && state.redundant == 0) {
            let same_but_one = |other: &&State| {
                let swap = Swap::between(gear.closed, other.closed);
                other.kind == StateKind::Gear && swap.is_single() && swap.released != 0 && swap.applied != 0
            };
            for other in gears.iter().filter(same_but_one) {
                let element = Swap::between(gear.closed, other.closed).released.trailing_zeros() as u8;
                let input_slip = Fraction::ONE.minus(gear.ratio.over(other.ratio).unwrap()).unwrap();
                let factor = gear.slip_per_input_slip(element);
                if factor.is_known() && other.slip(element).is_known() {
                    assert_eq!(
                        factor.times(input_slip).unwrap(),
                        other.slip(element),
                        "{element} of {:b}",
                        gear.closed
                    );
                    compared += 1;
                } else {
                    assert_eq!(input_slip, Fraction::ZERO, "an element whose slip does not show changes no ratio");
                }
            }
        }
    }
    assert!(compared > 100, "{compared}");
}

#[test]
fn the_demo_family_has_sixteen_neutrals_ten_gears_and_six_tie_ups() {
    let demo = published_trains()
        .into_iter()
        .find(|train| train.sets()[0].teeth.sun == 50 && train.sets().len() == 4)
        .unwrap();
    let counts = demo.state_counts(Load::None).unwrap();
    assert_eq!(counts, StateCounts { gear: 10, neutral: 16, input_held: 0, output_held: 0, tied_up: 6 });
    assert_eq!(demo.engagements().count(), 32);
    let forbidden: Vec<u32> =
        demo.engagements().filter(|&closed| demo.solve(closed).unwrap().overspeeds(2.0)).collect();
    assert_eq!(forbidden, [0b0_1110], "B2 C1 C2 drives the output at 6.2 times the input");
}

#[test]
fn a_fraction_at_the_edge_of_64_bits_is_refused_not_wrapped() {
    let overflow = Err(Error::Overflow { name: "fraction" });
    assert_eq!(Fraction::new(i64::MIN, 1), overflow);
    assert_eq!(Fraction::new(1, i64::MIN), overflow);
    assert_eq!(Fraction::new(i64::MIN, i64::MIN), Ok(Fraction::ONE));
    assert_eq!(Fraction::new(i64::MIN, 2), Ok(Fraction { num: i64::MIN / 2, den: 1 }));
    let large = Fraction { num: i64::MAX, den: 2 };
    assert_eq!(large.times(large), overflow);
    assert_eq!(large.plus(Fraction { num: i64::MAX, den: 4 }), overflow);
    assert_eq!(large.over(large), Ok(Fraction::ONE));
    assert_eq!(Fraction::new(3, 0), Ok(Fraction::OPEN));
}

/// Sets one behind the other, each with its ring in the case and its carrier driving the next sun.
fn chain(teeth: impl IntoIterator<Item = (u16, u16)>) -> Train {
    let mut train = Train::new(10, 0, 8, 9).unwrap();
    for (stage, (sun, ring)) in (0..).zip(teeth) {
        let set = PlanetarySet {
            kind: SetKind::Simple,
            planets: 0,
            teeth: SetTeeth { sun, ring, ..SetTeeth::NONE },
            joins: SetJoins { sun: stage, ring: 9, carrier: stage + 1, ..SetJoins::NONE },
        };
        train.add_set(set).unwrap();
    }
    train
}

#[test]
fn eight_sets_in_a_chain_multiply_their_ratios_exactly() {
    let teeth = [(23, 97), (29, 101), (31, 89), (37, 83), (41, 107), (43, 91), (47, 109), (53, 103)];
    let product = teeth
        .into_iter()
        .fold((1_i64, 1_i64), |(num, den), (sun, ring)| (num * i64::from(sun + ring), den * i64::from(sun)));
    let state = chain(teeth).solve(0).unwrap();
    assert_eq!(Ok(state.ratio), Fraction::new(product.0, product.1));
    assert!(state.ratio.num > 1 << 50, "{:?}: the wide path is taken", state.ratio);
    keeps_the_laws(&chain(teeth), &state);
}

#[test]
fn a_train_too_large_for_64_bits_is_refused() {
    let train = chain([4999, 5003, 5009, 5011, 5021, 5023, 5039, 5051].map(|sun| (sun, 9973 - sun % 7)));
    assert!(matches!(train.solve(0), Err(Error::Overflow { .. })));
}

#[test]
fn full_trains_refuse_more() {
    let mut train = Train::new(24, 0, 1, 2).unwrap();
    let simple = PlanetarySet {
        kind: SetKind::Simple,
        planets: 0,
        teeth: SetTeeth { sun: 30, ring: 72, ..SetTeeth::NONE },
        joins: SetJoins { sun: 0, ring: 3, carrier: 4, ..SetJoins::NONE },
    };
    let two_sun = PlanetarySet {
        kind: SetKind::TwoSun,
        teeth: SetTeeth { sun_2: 36, ..simple.teeth },
        joins: SetJoins { sun_2: 5, ..simple.joins },
        ..simple
    };
    for number in 0..5 {
        assert_eq!(train.add_set(two_sun), Ok(number));
    }
    let before = train;
    assert!(matches!(train.add_set(simple), Err(Error::Count { .. })));
    assert_eq!(train, before, "a refused set leaves the train as it was");
    for number in 0..16 {
        assert_eq!(train.add_element(Element::clutch(0, 3)), Ok(number));
    }
    assert!(matches!(train.add_element(Element::clutch(0, 3)), Err(Error::Count { .. })));
}

#[test]
fn a_swap_names_what_changes() {
    assert_eq!(Swap::between(0b0011, 0b0101), Swap { released: 0b0010, applied: 0b0100 });
    assert!(Swap::between(0b0011, 0b0101).is_single());
    assert!(!Swap::between(0b0011, 0b1100).is_single());
}

#[test]
fn a_mask_beyond_the_elements_and_a_set_beyond_the_sets_are_refused() {
    let train = train("4 0 1 3 / simple 30 - 21 - 72 @ 0 - 2 1 / brake 2 3").unwrap();
    assert!(matches!(train.solve(0b10), Err(Error::Inconsistent { name: "closed", .. })));
    assert!(matches!(train.solve(u32::MAX), Err(Error::Inconsistent { name: "closed", .. })));
    assert!(matches!(train.resolve(0b10, Load::Drive), Err(Error::Inconsistent { name: "closed", .. })));
    let state = train.solve(1).unwrap();
    assert!(matches!(train.planet_speeds(&state, 1), Err(Error::OutOfRange { name: "set", .. })));
    assert_eq!([state.speed(200), state.slip(200), state.share(200)], [Fraction::OPEN; 3]);
    assert!(!train.solve(0).unwrap().overspeeds(0.0), "neutral has no output speed");
    assert!(state.overspeeds(f64::NAN), "a limit that is not a number lets nothing pass");
    assert!(state.overspeeds(-1.0));
    assert_eq!(train.next_engagement(0), Some(1));
    assert_eq!(train.next_engagement(1), None);
}
