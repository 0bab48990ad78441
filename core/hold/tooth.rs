//! Bending of an involute spur tooth.

use core::f64::consts::{FRAC_PI_2, PI};

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::sqrt;
use crate::units::MM_PER_IN;

pub(super) const FORM_FACTOR: Card = Card {
    id: "hold.form_factor",
    purpose: "Lewis form factor of an involute spur tooth, by its number of teeth",
    equation: "Y from the table for N of 12 to 400, straight between its entries; above 400 straight in 1/N to the rack's 0.485",
    symbols: &[symbol("Y", "result", "1"), symbol("N", "teeth", "1")],
    range: "20° full-depth involute teeth, diametral pitch 1, load near the tip; not below 12 teeth",
    source: &card::MACHINE_DESIGN,
    locator: "table 14-2",
};

pub(super) const VELOCITY_FACTOR: Card = Card {
    id: "hold.velocity_factor",
    purpose: "By what a running gear's tooth force grows with the pitch-line speed",
    equation: "K_v = (600 + V)/600 cast, (1200 + V)/1200 cut or milled, (50 + √V)/50 hobbed or shaped, √((78 + √V)/78) shaved or ground; V = π·d·n in ft/min",
    symbols: &[symbol("K_v", "result", "1"), symbol("V, d, n", "pitch_diameter_mm × speed_rpm", "ft/min, mm, 1/min")],
    range: "a gear that stands still has K_v = 1; the metric forms in the books round 1200 ft/min (6.096 m/s) to 6.1",
    source: &card::MACHINE_DESIGN,
    locator: "equations 14-4 to 14-6",
};

pub(super) const TOOTH_BENDING: Card = Card {
    id: "hold.tooth_bending",
    purpose: "Bending stress at the root of an involute spur tooth under a tangential force",
    equation: "σ = K_v·W/(F·m·Y), τ = W/(F·π·m/2)",
    symbols: &[
        symbol("σ", "bending_mpa", "MPa"),
        symbol("τ", "shear_mpa, mean over the pitch-line thickness", "MPa"),
        symbol("W", "force_n", "N"),
        symbol("K_v", "velocity_factor", "1"),
        symbol("F, m", "face_mm, module_mm", "mm"),
        symbol("Y", "form_factor", "1"),
    ],
    range: "one tooth carries, no stress factor for the fillet, the radial force neglected; older books use y = Y/π",
    source: &card::MACHINE_DESIGN,
    locator: "equations 14-2 and 14-8",
};

/// Lewis form factor of a rack.
const RACK: f64 = 0.485;

/// Teeth and Lewis form factor.
const TABLE: [(u32, f64); 25] = [
    (12, 0.245),
    (13, 0.261),
    (14, 0.277),
    (15, 0.290),
    (16, 0.296),
    (17, 0.303),
    (18, 0.309),
    (19, 0.314),
    (20, 0.322),
    (21, 0.328),
    (22, 0.331),
    (24, 0.337),
    (26, 0.346),
    (28, 0.353),
    (30, 0.359),
    (34, 0.371),
    (38, 0.384),
    (43, 0.397),
    (50, 0.409),
    (60, 0.422),
    (75, 0.435),
    (100, 0.447),
    (150, 0.460),
    (300, 0.472),
    (400, 0.480),
];

/// Lewis form factor of a 20° full-depth involute tooth.
///
/// Y from the table, straight between its entries; above 400 teeth straight in 1/N to the rack
///
/// * `teeth` — N, 12 or more
/// * returns Y
/// * errors: [`Error::Count`] below 12 teeth: the table has none, and such teeth are undercut
///
/// Source: Shigley, table 14-2 (read in copies that agree). Example: 24 teeth, 0.337.
///
/// ```
/// use trainwright::hold::form_factor;
/// assert_eq!(form_factor(24)?, 0.337);
/// assert_eq!(form_factor(23)?, 0.334); // halfway between 22 and 24
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn form_factor(teeth: u32) -> Result<f64> {
    let mut below = None;
    for (n, y) in TABLE {
        match below {
            _ if teeth == n => return Ok(y),
            Some((n_below, y_below)) if teeth < n => {
                let way = f64::from(teeth - n_below) / f64::from(n - n_below);
                return Ok(y_below + way * (y - y_below));
            }
            None if teeth < n => return Err(Error::Count { name: "teeth", count: teeth, low: n, high: u32::MAX }),
            _ => below = Some((n, y)),
        }
    }
    let (n_last, y_last) = below.unwrap_or((1, RACK));
    Ok(RACK + (y_last - RACK) * f64::from(n_last) / f64::from(teeth))
}

/// How the teeth were made, for the velocity factor.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToothFinish {
    /// Cast profile.
    Cast,
    /// Cut or milled profile.
    Cut,
    /// Hobbed or shaped profile.
    Hobbed,
    /// Shaved or ground profile.
    Ground,
}

/// By what the tooth force of a running gear grows with its pitch-line speed.
///
/// K_v = (600 + V)/600 cast, (1200 + V)/1200 cut or milled, (50 + √V)/50 hobbed or shaped, √((78 + √V)/78) shaved or ground
///
/// * `pitch_diameter_mm` — d, above 0; `speed_rpm` — n, 0 or more; V = π·d·n in ft/min
/// * `finish` — how the teeth were made
/// * returns K_v, 1 or more
///
/// Source: Shigley, equations 14-4 to 14-6 (from memory). Example: its 14-1, 16 cut teeth of diametral pitch 8 at 1200 rpm:
/// V = 628 ft/min, K_v = 1.52.
///
/// ```
/// use trainwright::hold::{ToothFinish, velocity_factor};
/// assert!((velocity_factor(16.0 / 8.0 * 25.4, 1200.0, ToothFinish::Cut)? - 1.52).abs() < 0.005);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn velocity_factor(pitch_diameter_mm: f64, speed_rpm: f64, finish: ToothFinish) -> Result<f64> {
    let diameter_ft = positive("pitch_diameter_mm", pitch_diameter_mm)? / MM_PER_IN / 12.0;
    let v = PI * diameter_ft * within("speed_rpm", speed_rpm, 0.0, 1e6)?;
    Ok(match finish {
        ToothFinish::Cast => (600.0 + v) / 600.0,
        ToothFinish::Cut => (1200.0 + v) / 1200.0,
        ToothFinish::Hobbed => (50.0 + sqrt(v)) / 50.0,
        ToothFinish::Ground => sqrt((78.0 + sqrt(v)) / 78.0),
    })
}

/// An involute spur tooth, 20° full depth.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpurTooth {
    /// Teeth of the gear.
    pub teeth: u32,
    /// Module, mm: pitch diameter over teeth; 25.4 over the diametral pitch.
    pub module_mm: f64,
    /// Face width, mm.
    pub face_mm: f64,
}

/// What a tangential force does to an involute tooth.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToothBending {
    /// Lewis form factor.
    pub form_factor: f64,
    /// Thickness at the pitch line, mm: π/2 modules.
    pub thickness_mm: f64,
    /// Bending stress at the root, MPa.
    pub bending_mpa: f64,
    /// Mean shear stress over the pitch-line thickness, MPa.
    pub shear_mpa: f64,
}

impl SpurTooth {
    /// Bending stress at the root under a tangential force.
    ///
    /// σ = K_v·W/(F·m·Y), τ = W/(F·π·m/2)
    ///
    /// * `force_n` — W, 0 or more; `velocity_factor` — K_v, 1 or more: 1 for a gear that stands, else [`velocity_factor`]
    /// * returns [`ToothBending`]
    /// * errors: as [`form_factor`]; [`Error::OutOfRange`], [`Error::NotPositive`]
    ///
    /// Source: Shigley, equations 14-2 and 14-8 (from memory). Example (computed): 24 teeth of module 2.5 mm, 20 mm wide,
    /// under 1500 N: 89.02 MPa.
    ///
    /// ```
    /// use trainwright::hold::SpurTooth;
    /// let tooth = SpurTooth { teeth: 24, module_mm: 2.5, face_mm: 20.0 };
    /// assert!((tooth.tooth_bending(1500.0, 1.0)?.bending_mpa - 89.02).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn tooth_bending(self, force_n: f64, velocity_factor: f64) -> Result<ToothBending> {
        let section_mm2 = self.section_mm2()?;
        let force_n = within("force_n", force_n, 0.0, 1e9)?;
        let form_factor = form_factor(self.teeth)?;
        let thickness_mm = FRAC_PI_2 * self.module_mm;
        Ok(ToothBending {
            form_factor,
            thickness_mm,
            bending_mpa: velocity(velocity_factor)? * force_n / (section_mm2 * form_factor),
            shear_mpa: force_n / (self.face_mm * thickness_mm),
        })
    }

    /// Tangential force at which the root reaches a bending stress: [`SpurTooth::tooth_bending`] solved for W, N.
    ///
    /// W = σ·F·m·Y/K_v
    ///
    /// * `bending_mpa` — σ, 0 or more; `velocity_factor` — K_v
    ///
    /// Source: Shigley, example 14-1 (from memory): 16 teeth of diametral pitch 8, 1.5 in wide, 10 kpsi, K_v = 1.52: 365 lbf.
    ///
    /// ```
    /// use trainwright::{hold::SpurTooth, units::{n_to_lbf, psi_to_kpa}};
    /// let tooth = SpurTooth { teeth: 16, module_mm: 25.4 / 8.0, face_mm: 1.5 * 25.4 };
    /// let force_n = tooth.force_at_bending_n(psi_to_kpa(10.0), 1.52)?; // kpsi to MPa
    /// assert!((n_to_lbf(force_n) - 365.0).abs() < 0.5);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn force_at_bending_n(self, bending_mpa: f64, velocity_factor: f64) -> Result<f64> {
        let section_mm2 = self.section_mm2()?;
        let bending_mpa = within("bending_mpa", bending_mpa, 0.0, 1e6)?;
        Ok(bending_mpa * section_mm2 * form_factor(self.teeth)? / velocity(velocity_factor)?)
    }

    fn section_mm2(self) -> Result<f64> {
        Ok(positive("face_mm", self.face_mm)? * positive("module_mm", self.module_mm)?)
    }
}

fn velocity(factor: f64) -> Result<f64> {
    within("velocity_factor", factor, 1.0, 100.0)
}
