//! Road load and grade.

use pyo3::prelude::*;
use trainwright::road as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;

class! {
    /// A truck with its trailer, as far as the road feels it.
    "trainwright.road" Combination = core::Combination {
        /// Mass, load included.
        mass_kg: f64,
        /// Rolling resistance over weight.
        rolling_coefficient: f64,
        /// Drag coefficient times frontal area, m².
        drag_area_m2: f64,
    }
}

class! {
    /// Steady road load and what it is made of.
    "trainwright.road" RoadLoad = core::RoadLoad, explained by ["road.road_load"] {
        /// Angle of the grade.
        grade_deg: f64,
        /// Rolling resistance.
        rolling_n: f64,
        /// Air drag.
        aero_n: f64,
        /// Share of the weight along the grade; negative downhill.
        grade_n: f64,
        /// Sum.
        total_n: f64,
        /// Power at the wheels.
        power_kw: f64,
    }
}

columns! { RoadLoad[6]: grade_deg, rolling_n, aero_n, grade_n, total_n, power_kw }

/// Tractive force and power that hold a steady speed on a grade, with the exact sine. Arrays give a dictionary of arrays.
///
/// A capability computed from this is no towing rating: the vehicle maker's ratings stand.
/// Source: SAE J1263, road load equation.
///
/// >>> truck = Combination(mass_kg=4500.0, rolling_coefficient=0.0, drag_area_m2=0.0)
/// >>> round(road_load(truck, air_density_kg_m3=1.2, speed_km_h=50.0, grade_pct=5.0).grade_n, 1)
/// 2203.7
#[pyfunction]
#[pyo3(signature = (combination, *, air_density_kg_m3, speed_km_h, grade_pct))]
pub fn road_load<'py>(
    py: Python<'py>,
    combination: Combination,
    air_density_kg_m3: Input<'py>,
    speed_km_h: Input<'py>,
    grade_pct: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("air_density_kg_m3", air_density_kg_m3), ("speed_km_h", speed_km_h), ("grade_pct", grade_pct)];
    map_class::<RoadLoad, _, 3, 6>(py, columns, |[air, speed, grade]| core::road_load(combination.0, air, speed, grade))
}

class! {
    /// The grade that a tractive force holds, and what it is made of.
    "trainwright.road" GradeHeld = core::GradeHeld, explained by ["road.grade_held"] {
        /// Air drag.
        aero_n: f64,
        /// Force left over for rolling and grade.
        left_n: f64,
        /// The same over the weight.
        left_over_weight: f64,
        /// Angle of the grade; negative when the force does not hold the speed on the level.
        grade_deg: f64,
        /// The same as rise over horizontal run.
        grade_pct: f64,
    }
}

columns! { GradeHeld[5]: aero_n, left_n, left_over_weight, grade_deg, grade_pct }

/// The grade on which a tractive force holds a steady speed. Arrays give a dictionary of arrays.
///
/// What the engine can hold is not what the truck may pull: grip, brakes, cooling and the maker's ratings come first.
/// Source: follows from the definitions (road load solved for the grade).
#[pyfunction]
#[pyo3(signature = (combination, *, air_density_kg_m3, speed_km_h, force_n))]
pub fn grade_held<'py>(
    py: Python<'py>,
    combination: Combination,
    air_density_kg_m3: Input<'py>,
    speed_km_h: Input<'py>,
    force_n: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("air_density_kg_m3", air_density_kg_m3), ("speed_km_h", speed_km_h), ("force_n", force_n)];
    map_class::<GradeHeld, _, 3, 5>(py, columns, |[air, speed, force]| {
        core::grade_held(combination.0, air, speed, force)
    })
}

class! {
    /// Road load of a coast-down test: F = A + B·v + C·v².
    "trainwright.road" CoastDown = core::CoastDown {
        /// Constant part.
        a_n: f64,
        /// Part per km/h.
        b_n_per_km_h: f64 = 0.0,
        /// Part per (km/h)².
        c_n_per_km_h2: f64 = 0.0,
    }
}

class! {
    /// Force of a coast-down equation at a speed, and what it is made of.
    "trainwright.road" CoastDownLoad = core::CoastDownLoad, explained by ["road.coast_down_load"] {
        /// A.
        constant_n: f64,
        /// B·v.
        linear_n: f64,
        /// C·v².
        square_n: f64,
        /// Sum.
        total_n: f64,
        /// Power at the wheels.
        power_kw: f64,
    }
}

columns! { CoastDownLoad[5]: constant_n, linear_n, square_n, total_n, power_kw }

#[pymethods]
impl CoastDown {
    /// Coefficients as United States test lists give them.
    ///
    /// >>> round(CoastDown.from_lbf_mph(a_lbf=46.31, b_lbf_per_mph=0.0865, c_lbf_per_mph2=0.0148).a_n, 1)
    /// 206.0
    #[staticmethod]
    #[pyo3(signature = (*, a_lbf, b_lbf_per_mph, c_lbf_per_mph2))]
    fn from_lbf_mph(a_lbf: f64, b_lbf_per_mph: f64, c_lbf_per_mph2: f64) -> PyResult<Self> {
        answer(core::CoastDown::from_lbf_mph(a_lbf, b_lbf_per_mph, c_lbf_per_mph2))
    }

    /// Force and power at a speed on the level. Arrays give a dictionary of arrays. Source: 40 CFR 1066.210.
    #[pyo3(signature = (*, speed_km_h))]
    fn coast_down_load<'py>(&self, py: Python<'py>, speed_km_h: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
        map_class::<CoastDownLoad, _, 1, 5>(py, [("speed_km_h", speed_km_h)], |[v]| self.0.coast_down_load(v))
    }
}

/// Rolling coefficient of a car on a paved road by its speed.
/// Source: Mannering and Washburn, rolling resistance.
#[pyfunction]
#[pyo3(signature = (*, speed_km_h, out = None))]
pub fn rolling_coefficient_at<'py>(
    py: Python<'py>,
    speed_km_h: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("speed_km_h", speed_km_h)], out, |[speed]| core::rolling_coefficient_at(speed))
}

/// Grade in percent, rise over horizontal run, of an angle.
/// Source: follows from the definitions (grade).
#[pyfunction]
#[pyo3(signature = (*, grade_deg, out = None))]
pub fn grade_pct<'py>(py: Python<'py>, grade_deg: Input<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("grade_deg", grade_deg)], out, |[angle]| core::grade_pct(angle))
}

/// Angle of a grade in percent.
///
/// >>> grade_deg(grade_pct=[0, 12]).round(2)
/// array([0.  , 6.84])
#[pyfunction]
#[pyo3(signature = (*, grade_pct, out = None))]
pub fn grade_deg<'py>(py: Python<'py>, grade_pct: Input<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
    map(py, [("grade_pct", grade_pct)], out, |[grade]| core::grade_deg(grade))
}

/// Mean grade in percent of a climb. The steepest part decides the torque, not the mean.
#[pyfunction]
#[pyo3(signature = (*, rise_m, distance_m, out = None))]
pub fn mean_grade_pct<'py>(
    py: Python<'py>,
    rise_m: Input<'py>,
    distance_m: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("rise_m", rise_m), ("distance_m", distance_m)];
    map(py, columns, out, |[rise, distance]| core::mean_grade_pct(rise, distance))
}
