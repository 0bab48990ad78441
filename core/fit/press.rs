//! Press fits: what an interference does to both parts (Lamé).

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive, within};

use super::clearance::{LARGEST_MM, diameter};

pub(super) const PRESSED: Card = Card {
    id: "fit.pressed",
    purpose: "Pressure between two pressed parts, what it does to the bore inside and the outside, and their hoop stresses",
    equation: "p = δ/(D (C_i/E_i + C_o/E_o)), C_i = (D² + d²)/(D² − d²) − ν_i, C_o = (D_o² + D²)/(D_o² − D²) + ν_o; closure = 2 p d D²/(E_i (D² − d²)); growth = 2 p D_o D²/(E_o (D_o² − D²))",
    symbols: &[
        symbol("p", "pressure_mpa", "MPa"),
        symbol("δ", "interference_mm, diametral", "mm"),
        symbol("d, D, D_o", "inside_mm, interface_mm, outside_mm", "mm"),
        symbol("E_i, ν_i, E_o, ν_o", "inner, outer: young_mpa, poisson", "MPa, 1"),
        symbol("closure, growth", "bore_closure_mm, outside_growth_mm", "mm"),
    ],
    range: "long or short rings of even thickness, free at their ends (plane stress), elastic, smooth; a lug or rib of the housing and a slit in the bushing are not counted",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 3, press and shrink fits; Roark, thick-walled cylinders",
};

pub(super) const RETENTION: Card = Card {
    id: "fit.retention",
    purpose: "Axial force and torque at which a pressed part begins to move",
    equation: "F = μ p π D L, T = F D/2",
    symbols: &[
        symbol("F, T", "force_n, torque_nm", "N, N·m"),
        symbol("p, D", "pressure_mpa, interface_mm", "MPa, mm"),
        symbol("L, μ", "length_mm, friction", "mm, 1"),
    ],
    range: "even pressure along the length; friction of the press fit as fitted, dry or oiled",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 7, press fits: holding torque",
};

/// Elastic constants of a metal.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Modulus of elasticity, MPa.
    pub young_mpa: f64,
    /// Poisson's ratio, 0 to 0.5.
    pub poisson: f64,
}

impl Elastic {
    pub(super) fn checked(self) -> Result<Self> {
        within("young_mpa", positive("young_mpa", self.young_mpa)?, 0.0, 1e7)?;
        within("poisson", self.poisson, 0.0, 0.5)?;
        Ok(self)
    }
}

/// Two round parts pressed together.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressJoint {
    /// Bore of the inner part, mm; 0 where it is solid.
    pub inside_mm: f64,
    /// Diameter where they meet, mm.
    pub interface_mm: f64,
    /// Outside of the outer part, mm; infinite where it is a thick body.
    pub outside_mm: f64,
    /// The inner part.
    pub inner: Elastic,
    /// The outer part.
    pub outer: Elastic,
}

/// A press fit under its interference.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressed {
    /// Interference, diametral, mm; negative where the parts are free of each other by so much.
    pub interference_mm: f64,
    /// Pressure where the parts meet, MPa; 0 while they are free.
    pub pressure_mpa: f64,
    /// How much the bore of the inner part closes, mm.
    pub bore_closure_mm: f64,
    /// How much the outside grows, mm.
    pub outside_growth_mm: f64,
    /// Greatest hoop stress of the inner part, MPa: at its bore, negative (compression).
    pub inner_hoop_mpa: f64,
    /// Greatest hoop stress of the outer part, MPa: where the parts meet, positive (tension).
    pub outer_hoop_mpa: f64,
}

/// What a press fit holds by friction.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Retention {
    /// Axial force, N.
    pub force_n: f64,
    /// Torque, N·m.
    pub torque_nm: f64,
}

impl PressJoint {
    /// The joint, if its sizes can be.
    pub(super) fn checked(self) -> Result<Self> {
        diameter("interface_mm", self.interface_mm)?;
        within("inside_mm", self.inside_mm, 0.0, LARGEST_MM)?;
        if self.outside_mm != f64::INFINITY {
            diameter("outside_mm", self.outside_mm)?;
        }
        if self.inside_mm >= self.interface_mm || self.interface_mm >= self.outside_mm {
            return Err(Error::Inconsistent {
                name: "inside_mm, interface_mm, outside_mm",
                why: "each must be larger than the one before; correct the wall, the interface or the outside",
            });
        }
        self.inner.checked()?;
        self.outer.checked()?;
        Ok(self)
    }

    /// What an interference does to both parts.
    ///
    /// p = δ/(D (C_i/E_i + C_o/E_o)), C_i = (D² + d²)/(D² − d²) − ν_i, C_o = (D_o² + D²)/(D_o² − D²) + ν_o
    ///
    /// * `interference_mm` — δ, diametral; negative or 0 for parts that are free of each other: no pressure
    /// * returns [`Pressed`]. The hoop stresses are for the user to hold against the yield stress of each metal: beyond it the
    ///   formula does not hold
    /// * errors: [`Error::Inconsistent`] where the diameters do not rise; [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// Source: Shigley, chapter 3, press and shrink fits; Roark (both from memory). Example (computed): a solid steel shaft of
    /// 4 in in a steel hub of 7 in with 0.004 in, E = 30 million psi, gives E δ/(2 D) (1 − (D/D_o)²) = 10 102 psi.
    ///
    /// ```
    /// use trainwright::fit::{Elastic, PressJoint};
    /// use trainwright::units::{MM_PER_IN, kpa_to_psi, psi_to_kpa};
    /// let steel = Elastic { young_mpa: psi_to_kpa(30e6) / 1000.0, poisson: 0.29 };
    /// let hub = PressJoint {
    ///     inside_mm: 0.0, interface_mm: 4.0 * MM_PER_IN, outside_mm: 7.0 * MM_PER_IN, inner: steel, outer: steel,
    /// };
    /// let pressed = hub.pressed(0.004 * MM_PER_IN)?;
    /// assert!((kpa_to_psi(pressed.pressure_mpa * 1000.0) - 10_102.0).abs() < 0.1);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn pressed(self, interference_mm: f64) -> Result<Pressed> {
        let joint = self.checked()?;
        let delta = within("interference_mm", finite("interference_mm", interference_mm)?, -LARGEST_MM, LARGEST_MM)?;
        let Self { inside_mm: d, interface_mm: at, outside_mm, inner, outer } = joint;
        // Ratios, so that an infinite outside needs no case of its own.
        let (bore, wall) = (d / at, at / outside_mm);
        let (bore2, wall2) = (bore * bore, wall * wall);
        let inner_hoop = (1.0 + bore2) / (1.0 - bore2);
        let outer_hoop = (1.0 + wall2) / (1.0 - wall2);
        let compliance =
            (inner_hoop - inner.poisson) / inner.young_mpa + (outer_hoop + outer.poisson) / outer.young_mpa;
        let pressure_mpa = delta.max(0.0) / (at * compliance);
        let outside_growth_mm =
            if wall > 0.0 { 2.0 * pressure_mpa * outside_mm * wall2 / (outer.young_mpa * (1.0 - wall2)) } else { 0.0 };
        Ok(Pressed {
            interference_mm: delta,
            pressure_mpa,
            bore_closure_mm: 2.0 * pressure_mpa * d / (inner.young_mpa * (1.0 - bore2)),
            outside_growth_mm,
            inner_hoop_mpa: if d > 0.0 { -2.0 * pressure_mpa / (1.0 - bore2) } else { -pressure_mpa },
            outer_hoop_mpa: pressure_mpa * outer_hoop,
        })
    }

    /// Axial force and torque at which the pressed part begins to move under a pressure.
    ///
    /// F = μ p π D L, T = F D/2
    ///
    /// * `pressure_mpa` — p, 0 or more, from [`PressJoint::pressed`]; `length_mm` — L of contact; `friction` — μ, above 0 to 1
    /// * errors: as [`PressJoint::pressed`]; [`Error::NotPositive`], [`Error::OutOfRange`]
    ///
    /// Source: Shigley, chapter 7 (from memory).
    pub fn retention(self, pressure_mpa: f64, length_mm: f64, friction: f64) -> Result<Retention> {
        let joint = self.checked()?;
        let pressure = within("pressure_mpa", pressure_mpa, 0.0, 1e6)?;
        let length = diameter("length_mm", length_mm)?;
        let friction = within("friction", positive("friction", friction)?, 0.0, 1.0)?;
        let force_n = friction * pressure * core::f64::consts::PI * joint.interface_mm * length;
        Ok(Retention { force_n, torque_nm: force_n * joint.interface_mm / 2.0 * 1e-3 })
    }
}
