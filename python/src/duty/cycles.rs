//! Cycles and time at level of a history.

use numpy::IntoPyArray;
use pyo3::prelude::*;
use pyo3::types::PyDict;
use trainwright::duty as core;

use super::series;
use crate::class::{class, words};
use crate::error::raise;

words! {
    "residue" ResidueRule = core::ResidueRule { HalfCycles = "half cycles", Repeated = "repeated" }
}

class! {
    /// What was counted in a history.
    "trainwright.duty" CycleCount = core::CycleCount, explained by ["duty.rainflow"] {
        /// Cycles, half ones as halves.
        cycles: f64,
        /// Entries written.
        entries: u32,
        /// Turning points.
        reversals: u32,
        /// Pieces between gaps.
        pieces: u32,
        /// Missing values.
        missing: u32,
        /// Greatest range counted.
        largest_range: f64,
    }
}

class! {
    /// Time of a history outside its bins, and time that nobody knows.
    "trainwright.duty" Residence = core::Residence, explained by ["duty.residence"] {
        /// In the bins together, s.
        inside_s: f64,
        /// Below the first edge, s.
        below_s: f64,
        /// At the last edge or above it, s.
        above_s: f64,
        /// With a missing value, s: neither rest nor use.
        missing_s: f64,
        /// In gaps of the time stamps, s: neither rest nor use.
        gap_s: f64,
        /// Samples with the time of the one before.
        duplicates: u32,
        /// Samples earlier than the one before.
        reversed: u32,
    }
}

/// Cycles of a history by rainflow counting: a `CycleCount`, and a dictionary of arrays `range`, `mean` and `cycles` (1 or 0.5),
/// one entry for each. NaN is a missing value and ends a piece: what happened there is unknown.
///
/// `residue`: turning points that close no cycle are `"half cycles"`, or the history is `"repeated"`.
/// Source: ASTM E1049-85, 5.4.4 and 5.4.5.
///
/// >>> count, cycles = rainflow([-2, 1, -3, 5, -1, 3, -4, 4, -2], residue="half cycles")
/// >>> [(r, float(cycles["cycles"][cycles["range"] == r].sum())) for r in (3, 4, 6, 8, 9)]
/// [(3, 0.5), (4, 1.5), (6, 0.5), (8, 1.0), (9, 0.5)]
#[pyfunction]
#[pyo3(signature = (values, *, residue))]
pub fn rainflow<'py>(
    py: Python<'py>,
    values: Bound<'py, PyAny>,
    residue: ResidueRule,
) -> PyResult<(CycleCount, Bound<'py, PyDict>)> {
    let values = series("values", &values)?;
    let slice = values.as_slice()?;
    let (mut ranges, mut means, mut cycles) = (Vec::new(), Vec::new(), Vec::new());
    let mut stack = vec![0.0; 3 * slice.len() + 12];
    let count = core::rainflow(slice, residue.0, &mut stack, |cycle| {
        ranges.push(cycle.range);
        means.push(cycle.mean);
        cycles.push(cycle.cycles);
        Ok(())
    })
    .map_err(raise)?;
    let columns = PyDict::new(py);
    for (name, column) in [("range", ranges), ("mean", means), ("cycles", cycles)] {
        columns.set_item(name, column.into_pyarray(py))?;
    }
    Ok((CycleCount(count), columns))
}

/// Time that a history spends in each bin: a `Residence` with the time outside the bins and the time that nobody knows, and an
/// array of seconds. A sample stands for the time since the one before it, up to `gap_limit_s`.
/// Source: follows from the definitions (time at level).
///
/// >>> rest, seconds = residence(time_s=[0, 10, 20, 30, 3630], values=[50, 50, 90, 90, 90], edges=[0, 80, 120], gap_limit_s=15)
/// >>> seconds.tolist(), rest.gap_s
/// ([10.0, 20.0], 3600.0)
#[pyfunction]
#[pyo3(signature = (*, time_s, values, edges, gap_limit_s))]
pub fn residence<'py>(
    py: Python<'py>,
    time_s: Bound<'py, PyAny>,
    values: Bound<'py, PyAny>,
    edges: Bound<'py, PyAny>,
    gap_limit_s: f64,
) -> PyResult<(Residence, Bound<'py, PyAny>)> {
    let (time_s, values, edges) = (series("time_s", &time_s)?, series("values", &values)?, series("edges", &edges)?);
    let edges = edges.as_slice()?;
    let mut seconds = vec![0.0; edges.len().saturating_sub(1)];
    let rest = core::residence(time_s.as_slice()?, values.as_slice()?, edges, gap_limit_s, &mut seconds);
    Ok((Residence(rest.map_err(raise)?), seconds.into_pyarray(py).into_any()))
}
