//! Recognizes the unit at the end of a key, so that a value given in another unit is named as such and converted.

use core::cmp::Reverse;
use std::format;
use std::string::String;
use std::vec::Vec;

use crate::units::{
    KELVIN_AT_0_C, KG_PER_LB, KM_PER_MILE, KPA_PER_PSI, KW_PER_HP, L_PER_QUART, MM_PER_IN, N_PER_LBF, NM_PER_LBF_FT,
};

/// A unit as a key names it. Values of one quantity compare through `value × factor + offset`.
pub(super) struct Unit {
    suffix: &'static str,
    pub(super) name: &'static str,
    quantity: &'static str,
    factor: f64,
    offset: f64,
}

const fn unit(suffix: &'static str, name: &'static str, quantity: &'static str, factor: f64) -> Unit {
    Unit { suffix, name, quantity, factor, offset: 0.0 }
}

const UNITS: &[Unit] = &[
    unit("mm", "millimeters", "length", 1.0),
    unit("cm", "centimeters", "length", 10.0),
    unit("m", "meters", "length", 1000.0),
    unit("um", "micrometers", "length", 0.001),
    unit("in", "inches", "length", MM_PER_IN),
    unit("thou", "thousandths of an inch", "length", MM_PER_IN / 1000.0),
    unit("ft", "feet", "length", MM_PER_IN * 12.0),
    unit("mm2", "square millimeters", "area", 1.0),
    unit("cm2", "square centimeters", "area", 100.0),
    unit("m2", "square meters", "area", 1e6),
    unit("in2", "square inches", "area", MM_PER_IN * MM_PER_IN),
    unit("ml", "milliliters", "volume", 1.0),
    unit("l", "liters", "volume", 1000.0),
    unit("cm3", "cubic centimeters", "volume", 1.0),
    unit("qt", "quarts", "volume", L_PER_QUART * 1000.0),
    unit("pt", "pints", "volume", L_PER_QUART * 500.0),
    unit("gal", "gallons", "volume", L_PER_QUART * 4000.0),
    unit("kg", "kilograms", "mass", 1.0),
    unit("g", "grams", "mass", 0.001),
    unit("t", "metric tons", "mass", 1000.0),
    unit("lb", "pounds", "mass", KG_PER_LB),
    unit("nm", "newton-meters", "torque", 1.0),
    unit("lbf_ft", "pound-force feet", "torque", NM_PER_LBF_FT),
    unit("lb_ft", "pound-force feet", "torque", NM_PER_LBF_FT),
    unit("ft_lb", "pound-force feet", "torque", NM_PER_LBF_FT),
    unit("n", "newtons", "force", 1.0),
    unit("kn", "kilonewtons", "force", 1000.0),
    unit("lbf", "pounds-force", "force", N_PER_LBF),
    unit("kpa", "kilopascals", "pressure", 1.0),
    unit("pa", "pascals", "pressure", 0.001),
    unit("mpa", "megapascals", "pressure", 1000.0),
    unit("bar", "bar", "pressure", 100.0),
    unit("psi", "pounds-force per square inch", "pressure", KPA_PER_PSI),
    unit("ksi", "thousand pounds-force per square inch", "pressure", KPA_PER_PSI * 1000.0),
    unit("km_h", "kilometers per hour", "road speed", 1.0),
    unit("m_s", "meters per second", "road speed", 3.6),
    unit("mph", "miles per hour", "road speed", KM_PER_MILE),
    unit("rpm", "revolutions per minute", "shaft speed", 1.0),
    unit("rad_s", "radians per second", "shaft speed", 30.0 / core::f64::consts::PI),
    unit("c", "degrees Celsius", "temperature", 1.0),
    Unit { suffix: "f", name: "degrees Fahrenheit", quantity: "temperature", factor: 1.0 / 1.8, offset: -32.0 / 1.8 },
    Unit { suffix: "k", name: "kelvin", quantity: "temperature", factor: 1.0, offset: -KELVIN_AT_0_C },
    unit("kg_m3", "kilograms per cubic meter", "density", 1.0),
    unit("g_cm3", "grams per cubic centimeter", "density", 1000.0),
    unit("mm2_s", "square millimeters per second", "kinematic viscosity", 1.0),
    unit("cst", "centistokes", "kinematic viscosity", 1.0),
    unit("kg_m2", "kilogram square meters", "inertia", 1.0),
    unit("kw", "kilowatts", "power", 1.0),
    unit("hp", "horsepower", "power", KW_PER_HP),
    unit("deg", "degrees", "angle", 1.0),
    unit("rad", "radians", "angle", 180.0 / core::f64::consts::PI),
    unit("s", "seconds", "time", 1.0),
    unit("ms", "milliseconds", "time", 0.001),
    unit("us", "microseconds", "time", 1e-6),
    unit("min", "minutes", "time", 60.0),
    unit("pct", "percent", "share", 0.01),
    unit("l_min", "liters per minute", "flow", 1.0),
    unit("gpm", "gallons per minute", "flow", L_PER_QUART * 4.0),
];

/// A key without its unit, and the unit if it has one.
pub(super) fn split(key: &str) -> (&str, Option<&'static Unit>) {
    let mut longest: Vec<_> = UNITS.iter().collect();
    longest.sort_by_key(|unit| Reverse(unit.suffix.len()));
    longest
        .into_iter()
        .find_map(|unit| Some((key.strip_suffix(unit.suffix)?.strip_suffix('_')?, Some(unit))))
        .unwrap_or((key, None))
}

/// The value in another unit of the same quantity, six digits.
pub(super) fn convert(value: f64, from: &Unit, to: &Unit) -> Option<String> {
    let base = value * from.factor + from.offset;
    (from.quantity == to.quantity).then(|| short((base - to.offset) / to.factor))
}

/// A number with at most six significant digits.
pub(super) fn short(value: f64) -> String {
    let rounded: f64 = format!("{value:.5e}").parse().unwrap_or(value);
    format!("{rounded}")
}
