//! What a unit offers, and the truck that it works in.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::tow as core;

use super::pull::{LargestSpeed, Pull, UnlockedPull};
use crate::class::{Field, class};
use crate::converter::{Characteristic, EngineCurve};
use crate::error::{answer, raise, refuse};
use crate::record::{Family, Fleet, raise_all};
use crate::road::{Combination, Driveline};

class! {
    /// A gear that a unit offers.
    ///
    /// >>> OfferedGear(ratio=1.383, efficiency=0.97).closed
    /// 0
    "trainwright.tow" OfferedGear = core::OfferedGear {
        /// Input over output speed; negative in reverse.
        ratio: f64,
        /// Efficiency from input to output on the road, above 0 to 1.
        efficiency: f64,
        /// Mask of the elements that carry under drive, one-way clutches included.
        closed: u32 = 0_u32,
        /// Mask of the one-way clutches among them: where it is not 0, the gear does not brake.
        one_way: u32 = 0_u32,
    }
}

class! {
    /// A combination, and the drive line that pulls it.
    "trainwright.tow" Haul = core::Haul {
        /// Truck and trailer as the road feels them.
        combination: Combination,
        /// Axle, transfer case and tires.
        driveline: Driveline,
        /// Efficiency of axle and transfer case, above 0 to 1.
        axle_efficiency: f64,
        /// Density of the air, kg/m³.
        air_density_kg_m3: f64,
    }
}

class! {
    /// How a gear is chosen: the highest that keeps a reserve, with the lock-up clutch closed.
    "trainwright.tow" GearRule = core::GearRule {
        /// Share of full torque that stays in hand, 0 to below 1.
        torque_reserve: f64,
        /// Lowest engine speed with the lock-up clutch closed, 1/min.
        lowest_locked_rpm: f64,
        /// Step by which the speed is lowered where no gear holds, km/h.
        speed_step_km_h: f64,
    }
}

/// What a unit offers: gears with their names, and the ratings of its record.
///
/// >>> unit = Gearing(names=["1", "2"], gears=[OfferedGear(ratio=2.5, efficiency=0.95), OfferedGear(ratio=1, efficiency=0.98)],
/// ...                rated_input_nm=640, rated_reverse_nm=420, rated_output_nm=2800)
/// >>> unit.names
/// ['1', '2']
#[pyclass(frozen, from_py_object, module = "trainwright.tow")]
#[derive(Clone, Debug, PartialEq)]
pub struct Gearing {
    pub core: core::Gearing,
    pub names: Vec<String>,
}

#[pymethods]
impl Gearing {
    #[new]
    #[pyo3(signature = (*, names, gears, rated_input_nm, rated_reverse_nm, rated_output_nm))]
    fn new(
        names: Vec<String>,
        gears: Vec<OfferedGear>,
        rated_input_nm: f64,
        rated_reverse_nm: f64,
        rated_output_nm: f64,
    ) -> PyResult<Self> {
        if names.len() != gears.len() {
            return Err(refuse("COUNT", "names", "names: give one name for each gear".into()));
        }
        let gears: Vec<_> = gears.into_iter().map(|gear| gear.0).collect();
        let core = core::Gearing::new(&gears, rated_input_nm, rated_reverse_nm, rated_output_nm).map_err(raise)?;
        Ok(Self { core, names })
    }

    /// Names of the gears.
    #[getter]
    fn names(&self) -> Vec<String> {
        self.names.clone()
    }

    /// The gears in the order of their names.
    #[getter]
    fn gears(&self) -> Vec<OfferedGear> {
        self.core.gears().iter().copied().map(OfferedGear).collect()
    }

    /// Rated torque at the input (turbine) in the forward gears, N·m.
    #[getter]
    fn rated_input_nm(&self) -> f64 {
        self.core.rated_input_nm
    }

    /// Rated torque at the input in reverse, N·m.
    #[getter]
    fn rated_reverse_nm(&self) -> f64 {
        self.core.rated_reverse_nm
    }

    /// Rated torque at the output, N·m.
    #[getter]
    fn rated_output_nm(&self) -> f64 {
        self.core.rated_output_nm
    }

    fn __eq__(&self, other: &Self) -> bool {
        self == other
    }

    fn __repr__(&self) -> String {
        let gears: Vec<_> = self.gears().iter().map(Field::source).collect();
        format!(
            "Gearing(names={:?}, gears=[{}], rated_input_nm={:?}, rated_reverse_nm={:?}, rated_output_nm={:?})",
            self.names,
            gears.join(", "),
            self.core.rated_input_nm,
            self.core.rated_reverse_nm,
            self.core.rated_output_nm
        )
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        let fields = PyDict::new(py);
        fields.set_item("names", self.names())?;
        fields.set_item("gears", self.gears())?;
        fields.set_item("rated_input_nm", self.core.rated_input_nm)?;
        fields.set_item("rated_reverse_nm", self.core.rated_reverse_nm)?;
        fields.set_item("rated_output_nm", self.core.rated_output_nm)?;
        Ok(((), fields))
    }
}

impl Gearing {
    fn place(&self, name: &str) -> PyResult<u32> {
        let place = self.names.iter().position(|known| known == name);
        place.and_then(|place| u32::try_from(place).ok()).ok_or_else(|| {
            refuse("MISSING", "gear", format!("there is no gear {name:?}; the unit has {}", self.names.join(", ")))
        })
    }
}

/// A combination with the engine, the unit and the drive line that pull it.
#[pyclass(frozen, from_py_object, module = "trainwright.tow")]
#[derive(Clone, Debug, PartialEq)]
pub struct Rig {
    haul: core::Haul,
    gearing: Gearing,
    engine: trainwright::converter::EngineCurve,
    rule: core::GearRule,
}

impl Rig {
    /// Names of the gears.
    pub fn gear_names(&self) -> Vec<String> {
        self.gearing.names.clone()
    }

    /// As the core has it.
    pub fn core(&self) -> core::Rig {
        core::Rig { haul: self.haul, gearing: self.gearing.core, engine: self.engine, rule: self.rule }
    }
}

#[pymethods]
impl Rig {
    #[new]
    #[pyo3(signature = (*, haul, gearing, engine, rule))]
    fn new(haul: Haul, gearing: Gearing, engine: EngineCurve, rule: GearRule) -> Self {
        Self { haul: haul.0, gearing, engine: engine.0, rule: rule.0 }
    }

    /// Combination and drive line.
    #[getter]
    fn haul(&self) -> Haul {
        self.haul.into()
    }

    /// What the unit offers.
    #[getter]
    fn gearing(&self) -> Gearing {
        self.gearing.clone()
    }

    /// Full-throttle torque of the engine.
    #[getter]
    fn engine(&self) -> EngineCurve {
        EngineCurve(self.engine)
    }

    /// Choice of gear.
    #[getter]
    fn rule(&self) -> GearRule {
        self.rule.into()
    }

    /// Speed and torque of every gear on a grade, lock-up clutch closed, and the gear that holds it. Not a rating.
    /// Source: road load by SAE J1263, then definitions.
    #[pyo3(signature = (*, grade_pct, speed_km_h))]
    fn pull(&self, grade_pct: f64, speed_km_h: f64) -> PyResult<Pull> {
        let core = self.core().pull(grade_pct, speed_km_h).map_err(raise)?;
        Ok(Pull { core, names: self.gearing.names.clone() })
    }

    /// The same, slower by the rule's step at a time until a gear holds with the reserve: how a driver loses speed.
    /// Source: follows from the definitions.
    #[pyo3(signature = (*, grade_pct, speed_km_h))]
    fn pull_slowed(&self, grade_pct: f64, speed_km_h: f64) -> PyResult<Pull> {
        let core = self.core().pull_slowed(grade_pct, speed_km_h).map_err(raise)?;
        Ok(Pull { core, names: self.gearing.names.clone() })
    }

    /// Largest speed at which a locked gear holds a grade with the reserve and, if asked, within the ratings.
    /// Source: as `pull`, solved exactly for the speed.
    #[pyo3(signature = (*, grade_pct, at_most_km_h, within_ratings))]
    fn largest_speed(&self, grade_pct: f64, at_most_km_h: f64, within_ratings: bool) -> PyResult<LargestSpeed> {
        answer(self.core().largest_speed(grade_pct, at_most_km_h, within_ratings))
    }

    /// A gear, by its name, on a grade with the lock-up clutch open: match of engine and converter, and the heat.
    /// Source: SAE J643, definitions.
    #[pyo3(signature = (converter, gear, *, grade_pct, speed_km_h))]
    fn unlocked_pull(
        &self,
        converter: Characteristic,
        gear: &str,
        grade_pct: f64,
        speed_km_h: f64,
    ) -> PyResult<UnlockedPull> {
        let place = self.gearing.place(gear)?;
        answer(self.core().unlocked_pull(&converter.0, place, grade_pct, speed_km_h))
    }

    fn __eq__(&self, other: &Self) -> bool {
        self == other
    }

    fn __repr__(&self) -> String {
        format!(
            "Rig(haul={}, gearing={}, engine={}, rule={})",
            self.haul().source(),
            self.gearing.__repr__(),
            self.engine().source(),
            self.rule().source()
        )
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        let fields = PyDict::new(py);
        fields.set_item("haul", self.haul())?;
        fields.set_item("gearing", self.gearing())?;
        fields.set_item("engine", self.engine())?;
        fields.set_item("rule", self.rule())?;
        Ok(((), fields))
    }
}

/// What a variant of a family offers: ratios from the teeth, road efficiencies and ratings as the record states them.
#[pyfunction]
pub fn gearing(py: Python<'_>, family: PyRef<'_, Family>, variant: &str) -> PyResult<Gearing> {
    let named = family.core().train(variant).map_err(|problems| raise_all(py, problems))?;
    let rating = family.core().rating(variant).map_err(raise)?;
    let names = named.gears.iter().map(|gear| gear.id.clone()).collect();
    Ok(Gearing { core: named.gearing(rating).map_err(raise)?, names })
}

/// A truck of a fleet with its unit. Where the fleet knows only candidates for the tire or a range for the trailer, name one
/// with `tire` and `trailer_kg`. `speed_step_km_h` is how a speed is lowered where no gear holds.
#[pyfunction]
#[pyo3(signature = (family, fleet, truck, *, speed_step_km_h, tire = None, trailer_kg = None))]
pub fn rig(
    py: Python<'_>,
    family: PyRef<'_, Family>,
    fleet: PyRef<'_, Fleet>,
    truck: &str,
    speed_step_km_h: f64,
    tire: Option<String>,
    trailer_kg: Option<f64>,
) -> PyResult<Rig> {
    let mut record = fleet.truck(truck)?.clone();
    record.tire = tire.unwrap_or(record.tire);
    let fleet = fleet.core();
    let combination = match trailer_kg {
        Some(trailer_kg) => fleet.combination_with(&record, trailer_kg),
        None => fleet.combination(&record),
    };
    let haul = combination.and_then(|combination| fleet.haul(combination, fleet.fitted(&record)?)).map_err(raise)?;
    let gearing = gearing(py, family, &record.variant)?;
    let engine = fleet.engine_curve(&record.engine).map_err(raise)?;
    let rule = fleet.road_model().map_err(raise)?.gear_rule(speed_step_km_h);
    Ok(Rig { haul, gearing, engine, rule })
}
