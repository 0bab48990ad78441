//! Needle thrust bearings: static and dynamic capacity, life, and whether they stand a load.

use super::rating_life::{ROLLER_EXPONENT, RatingLife, load_in_range, rating_life, speed_in_range};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::judge::{Judgment, Limits, Reading, Rule, judge};
use crate::real::{cos, powf, sin};

pub(super) const NEEDLE_CAPACITY: Card = Card {
    id: "hold.needle_capacity",
    purpose: "Static and dynamic axial capacity of a needle thrust bearing",
    equation: "C_0a = 220 Z L D_w; C_a = f_c L^(7/9) Z^(3/4) D_w^(29/27), f_c = 472.45 λ η (D_w/D_pw)^(2/9), λ η = 0.73 · 0.85",
    symbols: &[
        symbol("C_0a", "static_n", "N"),
        symbol("C_a", "dynamic_n", "N"),
        symbol("Z", "needles", "1"),
        symbol("L", "needle_length_mm, without the rounded ends", "mm"),
        symbol("D_w", "needle_diameter_mm", "mm"),
        symbol("D_pw", "pitch_diameter_mm", "mm"),
        symbol("f_c", "dynamic_factor", "N/mm²"),
        symbol("λ η", "reduction factors at a contact angle of 90°", "1"),
    ],
    range: "D_w/D_pw 0.01 to 0.30; hardened flat races as wide as the needles, square to the axis. Static: 4000 MPa contact \
        pressure. Not a maker's rating",
    source: &card::BEARING_LIFE,
    locator: "clause 8, thrust roller bearings, 90°; C_0a: ISO 76:2006, thrust roller bearings, 90°",
};

pub(super) const NEEDLE_HOLD: Card = Card {
    id: "hold.needle_hold",
    purpose: "Whether a needle thrust bearing stands a load at rest without lasting dents",
    equation: "s_0 = C_0a/P; judged: P ≤ C_0a/s_least",
    symbols: &[
        symbol("C_0a", "capacity.static_n", "N"),
        symbol("P", "load_n", "N"),
        symbol("s_0", "static_factor", "1"),
        symbol("s_least", "least_static_factor, chosen", "1"),
    ],
    range: "uncertainty of the load only. Not a rating",
    source: &card::BEARING_STATIC,
    locator: "static load safety factor",
};

pub(super) const NEEDLE_LASTS: Card = Card {
    id: "hold.needle_lasts",
    purpose: "Whether nine of ten needle thrust bearings reach a life under a load",
    equation: "P_max = C_a (60 n h/10⁶)^(−1/p); judged: P ≤ P_max",
    symbols: &[
        symbol("C_a", "capacity.dynamic_n", "N"),
        symbol("P", "load_n", "N"),
        symbol("P_max", "load_for_life_n", "N"),
        symbol("h", "least_life_h, wanted", "h"),
        symbol("n", "speed_rpm", "1/min"),
        symbol("p", "10/3", "1"),
    ],
    range: "judged in the load, where no straight line stands for the life; uncertainty of the load only",
    source: &card::BEARING_LIFE,
    locator: "basic rating life solved for the load",
};

/// Reduction factors of ISO 281 for a thrust roller bearing at a contact angle of 90°: λ = 0.73, η = 1 − 0.15 sin 90°.
const REDUCTION: f64 = 0.73 * 0.85;
/// 0.41 B_1 of ISO/TR 1281-1, for newtons and millimeters.
const DYNAMIC_CONSTANT: f64 = 472.453_88;

/// A needle thrust bearing: one row of needles between two flat races.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NeedleThrust {
    /// Needles, 2 to 400.
    pub needles: u32,
    /// Diameter of a needle, mm.
    pub needle_diameter_mm: f64,
    /// Length of a needle that bears on the race, mm: without its rounded ends.
    pub needle_length_mm: f64,
    /// Diameter through the middle of the needles, mm.
    pub pitch_diameter_mm: f64,
}

/// Capacity of a needle thrust bearing with what made it. Not a maker's rating.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NeedleCapacity {
    /// Inside diameter that the needles sweep, mm.
    pub inside_mm: f64,
    /// Outside diameter that the needles sweep, mm: the race face must reach it.
    pub outside_mm: f64,
    /// Space between two needles at their inner ends, mm; what is left for the cage.
    pub gap_mm: f64,
    /// Needle diameter over pitch diameter.
    pub size_ratio: f64,
    /// The standard's f_c, N/mm² by its powers of millimeters.
    pub dynamic_factor: f64,
    /// Static axial capacity C_0a, N.
    pub static_n: f64,
    /// Dynamic axial capacity C_a, N.
    pub dynamic_n: f64,
}

/// Whether a bearing stands a load at rest.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NeedleHold {
    /// Capacity.
    pub capacity: NeedleCapacity,
    /// Static capacity over load.
    pub static_factor: f64,
    /// The load against the static capacity over the least factor.
    pub judgment: Judgment,
}

/// Whether a bearing reaches a life.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NeedleLasts {
    /// Capacity.
    pub capacity: NeedleCapacity,
    /// Life at the best estimate of the load.
    pub life: RatingLife,
    /// Load at which the life wanted is just reached, N.
    pub load_for_life_n: f64,
    /// The load against it.
    pub judgment: Judgment,
}

impl NeedleThrust {
    fn checked(self) -> Result<Self> {
        if !(2..=400).contains(&self.needles) {
            return Err(Error::Count { name: "needles", count: self.needles, low: 2, high: 400 });
        }
        for (name, size) in [
            ("needle_diameter_mm", self.needle_diameter_mm),
            ("needle_length_mm", self.needle_length_mm),
            ("pitch_diameter_mm", self.pitch_diameter_mm),
        ] {
            within(name, positive(name, size)?, 0.0, 1e4)?;
        }
        if self.needle_length_mm >= self.pitch_diameter_mm {
            return Err(Error::Inconsistent {
                name: "needle_length_mm",
                why: "needles as long as the pitch diameter reach past the axis; exchange the two or correct one",
            });
        }
        if self.gap_mm() < 0.0 {
            return Err(Error::Inconsistent {
                name: "needles",
                why: "so many needles do not fit side by side at their inner ends; count them again, or correct diameter, \
                    length or pitch diameter",
            });
        }
        Ok(self)
    }

    /// Between two neighbors at their inner ends: 2 (r_i sin(π/Z) − D_w/2 cos(π/Z)), r_i = (D_pw − L)/2.
    fn gap_mm(self) -> f64 {
        let half_step = core::f64::consts::PI / f64::from(self.needles);
        (self.pitch_diameter_mm - self.needle_length_mm) * sin(half_step) - self.needle_diameter_mm * cos(half_step)
    }

    /// Static and dynamic axial capacity.
    ///
    /// C_0a = 220 Z L D_w; C_a = f_c L^(7/9) Z^(3/4) D_w^(29/27), f_c = 472.45 λ η (D_w/D_pw)^(2/9), λ η = 0.73 · 0.85
    ///
    /// * `self` — D_w/D_pw from 0.01 to 0.30, the range of the standard's table
    /// * returns [`NeedleCapacity`]. Not a maker's rating, and only for races that are hard, flat and as wide as the needles
    /// * errors: [`Error::Count`] for the needles, [`Error::NotPositive`] and [`Error::OutOfRange`] for a size or D_w/D_pw,
    ///   [`Error::Inconsistent`] for needles that do not fit around the pitch circle
    ///
    /// Source: ISO 281:2007, thrust roller bearings, and ISO 76:2006, both at a contact angle of 90° (from memory; the
    /// constant is 0.41 B_1 of ISO/TR 1281-1). Example: the standard's table gives f_c = 150.7 at D_w/D_pw = 0.05 (from
    /// memory), and its static equation 220 · 32 · 6 · 2.5 N.
    ///
    /// ```
    /// use trainwright::hold::NeedleThrust;
    /// let race = NeedleThrust { needles: 32, needle_diameter_mm: 2.5, needle_length_mm: 6.0, pitch_diameter_mm: 50.0 };
    /// let capacity = race.needle_capacity()?;
    /// assert!((capacity.dynamic_factor - 150.7).abs() < 0.05);
    /// assert_eq!(capacity.static_n, 105_600.0);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn needle_capacity(self) -> Result<NeedleCapacity> {
        let Self { needles, needle_diameter_mm, needle_length_mm, pitch_diameter_mm } = self.checked()?;
        let needles = f64::from(needles);
        let size_ratio = within("size_ratio", needle_diameter_mm / pitch_diameter_mm, 0.01, 0.30)?;
        let dynamic_factor = DYNAMIC_CONSTANT * REDUCTION * powf(size_ratio, 2.0 / 9.0);
        let sizes = powf(needle_length_mm, 7.0 / 9.0) * powf(needles, 0.75) * powf(needle_diameter_mm, 29.0 / 27.0);
        Ok(NeedleCapacity {
            inside_mm: pitch_diameter_mm - needle_length_mm,
            outside_mm: pitch_diameter_mm + needle_length_mm,
            gap_mm: self.gap_mm(),
            size_ratio,
            dynamic_factor,
            static_n: 220.0 * needles * needle_length_mm * needle_diameter_mm,
            dynamic_n: dynamic_factor * sizes,
        })
    }

    /// Whether the bearing stands a load at rest without lasting dents.
    ///
    /// s_0 = C_0a/P; judged: P ≤ C_0a/s_least
    ///
    /// * `load_n` — P, above 0; `least_static_factor` — s_least, 0.5 to 20, chosen; `rule` — decision rule
    /// * returns [`NeedleHold`]
    /// * errors: as [`NeedleThrust::needle_capacity`]; [`Error::NotPositive`] and [`Error::OutOfRange`] for the load or factor
    ///
    /// Source: ISO 76:2006, static load safety factor (from memory).
    pub fn needle_hold(self, load_n: Reading, least_static_factor: f64, rule: Rule) -> Result<NeedleHold> {
        let capacity = self.needle_capacity()?;
        let load = Reading::new(load_in_range(load_n.value)?, load_n.u)?;
        let most_n = capacity.static_n / within("least_static_factor", least_static_factor, 0.5, 20.0)?;
        Ok(NeedleHold {
            capacity,
            static_factor: capacity.static_n / load.value,
            judgment: judge(load, Limits::at_most(most_n)?, rule)?,
        })
    }

    /// Whether nine of ten bearings reach a life under a load.
    ///
    /// P_max = C_a (60 n h/10⁶)^(−1/p), p = 10/3; judged: P ≤ P_max. Life falls with the 10/3 power of the load, so the
    /// decision is made in the load and not in the life, where a symmetric uncertainty would mislead.
    ///
    /// * `load_n` — P, above 0 to C_a/2, the mean of the duty; `speed_rpm` — n, above 0; `least_life_h` — h, above 0; `rule`
    /// * returns [`NeedleLasts`]
    /// * errors: as [`NeedleThrust::needle_capacity`]; [`Error::NotPositive`] and [`Error::OutOfRange`] for the rest
    ///
    /// Source: ISO 281:2007, basic rating life, solved for the load.
    pub fn needle_lasts(self, load_n: Reading, speed_rpm: f64, least_life_h: f64, rule: Rule) -> Result<NeedleLasts> {
        let capacity = self.needle_capacity()?;
        let load = Reading::new(load_in_range(load_n.value)?, load_n.u)?;
        let speed_rpm = speed_in_range(positive("speed_rpm", speed_rpm)?)?;
        let hours = within("least_life_h", positive("least_life_h", least_life_h)?, 0.0, 1e7)?;
        let load_for_life_n = capacity.dynamic_n * powf(60.0 * speed_rpm * hours / 1e6, -1.0 / ROLLER_EXPONENT);
        Ok(NeedleLasts {
            capacity,
            life: rating_life(capacity.dynamic_n, load.value, ROLLER_EXPONENT, speed_rpm)?,
            load_for_life_n,
            judgment: judge(load, Limits::at_most(load_for_life_n)?, rule)?,
        })
    }
}
