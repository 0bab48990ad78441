//! Plates of the live monitor, against the exponential and the chapter of clutches.

mod support;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::clutch::bulk_rise_k;
use trainwright::live::{LiveElement, ShiftsToLimit};

fn element(row: &Row) -> LiveElement {
    let number = |name| row.number(name) as f32;
    LiveElement {
        heat_capacity_j_k: number("heat_capacity_j_k"),
        cooling_s: number("cooling_s"),
        limit_c: number("limit_c"),
    }
}

#[test]
fn derived_values() {
    vectors("live_plate_after_c", |row| {
        let [plate, fluid, energy, span] =
            ["plate_c", "fluid_c", "energy_j", "span_s"].map(|name| row.number(name) as f32);
        Ok([element(row).plate_after_c(plate, fluid, energy, span).into()])
    });
    vectors("live_shifts_to_limit", |row| {
        let [plate, fluid, energy, pace] =
            ["plate_c", "fluid_c", "energy_j", "pace_s"].map(|name| row.number(name) as f32);
        let found = element(row).shifts_to_limit(plate, fluid, energy, pace)?;
        Ok([found.rise_k.into(), found.settled_c.into(), found.shifts.into()])
    });
}

#[test]
fn a_shift_rises_the_plates_as_the_chapter_of_clutches_says() {
    for (energy_j, mass_kg, heat) in [(20_000.0, 2.4, 500.0), (3500.0, 0.85, 480.0), (61_000.0, 3.1, 460.0)] {
        let element = LiveElement::of_plates(mass_kg as f32, heat as f32, 60.0, 250.0).unwrap();
        let rise = element.plate_after_c(90.0, 90.0, energy_j as f32, 0.0) - 90.0;
        let exact = bulk_rise_k(energy_j, mass_kg, heat).unwrap();
        approx::assert_relative_eq!(f64::from(rise), exact, max_relative = 1e-5);
        let counted = element.shifts_to_limit(90.0, 90.0, energy_j as f32, 30.0).unwrap();
        approx::assert_relative_eq!(f64::from(counted.rise_k), exact, max_relative = 1e-6);
    }
}

/// Ten milliseconds at a time for five minutes: the closed form of ϑ' = q/C − ϑ/τ, twenty shifts among it.
#[test]
fn sample_by_sample_it_follows_the_closed_form() {
    let (capacity, cooling, fluid) = (1200.0_f64, 60.0_f64, 85.0_f64);
    let element = LiveElement::of_plates(2.4, 500.0, cooling as f32, 300.0).unwrap();
    let (mut plate, mut exact) = (85.0_f32, 85.0_f64);
    let (step, stays) = (0.01, (-0.01_f64 / cooling).exp());
    for sample in 0..30_000 {
        let power_w = if sample % 1500 < 40 { 50_000.0 } else { 0.0 }; // 0.4 s of slip every 15 s
        plate = element.plate_after_c(plate, 85.0, (power_w * step) as f32, step as f32);
        exact = fluid + (exact - fluid) * stays + power_w * cooling / capacity * (1.0 - stays);
        assert!((f64::from(plate) - exact).abs() < 0.02, "sample {sample}: {plate}, exact {exact}");
    }
    assert!(exact > 130.0, "the shifts were to heat it: {exact}");
}

#[test]
fn unknown_elements_form_no_temperature() {
    assert!(!LiveElement::UNKNOWN.is_known());
    assert!(LiveElement::UNKNOWN.plate_after_c(80.0, 80.0, 0.0, 0.01).is_nan());
    assert_eq!(LiveElement::of_plates(0.0, 480.0, 60.0, 200.0).map_err(|e| e.kind()), Err("NOT_POSITIVE"));
    assert_eq!(LiveElement::of_plates(2.0, 480.0, 60.0, 2000.0).map_err(|e| e.kind()), Err("OUT_OF_RANGE"));
    assert_eq!(LiveElement::of_plates(2.0, 480.0, f32::NAN, 200.0).map_err(|e| e.kind()), Err("NOT_FINITE"));
}

proptest! {
    /// Any step is stable: the plates end between the fluid and the plates with all of the energy.
    #[test]
    fn any_step_is_stable(plate in -40.0_f32..400.0, fluid in -40.0_f32..150.0, energy in 0.0_f32..1e5, span in 0.0_f32..1e6, cooling in 0.1_f32..1e4) {
        let element = LiveElement::of_plates(2.0, 480.0, cooling, 300.0).unwrap();
        let after = element.plate_after_c(plate, fluid, energy, span);
        let (low, high) = (plate.min(fluid), plate.max(fluid) + energy / element.heat_capacity_j_k);
        prop_assert!((low - 0.01..=high + 0.01).contains(&after), "{low} to {high}: {after}");
    }

    /// The count is the one of shifts one after the other.
    #[test]
    fn shifts_are_counted_as_they_come(rise in 1.0_f64..80.0, pace in 1.0_f64..120.0, cooling in 5.0_f64..300.0, start in 0.0_f64..100.0) {
        let element = LiveElement::of_plates(2.0, 500.0, cooling as f32, 250.0).unwrap();
        let found = element.shifts_to_limit((80.0 + start) as f32, 80.0, (rise * 1000.0) as f32, pace as f32).unwrap();
        let stays = (-pace / cooling).exp();
        let (mut excess, mut shifts) = (start, 0_u32);
        while excess < 170.0 && shifts < 10_000 {
            excess = excess * stays + rise;
            shifts += 1;
        }
        let settled = rise / (1.0 - stays);
        // Where the last shift only just reaches the limit, one more or less is rounding.
        prop_assume!((settled / 170.0 - 1.0).abs() > 1e-4 && (excess / 170.0 - 1.0).abs() > 1e-5);
        let expected = if settled < 170.0 { ShiftsToLimit::NEVER } else { shifts };
        prop_assert!(found.shifts == expected || found.shifts.abs_diff(expected) == 1 && excess * stays + rise > 169.9, "{found:?}, {expected}");
    }
}
