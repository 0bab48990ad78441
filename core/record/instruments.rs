//! Shop instruments: range, resolution and standard uncertainty of one reading.

use std::string::String;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Pair, Size};

/// Instruments by name.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Instruments")]
pub struct Instruments {
    /// Version of the record's layout: 1.
    #[schemars(range(min = 1, max = 1))]
    pub schema: u32,
    /// Instruments by name.
    #[schemars(extend("x-gives" = "instrument"))]
    pub instrument: IndexMap<String, InstrumentRecord>,
}

/// An instrument. What it measures shows in the units of its keys.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(untagged, deny_unknown_fields)]
pub enum InstrumentRecord {
    /// Lengths.
    Length {
        /// Range, mm.
        range_mm: Size,
        /// Smallest step shown, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        resolution_mm: f64,
        /// Standard uncertainty of a reading, mm.
        #[schemars(extend("exclusiveMinimum" = 0))]
        u_mm: f64,
    },
    /// Pressure, by accuracy class.
    Pressure {
        /// Range, kPa.
        range_kpa: Size,
        /// Class, percent of full scale.
        #[schemars(range(min = 0.01, max = 10))]
        class_pct: f64,
    },
    /// Temperature.
    Temperature {
        /// Range, °C.
        range_c: Pair,
        /// Standard uncertainty of a reading, °C.
        #[schemars(extend("exclusiveMinimum" = 0))]
        u_c: f64,
    },
    /// Shaft speeds, by counting teeth.
    SpeedCounter {
        /// Tick of the timer, µs.
        #[schemars(extend("exclusiveMinimum" = 0))]
        timer_tick_us: f64,
        /// Teeth of the wheel on the input.
        #[schemars(range(min = 1, max = 500))]
        input_teeth: u32,
        /// Teeth of the wheel on the output.
        #[schemars(range(min = 1, max = 500))]
        output_teeth: u32,
        /// Teeth of the wheel on the engine.
        #[schemars(range(min = 1, max = 500))]
        engine_teeth: u32,
        /// Time over which pulses are counted, ms.
        #[schemars(extend("exclusiveMinimum" = 0))]
        window_ms: f64,
        /// Step of the speeds on the bus, 1/min.
        #[schemars(extend("exclusiveMinimum" = 0))]
        bus_step_rpm: f64,
        /// Time between two messages on the bus, ms.
        #[schemars(extend("exclusiveMinimum" = 0))]
        bus_period_ms: f64,
    },
}
