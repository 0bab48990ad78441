//! The published criteria for tow ratings, as named checks.

use pyo3::prelude::*;
use trainwright::tow as core;

use crate::class::{class, words};
use crate::error::answer;
use crate::judge::{Limits, Reading, Rule};

words! {
    "criterion" Criterion = core::Criterion {
        ZeroToThirty = "0 to 30 mph",
        ZeroToSixty = "0 to 60 mph",
        FortyToSixty = "40 to 60 mph",
        LongGrade = "long grade",
        StartsForward = "starts forward",
        StartsReverse = "starts reverse",
        GradeForward = "grade forward",
        GradeReverse = "grade reverse",
        BrakeUphill = "brake uphill",
        BrakeDownhill = "brake downhill",
        Stop = "stop",
        HitchBend = "hitch bend",
    }
}

words! {
    "outcome" CriterionOutcome = core::CriterionOutcome {
        Met = "met",
        NotMet = "not met",
        NotProven = "not proven",
        NotGiven = "not given",
        NoFigure = "no figure",
    }
}

class! {
    /// What is rated.
    "trainwright.tow" RatedFor = core::RatedFor {
        /// The rear axle has dual wheels.
        dual_rear: bool,
        /// Gross vehicle weight rating of the truck, kg.
        gvwr_kg: f64,
        /// Trailer weight rating, kg.
        trailer_kg: f64,
        /// Brakes are required on that trailer.
        trailer_brakes: bool,
    }
}

/// A criterion and how it came out. Meeting it here is no rating.
#[pyclass(frozen, module = "trainwright.tow")]
pub struct CriterionCheck(core::CriterionCheck);

impl From<core::CriterionCheck> for CriterionCheck {
    fn from(check: core::CriterionCheck) -> Self {
        Self(check)
    }
}

crate::class::explained!(CriterionCheck, ["tow.check_criterion"], , []);

#[pymethods]
impl CriterionCheck {
    /// Which criterion.
    #[getter]
    fn criterion(&self) -> Criterion {
        Criterion(self.0.criterion)
    }

    /// What was given; None where nothing was, or where the speed is never reached.
    #[getter]
    fn value(&self) -> Option<Reading> {
        Some(self.0.value).filter(|reading| reading.value.is_finite()).map(Reading)
    }

    /// What is asked; no limits where no figure is known.
    #[getter]
    fn limits(&self) -> Limits {
        self.0.limits.into()
    }

    /// Chance that the true value lies within the limits; 0 where it was not judged.
    #[getter]
    fn chance(&self) -> f64 {
        self.0.chance
    }

    /// `"met"`, `"not met"`, `"not proven"`, `"not given"` or `"no figure"`.
    #[getter]
    fn outcome(&self) -> CriterionOutcome {
        CriterionOutcome(self.0.outcome)
    }

    fn __repr__(&self) -> String {
        format!("<{}: {}>", self.criterion().word(), self.outcome().word())
    }
}

/// What a published criterion asks of a vehicle: times in s, speeds in km/h, distances in m, grades in %, angles in degrees.
/// Source: SAE J2807, read in secondary summaries.
///
/// >>> from trainwright.units import lb_to_kg
/// >>> rated = RatedFor(dual_rear=False, gvwr_kg=lb_to_kg(10000), trailer_kg=lb_to_kg(12000), trailer_brakes=True)
/// >>> criterion_limits("0 to 60 mph", rated).upper
/// 30.0
#[pyfunction]
pub fn criterion_limits(criterion: Criterion, rated: RatedFor) -> PyResult<Limits> {
    answer(core::criterion_limits(criterion.0, rated.into()))
}

/// A result, measured or computed, against one of the published criteria. `value` is None where there is none; `never` says
/// that the speed of an acceleration is never reached. Meeting a criterion is no rating, and a computed value is not the test.
/// Source: SAE J2807, read in secondary summaries.
///
/// >>> from trainwright.judge import Reading, Rule
/// >>> rated = RatedFor(dual_rear=False, gvwr_kg=4500, trailer_kg=6000, trailer_brakes=True)
/// >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
/// >>> check_criterion("0 to 60 mph", Reading(value=29.5, u=0.6), rated, rule)
/// <0 to 60 mph: not proven>
/// >>> check_criterion("stop", None, rated, rule).outcome
/// 'not given'
#[pyfunction]
#[pyo3(signature = (criterion, value, rated, rule, *, never = false))]
pub fn check_criterion(
    criterion: Criterion,
    value: Option<Reading>,
    rated: RatedFor,
    rule: Rule,
    never: bool,
) -> PyResult<CriterionCheck> {
    let none = trainwright::judge::Reading { value: if never { f64::INFINITY } else { f64::NAN }, u: 0.0 };
    let value = if never { none } else { value.map_or(none, Into::into) };
    answer(core::check_criterion(criterion.0, value, rated.into(), rule.into()))
}
