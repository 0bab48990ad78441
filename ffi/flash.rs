//! `tw_flash_*`: the record of a unit as an image that is read in place.

use crate::card::Text;
use crate::pointer::{core, present, put, put_array, read, slice};
use crate::status::Status;
use trainwright::clutch::ElementPack;
use trainwright::flash::{FamilyCounts, Gear, Image, Linings, PartFit, PartMark, PartSize, Ratings, Shift};
use trainwright::fluid::{Fill, Fluid};
use trainwright::judge::Limits;
use trainwright::live::{LiveElement, LiveGear};
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

/// The gears as a live monitor takes them, for `gears` and `gear_count` of a `tw_live_unit`: ratio, and the elements that
/// could slip. `out_gears` has room for TW_MAX_LIVE_GEARS. TW_STATUS_MISSING where the image was written without them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_live_gears(
    image: *const FlashImage,
    out_gears: *mut LiveGear,
    out_count: *mut u8,
) -> Status {
    unsafe {
        put(out_count, || {
            present(out_gears)?;
            let (gears, count) = core(opened(image)?.live_gears())?;
            put_array(out_gears, gears)?;
            Ok(count)
        })
    }
}

/// What heats the elements of the train, for `elements` and `element_count` of a `tw_live_unit`; zeros where the record does
/// not say. `out_elements` has room for TW_MAX_LIVE_ELEMENTS.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_live_elements(
    image: *const FlashImage,
    out_elements: *mut LiveElement,
    out_count: *mut u8,
) -> Status {
    unsafe {
        put(out_count, || {
            present(out_elements)?;
            let (elements, count) = core(opened(image)?.live_elements())?;
            put_array(out_elements, elements)?;
            Ok(count)
        })
    }
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

/// How many variants, parts, marks, sizes and fits the image holds; TW_STATUS_MISSING without a family.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_family(image: *const FlashImage, out_counts: *mut FamilyCounts) -> Status {
    unsafe { put(out_counts, || core(opened(image)?.family())) }
}

/// Name of a variant.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_variant_name(image: *const FlashImage, variant: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.variant_name(variant).map(Text::from))) }
}

/// Name of a part.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_part_name(image: *const FlashImage, part: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.part_name(part).map(Text::from))) }
}

/// Name of a mark.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_mark_name(image: *const FlashImage, mark: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.mark_name(mark).map(Text::from))) }
}

/// Name of a size.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_size_name(image: *const FlashImage, size: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.size_name(size).map(Text::from))) }
}

/// Name of a fit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_fit_name(image: *const FlashImage, fit: u8, out_name: *mut Text) -> Status {
    unsafe { put(out_name, || core(opened(image)?.fit_name(fit).map(Text::from))) }
}

/// Chance of a variant before anything is looked at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_prior(image: *const FlashImage, variant: u8, out_chance: *mut f64) -> Status {
    unsafe { put(out_chance, || core(opened(image)?.prior(variant))) }
}

/// Chance that a part came from another unit, before anything is looked at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_exchanged(image: *const FlashImage, part: u8, out_chance: *mut f64) -> Status {
    unsafe { put(out_chance, || core(opened(image)?.exchanged(part))) }
}

/// A mark to look for.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_mark(image: *const FlashImage, mark: u8, out_mark: *mut PartMark) -> Status {
    unsafe { put(out_mark, || core(opened(image)?.mark(mark))) }
}

/// Chance that an untouched unit of a variant shows a mark: collect them for `tw_identify_add_seen`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_mark_chance(
    image: *const FlashImage,
    mark: u8,
    variant: u8,
    out_chance: *mut f64,
) -> Status {
    unsafe { put(out_chance, || core(opened(image)?.mark_chance(mark, variant))) }
}

/// A size to measure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_size(image: *const FlashImage, size: u8, out_size: *mut PartSize) -> Status {
    unsafe { put(out_size, || core(opened(image)?.size(size))) }
}

/// Limits of a size in a variant, mm: collect them for `tw_identify_add_measured`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_size_limits(
    image: *const FlashImage,
    size: u8,
    variant: u8,
    out_limits_mm: *mut Limits,
) -> Status {
    unsafe { put(out_limits_mm, || core(opened(image)?.size_limits(size, variant))) }
}

/// A fit: its parts, and the clearance wanted.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_fit(image: *const FlashImage, fit: u8, out_fit: *mut PartFit) -> Status {
    unsafe { put(out_fit, || core(opened(image)?.fit(fit))) }
}

/// Diameter of the shaft of a fit in a variant, mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_fit_shaft(
    image: *const FlashImage,
    fit: u8,
    variant: u8,
    out_shaft_mm: *mut Limits,
) -> Status {
    unsafe { put(out_shaft_mm, || core(opened(image)?.fit_shaft(fit, variant))) }
}

/// Diameter of the bore of a fit in a variant, mm.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_flash_fit_bore(
    image: *const FlashImage,
    fit: u8,
    variant: u8,
    out_bore_mm: *mut Limits,
) -> Status {
    unsafe { put(out_bore_mm, || core(opened(image)?.fit_bore(fit, variant))) }
}
