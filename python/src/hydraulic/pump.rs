//! What a pump delivers.

use pyo3::prelude::*;
use trainwright::hydraulic as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::fluid::Fluid;
use crate::judge::{Budget, Judgment, Reading, Rule};
use crate::quantity::Number;

class! {
    /// Oil at its temperature.
    "trainwright.hydraulic" OilAt = core::OilAt, explained by ["hydraulic.oil_at"] {
        /// Its temperature, °C.
        temp_c: Reading,
        /// Density, kg/m³.
        density_kg_m3: f64,
        /// Kinematic viscosity, mm²/s.
        viscosity_mm2_s: f64,
        /// Dynamic viscosity, mPa·s, with what the temperature leaves uncertain.
        viscosity_mpa_s: Reading,
    }
}

/// Density and viscosity of a fluid at its temperature, with what an uncertain temperature does to them.
/// Source: follows from the definitions (kinematic viscosity); ASTM D341.
///
/// >>> from trainwright.fluid import Fluid
/// >>> from trainwright.judge import Reading
/// >>> alder = Fluid(density_15c_kg_m3=843, expansion_per_k=7.8e-4, viscosity_40c_mm2_s=27.4, viscosity_100c_mm2_s=5.6)
/// >>> oil = oil_at(alder, temp_c=Reading(value=90, u=1))
/// >>> round(oil.viscosity_mpa_s.value, 2), round(oil.viscosity_mpa_s.u, 2)
/// (5.44, 0.12)
#[pyfunction]
#[pyo3(signature = (fluid, *, temp_c))]
pub fn oil_at(fluid: Fluid, temp_c: Reading) -> PyResult<OilAt> {
    answer(core::oil_at(&fluid.0, temp_c.into()))
}

class! {
    /// A pump: its displacement, and a leak that was measured in oil of known viscosity.
    ///
    /// >>> from trainwright.judge import Reading
    /// >>> pump = Pump(displacement_cm3_rev=Reading(value=19.8, u=0.2), leak_l_min_mpa=Reading(value=3.9, u=0.3), leak_viscosity_mpa_s=5.45)
    /// >>> round(pump.pump_flow(speed_rpm=600, pressure_kpa=1700, viscosity_mpa_s=5.45).delivered_l_min, 2)
    /// 5.25
    "trainwright.hydraulic" Pump = core::Pump {
        /// Displacement, cm³ per turn of its shaft.
        displacement_cm3_rev: Reading,
        /// Leak, L/min per MPa, at the viscosity below.
        leak_l_min_mpa: Reading,
        /// Dynamic viscosity of the oil in which that was measured, mPa·s.
        leak_viscosity_mpa_s: f64,
    }
}

class! {
    /// What a pump delivers, with everything that made it.
    "trainwright.hydraulic" PumpFlow = core::PumpFlow, explained by ["hydraulic.pump_flow"] {
        /// Displacement times speed, L/min.
        theoretical_l_min: f64,
        /// Leak back through the clearances, L/min.
        leak_l_min: f64,
        /// What is left for the transmission, L/min; negative where the pump cannot hold this pressure at all.
        delivered_l_min: f64,
        /// Delivered over displaced; 0 where nothing is left.
        volumetric_efficiency: f64,
        /// Torque at its shaft for the pressure, without friction, N·m.
        torque_nm: f64,
        /// Power for the pressure, without friction, kW.
        power_kw: f64,
    }
}

columns! {
    PumpFlow[6]: theoretical_l_min, leak_l_min, delivered_l_min, volumetric_efficiency, torque_nm, power_kw
}

class! {
    /// What is asked of a pump.
    "trainwright.hydraulic" PumpDuty = core::PumpDuty {
        /// Speed of its shaft, 1/min: the engine's, where the converter drives it.
        speed_rpm: Reading,
        /// Line pressure, kPa.
        pressure_kpa: Reading,
        /// Dynamic viscosity of the oil, mPa·s; from `oil_at`.
        viscosity_mpa_s: Reading,
        /// What the transmission takes at this pressure, L/min: lubrication, cooler, valves, seal rings.
        demand_l_min: Reading,
    }
}

class! {
    /// Whether a pump covers the demand, and what that rests on.
    "trainwright.hydraulic" FlowMargin = core::FlowMargin, explained by ["hydraulic.flow_margin"], judged in "L/min",
        inputs ["displacement", "speed", "leak", "viscosity", "pressure", "demand"] {
        /// What it delivers.
        flow: PumpFlow,
        /// Speed below which it can no longer hold the pressure, 1/min.
        least_speed_rpm: f64,
        /// The flow to spare against 0, L/min.
        judgment: Judgment,
        /// Its uncertainty: displacement, speed, leak, viscosity, pressure, demand, in this order.
        budget: Budget,
    }
}

#[pymethods]
impl Pump {
    /// What the pump delivers against a pressure: a `PumpFlow`, or a dictionary of arrays.
    /// Source: Esposito, Fluid Power with Applications, from memory; laminar leak.
    #[pyo3(signature = (*, speed_rpm, pressure_kpa, viscosity_mpa_s))]
    fn pump_flow<'py>(
        &self,
        py: Python<'py>,
        speed_rpm: Input<'py>,
        pressure_kpa: Input<'py>,
        viscosity_mpa_s: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("speed_rpm", speed_rpm), ("pressure_kpa", pressure_kpa), ("viscosity_mpa_s", viscosity_mpa_s)];
        map_class::<PumpFlow, _, 3, 6>(py, columns, |[speed, pressure, viscosity]| {
            self.0.pump_flow(speed, pressure, viscosity)
        })
    }

    /// Speed, 1/min, below which the pump can no longer hold the pressure.
    /// Source: follows from the definitions (`pump_flow` solved for the speed).
    #[pyo3(signature = (*, pressure_kpa, viscosity_mpa_s, demand_l_min, out = None))]
    fn least_speed_rpm<'py>(
        &self,
        py: Python<'py>,
        pressure_kpa: Input<'py>,
        viscosity_mpa_s: Input<'py>,
        demand_l_min: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns =
            [("pressure_kpa", pressure_kpa), ("viscosity_mpa_s", viscosity_mpa_s), ("demand_l_min", demand_l_min)];
        map(py, columns, out, |[pressure, viscosity, demand]| self.0.least_speed_rpm(pressure, viscosity, demand))
    }

    /// Whether the pump covers the demand, with its uncertainty. The worst case is a hot idle at the highest pressure.
    /// Source: JCGM 100:2008, equation 10.
    fn flow_margin(&self, duty: PumpDuty, rule: Rule) -> PyResult<FlowMargin> {
        answer(self.0.flow_margin(duty.into(), rule.into()))
    }

    /// Fluid temperature, °C, above which the pump can no longer hold the pressure at a speed.
    /// Source: follows from the definitions (`pump_flow` solved for the viscosity).
    #[pyo3(signature = (fluid, *, speed_rpm, pressure_kpa, demand_l_min))]
    fn hottest_c(&self, fluid: Fluid, speed_rpm: Number, pressure_kpa: Number, demand_l_min: Number) -> PyResult<f64> {
        let speed_rpm = speed_rpm.value("speed_rpm")?;
        let (pressure_kpa, demand_l_min) = (pressure_kpa.value("pressure_kpa")?, demand_l_min.value("demand_l_min")?);
        answer(self.0.hottest_c(&fluid.0, speed_rpm, pressure_kpa, demand_l_min))
    }
}
