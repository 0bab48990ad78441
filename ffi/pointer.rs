//! The helpers that hold every `unsafe` of the C interface.

use crate::status::Status;
use core::fmt;
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

/// Refuses a null pointer before anything else is looked at.
pub(crate) fn present<T>(pointer: *const T) -> core::result::Result<(), Status> {
    if pointer.is_null() { Err(Status::Null) } else { Ok(()) }
}

/// Writes a list through `out`, or nothing where it is null.
///
/// # Safety
/// A pointer that is not null must be aligned and writable for `N` `T`.
pub(crate) unsafe fn put_array<T, const N: usize>(out: *mut T, list: [T; N]) -> core::result::Result<(), Status> {
    present(out)?;
    // SAFETY: not null, aligned and writable by the caller's promise.
    unsafe { out.cast::<[T; N]>().write(list) };
    Ok(())
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

/// The zero-terminated text behind a pointer, UTF-8.
///
/// # Safety
/// A pointer that is not null must point to a text with a terminating zero.
pub(crate) unsafe fn terminated<'a>(text: *const core::ffi::c_char) -> core::result::Result<&'a str, Status> {
    if text.is_null() {
        return Err(Status::Null);
    }
    let mut length = 0;
    // SAFETY: up to the terminating zero, by the caller's promise.
    let bytes = unsafe {
        while text.add(length).read() != 0 {
            length += 1;
        }
        slice(text.cast::<u8>(), length)?
    };
    core::str::from_utf8(bytes).map_err(|_| Status::Text)
}

/// Writes a text and a terminating zero into the caller's `size` bytes, and its length without the zero through
/// `out_length`; [`Status::Count`], and nothing written, where it does not fit. With `size` 0 only the length is written.
///
/// # Safety
/// As for [`put`]; `out_text` must be writable for `size` bytes.
pub(crate) unsafe fn put_text<T: Copy>(
    out_text: *mut core::ffi::c_char,
    size: usize,
    out_length: *mut usize,
    answer: core::result::Result<T, Status>,
    write: impl Fn(T, &mut dyn fmt::Write) -> fmt::Result,
) -> Status {
    if out_text.is_null() || out_length.is_null() {
        return Status::Null;
    }
    let answer = match answer {
        Ok(answer) => answer,
        Err(status) => return status,
    };
    let mut counted = Counted(0);
    if write(answer, &mut counted).is_err() || (size > 0 && counted.0 >= size) {
        return Status::Count;
    }
    if size > 0 {
        // SAFETY: not null, and writable for `size` bytes by the caller's promise; the text and its zero fit.
        unsafe {
            let mut written = Written(out_text);
            if write(answer, &mut written).is_err() {
                return Status::Other;
            }
            written.0.write(0);
        }
    }
    // SAFETY: not null, aligned and writable by the caller's promise.
    unsafe { out_length.write(counted.0) };
    Status::Ok
}

/// Counts the bytes of a text.
struct Counted(usize);

impl fmt::Write for Counted {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.0 += text.len();
        Ok(())
    }
}

/// Writes a text that was counted before, behind this pointer.
struct Written(*mut core::ffi::c_char);

impl fmt::Write for Written {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for byte in text.bytes() {
            // SAFETY: the bytes were counted, and fit.
            unsafe {
                self.0.write(byte as core::ffi::c_char);
                self.0 = self.0.add(1);
            }
        }
        Ok(())
    }
}
