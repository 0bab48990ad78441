//! Pump, orifices, valves, line pressure needed and available, cooler flow.
//!
//! | file | holds |
//! |---|---|
//! | `displacement` | displacement of gear, internal gear and vane pumps from their sizes |
//! | `pump` | what a pump delivers hot, its margin at idle, the speed and temperature at which it gives up |
//! | `gap` | slots and sliding gaps, clearances of a pump |
//! | `orifice` | orifices, in parallel and in series |
//! | `valve` | balance of a regulator: spring, boost, stepped lands, force of the flow |
//! | `line` | line pressure that a gear needs, against the gauge |
//! | `suspects` | from a pattern of readings to the circuits that would explain it |
//! | `cooler` | return flow of the cooler against its limit by temperature |

mod cooler;
mod displacement;
mod gap;
mod line;
mod orifice;
mod pump;
mod suspects;
mod valve;

pub use cooler::{
    COOLER_ROWS, CoolerCheck, CoolerLimits, CoolerReading, LeastFlow, TimedFlow, flow_at_reference, timed_flow,
};
pub use displacement::{
    ChamberDisplacement, InternalGearPump, external_gear_by_centers_cm3_rev, external_gear_cm3_rev, field_rule_cm3_rev,
    vane_cm3_rev, volumetric_efficiency,
};
pub use gap::{PumpClearance, SlidingGap, Slot, SlotFlow, pump_clearance, sliding_gap};
pub use line::{GearPressure, gear_pressure};
pub use orifice::{
    Orifice, OrificeFlow, SHARP_EDGE_DISCHARGE, TURBULENT_REYNOLDS, in_parallel_mm2, in_series_mm2,
    orifice_diameter_mm, passage_flow_l_min,
};
pub use pump::{FlowMargin, OilAt, Pump, PumpDuty, PumpFlow, oil_at};
pub use suspects::{
    MAX_PRESSURE_SUSPECTS, NextReading, PatternRule, PressurePoint, PressureReading, PressureSuspect, PressureSuspects,
    SuspectKind, next_reading, suspect_circuits,
};
pub use valve::{Land, Metering, Regulated, Regulator, SHARP_EDGE_JET_DEG};

use crate::card::Card;
use crate::hazard::Hazard;

/// What to print beside a result of this chapter.
pub const HAZARDS: &[Hazard] =
    &[Hazard::HotFluid, Hazard::RollAway, Hazard::RaisedPressure, Hazard::StallHeat, Hazard::CompressedAir];

/// The formulas of this chapter.
pub const CARDS: &[Card] = &[
    displacement::EXTERNAL_GEAR,
    displacement::BY_CENTERS,
    displacement::CHAMBERS,
    displacement::VANE,
    displacement::FIELD_RULE,
    displacement::EFFICIENCY,
    pump::OIL_AT,
    pump::PUMP_FLOW,
    pump::LEAST_SPEED,
    pump::FLOW_MARGIN,
    pump::HOTTEST,
    gap::SLOT_FLOW,
    gap::SLIDING_GAP,
    gap::PUMP_CLEARANCE,
    orifice::ORIFICE_FLOW,
    orifice::ORIFICE_DROP,
    orifice::ORIFICE_SIZE,
    orifice::IN_PARALLEL,
    orifice::IN_SERIES,
    orifice::PASSAGE,
    valve::FLOW_FORCE,
    valve::REGULATED,
    valve::SPRING_FOR,
    line::GEAR_PRESSURE,
    suspects::SUSPECT_CIRCUITS,
    suspects::NEXT_READING,
    cooler::TIMED_FLOW,
    cooler::AT_REFERENCE,
    cooler::LEAST_FLOW,
    cooler::COOLER_CHECK,
];
