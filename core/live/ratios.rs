//! What was measured in each gear: its ratio, and whether it slips.

use super::MAX_LIVE_GEARS;
use super::event::LiveRatio;
use super::plan::LivePlan;
use super::suspects::GearEvidence;
use super::window::Closed;
use crate::real::single::{greater, sqrt};

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
    #[inline(never)]
    pub(super) fn take(&mut self, rank: u8, ratio: f32, closed: &Closed, slips: Option<bool>) {
        let Some(seen) = self.seen.get_mut(usize::from(rank)).filter(|_| closed.good) else { return };
        let turns = ratio * closed.output;
        match slips {
            Some(true) => {
                seen.slipping = seen.slipping.saturating_add(1);
                let mean = f32::from(seen.slip_share);
                let share = SHARE * closed.slip / (turns + closed.slip);
                seen.slip_share = (mean + (share - mean) / f32::from(seen.slipping.min(FADES)) + 0.5) as u16;
            }
            Some(false) => {
                seen.windows = seen.windows.saturating_add(1);
                seen.error += (closed.slip / turns - seen.error) / f32::from(seen.windows);
            }
            None => {}
        }
    }

    /// Weighs a window as evidence for slip or against it.
    #[inline(never)]
    pub(super) fn weigh(&mut self, rank: u8, closed: &Closed, wanted_rpm: f32) {
        let Some(seen) = self.seen.get_mut(usize::from(rank)) else { return };
        let beyond = greater(closed.slip.abs() - closed.bias, 0.0).copysign(closed.slip);
        let mut evidence = seen.evidence();
        evidence.add_slip(beyond / closed.u, wanted_rpm / closed.u);
        seen.evidence = [evidence.forward, evidence.backward].map(|parts| (parts * PARTS) as i8);
    }

    /// A slip begins in a gear: while no other gear slips, what was seen before it speaks neither for nor against any element.
    pub(super) fn slip_begins(&mut self, rank: u8) {
        let others = || (0_u8..).zip(&self.seen).filter(|&(other, _)| other != rank);
        if others().any(|(_, seen)| seen.evidence().slips()) {
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
