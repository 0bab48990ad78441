//! The converter chapter against its sources.

#[path = "../support/mod.rs"]
mod support;

mod random;
mod refused;
mod vectors;

use std::sync::LazyLock;

use proptest::prelude::*;
use support::{Row, vectors};
use trainwright::converter::{
    Characteristic, EngineCurve, EngineToday, FluidCharge, InletAir, MeasuredStall, SlipLimits, StallInputs,
    StallRatings, TABLE_POINTS, air_correction_j1349, air_torque_factor, capacity_factor, efficiency, element_torques,
    from_output_side, from_torque_coefficient, impeller_torque_nm, judge_stall, lockup_slip, operating_point,
    operating_points, plan_stall, speed_ratio, stall_speed,
};
use trainwright::judge::{Limits, Reading, Rule};
use trainwright::record::{Fleet, Record};
use trainwright::units::per_sqrt_lbf_ft_to_per_sqrt_nm;
use trainwright::{Error, Result};

/// A converter on a public page of worked mathematics, up to 0.3; its capacity factor falls.
fn published() -> Characteristic {
    let k = [137.46, 137.06, 135.86, 135.66].map(per_sqrt_lbf_ft_to_per_sqrt_nm);
    Characteristic::from_table(&[0.0, 0.1, 0.2, 0.3], &[2.23, 2.07, 1.97, 1.84], &k).unwrap()
}

static FLEET: LazyLock<Fleet> = LazyLock::new(|| {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/python/trainwright/demo/fleet.toml");
    Fleet::from_toml(path, &std::fs::read_to_string(path).unwrap()).unwrap()
});

/// The engine of a row and the converter behind it: see the top of `converter_operating_points.csv`.
fn drive(name: &str) -> (EngineCurve, Characteristic) {
    if let Some(engine) = FLEET.engine.get(name) {
        return (engine.curve().unwrap(), FLEET.characteristic(&engine.converter).unwrap());
    }
    let even = Characteristic::from_table(&[0.0, 0.9], &[2.0, 1.0], &[70.0, 70.0]);
    let humped = Characteristic::from_table(
        &[0.0, 0.2, 0.4, 0.6, 0.8, 0.9],
        &[2.0, 1.75, 1.5, 1.28, 1.06, 1.0],
        &[80.0, 76.0, 70.0, 74.0, 90.0, 130.0],
    );
    let (speeds, torques, converter): (&[f64], &[f64], _) = match name {
        "dip" => (&[800.0, 1200.0, 1600.0, 2000.0], &[300.0, 200.0, 600.0, 700.0], even),
        "straight" => (&[1000.0, 2000.0], &[200.0, 800.0], even),
        "weak" => (&[800.0, 2000.0], &[50.0, 60.0], even),
        "strong" => (&[800.0, 2000.0], &[900.0, 900.0], even),
        "humped" => (&[800.0, 3000.0], &[500.0, 450.0], humped),
        other => panic!("{other}"),
    };
    (EngineCurve::from_table(speeds, torques, 5000.0).unwrap(), converter.unwrap())
}

/// The train of the demonstration, first variant.
const DEMO_TRAIN: &str = "9 0 1 2 / simple 50 - 20 - 90 @ 3 - 5 4 / simple 36 - 29 - 94 @ 6 - 7 1 / simple 59 - 16 - 91 @ 8 - 5 1 / simple 62 - 16 - 94 @ 3 - 0 7 / brake 4 2 / brake 8 2 / clutch 6 5 / clutch 6 4 / clutch 3 0 / one_way 8 2 reverse";

#[test]
fn a_plan_needs_a_gear_and_a_standing_turbine() {
    let (engine, converter) = drive("gasoline");
    let train = support::trains::train(DEMO_TRAIN).unwrap();
    let ratings = StallRatings { turbine_nm: 760.0, output_nm: 3300.0, longest_s: 5.0 };
    let charge =
        FluidCharge { volume_l: 2.3, density_kg_m3: 860.0, specific_heat_j_kg_k: 2000.0, start_c: 70.0, most_c: 150.0 };
    let rolling = operating_point(&engine, EngineToday::AS_MEASURED, &converter, 500.0).unwrap();
    let refused = plan_stall(&rolling, &train.solve(41).unwrap(), ratings, charge).unwrap_err();
    assert_eq!((refused.kind(), refused.parameter()), ("INCONSISTENT", "turbine_rpm"));
    let stall = operating_point(&engine, EngineToday::AS_MEASURED, &converter, 0.0).unwrap();
    assert_eq!(plan_stall(&stall, &train.solve(0).unwrap(), ratings, charge).unwrap_err().kind(), "NO_ANSWER");
}

#[test]
fn the_side_on_which_no_point_lies_is_said() {
    let why = |name, turbine| {
        let (engine, converter) = drive(name);
        operating_point(&engine, EngineToday::AS_MEASURED, &converter, turbine).unwrap_err().to_string()
    };
    assert!(why("strong", 0.0).contains("higher engine speed"));
    assert!(why("weak", 0.0).contains("lower engine speed"));
    assert!(why("dip", 0.0).contains("more than one stable speed"));
    assert!(why("gasoline", 5400.0).contains("does not cover"));
}
