//! `tw_converter_*`: torque converters: characteristic, match with an engine, stall, lock-up slip. A stall test overheats the
//! converter within seconds: only where the vehicle maker allows it.

use crate::pointer::{borrow, core, put, slice};
use crate::status::Status;
use trainwright::converter::{self, Characteristic, EngineCurve};

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
