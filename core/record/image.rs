//! From a family to the flash image of one of its units.

use std::format;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::document::Path;
use super::family::Family;
use super::fault::Fault;
use super::fits::FitKind;
use super::instruments::{InstrumentRecord, Instruments};
use super::problem::Problems;
use super::quantity::{PerVariant, Size};
use crate::clutch::ElementPack;
use crate::error::Error;
use crate::flash::{
    self, Contents, FamilyContents, Gear, Linings, MAX_IMAGE_BYTES, NO_SIZE, PartFit, PartMark, PartSize, Ratings,
    Shift,
};
use crate::fluid::{Fill, Fluid};
use crate::judge::Limits;
use crate::live::MAX_LIVE_ELEMENTS;
use crate::road::Driveline;

/// What a unit is installed with, from other records than its family's; an image leaves out what is not given.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Installed<'a> {
    /// Axle and tire that it is programmed for.
    pub driveline: Option<Driveline>,
    /// Its fluid.
    pub fluid: Option<Fluid>,
    /// Fill volumes, check window and sump.
    pub fill: Option<Fill>,
    /// The instruments of the shop: the sizes of the evidence take their uncertainty from here.
    pub instruments: Option<&'a Instruments>,
}

impl Family {
    /// The flash image of a unit: what firmware and scan tools need of this record, as [`flash::Image`] reads it. A unit that
    /// no live monitor can watch (a gear without a number in its name, more gears or elements than it takes) has an image
    /// without the gears for one.
    pub fn flash_image(&self, variant: &str, installed: Installed<'_>) -> Result<Vec<u8>, Problems> {
        let named = self.train(variant)?;
        let refused =
            |key: &str, error: Error| Problems(vec![Fault::refused(Path::default().key(key), error).unplaced()]);
        let title = match &self.meta.title {
            Some(title) => format!("{variant}, {title}"),
            None => variant.into(),
        };
        let gears: Vec<_> = named
            .gears
            .iter()
            .map(|gear| Gear { closed: gear.closed, one_way: gear.one_way, efficiency: gear.efficiency.unwrap_or(0.0) })
            .collect();
        let mut packs = Vec::new();
        for (element, name) in (0..).zip(&named.elements) {
            if let Some(clutch) = self.clutch.get(name) {
                let pack = clutch.pack(variant).map_err(|error| refused("clutch", error))?;
                let turns_with = place(named.members.iter().position(|member| *member == clutch.turns_with));
                packs.push(ElementPack { pack, element, turns_with });
            }
        }
        let gear_at = |id: &str| place(named.gears.iter().position(|gear| gear.id == id));
        let shifts: Vec<_> = self
            .shift
            .iter()
            .map(|shift| Shift { from: gear_at(&shift.from), to: gear_at(&shift.to), output_rpm: shift.output_rpm })
            .collect();
        let (live_gears, live_elements) = match named.live_gears() {
            Ok(gears) if named.elements.len() <= MAX_LIVE_ELEMENTS => {
                (gears.into_iter().map(|(_, gear)| gear).collect(), self.live_elements(&named, variant))
            }
            Ok(_) | Err(Error::Count { .. } | Error::Text { .. }) => (Vec::new(), Vec::new()),
            Err(error) => return Err(refused("train", error)),
        };
        let lists = FamilyLists::of(self, installed.instruments);
        let contents = Contents {
            title: &title,
            train: &named.train,
            members: &named.members.iter().map(AsRef::as_ref).collect::<Vec<_>>(),
            elements: &named.elements.iter().map(AsRef::as_ref).collect::<Vec<_>>(),
            gear_names: &named.gears.iter().map(|gear| gear.id.as_str()).collect::<Vec<_>>(),
            gears: &gears,
            packs: &packs,
            shifts: &shifts,
            live_gears: &live_gears,
            live_elements: &live_elements,
            linings: self.friction.as_ref().map(|friction| Linings {
                holding: friction.r#static.reading(),
                slipping: friction.dynamic.reading(),
                geometry_u_rel: friction.geometry_u_rel,
            }),
            ratings: self.variant.as_ref().and_then(|variants| variants.get(variant)).map(|rated| Ratings {
                turbine_nm: rated.rated_turbine_nm,
                output_nm: rated.rated_output_nm,
                reverse_turbine_nm: rated.reverse_turbine_nm.unwrap_or(0.0),
                line_max_kpa: rated.line_control_max_kpa,
            }),
            driveline: installed.driveline,
            fluid: installed.fluid,
            fill: installed.fill,
            family: lists.contents(),
        };
        let mut image = vec![0; MAX_IMAGE_BYTES];
        let length = flash::write(&contents, &mut image).map_err(|error| refused("train", error))?;
        image.truncate(length);
        Ok(image)
    }
}

/// The place of a name that the record was checked to have; one that it does not have is refused by the image.
fn place(found: Option<usize>) -> u8 {
    found.and_then(|place| u8::try_from(place).ok()).unwrap_or(u8::MAX)
}

/// Variants, evidence and fits as lists.
#[derive(Default)]
struct FamilyLists<'f> {
    variants: Vec<&'f str>,
    prior: Vec<f64>,
    parts: Vec<&'f str>,
    exchanged: Vec<f64>,
    mark_names: Vec<&'f str>,
    marks: Vec<PartMark>,
    mark_chances: Vec<f64>,
    size_names: Vec<&'f str>,
    sizes: Vec<PartSize>,
    size_limits_mm: Vec<Limits>,
    fit_names: Vec<&'f str>,
    fits: Vec<PartFit>,
    shaft_mm: Vec<Limits>,
    bore_mm: Vec<Limits>,
}

impl<'f> FamilyLists<'f> {
    /// The lists of a record that was checked. A prior that it does not state is 0, and refused where somebody weighs with it.
    fn of(family: &'f Family, instruments: Option<&Instruments>) -> Self {
        let variants: Vec<&str> = family.meta.variants.iter().map(String::as_str).collect();
        let prior =
            |variant: &&str| family.prior.as_ref().and_then(|prior| prior.get(*variant).copied()).unwrap_or(0.0);
        let mut lists = Self { prior: variants.iter().map(prior).collect(), ..Self::default() };
        let per_variant = |size_mm: &PerVariant<Size>| {
            let sizes = variants.iter().filter_map(|variant| size_mm.get(*variant));
            sizes.map(|size| size.limits()).collect::<Vec<_>>()
        };
        for mark in &family.evidence {
            let part = lists.part(&mark.carrier, Some(mark.exchanged));
            lists.mark_names.push(&mark.id);
            lists.marks.push(PartMark { minutes: mark.minutes, part });
            lists.mark_chances.extend(variants.iter().filter_map(|variant| mark.chance.get(*variant)));
        }
        for size in &family.evidence_measured {
            let part = lists.part(&size.carrier, Some(size.exchanged));
            let instrument = instruments.and_then(|instruments| instruments.instrument.get(&size.instrument));
            let u_mm = match instrument {
                Some(InstrumentRecord::Length { u_mm, .. }) => *u_mm,
                _ => 0.0,
            };
            lists.size_names.push(&size.id);
            lists.sizes.push(PartSize { minutes: size.minutes, u_mm, part });
            lists.size_limits_mm.extend(per_variant(&size.size_mm));
        }
        for fit in &family.fit {
            let (shaft, bore) = (lists.part(&fit.shaft, None), lists.part(&fit.bore, None));
            let size_at = |name: &Option<String>| {
                let found = name.as_ref().and_then(|name| lists.size_names.iter().position(|size| size == name));
                found.map_or(NO_SIZE, |size| place(Some(size)))
            };
            let (shaft_size, bore_size) = (size_at(&fit.shaft_size), size_at(&fit.bore_size));
            lists.fit_names.push(&fit.id);
            let wanted_mm = match fit.kind {
                FitKind::Running | FitKind::Locating => Limits { lower: 0.0, upper: fit.limit_mm },
                FitKind::Press => Limits { lower: f64::NEG_INFINITY, upper: 0.0 },
            };
            lists.fits.push(PartFit { wanted_mm, shaft, bore, shaft_size, bore_size });
            lists.shaft_mm.extend(per_variant(&fit.shaft_mm));
            lists.bore_mm.extend(per_variant(&fit.bore_mm));
        }
        Self { variants, ..lists }
    }

    /// The place of a part, which is new where it is named first; one without evidence has no chance of exchange.
    fn part(&mut self, name: &'f str, exchanged: Option<f64>) -> u8 {
        let found = self.parts.iter().position(|part| *part == name);
        place(found.or_else(|| {
            self.parts.push(name);
            self.exchanged.push(exchanged.unwrap_or(0.0));
            Some(self.parts.len() - 1)
        }))
    }

    fn contents(&self) -> FamilyContents<'_> {
        FamilyContents {
            variants: &self.variants,
            prior: &self.prior,
            parts: &self.parts,
            exchanged: &self.exchanged,
            mark_names: &self.mark_names,
            marks: &self.marks,
            mark_chances: &self.mark_chances,
            size_names: &self.size_names,
            sizes: &self.sizes,
            size_limits_mm: &self.size_limits_mm,
            fit_names: &self.fit_names,
            fits: &self.fits,
            shaft_mm: &self.shaft_mm,
            bore_mm: &self.bore_mm,
        }
    }
}
