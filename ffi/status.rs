//! Status numbers: 0 is an answer, negative is no answer, positive is an answer outside the trusted range.

use trainwright::Error;

/// What became of a call. 0 is an answer; a negative number is no answer, and the results are untouched; a positive number
/// is an answer outside the trusted range of its source. Numbers are never reused; treat an unknown negative number as
/// failure. `tw_status_text` puts each into words.
#[repr(transparent)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Status(pub i32);

impl Status {
    /// Answered.
    pub const OK: Self = Self(0);
    /// A required pointer is null.
    pub const NULL: Self = Self(-1);
    /// A number is NaN or infinite.
    pub const NOT_FINITE: Self = Self(-2);
    /// A number must be above zero.
    pub const NOT_POSITIVE: Self = Self(-3);
    /// A number lies outside the range of the source.
    pub const OUT_OF_RANGE: Self = Self(-4);
    /// A lower limit lies above its upper limit.
    pub const REVERSED: Self = Self(-5);
    /// Too few or too many items.
    pub const COUNT: Self = Self(-6);
    /// Values contradict one another.
    pub const INCONSISTENT: Self = Self(-7);
    /// Something needed was not given.
    pub const MISSING: Self = Self(-8);
    /// An exact fraction does not fit 64 bits.
    pub const OVERFLOW: Self = Self(-9);
    /// A text cannot be read.
    pub const TEXT: Self = Self(-10);
    /// The question has no answer, by physics.
    pub const NO_ANSWER: Self = Self(-11);
    /// A failure this version of the header does not name.
    pub const OTHER: Self = Self(-99);
}

impl From<Error> for Status {
    fn from(error: Error) -> Self {
        match error {
            Error::NotFinite { .. } => Self::NOT_FINITE,
            Error::NotPositive { .. } => Self::NOT_POSITIVE,
            Error::OutOfRange { .. } => Self::OUT_OF_RANGE,
            Error::Reversed { .. } => Self::REVERSED,
            Error::Count { .. } => Self::COUNT,
            Error::Inconsistent { .. } => Self::INCONSISTENT,
            Error::Missing { .. } => Self::MISSING,
            Error::Overflow { .. } => Self::OVERFLOW,
            Error::Text { .. } => Self::TEXT,
            Error::NoAnswer { .. } => Self::NO_ANSWER,
            _ => Self::OTHER,
        }
    }
}

/// The status in words: a static, zero-terminated text that is never null.
#[unsafe(no_mangle)]
pub extern "C" fn tw_status_text(status: Status) -> *const core::ffi::c_char {
    let text = match status {
        Status::OK => c"answered",
        Status::NULL => c"a required pointer is null",
        Status::NOT_FINITE => c"a number is NaN or infinite",
        Status::NOT_POSITIVE => c"a number must be above zero",
        Status::OUT_OF_RANGE => c"a number lies outside the range of the source",
        Status::REVERSED => c"a lower limit lies above its upper limit",
        Status::COUNT => c"too few or too many items",
        Status::INCONSISTENT => c"values contradict one another",
        Status::MISSING => c"something needed was not given",
        Status::OVERFLOW => c"an exact fraction does not fit 64 bits",
        Status::TEXT => c"a text cannot be read",
        Status::NO_ANSWER => c"the question has no answer",
        Status(1..) => c"answered, outside the trusted range of the source",
        Status(_) => c"failed for a reason this version does not name",
    };
    text.as_ptr()
}
