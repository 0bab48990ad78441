//! What a pump delivers: its displacement, less what leaks back.

use super::displacement::displaced;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::fluid::{Fluid, dynamic_viscosity};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::units::rad_s;

pub(super) const OIL_AT: Card = Card {
    id: "hydraulic.oil_at",
    purpose: "Density and viscosity of the oil at its temperature, with what an uncertain temperature does to them",
    equation: "η = ν ρ/1000, u_η = |dη/dt| u_t",
    symbols: &[
        symbol("η, u_η", "viscosity_mpa_s", "mPa·s"),
        symbol("ν", "viscosity_mm2_s, fluid.viscosity_at", "mm²/s"),
        symbol("ρ", "density_kg_m3, fluid.density", "kg/m³"),
        symbol("u_t", "temp_c.u", "K"),
    ],
    range: "as the line of the viscosity; −50 to 150 °C; the slope from one kelvin to either side",
    source: &card::DEFINITION,
    locator: "definition of kinematic viscosity",
};

pub(super) const PUMP_FLOW: Card = Card {
    id: "hydraulic.pump_flow",
    purpose: "What a pump delivers against a pressure: its displacement less the leak back through its clearances",
    equation: "Q = Q_th − Q_k, Q_th = V n/1000, Q_k = k p η_0/(1000 η), η_v = Q/Q_th, T = V p/(2000 π), P = T ω",
    symbols: &[
        symbol("Q", "delivered_l_min", "L/min"),
        symbol("Q_th", "theoretical_l_min", "L/min"),
        symbol("Q_k", "leak_l_min", "L/min"),
        symbol("V", "displacement_cm3_rev", "cm³ per turn"),
        symbol("n", "speed_rpm", "1/min"),
        symbol("k, η_0", "leak_l_min_mpa, leak_viscosity_mpa_s", "L/min per MPa, mPa·s"),
        symbol("p", "pressure_kpa", "kPa"),
        symbol("η", "viscosity_mpa_s", "mPa·s"),
        symbol("η_v", "volumetric_efficiency", "1"),
        symbol("T, P", "torque_nm, power_kw", "N·m, kW"),
        symbol("ω", "speed in radians", "rad/s"),
    ],
    range: "laminar leak through narrow clearances, proportional to the pressure and to one over the viscosity; suction full; torque and power without friction",
    source: &card::FLUID_POWER,
    locator: "pump performance; leak as in hydraulic.slot_flow",
};

pub(super) const LEAST_SPEED: Card = Card {
    id: "hydraulic.least_speed_rpm",
    purpose: "Speed below which a pump can no longer hold the pressure",
    equation: "n = 1000 (Q_d + Q_k)/V",
    symbols: &[
        symbol("n", "result", "1/min"),
        symbol("Q_d", "demand_l_min", "L/min"),
        symbol("Q_k", "leak, as hydraulic.pump_flow", "L/min"),
        symbol("V", "displacement_cm3_rev", "cm³ per turn"),
    ],
    range: "as hydraulic.pump_flow",
    source: &card::DEFINITION,
    locator: "hydraulic.pump_flow solved for the speed",
};

pub(super) const FLOW_MARGIN: Card = Card {
    id: "hydraulic.flow_margin",
    purpose: "Whether a pump covers the demand at this speed, pressure and viscosity, with its uncertainty",
    equation: "Q_s = V n/1000 − k p η_0/(1000 η) − Q_d; u² = Σ (c_i u_i)²; judged: Q_s ≥ 0",
    symbols: &[
        symbol("Q_s", "judgment.reading", "L/min"),
        symbol("V, n", "displacement_cm3_rev, speed_rpm", "cm³ per turn, 1/min"),
        symbol("k, η_0", "leak_l_min_mpa, leak_viscosity_mpa_s", "L/min per MPa, mPa·s"),
        symbol("p, η", "pressure_kpa, viscosity_mpa_s", "kPa, mPa·s"),
        symbol("Q_d", "demand_l_min", "L/min"),
        symbol("c_i, u_i", "sensitivity and uncertainty of each input", "L/min per input, of the input"),
    ],
    range: "as hydraulic.pump_flow; independent inputs",
    source: &card::GUM,
    locator: "equation 10",
};

pub(super) const HOTTEST: Card = Card {
    id: "hydraulic.hottest_c",
    purpose: "Fluid temperature above which a pump can no longer hold the pressure at a speed",
    equation: "η(t) = k p η_0/(1000 Q_th − 1000 Q_d), solved for t",
    symbols: &[
        symbol("t", "result", "°C"),
        symbol("η", "hydraulic.oil_at", "mPa·s"),
        symbol("k, η_0", "leak_l_min_mpa, leak_viscosity_mpa_s", "L/min per MPa, mPa·s"),
        symbol("p", "pressure_kpa", "kPa"),
        symbol("Q_th, Q_d", "displaced at this speed, demand_l_min", "L/min"),
    ],
    range: "−50 to 150 °C, where the density of the fluid is known; the demand is taken as the same at every temperature",
    source: &card::DEFINITION,
    locator: "hydraulic.pump_flow solved for the temperature",
};

/// Oil at its temperature.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OilAt {
    /// Its temperature, °C.
    pub temp_c: Reading,
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Kinematic viscosity, mm²/s.
    pub viscosity_mm2_s: f64,
    /// Dynamic viscosity, mPa·s, with what the temperature leaves uncertain.
    pub viscosity_mpa_s: Reading,
}

/// Density and viscosity of a fluid at its temperature.
///
/// η = ν ρ/1000, u_η = |dη/dt| u_t
///
/// * `fluid` — the fluid; `temp_c` — t with its uncertainty, °C, −49 to 149
/// * returns [`OilAt`]
/// * errors: as [`Fluid::density`] and [`crate::fluid::ViscosityLine::viscosity_at`]
///
/// Source: definition of kinematic viscosity. Example (computed): 5.6 mm²/s at 100 °C and 790 kg/m³ are 4.4 mPa·s.
///
/// ```
/// use trainwright::{fluid::Fluid, hydraulic::oil_at, judge::Reading};
/// let alder = Fluid {
///     density_15c_kg_m3: 843.0, expansion_per_k: 7.8e-4, viscosity_40c_mm2_s: 27.4, viscosity_100c_mm2_s: 5.6,
/// };
/// let oil = oil_at(&alder, Reading::new(100.0, 1.0)?)?;
/// assert!((oil.viscosity_mpa_s.value - 5.6 * oil.density_kg_m3 / 1000.0).abs() < 1e-9);
/// assert!((oil.viscosity_mpa_s.u - 0.085).abs() < 0.005); // two percent for a kelvin
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn oil_at(fluid: &Fluid, temp_c: Reading) -> Result<OilAt> {
    let temp_c = Reading::new(temp_c.value, temp_c.u)?;
    within("temp_c", temp_c.value, -49.0, 149.0)?;
    let dynamic = |at_c: f64| -> Result<f64> {
        dynamic_viscosity(fluid.viscosity_line()?.viscosity_at(at_c)?, fluid.density(at_c)?)
    };
    let slope = (dynamic(temp_c.value + 1.0)? - dynamic(temp_c.value - 1.0)?) / 2.0;
    Ok(OilAt {
        temp_c,
        density_kg_m3: fluid.density(temp_c.value)?,
        viscosity_mm2_s: fluid.viscosity_line()?.viscosity_at(temp_c.value)?,
        viscosity_mpa_s: Reading { value: dynamic(temp_c.value)?, u: -slope * temp_c.u },
    })
}

/// A pump: its displacement, and a leak that was measured in oil of known viscosity.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pump {
    /// Displacement, cm³ per turn of its shaft.
    pub displacement_cm3_rev: Reading,
    /// Leak, L/min per MPa, at the viscosity below.
    pub leak_l_min_mpa: Reading,
    /// Dynamic viscosity of the oil in which that was measured, mPa·s.
    pub leak_viscosity_mpa_s: f64,
}

/// What a pump delivers, with everything that made it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PumpFlow {
    /// Displacement times speed, L/min.
    pub theoretical_l_min: f64,
    /// Leak back through the clearances, L/min.
    pub leak_l_min: f64,
    /// What is left for the transmission, L/min; negative where the pump cannot hold this pressure at all.
    pub delivered_l_min: f64,
    /// Delivered over displaced; 0 where nothing is left.
    pub volumetric_efficiency: f64,
    /// Torque at its shaft for the pressure, without friction, N·m.
    pub torque_nm: f64,
    /// Power for the pressure, without friction, kW.
    pub power_kw: f64,
}

/// What is asked of a pump.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PumpDuty {
    /// Speed of its shaft, 1/min, above 0: the engine's, where the converter drives it.
    pub speed_rpm: Reading,
    /// Line pressure, kPa, 0 or more.
    pub pressure_kpa: Reading,
    /// Dynamic viscosity of the oil, mPa·s, above 0; from [`oil_at`].
    pub viscosity_mpa_s: Reading,
    /// What the transmission takes at this pressure, L/min: lubrication, cooler, valves, seal rings.
    pub demand_l_min: Reading,
}

/// Whether a pump covers the demand, and what that rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlowMargin {
    /// What it delivers.
    pub flow: PumpFlow,
    /// Speed below which it can no longer hold the pressure, 1/min.
    pub least_speed_rpm: f64,
    /// The flow to spare against 0, L/min.
    pub judgment: Judgment,
    /// Its uncertainty: displacement, speed, leak, viscosity, pressure, demand, in this order.
    pub budget: Budget,
}

impl Pump {
    fn leak_per_mpa(self, viscosity_mpa_s: f64) -> Result<f64> {
        let leak = within("leak_l_min_mpa", self.leak_l_min_mpa.value, 0.0, 1e3)?;
        let reference = viscosity("leak_viscosity_mpa_s", self.leak_viscosity_mpa_s)?;
        Ok(leak * reference / viscosity("viscosity_mpa_s", viscosity_mpa_s)?)
    }

    /// What the pump delivers against a pressure.
    ///
    /// Q = V n/1000 − k p η_0/(1000 η)
    ///
    /// * `speed_rpm` — n, 0 to 2e4; `pressure_kpa` — p, 0 to 1e5; `viscosity_mpa_s` — η, above 0 to 1e6
    /// * returns [`PumpFlow`]
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`]
    ///
    /// Source: Esposito, Fluid Power with Applications (from memory); laminar leak. Example (by hand): 19.8 cm³ per turn at
    /// 600 1/min displace 11.88 L/min; a leak of 3.9 L/min per MPa takes 1.56 of them at 400 kPa, 6.63 at 1700.
    ///
    /// ```
    /// use trainwright::{hydraulic::Pump, judge::Reading};
    /// let pump = Pump {
    ///     displacement_cm3_rev: Reading::exact(19.8)?, leak_l_min_mpa: Reading::exact(3.9)?, leak_viscosity_mpa_s: 5.4,
    /// };
    /// let idle = pump.pump_flow(600.0, 400.0, 5.4)?;
    /// assert!((idle.theoretical_l_min - 11.88).abs() < 1e-9 && (idle.leak_l_min - 1.56).abs() < 1e-9);
    /// assert!((pump.pump_flow(600.0, 1700.0, 5.4)?.leak_l_min - 6.63).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn pump_flow(self, speed_rpm: f64, pressure_kpa: f64, viscosity_mpa_s: f64) -> Result<PumpFlow> {
        let volume = displaced(self.displacement_cm3_rev.value)?;
        let speed = within("speed_rpm", speed_rpm, 0.0, 2e4)?;
        let pressure = pressure("pressure_kpa", pressure_kpa)?;
        let theoretical_l_min = volume * speed * 1e-3;
        let leak_l_min = self.leak_per_mpa(viscosity_mpa_s)? * pressure * 1e-3;
        let delivered_l_min = theoretical_l_min - leak_l_min;
        let torque_nm = volume * pressure * 1e-3 / (2.0 * core::f64::consts::PI);
        Ok(PumpFlow {
            theoretical_l_min,
            leak_l_min,
            delivered_l_min,
            volumetric_efficiency: if delivered_l_min > 0.0 { delivered_l_min / theoretical_l_min } else { 0.0 },
            torque_nm,
            power_kw: torque_nm * rad_s(speed) * 1e-3,
        })
    }

    /// Speed below which the pump can no longer hold the pressure.
    ///
    /// n = 1000 (Q_d + Q_k)/V
    ///
    /// * `pressure_kpa`, `viscosity_mpa_s` — as [`Pump::pump_flow`]; `demand_l_min` — Q_d, 0 or more
    /// * returns n, 1/min
    /// * errors: as [`Pump::pump_flow`]
    ///
    /// Source: [`Pump::pump_flow`] solved for the speed.
    pub fn least_speed_rpm(self, pressure_kpa: f64, viscosity_mpa_s: f64, demand_l_min: f64) -> Result<f64> {
        let leak = self.leak_per_mpa(viscosity_mpa_s)? * pressure("pressure_kpa", pressure_kpa)? * 1e-3;
        Ok((demand(demand_l_min)? + leak) * 1e3 / displaced(self.displacement_cm3_rev.value)?)
    }

    /// Whether the pump covers the demand, with its uncertainty.
    ///
    /// Q_s = V n/1000 − k p η_0/(1000 η) − Q_d; judged: Q_s ≥ 0
    ///
    /// * `duty` — speed, pressure, viscosity, demand; `rule` — see [`Rule`]
    /// * returns [`FlowMargin`]
    /// * errors: as [`Pump::pump_flow`]
    ///
    /// The worst case is a hot idle in the range with the highest pressure, reverse as a rule: most leak, least flow.
    ///
    /// Source: JCGM 100:2008, equation 10. Example (by hand): the pump of [`Pump::pump_flow`] has 5.25 L/min at 600 1/min and
    /// 1700 kPa; a demand of 4.0 leaves 1.25, and 537 1/min would do.
    ///
    /// ```
    /// use trainwright::{hydraulic::{Pump, PumpDuty}, judge::{Reading, Rule, Verdict}};
    /// let pump = Pump {
    ///     displacement_cm3_rev: Reading::new(19.8, 0.2)?, leak_l_min_mpa: Reading::new(3.9, 0.4)?, leak_viscosity_mpa_s: 5.4,
    /// };
    /// let duty = PumpDuty {
    ///     speed_rpm: Reading::exact(600.0)?, pressure_kpa: Reading::exact(1700.0)?,
    ///     viscosity_mpa_s: Reading::exact(5.4)?, demand_l_min: Reading::exact(4.0)?,
    /// };
    /// let margin = pump.flow_margin(duty, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert!((margin.judgment.reading.value - 1.25).abs() < 1e-9 && (margin.least_speed_rpm - 536.9).abs() < 0.05);
    /// assert_eq!(margin.judgment.verdict, Verdict::Go);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn flow_margin(self, duty: PumpDuty, rule: Rule) -> Result<FlowMargin> {
        let PumpDuty { speed_rpm, pressure_kpa, viscosity_mpa_s, demand_l_min } = duty;
        positive("speed_rpm", speed_rpm.value)?;
        let flow = self.pump_flow(speed_rpm.value, pressure_kpa.value, viscosity_mpa_s.value)?;
        let least_speed_rpm = self.least_speed_rpm(pressure_kpa.value, viscosity_mpa_s.value, demand_l_min.value)?;
        let thinned = self.leak_viscosity_mpa_s / viscosity_mpa_s.value;
        let budget = combine(&[
            Input::new(speed_rpm.value * 1e-3, self.displacement_cm3_rev.u)?,
            Input::new(self.displacement_cm3_rev.value * 1e-3, speed_rpm.u)?,
            Input::new(-pressure_kpa.value * 1e-3 * thinned, self.leak_l_min_mpa.u)?,
            Input::new(flow.leak_l_min / viscosity_mpa_s.value, viscosity_mpa_s.u)?,
            Input::new(-self.leak_l_min_mpa.value * thinned * 1e-3, pressure_kpa.u)?,
            Input::new(-1.0, demand_l_min.u)?,
        ])?;
        let spare = Reading::new(flow.delivered_l_min - demand_l_min.value, budget.u)?;
        Ok(FlowMargin { flow, least_speed_rpm, judgment: judge(spare, Limits::at_least(0.0)?, rule)?, budget })
    }

    /// Fluid temperature above which the pump can no longer hold the pressure at a speed.
    ///
    /// η(t) = k p η_0/(1000 (Q_th − Q_d)), solved for t
    ///
    /// * `fluid` — the fluid; `speed_rpm` — above 0; `pressure_kpa` and `demand_l_min` — as [`Pump::least_speed_rpm`]
    /// * returns t, °C
    /// * errors: [`Error::NoAnswer`] where it does so at every temperature from −49 to 149 °C, or at none
    ///
    /// Source: [`Pump::pump_flow`] solved for the viscosity; the temperature by bisection, to a thousandth of a kelvin.
    pub fn hottest_c(self, fluid: &Fluid, speed_rpm: f64, pressure_kpa: f64, demand_l_min: f64) -> Result<f64> {
        positive("speed_rpm", speed_rpm)?;
        let asked = demand(demand_l_min)?;
        let spare = |temp_c: f64| -> Result<f64> {
            let oil = oil_at(fluid, Reading::exact(temp_c)?)?;
            Ok(self.pump_flow(speed_rpm, pressure_kpa, oil.viscosity_mpa_s.value)?.delivered_l_min - asked)
        };
        let (mut low, mut high) = (-49.0, 149.0);
        if spare(low)? < 0.0 {
            return Err(Error::NoAnswer {
                name: "temp_c",
                why: "the demand is not covered at any temperature; more speed or less pressure would",
            });
        }
        if spare(high)? >= 0.0 {
            return Err(Error::NoAnswer {
                name: "temp_c",
                why: "the demand is covered at every temperature to 149 °C",
            });
        }
        while high - low > 1e-3 {
            let middle = 0.5 * (low + high);
            if spare(middle)? < 0.0 {
                high = middle;
            } else {
                low = middle;
            }
        }
        Ok(0.5 * (low + high))
    }
}

pub(super) fn pressure(name: &'static str, pressure_kpa: f64) -> Result<f64> {
    within(name, pressure_kpa, 0.0, 1e5)
}

pub(super) fn viscosity(name: &'static str, viscosity_mpa_s: f64) -> Result<f64> {
    within(name, positive(name, viscosity_mpa_s)?, 0.0, 1e6)
}

pub(super) fn density(density_kg_m3: f64) -> Result<f64> {
    within("density_kg_m3", positive("density_kg_m3", density_kg_m3)?, 0.0, 2000.0)
}

fn demand(demand_l_min: f64) -> Result<f64> {
    within("demand_l_min", demand_l_min, 0.0, 1e4)
}
