//! The identify chapter against its sources, the demonstration family, its properties and wrong inputs.

mod support;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::identify::{
    Evidence, Origin, Outcome, PartFinding, Standing, VariantFinding, Weighed, Worth, add_measured, add_seen, conclude,
    ln_density, prior_of_counts,
};
use trainwright::judge::{Limits, Reading, Rule};

fn numbers(text: &str) -> Vec<f64> {
    text.split_whitespace().map(|cell| cell.parse().unwrap()).collect()
}

fn limits(numbers: &[f64]) -> Vec<Limits> {
    numbers.chunks(2).map(|pair| Limits { lower: pair[0], upper: pair[1] }).collect()
}

/// What is known about a unit, owned.
#[derive(Clone, Debug)]
struct Unit {
    prior: Vec<f64>,
    exchanged: Vec<f64>,
    ln_likelihood: Vec<f64>,
    unexplained: u32,
}

impl Unit {
    fn new(prior: &[f64], exchanged: &[f64]) -> Self {
        let ln_likelihood = vec![0.0; prior.len() * exchanged.len()];
        Self { prior: prior.to_vec(), exchanged: exchanged.to_vec(), ln_likelihood, unexplained: 0 }
    }

    /// The unit of a row: see the top of `identify_weigh.csv`.
    fn of(row: &Row) -> Result<Self, Error> {
        let prior = numbers(row.text("prior"));
        let variants = prior.len();
        let parts: Vec<Vec<&str>> =
            row.text("unit").split(" / ").map(|part| part.split_whitespace().collect()).collect();
        let exchanged: Vec<f64> = parts.iter().map(|part| part[0].parse().unwrap()).collect();
        let mut unit = Self::new(&prior, &exchanged);
        for (place, part) in parts.iter().enumerate() {
            let mut rest = &part[1..];
            while let Some((kind, after)) = rest.split_first() {
                let count = if *kind == "=" { 2 + 2 * variants } else { variants };
                let values = numbers(&after[..count].join(" "));
                let ln_part = unit.row(place);
                match *kind {
                    "=" => {
                        let reading = Reading { value: values[0], u: values[1] };
                        add_measured(&limits(&values[2..]), reading, ln_part)?;
                    }
                    sign => add_seen(&values, sign == "+", ln_part)?,
                }
                rest = &after[count..];
            }
        }
        Ok(unit)
    }

    fn row(&mut self, part: usize) -> &mut [f64] {
        let variants = self.prior.len();
        &mut self.ln_likelihood[part * variants..(part + 1) * variants]
    }

    fn evidence(&self) -> Evidence<'_> {
        Evidence {
            prior: &self.prior,
            exchanged: &self.exchanged,
            ln_likelihood: &self.ln_likelihood,
            unexplained: self.unexplained,
        }
    }

    fn weigh(&self) -> Result<(Vec<VariantFinding>, Weighed), Error> {
        let mut variants = vec![VariantFinding::NONE; self.prior.len()];
        let weighed = self.evidence().weigh(&mut variants)?;
        Ok((variants, weighed))
    }

    fn chances(&self) -> Vec<f64> {
        self.weigh().unwrap().0.iter().map(|variant| variant.chance).collect()
    }

    fn part(&self, part: usize) -> Result<(Vec<Origin>, PartFinding), Error> {
        let (variants, _) = self.weigh()?;
        let mut origins = vec![Origin::NONE; self.prior.len()];
        let finding = self.evidence().part(&variants, part, &mut origins)?;
        Ok((origins, finding))
    }

    fn worth(&self, part: usize, go: f64, look: impl Fn(Standing) -> Result<Worth, Error>) -> Result<Worth, Error> {
        let (variants, _) = self.weigh()?;
        let (origins, _) = self.part(part)?;
        let rule = Rule { go, no_go: 0.05, ..Rule::conformance(0.95)? };
        look(Standing { variants: &variants, origins: &origins, rule })
    }

    fn mark_worth(&self, part: usize, chance: &[f64]) -> Worth {
        self.worth(part, 0.95, |standing| standing.mark_worth(chance, 1.0)).unwrap()
    }

    fn size_worth(&self, part: usize, size_mm: &[Limits], u_mm: f64) -> Worth {
        self.worth(part, 0.95, |standing| standing.size_worth(size_mm, u_mm, 1.0)).unwrap()
    }
}

#[test]
fn likelihoods() {
    vectors("identify_ln_density", |row| {
        let size_mm = Limits { lower: row.number("lower"), upper: row.number("upper") };
        Ok([ln_density(Reading { value: row.number("x"), u: row.number("u") }, size_mm)?])
    });
    vectors("identify_add_seen", |row| {
        let mut ln_part = [0.0; 3];
        add_seen(&numbers(row.text("chance")), row.count("seen") != 0, &mut ln_part)?;
        Ok(ln_part)
    });
    vectors("identify_add_measured", |row| {
        let mut ln_part = [0.0; 3];
        let reading = Reading { value: row.number("x"), u: row.number("u") };
        let nearest = add_measured(&limits(&numbers(row.text("size_mm"))), reading, &mut ln_part)?;
        let [a, b, c] = ln_part;
        Ok([a, b, c, nearest.variant.into(), nearest.outside_mm, nearest.outside_u])
    });
}

#[test]
fn priors() {
    vectors("identify_prior_of_counts", |row| {
        let counts: Vec<u32> = row.text("counts").split_whitespace().map(|count| count.parse().unwrap()).collect();
        let mut prior = [0.0; 3];
        prior_of_counts(&counts, &mut prior)?;
        Ok(prior)
    });
}

#[test]
fn weighing() {
    vectors("identify_weigh", |row| {
        let mut unit = Unit::of(row)?;
        unit.unexplained = row.count("unexplained");
        let (variants, weighed) = unit.weigh()?;
        assert_eq!(weighed.unexplained, unit.unexplained);
        let [a, b, c] = variants[..] else { panic!("three variants") };
        Ok([
            a.chance,
            b.chance,
            c.chance,
            a.chance_unmixed,
            b.chance_unmixed,
            c.chance_unmixed,
            weighed.chance_mixed,
            weighed.best.into(),
            weighed.single.into(),
            weighed.entropy_bits,
            weighed.ln_evidence,
            weighed.ln_single,
            weighed.ln_by_part,
            weighed.ln_gap,
        ])
    });
}

#[test]
fn parts() {
    vectors("identify_part", |row| {
        let (origins, part) = Unit::of(row)?.part(row.count("part") as usize)?;
        let [a, b, c] = origins[..] else { panic!("three variants") };
        Ok([
            part.origin.into(),
            part.chance,
            part.exchanged,
            part.exchanged_if_best,
            part.foreign,
            part.ln_conflict,
            a.chance,
            b.chance,
            c.chance,
            a.kept,
            b.kept,
            c.kept,
            a.if_exchanged,
            b.if_exchanged,
            c.if_exchanged,
        ])
    });
}

#[test]
fn conclusions() {
    vectors("identify_conclude", |row| {
        let (_, weighed) = Unit::new(&[1.0], &[]).weigh()?;
        let weighed = Weighed { chance: row.number("chance"), unexplained: row.count("unexplained"), ..weighed };
        let (_, part) = Unit::new(&[1.0], &[0.1]).part(0)?;
        let parts: Vec<_> =
            numbers(row.text("foreign")).into_iter().map(|foreign| PartFinding { foreign, ..part }).collect();
        let rule = Rule { go: row.number("go"), no_go: row.number("no_go"), ..Rule::conformance(0.95)? };
        let conclusion = conclude(&weighed, &parts, rule)?;
        Ok([
            f64::from(conclusion.outcome as i32),
            conclusion.foreign_parts.into(),
            conclusion.open_parts.into(),
            conclusion.variant_settled.into(),
        ])
    });
}

#[test]
fn worths() {
    vectors("identify_mark_worth", |row| {
        let chance = numbers(row.text("chance"));
        let look = |standing: Standing| standing.mark_worth(&chance, row.number("minutes"));
        let worth = Unit::of(row)?.worth(row.count("part") as usize, row.number("go"), look)?;
        Ok([worth.bits, worth.bits_per_minute, worth.settles])
    });
    vectors("identify_size_worth", |row| {
        let size_mm = limits(&numbers(row.text("size_mm")));
        let look = |standing: Standing| standing.size_worth(&size_mm, row.number("u_mm"), row.number("minutes"));
        let worth = Unit::of(row)?.worth(row.count("part") as usize, row.number("go"), look)?;
        Ok([worth.bits, worth.bits_per_minute, worth.settles])
    });
}

#[test]
fn a_simple_acceptance_rule_states_no_chances() {
    let unit = Unit::new(&[0.5, 0.5], &[0.1]);
    let (_, weighed) = unit.weigh().unwrap();
    let refused = conclude(&weighed, &[], Rule::simple_acceptance()).unwrap_err();
    assert_eq!(refused.kind(), "OUT_OF_RANGE");
}

#[test]
fn lists_of_different_length_are_refused_and_left_alone() {
    let unit = Unit::new(&[0.5, 0.5], &[0.1]);
    let mut short = [VariantFinding::NONE; 1];
    let refused = unit.evidence().weigh(&mut short).unwrap_err();
    assert_eq!(refused, Error::Count { name: "variants", count: 1, low: 2, high: 2 });
    let cut = Evidence { ln_likelihood: &[0.0], ..unit.evidence() };
    let refused = cut.weigh(&mut [VariantFinding::NONE; 2]).unwrap_err();
    assert_eq!(refused, Error::Count { name: "ln_likelihood", count: 1, low: 2, high: 2 });
    let mut row = [0.25; 2];
    assert!(add_seen(&[0.5], true, &mut row).is_err() && add_seen(&[0.5, 2.0], true, &mut row).is_err());
    let sizes = [Limits { lower: 1.0, upper: 2.0 }, Limits { lower: 2.0, upper: 1.0 }];
    assert!(add_measured(&sizes, Reading { value: 1.0, u: 0.1 }, &mut row).is_err());
    assert_eq!(row, [0.25; 2]);
    assert!(add_measured(&[], Reading { value: 1.0, u: 0.1 }, &mut []).is_err());
    assert_eq!(Unit::new(&[], &[]).weigh().unwrap_err().kind(), "INCONSISTENT");
}

#[test]
fn a_refused_unit_leaves_the_findings_alone() {
    let mut unit = Unit::new(&[0.5, 0.5], &[0.0, 0.0]);
    add_seen(&[1.0, 0.0], true, unit.row(0)).unwrap();
    add_seen(&[0.0, 1.0], true, unit.row(1)).unwrap();
    let mut variants = [VariantFinding { chance: 7.0, ..VariantFinding::NONE }; 2];
    let refused = unit.evidence().weigh(&mut variants).unwrap_err();
    assert!(refused.to_string().contains("never exchanged"), "{refused}");
    assert!(variants.iter().all(|variant| variant.chance > 6.0));
}

/// Cover and Thomas, example 2.2.1: entropies 7/4 and 2 bits, mutual information 3/8 bit (from memory). The four outcomes are
/// asked for one after the other, and the information adds up (chain rule, 2.5).
#[test]
fn information_of_a_question_with_four_answers() {
    let joint = [
        [1.0 / 8.0, 1.0 / 16.0, 1.0 / 32.0, 1.0 / 32.0],
        [1.0 / 16.0, 1.0 / 8.0, 1.0 / 32.0, 1.0 / 32.0],
        [1.0 / 16.0, 1.0 / 16.0, 1.0 / 16.0, 1.0 / 16.0],
        [1.0 / 4.0, 0.0, 0.0, 0.0],
    ];
    let prior: Vec<f64> = (0..4).map(|x| joint.iter().map(|row| row[x]).sum()).collect();
    let mut unit = Unit::new(&prior, &[0.0]);
    let (_, weighed) = unit.weigh().unwrap();
    assert!((weighed.entropy_bits - 1.75).abs() < 1e-15);
    let (mut bits, mut chance_so_far) = (0.0, 1.0);
    let mut left: Vec<f64> = prior.clone();
    for row in &joint[..3] {
        let chance: Vec<f64> = row.iter().zip(&left).map(|(both, left)| both / left.max(1e-300)).collect();
        bits += chance_so_far * unit.mark_worth(0, &chance).bits;
        add_seen(&chance, false, unit.row(0)).unwrap();
        left.iter_mut().zip(row).for_each(|(left, both)| *left -= both);
        chance_so_far = left.iter().sum();
    }
    assert!((bits - 0.375).abs() < 1e-15, "{bits}");
}

#[test]
fn a_look_says_what_it_would_settle() {
    let unit = Unit::new(&[0.5, 0.3, 0.2], &[0.0]);
    let worth = unit.mark_worth(0, &[1.0, 1.0, 0.0]); // missing: the third for certain; seen: still open
    assert!((worth.settles - 0.2).abs() < 1e-15);
}

#[test]
fn a_thousand_variants_and_extreme_readings_neither_underflow_nor_overflow() {
    let count = 1000;
    let prior = vec![1.0 / 1000.0; count];
    let mut unit = Unit::new(&prior, &vec![0.05; 50]);
    for part in 0..50 {
        let size_mm: Vec<Limits> = (0..count).map(|v| Limits { lower: v as f64, upper: v as f64 + 0.5 }).collect();
        let value = if part < 40 { 700.25 } else { 1e9 };
        add_measured(&size_mm, Reading { value, u: 1e-6 }, unit.row(part)).unwrap();
    }
    let (variants, weighed) = unit.weigh().unwrap();
    assert_eq!(weighed.best, 700);
    assert!((variants.iter().map(|variant| variant.chance).sum::<f64>() - 1.0).abs() < 1e-12);
    assert!(weighed.ln_gap.is_finite() && weighed.ln_evidence.is_finite() && weighed.ln_evidence < -1e29);
    let (origins, part) = unit.part(45).unwrap();
    assert_eq!(part.origin, 999);
    assert!(part.foreign > 0.999 && origins.iter().all(|origin| origin.chance.is_finite()));
}

// ---- properties

fn chances(count: usize) -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.01..0.99_f64, count)
}

fn a_prior(count: usize) -> impl Strategy<Value = Vec<f64>> {
    chances(count).prop_map(|weights| {
        let sum: f64 = weights.iter().sum();
        weights.iter().map(|weight| weight / sum).collect()
    })
}

/// A unit of 2 to 6 variants and 4 parts with up to 8 marks on them, and the marks: part, chances, seen.
type Look = (usize, Vec<f64>, bool);
fn some_unit() -> impl Strategy<Value = (Vec<f64>, Vec<f64>, Vec<Look>)> {
    (2..=6_usize).prop_flat_map(|variants| {
        let looks = prop::collection::vec((0..4_usize, chances(variants), any::<bool>()), 0..8);
        (a_prior(variants), prop::collection::vec(0.0..0.5_f64, 4), looks)
    })
}

fn looked(prior: &[f64], exchanged: &[f64], looks: &[Look]) -> Unit {
    let mut unit = Unit::new(prior, exchanged);
    for (part, chance, seen) in looks {
        add_seen(chance, *seen, unit.row(*part)).unwrap();
    }
    unit
}

fn entropy_bits(chances: &[f64]) -> f64 {
    chances.iter().filter(|p| **p > 0.0).map(|p| -p * p.log2()).sum()
}

proptest! {
    #[test]
    fn the_order_of_looks_does_not_matter((prior, exchanged, looks) in some_unit()) {
        let forward = looked(&prior, &exchanged, &looks).chances();
        let backward = looked(&prior, &exchanged, &looks.iter().rev().cloned().collect::<Vec<_>>()).chances();
        for (a, b) in forward.iter().zip(&backward) {
            prop_assert!((a - b).abs() < 1e-13);
        }
        prop_assert!((forward.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn certain_evidence_wins((prior, exchanged, looks) in some_unit(), sure in 0..2_usize) {
        let mut exchanged = exchanged;
        exchanged.push(0.0); // a part that is never exchanged
        let mut unit = looked(&prior, &exchanged, &looks);
        let certain: Vec<f64> = (0..prior.len()).map(|variant| if variant == sure { 1.0 } else { 0.0 }).collect();
        add_seen(&certain, true, unit.row(4)).unwrap();
        let (variants, weighed) = unit.weigh().unwrap();
        prop_assert_eq!(weighed.best as usize, sure);
        prop_assert!((variants[sure].chance - 1.0).abs() < 1e-12);
        prop_assert!(unit.mark_worth(0, &looks.first().map_or(certain, |look| look.1.clone())).bits < 1e-12);
    }

    #[test]
    fn a_useless_look_changes_nothing_and_tells_nothing((prior, exchanged, looks) in some_unit(), c in 0.01..0.99_f64) {
        let mut unit = looked(&prior, &exchanged, &looks);
        let before = unit.chances();
        let useless = vec![c; prior.len()];
        let same_size = vec![Limits { lower: 61.0, upper: 63.0 }; prior.len()];
        for part in 0..4 {
            prop_assert!(unit.mark_worth(part, &useless).bits < 1e-15);
            prop_assert!(unit.size_worth(part, &same_size, 0.4).bits < 1e-15);
        }
        add_seen(&useless, true, unit.row(2)).unwrap();
        add_measured(&same_size, Reading { value: 61.7, u: 0.4 }, unit.row(1)).unwrap();
        for (a, b) in unit.chances().iter().zip(&before) {
            prop_assert!((a - b).abs() < 1e-12);
        }
    }

    /// Two marks on one part count as one mark with the product of their chances, not as two independent witnesses.
    #[test]
    fn looks_on_one_part_count_once(prior in a_prior(3), s in 0.01..0.5_f64, a in chances(3), b in chances(3)) {
        let mut unit = Unit::new(&prior, &[s]);
        add_seen(&a, true, unit.row(0)).unwrap();
        add_seen(&b, true, unit.row(0)).unwrap();
        let product: Vec<f64> = a.iter().zip(&b).map(|(a, b)| a * b).collect();
        let mean: f64 = prior.iter().zip(&product).map(|(p, ab)| p * ab).sum();
        let weights: Vec<f64> = prior.iter().zip(&product).map(|(p, ab)| p * ((1.0 - s) * ab + s * mean)).collect();
        for (chance, weight) in unit.chances().iter().zip(&weights) {
            prop_assert!((chance - weight / weights.iter().sum::<f64>()).abs() < 1e-13);
        }
        // However often one part is looked at, its exchange stays possible: the chance of another variant keeps a floor.
        for _ in 0..200 {
            add_seen(&[0.9, 0.1, 0.1], true, unit.row(0)).unwrap();
        }
        let floor = s * prior[1] * prior[0];
        prop_assert!(unit.chances()[1] >= 0.999 * floor);
    }

    #[test]
    fn information_is_never_negative_and_at_most_the_entropy(
        (prior, exchanged, looks) in some_unit(),
        part in 0..4_usize,
        at in prop::collection::vec((0.0..10.0_f64, 0.0..3.0_f64), 6),
        u in 0.01..5.0_f64,
    ) {
        let unit = looked(&prior, &exchanged, &looks);
        let (_, weighed) = unit.weigh().unwrap();
        prop_assert!((weighed.entropy_bits - entropy_bits(&unit.chances())).abs() < 1e-12);
        let size_mm: Vec<Limits> =
            at[..prior.len()].iter().map(|(lower, width)| Limits { lower: *lower, upper: lower + width }).collect();
        let chance: Vec<f64> = at[..prior.len()].iter().map(|(lower, _)| lower / 10.0).collect();
        for worth in [unit.mark_worth(part, &chance), unit.size_worth(part, &size_mm, u)] {
            prop_assert!(worth.bits >= 0.0 && worth.bits <= weighed.entropy_bits + 1e-9, "{worth:?} {weighed:?}");
            prop_assert!((0.0..=1.0).contains(&worth.settles));
        }
    }

    /// The information of a mark is the entropy less the mean entropy after it, each outcome weighed on its own.
    #[test]
    fn information_of_a_mark_is_the_drop_of_entropy((prior, exchanged, looks) in some_unit(), part in 0..4_usize, c in chances(6)) {
        let unit = looked(&prior, &exchanged, &looks);
        let chance = &c[..prior.len()];
        let (origins, _) = unit.part(part).unwrap();
        let (variants, weighed) = unit.weigh().unwrap();
        let mixed: f64 = origins.iter().zip(chance).map(|(origin, c)| origin.if_exchanged * c).sum();
        let seen: f64 = variants
            .iter()
            .zip(&origins)
            .zip(chance)
            .map(|((variant, origin), c)| variant.chance * (origin.kept * c + (1.0 - origin.kept) * mixed))
            .sum();
        let after = |is_seen: bool| {
            let mut next = unit.clone();
            add_seen(chance, is_seen, next.row(part)).unwrap();
            entropy_bits(&next.chances())
        };
        let drop = weighed.entropy_bits - seen * after(true) - (1.0 - seen) * after(false);
        prop_assert!((unit.mark_worth(part, chance).bits - drop).abs() < 1e-12);
    }

    /// Chances of the parts: origins sum to 1, foreign is at most exchanged, and a mixed unit has a foreign part.
    #[test]
    fn chances_of_parts_fit_together((prior, exchanged, looks) in some_unit()) {
        let unit = looked(&prior, &exchanged, &looks);
        let (_, weighed) = unit.weigh().unwrap();
        let looked_at: std::collections::BTreeSet<_> = looks.iter().map(|look| look.0).collect();
        let mut foreign = Vec::new();
        for &part in &looked_at {
            let (origins, finding) = unit.part(part).unwrap();
            prop_assert!((origins.iter().map(|origin| origin.chance).sum::<f64>() - 1.0).abs() < 1e-12);
            prop_assert!((origins.iter().map(|origin| origin.if_exchanged).sum::<f64>() - 1.0).abs() < 1e-12);
            prop_assert!(finding.foreign <= finding.exchanged + 1e-15);
            foreign.push(finding.foreign);
        }
        let most = foreign.iter().fold(0.0_f64, |most, part| most.max(*part));
        prop_assert!(weighed.chance_mixed >= most - 1e-12);
        prop_assert!(weighed.chance_mixed <= foreign.iter().sum::<f64>() + 1e-12);
    }

    #[test]
    fn junk_is_refused_or_answered_with_numbers(junk in prop::collection::vec(any::<f64>(), 12), part in 0..3_usize) {
        let evidence = Evidence { prior: &junk[..2], exchanged: &junk[2..4], ln_likelihood: &junk[4..8], unexplained: 0 };
        let mut variants = [VariantFinding::NONE; 2];
        if evidence.weigh(&mut variants).is_ok() {
            prop_assert!(variants.iter().all(|variant| variant.chance.is_finite()));
            let mut origins = [Origin::NONE; 2];
            let _ = evidence.part(&variants, part, &mut origins);
        }
        let reading = Reading { value: junk[8], u: junk[9] };
        if let Ok(number) = ln_density(reading, Limits { lower: junk[10], upper: junk[11] }) {
            prop_assert!(!number.is_nan());
        }
    }
}

/// The three verdicts, and the one for a reading that fits nothing, on a unit of two variants.
#[test]
fn every_outcome_can_be_reached() {
    let rule = Rule::stated_chances(0.95, 0.05).unwrap();
    let conclusion = |looks: [(usize, bool); 3], unexplained| {
        let mut unit = Unit { unexplained, ..Unit::new(&[0.5, 0.5], &[0.02, 0.02, 0.02]) };
        for (part, late) in looks {
            add_seen(&[0.0001, 0.9999], late, unit.row(part)).unwrap();
        }
        let (_, weighed) = unit.weigh().unwrap();
        let looked_at: std::collections::BTreeSet<_> = looks.iter().map(|look| look.0).collect();
        let parts: Vec<_> = looked_at.iter().map(|part| unit.part(*part).unwrap().1).collect();
        conclude(&weighed, &parts, rule).unwrap().outcome
    };
    assert_eq!(conclusion([(0, true), (1, true), (2, true)], 0), Outcome::OneVariant);
    assert_eq!(conclusion([(0, true), (1, true), (2, false)], 0), Outcome::Mixed);
    assert_eq!(conclusion([(0, true), (1, false), (1, false)], 0), Outcome::NotSettled);
    assert_eq!(conclusion([(0, true), (1, true), (2, true)], 1), Outcome::Unexplained);
    assert_eq!(Outcome::NotSettled.to_string(), "not settled");
}
