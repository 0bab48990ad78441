//! What a unit turns into heat, what that does to its sump, and the cooler that takes it.

use pyo3::prelude::*;
use trainwright::tow as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns, words};
use crate::error::answer;

words! {
    "arrangement" Arrangement = core::Arrangement {
        Counterflow = "counterflow", Crossflow = "crossflow", Parallel = "parallel",
    }
}

class! {
    /// A unit at work. A road efficiency of a record usually holds drag and pump: then leave both at 0, or they count twice.
    "trainwright.tow" Running = core::Running {
        /// Torque at the input, N·m, either sign.
        input_nm: f64,
        /// Speed of the input, 1/min.
        input_rpm: f64,
        /// Efficiency of the gear, above 0 to 1.
        efficiency: f64,
        /// Drag of open packs, bearings and oil, seen at the input, N·m.
        drag_nm: f64,
        /// Gauge pressure of the pump, kPa.
        pump_kpa: f64,
        /// Flow of the pump, L/min.
        pump_l_min: f64,
        /// Efficiency of the pump, above 0 to 1.
        pump_efficiency: f64,
        /// Heat of the converter, kW; 0 while it is locked.
        converter_kw: f64,
    }
}

class! {
    /// What a unit turns into heat.
    "trainwright.tow" UnitLoss = core::UnitLoss, explained by ["tow.unit_loss"] {
        /// Meshes, and whatever else the efficiency of the gear holds, kW.
        mesh_kw: f64,
        /// Drag, kW.
        drag_kw: f64,
        /// Pump, kW: all that drives it ends as heat.
        pump_kw: f64,
        /// Converter, kW.
        converter_kw: f64,
        /// Sum, kW.
        total_kw: f64,
    }
}

class! {
    /// What a loss warms the oil that flows through.
    "trainwright.tow" ThroughFlow = core::ThroughFlow, explained by ["tow.through_flow_rise"] {
        /// Loss, kW.
        loss_kw: f64,
        /// Rise from inlet to outlet, K.
        rise_k: f64,
    }
}

columns! { ThroughFlow[2]: loss_kw, rise_k }

class! {
    /// A sump as one temperature: fluid, case and what they touch.
    ///
    /// >>> node = HeatNode(heat_capacity_j_k=95 * 900, case_w_k=180, air_c=30, cooler_w_k=0, cooler_air_c=30)
    /// >>> round(node.warmed(start_c=30, loss_kw=12, time_s=900).temp_c, 4)
    /// 86.6428
    "trainwright.tow" HeatNode = core::HeatNode {
        /// Heat that warms it by 1 K: fluid, case and parts, J/K.
        heat_capacity_j_k: f64,
        /// What the case gives to the air for each kelvin, W/K; 0 or more.
        case_w_k: f64,
        /// The air around the case, °C.
        air_c: f64,
        /// What the cooler takes for each kelvin between sump and its air, W/K; 0 without one.
        cooler_w_k: f64,
        /// The air (or coolant) that enters the cooler, °C.
        cooler_air_c: f64,
    }
}

class! {
    /// A sump after a time.
    "trainwright.tow" Warmed = core::Warmed, explained by ["tow.warmed"] {
        /// Temperature then, °C.
        temp_c: f64,
        /// Temperature that it goes to, °C; infinite without any cooling.
        steady_c: f64,
        /// Time in which it goes 63 % of the way, s; infinite without any cooling.
        time_constant_s: f64,
    }
}

columns! { Warmed[3]: temp_c, steady_c, time_constant_s }

class! {
    /// When a sump reaches a limit.
    "trainwright.tow" TimeTo = core::TimeTo, explained by ["tow.time_to"] {
        /// Time until then, s: 0 where it is there, infinite where it never will be.
        time_s: f64,
        /// Temperature that it goes to, °C; infinite without any cooling.
        steady_c: f64,
        /// Time in which it goes 63 % of the way, s; infinite without any cooling.
        time_constant_s: f64,
        /// Whether it ever reaches the limit.
        reached: bool,
    }
}

#[pymethods]
impl HeatNode {
    /// Temperature after a time under a constant loss: a `Warmed`, or a dictionary of arrays.
    /// Source: Incropera, lumped capacitance.
    #[pyo3(signature = (*, start_c, loss_kw, time_s))]
    fn warmed<'py>(
        &self,
        py: Python<'py>,
        start_c: Input<'py>,
        loss_kw: Input<'py>,
        time_s: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("start_c", start_c), ("loss_kw", loss_kw), ("time_s", time_s)];
        map_class::<Warmed, _, 3, 3>(py, columns, |[start, loss, time]| self.0.warmed(start, loss, time))
    }

    /// Time until the sump reaches a limit under a constant loss: the minutes left, in s.
    /// Source: as `warmed`, solved for the time.
    #[pyo3(signature = (*, start_c, loss_kw, limit_c))]
    fn time_to(&self, start_c: f64, loss_kw: f64, limit_c: f64) -> PyResult<TimeTo> {
        answer(self.0.time_to(start_c, loss_kw, limit_c))
    }

    /// Conductance, W/K, that the cooler must have for the steady temperature to stay at a limit; 0 where the case is enough.
    /// Source: steady state of `warmed`.
    #[pyo3(signature = (*, loss_kw, limit_c))]
    fn cooler_needed_w_k(&self, loss_kw: f64, limit_c: f64) -> PyResult<f64> {
        answer(self.0.cooler_needed_w_k(loss_kw, limit_c))
    }
}

class! {
    /// A cooler at a flow of oil and air.
    "trainwright.tow" Cooler = core::Cooler {
        /// Heat that passes for each kelvin of mean difference, W/K: its size, at these flows.
        ua_w_k: f64,
        /// Heat that the oil carries for each kelvin, W/K; see `flow_heat_w_k`.
        oil_w_k: f64,
        /// Heat that the air (or coolant) carries for each kelvin, W/K.
        air_w_k: f64,
        /// How the two pass each other: `"counterflow"`, `"crossflow"`, `"parallel"`.
        arrangement: Arrangement,
    }
}

class! {
    /// What a cooler takes.
    "trainwright.tow" CoolerHeat = core::CoolerHeat, explained by ["tow.cooler_heat"] {
        /// Transfer units.
        transfer_units: f64,
        /// Lesser over greater heat capacity rate.
        capacity_ratio: f64,
        /// Share of the greatest possible heat.
        effectiveness: f64,
        /// Heat for each kelvin between the two that enter, W/K: what a `HeatNode` takes.
        conductance_w_k: f64,
        /// Heat, kW; negative where the air warms the oil.
        power_kw: f64,
        /// Oil that leaves, °C.
        oil_out_c: f64,
        /// Air that leaves, °C.
        air_out_c: f64,
    }
}

columns! { CoolerHeat[7]: transfer_units, capacity_ratio, effectiveness, conductance_w_k, power_kw, oil_out_c, air_out_c }

#[pymethods]
impl Cooler {
    /// Heat that the cooler takes from oil of a temperature: a `CoolerHeat`, or a dictionary of arrays.
    /// Source: Incropera, effectiveness and number of transfer units.
    #[pyo3(signature = (*, oil_c, air_c))]
    fn cooler_heat<'py>(&self, py: Python<'py>, oil_c: Input<'py>, air_c: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("oil_c", oil_c), ("air_c", air_c)];
        map_class::<CoolerHeat, _, 2, 7>(py, columns, |[oil, air]| self.0.cooler_heat(oil, air))
    }
}

class! {
    /// Temperatures that a cooler must bring about.
    "trainwright.tow" CoolerTask = core::CoolerTask {
        /// Oil that enters, °C.
        oil_in_c: f64,
        /// Oil that leaves, °C.
        oil_out_c: f64,
        /// Air (or coolant) that enters, °C.
        air_in_c: f64,
    }
}

class! {
    /// The size of a cooler.
    "trainwright.tow" CoolerSize = core::CoolerSize, explained by ["tow.cooler_size"] {
        /// Heat that it takes, kW.
        power_kw: f64,
        /// Air that leaves, °C.
        air_out_c: f64,
        /// Share of the greatest possible heat.
        effectiveness: f64,
        /// Transfer units.
        transfer_units: f64,
        /// Its size, W/K.
        ua_w_k: f64,
        /// Logarithmic mean difference of a counterflow cooler of these four temperatures, K.
        log_mean_k: f64,
    }
}

/// Heat that a unit makes. Source: power in less power out.
///
/// >>> at_work = Running(input_nm=400, input_rpm=2000, efficiency=0.97, drag_nm=0, pump_kpa=0, pump_l_min=0, pump_efficiency=1,
/// ...                   converter_kw=0)
/// >>> round(unit_loss(at_work).total_kw, 3)
/// 2.513
#[pyfunction]
pub fn unit_loss(running: Running) -> PyResult<UnitLoss> {
    answer(core::unit_loss(running.into()))
}

/// Heat, kW, of a converter that is not locked. Source: SAE J643, definitions.
///
/// >>> round(converter_loss_kw(engine_nm=400, engine_rpm=1500, speed_ratio=0.5, torque_ratio=1.4), 2)
/// 18.85
#[pyfunction]
#[pyo3(signature = (*, engine_nm, engine_rpm, speed_ratio, torque_ratio, out = None))]
pub fn converter_loss_kw<'py>(
    py: Python<'py>,
    engine_nm: Input<'py>,
    engine_rpm: Input<'py>,
    speed_ratio: Input<'py>,
    torque_ratio: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [
        ("engine_nm", engine_nm),
        ("engine_rpm", engine_rpm),
        ("speed_ratio", speed_ratio),
        ("torque_ratio", torque_ratio),
    ];
    map(py, columns, out, |[engine, rpm, ratio, torque]| core::converter_loss_kw(engine, rpm, ratio, torque))
}

/// What a loss warms the oil that flows through: a `ThroughFlow`, or a dictionary of arrays. Source: energy balance.
///
/// >>> round(through_flow_rise(power_kw=150, efficiency=0.92, flow_l_min=12, density_kg_m3=815, specific_heat_j_kg_k=2100).rise_k, 2)
/// 35.06
#[pyfunction]
#[pyo3(signature = (*, power_kw, efficiency, flow_l_min, density_kg_m3, specific_heat_j_kg_k))]
pub fn through_flow_rise<'py>(
    py: Python<'py>,
    power_kw: Input<'py>,
    efficiency: Input<'py>,
    flow_l_min: Input<'py>,
    density_kg_m3: Input<'py>,
    specific_heat_j_kg_k: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [
        ("power_kw", power_kw),
        ("efficiency", efficiency),
        ("flow_l_min", flow_l_min),
        ("density_kg_m3", density_kg_m3),
        ("specific_heat_j_kg_k", specific_heat_j_kg_k),
    ];
    map_class::<ThroughFlow, _, 5, 2>(py, columns, |[power, efficiency, flow, density, heat]| {
        core::through_flow_rise(power, efficiency, flow, density, heat)
    })
}

/// Heat that a flow carries for each kelvin, W/K. Source: follows from the definitions.
#[pyfunction]
#[pyo3(signature = (*, flow_l_min, density_kg_m3, specific_heat_j_kg_k, out = None))]
pub fn flow_heat_w_k<'py>(
    py: Python<'py>,
    flow_l_min: Input<'py>,
    density_kg_m3: Input<'py>,
    specific_heat_j_kg_k: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns =
        [("flow_l_min", flow_l_min), ("density_kg_m3", density_kg_m3), ("specific_heat_j_kg_k", specific_heat_j_kg_k)];
    map(py, columns, out, |[flow, density, heat]| core::flow_heat_w_k(flow, density, heat))
}

/// Share of the greatest possible heat that a cooler of an arrangement passes. Source: Incropera, effectiveness relations.
///
/// >>> effectiveness("counterflow", transfer_units=1, capacity_ratio=1)
/// 0.5
#[pyfunction]
#[pyo3(signature = (arrangement, *, transfer_units, capacity_ratio, out = None))]
pub fn effectiveness<'py>(
    py: Python<'py>,
    arrangement: Arrangement,
    transfer_units: Input<'py>,
    capacity_ratio: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("transfer_units", transfer_units), ("capacity_ratio", capacity_ratio)];
    map(py, columns, out, |[units, ratio]| arrangement.0.effectiveness(units, ratio))
}

/// Transfer units for an effectiveness. Source: Incropera, relations of the number of transfer units.
///
/// >>> transfer_units("counterflow", effectiveness=0.5, capacity_ratio=1)
/// 1.0
#[pyfunction]
#[pyo3(signature = (arrangement, *, effectiveness, capacity_ratio, out = None))]
pub fn transfer_units<'py>(
    py: Python<'py>,
    arrangement: Arrangement,
    effectiveness: Input<'py>,
    capacity_ratio: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("effectiveness", effectiveness), ("capacity_ratio", capacity_ratio)];
    map(py, columns, out, |[passed, ratio]| arrangement.0.transfer_units(passed, ratio))
}

/// Size of a cooler that brings oil from one temperature to another. Source: Incropera, number of transfer units.
///
/// >>> task = CoolerTask(oil_in_c=150, oil_out_c=40, air_in_c=21)
/// >>> round(cooler_size("counterflow", task, oil_w_k=4989.46, air_w_k=5694.32).effectiveness, 4)
/// 0.8527
#[pyfunction]
#[pyo3(signature = (arrangement, task, *, oil_w_k, air_w_k))]
pub fn cooler_size(arrangement: Arrangement, task: CoolerTask, oil_w_k: f64, air_w_k: f64) -> PyResult<CoolerSize> {
    answer(core::cooler_size(arrangement.0, oil_w_k, air_w_k, task.into()))
}
