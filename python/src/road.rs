//! `trainwright.road`: shaft speeds, shift points, speedometer, road load, grade, air.

use pyo3::prelude::*;
use trainwright::road as core;

use crate::array::{Input, Out, map, map_class};
use crate::class::{class, columns};
use crate::error::answer;
use crate::judge::{Limits, Reading};
use crate::quantity::Number;

class! {
    /// What lies between the transmission output and the road.
    ///
    /// >>> from trainwright import Reading
    /// >>> line = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=15.1))
    /// >>> line.road_km_h(output_rpm=[0.0, 1500.0]).round(2)
    /// array([ 0.  , 61.98])
    "trainwright.road" Driveline = core::Driveline, checked by positive {
        /// Axle ratio.
        axle_ratio: f64,
        /// Transfer case ratio; 1 without one and in its high range.
        transfer_ratio: f64 = 1.0,
        /// Rolling circumference of the driven tires.
        circumference_mm: Reading,
    }
}

fn positive(line: core::Driveline) -> trainwright::Result<core::Driveline> {
    core::Driveline::new(line.axle_ratio, line.transfer_ratio, line.circumference_mm)
}

class! {
    /// A gear, and the slip between engine and input shaft.
    "trainwright.road" Engaged = core::Engaged {
        /// Input over output speed; negative in reverse.
        gear_ratio: f64,
        /// Engine speed less input speed; 0 with the lock-up clutch closed.
        slip_rpm: f64 = 0.0,
    }
}

class! {
    /// Speeds of one moment, from the road to the engine.
    "trainwright.road" ShaftSpeeds = core::ShaftSpeeds, explained by ["road.speeds_at_road"] {
        /// Road speed, without tire slip.
        road_km_h: f64,
        /// Wheel.
        wheel_rpm: f64,
        /// Transmission output shaft.
        output_rpm: f64,
        /// Transmission input (turbine) shaft.
        input_rpm: f64,
        /// Engine.
        engine_rpm: f64,
        /// Relative standard uncertainty across the tire.
        u_rel: f64,
    }
}

columns! { ShaftSpeeds[6]: road_km_h, wheel_rpm, output_rpm, input_rpm, engine_rpm, u_rel }

#[pymethods]
impl Driveline {
    /// Road speed of an output-shaft speed.
    #[pyo3(signature = (*, output_rpm, out = None))]
    fn road_km_h<'py>(
        &self,
        py: Python<'py>,
        output_rpm: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("output_rpm", output_rpm)], out, |[output_rpm]| self.0.road_km_h(output_rpm))
    }

    /// Output-shaft speed of a road speed.
    #[pyo3(signature = (*, road_km_h, out = None))]
    fn output_rpm<'py>(
        &self,
        py: Python<'py>,
        road_km_h: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map(py, [("road_km_h", road_km_h)], out, |[road_km_h]| self.0.output_rpm(road_km_h))
    }

    /// Every speed from the road to the engine, at a road speed. Arrays give a dictionary of arrays.
    /// Source: follows from the definitions (speeds of a driveline).
    #[pyo3(signature = (engaged, *, road_km_h))]
    fn speeds_at_road<'py>(
        &self,
        py: Python<'py>,
        engaged: Engaged,
        road_km_h: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map_class::<ShaftSpeeds, _, 1, 6>(py, [("road_km_h", road_km_h)], |[v]| self.0.speeds_at_road(engaged.0, v))
    }

    /// Every speed from the road to the engine, at an output-shaft speed. Arrays give a dictionary of arrays.
    #[pyo3(signature = (engaged, *, output_rpm))]
    fn speeds_at_output<'py>(
        &self,
        py: Python<'py>,
        engaged: Engaged,
        output_rpm: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map_class::<ShaftSpeeds, _, 1, 6>(py, [("output_rpm", output_rpm)], |[n]| self.0.speeds_at_output(engaged.0, n))
    }

    /// Every speed from the road to the engine, at an engine speed. Arrays give a dictionary of arrays.
    ///
    /// >>> from trainwright import Reading
    /// >>> line = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
    /// >>> round(line.speeds_at_engine(Engaged(gear_ratio=0.7517), engine_rpm=1600.0).road_km_h, 1)
    /// 88.0
    #[pyo3(signature = (engaged, *, engine_rpm))]
    fn speeds_at_engine<'py>(
        &self,
        py: Python<'py>,
        engaged: Engaged,
        engine_rpm: Input<'py>,
    ) -> PyResult<Bound<'py, PyAny>> {
        map_class::<ShaftSpeeds, _, 1, 6>(py, [("engine_rpm", engine_rpm)], |[n]| self.0.speeds_at_engine(engaged.0, n))
    }

    /// Force of the driven wheels on the road from a torque at the transmission output. Tire grip is not looked at.
    /// Source: follows from the definitions (tractive force).
    #[pyo3(signature = (*, output_torque_nm, efficiency, out = None))]
    fn tractive_force_n<'py>(
        &self,
        py: Python<'py>,
        output_torque_nm: Input<'py>,
        efficiency: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("output_torque_nm", output_torque_nm), ("efficiency", efficiency)];
        map(py, columns, out, |[torque, efficiency]| self.0.tractive_force_n(torque, efficiency))
    }

    /// Torque at the transmission output that a tractive force takes.
    #[pyo3(signature = (*, force_n, efficiency, out = None))]
    fn output_torque_nm<'py>(
        &self,
        py: Python<'py>,
        force_n: Input<'py>,
        efficiency: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let columns = [("force_n", force_n), ("efficiency", efficiency)];
        map(py, columns, out, |[force, efficiency]| self.0.output_torque_nm(force, efficiency))
    }
}

class! {
    /// A shift point before and after a change of tire or axle.
    "trainwright.road" ShiftPoint = core::ShiftPoint, explained by ["road.shift_at_output_speed"] {
        /// Road speed before the change.
        before_km_h: f64,
        /// Output-shaft speed before the change.
        before_rpm: f64,
        /// Road speed after the change.
        after_km_h: f64,
        /// Output-shaft speed after the change.
        after_rpm: f64,
    }
}

columns! { ShiftPoint[4]: before_km_h, before_rpm, after_km_h, after_rpm }

/// The shift point when the controller keeps its output-shaft speed, as it does while it is not reprogrammed.
/// Source: follows from the definitions (speeds of a driveline).
///
/// >>> from trainwright import Reading
/// >>> before = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> after = Driveline(axle_ratio=4.27, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> round(shift_at_output_speed(before, after, output_rpm=1500.0).after_km_h, 2)
/// 51.39
#[pyfunction]
#[pyo3(signature = (before, after, *, output_rpm))]
pub fn shift_at_output_speed<'py>(
    py: Python<'py>,
    before: Driveline,
    after: Driveline,
    output_rpm: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("output_rpm", output_rpm)];
    map_class::<ShiftPoint, _, 1, 4>(py, columns, |[n]| core::shift_at_output_speed(before.0, after.0, n))
}

/// The shift point when the schedule keeps its road speed, as it does once tire and axle are programmed.
#[pyfunction]
#[pyo3(signature = (before, after, *, road_km_h))]
pub fn shift_at_road_speed<'py>(
    py: Python<'py>,
    before: Driveline,
    after: Driveline,
    road_km_h: Input<'py>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("road_km_h", road_km_h)];
    map_class::<ShiftPoint, _, 1, 4>(py, columns, |[v]| core::shift_at_road_speed(before.0, after.0, v))
}

class! {
    /// What the speedometer shows when the programmed driveline is not the fitted one.
    "trainwright.road" Speedometer = core::Speedometer, explained by ["road.speedometer"] {
        /// True over shown speed: above 1 it reads low.
        true_over_shown: f64,
        /// True road speed.
        true_km_h: f64,
        /// Shown speed, with the uncertainty that comes from the fitted tire.
        shown_km_h: Reading,
    }
}

/// Speed shown at a true road speed, for a unit that reads the output shaft and divides by what is programmed.
/// Source: follows from the definitions (speedometer).
///
/// >>> from trainwright import Reading
/// >>> old = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> new = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2703.5, u=16.8))
/// >>> round(speedometer(old, new, true_km_h=100.0).shown_km_h.value, 2)
/// 90.18
#[pyfunction]
#[pyo3(signature = (programmed, fitted, *, true_km_h))]
pub fn speedometer(programmed: Driveline, fitted: Driveline, true_km_h: Number) -> PyResult<Speedometer> {
    answer(core::speedometer(programmed.0, fitted.0, true_km_h.value("true_km_h")?))
}

/// Speeds that a speedometer may show at a true speed. Source: UN Regulation 39, paragraph 5.3.
///
/// >>> limits_un_r39(true_km_h=70.0)
/// Limits(lower=70.0, upper=81.0)
#[pyfunction]
#[pyo3(signature = (*, true_km_h))]
pub fn limits_un_r39(true_km_h: Number) -> PyResult<Limits> {
    answer(core::limits_un_r39(true_km_h.value("true_km_h")?))
}

/// Speeds that the speedometer of a commercial vehicle may show at 80 km/h to 50 mph. Source: 49 CFR 393.82.
///
/// >>> limits_49_cfr_393_82(true_km_h=80.0)
/// Limits(lower=72.0, upper=88.0)
#[pyfunction]
#[pyo3(signature = (*, true_km_h))]
pub fn limits_49_cfr_393_82(true_km_h: Number) -> PyResult<Limits> {
    answer(core::limits_49_cfr_393_82(true_km_h.value("true_km_h")?))
}

class! {
    /// What to program, or to fit, so that speedometer and schedule are right again.
    "trainwright.road" NumbersToProgram = core::NumbersToProgram, explained by ["road.numbers_to_program"] {
        /// Axle ratio to program where only that can be set.
        axle_ratio: f64,
        /// Rolling circumference to program where only that can be set.
        circumference_mm: f64,
        /// The same as revolutions per kilometer.
        rev_per_km: f64,
        /// The same as revolutions per mile.
        rev_per_mile: f64,
        /// Sensor pulses per kilometer of the fitted driveline.
        pulses_per_km: f64,
        /// Sensor pulses per mile of the fitted driveline.
        pulses_per_mile: f64,
        /// Axle ratio to fit, so that what is programmed is right unchanged.
        axle_ratio_to_fit: f64,
        /// Relative standard uncertainty of each, from the fitted tire.
        u_rel: f64,
    }
}

/// The number to program after a change of tire, axle or transfer case.
/// Source: follows from the definitions (speedometer).
///
/// >>> from trainwright import Reading
/// >>> old = Driveline(axle_ratio=3.54, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> new = Driveline(axle_ratio=4.27, circumference_mm=Reading(value=2438.0, u=0.0))
/// >>> round(numbers_to_program(old, new, pulses_per_rev=30).axle_ratio, 2)
/// 4.27
#[pyfunction]
#[pyo3(signature = (programmed, fitted, *, pulses_per_rev))]
pub fn numbers_to_program(programmed: Driveline, fitted: Driveline, pulses_per_rev: f64) -> PyResult<NumbersToProgram> {
    answer(core::numbers_to_program(programmed.0, fitted.0, pulses_per_rev))
}

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

class! {
    /// Air at an altitude.
    "trainwright.road" Air = core::Air, explained by ["road.standard_air"] {
        /// Geopotential altitude.
        geopotential_m: f64,
        /// Temperature.
        temp_c: f64,
        /// Absolute pressure.
        pressure_kpa_abs: f64,
        /// Density.
        density_kg_m3: f64,
    }
}

columns! { Air[4]: geopotential_m, temp_c, pressure_kpa_abs, density_kg_m3 }

/// Air of the standard atmosphere at an altitude of −2000 to 11019 m. Arrays give a dictionary of arrays. Source: ISO 2533.
///
/// >>> round(standard_air(altitude_m=1000.0).density_kg_m3, 4)
/// 1.1117
#[pyfunction]
#[pyo3(signature = (*, altitude_m))]
pub fn standard_air<'py>(py: Python<'py>, altitude_m: Input<'py>) -> PyResult<Bound<'py, PyAny>> {
    map_class::<Air, _, 1, 4>(py, [("altitude_m", altitude_m)], |[altitude]| core::standard_air(altitude))
}

/// Density of dry air at an absolute pressure and a temperature.
/// Source: ISO 2533:1975, clause 2, perfect gas law.
///
/// >>> round(density_of_air(pressure_kpa_abs=101.325, temp_c=15.0), 3)
/// 1.225
#[pyfunction]
#[pyo3(signature = (*, pressure_kpa_abs, temp_c, out = None))]
pub fn density_of_air<'py>(
    py: Python<'py>,
    pressure_kpa_abs: Input<'py>,
    temp_c: Input<'py>,
    out: Option<Out<'py>>,
) -> PyResult<Bound<'py, PyAny>> {
    let columns = [("pressure_kpa_abs", pressure_kpa_abs), ("temp_c", temp_c)];
    map(py, columns, out, |[pressure, temp]| core::density_of_air(pressure, temp))
}
