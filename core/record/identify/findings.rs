//! From what was found on a unit to what it is.

use std::format;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::{Bench, Found, FoundReading, Identified, IdentifiedPart, Look, Made, NextLook, Shows, reaches, refused};
use crate::error::Error;
use crate::identify::{Evidence, Origin, Standing, VariantFinding, add_measured, add_seen, conclude};
use crate::judge::{Reading, Rule, Verdict, judge};
use crate::record::check::suggestion;
use crate::record::document::Path;
use crate::record::fault::Fault;
use crate::record::problem::Problems;

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

impl Bench {
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

/// A refusal that is not of one look.
fn of_rule(error: Error) -> Problems {
    Problems(vec![Fault::refused(Path::default().key(error.parameter()), error).unplaced()])
}
