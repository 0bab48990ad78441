//! Every pack of a gear against what the train asks of it.

use std::collections::BTreeMap;

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::clutch as core;

use super::pack::{Pack, PressureNeeded};
use crate::class::{Field, class};
use crate::error::{raise, refuse};
use crate::judge::{Reading, Rule, Verdict};
use crate::train::State;

/// A pack and the member that its drum, and so its apply oil, turns with; the fixed member for a brake.
#[pyclass(frozen, eq, from_py_object, module = "trainwright.clutch")]
#[derive(Clone, PartialEq)]
pub struct ElementPack {
    pack: Pack,
    turns_with: String,
}

#[pymethods]
impl ElementPack {
    #[new]
    #[pyo3(signature = (*, pack, turns_with))]
    pub fn new(pack: Pack, turns_with: String) -> Self {
        Self { pack, turns_with }
    }

    /// The pack.
    #[getter]
    fn pack(&self) -> Pack {
        self.pack
    }

    /// The member that its drum turns with.
    #[getter]
    fn turns_with(&self) -> &str {
        &self.turns_with
    }

    fn __repr__(&self) -> String {
        format!("ElementPack(pack={}, turns_with={:?})", self.pack.source(), self.turns_with)
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        let fields = PyDict::new(py);
        fields.set_item("pack", self.pack)?;
        fields.set_item("turns_with", &self.turns_with)?;
        Ok(((), fields))
    }
}

class! {
    /// One pack in one gear.
    "trainwright.clutch" ElementMargin = core::ElementMargin {
        /// Place of the element in the train.
        element: u8,
        /// The train determines the share. If not, everything below is 0 and NOT PROVEN.
        share_known: bool,
        /// Torque per unit of turbine torque, without sign.
        share: f64,
        /// Speed of its drum, 1/min.
        drum_speed_rpm: f64,
        /// Torque to hold, N·m.
        need_nm: f64,
        /// Capacity, N·m. Not a rating.
        capacity_nm: f64,
        /// Capacity over demand; infinite where the element carries nothing.
        margin: f64,
        /// Pressure at which it just holds.
        pressure_needed: PressureNeeded,
        /// Friction at which it just holds.
        friction_needed: f64,
        /// Chance that it holds.
        chance: f64,
        /// Verdict under the rule.
        verdict: Verdict,
    }
}

/// Every pack of one gear.
#[pyclass(frozen, module = "trainwright.clutch")]
pub struct GearReview {
    review: core::GearReview,
    names: Vec<String>,
}

crate::class::explained!(GearReview, ["clutch.review"], , []);

#[pymethods]
impl GearReview {
    /// Margin of each closed element that has a pack, by its name.
    #[getter]
    fn elements<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let elements = PyDict::new(py);
        for row in self.review.elements() {
            elements.set_item(self.name(*row), ElementMargin(*row))?;
        }
        Ok(elements)
    }

    /// Name of the element with the least margin.
    #[getter]
    fn governing(&self) -> &str {
        self.name(self.review.weakest())
    }

    /// The least margin.
    #[getter]
    fn weakest(&self) -> ElementMargin {
        ElementMargin(self.review.weakest())
    }

    fn __repr__(&self) -> String {
        let row = |row: &core::ElementMargin| {
            format!("{} {:.3} {}", self.name(*row), row.margin, Verdict(row.verdict).word())
        };
        let rows: Vec<_> = self.review.elements().iter().map(row).collect();
        format!("<margins: {}; {} governs>", rows.join(", "), self.governing())
    }
}

impl GearReview {
    /// The review of the core.
    pub fn core(&self) -> &core::GearReview {
        &self.review
    }

    fn name(&self, row: core::ElementMargin) -> &str {
        self.names.get(usize::from(row.element)).map_or("", String::as_str)
    }
}

/// Capacity of each pack of a gear against the torque that the train puts on it.
///
/// `state` is a gear of a `Train`; `packs` maps elements to `ElementPack`. `turbine_torque_nm` is not the engine's while the
/// converter multiplies it. `turbine_speed_rpm` is 0 at stall, where no drum of the input turns and no oil head counts.
/// Source: follows from the definitions (equilibrium of the gear train).
#[pyfunction]
#[pyo3(signature = (
    state, packs, *, pressure_kpa, friction, geometry_u_rel, oil_density_kg_m3, turbine_torque_nm, turbine_speed_rpm, rule
))]
#[allow(clippy::too_many_arguments)]
pub fn review(
    state: PyRef<'_, State>,
    packs: BTreeMap<String, PyRef<'_, ElementPack>>,
    pressure_kpa: Reading,
    friction: Reading,
    geometry_u_rel: f64,
    oil_density_kg_m3: f64,
    turbine_torque_nm: Reading,
    turbine_speed_rpm: f64,
    rule: Rule,
) -> PyResult<GearReview> {
    let train = state.train();
    let place = |names: &[String], name: &str| {
        let known =
            || refuse("MISSING", "packs", format!("packs: the train has no {name:?}; it has {}", names.join(", ")));
        names.iter().position(|known| known == name).map(|place| place as u8).ok_or_else(known)
    };
    let packs = packs.iter().map(|(element, entry)| {
        Ok(core::ElementPack {
            pack: entry.pack.into(),
            element: place(&train.elements, element)?,
            turns_with: place(&train.members, &entry.turns_with)?,
        })
    });
    let duty = core::Duty {
        pressure_kpa: pressure_kpa.into(),
        friction: friction.into(),
        geometry_u_rel,
        oil_density_kg_m3,
        turbine_torque_nm: turbine_torque_nm.into(),
        turbine_speed_rpm,
        rule: rule.into(),
    };
    let review = core::review(state.solved(), &packs.collect::<PyResult<Vec<_>>>()?, duty).map_err(raise)?;
    Ok(GearReview { review, names: train.elements.clone() })
}

/// Position of the least margin: the element that governs a gear, or the gear that governs a unit.
///
/// >>> governing([1.252, 1.105, 1.382])
/// 1
#[pyfunction]
pub fn governing(margins: Vec<f64>) -> PyResult<u32> {
    core::governing(&margins).map_err(raise)
}
