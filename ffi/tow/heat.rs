//! What a unit turns into heat, what that does to its sump, and the cooler that takes it.

use crate::pointer::{core, known, named, put, read};
use crate::status::Status;
use trainwright::tow::{
    self, Arrangement, Cooler, CoolerHeat, CoolerSize, CoolerTask, HeatNode, Running, ThroughFlow, TimeTo, UnitLoss,
    Warmed,
};

/// Number of arrangements.
const ARRANGEMENTS: u8 = Arrangement::Parallel as u8 + 1;

/// Heat that a unit makes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_unit_loss(running: *const Running, out_loss: *mut UnitLoss) -> Status {
    unsafe { put(out_loss, || core(tow::unit_loss(read(running)?))) }
}

/// Heat, kW, of a converter that is not locked.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_converter_loss_kw(
    engine_nm: f64,
    engine_rpm: f64,
    speed_ratio: f64,
    torque_ratio: f64,
    out_loss_kw: *mut f64,
) -> Status {
    unsafe { put(out_loss_kw, || core(tow::converter_loss_kw(engine_nm, engine_rpm, speed_ratio, torque_ratio))) }
}

/// What a loss warms the oil that flows through.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_through_flow_rise(
    power_kw: f64,
    efficiency: f64,
    flow_l_min: f64,
    density_kg_m3: f64,
    specific_heat_j_kg_k: f64,
    out_flow: *mut ThroughFlow,
) -> Status {
    unsafe {
        put(out_flow, || {
            core(tow::through_flow_rise(power_kw, efficiency, flow_l_min, density_kg_m3, specific_heat_j_kg_k))
        })
    }
}

/// Heat that a flow carries for each kelvin, W/K.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_flow_heat_w_k(
    flow_l_min: f64,
    density_kg_m3: f64,
    specific_heat_j_kg_k: f64,
    out_heat_w_k: *mut f64,
) -> Status {
    unsafe { put(out_heat_w_k, || core(tow::flow_heat_w_k(flow_l_min, density_kg_m3, specific_heat_j_kg_k))) }
}

/// Temperature of a sump after a time under a constant loss.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_warmed(
    node: *const HeatNode,
    start_c: f64,
    loss_kw: f64,
    time_s: f64,
    out_warmed: *mut Warmed,
) -> Status {
    unsafe { put(out_warmed, || core(read(node)?.warmed(start_c, loss_kw, time_s))) }
}

/// Time until a sump reaches a limit under a constant loss: the minutes left.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_time_to(
    node: *const HeatNode,
    start_c: f64,
    loss_kw: f64,
    limit_c: f64,
    out_time: *mut TimeTo,
) -> Status {
    unsafe { put(out_time, || core(read(node)?.time_to(start_c, loss_kw, limit_c))) }
}

/// Conductance, W/K, that the cooler must have for the sump to stay at a limit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_cooler_needed_w_k(
    node: *const HeatNode,
    loss_kw: f64,
    limit_c: f64,
    out_conductance_w_k: *mut f64,
) -> Status {
    unsafe { put(out_conductance_w_k, || core(read(node)?.cooler_needed_w_k(loss_kw, limit_c))) }
}

/// Share of the greatest possible heat that a cooler of an arrangement (`TW_ARRANGEMENT_...`) passes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_effectiveness(
    arrangement: u8,
    transfer_units: f64,
    capacity_ratio: f64,
    out_effectiveness: *mut f64,
) -> Status {
    unsafe {
        put(out_effectiveness, || {
            core(named::<Arrangement>(arrangement, ARRANGEMENTS)?.effectiveness(transfer_units, capacity_ratio))
        })
    }
}

/// Transfer units for an effectiveness.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_transfer_units(
    arrangement: u8,
    effectiveness: f64,
    capacity_ratio: f64,
    out_transfer_units: *mut f64,
) -> Status {
    unsafe {
        put(out_transfer_units, || {
            core(named::<Arrangement>(arrangement, ARRANGEMENTS)?.transfer_units(effectiveness, capacity_ratio))
        })
    }
}

/// Heat that a cooler takes from oil of a temperature.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_cooler_heat(
    cooler: *const Cooler,
    oil_c: f64,
    air_c: f64,
    out_heat: *mut CoolerHeat,
) -> Status {
    unsafe {
        if cooler.is_null() {
            return Status::Null;
        }
        if let Err(status) = known(&raw const (*cooler).arrangement, ARRANGEMENTS) {
            return status;
        }
        put(out_heat, || core(read(cooler)?.cooler_heat(oil_c, air_c)))
    }
}

/// Size of a cooler that brings oil from one temperature to another.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_tow_cooler_size(
    arrangement: u8,
    oil_w_k: f64,
    air_w_k: f64,
    task: *const CoolerTask,
    out_size: *mut CoolerSize,
) -> Status {
    unsafe {
        put(out_size, || {
            let arrangement = named(arrangement, ARRANGEMENTS)?;
            core(tow::cooler_size(arrangement, oil_w_k, air_w_k, read(task)?))
        })
    }
}
