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
        for (name, clutch) in &self.clutch {
            let errors = self.meta.variants.iter().filter_map(|variant| clutch.pack(variant).err());
            faults.extend(errors.map(|error| Fault::refused(root.key("clutch").key(name), error)));
        }
        faults.extend(self.sizes_against_each_other());
        faults.extend(self.lock_faults());
        faults.extend(self.fit_faults());
        faults.extend(self.evidence_faults());
        faults.extend(self.part_faults());
        faults.extend(self.hard_part_faults());
        faults
    }
}

impl Family {
    fn sizes_against_each_other(&self) -> Vec<Fault> {
        let root = Path::default();
        let mut faults = Vec::new();
        for (name, shaft) in &self.shaft {
            for (variant, outside_mm) in shaft.outside_mm.iter() {
                let path = root.key("shaft").key(name).key("outside_mm");
                let thinnest = [("inside_mm", shaft.inside_mm), (variant.as_str(), *outside_mm)];
                faults.extend(must_rise(&path, &thinnest));
            }
        }
        faults.extend(self.selective.iter().flat_map(|selective| selective.faults(&self.clutch)));
        faults
    }
}

/// A fault where one of these sizes is not above the one before it.
pub(super) fn must_rise(path: &Path, sizes: &[(&str, f64)]) -> Option<Fault> {
    sizes.windows(2).find_map(|pair| match pair {
        [(below, low), (above, high)] if low >= high => {
            let message = format!("{above} {high} must be above {below} {low}");
            Some(Fault::error(path.key(above), message, "exchange the two or correct one"))
        }
        _ => None,
    })
}

impl Record for Fluids {
    const KIND: Kind = Kind::Fluids;
}

impl Whole for Fluids {
    fn faults(&self) -> Vec<Fault> {
        let root = Path::default();
        let fluids =
            self.fluid.iter().map(|(name, fluid)| (root.key("fluid").key(name), fluid.fluid().check_properties()));
        let fill = self.fill.iter().map(|fill| (root.key("fill"), fill.fill().map(|_| ())));
        fluids.chain(fill).filter_map(|(path, result)| Some(Fault::refused(path, result.err()?))).collect()
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
        let tires = self.tire.iter().map(|(name, tire)| (Path::default().key("tire").key(name), tire.tire()));
        let mut faults: Vec<_> = tires.filter_map(|(path, tire)| Some(Fault::refused(path, tire.err()?))).collect();
        for (name, engine) in &self.engine {
            if let Some(last) = engine.speed_rpm.last().filter(|last| **last > engine.max_rpm) {
                let path = Path::default().key("engine").key(name).key("max_rpm");
                faults.push(Fault::error(
                    path,
                    format!("the torque curve goes on to {last}"),
                    "correct one of the two",
                ));
            }
        }
        faults.extend(self.drive_faults());
        faults.extend(self.tow_faults());
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
