//! The Python interface. `python/src/<chapter>.rs` mirrors `core/<chapter>.rs`.
//!
//! The module below lists everything that Python sees. `trainwright/<chapter>.py` passes each chapter on.

mod array;
mod card;
mod class;
mod error;
mod judge;
mod quantity;

use pyo3::prelude::*;

/// The compiled part of trainwright.
#[pymodule(gil_used = false)]
mod _native {
    use super::*;

    #[pymodule_export]
    use crate::card::{Card, Source, Symbol, card, cards};
    #[pymodule_export]
    use crate::error::{Error, RangeWarning};
    #[pymodule_export]
    use crate::version;

    /// Readings, limits and the decision between them.
    #[pymodule]
    mod judge {
        #[pymodule_export]
        use crate::judge::{Limits, Reading, chance_inside, normal_cdf};
    }
}

/// The version of the library, `"major.minor.patch"`.
///
/// >>> trainwright.version().count(".")
/// 2
#[pyfunction]
fn version() -> &'static str {
    env!("CARGO_PKG_VERSION")
}
