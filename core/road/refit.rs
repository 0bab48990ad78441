//! A change of tire, axle or transfer case: shift points, speedometer, what to program.

use super::driveline::Driveline;
use crate::card::{self, Card, symbol};
use crate::error::{Result, finite, positive, within};
use crate::judge::{Limits, Reading};
use crate::units::KM_PER_MILE;

pub(super) const SHIFT_AT_OUTPUT_SPEED: Card = Card {
    id: "road.shift_at_output_speed",
    purpose: "A shift point as road speed and output-shaft speed, before and after a change of tire or axle",
    equation: "v = 0.00006·n·U/(i_A·i_V) before and after; n kept, or v kept",
    symbols: &[symbol("v", "before_km_h, after_km_h", "km/h"), symbol("n", "before_rpm, after_rpm", "1/min")],
    range: "n is kept while the unit is not reprogrammed, v once it is",
    source: &card::DEFINITION,
    locator: "speeds of a driveline",
};

pub(super) const SPEEDOMETER: Card = Card {
    id: "road.speedometer",
    purpose: "Speed shown at a true speed when the programmed driveline is not the fitted one",
    equation: "k = (U_f/i_f)/(U_p/i_p), v_shown = v/k",
    symbols: &[
        symbol("k", "true_over_shown", "1"),
        symbol("v", "true_km_h", "km/h"),
        symbol("U_f, i_f", "fitted circumference and ratios", "mm, 1"),
        symbol("U_p, i_p", "programmed circumference and ratios", "mm, 1"),
    ],
    range: "speed taken from the output shaft",
    source: &card::DEFINITION,
    locator: "speedometer",
};

pub(super) const LIMITS_UN_R39: Card = Card {
    id: "road.limits_un_r39",
    purpose: "Speeds that a speedometer may show",
    equation: "0 ≤ V₁ − V₂ ≤ V₂/10 + 4 km/h",
    symbols: &[symbol("V₁", "shown speed, the limits", "km/h"), symbol("V₂", "true_km_h", "km/h")],
    range: "vehicles under UN R39; tested at 40, 80 and 120 km/h",
    source: &card::SPEEDOMETERS,
    locator: "paragraph 5.3",
};

pub(super) const LIMITS_49_CFR_393_82: Card = Card {
    id: "road.limits_49_cfr_393_82",
    purpose: "Speeds that the speedometer of a commercial vehicle may show in the United States",
    equation: "|V₁ − V₂| ≤ 8 km/h at 80 km/h (5 mph at 50 mph)",
    symbols: &[symbol("V₁", "shown speed, the limits", "km/h"), symbol("V₂", "true_km_h", "km/h")],
    range: "true 80 km/h to 50 mph only",
    source: &card::COMMERCIAL_PARTS,
    locator: "393.82",
};

pub(super) const NUMBERS_TO_PROGRAM: Card = Card {
    id: "road.numbers_to_program",
    purpose: "Axle ratio, circumference or pulse count to program after a change of tire or axle",
    equation: "i_p' = i_p/k, U_p' = k·U_p, pulses per km = z·10⁶·i_f/U_f",
    symbols: &[
        symbol("k", "true over shown speed", "1"),
        symbol("i_p', U_p'", "axle_ratio, circumference_mm", "1, mm"),
        symbol("z", "pulses_per_rev", "1"),
    ],
    range: "program one of axle ratio and circumference, not both",
    source: &card::DEFINITION,
    locator: "speedometer",
};

/// A shift point of the schedule before and after a change of tire or axle.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShiftPoint {
    /// Road speed of the shift before the change.
    pub before_km_h: f64,
    /// Output-shaft speed of the shift before the change.
    pub before_rpm: f64,
    /// Road speed of the shift after the change.
    pub after_km_h: f64,
    /// Output-shaft speed of the shift after the change.
    pub after_rpm: f64,
}

/// The shift point when the controller keeps its output-shaft speed, as it does while it is not reprogrammed.
///
/// v = 0.00006·n·U/(i_A·i_V), before and after
///
/// * `output_rpm` — n of the schedule, 1/min
///
/// Source: definition.
///
/// ```
/// use trainwright::{judge::Reading, road::{Driveline, shift_at_output_speed}};
/// let before = Driveline::new(3.54, 1.0, Reading::exact(2438.0)?)?;
/// let after = Driveline { axle_ratio: 4.27, ..before };
/// let shift = shift_at_output_speed(before, after, 1500.0)?;
/// assert!((shift.after_km_h / shift.before_km_h - 3.54 / 4.27).abs() < 1e-12);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn shift_at_output_speed(before: Driveline, after: Driveline, output_rpm: f64) -> Result<ShiftPoint> {
    Ok(ShiftPoint {
        before_km_h: before.road_km_h(output_rpm)?,
        before_rpm: output_rpm,
        after_km_h: after.road_km_h(output_rpm)?,
        after_rpm: output_rpm,
    })
}

/// The shift point when the schedule keeps its road speed, as it does once tire and axle are programmed.
///
/// n = v·i_A·i_V/(0.00006·U), before and after
///
/// * `road_km_h` — v of the schedule, true road speed, km/h
///
/// Source: definition.
pub fn shift_at_road_speed(before: Driveline, after: Driveline, road_km_h: f64) -> Result<ShiftPoint> {
    Ok(ShiftPoint {
        before_km_h: road_km_h,
        before_rpm: before.output_rpm(road_km_h)?,
        after_km_h: road_km_h,
        after_rpm: after.output_rpm(road_km_h)?,
    })
}

/// What the speedometer shows when the programmed driveline is not the fitted one.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Speedometer {
    /// True over shown speed: above 1 the speedometer reads low.
    pub true_over_shown: f64,
    /// True road speed.
    pub true_km_h: f64,
    /// Shown speed, with the uncertainty that comes from the fitted tire.
    pub shown_km_h: Reading,
}

/// Speed shown at a true road speed, for a unit that reads the output shaft and divides by what is programmed.
///
/// k = (U_f/(i_A·i_V)_f)/(U_p/(i_A·i_V)_p), v_shown = v/k
///
/// * `programmed` — p, what the controller believes; `fitted` — f, what is on the truck; `true_km_h` — v, km/h
/// * returns k, v and v_shown; judge the latter against [`limits_un_r39`] or [`limits_49_cfr_393_82`]
///
/// Source: definition. Example: 185/70R14 changed for 195/50R15 shows 1.067 of the true speed.
///
/// ```
/// use trainwright::{judge::Reading, road::{Driveline, speedometer}, tire};
/// let with = |size| Driveline::new(1.0, 1.0, Reading::exact(tire::parse(size)?.geometric_diameter_mm()?)?);
/// let meter = speedometer(with("185/70R14")?, with("195/50R15")?, 100.0)?;
/// assert!((meter.shown_km_h.value - 106.70139).abs() < 1e-4);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn speedometer(programmed: Driveline, fitted: Driveline, true_km_h: f64) -> Result<Speedometer> {
    let (programmed, fitted) = (programmed.checked()?, fitted.checked()?);
    let true_over_shown = programmed.rpm_per_km_h() / fitted.rpm_per_km_h();
    let shown = finite("true_km_h", true_km_h)? / true_over_shown;
    Ok(Speedometer { true_over_shown, true_km_h, shown_km_h: Reading::relative(shown, fitted.u_rel())? })
}

/// Speeds that a speedometer may show at a true speed under UN Regulation 39: 0 ≤ V₁ − V₂ ≤ V₂/10 + 4 km/h.
///
/// * `true_km_h` — V₂, km/h, 0 or more
/// * returns the limits of the shown speed V₁; it must never read low
///
/// Source: UN R39, paragraph 5.3 (from memory). Example: at true 70 km/h, 70 to 81 km/h.
///
/// ```
/// let limits = trainwright::road::limits_un_r39(70.0)?;
/// assert_eq!((limits.lower, limits.upper), (70.0, 81.0));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn limits_un_r39(true_km_h: f64) -> Result<Limits> {
    let true_km_h = within("true_km_h", true_km_h, 0.0, f64::MAX)?;
    Limits::between(true_km_h, true_km_h + true_km_h / 10.0 + 4.0)
}

/// Speeds that the speedometer of a commercial vehicle may show under 49 CFR 393.82: within 8 km/h at 80 km/h (5 mph at
/// 50 mph). The rule says nothing about other speeds, so they are refused.
///
/// ```
/// let limits = trainwright::road::limits_49_cfr_393_82(80.0)?;
/// assert_eq!((limits.lower, limits.upper), (72.0, 88.0));
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn limits_49_cfr_393_82(true_km_h: f64) -> Result<Limits> {
    let true_km_h = within("true_km_h", true_km_h, 80.0, 50.0 * KM_PER_MILE)?;
    Limits::between(true_km_h - 8.0, true_km_h + 8.0)
}

/// What to program, or to fit, so that the speedometer and the schedule are right again.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NumbersToProgram {
    /// Axle ratio to program where only that can be set.
    pub axle_ratio: f64,
    /// Rolling circumference to program where only that can be set, mm.
    pub circumference_mm: f64,
    /// The same as revolutions per kilometer.
    pub rev_per_km: f64,
    /// The same as revolutions per mile.
    pub rev_per_mile: f64,
    /// Sensor pulses per kilometer of the fitted driveline.
    pub pulses_per_km: f64,
    /// Sensor pulses per mile of the fitted driveline.
    pub pulses_per_mile: f64,
    /// Axle ratio to fit with the fitted tires, so that what is programmed is right unchanged.
    pub axle_ratio_to_fit: f64,
    /// Relative standard uncertainty of each, from the fitted tire.
    pub u_rel: f64,
}

/// The number to program after a change of tire, axle or transfer case.
///
/// i_p' = i_f·U_p/U_f, U_p' = U_f·i_p/i_f, pulses per km = z·i_f/U_f (ratios with the transfer ratio)
///
/// * `programmed` — what the controller believes; `fitted` — what is on the truck
/// * `pulses_per_rev` — z, pulses of the output-shaft sensor per turn
///
/// Source: definition.
pub fn numbers_to_program(programmed: Driveline, fitted: Driveline, pulses_per_rev: f64) -> Result<NumbersToProgram> {
    let (programmed, fitted) = (programmed.checked()?, fitted.checked()?);
    positive("pulses_per_rev", pulses_per_rev)?;
    let true_over_shown = programmed.rpm_per_km_h() / fitted.rpm_per_km_h();
    let circumference_mm = programmed.circumference_mm.value * true_over_shown;
    let rev_per_km = 1e6 / circumference_mm;
    let pulses_per_km = pulses_per_rev * 1e6 * fitted.reduction() / fitted.circumference_mm.value;
    Ok(NumbersToProgram {
        axle_ratio: programmed.axle_ratio / true_over_shown,
        circumference_mm,
        rev_per_km,
        rev_per_mile: rev_per_km * KM_PER_MILE,
        pulses_per_km,
        pulses_per_mile: pulses_per_km * KM_PER_MILE,
        axle_ratio_to_fit: fitted.axle_ratio * true_over_shown,
        u_rel: fitted.u_rel(),
    })
}
