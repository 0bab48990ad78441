//! Stall: speed, plan, and what a measured one says.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::converter as core;

use super::operating::OperatingPoint;
use super::tables::{Characteristic, EngineCurve};
use crate::array::{Input, Out, map};
use crate::class::{class, words};
use crate::error::answer;
use crate::judge::{Budget, Judgment, Limits, Reading, Rule};
use crate::train::State;

class! {
    /// Air that an engine breathes.
    "trainwright.converter" InletAir = core::InletAir {
        /// Absolute (station) pressure, kPa, 50 to 110; not the reading reduced to sea level.
        pressure_kpa_abs: f64,
        /// Pressure of the water vapor in it, kPa.
        vapor_kpa_abs: f64 = 0.0,
        /// Temperature, °C, −40 to 60.
        temp_c: f64,
    }
}

#[pymethods]
impl InletAir {
    /// The reference air of SAE J1349: 99 kPa dry, 25 °C.
    #[classattr]
    #[pyo3(name = "REFERENCE_J1349")]
    fn reference_j1349() -> Self {
        Self(core::InletAir::REFERENCE_J1349)
    }

    /// Whether SAE J1349 tests in such air: 90 to 105 kPa dry, 15 to 35 °C.
    fn in_test_range_j1349(&self) -> PyResult<bool> {
        answer(self.0.in_test_range_j1349())
    }
}

/// Full-throttle torque of a naturally aspirated spark-ignition engine in reference air over that in this air. Not for a
/// turbocharged engine: how much torque it keeps is for its maker to say. Source: SAE J1349.
///
/// >>> round(air_correction_j1349(InletAir(pressure_kpa_abs=90, temp_c=35)), 4)
/// 1.1396
#[pyfunction]
pub fn air_correction_j1349(air: InletAir) -> PyResult<f64> {
    answer(core::air_correction_j1349(air.into()))
}

/// Torque in the air of the day over that in the air of the engine's curve: the `torque_factor` of a naturally aspirated
/// spark-ignition engine. Source: SAE J1349.
#[pyfunction]
#[pyo3(signature = (*, curve, today))]
pub fn air_torque_factor(curve: InletAir, today: InletAir) -> PyResult<f64> {
    answer(core::air_torque_factor(curve.into(), today.into()))
}

class! {
    /// What a stall speed depends on besides the two tables. Nothing given: as the tables say, and exact.
    "trainwright.converter" StallInputs = core::StallInputs {
        /// Torque over that of the curve: air, fuel, wear of the engine.
        torque_factor: Reading = core::StallInputs::AS_MEASURED.torque_factor,
        /// Torque that accessories take besides those that the curve counts, N·m.
        accessory_nm: Reading = core::StallInputs::AS_MEASURED.accessory_nm,
        /// Capacity factor of this converter over that of the characteristic.
        k_factor: Reading = core::StallInputs::AS_MEASURED.k_factor,
    }
}

class! {
    /// A computed stall.
    "trainwright.converter" StallSpeed = core::StallSpeed, explained by ["converter.stall_speed"],
        inputs ["engine torque", "accessories", "capacity factor"] {
        /// The stall, from the best estimates.
        point: OperatingPoint,
        /// Engine speed, 1/min.
        speed_rpm: Reading,
        /// Torque at the turbine, N·m.
        turbine_nm: Reading,
        /// Uncertainty of the speed: engine torque, accessories, capacity factor, in this order.
        budget: Budget,
    }
}

/// Stall speed of an engine against a converter, with its uncertainty. `inputs` are as the tables say, and exact, unless given.
/// Source: JCGM 100:2008, 5.1.3, note 2.
///
/// >>> engine = EngineCurve(speed_rpm=[1000, 1500, 2000], torque_nm=[330, 365, 395], max_rpm=5700)
/// >>> converter = Characteristic(speed_ratio=[0, 0.9], torque_ratio=[1.88, 1], k_rpm_per_sqrt_nm=[96, 140])
/// >>> round(stall_speed(engine, converter).speed_rpm.value, 2)
/// 1892.29
#[pyfunction]
#[pyo3(signature = (engine, converter, *, inputs = None))]
pub fn stall_speed(
    engine: EngineCurve,
    converter: Characteristic,
    inputs: Option<StallInputs>,
) -> PyResult<StallSpeed> {
    let inputs = inputs.map_or(core::StallInputs::AS_MEASURED, Into::into);
    answer(core::stall_speed(&engine.0, &converter.0, inputs))
}

class! {
    /// A stall speed that was measured, and how it is judged.
    "trainwright.converter" MeasuredStall = core::MeasuredStall {
        /// Engine speed reached, 1/min.
        speed_rpm: Reading,
        /// Differences from the computed speed that prove no fault, 1/min: the lower one negative.
        allow_rpm: Limits,
        /// Share of the computed speed that is missing from which the stator comes first in suspicion, above 0 to 1.
        stator_share: f64,
        /// Difference upward at which the test stops at once, 1/min.
        stop_rpm: f64,
        /// Decision rule.
        rule: Rule,
    }
}

words! {
    "side" StallSide = core::StallSide {
        FarLow = "far low",
        Low = "low",
        Inside = "inside",
        High = "high",
        FarHigh = "far high",
    }
}

class! {
    /// What a measured stall speed says. A side is a suspicion, not proof.
    "trainwright.converter" StallVerdict = core::StallVerdict, explained by ["converter.judge_stall"], judged in "1/min",
        inputs ["reading", "engine torque", "accessories", "capacity factor"] {
        /// The computed stall.
        stall: StallSpeed,
        /// Measured less computed speed, 1/min.
        difference_rpm: Reading,
        /// The difference against what is allowed: GO is "no fault proven", not "no fault".
        judgment: Judgment,
        /// Uncertainty of the difference: reading, engine torque, accessories, capacity factor, in this order.
        budget: Budget,
        /// `"far low"`, `"low"`, `"inside"`, `"high"` or `"far high"`; inside only where the verdict is GO.
        side: StallSide,
        /// The engine curve covers the measured speed. If not, the two shares below are 0.
        explained: bool,
        /// Engine torque over the expected one that alone would explain the speed.
        torque_share: f64,
        /// Capacity factor over the expected one that alone would explain the speed.
        k_share: f64,
    }
}

/// What a measured stall speed says. Source: ISO 14253-1, clause 5.
///
/// >>> from trainwright import Limits, Reading
/// >>> from trainwright.judge import Rule
/// >>> engine = EngineCurve(speed_rpm=[1000, 1500, 2000], torque_nm=[330, 365, 395], max_rpm=5700)
/// >>> converter = Characteristic(speed_ratio=[0, 0.9], torque_ratio=[1.88, 1], k_rpm_per_sqrt_nm=[96, 140])
/// >>> measured = MeasuredStall(speed_rpm=Reading(value=1815, u=5), allow_rpm=Limits(lower=-140, upper=140),
/// ...                          stator_share=0.33, stop_rpm=200, rule=Rule.conformance(0.95))
/// >>> judge_stall(engine, converter, measured).judgment.verdict
/// 'GO'
#[pyfunction]
#[pyo3(signature = (engine, converter, measured, *, inputs = None))]
pub fn judge_stall(
    engine: EngineCurve,
    converter: Characteristic,
    measured: MeasuredStall,
    inputs: Option<StallInputs>,
) -> PyResult<StallVerdict> {
    let inputs = inputs.map_or(core::StallInputs::AS_MEASURED, Into::into);
    answer(core::judge_stall(&engine.0, &converter.0, inputs, measured.into()))
}

class! {
    /// What a stall test must not pass.
    "trainwright.converter" StallRatings = core::StallRatings {
        /// Rated torque at the turbine, N·m.
        turbine_nm: f64,
        /// Rated torque at the output, N·m.
        output_nm: f64,
        /// Longest stall, s.
        longest_s: f64,
    }
}

class! {
    /// The fluid in the converter.
    ///
    /// >>> charge = FluidCharge(volume_l=1.25, density_kg_m3=800, specific_heat_j_kg_k=2000, start_c=70, most_c=150)
    /// >>> charge.rise_k(heat_kw=10, time_s=5)
    /// 25.0
    "trainwright.converter" FluidCharge = core::FluidCharge {
        /// Its volume, L.
        volume_l: f64,
        /// Its density, kg/m³.
        density_kg_m3: f64,
        /// Its specific heat, J/(kg·K).
        specific_heat_j_kg_k: f64,
        /// Temperature at which the stall begins, °C.
        start_c: f64,
        /// Temperature that it must not pass, °C.
        most_c: f64,
    }
}

#[pymethods]
impl FluidCharge {
    /// Temperature rise in a time, K: adiabatic bound, no heat into metal or cooler.
    /// Source: follows from the definitions (conservation of energy).
    #[pyo3(signature = (*, heat_kw, time_s, out = None))]
    fn rise_k<'py>(
        &self,
        py: Python<'py>,
        heat_kw: Input<'py>,
        time_s: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("heat_kw", heat_kw), ("time_s", time_s)], out, |[heat, time]| self.0.rise_k(heat, time))
    }

    /// Seconds until the fluid reaches `most_c`; 0 where it is as hot already.
    /// Source: follows from the definitions (`rise_k` solved for the time).
    #[pyo3(signature = (*, heat_kw, out = None))]
    fn heat_s<'py>(&self, py: Python<'py>, heat_kw: Input<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("heat_kw", heat_kw)], out, |[heat]| self.0.heat_s(heat))
    }
}

class! {
    /// A stall test before it is made. `allowed` says that the record does not forbid it; whether it may be made is up to the
    /// vehicle maker.
    "trainwright.converter" StallPlan = core::StallPlan, explained by ["converter.plan_stall"] {
        /// The stall.
        point: OperatingPoint,
        /// What it must not pass.
        ratings: StallRatings,
        /// Ratio of the gear; negative in reverse.
        gear_ratio: f64,
        /// Torque at the output while it is held, N·m, without sign.
        output_nm: f64,
        /// Turbine torque over its rating.
        turbine_share: f64,
        /// Output torque over its rating.
        output_share: f64,
        /// The rated turbine torque would be passed.
        turbine_passed: bool,
        /// The rated output torque would be passed.
        output_passed: bool,
        /// The fluid is too hot to begin.
        too_hot: bool,
        /// Nothing of the above.
        allowed: bool,
        /// Rise of the fluid in the longest stall of the record, K: adiabatic bound.
        rise_k: f64,
        /// Seconds until the fluid is as hot as it may be.
        heat_s: f64,
        /// Seconds that both heat and record leave; 0 where the test is refused.
        permitted_s: f64,
        /// Greatest turbine torque that passes no rating, N·m.
        limit_turbine_nm: f64,
        /// Engine torque that gives it at stall, N·m.
        limit_engine_nm: f64,
        /// Engine speed at that stall, 1/min.
        limit_rpm: f64,
        /// Heat of that stall, kW.
        limit_heat_kw: f64,
        /// Seconds that heat and record leave at that stall.
        limit_s: f64,
    }
}

/// Plans a stall test, or says why it must not be made: not `allowed` where a rating would be passed, with the engine torque
/// that would pass none. `stall` is an operating point with the turbine standing, `state` the gear.
/// Source: follows from the definitions of torque ratio, gear ratio and capacity factor.
#[pyfunction]
#[pyo3(signature = (stall, state, *, ratings, charge))]
pub fn plan_stall(
    stall: OperatingPoint,
    state: PyRef<'_, State>,
    ratings: StallRatings,
    charge: FluidCharge,
) -> PyResult<StallPlan> {
    answer(core::plan_stall(&stall.0, state.solved(), ratings.into(), charge.into()))
}

/// Torque, N·m, on each closed element of a gear at a turbine torque, by its name; `None` where statics cannot tell.
/// Source: follows from the definitions (equilibrium of the gear train).
#[pyfunction]
#[pyo3(signature = (state, *, turbine_nm))]
pub fn element_torques<'py>(py: Python<'py>, state: PyRef<'_, State>, turbine_nm: f64) -> PyResult<Bound<'py, PyDict>> {
    let torques = core::element_torques(state.solved(), turbine_nm).map_err(crate::error::raise)?;
    let by_name = PyDict::new(py);
    let named = state.train().elements.iter().zip(torques.torque_nm).zip((0..u32::BITS).map(|place| 1 << place));
    for ((name, torque_nm), bit) in named.filter(|(_, bit)| (torques.known | torques.unknown) & bit != 0) {
        by_name.set_item(name, (torques.known & bit != 0).then_some(torque_nm))?;
    }
    Ok(by_name)
}

class! {
    /// Slip that the control of a lock-up clutch aims at, and slip that is a fault.
    "trainwright.converter" SlipLimits = core::SlipLimits {
        /// Greatest slip that the control aims at, 1/min.
        target_rpm: f64,
        /// Slip that is a fault, 1/min.
        alarm_rpm: f64,
        /// Decision rule.
        rule: Rule,
    }
}

class! {
    /// Slip of a lock-up clutch, judged. What torque the clutch still has in hand it does not say.
    "trainwright.converter" LockupSlip = core::LockupSlip, explained by ["converter.lockup_slip"], judged in "1/min",
        inputs ["engine speed", "turbine speed"] {
        /// Engine speed less turbine speed, 1/min; negative while the wheels drive the engine.
        slip_rpm: Reading,
        /// The slip against what the control aims at.
        on_target: Judgment,
        /// The slip against what is a fault: NO-GO is a proven one.
        within_alarm: Judgment,
        /// Uncertainty: engine speed, turbine speed, in this order.
        budget: Budget,
    }
}

/// Slip of a lock-up clutch against the slip that its control aims at and the slip that is a fault. For a speed from a bus take
/// `Reading.quantized`. Source: ISO 14253-1, clause 5.
///
/// >>> from trainwright import Reading
/// >>> from trainwright.judge import Rule
/// >>> limits = SlipLimits(target_rpm=20, alarm_rpm=70, rule=Rule.conformance(0.95))
/// >>> slip = lockup_slip(engine_rpm=Reading.quantized(2160, quantum=0.125),
/// ...                    turbine_rpm=Reading.quantized(2140, quantum=0.125), limits=limits)
/// >>> slip.slip_rpm.value, slip.within_alarm.verdict
/// (20.0, 'GO')
#[pyfunction]
#[pyo3(signature = (*, engine_rpm, turbine_rpm, limits))]
pub fn lockup_slip(engine_rpm: Reading, turbine_rpm: Reading, limits: SlipLimits) -> PyResult<LockupSlip> {
    answer(core::lockup_slip(engine_rpm.into(), turbine_rpm.into(), limits.into()))
}
