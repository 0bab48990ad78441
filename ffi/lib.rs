//! The C interface. Every function returns a `tw_status`, takes structs by `const *`, and answers through its last
//! pointers, which it leaves untouched on failure. The caller owns all memory; there is no heap, no global, no callback.
//!
//! `ffi/<chapter>.rs` mirrors `core/<chapter>.rs`; a function here is one expression over the core function of the same
//! name. All `unsafe` is in `pointer.rs`, and so is the one safety contract: a pointer is null, which gives a status, or valid.
#![cfg_attr(target_os = "none", no_std)]
#![allow(clippy::missing_safety_doc)]

mod pointer;
mod status;

pub mod card;
pub mod clutch;
pub mod converter;
pub mod duty;
pub mod fit;
pub mod flash;
pub mod fluid;
pub mod hazard;
pub mod hold;
pub mod hydraulic;
pub mod identify;
pub mod interchange;
pub mod judge;
pub mod live;
pub mod road;
pub mod stack;
pub mod tire;
pub mod tow;
pub mod train;
pub mod units;

pub use status::Status;

/// Version of this header.
pub const VERSION_MAJOR: u32 = 0;
/// Version of this header.
pub const VERSION_MINOR: u32 = 1;
/// Version of this header.
pub const VERSION_PATCH: u32 = 0;

/// Version of the linked library, major × 1 000 000 + minor × 1000 + patch. Compare it with `TW_VERSION_MAJOR`,
/// `TW_VERSION_MINOR` and `TW_VERSION_PATCH` at start-up.
#[unsafe(no_mangle)]
pub extern "C" fn tw_version() -> u32 {
    VERSION_MAJOR * 1_000_000 + VERSION_MINOR * 1000 + VERSION_PATCH
}

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

#[cfg(test)]
#[test]
fn the_header_has_the_version_of_the_package() {
    extern crate std;
    let header = std::format!("{VERSION_MAJOR}.{VERSION_MINOR}.{VERSION_PATCH}");
    assert_eq!(header, env!("CARGO_PKG_VERSION"));
}
