//! The C interface. Every function returns a `tw_status`, takes structs by `const *`, and answers through its last
//! pointers, which it leaves untouched on failure. The caller owns all memory; there is no heap, no global, no callback.
//!
//! `ffi/<chapter>.rs` mirrors `core/<chapter>.rs`; a function here is one expression over the core function of the same
//! name. All `unsafe` is in [`pointer`], and so is the one safety contract: a pointer is null, which gives a status, or valid.
#![cfg_attr(target_os = "none", no_std)]
#![allow(clippy::missing_safety_doc)]

mod pointer;
mod status;

pub mod judge;
pub mod train;

pub use status::Status;

#[cfg(target_os = "none")]
#[panic_handler]
fn panic(_: &core::panic::PanicInfo<'_>) -> ! {
    unsafe extern "C" {
        /// Deliberately undefined: a panic path that the linker can reach fails the link.
        fn trainwright_has_a_reachable_panic() -> !;
    }
    // SAFETY: never linked; see above.
    unsafe { trainwright_has_a_reachable_panic() }
}
