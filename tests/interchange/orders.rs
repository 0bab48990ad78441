//! Orders: what to exchange, what to buy, where to look first.

use super::*;

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
