//! One-way clutches with struts that drop into notches.

use core::f64::consts::PI;

use super::one_way::{OneWayHold, counted, one_way_hold};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Input, Reading, Rule};
use crate::real::{cos, tan};

pub(super) const RATCHET_INDEX: Card = Card {
    id: "hold.ratchet_index",
    purpose: "Backlash of a ratchet, and how many struts drop in together",
    equation: "backlash = 360°/lcm(n_s, n_n), together = gcd(n_s, n_n)",
    symbols: &[
        symbol("n_s, n_n", "struts, notches", "1"),
        symbol("backlash", "backlash_deg", "°"),
        symbol("together", "together", "1"),
    ],
    range: "struts and notches each equally spaced",
    source: &card::DEFINITION,
    locator: "coincidence of two equal divisions of a circle",
};

pub(super) const STRUT_LOAD: Card = Card {
    id: "hold.strut_load",
    purpose: "Force along a strut and its stress under a torque",
    equation: "σ = F_s/(w·t), F_s = F_t/cos γ, F_r = F_t·tan γ, F_t = T/(n·r)",
    symbols: &[
        symbol("F_t, F_s, F_r", "tangential_n, strut_n, separating_n", "N"),
        symbol("T", "torque_nm", "N·m"),
        symbol("n, r, γ", "carrying, pitch_radius_mm, strut_deg", "1, mm, °"),
        symbol("σ, w, t", "stress_mpa, strut_width_mm, strut_thickness_mm", "MPa, mm, mm"),
    ],
    range: "the struts that carry carry alike; no buckling, no bearing in notch and pocket",
    source: &card::DEFINITION,
    locator: "equilibrium of a strut",
};

pub(super) const STRUT_CAPACITY: Card = Card {
    id: "hold.strut_capacity_nm",
    purpose: "Torque at which the struts that carry reach an allowed stress",
    equation: "T = n·w·t·σ·r·cos γ",
    symbols: &[
        symbol("T", "capacity", "N·m"),
        symbol("σ", "allow_mpa", "MPa"),
        symbol("n, w, t, r, γ", "as hold.strut_load", "1, mm, mm, mm, °"),
    ],
    range: "as hold.strut_load",
    source: &card::DEFINITION,
    locator: "hold.strut_load solved for the torque",
};

pub(super) const STRUT_HOLD: Card = Card {
    id: "hold.strut_hold",
    purpose: "Whether struts hold a torque, with the uncertainty of allowed stress, geometry and demand",
    equation: "u² = (T·u_a/a)² + (T·u_g)² + u_need²; judged: T − T_need ≥ 0",
    symbols: &[
        symbol("T", "capacity_nm", "N·m"),
        symbol("T_need, u_need", "need_nm", "N·m"),
        symbol("a, u_a", "allow_mpa", "MPa"),
        symbol("u_g", "geometry_u_rel", "1"),
    ],
    range: "first order, independent inputs",
    source: &card::GUM,
    locator: "equation 10, with the sensitivities of hold.strut_capacity_nm",
};

/// Struts that drop into notches.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ratchet {
    /// Struts, equally spaced.
    pub struts: u32,
    /// Notches, equally spaced.
    pub notches: u32,
    /// Struts that carry, 1 to those that drop in together: their tolerances rarely let all of them.
    pub carrying: u32,
    /// Width of a strut, mm.
    pub strut_width_mm: f64,
    /// Thickness of a strut, mm.
    pub strut_thickness_mm: f64,
    /// Radius at which the struts carry, mm.
    pub pitch_radius_mm: f64,
    /// Angle of a strut to the tangent, degrees; 0 where it lies along it.
    pub strut_deg: f64,
}

/// How a ratchet indexes.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatchetIndex {
    /// Greatest angle that it turns back before a strut drops in, degrees.
    pub backlash_deg: f64,
    /// Positions on a turn: the least common multiple of struts and notches.
    pub positions: u32,
    /// Struts that drop in together: the greatest common divisor.
    pub together: u32,
}

/// Forces and stress of one strut.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StrutLoad {
    /// Share of the torque at the pitch radius, N.
    pub tangential_n: f64,
    /// Force along the strut, N.
    pub strut_n: f64,
    /// Force that pushes the races apart, N.
    pub separating_n: f64,
    /// Compression of the strut, MPa.
    pub stress_mpa: f64,
}

impl Ratchet {
    /// Backlash, and how many struts drop in together.
    ///
    /// backlash = 360°/lcm(n_s, n_n), together = gcd(n_s, n_n)
    ///
    /// * returns [`RatchetIndex`]
    /// * errors: [`Error::Count`]
    ///
    /// Source: coincidence of two equal divisions (derived). Example: 9 struts over 42 notches: 126 positions of 2.857°, three
    /// struts together.
    ///
    /// ```
    /// use trainwright::hold::Ratchet;
    /// let wren = Ratchet {
    ///     struts: 9, notches: 42, carrying: 2, strut_width_mm: 12.5, strut_thickness_mm: 4.2, pitch_radius_mm: 57.0, strut_deg: 0.0,
    /// };
    /// let index = wren.ratchet_index()?;
    /// assert_eq!((index.together, index.positions), (3, 126));
    /// assert!((wren.strut_capacity_nm(900.0)? - 5386.5).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn ratchet_index(self) -> Result<RatchetIndex> {
        let (struts, notches) = (counted("struts", self.struts, 1)?, counted("notches", self.notches, 1)?);
        let together = gcd(struts, notches);
        // gcd is 1 at least, and counted() keeps the product within a million.
        let positions = struts * (notches.checked_div(together).unwrap_or(notches));
        Ok(RatchetIndex { backlash_deg: 360.0 / f64::from(positions), positions, together })
    }

    /// Force along a strut and its stress under a torque.
    ///
    /// σ = F_s/(w·t), F_s = F_t/cos γ, F_r = F_t·tan γ, F_t = T/(n·r)
    ///
    /// * `torque_nm` — T, 0 or more
    /// * returns [`StrutLoad`]
    /// * errors: [`Error::Inconsistent`] where more struts carry than drop in together; [`Error::NotPositive`],
    ///   [`Error::OutOfRange`]
    ///
    /// Source: equilibrium (derived). Example (computed): 400 N·m on one strut at 60 mm and 20°: 6666.67, 7094.52, 2426.47 N.
    ///
    /// ```
    /// use trainwright::hold::Ratchet;
    /// let one = Ratchet {
    ///     struts: 1, notches: 36, carrying: 1, strut_width_mm: 12.0, strut_thickness_mm: 4.0, pitch_radius_mm: 60.0, strut_deg: 20.0,
    /// };
    /// let load = one.strut_load(400.0)?;
    /// assert!((load.strut_n - 7094.52).abs() < 0.005 && (load.separating_n - 2426.47).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn strut_load(self, torque_nm: f64) -> Result<StrutLoad> {
        let Struts { arm_m, section_mm2, angle } = self.checked()?;
        let tangential_n = within("torque_nm", torque_nm, 0.0, 1e9)? / arm_m;
        let strut_n = tangential_n / cos(angle);
        Ok(StrutLoad {
            tangential_n,
            strut_n,
            separating_n: tangential_n * tan(angle),
            stress_mpa: strut_n / section_mm2,
        })
    }

    /// Torque at which the struts that carry reach an allowed stress, N·m. Not a rating.
    ///
    /// T = n·w·t·σ·r·cos γ
    ///
    /// * `allow_mpa` — σ, above 0
    /// * errors: as [`Ratchet::strut_load`]
    ///
    /// Source: [`Ratchet::strut_load`] solved for T.
    pub fn strut_capacity_nm(self, allow_mpa: f64) -> Result<f64> {
        let Struts { arm_m, section_mm2, angle } = self.checked()?;
        Ok(positive("allow_mpa", within("allow_mpa", allow_mpa, 0.0, 1e6)?)? * section_mm2 * arm_m * cos(angle))
    }

    /// Whether it holds a torque, with uncertainty.
    ///
    /// u² = (T·u_a/a)² + (T·u_g)² + u_need²; judged: T − T_need ≥ 0
    ///
    /// * `need_nm`, `allow_mpa`, `geometry_u_rel`, `rule` — as [`super::Wedge::wedge_hold`], the allowed stress of a strut
    ///
    /// Source: JCGM 100:2008, equation 10.
    pub fn strut_hold(
        self,
        need_nm: Reading,
        allow_mpa: Reading,
        geometry_u_rel: f64,
        rule: Rule,
    ) -> Result<OneWayHold> {
        let capacity_nm = self.strut_capacity_nm(allow_mpa.value)?;
        let allow = Input::new(capacity_nm / allow_mpa.value, allow_mpa.u)?;
        one_way_hold(capacity_nm, allow, need_nm, geometry_u_rel, rule)
    }

    fn checked(self) -> Result<Struts> {
        let together = self.ratchet_index()?.together;
        let carrying = counted("carrying", self.carrying, 1)?;
        if carrying > together {
            return Err(Error::Inconsistent {
                name: "carrying",
                why: "more struts carry than drop in together, which is the greatest common divisor of struts and notches; give at most that many",
            });
        }
        Ok(Struts {
            arm_m: f64::from(carrying) * positive("pitch_radius_mm", self.pitch_radius_mm)? * 1e-3,
            section_mm2: positive("strut_width_mm", self.strut_width_mm)?
                * positive("strut_thickness_mm", self.strut_thickness_mm)?,
            angle: within("strut_deg", self.strut_deg, 0.0, 60.0)? * PI / 180.0,
        })
    }
}

/// A ratchet that was checked.
struct Struts {
    /// n·r, m.
    arm_m: f64,
    section_mm2: f64,
    /// γ, rad.
    angle: f64,
}

fn gcd(mut a: u32, mut b: u32) -> u32 {
    while let Some(rest) = a.checked_rem(b) {
        (a, b) = (b, rest);
    }
    a
}
