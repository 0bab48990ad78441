//! Line pressure that a gear needs, and what a pattern of readings points to.

use pyo3::prelude::*;
use trainwright::hydraulic as core;

use crate::class::{class, words};
use crate::clutch::{GearReview, PressureNeeded};
use crate::error::{answer, raise};
use crate::judge::{Limits, Reading, Verdict};

class! {
    /// Line pressure of a gear.
    "trainwright.hydraulic" GearPressure = core::GearPressure, explained by ["hydraulic.gear_pressure"] {
        /// Place in the train of the element that needs most pressure.
        element: u8,
        /// Pressure that it needs.
        needed: PressureNeeded,
        /// What the gauge reads, kPa.
        reading_kpa: Reading,
        /// Reading less need, kPa; negative where it is short.
        spare_kpa: f64,
        /// Reading over need.
        reserve: f64,
        /// The most that the control can give, less the need, kPa; infinite where it is not known.
        control_spare_kpa: f64,
        /// Elements of the gear whose share the train does not determine.
        unknown: u32,
        /// Chance that the gear holds at the reading: the least of its elements'.
        chance: f64,
        /// The worst verdict of its elements; no GO while the share of one is not known.
        verdict: Verdict,
    }
}

/// Line pressure that a gear needs, against the gauge reading of its review and the most that the control can give.
/// `review` is of `trainwright.clutch.review` at the same reading. Source: follows from the definitions (the element that needs
/// most pressure rules the gear).
#[pyfunction]
#[pyo3(signature = (review, *, reading_kpa, control_max_kpa = f64::INFINITY))]
pub fn gear_pressure(
    review: PyRef<'_, GearReview>,
    reading_kpa: Reading,
    control_max_kpa: f64,
) -> PyResult<GearPressure> {
    answer(core::gear_pressure(review.core(), reading_kpa.into(), control_max_kpa))
}

words! {
    "kind" SuspectKind = core::SuspectKind {
        Nothing = "nothing",
        Supply = "supply",
        SupplyHot = "supply when hot",
        SupplyIdle = "supply at idle",
        SupplyIdleHot = "supply at hot idle",
        Boost = "boost",
        StuckHigh = "stuck high",
        HighIdle = "high at idle",
        Circuit = "circuit",
        CircuitHot = "circuit when hot",
    }
}

class! {
    /// The state of the unit at a reading.
    "trainwright.hydraulic" PressurePoint = core::PressurePoint {
        /// Elements applied: bit i is element i of `Train.elements`.
        closed: u32,
        /// At stall or full throttle; else at idle.
        at_stall: bool,
        /// Fluid temperature, °C.
        temp_c: f64,
    }
}

class! {
    /// A pressure reading and what it should be.
    "trainwright.hydraulic" PressureReading = core::PressureReading {
        /// The state of the unit.
        at: PressurePoint,
        /// What the gauge reads, kPa, with its uncertainty.
        reading_kpa: Reading,
        /// What it should read in that state, kPa.
        limits_kpa: Limits,
    }
}

class! {
    /// How readings are weighed.
    "trainwright.hydraulic" PatternRule = core::PatternRule {
        /// How often a suspect shows what it predicts, above 1/3 and below 1. No default: whoever weighs chooses it.
        kept: f64,
        /// Temperature from which the oil counts as hot, °C.
        hot_from_c: f64,
    }
}

class! {
    /// A suspect and its weight.
    "trainwright.hydraulic" PressureSuspect = core::PressureSuspect {
        /// What may be wrong.
        kind: SuspectKind,
        /// Place in the train of the element of the circuit; 0 for a kind without one.
        element: u8,
        /// Weight among all suspects; they sum to 1.
        share: f64,
        /// Readings that show what it predicts.
        fits: u32,
        /// Readings that show something else.
        against: u32,
        /// Suspects with the same number predict the same in every reading.
        group: u32,
    }
}

/// Suspects in the order of their weight.
#[pyclass(frozen, eq, skip_from_py_object, module = "trainwright.hydraulic")]
#[derive(Clone, PartialEq)]
pub struct PressureSuspects(core::PressureSuspects);

crate::class::explained!(PressureSuspects, ["hydraulic.suspect_circuits"], , []);

#[pymethods]
impl PressureSuspects {
    /// The suspects, the likeliest first.
    #[getter]
    fn ranked(&self) -> Vec<PressureSuspect> {
        self.0.ranked.iter().take(self.0.count as usize).copied().map(Into::into).collect()
    }

    /// Elements asked about that no reading applies, one bit each: nothing is said about their circuits.
    #[getter]
    fn untested(&self) -> u32 {
        self.0.untested
    }

    fn __repr__(&self) -> String {
        let first = self.0.ranked.first();
        let leads = first.map_or(String::new(), |row| format!("; first {:.2}", row.share));
        format!("<{} suspects{leads}>", self.0.count)
    }
}

fn plain<T, U: From<T>>(items: Vec<T>) -> Vec<U> {
    items.into_iter().map(U::from).collect()
}

/// How far each circuit would explain a pattern of pressure readings. Suspects, not proof.
/// `elements` are the clutches and brakes with a circuit, one bit each. Source: Bayes' rule, every suspect as likely as any other
/// beforehand.
///
/// >>> from trainwright.judge import Limits, Reading
/// >>> def idle(closed, kpa):
/// ...     at = PressurePoint(closed=closed, at_stall=False, temp_c=85)
/// ...     return PressureReading(at=at, reading_kpa=Reading(value=kpa, u=10), limits_kpa=Limits(lower=360, upper=440))
/// >>> found = suspect_circuits([idle(0b101, 300), idle(0b011, 400), idle(0b110, 295)], elements=0b111,
/// ...                          rule=PatternRule(kept=0.9, hot_from_c=70))
/// >>> found.ranked[0].kind, found.ranked[0].element
/// ('circuit', 2)
#[pyfunction]
#[pyo3(signature = (readings, *, elements, rule))]
pub fn suspect_circuits(
    readings: Vec<PressureReading>,
    elements: u32,
    rule: PatternRule,
) -> PyResult<PressureSuspects> {
    let readings: Vec<core::PressureReading> = plain(readings);
    core::suspect_circuits(&readings, elements, rule.into()).map(PressureSuspects).map_err(raise)
}

class! {
    /// What a reading worth taking would tell.
    "trainwright.hydraulic" NextReading = core::NextReading, explained by ["hydraulic.next_reading"] {
        /// Its place among the candidates.
        candidate: u32,
        /// What it is expected to tell, bits; 0 where no candidate tells anything.
        bits: f64,
    }
}

/// The reading that is expected to separate the suspects best. Source: Cover and Thomas, mutual information, from memory.
#[pyfunction]
#[pyo3(signature = (suspects, candidates, *, rule))]
pub fn next_reading(
    suspects: PyRef<'_, PressureSuspects>,
    candidates: Vec<PressurePoint>,
    rule: PatternRule,
) -> PyResult<NextReading> {
    let candidates: Vec<core::PressurePoint> = plain(candidates);
    answer(core::next_reading(&suspects.0, &candidates, rule.into()))
}
