//! What the evidence of a family says against itself, its fits and the shop's instruments.

use std::format;
use std::vec::Vec;

use super::reaches;
use crate::record::document::Path;
use crate::record::family::Family;
use crate::record::fault::Fault;
use crate::record::instruments::{InstrumentRecord, Instruments};

impl Family {
    /// What the evidence says against itself.
    pub(in crate::record) fn evidence_faults(&self) -> Vec<Fault> {
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
    pub(in crate::record) fn instrument_faults(&self, instruments: &Instruments) -> Vec<Fault> {
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
