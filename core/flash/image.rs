//! Reading an image: the checks, and its parts one by one.

use super::packed::{Packed, Reader, TRUNCATED};
use super::{
    COUNTS_AT, Counts, DRIVELINE_AT, FILL_AT, FLUID_AT, Gear, IMAGE_VERSION, LININGS_AT, Linings, MARK, RATINGS_AT,
    Ratings, SETS_AT, Shift, crc32, refuse,
};
use crate::clutch::ElementPack;
use crate::error::{Error, Result};
use crate::fluid::{Fill, Fluid};
use crate::road::Driveline;
use crate::train::{Element, PlanetarySet, Train};

/// An image that [`Image::open`] accepted.
#[derive(Clone, Copy, Debug)]
pub struct Image<'a> {
    bytes: &'a [u8],
}

impl<'a> Image<'a> {
    /// The image in these bytes, if it is whole, of this version, and every part of it can be read.
    ///
    /// * `bytes` — from the mark on; what follows the image (the rest of a flash page) is not looked at
    /// * errors: [`Error::Inconsistent`] for bytes that are no image, a truncated or a damaged one, [`Error::OutOfRange`] for
    ///   another version, and whatever is wrong with a part
    pub fn open(bytes: &'a [u8]) -> Result<Self> {
        let mut reader = Reader::at(bytes, 0);
        if reader.take_bytes(MARK.len())? != MARK {
            return refuse("it does not begin with the mark TWFI; these bytes are something else");
        }
        let version = u16::take(&mut reader)?;
        if version != IMAGE_VERSION {
            let (value, version) = (version.into(), IMAGE_VERSION.into());
            return Err(Error::OutOfRange { name: "version of the flash image", value, low: version, high: version });
        }
        let length = u32::take(&mut reader)? as usize;
        let body_length = length.checked_sub(u32::BYTES).ok_or(TRUNCATED)?;
        let (body, checksum) = bytes.get(..length).and_then(|b| b.split_at_checked(body_length)).ok_or(TRUNCATED)?;
        if checksum != crc32(body).to_le_bytes() {
            return refuse("the checksum is wrong: the bytes were damaged; write the image to the flash again");
        }
        let image = Self::checked_before(body);
        image.check_parts()?;
        Ok(image)
    }

    /// The image of bytes that [`Image::open`] accepted before, without the checks. Bytes that it would refuse give errors
    /// or wrong parts, but never a read outside of them.
    #[must_use]
    pub fn checked_before(bytes: &'a [u8]) -> Self {
        Self { bytes }
    }

    /// The bytes of the image without the checksum.
    #[must_use]
    pub fn bytes(&self) -> &'a [u8] {
        self.bytes
    }

    fn check_parts(&self) -> Result<()> {
        let Counts { members, gears, packs, shifts, .. } = self.counts()?;
        let elements = self.train()?.elements().len();
        for index in 0..gears {
            let gear = self.gear(index)?;
            if (gear.closed | gear.one_way).checked_shr(elements as u32).unwrap_or(0) != 0 {
                return refuse("a gear closes an element that the train does not have");
            }
        }
        for index in 0..packs {
            let ElementPack { element, turns_with, .. } = self.pack(index)?;
            if usize::from(element) >= elements || turns_with >= members {
                return refuse("a pack belongs to an element or member that the train does not have");
            }
        }
        for index in 0..shifts {
            let shift = self.shift(index)?;
            if shift.from >= gears || shift.to >= gears {
                return refuse("a shift names a gear that the unit does not have");
            }
        }
        self.part::<Option<Linings>>(LININGS_AT)?;
        self.part::<Option<Ratings>>(RATINGS_AT)?;
        self.part::<Option<Driveline>>(DRIVELINE_AT)?;
        self.part::<Option<Fluid>>(FLUID_AT)?;
        self.part::<Option<Fill>>(FILL_AT)?;
        self.check_live()?;
        self.check_family()?;
        let mut reader = Reader::at(self.bytes, self.names_at()?);
        for _ in 0..self.name_count()? {
            take_name(&mut reader)?;
        }
        match reader.take_bytes(1) {
            Err(_) => Ok(()),
            Ok(_) => refuse("there is something after its last name"),
        }
    }

    pub(super) fn part<T: Packed>(&self, offset: usize) -> Result<T> {
        T::take(&mut Reader::at(self.bytes, offset))
    }

    /// An item of a list of `count` items that starts at `offset`.
    pub(super) fn item<T: Packed>(&self, name: &'static str, offset: usize, index: u8, count: u8) -> Result<T> {
        self.part(offset + place(name, index, count)? * T::BYTES)
    }

    pub(super) fn counts(&self) -> Result<Counts> {
        self.part(COUNTS_AT)
    }

    fn elements_at(&self) -> Result<usize> {
        Ok(SETS_AT + usize::from(self.counts()?.sets) * PlanetarySet::BYTES)
    }

    fn gears_at(&self) -> Result<usize> {
        Ok(self.elements_at()? + usize::from(self.counts()?.elements) * Element::BYTES)
    }

    fn packs_at(&self) -> Result<usize> {
        Ok(self.gears_at()? + usize::from(self.counts()?.gears) * Gear::BYTES)
    }

    fn shifts_at(&self) -> Result<usize> {
        Ok(self.packs_at()? + usize::from(self.counts()?.packs) * ElementPack::BYTES)
    }

    /// Where the lists of the train end.
    pub(super) fn live_at(&self) -> Result<usize> {
        Ok(self.shifts_at()? + usize::from(self.counts()?.shifts) * Shift::BYTES)
    }

    /// Names of the unit and its train.
    pub(super) fn train_names(&self) -> Result<usize> {
        let Counts { members, elements, gears, .. } = self.counts()?;
        Ok(1 + usize::from(members) + usize::from(elements) + usize::from(gears))
    }

    fn name_count(&self) -> Result<usize> {
        Ok(self.train_names()? + self.counts()?.family.names())
    }

    /// The name at this place of a list of `count` names with `before` names ahead of it.
    fn name(&self, list: &'static str, before: usize, index: u8, count: u8) -> Result<&'a str> {
        let place = place(list, index, count)?;
        let mut reader = Reader::at(self.bytes, self.names_at()?);
        for _ in 0..before + place {
            take_name(&mut reader)?;
        }
        take_name(&mut reader)
    }

    /// What the unit is called.
    pub fn title(&self) -> Result<&'a str> {
        self.name("title", 0, 0, 1)
    }

    /// Name of a member of the train.
    pub fn member_name(&self, member: u8) -> Result<&'a str> {
        self.name("member", 1, member, self.counts()?.members)
    }

    /// Name of an element of the train.
    pub fn element_name(&self, element: u8) -> Result<&'a str> {
        let Counts { members, elements, .. } = self.counts()?;
        self.name("element", 1 + usize::from(members), element, elements)
    }

    /// Name of a gear.
    pub fn gear_name(&self, gear: u8) -> Result<&'a str> {
        let Counts { members, elements, gears, .. } = self.counts()?;
        self.name("gear", 1 + usize::from(members) + usize::from(elements), gear, gears)
    }

    /// The gear train, ready to solve.
    pub fn train(&self) -> Result<Train> {
        let Counts { members, sets, elements, input, output, fixed, .. } = self.counts()?;
        let mut train = Train::new(members, input, output, fixed)?;
        for index in 0..sets {
            train.add_set(self.item("set", SETS_AT, index, sets)?)?;
        }
        let elements_at = self.elements_at()?;
        for index in 0..elements {
            train.add_element(self.item("element", elements_at, index, elements)?)?;
        }
        Ok(train)
    }

    /// Number of gears.
    pub fn gear_count(&self) -> Result<u8> {
        Ok(self.counts()?.gears)
    }

    /// A gear.
    pub fn gear(&self, gear: u8) -> Result<Gear> {
        self.item("gear", self.gears_at()?, gear, self.counts()?.gears)
    }

    /// Number of packs.
    pub fn pack_count(&self) -> Result<u8> {
        Ok(self.counts()?.packs)
    }

    /// A pack, with the element of the train that it is.
    pub fn pack(&self, pack: u8) -> Result<ElementPack> {
        self.item("pack", self.packs_at()?, pack, self.counts()?.packs)
    }

    /// Number of points of the shift schedule.
    pub fn shift_count(&self) -> Result<u8> {
        Ok(self.counts()?.shifts)
    }

    /// A point of the shift schedule.
    pub fn shift(&self, shift: u8) -> Result<Shift> {
        self.item("shift", self.shifts_at()?, shift, self.counts()?.shifts)
    }

    /// Linings in the unit's fluid.
    pub fn linings(&self) -> Result<Linings> {
        self.given("linings", LININGS_AT)
    }

    /// The maker's ratings.
    pub fn ratings(&self) -> Result<Ratings> {
        self.given("ratings", RATINGS_AT)
    }

    /// Axle and tire that the unit is programmed for.
    pub fn driveline(&self) -> Result<Driveline> {
        self.given("drive line", DRIVELINE_AT)
    }

    /// The fluid in the unit.
    pub fn fluid(&self) -> Result<Fluid> {
        self.given("fluid", FLUID_AT)
    }

    /// Fill volumes, check window and sump.
    pub fn fill(&self) -> Result<Fill> {
        self.given("fill", FILL_AT)
    }

    fn given<T: Packed>(&self, name: &'static str, offset: usize) -> Result<T> {
        self.part::<Option<T>>(offset)?
            .ok_or(Error::Missing { name, why: "the record that the image was made from did not state it" })
    }
}

/// A place in a list of `count` items.
pub(super) fn place(list: &'static str, index: u8, count: u8) -> Result<usize> {
    if index < count {
        Ok(index.into())
    } else {
        let (value, high) = (index.into(), f64::from(count) - 1.0);
        Err(Error::OutOfRange { name: list, value, low: 0.0, high })
    }
}

pub(super) fn take_name<'a>(reader: &mut Reader<'a>) -> Result<&'a str> {
    let length = u8::take(reader)?;
    core::str::from_utf8(reader.take_bytes(length.into())?)
        .map_err(|_| Error::Inconsistent { name: "flash image", why: "a name is not UTF-8" })
}
