//! What a unit turns into heat.

use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, positive, within};
use crate::real::abs;
use crate::units::rad_s;

pub(super) const UNIT_LOSS: Card = Card {
    id: "tow.unit_loss",
    purpose: "Heat that a unit makes: meshes, drag, pump and converter",
    equation: "P = |T_in|·ω·(1 − η) + T_d·ω + p·Q/η_p + P_c",
    symbols: &[
        symbol("P", "total_kw", "kW"),
        symbol("T_in", "running.input_nm, at the angular speed ω of running.input_rpm", "N·m"),
        symbol("ω", "angular speed of the input", "rad/s"),
        symbol("η", "running.efficiency", "1"),
        symbol("T_d", "running.drag_nm: of open packs, bearings and oil, seen at the input", "N·m"),
        symbol("p, Q", "running.pump_kpa, pump_l_min", "kPa, L/min"),
        symbol("η_p", "running.pump_efficiency", "1"),
        symbol("P_c", "running.converter_kw", "kW"),
    ],
    range: "steady running. A road efficiency of a record usually holds drag and pump: then give 0 for both, or they count twice",
    source: &card::DEFINITION,
    locator: "power in less power out",
};

pub(super) const CONVERTER_LOSS: Card = Card {
    id: "tow.converter_loss_kw",
    purpose: "Heat of a converter that is not locked",
    equation: "P = T_e·ω_e·(1 − ν·μ)",
    symbols: &[
        symbol("P", "result", "kW"),
        symbol("T_e", "engine_nm, at the angular speed ω_e of engine_rpm", "N·m"),
        symbol("ω_e", "angular speed of the engine", "rad/s"),
        symbol("ν", "speed_ratio", "1"),
        symbol("μ", "torque_ratio", "1"),
    ],
    range: "all of it goes into the fluid: minutes, not hours",
    source: &card::CONVERTER_TEST,
    locator: "definitions",
};

pub(super) const THROUGH_FLOW_RISE: Card = Card {
    id: "tow.through_flow_rise",
    purpose: "What a loss warms the oil that flows through",
    equation: "q = P·(1 − η), ΔT = q/(ρ·Q·c)",
    symbols: &[
        symbol("q", "loss_kw", "kW"),
        symbol("P", "power_kw", "kW"),
        symbol("η", "efficiency", "1"),
        symbol("ΔT", "rise_k", "K"),
        symbol("ρ", "density_kg_m3", "kg/m³"),
        symbol("Q", "flow_l_min", "L/min"),
        symbol("c", "specific_heat_j_kg_k", "J/(kg·K)"),
    ],
    range: "all of the loss goes into this flow",
    source: &card::DEFINITION,
    locator: "energy balance of a flow",
};

pub(super) const FLOW_HEAT: Card = Card {
    id: "tow.flow_heat_w_k",
    purpose: "Heat that a flow carries for each kelvin",
    equation: "C = ρ·Q·c",
    symbols: &[
        symbol("C", "result", "W/K"),
        symbol("ρ", "density_kg_m3", "kg/m³"),
        symbol("Q", "flow_l_min", "L/min"),
        symbol("c", "specific_heat_j_kg_k", "J/(kg·K)"),
    ],
    range: "one fluid, no boiling",
    source: &card::DEFINITION,
    locator: "heat capacity rate",
};

/// A unit at work.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Running {
    /// Torque at the input, either sign.
    pub input_nm: f64,
    /// Speed of the input.
    pub input_rpm: f64,
    /// Efficiency of the gear, above 0 to 1.
    pub efficiency: f64,
    /// Drag of open packs, bearings and oil, seen at the input; 0 where the efficiency holds it.
    pub drag_nm: f64,
    /// Gauge pressure of the pump; 0 where the efficiency holds it.
    pub pump_kpa: f64,
    /// Flow of the pump.
    pub pump_l_min: f64,
    /// Efficiency of the pump, above 0 to 1.
    pub pump_efficiency: f64,
    /// Heat of the converter; 0 while it is locked.
    pub converter_kw: f64,
}

/// What it turns into heat.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnitLoss {
    /// Meshes, and whatever else the efficiency of the gear holds.
    pub mesh_kw: f64,
    /// Drag.
    pub drag_kw: f64,
    /// Pump: all that drives it ends as heat.
    pub pump_kw: f64,
    /// Converter.
    pub converter_kw: f64,
    /// Sum.
    pub total_kw: f64,
}

/// Heat that a unit makes.
///
/// P = |T_in|·ω·(1 − η) + T_d·ω + p·Q/η_p + P_c
///
/// * `running` — T_in, ω, η, T_d, p, Q, η_p and P_c; speeds, drag, pressure and flow 0 or more
/// * returns [`UnitLoss`]
/// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotPositive`], [`crate::Error::NotFinite`]
///
/// Source: power in less power out (derived). Example: 150 kW at an efficiency of 0.92 leave 12 kW.
///
/// ```
/// use trainwright::tow::{Running, unit_loss};
/// let input_rpm = 150e3 / 500.0 * 30.0 / core::f64::consts::PI;
/// let running = Running {
///     input_nm: 500.0, input_rpm, efficiency: 0.92, drag_nm: 0.0, pump_kpa: 0.0, pump_l_min: 0.0, pump_efficiency: 1.0,
///     converter_kw: 0.0,
/// };
/// assert!((unit_loss(running)?.total_kw - 12.0).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn unit_loss(running: Running) -> Result<UnitLoss> {
    let input = finite("input_nm", running.input_nm)?;
    let omega = rad_s(within("input_rpm", running.input_rpm, 0.0, 1e6)?);
    let efficiency = positive("efficiency", within("efficiency", running.efficiency, 0.0, 1.0)?)?;
    let pump = positive("pump_efficiency", within("pump_efficiency", running.pump_efficiency, 0.0, 1.0)?)?;
    let pressure = within("pump_kpa", running.pump_kpa, 0.0, 1e6)?;
    let flow = within("pump_l_min", running.pump_l_min, 0.0, 1e6)?;
    // Driven from the output the input gives T_in·ω, and what enters is that over the efficiency.
    let lost = if input < 0.0 { 1.0 / efficiency - 1.0 } else { 1.0 - efficiency };
    let mesh_kw = abs(input) * omega * lost / 1000.0;
    let drag_kw = within("drag_nm", running.drag_nm, 0.0, 1e6)? * omega / 1000.0;
    let pump_kw = pressure * flow / 60_000.0 / pump;
    let converter_kw = within("converter_kw", running.converter_kw, 0.0, 1e6)?;
    Ok(UnitLoss { mesh_kw, drag_kw, pump_kw, converter_kw, total_kw: mesh_kw + drag_kw + pump_kw + converter_kw })
}

/// Heat of a converter that is not locked, kW.
///
/// P = T_e·ω_e·(1 − ν·μ)
///
/// * `engine_nm` — T_e, 0 or more; `engine_rpm` — 0 or more; `speed_ratio` — ν, 0 to 1; `torque_ratio` — μ, 0 to 10
/// * errors: [`crate::Error::OutOfRange`], also where more power would come out than goes in
///
/// Source: SAE J643, definitions (from memory). Example: 400 N·m at 1500 1/min, ν 0.5, μ 1.4 leave 18.85 kW.
///
/// ```
/// assert!((trainwright::tow::converter_loss_kw(400.0, 1500.0, 0.5, 1.4)? - 18.8496).abs() < 1e-4);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn converter_loss_kw(engine_nm: f64, engine_rpm: f64, speed_ratio: f64, torque_ratio: f64) -> Result<f64> {
    let power = within("engine_nm", engine_nm, 0.0, 1e6)? * rad_s(within("engine_rpm", engine_rpm, 0.0, 1e6)?);
    let efficiency = crate::converter::efficiency(speed_ratio, torque_ratio)?;
    Ok(power * (1.0 - efficiency) / 1000.0)
}

/// What a loss warms the oil that flows through.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThroughFlow {
    /// Loss.
    pub loss_kw: f64,
    /// Rise from inlet to outlet.
    pub rise_k: f64,
}

/// What a loss warms the oil that flows through.
///
/// q = P·(1 − η), ΔT = q/(ρ·Q·c)
///
/// * `power_kw` — P, 0 or more; `efficiency` — η, above 0 to 1; `flow_l_min` — Q, above 0; `density_kg_m3` — ρ, above 0;
///   `specific_heat_j_kg_k` — c, above 0
/// * returns [`ThroughFlow`]
/// * errors: [`crate::Error::OutOfRange`], [`crate::Error::NotPositive`]
///
/// Source: energy balance (derived). Example: 150 kW at 0.92 into 12 L/min of 815 kg/m³ and 2100 J/(kg·K): 35.06 K.
///
/// ```
/// let flow = trainwright::tow::through_flow_rise(150.0, 0.92, 12.0, 815.0, 2100.0)?;
/// assert!((flow.rise_k - 35.057).abs() < 0.001);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn through_flow_rise(
    power_kw: f64,
    efficiency: f64,
    flow_l_min: f64,
    density_kg_m3: f64,
    specific_heat_j_kg_k: f64,
) -> Result<ThroughFlow> {
    let efficiency = positive("efficiency", within("efficiency", efficiency, 0.0, 1.0)?)?;
    let loss_kw = within("power_kw", power_kw, 0.0, 1e6)? * (1.0 - efficiency);
    let flow_w_k = flow_heat_w_k(flow_l_min, density_kg_m3, specific_heat_j_kg_k)?;
    Ok(ThroughFlow { loss_kw, rise_k: loss_kw * 1000.0 / flow_w_k })
}

/// Heat that a flow carries for each kelvin, W/K: ρ·Q·c.
///
/// * `flow_l_min`, `density_kg_m3`, `specific_heat_j_kg_k` — above 0
/// * errors: [`crate::Error::NotPositive`]
pub fn flow_heat_w_k(flow_l_min: f64, density_kg_m3: f64, specific_heat_j_kg_k: f64) -> Result<f64> {
    let kg_s = positive("flow_l_min", flow_l_min)? / 60_000.0 * positive("density_kg_m3", density_kg_m3)?;
    positive("flow_l_min", kg_s * positive("specific_heat_j_kg_k", specific_heat_j_kg_k)?)
}
