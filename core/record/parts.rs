//! Faults of the parts of a family that only the whole record shows: covers, matches, machining, aliases, prices.

use std::format;
use std::string::String;
use std::vec::Vec;

use super::document::Path;
use super::family::{Family, MachiningRecord};
use super::fault::Fault;
use super::fits::FitRecord;
use super::interchange::NamedJoints;
use super::quantity::Size;
use crate::error::Error;
use crate::interchange::{Crossing, JointOutcome, Meeting, Relation, cover_share};

impl Family {
    /// What fits, covers, matches, machining, aliases and prices say against one another.
    pub(super) fn part_faults(&self) -> Vec<Fault> {
        let mut faults: Vec<_> = self.parts_named_almost_alike().collect();
        faults.extend(self.parts_that_meet_themselves());
        faults.extend(self.covers_of_one_variant());
        faults.extend(self.machining_of_strangers());
        faults.extend(self.machining_that_adds_metal());
        faults.extend(self.numbers_of_two_parts());
        if faults.iter().all(Fault::is_note) {
            match self.joints() {
                Ok(named) => {
                    faults.extend(self.machining_that_mends_nothing(&named));
                    faults.extend(self.aliases_that_do_not_fit(&named));
                    faults.extend(self.parts_without_price(&named));
                }
                // A name that nobody gives is told where it stands.
                Err(Error::Missing { .. }) => {}
                Err(error) => faults.push(Fault::refused(Path::default().key("fit"), error)),
            }
        }
        faults
    }

    /// Parts that are named once, and almost like another part: where, the part, the other.
    fn slips(&self) -> Vec<(Path, &String, &String)> {
        let root = Path::default();
        let fits = self.fit.iter().enumerate().flat_map(|(index, fit)| {
            let path = Path::default().key("fit").index(index);
            [(path.key("shaft"), &fit.shaft), (path.key("bore"), &fit.bore)]
        });
        let covers = self.cover.iter().enumerate().flat_map(|(index, cover)| {
            let path = Path::default().key("cover").index(index);
            [(path.key("surface"), &cover.surface), (path.key("land"), &cover.land)]
        });
        let matches = self.r#match.iter().enumerate().flat_map(|(index, pair)| {
            let path = Path::default().key("match").index(index).key("parts");
            pair.parts.iter().enumerate().map(move |(place, part)| (path.index(place), part))
        });
        let evidence = self.evidence.iter().enumerate();
        let seen = evidence.map(|(index, seen)| (root.key("evidence").index(index).key("carrier"), &seen.carrier));
        let evidence = self.evidence_measured.iter().enumerate();
        let measured =
            evidence.map(|(index, size)| (root.key("evidence_measured").index(index).key("carrier"), &size.carrier));
        let parts: Vec<_> = fits.chain(covers).chain(matches).chain(seen).chain(measured).collect();
        let priced = |part: &str| self.price.as_ref().is_some_and(|price| price.of.contains_key(part));
        let once = |part: &str| parts.iter().filter(|(_, other)| *other == part).count() == 1 && !priced(part);
        let near = |part: &String| {
            let near = |other: &&(Path, &String)| other.1 != part && strsim::damerau_levenshtein(other.1, part) <= 2;
            parts.iter().find(near).map(|(_, other)| *other)
        };
        let slips = parts.iter().filter(|(_, part)| once(part));
        slips.filter_map(|(path, part)| Some((path.clone(), *part, near(part)?))).collect()
    }

    fn parts_named_almost_alike(&self) -> impl Iterator<Item = Fault> {
        let slips = self.slips().into_iter();
        slips.map(|(path, part, other)| {
            let message = format!("no other line names the part {part:?}, but there is {other:?}");
            Fault::note(path, message, format!("did you mean {other}?"))
        })
    }

    fn parts_that_meet_themselves(&self) -> Vec<Fault> {
        let fits = self.fit.iter().enumerate().map(|(place, fit)| ("fit", place, "bore", &fit.shaft, &fit.bore));
        let covers =
            self.cover.iter().enumerate().map(|(place, cover)| ("cover", place, "land", &cover.surface, &cover.land));
        let pairs = self.r#match.iter().enumerate().map(|(place, pair)| {
            let [one, other] = &pair.parts;
            ("match", place, "parts", one, other)
        });
        let same = fits.chain(covers).chain(pairs).filter(|(.., one, other)| one == other);
        let told = same.map(|(table, place, key, part, _)| {
            let path = Path::default().key(table).index(place).key(key);
            Fault::error(path, format!("{part} meets itself"), "name the other part, or give its two seats two names")
        });
        told.collect()
    }

    /// A variant's own land must be carried as the record asks, or one of the two is wrong.
    fn covers_of_one_variant(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        for (place, cover) in self.cover.iter().enumerate() {
            let path = Path::default().key("cover").index(place).key("land_mm");
            for (variant, land_mm) in cover.land_mm.iter() {
                let Some(surface_mm) = cover.surface_mm.get(variant) else { continue };
                let told = match cover_share(land_mm.limits(), surface_mm.limits()) {
                    Ok(share) if share < cover.least_cover - 1e-9 => Fault::error(
                        path.key(variant),
                        format!(
                            "the own surface of {variant} carries {share:.3} of it, least_cover is {}",
                            cover.least_cover
                        ),
                        "correct land_mm, surface_mm or least_cover",
                    ),
                    Ok(_) => continue,
                    Err(error) => Fault::refused(path.key(variant), error),
                };
                faults.push(told);
            }
        }
        faults
    }

    /// A part that no fit has is told as an unknown name.
    fn machining_of_strangers(&self) -> Vec<Fault> {
        let is_of = |fit: &FitRecord, rule: &MachiningRecord| fit.shaft == rule.part || fit.bore == rule.part;
        let rules = self.machining.iter().enumerate();
        let strangers = rules.filter(|(_, rule)| {
            let elsewhere = self.fit.iter().any(|fit| is_of(fit, rule));
            elsewhere && self.fit.iter().any(|fit| fit.id == rule.fit && !is_of(fit, rule))
        });
        let told = strangers.map(|(place, rule)| {
            let path = Path::default().key("machining").index(place).key("part");
            Fault::error(path, format!("{} is not a part of the fit {}", rule.part, rule.fit), "name its shaft or bore")
        });
        told.collect()
    }

    /// A shaft only gets smaller by machining, and a bore larger.
    fn machining_that_adds_metal(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        for (place, rule) in self.machining.iter().enumerate() {
            let Some(fit) = self.fit.iter().find(|fit| fit.id == rule.fit) else { continue };
            if fit.shaft != rule.part && fit.bore != rule.part {
                continue;
            }
            let is_shaft = fit.shaft == rule.part;
            let sizes = if is_shaft { &fit.shaft_mm } else { &fit.bore_mm };
            let Size([finish_from, finish_to]) = rule.finish_mm;
            let grown = rule.from.iter().find_map(|variant| {
                let Size([from, to]) = *sizes.get(variant)?;
                let adds =
                    if is_shaft { finish_to > to || finish_from > from } else { finish_from < from || finish_to < to };
                adds.then_some((variant, from, to))
            });
            if let Some((variant, from, to)) = grown {
                let (part, change) = if is_shaft { ("shaft", "smaller") } else { ("bore", "larger") };
                let message =
                    format!("the {part} of {variant} is {from} to {to}, and machining only makes it {change}");
                let path = Path::default().key("machining").index(place).key("finish_mm");
                faults.push(Fault::error(path, message, "correct finish_mm, or take the variant out of from"));
            }
        }
        faults
    }

    /// A number that stands for two parts says of neither what fits.
    fn numbers_of_two_parts(&self) -> Vec<Fault> {
        let numbers = self.alias.iter().enumerate().flat_map(|(place, alias)| {
            alias.numbers.iter().map(move |(variant, number)| (place, &alias.part, variant, number))
        });
        let numbers: Vec<_> = numbers.collect();
        let mut faults = Vec::new();
        for (index, (place, part, variant, number)) in numbers.iter().enumerate() {
            let path = Path::default().key("alias").index(*place).key("numbers").key(variant);
            let before =
                numbers.iter().take(index).find(|(.., part_before, _, other)| other == number && part_before != part);
            if let Some((_, other, ..)) = before {
                let message = format!("the number of {other} too");
                faults.push(Fault::error(path, message, "correct one of the two"));
            }
        }
        for (place, alias) in self.alias.iter().enumerate() {
            let mut numbers = alias.numbers.values();
            let first = numbers.next();
            if alias.numbers.len() > 1 && numbers.all(|number| Some(number) == first) {
                let path = Path::default().key("alias").index(place).key("numbers");
                faults.push(Fault::note(
                    path,
                    "the numbers are all the same: there is nothing to tell",
                    "leave the alias out",
                ));
            }
        }
        faults
    }

    fn machining_that_mends_nothing(&self, named: &NamedJoints) -> Vec<Fault> {
        let rules = (0..).zip(self.machining.iter().zip(&named.machining));
        let told = rules.filter_map(|(place, (rule, of))| {
            let is_first = named.joints.get(usize::from(of.joint)).is_some_and(|joint| joint.first == of.part);
            pairs(rule).find_map(|(from, to)| {
                let (from_place, to_place) = (named.variant(from)?, named.variant(to)?);
                let (first, second) = if is_first { (from_place, to_place) } else { (to_place, from_place) };
                let path = Path::default().key("machining").index(usize::from(place));
                let machined = named.joints().machined(place, first, second).ok()?;
                if machined.outcome != JointOutcome::Holds {
                    let message =
                        format!("finished so, {} of {from} with its mate of {to} is {}", rule.part, said(&machined));
                    return Some(Fault::error(path.key("finish_mm"), message, "correct finish_mm, from or to_fit"));
                }
                let before = named.joints().meeting(of.joint, first, second).ok()?;
                (before.outcome == JointOutcome::Holds).then(|| {
                    let message =
                        format!("{} of {from} holds with its mate of {to} as it is: {}", rule.part, said(&before));
                    Fault::note(path.key("to_fit"), message, "leave the variant out, unless a worn part is meant")
                })
            })
        });
        told.collect()
    }

    /// An alias says that the fit is the same; a joint that does not hold says that it is not.
    fn aliases_that_do_not_fit(&self, named: &NamedJoints) -> Vec<Fault> {
        let joints = named.joints();
        let variants = 0..joints.variants;
        let mut faults = Vec::new();
        let mut crossings = std::vec![Crossing::BLANK; named.joints.len()];
        for (from, into) in variants.clone().flat_map(|from| variants.clone().map(move |into| (from, into))) {
            if from == into || joints.crossings(from, into, &mut crossings).is_err() {
                continue;
            }
            for (place, alias) in self.alias.iter().enumerate() {
                let Some(part) = named.part(&alias.part) else { continue };
                let Ok(answer) = joints.answer(&crossings, part, from, into) else { continue };
                if answer.relation == Relation::Singly || faults.iter().any(|(known, _)| *known == place) {
                    continue;
                }
                let of = |variant: u8| named.variants.get(usize::from(variant)).map_or("", String::as_str);
                let message = format!(
                    "the alias says the same fit, but a joint of {} of {} in {} does not hold: {}",
                    alias.part,
                    of(from),
                    of(into),
                    answer.alone
                );
                let path = Path::default().key("alias").index(place).key("part");
                faults.push((place, Fault::error(path, message, "leave the alias out, or correct the joint")));
            }
        }
        faults.into_iter().map(|(_, fault)| fault).collect()
    }

    /// A price list with gaps: no error, as an order says which of its prices are not known.
    fn parts_without_price(&self, named: &NamedJoints) -> Option<Fault> {
        let written = self.price.as_ref()?.of.keys();
        // A key that is almost the part is told as an unknown name.
        let misspelled = |name: &str| written.clone().any(|key| strsim::damerau_levenshtein(key, name) <= 2);
        let met = |place: u16| named.joints.iter().any(|joint| joint.first == place || joint.second == place);
        let parts = (0..).zip(named.parts.iter().zip(&named.part_prices));
        let slips = self.slips();
        let is_slip = |name: &String| slips.iter().any(|(_, part, _)| *part == name);
        let parts = parts.filter(|(place, (name, price))| {
            price.is_nan() && met(*place) && !named.fixed.has(*place) && !is_slip(name)
        });
        let rules = named.rules.iter().zip(&named.machining_prices).filter(|(_, price)| price.is_nan());
        let missing = parts.map(|(_, (name, _))| name.as_str()).chain(rules.map(|(rule, _)| rule.id.as_str()));
        let missing: Vec<_> = missing.filter(|name| !misspelled(name)).collect();
        let path = Path::default().key("price");
        (!missing.is_empty()).then(|| {
            Fault::note(
                path,
                format!("no price for {}", missing.join(", ")),
                "an order with one of them says so; add what is known",
            )
        })
    }
}

/// Each variant whose part may be machined, with each whose mate it then fits.
fn pairs(rule: &MachiningRecord) -> impl Iterator<Item = (&String, &String)> {
    rule.from.iter().flat_map(|from| rule.to_fit.iter().map(move |to| (from, to)))
}

/// What comes of a fit, with its clearance.
fn said(meeting: &Meeting) -> String {
    let Meeting { outcome, clearance_mm, wanted_mm, .. } = meeting;
    format!(
        "{outcome}, clearance {:.3} to {:.3} mm, wanted {:.3} to {:.3}",
        clearance_mm.lower, clearance_mm.upper, wanted_mm.lower, wanted_mm.upper
    )
}
