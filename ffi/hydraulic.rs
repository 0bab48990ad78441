//! `tw_hydraulic_*`: pump, orifices, valves, line pressure needed and available, cooler flow.

use crate::pointer::{core, known, put, read, slice};
use crate::status::Status;
use crate::train::solved;
use trainwright::clutch::{self, Duty, ElementPack};
use trainwright::fit::Gap;
use trainwright::fluid::Fluid;
use trainwright::hydraulic::{
    self, ChamberDisplacement, CoolerCheck, CoolerLimits, CoolerReading, FlowMargin, GearPressure, InternalGearPump,
    LeastFlow, Metering, NextReading, OilAt, Orifice, OrificeFlow, PatternRule, PressurePoint, PressureReading,
    PressureSuspects, Pump, PumpClearance, PumpDuty, PumpFlow, Regulated, Regulator, SlidingGap, Slot, SlotFlow,
    TimedFlow,
};
use trainwright::judge::{Reading, Rule};
use trainwright::train::State;

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

/// Flow of oil through a narrow slot, one wall of which may move.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_slot_flow(
    slot: *const Slot,
    pressure_drop_kpa: f64,
    viscosity_mpa_s: f64,
    density_kg_m3: f64,
    wall_speed_m_s: f64,
    out_flow: *mut SlotFlow,
) -> Status {
    unsafe {
        put(out_flow, || core(read(slot)?.slot_flow(pressure_drop_kpa, viscosity_mpa_s, density_kg_m3, wall_speed_m_s)))
    }
}

/// Flow along the gap between a bore and a shaft or valve that slides in it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_sliding_gap(
    gap: *const Gap,
    pressure_drop_kpa: f64,
    viscosity_mpa_s: f64,
    density_kg_m3: f64,
    wall_speed_m_s: f64,
    out_flow: *mut SlidingGap,
) -> Status {
    unsafe {
        put(out_flow, || {
            let gap = read(gap)?;
            core(hydraulic::sliding_gap(gap, pressure_drop_kpa, viscosity_mpa_s, density_kg_m3, wall_speed_m_s))
        })
    }
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

/// Flow through an orifice; `turbulent` is false where the discharge of a sharp edge does not hold.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_orifice_flow(
    orifice: *const Orifice,
    pressure_drop_kpa: f64,
    density_kg_m3: f64,
    viscosity_mpa_s: f64,
    out_flow: *mut OrificeFlow,
) -> Status {
    unsafe { put(out_flow, || core(read(orifice)?.orifice_flow(pressure_drop_kpa, density_kg_m3, viscosity_mpa_s))) }
}

/// Pressure, kPa, that an orifice takes at a flow.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_orifice_drop_kpa(
    orifice: *const Orifice,
    flow_l_min: f64,
    density_kg_m3: f64,
    out_drop_kpa: *mut f64,
) -> Status {
    unsafe { put(out_drop_kpa, || core(read(orifice)?.orifice_drop_kpa(flow_l_min, density_kg_m3))) }
}

/// Hole, mm, that lets a flow through at a pressure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_orifice_diameter_mm(
    flow_l_min: f64,
    pressure_drop_kpa: f64,
    density_kg_m3: f64,
    discharge: f64,
    out_diameter_mm: *mut f64,
) -> Status {
    unsafe {
        put(out_diameter_mm, || {
            core(hydraulic::orifice_diameter_mm(flow_l_min, pressure_drop_kpa, density_kg_m3, discharge))
        })
    }
}

/// Effective area, mm^2, of orifices side by side.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_in_parallel_mm2(
    orifices: *const Orifice,
    count: usize,
    out_effective_area_mm2: *mut f64,
) -> Status {
    unsafe { put(out_effective_area_mm2, || core(hydraulic::in_parallel_mm2(slice(orifices, count)?))) }
}

/// Effective area, mm^2, of orifices one after another.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_in_series_mm2(
    orifices: *const Orifice,
    count: usize,
    out_effective_area_mm2: *mut f64,
) -> Status {
    unsafe { put(out_effective_area_mm2, || core(hydraulic::in_series_mm2(slice(orifices, count)?))) }
}

/// Flow, L/min, through an effective area.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_passage_flow_l_min(
    effective_area_mm2: f64,
    pressure_drop_kpa: f64,
    density_kg_m3: f64,
    out_flow_l_min: *mut f64,
) -> Status {
    unsafe {
        put(out_flow_l_min, || {
            core(hydraulic::passage_flow_l_min(effective_area_mm2, pressure_drop_kpa, density_kg_m3))
        })
    }
}

/// Force, N, with which the flow through a metering edge closes its valve.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_flow_force_n(
    metering: *const Metering,
    pressure_drop_kpa: f64,
    out_force_n: *mut f64,
) -> Status {
    unsafe { put(out_force_n, || core(read(metering)?.flow_force_n(pressure_drop_kpa))) }
}

/// Pressure that a regulator valve holds, with the forces on it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_regulated(
    regulator: *const Regulator,
    boost_pressure_kpa: f64,
    out_regulated: *mut Regulated,
) -> Status {
    unsafe { put(out_regulated, || core(read(regulator)?.regulated(boost_pressure_kpa))) }
}

/// Spring force, N, that gives a regulator valve its pressure, at the stroke where it regulates.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_spring_for_n(
    regulator: *const Regulator,
    pressure_kpa: f64,
    boost_pressure_kpa: f64,
    out_spring_n: *mut f64,
) -> Status {
    unsafe { put(out_spring_n, || core(read(regulator)?.spring_for_n(pressure_kpa, boost_pressure_kpa))) }
}

/// Line pressure that a gear needs, against the gauge reading in duty and the most that the control can give (INFINITY where
/// that is not known).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_gear_pressure(
    state: *const State,
    packs: *const ElementPack,
    pack_count: usize,
    duty: *const Duty,
    control_max_kpa: f64,
    out_pressure: *mut GearPressure,
) -> Status {
    unsafe {
        put(out_pressure, || {
            let duty = read(duty)?;
            let review = core(clutch::review(solved(state)?, slice(packs, pack_count)?, duty))?;
            core(hydraulic::gear_pressure(&review, duty.pressure_kpa, control_max_kpa))
        })
    }
}

/// How far each circuit would explain a pattern of pressure readings, the likeliest first. Suspects, not proof.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_suspect_circuits(
    readings: *const PressureReading,
    count: usize,
    elements: u32,
    rule: *const PatternRule,
    out_suspects: *mut PressureSuspects,
) -> Status {
    unsafe {
        put(out_suspects, || {
            for place in 0..if readings.is_null() { 0 } else { count } {
                known(&raw const (*readings.add(place)).at.at_stall, 2)?;
            }
            core(hydraulic::suspect_circuits(slice(readings, count)?, elements, read(rule)?))
        })
    }
}

/// Which of some readings is expected to separate the suspects of these readings best.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_next_reading(
    readings: *const PressureReading,
    count: usize,
    elements: u32,
    rule: *const PatternRule,
    candidates: *const PressurePoint,
    candidate_count: usize,
    out_next: *mut NextReading,
) -> Status {
    unsafe {
        put(out_next, || {
            for place in 0..if readings.is_null() { 0 } else { count } {
                known(&raw const (*readings.add(place)).at.at_stall, 2)?;
            }
            for place in 0..if candidates.is_null() { 0 } else { candidate_count } {
                known(&raw const (*candidates.add(place)).at_stall, 2)?;
            }
            let (readings, candidates) = (slice(readings, count)?, slice(candidates, candidate_count)?);
            let found = core(hydraulic::suspect_circuits(readings, elements, read(rule)?))?;
            core(hydraulic::next_reading(&found, candidates, read(rule)?))
        })
    }
}

/// Flow from a volume and the time in which it ran.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_timed_flow(
    volume_l: *const Reading,
    time_s: *const Reading,
    out_flow: *mut TimedFlow,
) -> Status {
    unsafe { put(out_flow, || core(hydraulic::timed_flow(read(volume_l)?, read(time_s)?))) }
}

/// Flow that the same cooler would pass at another temperature of the fluid.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_flow_at_reference(
    flow_l_min: *const Reading,
    fluid: *const Fluid,
    temp_c: *const Reading,
    reference_c: f64,
    out_flow_l_min: *mut Reading,
) -> Status {
    unsafe {
        put(out_flow_l_min, || {
            core(hydraulic::flow_at_reference(read(flow_l_min)?, &read(fluid)?, read(temp_c)?, reference_c))
        })
    }
}

/// Least flows of a cooler from their table.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_from_flows(
    temperature_c: *const f64,
    least_flow_l_min: *const f64,
    rows: usize,
    out_limits: *mut CoolerLimits,
) -> Status {
    unsafe {
        put(out_limits, || core(CoolerLimits::from_flows(slice(temperature_c, rows)?, slice(least_flow_l_min, rows)?)))
    }
}

/// Least flow of a cooler at a temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_least_flow_at(
    limits: *const CoolerLimits,
    temp_c: f64,
    out_least: *mut LeastFlow,
) -> Status {
    unsafe { put(out_least, || core(read(limits)?.least_flow_at(temp_c))) }
}

/// Whether a cooler passes enough at the temperature that the fluid has.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hydraulic_cooler_check(
    limits: *const CoolerLimits,
    reading: *const CoolerReading,
    rule: *const Rule,
    out_check: *mut CoolerCheck,
) -> Status {
    unsafe { put(out_check, || core(read(limits)?.cooler_check(read(reading)?, read(rule)?))) }
}
