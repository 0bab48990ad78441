//! Ratings: classes, bounds, and what tires carry together. Every rating is an input, from the placard.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive, within};
use crate::units::lb_to_kg;

pub(super) const GVWR_CLASS: Card = Card {
    id: "tow.gvwr_class",
    purpose: "Class of a truck by its gross vehicle weight rating in the United States",
    equation: "1 to 6000 lb, 2 to 10 000, 3 to 14 000, 4 to 16 000, 5 to 19 500, 6 to 26 000, 7 to 33 000, 8 above (GVWR, class = the result)",
    symbols: &[symbol("GVWR", "gvwr_kg", "kg"), symbol("class", "result", "1")],
    range: "above 0; the bound belongs to the lower class",
    source: &card::WEIGHT_CLASSES,
    locator: "class table, read in a secondary summary",
};

pub(super) const GVWR_LEAST: Card = Card {
    id: "tow.gvwr_least_kg",
    purpose: "Least gross vehicle weight rating that a maker may state",
    equation: "GVWR ≥ m_unloaded + m_cargo + 150 lb·n",
    symbols: &[
        symbol("GVWR", "result", "kg"),
        symbol("m_unloaded, m_cargo", "unloaded_kg, cargo_kg", "kg"),
        symbol("n", "seats", "1"),
    ],
    range: "150 lb (68.04 kg) for each designated seat; vehicles under 49 CFR 567",
    source: &card::CERTIFICATION,
    locator: "567.4(g)(3), read in a letter of interpretation",
};

pub(super) const GAWR_LEFT: Card = Card {
    id: "tow.gawr_left_kg",
    purpose: "Sum of the axle ratings over the gross vehicle weight rating: below 0 the ratings contradict each other",
    equation: "left = GAWR_f + GAWR_r − GVWR",
    symbols: &[
        symbol("GAWR_f, GAWR_r", "gawr_front_kg, gawr_rear_kg", "kg"),
        symbol("GVWR", "gvwr_kg", "kg"),
        symbol("left", "result", "kg"),
    ],
    range: "two axles; 0 or more is consistent",
    source: &card::CERTIFICATION,
    locator: "GVWR not above the sum of the GAWR, read in a letter of interpretation",
};

pub(super) const AXLE_TIRES: Card = Card {
    id: "tow.axle_tires_kg",
    purpose: "What the tires of an axle carry together",
    equation: "W = n·w, with passenger tires on a truck or trailer W = n·w/1.10",
    symbols: &[
        symbol("W", "result", "kg"),
        symbol("n", "tires", "1"),
        symbol("w", "tire_kg of one tire as it is fitted: the dual load where two stand side by side", "kg"),
    ],
    range: "at the pressure that the load belongs to; 1 to 12 tires",
    source: &card::TIRE_SELECTION,
    locator: "571.120, passenger tires divided by 1.10, read in a letter of interpretation",
};

/// Class of a truck by its gross vehicle weight rating in the United States: 1 to 8.
///
/// 1 to 6000 lb, 2 to 10 000, 3 to 14 000, 4 to 16 000, 5 to 19 500, 6 to 26 000, 7 to 33 000, 8 above
///
/// * `gvwr_kg` — above 0
/// * errors: [`Error::NotPositive`]
///
/// Source: 49 CFR 565.15 (read in a secondary summary). Example: 14 000 lb is still class 3, 19 501 lb class 6.
///
/// ```
/// use trainwright::{tow::gvwr_class, units::lb_to_kg};
/// assert_eq!((gvwr_class(lb_to_kg(14_000.0))?, gvwr_class(lb_to_kg(19_501.0))?), (3, 6));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn gvwr_class(gvwr_kg: f64) -> Result<u32> {
    let gvwr_kg = positive("gvwr_kg", gvwr_kg)?;
    let bounds_lb = [6_000.0, 10_000.0, 14_000.0, 16_000.0, 19_500.0, 26_000.0, 33_000.0];
    Ok(bounds_lb.into_iter().fold(1, |class, bound| class + u32::from(gvwr_kg > lb_to_kg(bound))))
}

/// Least gross vehicle weight rating that a maker may state, kg.
///
/// GVWR ≥ m_unloaded + m_cargo + 150 lb·n
///
/// * `unloaded_kg` — above 0; `cargo_kg` — rated cargo, 0 or more; `seats` — n, 0 to 100
/// * errors: [`Error::NotPositive`], [`Error::OutOfRange`], [`Error::Count`]
///
/// Source: 49 CFR 567.4(g)(3), read in a letter of interpretation. Example: 5600 lb, 2200 lb and six seats are 8700 lb.
///
/// ```
/// use trainwright::{tow::gvwr_least_kg, units::{kg_to_lb, lb_to_kg}};
/// let least = gvwr_least_kg(lb_to_kg(5600.0), lb_to_kg(2200.0), 6)?;
/// assert!((kg_to_lb(least) - 8700.0).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn gvwr_least_kg(unloaded_kg: f64, cargo_kg: f64, seats: u32) -> Result<f64> {
    if seats > 100 {
        return Err(Error::Count { name: "seats", count: seats, low: 0, high: 100 });
    }
    let cargo_kg = within("cargo_kg", cargo_kg, 0.0, 1e6)?;
    Ok(positive("unloaded_kg", unloaded_kg)? + cargo_kg + lb_to_kg(150.0) * f64::from(seats))
}

/// Sum of the axle ratings over the gross vehicle weight rating, kg: below 0 the ratings contradict each other.
///
/// left = GAWR_f + GAWR_r − GVWR
///
/// * all above 0
/// * errors: [`Error::NotPositive`]
///
/// Source: 49 CFR 567, read in a letter of interpretation. Example: 4500 and 6200 lb over 9900 lb leave 800 lb.
///
/// ```
/// assert_eq!(trainwright::tow::gawr_left_kg(9900.0, 4500.0, 6200.0)?, 800.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn gawr_left_kg(gvwr_kg: f64, gawr_front_kg: f64, gawr_rear_kg: f64) -> Result<f64> {
    let front_kg = positive("gawr_front_kg", gawr_front_kg)?;
    Ok(front_kg + positive("gawr_rear_kg", gawr_rear_kg)? - positive("gvwr_kg", gvwr_kg)?)
}

/// What the tires of an axle carry together, kg.
///
/// W = n·w, with passenger tires on a truck or trailer W = n·w/1.10
///
/// * `tire_kg` — w of one tire as it is fitted, above 0: of its load index [`crate::tire::load_index_kg`], the second of two
///   load indices where tires stand side by side
/// * `tires` — n, 1 to 12; `passenger` — passenger tires on a truck, bus, trailer or multipurpose vehicle
/// * errors: [`Error::NotPositive`], [`Error::Count`]
///
/// Source: 49 CFR 571.120, read in a letter of interpretation. Example: two passenger tires of 1100 kg count 2000 kg on a truck.
///
/// ```
/// assert!((trainwright::tow::axle_tires_kg(1100.0, 2, true)? - 2000.0).abs() < 1e-9);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn axle_tires_kg(tire_kg: f64, tires: u32, passenger: bool) -> Result<f64> {
    if !(1..=12).contains(&tires) {
        return Err(Error::Count { name: "tires", count: tires, low: 1, high: 12 });
    }
    Ok(positive("tire_kg", tire_kg)? * f64::from(tires) / if passenger { 1.10 } else { 1.0 })
}
