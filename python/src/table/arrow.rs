//! Batches from any producer of the Arrow PyCapsule interface, without a copy.

use std::ffi::CStr;

use arrow_array::cast::AsArray;
use arrow_array::ffi::{FFI_ArrowArray, FFI_ArrowSchema, from_ffi};
use arrow_array::ffi_stream::{FFI_ArrowArrayStream, RecordBatchStreamReader};
use arrow_array::types::{
    ArrowDictionaryKeyType, Float32Type, Float64Type, Int8Type, Int16Type, Int32Type, Int64Type, UInt8Type, UInt16Type,
    UInt32Type, UInt64Type,
};
use arrow_array::{Array, ArrowPrimitiveType, RecordBatch, StructArray};
use arrow_schema::DataType;
use numpy::ndarray::ArrayView1;
use pyo3::prelude::*;
use pyo3::types::{PyCapsule, PyTuple};
use trainwright::duty::BusSignal;

use super::columns::{Column, Values};
use super::keys::{Key, Keys};
use super::{Batch, Wanted};
use crate::error::refuse;

/// Batches, one after the other.
pub enum Source {
    /// Of a stream.
    Stream(Box<RecordBatchStreamReader>),
    /// A single one.
    One(Option<RecordBatch>),
}

fn broken(error: impl std::fmt::Display) -> PyErr {
    refuse("INCONSISTENT", "data", format!("data: what the Arrow producer hands out cannot be read: {error}"))
}

impl Source {
    /// The batches of an object, where it is an Arrow producer.
    pub fn of(data: &Bound<'_, PyAny>) -> PyResult<Option<Self>> {
        if data.hasattr("__arrow_c_stream__")? {
            let capsule = data.call_method0("__arrow_c_stream__")?.cast_into::<PyCapsule>()?;
            let stream = pointer(&capsule, c"arrow_array_stream")?.cast::<FFI_ArrowArrayStream>();
            // SAFETY: a capsule of this name holds such a struct, by the Arrow PyCapsule interface; it is moved out.
            let reader = unsafe { RecordBatchStreamReader::from_raw(stream) }.map_err(broken)?;
            return Ok(Some(Self::Stream(Box::new(reader))));
        }
        if data.hasattr("__arrow_c_array__")? {
            let pair = data.call_method0("__arrow_c_array__")?.cast_into::<PyTuple>()?;
            let (schema, array) = (pair.get_item(0)?, pair.get_item(1)?);
            let schema = pointer(schema.cast::<PyCapsule>()?, c"arrow_schema")?.cast::<FFI_ArrowSchema>();
            let array = pointer(array.cast::<PyCapsule>()?, c"arrow_array")?.cast::<FFI_ArrowArray>();
            // SAFETY: capsules of these names hold such structs, by the Arrow PyCapsule interface; the array is moved out.
            let data = unsafe { from_ffi(FFI_ArrowArray::from_raw(array), &*schema) }.map_err(broken)?;
            if !matches!(data.data_type(), DataType::Struct(_)) {
                return Err(refuse(
                    "INCONSISTENT",
                    "data",
                    "data: give a table or record batch, not one column".into(),
                ));
            }
            return Ok(Some(Self::One(Some(RecordBatch::from(StructArray::from(data))))));
        }
        Ok(None)
    }

    /// The next batch. Called without the interpreter's lock: a producer that needs it takes it.
    pub fn next(&mut self) -> PyResult<Option<RecordBatch>> {
        match self {
            Self::Stream(reader) => reader.next().transpose().map_err(broken),
            Self::One(batch) => Ok(batch.take()),
        }
    }
}

fn pointer(capsule: &Bound<'_, PyCapsule>, name: &CStr) -> PyResult<*mut std::ffi::c_void> {
    Ok(capsule.pointer_checked(Some(name))?.as_ptr())
}

fn view<T: ArrowPrimitiveType>(array: &dyn Array) -> ArrayView1<'_, T::Native> {
    ArrayView1::from(array.as_primitive::<T>().values().as_ref())
}

fn values<'a>(array: &'a dyn Array) -> Option<Values<'a>> {
    Some(match array.data_type() {
        DataType::Float64 => Values::F64(view::<Float64Type>(array)),
        DataType::Float32 => Values::F32(view::<Float32Type>(array)),
        DataType::Int8 => Values::I8(view::<Int8Type>(array)),
        DataType::Int16 => Values::I16(view::<Int16Type>(array)),
        DataType::Int32 => Values::I32(view::<Int32Type>(array)),
        DataType::Int64 => Values::I64(view::<Int64Type>(array)),
        DataType::UInt8 => Values::U8(view::<UInt8Type>(array)),
        DataType::UInt16 => Values::U16(view::<UInt16Type>(array)),
        DataType::UInt32 => Values::U32(view::<UInt32Type>(array)),
        DataType::UInt64 => Values::U64(view::<UInt64Type>(array)),
        _ => return None,
    })
}

/// The dictionary of a column of names.
pub fn names(batch: &RecordBatch, column: &str) -> Vec<Option<Key>> {
    let Some(column) = batch.column_by_name(column) else { return Vec::new() };
    let Some(dictionary) = column.as_any_dictionary_opt() else { return Vec::new() };
    let list = dictionary.values();
    let text = |place: usize| -> Option<&str> {
        match list.data_type() {
            DataType::Utf8 => Some(list.as_string::<i32>().value(place)),
            DataType::LargeUtf8 => Some(list.as_string::<i64>().value(place)),
            DataType::Utf8View => Some(list.as_string_view().value(place)),
            _ => None,
        }
    };
    let whole = values(list.as_ref());
    let name = |place: usize| {
        let number = || whole.as_ref()?.whole(place).map(Key::Number);
        text(place).map(|text| Key::Text(text.to_owned())).or_else(number)
    };
    (0..list.len()).map(|place| if list.is_valid(place) { name(place) } else { None }).collect()
}

fn codes<K: ArrowDictionaryKeyType>(array: &dyn Array) -> Option<&dyn Array> {
    Some(array.as_dictionary_opt::<K>()?.keys())
}

fn keys<'a>(column: &str, array: &'a dyn Array, names: &'a [Option<Key>]) -> PyResult<Keys<'a>> {
    Ok(match array.data_type() {
        DataType::Utf8 => Keys::Utf8(array.as_string::<i32>()),
        DataType::LargeUtf8 => Keys::LargeUtf8(array.as_string::<i64>()),
        DataType::Utf8View => Keys::Utf8View(array.as_string_view()),
        DataType::Dictionary(..) => {
            let keys = codes::<Int32Type>(array)
                .or_else(|| codes::<UInt32Type>(array))
                .or_else(|| codes::<Int8Type>(array))
                .or_else(|| codes::<UInt8Type>(array))
                .or_else(|| codes::<Int16Type>(array))
                .or_else(|| codes::<UInt16Type>(array))
                .or_else(|| codes::<Int64Type>(array))
                .or_else(|| codes::<UInt64Type>(array));
            match keys.and_then(values) {
                Some(codes) => Keys::Listed(codes, array.nulls(), names),
                None => return Err(unusable(column, array.data_type(), "text or whole numbers")),
            }
        }
        kind => match values(array) {
            Some(values) if !matches!(values, Values::F64(_) | Values::F32(_)) => Keys::Numbers(values, array.nulls()),
            _ => return Err(unusable(column, kind, "text or whole numbers")),
        },
    })
}

fn unusable(name: &str, kind: &DataType, wanted: &str) -> PyErr {
    refuse("TEXT", name, format!("column {name} is of type {kind}: cast it to {wanted}"))
}

/// The columns of a batch, borrowed. `key` names every row where the data does not.
pub fn batch<'a, const N: usize>(
    batch: &'a RecordBatch,
    wanted: Wanted<N>,
    names: &'a [Option<Key>],
    key: Option<&'a Key>,
    bus: &[Option<BusSignal>; N],
) -> PyResult<Batch<'a, N>> {
    let mut columns: [Option<Column<'a>>; N] = [const { None }; N];
    for ((name, &signal), to) in wanted.columns.iter().zip(bus).zip(&mut columns) {
        let Some(array) = batch.column_by_name(name) else { continue };
        if *array.data_type() == DataType::Null {
            continue;
        }
        let values = values(array.as_ref()).ok_or_else(|| unusable(name, array.data_type(), "float64"))?;
        *to = Some(Column { values, nulls: array.nulls().filter(|nulls| nulls.null_count() > 0), signal });
    }
    let keys = match (key, batch.column_by_name(wanted.key)) {
        (Some(_), Some(_)) => return Err(wanted.named_twice()),
        (Some(key), None) => Some(Keys::One(key)),
        (None, Some(array)) => Some(keys(wanted.key, array.as_ref(), names)?),
        (None, None) => None,
    };
    Ok(Batch { len: batch.num_rows(), columns, keys })
}
