//! Faults that only a whole record shows: sums, pairs that exclude each other, gears that are none.

use std::format;
use std::vec::Vec;

use super::document::Path;
use super::fault::Fault;
use super::{Family, Fleet, Fluids, Instruments, Jobs, Kind, Record, TrainFile};

/// What a record says against itself.
pub(super) trait Whole {
    fn faults(&self) -> Vec<Fault> {
        Vec::new()
    }
}

impl Record for TrainFile {
    const KIND: Kind = Kind::Train;
}

impl Whole for TrainFile {
    fn faults(&self) -> Vec<Fault> {
        let variants = self.train.variants().into_iter().map(Some);
        core::iter::once(None).chain(variants).flat_map(|variant| self.train.faults(variant)).collect()
    }
}

impl Record for Family {
    const KIND: Kind = Kind::Family;
}

impl Whole for Family {
    fn faults(&self) -> Vec<Fault> {
        let mut faults: Vec<_> =
            self.meta.variants.iter().flat_map(|variant| self.train.faults(Some(variant))).collect();
        let root = Path::default();
        if let Some(prior) = &self.prior {
            let sum: f64 = prior.values().sum();
            if (sum - 1.0).abs() > 1e-9 {
                faults.push(Fault::error(
                    root.key("prior"),
                    format!("the shares sum to {sum}, not 1"),
                    "correct one of them",
                ));
            }
        }
        for (name, clutch) in
            self.clutch.iter().filter(|(_, clutch)| !clutch.balanced && clutch.head_radius_mm.is_none())
        {
            let path = root.key("clutch").key(name).key("head_radius_mm");
            let message =
                format!("missing: {} without a balance dam needs the radius of the oil surface, mm", clutch.turns_with);
            faults.push(Fault::error(path, message, "measure the radius at which the oil enters or drains"));
        }
        for (index, fit) in self.machining.iter().enumerate() {
            let parts = self.fit.iter().find(|other| other.id == fit.fit).map(|fit| [&fit.shaft, &fit.bore]);
            if parts.is_some_and(|parts| !parts.contains(&&fit.part)) {
                let path = root.key("machining").index(index).key("part");
                faults.push(Fault::error(
                    path,
                    format!("{} is not a part of the fit {}", fit.part, fit.fit),
                    "name its shaft or bore",
                ));
            }
        }
        faults
    }
}

impl Record for Fluids {
    const KIND: Kind = Kind::Fluids;
}

impl Whole for Fluids {
    fn faults(&self) -> Vec<Fault> {
        let path = Path::default().key("fluid");
        let thickens = self.fluid.iter().filter(|(_, fluid)| fluid.viscosity_100c_mm2_s >= fluid.viscosity_40c_mm2_s);
        thickens
            .map(|(name, fluid)| {
                let message =
                    format!("at 100 °C the fluid must be thinner than at 40 °C, {}", fluid.viscosity_40c_mm2_s);
                Fault::error(path.key(name).key("viscosity_100c_mm2_s"), message, "exchange the two or correct one")
            })
            .collect()
    }
}

impl Record for Instruments {
    const KIND: Kind = Kind::Instruments;
}

impl Whole for Instruments {}

impl Record for Fleet {
    const KIND: Kind = Kind::Fleet;
}

impl Whole for Fleet {
    fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        let grades = self.road.as_ref().map(|road| road.grade_pct.len());
        for (index, truck) in self.truck.iter().enumerate() {
            let path = Path::default().key("truck").index(index);
            if grades.is_some_and(|grades| grades != truck.hours.len()) {
                let message = format!("{} values against {} grades", truck.hours.len(), grades.unwrap_or(0));
                faults.push(Fault::error(path.key("hours"), message, "one value for each of road.grade_pct"));
            }
            if truck.trailer_kg.is_some() == truck.trailer_range_kg.is_some() {
                let message = "give either trailer_kg, or trailer_range_kg where the mass is not known";
                faults.push(Fault::error(path.key("trailer_kg"), message, "0 for no trailer"));
            }
            if (truck.tire == "unknown") == truck.tire_candidates.is_empty() {
                let message = "a tire is either named, or unknown with tire_candidates";
                faults.push(Fault::error(path.key("tire"), message, "name the tire, or list what it may be"));
            }
        }
        faults
    }
}

impl Record for Jobs {
    const KIND: Kind = Kind::Jobs;
}

impl Whole for Jobs {}
