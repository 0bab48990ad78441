//! The gear in effect, by likelihood.

use super::MAX_LIVE_GEARS;
use super::plan::LivePlan;
use crate::card::{self, Card, symbol};
use crate::real::single::{exp, greater, lesser, sqrt, whole_i16};

pub(super) const GEAR_CHANCES: Card = Card {
    id: "live.gear_chances",
    purpose: "Chance of each gear, and of none, after each sample of two speeds",
    equation: "L_g ← max(L_g + λ_g, max L − 8); λ_g = c·(1 − 2·f + max(0, 3 − e²/(2·u²))) for the gear whose band holds r, −c for \
        the others, 0 for none; P_g = exp(L_g)/Σ exp(L)",
    symbols: &[
        symbol("r", "speed of the input over that of the output", "1"),
        symbol(
            "f",
            "distance of r from the gear's ratio, over that from the ratio to the end of its band, at most 1",
            "1",
        ),
        symbol("e, u", "slip at the input in that gear and its standard uncertainty", "1/min"),
        symbol("c", "1 where the half band is wider than 4 u, its square less below: a coarse sample says less", "1"),
        symbol("P_g", "result", "1"),
    ],
    range: "bands end at √(i·i') between neighbors; steady noise, white; no chance falls below e⁻⁸ of the greatest, which is what a \
        change of gear costs",
    source: &card::BAYES,
    locator: "recursive Bayesian filter with a floor for a change of state; a mixture of a right ratio and slip within the band",
};

/// No gear.
pub(super) const NO_RANK: u8 = u8::MAX;
/// What a change of gear costs: 8 nats.
const CHANGE: i16 = 8 * NAT;
/// Stands for the floor of no gear when every gear but the leader is at the floor, too.
const STEADY: i16 = -CHANGE - 1;
/// Logarithms are kept in parts of a nat.
const NAT: i16 = 512;
/// What a ratio that fits exactly is worth more than one that only lies in the band.
const EXACT: f32 = 3.0;

/// Log-likelihoods of the gears by rank, and the band that holds the last ratio.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct GearTrack {
    ln: [i16; MAX_LIVE_GEARS],
    ln_none: i16,
    leader: u8,
    near: u8,
    /// Band of the gear `near`: its ends as ratios, and one over the distance of either end from the gear's ratio.
    low: f32,
    high: f32,
    per_below: f32,
    per_above: f32,
}

impl GearTrack {
    pub(super) const NONE: Self = Self {
        ln: [0; MAX_LIVE_GEARS],
        ln_none: 0,
        low: 0.0,
        high: 0.0,
        per_below: 0.0,
        per_above: 0.0,
        near: 0,
        leader: 0,
    };

    /// Forgets the gear.
    pub(super) fn forget(&mut self) {
        (self.ln, self.ln_none, self.leader) = ([0; MAX_LIVE_GEARS], 0, NO_RANK);
    }

    /// Rank of the gear with the greatest chance; [`NO_RANK`] if none has.
    #[inline]
    pub(super) fn leader(&self) -> u8 {
        self.leader
    }

    /// Rank of the gear whose band holds the last ratio.
    pub(super) fn near(&self) -> u8 {
        self.near
    }

    /// Takes a pair of speeds, both above 0, with their variances. Returns the gear whose band holds the ratio.
    #[inline]
    pub(super) fn take(
        &mut self,
        plan: &LivePlan,
        (input, output): (f32, f32),
        (of_input, of_output): (f32, f32),
    ) -> u8 {
        let measured = input / output;
        if !(self.low <= measured && measured < self.high) {
            self.find_band(plan, measured);
        }
        let ratio = plan.ratio(self.near);
        let slip = input - ratio * output;
        let variance = of_input + ratio * ratio * of_output;
        let above = measured > ratio;
        let (away, half) = if above {
            ((measured - ratio) * self.per_above, (self.high - ratio) * output)
        } else {
            ((ratio - measured) * self.per_below, (ratio - self.low) * output)
        };
        let exact = greater(EXACT - slip * slip / (2.0 * variance), 0.0);
        let clear = lesser(half * half / (16.0 * variance), 1.0);
        let parts = |nats: f32| whole_i16(nats * f32::from(NAT));
        let (near, others) = (parts(clear * (1.0 - 2.0 * lesser(away, 1.0) + exact)), -parts(clear));
        if self.ln_none == STEADY && self.leader == self.near && near >= 0 {
            return self.near; // the leader stays at 0, all others at the floor
        }
        let mut greatest = self.ln_none;
        for (rank, ln) in (0_u8..plan.gear_count).zip(&mut self.ln) {
            *ln = ln.saturating_add(if rank == self.near { near } else { others });
            greatest = greatest.max(*ln);
        }
        self.ln_none = self.ln_none.saturating_sub(greatest).max(-CHANGE);
        self.leader = NO_RANK;
        let mut at_floor = 0;
        for (rank, ln) in (0_u8..plan.gear_count).zip(&mut self.ln) {
            *ln = ln.saturating_sub(greatest).max(-CHANGE);
            if *ln == 0 && self.ln_none < 0 {
                self.leader = rank;
            }
            at_floor += u8::from(*ln == -CHANGE);
        }
        if self.ln_none == -CHANGE && at_floor + 1 == plan.gear_count {
            self.ln_none = STEADY;
        }
        self.near
    }

    /// The band that holds a ratio.
    fn find_band(&mut self, plan: &LivePlan, measured: f32) {
        let square = measured * measured;
        let last = plan.gear_count.saturating_sub(1);
        let mut near = 0;
        while near < last && square < plan.ratio(near) * plan.ratio(near + 1) {
            near += 1;
        }
        let ratio = plan.ratio(near);
        // Steps to the neighbors. A gear without one has a band as wide as that toward its other neighbor, a lone one up to
        // a factor of 1.2.
        let toward_next = if near < last { ratio / plan.ratio(near + 1) } else { 1.44 };
        let up = if near > 0 { plan.ratio(near - 1) / ratio } else { toward_next };
        let down = if near < last { toward_next } else { up };
        self.near = near;
        (self.low, self.high) = (ratio / sqrt(down), ratio * sqrt(up));
        (self.per_below, self.per_above) = (1.0 / (ratio - self.low), 1.0 / (self.high - ratio));
    }

    /// Chances by place in the unit's list; the last is that of no gear.
    pub(super) fn chances(&self, plan: &LivePlan) -> [f32; MAX_LIVE_GEARS + 1] {
        let mut chances = [0.0; MAX_LIVE_GEARS + 1];
        let odds = |ln: i16| exp(f32::from(ln) / f32::from(NAT));
        let none = odds(self.ln_none);
        let ranks = || (0..plan.gear_count).zip(&self.ln);
        let sum = ranks().fold(none, |sum, (_, &ln)| sum + odds(ln));
        for (rank, &ln) in ranks() {
            let place = usize::try_from(plan.place(rank)).ok();
            if let Some(chance) = place.and_then(|place| chances.get_mut(place)) {
                *chance = odds(ln) / sum;
            }
        }
        if let Some(chance) = chances.last_mut() {
            *chance = none / sum;
        }
        chances
    }
}
