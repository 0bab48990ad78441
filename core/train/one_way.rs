//! One-way clutches by sign, and every engagement of a train.

use super::state::StateKind;
use super::{Blocks, ElementKind, State, Train};
use crate::error::Result;

/// The direction of the torque at the input.
#[repr(u8)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Load {
    /// No torque: one-way clutches carry nothing.
    None,
    /// The input drives forward.
    Drive,
    /// The vehicle drives the input, which holds back.
    Coast,
}

/// How many engagements fall into each kind of state.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct StateCounts {
    /// States with a ratio.
    pub gear: u32,
    /// Neutral states.
    pub neutral: u32,
    /// States that hold only the input.
    pub input_held: u32,
    /// States that hold only the output.
    pub output_held: u32,
    /// States that hold both.
    pub tied_up: u32,
}

/// What changes between two engagements. One element released and one applied is a single transition.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Swap {
    /// Mask of the elements to release.
    pub released: u32,
    /// Mask of the elements to apply.
    pub applied: u32,
}

impl Swap {
    /// From one mask of closed elements to another.
    #[must_use]
    pub fn between(from: u32, to: u32) -> Self {
        Self { released: from & !to, applied: to & !from }
    }

    /// Whether at most one element is released and at most one applied.
    #[must_use]
    pub fn is_single(self) -> bool {
        self.released.count_ones() <= 1 && self.applied.count_ones() <= 1
    }
}

impl Train {
    /// Mask of the one-way clutches.
    #[must_use]
    pub fn one_way_mask(&self) -> u32 {
        self.numbered().filter(|(_, element)| element.kind == ElementKind::OneWay).fold(0, |mask, (bit, _)| mask | bit)
    }

    /// Mask of the elements that someone closes: all but the one-way clutches.
    #[must_use]
    pub fn applied_mask(&self) -> u32 {
        self.numbered().fold(0, |mask, (bit, _)| mask | bit) & !self.one_way_mask()
    }

    /// Solves the engagement with the one-way clutches held or overrunning as the load makes them.
    ///
    /// A one-way clutch holds if it then carries torque in the sense that it blocks, and overruns if its slip lies in the
    /// free sense. The combination with the fewest holding wins: a one-way clutch beside a closed brake carries nothing.
    /// Where no combination carries the input torque, all stay open.
    ///
    /// * `closed` — mask of the closed elements; `load` — direction of the input torque
    /// * returns the [`State`]; its `closed` tells which one-way clutches hold
    /// * errors: as [`Train::solve`]
    ///
    /// Source: definition of a one-way clutch as a unilateral constraint (derived).
    pub fn resolve(&self, closed: u32, load: Load) -> Result<State> {
        State::filled(|state| self.resolve_into(closed, load, state))
    }

    /// As [`Train::resolve`], into a state that the caller has: for a small stack. After an error it means nothing.
    pub fn resolve_into(&self, closed: u32, load: Load, state: &mut State) -> Result<()> {
        self.solve_into(closed, state)?;
        let torque_sign = match load {
            Load::None => return Ok(()),
            Load::Drive => 1,
            Load::Coast => -1,
        };
        let open = self.one_way_mask() & !closed;
        if open == 0 || self.one_ways_agree(state, closed, torque_sign) {
            return Ok(());
        }
        for count in 1..=open.count_ones() {
            for holding in subsets(open).filter(|holding| holding.count_ones() == count) {
                self.solve_into(closed | holding, state)?;
                if self.one_ways_agree(state, closed, torque_sign) {
                    return Ok(());
                }
            }
        }
        self.solve_into(closed, state)
    }

    /// Whether the state carries the input torque and no one-way clutch outside `applied` contradicts its sense.
    fn one_ways_agree(&self, state: &State, applied: u32, torque_sign: i64) -> bool {
        state.carries_torque()
            && self.numbered().zip(state.slips.iter().zip(&state.shares)).all(|((bit, element), (slip, share))| {
                let free = match element.blocks {
                    Blocks::Neither => return true,
                    Blocks::Reverse => 1,
                    Blocks::Forward => -1,
                };
                if applied & bit != 0 {
                    true
                } else if state.closed & bit != 0 {
                    share.signum() * torque_sign == free
                } else {
                    slip.signum() * free >= 0
                }
            })
    }

    /// Every combination of the elements that someone closes, as masks, starting with none closed.
    pub fn engagements(&self) -> impl Iterator<Item = u32> + use<> {
        subsets(self.applied_mask())
    }

    /// The combination after this one in [`Train::engagements`]; the first after 0. None after the last.
    #[must_use]
    pub fn next_engagement(&self, closed: u32) -> Option<u32> {
        next_subset(self.applied_mask(), closed)
    }

    /// Counts the kinds of state over all [`Train::engagements`].
    pub fn state_counts(&self, load: Load) -> Result<StateCounts> {
        let mut counts = StateCounts::default();
        for closed in self.engagements() {
            *match self.resolve(closed, load)?.kind {
                StateKind::Gear => &mut counts.gear,
                StateKind::Neutral => &mut counts.neutral,
                StateKind::InputHeld => &mut counts.input_held,
                StateKind::OutputHeld => &mut counts.output_held,
                StateKind::TiedUp => &mut counts.tied_up,
            } += 1;
        }
        Ok(counts)
    }
}

/// All subsets of a mask in rising order.
fn subsets(mask: u32) -> impl Iterator<Item = u32> {
    core::iter::successors(Some(0), move |&subset| next_subset(mask, subset))
}

fn next_subset(mask: u32, subset: u32) -> Option<u32> {
    let next = subset.wrapping_sub(mask) & mask;
    (next != 0).then_some(next)
}
