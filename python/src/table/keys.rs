//! Whose row it is: names of trucks, of units.

use arrow_array::{Array, LargeStringArray, StringArray, StringViewArray};
use arrow_buffer::NullBuffer;
use numpy::ndarray::ArrayView2;
use pyo3::IntoPyObjectExt;
use pyo3::prelude::*;
use std::collections::HashMap;
use std::fmt;
use std::ops::Range;

use super::columns::Values;
use crate::error::refuse;

/// A name: text, or a whole number.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Key {
    /// A whole number.
    Number(i64),
    /// Text.
    Text(String),
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(number) => number.fmt(f),
            Self::Text(text) => f.write_str(text),
        }
    }
}

impl Key {
    /// The key for a Python text or whole number; `column` is what it names.
    pub fn of(object: &Bound<'_, PyAny>, column: &str) -> PyResult<Self> {
        if let Ok(text) = object.extract::<String>() {
            return Ok(Self::Text(text));
        }
        let number = object.extract::<i64>();
        number.map(Self::Number).map_err(|_| refuse("TEXT", column, format!("{column}: give text or a whole number")))
    }

    /// The name as Python has it.
    pub fn object(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
        match self {
            Self::Number(number) => number.into_py_any(py),
            Self::Text(text) => text.into_py_any(py),
        }
    }
}

/// A name as it lies in memory, compared without copying it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum KeyRef<'a> {
    /// A whole number.
    Number(i64),
    /// Text.
    Text(&'a str),
    /// Text of NumPy: code points, filled up with zeros.
    Points(&'a [u32]),
    /// None.
    Missing,
}

impl KeyRef<'_> {
    /// The key; none where the name is missing or is no text.
    pub fn key(self) -> Option<Key> {
        match self {
            Self::Number(number) => Some(Key::Number(number)),
            Self::Text(text) => Some(Key::Text(text.into())),
            Self::Points(points) => {
                let letters = points.iter().take_while(|&&point| point != 0).map(|&point| char::from_u32(point));
                letters.collect::<Option<String>>().map(Key::Text)
            }
            Self::Missing => None,
        }
    }
}

/// The name of each row of a batch.
#[derive(Clone)]
pub enum Keys<'a> {
    /// One for all rows.
    One(&'a Key),
    /// Whole numbers.
    Numbers(Values<'a>, Option<&'a NullBuffer>),
    /// Places in a list of names.
    Listed(Values<'a>, Option<&'a NullBuffer>, &'a [Option<Key>]),
    /// Text of Arrow.
    Utf8(&'a StringArray),
    /// Text of Arrow with long offsets.
    LargeUtf8(&'a LargeStringArray),
    /// Text views of Arrow.
    Utf8View(&'a StringViewArray),
    /// Fixed text of NumPy.
    Points(ArrayView2<'a, u32>),
}

impl<'a> Keys<'a> {
    /// The name of a row.
    #[inline]
    pub fn at(&self, row: usize) -> KeyRef<'_> {
        let present = |nulls: &Option<&NullBuffer>| nulls.is_none_or(|nulls| nulls.is_valid(row));
        match self {
            Self::One(key) => of_key(key),
            Self::Numbers(values, nulls) => match values.whole(row) {
                Some(number) if present(nulls) => KeyRef::Number(number),
                _ => KeyRef::Missing,
            },
            Self::Listed(values, nulls, names) => {
                let place = values.whole(row).filter(|_| present(nulls)).and_then(|place| usize::try_from(place).ok());
                match place.and_then(|place| names.get(place)) {
                    Some(Some(key)) => of_key(key),
                    _ => KeyRef::Missing,
                }
            }
            Self::Utf8(text) => of_text(text.is_valid(row).then(|| text.value(row))),
            Self::LargeUtf8(text) => of_text(text.is_valid(row).then(|| text.value(row))),
            Self::Utf8View(text) => of_text(text.is_valid(row).then(|| text.value(row))),
            Self::Points(points) => {
                let text = (row < points.nrows()).then(|| points.row(row).to_slice());
                text.flatten().map_or(KeyRef::Missing, KeyRef::Points)
            }
        }
    }

    /// The names of these rows and their runs.
    pub fn named(&self, rows: Range<usize>) -> Named<'_> {
        let mut places: HashMap<KeyRef<'_>, usize> = HashMap::new();
        let (mut names, mut runs) = (Vec::new(), Vec::new());
        let mut start = rows.start;
        while start < rows.end {
            let end = self.same_until(start, rows.end);
            let name = self.at(start);
            let place = *places.entry(name).or_insert_with(|| {
                names.push((name, start));
                names.len() - 1
            });
            runs.push((place, start, end));
            start = end;
        }
        Named { names, runs }
    }

    /// Row after the last one from `start` on, below `end`, that has the same name.
    fn same_until(&self, start: usize, end: usize) -> usize {
        /// The first place from which `same` no longer holds.
        fn until(start: usize, end: usize, same: impl Fn(usize) -> bool) -> usize {
            (start + 1..end).find(|&row| !same(row)).unwrap_or(end)
        }
        /// The same for values in a row, with the type of the values known: first by 64, without a branch in them.
        fn equal<T: PartialEq>(view: &numpy::ndarray::ArrayView1<'_, T>, start: usize, end: usize) -> usize {
            match view.as_slice().and_then(|all| all.get(start..end)) {
                Some([first, others @ ..]) => {
                    let all_same = |values: &[T; 64]| values.iter().fold(true, |same, value| same & (value == first));
                    let (by_64, _) = others.as_chunks();
                    let same = 64 * by_64.iter().take_while(|&values| all_same(values)).count();
                    let mut rest = others.iter().skip(same);
                    rest.position(|value| value != first).map_or(end, |place| start + 1 + same + place)
                }
                _ => until(start, end, |row| view.get(row) == view.get(start)),
            }
        }
        match self {
            Self::One(_) => end,
            Self::Numbers(values, None) | Self::Listed(values, None, _) => match values {
                Values::I8(view) => equal(view, start, end),
                Values::I16(view) => equal(view, start, end),
                Values::I32(view) => equal(view, start, end),
                Values::I64(view) => equal(view, start, end),
                Values::U8(view) => equal(view, start, end),
                Values::U16(view) => equal(view, start, end),
                Values::U32(view) => equal(view, start, end),
                Values::U64(view) => equal(view, start, end),
                Values::F64(_) | Values::F32(_) => until(start, end, |row| self.at(row) == self.at(start)),
            },
            _ => {
                let first = self.at(start);
                until(start, end, |row| self.at(row) == first)
            }
        }
    }
}

/// Rows of one name in a row: place of the name, first row, row after the last.
pub type Run = (usize, usize, usize);

/// The names among some rows, and their runs.
pub struct Named<'a> {
    /// Each name once, in the order in which they appear, with its first row.
    pub names: Vec<(KeyRef<'a>, usize)>,
    /// Runs in the order of the rows.
    pub runs: Vec<Run>,
}

/// Whether rows are better sorted by name before they are passed over.
pub fn interleaved(runs: &[Run], names: usize, rows: usize) -> bool {
    runs.len() > rows / 8 && runs.len() > 2 * names
}

/// Rows sorted by name, and where those of each end.
pub fn sorted(runs: &[Run], names: usize, rows: usize) -> (Vec<u32>, Vec<usize>) {
    let mut ends = vec![0; names];
    for &(place, start, end) in runs {
        ends.get_mut(place).into_iter().for_each(|count| *count += end - start);
    }
    let mut sum = 0;
    for end in &mut ends {
        let count = *end;
        *end = sum;
        sum += count;
    }
    let mut order = vec![0; rows];
    for &(place, start, end) in runs {
        if let Some(to) = ends.get_mut(place) {
            for row in start..end {
                order.get_mut(*to).into_iter().for_each(|slot| *slot = row as u32);
                *to += 1;
            }
        }
    }
    (order, ends)
}

fn of_key(key: &Key) -> KeyRef<'_> {
    match key {
        Key::Number(number) => KeyRef::Number(*number),
        Key::Text(text) => KeyRef::Text(text),
    }
}

fn of_text(text: Option<&str>) -> KeyRef<'_> {
    text.map_or(KeyRef::Missing, KeyRef::Text)
}
