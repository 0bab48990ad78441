//! The fluid chapter against its sources.

#[path = "../support/mod.rs"]
mod support;

mod random;
mod vectors;

use std::sync::LazyLock;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::fluid::{
    Fill, Fluid, FrictionPortion, Growth, LevelCheck, Portion, SUMP_ROWS, Sump, ViscosityLine, ViscosityPair,
    ViscosityPoints, ViscosityPortion, blend, blend_friction, blend_viscosity, constant_area_level_mm,
    correction_factor, density_15c_from_observed, dynamic_viscosity, expansion_from_15c, growth_ml, old_share,
    tilt_shift_mm, viscosity_100c_for_index, viscosity_index, volume_correction, volume_correction_60f,
};
use trainwright::judge::{Reading, Rule, Verdict, settle};
use trainwright::record::{Fluids, Record};
use trainwright::{Error, Result};

static DEMO: LazyLock<Fluids> = LazyLock::new(|| {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/python/trainwright/demo/fluids.toml");
    Fluids::from_toml(path, &std::fs::read_to_string(path).unwrap()).unwrap()
});
static FILL: LazyLock<Fill> = LazyLock::new(|| DEMO.fill.as_ref().unwrap().fill().unwrap());
static ALDER: LazyLock<Fluid> = LazyLock::new(|| DEMO.fluid["alder"].fluid());
static HAZEL: LazyLock<Fluid> = LazyLock::new(|| DEMO.fluid["hazel"].fluid());

fn near(what: &str, value: f64, expected: f64, abs_tol: f64) {
    assert!((value - expected).abs() <= abs_tol, "{what}: {value}, expected {expected} within {abs_tol}");
}

fn set_to_edge_at(temp_c: f64) -> LevelCheck {
    LevelCheck {
        temp_c: Reading { value: temp_c, u: 1.0 },
        level_mm: Reading { value: 0.0, u: 0.4 },
        area_scale: Reading { value: 1.0, u: 0.03 },
    }
}

/// The demonstration's job: level set to the overflow edge at the wrong temperature.
#[test]
fn level_set_at_the_wrong_temperature() {
    let rule = Rule::conformance(0.95).unwrap();
    for (set_c, excess_ml, level_mm, constant_area_mm) in
        [(24.0, 203.09030605152034, 4.955051763490136, 5.14), (82.0, -295.76340448178127, -7.823408726696744, -7.49)]
    {
        let found = FILL.adjust_fill(&ALDER, set_to_edge_at(set_c), rule).unwrap();
        near("excess", found.excess_ml.reading.value, excess_ml, 0.5);
        assert_eq!(found.excess_ml.verdict, Verdict::NoGo);
        let at = FILL.level_at(&ALDER, found.excess_ml.reading.value, 47.0).unwrap();
        near("level at reference", at.level_mm, level_mm, 0.05);
        near("constant area", at.constant_area_level_mm, constant_area_mm, 0.005);
    }
    for (temp_c, level_mm) in [
        (-20.0, -16.148533102213527),
        (0.0, -10.984549774237571),
        (20.0, -6.136625421830827),
        (42.0, -1.1048554105270116),
        (47.0, 0.0),
        (52.0, 1.089150079996283),
        (80.0, 6.887560730292641),
        (100.0, 10.76068893011837),
        (110.0, 12.622395610421346),
        (120.0, 14.437554974139946),
        (130.0, 16.20949308885131),
    ] {
        let at = FILL.level_at(&ALDER, 0.0, temp_c).unwrap();
        near(&format!("right fill at {temp_c} °C"), at.level_mm, level_mm, 0.05);
    }
    near("gear dips", FILL.gear_dips_at_c(&ALDER, 0.0).unwrap(), 134.53713990103483, 0.2);
    near("engine off", FILL.engine_off_level_mm(0.0).unwrap(), 32.62776326804209, 0.05);
    near("loss to pickup", FILL.loss_to_pickup_ml(0.0).unwrap(), 995.0833333333333, 0.5);
}

#[test]
fn a_level_that_is_not_proven_says_what_to_measure_better() {
    let check = LevelCheck { level_mm: Reading { value: 0.6, u: 0.4 }, ..set_to_edge_at(47.0) };
    let found = FILL.adjust_fill(&ALDER, check, Rule::conformance(0.95).unwrap()).unwrap();
    assert_eq!(found.excess_ml.verdict, Verdict::NotProven);
    assert_eq!(found.budget.largest, 1, "the level is the weakest of temperature, level, area");
    settle(&found.excess_ml, &found.budget).unwrap();
}

#[test]
fn a_level_taken_as_exact_is_decided() {
    let exact = |value| Reading { value, u: 0.0 };
    let check = LevelCheck { temp_c: exact(47.0), level_mm: exact(0.0), area_scale: exact(1.0) };
    let found = FILL.adjust_fill(&ALDER, check, Rule::conformance(0.95).unwrap()).unwrap();
    near("add now", found.add_now_ml.value, 0.0, 1e-9);
    assert_eq!(found.excess_ml.verdict, Verdict::Go);
}

#[test]
fn friction_of_one_fluid_is_its_own_and_of_two_is_refused_with_what_would_do() {
    let portion = |friction| FrictionPortion { friction, volume_ml: 100.0 };
    assert_eq!(blend_friction(&[portion(0.13)]), Ok(0.13));
    let refusal = blend_friction(&[portion(0.13), portion(0.12)]).unwrap_err();
    assert!(matches!(refusal, Error::NoAnswer { name: "friction", .. }));
    assert!(refusal.to_string().contains("approved for the variant"));
}

#[test]
fn nothing_mixes_from_nothing() {
    assert!(matches!(blend(&[]), Err(Error::Count { .. })));
    assert!(matches!(blend_viscosity(&[]), Err(Error::Count { .. })));
    assert!(matches!(blend_friction(&[]), Err(Error::Count { .. })));
}

#[test]
fn a_line_of_the_older_form_has_no_full_form() {
    let line = ViscosityLine::through_older(ViscosityPoints {
        first_c: 40.0,
        first_mm2_s: 27.4,
        second_c: 100.0,
        second_mm2_s: 5.6,
    });
    assert!(matches!(line.unwrap().thin_viscosity_at(150.0), Err(Error::Inconsistent { .. })));
    for broken in [f64::NAN, 0.0, -1.0] {
        let line = ViscosityLine { a: 9.5, b: broken, added_mm2_s: 0.7 };
        assert!(line.viscosity_at(80.0).is_err() && line.temp_for_viscosity(10.0).is_err());
    }
}

#[test]
fn a_sump_table_that_cannot_be_is_refused() {
    let long = [1.0; SUMP_ROWS + 1];
    assert!(matches!(Sump::from_table(&long, &long), Err(Error::Count { .. })));
    assert!(matches!(Sump::from_table(&[0.0], &[1.0]), Err(Error::Count { .. })));
    assert!(matches!(Sump::from_table(&[-1.0, 1.0], &[1.0]), Err(Error::Inconsistent { .. })));
    assert!(matches!(Sump::from_table(&[1.0, 2.0], &[1.0, 1.0]), Err(Error::Inconsistent { .. })));
    assert!(matches!(Sump::from_table(&[-1.0, -1.0, 2.0], &[1.0; 3]), Err(Error::Inconsistent { .. })));
    assert!(matches!(Sump::from_table(&[f64::NEG_INFINITY, 2.0], &[1.0; 2]), Err(Error::NotFinite { .. })));
    let junk = Sump { rows: u32::MAX, ..FILL.sump };
    assert!(matches!(junk.level_for(0.0), Err(Error::Count { .. })));
}

#[test]
fn a_fill_that_cannot_be_is_refused() {
    let refused = |change: fn(&mut Fill)| {
        let mut fill = *FILL;
        change(&mut fill);
        assert!(fill.check_fill().is_err());
        assert!(fill.level_at(&ALDER, 0.0, 47.0).is_err());
        assert!(fill.pour_volumes(&ALDER, 20.0).is_err());
        assert!(fill.engine_off_level_mm(0.0).is_err());
        assert!(fill.loss_to_pickup_ml(0.0).is_err());
        assert!(fill.gear_dips_at_c(&ALDER, 0.0).is_err());
        assert!(fill.adjust_fill(&ALDER, set_to_edge_at(47.0), Rule::simple_acceptance()).is_err());
    };
    refused(|fill| fill.dry_l = 0.0);
    refused(|fill| fill.service_l = 12.0);
    refused(|fill| fill.cooler_and_lines_l = -1.0);
    refused(|fill| fill.drainback_off_l = f64::NAN);
    refused(|fill| fill.check_low_c = 60.0);
    refused(|fill| fill.check_reference_c = 60.0);
    refused(|fill| fill.pickup_uncovers_mm = 18.0);
    refused(|fill| fill.gear_dips_mm = 46.0);
    refused(|fill| fill.sump.rows = 1);
}

#[test]
fn a_fluid_is_checked_as_a_whole() {
    assert_eq!(ALDER.check_properties(), Ok(()));
    assert_eq!(HAZEL.check_properties(), Ok(()));
    assert!(Fluid { density_15c_kg_m3: 0.843, ..*ALDER }.check_properties().is_err());
    assert!(Fluid { expansion_per_k: 7.8, ..*ALDER }.check_properties().is_err());
    assert!(Fluid { viscosity_100c_mm2_s: 30.0, ..*ALDER }.check_properties().is_err());
}

/// The wider chart's own series for thin fluids (ASTM D341 before 2003, from memory) and the present closed form agree.
#[test]
fn full_form_agrees_with_the_older_series() {
    let series = |nu: f64| {
        let term = |a: f64, b: f64| (a - b * nu).exp();
        nu + 0.7 + term(-1.14883, 2.65868) - term(-0.0038138, 12.5645) + term(5.46491, 37.6289) - term(13.0458, 74.6851)
            + term(37.4619, 192.643)
            - term(80.4945, 400.468)
    };
    for nu in [0.3_f64, 0.5, 0.8, 1.1, 1.5, 1.9] {
        let z = nu + 0.7 + (-1.47 - 1.84 * nu - 0.51 * nu * nu).exp();
        near(&format!("Z at {nu} mm²/s"), z, series(nu), 0.005);
    }
}
