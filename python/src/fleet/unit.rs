//! One truck as the pass over rows needs it.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use std::collections::BTreeMap;
use trainwright::duty::screen as core;

use super::answer::row_answer;
use crate::class::class;
use crate::clutch::CapacityLine;
use crate::error::{raise, refuse};

/// A closed pack in a gear.
#[pyclass(frozen, skip_from_py_object, module = "trainwright.fleet")]
#[derive(Clone, Debug, PartialEq)]
pub struct Holding {
    element: String,
    holding: core::ScreenHolding,
}

#[pymethods]
impl Holding {
    /// `element` names it; `share` is the torque on it per unit of input torque, without sign; `turns` the speed of the drum of
    /// its apply oil per unit of input speed, 0 for a brake; `line` its capacity; `friction` its static friction.
    #[new]
    #[pyo3(signature = (*, element, share, turns, line, friction))]
    fn new(element: String, share: f64, turns: f64, line: &CapacityLine, friction: f64) -> Self {
        let holding = core::ScreenHolding { element: 0, share, turns, line: line.0, friction };
        Self { element, holding }
    }

    /// Name of the element.
    #[getter]
    fn element(&self) -> &str {
        &self.element
    }

    /// Torque on it per unit of input torque.
    #[getter]
    fn share(&self) -> f64 {
        self.holding.share
    }

    /// Speed of its drum per unit of input speed.
    #[getter]
    fn turns(&self) -> f64 {
        self.holding.turns
    }

    /// Its capacity.
    #[getter]
    fn line(&self) -> CapacityLine {
        self.holding.line.into()
    }

    /// Its static friction.
    #[getter]
    fn friction(&self) -> f64 {
        self.holding.friction
    }

    fn __repr__(&self) -> String {
        let core::ScreenHolding { share, turns, friction, line, .. } = self.holding;
        let line = crate::class::Field::source(&CapacityLine(line));
        let element = &self.element;
        format!("Holding(element={element:?}, share={share:?}, turns={turns:?}, line={line}, friction={friction:?})")
    }
}

/// A gear.
#[pyclass(frozen, skip_from_py_object, module = "trainwright.fleet")]
#[derive(Clone, Debug)]
pub struct Gear {
    name: String,
    number: i8,
    ratio: f64,
    efficiency: f64,
    holding: Vec<Holding>,
    contacts: BTreeMap<String, f64>,
    sun_share: BTreeMap<String, f64>,
}

#[pymethods]
impl Gear {
    /// `number` is what a commanded gear is compared with, forward from 1, reverse from -1 down; `ratio` is input over output
    /// speed, negative in reverse; `efficiency` 0.5 to 1; `holding` its closed packs; `contacts` the tooth contacts of each
    /// set per turn of the input, and `sun_torque` the torque on its sun per unit of input torque, without sign.
    #[new]
    #[pyo3(signature = (*, name, number, ratio, efficiency, holding = Vec::new(), contacts = BTreeMap::new(), sun_torque = BTreeMap::new()))]
    fn new(
        name: String,
        number: i8,
        ratio: f64,
        efficiency: f64,
        holding: Vec<PyRef<'_, Holding>>,
        contacts: BTreeMap<String, f64>,
        sun_torque: BTreeMap<String, f64>,
    ) -> Self {
        let holding = holding.iter().map(|holding| (**holding).clone()).collect();
        Self { name, number, ratio, efficiency, holding, contacts, sun_share: sun_torque }
    }

    /// Name.
    #[getter]
    fn name(&self) -> &str {
        &self.name
    }

    /// Number.
    #[getter]
    fn number(&self) -> i8 {
        self.number
    }

    /// Input over output speed.
    #[getter]
    fn ratio(&self) -> f64 {
        self.ratio
    }

    /// Efficiency.
    #[getter]
    fn efficiency(&self) -> f64 {
        self.efficiency
    }

    /// Closed packs.
    #[getter]
    fn holding(&self) -> Vec<Holding> {
        self.holding.clone()
    }

    /// Tooth contacts of each set per turn of the input.
    #[getter]
    fn contacts(&self) -> BTreeMap<String, f64> {
        self.contacts.clone()
    }

    /// Torque on the sun of each set per unit of input torque.
    #[getter]
    fn sun_torque(&self) -> BTreeMap<String, f64> {
        self.sun_share.clone()
    }
}

class! {
    /// Where a row changes its meaning. Nothing is a default; `common_practice()` takes usual values by name.
    "trainwright.fleet" Limits = core::ScreenLimits {
        /// A ratio belongs to a gear that is no farther away than this share of it, above 0 to 0.2.
        ratio_tolerance: f64,
        /// Difference of engine and input speed up to which the converter counts as locked, 1/min.
        locked_slip_rpm: f64,
        /// Time between two rows above which what happened is unknown, s, at most 600.
        gap_s: f64,
        /// Output speed below which the truck stands, 1/min.
        standing_rpm: f64,
        /// Input torque below which no margin is formed, N·m.
        torque_floor_nm: f64,
        /// Fluid temperature above which a row is hot, °C.
        hot_c: f64,
        /// Capacity over demand below which a row is counted as low.
        least_margin: f64,
        /// Road speed from which the satellite is compared, km/h, at least 5.
        gps_floor_km_h: f64,
    }
}

#[pymethods]
impl Limits {
    /// Usual values, taken by name from `practice`: common practice, no source.
    ///
    /// >>> Limits.common_practice().gap_s
    /// 10.0
    #[staticmethod]
    fn common_practice() -> Self {
        use trainwright::practice;
        let limits = core::ScreenLimits {
            ratio_tolerance: practice::GEAR_RATIO_TOLERANCE,
            locked_slip_rpm: practice::LOCKUP_SLIP_NORMAL_RPM,
            gap_s: practice::TELEMATICS_GAP_S,
            standing_rpm: practice::STANDING_OUTPUT_RPM,
            torque_floor_nm: practice::LEAST_TELLING_TORQUE_NM,
            hot_c: practice::SUMP_ALARM_LOW_C,
            least_margin: practice::HOLDING_MARGIN,
            gps_floor_km_h: practice::SATELLITE_FLOOR_KM_H,
        };
        limits.into()
    }
}

/// One truck: gears, ratings, limits and rules, checked.
#[pyclass(frozen, from_py_object, module = "trainwright.fleet")]
#[derive(Clone, Debug, PartialEq)]
pub struct Unit {
    pub(super) plan: core::ScreenPlan,
    pub(super) gears: Vec<String>,
    pub(super) elements: Vec<String>,
    pub(super) sets: Vec<String>,
}

impl Unit {
    /// The unit, checked.
    pub(super) fn of(
        unit: &core::ScreenUnit,
        gears: Vec<String>,
        elements: Vec<String>,
        sets: Vec<String>,
    ) -> PyResult<Self> {
        Ok(Self { plan: unit.plan().map_err(raise)?, gears, elements, sets })
    }

    /// Place of the element of this name.
    pub(super) fn element(&self, name: &str) -> Option<usize> {
        self.elements.iter().position(|element| element == name)
    }
}

/// The place of a name in a list, which it joins if it is new.
fn place(names: &mut Vec<String>, name: &str) -> usize {
    names.iter().position(|known| known == name).unwrap_or_else(|| {
        names.push(name.to_owned());
        names.len() - 1
    })
}

fn by_set<const N: usize>(sets: &[String], values: &BTreeMap<String, f64>, to: &mut [f64; N]) {
    for (to, set) in to.iter_mut().zip(sets) {
        *to = values.get(set).copied().unwrap_or(0.0);
    }
}

#[pymethods]
impl Unit {
    /// Gears, ratings and limits; what damage, converter, drive line and fluid need may be left out, and then what rests on
    /// it is not formed. `speed_ratio` and `torque_ratio` are the converter's points.
    #[new]
    #[pyo3(signature = (*, gears, rated_input_nm, rated_output_nm, limits, slope = None, reference_contacts = None,
        reference_torque_nm = BTreeMap::new(), speed_ratio = None, torque_ratio = None, output_rpm_per_km_h = None,
        fluid_life_h = None, fluid_reference_c = None, fluid_halving_k = None))]
    fn new(
        gears: Vec<PyRef<'_, Gear>>,
        rated_input_nm: f64,
        rated_output_nm: f64,
        limits: Limits,
        slope: Option<f64>,
        reference_contacts: Option<f64>,
        reference_torque_nm: BTreeMap<String, f64>,
        speed_ratio: Option<Vec<f64>>,
        torque_ratio: Option<Vec<f64>>,
        output_rpm_per_km_h: Option<f64>,
        fluid_life_h: Option<f64>,
        fluid_reference_c: Option<f64>,
        fluid_halving_k: Option<f64>,
    ) -> PyResult<Self> {
        let mut unit = core::ScreenUnit::new(rated_input_nm, rated_output_nm, limits.0);
        let (mut names, mut elements, mut sets) = (Vec::new(), Vec::new(), Vec::new());
        for gear in &gears {
            for set in gear.contacts.keys().chain(gear.sun_share.keys()).chain(reference_torque_nm.keys()) {
                place(&mut sets, set);
            }
        }
        let too_many = |what: &'static str, most: usize| {
            Err(refuse("COUNT", what, format!("{what}: at most {most}, with data for more than that given")))
        };
        if sets.len() > trainwright::train::MAX_SETS {
            return too_many("sets", trainwright::train::MAX_SETS);
        }
        for gear in &gears {
            let mut to = core::ScreenGear {
                number: gear.number,
                ratio: gear.ratio,
                efficiency: gear.efficiency,
                ..core::ScreenGear::NONE
            };
            if gear.holding.len() > core::MAX_SCREEN_HOLDING {
                return too_many("holding", core::MAX_SCREEN_HOLDING);
            }
            for (to, from) in to.holding.iter_mut().zip(&gear.holding) {
                *to = core::ScreenHolding { element: place(&mut elements, &from.element) as u8, ..from.holding };
            }
            to.holding_count = gear.holding.len() as u32;
            by_set(&sets, &gear.contacts, &mut to.contacts_per_turn);
            by_set(&sets, &gear.sun_share, &mut to.sun_share);
            unit.add_gear(to).map_err(raise)?;
            names.push(gear.name.clone());
        }
        if let Some(slope) = slope {
            let missing = || {
                refuse("MISSING", "reference_contacts", "slope needs reference_contacts and reference_torque_nm".into())
            };
            unit.damage.slope = slope;
            unit.damage.reference_contacts = reference_contacts.ok_or_else(missing)?;
            by_set(&sets, &reference_torque_nm, &mut unit.damage.reference_nm);
        }
        if let (Some(speed), Some(torque)) = (&speed_ratio, &torque_ratio) {
            unit.converter = core::ScreenConverter::of_points(speed, torque).map_err(raise)?;
        } else if speed_ratio.is_some() || torque_ratio.is_some() {
            let message = "give both speed_ratio and torque_ratio of the converter, or neither";
            return Err(refuse("MISSING", "speed_ratio, torque_ratio", message.into()));
        }
        unit.output_rpm_per_km_h = output_rpm_per_km_h.unwrap_or(0.0);
        match (fluid_life_h, fluid_reference_c, fluid_halving_k) {
            (Some(life_h), Some(reference_c), Some(halving_k)) => {
                unit.fluid = core::ScreenFluid { life_h, reference_c, halving_k };
            }
            (None, None, None) => {}
            _ => {
                let message = "give fluid_life_h, fluid_reference_c and fluid_halving_k, or none of them";
                return Err(refuse("MISSING", "fluid_life_h", message.into()));
            }
        }
        Self::of(&unit, names, elements, sets)
    }

    /// Names of the gears; the place in it is the `gear` of a row.
    #[getter]
    fn gears(&self) -> Vec<String> {
        self.gears.clone()
    }

    /// Names of the elements; the place in it is the `weakest` of a row.
    #[getter]
    fn elements(&self) -> Vec<String> {
        self.elements.clone()
    }

    /// Names of the sets.
    #[getter]
    fn sets(&self) -> Vec<String> {
        self.sets.clone()
    }

    /// One row, and the row of the same truck before it: everything that it says, by name. Rows are dictionaries of the columns.
    /// Source: the cards of its rules, `duty.gear_in_effect` to `duty.satellite`.
    #[pyo3(signature = (row, previous = None))]
    fn row<'py>(
        &self,
        py: Python<'py>,
        row: &Bound<'py, PyDict>,
        previous: Option<&Bound<'py, PyDict>>,
    ) -> PyResult<Bound<'py, PyDict>> {
        row_answer(py, self, row, previous)
    }

    fn __eq__(&self, other: &Self) -> bool {
        self == other
    }

    fn __repr__(&self) -> String {
        format!("<Unit with gears {}>", self.gears.join(", "))
    }
}
