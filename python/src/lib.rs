//! The Python interface. `python/src/<chapter>.rs` mirrors `core/<chapter>.rs`.
use pyo3::prelude::*;

/// The compiled part of trainwright.
#[pymodule]
mod _native {}
