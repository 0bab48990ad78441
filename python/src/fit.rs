//! `trainwright.fit`: round fits.

mod bushing;
mod iso;
mod leak;
mod press;
mod recorded;
mod sizes;
mod warm;

pub use bushing::{HeldBushing, Metal, PressedBushing, RunningClearance};
pub use iso::{IsoFit, IsoLimits, iso_fit, iso_limits, iso_size};
pub use leak::{BushingLoad, Gap, GapLeak, LeakRatio, WornGap, bushing_load, eccentricity_factor};
pub use press::{Elastic, PressJoint, Pressed, Retention};
pub use recorded::{RecordedFit, fit_of, fits_of};
pub use sizes::{Clearance, MeasuredClearance, Spread, clearance, measured, toleranced};
pub use warm::{Size20, WarmClearance, WarmPart, WarmReading, Warmth, warm_clearance};
