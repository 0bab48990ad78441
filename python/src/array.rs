//! Scalars in, float out; array-likes in, NumPy arrays out. Inputs are borrowed and broadcast, the interpreter is released,
//! large arrays are shared among the processors.
//!
//! A refused scalar is an exception. A refused row is NaN, and one `RangeWarning` counts the refused rows and explains the
//! first. NaN in a row is missing data: NaN out, and not counted.

use std::borrow::Cow;
use std::marker::PhantomData;

use numpy::ndarray::{ArrayViewD, IxDyn};
use numpy::{PyArray, PyArrayDyn, PyArrayMethods, PyReadonlyArrayDyn, PyReadwriteArrayDyn, PyUntypedArrayMethods};
use pyo3::PyTypeInfo;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyString};
#[cfg(feature = "stubs")]
use pyo3::{inspect::PyStaticExpr, type_hint_identifier, type_hint_subscript, type_hint_union};
use rayon::prelude::*;

use crate::error::{raise, refuse, warn};
use crate::quantity::in_unit_of;

/// Rows computed in one go: the inputs and outputs of one go fit the cache.
const ROWS: usize = 4096;

/// An argument that may be a number or an array-like; a number is also its default, `0.0.into()`.
pub enum Input<'py> {
    /// The default.
    Number(f64),
    /// What was given.
    Given(Bound<'py, PyAny>),
}

impl From<f64> for Input<'_> {
    fn from(value: f64) -> Self {
        Self::Number(value)
    }
}

impl<'py> FromPyObject<'_, 'py> for Input<'py> {
    type Error = PyErr;
    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = type_hint_identifier!("numpy.typing", "ArrayLike");

    fn extract(object: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(Self::Given(object.to_owned()))
    }
}

impl<'py> Input<'py> {
    fn column(self, name: &str) -> PyResult<Column<'py>> {
        let object = match self {
            Self::Number(value) => return Ok(Column::Constant(value)),
            Self::Given(object) => in_unit_of(name, &object)?,
        };
        if (object.is_instance_of::<PyFloat>() || object.is_instance_of::<PyInt>())
            && !object.is_instance_of::<PyBool>()
        {
            return Ok(Column::Constant(object.extract()?));
        }
        let not_numbers = || refuse("TEXT", name, format!("{name}: give a number or an array of numbers"));
        if object.is_none() || object.is_instance_of::<PyBool>() || object.is_instance_of::<PyString>() {
            return Err(not_numbers());
        }
        let array = match object.cast::<PyArrayDyn<f64>>() {
            Ok(array) => array.clone(),
            Err(_) => {
                let numpy = object.py().import("numpy")?;
                let array = numpy.call_method1("asarray", (&object, numpy.getattr("float64")?));
                array.map_err(|_| not_numbers())?.cast_into::<PyArrayDyn<f64>>()?
            }
        };
        if array.ndim() == 0 {
            return Ok(Column::Constant(array.as_any().call_method0("item")?.extract()?));
        }
        let array = array.try_readonly().map_err(|_| {
            refuse("INCONSISTENT", name, format!("{name} shares memory with out: give out an array of its own"))
        })?;
        Ok(Column::Array(array))
    }
}

/// An array that takes the result.
pub struct Out<'py>(Bound<'py, PyAny>);

impl<'py> FromPyObject<'_, 'py> for Out<'py> {
    type Error = PyErr;
    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = type_hint_subscript!(
        type_hint_identifier!("numpy.typing", "NDArray"),
        type_hint_identifier!("numpy", "float64")
    );

    fn extract(object: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(Self(object.to_owned()))
    }
}

/// A class whose fields are all numbers; `columns!` makes one of a `class!`.
pub trait Record<const N: usize>: Sized {
    /// Names of the fields.
    const NAMES: [&'static str; N];
    /// Values of the fields, in the same order.
    fn row(self) -> [f64; N];
}

/// An argument that may be an instance of a class, or columns: a mapping of its field names (a data frame, too).
pub struct Rows<'py, T>(Bound<'py, PyAny>, PhantomData<T>);

impl<'py, T: PyTypeInfo> FromPyObject<'_, 'py> for Rows<'py, T> {
    type Error = PyErr;
    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = type_hint_union!(
        T::TYPE_HINT,
        type_hint_subscript!(
            type_hint_identifier!("collections.abc", "Mapping"),
            type_hint_identifier!("builtins", "str"),
            type_hint_identifier!("numpy.typing", "ArrayLike")
        )
    );

    fn extract(object: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(Self(object.to_owned(), PhantomData))
    }
}

impl<'py, T> Rows<'py, T> {
    /// One column per field.
    pub fn columns<const N: usize>(self) -> PyResult<[(&'static str, Input<'py>); N]>
    where
        T: Record<N> + for<'a> FromPyObject<'a, 'py>,
    {
        let record = self.0.extract::<T>().ok().map(T::row);
        let mut columns = Vec::with_capacity(N);
        for (field, name) in T::NAMES.into_iter().enumerate() {
            let input = match record.and_then(|row| row.get(field).copied()) {
                Some(value) => Input::Number(value),
                None => Input::Given(self.0.get_item(name).map_err(|_| {
                    refuse(
                        "MISSING",
                        name,
                        format!("{name} is missing: give an object of the class, or columns of which one is {name}"),
                    )
                })?),
            };
            columns.push((name, input));
        }
        columns.try_into().map_err(|_| refuse("COUNT", "columns", "columns: wrong number".into()))
    }
}

/// What was given for one argument.
enum Column<'py> {
    Constant(f64),
    Array(PyReadonlyArrayDyn<'py, f64>),
}

impl Column<'_> {
    fn constant(&self) -> Option<f64> {
        match self {
            Self::Constant(value) => Some(*value),
            Self::Array(_) => None,
        }
    }
}

/// A column as the computing threads see it.
enum View<'a> {
    Constant([f64; 1]),
    Flat(&'a [f64]),
    Strided(ArrayViewD<'a, f64>),
}

/// The values of one column in one go; the step is 0 for a constant.
struct Lane<'a> {
    values: Cow<'a, [f64]>,
    step: usize,
}

impl<'a> View<'a> {
    fn new(column: &'a Column<'_>, shape: &[usize]) -> Self {
        match column {
            Column::Constant(value) => Self::Constant([*value]),
            Column::Array(array) => match array.as_slice() {
                Ok(flat) if array.shape() == shape => Self::Flat(flat),
                _ => Self::Strided(array.as_array()),
            },
        }
    }

    fn lane(&self, shape: &[usize], start: usize, rows: usize) -> Lane<'_> {
        match self {
            Self::Constant(value) => Lane { values: Cow::Borrowed(value), step: 0 },
            Self::Flat(flat) => Lane { values: Cow::Borrowed(flat.get(start..start + rows).unwrap_or(&[])), step: 1 },
            Self::Strided(array) => Lane { values: Cow::Owned(gather(array, shape, start, rows)), step: 1 },
        }
    }
}

/// Rows of a broadcast or strided array, in the order of the output.
fn gather(array: &ArrayViewD<'_, f64>, shape: &[usize], start: usize, rows: usize) -> Vec<f64> {
    let Some(array) = array.broadcast(IxDyn(shape)) else { return Vec::new() };
    let mut index = vec![0; shape.len()];
    let mut rest = start;
    for (place, size) in index.iter_mut().zip(shape).rev() {
        *place = rest % size;
        rest /= size;
    }
    let mut values = Vec::with_capacity(rows);
    for _ in 0..rows {
        values.push(array.get(index.as_slice()).copied().unwrap_or(f64::NAN));
        for (place, size) in index.iter_mut().zip(shape).rev() {
            *place += 1;
            if *place < *size {
                break;
            }
            *place = 0;
        }
    }
    values
}

/// The common shape of the columns under NumPy's broadcasting rules.
fn common_shape(columns: &[Column<'_>]) -> PyResult<Vec<usize>> {
    let mut common: Vec<usize> = Vec::new();
    for column in columns {
        let Column::Array(array) = column else { continue };
        let shape = array.shape();
        if shape.len() > common.len() {
            common.splice(0..0, vec![1; shape.len() - common.len()]);
        }
        for (have, size) in common.iter_mut().rev().zip(shape.iter().rev()) {
            if *have == 1 {
                *have = *size;
            } else if *size != 1 && *size != *have {
                let message = format!("arrays of shape {shape:?} and {common:?} do not go together: make them equal");
                return Err(refuse("INCONSISTENT", "shape", message));
            }
        }
    }
    Ok(common)
}

/// One formula over columns. All scalars: a float or an exception. Any array, or `out`: an array.
pub fn map<'py, const N: usize>(
    py: Python<'py>,
    columns: [(&'static str, Input<'py>); N],
    out: Option<Out<'py>>,
    formula: impl Fn([f64; N]) -> trainwright::Result<f64> + Sync,
) -> PyResult<Bound<'py, PyAny>> {
    let results = map_all(py, columns, out.map(|out| [out]), |row| formula(row).map(|value| [value]))?;
    Ok(results.into_iter().next().unwrap_or_else(|| py.None().into_bound(py)))
}

/// A formula whose result is a class of numbers (`columns!`): the class for scalars, a dictionary of arrays for arrays.
pub fn map_class<'py, C, T, const N: usize, const M: usize>(
    py: Python<'py>,
    columns: [(&'static str, Input<'py>); N],
    formula: impl Fn([f64; N]) -> trainwright::Result<T> + Sync,
) -> PyResult<Bound<'py, PyAny>>
where
    C: PyTypeInfo + Record<M> + From<T>,
{
    let values = map_all(py, columns, None, |row| Ok(C::from(formula(row)?).row()))?;
    let scalar = values.iter().all(|value| value.is_instance_of::<PyFloat>());
    let fields = PyDict::new(py);
    for (name, value) in C::NAMES.into_iter().zip(values) {
        fields.set_item(name, value)?;
    }
    if scalar { py.get_type::<C>().call((), Some(&fields)) } else { Ok(fields.into_any()) }
}

/// A formula with several results over columns: as many floats, or as many arrays.
pub fn map_all<'py, const N: usize, const M: usize>(
    py: Python<'py>,
    columns: [(&'static str, Input<'py>); N],
    out: Option<[Out<'py>; M]>,
    formula: impl Fn([f64; N]) -> trainwright::Result<[f64; M]> + Sync,
) -> PyResult<Vec<Bound<'py, PyAny>>> {
    let columns = columns.into_iter().map(|(name, input)| input.column(name)).collect::<PyResult<Vec<_>>>()?;
    let scalars: Vec<f64> = columns.iter().filter_map(Column::constant).collect();
    if out.is_none()
        && let Ok(row) = <[f64; N]>::try_from(scalars)
    {
        let values = formula(row).map_err(raise)?;
        return Ok(values.into_iter().map(|value| PyFloat::new(py, value).into_any()).collect());
    }

    let (shape, mut outputs) = match out {
        Some(out) => given_outputs(&columns, out)?,
        None => {
            let shape = common_shape(&columns)?;
            let fresh = |_| Ok(PyArray::zeros(py, IxDyn(&shape), false).try_readwrite()?);
            let outputs = (0..M).map(fresh).collect::<PyResult<Vec<_>>>()?;
            (shape, outputs)
        }
    };
    let views: Vec<View<'_>> = columns.iter().map(|column| View::new(column, &shape)).collect();
    let slices = outputs.iter_mut().map(|output| Ok(output.as_slice_mut()?)).collect::<PyResult<Vec<_>>>()?;
    let refused = py.detach(|| compute(&views, &shape, slices, &formula));
    if let Some(refused) = refused {
        refused.warn(py, shape.iter().product())?;
    }
    Ok(outputs.iter().map(|output| output.as_any().clone()).collect())
}

/// The arrays given as `out`, and their shape.
fn given_outputs<'py, const M: usize>(
    columns: &[Column<'py>],
    out: [Out<'py>; M],
) -> PyResult<(Vec<usize>, Vec<PyReadwriteArrayDyn<'py, f64>>)> {
    let mut shape = common_shape(columns)?;
    if shape.is_empty()
        && let Some(Ok(first)) = out.first().map(|first| first.0.cast::<PyArrayDyn<f64>>())
    {
        shape = first.shape().to_vec();
    }
    let refusal = || {
        let message = format!("out: give a writable, C-contiguous float64 array of shape {shape:?} that is no input");
        refuse("INCONSISTENT", "out", message)
    };
    let writable = |out: Out<'py>| {
        let array = out.0.cast_into::<PyArrayDyn<f64>>().map_err(|_| refusal())?;
        let array = array.try_readwrite().map_err(|_| refusal())?;
        if array.shape() == shape && array.is_c_contiguous() { Ok(array) } else { Err(refusal()) }
    };
    let outputs = out.into_iter().map(writable).collect::<PyResult<Vec<_>>>()?;
    Ok((shape, outputs))
}

/// Rows without an answer: how many, and the first of them.
#[derive(Clone, Copy)]
struct Refused {
    count: usize,
    row: usize,
    error: trainwright::Error,
}

impl Refused {
    fn merge(self, other: Self) -> Self {
        let count = self.count + other.count;
        let first = if self.row < other.row { self } else { other };
        Self { count, ..first }
    }

    fn warn(&self, py: Python<'_>, rows: usize) -> PyResult<()> {
        let Self { count, row, error } = self;
        warn(py, format!("{count} of {rows} rows refused; the first is row {row}: {error}"))
    }
}

/// Fills the outputs, `ROWS` rows at a time on every processor.
fn compute<const N: usize, const M: usize>(
    views: &[View<'_>],
    shape: &[usize],
    outputs: Vec<&mut [f64]>,
    formula: &(impl Fn([f64; N]) -> trainwright::Result<[f64; M]> + Sync),
) -> Option<Refused> {
    let mut pieces: Vec<_> = outputs.into_iter().map(|output| output.chunks_mut(ROWS)).collect();
    let mut goes = Vec::new();
    while let Some(go) = pieces.iter_mut().map(Iterator::next).collect::<Option<Vec<_>>>().filter(|go| !go.is_empty()) {
        goes.push(go);
    }
    goes.into_par_iter()
        .enumerate()
        .filter_map(|(number, go)| {
            let start = number * ROWS;
            let rows = go.first().map_or(0, |output| output.len());
            let lanes: [Lane<'_>; N] = std::array::from_fn(|column| match views.get(column) {
                Some(view) => view.lane(shape, start, rows),
                None => Lane { values: Cow::Borrowed(&[]), step: 0 },
            });
            one_go(&lanes, start, go, formula)
        })
        .reduce_with(Refused::merge)
}

fn one_go<const N: usize, const M: usize>(
    lanes: &[Lane<'_>; N],
    start: usize,
    outputs: Vec<&mut [f64]>,
    formula: &impl Fn([f64; N]) -> trainwright::Result<[f64; M]>,
) -> Option<Refused> {
    let mut outputs: [&mut [f64]; M] = outputs.try_into().ok()?;
    let inputs = lanes.each_ref().map(|lane| (lane.values.as_ref(), lane.step));
    let mut refused: Option<Refused> = None;
    for row in 0..outputs.first().map_or(0, |output| output.len()) {
        let input = inputs.map(|(values, step)| values.get(row * step).copied().unwrap_or(f64::NAN));
        let result = formula(input).unwrap_or_else(|error| {
            note(&mut refused, &input, Refused { count: 1, row: start + row, error });
            [f64::NAN; M]
        });
        for (output, value) in outputs.iter_mut().zip(result) {
            if let Some(place) = output.get_mut(row) {
                *place = value;
            }
        }
    }
    refused
}

/// Counts a refused row, unless it only lacks data.
#[cold]
fn note(refused: &mut Option<Refused>, input: &[f64], this: Refused) {
    if !input.iter().any(|value| value.is_nan()) {
        *refused = Some(refused.take().map_or(this, |others| others.merge(this)));
    }
}
