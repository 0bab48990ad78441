//! Batches from a mapping of NumPy arrays, borrowed where they are numbers in native order.

use numpy::ndarray::{ArrayView1, ArrayView2};
use numpy::{Element, PyArray1, PyArray2, PyArrayMethods, PyReadonlyArray1, PyReadonlyArray2};
use pyo3::prelude::*;
use std::collections::HashMap;
use trainwright::duty::BusSignal;

use super::columns::{Column, Values};
use super::keys::{Key, Keys};
use super::{Batch, Wanted};
use crate::error::refuse;

/// An array that is being read: NumPy keeps others from borrowing it to write.
enum Held<'py> {
    F64(PyReadonlyArray1<'py, f64>),
    F32(PyReadonlyArray1<'py, f32>),
    I8(PyReadonlyArray1<'py, i8>),
    I16(PyReadonlyArray1<'py, i16>),
    I32(PyReadonlyArray1<'py, i32>),
    I64(PyReadonlyArray1<'py, i64>),
    U8(PyReadonlyArray1<'py, u8>),
    U16(PyReadonlyArray1<'py, u16>),
    U32(PyReadonlyArray1<'py, u32>),
    U64(PyReadonlyArray1<'py, u64>),
}

enum HeldKeys<'py> {
    One(Key),
    Numbers(Held<'py>),
    Points(PyReadonlyArray2<'py, u32>),
    Listed(Vec<u32>, Vec<Option<Key>>),
}

/// A mapping of arrays.
pub struct Arrays<'py, const N: usize> {
    columns: [Option<Held<'py>>; N],
    keys: Option<HeldKeys<'py>>,
    len: usize,
}

fn held_as<'py, T: Element>(array: &Bound<'py, PyAny>) -> Option<PyReadonlyArray1<'py, T>> {
    array.cast::<PyArray1<T>>().ok()?.try_readonly().ok()
}

impl<'py> Held<'py> {
    fn of(array: &Bound<'py, PyAny>) -> Option<Self> {
        held_as(array)
            .map(Self::F64)
            .or_else(|| held_as(array).map(Self::F32))
            .or_else(|| held_as(array).map(Self::I64))
            .or_else(|| held_as(array).map(Self::I32))
            .or_else(|| held_as(array).map(Self::I16))
            .or_else(|| held_as(array).map(Self::I8))
            .or_else(|| held_as(array).map(Self::U64))
            .or_else(|| held_as(array).map(Self::U32))
            .or_else(|| held_as(array).map(Self::U16))
            .or_else(|| held_as(array).map(Self::U8))
    }

    fn values(&self) -> Values<'_> {
        match self {
            Self::F64(array) => Values::F64(view(array)),
            Self::F32(array) => Values::F32(view(array)),
            Self::I8(array) => Values::I8(view(array)),
            Self::I16(array) => Values::I16(view(array)),
            Self::I32(array) => Values::I32(view(array)),
            Self::I64(array) => Values::I64(view(array)),
            Self::U8(array) => Values::U8(view(array)),
            Self::U16(array) => Values::U16(view(array)),
            Self::U32(array) => Values::U32(view(array)),
            Self::U64(array) => Values::U64(view(array)),
        }
    }
}

fn view<'a, T: Element>(array: &'a PyReadonlyArray1<'_, T>) -> ArrayView1<'a, T> {
    array.as_array()
}

/// The array of a column, numbers in native order; others are copied.
fn numbers<'py>(name: &str, object: &Bound<'py, PyAny>) -> PyResult<Held<'py>> {
    let numpy = object.py().import("numpy")?;
    let not_numbers = |_| refuse("TEXT", name, format!("column {name}: give an array of numbers, one for each row"));
    let array = numpy.call_method1("asarray", (object,)).map_err(not_numbers)?;
    if array.getattr("flags")?.get_item("ALIGNED")?.extract()?
        && let Some(held) = Held::of(&array)
    {
        return Ok(held);
    }
    let array = numpy.call_method1("array", (&array, numpy.getattr("float64")?)).map_err(not_numbers)?;
    Held::of(&array).ok_or_else(|| {
        refuse(
            "INCONSISTENT",
            name,
            format!("column {name}: give one array of one dimension that nobody is writing to"),
        )
    })
}

impl<'py> HeldKeys<'py> {
    fn of(object: &Bound<'py, PyAny>, name: &str) -> PyResult<Self> {
        let py = object.py();
        let numpy = py.import("numpy")?;
        let array = numpy.call_method1("ascontiguousarray", (object,))?;
        let dtype = array.getattr("dtype")?;
        let kind: String = dtype.getattr("kind")?.extract()?;
        match kind.as_str() {
            "i" | "u" => Ok(Self::Numbers(numbers(name, &array)?)),
            "U" if dtype.getattr("isnative")?.extract()? => {
                let rows = array.len()?;
                let width: usize = dtype.getattr("itemsize")?.extract::<usize>()? / 4;
                let points = array.call_method1("view", (numpy.getattr("uint32")?,))?;
                let points = points.call_method1("reshape", (rows, width))?;
                let points = points.cast::<PyArray2<u32>>()?.try_readonly();
                points
                    .map(Self::Points)
                    .map_err(|_| refuse("INCONSISTENT", name, format!("{name}: the array is in use")))
            }
            _ => Self::listed(&array, name),
        }
    }

    /// Names that are Python objects, numbered.
    fn listed(array: &Bound<'py, PyAny>, name: &str) -> PyResult<Self> {
        let mut places: HashMap<Key, u32> = HashMap::new();
        let (mut codes, mut names) = (Vec::with_capacity(array.len()?), Vec::new());
        for object in array.try_iter()? {
            let key = Key::of(&object?, name)?;
            let code = places.get(&key).copied().unwrap_or_else(|| {
                let code = names.len() as u32;
                names.push(Some(key.clone()));
                places.insert(key, code);
                code
            });
            codes.push(code);
        }
        Ok(Self::Listed(codes, names))
    }

    fn len(&self) -> Option<usize> {
        match self {
            Self::One(_) => None,
            Self::Numbers(held) => Some(held.values().len()),
            Self::Points(points) => Some(points.as_array().nrows()),
            Self::Listed(codes, _) => Some(codes.len()),
        }
    }
}

impl<'py, const N: usize> Arrays<'py, N> {
    /// The arrays of a mapping; `key` names every row where the data does not.
    pub fn of(data: &Bound<'py, PyAny>, wanted: Wanted<N>, key: Option<Key>) -> PyResult<Self> {
        let column = |name: &str| -> PyResult<Option<Bound<'py, PyAny>>> {
            if data.contains(name)? { data.get_item(name).map(Some) } else { Ok(None) }
        };
        let mut columns = [const { None }; N];
        let mut len = None;
        for (name, to) in wanted.columns.iter().zip(&mut columns) {
            let Some(object) = column(name)? else { continue };
            let held = numbers(name, &object)?;
            let rows = held.values().len();
            if *len.get_or_insert(rows) != rows {
                return Err(unequal(name));
            }
            *to = Some(held);
        }
        let keys = match (key, column(wanted.key)?) {
            (Some(_), Some(_)) => return Err(wanted.named_twice()),
            (Some(key), None) => Some(HeldKeys::One(key)),
            (None, Some(object)) => Some(HeldKeys::of(&object, wanted.key)?),
            (None, None) => None,
        };
        let len = len.unwrap_or(0);
        if keys.as_ref().and_then(HeldKeys::len).is_some_and(|rows| rows != len) {
            return Err(unequal(wanted.key));
        }
        Ok(Self { columns, keys, len })
    }

    /// The columns, borrowed.
    pub fn batch(&self, bus: &[Option<BusSignal>; N]) -> Batch<'_, N> {
        let mut columns: [Option<Column<'_>>; N] = [const { None }; N];
        for ((held, &signal), to) in self.columns.iter().zip(bus).zip(&mut columns) {
            *to = held.as_ref().map(|held| Column { values: held.values(), nulls: None, signal });
        }
        let keys = self.keys.as_ref().map(|keys| match keys {
            HeldKeys::One(key) => Keys::One(key),
            HeldKeys::Numbers(held) => Keys::Numbers(held.values(), None),
            HeldKeys::Points(points) => Keys::Points(whole(points)),
            HeldKeys::Listed(codes, names) => {
                Keys::Listed(Values::U32(ArrayView1::from(codes.as_slice())), None, names)
            }
        });
        Batch { len: self.len, columns, keys }
    }
}

fn whole<'a>(points: &'a PyReadonlyArray2<'_, u32>) -> ArrayView2<'a, u32> {
    points.as_array()
}

fn unequal(name: &str) -> PyErr {
    refuse(
        "COUNT",
        name,
        format!("column {name} has another length than the columns before it: give one value for each row"),
    )
}
