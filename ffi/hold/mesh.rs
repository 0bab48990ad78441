//! Force along the axis from the helix of a planetary set.

use crate::pointer::{core, known, put, read};
use crate::status::Status;
use crate::train::{made, solved};
use trainwright::hold::{AxialThrust, Helical, SetWheel, Wheel, WheelThrust, axial_thrust, wheel_thrust};
use trainwright::train::{State, Train};

/// Force along the axis that a helical sun or ring brings into its thrust bearing.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_axial_thrust(
    torque_nm: f64,
    teeth: u16,
    helical: *const Helical,
    out_thrust: *mut AxialThrust,
) -> Status {
    unsafe { put(out_thrust, || core(axial_thrust(torque_nm, teeth, read(helical)?))) }
}

/// Force along the axis of a wheel of a planetary set in a gear of a train, and its speed against the carrier.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hold_wheel_thrust(
    train: *const Train,
    state: *const State,
    at: *const SetWheel,
    input_torque_nm: f64,
    input_speed_rpm: f64,
    out_thrust: *mut WheelThrust,
) -> Status {
    unsafe {
        put(out_thrust, || {
            if !at.is_null() {
                known(&raw const (*at).wheel, Wheel::Ring as u8 + 1)?;
            }
            core(wheel_thrust(made(train)?, solved(state)?, read(at)?, input_torque_nm, input_speed_rpm))
        })
    }
}
