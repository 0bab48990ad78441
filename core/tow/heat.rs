//! What a unit turns into heat, and what that does to its sump.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};
use crate::real::{exp_m1, ln_1p};
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

pub(super) const WARMED: Card = Card {
    id: "tow.warmed",
    purpose: "Temperature of a sump that is heated and cooled, after a time",
    equation: "t = t_∞ + (t_0 − t_∞)·e^(−τ/τ_0), t_∞ = (P + UA·t_a + G·t_c)/(UA + G), τ_0 = C/(UA + G)",
    symbols: &[
        symbol("t", "temp_c", "°C"),
        symbol("t_∞", "steady_c", "°C"),
        symbol("t_0", "start_c", "°C"),
        symbol("τ", "time_s", "s"),
        symbol("τ_0", "time_constant_s", "s"),
        symbol("P", "loss_kw (in W)", "kW"),
        symbol("UA, t_a", "node.case_w_k, air_c", "W/K, °C"),
        symbol("G, t_c", "node.cooler_w_k, cooler_air_c: 0 without a cooler", "W/K, °C"),
        symbol("C", "node.heat_capacity_j_k", "J/K"),
    ],
    range: "one temperature for fluid and case, constant loss and conductances; exact for these",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 5, lumped capacitance with heat generation",
};

pub(super) const TIME_TO: Card = Card {
    id: "tow.time_to",
    purpose: "Time until a sump reaches a limit",
    equation: "τ = −τ_0·ln(1 − (t_lim − t_0)/(t_∞ − t_0))",
    symbols: &[
        symbol("τ", "time_s: infinite where it never does", "s"),
        symbol("τ_0", "time_constant_s", "s"),
        symbol("t_lim", "limit_c", "°C"),
        symbol("t_0", "start_c", "°C"),
        symbol("t_∞", "steady_c", "°C"),
    ],
    range: "as tow.warmed",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 5, lumped capacitance, solved for the time",
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

pub(super) const COOLER_NEEDED: Card = Card {
    id: "tow.cooler_needed_w_k",
    purpose: "What a cooler must take for each kelvin so that the sump stays at a limit",
    equation: "G = (P − UA·(t_lim − t_a))/(t_lim − t_c)",
    symbols: &[
        symbol("G", "result: 0 where the case alone is enough", "W/K"),
        symbol("P", "loss_kw (in W)", "kW"),
        symbol("UA, t_a", "node.case_w_k, air_c", "W/K, °C"),
        symbol("t_lim", "limit_c", "°C"),
        symbol("t_c", "cooler_air_c", "°C"),
    ],
    range: "steady state",
    source: &card::HEAT_TRANSFER,
    locator: "chapter 5, lumped capacitance at rest",
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
/// * errors: [`Error::OutOfRange`], [`Error::NotPositive`], [`Error::NotFinite`]
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
    let mesh_kw = crate::real::abs(input) * omega * lost / 1000.0;
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
/// * errors: [`Error::OutOfRange`], also where more power would come out than goes in
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
/// * errors: [`Error::OutOfRange`], [`Error::NotPositive`]
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
/// * errors: [`Error::NotPositive`]
pub fn flow_heat_w_k(flow_l_min: f64, density_kg_m3: f64, specific_heat_j_kg_k: f64) -> Result<f64> {
    let kg_s = positive("flow_l_min", flow_l_min)? / 60_000.0 * positive("density_kg_m3", density_kg_m3)?;
    positive("flow_l_min", kg_s * positive("specific_heat_j_kg_k", specific_heat_j_kg_k)?)
}

/// A sump as one temperature: fluid, case and what they touch.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatNode {
    /// Heat that warms it by 1 K: fluid, case and parts.
    pub heat_capacity_j_k: f64,
    /// What the case gives to the air for each kelvin; 0 or more.
    pub case_w_k: f64,
    /// The air around the case.
    pub air_c: f64,
    /// What the cooler takes for each kelvin between sump and its air, [`super::CoolerHeat::conductance_w_k`]; 0 without one.
    pub cooler_w_k: f64,
    /// The air (or coolant) that enters the cooler.
    pub cooler_air_c: f64,
}

/// A sump after a time.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmed {
    /// Temperature then.
    pub temp_c: f64,
    /// Temperature that it goes to; infinite without any cooling.
    pub steady_c: f64,
    /// Time in which it goes 63 % of the way; infinite without any cooling.
    pub time_constant_s: f64,
}

/// When a sump reaches a limit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeTo {
    /// Time until then: 0 where it is there, infinite where it never will be.
    pub time_s: f64,
    /// Temperature that it goes to; infinite without any cooling.
    pub steady_c: f64,
    /// See [`Warmed`].
    pub time_constant_s: f64,
    /// Whether it ever reaches the limit.
    pub reached: bool,
}

/// Least temperature that a sump may have here: absolute zero.
const COLDEST_C: f64 = -273.15;
/// Greatest temperature that a sump may have here: far beyond what fluid survives.
const HOTTEST_C: f64 = 1000.0;

fn temperature(name: &'static str, temp_c: f64) -> Result<f64> {
    within(name, temp_c, COLDEST_C, HOTTEST_C)
}

impl HeatNode {
    pub(super) fn checked(self) -> Result<Self> {
        positive("heat_capacity_j_k", self.heat_capacity_j_k)?;
        within("case_w_k", self.case_w_k, 0.0, 1e9)?;
        within("cooler_w_k", self.cooler_w_k, 0.0, 1e9)?;
        temperature("air_c", self.air_c)?;
        temperature("cooler_air_c", self.cooler_air_c)?;
        Ok(self)
    }

    fn conductance_w_k(self) -> f64 {
        self.case_w_k + self.cooler_w_k
    }

    /// Steady temperature and time constant; infinite without any cooling.
    fn ends(self, loss_kw: f64) -> (f64, f64) {
        let total = self.conductance_w_k();
        if total <= 0.0 {
            let steady = if loss_kw > 0.0 { f64::INFINITY } else { f64::NAN };
            return (steady, f64::INFINITY);
        }
        let given = loss_kw * 1000.0 + self.case_w_k * self.air_c + self.cooler_w_k * self.cooler_air_c;
        (given / total, self.heat_capacity_j_k / total)
    }

    /// Temperature of a sump after a time under a constant loss.
    ///
    /// t = t_∞ + (t_0 − t_∞)·e^(−τ/τ_0), t_∞ = (P + UA·t_a + G·t_c)/(UA + G), τ_0 = C/(UA + G)
    ///
    /// * `start_c` — t_0, −273.15 to 1000; `loss_kw` — P, 0 or more; `time_s` — τ, 0 or more
    /// * returns [`Warmed`]; without any cooling it warms by P·τ/C
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`]
    ///
    /// The exponential is exact while loss and conductances stay as they are: there is no step to choose.
    ///
    /// Source: Incropera, lumped capacitance (from memory). Example: 12 kW into 95 kg of 900 J/(kg·K) that give 180 W/K to
    /// air of 30 °C: 86.64 °C after 900 s.
    ///
    /// ```
    /// use trainwright::tow::HeatNode;
    /// let node = HeatNode { heat_capacity_j_k: 95.0 * 900.0, case_w_k: 180.0, air_c: 30.0, cooler_w_k: 0.0, cooler_air_c: 30.0 };
    /// assert!((node.warmed(30.0, 12.0, 900.0)?.temp_c - 86.6428).abs() < 1e-4);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn warmed(self, start_c: f64, loss_kw: f64, time_s: f64) -> Result<Warmed> {
        let node = self.checked()?;
        let start_c = temperature("start_c", start_c)?;
        let loss_kw = within("loss_kw", loss_kw, 0.0, 1e6)?;
        let time_s = within("time_s", time_s, 0.0, 1e12)?;
        let (steady_c, time_constant_s) = node.ends(loss_kw);
        let temp_c = if time_constant_s.is_finite() {
            start_c - (steady_c - start_c) * exp_m1(-time_s / time_constant_s)
        } else {
            start_c + loss_kw * 1000.0 * time_s / node.heat_capacity_j_k
        };
        let steady_c = if steady_c.is_nan() { start_c } else { steady_c };
        Ok(Warmed { temp_c, steady_c, time_constant_s })
    }

    /// Time until a sump reaches a limit under a constant loss: the minutes left.
    ///
    /// τ = −τ_0·ln(1 − (t_lim − t_0)/(t_∞ − t_0))
    ///
    /// * `start_c` — t_0; `loss_kw` — P, 0 or more; `limit_c` — t_lim, all −273.15 to 1000 °C
    /// * returns [`TimeTo`]
    /// * errors: as [`HeatNode::warmed`]
    ///
    /// A steady value says nothing about a short grade, and a short grade nothing about a long one: hence the time.
    ///
    /// Source: [`HeatNode::warmed`] solved for the time.
    pub fn time_to(self, start_c: f64, loss_kw: f64, limit_c: f64) -> Result<TimeTo> {
        let node = self.checked()?;
        let start_c = temperature("start_c", start_c)?;
        let limit_c = temperature("limit_c", limit_c)?;
        let loss_kw = within("loss_kw", loss_kw, 0.0, 1e6)?;
        let (steady_c, time_constant_s) = node.ends(loss_kw);
        let time_s = if start_c >= limit_c { 0.0 } else { node.crossing_s(start_c, loss_kw, limit_c) };
        let steady_c = if steady_c.is_nan() { start_c } else { steady_c };
        Ok(TimeTo { time_s, steady_c, time_constant_s, reached: time_s.is_finite() })
    }

    /// Time until the temperature passes a limit from either side; infinite where it never does.
    pub(super) fn crossing_s(self, start_c: f64, loss_kw: f64, limit_c: f64) -> f64 {
        let (steady_c, time_constant_s) = self.ends(loss_kw);
        let time_s = if steady_c.is_finite() {
            -time_constant_s * ln_1p(-(limit_c - start_c) / (steady_c - start_c))
        } else {
            (limit_c - start_c) * self.heat_capacity_j_k / (loss_kw * 1000.0)
        };
        if time_s >= 0.0 { time_s } else { f64::INFINITY }
    }

    /// Conductance, W/K, that the cooler must have for the steady temperature to stay at a limit.
    ///
    /// G = (P − UA·(t_lim − t_a))/(t_lim − t_c)
    ///
    /// * `loss_kw` — P; `limit_c` — t_lim, above `cooler_air_c`; the cooler of the node is not used
    /// * returns G; 0 where the case alone is enough
    /// * errors: as [`HeatNode::warmed`]; [`Error::NoAnswer`] for a limit that is no hotter than the air of the cooler
    ///
    /// Source: steady state of [`HeatNode::warmed`].
    pub fn cooler_needed_w_k(self, loss_kw: f64, limit_c: f64) -> Result<f64> {
        let node = self.checked()?;
        let limit_c = temperature("limit_c", limit_c)?;
        let watts = within("loss_kw", loss_kw, 0.0, 1e6)? * 1000.0 - node.case_w_k * (limit_c - node.air_c);
        if watts <= 0.0 {
            return Ok(0.0);
        }
        if limit_c <= node.cooler_air_c {
            return Err(Error::NoAnswer {
                name: "limit_c",
                why: "the air of the cooler is as hot as the limit: no cooler is large enough",
            });
        }
        Ok(watts / (limit_c - node.cooler_air_c))
    }
}
