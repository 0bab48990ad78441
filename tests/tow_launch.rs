//! Published criteria, launch, grip, rotating inertia and run-up against their sources, their properties and wrong inputs.

mod support;

use approx::assert_relative_eq;
use proptest::prelude::*;
use std::f64::consts::PI;
use support::trains::train;
use support::{Row, vectors};
use trainwright::converter::{Characteristic, EngineCurve, EngineToday};
use trainwright::judge::{Reading, Rule, Verdict};
use trainwright::road::{Combination, Driveline, road_load};
use trainwright::tow::{
    Criterion, CriterionOutcome, Launch, RatedFor, RunUp, RunUpGear, Stance, check_criterion, criterion_limits,
    equivalent_mass, grip_on_grade, output_inertia_kg_m2,
};

fn rated(row: &Row) -> RatedFor {
    RatedFor {
        dual_rear: row.count("dual_rear") == 1,
        gvwr_kg: row.number("gvwr_kg"),
        trailer_kg: row.number("trailer_kg"),
        trailer_brakes: row.count("trailer_brakes") == 1,
    }
}

#[test]
fn criteria() {
    vectors("tow_criterion_limits", |row| {
        let criterion = Criterion::from_number(row.count("criterion") as i32)?;
        let limits = criterion_limits(criterion, rated(row))?;
        Ok([limits.lower, limits.upper])
    });
    vectors("tow_check_criterion", |row| {
        let criterion = Criterion::from_number(row.count("criterion") as i32)?;
        let check = check_criterion(criterion, row.reading("value", "u"), rated(row), row.rule()?)?;
        Ok([check.limits.lower, check.limits.upper, check.chance, f64::from(check.outcome as u8)])
    });
    for (number, criterion) in (1..).zip(Criterion::ALL) {
        assert_eq!(Criterion::from_number(number), Ok(criterion));
    }
}

fn driveline(row: &Row, u: f64) -> Driveline {
    Driveline {
        axle_ratio: row.number("axle_ratio"),
        transfer_ratio: row.number("transfer_ratio"),
        circumference_mm: Reading { value: row.number("circumference_mm"), u },
    }
}

#[test]
fn launches() {
    vectors("tow_launch", |row| {
        let launch = Launch {
            turbine_nm: row.reading("turbine_nm", "turbine_u_nm"),
            gear_ratio: row.number("gear_ratio"),
            gear_efficiency: row.number("gear_efficiency"),
            driveline: driveline(row, row.number("circumference_u_mm")),
            axle_efficiency: row.number("axle_efficiency"),
            mass_kg: row.reading("mass_kg", "mass_u_kg"),
            rolling_coefficient: row.number("rolling_coefficient"),
            break_away_coefficient: row.number("break_away_coefficient"),
        };
        let force = launch.launch(row.number("grade_pct"), row.rule()?)?;
        Ok([
            force.output_nm,
            force.tractive_n,
            force.grade_n,
            force.rolling_n,
            force.left_n,
            force.budget.u,
            force.judgment.chance,
            f64::from(force.judgment.verdict as i32),
            force.largest_grade_pct,
            force.proven_grade_pct,
        ])
    });
    vectors("tow_grip_on_grade", |row| {
        let stance = Stance {
            driven_axle_kg: row.number("driven_axle_kg"),
            truck_kg: row.number("truck_kg"),
            trailer_kg: row.number("trailer_kg"),
            wheelbase_mm: row.number("wheelbase_mm"),
            cg_height_mm: row.number("cg_height_mm"),
            hitch_height_mm: row.number("hitch_height_mm"),
            tail_up: row.count("tail_up") == 1,
        };
        let (friction, rolling) = (row.number("tire_friction"), row.number("rolling_coefficient"));
        let grip = grip_on_grade(stance, row.number("grade_pct"), friction, rolling)?;
        Ok([grip.normal_n, grip.grip_n, grip.needed_n, grip.largest_grade_pct])
    });
}

#[test]
fn inertias() {
    vectors("tow_output_inertia_kg_m2", |row| {
        let state = train(row.text("train"))?.solve(row.count("closed"))?;
        let inertia = ["inertia_0", "inertia_1", "inertia_2"].map(|name| row.number(name));
        Ok([output_inertia_kg_m2(&state, &inertia)?])
    });
    vectors("tow_equivalent_mass", |row| {
        let (wheels, output) = (row.number("wheel_inertia_kg_m2"), row.number("output_inertia_kg_m2"));
        let mass = equivalent_mass(row.number("mass_kg"), driveline(row, 0.0), wheels, output)?;
        Ok([mass.wheels_kg, mass.train_kg, mass.total_kg, mass.factor])
    });
}

fn diesel() -> EngineCurve {
    let speed = [800.0, 1100.0, 1400.0, 1800.0, 2200.0, 2600.0, 3000.0, 3400.0];
    let torque = [340.0, 520.0, 640.0, 660.0, 650.0, 615.0, 560.0, 480.0];
    EngineCurve::from_table(&speed, &torque, 3600.0).unwrap()
}

fn tight() -> Characteristic {
    let ratio = [0.0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97];
    let torque = [1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1.0, 1.0, 1.0];
    let k = [71.0, 71.3, 72.2, 74.7, 77.8, 84.1, 95.0, 128.0, 196.0];
    Characteristic::from_table(&ratio, &torque, &k).unwrap()
}

fn gears() -> [RunUpGear; 4] {
    let gear = |ratio, efficiency, output_inertia_kg_m2, lockable| RunUpGear {
        ratio,
        efficiency,
        output_inertia_kg_m2,
        lockable,
    };
    [gear(4.7, 0.96, 0.9, false), gear(2.6, 0.965, 0.35, true), gear(1.5, 0.97, 0.15, true), gear(1.0, 0.98, 0.1, true)]
}

#[test]
fn run_ups() {
    vectors("tow_run_up", |row| {
        let run = RunUp {
            combination: Combination {
                mass_kg: row.number("mass_kg"),
                rolling_coefficient: row.number("rolling_coefficient"),
                drag_area_m2: row.number("drag_area_m2"),
            },
            driveline: Driveline {
                axle_ratio: row.number("axle_ratio"),
                transfer_ratio: 1.0,
                circumference_mm: Reading { value: row.number("circumference_mm"), u: 0.0 },
            },
            axle_efficiency: row.number("axle_efficiency"),
            air_density_kg_m3: row.number("air_density_kg_m3"),
            grade_pct: row.number("grade_pct"),
            wheel_inertia_kg_m2: row.number("wheel_inertia_kg_m2"),
            engine_inertia_kg_m2: row.number("engine_inertia_kg_m2"),
            today: EngineToday { torque_factor: row.number("torque_factor"), accessory_nm: row.number("accessory_nm") },
            lowest_locked_rpm: row.number("lowest_locked_rpm"),
            grip_n: row.number("grip_n"),
            shift_s: row.number("shift_s"),
        };
        let up = run.run_up(&diesel(), &tight(), &gears(), [row.number("from_km_h"), row.number("to_km_h")])?;
        Ok([
            f64::from(up.reaches as u8),
            up.reached_km_h,
            up.time_s,
            up.distance_m,
            up.shifts.into(),
            up.last_gear.into(),
            up.start_n,
            up.start_m_s2,
        ])
    });
}

fn ninety_five() -> Rule {
    Rule::stated_chances(0.95, 0.05).unwrap()
}

prop_compose! {
    fn any_launch()(
        torque in 200.0..2000.0_f64, ratio in 2.5..6.0_f64, axle in 3.0..5.0_f64, radius in 330.0..480.0_f64,
        mass in 2000.0..20_000.0_f64, rolling in 0.005..0.03_f64, u in 0.0..0.06_f64,
    ) -> Launch {
        Launch {
            turbine_nm: Reading::relative(torque, u).unwrap(), gear_ratio: ratio, gear_efficiency: 0.95,
            driveline: Driveline::new(axle, 1.0, Reading::relative(2.0 * PI * radius, 0.006).unwrap()).unwrap(),
            axle_efficiency: 0.965, mass_kg: Reading::relative(mass, u).unwrap(), rolling_coefficient: rolling,
            break_away_coefficient: 0.004,
        }
    }
}

proptest! {
    #[test]
    fn on_the_largest_grade_nothing_is_left_and_the_proven_one_is_a_go(launch in any_launch()) {
        let flat = launch.launch(0.0, ninety_five()).unwrap();
        prop_assert!(flat.proven_grade_pct <= flat.largest_grade_pct);
        if flat.largest_grade_pct > 0.0 && flat.largest_grade_pct < 100.0 {
            let there = launch.launch(flat.largest_grade_pct, ninety_five()).unwrap();
            prop_assert!(there.left_n.abs() < 1e-8 * there.tractive_n);
        }
        if flat.proven_grade_pct > 0.01 && flat.proven_grade_pct < 100.0 {
            let below = launch.launch(flat.proven_grade_pct * (1.0 - 1e-9), ninety_five()).unwrap();
            prop_assert_eq!(below.judgment.verdict, Verdict::Go);
            let above = launch.launch((flat.proven_grade_pct * (1.0 + 1e-6)).min(100.0), ninety_five()).unwrap();
            prop_assert!(above.judgment.verdict != Verdict::Go);
        }
    }

    #[test]
    fn what_it_takes_to_launch_is_the_road_load_at_rest(launch in any_launch(), grade in 0.0..40.0_f64) {
        let force = launch.launch(grade, ninety_five()).unwrap();
        let combination = Combination {
            mass_kg: launch.mass_kg.value,
            rolling_coefficient: launch.rolling_coefficient + launch.break_away_coefficient,
            drag_area_m2: 5.0,
        };
        assert_relative_eq!(force.needed_n, road_load(combination, 1.2, 0.0, grade).unwrap().total_n, max_relative = 1e-12);
        let back = Launch { gear_ratio: -launch.gear_ratio, ..launch };
        prop_assert_eq!(back.launch(grade, ninety_five()).unwrap().tractive_n, force.tractive_n);
    }

    #[test]
    fn climbing_backward_grips_less_and_the_two_mirror_each_other(
        axle in 1000.0..4000.0_f64, truck in 2500.0..5000.0_f64, trailer in 0.0..9000.0_f64, high in 0.0..1200.0_f64,
        pull in 0.0..900.0_f64, grade in 0.1..30.0_f64, friction in 0.1..0.9_f64,
    ) {
        let stance = Stance {
            driven_axle_kg: axle.min(truck), truck_kg: truck, trailer_kg: trailer, wheelbase_mm: 3800.0, cg_height_mm: high,
            hitch_height_mm: pull, tail_up: false,
        };
        let up = grip_on_grade(stance, grade, friction, 0.01).unwrap();
        let back = grip_on_grade(Stance { tail_up: true, ..stance }, grade, friction, 0.01).unwrap();
        prop_assert!(back.grip_n <= up.grip_n && back.largest_grade_pct <= up.largest_grade_pct);
        prop_assert_eq!(up.shift_kg, -back.shift_kg);
        if up.largest_grade_pct > 0.0 && up.largest_grade_pct < 100.0 {
            let there = grip_on_grade(stance, up.largest_grade_pct, friction, 0.01).unwrap();
            assert_relative_eq!(there.grip_n, there.needed_n, max_relative = 1e-9);
        }
    }

}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]
    #[test]
    fn a_heavier_or_steeper_run_up_takes_longer(mass in 3000.0..9000.0_f64, more in 1.05..1.5_f64, grade in 0.0..3.0_f64) {
        let run = |mass_kg: f64, grade_pct: f64| RunUp {
            combination: Combination { mass_kg, rolling_coefficient: 0.011, drag_area_m2: 6.0 },
            driveline: Driveline::new(3.54, 1.0, Reading::exact(2415.0).unwrap()).unwrap(),
            axle_efficiency: 0.965, air_density_kg_m3: 1.18, grade_pct, wheel_inertia_kg_m2: 14.0, engine_inertia_kg_m2: 0.42,
            today: EngineToday::AS_MEASURED, lowest_locked_rpm: 1150.0, grip_n: 30_000.0, shift_s: 0.4,
        };
        let time = |run: RunUp| run.run_up(&diesel(), &tight(), &gears(), [0.0, 60.0]).unwrap();
        let [one, heavy, steep] = [run(mass, grade), run(mass * more, grade), run(mass, grade + 1.0)].map(time);
        prop_assert!(one.reaches && heavy.time_s > one.time_s && steep.time_s > one.time_s);
        prop_assert!(one.distance_m < 60.0 / 3.6 * one.time_s);
    }
}

#[test]
fn a_speed_that_is_never_reached_is_not_met() {
    let rated = RatedFor { dual_rear: false, gvwr_kg: 4000.0, trailer_kg: 3000.0, trailer_brakes: true };
    let never = Reading { value: f64::INFINITY, u: 0.0 };
    let check = check_criterion(Criterion::ZeroToSixty, never, rated, ninety_five()).unwrap();
    assert_eq!(check.outcome, CriterionOutcome::NotMet);
}

#[test]
fn a_run_up_needs_gears() {
    let run = RunUp {
        combination: Combination { mass_kg: 8000.0, rolling_coefficient: 0.011, drag_area_m2: 6.0 },
        driveline: Driveline::new(3.54, 1.0, Reading::exact(2415.0).unwrap()).unwrap(),
        axle_efficiency: 0.965,
        air_density_kg_m3: 1.18,
        grade_pct: 0.0,
        wheel_inertia_kg_m2: 14.0,
        engine_inertia_kg_m2: 0.42,
        today: EngineToday::AS_MEASURED,
        lowest_locked_rpm: 1150.0,
        grip_n: f64::INFINITY,
        shift_s: 0.4,
    };
    let refused = |gears: &[RunUpGear]| run.run_up(&diesel(), &tight(), gears, [0.0, 60.0]).unwrap_err().kind();
    assert_eq!(refused(&[]), "COUNT");
    assert_eq!(refused(&[gears()[0]; 17]), "COUNT");
    assert_eq!(refused(&[RunUpGear { ratio: 0.0, ..gears()[0] }]), "NOT_POSITIVE");
    assert_eq!(refused(&[RunUpGear { efficiency: 1.2, ..gears()[0] }]), "OUT_OF_RANGE");
    let open = EngineCurve { points: 40, ..diesel() };
    assert_eq!(run.run_up(&open, &tight(), &gears(), [0.0, 60.0]).unwrap_err().kind(), "COUNT");
}
