//! What the teeth of a set see.

use crate::pointer::{core, put};
use crate::status::Status;
use crate::train::{made, solved};
use trainwright::duty::{MeshDuty, mesh_duty};
use trainwright::train::{State, Train};

/// How often each tooth of a planetary set meets a planet in a gear, and the torque of its wheel; a fraction with `den` 0 is open.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_duty_mesh_duty(
    train: *const Train,
    state: *const State,
    set: u8,
    out_duty: *mut MeshDuty,
) -> Status {
    unsafe { put(out_duty, || core(mesh_duty(made(train)?, solved(state)?, set))) }
}
