//! Random tables and operating points: nothing missed, nothing invented.

use super::*;

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
