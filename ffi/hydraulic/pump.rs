//! Pumps: displacement, flow, margin, clearances.

use crate::pointer::{core, put, read};
use crate::status::Status;
use trainwright::fluid::Fluid;
use trainwright::hydraulic::{
    self, ChamberDisplacement, FlowMargin, InternalGearPump, OilAt, Pump, PumpClearance, PumpDuty, PumpFlow,
};
use trainwright::judge::{Reading, Rule};

/// Displacement, cm3 per turn, of an external gear pump from tip and root diameter.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_external_gear_cm3_rev(
    tip_diameter_mm: f64,
    root_diameter_mm: f64,
    face_mm: f64,
    out_volume_cm3_rev: *mut f64,
) -> Status {
    unsafe {
        put(out_volume_cm3_rev, || core(hydraulic::external_gear_cm3_rev(tip_diameter_mm, root_diameter_mm, face_mm)))
    }
}

/// Displacement, cm3 per turn, of an external gear pump from tip diameter and center distance.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_external_gear_by_centers_cm3_rev(
    tip_diameter_mm: f64,
    center_distance_mm: f64,
    face_mm: f64,
    out_volume_cm3_rev: *mut f64,
) -> Status {
    unsafe {
        put(out_volume_cm3_rev, || {
            core(hydraulic::external_gear_by_centers_cm3_rev(tip_diameter_mm, center_distance_mm, face_mm))
        })
    }
}

/// Displacement of an internal gear pump from the areas of its largest and smallest chamber.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_chamber_displacement(
    pump: *const InternalGearPump,
    out_displacement: *mut ChamberDisplacement,
) -> Status {
    unsafe { put(out_displacement, || core(read(pump)?.chamber_displacement())) }
}

/// Displacement, cm3 per turn, of a vane pump at an eccentricity.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_vane_cm3_rev(
    cam_diameter_mm: f64,
    rotor_diameter_mm: f64,
    eccentricity_mm: f64,
    face_mm: f64,
    out_volume_cm3_rev: *mut f64,
) -> Status {
    unsafe {
        put(out_volume_cm3_rev, || {
            core(hydraulic::vane_cm3_rev(cam_diameter_mm, rotor_diameter_mm, eccentricity_mm, face_mm))
        })
    }
}

/// Displacement, cm3 per turn, of a gear pump by the rule of the trade. Common practice, no source.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_field_rule_cm3_rev(
    bore_diameter_mm: f64,
    across_bores_mm: f64,
    face_mm: f64,
    out_volume_cm3_rev: *mut f64,
) -> Status {
    unsafe {
        put(out_volume_cm3_rev, || core(hydraulic::field_rule_cm3_rev(bore_diameter_mm, across_bores_mm, face_mm)))
    }
}

/// Share of its displacement that a pump delivers.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_volumetric_efficiency(
    delivered_l_min: f64,
    displacement_cm3_rev: f64,
    speed_rpm: f64,
    out_efficiency: *mut f64,
) -> Status {
    unsafe {
        put(out_efficiency, || core(hydraulic::volumetric_efficiency(delivered_l_min, displacement_cm3_rev, speed_rpm)))
    }
}

/// Density and viscosity of a fluid at its temperature, with what an uncertain temperature does to them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_oil_at(
    fluid: *const Fluid,
    temp_c: *const Reading,
    out_oil: *mut OilAt,
) -> Status {
    unsafe { put(out_oil, || core(hydraulic::oil_at(&read(fluid)?, read(temp_c)?))) }
}

/// What a pump delivers against a pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_pump_flow(
    pump: *const Pump,
    speed_rpm: f64,
    pressure_kpa: f64,
    viscosity_mpa_s: f64,
    out_flow: *mut PumpFlow,
) -> Status {
    unsafe { put(out_flow, || core(read(pump)?.pump_flow(speed_rpm, pressure_kpa, viscosity_mpa_s))) }
}

/// Speed, 1/min, below which a pump can no longer hold the pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_least_speed_rpm(
    pump: *const Pump,
    pressure_kpa: f64,
    viscosity_mpa_s: f64,
    demand_l_min: f64,
    out_speed_rpm: *mut f64,
) -> Status {
    unsafe { put(out_speed_rpm, || core(read(pump)?.least_speed_rpm(pressure_kpa, viscosity_mpa_s, demand_l_min))) }
}

/// Whether a pump covers the demand, with its uncertainty. The worst case is a hot idle at the highest pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_flow_margin(
    pump: *const Pump,
    duty: *const PumpDuty,
    rule: *const Rule,
    out_margin: *mut FlowMargin,
) -> Status {
    unsafe { put(out_margin, || core(read(pump)?.flow_margin(read(duty)?, read(rule)?))) }
}

/// Fluid temperature, degC, above which a pump can no longer hold the pressure at a speed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_hottest_c(
    pump: *const Pump,
    fluid: *const Fluid,
    speed_rpm: f64,
    pressure_kpa: f64,
    demand_l_min: f64,
    out_temp_c: *mut f64,
) -> Status {
    unsafe { put(out_temp_c, || core(read(pump)?.hottest_c(&read(fluid)?, speed_rpm, pressure_kpa, demand_l_min))) }
}

/// Whether a clearance of a pump is within its limit, and how many times more it leaks than when new.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_pump_clearance(
    clearance_mm: *const Reading,
    new_mm: *const Reading,
    limit_mm: f64,
    rule: *const Rule,
    out_clearance: *mut PumpClearance,
) -> Status {
    unsafe {
        put(out_clearance, || {
            core(hydraulic::pump_clearance(read(clearance_mm)?, read(new_mm)?, limit_mm, read(rule)?))
        })
    }
}
