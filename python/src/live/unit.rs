//! A unit to watch: gears, elements, sensors and limits, checked and reduced once.

use std::collections::BTreeMap;

use pyo3::prelude::*;
use trainwright::live as core;
use trainwright::practice;
use trainwright::record::LiveWatch;

use super::found::{GearEvidence, Suspects};
use super::sensor::SpeedSensor;
use crate::array::{Input, Out, map};
use crate::class::{class, named};
use crate::error::{answer, raise, refuse};
use crate::train::Train;

class! {
    /// What counts as standing, as slip, as flare. Nothing is a default; `common_practice` takes usual values by name.
    "trainwright.live" Limits = core::LiveLimits {
        /// Output speed below which the unit stands and no ratio is formed, 1/min.
        standing_rpm: f32,
        /// Smallest slip at the input that is to be found, 1/min.
        slip_rpm: f32,
        /// Average time in gear to one false slip alarm, s: the setting of the sequential test.
        run_length_s: f32,
        /// Greatest difference in age of the two speeds, s: acceleration times this is no evidence.
        skew_s: f32,
        /// A window of the ratio closes at this relative standard uncertainty.
        ratio_u_rel: f32,
        /// Time after a shift before slip is judged, s.
        settle_s: f32,
        /// Time after a command by which the gear must be reached, s.
        follow_s: f32,
        /// Flare above which an event is raised, 1/min.
        flare_rpm: f32,
        /// Dip of the output during a shift above which an event is raised, over the output speed.
        dip_share: f32,
        /// Slip of the lock-up clutch below which it is locked, 1/min.
        lockup_slip_rpm: f32,
        /// Fluid temperature below which a shift is cold, °C.
        cold_c: f32,
        /// Fluid temperature above which an event is raised, °C.
        hot_c: f32,
        /// Driving time with the same temperature below `cold_c` after which its sensor counts as stuck, s.
        warm_up_s: f32,
    }
}

#[pymethods]
impl Limits {
    /// Usual values, taken by name from `practice`: common practice, no source. What depends on the sensors and on what is
    /// looked for is given: the smallest slip to be found, the difference in age of the speeds, how well a ratio is to be
    /// known.
    ///
    /// >>> limits = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
    /// >>> limits.flare_rpm, limits.run_length_s
    /// (50.0, 360000.0)
    #[staticmethod]
    #[pyo3(signature = (*, slip_rpm, skew_s, ratio_u_rel))]
    fn common_practice(slip_rpm: f32, skew_s: f32, ratio_u_rel: f32) -> Self {
        Self(core::LiveLimits {
            standing_rpm: practice::STANDING_OUTPUT_RPM as f32,
            slip_rpm,
            run_length_s: (practice::FALSE_ALARM_RUN_H * 3600.0) as f32,
            skew_s,
            ratio_u_rel,
            settle_s: practice::SHIFT_SETTLE_S as f32,
            follow_s: practice::SHIFT_FOLLOW_S as f32,
            flare_rpm: practice::FLARE_LOW_RPM as f32,
            dip_share: practice::TIE_UP_DIP_SHARE as f32,
            lockup_slip_rpm: practice::LOCKUP_SLIP_NORMAL_RPM as f32,
            cold_c: practice::SHIFT_COLD_C as f32,
            hot_c: practice::SUMP_ALARM_LOW_C as f32,
            warm_up_s: practice::WARM_UP_S as f32,
        })
    }
}

named! {
    /// An element that could be the one that slips in a gear.
    "trainwright.live" Suspect {
        /// Name of the element.
        element: String,
        /// Slip of the element per slip at the input, signed.
        slip_per_input_slip: f32,
    }
}

named! {
    /// A gear: its ratio, and the elements that hold it.
    "trainwright.live" Gear {
        /// Name.
        name: String,
        /// Number by which it is commanded: forward from 1, reverse from -1.
        number: i8,
        /// Input over output speed, negative for reverse.
        ratio: f32,
        /// The closed elements; a gear that slips does so in one of them.
        suspects: Vec<Suspect> = Vec::new(),
    }
}

named! {
    /// An element, and what its plates take up and give away. Without a heat capacity no temperature is formed.
    "trainwright.live" Element {
        /// Name.
        name: String,
        /// Heat capacity of its steel plates, J/K.
        heat_capacity_j_k: Option<f32> = None,
        /// Time in which the plates' excess over the fluid falls to 1/e, s.
        cooling_s: Option<f32> = None,
        /// Temperature of the plates above which they are overheated, °C.
        limit_c: Option<f32> = None,
    }
}

#[pymethods]
impl Element {
    /// An element from its pack: mass of all steel plates, kg, and specific heat of their steel, J/(kg·K).
    /// Source: definition of the specific heat.
    ///
    /// >>> Element.of_plates("C1", steel_mass_kg=2.4, specific_heat_j_kg_k=500.0, cooling_s=60.0, limit_c=200.0).heat_capacity_j_k
    /// 1200.0
    #[staticmethod]
    #[pyo3(signature = (name, *, steel_mass_kg, specific_heat_j_kg_k, cooling_s, limit_c))]
    fn of_plates(
        name: String,
        steel_mass_kg: f32,
        specific_heat_j_kg_k: f32,
        cooling_s: f32,
        limit_c: f32,
    ) -> PyResult<Self> {
        let of_plates = core::LiveElement::of_plates(steel_mass_kg, specific_heat_j_kg_k, cooling_s, limit_c);
        let core::LiveElement { heat_capacity_j_k, cooling_s, limit_c } = of_plates.map_err(raise)?;
        Ok(Self {
            name,
            heat_capacity_j_k: Some(heat_capacity_j_k),
            cooling_s: Some(cooling_s),
            limit_c: Some(limit_c),
        })
    }

    /// Whether a temperature can be formed.
    #[getter]
    fn is_known(&self) -> bool {
        self.core().is_known()
    }

    /// Mean temperature of the steel plates, °C, after a step of time in which this energy entered, J; NaN where the heat
    /// capacity is not known. The face of a plate is hotter for tenths of a second.
    /// Source: Incropera and others, lumped capacitance (from memory), its exponential by a quotient (derived).
    ///
    /// >>> pack = Element.of_plates("C1", steel_mass_kg=2.4, specific_heat_j_kg_k=500.0, cooling_s=60.0, limit_c=200.0)
    /// >>> round(pack.plate_after_c(plate_c=80.0, fluid_c=80.0, energy_j=20000.0, span_s=0.0), 2)
    /// 96.67
    #[pyo3(signature = (*, plate_c, fluid_c, energy_j, span_s, out = None))]
    fn plate_after_c<'py>(
        &self,
        py: Python<'py>,
        plate_c: Input<'py>,
        fluid_c: Input<'py>,
        energy_j: Input<'py>,
        span_s: Input<'py>,
        out: Option<Out<'py>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let element = self.core();
        let columns = [("plate_c", plate_c), ("fluid_c", fluid_c), ("energy_j", energy_j), ("span_s", span_s)];
        map(py, columns, out, |row| {
            let [plate_c, fluid_c, energy_j, span_s] = row.map(|value| value as f32);
            Ok(element.plate_after_c(plate_c, fluid_c, energy_j, span_s).into())
        })
    }

    /// Shifts of the same energy, J, at an even pace, s from shift to shift, until the plates reach their limit. `plate_c` is
    /// their temperature now, just after a shift. A computed limit is no rating.
    /// Source: lumped capacitance, geometric series of equal pulses (derived).
    ///
    /// >>> pack = Element.of_plates("C1", steel_mass_kg=2.4, specific_heat_j_kg_k=500.0, cooling_s=60.0, limit_c=200.0)
    /// >>> pack.shifts_to_limit(plate_c=80.0, fluid_c=80.0, energy_j=48000.0, pace_s=10.0).shifts
    /// 4
    #[pyo3(signature = (*, plate_c, fluid_c, energy_j, pace_s))]
    fn shifts_to_limit(&self, plate_c: f32, fluid_c: f32, energy_j: f32, pace_s: f32) -> PyResult<ShiftsToLimit> {
        answer(self.core().shifts_to_limit(plate_c, fluid_c, energy_j, pace_s))
    }
}

impl Element {
    fn core(&self) -> core::LiveElement {
        core::LiveElement {
            heat_capacity_j_k: self.heat_capacity_j_k.unwrap_or(0.0),
            cooling_s: self.cooling_s.unwrap_or(0.0),
            limit_c: self.limit_c.unwrap_or(0.0),
        }
    }
}

class! {
    /// How many shifts the plates stand at a pace.
    "trainwright.live" ShiftsToLimit = core::ShiftsToLimit, explained by ["live.shifts_to_limit"] {
        /// Rise of the plates in one shift, K.
        rise_k: f32,
        /// Temperature after a shift that any number of them ends at, °C.
        settled_c: f32,
        /// Further shifts, the last of which reaches the limit; 4294967295 where the pace never reaches it.
        shifts: u32,
    }
}

named! {
    /// A unit to watch, checked. Many monitors share one.
    "trainwright.live" Unit, checked by is_sound {
        /// Gears in any order.
        gears: Vec<Gear>,
        /// Elements that the suspects name.
        elements: Vec<Element> = Vec::new(),
        /// Sensor of the input speed.
        input: SpeedSensor,
        /// Sensor of the output speed.
        output: SpeedSensor,
        /// Sensor of the engine speed; None where there is none.
        engine: Option<SpeedSensor> = None,
        /// What counts as what.
        limits: Limits,
        /// Nominal time between two samples, s.
        sample_s: f32,
    }
}

#[pymethods]
impl Unit {
    /// The unit of a train: one gear for each ratio, with the slip of every element that holds it per slip at the input, all
    /// from the teeth. The number of a gear is in its name. `heat` says what is known of the plates of elements.
    ///
    /// >>> from pathlib import Path
    /// >>> family = record.load(Path(trainwright.__file__).parent / "demo" / "family.toml")
    /// >>> sensor = SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.9, age_limit_s=0.05, greatest_rpm=8000.0)
    /// >>> limits = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
    /// >>> unit = Unit.of_train(family.train("wren"), input=sensor, output=sensor, limits=limits, sample_s=0.01)
    /// >>> fourth = unit.gears[3]
    /// >>> fourth.name, [(suspect.element, round(suspect.slip_per_input_slip, 3)) for suspect in fourth.suspects]
    /// ('4', [('B1', 1.322), ('C1', -2.055), ('C3', 4.264)])
    #[staticmethod]
    #[pyo3(signature = (train, *, input, output, engine = None, limits, sample_s, heat = Vec::new()))]
    fn of_train(
        train: &Train,
        input: SpeedSensor,
        output: SpeedSensor,
        engine: Option<SpeedSensor>,
        limits: Limits,
        sample_s: f32,
        heat: Vec<Element>,
    ) -> PyResult<Self> {
        let of_engine = engine.unwrap_or(input).0;
        let watch = LiveWatch { input: input.0, output: output.0, engine: of_engine, limits: limits.0, sample_s };
        let named = train.named().live_unit(&watch).map_err(raise)?;
        let element = |number: u8| named.elements.get(usize::from(number)).cloned().unwrap_or_default();
        let gears = named.gears.iter().zip(&named.unit.gears).map(|(name, gear)| Gear {
            name: name.clone(),
            number: gear.number,
            ratio: gear.ratio,
            suspects: gear
                .suspects
                .iter()
                .take(gear.suspect_count.into())
                .map(|suspect| Suspect {
                    element: element(suspect.element),
                    slip_per_input_slip: suspect.slip_per_input_slip,
                })
                .collect(),
        });
        if let Some(unknown) = heat.iter().find(|heat| !named.elements.contains(&heat.name)) {
            let known = named.elements.join(", ");
            let message = format!("heat: the train has no element {:?}; it has {known}", unknown.name);
            return Err(refuse("MISSING", "heat", message));
        }
        let elements = named.elements.iter().map(|name| {
            let known = heat.iter().find(|heat| heat.name == *name).cloned();
            known.unwrap_or(Element { name: name.clone(), heat_capacity_j_k: None, cooling_s: None, limit_c: None })
        });
        let unit =
            Self { gears: gears.collect(), elements: elements.collect(), input, output, engine, limits, sample_s };
        is_sound(&unit)?;
        Ok(unit)
    }

    /// Odds of each element to be the one that slips, from what was seen in the gears: evidence by the name of the gear.
    /// Source: Bayes' rule over discrete hypotheses, one fault at a time; the assumed chances are on the card.
    #[pyo3(signature = (evidence))]
    fn weigh_suspects(&self, evidence: BTreeMap<String, GearEvidence>) -> PyResult<Suspects> {
        let planned = Planned::of(self)?;
        let mut seen = [core::GearEvidence::NONE; core::MAX_LIVE_GEARS];
        for (gear, found) in evidence {
            let place = planned.place(&gear)?;
            seen.get_mut(usize::from(place)).into_iter().for_each(|slot| *slot = found.0);
        }
        Ok(Suspects::named(&planned.plan.weigh_suspects(&seen), &planned))
    }

    /// Names of the gears, in the order of their places.
    #[getter]
    pub fn gear_names(&self) -> Vec<&str> {
        self.gears.iter().map(|gear| gear.name.as_str()).collect()
    }

    /// Names of the elements.
    #[getter]
    fn element_names(&self) -> Vec<&str> {
        self.elements.iter().map(|element| element.name.as_str()).collect()
    }
}

fn is_sound(unit: &Unit) -> PyResult<()> {
    Planned::of(unit).map(|_| ())
}

/// A unit as its monitors need it.
pub struct Planned {
    pub plan: core::LivePlan,
    pub unit: Unit,
}

/// Words that stand in the place of a gear's name.
const NO_GEARS: [(i8, &str); 3] =
    [(core::GEAR_IN_NONE, "none"), (core::GEAR_STANDS, "standing"), (core::GEAR_NOT_KNOWN, "unknown")];

impl Planned {
    /// The unit, checked.
    pub fn of(unit: &Unit) -> PyResult<Self> {
        Ok(Self { plan: plain(unit)?.plan().map_err(raise)?, unit: unit.clone() })
    }

    /// Name of the gear at a place, or the word for none.
    pub fn gear(&self, place: i8) -> &str {
        match usize::try_from(place) {
            Ok(place) => self.unit.gears.get(place).map_or("unknown", |gear| gear.name.as_str()),
            Err(_) => NO_GEARS.iter().find(|(code, _)| *code == place).map_or("unknown", |(_, word)| word),
        }
    }

    /// Name of an element.
    pub fn element(&self, number: u8) -> Option<&str> {
        self.unit.elements.get(usize::from(number)).map(|element| element.name.as_str())
    }

    /// Names of the elements of a mask.
    pub fn elements(&self, mask: u16) -> Vec<&str> {
        let named = self.unit.elements.iter().enumerate();
        named.filter(|(place, _)| mask >> place & 1 != 0).map(|(_, element)| element.name.as_str()).collect()
    }

    /// Place of a gear by its name.
    pub fn place(&self, name: &str) -> PyResult<u8> {
        let place = self.unit.gears.iter().position(|gear| gear.name == name);
        place.and_then(|place| u8::try_from(place).ok()).ok_or_else(|| {
            let known = self.unit.gear_names().join(", ");
            refuse("TEXT", "gear", format!("gear = {name:?}: the unit has no such gear; it has {known}"))
        })
    }

    /// Number of a gear by its name; 0 for neutral and park.
    pub fn number(&self, name: &str) -> Option<i8> {
        let gear = self.unit.gears.iter().find(|gear| gear.name == name);
        gear.map(|gear| gear.number).or_else(|| ["N", "P"].contains(&name).then_some(0))
    }
}

/// Names that are given twice, or that stand for something else.
fn distinct<'n>(what: &'static str, names: impl Iterator<Item = &'n str>) -> PyResult<()> {
    let mut seen = Vec::new();
    for name in names {
        if name.is_empty() || NO_GEARS.iter().any(|(_, word)| *word == name) || seen.contains(&name) {
            let message =
                format!("{what}: the name {name:?} is given twice or stands for something else; give another");
            return Err(refuse("INCONSISTENT", what, message));
        }
        seen.push(name);
    }
    Ok(())
}

/// Copies a list into an array of the core; more than that holds are refused by the core, which sees their number.
fn copied<T>(from: impl Iterator<Item = T>, to: &mut [T]) -> u8 {
    let mut count = 0_u8;
    let mut to = to.iter_mut();
    for value in from {
        if let Some(slot) = to.next() {
            *slot = value;
        }
        count = count.saturating_add(1);
    }
    count
}

fn plain(unit: &Unit) -> PyResult<core::LiveUnit> {
    distinct("gears", unit.gears.iter().map(|gear| gear.name.as_str()))?;
    distinct("elements", unit.elements.iter().map(|element| element.name.as_str()))?;
    let mut gears = [core::LiveGear::NONE; core::MAX_LIVE_GEARS];
    for (gear, to) in unit.gears.iter().zip(&mut gears) {
        *to = core::LiveGear::new(gear.number, gear.ratio);
        for suspect in &gear.suspects {
            if !unit.elements.iter().any(|element| element.name == suspect.element) {
                let Suspect { element, .. } = suspect;
                let message =
                    format!("gears: gear {} names element {element:?}, which the unit does not have", gear.name);
                return Err(refuse("INCONSISTENT", "gears", message));
            }
        }
        let suspects = gear.suspects.iter().filter_map(|suspect| {
            let element = unit.elements.iter().position(|element| element.name == suspect.element)?;
            let element = u8::try_from(element).ok()?;
            Some(core::LiveSuspect { element, slip_per_input_slip: suspect.slip_per_input_slip })
        });
        to.suspect_count = copied(suspects, &mut to.suspects);
    }
    let mut elements = [core::LiveElement::UNKNOWN; core::MAX_LIVE_ELEMENTS];
    let element_count = copied(unit.elements.iter().map(Element::core), &mut elements);
    Ok(core::LiveUnit {
        gears,
        gear_count: u8::try_from(unit.gears.len()).unwrap_or(u8::MAX),
        elements,
        element_count,
        input: unit.input.0,
        output: unit.output.0,
        engine: unit.engine.unwrap_or(unit.input).0,
        limits: unit.limits.0,
        sample_s: unit.sample_s,
    })
}
