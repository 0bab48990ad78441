//! Rows as Python hands them over: columns of NumPy or Arrow, borrowed, and whose row each is.

pub mod arrays;
pub mod arrow;
pub mod columns;
pub mod filled;
pub mod keys;

use std::collections::BTreeMap;

use pyo3::{PyErr, PyResult};
use rayon::ThreadPool;

use crate::duty::BusSignal;
use crate::error::refuse;
use columns::Column;
use keys::Keys;

/// What is looked for in the data.
#[derive(Clone, Copy)]
pub struct Wanted<const N: usize> {
    /// Names of the columns of numbers.
    pub columns: &'static [&'static str; N],
    /// Name of the column that says whose row it is.
    pub key: &'static str,
}

impl<const N: usize> Wanted<N> {
    fn named_twice(&self) -> PyErr {
        let key = self.key;
        let message = format!("{key}: the data has a column of this name; leave the argument out, or drop the column");
        refuse("INCONSISTENT", key, message)
    }

    /// The signals of columns that hold the values of a bus, in the order of the columns.
    pub fn signals(
        &self,
        named: Option<BTreeMap<String, BusSignal>>,
        allowed: impl Fn(&str) -> bool,
    ) -> PyResult<[Option<trainwright::duty::BusSignal>; N]> {
        let mut signals = [None; N];
        for (column, signal) in named.unwrap_or_default() {
            let place = self.columns.iter().position(|name| *name == column && allowed(name));
            let slot = place
                .and_then(|place| signals.get_mut(place))
                .ok_or_else(|| refuse("TEXT", "bus", format!("bus: there is no bus column {column:?}")))?;
            *slot = Some(signal.0);
        }
        Ok(signals)
    }
}

/// A batch of rows, borrowed.
pub struct Batch<'a, const N: usize> {
    /// Number of rows.
    pub len: usize,
    /// Columns in the order in which they are wanted.
    pub columns: [Option<Column<'a>>; N],
    /// Whose row each is; none where the data does not say.
    pub keys: Option<Keys<'a>>,
}

impl<const N: usize> Batch<'_, N> {
    /// Mask of the columns that it has.
    pub fn given(&self) -> u32 {
        (0..).zip(&self.columns).filter(|(_, column)| column.is_some()).fold(0, |mask, (bit, _)| mask | 1 << bit)
    }
}

/// Threads of one's own, where their number is given.
pub fn pool(threads: Option<usize>) -> PyResult<Option<ThreadPool>> {
    match threads {
        None => Ok(None),
        Some(0) => Err(refuse("COUNT", "threads", "threads = 0: give 1 or more, or None for all".into())),
        Some(threads) => rayon::ThreadPoolBuilder::new()
            .num_threads(threads)
            .build()
            .map(Some)
            .map_err(|error| refuse("INCONSISTENT", "threads", format!("threads: {error}"))),
    }
}
