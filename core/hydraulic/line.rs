//! Line pressure that a gear needs, against what a gauge reads and what the control can give.

use crate::card::{self, Card, symbol};
use crate::clutch::{GearReview, PressureNeeded};
use crate::error::{Error, Result, positive};
use crate::judge::{Reading, Verdict};

pub(super) const GEAR_PRESSURE: Card = Card {
    id: "hydraulic.gear_pressure",
    purpose: "Line pressure that a gear needs at a torque, against the gauge reading and the most that the control can give",
    equation: "p_need = max p_i, spare = p − p_need, reserve = p/p_need, left = p_max − p_need",
    symbols: &[
        symbol("p_need", "needed.strong_spring_kpa", "kPa"),
        symbol("p_i", "clutch.pressure_needed of each closed element that carries torque", "kPa"),
        symbol("p", "reading_kpa", "kPa"),
        symbol("p_max", "control_max_kpa", "kPa"),
        symbol("spare, left", "spare_kpa, control_spare_kpa", "kPa"),
        symbol("reserve", "reserve", "1"),
    ],
    range: "as clutch.review. The chance is the least of the elements': one gauge and one friction serve all, so it hardly differs from that of all together",
    source: &card::DEFINITION,
    locator: "the element that needs most pressure rules the gear",
};

/// Line pressure of a gear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GearPressure {
    /// Element that needs most pressure.
    pub element: u8,
    /// Pressure that it needs.
    pub needed: PressureNeeded,
    /// What the gauge reads, kPa.
    pub reading_kpa: Reading,
    /// Reading less need, kPa; negative where it is short.
    pub spare_kpa: f64,
    /// Reading over need; infinite where the springs alone are more than the torque asks.
    pub reserve: f64,
    /// The most that the control can give, less the need, kPa; infinite where it is not known.
    pub control_spare_kpa: f64,
    /// Elements of the gear whose share the train does not determine: nothing is said about them.
    pub unknown: u32,
    /// Chance that the gear holds at the reading: the least of its elements'.
    pub chance: f64,
    /// The worst verdict of its elements; no GO while the share of one is not known.
    pub verdict: Verdict,
}

/// Line pressure that a gear needs, against the gauge reading and the most that the control can give.
///
/// p_need = max p_i over the closed elements; spare = p − p_need; reserve = p/p_need
///
/// * `review` — of the gear at the reading, from [`crate::clutch::review`]; `reading_kpa` — the same reading
/// * `control_max_kpa` — the most that the control can ask for, above 0; infinite where it is not known
/// * returns [`GearPressure`]
/// * errors: [`Error::NoAnswer`] where no share is known; [`Error::NotPositive`]
///
/// The element that needs most pressure need not be the one with the least margin of torque: springs count differently.
///
/// Source: the element that needs most rules the gear.
pub fn gear_pressure(review: &GearReview, reading_kpa: Reading, control_max_kpa: f64) -> Result<GearPressure> {
    let reading_kpa = Reading::new(reading_kpa.value, reading_kpa.u)?;
    let control_max_kpa =
        if control_max_kpa == f64::INFINITY { control_max_kpa } else { positive("control_max_kpa", control_max_kpa)? };
    let carrying = || review.elements().iter().filter(|row| row.share_known && row.share > 0.0);
    let unknown = review.elements().iter().filter(|row| !row.share_known).count() as u32;
    let most = carrying()
        .max_by(|a, b| a.pressure_needed.strong_spring_kpa.total_cmp(&b.pressure_needed.strong_spring_kpa))
        .ok_or(Error::NoAnswer {
            name: "share",
            why: "the closed elements repeat one another, so statics cannot tell what each carries",
        })?;
    let needed_kpa = most.pressure_needed.strong_spring_kpa;
    let worst = carrying().fold(Verdict::Go, |worst, row| match (worst, row.verdict) {
        (Verdict::NoGo, _) | (_, Verdict::NoGo) => Verdict::NoGo,
        (Verdict::Go, Verdict::Go) => Verdict::Go,
        _ => Verdict::NotProven,
    });
    Ok(GearPressure {
        element: most.element,
        needed: most.pressure_needed,
        reading_kpa,
        spare_kpa: reading_kpa.value - needed_kpa,
        reserve: if needed_kpa > 0.0 { reading_kpa.value / needed_kpa } else { f64::INFINITY },
        control_spare_kpa: control_max_kpa - needed_kpa,
        unknown,
        chance: carrying().fold(1.0, |least, row| least.min(row.chance)),
        verdict: if worst == Verdict::Go && unknown > 0 { Verdict::NotProven } else { worst },
    })
}
