//! Round fits: clearance and interference, cold and hot, pressed bushings, ISO 286 limits, load and leakage.
//!
//! A clearance is bore less shaft, diametral; a negative one is an interference. Sizes are those at 20 °C unless a name says
//! otherwise. Heating a housing or freezing a bushing to fit it burns skin: see [`HAZARDS`].
//!
//! | file | holds |
//! |---|---|
//! | `clearance` | least and greatest clearance of two tolerances with its class; clearance of measured parts, judged |
//! | `warm` | clearance at temperature; a reading of a warm part at 20 °C |
//! | `press` | pressure, closure, hoop stress and retention of a press fit |
//! | `bushing` | a bushing in a housing of another metal: its seat, let-go temperature and running clearance |
//! | `iso` | limits of a tolerance class such as H7 |
//! | `load` | unit load, sliding speed and pv of a bushing |
//! | `leak` | oil through the clearance, and how much more of it when worn |

mod bushing;
mod clearance;
mod iso;
mod leak;
mod load;
mod press;
mod warm;

pub use bushing::{HeldBushing, Metal, PressedBushing, RunningClearance};
pub(crate) use clearance::ROUNDING_MM;
pub use clearance::{Clearance, FitClass, MeasuredClearance, Spread, clearance, measured, toleranced};
pub use iso::{IsoFit, IsoLimits, iso_fit, iso_limits, iso_size};
pub use leak::{Gap, GapLeak, LeakRatio, WornGap, eccentricity_factor};
pub use load::{BushingLoad, bushing_load};
pub use press::{Elastic, PressJoint, Pressed, Retention};
pub use warm::{REFERENCE_C, Size20, WarmClearance, WarmPart, WarmReading, Warmth, warm_clearance};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::HotParts];

/// The cards of this chapter.
pub const CARDS: &[Card] = &[
    clearance::CLEARANCE,
    clearance::TOLERANCED,
    clearance::MEASURED,
    warm::WARM_CLEARANCE,
    warm::SIZE_20C,
    press::PRESSED,
    press::RETENTION,
    bushing::BUSHING_AT,
    bushing::LET_GO,
    bushing::BUSHING_HELD,
    bushing::RUNNING,
    iso::ISO_LIMITS,
    load::BUSHING_LOAD,
    leak::ECCENTRICITY,
    leak::GAP_LEAK,
    leak::LEAK_RATIO,
];
