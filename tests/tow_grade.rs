//! Load per gear on a grade, heat, coolers and roads of grades against their sources, their properties and wrong inputs.

mod support;

use trainwright::record::{Family, Fleet, Record};
use trainwright::tow::{Rig, Standing};

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
            assert_eq!(chosen.standing, Standing::Holds);
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
