//! The flash image: what firmware and scan tools need of a record, in two to four kilobytes that are read in place.
//!
//! [`write()`] makes an image; [`Image::open`] checks one (mark, version, length, checksum, and that every part can be read)
//! and then hands out its parts. Nothing is copied but the part that is asked for, and names are borrowed from the image.
//!
//! | bytes | part |
//! |---|---|
//! | 4 | mark `TWFI` |
//! | 2 | version of the layout |
//! | 4 | length of the whole image |
//! | 15 | [`Counts`](Image): members, sets, elements, gears, packs, shifts; input, output, fixed member; gears of the live monitor; variants, parts, marks, sizes, fits |
//! | fixed | linings, ratings, drive line, fluid, fill: a flag and the fields of each, zeros where not given |
//! | per item | sets, elements, gears, packs, shifts |
//! | per item | live monitor, if there are gears for it: its gears with ratio and suspects, then what heats each element |
//! | per item | family, if there are variants: prior of each variant; chance of exchange of each part; marks, then the chance of each in each variant; sizes, then the limits of each in each variant; fits, then the shaft of each in each variant, then the bore |
//! | per name | one byte of length and the text: title, members, elements, gears; variants, parts, marks, sizes, fits |
//! | 4 | CRC-32 of all before it (ISO-HDLC, as in Ethernet and zip) |
//!
//! Numbers are little-endian, without padding; fields come in the order of their structs (`flash/packed.rs`).

mod family;
mod image;
mod live;
mod packed;

pub use family::{
    FamilyContents, FamilyCounts, MAX_IMAGE_FITS, MAX_IMAGE_MARKS, MAX_IMAGE_PARTS, MAX_IMAGE_SIZES,
    MAX_IMAGE_VARIANTS, NO_SIZE, PartFit, PartMark, PartSize,
};
pub use image::Image;

use crate::clutch::ElementPack;
use crate::error::{Error, Result};
use crate::fluid::{Fill, Fluid};
use crate::judge::{Limits, Reading};
use crate::live::{LiveElement, LiveGear, MAX_LIVE_ELEMENTS, MAX_LIVE_GEARS};
use crate::road::Driveline;
use crate::train::{Element, MAX_ELEMENTS, MAX_MEMBERS, MAX_SETS, PlanetarySet, Train};
use packed::{Packed, Writer};

/// Version of the layout that this library writes and reads.
pub const IMAGE_VERSION: u16 = 3;
/// Most gears of an image.
pub const MAX_GEARS: usize = 32;
/// Most shifts of an image.
pub const MAX_SHIFTS: usize = 64;
/// Longest name, bytes.
pub const MAX_NAME_BYTES: usize = 64;
/// A buffer of this size holds every image.
pub const MAX_IMAGE_BYTES: usize = SETS_AT
    + MAX_SETS * PlanetarySet::BYTES
    + MAX_ELEMENTS * (Element::BYTES + ElementPack::BYTES)
    + MAX_GEARS * Gear::BYTES
    + MAX_SHIFTS * Shift::BYTES
    + MAX_LIVE_GEARS * LiveGear::BYTES
    + MAX_LIVE_ELEMENTS * LiveElement::BYTES
    + (MAX_IMAGE_VARIANTS + MAX_IMAGE_PARTS) * f64::BYTES
    + MAX_IMAGE_MARKS * (PartMark::BYTES + MAX_IMAGE_VARIANTS * f64::BYTES)
    + MAX_IMAGE_SIZES * (PartSize::BYTES + MAX_IMAGE_VARIANTS * Limits::BYTES)
    + MAX_IMAGE_FITS * (PartFit::BYTES + MAX_IMAGE_VARIANTS * 2 * Limits::BYTES)
    + MAX_NAMES * (1 + MAX_NAME_BYTES)
    + u32::BYTES;
const MAX_NAMES: usize = 1
    + MAX_MEMBERS
    + MAX_ELEMENTS
    + MAX_GEARS
    + MAX_IMAGE_VARIANTS
    + MAX_IMAGE_PARTS
    + MAX_IMAGE_MARKS
    + MAX_IMAGE_SIZES
    + MAX_IMAGE_FITS;

/// A gear: what closes, and how much of the power it passes on.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gear {
    /// Mask of the elements that are applied.
    pub closed: u32,
    /// Mask of the one-way clutches that hold it under drive.
    pub one_way: u32,
    /// Efficiency on the road; 0 where the record states none.
    pub efficiency: f64,
}

/// A point of the shift schedule.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// Gear before.
    pub from: u8,
    /// Gear after.
    pub to: u8,
    /// Output-shaft speed at which it shifts, 1/min.
    pub output_rpm: f64,
}

/// Friction of the linings against steel in the unit's fluid.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Linings {
    /// Static friction: while it holds.
    pub holding: Reading,
    /// Dynamic friction: while it slips.
    pub slipping: Reading,
    /// Relative standard uncertainty of a capacity from the dimensions of pack and piston.
    pub geometry_u_rel: f64,
}

/// What the maker of the unit rates it for.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ratings {
    /// Torque at the turbine, N·m.
    pub turbine_nm: f64,
    /// Torque at the output, N·m.
    pub output_nm: f64,
    /// Torque at the turbine in reverse, N·m; 0 where none is stated.
    pub reverse_turbine_nm: f64,
    /// Greatest line pressure that the control gives, kPa.
    pub line_max_kpa: f64,
}

/// All that an image holds. Numbers of members, elements and gears are places in the lists.
#[derive(Clone, Copy, Debug)]
pub struct Contents<'a> {
    /// What the unit is called.
    pub title: &'a str,
    /// The gear train.
    pub train: &'a Train,
    /// Names of the members, as many as the train has.
    pub members: &'a [&'a str],
    /// Names of the elements, as many as the train has.
    pub elements: &'a [&'a str],
    /// Names of the gears.
    pub gear_names: &'a [&'a str],
    /// The gears.
    pub gears: &'a [Gear],
    /// Elements that are multi-plate packs.
    pub packs: &'a [ElementPack],
    /// Shift schedule.
    pub shifts: &'a [Shift],
    /// The gears as a live monitor tells them apart; an empty list for an image without.
    pub live_gears: &'a [LiveGear],
    /// What heats the elements, as many as the train has; an empty list without `live_gears`.
    pub live_elements: &'a [LiveElement],
    /// Linings in the unit's fluid.
    pub linings: Option<Linings>,
    /// The maker's ratings.
    pub ratings: Option<Ratings>,
    /// Axle and tire that the unit is programmed for.
    pub driveline: Option<Driveline>,
    /// The fluid in the unit.
    pub fluid: Option<Fluid>,
    /// Fill volumes, check window and sump.
    pub fill: Option<Fill>,
    /// Variants, evidence and fits of the family; empty lists for an image without.
    pub family: FamilyContents<'a>,
}

struct Counts {
    members: u8,
    sets: u8,
    elements: u8,
    gears: u8,
    packs: u8,
    shifts: u8,
    input: u8,
    output: u8,
    fixed: u8,
    live_gears: u8,
    family: FamilyCounts,
}

const MARK: [u8; 4] = *b"TWFI";
const LENGTH_AT: usize = MARK.len() + u16::BYTES;
const COUNTS_AT: usize = LENGTH_AT + u32::BYTES;
const LININGS_AT: usize = COUNTS_AT + Counts::BYTES;
const RATINGS_AT: usize = LININGS_AT + <Option<Linings>>::BYTES;
const DRIVELINE_AT: usize = RATINGS_AT + <Option<Ratings>>::BYTES;
const FLUID_AT: usize = DRIVELINE_AT + <Option<Driveline>>::BYTES;
const FILL_AT: usize = FLUID_AT + <Option<Fluid>>::BYTES;
const SETS_AT: usize = FILL_AT + <Option<Fill>>::BYTES;

fn crc32(bytes: &[u8]) -> u32 {
    const CRC: crc::Crc<u32, crc::NoTable> = crc::Crc::<u32, crc::NoTable>::new(&crc::CRC_32_ISO_HDLC);
    CRC.checksum(bytes)
}

fn refuse<T>(why: &'static str) -> Result<T> {
    Err(Error::Inconsistent { name: "flash image", why })
}

/// Writes the image of a unit; returns its length.
///
/// * `buffer` — [`MAX_IMAGE_BYTES`] are enough for every unit
/// * errors: [`Error::Count`] for lists that do not fit one another or the image, [`Error::Inconsistent`] for a buffer that is
///   too small, and whatever [`Image::open`] would refuse
pub fn write(contents: &Contents<'_>, buffer: &mut [u8]) -> Result<usize> {
    let train = contents.train;
    let (members, elements) = (train.members(), train.elements().len());
    count_of("member names", contents.members.len(), members.into(), members.into())?;
    count_of("element names", contents.elements.len(), elements, elements)?;
    count_of("gear names", contents.gear_names.len(), contents.gears.len(), contents.gears.len())?;
    let counts = Counts {
        members,
        sets: count_of("sets", train.sets().len(), 0, MAX_SETS)?,
        elements: count_of("elements", elements, 0, MAX_ELEMENTS)?,
        gears: count_of("gears", contents.gears.len(), 0, MAX_GEARS)?,
        packs: count_of("packs", contents.packs.len(), 0, elements)?,
        shifts: count_of("shifts", contents.shifts.len(), 0, MAX_SHIFTS)?,
        input: train.input(),
        output: train.output(),
        fixed: train.fixed(),
        live_gears: live::count_of_gears(contents, elements)?,
        family: contents.family.counts()?,
    };

    let mut writer = Writer::new(buffer);
    writer.put_bytes(&MARK)?;
    IMAGE_VERSION.put(&mut writer)?;
    0_u32.put(&mut writer)?;
    counts.put(&mut writer)?;
    contents.linings.put(&mut writer)?;
    contents.ratings.put(&mut writer)?;
    contents.driveline.put(&mut writer)?;
    contents.fluid.put(&mut writer)?;
    contents.fill.put(&mut writer)?;
    train.sets().iter().try_for_each(|set| set.put(&mut writer))?;
    train.elements().iter().try_for_each(|element| element.put(&mut writer))?;
    contents.gears.iter().try_for_each(|gear| gear.put(&mut writer))?;
    contents.packs.iter().try_for_each(|pack| pack.put(&mut writer))?;
    contents.shifts.iter().try_for_each(|shift| shift.put(&mut writer))?;
    contents.live_gears.iter().try_for_each(|gear| gear.put(&mut writer))?;
    contents.live_elements.iter().try_for_each(|element| element.put(&mut writer))?;
    contents.family.put(&mut writer)?;
    let of_train = contents.members.iter().chain(contents.elements).chain(contents.gear_names);
    for name in core::iter::once(&contents.title).chain(of_train).chain(contents.family.names()) {
        count_of("letters of a name", name.len(), 0, MAX_NAME_BYTES)?.put(&mut writer)?;
        writer.put_bytes(name.as_bytes())?;
    }
    let length = writer.written().len() + u32::BYTES;
    let length_field = writer.written().get_mut(LENGTH_AT..COUNTS_AT).unwrap_or_default();
    length_field.copy_from_slice(&(length as u32).to_le_bytes());
    crc32(writer.written()).put(&mut writer)?;
    Image::open(writer.written())?;
    Ok(length)
}

/// The count, if a list may be that long.
fn count_of(name: &'static str, count: usize, low: usize, high: usize) -> Result<u8> {
    match u8::try_from(count) {
        Ok(number) if (low..=high).contains(&count) => Ok(number),
        _ => Err(Error::Count { name, count: count as u32, low: low as u32, high: high as u32 }),
    }
}
