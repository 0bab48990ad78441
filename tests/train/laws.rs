//! Laws that every state of every train keeps.

use super::*;

#[test]
fn every_state_of_every_published_train_keeps_the_laws() {
    let trains = published_trains();
    assert!(trains.len() > 18);
    for train in trains {
        for closed in 0..1_u32 << train.elements().len() {
            keeps_the_laws(&train, &train.solve(closed).unwrap());
        }
    }
}

/// A random set over the members, and random elements: seldom a sensible train, always a legal one.
fn any_train() -> impl Strategy<Value = Train> {
    let set = (0..4_u8, 0..24_u8, 0..24_u8, 0..24_u8, 0..24_u8, 10..120_u16, 10..120_u16, 10..60_u16, 10..60_u16);
    let element = (0..4_u8, 0..24_u8, 0..24_u8, any::<bool>());
    (5..=MAX_MEMBERS as u8, vec(set, 0..=6), vec(element, 0..=10)).prop_map(|(members, sets, elements)| {
        let mut train = Train::new(members, 0, 1, 2).unwrap();
        for (kind, a, b, c, d, sun, more, planet, planet_2) in sets {
            let kind = [SetKind::Simple, SetKind::DoublePinion, SetKind::TwoSun, SetKind::Stepped][usize::from(kind)];
            let second_sun = kind == SetKind::TwoSun || kind == SetKind::Stepped && more % 2 == 0;
            let ring = kind != SetKind::Stepped || !second_sun;
            let stepped = kind == SetKind::Stepped;
            let choose =
                |has: bool, teeth: u16, member: u8| if has { (teeth, member % members) } else { (0, NO_MEMBER) };
            let (sun_2, sun_2_at) = choose(second_sun, more, b);
            let (ring, ring_at) = choose(ring, sun + sun_2 + more, c);
            let _legal_or_refused = train.add_set(PlanetarySet {
                kind,
                planets: 0,
                teeth: SetTeeth {
                    sun,
                    sun_2,
                    planet: planet * u16::from(stepped),
                    planet_2: planet_2 * u16::from(stepped),
                    ring,
                },
                joins: SetJoins { sun: a % members, sun_2: sun_2_at, ring: ring_at, carrier: d % members },
            });
        }
        for (kind, first, second, forward) in elements {
            let (first, second) = (first % members, second % members);
            let _legal_or_refused = train.add_element(match kind {
                0 => Element::clutch(first, second),
                1 => Element::brake(first, 2),
                2 => Element::dog(first, second),
                _ => Element::one_way(first, second, if forward { Blocks::Forward } else { Blocks::Reverse }),
            });
        }
        train
    })
}

/// The same train built in another order: sets and elements reversed.
fn reversed(train: &Train) -> Train {
    let mut other = Train::new(train.members(), train.input(), train.output(), train.fixed()).unwrap();
    for &set in train.sets().iter().rev() {
        other.add_set(set).unwrap();
    }
    for &element in train.elements().iter().rev() {
        other.add_element(element).unwrap();
    }
    other
}

/// The same train with input and output exchanged, or with all teeth of a set multiplied.
fn altered(train: &Train, exchange: bool, factor: u16) -> Train {
    let (input, output) = if exchange { (train.output(), train.input()) } else { (train.input(), train.output()) };
    let mut other = Train::new(train.members(), input, output, train.fixed()).unwrap();
    for &set in train.sets() {
        let SetTeeth { sun, sun_2, planet, planet_2, ring } = set.teeth;
        let [sun, sun_2, planet, planet_2, ring] = [sun, sun_2, planet, planet_2, ring].map(|teeth| teeth * factor);
        other.add_set(PlanetarySet { teeth: SetTeeth { sun, sun_2, planet, planet_2, ring }, ..set }).unwrap();
    }
    for &element in train.elements() {
        other.add_element(element).unwrap();
    }
    other
}

fn mirrored(mask: u32, count: usize) -> u32 {
    (0..count).filter(|bit| mask >> bit & 1 == 1).fold(0, |mirrored, bit| mirrored | 1 << (count - 1 - bit))
}

proptest! {
    #[test]
    fn every_state_of_any_train_keeps_the_laws(train in any_train(), mask: u32) {
        let closed = mask & ((1 << train.elements().len()) - 1);
        let state = train.solve(closed);
        prop_assume!(state != Err(Error::Overflow { name: "elimination" }));
        prop_assume!(state != Err(Error::Overflow { name: "fraction" }));
        keeps_the_laws(&train, &state.unwrap());
    }

    #[test]
    fn order_exchange_and_scale_change_nothing(train in any_train(), mask: u32) {
        let count = train.elements().len();
        let closed = mask & ((1 << count) - 1);
        let Ok(state) = train.solve(closed) else { return Ok(()) };
        if let Ok(other) = reversed(&train).solve(mirrored(closed, count)) {
            prop_assert_eq!(other.speeds, state.speeds);
            prop_assert_eq!((other.kind, other.ratio, other.output_torque), (state.kind, state.ratio, state.output_torque));
            prop_assert_eq!((other.mobility, other.redundant), (state.mobility, state.redundant));
            let shares = state.shares[..count].iter().rev().copied();
            prop_assert!(shares.eq(other.shares[..count].iter().copied()));
        }
        if let Ok(other) = altered(&train, true, 1).solve(closed) {
            prop_assert_eq!(other.ratio, state.ratio.inverted());
            prop_assert_eq!(other.mobility, state.mobility);
        }
        prop_assert_eq!(altered(&train, false, 3).solve(closed), Ok(state));
    }

    #[test]
    fn a_resolved_state_contradicts_no_one_way_clutch(train in any_train(), mask: u32, coast: bool) {
        let closed = mask & train.applied_mask();
        let Ok(state) = train.resolve(closed, if coast { Load::Coast } else { Load::Drive }) else { return Ok(()) };
        prop_assert_eq!(state.closed & !train.one_way_mask(), closed);
        let holding = state.closed & train.one_way_mask();
        for (number, element) in train.elements().iter().enumerate() {
            let free = if element.blocks == Blocks::Forward { -1 } else { 1 };
            if holding >> number & 1 == 1 {
                let sign = if coast { -1 } else { 1 };
                prop_assert_eq!(state.shares[number].signum() * sign, free, "holds in the blocked sense only");
            }
        }
    }

    #[test]
    fn a_locked_set_turns_as_one(sun in 10..60_u16, more in 10..60_u16, double: bool) {
        let kind = if double { SetKind::DoublePinion } else { SetKind::Simple };
        let mut train = Train::new(4, 0, 1, 3).unwrap();
        train.add_set(PlanetarySet {
            kind,
            planets: 0,
            teeth: SetTeeth { sun, ring: sun + more, ..SetTeeth::NONE },
            joins: SetJoins { sun: 0, ring: 2, carrier: 1, ..SetJoins::NONE },
        }).unwrap();
        train.add_element(Element::clutch(0, 2)).unwrap();
        let state = train.solve(1).unwrap();
        prop_assert_eq!(state.ratio, Fraction::ONE);
        prop_assert_eq!(&state.speeds[..3], &[Fraction::ONE; 3]);
    }

    #[test]
    fn fractions_agree_with_wide_arithmetic(a: i32, b in 1..i32::MAX, c: i32, d in 1..i32::MAX) {
        let [a, b, c, d] = [a, b, c, d].map(i64::from);
        let (x, y) = (Fraction::new(a, b).unwrap(), Fraction::new(c, -d).unwrap());
        prop_assert_eq!(x.minus(y).unwrap(), Fraction::new(a * d + c * b, b * d).unwrap());
        prop_assert_eq!(x.times(y).unwrap(), Fraction::new(-a * c, b * d).unwrap());
        prop_assert_eq!(x.over(y).unwrap().times(y).unwrap(), if c == 0 { Fraction::OPEN } else { x });
        prop_assert_eq!(x.plus(Fraction::OPEN).unwrap(), Fraction::OPEN);
    }
}
