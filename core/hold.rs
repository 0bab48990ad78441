//! What holds: one-way clutches, park gear and pawl, thrust bearings, bushings, shafts, splines; capacity against demand.
//!
//! A computed capacity is not a rating. A park lock is never the only means of holding a vehicle: parking brake first, then
//! Park, wheels chocked. See [`HAZARDS`].
//!
//! | file | holds |
//! |---|---|
//! | `contact` | line contact of two bodies: pressure, half width, shear below the surface |
//! | `tooth` | bending of a spur tooth |
//! | `one_way` | what the train asks of a one-way clutch in each gear; how it takes up |
//! | `wedge`, `ratchet` | one-way clutches with rollers or sprags; with struts and notches |
//! | `park_load`, `park` | what a vehicle on a grade asks of a park gear; the teeth of the park gear |
//! | `roll`, `pawl` | how far the vehicle rolls before it is held; pushing out, tip and engagement of the pawl |
//! | `thrust` | needle thrust bearings: capacity, what they hold, how long they last |
//! | `rating_life` | life of a bearing, mean load of a duty |
//! | `washer` | thrust washers |
//! | `mesh` | force along the axis from the helix of a planetary set |
//! | `shaft` | solid and hollow shafts in torsion |
//! | `spline` | splines, with the share of their teeth that carry |
//! | `compare` | two variants of a part: what the change buys, what it costs |

mod compare;
mod contact;
mod mesh;
mod one_way;
mod park;
mod park_load;
mod pawl;
mod ratchet;
mod rating_life;
mod roll;
mod shaft;
mod spline;
mod thrust;
mod tooth;
mod washer;
mod wedge;

pub use compare::{
    Better, Change, Effect, HelicalSun, NeedleChange, PackChange, SetPack, ShaftChange, SunChange, change,
    compare_needles, compare_packs, compare_shafts, compare_suns,
};
pub use contact::{ContactBody, LineContact, LinePressure};
pub use mesh::{AxialThrust, Helical, SetWheel, Wheel, WheelThrust, axial_thrust, wheel_thrust};
pub use one_way::{OneWayDuty, OneWayHold, OneWayRole, TakeUp, one_way_duty, take_up};
pub use park::{ParkComparison, ParkGear, ParkHold, ParkStress, ToothStrength, compare_park_gears};
pub use park_load::{ParkLoad, Parked, park_load};
pub use pawl::{Ejection, Latch, Pawl};
pub use ratchet::{Ratchet, RatchetIndex, StrutLoad};
pub use rating_life::{BALL_EXPONENT, LoadStage, MeanLoad, ROLLER_EXPONENT, RatingLife, mean_load, rating_life};
pub use roll::{FreeRoll, grip_nm, roll_limits_49_cfr_571_114};
pub use shaft::{HollowOverSolid, Shaft, ShaftHold, ShaftLoad, Torsion};
pub use spline::{Spline, SplineLoad};
pub use thrust::{NeedleCapacity, NeedleHold, NeedleLasts, NeedleThrust};
pub use tooth::{SpurTooth, ToothBending, ToothFinish, form_factor, velocity_factor};
pub use washer::{ThrustWasher, WasherLoad};
pub use wedge::{Wedge, WedgeLoad, locks};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] = &[Hazard::ParkLock, Hazard::RollAway, Hazard::Overspeed, Hazard::RaisedPressure];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[
    contact::PRESSED,
    contact::FORCE_AT_PEAK,
    thrust::NEEDLE_CAPACITY,
    rating_life::RATING_LIFE,
    rating_life::MEAN_LOAD,
    thrust::NEEDLE_HOLD,
    thrust::NEEDLE_LASTS,
    washer::WASHER_LOAD,
    mesh::AXIAL_THRUST,
    mesh::WHEEL_THRUST,
    shaft::TORSION,
    shaft::TWIST,
    shaft::HOLLOW_OVER_SOLID,
    shaft::SHAFT_HOLD,
    spline::SPLINE_LOAD,
    compare::CHANGE,
    compare::COMPARE_NEEDLES,
    compare::COMPARE_SHAFTS,
    compare::COMPARE_PACKS,
    compare::COMPARE_SUNS,
    tooth::FORM_FACTOR,
    tooth::VELOCITY_FACTOR,
    tooth::TOOTH_BENDING,
    wedge::WEDGED,
    wedge::WEDGE_CAPACITY,
    wedge::LOCKS,
    ratchet::RATCHET_INDEX,
    ratchet::STRUT_LOAD,
    ratchet::STRUT_CAPACITY,
    wedge::WEDGE_HOLD,
    ratchet::STRUT_HOLD,
    one_way::TAKE_UP,
    one_way::ONE_WAY_DUTY,
    park_load::PARK_LOAD,
    park::TOOTH_STRESS,
    park::LARGEST_GRADE,
    park::PARK_HOLD,
    roll::FREE_ROLL,
    park::COMPARE,
    roll::WINDOW,
    pawl::EJECTION,
    pawl::TIP_PRESSURE,
    pawl::LATCH,
    roll::GRIP,
    roll::ROLL_LIMIT,
];
