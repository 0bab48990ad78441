//! `tw_hydraulic_*`: pump, orifices, valves, line pressure needed and available, cooler flow.

pub mod cooler;
pub mod passage;
pub mod pressure;
pub mod pump;
