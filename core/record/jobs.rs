//! Jobs: the questions of a demonstration, with their inputs and the answer in words.

use std::string::String;
use std::vec::Vec;

use indexmap::IndexMap;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Jobs in order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Jobs")]
pub struct Jobs {
    /// Version of the record's layout: 1.
    #[schemars(range(min = 1, max = 1))]
    pub schema: u32,
    /// Jobs.
    pub job: Vec<Job>,
}

/// A job. Which inputs it has follows from what is asked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// Name of the job.
    #[schemars(extend("x-gives" = "job"))]
    pub id: String,
    /// The question.
    pub title: String,
    /// What happened.
    pub story: String,
    /// The answer in words.
    pub answer: String,
    /// Marks seen or found missing.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    #[schemars(extend("x-refers" = "evidence"))]
    pub seen: IndexMap<String, bool>,
    /// Sizes measured, mm.
    #[serde(default, skip_serializing_if = "IndexMap::is_empty")]
    pub measured_mm: IndexMap<String, f64>,
    /// Sets asked for: part, from variant, into variant.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub ask_sets: Vec<[String; 3]>,
    /// Slopes of damage at which a fleet is ranked.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(extend("x-order" = "rising", "x-least" = 1, "x-most" = 20))]
    pub slopes: Vec<f64>,
    /// Trucks concerned.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[schemars(extend("x-refers" = "truck"))]
    pub trucks: Vec<String>,
    /// Gauge pressure read, kPa.
    #[schemars(range(min = 0))]
    pub gauge_kpa: Option<f64>,
    /// Gap measured, mm.
    #[schemars(range(min = 0))]
    pub gap_mm: Option<f64>,
    /// Standard uncertainty of the gap, mm.
    #[schemars(range(min = 0))]
    pub gap_u_mm: Option<f64>,
    /// Standard uncertainty of the gasket, mm.
    #[schemars(range(min = 0))]
    pub gasket_u_mm: Option<f64>,
    /// Clearance of the pack of brake B1, mm.
    #[schemars(range(min = 0))]
    pub b1_clearance_mm: Option<f64>,
    /// Places at which that clearance was read; it is their mean.
    #[schemars(range(min = 1, max = 100))]
    pub b1_places: Option<u32>,
    /// Ring in place in brake B1, mm.
    #[schemars(range(min = 0))]
    pub b1_ring_fitted_mm: Option<f64>,
    /// Fluid filled.
    #[schemars(extend("x-refers" = "fluid"))]
    pub fluid: Option<String>,
    /// Temperatures at which the level was set, °C.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub set_at_c: Vec<f64>,
    /// Variant of the unit.
    #[schemars(extend("x-refers" = "variant"))]
    pub variant: Option<String>,
    /// Gear in effect.
    #[schemars(extend("x-refers" = "gear"))]
    pub gear: Option<String>,
    /// Input speed, 1/min.
    #[schemars(range(min = 0))]
    pub n_input_rpm: Option<f64>,
    /// Output speed, 1/min.
    #[schemars(range(min = 0))]
    pub n_output_rpm: Option<f64>,
    /// Engine speed, 1/min.
    #[schemars(range(min = 0))]
    pub n_engine_rpm: Option<f64>,
    /// Pulses counted.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub count: Vec<Count>,
    /// Log of a dyno or a road test: its file, seen from the folder of this record.
    pub log: Option<String>,
    /// Stall test made.
    pub measured: Option<Stall>,
    /// Stall test asked for.
    pub asked: Option<Stall>,
    /// Return flow of the cooler, measured at idle.
    pub cooler_test: Option<CoolerTest>,
    /// Line pressures read in several gears.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pressure: Vec<PressureTest>,
    /// Grades, percent.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub grades_pct: Vec<f64>,
    /// Rocking load over static load in the second pass.
    #[schemars(range(min = 1, max = 5))]
    pub rocking_factor: Option<f64>,
}

/// Pulses counted in a gear without slip.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Count {
    /// Gear in effect.
    #[schemars(extend("x-refers" = "gear"))]
    pub gear: String,
    /// Pulses at the input.
    pub input_pulses: u32,
    /// Pulses at the output.
    pub output_pulses: u32,
    /// Time, s.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub seconds: f64,
}

/// Stall test.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Stall {
    /// Truck.
    #[schemars(extend("x-refers" = "truck"))]
    pub truck: String,
    /// Engine speed reached, 1/min.
    #[schemars(range(min = 0))]
    pub n_stall_rpm: Option<f64>,
    /// Fluid temperature at which the stall begins, °C.
    #[schemars(range(min = -60, max = 300))]
    pub fluid_c: Option<f64>,
}

/// Return flow of the cooler, caught in a measure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CoolerTest {
    /// Volume caught, L.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub volume_l: f64,
    /// Relative standard uncertainty of that volume.
    #[schemars(range(min = 0, max = 1))]
    pub u_rel_volume: f64,
    /// Time it took, s.
    #[schemars(extend("exclusiveMinimum" = 0))]
    pub time_s: f64,
    /// Standard uncertainty of the time, s.
    #[schemars(range(min = 0))]
    pub time_u_s: f64,
    /// Temperature of the fluid, °C.
    #[schemars(range(min = -40, max = 150))]
    pub temperature_c: f64,
}

/// A line pressure that was read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PressureTest {
    /// Gear in effect.
    #[schemars(extend("x-refers" = "gear"))]
    pub gear: String,
    /// Whether it was read at stall; else at idle.
    pub stall: bool,
    /// Temperature of the fluid, °C.
    #[schemars(range(min = -40, max = 150))]
    pub temperature_c: f64,
    /// What the gauge read, kPa.
    #[schemars(range(min = 0))]
    pub gauge_kpa: f64,
}
