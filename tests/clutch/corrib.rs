//! The invented Corrib family from its record.

use super::*;

use toml::{Table, Value};

pub const ELEMENTS: [&str; 6] = ["B1", "B2", "C1", "C2", "C3", "F1"];
const MEMBERS: [&str; 9] =
    ["case", "input", "output", "sun_link", "front_carrier", "ring_link", "second_sun", "rear_carrier", "third_sun"];
/// Each gear under drive, and what governs it in teal, wren and heron.
pub const GEARS: [(&str, [&str; 3], [&str; 3]); 11] = [
    ("1", ["B1", "C2", "F1"], ["B1", "B1", "B1"]),
    ("1B", ["B1", "C2", "B2"], ["B1", "B1", "B1"]),
    ("2", ["B1", "C1", "F1"], ["B1", "B1", "B1"]),
    ("2B", ["B1", "C1", "B2"], ["B1", "B1", "B1"]),
    ("3", ["B1", "C1", "C2"], ["C1", "C1", "C1"]),
    ("4", ["B1", "C1", "C3"], ["C1", "C1", "C1"]),
    ("5", ["B1", "C2", "C3"], ["C3", "C2", "C3"]),
    ("6", ["C1", "C2", "C3"], ["C2", "C2", "C2"]),
    ("7", ["B2", "C2", "C3"], ["C3", "C3", "C3"]),
    ("8", ["B2", "C1", "C3"], ["C3", "C3", "C3"]),
    ("R", ["B1", "B2", "C3"], ["C3", "B2", "C3"]),
];

fn member(name: &str) -> u8 {
    MEMBERS.iter().position(|&m| m == name).unwrap() as u8
}

fn family() -> Table {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/python/trainwright/demo/family.toml");
    std::fs::read_to_string(path).unwrap().parse().unwrap()
}

/// A number, or that of the variant.
fn number(value: &Value, variant: &str) -> f64 {
    let value = value.get(variant).unwrap_or(value);
    value.as_float().unwrap_or_else(|| value.as_integer().unwrap() as f64)
}

fn pair(value: &Value) -> [f64; 2] {
    [0, 1].map(|at| number(&value[at], ""))
}

fn ring(value: &Value) -> Annulus {
    let [inner, outer] = pair(value);
    Annulus::new(inner, outer).unwrap()
}

pub fn limit(variant: &str, key: &str) -> f64 {
    number(&family()["variant"][variant][key], "")
}

pub fn pack(id: &str, variant: &str) -> ElementPack {
    let record = &family()["clutch"][id];
    let piston = ring(&record["piston_radius_mm"]);
    let [lower, upper] = pair(&record["return_spring_n"]);
    let head = match record.get("head_radius_mm") {
        Some(radius) => Head { wetted: piston, free_surface_radius_mm: number(radius, "") },
        None => Head::NONE,
    };
    ElementPack {
        pack: Pack {
            lining: ring(&record["lining_radius_mm"]),
            piston,
            faces: plate_faces(number(&record["plates"], variant) as u32).unwrap(),
            worn: false,
            return_spring_n: Limits { lower, upper },
            seal_drag_n: 0.0,
            head,
            dam: Head::NONE,
        },
        element: ELEMENTS.iter().position(|&e| e == id).unwrap() as u8,
        turns_with: member(record["turns_with"].as_str().unwrap()),
    }
}

pub fn packs(variant: &str) -> Vec<ElementPack> {
    ["B1", "B2", "C1", "C2", "C3"].map(|id| pack(id, variant)).to_vec()
}

pub fn solve(variant: &str, closed: [&str; 3]) -> State {
    let mut train = Train::new(9, member("input"), member("output"), member("case")).unwrap();
    let (family, heron) = (family(), |set: &Value| set.get("only").is_some());
    for set in family["train"]["set"].as_array().unwrap() {
        let first = set["id"].as_str() == Some("P1");
        if first && heron(set) != (variant == "heron") {
            continue;
        }
        let tooth = |name: &str| number(&set["teeth"][name], "") as u16;
        let joined = |name: &str| member(set["joins"][name].as_str().unwrap());
        let planets = number(&set["planets"], "") as u8;
        let teeth = SetTeeth { sun: tooth("sun"), planet: tooth("planet"), ring: tooth("ring"), ..SetTeeth::NONE };
        let joins = SetJoins { sun: joined("sun"), ring: joined("ring"), carrier: joined("carrier"), ..SetJoins::NONE };
        train.add_set(PlanetarySet { kind: SetKind::Simple, planets, teeth, joins }).unwrap();
    }
    for id in ELEMENTS {
        let joins = &family["train"]["element"][id]["joins"];
        let [first, second] = [0, 1].map(|at: usize| member(joins[at].as_str().unwrap()));
        let element = match id.chars().next() {
            Some('B') => Element::brake(first, second),
            Some('C') => Element::clutch(first, second),
            _ => Element::one_way(first, second, Blocks::Reverse),
        };
        train.add_element(element).unwrap();
    }
    let mask = closed.map(|id| 1 << ELEMENTS.iter().position(|&e| e == id).unwrap());
    train.solve(mask.iter().sum()).unwrap()
}

/// As the record has it: static friction, hot oil at stall, control maximum of the pressure, rated torque.
pub fn duty(variant: &str, gear: &str) -> Duty {
    let torque = if gear == "R" { "reverse_turbine_nm" } else { "rated_turbine_nm" };
    Duty {
        pressure_kpa: Reading { value: limit(variant, "line_control_max_kpa"), u: 0.0 },
        friction: Reading { value: 0.112, u: 0.009 },
        geometry_u_rel: 0.02,
        oil_density_kg_m3: 790.0,
        turbine_torque_nm: Reading { value: limit(variant, torque), u: 0.0 },
        turbine_speed_rpm: 0.0,
        rule: Rule::stated_chances(0.95, 0.05).unwrap(),
    }
}
