//! Slip to lock-up, or never, and its energy.

use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, positive, within};
use crate::real::abs;
use crate::units::rad_s;
use core::f64::consts::PI;

pub(super) const SLIP: Card = Card {
    id: "clutch.slip_end",
    purpose: "Time, common speed and energy of a slip between two inertias",
    equation: "a = T_c (1/I_1 + 1/I_2) − s (T_e/I_1 + T_l/I_2); t = |Δω|/a; E = T_c |Δω| t/2; s = sign(ω_1 − ω_2)",
    symbols: &[
        symbol("a", "slip_shrinks_rpm_s · π/30", "rad/s²"),
        symbol("I_1, I_2", "input_inertia_kg_m2, output_inertia_kg_m2, on one shaft", "kg·m²"),
        symbol("T_c", "clutch_torque_nm, dynamic", "N·m"),
        symbol("T_e", "drive_torque_nm, drives the input member", "N·m"),
        symbol("T_l", "load_torque_nm, holds the output member back", "N·m"),
        symbol("t", "time_s", "s"),
        symbol("E", "energy_j", "J"),
    ],
    range: "constant torques; a ≤ 0: the clutch never locks",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, energy considerations; with outside torques from Newton's second law",
};

pub(super) const HELD_INPUT: Card = Card {
    id: "clutch.held_input_end",
    purpose: "Time and energy of a slip while the input is held at constant speed",
    equation: "a = (T_c − s T_l)/I_2; t = |Δω|/a; E = T_c |Δω| t/2; without load E = I_2 Δω²/2",
    symbols: &[
        symbol("a", "slip_shrinks_rpm_s · π/30", "rad/s²"),
        symbol("I_2", "output_inertia_kg_m2", "kg·m²"),
        symbol("T_c", "clutch_torque_nm, dynamic", "N·m"),
        symbol("T_l", "load_torque_nm, holds the output member back", "N·m"),
        symbol("t", "time_s", "s"),
        symbol("E", "energy_j", "J"),
    ],
    range: "constant torques; not the energy of two free inertias",
    source: &card::DEFINITION,
    locator: "clutch.slip_end with an endless input inertia",
};

/// Two inertias that a slipping clutch pulls together. All values at the clutch, inertias and torques of other shafts
/// referred to it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slip {
    /// Inertia on the input side, kg·m².
    pub input_inertia_kg_m2: f64,
    /// Inertia on the output side, kg·m².
    pub output_inertia_kg_m2: f64,
    /// Speed of the input side, 1/min, with its sign.
    pub input_speed_rpm: f64,
    /// Speed of the output side, 1/min, with its sign.
    pub output_speed_rpm: f64,
    /// Torque of the slipping clutch, N·m, 0 or more: from dynamic friction.
    pub clutch_torque_nm: f64,
    /// Torque that drives the input side forward, N·m.
    pub drive_torque_nm: f64,
    /// Torque that holds the output side back, N·m.
    pub load_torque_nm: f64,
}

/// A slip while something holds the input side at constant speed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeldInput {
    /// Inertia on the output side, kg·m².
    pub output_inertia_kg_m2: f64,
    /// Speed of the input side, 1/min, with its sign.
    pub input_speed_rpm: f64,
    /// Speed of the output side, 1/min, with its sign.
    pub output_speed_rpm: f64,
    /// Torque of the slipping clutch, N·m, 0 or more.
    pub clutch_torque_nm: f64,
    /// Torque that holds the output side back, N·m.
    pub load_torque_nm: f64,
}

/// How a slip ends.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlipEnd {
    /// The slip reaches zero. If not, the time is infinite, so is the energy of a clutch that pulls at all,
    /// and final speed and works are 0 and mean nothing.
    pub locks: bool,
    /// The same clutch torque also keeps it locked; a static check may use static friction on `locked_torque_nm`.
    pub stays_locked: bool,
    /// Rate at which the slip shrinks, (1/min)/s; 0 or less: it never locks.
    pub slip_shrinks_rpm_s: f64,
    /// Time to lock-up, s.
    pub time_s: f64,
    /// Common speed at lock-up, 1/min.
    pub final_speed_rpm: f64,
    /// Heat at the faces, J.
    pub energy_j: f64,
    /// Heat flow at the start, kW: the highest when the clutch locks.
    pub start_heat_kw: f64,
    /// Work that the input side took in from outside, J.
    pub drive_work_j: f64,
    /// Work that the output side gave to its load, J.
    pub load_work_j: f64,
    /// Torque through the clutch once locked, N·m, forward drive positive.
    pub locked_torque_nm: f64,
}

const INERTIA_MAX_KG_M2: f64 = 1e6;
const TORQUE_MAX_NM: f64 = 1e9;

impl Slip {
    /// Time, common speed and energy of a slip between two inertias.
    ///
    /// a = T_c (1/I_1 + 1/I_2) − s (T_e/I_1 + T_l/I_2); t = |Δω|/a; E = T_c |Δω| t/2
    ///
    /// * returns [`SlipEnd`]; "never locks" is an answer
    /// * errors: [`crate::Error::NotPositive`] for an inertia, [`crate::Error::OutOfRange`], [`crate::Error::NotFinite`]
    ///
    /// Source: Shigley, chapter 16 (from memory), with outside torques. Example: 0.18 and 0.45 kg·m² at 400 and
    /// 180 rad/s, 320 N·m of clutch, 150 of engine, 60 of load: 0.1445255 s and 5087.3 J by numerical integration.
    ///
    /// ```
    /// use trainwright::clutch::Slip;
    /// let rpm = |rad_s: f64| rad_s * 30.0 / std::f64::consts::PI;
    /// let end = Slip {
    ///     input_inertia_kg_m2: 0.18, output_inertia_kg_m2: 0.45, input_speed_rpm: rpm(400.0), output_speed_rpm: rpm(180.0),
    ///     clutch_torque_nm: 320.0, drive_torque_nm: 150.0, load_torque_nm: 60.0,
    /// }.slip_end()?;
    /// assert!((end.time_s - 0.144_525_5).abs() < 1e-7 && (end.energy_j - 5087.3).abs() < 0.01);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn slip_end(self) -> Result<SlipEnd> {
        let input_inertia = inertia("input_inertia_kg_m2", self.input_inertia_kg_m2)?;
        let drive = torque("drive_torque_nm", self.drive_torque_nm)?;
        Rates { input_per_inertia: 1.0 / input_inertia, drive, held: false }.end(HeldInput {
            output_inertia_kg_m2: self.output_inertia_kg_m2,
            input_speed_rpm: self.input_speed_rpm,
            output_speed_rpm: self.output_speed_rpm,
            clutch_torque_nm: self.clutch_torque_nm,
            load_torque_nm: self.load_torque_nm,
        })
    }
}

impl HeldInput {
    /// Time and energy of a slip while the input is held at constant speed.
    ///
    /// a = (T_c − s T_l)/I_2; t = |Δω|/a; E = T_c |Δω| t/2
    ///
    /// * returns [`SlipEnd`]; without load E = I_2 Δω²/2, whatever the clutch torque
    /// * errors: as [`Slip::slip_end`]
    ///
    /// Source: [`Slip::slip_end`] with an endless input inertia.
    pub fn held_input_end(self) -> Result<SlipEnd> {
        Rates { input_per_inertia: 0.0, drive: 0.0, held: true }.end(self)
    }
}

/// The input side: 1/I_1 and what drives it, or a speed held from outside.
struct Rates {
    input_per_inertia: f64,
    drive: f64,
    held: bool,
}

impl Rates {
    fn end(self, slip: HeldInput) -> Result<SlipEnd> {
        let per_output = 1.0 / inertia("output_inertia_kg_m2", slip.output_inertia_kg_m2)?;
        let per_input = self.input_per_inertia;
        let clutch = within("clutch_torque_nm", slip.clutch_torque_nm, 0.0, TORQUE_MAX_NM)?;
        let load = torque("load_torque_nm", slip.load_torque_nm)?;
        let omega_1 = rad_s(within("input_speed_rpm", slip.input_speed_rpm, -1e6, 1e6)?);
        let omega_2 = rad_s(within("output_speed_rpm", slip.output_speed_rpm, -1e6, 1e6)?);

        let apart = abs(omega_1 - omega_2);
        let sign = if omega_1 >= omega_2 { 1.0 } else { -1.0 };
        let pulls_together = clutch * (per_input + per_output);
        let pulls_apart = self.drive * per_input + load * per_output;
        let shrinks = pulls_together - sign * pulls_apart;
        let time_s = if apart <= 0.0 {
            0.0
        } else if shrinks > 0.0 {
            apart / shrinks
        } else {
            f64::INFINITY
        };
        let locks = time_s.is_finite();
        let stays_locked = locks && abs(pulls_apart) <= pulls_together;
        let start_heat_w = clutch * apart;
        let energy_j = if start_heat_w > 0.0 { start_heat_w * time_s / 2.0 } else { 0.0 };
        let (final_omega, drive_work_j, load_work_j) = if locks {
            let final_omega = omega_2 + (sign * clutch - load) * per_output * time_s;
            let drive = if self.held { sign * clutch } else { self.drive };
            let mean = |start: f64| (start + final_omega) / 2.0 * time_s;
            (final_omega, drive * mean(omega_1), load * mean(omega_2))
        } else {
            (0.0, 0.0, 0.0)
        };
        Ok(SlipEnd {
            locks,
            stays_locked,
            slip_shrinks_rpm_s: shrinks * (30.0 / PI),
            time_s,
            final_speed_rpm: final_omega * (30.0 / PI),
            energy_j,
            start_heat_kw: start_heat_w * 1e-3,
            drive_work_j,
            load_work_j,
            locked_torque_nm: pulls_apart / (per_input + per_output),
        })
    }
}

fn inertia(name: &'static str, inertia_kg_m2: f64) -> Result<f64> {
    within(name, positive(name, inertia_kg_m2)?, f64::MIN_POSITIVE, INERTIA_MAX_KG_M2)
}

fn torque(name: &'static str, torque_nm: f64) -> Result<f64> {
    within(name, torque_nm, -TORQUE_MAX_NM, TORQUE_MAX_NM)
}

/// Inertia of a shaft as another shaft feels it.
///
/// I' = I i²
///
/// * `inertia_kg_m2` — I, above 0; `speed_ratio` — i, speed of its shaft over speed of the other, any sign
/// * returns I', kg·m²
/// * errors: [`crate::Error::NotPositive`], [`crate::Error::NotFinite`]
///
/// Source: equal kinetic energy.
pub fn referred_inertia_kg_m2(inertia_kg_m2: f64, speed_ratio: f64) -> Result<f64> {
    let ratio = finite("speed_ratio", speed_ratio)?;
    Ok(inertia("inertia_kg_m2", inertia_kg_m2)? * ratio * ratio)
}
