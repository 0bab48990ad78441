//! Line contact of two elastic bodies (Hertz).

use core::f64::consts::PI;

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::sqrt;

pub(super) const PRESSED: Card = Card {
    id: "hold.pressed",
    purpose: "Pressure, width and shear stress where two rounded bodies touch along a line",
    equation: "p₀ = 2·F/(π·b·L), b = √(4·F·R/(π·L·E*)), 1/R = 1/R₁ + 1/R₂, 1/E* = (1 − ν₁²)/E₁ + (1 − ν₂²)/E₂, τ = 0.3003·p₀ at z = 0.7862·b",
    symbols: &[
        symbol("F, L", "force_n, length_mm", "N, mm"),
        symbol("R₁, R₂, R", "first.radius_mm, second.radius_mm, effective_radius_mm", "mm"),
        symbol("E₁, E₂, E*", "first.young_mpa, second.young_mpa, contact_modulus_mpa", "MPa"),
        symbol("ν₁, ν₂", "first.poisson, second.poisson", "1"),
        symbol("b", "half_width_mm", "mm"),
        symbol("p₀", "peak_mpa", "MPa"),
        symbol("τ, z", "shear_mpa, shear_depth_mm", "MPa, mm"),
    ],
    range: "a hollow counts with a negative radius; elastic, smooth, dry, straight line of even load; yield begins below the surface near p₀ = 1.67 times the yield stress",
    source: &card::MACHINE_DESIGN,
    locator: "cylindrical contact",
};

pub(super) const FORCE_AT_PEAK: Card = Card {
    id: "hold.force_at_peak_n",
    purpose: "Force at which a line contact reaches a peak pressure",
    equation: "F = π·L·R·p₀²/E*",
    symbols: &[
        symbol("F", "force", "N"),
        symbol("L, R, E*", "as hold.pressed", "mm, mm, MPa"),
        symbol("p₀", "peak_mpa", "MPa"),
    ],
    range: "as hold.pressed",
    source: &card::MACHINE_DESIGN,
    locator: "cylindrical contact, solved for the force",
};

/// Depth of the greatest shear stress over the half width: √((√5 − 1)/2), where ζ − ζ²/√(1 + ζ²) is greatest.
const SHEAR_DEPTH: f64 = 0.786_151_377_757_423_3;
/// The shear stress there over the peak pressure.
const SHEAR: f64 = 0.300_283_106_000_777_6;

/// One of two bodies that touch along a line.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ContactBody {
    /// Radius where they touch, mm: positive when round outward, negative when hollow (a bore), infinite when flat.
    pub radius_mm: f64,
    /// Modulus of elasticity, MPa.
    pub young_mpa: f64,
    /// Poisson's ratio, 0 to 0.5.
    pub poisson: f64,
}

impl ContactBody {
    fn curvature_per_mm(self) -> Result<f64> {
        if self.radius_mm.is_infinite() {
            return Ok(0.0);
        }
        positive("radius_mm", self.radius_mm.max(-self.radius_mm))?;
        Ok(1.0 / self.radius_mm)
    }

    fn compliance_per_mpa(self) -> Result<f64> {
        let poisson = within("poisson", self.poisson, 0.0, 0.5)?;
        Ok((1.0 - poisson * poisson) / positive("young_mpa", self.young_mpa)?)
    }
}

/// Two bodies that touch along a line.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineContact {
    /// One body.
    pub first: ContactBody,
    /// The other.
    pub second: ContactBody,
    /// Length of the line, mm.
    pub length_mm: f64,
}

/// What a force does where two bodies touch along a line.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinePressure {
    /// Radius of a cylinder on a flat that touches alike, mm.
    pub effective_radius_mm: f64,
    /// Contact modulus of both materials together, MPa.
    pub contact_modulus_mpa: f64,
    /// Half of the width of the contact, mm.
    pub half_width_mm: f64,
    /// Pressure in the middle of the contact, MPa.
    pub peak_mpa: f64,
    /// Greatest shear stress, below the surface, MPa.
    pub shear_mpa: f64,
    /// How deep below the surface it lies, mm.
    pub shear_depth_mm: f64,
}

impl LineContact {
    /// Pressure, width and shear stress under a force.
    ///
    /// p₀ = 2·F/(π·b·L), b = √(4·F·R/(π·L·E*)), 1/R = 1/R₁ + 1/R₂, 1/E* = (1 − ν₁²)/E₁ + (1 − ν₂²)/E₂, τ = 0.3003·p₀ at
    /// z = 0.7862·b
    ///
    /// * `force_n` — F, 0 or more
    /// * returns [`LinePressure`]; elastic only: yield begins below the surface near p₀ = 1.67 times the yield stress
    /// * errors: [`Error::NotPositive`], [`Error::OutOfRange`], [`Error::Inconsistent`] for a hollow narrower than the body in it
    ///
    /// Source: Shigley, cylindrical contact (from memory). Some notes print b = √(2·F·R/(π·L·E*)), which is short by √2: the
    /// pressure over the contact then does not sum to F. Example (equilibrium checked by quadrature): a steel roller of 6 mm
    /// radius on a flat, 2000 N over 10 mm: b = 0.116184 mm, p₀ = 1095.88 MPa.
    ///
    /// ```
    /// use trainwright::hold::{ContactBody, LineContact};
    /// let steel = |radius_mm| ContactBody { radius_mm, young_mpa: 206_000.0, poisson: 0.3 };
    /// let roller = LineContact { first: steel(6.0), second: steel(f64::INFINITY), length_mm: 10.0 };
    /// let pressed = roller.pressed(2000.0)?;
    /// assert!((pressed.half_width_mm - 0.116_184).abs() < 1e-6);
    /// assert!((pressed.peak_mpa - 1095.88).abs() < 0.01);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn pressed(self, force_n: f64) -> Result<LinePressure> {
        let (effective_radius_mm, contact_modulus_mpa) = self.checked()?;
        let load_n_mm = within("force_n", force_n, 0.0, 1e9)? / self.length_mm;
        let half_width_mm = sqrt(4.0 * load_n_mm * effective_radius_mm / (PI * contact_modulus_mpa));
        let peak_mpa = sqrt(load_n_mm * contact_modulus_mpa / (PI * effective_radius_mm));
        Ok(LinePressure {
            effective_radius_mm,
            contact_modulus_mpa,
            half_width_mm,
            peak_mpa,
            shear_mpa: SHEAR * peak_mpa,
            shear_depth_mm: SHEAR_DEPTH * half_width_mm,
        })
    }

    /// Force at which the contact reaches a peak pressure: [`LineContact::pressed`] solved for F, N.
    ///
    /// F = π·L·R·p₀²/E*
    ///
    /// * `peak_mpa` — p₀, above 0
    /// * errors: as there
    ///
    /// Source: Shigley, cylindrical contact, solved for the force.
    pub fn force_at_peak_n(self, peak_mpa: f64) -> Result<f64> {
        let (effective_radius_mm, contact_modulus_mpa) = self.checked()?;
        positive("peak_mpa", within("peak_mpa", peak_mpa, 0.0, 1e6)?)?;
        Ok(PI * self.length_mm * effective_radius_mm * peak_mpa * peak_mpa / contact_modulus_mpa)
    }

    /// Effective radius and contact modulus.
    fn checked(self) -> Result<(f64, f64)> {
        positive("length_mm", self.length_mm)?;
        let curvature = self.first.curvature_per_mm()? + self.second.curvature_per_mm()?;
        if curvature <= 0.0 {
            return Err(Error::Inconsistent {
                name: "radius_mm",
                why: "the bodies do not touch along a line: a hollow must be wider than the body in it, and two flats touch all over",
            });
        }
        let compliance = self.first.compliance_per_mpa()? + self.second.compliance_per_mpa()?;
        Ok((1.0 / curvature, 1.0 / compliance))
    }
}
