//! Shop instruments: range, resolution and standard uncertainty of one reading.

use std::string::String;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::quantity::{Pair, Size};
use crate::error::{Error, Result, within};
use crate::judge::{Limits, Reading};

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

impl InstrumentRecord {
    /// One reading of this instrument with its standard uncertainty, in the unit that the instrument shows.
    pub fn reading(&self, value: f64) -> Result<Reading> {
        match self {
            Self::Length { range_mm, u_mm, .. } => inside("value (mm)", value, range_mm.limits(), *u_mm),
            Self::Temperature { range_c, u_c } => inside("value (°C)", value, range_c.limits(), *u_c),
            Self::Pressure { range_kpa, class_pct } => {
                let Limits { lower, upper } = range_kpa.limits();
                Reading::of_class(within("value (kPa)", value, lower, upper)?, upper, *class_pct)
            }
            Self::SpeedCounter { .. } => Err(Error::NoAnswer {
                name: "reading",
                why: "a counter's uncertainty follows from teeth, window and tick; count pulses instead",
            }),
        }
    }
}

fn inside(name: &'static str, value: f64, limits: Limits, u: f64) -> Result<Reading> {
    Reading::new(within(name, value, limits.lower, limits.upper)?, u)
}
