//! `tw_converter_*`: torque converters: characteristic, match with an engine, stall, lock-up slip. A stall test overheats the
//! converter within seconds: only where the vehicle maker allows it.

use crate::pointer::{borrow, core, known, put, read, slice};
use crate::status::Status;
use crate::train::solved;
use trainwright::converter::{
    self, Characteristic, ElementTorques, EngineCurve, EngineToday, FluidCharge, InletAir, LockupSlip, MeasuredStall,
    OperatingPoint, OperatingPoints, SlipLimits, StallInputs, StallPlan, StallRatings, StallSpeed, StallVerdict,
};
use trainwright::judge::Reading;
use trainwright::train::State;

/// Speed ratio: turbine speed over impeller speed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_speed_ratio(impeller_rpm: f64, turbine_rpm: f64, out_ratio: *mut f64) -> Status {
    unsafe { put(out_ratio, || core(converter::speed_ratio(impeller_rpm, turbine_rpm))) }
}

/// Efficiency: speed ratio times torque ratio; above 1 the two contradict each other.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_efficiency(
    speed_ratio: f64,
    torque_ratio: f64,
    out_efficiency: *mut f64,
) -> Status {
    unsafe { put(out_efficiency, || core(converter::efficiency(speed_ratio, torque_ratio))) }
}

/// Capacity factor of the impeller side, 1/min per root of a newton-meter.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_capacity_factor(
    impeller_rpm: f64,
    impeller_nm: f64,
    out_k_rpm_per_sqrt_nm: *mut f64,
) -> Status {
    unsafe { put(out_k_rpm_per_sqrt_nm, || core(converter::capacity_factor(impeller_rpm, impeller_nm))) }
}

/// Torque, N m, that the impeller takes at a speed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_impeller_torque_nm(
    impeller_rpm: f64,
    k_rpm_per_sqrt_nm: f64,
    out_impeller_nm: *mut f64,
) -> Status {
    unsafe { put(out_impeller_nm, || core(converter::impeller_torque_nm(impeller_rpm, k_rpm_per_sqrt_nm))) }
}

/// Capacity factor of the impeller side from one of the output side; not at stall.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_from_output_side(
    k_output_rpm_per_sqrt_nm: f64,
    speed_ratio: f64,
    torque_ratio: f64,
    out_k_rpm_per_sqrt_nm: *mut f64,
) -> Status {
    unsafe {
        put(out_k_rpm_per_sqrt_nm, || {
            core(converter::from_output_side(k_output_rpm_per_sqrt_nm, speed_ratio, torque_ratio))
        })
    }
}

/// Capacity factor of the impeller side from the torque coefficient of T = coefficient density D^5 omega^2.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_from_torque_coefficient(
    torque_coefficient: f64,
    density_kg_m3: f64,
    diameter_mm: f64,
    out_k_rpm_per_sqrt_nm: *mut f64,
) -> Status {
    unsafe {
        put(out_k_rpm_per_sqrt_nm, || {
            core(converter::from_torque_coefficient(torque_coefficient, density_kg_m3, diameter_mm))
        })
    }
}

/// An engine's torque against its speed, from as many speeds (rising) as torques.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_engine_curve(
    speed_rpm: *const f64,
    torque_nm: *const f64,
    points: usize,
    max_rpm: f64,
    out_engine: *mut EngineCurve,
) -> Status {
    unsafe {
        put(out_engine, || core(EngineCurve::from_table(slice(speed_rpm, points)?, slice(torque_nm, points)?, max_rpm)))
    }
}

/// Whether the curve can be used.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_check_engine_curve(engine: *const EngineCurve) -> Status {
    unsafe { put(&mut (), || core(borrow(engine)?.check_engine_curve())) }
}

/// Torque of the engine, N m, at a speed of its curve.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_torque_at_nm(
    engine: *const EngineCurve,
    speed_rpm: f64,
    out_torque_nm: *mut f64,
) -> Status {
    unsafe { put(out_torque_nm, || core(borrow(engine)?.torque_at_nm(speed_rpm))) }
}

/// A characteristic from as many speed ratios (rising) as torque ratios and capacity factors of the impeller side.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_characteristic(
    speed_ratio: *const f64,
    torque_ratio: *const f64,
    k_rpm_per_sqrt_nm: *const f64,
    points: usize,
    out_converter: *mut Characteristic,
) -> Status {
    unsafe {
        put(out_converter, || {
            core(Characteristic::from_table(
                slice(speed_ratio, points)?,
                slice(torque_ratio, points)?,
                slice(k_rpm_per_sqrt_nm, points)?,
            ))
        })
    }
}

/// Whether the characteristic can be one: ratios in range, speed ratios rising, no efficiency above 1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_check_characteristic(converter: *const Characteristic) -> Status {
    unsafe { put(&mut (), || core(borrow(converter)?.check_characteristic())) }
}

/// Torque ratio at a speed ratio of the characteristic.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_torque_ratio_at(
    converter: *const Characteristic,
    speed_ratio: f64,
    out_torque_ratio: *mut f64,
) -> Status {
    unsafe { put(out_torque_ratio, || core(borrow(converter)?.torque_ratio_at(speed_ratio))) }
}

/// Capacity factor of the impeller side, 1/min per root of a newton-meter, at a speed ratio of the characteristic.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_capacity_factor_at(
    converter: *const Characteristic,
    speed_ratio: f64,
    out_k_rpm_per_sqrt_nm: *mut f64,
) -> Status {
    unsafe { put(out_k_rpm_per_sqrt_nm, || core(borrow(converter)?.capacity_factor_at(speed_ratio))) }
}

/// Speed ratio from which the converter no longer multiplies torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_coupling_point(converter: *const Characteristic, out_ratio: *mut f64) -> Status {
    unsafe { put(out_ratio, || core(borrow(converter)?.coupling_point())) }
}

/// Every engine speed at which the engine gives just what the impeller takes, at a turbine speed (0 at stall).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_operating_points(
    engine: *const EngineCurve,
    today: *const EngineToday,
    converter: *const Characteristic,
    turbine_rpm: f64,
    out_points: *mut OperatingPoints,
) -> Status {
    unsafe {
        put(out_points, || {
            core(converter::operating_points(borrow(engine)?, read(today)?, borrow(converter)?, turbine_rpm))
        })
    }
}

/// The one speed at which engine and converter settle, at a turbine speed (0 at stall).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_operating_point(
    engine: *const EngineCurve,
    today: *const EngineToday,
    converter: *const Characteristic,
    turbine_rpm: f64,
    out_point: *mut OperatingPoint,
) -> Status {
    unsafe {
        put(out_point, || {
            core(converter::operating_point(borrow(engine)?, read(today)?, borrow(converter)?, turbine_rpm))
        })
    }
}

/// Whether SAE J1349 tests in such air.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_in_test_range_j1349(air: *const InletAir, out_inside: *mut bool) -> Status {
    unsafe { put(out_inside, || core(read(air)?.in_test_range_j1349())) }
}

/// Torque of a naturally aspirated spark-ignition engine in reference air over that in this air. Not for turbocharged ones.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_air_correction_j1349(air: *const InletAir, out_correction: *mut f64) -> Status {
    unsafe { put(out_correction, || core(converter::air_correction_j1349(read(air)?))) }
}

/// Torque of a naturally aspirated spark-ignition engine in the air of the day over that in the air of its curve.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_air_torque_factor(
    curve: *const InletAir,
    today: *const InletAir,
    out_factor: *mut f64,
) -> Status {
    unsafe { put(out_factor, || core(converter::air_torque_factor(read(curve)?, read(today)?))) }
}

/// Stall speed of an engine against a converter, with its uncertainty.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_stall_speed(
    engine: *const EngineCurve,
    converter: *const Characteristic,
    inputs: *const StallInputs,
    out_stall: *mut StallSpeed,
) -> Status {
    unsafe { put(out_stall, || core(converter::stall_speed(borrow(engine)?, borrow(converter)?, read(inputs)?))) }
}

/// What a measured stall speed says. A side is a suspicion, not proof.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_judge_stall(
    engine: *const EngineCurve,
    converter: *const Characteristic,
    inputs: *const StallInputs,
    measured: *const MeasuredStall,
    out_verdict: *mut StallVerdict,
) -> Status {
    unsafe {
        put(out_verdict, || {
            core(converter::judge_stall(borrow(engine)?, borrow(converter)?, read(inputs)?, read(measured)?))
        })
    }
}

/// Plans a stall test: `allowed` is false where a rating would be passed. No leave to test: that is the vehicle maker's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_plan_stall(
    stall: *const OperatingPoint,
    state: *const State,
    ratings: *const StallRatings,
    charge: *const FluidCharge,
    out_plan: *mut StallPlan,
) -> Status {
    unsafe {
        put(out_plan, || {
            if !stall.is_null() {
                known(&raw const (*stall).stable, 2)?;
            }
            core(converter::plan_stall(borrow(stall)?, solved(state)?, read(ratings)?, read(charge)?))
        })
    }
}

/// Temperature rise, K, of the fluid in the converter during a stall: adiabatic bound.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_rise_k(
    charge: *const FluidCharge,
    heat_kw: f64,
    time_s: f64,
    out_rise_k: *mut f64,
) -> Status {
    unsafe { put(out_rise_k, || core(read(charge)?.rise_k(heat_kw, time_s))) }
}

/// Seconds until the fluid in the converter is as hot as it may be; 0 where it is already.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_heat_s(
    charge: *const FluidCharge,
    heat_kw: f64,
    out_seconds: *mut f64,
) -> Status {
    unsafe { put(out_seconds, || core(read(charge)?.heat_s(heat_kw))) }
}

/// Torque, N m, on each closed element of a gear at a turbine torque.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_element_torques(
    state: *const State,
    turbine_nm: f64,
    out_torques: *mut ElementTorques,
) -> Status {
    unsafe { put(out_torques, || core(converter::element_torques(solved(state)?, turbine_nm))) }
}

/// Slip of a lock-up clutch against the slip that its control aims at and the slip that is a fault.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_converter_lockup_slip(
    engine_rpm: *const Reading,
    turbine_rpm: *const Reading,
    limits: *const SlipLimits,
    out_slip: *mut LockupSlip,
) -> Status {
    unsafe { put(out_slip, || core(converter::lockup_slip(read(engine_rpm)?, read(turbine_rpm)?, read(limits)?))) }
}
