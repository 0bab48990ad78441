//! Life of a bearing under a load, and the constant load that stands for a duty.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::real::powf;

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

/// Exponent of life for bearings with rollers and needles. Source: ISO 281.
pub const ROLLER_EXPONENT: f64 = 10.0 / 3.0;
/// Exponent of life for ball bearings. Source: ISO 281.
pub const BALL_EXPONENT: f64 = 3.0;

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

pub(super) fn load_in_range(load_n: f64) -> Result<f64> {
    within("load_n", positive("load_n", load_n)?, 0.0, 1e9)
}

pub(super) fn speed_in_range(speed_rpm: f64) -> Result<f64> {
    within("speed_rpm", speed_rpm, 0.0, 1e6)
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
