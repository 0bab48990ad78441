//! The train chapter against its sources.

mod support;

use proptest::collection::vec;
use proptest::prelude::*;
use support::trains::{built, train};
use support::vectors;
use trainwright::Error;
use trainwright::judge::Reading;
use trainwright::train::*;

#[test]
fn building_vectors() {
    for name in ["train_new", "train_add_set", "train_add_element"] {
        vectors(name, |row| Ok([built(row.text("train"))?.last.into()]));
    }
}

fn number(fraction: Fraction) -> f64 {
    fraction.value().unwrap_or(f64::INFINITY)
}

/// The output columns of `train_solve.csv` and `train_resolve.csv`.
fn outputs(state: &State) -> [f64; 37] {
    let head = [state.kind as u8, state.mobility, state.redundant].map(f64::from);
    let ratio = [state.ratio.num as f64, state.ratio.den as f64];
    let torques = [state.output_torque, state.case_torque].map(number);
    let mut all = head.into_iter().chain(ratio).chain(torques);
    let shares = state.shares[..8].iter().chain(&state.slips[..8]).chain(&state.speeds[..14]).copied().map(number);
    let mut all = all.by_ref().chain(shares);
    std::array::from_fn(|_| all.next().unwrap())
}

#[test]
fn solve_vectors() {
    vectors("train_solve", |row| {
        let state = train(row.text("train"))?.solve(row.count("closed"))?;
        let published = row.text("published");
        if !published.is_empty() {
            let digits = published.split('.').nth(1).map_or(0, str::len);
            let printed: f64 = published.parse().unwrap();
            let rounding = 0.5 * 10_f64.powi(-(digits as i32)) + 1e-12;
            assert!((number(state.ratio) - printed).abs() <= rounding, "{published}: {:?}", state.ratio);
        }
        Ok(outputs(&state))
    });
}

fn load(row: &support::Row) -> Load {
    match row.text("load") {
        "drive" => Load::Drive,
        "coast" => Load::Coast,
        _ => Load::None,
    }
}

#[test]
fn resolve_vectors() {
    vectors("train_resolve", |row| {
        let state = train(row.text("train"))?.resolve(row.count("closed"), load(row))?;
        let mut all = [f64::from(state.closed)].into_iter().chain(outputs(&state));
        Ok::<[f64; 38], _>(std::array::from_fn(|_| all.next().unwrap()))
    });
}

#[test]
fn planet_speeds_vectors() {
    vectors("train_planet_speeds", |row| {
        let train = train(row.text("train"))?;
        let speeds = train.planet_speeds(&train.solve(row.count("closed"))?, row.count("set") as u8)?;
        Ok([speeds.planet_on_pin, speeds.planet, speeds.planet_2_on_pin, speeds.planet_2].map(number))
    });
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

#[test]
fn losses_vectors() {
    vectors("train_losses", |row| {
        let train = train(row.text("train"))?;
        let mesh = MeshEfficiency { external: row.number("external"), internal: row.number("internal") };
        let losses = train.losses(&train.solve(row.count("closed"))?, mesh, load(row))?;
        let flags = [losses.self_locking, losses.converged].map(f64::from);
        Ok([losses.efficiency, losses.torque_ratio, flags[0], flags[1]])
    });
}

#[test]
fn symptom_vectors() {
    vectors("train_symptom", |row| {
        let commanded = Commanded { closed: row.count("closed"), one_way: 0 };
        let failure = if row.count("failure") == 0 { Failure::Dead } else { Failure::Stuck };
        let symptom = train(row.text("train"))?
            .symptom(commanded, ElementFault { element: row.count("element") as u8, failure })?;
        let [drive, coast] = [symptom.drive, symptom.coast].map(|response| f64::from(response as u8));
        Ok([drive, coast, f64::from(symptom.kind as u8), symptom.ratio.num as f64, symptom.ratio.den as f64])
    });
}

#[test]
fn power_flow_vectors() {
    vectors("train_power_flow", |row| {
        let train = train(row.text("train"))?;
        let flow = train.power_flow(&train.solve(row.count("closed"))?)?;
        let [a, b, c, d, ..] = flow.rolling_power;
        Ok([a, b, c, d, flow.largest])
    });
}

/// Masks of the applied elements + of the one-way clutches that hold.
fn gears(row: &support::Row) -> Vec<Commanded> {
    let mask = |text: &str| text.parse().unwrap();
    let commanded = |text: &str| {
        let (closed, one_way) = text.split_once('+').unwrap();
        Commanded { closed: mask(closed), one_way: mask(one_way) }
    };
    row.text("gears").split(' ').map(commanded).collect()
}

#[test]
fn signature_vectors() {
    vectors("train_signature", |row| {
        let failure = if row.count("failure") == 0 { Failure::Dead } else { Failure::Stuck };
        let fault = ElementFault { element: row.count("element") as u8, failure };
        let found = train(row.text("train"))?.signature(&gears(row), fault)?;
        let Signature { no_drive, no_braking, other_ratio, creeps, brakes, tied_up, .. } = found;
        Ok([no_drive, no_braking, other_ratio, creeps, brakes, tied_up, found.lost()].map(f64::from))
    });
}

const RESPONSES: [Response; 5] =
    [Response::AsCommanded, Response::OtherRatio, Response::NoDrive, Response::Drives, Response::TiedUp];

/// The `seen` column: places in the list of gears, and what was seen there.
fn observations(row: &support::Row) -> Vec<(usize, Observation)> {
    let gears = gears(row);
    let seen = |text: &str| {
        let [place, response, value, u] = text.split(':').collect::<Vec<_>>()[..] else { panic!("{text}") };
        let place = place.parse().unwrap();
        let observation = Observation {
            commanded: gears[place],
            load: Load::Drive,
            seen: RESPONSES[response.parse::<usize>().unwrap()],
            ratio: Reading { value: value.parse().unwrap(), u: u.parse().unwrap() },
        };
        (place, observation)
    };
    row.text("seen").split_whitespace().map(seen).collect()
}

#[test]
fn diagnose_vectors() {
    vectors("train_diagnose", |row| {
        let observations: Vec<_> = observations(row).into_iter().map(|(_, seen)| seen).collect();
        let found = train(row.text("train"))?.diagnose(&observations)?;
        let Suspect { fault, rank, matched, missed, contradicted, agreed } = found.ranked()[0];
        let first = [fault.element, fault.failure as u8, rank, matched, missed, contradicted, agreed].map(f64::from);
        let [element, failure, rank, matched, missed, contradicted, agreed] = first;
        Ok([element, failure, rank, matched, missed, contradicted, agreed, f64::from(found.count)])
    });
}

#[test]
fn next_gear_vectors() {
    vectors("train_next_gear", |row| {
        let train = train(row.text("train"))?;
        let (places, observations): (Vec<_>, Vec<_>) = observations(row).into_iter().unzip();
        let diagnosis = train.diagnose(&observations)?;
        let suspects: Vec<_> =
            diagnosis.ranked().iter().filter(|suspect| suspect.rank == 1).map(|suspect| suspect.fault).collect();
        let tried = TriedGears { drive: places.iter().fold(0, |mask, place| mask | 1 << place), coast: 0 };
        let next = train.next_gear(&gears(row), tried, &suspects)?;
        let load = f64::from(next.load as u8);
        Ok([next.gear.into(), load, next.outcomes.into(), next.tie_ups.into(), next.information_bit])
    });
    vectors("train_seen_ratio", |row| {
        let commanded = Commanded { closed: row.count("closed"), one_way: 0 };
        let ratio = Reading { value: row.number("value"), u: row.number("u") };
        let seen = train(row.text("train"))?.seen_ratio(commanded, ratio)?.seen;
        Ok([f64::from(seen as u8)])
    });
}

#[test]
fn measured_ratio_vectors() {
    vectors("train_counted_ratio", |row| {
        let ratio = counted_ratio(PulseCount {
            input_pulses: row.count("input_pulses"),
            output_pulses: row.count("output_pulses"),
            input_teeth: row.count("input_teeth") as u16,
            output_teeth: row.count("output_teeth") as u16,
        })?;
        Ok([ratio.value, ratio.u])
    });
    vectors("train_timed_ratio", |row| {
        let ratio = timed_ratio(TimedEdges {
            input_s: row.number("input_s"),
            output_s: row.number("output_s"),
            tick_us: row.number("tick_us"),
            input_intervals: row.count("input_intervals"),
            output_intervals: row.count("output_intervals"),
            input_teeth: row.count("input_teeth") as u16,
            output_teeth: row.count("output_teeth") as u16,
        })?;
        Ok([ratio.value, ratio.u])
    });
    vectors("train_fit_ratio", |row| {
        let measured = Reading { value: row.number("value"), u: row.number("u") };
        let candidate = Fraction { num: row.number("num") as i64, den: row.number("den") as i64 };
        let fit = fit_ratio(measured, candidate, row.number("coverage"))?;
        Ok([fit.z, fit.chance, f64::from(fit.excluded)])
    });
}
