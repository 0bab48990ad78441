//! Every rating of a combination against its load, and the rating that governs. A computed limit is no rating.

use super::loads::{
    AxleWeights, CombinationLoads, Distribution, Levers, Linear, Statics, Trailer, axle_loads, weighed_inputs,
};
use super::placard::{RATING_COUNT, RatingKind, TowRatings};
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result, positive};
use crate::judge::{Budget, Input, Judgment, Limits, Reading, Rule, Verdict, combine, judge, settle};
use crate::real::{hypot, sqrt};

pub(super) const RATING_CHECK: Card = Card {
    id: "tow.rating_check",
    purpose: "A load of a combination against its rating, and the trailer at which the two meet",
    equation: "q = c₀ + c_F·F + c_R·R + c_T·T₀ + c_m·m, u² = Σ (c_i·u_i)²; judged: q ≤ Q; t = (Q − a)/b, a = q at m = T₀ = 0, b = c_T·T₀/m + c_m",
    symbols: &[
        symbol("q, u", "load_kg", "kg"),
        symbol("Q", "rating_kg", "kg"),
        symbol("F, R", "weighed.front_kg, weighed.rear_kg", "kg"),
        symbol("T₀, m", "trailer.hitch_kg, trailer.mass_kg", "kg"),
        symbol("c₀, c_F, c_R, c_T, c_m", "coefficients of the load, tow.axle_loads", "kg, 1, 1, 1, 1"),
        symbol("c_i, u_i", "budget: coefficient and standard uncertainty of each of the four", "1, kg"),
        symbol("t", "trailer_limit_kg", "kg"),
        symbol("a, b", "load without a trailer, and per kilogram of trailer", "kg, 1"),
    ],
    range: "the trailer at the limit rests the same share on the hitch, and is 0 where the truck alone is over its rating; a load that a heavier trailer lightens limits none while it is kept as it is",
    source: &card::GUM,
    locator: "equation 10; moments as tow.axle_loads",
};

pub(super) const REVIEW_RATINGS: Card = Card {
    id: "tow.review_ratings",
    purpose: "Every rating of a combination, and the one that governs",
    equation: "t = min t_j, governing = argmin t_j",
    symbols: &[
        symbol("t", "trailer_limit_kg", "kg"),
        symbol("t_j", "trailer_limit_kg of each rating, tow.rating_check", "kg"),
        symbol("governing", "position of the least", "1"),
    ],
    range: "the ratings that were given: one that is missing is reported and keeps the whole from GO; brakes, cooling, frame, trailer sway and local law are not looked at",
    source: &card::DEFINITION,
    locator: "least of the limits",
};

/// Truck and trailer as weighed, and how they are coupled.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coupled {
    /// The truck without its trailer.
    pub weighed: AxleWeights,
    /// The trailer; its mass above 0.
    pub trailer: Trailer,
    /// Wheelbase and overhang.
    pub levers: Levers,
    /// Weight-distributing hitch.
    pub distribution: Distribution,
}

/// What to weigh better.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeighNext {
    /// Nothing: decided, or no uncertainty was given.
    Nothing,
    /// The front axle of the truck.
    FrontAxle,
    /// Its rear axle.
    RearAxle,
    /// The hitch load.
    HitchLoad,
    /// The trailer.
    Trailer,
}

/// A load against its rating.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatingCheck {
    /// Which.
    pub kind: RatingKind,
    /// The load, kg.
    pub load_kg: Reading,
    /// Its rating, kg.
    pub rating_kg: f64,
    /// Rating less load, kg.
    pub left_kg: f64,
    /// Load over rating.
    pub used_share: f64,
    /// Trailer at which the best estimate of the load meets the rating, kg; infinite where no trailer does.
    pub trailer_limit_kg: f64,
    /// Heaviest trailer that is a GO under the rule at the same relative uncertainties, kg.
    pub proven_trailer_kg: f64,
    /// The load against the rating.
    pub judgment: Judgment,
    /// Where its uncertainty comes from: front axle, rear axle, hitch load, trailer, in this order.
    pub budget: Budget,
    /// What to weigh better where it is NOT PROVEN.
    pub weigh_next: WeighNext,
}

/// One rating of a review.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatingRow {
    /// Which.
    pub kind: RatingKind,
    /// The rating was given. If not, the row holds the load only, and its verdict is NOT PROVEN.
    pub given: bool,
    /// The load, kg.
    pub load_kg: Reading,
    /// Its rating, kg; infinite where none was given.
    pub rating_kg: f64,
    /// Rating less load, kg.
    pub left_kg: f64,
    /// Load over rating; 0 where none was given.
    pub used_share: f64,
    /// Trailer at which the load meets the rating, kg; infinite where no trailer does.
    pub trailer_limit_kg: f64,
    /// Heaviest trailer that is a GO, kg.
    pub proven_trailer_kg: f64,
    /// Chance that the load does not exceed the rating; 0 where none was given.
    pub chance: f64,
    /// Verdict.
    pub verdict: Verdict,
    /// What to weigh better.
    pub weigh_next: WeighNext,
}

/// Every rating of a combination.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatingReview {
    /// Axle loads.
    pub loads: CombinationLoads,
    /// One row for each rating, in the order of their numbers.
    pub rows: [RatingRow; RATING_COUNT],
    /// TowRatings that were given.
    pub given: u32,
    /// Position of the row that allows the lightest trailer.
    pub governing: u32,
    /// Position of the row with the greatest share used.
    pub fullest: u32,
    /// Trailer at which the governing rating is met, kg.
    pub trailer_limit_kg: f64,
    /// Heaviest trailer that is a GO for every rating that was given, kg.
    pub proven_trailer_kg: f64,
    /// Payload left: GVWR less truck and hitch load, kg; infinite without a GVWR.
    pub payload_left_kg: f64,
    /// The worst verdict of the rows; never GO while a rating is missing.
    pub verdict: Verdict,
}

impl Statics {
    fn load(&self, kind: RatingKind) -> Linear {
        match kind {
            RatingKind::Combination => self.combination,
            RatingKind::Vehicle => self.truck,
            RatingKind::FrontAxle | RatingKind::FrontTires => self.front,
            RatingKind::RearAxle | RatingKind::RearTires => self.rear,
            RatingKind::HitchLoad => self.hitch,
            RatingKind::MakerTrailer | RatingKind::HitchTrailer | RatingKind::TrailerGross => {
                Linear { constant_kg: 0.0, by: [0.0, 0.0, 0.0, 1.0] }
            }
        }
    }
}

/// Guard of a rule against an upper limit, in standard uncertainties.
pub(super) fn guard(rule: Rule) -> Result<f64> {
    Ok(-judge(Reading::new(0.0, 1.0)?, Limits::at_most(0.0)?, rule)?.acceptance.upper)
}

/// Trailers at which a load meets its rating, and up to which that is a GO.
fn trailer_limits(load: Linear, inputs: [Reading; 4], rating_kg: f64, guard: f64) -> [f64; 2] {
    let [front, rear, hitch, mass] = inputs;
    let [by_front, by_rear, by_hitch, by_mass] = load.by;
    let left_kg = rating_kg - load.constant_kg - by_front * front.value - by_rear * rear.value;
    let slope = by_hitch * hitch.value / mass.value + by_mass;
    let u_truck = guard * hypot(by_front * front.u, by_rear * rear.u);
    let u_slope = guard * hypot(by_hitch * hitch.u, by_mass * mass.u) / mass.value;
    // (left − b·t)² = (z·u_a)² + (z·u_b·t)², the root that lies below left/b.
    let room = left_kg * left_kg - u_truck * u_truck;
    if slope <= 0.0 {
        let now = load.of(inputs);
        let kept = |guarded_kg: f64| if guarded_kg <= rating_kg { f64::INFINITY } else { 0.0 };
        return [kept(now.value), kept(now.value + guard * now.u)];
    }
    if left_kg < 0.0 {
        return [0.0, 0.0];
    }
    let below = left_kg * slope + sqrt(slope * slope * u_truck * u_truck + u_slope * u_slope * room.max(0.0));
    [left_kg / slope, if room <= 0.0 || below <= 0.0 { 0.0 } else { room / below }]
}

impl Coupled {
    fn inputs(self) -> Result<[Reading; 4]> {
        positive("mass_kg", self.trailer.mass_kg.value)?;
        weighed_inputs(self.weighed, self.trailer)
    }

    /// A load of the combination against its rating, and the trailer at which the two meet.
    ///
    /// q = c₀ + c_F·F + c_R·R + c_T·T₀ + c_m·m, u² = Σ (c_i·u_i)²; judged: q ≤ Q; t = (Q − a)/b
    ///
    /// * `kind` — which rating; `rating_kg` — Q, above 0; `rule` — decision rule
    /// * returns [`RatingCheck`]
    /// * errors: as [`axle_loads`]; [`Error::NotPositive`]
    ///
    /// A rating is the maker's. This compares a load with it and never makes one.
    ///
    /// Source: JCGM 100:2008, equation 10, over the moments of [`axle_loads`]. Example (computed independently): 7400 lb on the
    /// scale, 3300 of them on the rear axle, wheelbase 160 in, overhang 50 in, 10 % on the hitch: 7000 lb on the rear axle
    /// are met by a trailer of 28 190 lb.
    ///
    /// ```
    /// use trainwright::judge::{Reading, Rule};
    /// use trainwright::tow::{AxleWeights, Coupled, Distribution, Levers, RatingKind, Trailer};
    /// let coupled = Coupled { // pounds and inches throughout: the formula asks for one unit of each
    ///     weighed: AxleWeights { front_kg: Reading::exact(4100.0)?, rear_kg: Reading::exact(3300.0)? },
    ///     trailer: Trailer::by_share(Reading::exact(10_000.0)?, Reading::exact(0.1)?)?,
    ///     levers: Levers { wheelbase_mm: 160.0, overhang_mm: 50.0 },
    ///     distribution: Distribution::NONE,
    /// };
    /// let check = coupled.rating_check(RatingKind::RearAxle, 7000.0, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert!((check.trailer_limit_kg - 28_190.5).abs() < 0.05);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn rating_check(self, kind: RatingKind, rating_kg: f64, rule: Rule) -> Result<RatingCheck> {
        let Self { weighed, trailer, levers, distribution } = self;
        axle_loads(weighed, trailer, levers, distribution)?;
        let inputs = self.inputs()?;
        self.check(kind, positive("rating_kg", rating_kg)?, inputs, rule)
    }

    fn check(self, kind: RatingKind, rating_kg: f64, inputs: [Reading; 4], rule: Rule) -> Result<RatingCheck> {
        let load = Statics::new(self.levers, self.distribution)?.load(kind);
        let load_kg = load.of(inputs);
        let [front, rear, hitch, mass] = inputs;
        let [by_front, by_rear, by_hitch, by_mass] = load.by;
        let budget = combine(&[
            Input::new(by_front, front.u)?,
            Input::new(by_rear, rear.u)?,
            Input::new(by_hitch, hitch.u)?,
            Input::new(by_mass, mass.u)?,
        ])?;
        let judgment = judge(Reading::new(load_kg.value, budget.u)?, Limits::at_most(rating_kg)?, rule)?;
        let [trailer_limit_kg, proven_trailer_kg] = trailer_limits(load, inputs, rating_kg, guard(rule)?);
        let weigh_next = match settle(&judgment, &budget) {
            Ok(wanted) if judgment.verdict == Verdict::NotProven => match wanted.input {
                0 => WeighNext::FrontAxle,
                1 => WeighNext::RearAxle,
                2 => WeighNext::HitchLoad,
                _ => WeighNext::Trailer,
            },
            _ => WeighNext::Nothing,
        };
        Ok(RatingCheck {
            kind,
            load_kg,
            rating_kg,
            left_kg: rating_kg - load_kg.value,
            used_share: load_kg.value / rating_kg,
            trailer_limit_kg,
            proven_trailer_kg,
            judgment,
            budget,
            weigh_next,
        })
    }

    /// Every rating of the combination, and the one that governs.
    ///
    /// t = min t_j, governing = argmin t_j
    ///
    /// * `ratings` — infinite where one is not known; `rule` — decision rule
    /// * returns [`RatingReview`]
    /// * errors: as [`Coupled::rating_check`]; [`Error::Missing`] where no rating is known
    ///
    /// Brakes, cooling, frame, trailer sway and local law are not looked at. The vehicle maker's ratings and placards stand.
    ///
    /// Source: least of the limits (derived). Example (computed independently): GCWR 21 500, GVWR 10 800, rear 7000, hitch
    /// 14 000 lb: 14 100, 34 000, 28 190 and 14 000 lb, so the hitch governs.
    ///
    /// ```
    /// use trainwright::judge::{Reading, Rule};
    /// use trainwright::tow::{AxleWeights, Coupled, Distribution, Levers, RatingKind, TowRatings, Trailer};
    /// let coupled = Coupled { // pounds and inches throughout
    ///     weighed: AxleWeights { front_kg: Reading::exact(4100.0)?, rear_kg: Reading::exact(3300.0)? },
    ///     trailer: Trailer::by_share(Reading::exact(10_000.0)?, Reading::exact(0.1)?)?,
    ///     levers: Levers { wheelbase_mm: 160.0, overhang_mm: 50.0 },
    ///     distribution: Distribution::NONE,
    /// };
    /// let ratings = TowRatings {
    ///     gcwr_kg: 21_500.0, gvwr_kg: 10_800.0, gawr_rear_kg: 7000.0, hitch_trailer_kg: 14_000.0, ..TowRatings::UNKNOWN
    /// };
    /// let review = coupled.review_ratings(ratings, Rule::stated_chances(0.95, 0.05)?)?;
    /// assert_eq!(review.governing_row().kind, RatingKind::HitchTrailer);
    /// assert!((review.trailer_limit_kg - 14_000.0).abs() < 1e-9);
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn review_ratings(self, ratings: TowRatings, rule: Rule) -> Result<RatingReview> {
        let loads = axle_loads(self.weighed, self.trailer, self.levers, self.distribution)?;
        let inputs = self.inputs()?;
        let mut review = RatingReview {
            loads,
            rows: [RatingRow::UNKNOWN; RATING_COUNT],
            given: 0,
            governing: 0,
            fullest: 0,
            trailer_limit_kg: f64::INFINITY,
            proven_trailer_kg: f64::INFINITY,
            payload_left_kg: ratings.gvwr_kg - loads.truck_kg.value,
            verdict: Verdict::Go,
        };
        for (row, kind) in review.rows.iter_mut().zip(RatingKind::ALL) {
            let (name, rating_kg) = ratings.of(kind);
            row.kind = kind;
            if rating_kg == f64::INFINITY {
                row.load_kg = Statics::new(self.levers, self.distribution)?.load(kind).of(inputs);
                continue;
            }
            let check = self.check(kind, positive(name, rating_kg)?, inputs, rule)?;
            *row = RatingRow {
                kind,
                given: true,
                load_kg: check.load_kg,
                rating_kg,
                left_kg: check.left_kg,
                used_share: check.used_share,
                trailer_limit_kg: check.trailer_limit_kg,
                proven_trailer_kg: check.proven_trailer_kg,
                chance: check.judgment.chance,
                verdict: check.judgment.verdict,
                weigh_next: check.weigh_next,
            };
            review.given += 1;
        }
        let mut fullest_share = -1.0;
        let [mut first, mut undecided, mut no_go] = [true, false, false];
        for (position, row) in (0..).zip(&review.rows).filter(|(_, row)| row.given) {
            if first || row.trailer_limit_kg < review.trailer_limit_kg {
                (review.trailer_limit_kg, review.governing, first) = (row.trailer_limit_kg, position, false);
            }
            if row.used_share > fullest_share {
                (fullest_share, review.fullest) = (row.used_share, position);
            }
            review.proven_trailer_kg = review.proven_trailer_kg.min(row.proven_trailer_kg);
            undecided |= row.verdict == Verdict::NotProven;
            no_go |= row.verdict == Verdict::NoGo;
        }
        if first {
            return Err(Error::Missing {
                name: "ratings",
                why: "no rating is known; read at least one from the placard of the door, the hitch or the trailer",
            });
        }
        undecided |= (review.given as usize) < RATING_COUNT;
        review.verdict = match (no_go, undecided) {
            (true, _) => Verdict::NoGo,
            (false, true) => Verdict::NotProven,
            (false, false) => Verdict::Go,
        };
        Ok(review)
    }
}

impl RatingRow {
    const UNKNOWN: Self = Self {
        kind: RatingKind::Combination,
        given: false,
        load_kg: Reading { value: 0.0, u: 0.0 },
        rating_kg: f64::INFINITY,
        left_kg: f64::INFINITY,
        used_share: 0.0,
        trailer_limit_kg: f64::INFINITY,
        proven_trailer_kg: f64::INFINITY,
        chance: 0.0,
        verdict: Verdict::NotProven,
        weigh_next: WeighNext::Nothing,
    };
}

impl RatingReview {
    /// The row that allows the lightest trailer.
    #[must_use]
    pub fn governing_row(&self) -> RatingRow {
        self.rows.get(self.governing as usize).copied().unwrap_or(RatingRow::UNKNOWN)
    }

    /// The row with the greatest share used.
    #[must_use]
    pub fn fullest_row(&self) -> RatingRow {
        self.rows.get(self.fullest as usize).copied().unwrap_or(RatingRow::UNKNOWN)
    }
}
