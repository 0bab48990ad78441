//! What a trailer does to the axles of its truck.

use pyo3::prelude::*;
use trainwright::tow as core;

use crate::array::{Input, Out, map};
use crate::class::class;
use crate::error::answer;
use crate::judge::{Limits, Reading};

class! {
    /// A truck on the scale: loaded, with everybody in it, without its trailer.
    "trainwright.tow" AxleWeights = core::AxleWeights {
        /// Front axle, kg.
        front_kg: Reading,
        /// Rear axle, kg; the sum of both on a tandem.
        rear_kg: Reading,
    }
}

class! {
    /// A loaded trailer.
    ///
    /// >>> from trainwright.judge import Reading
    /// >>> Trailer.by_share(mass_kg=Reading(value=4000, u=20), hitch_share=Reading(value=0.12, u=0.01)).hitch_kg.value
    /// 480.0
    "trainwright.tow" Trailer = core::Trailer {
        /// Mass, kg, weighed uncoupled: what its axles and its coupler or pin carry together.
        mass_kg: Reading,
        /// What rests on the hitch without a weight-distributing hitch, kg.
        hitch_kg: Reading,
    }
}

class! {
    /// Where a truck carries its trailer.
    "trainwright.tow" Levers = core::Levers {
        /// Front axle to rear axle, mm; to the middle of a tandem.
        wheelbase_mm: f64,
        /// Ball or king pin behind the rear axle, mm; negative ahead of it.
        overhang_mm: f64,
    }
}

class! {
    /// A weight-distributing hitch: bars that bend truck and trailer against each other. `Distribution()` is none.
    "trainwright.tow" Distribution = core::Distribution {
        /// Moment of the bars on the truck, nose down, N·m; 0 or more.
        moment_nm: f64 = 0.0,
        /// Ball to the middle of the trailer's axles, mm.
        ball_to_axle_mm: f64 = f64::INFINITY,
    }
}

class! {
    /// What each axle carries with the trailer coupled.
    "trainwright.tow" CombinationLoads = core::CombinationLoads, explained by ["tow.axle_loads"] {
        /// What rests on the hitch, kg.
        hitch_kg: Reading,
        /// Change of the front axle by the trailer, kg; negative where it is lifted.
        front_change_kg: f64,
        /// Change of the rear axle, kg.
        rear_change_kg: f64,
        /// Front axle, kg.
        front_kg: Reading,
        /// Rear axle, kg.
        rear_kg: Reading,
        /// Both: what the truck weighs with the trailer on its hitch, kg.
        truck_kg: Reading,
        /// Axles of the trailer together, kg.
        trailer_axles_kg: Reading,
        /// Truck and trailer, kg.
        combination_kg: Reading,
    }
}

#[pymethods]
impl Trailer {
    /// A trailer of which the share that rests on the hitch is known.
    /// Source: follows from the definitions (share of a mass).
    #[staticmethod]
    #[pyo3(signature = (*, mass_kg, hitch_share))]
    fn by_share(mass_kg: Reading, hitch_share: Reading) -> PyResult<Self> {
        answer(core::Trailer::by_share(mass_kg.into(), hitch_share.into()))
    }
}

/// Hitch loads, kg, that a band of shares allows a trailer. Trade guidance stands in `practice`; the trailer maker's own goes
/// before it. Source: common practice.
///
/// >>> from trainwright import practice
/// >>> from trainwright.judge import Limits
/// >>> share_band_kg(mass_kg=4000, share=Limits(lower=practice.TONGUE_SHARE_LOW, upper=practice.TONGUE_SHARE_HIGH))
/// Limits(lower=400.0, upper=600.0)
#[pyfunction]
#[pyo3(signature = (*, mass_kg, share))]
pub fn share_band_kg(mass_kg: f64, share: Limits) -> PyResult<Limits> {
    answer(core::share_band_kg(mass_kg, share.into()))
}

/// Loads of the axles of a truck and of its trailer from the scale, the hitch load and the levers.
/// Source: follows from the definitions (equilibrium of moments).
///
/// >>> from trainwright.judge import Reading
/// >>> weighed = AxleWeights(front_kg=Reading.exact(1650), rear_kg=Reading.exact(1250))
/// >>> trailer = Trailer(mass_kg=Reading.exact(4000), hitch_kg=Reading.exact(450))
/// >>> loads = axle_loads(weighed, trailer, Levers(wheelbase_mm=3900, overhang_mm=1300))
/// >>> loads.front_kg.value, loads.rear_kg.value
/// (1500.0, 1850.0)
#[pyfunction]
#[pyo3(signature = (weighed, trailer, levers, distribution = None))]
pub fn axle_loads(
    weighed: AxleWeights,
    trailer: Trailer,
    levers: Levers,
    distribution: Option<Distribution>,
) -> PyResult<CombinationLoads> {
    let distribution = distribution.map_or(core::Distribution::NONE, Into::into);
    answer(core::axle_loads(weighed.into(), trailer.into(), levers.into(), distribution))
}

/// Moment, N·m, of a weight-distributing hitch that gives the front axle back a part of what the hitch load lifted off it.
/// Which part is right says the maker of vehicle and hitch. Source: follows from the definitions (`axle_loads` solved).
///
/// >>> levers = Levers(wheelbase_mm=3900, overhang_mm=1300)
/// >>> round(restoring_moment_nm(levers, hitch_kg=450, ball_to_axle_mm=5200, restored_share=0.5))
/// 2295
#[pyfunction]
#[pyo3(signature = (levers, *, hitch_kg, ball_to_axle_mm, restored_share, out = None))]
pub fn restoring_moment_nm<'py>(
    py: Python<'py>,
    levers: Levers,
    hitch_kg: Input<'py>,
    ball_to_axle_mm: Input<'py>,
    restored_share: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("hitch_kg", hitch_kg), ("ball_to_axle_mm", ball_to_axle_mm), ("restored_share", restored_share)];
    map(py, columns, out, |[hitch, to_axle, share]| core::restoring_moment_nm(hitch, levers.0, to_axle, share))
}
