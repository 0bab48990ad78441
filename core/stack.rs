//! End play and clutch clearance: worst case and root sum of squares, choice of shim and ring, what to measure first.
//!
//! A [`chain()`] of [`ChainLink`]s is the room that the parts leave; a [`Selection`] chooses the piece that fills it: the shim of
//! an end play, the ring or plate of a clutch pack. [`what_to_measure`] ranks the parts by what measuring them would bring.

mod chain;
mod choose;
mod growth;
mod measure;
mod pack;

pub use chain::{Chain, ChainLink, chain};
pub use choose::{ChoiceRule, PickedPiece, Piece, PieceChoice, PieceOutcome, Selection};
pub use growth::{AxialGrowth, GrownPlay};
pub use measure::{MeasureGain, MeasurePlan, mean_of_steps, what_to_measure};
pub use pack::{ApplyFill, PackHeights, PackRoom, PistonStroke, PistonTravel, apply_fill, room_from_fitted};

use crate::card::Card;

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[
    chain::CHAIN,
    growth::GROWN,
    choose::OUTCOME,
    choose::CHOOSE,
    measure::MEAN_OF_STEPS,
    measure::WHAT_TO_MEASURE,
    pack::ROOM_FROM_FITTED,
    pack::ROOM_FROM_HEIGHTS,
    pack::PISTON_TRAVEL,
    pack::APPLY_FILL,
];
