//! `trainwright.hold`: one-way clutches, park lock, thrust bearings, shafts, splines.

mod contact;
mod mesh;
mod one_way;
mod pairs;
mod park;
mod rated;
mod recorded;
mod shaft;
mod spline;
mod thrust;
mod tooth;
mod washer;

pub use contact::{ContactBody, LineContact, LinePressure};
pub use mesh::{AxialThrust, Helical, WheelThrust, axial_thrust, wheel_thrust};
pub use one_way::{
    OneWayDuty, OneWayHold, Ratchet, RatchetIndex, StrutLoad, TakeUp, Wedge, WedgeLoad, locks, one_way_duty, take_up,
};
pub use pairs::{
    Change, HelicalSun, NeedleChange, PackChange, SetPack, ShaftChange, SunChange, change, compare_needles,
    compare_packs, compare_shafts, compare_suns,
};
pub use park::{
    Ejection, FreeRoll, Latch, ParkComparison, ParkGear, ParkHold, ParkLoad, ParkStress, Parked, Pawl, ToothStrength,
    compare_park_gears, grip_nm, park_load, roll_limits_49_cfr_571_114,
};
pub use rated::{
    Comparison, FigureChange, PartComparison, RatedShaft, compare, gear_thrusts, shafts, thrust_race, thrust_washers,
};
pub use recorded::{OneWayPart, ParkLock, one_way_part, park_lock};
pub use shaft::{HollowOverSolid, Shaft, ShaftHold, ShaftLoad, Torsion};
pub use spline::{Spline, SplineLoad};
pub use thrust::{MeanLoad, NeedleCapacity, NeedleHold, NeedleLasts, NeedleThrust, RatingLife, mean_load, rating_life};
pub use tooth::{SpurTooth, ToothBending, form_factor, velocity_factor};
pub use washer::{ThrustWasher, WasherLoad};
