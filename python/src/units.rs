//! `trainwright.units`: shop units at the edge, through the core's factors.

use pyo3::prelude::*;
use trainwright::units as core;

use crate::array::{Input, Out, map};

macro_rules! conversions {
    ($($name:ident($argument:ident), $from:literal, $to:literal;)*) => {$(
        #[doc = concat!($from, " to ", $to, ". A number in gives a float, an array gives an array.")]
        #[pyfunction]
        #[pyo3(signature = ($argument, *, out = None))]
        pub fn $name<'py>(py: Python<'py>, $argument: Input<'py>, out: Option<Out<'py>>) -> PyResult<Bound<'py, PyAny>> {
            map(py, [(stringify!($argument), $argument)], out, |[value]| Ok(core::$name(value)))
        }
    )*};
}

conversions! {
    in_to_mm(value), "Inches", "millimeters";
    mm_to_in(value), "Millimeters", "inches";
    thou_to_mm(value), "Thousandths of an inch", "millimeters";
    mm_to_thou(value), "Millimeters", "thousandths of an inch";
    mile_to_km(value), "Statute miles", "kilometers";
    km_to_mile(value), "Kilometers", "statute miles";
    mph_to_km_h(value), "Miles per hour", "km/h";
    km_h_to_mph(value), "Kilometers per hour", "miles per hour";
    lb_to_kg(value), "Pounds", "kilograms";
    kg_to_lb(value), "Kilograms", "pounds";
    lbf_to_n(value), "Pounds-force", "newtons";
    n_to_lbf(value), "Newtons", "pounds-force";
    lbf_ft_to_nm(value), "Pound-force feet", "newton-meters";
    nm_to_lbf_ft(value), "Newton-meters", "pound-force feet";
    psi_to_kpa(value), "Pounds-force per square inch", "kilopascals";
    kpa_to_psi(value), "Kilopascals", "pounds-force per square inch";
    quart_to_l(value), "US liquid quarts", "liters";
    l_to_quart(value), "Liters", "US liquid quarts";
    gallon_to_l(value), "US liquid gallons", "liters";
    l_to_gallon(value), "Liters", "US liquid gallons";
    in3_to_cm3(value), "Cubic inches", "cubic centimeters";
    cm3_to_in3(value), "Cubic centimeters", "cubic inches";
    hp_to_kw(value), "Mechanical horsepower", "kilowatts";
    kw_to_hp(value), "Kilowatts", "mechanical horsepower";
    per_sqrt_lbf_ft_to_per_sqrt_nm(value), "Capacity factors of torque converters in 1/min per √(lbf·ft)", "1/min per √(N·m)";
    per_sqrt_nm_to_per_sqrt_lbf_ft(value), "Capacity factors of torque converters in 1/min per √(N·m)", "1/min per √(lbf·ft)";
    f_to_k_difference(value), "Differences in degrees Fahrenheit", "differences in kelvin";
    k_to_f_difference(value), "Differences in kelvin", "differences in degrees Fahrenheit";
    f_to_c(temp_f), "Degrees Fahrenheit", "degrees Celsius";
    c_to_f(temp_c), "Degrees Celsius", "degrees Fahrenheit";
}
