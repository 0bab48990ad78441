//! A stall test before it is made: torques, heat and seconds, or why it must not be made.

use super::operating::OperatingPoint;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::{abs, sqrt};
use crate::train::{MAX_ELEMENTS, State, StateKind};
use crate::units::rad_s;

pub(super) const PLAN_STALL: Card = Card {
    id: "converter.plan_stall",
    purpose: "Torques, heat and seconds of a stall test, and whether a rating would be passed",
    equation: "T_T ≤ T_rT and |i|·T_T ≤ T_rA; T_lim = min(T_rT, T_rA/|i|), T_e = T_lim/μ_0, n_lim = K_0·√T_e",
    symbols: &[
        symbol("T_T", "turbine_nm", "N·m"),
        symbol("T_rT, T_rA", "ratings.turbine_nm, ratings.output_nm", "N·m"),
        symbol("i", "gear_ratio", "1"),
        symbol("T_lim, T_e", "limit_turbine_nm, limit_engine_nm", "N·m"),
        symbol("n_lim", "limit_rpm", "1/min"),
        symbol("μ_0, K_0", "torque_ratio, k_rpm_per_sqrt_nm at stall", "1, 1/min per √(N·m)"),
    ],
    range: "steady torque, no losses in the train, no blow of a throttle that is opened fast; the ratings are the record's. Not a rating, and no leave to test",
    source: &card::DEFINITION,
    locator: "definitions of torque ratio, gear ratio and capacity factor",
};

pub(super) const STALL_RISE: Card = Card {
    id: "converter.rise_k",
    purpose: "Temperature rise of the fluid in the converter during a stall, and the seconds until a temperature",
    equation: "ΔT = P·t/(V·ρ·c), P = T·ω; t_max = (T_max − T_0)·V·ρ·c/P",
    symbols: &[
        symbol("ΔT", "rise_k", "K"),
        symbol("P", "heat_kw: all the engine's power", "kW"),
        symbol("T, ω", "torque and angular speed of the engine", "N·m, rad/s"),
        symbol("t", "time_s", "s"),
        symbol("V, ρ, c", "volume_l, density_kg_m3, specific_heat_j_kg_k", "L, kg/m³, J/(kg·K)"),
        symbol("T_0, T_max", "start_c, most_c", "°C"),
        symbol("t_max", "heat_s", "s"),
    ],
    range: "adiabatic bound: no heat into metal or cooler, none carried off by the flow through the converter; a spot can be hotter than the mean",
    source: &card::DEFINITION,
    locator: "conservation of energy",
};

pub(super) const ELEMENT_TORQUES: Card = Card {
    id: "converter.element_torques",
    purpose: "Torque on each closed element of a gear at a turbine torque",
    equation: "T_i = |k_i|·T_T",
    symbols: &[
        symbol("T_i", "torque_nm", "N·m"),
        symbol("k_i", "share of the element, train.solve", "1"),
        symbol("T_T", "turbine_nm", "N·m"),
    ],
    range: "no losses; where closed elements repeat one another statics cannot tell what each carries",
    source: &card::DEFINITION,
    locator: "equilibrium of the gear train",
};

/// What a stall test must not pass.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StallRatings {
    /// Rated torque at the turbine, N·m.
    pub turbine_nm: f64,
    /// Rated torque at the output, N·m.
    pub output_nm: f64,
    /// Longest stall, s.
    pub longest_s: f64,
}

/// The fluid in the converter.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FluidCharge {
    /// Its volume, L.
    pub volume_l: f64,
    /// Its density, kg/m³.
    pub density_kg_m3: f64,
    /// Its specific heat, J/(kg·K).
    pub specific_heat_j_kg_k: f64,
    /// Temperature at which the stall begins, °C, −60 to 300.
    pub start_c: f64,
    /// Temperature that it must not pass, °C, −60 to 300.
    pub most_c: f64,
}

impl FluidCharge {
    /// Heat capacity, J/K.
    fn capacity_j_k(self) -> Result<f64> {
        Ok(positive("volume_l", self.volume_l)? / 1000.0
            * positive("density_kg_m3", self.density_kg_m3)?
            * positive("specific_heat_j_kg_k", self.specific_heat_j_kg_k)?)
    }

    /// Temperature rise in a time.
    ///
    /// ΔT = P·t/(V·ρ·c), P = T·ω; t_max = (T_max − T_0)·V·ρ·c/P
    ///
    /// * `heat_kw` — P, 0 or more; `time_s` — t, 0 or more
    /// * returns ΔT, K: an adiabatic bound, no heat into metal or cooler
    /// * errors: [`Error::OutOfRange`], [`Error::NotPositive`]
    ///
    /// Source: conservation of energy (derived). Example: 10 kW for 5 s into 1 kg of 2000 J/(kg·K) is 25 K.
    ///
    /// ```
    /// use trainwright::converter::FluidCharge;
    /// let charge =
    ///     FluidCharge { volume_l: 1.25, density_kg_m3: 800.0, specific_heat_j_kg_k: 2000.0, start_c: 70.0, most_c: 150.0 };
    /// assert_eq!(charge.rise_k(10.0, 5.0)?, 25.0);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn rise_k(self, heat_kw: f64, time_s: f64) -> Result<f64> {
        let energy_j = within("heat_kw", heat_kw, 0.0, 1e6)? * 1000.0 * within("time_s", time_s, 0.0, 1e6)?;
        Ok(energy_j / self.capacity_j_k()?)
    }

    /// Seconds until the fluid reaches `most_c`: [`FluidCharge::rise_k`] solved for t.
    ///
    /// * `heat_kw` — P, above 0
    /// * returns t_max, s; 0 where the fluid is as hot already
    /// * errors: as [`FluidCharge::rise_k`]
    pub fn heat_s(self, heat_kw: f64) -> Result<f64> {
        let start = within("start_c", self.start_c, -60.0, 300.0)?;
        let spare_k = within("most_c", self.most_c, -60.0, 300.0)? - start;
        Ok(spare_k.max(0.0) * self.capacity_j_k()? / (1000.0 * positive("heat_kw", heat_kw)?))
    }
}

/// A stall test before it is made.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StallPlan {
    /// The stall.
    pub point: OperatingPoint,
    /// What it must not pass.
    pub ratings: StallRatings,
    /// Ratio of the gear; negative in reverse.
    pub gear_ratio: f64,
    /// Torque at the output while it is held, N·m, without sign.
    pub output_nm: f64,
    /// Turbine torque over its rating.
    pub turbine_share: f64,
    /// Output torque over its rating.
    pub output_share: f64,
    /// The rated turbine torque would be passed.
    pub turbine_passed: bool,
    /// The rated output torque would be passed.
    pub output_passed: bool,
    /// The fluid is too hot to begin.
    pub too_hot: bool,
    /// Nothing of the above: the record does not forbid the test. Whether it may be made is up to the vehicle maker.
    pub allowed: bool,
    /// Rise of the fluid in the longest stall of the record, K: adiabatic bound.
    pub rise_k: f64,
    /// Seconds until the fluid is as hot as it may be.
    pub heat_s: f64,
    /// Seconds that both heat and record leave; 0 where the test is refused.
    pub permitted_s: f64,
    /// Greatest turbine torque that passes no rating, N·m.
    pub limit_turbine_nm: f64,
    /// Engine torque that gives it at stall, N·m: limit the engine to this, and the test passes no rating.
    pub limit_engine_nm: f64,
    /// Engine speed at that stall, 1/min.
    pub limit_rpm: f64,
    /// Heat of that stall, kW.
    pub limit_heat_kw: f64,
    /// Seconds that heat and record leave at that stall.
    pub limit_s: f64,
}

/// Plans a stall test, or says why it must not be made.
///
/// T_T ≤ T_rT and |i|·T_T ≤ T_rA; T_lim = min(T_rT, T_rA/|i|), T_e = T_lim/μ_0, n_lim = K_0·√T_e
///
/// * `stall` — an operating point with the turbine standing; `state` — the gear, from [`crate::train::Train::solve`]; `ratings` —
///   T_rT, T_rA and the longest stall, each above 0; `charge` — the fluid in the converter
/// * returns [`StallPlan`]: not `allowed` where a rating would be passed, with the engine torque that would pass none
/// * errors: [`Error::NoAnswer`] for a state that is no gear, [`Error::Inconsistent`] for a turbine that turns, and those of
///   [`FluidCharge::rise_k`]
///
/// Source: definitions of torque ratio, gear ratio and capacity factor (derived). The example of demonstration job J8 is in the
/// tests.
pub fn plan_stall(
    stall: &OperatingPoint,
    state: &State,
    ratings: StallRatings,
    charge: FluidCharge,
) -> Result<StallPlan> {
    if stall.turbine_rpm > 0.0 {
        return Err(Error::Inconsistent {
            name: "turbine_rpm",
            why: "at stall the turbine stands; give the point at 0",
        });
    }
    let gear_ratio = state.ratio.value().filter(|_| state.kind == StateKind::Gear).ok_or(Error::NoAnswer {
        name: "state",
        why: "only a gear carries the torque to the output that the brakes hold; give one",
    })?;
    let (rated_turbine, rated_output) =
        (positive("ratings.turbine_nm", ratings.turbine_nm)?, positive("ratings.output_nm", ratings.output_nm)?);
    let longest_s = positive("ratings.longest_s", ratings.longest_s)?;
    let output_nm = abs(gear_ratio) * positive("turbine_nm", stall.turbine_nm)?;
    let heat_s = charge.heat_s(stall.heat_kw)?;
    let limit_turbine_nm = rated_turbine.min(rated_output / abs(gear_ratio));
    let limit_engine_nm = limit_turbine_nm / positive("torque_ratio", stall.torque_ratio)?;
    let limit_rpm = positive("k_rpm_per_sqrt_nm", stall.k_rpm_per_sqrt_nm)? * sqrt(limit_engine_nm);
    let limit_heat_kw = limit_engine_nm * rad_s(limit_rpm) / 1000.0;
    let (turbine_passed, output_passed) = (stall.turbine_nm > rated_turbine, output_nm > rated_output);
    let too_hot = heat_s <= 0.0;
    let allowed = !(turbine_passed || output_passed || too_hot);
    Ok(StallPlan {
        point: *stall,
        ratings,
        gear_ratio,
        output_nm,
        turbine_share: stall.turbine_nm / rated_turbine,
        output_share: output_nm / rated_output,
        turbine_passed,
        output_passed,
        too_hot,
        allowed,
        rise_k: charge.rise_k(stall.heat_kw, longest_s)?,
        heat_s,
        permitted_s: if allowed { heat_s.min(longest_s) } else { 0.0 },
        limit_turbine_nm,
        limit_engine_nm,
        limit_rpm,
        limit_heat_kw,
        limit_s: charge.heat_s(limit_heat_kw)?.min(longest_s),
    })
}

/// Torque on every element of a gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ElementTorques {
    /// Torque of each element, N·m, without sign; 0 where it is open or not known.
    pub torque_nm: [f64; MAX_ELEMENTS],
    /// Mask of the closed elements whose torque the train determines.
    pub known: u32,
    /// Mask of the closed elements of which statics cannot tell what they carry.
    pub unknown: u32,
}

/// Torque on each closed element of a gear at a turbine torque.
///
/// T_i = |k_i|·T_T
///
/// * `state` — the gear, k_i; `turbine_nm` — T_T, 0 or more
/// * returns [`ElementTorques`]
/// * errors: [`Error::NoAnswer`] for a state that carries no torque, [`Error::OutOfRange`]
///
/// Source: equilibrium of the gear train (derived). The example of demonstration job J8 is in the tests.
pub fn element_torques(state: &State, turbine_nm: f64) -> Result<ElementTorques> {
    within("turbine_nm", turbine_nm, 0.0, 1e9)?;
    if !state.carries_torque() {
        return Err(Error::NoAnswer { name: "state", why: "nothing in it reacts a torque at the input; give a gear" });
    }
    let mut torques = ElementTorques { torque_nm: [0.0; MAX_ELEMENTS], known: 0, unknown: 0 };
    for ((element, bit), torque_nm) in (0..).zip((0..32).map(|place| 1_u32 << place)).zip(&mut torques.torque_nm) {
        if state.closed & bit == 0 {
            continue;
        }
        match state.share(element).value() {
            Some(share) => {
                torques.known |= bit;
                *torque_nm = abs(share) * turbine_nm;
            }
            None => torques.unknown |= bit,
        }
    }
    Ok(torques)
}
