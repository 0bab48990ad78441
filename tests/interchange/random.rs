//! Random families: every answer against trying everything.

use super::*;

/// A family of whole numbers, so that what holds can be said again in other words.
#[derive(Clone, Debug)]
struct Random {
    parts: u16,
    variants: u8,
    joints: Vec<(u8, u16, u16, Vec<[i32; 2]>)>,
    machining: Vec<(usize, bool, u32, u32, i32)>,
    fixed: Vec<u16>,
    prices: Vec<f64>,
    machining_prices: Vec<f64>,
}

const FIT: u8 = 0;
const COVER: u8 = 1;

impl Random {
    /// A fit has a play of 10 to 20 µm by its variants, and a limit of 35. Sizes in mm, all in steps of 10 µm.
    fn sides(kind: u8, [one, other]: [i32; 2]) -> Sides {
        let size = |lower: f64, upper: f64| Limits { lower, upper };
        let step = |value: i32| 50.0 + f64::from(value) / 100.0;
        match kind {
            FIT => Sides { first: size(step(one), step(one)), second: size(step(one + 1), step(one + 2)) },
            COVER => Sides { first: size(0.0, step(one)), second: size(0.0, step(one + other)) },
            _ => Sides { first: size(one.into(), one.into()), second: size(one.into(), one.into()) },
        }
    }

    /// The same in whole numbers: a shaft of size a has 0 to 10, 10 to 20 or 20 to 30 µm in a bore of a − 1, a or a + 1, interference
    /// below and 30 to 40 µm above; a land of length a needs a surface as long.
    fn holds(kind: u8, first: [i32; 2], second: [i32; 2]) -> bool {
        match kind {
            FIT => (second[0] - first[0]).abs() <= 1,
            COVER => second[0] + second[1] >= first[0],
            _ => first[0] == second[0],
        }
    }

    fn with<T>(&self, run: impl Fn(&Joints<'_>) -> T) -> T {
        let joints = self.joints.iter().map(|(kind, first, second, _)| Joint {
            kind: [JointKind::Running, JointKind::Cover, JointKind::Match][usize::from(*kind)],
            first: *first,
            second: *second,
            limit: [0.035, 1.0, 0.0][usize::from(*kind)],
        });
        let joints: Vec<_> = joints.collect();
        let sizes =
            self.joints.iter().flat_map(|(kind, _, _, sizes)| sizes.iter().map(|size| Self::sides(*kind, *size)));
        let sizes: Vec<_> = sizes.collect();
        let machining = self.machining.iter().map(|&(joint, shaft, from, to_fit, finish)| {
            let sides = Self::sides(FIT, [finish, 0]);
            Machining {
                joint: joint as u16,
                part: if shaft { self.joints[joint].1 } else { self.joints[joint].2 },
                from,
                to_fit,
                finish_mm: if shaft { sides.first } else { sides.second },
                runout_limit_mm: 0.03,
            }
        });
        let machining: Vec<_> = machining.collect();
        let family = Joints {
            parts: self.parts,
            variants: self.variants,
            joints: &joints,
            sizes: &sizes,
            machining: &machining,
            fixed: PartSet::of(&self.fixed),
            alias: PartSet::EMPTY,
        };
        run(&family.checked().unwrap())
    }

    /// What is left to pay at a joint between these variants: nothing, the cheapest machining, or that it cannot be.
    fn to_pay(&self, joint: usize, first_of: u8, second_of: u8) -> Option<(u16, f64)> {
        let (kind, _, _, sizes) = &self.joints[joint];
        let (first, second) = (sizes[usize::from(first_of)], sizes[usize::from(second_of)]);
        if first_of == second_of || Self::holds(*kind, first, second) {
            return Some((0, 0.0));
        }
        let rules = self.machining.iter().zip(&self.machining_prices).filter(|(rule, _)| {
            let &(of, shaft, from, to_fit, finish) = *rule;
            let (machined, mate) = if shaft { (first_of, second_of) } else { (second_of, first_of) };
            let fits = if shaft { Self::holds(FIT, [finish, 0], second) } else { Self::holds(FIT, first, [finish, 0]) };
            of == joint && from >> machined & 1 == 1 && to_fit >> mate & 1 == 1 && fits
        });
        rules.map(|(_, price)| (1, *price)).min_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// Machinings and their price of an assembly, or that it cannot be.
    fn assembled(&self, variants: &[u8]) -> Option<(u16, f64)> {
        (0..self.joints.len()).try_fold((0, 0.0), |(count, price), joint| {
            let (_, first, second, _) = &self.joints[joint];
            let of = |part: u16| variants[usize::from(part)];
            let (more, cost) = self.to_pay(joint, of(*first), of(*second))?;
            Some((count + more, price + cost))
        })
    }
}

fn random(most_parts: u16) -> impl Strategy<Value = Random> {
    (2..=most_parts, 2..=3_u8).prop_flat_map(|(parts, variants)| {
        let sizes = prop::collection::vec([0..4_i32, 0..2_i32], usize::from(variants));
        let joint = (0..3_u8, 0..parts, 1..parts, sizes)
            .prop_map(move |(kind, first, step, sizes)| (kind, first, (first + step) % parts, sizes));
        let masks = 1..1_u32 << variants;
        let rule = (any::<prop::sample::Index>(), any::<bool>(), masks.clone(), masks, 0..4_i32);
        (
            prop::collection::vec(joint, 0..=usize::from(parts) * 2),
            prop::collection::vec(rule, 0..6),
            prop::collection::vec(0..parts, 0..2),
            prop::collection::vec(1..100_u8, usize::from(parts)),
            prop::collection::vec(1..200_u8, 6),
        )
            .prop_map(move |(joints, rules, fixed, prices, rule_prices)| {
                let fits: Vec<_> = (0..joints.len()).filter(|joint| joints[*joint].0 == FIT).collect();
                let rules = if fits.is_empty() { vec![] } else { rules };
                let machining: Vec<_> = rules
                    .into_iter()
                    .map(|(joint, shaft, from, to_fit, finish)| (*joint.get(&fits), shaft, from, to_fit, finish))
                    .collect();
                let machining_prices = rule_prices.into_iter().take(machining.len()).map(f64::from).collect();
                let prices = prices.into_iter().map(f64::from).collect();
                Random { parts, variants, joints, machining, fixed, prices, machining_prices }
            })
    })
}

fn job<'a>(random: &'a Random, unit: u8, found: &'a [u8], wanted: &'a [u8], aim: Aim) -> Job<'a> {
    Job {
        unit,
        found,
        wanted,
        measured: &[],
        rule: Rule::conformance(0.95).unwrap(),
        spread: Spread::RECTANGULAR,
        part_prices: &random.prices,
        machining_prices: &random.machining_prices,
        aim,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, ..ProptestConfig::default() })]

    /// The closure is in every set that goes together, so it is the smallest; and it is never where no set is.
    #[test]
    fn the_closure_is_the_smallest_set(random in random(10)) {
        random.with(|family| {
            let (from, into) = (1, 0);
            let mut crossings = vec![Crossing::BLANK; random.joints.len()];
            family.crossings(from, into, &mut crossings).unwrap();
            for part in (0..random.parts).filter(|part| !random.fixed.contains(part)) {
                let set = family.close_set(&crossings, part).unwrap();
                let mut good = vec![];
                for bits in 0..1_u32 << random.parts {
                    let has = |part: u16| bits >> part & 1 == 1;
                    if !has(part) || random.fixed.iter().any(|part| has(*part)) {
                        continue;
                    }
                    let variants: Vec<_> = (0..random.parts).map(|part| if has(part) { from } else { into }).collect();
                    if let Some((machined, price)) = random.assembled(&variants) {
                        let parts: f64 = (0..random.parts).filter(|part| has(*part)).map(|part| random.prices[usize::from(part)]).sum();
                        good.push((bits, machined, price + parts));
                    }
                }
                assert_eq!(set.unmended > 0, good.is_empty());
                let bits: u32 = set.parts.parts().map(|part| 1 << part).sum();
                assert!(good.iter().all(|(other, ..)| other & bits == bits), "a set that goes together lacks a part of the closure");
                let itself = good.iter().find(|(other, ..)| *other == bits);
                assert_eq!(itself.is_some(), set.unmended == 0);
                let answer = family.answer(&crossings, part, from, into).unwrap();
                if let Some((_, machined, price)) = itself {
                    assert_eq!(set.machined, *machined);
                    assert!(u32::from(set.size) == bits.count_ones());
                    let wanted = match (set.size, set.machined, answer.joints) {
                        (.., 0) => Relation::NotKnown,
                        (1, 0, _) => Relation::Singly,
                        (1, ..) => Relation::Machined,
                        _ => Relation::Set,
                    };
                    assert_eq!(answer.relation, wanted);
                    // The closure takes the first permitted machining of a joint, so its price may be above the least, not below.
                    let own = family.price(&set, &crossings, &random.prices, &random.machining_prices).unwrap();
                    assert!(own.total >= *price && own.unpriced == 0);
                } else {
                    assert_eq!(answer.relation, Relation::Never);
                }

                let count = usize::from(random.parts);
                let (found, mut wanted) = (vec![into; count], vec![AS_FOUND; count]);
                wanted[usize::from(part)] = from;
                for aim in [Aim::FEWEST, Aim::CHEAPEST] {
                    let (mut parts, mut states) = (vec![AS_FOUND; count], vec![JointState::BLANK; random.joints.len()]);
                    let order = family.order(&job(&random, into, &found, &wanted, aim), &mut parts, &mut states).unwrap();
                    assert_eq!(order.possible, !good.is_empty());
                    if good.is_empty() {
                        continue;
                    }
                    let least = if aim == Aim::FEWEST {
                        assert_eq!(parts.iter().filter(|part| **part != AS_FOUND).count(), usize::from(set.size));
                        (f64::from(order.parts), f64::from(set.size))
                    } else {
                        assert!(order.cheapest);
                        (order.price.total, good.iter().map(|set| set.2).fold(f64::INFINITY, f64::min))
                    };
                    assert!((least.0 - least.1).abs() < 1e-9, "{least:?}");
                }
            }
        });
    }

    /// With any parts found and any wanted, the order is the least of all that can be tried.
    #[test]
    fn the_order_is_the_least_of_all(
        random in random(6),
        unit in 0..2_u8,
        found in prop::collection::vec(0..3_u8, 6),
        wanted in prop::collection::vec(prop::option::weighted(0.3, 0..3_u8), 6),
        cheapest in any::<bool>(),
    ) {
        random.with(|family| {
            let count = usize::from(random.parts);
            let found: Vec<_> = found.iter().take(count).map(|variant| variant % random.variants).collect();
            let wanted: Vec<_> = (0..random.parts)
                .map(|part| match wanted[usize::from(part)] {
                    Some(variant) if !random.fixed.contains(&part) => variant % random.variants,
                    _ => AS_FOUND,
                })
                .collect();
            let case = random.fixed.iter().map(|part| found[usize::from(*part)]).collect::<Vec<_>>();
            let asked = |variant: &u8| *variant == unit || wanted.contains(variant) || case.contains(variant);
            let may = (0..random.variants).filter(asked);
            let may: Vec<_> = core::iter::once(AS_FOUND).chain(may).collect();
            let mut least: Option<(f64, u16, u16)> = None;
            for mut code in 0..may.len().pow(count as u32) {
                let mut orders = vec![AS_FOUND; count];
                for order in &mut orders {
                    *order = may[code % may.len()];
                    code /= may.len();
                }
                let right = (0..count).all(|part| {
                    (wanted[part] == AS_FOUND || wanted[part] == orders[part])
                        && (orders[part] == AS_FOUND || !random.fixed.contains(&(part as u16)))
                });
                let variants: Vec<_> = orders.iter().zip(&found).map(|(order, found)| if *order == AS_FOUND { *found } else { *order }).collect();
                let Some((machined, price)) = random.assembled(&variants).filter(|_| right) else { continue };
                let ordered: Vec<_> = (0..count).filter(|part| orders[*part] != AS_FOUND).collect();
                let price = price + ordered.iter().map(|part| random.prices[*part]).sum::<f64>();
                let cost = (if cheapest { price } else { 0.0 }, ordered.len() as u16, machined);
                if least.is_none_or(|least| cost < least) {
                    least = Some(cost);
                }
            }
            let aim = if cheapest { Aim::CHEAPEST } else { Aim::FEWEST };
            let (mut parts, mut states) = (vec![AS_FOUND; count], vec![JointState::BLANK; random.joints.len()]);
            let order = family.order(&job(&random, unit, &found, &wanted, aim), &mut parts, &mut states).unwrap();
            assert_eq!(order.possible, least.is_some());
            if let Some((price, ordered, machined)) = least {
                assert_eq!((order.parts, order.machined, order.stopped_at), (ordered, machined, NO_JOINT));
                assert!(!cheapest || (order.price.total - price).abs() < 1e-9);
            }
        });
    }
}
