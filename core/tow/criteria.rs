//! The published criteria for tow ratings, as named checks. Meeting them here is no rating: the maker rates the vehicle.

use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, finite, positive};
use crate::judge::{Limits, Reading, Rule, Verdict, judge};
use crate::units::{lb_to_kg, mph_to_km_h};

pub(super) const CHECK_CRITERION: Card = Card {
    id: "tow.check_criterion",
    purpose: "A result, measured or computed, against one of the published criteria for tow ratings",
    equation: "x within its limits, judged; limits of tow.criterion_limits",
    symbols: &[symbol("x", "value", "s, km/h, %, m, ° or a count, by the criterion")],
    range: "one criterion alone; the procedure of the standard (test weights, two occupants of 150 lb each, drag area of the trailer, air conditioning on, sway and steering tests) is not checked, and a computed value is not the test",
    source: &card::TOW_RATING,
    locator: "requirements, read in secondary summaries; the standard itself was not seen",
};

pub(super) const CRITERION_LIMITS: Card = Card {
    id: "tow.criterion_limits",
    purpose: "What a published criterion for tow ratings asks of a vehicle",
    equation: "0 to 30 mph ≤ 12/14/16 s, 0 to 60 ≤ 30/35 s, 40 to 60 ≤ 18/21 s; long grade ≥ 40/35 mph; 12 % launch: 5 starts of 16 ft each way in 5 min; parking brake 12 % both ways; stop from 20 mph ≤ 35/45/80 ft; hitch ≤ 5° permanent",
    symbols: &[
        symbol(
            "12/14/16, 30/35, 18/21, 40/35",
            "axle: single rear wheels, dual, dual above 13 000 lb GVWR",
            "s, s, s, mph",
        ),
        symbol("35/45/80", "trailer rated 3000 lb or less without brakes, with brakes; above", "ft"),
    ],
    range: "no figure was found for the longer accelerations and the long grade of dual rear wheels above 13 000 lb GVWR, nor for the frontal area of a trailer: the drag area is an input",
    source: &card::TOW_RATING,
    locator: "requirements, read in secondary summaries; the standard itself was not seen",
};

/// Number of criteria.
pub const CRITERION_COUNT: usize = 12;

/// Distance of one start on the 12 % grade, m: 16 ft.
pub const LAUNCH_DISTANCE_M: f64 = 4.8768;

/// A criterion.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Criterion {
    /// Time from 0 to 30 mph on the level, s.
    ZeroToThirty = 1,
    /// Time from 0 to 60 mph on the level, s.
    ZeroToSixty = 2,
    /// Time from 40 to 60 mph on the level, s.
    FortyToSixty = 3,
    /// Least speed on the long grade (3500 ft up in 11 miles, from 100 °F), km/h.
    LongGrade = 4,
    /// Starts forward on 12 % within 5 minutes, 16 ft each.
    StartsForward = 5,
    /// Starts in reverse on 12 % within 5 minutes, 16 ft each.
    StartsReverse = 6,
    /// Largest grade launched forward, %: the force behind the starts, computed or measured.
    GradeForward = 7,
    /// Largest grade launched in reverse, %.
    GradeReverse = 8,
    /// Grade on which the parking brake holds the combination nose up, %.
    BrakeUphill = 9,
    /// Grade on which the parking brake holds it nose down, %.
    BrakeDownhill = 10,
    /// Stop from 20 mph without the trailer's brakes, m.
    Stop = 11,
    /// Permanent angular deformation at the hitch after the test, °.
    HitchBend = 12,
}

impl Criterion {
    /// Every criterion, by number.
    pub const ALL: [Self; CRITERION_COUNT] = [
        Self::ZeroToThirty,
        Self::ZeroToSixty,
        Self::FortyToSixty,
        Self::LongGrade,
        Self::StartsForward,
        Self::StartsReverse,
        Self::GradeForward,
        Self::GradeReverse,
        Self::BrakeUphill,
        Self::BrakeDownhill,
        Self::Stop,
        Self::HitchBend,
    ];

    /// The criterion with this number, as C passes it.
    pub fn from_number(number: i32) -> Result<Self> {
        let value = f64::from(number);
        let unknown = Error::OutOfRange { name: "criterion", value, low: 1.0, high: CRITERION_COUNT as f64 };
        Self::ALL.into_iter().find(|criterion| *criterion as i32 == number).ok_or(unknown)
    }
}

/// What is rated.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatedFor {
    /// The rear axle has dual wheels.
    pub dual_rear: bool,
    /// Gross vehicle weight rating of the truck, kg.
    pub gvwr_kg: f64,
    /// Trailer weight rating, kg.
    pub trailer_kg: f64,
    /// Brakes are required on that trailer.
    pub trailer_brakes: bool,
}

/// How a criterion came out.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CriterionOutcome {
    /// Met, under the rule.
    Met,
    /// Not met.
    NotMet,
    /// Neither is proven.
    NotProven,
    /// No value was given.
    NotGiven,
    /// No figure of this criterion is known for this kind of vehicle.
    NoFigure,
}

/// A criterion and how it came out.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CriterionCheck {
    /// Which.
    pub criterion: Criterion,
    /// What was given; NaN where nothing was.
    pub value: Reading,
    /// What is asked; no limits where no figure is known.
    pub limits: Limits,
    /// Chance that the true value lies within the limits; 0 where it was not judged.
    pub chance: f64,
    /// CriterionOutcome.
    pub outcome: CriterionOutcome,
}

const NO_LIMITS: Limits = Limits { lower: f64::NEG_INFINITY, upper: f64::INFINITY };

/// What a published criterion asks of a vehicle: times in s, speeds in km/h, distances in m, grades in %, angles in °.
///
/// 0 to 30 mph ≤ 12/14/16 s, 0 to 60 ≤ 30/35 s, 40 to 60 ≤ 18/21 s; long grade ≥ 40/35 mph; 12 % launch: 5 starts of 16 ft
/// each way in 5 min; parking brake 12 % both ways; stop from 20 mph ≤ 35/45/80 ft; hitch ≤ 5° permanent
///
/// * `criterion`; `rated` — rear wheels, GVWR, trailer rating and whether it needs brakes
/// * returns the limits
/// * errors: [`Error::NotPositive`] for a GVWR or trailer rating; [`Error::NoAnswer`] where no figure is known
///
/// Source: SAE J2807, read in secondary summaries. Example: 14 s from 0 to 30 mph with dual rear wheels, 16 s above 13 000 lb.
///
/// ```
/// use trainwright::{tow::{Criterion, RatedFor, criterion_limits}, units::lb_to_kg};
/// let dual = RatedFor { dual_rear: true, gvwr_kg: lb_to_kg(13_000.0), trailer_kg: lb_to_kg(16_000.0), trailer_brakes: true };
/// assert_eq!(criterion_limits(Criterion::ZeroToThirty, dual)?.upper, 14.0);
/// let heavy = RatedFor { gvwr_kg: lb_to_kg(14_000.0), ..dual };
/// assert_eq!(criterion_limits(Criterion::ZeroToThirty, heavy)?.upper, 16.0);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn criterion_limits(criterion: Criterion, rated: RatedFor) -> Result<Limits> {
    let gvwr_kg = positive("gvwr_kg", rated.gvwr_kg)?;
    let trailer_kg = positive("trailer_kg", rated.trailer_kg)?;
    let heavy = rated.dual_rear && gvwr_kg > lb_to_kg(13_000.0);
    let by_axle = |single: f64, dual: f64, heavy_dual: Option<f64>| {
        let figure = match (rated.dual_rear, heavy) {
            (false, _) => Some(single),
            (true, false) => Some(dual),
            (true, true) => heavy_dual,
        };
        figure.ok_or(Error::NoAnswer {
            name: "criterion",
            why: "no published figure is known for dual rear wheels above 13 000 lb GVWR; look it up in SAE J2807",
        })
    };
    match criterion {
        Criterion::ZeroToThirty => Limits::at_most(by_axle(12.0, 14.0, Some(16.0))?),
        Criterion::ZeroToSixty => Limits::at_most(by_axle(30.0, 35.0, None)?),
        Criterion::FortyToSixty => Limits::at_most(by_axle(18.0, 21.0, None)?),
        Criterion::LongGrade => Limits::at_least(mph_to_km_h(by_axle(40.0, 35.0, None)?)),
        Criterion::StartsForward | Criterion::StartsReverse => Limits::at_least(5.0),
        Criterion::GradeForward | Criterion::GradeReverse | Criterion::BrakeUphill | Criterion::BrakeDownhill => {
            Limits::at_least(12.0)
        }
        Criterion::Stop => {
            let light = trailer_kg <= lb_to_kg(3_000.0);
            let feet = if !light {
                80.0
            } else if rated.trailer_brakes {
                45.0
            } else {
                35.0
            };
            Limits::at_most(feet * 0.3048)
        }
        Criterion::HitchBend => Limits::at_most(5.0),
    }
}

/// A result, measured or computed, against one of the published criteria.
///
/// x within its limits, judged
///
/// * `criterion`, `rated` — as [`criterion_limits`]; `rule` — decision rule
/// * `value` — x in the unit of the criterion, NaN where there is none, an infinite time where the speed is never reached
/// * returns [`CriterionCheck`]: met, not met, not proven, not given, or no figure known
/// * errors: [`Error::NotPositive`], [`Error::NotFinite`], [`Error::OutOfRange`]
///
/// Meeting a criterion is no rating, and a computed value is not the test of the standard.
///
/// Source: SAE J2807, read in secondary summaries.
///
/// ```
/// use trainwright::judge::{Reading, Rule};
/// use trainwright::tow::{Criterion, CriterionOutcome, RatedFor, check_criterion};
/// let rated = RatedFor { dual_rear: false, gvwr_kg: 4500.0, trailer_kg: 6000.0, trailer_brakes: true };
/// let rule = Rule::stated_chances(0.95, 0.05)?;
/// let check = check_criterion(Criterion::ZeroToSixty, Reading::new(29.5, 0.6)?, rated, rule)?;
/// assert_eq!(check.outcome, CriterionOutcome::NotProven);
/// # Ok::<(), trainwright::Error>(())
/// ```
pub fn check_criterion(criterion: Criterion, value: Reading, rated: RatedFor, rule: Rule) -> Result<CriterionCheck> {
    let unjudged = |limits, outcome| CriterionCheck { criterion, value, limits, chance: 0.0, outcome };
    let limits = match criterion_limits(criterion, rated) {
        Err(Error::NoAnswer { .. }) => return Ok(unjudged(NO_LIMITS, CriterionOutcome::NoFigure)),
        limits => limits?,
    };
    if value.value.is_nan() {
        return Ok(unjudged(limits, CriterionOutcome::NotGiven));
    }
    if value.value == f64::INFINITY && limits.upper < f64::INFINITY {
        return Ok(CriterionCheck { criterion, value, limits, chance: 0.0, outcome: CriterionOutcome::NotMet });
    }
    let judgment = judge(Reading::new(finite("value", value.value)?, value.u)?, limits, rule)?;
    let outcome = match judgment.verdict {
        Verdict::Go => CriterionOutcome::Met,
        Verdict::NoGo => CriterionOutcome::NotMet,
        Verdict::NotProven => CriterionOutcome::NotProven,
    };
    Ok(CriterionCheck { criterion, value, limits, chance: judgment.chance, outcome })
}
