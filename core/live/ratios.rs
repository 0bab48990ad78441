//! What was measured in each gear: its ratio, and whether it slips.

use super::MAX_LIVE_GEARS;
use super::plan::LivePlan;
use super::state::LiveRatio;
use super::suspects::{GearEvidence, LN_SEEN, with_slip};
use super::window::Closed;
use crate::real::single::{greater, sqrt, whole_u16};

/// What the windows of a gear showed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
struct Seen {
    /// Relative difference of the measured ratio from that of the gear, mean of the windows without slip.
    error: f32,
    /// Slip over input speed in the windows with slip, in parts of [`SHARE`]: mean of the first, fading over the last of them.
    slip_share: u16,
    windows: u16,
    slipping: u16,
    /// Evidence in parts of [`PARTS`]: forward and backward.
    evidence: [i8; 2],
}

/// By rank.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct GearRatios {
    seen: [Seen; MAX_LIVE_GEARS],
}

/// Parts in which shares and evidence are kept: small, and finer than either is known.
const SHARE: f32 = 65_535.0;
const PARTS: f32 = 16.0;
/// With more of them for slip a gear counts as slipping.
const PARTS_SEEN: i8 = (LN_SEEN * PARTS) as i8;
/// Windows with slip over which older ones fade.
const FADES: u16 = 32;

impl Seen {
    const NONE: Self = Self { error: 0.0, slip_share: 0, windows: 0, slipping: 0, evidence: [0; 2] };

    fn evidence(&self) -> GearEvidence {
        let [forward, backward] = self.evidence.map(|parts| f32::from(parts) / PARTS);
        GearEvidence { forward, backward }
    }
}

impl GearRatios {
    pub(super) const NONE: Self = Self { seen: [Seen::NONE; MAX_LIVE_GEARS] };

    /// Takes a window of a gear that was good enough; `slips` where it is told.
    pub(super) fn take(&mut self, rank: u8, ratio: f32, closed: &Closed, slips: Option<bool>) {
        let Some(seen) = self.seen.get_mut(usize::from(rank)).filter(|_| closed.good) else { return };
        let turns = ratio * closed.output;
        match slips {
            Some(true) => {
                seen.slipping = seen.slipping.saturating_add(1);
                let mean = f32::from(seen.slip_share);
                let share = SHARE * closed.slip / (turns + closed.slip);
                seen.slip_share = whole_u16(mean + (share - mean) / f32::from(seen.slipping.min(FADES)) + 0.5);
            }
            Some(false) => {
                seen.windows = seen.windows.saturating_add(1);
                seen.error += (closed.slip / turns - seen.error) / f32::from(seen.windows);
            }
            None => {}
        }
    }

    /// Weighs a window as evidence for slip or against it.
    pub(super) fn weigh(&mut self, rank: u8, closed: &Closed, wanted_rpm: f32) {
        let Some(seen) = self.seen.get_mut(usize::from(rank)) else { return };
        let beyond = greater(closed.slip.abs() - closed.bias, 0.0).copysign(closed.slip);
        let (slip, wanted) = (beyond / closed.u, wanted_rpm / closed.u);
        let add =
            |parts: &mut i8, slip| *parts = (with_slip(f32::from(*parts) / PARTS, slip, wanted) * PARTS) as i32 as i8;
        let [forward, backward] = &mut seen.evidence;
        add(forward, slip);
        add(backward, -slip);
    }

    /// A slip begins in a gear: while no other gear slips, what was seen before it speaks neither for nor against any element.
    pub(super) fn slip_begins(&mut self, rank: u8) {
        let slips = |seen: &Seen| seen.evidence.iter().any(|&parts| parts > PARTS_SEEN);
        if (0_u8..).zip(&self.seen).any(|(other, seen)| other != rank && slips(seen)) {
            return;
        }
        for seen in &mut self.seen {
            seen.evidence = [0; 2];
        }
    }

    /// Evidence of each gear by rank.
    pub(super) fn evidence(&self) -> [GearEvidence; MAX_LIVE_GEARS] {
        self.seen.each_ref().map(Seen::evidence)
    }

    /// The ratio of a gear as it was measured.
    pub(super) fn ratio(&self, plan: &LivePlan, rank: u8) -> LiveRatio {
        let seen = self.seen.get(usize::from(rank)).copied().unwrap_or(Seen::NONE);
        let ratio = plan.ratio(rank);
        let (measured, u) = if seen.windows > 0 {
            (ratio * (1.0 + seen.error), ratio * plan.limits.ratio_u_rel / sqrt(f32::from(seen.windows)))
        } else {
            (f32::NAN, f32::NAN)
        };
        LiveRatio {
            ratio: measured,
            u,
            windows: seen.windows.into(),
            slipping: seen.slipping.into(),
            slip_share: if seen.slipping > 0 { f32::from(seen.slip_share) / SHARE } else { f32::NAN },
        }
    }
}
