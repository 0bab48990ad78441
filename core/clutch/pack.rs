//! The parts of a multi-plate clutch or brake.

use core::f64::consts::PI;

use super::capacity::speed_in_range;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, ordered, positive, within};
use crate::judge::Limits;
use crate::real::sqrt;
use crate::units::{GRAVITY_M_S2, rad_s};

pub(super) const MEAN_RADIUS_NEW: Card = Card {
    id: "clutch.mean_radius_new_mm",
    purpose: "Friction radius of a new lining",
    equation: "r_m = (2/3) (r_o³ − r_i³)/(r_o² − r_i²)",
    symbols: &[symbol("r_i, r_o", "inner_radius_mm, outer_radius_mm", "mm"), symbol("r_m", "mean radius", "mm")],
    range: "uniform pressure: new, flat, unworn plates",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, uniform pressure",
};

pub(super) const MEAN_RADIUS_WORN: Card = Card {
    id: "clutch.mean_radius_worn_mm",
    purpose: "Friction radius of a worn-in lining",
    equation: "r_m = (r_o + r_i)/2",
    symbols: &[symbol("r_i, r_o", "inner_radius_mm, outer_radius_mm", "mm"), symbol("r_m", "mean radius", "mm")],
    range: "uniform wear: pressure × radius the same over the lining",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, uniform wear",
};

pub(super) const BEST_INNER_RADIUS: Card = Card {
    id: "clutch.best_inner_radius_mm",
    purpose: "Inner radius of the lining that carries most at a fixed peak pressure",
    equation: "r_i = r_o/√3",
    symbols: &[symbol("r_i", "best inner radius", "mm"), symbol("r_o", "outer_radius_mm", "mm")],
    range: "uniform wear",
    source: &card::MACHINE_DESIGN,
    locator: "chapter 16, dT/dd = 0",
};

pub(super) const SPRING_FORCE: Card = Card {
    id: "clutch.spring_force_n",
    purpose: "Force of the return springs at a fitted length",
    equation: "F = N c (L_0 − L)",
    symbols: &[
        symbol("F", "force", "N"),
        symbol("N", "count", "1"),
        symbol("c", "rate_n_mm", "N/mm"),
        symbol("L_0, L", "free_length_mm, fitted_length_mm", "mm"),
    ],
    range: "linear springs, not coil bound",
    source: &card::DEFINITION,
    locator: "Hooke's law",
};

pub(super) const HEAD_FORCE: Card = Card {
    id: "clutch.head_force_n",
    purpose: "Axial force of the oil that turns with the drum",
    equation: "F = (π ρ ω²/4) [(r_o⁴ − a⁴) − 2 r_0² (r_o² − a²)], a = max(r_i, r_0); 0 where r_0 ≥ r_o",
    symbols: &[
        symbol("F", "head force", "N"),
        symbol("ρ", "oil_density_kg_m3", "kg/m³"),
        symbol("ω", "drum_speed_rpm · π/30", "rad/s"),
        symbol("r_0", "free_surface_radius_mm", "m in the equation"),
        symbol("r_i, r_o", "wetted.inner_radius_mm, wetted.outer_radius_mm", "m in the equation"),
    ],
    range: "oil turning as one body with the drum; oil that lags swirls less, so this is an upper bound",
    source: &card::DEFINITION,
    locator: "p = ρ ω² (r² − r_0²)/2 integrated over the wetted annulus",
};

pub(super) const SURFACE_DROP: Card = Card {
    id: "clutch.surface_drop_mm",
    purpose: "How far the oil surface in an upright turning drum dips from wall to axis",
    equation: "z = ω² R²/(2 g)",
    symbols: &[
        symbol("z", "drop", "m in the equation"),
        symbol("ω", "speed_rpm · π/30", "rad/s"),
        symbol("R", "radius_mm", "m in the equation"),
        symbol("g", "standard gravity", "m/s²"),
    ],
    range: "forced vortex, axis upright, no spill",
    source: &card::FLUID_MECHANICS,
    locator: "forced vortex",
};

/// A flat ring: a lining, a piston or a wetted wall.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Annulus {
    /// Inner radius, mm; 0 for a full disc.
    pub inner_radius_mm: f64,
    /// Outer radius, mm.
    pub outer_radius_mm: f64,
}

impl Annulus {
    /// A ring; inner radius 0 or more and below the outer one.
    pub fn new(inner_radius_mm: f64, outer_radius_mm: f64) -> Result<Self> {
        Self { inner_radius_mm, outer_radius_mm }.checked("radius_mm")
    }

    /// The ring, if its radii are possible; `name` is the part for the error.
    pub(super) fn checked(self, name: &'static str) -> Result<Self> {
        let (lower, upper) = radii_in_range(name, self)?;
        if lower < upper { Ok(self) } else { Err(Error::Reversed { name, lower, upper }) }
    }

    /// Area of one side.
    ///
    /// A = π (r_o² − r_i²)
    ///
    /// * returns A, mm²
    /// * errors: as [`Annulus::new`]
    ///
    /// ```
    /// use trainwright::clutch::Annulus;
    /// assert!((Annulus::new(0.0, 2.0)?.area_mm2()? - 12.566_371).abs() < 1e-6);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn area_mm2(self) -> Result<f64> {
        let Self { inner_radius_mm: ri, outer_radius_mm: ro } = self.checked("radius_mm")?;
        Ok(PI * (ro * ro - ri * ri))
    }

    /// Friction radius of a new lining, under uniform pressure.
    ///
    /// r_m = (2/3) (r_o³ − r_i³)/(r_o² − r_i²)
    ///
    /// * returns r_m, mm, never below [`Annulus::mean_radius_worn_mm`]
    /// * errors: as [`Annulus::new`]
    ///
    /// Source: Shigley, chapter 16, uniform pressure (from memory). The difference to the worn radius is
    /// (1 − k)²/(3 (1 + k)²) of it with k = r_i/r_o.
    ///
    /// ```
    /// use trainwright::clutch::Annulus;
    /// let lining = Annulus::new(56.0, 78.0)?;
    /// let (new, worn) = (lining.mean_radius_new_mm()?, lining.mean_radius_worn_mm()?);
    /// let k: f64 = 56.0 / 78.0;
    /// assert!((new / worn - 1.0 - (1.0 - k).powi(2) / (3.0 * (1.0 + k).powi(2))).abs() < 1e-12);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn mean_radius_new_mm(self) -> Result<f64> {
        let Self { inner_radius_mm: ri, outer_radius_mm: ro } = self.checked("radius_mm")?;
        Ok(2.0 / 3.0 * (ro * ro + ro * ri + ri * ri) / (ro + ri))
    }

    /// Friction radius of a worn-in lining, under uniform wear.
    ///
    /// r_m = (r_o + r_i)/2
    ///
    /// * returns r_m, mm
    /// * errors: as [`Annulus::new`]
    ///
    /// Source: Shigley, chapter 16, uniform wear (from memory).
    pub fn mean_radius_worn_mm(self) -> Result<f64> {
        let Self { inner_radius_mm: ri, outer_radius_mm: ro } = self.checked("radius_mm")?;
        Ok((ro + ri) / 2.0)
    }

    /// Inner radius that gives this outer radius most torque at a fixed peak lining pressure (uniform wear).
    ///
    /// r_i = r_o/√3
    ///
    /// * returns r_i, mm; the present inner radius does not matter
    /// * errors: as [`Annulus::new`]
    ///
    /// Source: Shigley, chapter 16 (from memory): of a 6.5 in disc, d = 3.753 in.
    ///
    /// ```
    /// use trainwright::clutch::Annulus;
    /// let best = Annulus::new(40.0, 6.5 * 25.4 / 2.0)?.best_inner_radius_mm()?;
    /// assert!((2.0 * best / 25.4 - 3.753).abs() < 0.0005);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn best_inner_radius_mm(self) -> Result<f64> {
        Ok(self.checked("radius_mm")?.outer_radius_mm / sqrt(3.0))
    }
}

/// A set of equal return springs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReturnSprings {
    /// Number of springs, 1 to 100.
    pub count: u32,
    /// Rate of one spring, N/mm.
    pub rate_n_mm: f64,
    /// Length of a free spring, mm.
    pub free_length_mm: f64,
}

impl ReturnSprings {
    /// Force of the return springs at a fitted length.
    ///
    /// F = N c (L_0 − L)
    ///
    /// * `fitted_length_mm` — L with the pack applied, above 0 to L_0
    /// * returns F, N
    /// * errors: [`Error::Count`], [`Error::NotPositive`], [`Error::OutOfRange`], [`Error::NotFinite`]
    ///
    /// Source: Hooke's law.
    ///
    /// ```
    /// use trainwright::clutch::ReturnSprings;
    /// let springs = ReturnSprings { count: 20, rate_n_mm: 4.0, free_length_mm: 38.0 };
    /// assert!((springs.spring_force_n(24.0)? - 1120.0).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn spring_force_n(self, fitted_length_mm: f64) -> Result<f64> {
        if !(1..=100).contains(&self.count) {
            return Err(Error::Count { name: "count", count: self.count, low: 1, high: 100 });
        }
        let free = length_in_range("free_length_mm", positive("free_length_mm", self.free_length_mm)?)?;
        let fitted = within("fitted_length_mm", positive("fitted_length_mm", fitted_length_mm)?, 0.0, free)?;
        let rate = within("rate_n_mm", positive("rate_n_mm", self.rate_n_mm)?, 0.0, 1e6)?;
        Ok(f64::from(self.count) * rate * (free - fitted))
    }
}

/// Oil that turns with the drum, behind the piston or in the balance dam.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Head {
    /// The wall that the oil presses on.
    pub wetted: Annulus,
    /// Radius of the free surface, mm: the feed or the vent, wherever oil can leave inward.
    pub free_surface_radius_mm: f64,
}

impl Head {
    /// No oil, no force. Both heads of a pack whose dam cancels the apply side at every speed, and both of a brake.
    pub const NONE: Self =
        Self { wetted: Annulus { inner_radius_mm: 0.0, outer_radius_mm: 0.0 }, free_surface_radius_mm: 0.0 };

    fn checked(self, name: &'static str) -> Result<Self> {
        radii_in_range(name, self.wetted)?;
        length_in_range("free_surface_radius_mm", self.free_surface_radius_mm)?;
        Ok(self)
    }

    /// Axial force of the oil.
    ///
    /// F = (π ρ ω²/4) [(r_o⁴ − a⁴) − 2 r_0² (r_o² − a²)], a = max(r_i, r_0); 0 where r_0 ≥ r_o
    ///
    /// * `oil_density_kg_m3` — hot oil, 0 to 2000
    /// * `drum_speed_rpm` — of the part that holds the oil, any sign; 0 in a brake
    /// * returns F, N. The oil is taken to turn as one body with the drum: an upper bound
    /// * errors: [`Error::Reversed`], [`Error::OutOfRange`], [`Error::NotFinite`]
    ///
    /// Source: forced vortex integrated over the wall. Example: 840 kg/m³, 6000 rpm, piston 45 to 70 mm fed at 30 mm,
    /// 3837.608 N by numerical integration.
    ///
    /// ```
    /// use trainwright::clutch::{Annulus, Head};
    /// let head = Head { wetted: Annulus::new(45.0, 70.0)?, free_surface_radius_mm: 30.0 };
    /// assert!((head.head_force_n(840.0, 6000.0)? - 3837.608).abs() < 0.001);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn head_force_n(self, oil_density_kg_m3: f64, drum_speed_rpm: f64) -> Result<f64> {
        let omega = rad_s(speed_in_range(drum_speed_rpm)?);
        Ok(self.checked("wetted")?.force_per_omega2(oil_density(oil_density_kg_m3)?) * omega * omega)
    }

    /// Pressure of the oil at a radius.
    ///
    /// p = ρ ω² (r² − r_0²)/2; 0 inside the free surface
    ///
    /// * `radius_mm` — r, 0 or more; `oil_density_kg_m3`, `drum_speed_rpm` — as [`Head::head_force_n`]
    /// * returns p, kPa
    /// * errors: as [`Head::head_force_n`]
    pub fn head_pressure_kpa(self, radius_mm: f64, oil_density_kg_m3: f64, drum_speed_rpm: f64) -> Result<f64> {
        let omega = rad_s(speed_in_range(drum_speed_rpm)?);
        let density = oil_density(oil_density_kg_m3)?;
        let r0 = self.checked("wetted")?.free_surface_radius_mm;
        let r = length_in_range("radius_mm", radius_mm)?.max(r0);
        Ok(0.5 * density * omega * omega * (r * r - r0 * r0) * 1e-9)
    }

    /// Force over ω², N·s².
    pub(super) fn force_per_omega2(self, density_kg_m3: f64) -> f64 {
        let Annulus { inner_radius_mm: ri, outer_radius_mm: ro } = self.wetted;
        let r0 = self.free_surface_radius_mm;
        if r0 >= ro {
            return 0.0;
        }
        let (outer2, a2, r02) = (ro * ro, ri.max(r0) * ri.max(r0), r0 * r0);
        PI * density_kg_m3 / 4.0 * (outer2 - a2) * ((outer2 + a2) - 2.0 * r02) * 1e-12
    }
}

fn length_in_range(name: &'static str, length_mm: f64) -> Result<f64> {
    within(name, length_mm, 0.0, 1e4)
}

fn radii_in_range(name: &'static str, ring: Annulus) -> Result<(f64, f64)> {
    let (inner, outer) = ordered(name, ring.inner_radius_mm, ring.outer_radius_mm)?;
    Ok((length_in_range(name, inner)?, length_in_range(name, outer)?))
}

pub(super) fn oil_density(oil_density_kg_m3: f64) -> Result<f64> {
    within("oil_density_kg_m3", oil_density_kg_m3, 0.0, 2000.0)
}

/// How far the oil surface in an upright turning drum dips from wall to axis.
///
/// z = ω² R²/(2 g)
///
/// * `radius_mm` — R, above 0; `speed_rpm` — any sign
/// * returns z, mm. Where it is many times the drum's height, the free surface of [`Head`] is a cylinder
/// * errors: [`Error::NotPositive`], [`Error::NotFinite`]
///
/// Source: forced vortex, in any text on fluid mechanics (from memory of Bansal): a drop of 400 mm in a cylinder of
/// 150 mm diameter needs 356.7 rpm.
///
/// ```
/// assert!((trainwright::clutch::surface_drop_mm(75.0, 356.7)? - 400.0).abs() < 0.2);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn surface_drop_mm(radius_mm: f64, speed_rpm: f64) -> Result<f64> {
    let rim = positive("radius_mm", radius_mm)? * rad_s(finite("speed_rpm", speed_rpm)?);
    Ok(rim * rim / (2.0 * GRAVITY_M_S2 * 1000.0))
}

/// Faces of a pack of friction plates between steels: two for each friction plate, 1 to 100 plates.
pub fn plate_faces(friction_plates: u32) -> Result<u32> {
    if (1..=100).contains(&friction_plates) {
        Ok(2 * friction_plates)
    } else {
        Err(Error::Count { name: "friction_plates", count: friction_plates, low: 1, high: 100 })
    }
}

/// Pairs of faces between alternating driving and driven discs: n₁ + n₂ − 1, the counts equal or one apart.
///
/// Source: any text on machine design: three driving and two driven discs have four pairs.
pub fn disc_faces(driving_discs: u32, driven_discs: u32) -> Result<u32> {
    for (name, count) in [("driving_discs", driving_discs), ("driven_discs", driven_discs)] {
        if !(1..=100).contains(&count) {
            return Err(Error::Count { name, count, low: 1, high: 100 });
        }
    }
    if driving_discs.abs_diff(driven_discs) > 1 {
        return Err(Error::Inconsistent {
            name: "discs",
            why: "driving and driven discs alternate: their counts are equal or differ by one",
        });
    }
    Ok(driving_discs + driven_discs - 1)
}

/// A clutch or brake pack. Nothing in it depends on pressure, speed or temperature.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pack {
    /// Where lining meets steel; measured on the lining, not on the plate.
    pub lining: Annulus,
    /// Piston face under apply pressure.
    pub piston: Annulus,
    /// Friction faces: [`plate_faces`] or [`disc_faces`].
    pub faces: u32,
    /// Worn-in lining (uniform wear); false for new plates (uniform pressure).
    pub worn: bool,
    /// Return-spring force with the pack applied, N: weakest and strongest spring in limits. Equal if measured.
    pub return_spring_n: Limits,
    /// Drag of the piston seals against apply, N.
    pub seal_drag_n: f64,
    /// Oil behind the piston: adds to the apply force when the drum turns.
    pub head: Head,
    /// Oil in the balance dam: takes from it.
    pub dam: Head,
}

impl Pack {
    /// The pack, if its dimensions are possible.
    pub(crate) fn checked(self) -> Result<Self> {
        self.lining.checked("lining")?;
        positive("lining.inner_radius_mm", self.lining.inner_radius_mm)?;
        self.piston.checked("piston")?;
        if !(1..=200).contains(&self.faces) {
            return Err(Error::Count { name: "faces", count: self.faces, low: 1, high: 200 });
        }
        let (weakest, strongest) = ordered("return_spring_n", self.return_spring_n.lower, self.return_spring_n.upper)?;
        for (name, force_n) in
            [("return_spring_n", weakest), ("return_spring_n", strongest), ("seal_drag_n", self.seal_drag_n)]
        {
            within(name, force_n, 0.0, 1e9)?;
        }
        self.head.checked("head")?;
        self.dam.checked("dam")?;
        Ok(self)
    }

    /// Friction radius, mm, of the lining in the state that `worn` tells.
    pub fn mean_radius_mm(self) -> Result<f64> {
        if self.worn { self.lining.mean_radius_worn_mm() } else { self.lining.mean_radius_new_mm() }
    }
}
