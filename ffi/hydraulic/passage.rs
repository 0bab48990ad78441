//! What oil passes through: slots, gaps, orifices, regulator valves.

use crate::pointer::{core, put, read, slice};
use crate::status::Status;
use trainwright::fit::Gap;
use trainwright::hydraulic::{self, Metering, Orifice, OrificeFlow, Regulated, Regulator, SlidingGap, Slot, SlotFlow};

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
