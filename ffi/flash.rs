//! `tw_flash_*`: the record of a unit as an image that is read in place.

use crate::card::Text;
use crate::pointer::{core, put, read, slice};
use crate::status::Status;
use trainwright::clutch::ElementPack;
use trainwright::flash::{Gear, Image, Linings, Ratings, Shift};
use trainwright::fluid::{Fill, Fluid};
use trainwright::road::Driveline;
use trainwright::train::Train;

/// A flash image that `tw_flash_open` accepted. It points into the caller's memory, which must stay as it is.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct FlashImage {
    /// First byte.
    pub bytes: *const u8,
    /// Number of bytes, without the checksum.
    pub length: usize,
}

/// The image behind a pointer.
unsafe fn opened<'a>(image: *const FlashImage) -> Result<Image<'a>, Status> {
    let image = unsafe { read(image)? };
    Ok(Image::checked_before(unsafe { slice(image.bytes, image.length)? }))
}

/// Checks an image: mark, version, length, checksum, and that every part can be read. `length` may reach beyond its end, to
/// the end of the flash page.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_open(bytes: *const u8, length: usize, out_image: *mut FlashImage) -> Status {
    unsafe {
        put(out_image, || {
            let accepted = core(Image::open(slice(bytes, length)?))?.bytes();
            Ok(FlashImage { bytes: accepted.as_ptr(), length: accepted.len() })
        })
    }
}

/// What the unit is called.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_title(image: *const FlashImage, out_title: *mut Text) -> Status {
    unsafe { put(out_title, || core(opened(image)?.title().map(Text::from))) }
}

/// Name of a member of the train.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_member_name(image: *const FlashImage, member: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.member_name(member).map(Text::from))) }
}

/// Name of an element of the train.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_element_name(image: *const FlashImage, element: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.element_name(element).map(Text::from))) }
}

/// Name of a gear.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_gear_name(image: *const FlashImage, gear: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.gear_name(gear).map(Text::from))) }
}

/// The gear train, ready for `tw_train_resolve`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_train(image: *const FlashImage, out_train: *mut Train) -> Status {
    unsafe { put(out_train, || core(opened(image)?.train())) }
}

/// Number of gears.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_gear_count(image: *const FlashImage, out_count: *mut u8) -> Status {
    unsafe { put(out_count, || core(opened(image)?.gear_count())) }
}

/// A gear: what closes in it, and its efficiency.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_gear(image: *const FlashImage, gear: u8, out_gear: *mut Gear) -> Status {
    unsafe { put(out_gear, || core(opened(image)?.gear(gear))) }
}

/// Number of packs.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_pack_count(image: *const FlashImage, out_count: *mut u8) -> Status {
    unsafe { put(out_count, || core(opened(image)?.pack_count())) }
}

/// A pack, with the element of the train that it is: collect them for `tw_clutch_review`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_pack(image: *const FlashImage, pack: u8, out_pack: *mut ElementPack) -> Status {
    unsafe { put(out_pack, || core(opened(image)?.pack(pack))) }
}

/// Number of points of the shift schedule.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_shift_count(image: *const FlashImage, out_count: *mut u8) -> Status {
    unsafe { put(out_count, || core(opened(image)?.shift_count())) }
}

/// A point of the shift schedule.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_shift(image: *const FlashImage, shift: u8, out_shift: *mut Shift) -> Status {
    unsafe { put(out_shift, || core(opened(image)?.shift(shift))) }
}

/// Friction of the linings in the unit's fluid.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_linings(image: *const FlashImage, out_linings: *mut Linings) -> Status {
    unsafe { put(out_linings, || core(opened(image)?.linings())) }
}

/// The maker's ratings.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_ratings(image: *const FlashImage, out_ratings: *mut Ratings) -> Status {
    unsafe { put(out_ratings, || core(opened(image)?.ratings())) }
}

/// Axle and tire that the unit is programmed for.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_driveline(image: *const FlashImage, out_driveline: *mut Driveline) -> Status {
    unsafe { put(out_driveline, || core(opened(image)?.driveline())) }
}

/// The fluid in the unit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_fluid(image: *const FlashImage, out_fluid: *mut Fluid) -> Status {
    unsafe { put(out_fluid, || core(opened(image)?.fluid())) }
}

/// Fill volumes, check window and sump.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_fill(image: *const FlashImage, out_fill: *mut Fill) -> Status {
    unsafe { put(out_fill, || core(opened(image)?.fill())) }
}
