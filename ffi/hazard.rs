//! `tw_hazard_*`: what can hurt someone, with a caution to print.

use crate::card::Text;
use crate::pointer::{core, put};
use crate::status::Status;
use trainwright::hazard::Hazard;

/// A hazard in words.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct HazardText {
    /// Short name.
    pub title: Text,
    /// One sentence to print beside a result.
    pub caution: Text,
}

/// The words for a hazard, one of `TW_HAZARD_*`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_hazard_caution(hazard: i32, out_text: *mut HazardText) -> Status {
    unsafe {
        put(out_text, || {
            let hazard = core(Hazard::from_number(hazard))?;
            Ok(HazardText { title: hazard.title().into(), caution: hazard.caution().into() })
        })
    }
}
