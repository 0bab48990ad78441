//! Shims and rings that are chosen at assembly: the record, and the way to the stack chapter.

use std::format;
use std::string::String;
use std::vec::Vec;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Family;
use super::document::Path;
use super::family::ClutchRecord;
use super::fault::Fault;
use super::quantity::Size;
use crate::error::{Error, Result, within};
use crate::judge::{Limits, Reading};
use crate::stack::{AxialGrowth, Piece, PistonStroke};

/// Shims and rings that are chosen at assembly.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Selective {
    /// End play wanted, mm.
    pub end_play_mm: Size,
    /// End play aimed at, mm.
    #[schemars(range(min = 0))]
    pub end_play_target_mm: f64,
    /// Thicknesses of the shims, mm.
    #[schemars(length(min = 1), extend("x-order" = "rising", "x-least" = 0))]
    pub shim_mm: Vec<f64>,
    /// Standard uncertainty of a shim, mm.
    #[schemars(range(min = 0))]
    pub shim_u_mm: f64,
    /// Thicknesses of the rings of brake B1, mm: short for `ring.B1`, with `ring_u_mm`.
    #[schemars(length(min = 1), extend("x-order" = "rising", "x-least" = 0))]
    pub ring_b1_mm: Option<Vec<f64>>,
    /// Standard uncertainty of a ring of brake B1, mm.
    #[schemars(range(min = 0))]
    pub ring_u_mm: Option<f64>,
    /// Rings or plates that set the clearance of a clutch or brake, by element.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    #[schemars(extend("x-refers" = "element"))]
    pub ring: IndexMap<String, RingRecord>,
    /// What warming up does to the end play.
    pub hot: Option<HotRecord>,
}

/// Rings or plates of one clutch or brake. The clearance wanted is the `clearance_mm` of the element.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RingRecord {
    /// Thicknesses, mm.
    #[schemars(length(min = 1), extend("x-order" = "rising", "x-least" = 0))]
    pub thickness_mm: Vec<f64>,
    /// Standard uncertainty of one, mm.
    #[schemars(range(min = 0))]
    pub u_mm: f64,
    /// Clearance aimed at, mm; the middle of the clearance wanted unless given.
    #[schemars(range(min = 0))]
    pub target_mm: Option<f64>,
}

/// What warming up does to the end play: case and train grow by different amounts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HotRecord {
    /// Length of the case between the two faces of the end play, mm.
    #[schemars(extend("x-above" = 0))]
    pub case_length_mm: Size,
    /// Length of the parts between the same faces, mm.
    #[schemars(extend("x-above" = 0))]
    pub train_length_mm: Size,
    /// Expansion of the case, 1/K.
    #[schemars(extend("x-most" = 0.001))]
    pub case_expansion_per_k: Size,
    /// Expansion of the parts, 1/K.
    #[schemars(extend("x-most" = 0.001))]
    pub train_expansion_per_k: Size,
    /// Temperature of the warm unit, °C.
    #[schemars(range(min = -40, max = 200))]
    pub temp_c: f64,
    /// End play wanted at that temperature, mm; left out, the hot value is only shown.
    pub end_play_mm: Option<Size>,
}

/// What can be chosen, and what for.
#[derive(Clone, Debug, PartialEq)]
pub struct Selectable {
    /// End play or clearance wanted, mm.
    pub window_mm: Limits,
    /// End play or clearance aimed at, mm.
    pub target_mm: f64,
    /// The list, by rising thickness, all in stock.
    pub pieces: Vec<Piece>,
}

/// What warming up does to the end play, and what is wanted then.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HotPlay {
    /// The lengths and expansions; each anywhere between its limits with the same chance.
    pub growth: AxialGrowth,
    /// Temperature of the warm unit, °C.
    pub temp_c: f64,
    /// End play wanted hot, mm; open on both sides where the record states none.
    pub window_mm: Limits,
}

impl Family {
    /// The shims of the record, and the end play that they are chosen for.
    pub fn shims(&self) -> Result<Selectable> {
        let Selective { end_play_mm, end_play_target_mm, shim_mm, shim_u_mm, .. } = self.selective()?;
        Ok(Selectable {
            window_mm: end_play_mm.limits(),
            target_mm: *end_play_target_mm,
            pieces: pieces(shim_mm, *shim_u_mm)?,
        })
    }

    /// The rings or plates of an element, and the clearance that they are chosen for.
    pub fn rings(&self, element: &str) -> Result<Selectable> {
        let (thickness_mm, u_mm, target_mm) = self
            .selective()?
            .rings_of(element)
            .ok_or(Error::Missing { name: "element", why: "the record lists no rings for it under selective.ring" })?;
        let clearance_mm = self.pack_of(element)?.clearance_mm;
        Ok(Selectable {
            window_mm: clearance_mm.limits(),
            target_mm: target_mm.unwrap_or(clearance_mm.middle()),
            pieces: pieces(thickness_mm, u_mm)?,
        })
    }

    /// The elements whose rings the record lists.
    #[must_use]
    pub fn elements_with_rings(&self) -> Vec<&str> {
        let Some(selective) = &self.selective else { return Vec::new() };
        let short = selective.ring_b1_mm.iter().map(|_| "B1");
        short.chain(selective.ring.keys().map(String::as_str)).collect()
    }

    /// What warming up does to the end play, if the record says so. Sizes hold at 20 °C (ISO 1) unless it says otherwise.
    #[must_use]
    pub fn hot_play(&self) -> Option<HotPlay> {
        let hot = self.selective.as_ref()?.hot.as_ref()?;
        let growth = AxialGrowth {
            case_length_mm: anywhere(hot.case_length_mm),
            train_length_mm: anywhere(hot.train_length_mm),
            case_expansion_per_k: anywhere(hot.case_expansion_per_k),
            train_expansion_per_k: anywhere(hot.train_expansion_per_k),
            reference_c: self.meta.reference_c.unwrap_or(20.0),
        };
        let open = Limits { lower: f64::NEG_INFINITY, upper: f64::INFINITY };
        Some(HotPlay { growth, temp_c: hot.temp_c, window_mm: hot.end_play_mm.map_or(open, Size::limits) })
    }

    /// The stroke of an element's piston at a clearance. `bend_mm` is what plates, ring and drum give way under pressure; the
    /// record's unless given.
    pub fn stroke(&self, element: &str, clearance_mm: Reading, bend_mm: Option<Reading>) -> Result<PistonStroke> {
        let pack = self.pack_of(element)?;
        let land_mm = pack.seal_land_mm.ok_or(Error::Missing {
            name: "seal_land_mm",
            why: "the record does not say how far the piston of this element may travel; add it to its [clutch] table",
        })?;
        let bend_mm = bend_mm.or(pack.bend_mm.map(anywhere)).ok_or(Error::Missing {
            name: "bend_mm",
            why: "the record does not say what plates and drum of this element give way; add it to its [clutch] table",
        })?;
        let wave_mm = pack.wave_mm.map_or(Reading { value: 0.0, u: 0.0 }, anywhere);
        Ok(PistonStroke { clearance_mm, wave_mm, bend_mm, land_mm: anywhere(land_mm) })
    }

    fn selective(&self) -> Result<&Selective> {
        self.selective
            .as_ref()
            .ok_or(Error::Missing { name: "selective", why: "the record has no [selective] table of shims and rings" })
    }

    fn pack_of(&self, element: &str) -> Result<&ClutchRecord> {
        self.clutch.get(element).ok_or(Error::Missing {
            name: "element",
            why: "the record has no [clutch] table of it, which holds the clearance wanted",
        })
    }
}

/// Anywhere between both limits with the same chance.
fn anywhere(size: Size) -> Reading {
    let Limits { lower, upper } = size.limits();
    Reading { value: size.middle(), u: 0.5 * (upper - lower) / crate::real::sqrt(3.0) }
}

fn pieces(thickness_mm: &[f64], u_mm: f64) -> Result<Vec<Piece>> {
    let piece = |&value| {
        Ok(Piece { thickness_mm: Reading::new(within("thickness_mm", value, 0.0, 1e6)?, u_mm)?, in_stock: true })
    };
    thickness_mm.iter().map(piece).collect()
}

impl Selective {
    /// Thicknesses, their uncertainty, and the clearance aimed at.
    fn rings_of(&self, element: &str) -> Option<(&[f64], f64, Option<f64>)> {
        match (self.ring.get(element), &self.ring_b1_mm, self.ring_u_mm) {
            (Some(ring), ..) => Some((&ring.thickness_mm, ring.u_mm, ring.target_mm)),
            (None, Some(thickness_mm), Some(u_mm)) if element == "B1" => Some((thickness_mm, u_mm, None)),
            _ => None,
        }
    }

    /// What the table says against itself and against the packs.
    pub(super) fn faults(&self, clutch: &IndexMap<String, ClutchRecord>) -> Vec<Fault> {
        let root = Path::default().key("selective");
        let mut faults = Vec::new();
        let [least, most] = self.end_play_mm.0;
        if !(least..=most).contains(&self.end_play_target_mm) {
            let message = format!("outside the end play wanted, {least} to {most}");
            faults.push(Fault::error(root.key("end_play_target_mm"), message, "correct one of them"));
        }
        faults.extend(step_too_wide(root.key("shim_mm"), &self.shim_mm, self.end_play_mm));
        if self.ring_b1_mm.is_some() != self.ring_u_mm.is_some() {
            let (has, lacks) =
                if self.ring_u_mm.is_some() { ("ring_u_mm", "ring_b1_mm") } else { ("ring_b1_mm", "ring_u_mm") };
            faults.push(Fault::error(root.key(has), format!("{lacks} is missing beside it"), format!("add {lacks}")));
        }
        if self.ring_b1_mm.is_some() && self.ring.contains_key("B1") {
            let message = "ring_b1_mm lists rings of B1 too";
            faults.push(Fault::error(root.key("ring").key("B1"), message, "keep one of the two"));
        }
        let short =
            self.ring_b1_mm.iter().map(|list| ("B1", root.key("ring_b1_mm"), root.key("ring_b1_mm"), list, None));
        let named = self.ring.iter().map(|(element, ring)| {
            let path = root.key("ring").key(element);
            (element.as_str(), path.clone(), path.key("target_mm"), &ring.thickness_mm, ring.target_mm)
        });
        for (element, path, target_path, list, target_mm) in short.chain(named) {
            let Some(pack) = clutch.get(element) else {
                let message = format!("no clearance is stated that the rings of {element} are chosen for");
                faults.push(Fault::note(path, message, format!("add clearance_mm in [clutch.{element}]")));
                continue;
            };
            let [least, most] = pack.clearance_mm.0;
            if target_mm.is_some_and(|target| !(least..=most).contains(&target)) {
                let message = format!("outside clutch.{element}.clearance_mm, {least} to {most}");
                faults.push(Fault::error(target_path, message, "correct one of them"));
            }
            faults.extend(step_too_wide(path, list, pack.clearance_mm));
        }
        faults
    }
}

/// A note where two neighbors of the list lie farther apart than the window is wide: some units then have no piece.
fn step_too_wide(path: Path, thickness_mm: &[f64], window_mm: Size) -> Option<Fault> {
    let [least, most] = window_mm.0;
    let (thin, thick) = thickness_mm.windows(2).find_map(|pair| match pair {
        // A picometer is the rounding of the sizes themselves.
        [thin, thick] if thick - thin > most - least + 1e-9 => Some((*thin, *thick)),
        _ => None,
    })?;
    let message =
        format!("the step from {thin} to {thick} is wider than the {least} to {most} wanted: some units have no piece");
    Some(Fault::note(path, message, "is a size missing?"))
}
