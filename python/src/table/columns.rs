//! Columns of a batch, borrowed from NumPy or Arrow: read where they lie, or as `f64` piece by piece.

use arrow_buffer::NullBuffer;
use numpy::ndarray::ArrayView1;
use trainwright::duty::screen::BadValue;
use trainwright::duty::{BusMeaning, BusSignal};

/// Values of a column as they lie in memory.
#[derive(Clone)]
pub enum Values<'a> {
    /// Of 64 bits.
    F64(ArrayView1<'a, f64>),
    /// Of 32 bits.
    F32(ArrayView1<'a, f32>),
    /// Whole numbers.
    I8(ArrayView1<'a, i8>),
    /// Whole numbers.
    I16(ArrayView1<'a, i16>),
    /// Whole numbers.
    I32(ArrayView1<'a, i32>),
    /// Whole numbers.
    I64(ArrayView1<'a, i64>),
    /// Whole numbers.
    U8(ArrayView1<'a, u8>),
    /// Whole numbers.
    U16(ArrayView1<'a, u16>),
    /// Whole numbers.
    U32(ArrayView1<'a, u32>),
    /// Whole numbers.
    U64(ArrayView1<'a, u64>),
}

/// A column of a batch.
#[derive(Clone)]
pub struct Column<'a> {
    /// Values.
    pub values: Values<'a>,
    /// Which of them are there, where some are not.
    pub nulls: Option<&'a NullBuffer>,
    /// Set where the values are those of a bus: raw where they are whole numbers, else scaled.
    pub signal: Option<BusSignal>,
}

/// Which rows of a batch.
#[derive(Clone, Copy)]
pub enum Rows<'a> {
    /// Rows from this one on.
    From(usize),
    /// These rows.
    These(&'a [u32]),
}

impl Rows<'_> {
    /// Number of the row at a place.
    #[inline(always)]
    pub fn at(self, place: usize) -> usize {
        match self {
            Self::From(start) => start + place,
            Self::These(rows) => rows.get(place).map_or(0, |&row| row as usize),
        }
    }
}

/// Applies `$body` to the view of whatever type, and the conversion of its values.
macro_rules! with_values {
    ($values:expr, |$view:ident, $to_f64:ident| $body:expr) => {
        match $values {
            Values::F64($view) => {
                let $to_f64 = |value: f64| value;
                $body
            }
            Values::F32($view) => {
                let $to_f64 = |value: f32| f64::from(value);
                $body
            }
            Values::I8($view) => {
                let $to_f64 = |value: i8| f64::from(value);
                $body
            }
            Values::I16($view) => {
                let $to_f64 = |value: i16| f64::from(value);
                $body
            }
            Values::I32($view) => {
                let $to_f64 = |value: i32| f64::from(value);
                $body
            }
            Values::I64($view) => {
                let $to_f64 = |value: i64| value as f64;
                $body
            }
            Values::U8($view) => {
                let $to_f64 = |value: u8| f64::from(value);
                $body
            }
            Values::U16($view) => {
                let $to_f64 = |value: u16| f64::from(value);
                $body
            }
            Values::U32($view) => {
                let $to_f64 = |value: u32| f64::from(value);
                $body
            }
            Values::U64($view) => {
                let $to_f64 = |value: u64| value as f64;
                $body
            }
        }
    };
}

impl Values<'_> {
    /// Whether they are whole numbers.
    fn is_whole(&self) -> bool {
        !matches!(self, Self::F64(_) | Self::F32(_))
    }

    /// Number of values.
    pub fn len(&self) -> usize {
        with_values!(self, |view, _to_f64| view.len())
    }

    /// The whole number at a place, of columns that number whose rows they are.
    #[inline]
    pub fn whole(&self, place: usize) -> Option<i64> {
        match self {
            Self::I8(view) => view.get(place).map(|&value| value.into()),
            Self::I16(view) => view.get(place).map(|&value| value.into()),
            Self::I32(view) => view.get(place).map(|&value| value.into()),
            Self::I64(view) => view.get(place).copied(),
            Self::U8(view) => view.get(place).map(|&value| value.into()),
            Self::U16(view) => view.get(place).map(|&value| value.into()),
            Self::U32(view) => view.get(place).map(|&value| value.into()),
            Self::U64(view) => view.get(place).and_then(|&value| value.try_into().ok()),
            Self::F64(_) | Self::F32(_) => None,
        }
    }
}

impl Column<'_> {
    /// Writes the values of these rows, as many as `to` has room for.
    #[inline]
    pub fn load(&self, rows: Rows<'_>, to: &mut [f64]) {
        with_values!(&self.values, |view, to_f64| match rows {
            Rows::From(start) => match view.as_slice().and_then(|all| all.get(start..start + to.len())) {
                Some(from) => to.iter_mut().zip(from).for_each(|(to, &from)| *to = to_f64(from)),
                None => {
                    for (place, to) in to.iter_mut().enumerate() {
                        *to = view.get(start + place).map_or(f64::NAN, |&value| to_f64(value));
                    }
                }
            },
            Rows::These(rows) => {
                for (to, &row) in to.iter_mut().zip(rows) {
                    *to = view.get(row as usize).map_or(f64::NAN, |&value| to_f64(value));
                }
            }
        });
        if let Some(signal) = self.signal {
            let raw = self.values.is_whole();
            to.iter_mut().for_each(|value| *value = decoded(signal, raw, *value));
        }
        if let Some(nulls) = self.nulls {
            for (place, value) in to.iter_mut().enumerate() {
                if nulls.is_null(rows.at(place)) {
                    *value = f64::NAN;
                }
            }
        }
    }

    /// The values where they lie, if they can be read there.
    pub fn in_place(&self) -> Option<&[f64]> {
        match &self.values {
            Values::F64(view) if self.nulls.is_none() && self.signal.is_none() => view.as_slice(),
            _ => None,
        }
    }

    /// The value of one row.
    pub fn value(&self, row: usize) -> f64 {
        let mut value = [f64::NAN];
        self.load(Rows::From(row), &mut value);
        let [value] = value;
        value
    }
}

/// The value of a bus, or a NaN that says why it is none.
fn decoded(signal: BusSignal, raw: bool, value: f64) -> f64 {
    let decoded = if raw {
        if !(0.0..=f64::from(u32::MAX)).contains(&value) {
            return f64::INFINITY;
        }
        signal.decode(value as u32)
    } else if value.is_nan() {
        return value;
    } else {
        signal.classify(value)
    };
    match decoded {
        Err(_) => f64::INFINITY,
        Ok(decoded) => match decoded.meaning {
            BusMeaning::Value => decoded.value,
            BusMeaning::OutOfRange => f64::INFINITY,
            BusMeaning::Indicator | BusMeaning::Reserved => BadValue::Reserved.in_a_column(),
            BusMeaning::Error => BadValue::SensorError.in_a_column(),
            BusMeaning::NotAvailable => BadValue::NotAvailable.in_a_column(),
        },
    }
}
