//! Conditions of assembly.

use crate::pointer::{core, known, put, read};
use crate::status::Status;
use trainwright::train::{Assembly, PlanetarySet};

/// Whether a planetary set can be put together: axes, meshing places, room between neighbors. Joins are not looked at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_train_assembly(set: *const PlanetarySet, out_assembly: *mut Assembly) -> Status {
    unsafe {
        put(out_assembly, || {
            if !set.is_null() {
                known(&raw const (*set).kind, 4)?;
            }
            core(read(set)?.assembly())
        })
    }
}
