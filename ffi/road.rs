//! `tw_road_*`: shaft speeds, shift points, speedometer, road load, grade, air. A computed capability is not a rating.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::judge::Limits;
use trainwright::road::{
    self, Air, CoastDown, CoastDownLoad, Combination, Driveline, Engaged, GradeHeld, NumbersToProgram, RoadLoad,
    ShaftSpeeds, ShiftPoint, Speedometer,
};

/// Road speed, km/h, of an output-shaft speed, 1/min.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_road_km_h(
    driveline: *const Driveline,
    output_rpm: f64,
    out_road_km_h: *mut f64,
) -> Status {
    unsafe { put(out_road_km_h, || core(read(driveline)?.road_km_h(output_rpm))) }
}

/// Output-shaft speed, 1/min, of a road speed, km/h.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_output_rpm(
    driveline: *const Driveline,
    road_km_h: f64,
    out_output_rpm: *mut f64,
) -> Status {
    unsafe { put(out_output_rpm, || core(read(driveline)?.output_rpm(road_km_h))) }
}

/// Every speed from the road to the engine, at a road speed, km/h.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_speeds_at_road(
    driveline: *const Driveline,
    engaged: *const Engaged,
    road_km_h: f64,
    out_speeds: *mut ShaftSpeeds,
) -> Status {
    unsafe { put(out_speeds, || core(read(driveline)?.speeds_at_road(read(engaged)?, road_km_h))) }
}

/// Every speed from the road to the engine, at an output-shaft speed, 1/min.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_speeds_at_output(
    driveline: *const Driveline,
    engaged: *const Engaged,
    output_rpm: f64,
    out_speeds: *mut ShaftSpeeds,
) -> Status {
    unsafe { put(out_speeds, || core(read(driveline)?.speeds_at_output(read(engaged)?, output_rpm))) }
}

/// Every speed from the road to the engine, at an engine speed, 1/min.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_speeds_at_engine(
    driveline: *const Driveline,
    engaged: *const Engaged,
    engine_rpm: f64,
    out_speeds: *mut ShaftSpeeds,
) -> Status {
    unsafe { put(out_speeds, || core(read(driveline)?.speeds_at_engine(read(engaged)?, engine_rpm))) }
}

/// A shift point that keeps its output-shaft speed, 1/min, before and after a change of tire or axle.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_shift_at_output_speed(
    before: *const Driveline,
    after: *const Driveline,
    output_rpm: f64,
    out_shift: *mut ShiftPoint,
) -> Status {
    unsafe { put(out_shift, || core(road::shift_at_output_speed(read(before)?, read(after)?, output_rpm))) }
}

/// A shift point that keeps its road speed, km/h, before and after a change of tire or axle.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_shift_at_road_speed(
    before: *const Driveline,
    after: *const Driveline,
    road_km_h: f64,
    out_shift: *mut ShiftPoint,
) -> Status {
    unsafe { put(out_shift, || core(road::shift_at_road_speed(read(before)?, read(after)?, road_km_h))) }
}

/// Speed shown at a true road speed, km/h, when the programmed driveline is not the fitted one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_speedometer(
    programmed: *const Driveline,
    fitted: *const Driveline,
    true_km_h: f64,
    out_speedometer: *mut Speedometer,
) -> Status {
    unsafe { put(out_speedometer, || core(road::speedometer(read(programmed)?, read(fitted)?, true_km_h))) }
}

/// Speeds, km/h, that a speedometer may show at a true speed under UN Regulation 39.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_limits_un_r39(true_km_h: f64, out_limits: *mut Limits) -> Status {
    unsafe { put(out_limits, || core(road::limits_un_r39(true_km_h))) }
}

/// Speeds, km/h, that the speedometer of a commercial vehicle may show at 80 km/h to 50 mph under 49 CFR 393.82.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_limits_49_cfr_393_82(true_km_h: f64, out_limits: *mut Limits) -> Status {
    unsafe { put(out_limits, || core(road::limits_49_cfr_393_82(true_km_h))) }
}

/// What to program, or to fit, after a change of tire, axle or transfer case.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_numbers_to_program(
    programmed: *const Driveline,
    fitted: *const Driveline,
    pulses_per_rev: f64,
    out_numbers: *mut NumbersToProgram,
) -> Status {
    unsafe { put(out_numbers, || core(road::numbers_to_program(read(programmed)?, read(fitted)?, pulses_per_rev))) }
}

/// Tractive force and power that hold a steady speed, km/h, on a grade, %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_road_load(
    combination: *const Combination,
    air_density_kg_m3: f64,
    speed_km_h: f64,
    grade_pct: f64,
    out_load: *mut RoadLoad,
) -> Status {
    unsafe { put(out_load, || core(road::road_load(read(combination)?, air_density_kg_m3, speed_km_h, grade_pct))) }
}

/// The grade on which a tractive force, N, holds a steady speed, km/h. Not a rating: grip, brakes, cooling and the maker's
/// ratings come first.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_grade_held(
    combination: *const Combination,
    air_density_kg_m3: f64,
    speed_km_h: f64,
    force_n: f64,
    out_held: *mut GradeHeld,
) -> Status {
    unsafe { put(out_held, || core(road::grade_held(read(combination)?, air_density_kg_m3, speed_km_h, force_n))) }
}

/// Force of the driven wheels, N, from a torque at the transmission output, N*m; efficiency of axle and transfer case.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_tractive_force_n(
    driveline: *const Driveline,
    output_torque_nm: f64,
    efficiency: f64,
    out_force_n: *mut f64,
) -> Status {
    unsafe { put(out_force_n, || core(read(driveline)?.tractive_force_n(output_torque_nm, efficiency))) }
}

/// Torque at the transmission output, N*m, that a tractive force, N, takes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_output_torque_nm(
    driveline: *const Driveline,
    force_n: f64,
    efficiency: f64,
    out_output_torque_nm: *mut f64,
) -> Status {
    unsafe { put(out_output_torque_nm, || core(read(driveline)?.output_torque_nm(force_n, efficiency))) }
}

/// Coast-down coefficients from lbf, lbf/mph and lbf/mph^2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_from_lbf_mph(
    a_lbf: f64,
    b_lbf_per_mph: f64,
    c_lbf_per_mph2: f64,
    out_coast_down: *mut CoastDown,
) -> Status {
    unsafe { put(out_coast_down, || core(CoastDown::from_lbf_mph(a_lbf, b_lbf_per_mph, c_lbf_per_mph2))) }
}

/// Force and power of a coast-down equation at a speed, km/h, on the level.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_coast_down_load(
    coast_down: *const CoastDown,
    speed_km_h: f64,
    out_load: *mut CoastDownLoad,
) -> Status {
    unsafe { put(out_load, || core(read(coast_down)?.coast_down_load(speed_km_h))) }
}

/// Rolling coefficient of a car on a paved road by its speed, km/h.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_rolling_coefficient_at(speed_km_h: f64, out_rolling_coefficient: *mut f64) -> Status {
    unsafe { put(out_rolling_coefficient, || core(road::rolling_coefficient_at(speed_km_h))) }
}

/// Grade, %, of an angle, degrees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_grade_pct(grade_deg: f64, out_grade_pct: *mut f64) -> Status {
    unsafe { put(out_grade_pct, || core(road::grade_pct(grade_deg))) }
}

/// Angle, degrees, of a grade, %.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_grade_deg(grade_pct: f64, out_grade_deg: *mut f64) -> Status {
    unsafe { put(out_grade_deg, || core(road::grade_deg(grade_pct))) }
}

/// Mean grade, %, of a climb of rise_m over distance_m along the road.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_mean_grade_pct(rise_m: f64, distance_m: f64, out_grade_pct: *mut f64) -> Status {
    unsafe { put(out_grade_pct, || core(road::mean_grade_pct(rise_m, distance_m))) }
}

/// Air of the standard atmosphere at an altitude, m.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_standard_air(altitude_m: f64, out_air: *mut Air) -> Status {
    unsafe { put(out_air, || core(road::standard_air(altitude_m))) }
}

/// Density of dry air, kg/m^3, at an absolute pressure, kPa, and a temperature, degrees Celsius.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_road_density_of_air(
    pressure_kpa_abs: f64,
    temp_c: f64,
    out_density_kg_m3: *mut f64,
) -> Status {
    unsafe { put(out_density_kg_m3, || core(road::density_of_air(pressure_kpa_abs, temp_c))) }
}
