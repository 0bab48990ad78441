//! Interchange: the demonstration's sets, and every answer against trying every set.

use std::collections::BTreeSet;
use std::fs;

use approx::assert_abs_diff_eq;
use proptest::prelude::*;
use trainwright::Error;
use trainwright::fit::Spread;
use trainwright::interchange::*;
use trainwright::judge::{Limits, Reading, Rule, Verdict};
use trainwright::record::{Family, NamedJoints, Record};

fn demo() -> NamedJoints {
    let path = format!("{}/python/trainwright/demo/family.toml", env!("CARGO_MANIFEST_DIR"));
    Family::from_toml("family.toml", &fs::read_to_string(path).unwrap()).unwrap().joints().unwrap()
}

/// The parts of a set by name, and what is to be done at its edge: `machine:<rule>` or `NEVER:<joint>`.
fn told(named: &NamedJoints, part: &str, from: &str, into: &str) -> (Vec<String>, Vec<String>, MatchedSet) {
    let joints = named.joints();
    let mut crossings = vec![Crossing::BLANK; named.joints.len()];
    joints.crossings(named.variant(from).unwrap(), named.variant(into).unwrap(), &mut crossings).unwrap();
    let set = joints.close_set(&crossings, named.part(part).unwrap()).unwrap();
    let mut parts: Vec<_> = set.parts.parts().map(|part| named.parts[usize::from(part)].clone()).collect();
    parts.sort();
    let edge = set.edge(&named.joints, &crossings).map(|(joint, passage)| match passage.machining {
        NO_MACHINING => format!("NEVER:{}", named.names[usize::from(joint)]),
        rule => format!("machine:{}", named.rules[usize::from(rule)].id),
    });
    let edge = edge.collect();
    (parts, edge, set)
}

fn words(text: &str) -> Vec<String> {
    text.split_whitespace().map(str::to_owned).collect()
}

/// `fit/*`, `cover/*`, `close/*`, `smallest/*` and `J2/*` of the demonstration's expected answers.
#[test]
fn the_demonstration_gives_the_expected_sets() {
    let named = demo();
    let joints = named.joints();
    let table = fs::read_to_string(format!("{}/tests/interchange_demo.csv", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let mut rows = 0;
    for line in table.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let [what, name, first, second, answer] = line.splitn(5, ',').collect::<Vec<_>>()[..] else { panic!("{line}") };
        let of = |name: &str| named.variant(name).unwrap();
        rows += 1;
        match what {
            "fit" => {
                let meeting = joints.meeting(named.joint(name).unwrap(), of(first), of(second)).unwrap();
                let [least, most, class] = answer.split(' ').collect::<Vec<_>>()[..] else { panic!("{line}") };
                assert_abs_diff_eq!(meeting.clearance_mm.lower, least.parse::<f64>().unwrap(), epsilon = 1e-9);
                assert_abs_diff_eq!(meeting.clearance_mm.upper, most.parse::<f64>().unwrap(), epsilon = 1e-9);
                assert_eq!(meeting.outcome.to_string(), class.replace("inside", "holds"), "{line}");
            }
            "cover" => {
                let meeting = joints.meeting(named.joint(name).unwrap(), of(second), of(first)).unwrap();
                assert_abs_diff_eq!(meeting.share, answer.parse::<f64>().unwrap(), epsilon = 1e-9);
            }
            "close" | "tokens" => {
                let [parts, notes, ..] = answer.split('|').collect::<Vec<_>>()[..] else { panic!("{line}") };
                let (set, edge, _) = told(&named, name, first, second);
                assert_eq!((set, edge), (words(parts), words(notes)), "{line}");
            }
            "smallest" => {
                let (set, _, closed) = told(&named, name, first, second);
                let smallest = if closed.unmended > 0 { words("never") } else { set };
                assert_eq!(smallest, words(answer), "{line}");
            }
            "alias" => {
                for part in words(answer) {
                    assert_eq!(answer_of(&named, &part, "teal", "heron").relation, Relation::Singly);
                }
            }
            _ => panic!("{line}"),
        }
    }
    assert_eq!(rows, 54 + 18 + 108 + 4 + 8 + 1);
}

fn answer_of(named: &NamedJoints, part: &str, from: &str, into: &str) -> Answer {
    let joints = named.joints();
    let (from, into) = (named.variant(from).unwrap(), named.variant(into).unwrap());
    let mut crossings = vec![Crossing::BLANK; named.joints.len()];
    joints.crossings(from, into, &mut crossings).unwrap();
    joints.answer(&crossings, named.part(part).unwrap(), from, into).unwrap()
}

#[test]
fn the_words_of_the_demonstration() {
    let named = demo();
    for (part, from, into, relation, alone) in [
        ("output_shaft", "heron", "wren", Relation::Singly, JointOutcome::Holds),
        ("output_shaft", "teal", "wren", Relation::Never, JointOutcome::Loose),
        ("output_shaft", "wren", "teal", Relation::Set, JointOutcome::Blocked),
        ("reaction_sleeve", "wren", "teal", Relation::Singly, JointOutcome::Holds),
        ("reaction_sleeve", "teal", "wren", Relation::Set, JointOutcome::Uncovered),
        ("park_gear", "heron", "wren", Relation::Set, JointOutcome::Unequal),
        ("sump_filter", "teal", "wren", Relation::Singly, JointOutcome::Holds),
        ("sump", "teal", "wren", Relation::NotKnown, JointOutcome::Holds),
        ("extension", "heron", "wren", Relation::NotKnown, JointOutcome::Holds),
        ("case", "teal", "wren", Relation::Fixed, JointOutcome::Blocked),
    ] {
        let answer = answer_of(&named, part, from, into);
        assert_eq!((answer.relation, answer.alone), (relation, alone), "{part} {from} {into}: {answer:?}");
    }
}

#[test]
fn the_whole_matrix_is_the_answers_one_by_one() {
    let named = demo();
    let joints = named.joints();
    let mut out = vec![Answer::BLANK; named.parts.len() * 6];
    let mut crossings = vec![Crossing::BLANK; named.joints.len()];
    joints.matrix(&mut crossings, &mut out).unwrap();
    for answer in &out {
        let name = |place: u8| named.variants[usize::from(place)].as_str();
        let part = &named.parts[usize::from(answer.part)];
        assert_eq!(*answer, answer_of(&named, part, name(answer.from), name(answer.into)));
    }
    let asked: BTreeSet<_> = out.iter().map(|answer| (answer.part, answer.from, answer.into)).collect();
    assert_eq!(asked.len(), out.len());
    assert!(matches!(joints.matrix(&mut crossings, &mut out[1..]), Err(Error::Count { name: "out", .. })));
}

// ---- orders

/// A job on the demonstration's family: the unit's variant, foreign parts found, parts wanted.
struct Bench {
    named: NamedJoints,
    unit: u8,
    found: Vec<u8>,
    wanted: Vec<u8>,
    measured: Vec<MeasuredSide>,
    prices: Vec<f64>,
}

impl Bench {
    fn new(unit: &str) -> Self {
        let named = demo();
        let unit = named.variant(unit).unwrap();
        let count = named.parts.len();
        let prices = named.part_prices.clone();
        Self { named, unit, found: vec![unit; count], wanted: vec![AS_FOUND; count], measured: vec![], prices }
    }

    fn found(mut self, part: &str, variant: &str) -> Self {
        let part = usize::from(self.named.part(part).unwrap());
        self.found[part] = self.named.variant(variant).unwrap();
        self
    }

    fn wanted(mut self, part: &str, variant: &str) -> Self {
        let part = usize::from(self.named.part(part).unwrap());
        self.wanted[part] = self.named.variant(variant).unwrap();
        self
    }

    fn measured(mut self, joint: &str, part: &str, value: f64, u: f64) -> Self {
        let (joint, part) = (self.named.joint(joint).unwrap(), self.named.part(part).unwrap());
        self.measured.push(MeasuredSide { joint, part, size_mm: Reading { value, u } });
        self
    }

    fn order(&self, aim: Aim) -> Result<(Order, Vec<String>, Vec<JointState>), Error> {
        let job = Job {
            unit: self.unit,
            found: &self.found,
            wanted: &self.wanted,
            measured: &self.measured,
            rule: Rule::stated_chances(0.95, 0.05).unwrap(),
            spread: Spread::RECTANGULAR,
            part_prices: &self.prices,
            machining_prices: &self.named.machining_prices,
            aim,
        };
        let mut parts = vec![AS_FOUND; self.named.parts.len()];
        let mut states = vec![JointState::BLANK; self.named.joints.len()];
        let order = self.named.joints().order(&job, &mut parts, &mut states)?;
        let said = (self.named.parts.iter().zip(&parts)).filter(|(_, variant)| **variant != AS_FOUND);
        let said = said.map(|(part, variant)| format!("{} {part}", self.named.variants[usize::from(*variant)]));
        Ok((order, said.collect(), states))
    }

    fn state(&self, states: &[JointState], joint: &str) -> JointState {
        states[usize::from(self.named.joint(joint).unwrap())]
    }
}

/// `J1/*`: a wren unit with a teal output shaft went together and runs loose.
#[test]
fn a_foreign_part_on_the_bench_is_the_one_to_exchange() {
    let bench = Bench::new("wren").found("output_shaft", "teal");
    let (order, parts, _) = bench.order(Aim::FEWEST).unwrap();
    assert_eq!(parts, ["wren output_shaft"]);
    assert_eq!((order.possible, order.parts, order.price.total), (true, 1, 210.0));

    let journal = "output_journal_in_support";
    let bench = bench
        .measured(journal, "output_shaft", 43.988, 0.002_02)
        .measured(journal, "rear_support", 44.407, 0.004_015)
        .measured("output_pilot_in_carrier", "output_shaft", 31.989, 0.002_02)
        .measured("output_pilot_in_carrier", "output_carrier", 32.281, 0.004_015);
    let (_, parts, states) = bench.order(Aim::FEWEST).unwrap();
    assert_eq!(parts, ["wren output_shaft"]);
    let new = bench.state(&states, journal);
    assert!(new.measured && new.verdict == Verdict::Go, "a new wren shaft in the bore as measured: {new:?}");
    assert_abs_diff_eq!(new.clearance_mm.value, 44.407 - 44.3375, epsilon = 1e-9);
}

#[test]
fn what_is_there_already_is_not_ordered_again() {
    let wanted = |bench: Bench| bench.wanted("output_shaft", "wren").order(Aim::FEWEST).unwrap().1;
    assert_eq!(wanted(Bench::new("teal")), ["wren output_shaft", "wren rear_support", "wren output_carrier"]);
    let half = Bench::new("teal").found("rear_support", "wren");
    assert_eq!(wanted(half), ["wren output_shaft", "wren output_carrier"]);
    let two = Bench::new("heron").wanted("reaction_sleeve", "teal").wanted("park_gear", "wren");
    let (_, parts, _) = two.order(Aim::FEWEST).unwrap();
    assert_eq!(parts, ["teal c1_drum", "teal reaction_sleeve", "wren park_gear", "wren park_pawl"]);
}

#[test]
fn a_foreign_case_stays_and_the_rest_follows_it() {
    // A mixed rebuild: a wren unit in a teal case. The register must be turned, or the support is teal and then all behind it.
    let (order, parts, states) = Bench::new("wren").found("case", "teal").order(Aim::FEWEST).unwrap();
    assert_eq!((parts.len(), order.machined, order.possible), (0, 1, true));
    assert_eq!(states.iter().filter(|state| state.machining != NO_MACHINING).count(), 1);
    // In a wren case a teal support cannot be made good: the case brings the wren parts with it.
    let (order, parts, _) = Bench::new("teal").found("case", "wren").order(Aim::FEWEST).unwrap();
    assert_eq!(parts, ["wren output_shaft", "wren rear_support", "wren output_carrier"]);
    assert!(order.possible && order.machined == 0);
    // Nor can it where the teal parts are wanted.
    let reverse = Bench::new("teal").found("case", "wren").wanted("rear_support", "teal");
    let (order, ..) = reverse.order(Aim::FEWEST).unwrap();
    assert!(!order.possible);
    assert_eq!(reverse.named.names[usize::from(order.stopped_at)], "support_register_in_case");
}

#[test]
fn a_worn_part_of_the_right_variant_is_exchanged_for_a_new_one() {
    let journal = "output_journal_in_support";
    let worn = |bore_mm| Bench::new("wren").measured(journal, "rear_support", bore_mm, 0.004);
    assert_eq!(worn(44.620).order(Aim::FEWEST).unwrap().1, ["wren rear_support"]);
    let (order, parts, states) = worn(44.477).order(Aim::FEWEST).unwrap();
    assert_eq!((parts.len(), order.not_proven), (0, 1));
    let state = worn(44.477).state(&states, journal);
    assert_eq!((state.verdict, state.outcome), (Verdict::NotProven, JointOutcome::MayBeLoose));
}

#[test]
fn a_price_that_is_not_known_is_said() {
    let mut bench = Bench::new("teal").wanted("output_shaft", "wren");
    let support = usize::from(bench.named.part("rear_support").unwrap());
    bench.prices[support] = f64::NAN;
    let (order, ..) = bench.order(Aim::CHEAPEST).unwrap();
    assert_eq!((order.price.total, order.price.unpriced, order.cheapest), (580.0, 1, false));
    bench.prices[support] = 145.0;
    let (order, ..) = bench.order(Aim::CHEAPEST).unwrap();
    assert_eq!((order.price.total, order.price.unpriced, order.cheapest), (725.0, 0, true));
    bench.prices[support] = -1.0;
    assert!(matches!(bench.order(Aim::CHEAPEST), Err(Error::OutOfRange { name: "part_prices", .. })));
}

/// Two ways to machine one joint, of which only one has a price: the other may be cheaper.
#[test]
fn a_machining_without_price_may_be_the_cheaper_one() {
    let size = |lower, upper| Limits { lower, upper };
    let rule =
        Machining { joint: 0, part: 0, from: 0b10, to_fit: 0b01, finish_mm: size(19.95, 19.97), runout_limit_mm: 0.02 };
    let family = Joints {
        parts: 2,
        variants: 2,
        joints: &[Joint { kind: JointKind::Locating, first: 0, second: 1, limit: 0.1 }],
        sizes: &[
            Sides { first: size(19.95, 19.97), second: size(20.00, 20.02) },
            Sides { first: size(20.95, 20.97), second: size(21.00, 21.02) },
        ],
        machining: &[rule, rule],
        fixed: PartSet::of(&[1]),
        alias: PartSet::EMPTY,
    };
    for (prices, aim, chosen, total, cheapest) in [
        ([50.0, 40.0], Aim::CHEAPEST, 1, 50.0, true),
        ([50.0, f64::NAN], Aim::CHEAPEST, 0, 60.0, false),
        ([f64::NAN, 40.0], Aim::CHEAPEST, 1, 50.0, false),
        ([f64::NAN, 40.0], Aim::FEWEST, 1, 50.0, false),
    ] {
        let job = Job {
            unit: 0,
            found: &[0, 0],
            wanted: &[1, AS_FOUND],
            measured: &[],
            rule: Rule::simple_acceptance(),
            spread: Spread::RECTANGULAR,
            part_prices: &[10.0, 0.0],
            machining_prices: &prices,
            aim,
        };
        let (mut parts, mut states) = ([AS_FOUND; 2], [JointState::BLANK]);
        let order = family.order(&job, &mut parts, &mut states).unwrap();
        assert_eq!((order.price.total, order.price.unpriced, order.cheapest), (total, 0, cheapest), "{prices:?}");
        assert_eq!(states[0].machining, chosen, "{prices:?}");
    }
}

// ---- random families, against trying everything

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

// ---- vectors

mod support;
use support::{Row, vectors};

fn numbers(text: &str) -> Vec<f64> {
    text.split_whitespace().map(|word| word.parse().unwrap_or_else(|_| panic!("{word:?} is not a number"))).collect()
}

fn limits(numbers: &[f64]) -> Limits {
    Limits { lower: numbers[0], upper: numbers[1] }
}

fn sides(numbers: &[f64]) -> Sides {
    Sides { first: limits(numbers), second: limits(&numbers[2..]) }
}

const KINDS: [(&str, JointKind); 5] = [
    ("running", JointKind::Running),
    ("locating", JointKind::Locating),
    ("press", JointKind::Press),
    ("cover", JointKind::Cover),
    ("match", JointKind::Match),
];

fn kind(word: &str) -> JointKind {
    KINDS.iter().find(|(known, _)| *known == word).unwrap_or_else(|| panic!("{word}")).1
}

/// A family as the rows write it: joints as `kind first second limit sizes...`, a match with one number for each variant;
/// machining as `joint part from to_fit lower upper run-out`.
struct Written {
    parts: u16,
    variants: u8,
    fixed: PartSet,
    alias: PartSet,
    joints: Vec<Joint>,
    sizes: Vec<Sides>,
    machining: Vec<Machining>,
}

impl Written {
    fn of(row: &Row) -> Self {
        let set = |column| PartSet::of(&numbers(row.text(column)).iter().map(|part| *part as u16).collect::<Vec<_>>());
        let (mut joints, mut sizes) = (vec![], vec![]);
        for text in row.text("joints").split(';') {
            let (word, rest) = text.trim().split_once(' ').unwrap();
            let rest = numbers(rest);
            let of = Joint { kind: kind(word), first: rest[0] as u16, second: rest[1] as u16, limit: rest[2] };
            if of.kind == JointKind::Match {
                sizes.extend(rest[3..].iter().map(|value| sides(&[*value; 4])));
            } else {
                sizes.extend(rest[3..].chunks(4).map(sides));
            }
            joints.push(of);
        }
        let rules = row.text("machining").split(';').map(numbers).filter(|rule| !rule.is_empty());
        let machining = rules.map(|rule| Machining {
            joint: rule[0] as u16,
            part: rule[1] as u16,
            from: rule[2] as u32,
            to_fit: rule[3] as u32,
            finish_mm: limits(&rule[4..]),
            runout_limit_mm: rule[6],
        });
        Self {
            parts: row.count("parts") as u16,
            variants: row.count("variants") as u8,
            fixed: set("fixed"),
            alias: set("alias"),
            joints,
            sizes,
            machining: machining.collect(),
        }
    }

    fn joints(&self) -> Result<Joints<'_>, Error> {
        let Self { parts, variants, fixed, alias, .. } = *self;
        let (joints, sizes, machining) = (&self.joints, &self.sizes, &self.machining);
        Joints { parts, variants, joints, sizes, machining, fixed, alias }.checked()
    }

    fn crossed(&self, row: &Row) -> Result<(Joints<'_>, Vec<Crossing>), Error> {
        let joints = self.joints()?;
        let mut crossings = vec![Crossing::BLANK; self.joints.len()];
        joints.crossings(row.count("from") as u8, row.count("into") as u8, &mut crossings)?;
        Ok((joints, crossings))
    }
}

/// `-` for as found.
fn variants(text: &str) -> Vec<u8> {
    text.split_whitespace().map(|word| if word == "-" { AS_FOUND } else { word.parse().unwrap() }).collect()
}

#[test]
fn vectors_of_joints() {
    vectors("interchange_cover_share", |row| {
        let land_mm = Limits { lower: row.number("land_from_mm"), upper: row.number("land_to_mm") };
        let surface_mm = Limits { lower: row.number("surface_from_mm"), upper: row.number("surface_to_mm") };
        Ok([cover_share(land_mm, surface_mm)?])
    });
    vectors("interchange_meet", |row| {
        let joint = Joint { kind: kind(row.text("kind")), first: 0, second: 1, limit: row.number("limit") };
        let from = |column| sides(&numbers(row.text(column)));
        let Meeting { outcome, clearance_mm, wanted_mm, share } =
            joint.meet(from("first_from"), from("second_from"))?;
        let [one, two] = [clearance_mm, wanted_mm];
        Ok([f64::from(outcome as u8), one.lower, one.upper, two.lower, two.upper, share])
    });
}

#[test]
fn vectors_of_sets() {
    let part = |row: &Row| row.count("part") as u16;
    vectors("interchange_close_set", |row| {
        let written = Written::of(row);
        let (joints, crossings) = written.crossed(row)?;
        let set = joints.close_set(&crossings, part(row))?;
        Ok([f64::from(set.size), set.machined.into(), set.unmended.into(), set.parts.words[0] as f64])
    });
    vectors("interchange_answer", |row| {
        let written = Written::of(row);
        let (joints, crossings) = written.crossed(row)?;
        let answer = joints.answer(&crossings, part(row), row.count("from") as u8, row.count("into") as u8)?;
        let Answer { relation, alone, joints, broken, size, .. } = answer;
        Ok([f64::from(relation as i32), f64::from(alone as u8), joints.into(), broken.into(), size.into()])
    });
    vectors("interchange_price", |row| {
        let written = Written::of(row);
        let (joints, crossings) = written.crossed(row)?;
        let set = joints.close_set(&crossings, part(row))?;
        let [parts, machining] = ["part_prices", "machining_prices"].map(|column| numbers(row.text(column)));
        let price = joints.price(&set, &crossings, &parts, &machining)?;
        Ok([price.total, price.unpriced.into()])
    });
    vectors("interchange_put_in", |row| {
        let written = Written::of(row);
        let of = variants(row.text("variants_of"));
        let passage = written.joints()?.put_in(&of, part(row), row.count("variant") as u8)?;
        Ok([f64::from(passage.outcome as u8), place(passage.machining, NO_MACHINING)])
    });
}

fn place(number: u16, none: u16) -> f64 {
    if number == none { -1.0 } else { number.into() }
}

#[test]
fn vectors_of_orders() {
    vectors("interchange_order", |row| {
        let written = Written::of(row);
        let joints = written.joints()?;
        let [found, wanted] = ["found", "wanted"].map(|column| variants(row.text(column)));
        let measured = row.text("measured").split(';').map(numbers).filter(|side| !side.is_empty());
        let measured = measured.map(|side| MeasuredSide {
            joint: side[0] as u16,
            part: side[1] as u16,
            size_mm: Reading { value: side[2], u: side[3] },
        });
        let measured: Vec<_> = measured.collect();
        let [part_prices, machining_prices] =
            ["part_prices", "machining_prices"].map(|column| numbers(row.text(column)));
        let job = Job {
            unit: row.count("unit") as u8,
            found: &found,
            wanted: &wanted,
            measured: &measured,
            rule: Rule::conformance(0.95)?,
            spread: Spread::RECTANGULAR,
            part_prices: &part_prices,
            machining_prices: &machining_prices,
            aim: Aim(row.count("aim") as i32),
        };
        let (mut parts, mut states) = (vec![AS_FOUND; found.len()], vec![JointState::BLANK; written.joints.len()]);
        let order = joints.order(&job, &mut parts, &mut states)?;
        let ordered = (0..).zip(&parts).filter(|(_, variant)| **variant != AS_FOUND);
        let ordered = ordered.fold(0.0, |code, (part, variant)| code + f64::from(variant + 1) * 4_f64.powi(part));
        let Order { possible, parts, machined, not_proven, stopped_at, price, cheapest, .. } = order;
        let JointState { chance, clearance_mm, .. } = states[0];
        let flags = [f64::from(u8::from(possible)), f64::from(u8::from(cheapest))];
        let counts = [parts, machined, not_proven].map(f64::from);
        Ok([
            flags[0],
            counts[0],
            counts[1],
            counts[2],
            place(stopped_at, NO_JOINT),
            price.total,
            price.unpriced.into(),
            flags[1],
            ordered,
            chance,
            clearance_mm.u,
        ])
    });
}

// ---- wrong inputs

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
