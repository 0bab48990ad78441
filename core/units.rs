//! Units: the suffix table, and the only conversion factors of the project.
//!
//! Inside, every quantity has one unit, and the unit is part of the name in Rust, C, Python, TOML and data-frame columns.
//! Shop units exist only at the edge: convert on the way in and on the way out, with the functions below.
//!
//! | suffix | quantity | unit |
//! |---|---|---|
//! | `_mm`, `_m`, `_km` | length of a part; distance on the road; distance of a drive | millimeter; meter; kilometer |
//! | `_mm2`, `_mm3`, `_cm2`, `_m2` | area; volume of metal, section modulus; free area of a sump; drag area | mm², mm³, cm², m² |
//! | `_mm4` | moment of area | mm⁴ |
//! | `_ml`, `_l`, `_l_min` | volume of fluid; its flow | milliliter, liter; liter per minute |
//! | `_cm3_rev`, `_l_min_mpa` | displacement of a pump; its leak per pressure | cm³ per turn; L/min per MPa |
//! | `_kg`, `_kg_m2` | mass; moment of inertia | kg, kg·m² |
//! | `_nm` | torque | N·m |
//! | `_n`, `_n_mm` | force; spring rate | N, N/mm |
//! | `_kpa` | gauge pressure (`_kpa_abs` when absolute) | kPa |
//! | `_mpa` | stress, surface pressure | MPa |
//! | `_rpm_per_sqrt_nm` | capacity factor of a torque converter | 1/min per √(N·m) |
//! | `_rpm`, `_rpm_s` | shaft speed; its rate of change | 1/min, (1/min)/s |
//! | `_km_h` | road speed | km/h |
//! | `_m_s`, `_m_s2`, `_mpa_m_s` | speed of sliding or flow; acceleration; surface pressure times sliding speed | m/s, m/s², MPa·m/s |
//! | `_mrev`, `_h` | life of a bearing | million revolutions, hour |
//! | `_c`, `_k` | temperature; difference of temperatures | °C, K |
//! | `_kg_m3`, `_mm2_s`, `_mpa_s` | density; kinematic viscosity; dynamic viscosity | kg/m³, mm²/s, mPa·s |
//! | `_kw`, `_j`, `_kj` | power; energy; energy of a drive | kW, J, kJ |
//! | `_w_mm2`, `_j_mm2` | heat flux; energy over friction area | W/mm², J/mm² |
//! | `_w_m_k`, `_j_kg_k` | thermal conductivity; specific heat | W/(m·K), J/(kg·K) |
//! | `_w_k`, `_j_k` | conductance, heat capacity rate; heat capacity | W/K, J/K |
//! | `_deg`, `_rad` | angle; turn of a slipping element | degree, radian |
//! | `_s`, `_ms`, `_us` | time; tick of a counter | s, ms, µs |
//! | `_pct` | hundredths, where the trade says percent (grade, aspect, humidity) | % |
//! | `_in` | inch, only where the trade name of the size is in inches (rim, flotation tire) | inch |
//! | `_per_x` | one over the unit x, e.g. `_per_k`, `_per_km`, `_per_mile` | 1/x |

/// The suffixes of the table above, with the sign of their unit as people read it.
pub(crate) const SIGNS: &[(&str, &str)] = &[
    ("mm", "mm"),
    ("m", "m"),
    ("km", "km"),
    ("mm2", "mm²"),
    ("mm3", "mm³"),
    ("mm4", "mm⁴"),
    ("cm2", "cm²"),
    ("m2", "m²"),
    ("ml", "mL"),
    ("l", "L"),
    ("l_min", "L/min"),
    ("cm3_rev", "cm³ per turn"),
    ("l_min_mpa", "L/min per MPa"),
    ("kg", "kg"),
    ("kg_m2", "kg·m²"),
    ("nm", "N·m"),
    ("n", "N"),
    ("n_mm", "N/mm"),
    ("kpa", "kPa"),
    ("kpa_abs", "kPa absolute"),
    ("mpa", "MPa"),
    ("mpa_m_s", "MPa·m/s"),
    ("rpm_per_sqrt_nm", "1/min per √(N·m)"),
    ("rpm", "1/min"),
    ("rpm_s", "1/min per s"),
    ("mrev", "million turns"),
    ("km_h", "km/h"),
    ("m_s", "m/s"),
    ("m_s2", "m/s²"),
    ("c", "°C"),
    ("k", "K"),
    ("kg_m3", "kg/m³"),
    ("mm2_s", "mm²/s"),
    ("mpa_s", "mPa·s"),
    ("kw", "kW"),
    ("j", "J"),
    ("kj", "kJ"),
    ("w_mm2", "W/mm²"),
    ("j_mm2", "J/mm²"),
    ("w_m_k", "W/(m·K)"),
    ("j_kg_k", "J/(kg·K)"),
    ("w_k", "W/K"),
    ("j_k", "J/K"),
    ("deg", "°"),
    ("rad", "rad"),
    ("h", "h"),
    ("s", "s"),
    ("ms", "ms"),
    ("us", "µs"),
    ("pct", "%"),
    ("in", "in"),
];

use crate::real::sqrt;

/// Millimeters in an inch. Exact: international yard and pound agreement, 1959.
pub const MM_PER_IN: f64 = 25.4;
/// Kilometers in a statute mile. Exact: 5280 ft × 0.3048 m.
pub const KM_PER_MILE: f64 = 1.609_344;
/// Kilograms in an avoirdupois pound. Exact: international yard and pound agreement, 1959.
pub const KG_PER_LB: f64 = 0.453_592_37;
/// Standard acceleration of gravity, m/s². Exact: CGPM 1901; ISO 80000-3.
pub const GRAVITY_M_S2: f64 = 9.806_65;
/// Newtons in a pound-force. Exact: pound × standard gravity.
pub const N_PER_LBF: f64 = KG_PER_LB * GRAVITY_M_S2;
/// Newton-meters in a pound-force foot. Exact: pound-force × 0.3048 m.
pub const NM_PER_LBF_FT: f64 = N_PER_LBF * 0.3048;
/// Kilopascals in a pound-force per square inch. Exact: pound-force / (0.0254 m)².
pub const KPA_PER_PSI: f64 = N_PER_LBF / (0.0254 * 0.0254) / 1000.0;
/// Liters in a US liquid quart. Exact: 57.75 cubic inches.
pub const L_PER_QUART: f64 = 0.946_352_946;
/// Liters in a US liquid gallon. Exact: 231 cubic inches.
pub const L_PER_GALLON: f64 = 3.785_411_784;
/// Cubic centimeters in a cubic inch. Exact: (2.54 cm)³.
pub const CM3_PER_IN3: f64 = 16.387_064;
/// Kilowatts in a mechanical horsepower. Exact: 550 lbf·ft/s.
pub const KW_PER_HP: f64 = NM_PER_LBF_FT * 550.0 / 1000.0;
/// Celsius reading of absolute zero, negated. Exact: definition of the Celsius scale.
pub const KELVIN_AT_0_C: f64 = 273.15;

macro_rules! proportional {
    ($($into:ident, $back:ident, $factor:expr, $shop:literal, $si:literal;)*) => {
        $(
            #[doc = concat!($shop, " to ", $si, ".")]
            #[must_use]
            pub fn $into(value: f64) -> f64 {
                value * $factor
            }
            #[doc = concat!($si, " to ", $shop, ".")]
            #[must_use]
            pub fn $back(value: f64) -> f64 {
                value / $factor
            }
        )*
    };
}

proportional! {
    in_to_mm, mm_to_in, MM_PER_IN, "Inches", "millimeters";
    thou_to_mm, mm_to_thou, MM_PER_IN / 1000.0, "Thousandths of an inch", "millimeters";
    mile_to_km, km_to_mile, KM_PER_MILE, "Miles", "kilometers";
    mph_to_km_h, km_h_to_mph, KM_PER_MILE, "Miles per hour", "km/h";
    lb_to_kg, kg_to_lb, KG_PER_LB, "Pounds", "kilograms";
    lbf_to_n, n_to_lbf, N_PER_LBF, "Pounds-force", "newtons";
    lbf_ft_to_nm, nm_to_lbf_ft, NM_PER_LBF_FT, "Pound-force feet", "newton-meters";
    psi_to_kpa, kpa_to_psi, KPA_PER_PSI, "Pounds-force per square inch", "kilopascals";
    quart_to_l, l_to_quart, L_PER_QUART, "US liquid quarts", "liters";
    gallon_to_l, l_to_gallon, L_PER_GALLON, "US liquid gallons", "liters";
    in3_to_cm3, cm3_to_in3, CM3_PER_IN3, "Cubic inches", "cubic centimeters";
    hp_to_kw, kw_to_hp, KW_PER_HP, "Mechanical horsepower", "kilowatts";
    per_sqrt_lbf_ft_to_per_sqrt_nm, per_sqrt_nm_to_per_sqrt_lbf_ft, 1.0 / sqrt(NM_PER_LBF_FT), "Capacity factors of torque converters in 1/min per √(lbf·ft)", "1/min per √(N·m)";
    f_to_k_difference, k_to_f_difference, 1.0 / 1.8, "Differences in °F", "differences in kelvin";
}

/// Degrees Fahrenheit to degrees Celsius. Source: NIST SP 811, appendix B.8, t(°C) = (t(°F) − 32)/1.8.
#[must_use]
pub fn f_to_c(temp_f: f64) -> f64 {
    (temp_f - 32.0) / 1.8
}

/// Degrees Celsius to degrees Fahrenheit. Source: NIST SP 811, appendix B.8, inverted.
#[must_use]
pub fn c_to_f(temp_c: f64) -> f64 {
    temp_c * 1.8 + 32.0
}

/// Degrees Celsius to kelvin.
pub(crate) fn kelvin(temp_c: f64) -> f64 {
    temp_c + KELVIN_AT_0_C
}

/// Shaft speed, 1/min, to angular speed, rad/s.
pub(crate) fn rad_s(speed_rpm: f64) -> f64 {
    speed_rpm * (core::f64::consts::PI / 30.0)
}
