//! Tires: size designations, outer diameter, rolling circumference, load index, speed symbol.

mod diameter;
mod rolling;
mod size;
mod table;
mod text;

pub use diameter::{DiameterBasis, RegulationDiameter};
pub use rolling::{
    DIAGONAL_FACTOR, RADIAL_FACTOR, Rolling, WheelRadii, radii, rolling_by_count, rolling_by_factor, rolling_by_share,
};
pub use size::{Tire, TireKind, TirePlies, TireService};
pub use table::{LoadRange, SpeedSymbol, load_index_kg, load_index_lb};
pub use text::{TireText, parse, parse_lenient};

use crate::card::Card;
use crate::hazard::Hazard;

/// What can hurt someone in the work of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::WrongTire];

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    diameter::REGULATION_DIAMETER,
    diameter::GEOMETRIC_DIAMETER_MM,
    rolling::ROLLING_BY_FACTOR,
    rolling::ROLLING_BY_SHARE,
    rolling::ROLLING_BY_COUNT,
    rolling::RADII,
    table::LOAD_INDEX_KG,
];
