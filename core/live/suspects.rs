//! Which element slips, from what was seen in all gears.
//!
//! One gear cannot tell: input and output speed leave every element that holds the gear as a suspect. An element that slips does
//! so in the gears that it holds, and in no other.

use super::event::{GEAR_IN_NONE, NO_LIVE_ELEMENT};
use super::plan::LivePlan;
use super::{MAX_LIVE_ELEMENTS, MAX_LIVE_GEARS};
use crate::card::{self, Card, symbol};
use crate::real::single::{bounded, exp, ln};

pub(super) const ADD: Card = Card {
    id: "live.add_slip",
    purpose: "Evidence of one value of slip, as the logarithm of a likelihood ratio",
    equation: "λ ← λ + w·(s − w/2), each term within ±1, λ within ±ln 1000; backward with −s",
    symbols: &[
        symbol("λ", "forward; backward", "1"),
        symbol("s", "slip: n_in − i·n_out less what the sensors may add, over its standard deviation", "1"),
        symbol("w", "wanted: smallest slip that matters, over the same", "1"),
    ],
    range: "under drive, where slip of an element raises the input speed; backward slip is coast or a sensor. Independent values",
    source: &card::SEQUENTIAL_TESTS,
    locator: "probability ratio of two normal means; the bounds are assumed, so that a glitch weighs little and the past fades",
};

pub(super) const WEIGH: Card = Card {
    id: "live.weigh_suspects",
    purpose: "Odds of each element to be the one that slips, from what was seen in all gears",
    equation: "ln L_e = Σ ln(1 − p − q + p·exp(λ) + q·exp(λ_b)), p = 0.9·min(1, t/t_s) where e holds the gear, else q = 0.002; O_e = L_e/Σ L",
    symbols: &[
        symbol("O_e", "suspects: ln of the odds against all others together", "1"),
        symbol("λ, λ_b", "evidence of a gear: forward, backward", "1"),
        symbol("t", "torque that the element carries per input torque in the gear: 1/|slip_per_input_slip|", "1"),
        symbol("t_s", "least of those in the gears that are seen to slip", "1"),
        symbol("p, q", "chance that the gear shows slip if e slips; that it seems to without", "1"),
        symbol(
            "L",
            "of every element, and of the sensors: slip of one sign in every gear, 0.05 as likely from the start",
            "1",
        ),
    ],
    range: "one fault at a time, similar input torque in all gears. 0.9, 0.002 and 0.05 are assumed: the order is sound, the odds are no statistics of failures",
    source: &card::BAYES,
    locator: "posterior of discrete hypotheses; a gear with less torque on the element says less (derived)",
};

/// What was seen in one gear: logarithms of likelihood ratios, above 0 for slip and below for none.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GearEvidence {
    /// Slip as an element does it: the input runs ahead.
    pub forward: f32,
    /// The input falls behind: no element does that under drive.
    pub backward: f32,
}

/// One element with the evidence against it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RankedSuspect {
    /// Number of the element.
    pub element: u8,
    /// ln of the odds that it is this one against all others together.
    pub ln_odds: f32,
}

/// The elements that may slip, most likely first. Only the first `count` are used.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveSuspects {
    /// Elements by evidence.
    pub suspects: [RankedSuspect; MAX_LIVE_ELEMENTS],
    /// ln of the odds that it is none of them, but the sensors: a tooth count, or two of them exchanged.
    pub sensors_ln_odds: f32,
    /// What an observation in `next_gear` would tell, bit; 0 if none would.
    pub next_bit: f32,
    /// Number of suspects; 0 while nothing slipped.
    pub count: u8,
    /// Place of the gear in which an observation separates the leading suspects best; −1 if none does.
    pub next_gear: i8,
}

/// Bound of the evidence of one gear: ln 1000.
const LN_MOST: f32 = 6.907_755;
/// Bound of the evidence of one value.
const LN_OF_ONE: f32 = 1.0;
/// From here on a gear counts as seen, slipping or not: ln 10.
pub(super) const LN_SEEN: f32 = core::f32::consts::LN_10;
/// Chance that a gear shows the slip of an element that holds it.
const SHOWN: f32 = 0.9;
/// Chance that a gear seems to slip though nothing in it does.
const FALSE: f32 = 0.002;
/// Chance of a wrong sensor against that of one element.
const SENSORS: f32 = 0.05;
/// Of the gears that tell nearly as much as the best one the nearest is taken: load and speed are alike there.
const NEARLY: f32 = 0.8;

impl GearEvidence {
    /// Nothing seen.
    pub const NONE: Self = Self { forward: 0.0, backward: 0.0 };
    /// Surely slipping, as elements do.
    pub const SLIPS: Self = Self { forward: LN_MOST, backward: -LN_MOST };
    /// Surely not slipping.
    pub const HOLDS: Self = Self { forward: -LN_MOST, backward: -LN_MOST };

    /// Takes one value of slip, under drive.
    ///
    /// λ ← λ + w·(s − w/2), each term within ±1, λ within ±ln 1000; backward with −s
    ///
    /// * `slip` — s, n_in − i·n_out over its standard deviation; `wanted` — w, the smallest slip that matters, over the same
    /// * what is not a number adds nothing
    ///
    /// Source: probability ratio of two normal means (Wald's test, from memory of Siegmund, Sequential Analysis).
    ///
    /// ```
    /// use trainwright::live::GearEvidence;
    /// let mut evidence = GearEvidence::NONE;
    /// evidence.add_slip(1.5, 1.0);
    /// assert_eq!(evidence, GearEvidence { forward: 1.0, backward: -1.0 }); // bounded: 1.5 − 0.5, −1.5 − 0.5
    /// ```
    pub fn add_slip(&mut self, slip: f32, wanted: f32) {
        self.forward = with_slip(self.forward, slip, wanted);
        self.backward = with_slip(self.backward, -slip, wanted);
    }

    pub(super) fn slips(self) -> bool {
        self.forward > LN_SEEN || self.backward > LN_SEEN
    }

    fn is_seen(self) -> bool {
        self.slips() || self.forward < -LN_SEEN
    }

    /// ln of the likelihood of what was seen, if the gear shows forward slip with this chance.
    fn ln_likelihood(self, shown: f32) -> f32 {
        ln(1.0 - shown - FALSE + shown * exp(self.forward) + FALSE * exp(self.backward))
    }
}

/// Evidence for slip in one direction, with one value more.
#[inline(never)]
pub(super) fn with_slip(evidence: f32, slip: f32, wanted: f32) -> f32 {
    let gain = wanted * (slip - 0.5 * wanted);
    let gain = if gain.is_nan() { 0.0 } else { bounded(gain, -LN_OF_ONE, LN_OF_ONE) };
    bounded(evidence + gain, -LN_MOST, LN_MOST)
}

impl LivePlan {
    /// Odds of each element to be the one that slips, from what was seen in all gears.
    ///
    /// ln L_e = Σ ln(1 − p − q + p·exp(λ) + q·exp(λ_b)), p = 0.9·min(1, t/t_s) where e holds the gear, else q = 0.002;
    /// O_e = L_e/Σ L
    ///
    /// * `evidence` — of each gear by its place in the unit's list
    /// * returns [`LiveSuspects`]; none while no gear slips. The next gear is the one whose outcome tells most about the suspects,
    ///   and of those that tell nearly as much the nearest to the gear that slips
    ///
    /// Source: A. Gelman and others, Bayesian Data Analysis, posterior of discrete hypotheses (from memory); T. M. Cover and J. A.
    /// Thomas, mutual information (from memory). Example in the tests: demonstration job J6.
    #[must_use]
    pub fn weigh_suspects(&self, evidence: &[GearEvidence; MAX_LIVE_GEARS]) -> LiveSuspects {
        let mut by_rank = [GearEvidence::NONE; MAX_LIVE_GEARS];
        for (slot, &place) in by_rank.iter_mut().zip(&self.places) {
            let seen = usize::try_from(place).ok().and_then(|place| evidence.get(place));
            *slot = seen.copied().unwrap_or(GearEvidence::NONE);
        }
        weigh(self, &by_rank)
    }

    /// Torque on an element per input torque, in the gear of a rank; 0 where the element does not hold it.
    fn torque_share(&self, rank: usize, element: u8) -> f32 {
        let factor = self.factor(rank as u8, element).abs();
        if factor > 0.0 { 1.0 / factor } else { 0.0 }
    }
}

/// A hypothesis: this element slips; or, with the number of none, the sensors are wrong.
struct Hypothesis {
    element: u8,
    /// Least torque share in the gears that slip.
    slips_at: f32,
    ln_likelihood: f32,
    chance: f32,
}

impl Hypothesis {
    const IMPOSSIBLE: Self =
        Self { element: NO_LIVE_ELEMENT, slips_at: 0.0, ln_likelihood: f32::NEG_INFINITY, chance: 0.0 };

    fn of_element(plan: &LivePlan, evidence: &[GearEvidence], element: u8) -> Self {
        let shares = || (0..evidence.len()).map(|rank| plan.torque_share(rank, element));
        if !shares().any(|share| share > 0.0) {
            return Self { element, ..Self::IMPOSSIBLE };
        }
        let slipping = shares().zip(evidence).filter(|&(share, seen)| share > 0.0 && seen.forward > LN_SEEN);
        let slips_at = slipping.fold(f32::INFINITY, |least, (share, _)| if share < least { share } else { least });
        let mut new = Self { element, slips_at, ..Self::IMPOSSIBLE };
        new.ln_likelihood =
            evidence.iter().enumerate().map(|(rank, seen)| seen.ln_likelihood(new.shown(plan, rank))).sum();
        new
    }

    fn of_sensors(evidence: &[GearEvidence]) -> Self {
        let sum = |of: fn(&GearEvidence) -> f32| -> f32 {
            evidence.iter().map(|seen| ln(1.0 - SHOWN + SHOWN * exp(of(seen)))).sum()
        };
        let (ahead, behind) = (sum(|seen| seen.forward), sum(|seen| seen.backward));
        let most = if ahead > behind { ahead } else { behind };
        let ln_likelihood = most + ln(0.5 * SENSORS * (exp(ahead - most) + exp(behind - most)));
        Self { ln_likelihood, ..Self::IMPOSSIBLE }
    }

    /// Chance that the gear of a rank shows slip.
    fn shown(&self, plan: &LivePlan, rank: usize) -> f32 {
        if self.element == NO_LIVE_ELEMENT {
            return SHOWN;
        }
        let share = plan.torque_share(rank, self.element);
        if share <= 0.0 {
            FALSE
        } else if share < self.slips_at && self.slips_at < f32::INFINITY {
            SHOWN * share / self.slips_at
        } else {
            SHOWN
        }
    }
}

/// As [`LivePlan::weigh_suspects`], with the evidence by rank.
pub(super) fn weigh(plan: &LivePlan, evidence: &[GearEvidence; MAX_LIVE_GEARS]) -> LiveSuspects {
    let mut found = LiveSuspects {
        suspects: [RankedSuspect { element: NO_LIVE_ELEMENT, ln_odds: f32::NEG_INFINITY }; MAX_LIVE_ELEMENTS],
        sensors_ln_odds: f32::NEG_INFINITY,
        next_bit: 0.0,
        count: 0,
        next_gear: GEAR_IN_NONE,
    };
    let evidence = evidence.get(..usize::from(plan.gear_count)).unwrap_or(evidence);
    if !evidence.iter().any(|seen| seen.slips()) {
        return found;
    }
    let mut hypotheses = [const { Hypothesis::IMPOSSIBLE }; MAX_LIVE_ELEMENTS + 1];
    for (slot, element) in hypotheses.iter_mut().zip(0..plan.element_count) {
        *slot = Hypothesis::of_element(plan, evidence, element);
    }
    if let Some(last) = hypotheses.last_mut() {
        *last = Hypothesis::of_sensors(evidence);
    }
    let most = hypotheses
        .iter()
        .fold(f32::NEG_INFINITY, |most, h| if h.ln_likelihood > most { h.ln_likelihood } else { most });
    let total: f32 = hypotheses.iter().map(|h| exp(h.ln_likelihood - most)).sum();
    for h in &mut hypotheses {
        h.chance = exp(h.ln_likelihood - most) / total;
    }
    for (number, h) in hypotheses.iter().enumerate() {
        let others: f32 =
            hypotheses.iter().enumerate().filter(|&(other, _)| other != number).map(|(_, other)| other.chance).sum();
        let ln_odds = ln(h.chance) - ln(if others > f32::MIN_POSITIVE { others } else { f32::MIN_POSITIVE });
        if h.element != NO_LIVE_ELEMENT && h.chance > 0.0 {
            found.insert(RankedSuspect { element: h.element, ln_odds });
        } else if h.element == NO_LIVE_ELEMENT && h.chance > 0.0 {
            found.sensors_ln_odds = ln_odds;
        }
    }

    (found.next_gear, found.next_bit) = next_gear(plan, evidence, &hypotheses);
    found
}

/// Place of the gear that tells most about the hypotheses, or nearly as much and lies nearer; and how much it tells.
fn next_gear(plan: &LivePlan, evidence: &[GearEvidence], hypotheses: &[Hypothesis]) -> (i8, f32) {
    let bits = |rank: usize| -> f32 {
        if evidence.get(rank).is_some_and(|seen| seen.is_seen()) {
            return 0.0;
        }
        let each = || hypotheses.iter().map(|h| (h.chance, h.shown(plan, rank)));
        let shown = each().map(|(chance, shown)| chance * shown).sum();
        entropy_bit(shown) - each().map(|(chance, shown)| chance * entropy_bit(shown)).sum::<f32>()
    };
    let mut slipping = (0, f32::NEG_INFINITY);
    for (rank, seen) in evidence.iter().enumerate() {
        let most = if seen.forward > seen.backward { seen.forward } else { seen.backward };
        if most > slipping.1 {
            slipping = (rank, most);
        }
    }
    let turn = |rank: usize| plan.numbers.get(rank).map_or(0, |number| number.signum());
    let alike = |rank: usize| turn(rank) == turn(slipping.0);
    let most = |of: &dyn Fn(usize) -> bool| -> f32 {
        let told = (0..evidence.len()).filter(|&rank| of(rank)).map(bits);
        told.fold(0.0, |most, bit| if bit > most { bit } else { most })
    };
    // Reverse is tried after a forward gear only where no other forward gear tells, and the other way round.
    let same_turn = most(&alike);
    let (most, any) = if same_turn > LEAST_BIT { (same_turn, false) } else { (most(&|_| true), true) };
    let mut found = (GEAR_IN_NONE, 0.0);
    let mut nearest = f32::INFINITY;
    for rank in 0..evidence.len() {
        let (bit, ratio, from) = (bits(rank), plan.ratio(rank as u8), plan.ratio(slipping.0 as u8));
        let apart = if ratio > from { ratio / from } else { from / ratio };
        if most > LEAST_BIT && bit >= NEARLY * most && apart < nearest && (any || alike(rank)) {
            nearest = apart;
            found = (plan.place(rank as u8), bit);
        }
    }
    found
}

/// A gear that tells less is not worth the drive.
const LEAST_BIT: f32 = 0.05;

/// Entropy of an outcome with this chance.
fn entropy_bit(chance: f32) -> f32 {
    let part = |p: f32| if p > 0.0 { -p * ln(p) * core::f32::consts::LOG2_E } else { 0.0 };
    part(chance) + part(1.0 - chance)
}

impl LiveSuspects {
    /// The suspects that are in use.
    #[must_use]
    pub fn ranked(&self) -> &[RankedSuspect] {
        self.suspects.get(..usize::from(self.count)).unwrap_or_default()
    }

    /// Adds a suspect at its place. No sort of the standard library: those can panic on an inconsistent order.
    fn insert(&mut self, mut suspect: RankedSuspect) {
        for slot in self.suspects.iter_mut().take(self.count.into()) {
            if suspect.ln_odds > slot.ln_odds {
                core::mem::swap(slot, &mut suspect);
            }
        }
        if let Some(slot) = self.suspects.get_mut(usize::from(self.count)) {
            *slot = suspect;
            self.count += 1;
        }
    }
}
