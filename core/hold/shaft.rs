//! Shafts in torsion, solid and hollow: stress, twist, and the torque against the yield of the material.

use core::f64::consts::PI;

use super::washer::bore_in_outside;
use crate::card::{self, Card, symbol};
use crate::error::{Result, positive, within};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, combine, judge};
use crate::real::abs;

pub(super) const TORSION: Card = Card {
    id: "hold.torsion",
    purpose: "Stress in a round shaft under torque",
    equation: "J = π/32 (D⁴ − d⁴), τ = T D/(2 J) = 16 T D/(π (D⁴ − d⁴))",
    symbols: &[
        symbol("J", "polar_moment_mm4", "mm⁴"),
        symbol("D, d", "outside_mm, inside_mm", "mm"),
        symbol("T", "torque_nm", "N·m"),
        symbol("τ", "stress_mpa, at the surface", "MPa"),
    ],
    range: "below yield, away from splines, shoulders, holes and grooves, which multiply it",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 3, torsion",
};

pub(super) const TWIST: Card = Card {
    id: "hold.twist_deg",
    purpose: "Angle by which a torque twists a length of shaft",
    equation: "θ = T L/(G J)",
    symbols: &[
        symbol("θ", "twist", "°"),
        symbol("T", "torque_nm", "N·m"),
        symbol("L", "length_mm", "mm"),
        symbol("G", "shear_modulus_mpa", "MPa"),
        symbol("J", "torsion.polar_moment_mm4", "mm⁴"),
    ],
    range: "below yield, one section along the length",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 3, torsion",
};

pub(super) const HOLLOW_OVER_SOLID: Card = Card {
    id: "hold.hollow_over_solid",
    purpose: "What a hollow shaft carries and weighs against a solid one of the same outside diameter",
    equation: "strength 1 − (d/D)⁴, mass 1 − (d/D)²",
    symbols: &[
        symbol("D, d", "outside_mm, inside_mm", "mm"),
        symbol("strength", "strength, stiffness too", "1"),
        symbol("mass", "mass", "1"),
    ],
    range: "same material, same outside diameter; walls thick enough not to buckle",
    source: &card::DEFINITION,
    locator: "hold.torsion, hollow over solid",
};

pub(super) const SHAFT_HOLD: Card = Card {
    id: "hold.shaft_hold",
    purpose: "Whether a shaft stays below its yield in shear under a torque",
    equation: "K τ against τ_y; u² = (K τ u_T/T)² + (K τ u_rel)² + u_y²; judged: τ_y − K τ ≥ 0",
    symbols: &[
        symbol("τ", "torsion.stress_mpa", "MPa"),
        symbol("K", "stress_factor: peak over nominal stress, chosen; 1 counts no notch", "1"),
        symbol("τ_y, u_y", "shear_yield_mpa", "MPa"),
        symbol("T, u_T", "torque_nm", "N·m"),
        symbol("u_rel", "stress_u_rel, of sizes and form together", "1"),
    ],
    range: "one steady load; fatigue, bending and impact not counted. Not a rating",
    source: &card::GUM,
    locator: "equation 10, with the sensitivities of hold.torsion",
};

/// A round shaft.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shaft {
    /// Outside diameter, mm: the smallest that carries the torque.
    pub outside_mm: f64,
    /// Inside diameter, mm; 0 for a solid shaft.
    pub inside_mm: f64,
}

/// Stress in a shaft under torque.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Torsion {
    /// Polar moment of area, mm⁴.
    pub polar_moment_mm4: f64,
    /// Polar section modulus, mm³: moment over radius.
    pub section_modulus_mm3: f64,
    /// Shear stress at the surface, MPa.
    pub stress_mpa: f64,
    /// Shear stress at the bore, MPa; 0 in the middle of a solid shaft.
    pub bore_stress_mpa: f64,
}

/// A hollow shaft against a solid one of the same outside diameter.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HollowOverSolid {
    /// Torque that it carries at the same stress, and stiffness.
    pub strength: f64,
    /// Mass of the same length.
    pub mass: f64,
}

/// What a shaft must carry, and what it is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftLoad {
    /// Torque, N·m, above 0.
    pub torque_nm: Reading,
    /// Yield stress in shear, MPa, above 0.
    pub shear_yield_mpa: Reading,
    /// Peak stress over nominal stress, 1 to 10, chosen: 1 counts no spline, shoulder or hole.
    pub stress_factor: f64,
    /// Relative standard uncertainty of the stress from sizes and form, 0 to 1.
    pub stress_u_rel: f64,
}

/// Whether a shaft stays below yield, and what that rests on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftHold {
    /// Nominal stress.
    pub torsion: Torsion,
    /// Peak stress over yield.
    pub yield_share: f64,
    /// Torque at which the peak reaches yield, N·m.
    pub torque_at_yield_nm: f64,
    /// Stress factor at which this torque reaches yield: what splines and shoulders may add.
    pub factor_at_yield: f64,
    /// The stress to spare, yield less peak, against 0.
    pub judgment: Judgment,
    /// Where the uncertainty comes from: torque, sizes and form, yield, in this order.
    pub budget: Budget,
}

fn torque_in_range(torque_nm: f64) -> Result<f64> {
    within("torque_nm", torque_nm, -1e7, 1e7)
}

impl Shaft {
    fn moment_mm4(self) -> Result<(Self, f64)> {
        let (inside_mm, outside_mm) = bore_in_outside(self.inside_mm, self.outside_mm)?;
        let fourth = |d: f64| d * d * d * d;
        Ok((Self { outside_mm, inside_mm }, PI / 32.0 * (fourth(outside_mm) - fourth(inside_mm))))
    }

    /// Stress under a torque.
    ///
    /// J = π/32 (D⁴ − d⁴), τ = T D/(2 J)
    ///
    /// * `torque_nm` — T, any sign
    /// * returns [`Torsion`], its stresses without sign. Nominal: splines, shoulders, holes and grooves multiply it
    /// * errors: [`Error::NotPositive`](crate::Error::NotPositive), [`Error::OutOfRange`](crate::Error::OutOfRange),
    ///   [`Error::Reversed`](crate::Error::Reversed) for an inside not below the outside
    ///
    /// Source: Shigley, chapter 3, torsion (from memory). Example: a tube of 114/102 mm under 5 kN·m has J = 5 954 575 mm⁴
    /// and 47.86 MPa (published exercise in mechanics of materials).
    ///
    /// ```
    /// use trainwright::hold::Shaft;
    /// let tube = Shaft { outside_mm: 114.0, inside_mm: 102.0 }.torsion(5000.0)?;
    /// assert!((tube.polar_moment_mm4 - 5_954_575.0).abs() < 1.0);
    /// assert!((tube.stress_mpa - 47.86).abs() < 0.005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    #[inline]
    pub fn torsion(self, torque_nm: f64) -> Result<Torsion> {
        let (Self { outside_mm, inside_mm }, polar_moment_mm4) = self.moment_mm4()?;
        let section_modulus_mm3 = polar_moment_mm4 / (0.5 * outside_mm);
        let stress_mpa = abs(torque_in_range(torque_nm)?) * 1e3 / section_modulus_mm3;
        let bore_stress_mpa = stress_mpa * inside_mm / outside_mm;
        Ok(Torsion { polar_moment_mm4, section_modulus_mm3, stress_mpa, bore_stress_mpa })
    }

    /// Angle by which a torque twists a length of shaft, degrees.
    ///
    /// θ = T L/(G J)
    ///
    /// * `torque_nm` — T, any sign; `length_mm` — L, 0 or more; `shear_modulus_mpa` — G, above 0, about 80 000 for steel
    /// * returns θ with the sign of the torque
    /// * errors: as [`Shaft::torsion`]
    ///
    /// Source: Shigley, chapter 3, torsion (from memory).
    #[inline]
    pub fn twist_deg(self, torque_nm: f64, length_mm: f64, shear_modulus_mpa: f64) -> Result<f64> {
        let (_, polar_moment_mm4) = self.moment_mm4()?;
        let length_mm = within("length_mm", length_mm, 0.0, 1e6)?;
        let modulus_mpa = within("shear_modulus_mpa", positive("shear_modulus_mpa", shear_modulus_mpa)?, 0.0, 1e6)?;
        Ok((torque_in_range(torque_nm)? * 1e3 * length_mm / (modulus_mpa * polar_moment_mm4)).to_degrees())
    }

    /// What the hollow shaft carries and weighs against a solid one of the same outside diameter.
    ///
    /// strength 1 − (d/D)⁴, mass 1 − (d/D)²
    ///
    /// * returns [`HollowOverSolid`]
    /// * errors: as [`Shaft::torsion`]
    ///
    /// Source: [`Shaft::torsion`], hollow over solid. Example: d/D = 1/2 keeps 15/16 of the strength (published exercise in
    /// strength of materials) at 3/4 of the mass.
    ///
    /// ```
    /// use trainwright::hold::{HollowOverSolid, Shaft};
    /// let kept = Shaft { outside_mm: 40.0, inside_mm: 20.0 }.hollow_over_solid()?;
    /// assert_eq!(kept, HollowOverSolid { strength: 0.9375, mass: 0.75 });
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    #[inline]
    pub fn hollow_over_solid(self) -> Result<HollowOverSolid> {
        let (inside_mm, outside_mm) = bore_in_outside(self.inside_mm, self.outside_mm)?;
        let square = inside_mm / outside_mm * (inside_mm / outside_mm);
        Ok(HollowOverSolid { strength: 1.0 - square * square, mass: 1.0 - square })
    }

    /// Whether the shaft stays below its yield in shear under a torque.
    ///
    /// u² = (K τ u_T/T)² + (K τ u_rel)² + u_y²; judged: τ_y − K τ ≥ 0
    ///
    /// * `load` — [`ShaftLoad`]; `rule` — decision rule
    /// * returns [`ShaftHold`]. One steady load: fatigue at a notch can break a shaft far below yield
    /// * errors: as [`Shaft::torsion`]
    ///
    /// Source: JCGM 100:2008, equation 10. Example: the input shaft of the invented Corrib family, 33/8 mm under 950 N·m, has
    /// 135.1 MPa, 0.225 of 600 MPa.
    ///
    /// ```
    /// use trainwright::hold::{Shaft, ShaftLoad};
    /// use trainwright::judge::{Reading, Rule, Verdict};
    /// let load = ShaftLoad {
    ///     torque_nm: Reading::exact(950.0)?, shear_yield_mpa: Reading::new(600.0, 30.0)?,
    ///     stress_factor: 1.0, stress_u_rel: 0.03,
    /// };
    /// let input = Shaft { outside_mm: 33.0, inside_mm: 8.0 };
    /// let hold = input.shaft_hold(load, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert!((hold.torsion.stress_mpa - 135.0997).abs() < 5e-5);
    /// assert!((hold.factor_at_yield - 4.441).abs() < 5e-4); // what splines and shoulders may add
    /// assert_eq!(hold.judgment.verdict, Verdict::Go);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn shaft_hold(self, load: ShaftLoad, rule: Rule) -> Result<ShaftHold> {
        let torque = Reading::new(positive("torque_nm", load.torque_nm.value)?, load.torque_nm.u)?;
        let yield_mpa = positive("shear_yield_mpa", load.shear_yield_mpa.value)?;
        let factor = within("stress_factor", load.stress_factor, 1.0, 10.0)?;
        let torsion = self.torsion(torque.value)?;
        let peak_mpa = factor * torsion.stress_mpa;
        let budget = combine(&[
            Input::new(-peak_mpa / torque.value, torque.u)?,
            Input::new(-peak_mpa, within("stress_u_rel", load.stress_u_rel, 0.0, 1.0)?)?,
            Input::new(1.0, load.shear_yield_mpa.u)?,
        ])?;
        let spare_mpa = Reading::new(yield_mpa - peak_mpa, budget.u)?;
        Ok(ShaftHold {
            torsion,
            yield_share: peak_mpa / yield_mpa,
            torque_at_yield_nm: torque.value * yield_mpa / peak_mpa,
            factor_at_yield: yield_mpa / torsion.stress_mpa,
            judgment: judge(spare_mpa, Limits::at_least(0.0)?, rule)?,
            budget,
        })
    }
}
