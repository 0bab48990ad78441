//! Random trucks, loads and grades.

use super::*;

proptest! {
    #[test]
    fn power_balances_in_every_gear(grade in -12.0..15.0_f64, speed in 5.0..110.0_f64, id in prop::sample::select(vec!["T11", "T13", "T15"])) {
        let rig = truck(id);
        let pull = rig.pull(grade, speed).unwrap();
        let wheels_w = pull.load.total_n * speed / 3.6;
        for (gear, offered) in pull.gears().iter().zip(rig.gearing.gears()) {
            let input_w = gear.input_nm * gear.engine_rpm * std::f64::consts::PI / 30.0;
            let passed = if wheels_w < 0.0 { 1.0 / offered.efficiency } else { offered.efficiency };
            let expected = wheels_w / rig.haul.axle_efficiency;
            prop_assert!((input_w * passed - expected).abs() <= 1e-9 * expected.abs());
        }
        // A chosen gear holds, and no higher gear does.
        if let Some(chosen) = pull.chosen_gear() {
            prop_assert_eq!(chosen.standing, GearStanding::Holds);
            prop_assert!(pull.gears().iter().all(|gear| gear.standing != GearStanding::Holds || gear.ratio >= chosen.ratio));
        } else {
            prop_assert!(pull.gears().iter().all(|gear| gear.standing != GearStanding::Holds));
        }
    }

    #[test]
    fn the_largest_speed_is_held_and_no_more(grade in 0.0..14.0_f64, within in any::<bool>(), id in prop::sample::select(vec!["T11", "T12", "T13", "T15", "T17"])) {
        let rig = truck(id);
        let found = rig.largest_speed(grade, 160.0, within).unwrap();
        let holds = |speed: f64| {
            let pull = rig.pull(grade, speed).unwrap();
            let ok = |use_of_input: f64| !within || (use_of_input <= 1.0 && pull.use_of_output <= 1.0);
            pull.gears().iter().any(|gear| gear.standing == GearStanding::Holds && ok(gear.use_of_input))
        };
        prop_assert!(holds(found.speed_km_h * (1.0 - 1e-9)));
        if found.limit != SpeedLimit::Asked {
            for more in [1e-6, 0.01, 0.1, 0.3] {
                prop_assert!(!holds(found.speed_km_h * (1.0 + more)), "{found:?} and yet {more} more");
            }
        }
    }

    #[test]
    fn an_exact_step_does_not_depend_on_how_it_is_cut(start in -20.0..150.0_f64, loss in 0.0..40.0_f64, time in 0.0..5000.0_f64, cut in 0.0..1.0_f64, case in 0.0..80.0_f64, cooler in 0.0..300.0_f64) {
        let node = HeatNode { heat_capacity_j_k: 6e4, case_w_k: case, air_c: 38.0, cooler_w_k: cooler, cooler_air_c: 45.0 };
        prop_assume!(case + cooler < 1e-300 || loss * time / 60.0 < 600.0);
        let whole = node.warmed(start, loss, time).unwrap().temp_c;
        let half = node.warmed(start, loss, cut * time).unwrap().temp_c;
        prop_assume!((-273.15..=1000.0).contains(&half));
        let parts = node.warmed(half, loss, (1.0 - cut) * time).unwrap().temp_c;
        prop_assert!((whole - parts).abs() < 1e-9 * (1.0 + whole.abs()), "{whole} {parts}");
        let limit = 120.0;
        let left = node.time_to(start, loss, limit).unwrap();
        if left.reached && left.time_s > 0.0 && left.time_s < 1e12 {
            prop_assert!((node.warmed(start, loss, left.time_s).unwrap().temp_c - limit).abs() < 1e-6);
        }
    }

    #[test]
    fn an_effectiveness_is_met_by_its_transfer_units(n in 0.01..6.0_f64, c in 0.0..=1.0_f64) {
        for arrangement in [Arrangement::Counterflow, Arrangement::Crossflow, Arrangement::Parallel] {
            let passed = arrangement.effectiveness(n, c).unwrap();
            prop_assert!(passed > 0.0 && passed < 1.0);
            let again = arrangement.effectiveness(arrangement.transfer_units(passed, c).unwrap(), c).unwrap();
            prop_assert!((again - passed).abs() < 1e-10);
        }
        let [counter, cross, parallel] = [Arrangement::Counterflow, Arrangement::Crossflow, Arrangement::Parallel]
            .map(|arrangement| arrangement.effectiveness(n, c).unwrap());
        prop_assert!(counter >= parallel - 1e-12 && cross <= counter * 1.02 + 1e-9 && cross >= parallel * 0.96 - 1e-9);
    }

    #[test]
    fn a_straight_road_is_found_whatever_the_steps(grade in -20.0..20.0_f64, steps in prop::collection::vec(1.0..40.0_f64, 12..40)) {
        let slope = grade / 100.0 / (1.0 + grade * grade / 1e4).sqrt();
        let distance_m: Vec<f64> = steps.iter().scan(0.0, |at, step| { *at += step; Some(*at) }).collect();
        let elevation_m: Vec<f64> = distance_m.iter().map(|s| 300.0 + slope * s).collect();
        let mut points = vec![SlopePoint::NONE; distance_m.len()];
        smooth(&distance_m, &elevation_m, 200.0, ElevationNoise { u_m: 1.0, correlation_m: 0.0 }, &mut points).unwrap();
        for (point, elevation) in points.iter().zip(&elevation_m) {
            prop_assert!((point.grade_pct - grade).abs() < 1e-6 && (point.elevation_m - elevation).abs() < 1e-6);
        }
    }

    #[test]
    fn what_goes_up_and_down_is_the_net_rise(elevation in prop::collection::vec(0.0..500.0_f64, 1..60), band in 0.0..30.0_f64) {
        let climb = total_climb(&elevation, band).unwrap();
        let exact = total_climb(&elevation, 0.0).unwrap();
        prop_assert!((exact.up_m - exact.down_m - exact.net_m).abs() < 1e-9);
        prop_assert!((climb.up_m - climb.down_m - climb.net_m).abs() <= band * 2.0 + 1e-9);
        prop_assert!(climb.up_m <= exact.up_m + 1e-9);
    }
}
