//! What every gear is asked for on a grade.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::tow as core;

use crate::class::{Field, class, words};
use crate::road::RoadLoad;

words! {
    "standing" Standing = core::GearStanding {
        Holds = "holds", LittleReserve = "little reserve", TooWeak = "too weak", BelowLockUp = "below lock-up",
        OverSpeed = "over speed", Reverse = "reverse",
    }
}

words! {
    "limit" PullLimit = core::PullLimit { Engine = "engine", Input = "rated input", Output = "rated output" }
}

words! {
    "limit" SpeedLimit = core::SpeedLimit {
        Asked = "as asked", EngineTorque = "engine torque", EngineSpeed = "engine speed", RatedInput = "rated input",
        RatedOutput = "rated output",
    }
}

class! {
    /// One gear on a grade.
    "trainwright.tow" GearPull = core::GearPull {
        /// Input over output speed.
        ratio: f64,
        /// Engine and input speed, lock-up clutch closed, 1/min.
        engine_rpm: f64,
        /// Torque at the input, N·m; negative on the overrun.
        input_nm: f64,
        /// Full-throttle torque of the engine at this speed, N·m; 0 where its table does not say.
        full_nm: f64,
        /// Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
        reserve: f64,
        /// Torque at the input over its rating.
        use_of_input: f64,
        /// How the gear stands: `"holds"`, `"little reserve"`, `"too weak"`, `"below lock-up"`, `"over speed"`, `"reverse"`.
        standing: Standing,
    }
}

class! {
    /// The largest speed on a grade. What the engine holds is not what may be pulled, nor what brakes hold downhill.
    "trainwright.tow" LargestSpeed = core::LargestSpeed, explained by ["tow.largest_speed"] {
        /// Road speed, km/h.
        speed_km_h: f64,
        /// Place of the gear.
        gear: u32,
        /// Engine speed, 1/min.
        engine_rpm: f64,
        /// Torque at the input, N·m.
        input_nm: f64,
        /// The same over its rating.
        use_of_input: f64,
        /// Torque at the output over its rating.
        use_of_output: f64,
        /// What keeps it from going faster.
        limit: SpeedLimit,
    }
}

class! {
    /// One gear on a grade with the lock-up clutch open.
    "trainwright.tow" UnlockedPull = core::UnlockedPull, explained by ["tow.unlocked_pull"] {
        /// Speed of turbine and input shaft, 1/min.
        turbine_rpm: f64,
        /// Torque there, N·m.
        turbine_nm: f64,
        /// Turbine speed over engine speed.
        speed_ratio: f64,
        /// Turbine torque over engine torque.
        torque_ratio: f64,
        /// Engine speed, 1/min.
        engine_rpm: f64,
        /// Engine torque that the converter takes there, N·m.
        engine_nm: f64,
        /// Full-throttle torque of the engine at that speed, N·m; 0 where its table does not say.
        full_nm: f64,
        /// Share of full torque in hand; negative where the engine is too weak, 0 where its table does not say.
        reserve: f64,
        /// The engine can give that torque at that speed.
        holds: bool,
        /// Torque at the turbine over the rating of the input.
        use_of_input: f64,
        /// Heat of the converter, kW.
        converter_kw: f64,
    }
}

/// Every gear on a grade at one speed. A computed capability is not a rating: the vehicle maker's ratings stand.
#[pyclass(frozen, from_py_object, module = "trainwright.tow")]
#[derive(Clone, Debug, PartialEq)]
pub struct Pull {
    pub core: core::Pull,
    pub names: Vec<String>,
}

crate::class::explained!(Pull, ["tow.pull", "tow.pull_slowed"], , []);

#[pymethods]
impl Pull {
    /// Grade, %.
    #[getter]
    fn grade_pct(&self) -> f64 {
        self.core.grade_pct
    }

    /// Road speed, km/h.
    #[getter]
    fn speed_km_h(&self) -> f64 {
        self.core.speed_km_h
    }

    /// What the road takes.
    #[getter]
    fn load(&self) -> RoadLoad {
        self.core.load.into()
    }

    /// Output-shaft speed, 1/min.
    #[getter]
    fn output_rpm(&self) -> f64 {
        self.core.output_rpm
    }

    /// Torque at the output shaft, N·m; negative downhill, where the road pushes.
    #[getter]
    fn output_nm(&self) -> f64 {
        self.core.output_nm
    }

    /// Torque at the output over its rating.
    #[getter]
    fn use_of_output(&self) -> f64 {
        self.core.use_of_output
    }

    /// Every gear by its name.
    #[getter]
    fn gears<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let gears = PyDict::new(py);
        for (name, gear) in self.names.iter().zip(self.core.gears()) {
            gears.set_item(name, GearPull(*gear))?;
        }
        Ok(gears)
    }

    /// Name of the highest gear that holds with the reserve; None where none does.
    #[getter]
    fn chosen(&self) -> Option<&str> {
        self.name(self.core.chosen)
    }

    /// Name of the highest gear that holds with the reserve within the ratings: lower than `chosen` advises a downshift, None
    /// less speed or less load.
    #[getter]
    fn advised(&self) -> Option<&str> {
        self.name(self.core.advised)
    }

    /// The chosen gear; None where none holds.
    #[getter]
    fn gear(&self) -> Option<GearPull> {
        self.core.chosen_gear().map(GearPull)
    }

    /// What the chosen gear is nearest to: `"engine"`, `"rated input"`, `"rated output"`.
    #[getter]
    fn limit(&self) -> PullLimit {
        self.core.limit.into()
    }

    /// How near: 1 at the limit, 0 where no gear is chosen.
    #[getter]
    fn use_of_limit(&self) -> f64 {
        self.core.use_of_limit
    }

    /// The fields by name; the figures of the chosen gear under `gear`.
    fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let fields = PyDict::new(py);
        fields.set_item("grade_pct", self.core.grade_pct)?;
        fields.set_item("speed_km_h", self.core.speed_km_h)?;
        fields.set_item("load", self.load().plain(py)?)?;
        fields.set_item("output_rpm", self.core.output_rpm)?;
        fields.set_item("output_nm", self.core.output_nm)?;
        fields.set_item("use_of_output", self.core.use_of_output)?;
        let gears = PyDict::new(py);
        for (name, gear) in self.names.iter().zip(self.core.gears()) {
            gears.set_item(name, GearPull(*gear).plain(py)?)?;
        }
        fields.set_item("gears", gears)?;
        fields.set_item("chosen", self.chosen())?;
        fields.set_item("advised", self.advised())?;
        fields.set_item("limit", self.limit())?;
        fields.set_item("use_of_limit", self.core.use_of_limit)?;
        Ok(fields)
    }

    fn __eq__(&self, other: &Self) -> bool {
        self == other
    }

    fn __repr__(&self) -> String {
        let gear = self.chosen().map_or("no gear holds".into(), |name| format!("gear {name}"));
        format!("<pull on {} % at {} km/h: {gear}>", self.core.grade_pct, self.core.speed_km_h)
    }
}

impl Pull {
    fn name(&self, place: u32) -> Option<&str> {
        self.names.get(place as usize).map(String::as_str)
    }
}
