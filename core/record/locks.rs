//! One-way clutches and park locks of a record, as the hold chapter takes them.

mod one_way;
mod park;

use std::vec::Vec;

use super::Family;
use super::document::Path;
use super::fault::Fault;
use super::train::ElementKind;
use super::whole::must_rise;
use crate::error::Error;
use crate::hold::ContactBody;
use crate::practice::{RACE_POISSON, RACE_YOUNG_MPA};

pub use one_way::{OneWayClutch, OneWayPart, OneWayRecord, RaceSide};
pub use park::{ParkLock, ParkRecord, ParkRules};

/// A body of race steel, as common practice has it.
fn steel(radius_mm: f64) -> ContactBody {
    ContactBody { radius_mm, young_mpa: RACE_YOUNG_MPA, poisson: RACE_POISSON }
}

impl Family {
    /// One-way clutches and park locks that contradict themselves or the train.
    pub(super) fn lock_faults(&self) -> Vec<Fault> {
        let root = Path::default();
        let mut faults = Vec::new();
        for (variant, record) in self.one_way.iter().flat_map(|records| records.iter()) {
            faults.extend(record.faults(&root.key("one_way").key(variant)));
        }
        let train_has_one = self.train.element.values().any(|element| element.kind == ElementKind::OneWay);
        if self.one_way.is_some() && !train_has_one {
            let mend = "add it to [train.element], or remove [one_way]";
            faults.push(Fault::error(root.key("one_way"), "the train has no one-way clutch", mend));
        }
        for (variant, record) in self.park.iter().flat_map(|records| records.iter()) {
            let path = root.key("park").key(variant);
            let diameters = [
                ("root_diameter_mm", record.root_diameter_mm),
                ("contact_diameter_mm", record.contact_diameter_mm),
                ("tip_diameter_mm", record.tip_diameter_mm),
            ];
            let refused = |error: Error| Fault::refused(path.key(error.parameter()), error);
            let sizes = || record.gear().and_then(|_| record.window_deg()).err().map(refused);
            faults.extend(must_rise(&path, &diameters).or_else(sizes));
        }
        faults
    }
}
