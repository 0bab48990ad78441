//! Engines and torque converters of a fleet, as the converter chapter takes them.

use std::string::String;
use std::vec::Vec;

use super::document::Path;
use super::fault::Fault;
use super::{ConverterRecord, EngineRecord, Fleet};
use crate::converter::{Characteristic, EngineCurve};
use crate::error::{Error, Result};

impl EngineRecord {
    /// Its torque against its speed.
    pub fn curve(&self) -> Result<EngineCurve> {
        EngineCurve::from_table(&self.speed_rpm, &self.torque_nm, self.max_rpm)
    }
}

impl ConverterRecord {
    /// Its torque ratio and capacity factor against its speed ratio.
    pub fn characteristic(&self) -> Result<Characteristic> {
        Characteristic::from_table(&self.speed_ratio, &self.torque_ratio, &self.k_rpm_per_sqrt_nm)
    }
}

impl Fleet {
    /// Torque against speed of an engine, by its name in the record.
    pub fn engine_curve(&self, engine: &str) -> Result<EngineCurve> {
        let missing = Error::Missing { name: "engine", why: "the fleet has no engine of this name" };
        self.engine.get(engine).ok_or(missing)?.curve()
    }

    /// Characteristic of a torque converter, by its name in the record.
    pub fn characteristic(&self, converter: &str) -> Result<Characteristic> {
        let missing = Error::Missing { name: "converter", why: "the fleet has no torque converter of this name" };
        self.converter.get(converter).ok_or(missing)?.characteristic()
    }

    /// Why engines and converters cannot be used.
    pub(super) fn drive_faults(&self) -> Vec<Fault> {
        let refused = |table: &str, name: &String, error: Option<Error>| {
            error.map(|error| Fault::refused(Path::default().key(table).key(name), error))
        };
        let engines = self.engine.iter().filter_map(|(name, engine)| {
            // A curve beyond max_rpm has a fault of its own, with the speed.
            let beyond = engine.speed_rpm.last().is_some_and(|last| *last > engine.max_rpm);
            refused("engine", name, engine.curve().err().filter(|_| !beyond))
        });
        let converters = self
            .converter
            .iter()
            .filter_map(|(name, converter)| refused("converter", name, converter.characteristic().err()));
        engines.chain(converters).collect()
    }
}
