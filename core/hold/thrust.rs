//! Needle thrust bearings: static and dynamic capacity, life, and whether they stand a load.

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

pub(super) const RATING_LIFE: Card = Card {
    id: "hold.rating_life",
    purpose: "Life that nine of ten bearings reach",
    equation: "L_10 = (C/P)^p, L_10h = 10⁶ L_10/(60 n)",
    symbols: &[
        symbol("L_10", "life_mrev", "10⁶ revolutions"),
        symbol("L_10h", "life_h", "h"),
        symbol("C", "capacity_n, dynamic", "N"),
        symbol("P", "load_n", "N"),
        symbol("p", "exponent: 3 for balls, 10/3 for rollers and needles", "1"),
        symbol("n", "speed_rpm", "1/min"),
    ],
    range: "P up to C/2; nine of ten bearings, clean and well oiled. A ranking rather than a promise",
    source: &card::BEARING_LIFE,
    locator: "basic rating life",
};

pub(super) const MEAN_LOAD: Card = Card {
    id: "hold.mean_load",
    purpose: "Constant load that wears a bearing as much as a duty of several loads and speeds",
    equation: "P_m = (Σ P^p n q/Σ n q)^(1/p), n_m = Σ n q/Σ q",
    symbols: &[
        symbol("P", "stages[i].load_n", "N"),
        symbol("n", "stages[i].speed_rpm", "1/min"),
        symbol("q", "stages[i].share, of the time; in any unit", "1"),
        symbol("p", "exponent", "1"),
        symbol("P_m, n_m", "load_n, speed_rpm", "N, 1/min"),
    ],
    range: "the damage of the stages adds up",
    source: &card::BEARING_LIFE,
    locator: "variable load: equal sum of L⁻¹ over the stages",
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

/// Exponent of life for bearings with rollers and needles. Source: ISO 281.
pub const ROLLER_EXPONENT: f64 = 10.0 / 3.0;
/// Exponent of life for ball bearings. Source: ISO 281.
pub const BALL_EXPONENT: f64 = 3.0;

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

/// Life under a load.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatingLife {
    /// Load over dynamic capacity, 0.5 at most.
    pub load_share: f64,
    /// Life that nine of ten reach, million revolutions.
    pub life_mrev: f64,
    /// The same in hours; infinite at rest.
    pub life_h: f64,
}

/// One stage of a duty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadStage {
    /// Load, N.
    pub load_n: f64,
    /// Speed of one race against the other, 1/min, without sign.
    pub speed_rpm: f64,
    /// Share of the time, in any unit.
    pub share: f64,
}

/// Constant load and speed that stand for a duty.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeanLoad {
    /// Mean load, N.
    pub load_n: f64,
    /// Mean speed, 1/min.
    pub speed_rpm: f64,
    /// Greatest load of a stage that takes time, N: the static check takes this one.
    pub greatest_n: f64,
    /// Stage that does most of the damage.
    pub governing: u32,
    /// Its part of the damage, 0 to 1.
    pub governing_share: f64,
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

pub(super) fn load_in_range(load_n: f64) -> Result<f64> {
    within("load_n", positive("load_n", load_n)?, 0.0, 1e9)
}

fn speed_in_range(speed_rpm: f64) -> Result<f64> {
    within("speed_rpm", speed_rpm, 0.0, 1e6)
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

/// Life that nine of ten bearings reach.
///
/// L_10 = (C/P)^p, L_10h = 10⁶ L_10/(60 n)
///
/// * `capacity_n` — C, above 0; `load_n` — P, above 0 to C/2, beyond which the equation does not hold; `exponent` — p, 3 to
///   10/3: [`BALL_EXPONENT`], [`ROLLER_EXPONENT`]; `speed_rpm` — n, 0 or more
/// * returns [`RatingLife`]
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`]
///
/// Source: ISO 281:2007, basic rating life (from memory). Example: C = 16 kN under 2 kN, balls: 512 million revolutions
/// (published exercise).
///
/// ```
/// use trainwright::hold::{BALL_EXPONENT, rating_life};
/// let life = rating_life(16_000.0, 2_000.0, BALL_EXPONENT, 1_000.0)?;
/// assert_eq!((life.life_mrev, life.load_share), (512.0, 0.125));
/// # Ok::<(), trainwright::Error>(())
/// ```
#[inline]
pub fn rating_life(capacity_n: f64, load_n: f64, exponent: f64, speed_rpm: f64) -> Result<RatingLife> {
    let capacity_n = within("capacity_n", positive("capacity_n", capacity_n)?, 0.0, 1e9)?;
    let load_n = within("load_n", load_in_range(load_n)?, 0.0, 0.5 * capacity_n)?;
    let speed_rpm = speed_in_range(speed_rpm)?;
    let life_mrev = powf(capacity_n / load_n, within("exponent", exponent, BALL_EXPONENT, ROLLER_EXPONENT)?);
    Ok(RatingLife {
        load_share: load_n / capacity_n,
        life_mrev,
        life_h: if speed_rpm > 0.0 { 1e6 * life_mrev / (60.0 * speed_rpm) } else { f64::INFINITY },
    })
}

/// Constant load that wears a bearing as much as a duty of several loads and speeds.
///
/// P_m = (Σ P^p n q/Σ n q)^(1/p), n_m = Σ n q/Σ q
///
/// * `stages` — P 0 or more, n 0 or more, q 0 or more in any unit; `exponent` — p, 3 to 10/3
/// * returns [`MeanLoad`]
/// * errors: [`Error::Count`] for no stage, [`Error::OutOfRange`] for a number, [`Error::NoAnswer`] where nothing turns
///
/// Source: ISO 281, equal sum of damage (from memory). Example (computed independently with numpy): 6, 3 and 1 kN at 1500,
/// 2500 and 3000 1/min for 10, 30 and 60 % of the time are as 2.862 kN at 2700 1/min.
///
/// ```
/// use trainwright::hold::{LoadStage, ROLLER_EXPONENT, mean_load};
/// let stage = |load_n, speed_rpm, share| LoadStage { load_n, speed_rpm, share };
/// let duty = [stage(6000.0, 1500.0, 0.1), stage(3000.0, 2500.0, 0.3), stage(1000.0, 3000.0, 0.6)];
/// let mean = mean_load(&duty, ROLLER_EXPONENT)?;
/// assert!((mean.load_n - 2862.14).abs() < 0.05);
/// assert_eq!((mean.speed_rpm, mean.governing), (2700.0, 0));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn mean_load(stages: &[LoadStage], exponent: f64) -> Result<MeanLoad> {
    if stages.is_empty() {
        return Err(Error::Count { name: "stages", count: 0, low: 1, high: u32::MAX });
    }
    let exponent = within("exponent", exponent, BALL_EXPONENT, ROLLER_EXPONENT)?;
    let (mut turns, mut time, mut damage, mut greatest_n) = (0.0, 0.0, 0.0, 0.0_f64);
    let (mut governing, mut most) = (0, 0.0);
    for (place, stage) in (0..).zip(stages) {
        let share = within("share", stage.share, 0.0, 1e12)?;
        let load_n = within("load_n", stage.load_n, 0.0, 1e9)?;
        let stage_turns = speed_in_range(stage.speed_rpm)? * share;
        let stage_damage = powf(load_n, exponent) * stage_turns;
        if stage_damage > most {
            (governing, most) = (place, stage_damage);
        }
        (turns, time, damage) = (turns + stage_turns, time + share, damage + stage_damage);
        if share > 0.0 {
            greatest_n = greatest_n.max(load_n);
        }
    }
    if turns <= 0.0 {
        return Err(Error::NoAnswer {
            name: "stages",
            why: "no stage turns; a bearing at rest takes the static check",
        });
    }
    Ok(MeanLoad {
        load_n: powf(damage / turns, 1.0 / exponent),
        speed_rpm: turns / time,
        greatest_n,
        governing,
        governing_share: if damage > 0.0 { most / damage } else { 0.0 },
    })
}
