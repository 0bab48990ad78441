//! A family of units.

use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict};
use trainwright::record::{self as core, Record};

use super::instruments::Instruments;
use super::problem::raise_all;
use super::{Summary, names, record};
use crate::clutch::{ElementPack, Pack};
use crate::error::{answer, raise};
use crate::fluid::{Fill, Fluid};
use crate::hydraulic::Pump;
use crate::interchange::Joints;
use crate::judge::Reading;
use crate::road::Driveline;
use crate::stack::{HotPlay, PieceList, PistonStroke};
use crate::train::Train;

record! {
    /// A family of units that share a layout.
    Family
}

impl Summary for core::Family {
    fn summary(&self) -> String {
        format!(
            "<family: {}; variants {}>",
            self.meta.title.as_deref().unwrap_or("untitled"),
            names(&self.meta.variants)
        )
    }
}

#[pymethods]
impl Family {
    /// Variants in the order in which they were built.
    #[getter]
    fn variants(&self) -> Vec<String> {
        self.record.meta.variants.clone()
    }

    /// The gear train of a variant.
    fn train(&self, py: Python<'_>, variant: &str) -> PyResult<Train> {
        let named = self.record.train(variant).map_err(|problems| raise_all(py, problems))?;
        Ok(Train::new(named, &self.text, Some(variant)))
    }

    /// The pack of each clutch and brake in a variant: new linings, no seal drag.
    fn packs<'py>(&self, py: Python<'py>, variant: &str) -> PyResult<Bound<'py, PyDict>> {
        let packs = PyDict::new(py);
        for (element, record) in &self.record.clutch {
            let pack: Pack = answer(record.pack(variant))?;
            packs.set_item(element, ElementPack::new(pack, record.turns_with.clone()))?;
        }
        Ok(packs)
    }

    /// The pump. Its leak is taken to have been measured in this fluid.
    fn pump(&self, fluid: Fluid) -> PyResult<Pump> {
        answer(self.record.pump(&fluid.0))
    }

    /// How the parts of the family meet: its fits, covers, matches and machining, as `trainwright.interchange` takes them.
    fn joints(&self) -> PyResult<Joints> {
        self.record.joints().map(Joints).map_err(raise)
    }

    /// The flash image of a unit for firmware and scan tools, with what it is installed with from other records.
    ///
    /// With the instruments, the sizes of the evidence carry their uncertainty.
    #[pyo3(signature = (variant, *, driveline = None, fluid = None, fill = None, instruments = None))]
    fn flash_image<'py>(
        &self,
        py: Python<'py>,
        variant: &str,
        driveline: Option<Driveline>,
        fluid: Option<Fluid>,
        fill: Option<Fill>,
        instruments: Option<&Instruments>,
    ) -> PyResult<Bound<'py, PyBytes>> {
        let installed = core::Installed {
            driveline: driveline.map(Into::into),
            fluid: fluid.map(Into::into),
            fill: fill.map(Into::into),
            instruments: instruments.map(|instruments| &instruments.record),
        };
        let image = self.record.flash_image(variant, installed).map_err(|problems| raise_all(py, problems))?;
        Ok(PyBytes::new(py, &image))
    }

    /// The shims of the record, and the end play that they are chosen for.
    fn shims(&self) -> PyResult<PieceList> {
        answer(self.record.shims())
    }

    /// The elements whose rings or plates the record lists.
    #[getter]
    fn elements_with_rings(&self) -> Vec<&str> {
        self.record.elements_with_rings()
    }

    /// The rings or plates of an element, and the clearance that they are chosen for.
    fn rings(&self, element: &str) -> PyResult<PieceList> {
        answer(self.record.rings(element))
    }

    /// What warming up does to the end play; None where the record does not say.
    fn hot_play(&self) -> Option<HotPlay> {
        self.record.hot_play().map(HotPlay)
    }

    /// The stroke of an element's piston at a clearance. `bend_mm` is what plates, ring and drum give way under pressure; the
    /// record's unless given.
    #[pyo3(signature = (element, *, clearance_mm, bend_mm = None))]
    fn stroke(&self, element: &str, clearance_mm: Reading, bend_mm: Option<Reading>) -> PyResult<PistonStroke> {
        answer(self.record.stroke(element, clearance_mm.into(), bend_mm.map(Into::into)))
    }

    /// Static friction of lining against steel: a closed element that holds.
    #[getter]
    fn static_friction(&self) -> PyResult<Reading> {
        answer(self.friction().map(|friction| friction.r#static.reading()))
    }

    /// Dynamic friction of lining against steel: an element that slips.
    #[getter]
    fn dynamic_friction(&self) -> PyResult<Reading> {
        answer(self.friction().map(|friction| friction.dynamic.reading()))
    }
}

impl Family {
    /// The record.
    pub fn core(&self) -> &core::Family {
        &self.record
    }

    fn friction(&self) -> trainwright::Result<&core::Friction> {
        let missing = trainwright::Error::Missing { name: "friction", why: "the record has no [friction] table" };
        self.record.friction.as_ref().ok_or(missing)
    }
}
