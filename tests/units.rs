//! The conversion factors against their exact definitions.

mod support;

use proptest::prelude::*;
use support::vectors;
use trainwright::units::*;

/// Shop unit to SI and back, with the name of each way.
type Pair = (&'static str, fn(f64) -> f64, &'static str, fn(f64) -> f64);

const PAIRS: [Pair; 15] = [
    ("in_to_mm", in_to_mm, "mm_to_in", mm_to_in),
    ("thou_to_mm", thou_to_mm, "mm_to_thou", mm_to_thou),
    ("mile_to_km", mile_to_km, "km_to_mile", km_to_mile),
    ("mph_to_km_h", mph_to_km_h, "km_h_to_mph", km_h_to_mph),
    ("lb_to_kg", lb_to_kg, "kg_to_lb", kg_to_lb),
    ("lbf_to_n", lbf_to_n, "n_to_lbf", n_to_lbf),
    ("lbf_ft_to_nm", lbf_ft_to_nm, "nm_to_lbf_ft", nm_to_lbf_ft),
    ("psi_to_kpa", psi_to_kpa, "kpa_to_psi", kpa_to_psi),
    ("quart_to_l", quart_to_l, "l_to_quart", l_to_quart),
    ("gallon_to_l", gallon_to_l, "l_to_gallon", l_to_gallon),
    ("in3_to_cm3", in3_to_cm3, "cm3_to_in3", cm3_to_in3),
    ("hp_to_kw", hp_to_kw, "kw_to_hp", kw_to_hp),
    (
        "per_sqrt_lbf_ft_to_per_sqrt_nm",
        per_sqrt_lbf_ft_to_per_sqrt_nm,
        "per_sqrt_nm_to_per_sqrt_lbf_ft",
        per_sqrt_nm_to_per_sqrt_lbf_ft,
    ),
    ("f_to_k_difference", f_to_k_difference, "k_to_f_difference", k_to_f_difference),
    ("f_to_c", f_to_c, "c_to_f", c_to_f),
];

#[test]
fn vectors_of_every_conversion() {
    for (into, into_si, back, into_shop) in PAIRS {
        for (name, convert) in [(into, into_si), (back, into_shop)] {
            let argument = match name {
                "f_to_c" => "temp_f",
                "c_to_f" => "temp_c",
                _ => "value",
            };
            vectors(&format!("units_{name}"), |row| Ok([convert(row.number(argument))]));
        }
    }
}

proptest! {
    #[test]
    fn there_and_back(value in -1e9..1e9_f64) {
        for (name, into_si, _, into_shop) in PAIRS {
            prop_assert!((into_shop(into_si(value)) - value).abs() <= 1e-12 * (value.abs() + 32.0), "{}", name);
        }
    }
}
