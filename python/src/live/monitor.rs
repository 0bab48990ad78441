//! One monitor, sample by sample.

use std::sync::Arc;

use pyo3::prelude::*;
use pyo3::types::{PyDict, PyString};
use trainwright::live as core;

use super::found::{Counts, Event, Ratio, Shift, State, Suspects};
use super::sample::{COUNT, sample};
use super::unit::{Planned, Unit};
use crate::error::refuse;

/// State of a unit that has not been heard of.
const NOT_HEARD: core::LiveState = core::LiveState {
    gear: core::GEAR_NOT_KNOWN,
    phase: core::ShiftPhase::NoGear,
    alarm: false,
    used: false,
    ratio: f32::NAN,
    ratio_u: f32::NAN,
    slip_rpm: f32::NAN,
    slip_u_rpm: f32::NAN,
    converter_slip_rpm: f32::NAN,
};

/// A monitor with what it has found so far.
#[derive(Clone)]
pub struct Watched {
    pub unit: Arc<Planned>,
    pub monitor: core::LiveMonitor,
    pub state: core::LiveState,
    pub events: Vec<core::LiveEvent>,
    pub shifts: Vec<core::LiveShift>,
    /// Rows without a time, which are no samples.
    pub no_time: u64,
}

impl Watched {
    /// A monitor that has seen nothing.
    pub fn new(unit: Arc<Planned>) -> Self {
        let monitor = core::LiveMonitor::new(&unit.plan);
        Self { unit, monitor, state: NOT_HEARD, events: Vec::new(), shifts: Vec::new(), no_time: 0 }
    }

    /// Takes a sample.
    #[inline]
    pub fn push(&mut self, sample: &core::LiveSample, found: &mut core::LiveEvents) {
        self.state = self.monitor.push(&self.unit.plan, sample, found);
        if found.count > 0 {
            self.keep(found);
        }
    }

    #[cold]
    fn keep(&mut self, found: &core::LiveEvents) {
        for event in found.found() {
            self.events.push(*event);
            if event.kind == core::LiveEventKind::ShiftDone {
                self.shifts.push(self.monitor.last_shift(&self.unit.plan));
            }
        }
    }

    /// Events from this place on, with names.
    fn events_from(&self, place: usize) -> Vec<Event> {
        self.events.iter().skip(place).map(|event| Event::named(event, &self.unit)).collect()
    }
}

/// Watches one unit, sample by sample: which gear is in effect, what slips, how each shift went.
///
/// Source: E. S. Page (1954) and D. Siegmund (1985) for the alarm (from memory), definitions for the rest; each rule has a card,
/// `live.judge_slip`, `live.last_shift`, `live.dip_rpm`, `live.energy_j`, `live.lockup_settled`, `live.wrong_teeth`, `live.swapped`,
/// `live.temp_stuck`.
///
/// >>> sensor = SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.5, age_limit_s=0.05, greatest_rpm=8000.0)
/// >>> limits = Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4)
/// >>> unit = Unit(gears=[Gear(name="1", number=1, ratio=4.0), Gear(name="2", number=2, ratio=2.5)],
/// ...             input=sensor, output=sensor, limits=limits, sample_s=0.01)
/// >>> monitor = Monitor(unit)
/// >>> for place in range(100):
/// ...     for event in monitor.push(time_s=place / 100, input_rpm=1500.0 + place, output_rpm=(1500.0 + place) / 2.5):
/// ...         print(event.kind, event.gear)
/// gear reached 2
/// >>> monitor.state.gear, monitor.state.phase
/// ('2', 'in gear')
#[pyclass(module = "trainwright.live")]
pub struct Monitor(pub Watched);

/// A number of a gear, or its name.
fn gear_number(unit: &Planned, gear: Option<&Bound<'_, PyAny>>) -> PyResult<f64> {
    let Some(gear) = gear else { return Ok(f64::NAN) };
    let Ok(name) = gear.cast::<PyString>() else { return gear.extract() };
    let name = name.to_str()?;
    unit.number(name).map(f64::from).ok_or_else(|| {
        let known = unit.unit.gear_names().join(", ");
        refuse("TEXT", "gear", format!("gear = {name:?}: give one of {known}, N, P, or a number"))
    })
}

#[pymethods]
impl Monitor {
    #[new]
    fn new(unit: &Unit) -> PyResult<Self> {
        Ok(Self(Watched::new(Arc::new(Planned::of(unit)?))))
    }

    /// Takes a sample and gives the events that it brought. The time is `time_s` or `time_us`; the speeds come as the
    /// sensors of the unit say: `_rpm` from a bus, `_pulses` since the sample before, with `_ticks` for edges. What is left
    /// out or NaN did not come. `gear` is the number of the commanded gear (forward from 1, reverse from -1, 0 neutral or
    /// park) or its name, `lockup` whether lock-up is commanded.
    #[pyo3(signature = (*, time_s = None, time_us = None, input_rpm = None, input_pulses = None, input_ticks = None,
        output_rpm = None, output_pulses = None, output_ticks = None, engine_rpm = None, engine_pulses = None,
        engine_ticks = None, pressure_kpa = None, temp_c = None, engine_torque_nm = None, gear = None, lockup = None))]
    fn push(
        &mut self,
        time_s: Option<f64>,
        time_us: Option<f64>,
        input_rpm: Option<f64>,
        input_pulses: Option<f64>,
        input_ticks: Option<f64>,
        output_rpm: Option<f64>,
        output_pulses: Option<f64>,
        output_ticks: Option<f64>,
        engine_rpm: Option<f64>,
        engine_pulses: Option<f64>,
        engine_ticks: Option<f64>,
        pressure_kpa: Option<f64>,
        temp_c: Option<f64>,
        engine_torque_nm: Option<f64>,
        gear: Option<&Bound<'_, PyAny>>,
        lockup: Option<f64>,
    ) -> PyResult<Vec<Event>> {
        let unit = &self.0.unit;
        let gear = gear_number(unit, gear)?;
        let given = u32::from(time_s.is_some()) | u32::from(time_us.is_some()) << 1;
        let number = |value: Option<f64>| value.unwrap_or(f64::NAN);
        let row: [f64; COUNT] = [
            number(time_s),
            number(time_us),
            number(input_rpm),
            number(input_pulses),
            number(input_ticks),
            number(output_rpm),
            number(output_pulses),
            number(output_ticks),
            number(engine_rpm),
            number(engine_pulses),
            number(engine_ticks),
            number(pressure_kpa),
            number(temp_c),
            number(engine_torque_nm),
            gear,
            number(lockup),
        ];
        let sample = sample(unit, given, &row).ok_or_else(|| {
            let message = "time_s: give the time of the sample, 0 or more, as time_s or time_us";
            refuse("MISSING", "time_s", message.into())
        })?;
        let known = self.0.events.len();
        self.0.push(&sample, &mut core::LiveEvents::NONE.clone());
        Ok(self.0.events_from(known))
    }

    /// The unit.
    #[getter]
    fn unit(&self) -> Unit {
        self.0.unit.unit.clone()
    }

    /// The state after the last sample.
    #[getter]
    fn state(&self) -> State {
        State::named(&self.0.state, &self.0.unit)
    }

    /// All events so far.
    #[getter]
    fn events(&self) -> Vec<Event> {
        self.0.events_from(0)
    }

    /// All shifts so far.
    #[getter]
    fn shifts(&self) -> Vec<Shift> {
        self.0.shifts.iter().map(|shift| Shift::named(shift, &self.0.unit)).collect()
    }

    /// What was counted.
    #[getter]
    fn counts(&self) -> Counts {
        self.0.monitor.counts().into()
    }

    /// Rows of the data without a time; they are no samples.
    #[getter]
    fn no_time(&self) -> u64 {
        self.0.no_time
    }

    /// The elements that may slip, most likely first.
    fn suspects(&self) -> Suspects {
        Suspects::named(&self.0.monitor.suspects(&self.0.unit.plan), &self.0.unit)
    }

    /// Probability of each gear by its name; "none" is none of them.
    /// Source: Bayes' rule over the gears and none of them, with a cost of changing; the card names what is assumed.
    fn gear_chances<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let chances = self.0.monitor.gear_chances(&self.0.unit.plan);
        let named = PyDict::new(py);
        for (gear, chance) in self.0.unit.unit.gears.iter().zip(chances) {
            named.set_item(&gear.name, chance)?;
        }
        named.set_item("none", chances.last())?;
        Ok(named)
    }

    /// The ratio of a gear as it was measured.
    /// Source: JCGM 100:2008, 5.1.2 (from memory), for a ratio of means over windows.
    fn ratio(&self, gear: &str) -> PyResult<Ratio> {
        let place = self.0.unit.place(gear)?;
        Ok(self.0.monitor.ratio(&self.0.unit.plan, place).into())
    }

    fn __repr__(&self) -> String {
        let Watched { unit, state, monitor, shifts, .. } = &self.0;
        let (gear, samples) = (unit.gear(state.gear), monitor.counts().samples);
        format!("<Monitor after {samples} samples: gear {gear}, {} shifts>", shifts.len())
    }
}
