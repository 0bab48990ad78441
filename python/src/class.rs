//! `class!` turns a plain core struct into a frozen Python class, `words!` a plain core enum into text.

mod field;

pub use field::{Field, Fields, hashable, html_table};

/// A frozen class with the fields of a plain core struct.
///
/// ```text
/// class! {
///     /// What it is.
///     "trainwright.judge" Reading = core::Reading, checked by finite {
///         /// Meaning and unit.
///         value: f64,
///         /// A field with a default.
///         u: f64 = 0.0,
///     }
/// }
/// ```
///
/// After the path, each where it applies: `, checked by f`; `, explained by ["clutch.hold"]` names the formulas whose result it
/// can be and gives it `explain()`; `, judged in "N·m"` the unit of its judgment where no field says it; `, inputs ["gauge
/// pressure", "friction"]` the inputs of its budget.
///
/// A field's type is a number, `bool`, another `class!` or a `words!`. The class gets a keyword-only constructor, getters,
/// `==`, `hash`, `repr`, pickling, `as_dict()` and a table in notebooks; its Rust side is `Reading(pub core::Reading)`,
/// with `From` both ways. Methods go into a `#[pymethods] impl Reading` of your own.
macro_rules! class {
    (
        $(#[doc = $doc:literal])+
        $module:literal $name:ident = $core:path $(, checked by $check:path)?
        $(, explained by [$($card:literal),+])? $(, judged in $unit:literal)? $(, inputs [$($input:literal),+])? {
            $($(#[doc = $about:literal])+ $field:ident: $kind:ty $(= $default:expr)?,)+
        }
    ) => {
        $(#[doc = $doc])+
        #[pyclass(frozen, from_py_object, module = $module)]
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name(pub $core);

        #[pymethods]
        impl $name {
            #[new]
            #[pyo3(signature = (*, $($field $(= <$kind as crate::class::Field>::Argument::from($default))?),+))]
            fn new($($field: <$kind as crate::class::Field>::Argument),+) -> PyResult<Self> {
                use $core as Core;
                let value = Core { $($field: <$kind as crate::class::Field>::take(stringify!($field), $field)?.into()),+ };
                $(
                    let check: fn($core) -> trainwright::Result<$core> = $check;
                    let value = check(value).map_err(crate::error::raise)?;
                )?
                Ok(Self(value))
            }

            $(
                $(#[doc = $about])+
                #[getter]
                fn $field(&self) -> $kind {
                    self.0.$field.into()
                }
            )+
        }

        crate::class::common!($name, [$($field),+]);
        crate::class::explained!($name, [$($($card),+)?], $($unit)?, [$($($input),+)?]);

        impl From<$core> for $name {
            fn from(value: $core) -> Self {
                Self(value)
            }
        }

        impl From<$name> for $core {
            fn from(value: $name) -> Self {
                value.0
            }
        }
    };
}
pub(crate) use class;

/// What every class of fields has, whatever holds them: `==`, hash, repr, pickling, `as_dict()`, a table in notebooks.
macro_rules! common {
    ($name:ident, [$($field:ident),+]) => {
        #[pymethods]
        impl $name {
            fn __eq__(&self, other: &Self) -> bool {
                self == other
            }

            fn __hash__(&self, py: Python<'_>) -> PyResult<isize> {
                use pyo3::IntoPyObjectExt;
                let fields = [$(crate::class::hashable(self.$field().into_bound_py_any(py)?)?),+];
                pyo3::types::PyTuple::new(py, fields)?.hash()
            }

            fn __repr__(&self) -> String {
                crate::class::Field::source(self)
            }

            fn _repr_html_(&self) -> String {
                crate::class::html_table(
                    stringify!($name),
                    &[$((stringify!($field), crate::class::Field::source(&self.$field()))),+],
                )
            }

            fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), crate::class::Fields<'py>)> {
                let fields = crate::class::Fields::new(py);
                $(fields.set(stringify!($field), self.$field())?;)+
                Ok(((), fields))
            }

            /// The fields by name, nested classes as dictionaries too.
            fn as_dict<'py>(&self, py: Python<'py>) -> PyResult<crate::class::Fields<'py>> {
                let fields = crate::class::Fields::new(py);
                $(fields.set(stringify!($field), crate::class::Field::plain(&self.$field(), py)?)?;)+
                Ok(fields)
            }
        }

        impl crate::class::Field for $name {
            type Argument = Self;

            fn take(_: &'static str, argument: Self) -> PyResult<Self> {
                Ok(argument)
            }

            fn source(&self) -> String {
                let fields = [$(format!(concat!(stringify!($field), "={}"), crate::class::Field::source(&self.$field()))),+];
                format!(concat!(stringify!($name), "({})"), fields.join(", "))
            }

            fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
                use pyo3::IntoPyObjectExt;
                self.as_dict(py)?.into_py_any(py)
            }
        }
    };
}
pub(crate) use common;

/// A frozen class with fields of its own, for what has names, lists or values that may be missing; else as `class!`.
///
/// ```text
/// named! {
///     /// What it is.
///     "trainwright.live" Gear, checked by ratio_is_one {
///         /// Meaning and unit.
///         name: String,
///         /// A field with a default.
///         limit_c: Option<f32> = None,
///     }
/// }
/// ```
macro_rules! named {
    (
        $(#[doc = $doc:literal])+
        $module:literal $name:ident $(, checked by $check:path)? $(, explained by [$($card:literal),+])? {
            $($(#[doc = $about:literal])+ $field:ident: $kind:ty $(= $default:expr)?,)+
        }
    ) => {
        $(#[doc = $doc])+
        #[pyclass(frozen, from_py_object, module = $module)]
        #[derive(Clone, Debug, PartialEq)]
        pub struct $name {
            $($(#[doc = $about])+ pub $field: $kind,)+
        }

        #[pymethods]
        #[allow(clippy::wrong_self_convention, reason = "a field may be called from_gear")]
        impl $name {
            #[new]
            #[pyo3(signature = (*, $($field $(= <$kind as crate::class::Field>::Argument::from($default))?),+))]
            fn new($($field: <$kind as crate::class::Field>::Argument),+) -> PyResult<Self> {
                let value = Self { $($field: <$kind as crate::class::Field>::take(stringify!($field), $field)?),+ };
                $(
                    let check: fn(&$name) -> PyResult<()> = $check;
                    check(&value)?;
                )?
                Ok(value)
            }

            $(
                $(#[doc = $about])+
                #[getter]
                fn $field(&self) -> $kind {
                    self.$field.clone()
                }
            )+
        }

        crate::class::common!($name, [$($field),+]);
        crate::class::explained!($name, [$($($card),+)?], , []);
    };
}
pub(crate) use named;

/// Gives a class `CARDS` and `explain`, where cards are named.
macro_rules! explained {
    ($name:ident, [], , []) => {};
    ($name:ident, [$($card:literal),+], $($unit:literal)?, [$($input:literal),*]) => {
        #[pymethods]
        impl $name {
            /// Ids of the formulas whose result this can be.
            #[classattr]
            #[pyo3(name = "CARDS")]
            fn cards(py: Python<'_>) -> PyResult<Py<pyo3::types::PyTuple>> {
                Ok(pyo3::types::PyTuple::new(py, [$($card),+])?.unbind())
            }

            /// The worked explanation of this result. `card` names the formula where several are possible, `unit` and
            /// `inputs` the unit of its judgment and the inputs of its budget; further values by name are inputs that the
            /// result does not keep.
            #[pyo3(signature = (*, card = None, unit = None, inputs = None, **more))]
            fn explain(
                slf: &Bound<'_, Self>,
                card: Option<&str>,
                unit: Option<&str>,
                inputs: Option<Vec<String>>,
                more: Option<&Bound<'_, pyo3::types::PyDict>>,
            ) -> PyResult<crate::explain::Explanation> {
                let about = crate::explain::About {
                    cards: &[$($card),+],
                    unit: concat!($($unit)?),
                    inputs: &[$($input),*],
                };
                let given = crate::explain::Given { card, unit, inputs, more };
                crate::explain::of_result(slf.as_any(), &about, given)
            }
        }
    };
}
pub(crate) use explained;

/// A plain core enum as text: Python passes and gets the word, and a wrong word is answered with the right ones.
///
/// ```text
/// words! {
///     "verdict" Verdict = core::Verdict { Go = "GO", NoGo = "NO-GO", NotProven = "NOT PROVEN" }
/// }
/// ```
macro_rules! words {
    ($parameter:literal $name:ident = $core:path { $($variant:ident = $word:literal),+ $(,)? }) => {
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name(pub $core);

        impl $name {
            /// The word for the value.
            pub fn word(self) -> &'static str {
                use $core as Core;
                #[allow(unreachable_patterns)]
                match self.0 {
                    $(Core::$variant => $word,)+
                    _ => "unknown",
                }
            }
        }

        impl<'py> FromPyObject<'_, 'py> for $name {
            type Error = PyErr;
            #[cfg(feature = "stubs")]
            const INPUT_TYPE: pyo3::inspect::PyStaticExpr = <&str as FromPyObject>::INPUT_TYPE;

            fn extract(object: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
                use $core as Core;
                match object.extract::<&str>()? {
                    $($word => Ok(Self(Core::$variant)),)+
                    other => Err(crate::error::refuse(
                        "TEXT",
                        $parameter,
                        format!("{} = {other:?}: give one of {}", $parameter, [$($word),+].join(", ")),
                    )),
                }
            }
        }

        impl<'py> IntoPyObject<'py> for $name {
            type Target = pyo3::types::PyString;
            type Output = Bound<'py, Self::Target>;
            type Error = std::convert::Infallible;
            #[cfg(feature = "stubs")]
            const OUTPUT_TYPE: pyo3::inspect::PyStaticExpr = <&str as IntoPyObject>::OUTPUT_TYPE;

            fn into_pyobject(self, py: Python<'py>) -> Result<Self::Output, Self::Error> {
                self.word().into_pyobject(py)
            }
        }

        impl crate::class::Field for $name {
            type Argument = Self;

            fn take(_: &'static str, argument: Self) -> PyResult<Self> {
                Ok(argument)
            }

            fn source(&self) -> String {
                format!("{:?}", self.word())
            }

            fn plain(&self, py: Python<'_>) -> PyResult<Py<PyAny>> {
                Ok(self.into_pyobject(py)?.into_any().unbind())
            }
        }

        impl From<$core> for $name {
            fn from(value: $core) -> Self {
                Self(value)
            }
        }

        impl From<$name> for $core {
            fn from(value: $name) -> Self {
                value.0
            }
        }
    };
}
pub(crate) use words;

/// Lets a `class!` of numbers stand for columns of arrays.
///
/// ```text
/// columns! { Reading[2]: value, u }
/// ```
macro_rules! columns {
    ($name:ident[$count:literal]: $($field:ident),+) => {
        impl crate::array::Record<$count> for $name {
            const NAMES: [&'static str; $count] = [$(stringify!($field)),+];

            fn row(self) -> [f64; $count] {
                [$(self.0.$field),+]
            }
        }
    };
}
pub(crate) use columns;
