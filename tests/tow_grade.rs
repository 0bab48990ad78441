//! Load per gear on a grade, heat, coolers and roads of grades against their sources, their properties and wrong inputs.

mod support;

use proptest::prelude::*;
use std::sync::LazyLock;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::converter::{Characteristic, EngineCurve};
use trainwright::judge::Reading;
use trainwright::record::{Family, Fleet, Record};
use trainwright::road::{Combination, Driveline};
use trainwright::tow::{
    Arrangement, Cooler, CoolerTask, DrivenPiece, ElevationNoise, GearRule, GearStanding, Gearing, Haul, HeatModel,
    HeatNode, NO_GEAR, OfferedGear, Rig, RoadPiece, Running, SlopePoint, SpeedLimit, converter_loss_kw, cooler_size,
    flow_heat_w_k, pieces, smooth, through_flow_rise, total_climb, unit_loss,
};

/// Numbers of a cell: groups by spaces, parts of a group by colons.
fn groups(row: &Row, column: &str) -> Vec<Vec<f64>> {
    let numbers = |group: &str| group.split(':').map(|part| part.parse().unwrap()).collect();
    row.text(column).split(' ').map(numbers).collect()
}

fn list(row: &Row, column: &str) -> Vec<f64> {
    groups(row, column).into_iter().map(|group| group[0]).collect()
}

fn gears(row: &Row) -> Vec<OfferedGear> {
    let gear = |parts: &Vec<f64>| OfferedGear { ratio: parts[0], efficiency: parts[1], closed: 0, one_way: 0 };
    groups(row, "gears").iter().map(gear).collect()
}

fn gearing(row: &Row) -> Result<Gearing, Error> {
    let [input, reverse, output] =
        ["rated_input_nm", "rated_reverse_nm", "rated_output_nm"].map(|column| row.number(column));
    Gearing::new(&gears(row), input, reverse, output)
}

fn rig(row: &Row) -> Result<Rig, Error> {
    let engine = groups(row, "engine");
    let column = |place: usize| engine.iter().map(|point| point[place]).collect::<Vec<_>>();
    Ok(Rig {
        haul: Haul {
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
        },
        gearing: gearing(row)?,
        engine: EngineCurve::from_table(&column(0), &column(1), row.number("max_rpm"))?,
        rule: GearRule {
            torque_reserve: row.number("torque_reserve"),
            lowest_locked_rpm: row.number("lowest_locked_rpm"),
            speed_step_km_h: row.number("speed_step_km_h"),
        },
    })
}

fn place(gear: u32) -> f64 {
    if gear == NO_GEAR { -1.0 } else { gear.into() }
}

#[test]
fn grades() {
    vectors("tow_new", |row| {
        let gearing = gearing(row)?;
        let (first, last) = (gearing.gears()[0], gearing.gear(gearing.count - 1));
        Ok([gearing.count.into(), first.ratio, last.efficiency])
    });
    vectors("tow_pull", |row| {
        let pull = rig(row)?.pull(row.number("grade_pct"), row.number("speed_km_h"))?;
        let look = pull.gears()[row.count("look") as usize];
        Ok([
            pull.load.total_n,
            pull.output_rpm,
            pull.output_nm,
            pull.use_of_output,
            place(pull.chosen),
            place(pull.advised),
            f64::from(pull.limit as u8),
            pull.use_of_limit,
            look.engine_rpm,
            look.input_nm,
            look.full_nm,
            look.reserve,
            look.use_of_input,
            f64::from(look.standing as u8),
        ])
    });
    vectors("tow_pull_slowed", |row| {
        let pull = rig(row)?.pull_slowed(row.number("grade_pct"), row.number("speed_km_h"))?;
        Ok([pull.speed_km_h, place(pull.chosen), pull.chosen_gear().unwrap().input_nm])
    });
    vectors("tow_largest_speed", |row| {
        let within = row.count("within_ratings") == 1;
        let found = rig(row)?.largest_speed(row.number("grade_pct"), row.number("at_most_km_h"), within)?;
        Ok([found.speed_km_h, place(found.gear), found.use_of_input, f64::from(found.limit as u8)])
    });
    let fleet = demo::<Fleet>("fleet");
    let converter: Characteristic = fleet.characteristic("tight").unwrap();
    vectors("tow_unlocked_pull", |row| {
        let (gear, grade, speed) = (row.count("gear"), row.number("grade_pct"), row.number("speed_km_h"));
        let pull = rig(row)?.unlocked_pull(&converter, gear, grade, speed)?;
        let shafts = [pull.turbine_rpm, pull.turbine_nm, pull.speed_ratio, pull.torque_ratio];
        let engine = [pull.engine_rpm, pull.engine_nm, pull.reserve, f64::from(u8::from(pull.holds))];
        let [a, b, c, d] = shafts;
        let [e, f, g, h] = engine;
        Ok([a, b, c, d, e, f, g, h, pull.use_of_input, pull.converter_kw])
    });
}

fn node(row: &Row) -> HeatNode {
    HeatNode {
        heat_capacity_j_k: row.number("heat_capacity_j_k"),
        case_w_k: row.number("case_w_k"),
        air_c: row.number("air_c"),
        cooler_w_k: row.number("cooler_w_k"),
        cooler_air_c: row.number("cooler_air_c"),
    }
}

#[test]
fn heat() {
    vectors("tow_unit_loss", |row| {
        let loss = unit_loss(Running {
            input_nm: row.number("input_nm"),
            input_rpm: row.number("input_rpm"),
            efficiency: row.number("efficiency"),
            drag_nm: row.number("drag_nm"),
            pump_kpa: row.number("pump_kpa"),
            pump_l_min: row.number("pump_l_min"),
            pump_efficiency: row.number("pump_efficiency"),
            converter_kw: row.number("converter_kw"),
        })?;
        Ok([loss.mesh_kw, loss.drag_kw, loss.pump_kw, loss.converter_kw, loss.total_kw])
    });
    vectors("tow_converter_loss_kw", |row| {
        let [torque, speed] = ["engine_nm", "engine_rpm"].map(|column| row.number(column));
        Ok([converter_loss_kw(torque, speed, row.number("speed_ratio"), row.number("torque_ratio"))?])
    });
    let flow = |row: &Row| ["flow_l_min", "density_kg_m3", "specific_heat_j_kg_k"].map(|column| row.number(column));
    vectors("tow_through_flow_rise", |row| {
        let [flow, density, heat] = flow(row);
        let rise = through_flow_rise(row.number("power_kw"), row.number("efficiency"), flow, density, heat)?;
        Ok([rise.loss_kw, rise.rise_k])
    });
    vectors("tow_flow_heat_w_k", |row| {
        let [flow, density, heat] = flow(row);
        Ok([flow_heat_w_k(flow, density, heat)?])
    });
    vectors("tow_warmed", |row| {
        let warmed = node(row).warmed(row.number("start_c"), row.number("loss_kw"), row.number("time_s"))?;
        Ok([warmed.temp_c, warmed.steady_c, warmed.time_constant_s])
    });
    vectors("tow_time_to", |row| {
        let time = node(row).time_to(row.number("start_c"), row.number("loss_kw"), row.number("limit_c"))?;
        Ok([time.time_s, time.steady_c, f64::from(u8::from(time.reached))])
    });
    vectors("tow_cooler_needed_w_k", |row| {
        Ok([node(row).cooler_needed_w_k(row.number("loss_kw"), row.number("limit_c"))?])
    });
}

fn arrangement(row: &Row) -> Arrangement {
    match row.text("arrangement") {
        "counterflow" => Arrangement::Counterflow,
        "crossflow" => Arrangement::Crossflow,
        "parallel" => Arrangement::Parallel,
        other => panic!("{other}"),
    }
}

#[test]
fn coolers() {
    vectors("tow_effectiveness", |row| {
        Ok([arrangement(row).effectiveness(row.number("transfer_units"), row.number("capacity_ratio"))?])
    });
    vectors("tow_transfer_units", |row| {
        Ok([arrangement(row).transfer_units(row.number("effectiveness"), row.number("capacity_ratio"))?])
    });
    vectors("tow_cooler_heat", |row| {
        let [ua_w_k, oil_w_k, air_w_k] = ["ua_w_k", "oil_w_k", "air_w_k"].map(|column| row.number(column));
        let cooler = Cooler { ua_w_k, oil_w_k, air_w_k, arrangement: arrangement(row) };
        let heat = cooler.cooler_heat(row.number("oil_c"), row.number("air_c"))?;
        Ok([heat.effectiveness, heat.conductance_w_k, heat.power_kw, heat.oil_out_c, heat.air_out_c])
    });
    vectors("tow_cooler_size", |row| {
        let [oil_in_c, oil_out_c, air_in_c] = ["oil_in_c", "oil_out_c", "air_in_c"].map(|column| row.number(column));
        let task = CoolerTask { oil_in_c, oil_out_c, air_in_c };
        let size = cooler_size(arrangement(row), row.number("oil_w_k"), row.number("air_w_k"), task)?;
        Ok([size.power_kw, size.air_out_c, size.effectiveness, size.ua_w_k, size.log_mean_k])
    });
}

fn heat_model(row: &Row) -> HeatModel {
    HeatModel {
        drag_nm: row.number("drag_nm"),
        pump_kpa: row.number("pump_kpa"),
        pump_l_min: row.number("pump_l_min"),
        pump_efficiency: row.number("pump_efficiency"),
        node: node(row),
        limit_c: row.number("limit_c"),
    }
}

#[test]
fn roads() {
    vectors("tow_climb", |row| {
        let piece = |parts: &Vec<f64>| RoadPiece { length_m: parts[0], grade_pct: parts[1], speed_km_h: parts[2] };
        let road: Vec<_> = groups(row, "pieces").iter().map(piece).collect();
        let mut driven = vec![DrivenPiece::NONE; road.len()];
        let climb = rig(row)?.climb(heat_model(row), row.number("start_c"), &road, &mut driven)?;
        let last = driven.last().unwrap();
        Ok([
            climb.distance_m,
            climb.up_m,
            climb.down_m,
            climb.time_s,
            climb.peak_c,
            climb.peak_piece.into(),
            climb.end_c,
            climb.limit_after_s,
            climb.limit_after_m,
            climb.over_limit_s,
            climb.heat_j,
            climb.wheel_work_j,
            climb.lift_work_j,
            climb.use_of_rating,
            last.speed_km_h,
            place(last.gear),
            last.loss_kw,
            last.end_c,
        ])
    });
    vectors("tow_cool_speed", |row| {
        let cool = rig(row)?.cool_speed(heat_model(row), row.number("grade_pct"), row.number("speed_km_h"))?;
        Ok([cool.pull.speed_km_h, place(cool.pull.chosen), cool.loss_kw, cool.steady_c, cool.steps.into()])
    });
    vectors("tow_smooth", |row| {
        let (distance_m, elevation_m) = (list(row, "distance_m"), list(row, "elevation_m"));
        let noise = ElevationNoise { u_m: row.number("u_m"), correlation_m: row.number("correlation_m") };
        let mut points = vec![SlopePoint::NONE; distance_m.len()];
        smooth(&distance_m, &elevation_m, row.number("window_m"), noise, &mut points)?;
        let point = points[row.count("look") as usize];
        Ok([point.elevation_m, point.grade_pct, point.u_grade_pct, point.points.into()])
    });
    vectors("tow_total_climb", |row| {
        let climb = total_climb(&list(row, "elevation_m"), row.number("dead_band_m"))?;
        Ok([climb.up_m, climb.down_m, climb.net_m, climb.turns.into()])
    });
    vectors("tow_pieces", |row| {
        let (distance_m, elevation_m) = (list(row, "distance_m"), list(row, "elevation_m"));
        let (piece_m, speed_km_h) = (row.number("piece_m"), row.number("speed_km_h"));
        let count = pieces(&distance_m, &elevation_m, piece_m, speed_km_h, &mut [])?;
        let blank = RoadPiece { length_m: 0.0, grade_pct: 0.0, speed_km_h: 0.0 };
        let mut found = vec![blank; count as usize];
        assert_eq!(pieces(&distance_m, &elevation_m, piece_m, speed_km_h, &mut found)?, count);
        let piece = found[row.count("look") as usize];
        Ok([count.into(), piece.length_m, piece.grade_pct])
    });
}

fn demo<T: Record>(file: &str) -> T {
    let path = format!("{}/python/trainwright/demo/{file}.toml", env!("CARGO_MANIFEST_DIR"));
    T::from_toml(file, &std::fs::read_to_string(path).unwrap()).unwrap()
}

/// Truck, largest use of the rated input torque, and where: grade, speed asked for, gear. From the independent script of the
/// demonstration.
const WORST: [(&str, f64, f64, f64, &str); 8] = [
    ("T11", 0.567_410_603_919_388, 0.0, 95.0, "8"),
    ("T12", 0.923_464_824_650_050_9, 6.0, 68.0, "5"),
    ("T13", 1.191_546_134_988_607_4, 3.0, 88.0, "6"),
    ("T14", 0.781_468_232_587_726_4, 6.0, 68.0, "5"),
    ("T15", 0.796_571_932_267_995_3, 12.0, 28.0, "3"),
    ("T16", 0.796_113_189_973_282_2, 6.0, 68.0, "5"),
    ("T17", 0.780_567_761_868_576_3, 3.0, 88.0, "6"),
    ("T18", 0.479_945_978_231_431, 6.0, 68.0, "5"),
];

#[test]
fn the_trucks_of_the_demonstration_use_their_ratings_as_computed_independently() {
    let (family, fleet) = (demo::<Family>("family"), demo::<Fleet>("fleet"));
    let road = fleet.road_model().unwrap();
    for (id, use_of_rating, grade_pct, speed_km_h, gear) in WORST {
        let truck = fleet.truck.iter().find(|truck| truck.id == id).unwrap();
        let named = family.train(&truck.variant).unwrap();
        let gearing = named.gearing(family.rating(&truck.variant).unwrap()).unwrap();
        let engine = fleet.engine_curve(&truck.engine).unwrap();
        let haul = fleet.haul(fleet.combination(truck).unwrap(), fleet.fitted(truck).unwrap()).unwrap();
        let rig = Rig { haul, gearing, engine, rule: road.gear_rule(1.0) };
        let mut worst = (0.0, 0.0, 0.0, String::new());
        for (&grade, &speed) in road.grade_pct.iter().zip(&road.speed_km_h) {
            let slowed = rig.pull_slowed(grade, speed).unwrap();
            let chosen = slowed.chosen_gear().unwrap();
            assert_eq!(chosen.standing, GearStanding::Holds);
            if chosen.use_of_input > worst.0 {
                worst = (chosen.use_of_input, grade, speed, named.gears[slowed.chosen as usize].id.clone());
            }
        }
        assert!((worst.0 / use_of_rating - 1.0).abs() < 1e-12, "{id}: {worst:?}");
        assert_eq!((worst.1, worst.2, worst.3.as_str()), (grade_pct, speed_km_h, gear), "{id}");
        let asked = rig.pull(grade_pct, speed_km_h).unwrap();
        let advised = &named.gears[asked.advised as usize].id;
        assert_eq!(advised, if id == "T13" { "5" } else { gear }, "{id}");
    }
}

static RECORDS: LazyLock<(Family, Fleet)> = LazyLock::new(|| (demo("family"), demo("fleet")));

fn truck(id: &str) -> Rig {
    let (family, fleet) = &*RECORDS;
    let truck = fleet.truck.iter().find(|truck| truck.id == id).unwrap();
    let named = family.train(&truck.variant).unwrap();
    Rig {
        haul: fleet.haul(fleet.combination(truck).unwrap(), fleet.fitted(truck).unwrap()).unwrap(),
        gearing: named.gearing(family.rating(&truck.variant).unwrap()).unwrap(),
        engine: fleet.engine_curve(&truck.engine).unwrap(),
        rule: fleet.road_model().unwrap().gear_rule(1.0),
    }
}

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

#[test]
fn a_road_downhill_gives_back_what_it_took() {
    let rig = truck("T13");
    let node = HeatNode { heat_capacity_j_k: 6e4, case_w_k: 25.0, air_c: 30.0, cooler_w_k: 120.0, cooler_air_c: 30.0 };
    let heat = HeatModel { drag_nm: 0.0, pump_kpa: 0.0, pump_l_min: 0.0, pump_efficiency: 1.0, node, limit_c: 120.0 };
    let piece = |grade_pct| RoadPiece { length_m: 5000.0, grade_pct, speed_km_h: 60.0 };
    let road = [piece(5.0), piece(-5.0)];
    let mut driven = [DrivenPiece::NONE; 2];
    let climb = rig.climb(heat, 80.0, &road, &mut driven).unwrap();
    assert!(climb.lift_work_j.abs() < 1e-6 * climb.wheel_work_j && (climb.up_m - climb.down_m).abs() < 1e-9);
    assert!(driven[0].end_c > driven[1].end_c && driven[1].input_nm < 0.0);
    // The same road in shorter pieces comes out the same.
    let short: Vec<_> = road.iter().flat_map(|piece| [RoadPiece { length_m: 500.0, ..*piece }; 10]).collect();
    let mut fine = vec![DrivenPiece::NONE; short.len()];
    let again = rig.climb(heat, 80.0, &short, &mut fine).unwrap();
    assert!((again.end_c - climb.end_c).abs() < 1e-9 && (again.peak_c - climb.peak_c).abs() < 1e-9);
    assert_eq!(rig.climb(heat, 80.0, &[], &mut []).unwrap_err().kind(), "COUNT");
    assert_eq!(rig.climb(heat, 80.0, &road, &mut driven[..1]).unwrap_err().kind(), "COUNT");
}

#[test]
fn a_missing_trailer_mass_is_not_guessed() {
    let fleet = demo::<Fleet>("fleet");
    let gaps = fleet.truck.iter().find(|truck| truck.id == "T19").unwrap();
    assert_eq!(fleet.combination(gaps).unwrap_err().kind(), "MISSING");
    let least = fleet.combination_with(gaps, 3000.0).unwrap();
    assert_eq!(least.mass_kg, 6450.0);
    assert_eq!(fleet.combination_with(gaps, -1.0).unwrap_err().kind(), "OUT_OF_RANGE");
}
