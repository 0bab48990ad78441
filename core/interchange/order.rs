//! What to order for a unit as it lies on the bench: fewest parts, or the lowest price.

use super::closure::Passage;
use super::joint::JointOutcome;
use super::joints::{Joints, NO_MACHINING, counted};
use super::price::{Price, price_list};
use super::search::Search;
use crate::card::{self, Card, symbol};
use crate::error::{Error, Result};
use crate::fit::Spread;
use crate::judge::{Reading, Rule, Verdict};

/// Stands where a part stays as it was found.
pub const AS_FOUND: u8 = u8::MAX;
/// Stands where there is no such joint.
pub const NO_JOINT: u16 = u16::MAX;

pub(super) const ORDER: Card = Card {
    id: "interchange.order",
    purpose: "The fewest parts, or the cheapest, that make every joint of a unit on the bench hold, with the parts wanted in it",
    equation: "least (n, m) or least (Σ price, n, m) over all choices for every part of as found, or ordered of a variant that is the unit's, wanted or a fixed part's, such that no joint is NO-GO unmended",
    symbols: &[
        symbol("n", "parts", "1"),
        symbol("m", "machined", "1"),
        symbol("price", "part_prices, machining_prices", "of the price list"),
    ],
    range: "every choice is tried or ruled out by a choice that is no worse; a joint that is NOT PROVEN is taken to hold, and said",
    source: &card::DEFINITION,
    locator: "branch and bound: whatever mends a joint changes its one part, its other part, or neither and machines",
};

/// What an order shall be the least of. A number of its own type, so that a junk number from C is refused rather than undefined.
#[repr(transparent)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Aim(pub i32);

impl Aim {
    /// Fewest parts; of as many, the fewest machinings.
    pub const FEWEST: Self = Self(0);
    /// Lowest price; of the same, the fewest parts.
    pub const CHEAPEST: Self = Self(1);
}

/// A diameter of a part as found, measured.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredSide {
    /// The fit.
    pub joint: u16,
    /// Its shaft or its bore: the part.
    pub part: u16,
    /// What was measured, mm.
    pub size_mm: Reading,
}

/// A unit on the bench, and what is wanted in it.
#[derive(Clone, Copy, Debug)]
pub struct Job<'a> {
    /// Variant of the unit: what is exchanged becomes this, a wanted variant, or that of a fixed part as found.
    pub unit: u8,
    /// Variant of each part as found.
    pub found: &'a [u8],
    /// Variant that each part shall be, or [`AS_FOUND`] where it does not matter.
    pub wanted: &'a [u8],
    /// Sizes measured on the parts as found.
    pub measured: &'a [MeasuredSide],
    /// How a measured clearance is judged.
    pub rule: Rule,
    /// How the size of a part that was not measured is taken to lie in its tolerance.
    pub spread: Spread,
    /// Price of each part, NaN where it is not known; empty where no price is.
    pub part_prices: &'a [f64],
    /// Price of each machining, likewise.
    pub machining_prices: &'a [f64],
    /// What the order shall be the least of.
    pub aim: Aim,
}

/// A joint of the unit as it would be put together.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointState {
    /// What comes of it as the parts are.
    pub outcome: JointOutcome,
    /// The machining that mends it, or [`NO_MACHINING`].
    pub machining: u16,
    /// Whether one of its sizes was measured; else it is known by its tolerances alone.
    pub measured: bool,
    /// By tolerances, GO where it holds and NO-GO where it does not; by measured sizes, as judged.
    pub verdict: Verdict,
    /// Chance that the clearance is right; by tolerances 1 or 0.
    pub chance: f64,
    /// Clearance of a measured fit, mm; 0 with u 0 of others.
    pub clearance_mm: Reading,
}

impl JointState {
    /// Nothing known yet: what a caller fills its slice with.
    pub const BLANK: Self = Self {
        outcome: JointOutcome::Holds,
        machining: NO_MACHINING,
        measured: false,
        verdict: Verdict::Go,
        chance: 1.0,
        clearance_mm: Reading { value: 0.0, u: 0.0 },
    };

    pub(super) fn holds(&self) -> bool {
        self.verdict != Verdict::NoGo
    }
}

/// An order, or why there is none.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Order {
    /// Whether the unit can be put together so that no joint is known to be wrong. Where not, the rest of the answer says how far
    /// the search came before the joint in `stopped_at`.
    pub possible: bool,
    /// Parts to order.
    pub parts: u16,
    /// Joints to machine.
    pub machined: u16,
    /// Joints that are neither proven right nor wrong: measure better.
    pub not_proven: u16,
    /// The first joint that nothing mends, or [`NO_JOINT`].
    pub stopped_at: u16,
    /// What they cost.
    pub price: Price,
    /// Whether no other order can be cheaper. Not proven where a price that is not known could change that.
    pub cheapest: bool,
    /// Partial orders that were looked at.
    pub steps: u32,
}

impl Joints<'_> {
    /// The fewest parts, or the cheapest, that make every joint of a unit on the bench hold.
    ///
    /// least (n, m) or least (Σ price, n, m) over all choices for every part of as found, or ordered of a variant that is the unit's,
    /// wanted or a fixed part's, such that no joint is NO-GO unmended
    ///
    /// * `job` — the unit, what was found and measured, what is wanted; a wanted part is ordered even where one is there already
    /// * `parts` — out, one for each part: the variant to order, or [`AS_FOUND`]; `states` — out, one for each joint: as it would be
    /// * returns [`Order`]. A joint that is NOT PROVEN is taken to hold and counted
    /// * errors: [`Error::Count`] for slices of another length, [`Error::OutOfRange`] for variants, parts and joints that are not
    ///   there, a price below 0, or a fixed part that is wanted; [`Error::NoAnswer`] after 100 000 partial orders
    ///
    /// Source: branch and bound. Whatever mends a broken joint changes its first part, changes its second part, or changes neither
    /// and machines; each is tried, unless it already costs as much as the best order found. Tests compare it with trying every
    /// choice.
    ///
    /// ```
    /// use trainwright::fit::Spread;
    /// use trainwright::interchange::*;
    /// use trainwright::judge::{Limits, Rule};
    /// let size = |lower, upper| Limits { lower, upper };
    /// let (shaft, support) = (0, 1);
    /// let family = Joints {
    ///     parts: 2,
    ///     variants: 2,
    ///     joints: &[Joint { kind: JointKind::Running, first: shaft, second: support, limit: 0.14 }],
    ///     sizes: &[
    ///         Sides { first: size(43.975, 44.000), second: size(44.040, 44.075) },
    ///         Sides { first: size(44.325, 44.350), second: size(44.390, 44.425) },
    ///     ],
    ///     machining: &[],
    ///     fixed: PartSet::EMPTY,
    ///     alias: PartSet::EMPTY,
    /// };
    /// // A late unit (1) in which somebody put an early shaft (0): it went together and runs loose.
    /// let job = Job {
    ///     unit: 1, found: &[0, 1], wanted: &[AS_FOUND; 2], measured: &[], rule: Rule::conformance(0.95)?,
    ///     spread: Spread::RECTANGULAR, part_prices: &[210.0, 145.0], machining_prices: &[], aim: Aim::FEWEST,
    /// };
    /// let (mut parts, mut states) = ([AS_FOUND; 2], [JointState::BLANK]);
    /// let order = family.order(&job, &mut parts, &mut states)?;
    /// assert!(order.possible);
    /// assert_eq!((order.parts, order.price.total, parts), (1, 210.0, [1, AS_FOUND])); // one late shaft
    /// # Ok::<(), trainwright::Error>(())
    /// ```
    pub fn order(&self, job: &Job<'_>, parts: &mut [u8], states: &mut [JointState]) -> Result<Order> {
        self.check_job(job, parts.len(), states.len())?;
        let (mut found, mut cheapest) = (Search::new(self, job, true).run()?, false);
        if job.aim == Aim::CHEAPEST && found.is_possible() {
            cheapest = found.cost().price.unpriced == 0;
            if !cheapest {
                let (steps, priced) = (found.steps, Search::new(self, job, false).run()?);
                found = if priced.is_possible() { priced.after(steps) } else { found.after(priced.steps) };
            }
        }
        parts.iter_mut().zip(found.parts()).for_each(|(out, part)| *out = *part);
        let mut not_proven = 0;
        for (joint, out) in (0..).zip(states) {
            *out = found.state(joint, found.parts())?;
            not_proven += u16::from(out.verdict == Verdict::NotProven);
        }
        let cost = found.cost();
        Ok(Order {
            possible: found.is_possible(),
            parts: cost.parts,
            machined: cost.machined,
            not_proven,
            stopped_at: if found.is_possible() { NO_JOINT } else { found.stopped_at },
            price: cost.price,
            cheapest,
            steps: found.steps,
        })
    }

    /// What comes of a part of some variant among parts of these variants, all by tolerance and after what machining is permitted.
    ///
    /// * `variants` — the variant of each part; `part`, `variant` — the part to put in
    /// * returns the outcome of its worst joint that no machining mends, and the first machining that it needs
    /// * errors: [`Error::Count`] for a list of another length, [`Error::OutOfRange`] for what is not there
    pub fn put_in(&self, variants: &[u8], part: u16, variant: u8) -> Result<Passage> {
        self.check_counts()?;
        self.part("part", part)?;
        counted("variants", variants.len(), self.parts.into(), self.parts.into())?;
        let mut worst = Passage { outcome: JointOutcome::Holds, machining: NO_MACHINING };
        for (place, joint) in (0..).zip(self.joints) {
            let Some(neighbor) = joint.other(part) else { continue };
            let other = variants.get(usize::from(neighbor)).copied().unwrap_or(AS_FOUND);
            let (first, second) = if joint.first == part { (variant, other) } else { (other, variant) };
            let passage = self.passage(place, first, second)?;
            if passage.is_broken() {
                worst.outcome = worst.outcome.with(passage.outcome);
            } else if worst.machining == NO_MACHINING {
                worst.machining = passage.machining;
            }
        }
        Ok(worst)
    }

    fn check_job(&self, job: &Job<'_>, parts: usize, states: usize) -> Result<()> {
        self.check_counts()?;
        let of_parts = usize::from(self.parts);
        self.variant("unit", job.unit)?;
        counted("found", job.found.len(), of_parts, of_parts)?;
        counted("wanted", job.wanted.len(), of_parts, of_parts)?;
        counted("parts", parts, of_parts, of_parts)?;
        counted("states", states, self.joints.len(), self.joints.len())?;
        for (part, (&found, &wanted)) in (0..).zip(job.found.iter().zip(job.wanted)) {
            self.variant("found", found)?;
            if wanted != AS_FOUND {
                self.variant("wanted", wanted)?;
                if self.fixed.has(part) {
                    return Err(Error::NoAnswer {
                        name: "wanted",
                        why: "the part belongs to the unit itself and is never exchanged",
                    });
                }
            }
        }
        for side in job.measured {
            let joint = self.joint(side.joint)?;
            if !joint.is_fit() || joint.other(side.part).is_none() {
                return Err(Error::Inconsistent {
                    name: "measured",
                    why: "only the shaft or bore of a fit is measured; name one of the two",
                });
            }
            Reading::new(side.size_mm.value, side.size_mm.u)?;
        }
        price_list("part_prices", job.part_prices, of_parts)?;
        price_list("machining_prices", job.machining_prices, self.machining.len())?;
        if job.aim != Aim::FEWEST && job.aim != Aim::CHEAPEST {
            return Err(Error::OutOfRange { name: "aim", value: job.aim.0.into(), low: 0.0, high: 1.0 });
        }
        Ok(())
    }
}
