//! The search behind an order: which parts to exchange so that every joint holds.

use super::joint::JointOutcome;
use super::joints::{Joints, MAX_PARTS, NO_MACHINING, has_variant};
use super::order::{AS_FOUND, Aim, Job, JointState, MeasuredSide, NO_JOINT};
use super::part_set::PartSet;
use super::price::Price;
use crate::error::{Error, Result};
use crate::fit::{MeasuredClearance, measured, toleranced};
use crate::judge::{Limits, Reading, Verdict};

/// Open choices that the search keeps in mind, and partial orders that it looks at before it gives up.
const MAX_CHOICES: usize = 64;
const MAX_STEPS: u32 = 100_000;

/// What an order costs so far.
#[derive(Clone, Copy)]
pub(super) struct Cost {
    pub(super) price: Price,
    pub(super) parts: u16,
    pub(super) machined: u16,
}

impl Cost {
    const NONE: Self = Self { price: Price::NONE, parts: 0, machined: 0 };

    fn is_less(&self, other: &Self, aim: Aim) -> bool {
        let rest = (self.parts, self.machined).cmp(&(other.parts, other.machined));
        if aim == Aim::CHEAPEST {
            let price = self.price.total.total_cmp(&other.price.total);
            price.then(self.price.unpriced.cmp(&other.price.unpriced)).then(rest).is_lt()
        } else {
            rest.is_lt()
        }
    }
}

/// One way to mend a broken joint.
#[derive(Clone, Copy)]
enum Choice {
    /// Both parts stay what they are, and the joint is machined.
    Machine,
    /// A part is ordered of a variant.
    Exchange(u16, u8),
}

/// A joint with several ways, and which was taken last.
#[derive(Clone, Copy)]
struct Fork {
    joint: u16,
    taken: usize,
    decided: usize,
}

/// The search: parts are decided one by one, each either ordered of some variant or to stay as found.
pub(super) struct Search<'a> {
    joints: &'a Joints<'a>,
    job: &'a Job<'a>,
    /// Variants that may be ordered.
    variants: u32,
    /// Whether parts without a price may be ordered.
    unpriced: bool,
    /// Variant to order of each part, or [`AS_FOUND`].
    parts: [u8; MAX_PARTS],
    decided: PartSet,
    /// Decided parts in the order in which they were decided.
    trail: heapless::Vec<u16, MAX_PARTS>,
    forks: heapless::Vec<Fork, MAX_CHOICES>,
    best: [u8; MAX_PARTS],
    best_cost: Option<Cost>,
    farthest: [u8; MAX_PARTS],
    farthest_cost: Cost,
    pub(super) stopped_at: u16,
    pub(super) steps: u32,
}

/// What the joints say of the parts as they are so far.
enum Finding {
    /// No joint is broken.
    Done(Cost),
    /// This joint is broken, and there are so many ways to mend it.
    Broken { joint: u16, ways: usize, cost: Cost },
}

impl<'a> Search<'a> {
    pub(super) fn new(joints: &'a Joints<'a>, job: &'a Job<'a>, unpriced: bool) -> Self {
        let mut search = Self {
            joints,
            job,
            variants: 0,
            unpriced,
            parts: [AS_FOUND; MAX_PARTS],
            decided: joints.fixed,
            trail: heapless::Vec::new(),
            forks: heapless::Vec::new(),
            best: [AS_FOUND; MAX_PARTS],
            best_cost: None,
            farthest: [AS_FOUND; MAX_PARTS],
            farthest_cost: Cost::NONE,
            stopped_at: NO_JOINT,
            steps: 0,
        };
        search.allow(job.unit);
        for (_, &variant) in (0..).zip(job.found).filter(|(part, _)| joints.fixed.has(*part)) {
            search.allow(variant);
        }
        for (part, &wanted) in (0..).zip(job.wanted) {
            if wanted != AS_FOUND {
                search.allow(wanted);
                search.decided.insert(part);
                search.order(part, wanted);
            }
        }
        search
    }

    /// As it is, so many steps later.
    pub(super) fn after(self, steps: u32) -> Self {
        Self { steps: self.steps + steps, ..self }
    }

    fn allow(&mut self, variant: u8) {
        self.variants |= 1_u32.checked_shl(variant.into()).unwrap_or(0);
    }

    pub(super) fn is_possible(&self) -> bool {
        self.best_cost.is_some()
    }

    pub(super) fn cost(&self) -> Cost {
        self.best_cost.unwrap_or(self.farthest_cost)
    }

    /// The variants to order: of the best order, or as far as the search came.
    pub(super) fn parts(&self) -> &[u8] {
        if self.is_possible() { &self.best } else { &self.farthest }
    }

    fn order(&mut self, part: u16, variant: u8) {
        if let Some(place) = self.parts.get_mut(usize::from(part)) {
            *place = variant;
        }
    }

    pub(super) fn run(mut self) -> Result<Self> {
        loop {
            self.steps += 1;
            if self.steps > MAX_STEPS {
                return Err(too_many());
            }
            let go_on = match self.look()? {
                Finding::Done(cost) => {
                    if self.is_better(&cost) {
                        (self.best, self.best_cost) = (self.parts, Some(cost));
                    }
                    false
                }
                Finding::Broken { joint, ways: 0, cost } => {
                    if self.stopped_at == NO_JOINT {
                        (self.stopped_at, self.farthest, self.farthest_cost) = (joint, self.parts, cost);
                    }
                    false
                }
                Finding::Broken { cost, .. } if !self.is_better(&cost) => false,
                Finding::Broken { joint, ways, .. } => {
                    if ways > 1 {
                        let fork = Fork { joint, taken: 0, decided: self.trail.len() };
                        self.forks.push(fork).map_err(|_| too_many())?;
                    }
                    self.take(joint, 0)?
                }
            };
            if !go_on && !self.back()? {
                return Ok(self);
            }
        }
    }

    fn is_better(&self, cost: &Cost) -> bool {
        (self.unpriced || cost.price.unpriced == 0)
            && self.best_cost.as_ref().is_none_or(|best| cost.is_less(best, self.job.aim))
    }

    /// Takes the next way of the latest fork that has one left.
    fn back(&mut self) -> Result<bool> {
        while let Some(fork) = self.forks.last_mut() {
            fork.taken += 1;
            let Fork { joint, taken, decided } = *fork;
            while self.trail.len() > decided {
                let Some(part) = self.trail.pop() else { break };
                self.decided.remove(part);
                self.order(part, AS_FOUND);
            }
            if self.take(joint, taken)? {
                return Ok(true);
            }
            self.forks.pop();
        }
        Ok(false)
    }

    /// Takes this way to mend a joint, if there is one.
    fn take(&mut self, joint: u16, way: usize) -> Result<bool> {
        let Some(choice) = self.ways(joint)?.nth(way) else { return Ok(false) };
        match choice {
            Choice::Machine => {
                let joint = self.joints.joint(joint)?;
                self.decide(joint.first)?;
                self.decide(joint.second)?;
            }
            Choice::Exchange(part, variant) => {
                self.decide(part)?;
                self.order(part, variant);
            }
        }
        Ok(true)
    }

    fn decide(&mut self, part: u16) -> Result<()> {
        if !self.decided.has(part) {
            self.decided.insert(part);
            self.trail.push(part).map_err(|_| too_many())?;
        }
        Ok(())
    }

    /// What the joints say now: the broken one with the fewest ways, and the cost of what is decided.
    fn look(&self) -> Result<Finding> {
        let mut cost = Cost::NONE;
        for (place, _) in self.parts.iter().enumerate().filter(|(_, part)| **part != AS_FOUND) {
            cost.parts += 1;
            cost.price.add(self.job.part_prices, place);
        }
        let mut broken: Option<(u16, usize)> = None;
        for (place, joint) in (0..).zip(self.joints.joints) {
            let state = self.state(place, &self.parts)?;
            if state.holds() {
                continue;
            }
            let decided = self.decided.has(joint.first) && self.decided.has(joint.second);
            if decided && state.machining != NO_MACHINING {
                cost.machined += 1;
                cost.price.add(self.job.machining_prices, state.machining.into());
                continue;
            }
            if broken.is_some_and(|(_, ways)| ways == 0) {
                continue;
            }
            let ways = self.ways(place)?.count();
            if broken.is_none_or(|(_, least)| ways < least) {
                broken = Some((place, ways));
            }
        }
        Ok(match broken {
            Some((joint, ways)) => Finding::Broken { joint, ways, cost },
            None => Finding::Done(cost),
        })
    }

    /// The ways to mend a broken joint that are still open.
    fn ways(&self, joint: u16) -> Result<impl Iterator<Item = Choice> + '_> {
        let state = self.state(joint, &self.parts)?;
        let joint = self.joints.joint(joint)?;
        let machine = (state.machining != NO_MACHINING).then_some(Choice::Machine);
        let exchange = [(joint.first, joint.second), (joint.second, joint.first)].into_iter();
        let exchange = exchange.filter(|(part, _)| !self.decided.has(*part)).flat_map(move |(part, neighbor)| {
            // Of several that do, the neighbor's own variant is named, then the unit's.
            let near = [self.variant(neighbor), self.job.unit];
            let rest = (0..self.joints.variants).filter(move |variant| !near.contains(variant));
            let near = near.into_iter().take(if near[0] == near[1] { 1 } else { 2 });
            let variants = near.chain(rest).filter(move |&variant| self.may_order(part, variant));
            variants.map(move |variant| Choice::Exchange(part, variant))
        });
        Ok(machine.into_iter().chain(exchange))
    }

    /// Whether a new part of this variant would be another one than was found: another variant, or not the measured one.
    fn may_order(&self, part: u16, variant: u8) -> bool {
        let other = self.job.found.get(usize::from(part)) != Some(&variant);
        has_variant(self.variants, variant) && (other || self.job.measured.iter().any(|side| side.part == part))
    }

    /// A joint with these parts ordered and the rest as found.
    pub(super) fn state(&self, joint: u16, parts: &[u8]) -> Result<JointState> {
        let of = self.joints.joint(joint)?;
        let (first, second) = (self.known(joint, of.first, parts), self.known(joint, of.second, parts));
        let meeting = self.joints.meeting(joint, first.variant, second.variant)?;
        let mut state = JointState { outcome: meeting.outcome, ..JointState::BLANK };
        if first.size_mm.is_none() && second.size_mm.is_none() {
            if meeting.outcome != JointOutcome::Holds {
                (state.verdict, state.chance) = (Verdict::NoGo, 0.0);
            }
        } else {
            let sides = (self.joints.sides(joint, first.variant)?, self.joints.sides(joint, second.variant)?);
            let shaft_mm = self.reading(first.size_mm, sides.0.first)?;
            let bore_mm = self.reading(second.size_mm, sides.1.second)?;
            let wanted_mm = of.wanted_mm(sides.0, sides.1)?;
            let MeasuredClearance { clearance_mm, judgment, .. } =
                measured(shaft_mm, bore_mm, wanted_mm, self.job.rule)?;
            state = JointState {
                outcome: measured_outcome(judgment.verdict, clearance_mm.value, wanted_mm),
                machining: NO_MACHINING,
                measured: true,
                verdict: judgment.verdict,
                chance: judgment.chance,
                clearance_mm,
            };
        }
        if state.verdict == Verdict::NoGo {
            state.machining = self.machining(joint, &first, &second)?;
        }
        Ok(state)
    }

    /// The machining that mends a joint, the cheapest of several; a measured mate must take the finished size for certain.
    fn machining(&self, joint: u16, first: &Known, second: &Known) -> Result<u16> {
        let of = self.joints.joint(joint)?;
        // A price that is not known may be as low as nothing while the cheapest order is looked for.
        let not_known = if self.unpriced && self.job.aim == Aim::CHEAPEST { 0.0 } else { f64::INFINITY };
        let mut best = (NO_MACHINING, f64::INFINITY);
        for rule in self.joints.mends(joint, first.variant, second.variant) {
            let place = rule?;
            let Some(rule) = self.joints.machining.get(usize::from(place)) else { continue };
            let sides = (self.joints.sides(joint, first.variant)?, self.joints.sides(joint, second.variant)?);
            let (shaft_mm, bore_mm) = if rule.part == of.first {
                (toleranced(rule.finish_mm, self.job.spread)?, self.reading(second.size_mm, sides.1.second)?)
            } else {
                (self.reading(first.size_mm, sides.0.first)?, toleranced(rule.finish_mm, self.job.spread)?)
            };
            let mate_is_measured = if rule.part == of.first { second.size_mm } else { first.size_mm }.is_some();
            if mate_is_measured {
                let wanted_mm = of.wanted_mm(sides.0, sides.1)?;
                if measured(shaft_mm, bore_mm, wanted_mm, self.job.rule)?.judgment.verdict != Verdict::Go {
                    continue;
                }
            }
            let price = self.job.machining_prices.get(usize::from(place)).copied().filter(|price| !price.is_nan());
            let price = price.unwrap_or(not_known);
            if price < best.1 || best.0 == NO_MACHINING {
                best = (place, price);
            }
        }
        Ok(best.0)
    }

    /// What is known of a part in a joint: its variant, and its size there if it is as found and was measured.
    fn known(&self, joint: u16, part: u16, parts: &[u8]) -> Known {
        let found = self.job.found.get(usize::from(part)).copied().unwrap_or(self.job.unit);
        let ordered = parts.get(usize::from(part)).copied().filter(|variant| *variant != AS_FOUND);
        let here = |side: &&MeasuredSide| side.joint == joint && side.part == part;
        let size_mm = self.job.measured.iter().find(here).map(|side| side.size_mm);
        ordered.map_or(Known { variant: found, size_mm }, |variant| Known { variant, size_mm: None })
    }

    /// The variant of a part as it is so far.
    fn variant(&self, part: u16) -> u8 {
        self.known(NO_JOINT, part, &self.parts).variant
    }

    fn reading(&self, size_mm: Option<Reading>, tolerance_mm: Limits) -> Result<Reading> {
        size_mm.map_or_else(|| toleranced(tolerance_mm, self.job.spread), Ok)
    }
}

/// What is known of a part in a joint.
struct Known {
    variant: u8,
    size_mm: Option<Reading>,
}

fn too_many() -> Error {
    Error::NoAnswer {
        name: "order",
        why: "there are too many ways to mend the joints to try them all; ask for fewer parts at a time",
    }
}

/// The outcome of a measured clearance.
fn measured_outcome(verdict: Verdict, clearance_mm: f64, wanted_mm: Limits) -> JointOutcome {
    let loose = clearance_mm > 0.5 * (wanted_mm.lower + wanted_mm.upper);
    match (verdict, loose) {
        (Verdict::Go, _) => JointOutcome::Holds,
        (Verdict::NotProven, true) => JointOutcome::MayBeLoose,
        (Verdict::NotProven, false) => JointOutcome::MayBind,
        (Verdict::NoGo, true) => JointOutcome::Loose,
        (Verdict::NoGo, false) => JointOutcome::Blocked,
    }
}
