//! `tw_units_*`: shop units at the edge. These return the value itself: nothing in them can fail.

use trainwright::units;

/// Inches to millimeters.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_in_to_mm(value: f64) -> f64 {
    units::in_to_mm(value)
}

/// Millimeters to inches.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_mm_to_in(value: f64) -> f64 {
    units::mm_to_in(value)
}

/// Thousandths of an inch to millimeters.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_thou_to_mm(value: f64) -> f64 {
    units::thou_to_mm(value)
}

/// Millimeters to thousandths of an inch.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_mm_to_thou(value: f64) -> f64 {
    units::mm_to_thou(value)
}

/// Miles to kilometers.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_mile_to_km(value: f64) -> f64 {
    units::mile_to_km(value)
}

/// Kilometers to miles.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_km_to_mile(value: f64) -> f64 {
    units::km_to_mile(value)
}

/// Miles per hour to km/h.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_mph_to_km_h(value: f64) -> f64 {
    units::mph_to_km_h(value)
}

/// km/h to miles per hour.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_km_h_to_mph(value: f64) -> f64 {
    units::km_h_to_mph(value)
}

/// Pounds to kilograms.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_lb_to_kg(value: f64) -> f64 {
    units::lb_to_kg(value)
}

/// Kilograms to pounds.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_kg_to_lb(value: f64) -> f64 {
    units::kg_to_lb(value)
}

/// Pounds-force to newtons.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_lbf_to_n(value: f64) -> f64 {
    units::lbf_to_n(value)
}

/// Newtons to pounds-force.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_n_to_lbf(value: f64) -> f64 {
    units::n_to_lbf(value)
}

/// Pound-force feet to newton-meters.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_lbf_ft_to_nm(value: f64) -> f64 {
    units::lbf_ft_to_nm(value)
}

/// Newton-meters to pound-force feet.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_nm_to_lbf_ft(value: f64) -> f64 {
    units::nm_to_lbf_ft(value)
}

/// Pounds-force per square inch to kilopascals.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_psi_to_kpa(value: f64) -> f64 {
    units::psi_to_kpa(value)
}

/// Kilopascals to pounds-force per square inch.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_kpa_to_psi(value: f64) -> f64 {
    units::kpa_to_psi(value)
}

/// US liquid quarts to liters.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_quart_to_l(value: f64) -> f64 {
    units::quart_to_l(value)
}

/// Liters to US liquid quarts.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_l_to_quart(value: f64) -> f64 {
    units::l_to_quart(value)
}

/// US liquid gallons to liters.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_gallon_to_l(value: f64) -> f64 {
    units::gallon_to_l(value)
}

/// Liters to US liquid gallons.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_l_to_gallon(value: f64) -> f64 {
    units::l_to_gallon(value)
}

/// Cubic inches to cubic centimeters.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_in3_to_cm3(value: f64) -> f64 {
    units::in3_to_cm3(value)
}

/// Cubic centimeters to cubic inches.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_cm3_to_in3(value: f64) -> f64 {
    units::cm3_to_in3(value)
}

/// Mechanical horsepower to kilowatts.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_hp_to_kw(value: f64) -> f64 {
    units::hp_to_kw(value)
}

/// Kilowatts to mechanical horsepower.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_kw_to_hp(value: f64) -> f64 {
    units::kw_to_hp(value)
}

/// Capacity factors of torque converters in 1/min per square root of a pound-force foot to 1/min per root of a newton-meter.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_per_sqrt_lbf_ft_to_per_sqrt_nm(value: f64) -> f64 {
    units::per_sqrt_lbf_ft_to_per_sqrt_nm(value)
}

/// Capacity factors of torque converters in 1/min per square root of a newton-meter to 1/min per root of a pound-force foot.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_per_sqrt_nm_to_per_sqrt_lbf_ft(value: f64) -> f64 {
    units::per_sqrt_nm_to_per_sqrt_lbf_ft(value)
}

/// Differences in degrees Fahrenheit to kelvin.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_f_to_k_difference(value: f64) -> f64 {
    units::f_to_k_difference(value)
}

/// Differences in kelvin to degrees Fahrenheit.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_k_to_f_difference(value: f64) -> f64 {
    units::k_to_f_difference(value)
}

/// Degrees Fahrenheit to degrees Celsius.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_f_to_c(temp_f: f64) -> f64 {
    units::f_to_c(temp_f)
}

/// Degrees Celsius to degrees Fahrenheit.
#[unsafe(no_mangle)]
pub extern "C" fn tw_units_c_to_f(temp_c: f64) -> f64 {
    units::c_to_f(temp_c)
}
