//! The one error: it names the parameter, shows the value that was given and says what would be accepted.

use core::fmt;

/// Why there is no answer. Every variant names the parameter in the words of the public interface.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// The value is NaN or infinite.
    NotFinite {
        /// Parameter.
        name: &'static str,
        /// Value given.
        value: f64,
    },
    /// The value must be above zero.
    NotPositive {
        /// Parameter.
        name: &'static str,
        /// Value given.
        value: f64,
    },
    /// The value lies outside the range of the source (or of what is physically possible).
    OutOfRange {
        /// Parameter.
        name: &'static str,
        /// Value given.
        value: f64,
        /// Least value accepted.
        low: f64,
        /// Greatest value accepted.
        high: f64,
    },
    /// A lower limit lies above its upper limit.
    Reversed {
        /// The pair of limits.
        name: &'static str,
        /// Lower limit given.
        lower: f64,
        /// Upper limit given.
        upper: f64,
    },
    /// More items than the fixed memory holds, or fewer than the calculation needs.
    Count {
        /// What was counted.
        name: &'static str,
        /// How many were given.
        count: u32,
        /// Least number accepted.
        low: u32,
        /// Greatest number accepted.
        high: u32,
    },
    /// Values that are each possible contradict one another.
    Inconsistent {
        /// Parameter or group of parameters.
        name: &'static str,
        /// The contradiction and its mend, in words.
        why: &'static str,
    },
    /// Something that the answer needs was not given.
    Missing {
        /// What is missing.
        name: &'static str,
        /// What it is needed for, or where to get it.
        why: &'static str,
    },
    /// Whole numbers grew past what 64 bits hold.
    Overflow {
        /// The quantity that overflowed.
        name: &'static str,
    },
    /// A text cannot be read.
    Text {
        /// What was being read.
        name: &'static str,
        /// Byte at which reading stopped.
        at: u32,
        /// What was expected there, in words.
        expected: &'static str,
    },
    /// The question has no answer, for a reason that is physics and not input.
    NoAnswer {
        /// The quantity asked for.
        name: &'static str,
        /// Why there is none, and what would change that.
        why: &'static str,
    },
}

/// Result with [`Error`].
pub type Result<T> = core::result::Result<T, Error>;

impl Error {
    /// The name of the variant as C (`TW_STATUS_...`), Python (`error.kind`) and the test vectors write it.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::NotFinite { .. } => "NOT_FINITE",
            Self::NotPositive { .. } => "NOT_POSITIVE",
            Self::OutOfRange { .. } => "OUT_OF_RANGE",
            Self::Reversed { .. } => "REVERSED",
            Self::Count { .. } => "COUNT",
            Self::Inconsistent { .. } => "INCONSISTENT",
            Self::Missing { .. } => "MISSING",
            Self::Overflow { .. } => "OVERFLOW",
            Self::Text { .. } => "TEXT",
            Self::NoAnswer { .. } => "NO_ANSWER",
        }
    }

    /// The parameter (or group of parameters) that the error is about.
    #[must_use]
    pub const fn parameter(&self) -> &'static str {
        match self {
            Self::NotFinite { name, .. }
            | Self::NotPositive { name, .. }
            | Self::OutOfRange { name, .. }
            | Self::Reversed { name, .. }
            | Self::Count { name, .. }
            | Self::Inconsistent { name, .. }
            | Self::Missing { name, .. }
            | Self::Overflow { name }
            | Self::Text { name, .. }
            | Self::NoAnswer { name, .. } => name,
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::NotFinite { name, value } => write!(f, "{name} = {value}: give a finite number"),
            Self::NotPositive { name, value } => write!(f, "{name} = {value}: must be above 0"),
            Self::OutOfRange { name, value, low, high: f64::MAX | f64::INFINITY } => {
                write!(f, "{name} = {value}: below {low}; check the value and its unit")
            }
            Self::OutOfRange { name, value, low, high } => {
                write!(f, "{name} = {value}: outside {low} to {high}; check the value and its unit")
            }
            Self::Reversed { name, lower, upper } => {
                write!(f, "{name}: lower {lower} is above upper {upper}; exchange them or correct one")
            }
            Self::Count { name, count, low, high } => {
                write!(f, "{name}: {count} given, {low} to {high} accepted")
            }
            Self::Inconsistent { name, why } | Self::NoAnswer { name, why } => write!(f, "{name}: {why}"),
            Self::Missing { name, why } => write!(f, "{name} is missing: {why}"),
            Self::Overflow { name } => {
                write!(f, "{name}: the exact fraction does not fit 64 bits; use smaller tooth counts or fewer sets")
            }
            Self::Text { name, at, expected } => write!(f, "{name}: at character {}: expected {expected}", at + 1),
        }
    }
}

impl core::error::Error for Error {}

/// The value, if it is finite.
#[inline]
pub(crate) fn finite(name: &'static str, value: f64) -> Result<f64> {
    if value.is_finite() { Ok(value) } else { Err(Error::NotFinite { name, value }) }
}

/// The value, if it is finite and above zero.
#[inline]
pub(crate) fn positive(name: &'static str, value: f64) -> Result<f64> {
    if value > 0.0 && value <= f64::MAX {
        Ok(value)
    } else {
        Err(not_finite_or(name, value, Error::NotPositive { name, value }))
    }
}

/// The value, if it lies within the finite bounds `low..=high`.
#[inline]
pub(crate) fn within(name: &'static str, value: f64, low: f64, high: f64) -> Result<f64> {
    if (low..=high).contains(&value) {
        Ok(value)
    } else {
        Err(not_finite_or(name, value, Error::OutOfRange { name, value, low, high }))
    }
}

/// Why a value is refused; apart, so that a column of good values runs without it. The accepting side above compares only: a
/// test of the class of the number would cost a column more than its formula.
#[cold]
fn not_finite_or(name: &'static str, value: f64, other: Error) -> Error {
    if value.is_finite() { other } else { Error::NotFinite { name, value } }
}

/// The pair, if both are finite and the lower does not exceed the upper.
pub(crate) fn ordered(name: &'static str, lower: f64, upper: f64) -> Result<(f64, f64)> {
    if finite(name, lower)? <= finite(name, upper)? {
        Ok((lower, upper))
    } else {
        Err(Error::Reversed { name, lower, upper })
    }
}
