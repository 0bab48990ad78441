//! Raw values of a bus.

use crate::pointer::{core, known, put, read};
use crate::status::Status;
use trainwright::duty::{BusNetwork, BusRules, BusSignal, BusValue, bus_signal};

/// The signal behind the pointer, its rules looked at first.
unsafe fn signal(signal: *const BusSignal) -> Result<BusSignal, Status> {
    unsafe {
        if !signal.is_null() {
            known(&raw const (*signal).rules, BusRules::Plain as u8 + 1)?;
        }
        read(signal)
    }
}

/// A signal that a screening of duty uses, by its number on its bus.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_bus_signal(network: u8, number: u32, out_signal: *mut BusSignal) -> Status {
    let network = if network == BusNetwork::J1939 as u8 {
        Ok(BusNetwork::J1939)
    } else if network == BusNetwork::Obd as u8 {
        Ok(BusNetwork::Obd)
    } else {
        Err(Status::OutOfRange)
    };
    unsafe { put(out_signal, || core(bus_signal(network?, number))) }
}

/// What a raw value of a bus means: a physical value, or a mark that must not be computed with.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_decode(of: *const BusSignal, raw: u32, out_value: *mut BusValue) -> Status {
    unsafe { put(out_value, || core(signal(of)?.decode(raw))) }
}

/// Whether a value that somebody scaled already is one, or a mark scaled by mistake.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_classify(of: *const BusSignal, value: f64, out_value: *mut BusValue) -> Status {
    unsafe { put(out_value, || core(signal(of)?.classify(value))) }
}

/// Greatest relative error that the steps of a signal put into a value.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_step_error(of: *const BusSignal, value: f64, out_share: *mut f64) -> Status {
    unsafe { put(out_share, || core(signal(of)?.step_error(value))) }
}
