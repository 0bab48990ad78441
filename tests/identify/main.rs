//! The identify chapter against its sources, the demonstration family, its properties and wrong inputs.

#[path = "../support/mod.rs"]
mod support;

mod random;
mod vectors;

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
