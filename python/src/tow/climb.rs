//! From the elevations of a drive to pieces of road, and the temperature along them.

use numpy::PyArray1;
use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::tow as core;

use super::heat::HeatNode;
use super::offer::Rig;
use super::pull::Pull;
use crate::class::class;
use crate::error::{answer, raise};

class! {
    /// A piece of road.
    "trainwright.tow" RoadPiece = core::RoadPiece {
        /// Length along the road, m.
        length_m: f64,
        /// Grade, rise over horizontal run, %; negative downhill.
        grade_pct: f64,
        /// Speed asked for, km/h.
        speed_km_h: f64,
    }
}

class! {
    /// What a unit loses beside the efficiency of its gears, and the sump that takes it.
    "trainwright.tow" HeatModel = core::HeatModel {
        /// Drag of open packs, bearings and oil, seen at the input, N·m; 0 where the efficiencies hold it.
        drag_nm: f64,
        /// Gauge pressure of the pump, kPa; 0 where the efficiencies hold it.
        pump_kpa: f64,
        /// Flow of the pump, L/min.
        pump_l_min: f64,
        /// Efficiency of the pump, above 0 to 1.
        pump_efficiency: f64,
        /// The sump.
        node: HeatNode,
        /// Temperature that must not be passed, °C.
        limit_c: f64,
    }
}

class! {
    /// A piece of road as it was driven.
    "trainwright.tow" DrivenPiece = core::DrivenPiece {
        /// Grade, %.
        grade_pct: f64,
        /// Speed that the gear held, km/h.
        speed_km_h: f64,
        /// Place of the gear.
        gear: u32,
        /// Engine speed, 1/min.
        engine_rpm: f64,
        /// Torque at the input, N·m; negative downhill.
        input_nm: f64,
        /// Torque at the output, N·m.
        output_nm: f64,
        /// The same over their ratings, the greater of both.
        use_of_rating: f64,
        /// Heat, kW.
        loss_kw: f64,
        /// Time on the piece, s.
        time_s: f64,
        /// Sump at its end, °C.
        end_c: f64,
        /// Temperature that it goes to on this piece, °C.
        steady_c: f64,
    }
}

class! {
    /// A road of grades as it was driven.
    "trainwright.tow" Climb = core::Climb, explained by ["tow.climb"] {
        /// Length, m.
        distance_m: f64,
        /// Sum of what the pieces rise, m.
        up_m: f64,
        /// Sum of what they fall, m.
        down_m: f64,
        /// Time, s.
        time_s: f64,
        /// Hottest sump, °C.
        peak_c: f64,
        /// Piece at whose end (or, for the first, at whose start) it is hottest.
        peak_piece: u32,
        /// Sump at the end, °C.
        end_c: f64,
        /// Time at which the limit is reached, s; infinite where it is not.
        limit_after_s: f64,
        /// Distance at which it is reached, m; infinite where it is not.
        limit_after_m: f64,
        /// Time above the limit, s.
        over_limit_s: f64,
        /// Heat made, J.
        heat_j: f64,
        /// Work at the wheels, uphill less downhill, J.
        wheel_work_j: f64,
        /// What of it lifted the combination, J; it comes back downhill.
        lift_work_j: f64,
        /// Greatest torque over its rating.
        use_of_rating: f64,
        /// Piece of it.
        use_piece: u32,
    }
}

/// A pull at which the sump comes to rest below its limit.
#[pyclass(frozen, from_py_object, module = "trainwright.tow")]
#[derive(Clone, Debug, PartialEq)]
pub struct CoolPull {
    core: core::CoolPull,
    names: Vec<String>,
}

crate::class::explained!(CoolPull, ["tow.cool_speed"], , []);

#[pymethods]
impl CoolPull {
    /// The pull.
    #[getter]
    fn pull(&self) -> Pull {
        Pull { core: self.core.pull, names: self.names.clone() }
    }

    /// Heat in its gear, kW.
    #[getter]
    fn loss_kw(&self) -> f64 {
        self.core.loss_kw
    }

    /// Temperature that the sump goes to, °C.
    #[getter]
    fn steady_c(&self) -> f64 {
        self.core.steady_c
    }

    /// Steps by which the speed was lowered.
    #[getter]
    fn steps(&self) -> u32 {
        self.core.steps
    }

    /// The fields by name.
    fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let fields = PyDict::new(py);
        fields.set_item("pull", Bound::new(py, self.pull())?.call_method0("as_dict")?)?;
        fields.set_item("loss_kw", self.core.loss_kw)?;
        fields.set_item("steady_c", self.core.steady_c)?;
        fields.set_item("steps", self.core.steps)?;
        Ok(fields)
    }

    fn __eq__(&self, other: &Self) -> bool {
        self == other
    }

    fn __repr__(&self) -> String {
        format!("<cool at {} km/h: {} °C>", self.core.pull.speed_km_h, self.core.steady_c)
    }
}

#[pymethods]
impl Rig {
    /// Temperature of the sump along a road of grades, and the time until a limit: a `Climb`, and a `DrivenPiece` for each
    /// piece. Source: Incropera, lumped capacitance, piece by piece.
    #[pyo3(signature = (heat, pieces, *, start_c))]
    fn climb(&self, heat: HeatModel, pieces: Vec<RoadPiece>, start_c: f64) -> PyResult<(Climb, Vec<DrivenPiece>)> {
        let pieces: Vec<_> = pieces.into_iter().map(|piece| piece.0).collect();
        let mut driven = vec![core::DrivenPiece::NONE; pieces.len()];
        let climb = self.core().climb(heat.into(), start_c, &pieces, &mut driven).map_err(raise)?;
        Ok((climb.into(), driven.into_iter().map(DrivenPiece).collect()))
    }

    /// Largest speed on a long grade at which a gear holds and the sump stays at its limit or below.
    /// Source: steady state of `HeatNode.warmed`.
    #[pyo3(signature = (heat, *, grade_pct, speed_km_h))]
    fn cool_speed(&self, heat: HeatModel, grade_pct: f64, speed_km_h: f64) -> PyResult<CoolPull> {
        let core = self.core().cool_speed(heat.into(), grade_pct, speed_km_h).map_err(raise)?;
        Ok(CoolPull { core, names: self.gear_names() })
    }
}

class! {
    /// Noise of elevations.
    "trainwright.tow" ElevationNoise = core::ElevationNoise {
        /// Standard uncertainty of one elevation against its neighbors far away, m; what all of them share does not matter.
        u_m: f64,
        /// Distance over which the error stays alike, m; 0 where every point errs for itself.
        correlation_m: f64,
    }
}

class! {
    /// What a drive climbs and falls in all.
    "trainwright.tow" TotalClimb = core::TotalClimb, explained by ["tow.total_climb"] {
        /// Sum of the rises, m.
        up_m: f64,
        /// Sum of the falls, m.
        down_m: f64,
        /// Last elevation less the first, m.
        net_m: f64,
        /// Turning points that lie more than the dead band apart.
        turns: u32,
    }
}

/// Elevation and grade along a drive from noisy elevations, as a dictionary of arrays: `distance_m`, `elevation_m`,
/// `grade_pct`, `u_grade_pct`, `points`. The straight line of least squares in a window of `window_m`; the uncertainty of the
/// grade counts errors that stay alike over a distance. Source: Savitzky and Golay, first degree, for uneven steps.
///
/// >>> noise = ElevationNoise(u_m=1, correlation_m=0)
/// >>> smooth([0, 50, 100, 150], [10, 12, 14, 16], window_m=200, noise=noise)["grade_pct"].round(3)
/// array([4.003, 4.003, 4.003, 4.003])
#[pyfunction]
#[pyo3(signature = (distance_m, elevation_m, *, window_m, noise))]
pub fn smooth<'py>(
    py: Python<'py>,
    distance_m: Vec<f64>,
    elevation_m: Vec<f64>,
    window_m: f64,
    noise: ElevationNoise,
) -> PyResult<Bound<'py, PyDict>> {
    let mut points = vec![core::SlopePoint::NONE; distance_m.len()];
    core::smooth(&distance_m, &elevation_m, window_m, noise.into(), &mut points).map_err(raise)?;
    let column = |of: fn(&core::SlopePoint) -> f64| PyArray1::from_iter(py, points.iter().map(of));
    let fields = PyDict::new(py);
    fields.set_item("distance_m", column(|point| point.distance_m))?;
    fields.set_item("elevation_m", column(|point| point.elevation_m))?;
    fields.set_item("grade_pct", column(|point| point.grade_pct))?;
    fields.set_item("u_grade_pct", column(|point| point.u_grade_pct))?;
    fields.set_item("points", PyArray1::from_iter(py, points.iter().map(|point| point.points)))?;
    Ok(fields)
}

/// What a drive climbs and falls in all, without counting noise below the dead band. Source: common practice.
///
/// >>> total_climb([0, 10, 9, 12, 2], dead_band_m=3).up_m
/// 12.0
#[pyfunction]
#[pyo3(signature = (elevation_m, *, dead_band_m))]
pub fn total_climb(elevation_m: Vec<f64>, dead_band_m: f64) -> PyResult<TotalClimb> {
    answer(core::total_climb(&elevation_m, dead_band_m))
}

/// Pieces of road of one length from smoothed elevations; the last may be shorter. Source: definition of the grade.
///
/// >>> [round(piece.grade_pct, 2) for piece in pieces([0, 100, 200], [0, 6, 6], piece_m=100, speed_km_h=60)]
/// [6.01, 0.0]
#[pyfunction]
#[pyo3(signature = (distance_m, elevation_m, *, piece_m, speed_km_h))]
pub fn pieces(distance_m: Vec<f64>, elevation_m: Vec<f64>, piece_m: f64, speed_km_h: f64) -> PyResult<Vec<RoadPiece>> {
    let count = core::pieces(&distance_m, &elevation_m, piece_m, speed_km_h, &mut []).map_err(raise)?;
    let blank = core::RoadPiece { length_m: 0.0, grade_pct: 0.0, speed_km_h: 0.0 };
    let mut found = vec![blank; count as usize];
    core::pieces(&distance_m, &elevation_m, piece_m, speed_km_h, &mut found).map_err(raise)?;
    Ok(found.into_iter().map(RoadPiece).collect())
}
