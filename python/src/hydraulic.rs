//! `trainwright.hydraulic`: pump, orifices, valves, line pressure needed and available, cooler flow.

mod cooler;
mod displacement;
mod gap;
mod orifice;
mod pressure;
mod pump;
mod valve;

pub use cooler::{CoolerCheck, CoolerLimits, CoolerReading, LeastFlow, TimedFlow, flow_at_reference, timed_flow};
pub use displacement::{
    ChamberDisplacement, InternalGearPump, external_gear_by_centers_cm3_rev, external_gear_cm3_rev, field_rule_cm3_rev,
    vane_cm3_rev, volumetric_efficiency,
};
pub use gap::{PumpClearance, SlidingGap, Slot, SlotFlow, pump_clearance, sliding_gap};
pub use orifice::{Orifice, OrificeFlow, in_parallel_mm2, in_series_mm2, orifice_diameter_mm, passage_flow_l_min};
pub use pressure::{
    GearPressure, NextReading, PatternRule, PressurePoint, PressureReading, PressureSuspect, PressureSuspects,
    gear_pressure, next_reading, suspect_circuits,
};
pub use pump::{FlowMargin, OilAt, Pump, PumpDuty, PumpFlow, oil_at};
pub use valve::{Land, Metering, Regulated, Regulator};
