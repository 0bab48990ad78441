//! From a family to what can be looked at, with the shop's instruments and prior.

use std::format;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::{Bench, Look, Shows, refused};
use crate::record::check::suggestion;
use crate::record::document::Path;
use crate::record::family::Family;
use crate::record::fault::Fault;
use crate::record::instruments::{InstrumentRecord, Instruments};
use crate::record::problem::Problems;
use crate::record::quantity::PerVariant;
use crate::record::unit;

impl Family {
    /// The evidence of the family, with the uncertainties of the shop's instruments where they are at hand.
    ///
    /// `prior` replaces the record's; it names every variant, and its chances sum to 1.
    pub fn bench(&self, instruments: Option<&Instruments>, prior: &[(String, f64)]) -> Result<Bench, Problems> {
        let variants = self.meta.variants.clone();
        let mut bench =
            Bench { prior: self.prior_of(prior)?, variants, parts: vec![], exchanged: vec![], looks: vec![] };
        let per_variant = |values: &PerVariant<f64>| bench_values(&self.meta.variants, values);
        for mark in &self.evidence {
            let part = bench.part(&mark.carrier, mark.exchanged);
            let shows = Shows::Mark { chance: per_variant(&mark.chance) };
            let (id, look) = (mark.id.clone(), mark.look.clone());
            bench.looks.push(Look { id, look, part, minutes: mark.minutes, shows });
        }
        for size in &self.evidence_measured {
            let part = bench.part(&size.carrier, size.exchanged);
            let limits = self.meta.variants.iter().filter_map(|variant| size.size_mm.get(variant));
            let instrument = size.instrument.clone();
            let known = instruments.and_then(|instruments| instruments.instrument.get(&instrument));
            let (u_mm, range_mm) = match known {
                Some(InstrumentRecord::Length { range_mm, u_mm, .. }) => (Some(*u_mm), Some(range_mm.limits())),
                Some(_) => {
                    let path = Path::default().key("instrument").key(&instrument);
                    let message = format!("it measures no lengths, and {} is one", size.id);
                    return refused(Fault::error(path, message, "name an instrument with u_mm in the family"));
                }
                None => (None, None),
            };
            let size_mm = limits.map(|limits| limits.limits()).collect();
            let shows = Shows::Size { size_mm, instrument, u_mm, range_mm };
            let (id, look) = (size.id.clone(), size.look.clone());
            bench.looks.push(Look { id, look, part, minutes: size.minutes, shows });
        }
        Ok(bench)
    }

    fn prior_of(&self, given: &[(String, f64)]) -> Result<Vec<f64>, Problems> {
        let root = Path::default().key("prior");
        let variants = &self.meta.variants;
        if given.is_empty() {
            return match &self.prior {
                Some(prior) => Ok(bench_values(variants, prior)),
                None => refused(Fault::error(
                    root,
                    "missing: the record does not say how often each variant comes in",
                    format!("give the shop's own prior for {}", variants.join(", ")),
                )),
            };
        }
        for (name, _) in given {
            if !variants.contains(name) {
                let mend = suggestion(name, variants.iter().map(String::as_str));
                return refused(Fault::error(root.key(name), format!("there is no variant {name:?}"), mend));
            }
        }
        let mut prior = Vec::new();
        for variant in variants {
            let values: Vec<f64> =
                given.iter().filter(|(name, _)| name == variant).map(|(_, chance)| *chance).collect();
            match values[..] {
                [chance] => prior.push(chance),
                _ => {
                    let message = format!("{} values", values.len());
                    return refused(Fault::error(root.key(variant), message, "give one chance for each variant"));
                }
            }
        }
        let sum: f64 = prior.iter().sum();
        if prior.iter().all(|chance| (0.0..=1.0).contains(chance)) && (sum - 1.0).abs() <= 1e-9 {
            return Ok(prior);
        }
        let mend = "give chances from 0 to 1 that sum to 1; of counts, each count over their sum";
        refused(Fault::error(root, format!("the chances sum to {}, not 1", unit::short(sum)), mend))
    }
}

/// Values in the order of the variants.
fn bench_values(variants: &[String], values: &PerVariant<f64>) -> Vec<f64> {
    variants.iter().filter_map(|variant| values.get(variant).copied()).collect()
}

impl Bench {
    /// The place of a part, which is new with its first evidence. The record was checked: one part has one chance.
    fn part(&mut self, name: &str, exchanged: f64) -> usize {
        self.parts.iter().position(|part| part == name).unwrap_or_else(|| {
            self.parts.push(name.into());
            self.exchanged.push(exchanged);
            self.parts.len() - 1
        })
    }
}
