//! The converter chapter against its sources.

mod support;

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

fn today(row: &Row) -> EngineToday {
    EngineToday { torque_factor: row.number("torque_factor"), accessory_nm: row.number("accessory_nm") }
}

fn reading(row: &Row, value: &str, u: &str) -> Reading {
    Reading { value: row.number(value), u: row.number(u) }
}

fn rule() -> Rule {
    Rule::conformance(0.95).unwrap()
}

/// A converter on a public page of worked mathematics, up to 0.3; its capacity factor falls.
fn published() -> Characteristic {
    let k = [137.46, 137.06, 135.86, 135.66].map(per_sqrt_lbf_ft_to_per_sqrt_nm);
    Characteristic::from_table(&[0.0, 0.1, 0.2, 0.3], &[2.23, 2.07, 1.97, 1.84], &k).unwrap()
}

#[test]
fn flow_vectors() {
    vectors("converter_speed_ratio", |row| Ok([speed_ratio(row.number("impeller_rpm"), row.number("turbine_rpm"))?]));
    vectors("converter_efficiency", |row| Ok([efficiency(row.number("speed_ratio"), row.number("torque_ratio"))?]));
    vectors("converter_capacity_factor", |row| {
        Ok([capacity_factor(row.number("impeller_rpm"), row.number("impeller_nm"))?])
    });
    vectors("converter_impeller_torque_nm", |row| {
        Ok([impeller_torque_nm(row.number("impeller_rpm"), row.number("k_rpm_per_sqrt_nm"))?])
    });
    vectors("converter_from_output_side", |row| {
        let k = row.number("k_output_rpm_per_sqrt_nm");
        Ok([from_output_side(k, row.number("speed_ratio"), row.number("torque_ratio"))?])
    });
    vectors("converter_from_torque_coefficient", |row| {
        let coefficient = row.number("torque_coefficient");
        Ok([from_torque_coefficient(coefficient, row.number("density_kg_m3"), row.number("diameter_mm"))?])
    });
}

#[test]
fn table_vectors() {
    let engine = EngineCurve::from_table(&[1000.0, 1500.0, 2000.0], &[330.0, 365.0, 395.0], 5700.0).unwrap();
    vectors("converter_torque_at_nm", |row| Ok([engine.torque_at_nm(row.number("speed_rpm"))?]));
    vectors("converter_torque_ratio_at", |row| Ok([published().torque_ratio_at(row.number("speed_ratio"))?]));
    vectors("converter_capacity_factor_at", |row| Ok([published().capacity_factor_at(row.number("speed_ratio"))?]));
    vectors("converter_coupling_point", |row| Ok([falling(row)?.coupling_point()?]));
}

fn falling(row: &Row) -> Result<Characteristic> {
    let ratios = ["at_stall", "at_08", "at_09"].map(|column| row.number(column));
    Characteristic::from_table(&[0.0, 0.8, 0.9], &ratios, &[70.0, 84.0, 100.0])
}

#[test]
fn operating_vectors() {
    vectors("converter_operating_points", |row| {
        let (engine, converter) = drive(row.text("engine"));
        let found = operating_points(&engine, today(row), &converter, row.number("turbine_rpm"))?;
        let points = found.in_use();
        let rpm = |point: Option<&trainwright::converter::OperatingPoint>| point.map_or(0.0, |point| point.engine_rpm);
        let stable = points.iter().filter(|point| point.stable).count();
        Ok([f64::from(found.count), stable as f64, rpm(points.first()), rpm(points.last())])
    });
    vectors("converter_operating_point", |row| {
        let (engine, converter) = drive(row.text("engine"));
        let p = operating_point(&engine, today(row), &converter, row.number("turbine_rpm"))?;
        let flows = [p.impeller_nm, p.turbine_nm, p.impeller_kw, p.turbine_kw, p.heat_kw, p.efficiency];
        let [impeller, turbine, into, out, heat, efficiency] = flows;
        let (n, ratio, k) = (p.engine_rpm, p.speed_ratio, p.k_rpm_per_sqrt_nm);
        Ok([n, ratio, p.torque_ratio, k, impeller, turbine, into, out, heat, efficiency])
    });
}

fn air(row: &Row) -> InletAir {
    InletAir {
        pressure_kpa_abs: row.number("pressure_kpa_abs"),
        vapor_kpa_abs: row.number("vapor_kpa_abs"),
        temp_c: row.number("temp_c"),
    }
}

#[test]
fn air_vectors() {
    vectors("converter_air_correction_j1349", |row| Ok([air_correction_j1349(air(row))?]));
    vectors("converter_in_test_range_j1349", |row| Ok([f64::from(u8::from(air(row).in_test_range_j1349()?))]));
    vectors("converter_air_torque_factor", |row| {
        let dry = |pressure, temp| InletAir {
            pressure_kpa_abs: row.number(pressure),
            vapor_kpa_abs: 0.0,
            temp_c: row.number(temp),
        };
        Ok([air_torque_factor(dry("curve_kpa_abs", "curve_c"), dry("pressure_kpa_abs", "temp_c"))?])
    });
}

#[test]
fn stall_vectors() {
    vectors("converter_stall_speed", |row| {
        let (engine, converter) = drive(row.text("engine"));
        let inputs = StallInputs {
            torque_factor: reading(row, "torque_factor", "torque_factor_u"),
            accessory_nm: reading(row, "accessory_nm", "accessory_u_nm"),
            k_factor: reading(row, "k_factor", "k_factor_u"),
        };
        let stall = stall_speed(&engine, &converter, inputs)?;
        let [torque, accessory, k] = [0, 1, 2].map(|place: usize| stall.budget.share[place]);
        let (speed, turbine) = (stall.speed_rpm, stall.turbine_nm);
        Ok([speed.value, speed.u, turbine.value, turbine.u, torque, accessory, k])
    });
    vectors("converter_judge_stall", |row| {
        let (engine, converter) = drive(row.text("engine"));
        let inputs = StallInputs {
            torque_factor: Reading::new(1.0, row.number("torque_factor_u"))?,
            k_factor: Reading::new(1.0, row.number("k_factor_u"))?,
            ..StallInputs::AS_MEASURED
        };
        let allow = row.number("allow_rpm");
        let measured = MeasuredStall {
            speed_rpm: reading(row, "measured_rpm", "measured_u_rpm"),
            allow_rpm: Limits { lower: -allow, upper: allow },
            stator_share: 0.33,
            stop_rpm: 200.0,
            rule: rule(),
        };
        let said = judge_stall(&engine, &converter, inputs, measured)?;
        let (verdict, side) = (said.judgment.verdict as i32, said.side as i32);
        let difference = said.difference_rpm;
        Ok([
            difference.value,
            difference.u,
            said.judgment.chance,
            f64::from(verdict),
            f64::from(side),
            said.torque_share,
            said.k_share,
        ])
    });
    vectors("converter_plan_stall", |row| {
        let (engine, converter) = drive(row.text("engine"));
        let stall = operating_point(&engine, EngineToday::AS_MEASURED, &converter, 0.0)?;
        let state = support::trains::train(row.text("train"))?.solve(row.count("closed"))?;
        let ratings = StallRatings {
            turbine_nm: row.number("rated_turbine_nm"),
            output_nm: row.number("rated_output_nm"),
            longest_s: 5.0,
        };
        let charge = FluidCharge {
            volume_l: 2.3,
            density_kg_m3: 860.0,
            specific_heat_j_kg_k: 2000.0,
            start_c: row.number("start_c"),
            most_c: 150.0,
        };
        let plan = plan_stall(&stall, &state, ratings, charge)?;
        let [turbine, output, hot, allowed] =
            [plan.turbine_passed, plan.output_passed, plan.too_hot, plan.allowed].map(|flag| f64::from(u8::from(flag)));
        Ok([
            plan.output_nm,
            turbine,
            output,
            hot,
            allowed,
            plan.rise_k,
            plan.permitted_s,
            plan.limit_turbine_nm,
            plan.limit_engine_nm,
            plan.limit_rpm,
            plan.limit_heat_kw,
            plan.limit_s,
        ])
    });
    vectors("converter_element_torques", |row| {
        let state = support::trains::train(row.text("train"))?.solve(row.count("closed"))?;
        let torques = element_torques(&state, row.number("turbine_nm"))?;
        let [b1, c2, f1] = [0, 3, 5].map(|element: usize| torques.torque_nm[element]);
        Ok([b1, c2, f1, f64::from(torques.known), f64::from(torques.unknown)])
    });
}

#[test]
fn heat_and_slip_vectors() {
    vectors("converter_rise_k", |row| {
        let charge = charge(row, 70.0, 150.0);
        Ok([charge.rise_k(row.number("heat_kw"), row.number("time_s"))?])
    });
    vectors("converter_heat_s", |row| {
        let charge = charge(row, row.number("start_c"), row.number("most_c"));
        Ok([charge.heat_s(row.number("heat_kw"))?])
    });
    vectors("converter_lockup_slip", |row| {
        let limits =
            SlipLimits { target_rpm: row.number("target_rpm"), alarm_rpm: row.number("alarm_rpm"), rule: rule() };
        let shown = |name| Reading::quantized(row.number(name), row.number("quantum_rpm"));
        let slip = lockup_slip(shown("engine_rpm")?, shown("turbine_rpm")?, limits)?;
        let [target, alarm] = [slip.on_target, slip.within_alarm].map(|judged| f64::from(judged.verdict as i32));
        Ok([slip.slip_rpm.value, slip.slip_rpm.u, target, alarm, slip.within_alarm.chance])
    });
}

fn charge(row: &Row, start_c: f64, most_c: f64) -> FluidCharge {
    FluidCharge {
        volume_l: row.number("volume_l"),
        density_kg_m3: row.number("density_kg_m3"),
        specific_heat_j_kg_k: row.number("specific_heat_j_kg_k"),
        start_c,
        most_c,
    }
}

// ---- what is no characteristic, and no engine

#[test]
fn a_converter_that_gives_more_than_it_takes_is_refused() {
    let table =
        |ratios: &[f64], torques: &[f64]| Characteristic::from_table(ratios, torques, &[71.0; 5][..ratios.len()]);
    // The last row of the published table: 1.004 at 1.0.
    let published = table(&[0.0, 0.1, 0.2, 0.3, 1.0], &[2.23, 2.07, 1.97, 1.84, 1.004]);
    let refused = Error::OutOfRange { name: "efficiency", value: 1.004, low: 0.0, high: 1.0 };
    assert_eq!(published.unwrap_err(), refused);
    // Each point is possible, the line between them is not: 1.4 at 0.7 to 1 at 1 passes 1.0101 at 0.87.
    let between = table(&[0.0, 0.7, 1.0], &[2.2, 1.4, 1.0]).unwrap_err();
    assert!(matches!(between, Error::Inconsistent { name: "torque_ratio", .. }), "{between}");
    assert!(between.to_string().contains("give more points"));
    assert!(table(&[0.0, 0.7, 1.0], &[2.2, 1.4, 0.95]).is_err());
    assert!(table(&[0.0, 0.7, 0.8, 0.9, 1.0], &[2.2, 1.35, 1.2, 1.05, 1.0]).is_ok());
}

#[test]
fn impossible_tables_are_refused_with_what_is_wrong() {
    let kind = |ratios: &[f64], torques: &[f64], k: &[f64]| {
        let error = Characteristic::from_table(ratios, torques, k).unwrap_err();
        (error.kind(), error.parameter())
    };
    assert_eq!(kind(&[0.0], &[2.0], &[70.0]), ("COUNT", "points of the characteristic"));
    assert_eq!(kind(&[0.0; 33], &[2.0; 33], &[70.0; 33]), ("COUNT", "points of the characteristic"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0], &[70.0, 80.0]), ("INCONSISTENT", "torque_ratio"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0, 1.5], &[70.0]), ("INCONSISTENT", "k_rpm_per_sqrt_nm"));
    assert_eq!(kind(&[0.5, 0.5], &[2.0, 1.5], &[70.0, 80.0]), ("INCONSISTENT", "speed_ratio"));
    assert_eq!(kind(&[0.0, 1.1], &[2.0, 0.5], &[70.0, 80.0]), ("OUT_OF_RANGE", "speed_ratio"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0, -0.1], &[70.0, 80.0]), ("OUT_OF_RANGE", "torque_ratio"));
    assert_eq!(kind(&[0.0, 0.5], &[2.0, 1.5], &[70.0, 0.0]), ("NOT_POSITIVE", "k_rpm_per_sqrt_nm"));
    assert_eq!(kind(&[0.0, f64::NAN], &[2.0, 1.5], &[70.0, 80.0]), ("NOT_FINITE", "speed_ratio"));

    let kind = |speeds: &[f64], torques: &[f64], max: f64| {
        let error = EngineCurve::from_table(speeds, torques, max).unwrap_err();
        (error.kind(), error.parameter())
    };
    assert_eq!(kind(&[1000.0], &[300.0], 5000.0), ("COUNT", "points of the engine curve"));
    assert_eq!(kind(&[2000.0, 1000.0], &[300.0, 400.0], 5000.0), ("INCONSISTENT", "speed_rpm"));
    assert_eq!(kind(&[1000.0, 2000.0], &[300.0, -1.0], 5000.0), ("OUT_OF_RANGE", "torque_nm"));
    assert_eq!(kind(&[1000.0, 2000.0], &[300.0], 5000.0), ("INCONSISTENT", "torque_nm"));
    assert_eq!(kind(&[1000.0, 2000.0], &[300.0, 400.0], 1500.0), ("INCONSISTENT", "max_rpm"));
    assert_eq!(kind(&[1000.0, f64::INFINITY], &[300.0, 400.0], 5000.0), ("NOT_FINITE", "speed_rpm"));
}

#[test]
fn a_struct_that_c_filled_with_junk_answers_with_an_error() {
    let mut junk = published();
    for points in [0, 1, 33, u32::MAX] {
        junk.points = points;
        assert_eq!(junk.check_characteristic().unwrap_err().kind(), "COUNT");
        // A look-up does not check the whole table: it must only not invent an answer.
        if points < 2 {
            assert!(junk.torque_ratio_at(0.1).is_err());
        }
    }
    let nothing = Characteristic { k_rpm_per_sqrt_nm: [f64::NAN; TABLE_POINTS], ..published() };
    assert_eq!(nothing.check_characteristic().unwrap_err().kind(), "NOT_FINITE");
}

proptest! {
    /// A look-up lies between the two points beside it, and is a point's value at the point.
    #[test]
    fn a_look_up_lies_between_its_neighbors(
        steps in prop::collection::vec(1e-3..0.05_f64, 1..31),
        torques in prop::collection::vec(0.1..1.0_f64, 32),
        k in prop::collection::vec(20.0..400.0_f64, 32),
        at in 0.0..1.0_f64,
    ) {
        let mut ratios = vec![0.0];
        for step in steps {
            ratios.push((ratios.last().unwrap() + step).min(1.0 - 1e-9 * (40 - ratios.len()) as f64));
        }
        prop_assume!(ratios.windows(2).all(|pair| pair[0] < pair[1]));
        let points = ratios.len();
        let converter = Characteristic::from_table(&ratios, &torques[..points], &k[..points]).unwrap();
        for ((ratio, torque), k) in ratios.iter().zip(&torques).zip(&k) {
            prop_assert_eq!(converter.torque_ratio_at(*ratio).unwrap(), *torque);
            prop_assert_eq!(converter.capacity_factor_at(*ratio).unwrap(), *k);
        }
        let x = at * ratios[points - 1];
        let right = ratios.iter().position(|ratio| x <= *ratio).unwrap().max(1);
        let inside = |values: &[f64], value: f64| {
            let (low, high) = (values[right - 1].min(values[right]), values[right - 1].max(values[right]));
            (low * (1.0 - 1e-12)..=high * (1.0 + 1e-12)).contains(&value)
        };
        prop_assert!(inside(&torques, converter.torque_ratio_at(x).unwrap()));
        prop_assert!(inside(&k, converter.capacity_factor_at(x).unwrap()));
        prop_assert!(converter.torque_ratio_at(ratios[points - 1] + 1e-9).is_err());
    }

    /// Torque from K and K from torque are each other's inverse, and the two sides agree.
    #[test]
    fn capacity_factor_and_torque_are_inverse(rpm in 1.0..1e4_f64, k in 1.0..1e3_f64, ratio in 0.01..1.0_f64, torque in 0.1..1.0_f64) {
        let nm = impeller_torque_nm(rpm, k).unwrap();
        prop_assert!((capacity_factor(rpm, nm).unwrap() / k - 1.0).abs() < 1e-14);
        let output = capacity_factor(rpm * ratio, nm * torque).unwrap();
        prop_assert!((from_output_side(output, ratio, torque).unwrap() / k - 1.0).abs() < 1e-13);
    }
}

// ---- operating points: nothing missed, nothing invented

/// A rising list of so many values from `first` on, each step within the range.
fn rising(
    first: std::ops::Range<f64>,
    step: std::ops::Range<f64>,
    steps: std::ops::Range<usize>,
) -> impl Strategy<Value = Vec<f64>> {
    (first, prop::collection::vec(step, steps)).prop_map(|(first, steps)| {
        let mut values = vec![first];
        for step in steps {
            values.push(values.last().unwrap() + step);
        }
        values
    })
}

proptest! {
    /// Each operating point is a balance; a scan in small steps meets no other one; they alternate, stable and not; and the two
    /// ends have the sides that their number says. K rises and falls at random.
    #[test]
    fn every_operating_point_is_found(
        speeds in rising(500.0..1200.0, 100.0..900.0, 1..7),
        torques in prop::collection::vec(20.0..900.0_f64, 8),
        ratios in rising(0.0..0.001, 0.04..0.16, 1..7),
        k in prop::collection::vec(40.0..160.0_f64, 8),
        turbine in 0.0..3000.0_f64,
        factor in 0.5..1.2_f64,
        accessory in -20.0..40.0_f64,
        at_stall in any::<bool>(),
    ) {
        let mut ratios = ratios;
        ratios[0] = 0.0;
        let (points, turns) = (speeds.len(), ratios.len());
        let engine = EngineCurve::from_table(&speeds, &torques[..points], 20_000.0).unwrap();
        let converter = Characteristic::from_table(&ratios, &[1.0; 8][..turns], &k[..turns]).unwrap();
        let today = EngineToday { torque_factor: factor, accessory_nm: accessory };
        let turbine = if at_stall { 0.0 } else { turbine };
        let (low, high) = (speeds[0].max(turbine / ratios[turns - 1]), speeds[points - 1]);
        let found = operating_points(&engine, today, &converter, turbine);
        if low >= high {
            prop_assert_eq!(found.unwrap_err().kind(), "NO_ANSWER");
            return Ok(());
        }
        let found = found.unwrap();
        let surplus = |n: f64| {
            let ratio = (turbine / n).min(ratios[turns - 1]);
            let root = n / converter.capacity_factor_at(ratio).unwrap();
            factor * engine.torque_at_nm(n).unwrap() - accessory - root * root
        };
        let scale = |n: f64| engine.torque_at_nm(n).unwrap() + 100.0;
        for (place, point) in found.in_use().iter().enumerate() {
            prop_assert!(surplus(point.engine_rpm).abs() < 1e-8 * scale(point.engine_rpm), "{point:?}");
            prop_assert!(low <= point.engine_rpm && point.engine_rpm <= high);
            prop_assert_eq!(point.stable, found.surplus_at_first == (place % 2 == 0));
            prop_assert!((point.impeller_kw - point.turbine_kw - point.heat_kw).abs() < 1e-9);
        }
        prop_assert_eq!(found.surplus_at_first != found.surplus_at_last, found.count % 2 == 1);
        // The scan: wherever the sign turns, a point lies between.
        let steps = 400;
        let at = |step: usize| low + (high - low) * step as f64 / steps as f64;
        for step in 0..steps {
            let (from, to) = (at(step), at(step + 1).min(high));
            let (begins, ends) = (surplus(from), surplus(to));
            if begins.abs() < 1e-6 || ends.abs() < 1e-6 {
                continue;
            }
            let inside = found.in_use().iter().filter(|p| from <= p.engine_rpm && p.engine_rpm <= to).count();
            prop_assert_eq!((begins > 0.0) != (ends > 0.0), inside % 2 == 1, "{} to {}", from, to);
        }
    }

    /// A higher capacity factor, and more engine torque, raise a stall speed; its u grows with each of the inputs'.
    #[test]
    fn a_stall_speed_follows_its_inputs(torque in 0.9..1.1_f64, k in 0.95..1.05_f64, u in 1e-4..0.004_f64) {
        let (engine, converter) = drive("gasoline");
        let at = |torque, k, u| {
            let inputs = StallInputs {
                torque_factor: Reading { value: torque, u },
                k_factor: Reading { value: k, u },
                ..StallInputs::AS_MEASURED
            };
            stall_speed(&engine, &converter, inputs).unwrap()
        };
        let stall = at(torque, k, u);
        prop_assert!(at(torque * 1.01, k, u).speed_rpm.value > stall.speed_rpm.value);
        prop_assert!(at(torque, k * 1.01, u).speed_rpm.value > stall.speed_rpm.value);
        prop_assert!(at(torque, k, 2.0 * u).speed_rpm.u > 1.5 * stall.speed_rpm.u);
        prop_assert_eq!(at(torque, k, 0.0).speed_rpm.u, 0.0);
        prop_assert_eq!(stall.point.turbine_nm, stall.point.torque_ratio * stall.point.impeller_nm);
    }

    /// A plan never lets a rating be passed, and the engine torque that it names passes none.
    #[test]
    fn a_plan_keeps_its_ratings(turbine in 100.0..2000.0_f64, output in 500.0..9000.0_f64, start in 20.0..160.0_f64) {
        let (engine, converter) = drive("diesel_mid");
        let stall = operating_point(&engine, EngineToday::AS_MEASURED, &converter, 0.0).unwrap();
        let state = support::trains::train(DEMO_TRAIN).unwrap().solve(41).unwrap();
        let ratio = state.ratio.value().unwrap();
        let ratings = StallRatings { turbine_nm: turbine, output_nm: output, longest_s: 5.0 };
        let charge = FluidCharge {
            volume_l: 2.3, density_kg_m3: 860.0, specific_heat_j_kg_k: 2000.0, start_c: start, most_c: 150.0,
        };
        let plan = plan_stall(&stall, &state, ratings, charge).unwrap();
        prop_assert_eq!(plan.allowed, stall.turbine_nm <= turbine && stall.turbine_nm * ratio <= output && start < 150.0);
        prop_assert!(plan.permitted_s >= 0.0 && plan.permitted_s <= 5.0 && (plan.permitted_s > 0.0) == plan.allowed);
        prop_assert!(plan.limit_turbine_nm <= turbine && plan.limit_turbine_nm * ratio <= output * (1.0 + 1e-12));
        let limited = plan.limit_engine_nm * stall.torque_ratio;
        prop_assert!((limited / plan.limit_turbine_nm - 1.0).abs() < 1e-12);
        // In the permitted time the fluid stays below its limit.
        prop_assert!(start + charge.rise_k(stall.heat_kw, plan.permitted_s).unwrap() <= 150.0_f64.max(start) + 1e-9);
    }
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
