//! Status numbers: 0 is an answer, negative is no answer, positive is an answer outside the trusted range.

use trainwright::Error;

/// What became of a call. 0 is an answer; a negative number is no answer, and the results are untouched; a positive number
/// is an answer outside the trusted range of its source. Numbers are never reused; treat an unknown negative number as
/// failure. `tw_status_text` puts each into words.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Answered.
    Ok = 0,
    /// A required pointer is null.
    Null = -1,
    /// A number is NaN or infinite.
    NotFinite = -2,
    /// A number must be above zero.
    NotPositive = -3,
    /// A number lies outside the range of the source.
    OutOfRange = -4,
    /// A lower limit lies above its upper limit.
    Reversed = -5,
    /// Too few or too many items.
    Count = -6,
    /// Values contradict one another.
    Inconsistent = -7,
    /// Something needed was not given.
    Missing = -8,
    /// An exact fraction does not fit 64 bits.
    Overflow = -9,
    /// A text cannot be read.
    Text = -10,
    /// The question has no answer, by physics.
    NoAnswer = -11,
    /// A failure this version of the header does not name.
    Other = -99,
}

impl From<Error> for Status {
    fn from(error: Error) -> Self {
        match error {
            Error::NotFinite { .. } => Self::NotFinite,
            Error::NotPositive { .. } => Self::NotPositive,
            Error::OutOfRange { .. } => Self::OutOfRange,
            Error::Reversed { .. } => Self::Reversed,
            Error::Count { .. } => Self::Count,
            Error::Inconsistent { .. } => Self::Inconsistent,
            Error::Missing { .. } => Self::Missing,
            Error::Overflow { .. } => Self::Overflow,
            Error::Text { .. } => Self::Text,
            Error::NoAnswer { .. } => Self::NoAnswer,
            _ => Self::Other,
        }
    }
}

/// A status in words: a static, zero-terminated text that is never null. Any number is accepted.
#[unsafe(no_mangle)]
pub extern "C" fn tw_status_text(status: i32) -> *const core::ffi::c_char {
    const TEXTS: [&core::ffi::CStr; 12] = [
        c"answered",
        c"a required pointer is null",
        c"a number is NaN or infinite",
        c"a number must be above zero",
        c"a number lies outside the range of the source",
        c"a lower limit lies above its upper limit",
        c"too few or too many items",
        c"values contradict one another",
        c"something needed was not given",
        c"an exact fraction does not fit 64 bits",
        c"a text cannot be read",
        c"the question has no answer",
    ];
    let text = if status > 0 {
        c"answered, outside the trusted range of the source"
    } else {
        TEXTS.get(status.unsigned_abs() as usize).copied().unwrap_or(c"failed for a reason this version does not name")
    };
    text.as_ptr()
}
