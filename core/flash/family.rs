//! What an image holds of the family: variants, evidence, and fits with their sizes in every variant.

use super::image::{Image, place, take_name};
use super::packed::{Packed, Reader, Writer};
use super::{count_of, refuse};
use crate::error::{Error, Result};
use crate::judge::Limits;

/// Most variants of an image.
pub const MAX_IMAGE_VARIANTS: usize = 16;
/// Most parts of an image.
pub const MAX_IMAGE_PARTS: usize = 64;
/// Most marks of an image.
pub const MAX_IMAGE_MARKS: usize = 64;
/// Most sizes of an image.
pub const MAX_IMAGE_SIZES: usize = 64;
/// Most fits of an image.
pub const MAX_IMAGE_FITS: usize = 64;
/// In place of a size that is no evidence.
pub const NO_SIZE: u8 = u8::MAX;

/// How many of each an image holds; all 0 without a family.
#[repr(C)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct FamilyCounts {
    /// Variants.
    pub variants: u8,
    /// Parts.
    pub parts: u8,
    /// Marks to look for.
    pub marks: u8,
    /// Sizes to measure.
    pub sizes: u8,
    /// Fits.
    pub fits: u8,
}

/// A mark that a part carries.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartMark {
    /// Labor to look, minutes.
    pub minutes: f64,
    /// The part that carries it.
    pub part: u8,
}

/// A size that a part has.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartSize {
    /// Labor to measure, minutes.
    pub minutes: f64,
    /// Standard uncertainty of the instrument, mm; 0 where it is not known: give that of the instrument at hand.
    pub u_mm: f64,
    /// The part that has it.
    pub part: u8,
}

/// A shaft in a bore.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartFit {
    /// Least and greatest diametral clearance wanted, mm: from 0 to the service limit, or below 0 of parts that hold by
    /// interference.
    pub wanted_mm: Limits,
    /// The part inside.
    pub shaft: u8,
    /// The part around it.
    pub bore: u8,
    /// The size of the evidence that is the diameter of the shaft, or TW_NO_SIZE.
    pub shaft_size: u8,
    /// The size of the evidence that is the diameter of the bore, or TW_NO_SIZE.
    pub bore_size: u8,
}

/// What is written of a family. Lists of sizes and chances hold one value for each variant, item by item.
#[derive(Clone, Copy, Debug, Default)]
pub struct FamilyContents<'a> {
    /// Names of the variants.
    pub variants: &'a [&'a str],
    /// Chance of each variant before anything is looked at.
    pub prior: &'a [f64],
    /// Names of the parts.
    pub parts: &'a [&'a str],
    /// Chance of each part that it came from another unit.
    pub exchanged: &'a [f64],
    /// Names of the marks.
    pub mark_names: &'a [&'a str],
    /// The marks.
    pub marks: &'a [PartMark],
    /// Chance of each mark in each variant.
    pub mark_chances: &'a [f64],
    /// Names of the sizes.
    pub size_names: &'a [&'a str],
    /// The sizes.
    pub sizes: &'a [PartSize],
    /// Limits of each size in each variant, mm.
    pub size_limits_mm: &'a [Limits],
    /// Names of the fits.
    pub fit_names: &'a [&'a str],
    /// The fits.
    pub fits: &'a [PartFit],
    /// Diameter of the shaft of each fit in each variant, mm.
    pub shaft_mm: &'a [Limits],
    /// Diameter of the bore of each fit in each variant, mm.
    pub bore_mm: &'a [Limits],
}

impl FamilyContents<'_> {
    /// How many of each, where the lists go together.
    pub(super) fn counts(&self) -> Result<FamilyCounts> {
        let counts = FamilyCounts {
            variants: count_of("variants", self.variants.len(), 0, MAX_IMAGE_VARIANTS)?,
            parts: count_of("parts", self.parts.len(), 0, MAX_IMAGE_PARTS)?,
            marks: count_of("marks", self.marks.len(), 0, MAX_IMAGE_MARKS)?,
            sizes: count_of("sizes", self.sizes.len(), 0, MAX_IMAGE_SIZES)?,
            fits: count_of("fits", self.fits.len(), 0, MAX_IMAGE_FITS)?,
        };
        let variants = self.variants.len();
        for (name, count, wanted) in [
            ("prior", self.prior.len(), variants),
            ("exchanged", self.exchanged.len(), self.parts.len()),
            ("mark names", self.mark_names.len(), self.marks.len()),
            ("chances of marks", self.mark_chances.len(), self.marks.len() * variants),
            ("size names", self.size_names.len(), self.sizes.len()),
            ("limits of sizes", self.size_limits_mm.len(), self.sizes.len() * variants),
            ("fit names", self.fit_names.len(), self.fits.len()),
            ("shafts of fits", self.shaft_mm.len(), self.fits.len() * variants),
            ("bores of fits", self.bore_mm.len(), self.fits.len() * variants),
        ] {
            if count != wanted {
                let (count, wanted) = (count as u32, wanted as u32);
                return Err(Error::Count { name, count, low: wanted, high: wanted });
            }
        }
        Ok(counts)
    }

    pub(super) fn put(&self, writer: &mut Writer<'_>) -> Result<()> {
        self.prior.iter().try_for_each(|chance| chance.put(writer))?;
        self.exchanged.iter().try_for_each(|chance| chance.put(writer))?;
        self.marks.iter().try_for_each(|mark| mark.put(writer))?;
        self.mark_chances.iter().try_for_each(|chance| chance.put(writer))?;
        self.sizes.iter().try_for_each(|size| size.put(writer))?;
        self.size_limits_mm.iter().try_for_each(|limits| limits.put(writer))?;
        self.fits.iter().try_for_each(|fit| fit.put(writer))?;
        self.shaft_mm.iter().chain(self.bore_mm).try_for_each(|limits| limits.put(writer))
    }

    pub(super) fn names(&self) -> impl Iterator<Item = &&str> {
        self.variants.iter().chain(self.parts).chain(self.mark_names).chain(self.size_names).chain(self.fit_names)
    }
}

/// Where each list of the family begins.
struct Places {
    counts: FamilyCounts,
    exchanged: usize,
    marks: usize,
    mark_chances: usize,
    sizes: usize,
    size_limits: usize,
    fits: usize,
    shafts: usize,
    bores: usize,
    end: usize,
}

impl FamilyCounts {
    fn places(self, start: usize) -> Places {
        let Self { variants, parts, marks, sizes, fits } = self;
        let [variants, parts, marks, sizes, fits] = [variants, parts, marks, sizes, fits].map(usize::from);
        let exchanged = start + variants * f64::BYTES;
        let marks_at = exchanged + parts * f64::BYTES;
        let mark_chances = marks_at + marks * PartMark::BYTES;
        let sizes_at = mark_chances + marks * variants * f64::BYTES;
        let size_limits = sizes_at + sizes * PartSize::BYTES;
        let fits_at = size_limits + sizes * variants * Limits::BYTES;
        let shafts = fits_at + fits * PartFit::BYTES;
        let bores = shafts + fits * variants * Limits::BYTES;
        let end = bores + fits * variants * Limits::BYTES;
        Places {
            counts: self,
            exchanged,
            marks: marks_at,
            mark_chances,
            sizes: sizes_at,
            size_limits,
            fits: fits_at,
            shafts,
            bores,
            end,
        }
    }

    pub(super) fn names(self) -> usize {
        let Self { variants, parts, marks, sizes, fits } = self;
        [variants, parts, marks, sizes, fits].map(usize::from).iter().sum()
    }
}

impl<'a> Image<'a> {
    /// Where the family ends and the names begin.
    pub(super) fn names_at(&self) -> Result<usize> {
        Ok(self.places()?.end)
    }

    fn places(&self) -> Result<Places> {
        Ok(self.counts()?.family.places(self.family_at()?))
    }

    pub(super) fn check_family(&self) -> Result<()> {
        let FamilyCounts { variants, parts, marks, sizes, fits } = self.counts()?.family;
        if variants == 0 && (parts | marks | sizes | fits) != 0 {
            return refuse("it has evidence or fits, but no variants");
        }
        let no_part = || refuse("a mark, size or fit belongs to a part that the family does not have");
        for mark in 0..marks {
            if self.mark(mark)?.part >= parts {
                return no_part();
            }
        }
        for size in 0..sizes {
            if self.size(size)?.part >= parts {
                return no_part();
            }
        }
        for fit in 0..fits {
            let PartFit { shaft, bore, shaft_size, bore_size, .. } = self.fit(fit)?;
            if shaft >= parts || bore >= parts {
                return no_part();
            }
            if [shaft_size, bore_size].iter().any(|size| *size >= sizes && *size != NO_SIZE) {
                return refuse("a fit names a size that the family does not have");
            }
        }
        Ok(())
    }

    /// How many variants, parts, marks, sizes and fits the image holds.
    pub fn family(&self) -> Result<FamilyCounts> {
        match self.counts()?.family {
            FamilyCounts { variants: 0, .. } => Err(Error::Missing {
                name: "family",
                why: "the image holds none: it was written without evidence, for a gear table alone",
            }),
            counts => Ok(counts),
        }
    }

    /// Chance of a variant before anything is looked at.
    pub fn prior(&self, variant: u8) -> Result<f64> {
        self.item("variant", self.family_at()?, variant, self.family()?.variants)
    }

    /// Chance that a part came from another unit, before anything is looked at.
    pub fn exchanged(&self, part: u8) -> Result<f64> {
        self.item("part", self.places()?.exchanged, part, self.family()?.parts)
    }

    /// A mark to look for.
    pub fn mark(&self, mark: u8) -> Result<PartMark> {
        self.item("mark", self.places()?.marks, mark, self.family()?.marks)
    }

    /// Chance that an untouched unit of a variant shows a mark.
    pub fn mark_chance(&self, mark: u8, variant: u8) -> Result<f64> {
        let Places { counts, mark_chances, .. } = self.places()?;
        self.cell(mark_chances, place("mark", mark, counts.marks)?, variant)
    }

    /// A size to measure.
    pub fn size(&self, size: u8) -> Result<PartSize> {
        self.item("size", self.places()?.sizes, size, self.family()?.sizes)
    }

    /// Limits of a size in a variant, mm.
    pub fn size_limits(&self, size: u8, variant: u8) -> Result<Limits> {
        let Places { counts, size_limits, .. } = self.places()?;
        self.cell(size_limits, place("size", size, counts.sizes)?, variant)
    }

    /// A fit.
    pub fn fit(&self, fit: u8) -> Result<PartFit> {
        self.item("fit", self.places()?.fits, fit, self.family()?.fits)
    }

    /// Diameter of the shaft of a fit in a variant, mm.
    pub fn fit_shaft(&self, fit: u8, variant: u8) -> Result<Limits> {
        let Places { counts, shafts, .. } = self.places()?;
        self.cell(shafts, place("fit", fit, counts.fits)?, variant)
    }

    /// Diameter of the bore of a fit in a variant, mm.
    pub fn fit_bore(&self, fit: u8, variant: u8) -> Result<Limits> {
        let Places { counts, bores, .. } = self.places()?;
        self.cell(bores, place("fit", fit, counts.fits)?, variant)
    }

    /// The value of an item in a variant, in a list that holds one for each.
    fn cell<T: Packed>(&self, offset: usize, item: usize, variant: u8) -> Result<T> {
        let variants = self.family()?.variants;
        let variant = place("variant", variant, variants)?;
        T::take(&mut Reader::at(self.bytes(), offset + (item * usize::from(variants) + variant) * T::BYTES))
    }

    /// Name of a variant.
    pub fn variant_name(&self, variant: u8) -> Result<&'a str> {
        self.family_name("variant", |counts| (0, counts.variants), variant)
    }

    /// Name of a part.
    pub fn part_name(&self, part: u8) -> Result<&'a str> {
        self.family_name("part", |counts| (counts.variants.into(), counts.parts), part)
    }

    /// Name of a mark.
    pub fn mark_name(&self, mark: u8) -> Result<&'a str> {
        let list = |counts: FamilyCounts| (usize::from(counts.variants) + usize::from(counts.parts), counts.marks);
        self.family_name("mark", list, mark)
    }

    /// Name of a size.
    pub fn size_name(&self, size: u8) -> Result<&'a str> {
        let list = |counts: FamilyCounts| {
            let before = FamilyCounts { sizes: 0, fits: 0, ..counts };
            (before.names(), counts.sizes)
        };
        self.family_name("size", list, size)
    }

    /// Name of a fit.
    pub fn fit_name(&self, fit: u8) -> Result<&'a str> {
        let list = |counts: FamilyCounts| (FamilyCounts { fits: 0, ..counts }.names(), counts.fits);
        self.family_name("fit", list, fit)
    }

    /// A name of the family; `list` says how many of its names stand before the list, and how long the list is.
    fn family_name(
        &self,
        name: &'static str,
        list: impl Fn(FamilyCounts) -> (usize, u8),
        index: u8,
    ) -> Result<&'a str> {
        let (before, count) = list(self.family()?);
        let skip = self.train_names()? + before + place(name, index, count)?;
        let mut reader = Reader::at(self.bytes(), self.names_at()?);
        for _ in 0..skip {
            take_name(&mut reader)?;
        }
        take_name(&mut reader)
    }
}
