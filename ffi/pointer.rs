//! The helpers that hold every `unsafe` of the C interface.

use crate::status::Status;
use trainwright::Result;

/// The struct behind a `const *`, or [`Status::Null`].
///
/// # Safety
/// A pointer that is not null must be aligned and point to an initialized `T`; C callers promise it by the signature.
pub(crate) unsafe fn read<T: Copy>(pointer: *const T) -> core::result::Result<T, Status> {
    // SAFETY: null is turned into an error; the rest is the caller's promise.
    unsafe { pointer.as_ref() }.copied().ok_or(Status::Null)
}

/// As [`read`], in place: for structs too large to copy.
///
/// # Safety
/// As for [`read`], and nothing changes the struct during the call.
pub(crate) unsafe fn borrow<'a, T>(pointer: *const T) -> core::result::Result<&'a T, Status> {
    // SAFETY: null is turned into an error; the rest is the caller's promise.
    unsafe { pointer.as_ref() }.ok_or(Status::Null)
}

/// The array behind a pointer and a count; a null pointer is accepted only for no elements.
///
/// # Safety
/// A pointer that is not null must point to `count` initialized `T`.
pub(crate) unsafe fn slice<'a, T>(pointer: *const T, count: usize) -> core::result::Result<&'a [T], Status> {
    if count == 0 {
        return Ok(&[]);
    }
    if pointer.is_null() {
        return Err(Status::Null);
    }
    // SAFETY: not null, and `count` elements by the caller's promise.
    Ok(unsafe { core::slice::from_raw_parts(pointer, count) })
}

/// The text of so many bytes behind a pointer, or [`Status::Text`] where it is not UTF-8.
///
/// # Safety
/// As for [`slice`].
pub(crate) unsafe fn text<'a>(
    text: *const ::core::ffi::c_char,
    length: usize,
) -> core::result::Result<&'a str, Status> {
    let bytes = unsafe { slice(text.cast::<u8>(), length)? };
    ::core::str::from_utf8(bytes).map_err(|_| Status::Text)
}

/// As [`slice`], refused where it is null even for no elements: the count comes from another argument.
///
/// # Safety
/// As for [`slice`].
pub(crate) unsafe fn array<'a, T>(pointer: *const T, count: usize) -> core::result::Result<&'a [T], Status> {
    if pointer.is_null() { Err(Status::Null) } else { unsafe { slice(pointer, count) } }
}

/// As [`array`], for one that the function fills in.
///
/// # Safety
/// As for [`slice`]; writable, and apart from every input.
pub(crate) unsafe fn array_mut<'a, T>(pointer: *mut T, count: usize) -> core::result::Result<&'a mut [T], Status> {
    if pointer.is_null() {
        return Err(Status::Null);
    }
    // SAFETY: not null, and `count` writable elements by the caller's promise.
    Ok(unsafe { core::slice::from_raw_parts_mut(pointer, count) })
}

/// What a function without an answer of its own gives back.
pub(crate) fn done(result: core::result::Result<(), Status>) -> Status {
    result.err().unwrap_or(Status::Ok)
}

/// As [`slice`], to write to; `blank` is written to it first, as memory that C has not set need not hold a `T`.
///
/// # Safety
/// A pointer that is not null must be aligned and writable for `count` `T`, and nothing else uses them during the call.
pub(crate) unsafe fn blank_slice<'a, T: Copy>(
    pointer: *mut T,
    count: usize,
    blank: T,
) -> core::result::Result<&'a mut [T], Status> {
    if count == 0 {
        return Ok(&mut []);
    }
    if pointer.is_null() {
        return Err(Status::Null);
    }
    // SAFETY: not null, and `count` elements that are the caller's to write, by the caller's promise.
    unsafe {
        for place in 0..count {
            pointer.add(place).write(blank);
        }
        Ok(core::slice::from_raw_parts_mut(pointer, count))
    }
}

/// Writes the answer through `out` and returns [`Status::Ok`], or leaves `out` untouched and returns what went wrong.
///
/// # Safety
/// A pointer that is not null must be aligned and writable for a `T`.
pub(crate) unsafe fn put<T>(out: *mut T, answer: impl FnOnce() -> core::result::Result<T, Status>) -> Status {
    if out.is_null() {
        return Status::Null;
    }
    match answer() {
        Ok(value) => {
            // SAFETY: not null, aligned and writable by the caller's promise.
            unsafe { out.write(value) };
            Status::Ok
        }
        Err(status) => status,
    }
}

/// As [`put`], for structs too large to pass by value on a small stack: `fill` works on `scratch`.
///
/// # Safety
/// As for [`put`].
pub(crate) unsafe fn put_filled<T: Copy>(
    out: *mut T,
    mut scratch: T,
    fill: impl FnOnce(&mut T) -> core::result::Result<(), Status>,
) -> Status {
    if out.is_null() {
        return Status::Null;
    }
    match fill(&mut scratch) {
        Ok(()) => {
            // SAFETY: not null, aligned and writable by the caller's promise.
            unsafe { out.write(scratch) };
            Status::Ok
        }
        Err(status) => status,
    }
}

/// Whether an enumerator or flag of one byte is below the number of its values, looked at before Rust takes it for one.
///
/// # Safety
/// The pointer must point to one initialized byte.
pub(crate) unsafe fn is_known<T>(field: *const T, count: u8) -> bool {
    // SAFETY: one byte, by the caller's promise.
    unsafe { field.cast::<u8>().read() < count }
}

/// As [`is_known`], as a status.
///
/// # Safety
/// As for [`is_known`].
pub(crate) unsafe fn known<T>(field: *const T, count: u8) -> core::result::Result<(), Status> {
    if unsafe { is_known(field, count) } { Ok(()) } else { Err(Status::OutOfRange) }
}

/// The enumerator with this number, of an enum of one byte with `count` values.
///
/// # Safety
/// `T` must be such an enum.
pub(crate) unsafe fn named<T: Copy>(number: u8, count: u8) -> core::result::Result<T, Status> {
    // SAFETY: the number is one of the enum's.
    if number < count { unsafe { read((&raw const number).cast::<T>()) } } else { Err(Status::OutOfRange) }
}

/// A core result as the answer of a C function.
pub(crate) fn core<T>(result: Result<T>) -> core::result::Result<T, Status> {
    result.map_err(Status::from)
}
