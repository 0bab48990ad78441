//! Trucks with their tires, engines, converters and trailers.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::record::{self as core, Record};

use super::problem::raise_all;
use super::{Summary, names, no_such, record};
use crate::converter::{Characteristic, EngineCurve};
use crate::error::answer;
use crate::road::{Combination, Driveline};
use crate::tire::{Rolling, Tire};
use crate::tow::{Coupled, TowRatings};

record! {
    /// Tires, engines, converters, road model and trucks.
    Fleet
}

impl Summary for core::Fleet {
    fn summary(&self) -> String {
        format!("<fleet: {}>", names(self.truck.iter().map(|truck| &truck.id)))
    }
}

#[pymethods]
impl Fleet {
    /// Names of the trucks.
    #[getter]
    fn trucks(&self) -> Vec<&str> {
        self.record.truck.iter().map(|truck| truck.id.as_str()).collect()
    }

    /// A tire by its name in the record.
    fn tire(&self, name: &str) -> PyResult<Tire> {
        let record = self.record.tire.get(name).ok_or_else(|| no_such("tire", name, self.record.tire.keys()))?;
        answer(record.tire())
    }

    /// Rolling circumference of a tire, by the record's share of its free circumference.
    fn rolling(&self, tire: &str) -> PyResult<Rolling> {
        answer(self.record.rolling(tire))
    }

    /// Torque against speed of an engine, by its name in the record.
    fn engine_curve(&self, name: &str) -> PyResult<EngineCurve> {
        let engines = &self.record.engine;
        let record = engines.get(name).ok_or_else(|| no_such("engine", name, engines.keys()))?;
        answer(record.curve())
    }

    /// Characteristic of a torque converter, by its name in the record.
    fn characteristic(&self, name: &str) -> PyResult<Characteristic> {
        let converters = &self.record.converter;
        let record = converters.get(name).ok_or_else(|| no_such("converter", name, converters.keys()))?;
        answer(record.characteristic())
    }

    /// Axle and tire that are fitted to a truck.
    fn fitted(&self, truck: &str) -> PyResult<Driveline> {
        answer(self.record.fitted(self.truck(truck)?))
    }

    /// Truck and trailer as the road feels them: mass, rolling coefficient (the mean by mass), drag area. `trailer_kg` goes
    /// before the record's; it must be given where the record has a range only.
    #[pyo3(signature = (truck, *, trailer_kg = None))]
    fn combination(&self, truck: &str, trailer_kg: Option<f64>) -> PyResult<Combination> {
        let truck = self.truck(truck)?;
        answer(match trailer_kg {
            Some(trailer_kg) => self.record.combination_with(truck, trailer_kg),
            None => self.record.combination(truck),
        })
    }

    /// Ratings of a truck, its hitch and its trailer; infinite where the record has none.
    fn tow_ratings(&self, truck: &str) -> PyResult<TowRatings> {
        answer(self.truck(truck)?.tow_ratings())
    }

    /// A truck with a trailer of this mass on its hitch, from the scale weights and levers of the record.
    #[pyo3(signature = (truck, *, trailer_kg))]
    fn coupled(&self, truck: &str, trailer_kg: f64) -> PyResult<Coupled> {
        answer(self.truck(truck)?.coupled(trailer_kg))
    }

    /// Axle and tire that the unit of a truck is programmed for.
    fn programmed(&self, truck: &str) -> PyResult<Driveline> {
        answer(self.record.programmed(self.truck(truck)?))
    }
}

impl Fleet {
    /// The record.
    pub fn core(&self) -> &core::Fleet {
        &self.record
    }

    /// A truck by its name.
    pub fn truck(&self, id: &str) -> PyResult<&core::TruckRecord> {
        let trucks = &self.record.truck;
        let found = trucks.iter().find(|truck| truck.id == id);
        found.ok_or_else(|| no_such("truck", id, trucks.iter().map(|truck| &truck.id)))
    }
}
