//! Mesh losses and circulating power.

use crate::pointer::{core, named, put, read};
use crate::status::Status;
use crate::train::{made, solved};
use trainwright::train::{Load, Losses, MeshEfficiency, PowerFlow, State, Train};

/// The efficiency from sun to ring of a simple set with its carrier standing, shared evenly by its two meshes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_of_simple_set(sun_to_ring: f64, out_mesh: *mut MeshEfficiency) -> Status {
    unsafe { put(out_mesh, || core(MeshEfficiency::of_simple_set(sun_to_ring))) }
}

/// Power that each member carries and that rolls through each set of a gear, without losses, per unit of input power.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_power_flow(
    train: *const Train,
    state: *const State,
    out_flow: *mut PowerFlow,
) -> Status {
    unsafe { put(out_flow, || core(made(train)?.power_flow(solved(state)?))) }
}

/// Efficiency of a gear with mesh losses, under a load of TW_LOAD_DRIVE or TW_LOAD_COAST.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_losses(
    train: *const Train,
    state: *const State,
    mesh: *const MeshEfficiency,
    load: u8,
    out_losses: *mut Losses,
) -> Status {
    unsafe {
        put(out_losses, || core(made(train)?.losses(solved(state)?, read(mesh)?, named(load, Load::Coast as u8 + 1)?)))
    }
}
