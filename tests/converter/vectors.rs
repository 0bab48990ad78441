//! The vectors that the three languages share.

use super::*;

fn today(row: &Row) -> EngineToday {
    EngineToday { torque_factor: row.number("torque_factor"), accessory_nm: row.number("accessory_nm") }
}

fn rule() -> Rule {
    Rule::conformance(0.95).unwrap()
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
            torque_factor: row.reading("torque_factor", "torque_factor_u"),
            accessory_nm: row.reading("accessory_nm", "accessory_u_nm"),
            k_factor: row.reading("k_factor", "k_factor_u"),
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
            speed_rpm: row.reading("measured_rpm", "measured_u_rpm"),
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
