//! From a train to the unit that the live monitor watches: ratios, and the slip of each element that could be the one.

use core::f64::consts::PI;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::document::Path;
use super::family::{ClutchRecord, Family};
use super::fault::Fault;
use super::named_train::{NamedGear, NamedTrain};
use super::problem::Problems;
use crate::error::{Error, Result};
use crate::live::{
    LiveElement, LiveGear, LiveLimits, LiveSuspect, LiveUnit, MAX_LIVE_ELEMENTS, MAX_LIVE_GEARS, MAX_LIVE_SUSPECTS,
    SpeedSensor,
};
use crate::practice::{STEEL_DENSITY_KG_M3, STEEL_SPECIFIC_HEAT_J_KG_K};
use crate::train::{Load, MAX_ELEMENTS, State};

/// How a unit is watched: its sensors, and what counts as what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveWatch {
    /// Sensor of the input speed.
    pub input: SpeedSensor,
    /// Sensor of the output speed.
    pub output: SpeedSensor,
    /// Sensor of the engine speed.
    pub engine: SpeedSensor,
    /// What counts as standing, as slip, as flare.
    pub limits: LiveLimits,
    /// Nominal time between two samples, s.
    pub sample_s: f32,
}

/// A unit to watch, with the names of its record.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedLiveUnit {
    /// The unit. A train alone does not say what heats its elements: [`Family::live_unit`] does.
    pub unit: LiveUnit,
    /// Names of its gears, by place.
    pub gears: Vec<String>,
    /// Names of its elements, by number.
    pub elements: Vec<String>,
}

impl NamedTrain {
    /// The unit to watch: one gear for each ratio (1 and 1 with engine braking are one), with the slip of every element that
    /// holds it per slip at the input. The number of a gear is in its name: `4` and `4B` are 4, `R` is −1, `R2` is −2.
    ///
    /// An element whose release leaves the ratio as it is (a second path for the same torque) is no suspect.
    /// One-way clutches hold or overrun as under drive.
    ///
    /// * errors: [`Error::Count`] for more gears, elements or holding elements than a [`LiveUnit`] holds; [`Error::Text`]
    ///   for a gear without a number in its name; those of [`Train::resolve`](crate::train::Train::resolve)
    pub fn live_unit(&self, watch: &LiveWatch) -> Result<NamedLiveUnit> {
        let mut unit = LiveUnit {
            gears: [LiveGear::NONE; MAX_LIVE_GEARS],
            gear_count: 0,
            elements: [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS],
            element_count: counted("elements", self.elements.len(), MAX_LIVE_ELEMENTS)?,
            input: watch.input,
            output: watch.output,
            engine: watch.engine,
            limits: watch.limits,
            sample_s: watch.sample_s,
        };
        let gears = self.live_gears()?;
        unit.gear_count = gears.len() as u8;
        unit.gears.iter_mut().zip(&gears).for_each(|(slot, (_, gear))| *slot = *gear);
        let names = gears.into_iter().map(|(named, _)| named.id.clone()).collect();
        Ok(NamedLiveUnit { unit, gears: names, elements: self.elements.clone() })
    }

    /// The gears of the unit to watch, as [`live_unit`](Self::live_unit) has them.
    pub fn live_gears(&self) -> Result<Vec<(&NamedGear, LiveGear)>> {
        let mut gears = Vec::new();
        let mut ratios = Vec::new();
        for gear in &self.gears {
            let state = self.train.resolve(gear.closed, Load::Drive)?;
            let Some(ratio) = state.ratio.value() else { continue };
            if ratios.contains(&state.ratio) {
                continue;
            }
            ratios.push(state.ratio);
            let live = with_suspects(LiveGear::new(number_of(&gear.id)?, ratio as f32), &state)?;
            gears.push((gear, live));
        }
        counted("gears", gears.len(), MAX_LIVE_GEARS)?;
        Ok(gears)
    }
}

/// The gear with the elements that could slip in it: those that carry torque.
fn with_suspects(mut gear: LiveGear, state: &State) -> Result<LiveGear> {
    for element in (0..MAX_ELEMENTS as u8).filter(|element| state.closed >> element & 1 != 0) {
        let Some(factor) = state.slip_per_input_slip(element).value() else { continue };
        let count = counted("suspects", usize::from(gear.suspect_count) + 1, MAX_LIVE_SUSPECTS)?;
        if let Some(slot) = gear.suspects.get_mut(usize::from(gear.suspect_count)) {
            *slot = LiveSuspect { element, slip_per_input_slip: factor as f32 };
        }
        gear.suspect_count = count;
    }
    Ok(gear)
}

impl Family {
    /// The unit of a variant to watch, as [`NamedTrain::live_unit`] gives it, with what heats its elements.
    pub fn live_unit(&self, variant: &str, watch: &LiveWatch) -> core::result::Result<NamedLiveUnit, Problems> {
        let named = self.train(variant)?;
        let mut live = named
            .live_unit(watch)
            .map_err(|error| Problems(vec![Fault::refused(Path::default().key("train"), error).unplaced()]))?;
        live.unit
            .elements
            .iter_mut()
            .zip(self.live_elements(&named, variant))
            .for_each(|(slot, element)| *slot = element);
        Ok(live)
    }

    /// What heats each element of the train of a variant; zeros where the record gives no steel plates.
    pub(super) fn live_elements(&self, named: &NamedTrain, variant: &str) -> Vec<LiveElement> {
        let of = |name| self.clutch.get(name).and_then(|clutch| clutch.live_element(variant));
        named.elements.iter().map(|name| of(name).unwrap_or(LiveElement::UNKNOWN)).collect()
    }
}

impl ClutchRecord {
    /// What heats the pack of a variant: the heat that its steel plates take up, the lining left out.
    fn live_element(&self, variant: &str) -> Option<LiveElement> {
        let (steel, plates) = (self.steel?, self.plates.get(variant)?);
        let [inner_mm, outer_mm] = self.lining_radius_mm.0;
        let steel_mm3 = PI * (outer_mm * outer_mm - inner_mm * inner_mm) * steel.thickness_mm * f64::from(*plates);
        let heat_capacity_j_k = steel_mm3 * 1e-9 * STEEL_DENSITY_KG_M3 * STEEL_SPECIFIC_HEAT_J_KG_K;
        Some(LiveElement {
            heat_capacity_j_k: heat_capacity_j_k as f32,
            cooling_s: steel.cooling_s as f32,
            limit_c: steel.limit_c as f32,
        })
    }
}

/// The number in the name of a gear.
fn number_of(id: &str) -> Result<i8> {
    let (digits, sign) = match id.strip_prefix(['R', 'r']) {
        Some(digits) => (digits, -1),
        None => (id, 1),
    };
    let end = digits.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(digits.len());
    match digits.split_at(end).0.parse::<i8>() {
        Ok(number) if number > 0 => Ok(sign * number),
        _ if sign < 0 && end == 0 => Ok(-1),
        _ => Err(Error::Text { name: "gear", at: 0, expected: "a name that begins with the gear's number, or with R" }),
    }
}

fn counted(name: &'static str, count: usize, most: usize) -> Result<u8> {
    match u8::try_from(count) {
        Ok(fits) if count <= most => Ok(fits),
        _ => Err(Error::Count {
            name,
            count: u32::try_from(count).unwrap_or(u32::MAX),
            low: 0,
            high: u32::try_from(most).unwrap_or(u32::MAX),
        }),
    }
}
