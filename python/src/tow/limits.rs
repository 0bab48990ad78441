//! Every rating of a combination against its load, and the rating that governs.

use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::tow as core;

use super::loads::{AxleWeights, CombinationLoads, Distribution, Levers, Trailer};
use crate::class::{Field, class, words};
use crate::error::answer;
use crate::judge::{Budget, Judgment, Reading, Rule, Verdict};

words! {
    "kind" RatingKind = core::RatingKind {
        Combination = "combination",
        Vehicle = "vehicle",
        FrontAxle = "front axle",
        RearAxle = "rear axle",
        FrontTires = "front tires",
        RearTires = "rear tires",
        MakerTrailer = "maker trailer",
        HitchTrailer = "hitch trailer",
        HitchLoad = "hitch load",
        TrailerGross = "trailer gross",
    }
}

words! {
    "weigh_next" WeighNext = core::WeighNext {
        Nothing = "nothing",
        FrontAxle = "front axle",
        RearAxle = "rear axle",
        HitchLoad = "hitch load",
        Trailer = "trailer",
    }
}

class! {
    /// The ratings of a combination, from placards and labels; infinite (the default) where one is not known.
    ///
    /// >>> TowRatings(gvwr_kg=4500).gcwr_kg
    /// inf
    "trainwright.tow" TowRatings = core::TowRatings {
        /// Gross combination weight rating, kg.
        gcwr_kg: f64 = f64::INFINITY,
        /// Gross vehicle weight rating of the truck, kg.
        gvwr_kg: f64 = f64::INFINITY,
        /// Front gross axle weight rating, kg.
        gawr_front_kg: f64 = f64::INFINITY,
        /// Rear gross axle weight rating, kg.
        gawr_rear_kg: f64 = f64::INFINITY,
        /// Tires of the front axle together, kg: `axle_tires_kg`.
        tires_front_kg: f64 = f64::INFINITY,
        /// Tires of the rear axle together, kg.
        tires_rear_kg: f64 = f64::INFINITY,
        /// Heaviest trailer that the vehicle maker allows, kg.
        maker_trailer_kg: f64 = f64::INFINITY,
        /// Heaviest trailer that the hitch is rated for, kg.
        hitch_trailer_kg: f64 = f64::INFINITY,
        /// Greatest hitch load that the hitch is rated for, kg.
        hitch_load_kg: f64 = f64::INFINITY,
        /// Gross rating of the trailer, kg.
        trailer_gross_kg: f64 = f64::INFINITY,
    }
}

class! {
    /// A load against its rating.
    "trainwright.tow" RatingCheck = core::RatingCheck, explained by ["tow.rating_check"], judged in "kg",
        inputs ["front axle", "rear axle", "hitch load", "trailer"] {
        /// Which rating.
        kind: RatingKind,
        /// The load, kg.
        load_kg: Reading,
        /// Its rating, kg.
        rating_kg: f64,
        /// Rating less load, kg.
        left_kg: f64,
        /// Load over rating.
        used_share: f64,
        /// Trailer at which the best estimate of the load meets the rating, kg; infinite where no trailer does.
        trailer_limit_kg: f64,
        /// Heaviest trailer that is a GO under the rule at the same relative uncertainties, kg.
        proven_trailer_kg: f64,
        /// The load against the rating.
        judgment: Judgment,
        /// Uncertainty of the load: front axle, rear axle, hitch load, trailer, in this order.
        budget: Budget,
        /// What to weigh better where it is NOT PROVEN.
        weigh_next: WeighNext,
    }
}

class! {
    /// One rating of a review.
    "trainwright.tow" RatingRow = core::RatingRow {
        /// Which rating.
        kind: RatingKind,
        /// The rating was given. If not, the row holds the load only, and its verdict is NOT PROVEN.
        given: bool,
        /// The load, kg.
        load_kg: Reading,
        /// Its rating, kg; infinite where none was given.
        rating_kg: f64,
        /// Rating less load, kg.
        left_kg: f64,
        /// Load over rating; 0 where none was given.
        used_share: f64,
        /// Trailer at which the load meets the rating, kg; infinite where no trailer does.
        trailer_limit_kg: f64,
        /// Heaviest trailer that is a GO, kg.
        proven_trailer_kg: f64,
        /// Chance that the load does not exceed the rating; 0 where none was given.
        chance: f64,
        /// Verdict.
        verdict: Verdict,
        /// What to weigh better.
        weigh_next: WeighNext,
    }
}

class! {
    /// Truck and trailer as weighed, and how they are coupled.
    ///
    /// >>> from trainwright.judge import Reading, Rule
    /// >>> coupled = Coupled(
    /// ...     weighed=AxleWeights(front_kg=Reading(value=1900, u=12), rear_kg=Reading(value=1860, u=12)),
    /// ...     trailer=Trailer.by_share(mass_kg=Reading(value=7400, u=40), hitch_share=Reading(value=0.12, u=0.01)),
    /// ...     levers=Levers(wheelbase_mm=3750, overhang_mm=1250),
    /// ... )
    /// >>> rule = Rule.stated_chances(go=0.95, no_go=0.05)
    /// >>> review = coupled.review_ratings(TowRatings(gcwr_kg=11300, gvwr_kg=4900, gawr_rear_kg=3000), rule)
    /// >>> review.governing, round(review.trailer_limit_kg), review.rows[3].verdict
    /// ('rear axle', 7125, 'NOT PROVEN')
    "trainwright.tow" Coupled = core::Coupled {
        /// The truck without its trailer.
        weighed: AxleWeights,
        /// The trailer; its mass above 0.
        trailer: Trailer,
        /// Wheelbase and overhang.
        levers: Levers,
        /// Weight-distributing hitch; none unless given.
        distribution: Distribution = core::Distribution::NONE,
    }
}

#[pymethods]
impl Coupled {
    /// A load of the combination against its rating, and the trailer at which the two meet. `kind` is one of `"combination"`,
    /// `"vehicle"`, `"front axle"`, `"rear axle"`, `"front tires"`, `"rear tires"`, `"maker trailer"`, `"hitch trailer"`,
    /// `"hitch load"`, `"trailer gross"`. Source: JCGM 100:2008, equation 10.
    #[pyo3(signature = (kind, *, rating_kg, rule))]
    fn rating_check(&self, kind: RatingKind, rating_kg: f64, rule: Rule) -> PyResult<RatingCheck> {
        answer(self.0.rating_check(kind.0, rating_kg, rule.into()))
    }

    /// Every rating of the combination, and the one that governs. Brakes, cooling, frame, trailer sway and local law are not
    /// looked at: the vehicle maker's ratings and placards stand. Source: follows from the definitions (least of the limits).
    fn review_ratings(&self, ratings: TowRatings, rule: Rule) -> PyResult<RatingReview> {
        answer(self.0.review_ratings(ratings.into(), rule.into()))
    }
}

/// Every rating of a combination. A computed limit is no rating.
#[pyclass(frozen, module = "trainwright.tow")]
pub struct RatingReview(core::RatingReview);

impl From<core::RatingReview> for RatingReview {
    fn from(review: core::RatingReview) -> Self {
        Self(review)
    }
}

crate::class::explained!(RatingReview, ["tow.review_ratings"], , []);

#[pymethods]
impl RatingReview {
    /// Axle loads.
    #[getter]
    fn loads(&self) -> CombinationLoads {
        self.0.loads.into()
    }

    /// One row for each rating, given or not.
    #[getter]
    fn rows(&self) -> Vec<RatingRow> {
        self.0.rows.into_iter().map(RatingRow).collect()
    }

    /// How many ratings were given.
    #[getter]
    fn given(&self) -> u32 {
        self.0.given
    }

    /// The rating that allows the lightest trailer.
    #[getter]
    fn governing(&self) -> RatingKind {
        RatingKind(self.0.governing_row().kind)
    }

    /// The row of it.
    #[getter]
    fn governing_row(&self) -> RatingRow {
        RatingRow(self.0.governing_row())
    }

    /// The row with the greatest share used.
    #[getter]
    fn fullest_row(&self) -> RatingRow {
        RatingRow(self.0.fullest_row())
    }

    /// Trailer at which the governing rating is met, kg.
    #[getter]
    fn trailer_limit_kg(&self) -> f64 {
        self.0.trailer_limit_kg
    }

    /// Heaviest trailer that is a GO for every rating that was given, kg.
    #[getter]
    fn proven_trailer_kg(&self) -> f64 {
        self.0.proven_trailer_kg
    }

    /// Payload left: GVWR less truck and hitch load, kg; infinite without a GVWR.
    #[getter]
    fn payload_left_kg(&self) -> f64 {
        self.0.payload_left_kg
    }

    /// The worst verdict of the rows; never GO while a rating is missing.
    #[getter]
    fn verdict(&self) -> Verdict {
        Verdict(self.0.verdict)
    }

    /// Numbers, text and lists only.
    fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let fields = PyDict::new(py);
        fields.set_item("loads", self.loads().plain(py)?)?;
        let rows: PyResult<Vec<_>> = self.rows().iter().map(|row| row.plain(py)).collect();
        fields.set_item("rows", rows?)?;
        fields.set_item("given", self.given())?;
        fields.set_item("governing", self.governing().word())?;
        fields.set_item("fullest", RatingKind(self.0.fullest_row().kind).word())?;
        fields.set_item("trailer_limit_kg", self.trailer_limit_kg())?;
        fields.set_item("proven_trailer_kg", self.proven_trailer_kg())?;
        fields.set_item("payload_left_kg", self.payload_left_kg())?;
        fields.set_item("verdict", self.verdict().word())?;
        Ok(fields)
    }

    fn __repr__(&self) -> String {
        let given = self.0.rows.iter().filter(|row| row.given);
        let rows: Vec<_> = given
            .map(|row| format!("{} {:.3} {}", RatingKind(row.kind).word(), row.used_share, Verdict(row.verdict).word()))
            .collect();
        format!("<ratings: {}; {} governs>", rows.join(", "), self.governing().word())
    }
}
