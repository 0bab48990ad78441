//! From a family to its evidence, and from what was found on a unit to what it is.

use std::format;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::check::suggestion;
use super::document::Path;
use super::family::Family;
use super::fault::Fault;
use super::instruments::{InstrumentRecord, Instruments};
use super::problem::Problems;
use super::quantity::PerVariant;
use crate::error::Error;
use crate::identify::{
    Conclusion, Evidence, Nearest, Origin, PartFinding, Standing, VariantFinding, Weighed, Worth, add_measured,
    add_seen, conclude,
};
use crate::judge::{Limits, Reading, Rule, Verdict, judge};

/// The evidence of a family: what can be looked at, on which part, and what each variant shows.
#[derive(Clone, Debug, PartialEq)]
pub struct Bench {
    /// Names of the variants.
    pub variants: Vec<String>,
    /// Chance of each variant before anything is looked at.
    pub prior: Vec<f64>,
    /// Names of the parts that carry evidence, in the order of the record.
    pub parts: Vec<String>,
    /// For each part, the chance that it came from another unit.
    pub exchanged: Vec<f64>,
    /// Marks, then sizes, in the order of the record.
    pub looks: Vec<Look>,
}

/// Something to look at.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// Name in the record.
    pub id: String,
    /// What to look for, or what to measure.
    pub look: String,
    /// Place of the part that carries it.
    pub part: usize,
    /// Labor to look, minutes.
    pub minutes: f64,
    /// A mark or a size.
    pub shows: Shows,
}

/// What a look shows in each variant.
#[derive(Clone, Debug, PartialEq)]
pub enum Shows {
    /// A mark that is there with this chance.
    Mark {
        /// Chance in each variant.
        chance: Vec<f64>,
    },
    /// A size.
    Size {
        /// Limits in each variant, mm.
        size_mm: Vec<Limits>,
        /// Name of the instrument.
        instrument: String,
        /// Standard uncertainty of the instrument, mm, where its record is at hand.
        u_mm: Option<f64>,
        /// Range of the instrument, mm, where its record is at hand.
        range_mm: Option<Limits>,
    },
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Found {
    /// A mark that is there, or is missing.
    Seen(bool),
    /// A size, with its standard uncertainty where it is not that of the instrument.
    Measured {
        /// Reading, mm.
        value_mm: f64,
        /// Standard uncertainty, mm.
        u_mm: Option<f64>,
    },
}

/// A look that was made.
#[derive(Clone, Debug, PartialEq)]
pub struct Made {
    /// Place among the looks.
    pub look: usize,
    /// A mark that is there or is missing; of a size, the reading.
    pub found: FoundReading,
    /// Chance of each variant after this look and those before it.
    pub chance: Vec<f64>,
}

/// What a look gave, with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FoundReading {
    /// A mark that is there, or is missing.
    Seen(bool),
    /// A size.
    Measured {
        /// The reading, mm.
        reading_mm: Reading,
        /// The variant that it comes nearest to.
        nearest: Nearest,
        /// Whether it is NO-GO against the limits of every variant: worn, mismeasured, or not of this family.
        unexplained: bool,
        /// Whether it lies outside the range of the instrument, as the sizes of the record do.
        out_of_range: bool,
    },
}

/// A part that was looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct IdentifiedPart {
    /// Place of the part.
    pub part: usize,
    /// Where it came from.
    pub finding: PartFinding,
    /// Each variant as its origin.
    pub origins: Vec<Origin>,
}

/// A look that was not made yet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextLook {
    /// Place among the looks.
    pub look: usize,
    /// What it is worth; `None` for a size whose instrument is not known.
    pub worth: Option<Worth>,
}

/// What a unit is.
#[derive(Clone, Debug, PartialEq)]
pub struct Identified {
    /// Every variant.
    pub variants: Vec<VariantFinding>,
    /// The evidence as a whole.
    pub weighed: Weighed,
    /// Every part that was looked at.
    pub parts: Vec<IdentifiedPart>,
    /// The verdict.
    pub conclusion: Conclusion,
    /// The looks that were made, in the order given.
    pub made: Vec<Made>,
    /// The looks that were not made, the one that tells most per minute first.
    pub next: Vec<NextLook>,
}

impl Found {
    /// Where a fault of the finding is placed.
    fn path(self, id: &str) -> Path {
        let group = match self {
            Self::Seen(_) => "seen",
            Self::Measured { .. } => "measured_mm",
        };
        Path::default().key(group).key(id)
    }
}

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
        refused(Fault::error(root, format!("the chances sum to {}, not 1", super::unit::short(sum)), mend))
    }
}

/// Values in the order of the variants.
fn bench_values(variants: &[String], values: &PerVariant<f64>) -> Vec<f64> {
    variants.iter().filter_map(|variant| values.get(variant).copied()).collect()
}

fn refused<T>(fault: Fault) -> Result<T, Problems> {
    Err(Problems(vec![fault.unplaced()]))
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

    /// What the unit is, from what was found on it. What nobody looked at is left out: it is not absent.
    ///
    /// `rule` states the chances from which a variant or a foreign part counts as proven.
    pub fn identify(&self, found: &[(String, Found)], rule: Rule) -> Result<Identified, Problems> {
        let (mut rows, mut unexplained) = (vec![0.0; self.parts.len() * self.variants.len()], 0);
        let mut made: Vec<Made> = Vec::new();
        for (id, found) in found {
            let path = found.path(id);
            let Some(place) = self.looks.iter().position(|look| look.id == *id) else {
                let known = self.looks.iter().map(|look| look.id.as_str());
                return refused(Fault::error(path, "the record has no evidence of this name", suggestion(id, known)));
            };
            if made.iter().any(|made| made.look == place) {
                return refused(Fault::error(path, "given twice", "leave one out"));
            }
            let Some(look) = self.looks.get(place) else { continue };
            let found = self.add(look, *found, rule, &mut rows)?;
            unexplained += u32::from(matches!(found, FoundReading::Measured { unexplained: true, .. }));
            let evidence = self.evidence(&rows, unexplained);
            let mut variants = vec![VariantFinding::NONE; self.variants.len()];
            evidence.weigh(&mut variants).or_else(|error| self.contradiction(&path, look, &made, error))?;
            made.push(Made { look: place, found, chance: variants.iter().map(|variant| variant.chance).collect() });
        }
        self.weighed(made, &self.evidence(&rows, unexplained), rule).map_err(of_rule)
    }

    fn evidence<'a>(&'a self, ln_likelihood: &'a [f64], unexplained: u32) -> Evidence<'a> {
        Evidence { prior: &self.prior, exchanged: &self.exchanged, ln_likelihood, unexplained }
    }

    /// Adds a finding to the row of its part.
    fn add(&self, look: &Look, found: Found, rule: Rule, rows: &mut [f64]) -> Result<FoundReading, Problems> {
        let path = found.path(&look.id);
        let count = self.variants.len();
        let row = rows.get_mut(look.part * count..).and_then(|rest| rest.get_mut(..count)).unwrap_or_default();
        let fault = |error: Error| Problems(vec![Fault::refused(path.clone(), error).unplaced()]);
        match (&look.shows, found) {
            (Shows::Mark { chance }, Found::Seen(seen)) => {
                add_seen(chance, seen, row).map_err(fault)?;
                Ok(FoundReading::Seen(seen))
            }
            (Shows::Size { size_mm, instrument, u_mm: known_u, range_mm }, Found::Measured { value_mm, u_mm }) => {
                let Some(u) = u_mm.or(*known_u) else {
                    let message = format!("the uncertainty of {instrument} is not known");
                    let mend = "give the record of the instruments, or the reading with its uncertainty";
                    return refused(Fault::error(path, message, mend));
                };
                let out_of_range = u_mm.is_none() && range_mm.is_some_and(|range| !range.holds(value_mm));
                // A record that asks for a size beyond its instrument is its own fault: the reading is only flagged.
                if let Some(range) = range_mm.filter(|range| out_of_range && reaches(*range, size_mm)) {
                    let message =
                        format!("{value_mm} mm: {instrument} reaches from {} to {} mm", range.lower, range.upper);
                    return refused(Fault::error(path.clone(), message, "check the reading and its unit"));
                }
                let reading_mm = Reading { value: value_mm, u };
                let nearest = add_measured(size_mm, reading_mm, row).map_err(fault)?;
                let limits = size_mm.get(nearest.variant as usize).copied();
                let judged = limits.map(|limits| judge(reading_mm, limits, rule)).transpose().map_err(of_rule)?;
                let unexplained = judged.is_some_and(|judged| judged.verdict == Verdict::NoGo);
                Ok(FoundReading::Measured { reading_mm, nearest, unexplained, out_of_range })
            }
            (Shows::Mark { .. }, _) => {
                refused(Fault::error(path.clone(), "this is a mark, not a size", "say whether it was seen"))
            }
            (Shows::Size { .. }, _) => {
                refused(Fault::error(path.clone(), "this is a size, not a mark", "give the reading"))
            }
        }
    }

    /// Names the looks that exclude every variant.
    fn contradiction<T>(&self, path: &Path, last: &Look, made: &[Made], error: Error) -> Result<T, Problems> {
        if error.kind() != "NO_ANSWER" {
            return Err(of_rule(error));
        }
        let part = self.parts.get(last.part).map_or("", String::as_str);
        let before = made.iter().filter_map(|made| self.looks.get(made.look));
        let others: Vec<_> = before.map(|look| look.id.as_str()).collect();
        let with = if others.is_empty() { String::new() } else { format!(" together with {}", others.join(", ")) };
        let message = format!("no variant explains this{with}");
        let mend = format!("look at the part {part} again, or leave the doubtful look out");
        refused(Fault::error(path.clone(), message, mend))
    }

    fn weighed(&self, made: Vec<Made>, evidence: &Evidence<'_>, rule: Rule) -> Result<Identified, Error> {
        let mut variants = vec![VariantFinding::NONE; self.variants.len()];
        let weighed = evidence.weigh(&mut variants)?;
        let mut all = Vec::new();
        for part in 0..self.parts.len() {
            let mut origins = vec![Origin::NONE; self.variants.len()];
            let finding = evidence.part(&variants, part, &mut origins)?;
            all.push(IdentifiedPart { part, finding, origins });
        }
        let mut next = Vec::new();
        for (place, look) in self.looks.iter().enumerate().filter(|(place, _)| !made.iter().any(|m| m.look == *place)) {
            let Some(part) = all.get(look.part) else { continue };
            let standing = Standing { variants: &variants, origins: &part.origins, rule };
            let worth = match &look.shows {
                Shows::Mark { chance } => Some(standing.mark_worth(chance, look.minutes)?),
                Shows::Size { size_mm, u_mm, .. } => {
                    u_mm.map(|u_mm| standing.size_worth(size_mm, u_mm, look.minutes)).transpose()?
                }
            };
            next.push(NextLook { look: place, worth });
        }
        let rate = |next: &NextLook| next.worth.map_or(-1.0, |worth| worth.bits_per_minute);
        next.sort_by(|a, b| rate(b).total_cmp(&rate(a)));
        let on = |part: usize| made.iter().any(|made| self.looks.get(made.look).is_some_and(|look| look.part == part));
        let parts: Vec<_> = all.into_iter().filter(|part| on(part.part)).collect();
        let findings: Vec<_> = parts.iter().map(|part| part.finding).collect();
        let conclusion = conclude(&weighed, &findings, rule)?;
        Ok(Identified { variants, weighed, parts, conclusion, made, next })
    }
}

/// Whether a range holds every size.
fn reaches(range: Limits, size_mm: &[Limits]) -> bool {
    size_mm.iter().all(|size| range.holds(size.lower) && range.holds(size.upper))
}

/// A refusal that is not of one look.
fn of_rule(error: Error) -> Problems {
    Problems(vec![Fault::refused(Path::default().key(error.parameter()), error).unplaced()])
}

impl Family {
    /// What the evidence says against itself.
    pub(super) fn evidence_faults(&self) -> Vec<Fault> {
        let root = Path::default();
        let marks = self.evidence.iter().enumerate().map(|(place, mark)| {
            let same = all_equal(mark.chance.values());
            (root.key("evidence").index(place), &mark.carrier, mark.exchanged, same.then_some("chance"))
        });
        let sizes = self.evidence_measured.iter().enumerate().map(|(place, size)| {
            let same = all_equal(size.size_mm.values());
            (root.key("evidence_measured").index(place), &size.carrier, size.exchanged, same.then_some("size_mm"))
        });
        let looks: Vec<_> = marks.chain(sizes).collect();
        let mut faults = Vec::new();
        for (place, (path, part, exchanged, same)) in looks.iter().enumerate() {
            let before = looks.iter().take(place).find(|(_, other, ..)| other == part);
            if let Some((first, _, other, _)) = before
                && (exchanged - other).abs() > 1e-12
            {
                let message = format!("{part} is exchanged with a chance of {other} at {first}");
                faults.push(Fault::error(
                    path.key("exchanged"),
                    message,
                    "one part has one chance: correct one of them",
                ));
            }
            if let Some(key) = same
                && self.meta.variants.len() > 1
            {
                let message = "the same in every variant: it tells nothing";
                faults.push(Fault::note(path.key(key), message, "correct it, or leave the evidence out"));
            }
        }
        faults.extend(self.sizes_of_fits());
        faults
    }

    /// A size that is evidence and belongs to a fit must be the same size.
    fn sizes_of_fits(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        for (place, fit) in self.fit.iter().enumerate() {
            let path = Path::default().key("fit").index(place);
            let sides = [
                ("shaft_size", &fit.shaft_size, &fit.shaft, &fit.shaft_mm),
                ("bore_size", &fit.bore_size, &fit.bore, &fit.bore_mm),
            ];
            for (key, name, part, size_mm) in sides {
                let Some(size) = self.evidence_measured.iter().find(|size| Some(&size.id) == name.as_ref()) else {
                    continue;
                };
                if size.carrier != *part {
                    let message = format!("{} is a size of the part {}, not of {part}", size.id, size.carrier);
                    faults.push(Fault::error(path.key(key), message, "name a size of this part"));
                } else if size.size_mm != *size_mm {
                    let message = format!("the evidence {} states other limits than this fit", size.id);
                    faults.push(Fault::error(path.key(key), message, "correct one of the two"));
                }
            }
        }
        faults
    }

    /// What the sizes of evidence and fits need of the instruments and do not find there.
    pub(super) fn instrument_faults(&self, instruments: &Instruments) -> Vec<Fault> {
        let root = Path::default();
        let evidence = self.evidence_measured.iter().enumerate().map(|(place, size)| {
            let path = root.key("evidence_measured").index(place).key("instrument");
            (path, Some(&size.instrument), &size.size_mm)
        });
        let fits = self.fit.iter().enumerate().flat_map(|(place, fit)| {
            let path = Path::default().key("fit").index(place);
            [
                (path.key("shaft_instrument"), fit.shaft_instrument.as_ref(), &fit.shaft_mm),
                (path.key("bore_instrument"), fit.bore_instrument.as_ref(), &fit.bore_mm),
            ]
        });
        let mut faults = Vec::new();
        for (path, name, size_mm) in evidence.chain(fits) {
            let Some(name) = name else { continue };
            match instruments.instrument.get(name) {
                Some(InstrumentRecord::Length { range_mm, .. }) => {
                    let sizes: Vec<_> = size_mm.values().map(|size| size.limits()).collect();
                    if !reaches(range_mm.limits(), &sizes) {
                        let [low, high] = range_mm.0;
                        let message = format!("{name} reaches from {low} to {high} mm, and the size lies outside");
                        faults.push(Fault::note(path, message, "name another instrument, or correct the range"));
                    }
                }
                Some(_) => {
                    let message = format!("{name} measures no lengths");
                    faults.push(Fault::error(path, message, "name an instrument with u_mm"));
                }
                None => {}
            }
        }
        faults
    }
}

fn all_equal<T: PartialEq>(mut values: impl Iterator<Item = T>) -> bool {
    values.next().is_none_or(|first| values.all(|value| value == first))
}
