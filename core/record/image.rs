//! From a family to the flash image of one of its units.

use std::format;
use std::vec;
use std::vec::Vec;

use super::document::Path;
use super::family::Family;
use super::fault::Fault;
use super::problem::Problems;
use crate::clutch::ElementPack;
use crate::error::Error;
use crate::flash::{self, Contents, Gear, Linings, MAX_IMAGE_BYTES, Ratings, Shift};
use crate::fluid::{Fill, Fluid};
use crate::road::Driveline;

/// What a unit is installed with, from other records than its family's; an image leaves out what is not given.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Installed {
    /// Axle and tire that it is programmed for.
    pub driveline: Option<Driveline>,
    /// Its fluid.
    pub fluid: Option<Fluid>,
    /// Fill volumes, check window and sump.
    pub fill: Option<Fill>,
}

impl Family {
    /// The flash image of a unit: what firmware and scan tools need of this record, as [`flash::Image`] reads it.
    pub fn flash_image(&self, variant: &str, installed: Installed) -> Result<Vec<u8>, Problems> {
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
        let contents = Contents {
            title: &title,
            train: &named.train,
            members: &named.members.iter().map(AsRef::as_ref).collect::<Vec<_>>(),
            elements: &named.elements.iter().map(AsRef::as_ref).collect::<Vec<_>>(),
            gear_names: &named.gears.iter().map(|gear| gear.id.as_str()).collect::<Vec<_>>(),
            gears: &gears,
            packs: &packs,
            shifts: &shifts,
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
