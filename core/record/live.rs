//! From a train to the unit that the live monitor watches: ratios, and the slip of each element that could be the one.

use std::string::String;
use std::vec::Vec;

use super::named_train::NamedTrain;
use crate::error::{Error, Result};
use crate::live::{
    LiveElement, LiveGear, LiveLimits, LiveSuspect, LiveUnit, MAX_LIVE_ELEMENTS, MAX_LIVE_GEARS, MAX_LIVE_SUSPECTS,
    SpeedSensor,
};
use crate::train::{Element, StateKind, Train};

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
    /// The unit. The heat capacity of its elements is not in a record: fill in `elements` where it is known.
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
    ///
    /// * errors: [`Error::Count`] for more gears, elements or holding elements than a [`LiveUnit`] holds; [`Error::Text`]
    ///   for a gear without a number in its name; those of [`Train::solve`]
    pub fn live_unit(&self, watch: &LiveWatch) -> Result<NamedLiveUnit> {
        let element_count = counted("elements", self.elements.len(), MAX_LIVE_ELEMENTS)?;
        let mut unit = LiveUnit {
            gears: [LiveGear::NONE; MAX_LIVE_GEARS],
            gear_count: 0,
            elements: [LiveElement::UNKNOWN; MAX_LIVE_ELEMENTS],
            element_count,
            input: watch.input,
            output: watch.output,
            engine: watch.engine,
            limits: watch.limits,
            sample_s: watch.sample_s,
        };
        let mut gears = Vec::new();
        let mut ratios = Vec::new();
        for gear in &self.gears {
            let closed = gear.closed | gear.one_way;
            let ratio = self.train.solve(closed)?.ratio;
            let Some(value) = ratio.value() else { continue };
            if ratios.contains(&ratio) {
                continue;
            }
            ratios.push(ratio);
            let number = number_of(&gear.id)?;
            let live = live_gear(&self.train, closed, LiveGear::new(number, value as f32))?;
            let count = counted("gears", ratios.len(), MAX_LIVE_GEARS)?;
            if let Some(slot) = unit.gears.get_mut(usize::from(unit.gear_count)) {
                *slot = live;
            }
            unit.gear_count = count;
            gears.push(gear.id.clone());
        }
        Ok(NamedLiveUnit { unit, gears, elements: self.elements.clone() })
    }
}

/// The gear with its suspects. With the output held, the input at 1 and one element released, that element turns by its slip
/// per slip at the input: both are linear, and zero together.
fn live_gear(train: &Train, closed: u32, mut gear: LiveGear) -> Result<LiveGear> {
    let mut held = *train;
    let output_brake = held.add_element(Element::brake(train.output(), train.fixed()))?;
    let bit = |element: u8| 1_u32.checked_shl(element.into()).unwrap_or(0);
    for element in (0..output_brake).filter(|&element| closed & bit(element) != 0) {
        let state = held.solve(closed & !bit(element) | bit(output_brake))?;
        let free = state.kind == StateKind::OutputHeld;
        let Some(slip) = state.slip(element).value().filter(|&slip| free && slip != 0.0) else { continue };
        let count = counted("suspects", usize::from(gear.suspect_count) + 1, MAX_LIVE_SUSPECTS)?;
        if let Some(slot) = gear.suspects.get_mut(usize::from(gear.suspect_count)) {
            *slot = LiveSuspect { element, slip_per_input_slip: slip as f32 };
        }
        gear.suspect_count = count;
    }
    Ok(gear)
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
