//! Load per gear on a grade, heat, coolers and roads of grades against their sources, their properties and wrong inputs.

#[path = "../support/mod.rs"]
mod support;

mod random;
mod vectors;

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
