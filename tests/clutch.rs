//! The clutch chapter against its sources, the demonstration family, its properties and wrong inputs.

mod support;

use approx::assert_relative_eq;
use proptest::prelude::*;
use std::f64::consts::PI;
use support::trains::train;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::clutch::{
    Annulus, Applied, Band, Duty, ElementPack, Head, HeldInput, LiningByRadius, Pack, ReturnSprings, Servo, Slip,
    SlipEnd, Steel, SteelPlates, Working, bulk_rise_k, disc_faces, governing, plate_faces, referred_inertia_kg_m2,
    review, surface_drop_mm,
};
use trainwright::judge::{Limits, Reading, Rule, Verdict, settle};
use trainwright::train::{Blocks, Element, PlanetarySet, SetJoins, SetKind, SetTeeth, State, Train};

fn ring(row: &Row, part: &str) -> Annulus {
    Annulus {
        inner_radius_mm: row.number(&format!("{part}_inner_radius_mm")),
        outer_radius_mm: row.number(&format!("{part}_outer_radius_mm")),
    }
}

fn annulus(row: &Row) -> Annulus {
    Annulus { inner_radius_mm: row.number("inner_radius_mm"), outer_radius_mm: row.number("outer_radius_mm") }
}

fn head(row: &Row, part: &str) -> Head {
    Head { wetted: ring(row, part), free_surface_radius_mm: row.number(&format!("{part}_free_surface_radius_mm")) }
}

fn pack(row: &Row) -> Pack {
    Pack {
        lining: ring(row, "lining"),
        piston: ring(row, "piston"),
        faces: row.count("faces"),
        worn: row.count("worn") != 0,
        return_spring_n: Limits { lower: row.number("weak_spring_n"), upper: row.number("strong_spring_n") },
        seal_drag_n: row.number("seal_drag_n"),
        head: head(row, "head"),
        dam: head(row, "dam"),
    }
}

/// The pack of the row at `element:member that its drum turns with`.
fn element_pack(row: &Row, place: &str) -> ElementPack {
    let (element, turns_with) = place.split_once(':').unwrap();
    ElementPack { pack: pack(row), element: element.parse().unwrap(), turns_with: turns_with.parse().unwrap() }
}

fn applied(row: &Row) -> Applied {
    Applied {
        pressure_kpa: row.number("pressure_kpa"),
        friction: row.number("friction"),
        drum_speed_rpm: row.number("drum_speed_rpm"),
        oil_density_kg_m3: row.number("oil_density_kg_m3"),
    }
}

#[test]
fn rings() {
    vectors("clutch_area_mm2", |row| Ok([annulus(row).area_mm2()?]));
    vectors("clutch_mean_radius_new_mm", |row| Ok([annulus(row).mean_radius_new_mm()?]));
    vectors("clutch_mean_radius_worn_mm", |row| Ok([annulus(row).mean_radius_worn_mm()?]));
    vectors("clutch_best_inner_radius_mm", |row| Ok([annulus(row).best_inner_radius_mm()?]));
    vectors("clutch_clamp_at_peak_n", |row| Ok([annulus(row).clamp_at_peak_n(row.number("peak_mpa"))?]));
    vectors("clutch_peak_at_clamp_mpa", |row| Ok([annulus(row).peak_at_clamp_mpa(row.number("clamp_n"))?]));
}

#[test]
fn oil_and_springs() {
    let wet = |row: &Row| Head { wetted: annulus(row), free_surface_radius_mm: row.number("free_surface_radius_mm") };
    vectors("clutch_head_force_n", |row| {
        Ok([wet(row).head_force_n(row.number("oil_density_kg_m3"), row.number("drum_speed_rpm"))?])
    });
    vectors("clutch_head_pressure_kpa", |row| {
        let (density, speed) = (row.number("oil_density_kg_m3"), row.number("drum_speed_rpm"));
        Ok([wet(row).head_pressure_kpa(row.number("radius_mm"), density, speed)?])
    });
    vectors("clutch_surface_drop_mm", |row| Ok([surface_drop_mm(row.number("radius_mm"), row.number("speed_rpm"))?]));
    vectors("clutch_spring_force_n", |row| {
        let springs = ReturnSprings {
            count: row.count("count"),
            rate_n_mm: row.number("rate_n_mm"),
            free_length_mm: row.number("free_length_mm"),
        };
        Ok([springs.spring_force_n(row.number("fitted_length_mm"))?])
    });
}

#[test]
fn faces() {
    vectors("clutch_plate_faces", |row| Ok([plate_faces(row.count("friction_plates"))?.into()]));
    vectors("clutch_disc_faces", |row| Ok([disc_faces(row.count("driving_discs"), row.count("driven_discs"))?.into()]));
    vectors("clutch_torque_by_radius_nm", |row| {
        let face = LiningByRadius {
            lining: annulus(row),
            faces: row.count("faces"),
            pressure_mpa: row.number("pressure_mpa"),
            friction_at_axis: row.number("friction_at_axis"),
            friction_per_mm: row.number("friction_per_mm"),
        };
        Ok([face.torque_by_radius_nm()?])
    });
}

#[test]
fn packs() {
    vectors("clutch_mean_radius_mm", |row| Ok([pack(row).mean_radius_mm()?]));
    vectors("clutch_capacity", |row| {
        let c = pack(row).capacity(applied(row))?;
        Ok([
            c.piston_area_mm2,
            c.apply_force_n,
            c.head_force_n,
            c.dam_force_n,
            c.net_force_n,
            c.mean_radius_mm,
            c.lining_mean_mpa,
            c.lining_peak_mpa,
            c.torque_nm,
        ])
    });
    vectors("clutch_capacity_line", |row| {
        let line = pack(row).capacity_line(row.number("oil_density_kg_m3"))?;
        Ok([line.piston_area_mm2, line.head_n_per_rpm2, line.held_back_n, line.arm_mm])
    });
    vectors("clutch_capacity_nm", |row| {
        let line = pack(row).capacity_line(row.number("oil_density_kg_m3"))?;
        Ok([line.capacity_nm(row.number("pressure_kpa"), row.number("drum_speed_rpm"), row.number("friction"))?])
    });
    vectors("clutch_pressure_needed", |row| {
        let any_pressure = Applied {
            pressure_kpa: 0.0,
            friction: row.number("friction"),
            drum_speed_rpm: row.number("drum_speed_rpm"),
            oil_density_kg_m3: row.number("oil_density_kg_m3"),
        };
        let needed = pack(row).pressure_needed(row.number("torque_nm"), any_pressure)?;
        Ok([needed.strong_spring_kpa, needed.weak_spring_kpa])
    });
    vectors("clutch_friction_needed", |row| {
        let any_friction = Applied {
            pressure_kpa: row.number("pressure_kpa"),
            friction: 1.0,
            drum_speed_rpm: row.number("drum_speed_rpm"),
            oil_density_kg_m3: row.number("oil_density_kg_m3"),
        };
        Ok([pack(row).friction_needed(row.number("torque_nm"), any_friction)?])
    });
    vectors("clutch_drag_speed_rpm", |row| Ok([pack(row).drag_speed_rpm(row.number("oil_density_kg_m3"))?]));
}

#[test]
fn holding() {
    let reading = |row: &Row, value: &str, u: &str| Reading { value: row.number(value), u: row.number(u) };
    vectors("clutch_hold", |row| {
        let working = Working {
            pressure_kpa: reading(row, "pressure_kpa", "pressure_u_kpa"),
            friction: reading(row, "friction", "friction_u"),
            geometry_u_rel: row.number("geometry_u_rel"),
            drum_speed_rpm: row.number("drum_speed_rpm"),
            oil_density_kg_m3: row.number("oil_density_kg_m3"),
        };
        let rule = Rule::stated_chances(row.number("go"), row.number("no_go"))?;
        let hold = pack(row).hold(reading(row, "need_nm", "need_u_nm"), working, rule)?;
        Ok([
            hold.margin,
            hold.pressure_needed.strong_spring_kpa,
            hold.pressure_needed.weak_spring_kpa,
            hold.friction_needed,
            hold.judgment.chance,
            f64::from(hold.judgment.verdict as i32),
        ])
    });
    vectors("clutch_review", |row| {
        let duty = Duty {
            pressure_kpa: reading(row, "pressure_kpa", "pressure_u_kpa"),
            friction: reading(row, "friction", "friction_u"),
            geometry_u_rel: row.number("geometry_u_rel"),
            oil_density_kg_m3: row.number("oil_density_kg_m3"),
            turbine_torque_nm: reading(row, "turbine_torque_nm", "turbine_torque_u_nm"),
            turbine_speed_rpm: row.number("turbine_speed_rpm"),
            rule: Rule::stated_chances(row.number("go"), row.number("no_go"))?,
        };
        let packs: Vec<_> = row.text("packs").split_whitespace().map(|place| element_pack(row, place)).collect();
        let found = review(&train(row.text("train"))?.solve(row.count("closed"))?, &packs, duty)?;
        let weakest = found.weakest();
        Ok([
            f64::from(found.count),
            f64::from(weakest.element),
            weakest.share,
            weakest.drum_speed_rpm,
            weakest.need_nm,
            weakest.capacity_nm,
            weakest.margin,
            weakest.friction_needed,
            weakest.chance,
            f64::from(weakest.verdict as i32),
        ])
    });
    vectors("clutch_governing", |row| {
        Ok([governing(&["margin_0", "margin_1", "margin_2"].map(|name| row.number(name)))?.into()])
    });
}

#[test]
fn bands() {
    let band = |row: &Row| Band {
        drum_radius_mm: row.number("drum_radius_mm"),
        width_mm: row.number("width_mm"),
        wrap_deg: row.number("wrap_deg"),
    };
    let outputs = |t: trainwright::clutch::BandTorque| {
        [t.tension_ratio, t.tight_n, t.slack_n, t.lining_peak_mpa, t.torque_nm, t.nm_per_friction]
    };
    vectors("clutch_energized", |row| {
        band(row).energized(row.number("servo_force_n"), row.number("friction")).map(outputs)
    });
    vectors("clutch_deenergized", |row| {
        band(row).deenergized(row.number("servo_force_n"), row.number("friction")).map(outputs)
    });
    vectors("clutch_servo_force_n", |row| {
        let servo = Servo {
            piston: annulus(row),
            return_spring_n: row.number("return_spring_n"),
            lever_ratio: row.number("lever_ratio"),
        };
        Ok([servo.servo_force_n(row.number("pressure_kpa"))?])
    });
}

fn slip(row: &Row) -> Slip {
    Slip {
        input_inertia_kg_m2: row.number("input_inertia_kg_m2"),
        output_inertia_kg_m2: row.number("output_inertia_kg_m2"),
        input_speed_rpm: row.number("input_speed_rpm"),
        output_speed_rpm: row.number("output_speed_rpm"),
        clutch_torque_nm: row.number("clutch_torque_nm"),
        drive_torque_nm: row.number("drive_torque_nm"),
        load_torque_nm: row.number("load_torque_nm"),
    }
}

fn held_input(row: &Row) -> HeldInput {
    HeldInput {
        output_inertia_kg_m2: row.number("output_inertia_kg_m2"),
        input_speed_rpm: row.number("input_speed_rpm"),
        output_speed_rpm: row.number("output_speed_rpm"),
        clutch_torque_nm: row.number("clutch_torque_nm"),
        load_torque_nm: row.number("load_torque_nm"),
    }
}

fn end_outputs(end: SlipEnd) -> [f64; 10] {
    [
        f64::from(u8::from(end.locks)),
        f64::from(u8::from(end.stays_locked)),
        end.slip_shrinks_rpm_s,
        end.time_s,
        end.final_speed_rpm,
        end.energy_j,
        end.start_heat_kw,
        end.drive_work_j,
        end.load_work_j,
        end.locked_torque_nm,
    ]
}

fn steel(row: &Row) -> Steel {
    Steel {
        conductivity_w_m_k: row.number("conductivity_w_m_k"),
        density_kg_m3: row.number("density_kg_m3"),
        specific_heat_j_kg_k: row.number("specific_heat_j_kg_k"),
        thickness_mm: row.number("thickness_mm"),
    }
}

#[test]
fn shifts() {
    vectors("clutch_slip_end", |row| slip(row).slip_end().map(end_outputs));
    vectors("clutch_held_input_end", |row| held_input(row).held_input_end().map(end_outputs));
    vectors("clutch_referred_inertia_kg_m2", |row| {
        Ok([referred_inertia_kg_m2(row.number("inertia_kg_m2"), row.number("speed_ratio"))?])
    });
}

#[test]
fn heat() {
    let rise = |rise: trainwright::clutch::SurfaceRise| {
        [rise.rise_k, rise.at_s, rise.thick_until_s, f64::from(u8::from(rise.thick))]
    };
    vectors("clutch_bulk_rise_k", |row| {
        Ok([bulk_rise_k(row.number("energy_j"), row.number("steel_mass_kg"), row.number("specific_heat_j_kg_k"))?])
    });
    vectors("clutch_surface_rise_constant", |row| {
        steel(row).surface_rise_constant(row.number("flux_w_mm2"), row.number("time_s")).map(rise)
    });
    vectors("clutch_surface_rise_falling", |row| {
        steel(row).surface_rise_falling(row.number("start_flux_w_mm2"), row.number("slip_time_s")).map(rise)
    });
    vectors("clutch_plate_heat", |row| {
        let plates = SteelPlates {
            steel: steel(row),
            steel_mass_kg: row.number("steel_mass_kg"),
            lining: annulus(row),
            faces: row.count("faces"),
        };
        let heat = plates.plate_heat(held_input(row).held_input_end()?)?;
        let [rise_k, _, _, thick] = rise(heat.surface);
        Ok([heat.energy_j_mm2, heat.start_flux_w_mm2, heat.bulk_rise_k, rise_k, thick])
    });
}

/// The invented Corrib family from its record.
mod corrib {
    use super::*;
    use toml::{Table, Value};

    pub const ELEMENTS: [&str; 6] = ["B1", "B2", "C1", "C2", "C3", "F1"];
    const MEMBERS: [&str; 9] = [
        "case",
        "input",
        "output",
        "sun_link",
        "front_carrier",
        "ring_link",
        "second_sun",
        "rear_carrier",
        "third_sun",
    ];
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
            let joins =
                SetJoins { sun: joined("sun"), ring: joined("ring"), carrier: joined("carrier"), ..SetJoins::NONE };
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
}

#[test]
fn governing_element_of_every_gear() {
    for (at, variant) in ["teal", "wren", "heron"].into_iter().enumerate() {
        let packs = corrib::packs(variant);
        for (gear, closed, governs) in corrib::GEARS {
            let state = corrib::solve(variant, closed);
            let answer = review(&state, &packs, corrib::duty(variant, gear)).unwrap();
            assert_eq!(corrib::ELEMENTS[usize::from(answer.weakest().element)], governs[at], "{variant} {gear}");
            assert_eq!(answer.elements().len(), closed.iter().filter(|&&id| id != "F1").count());
            for row in answer.elements() {
                assert!(row.margin >= answer.weakest().margin);
                let turbine = corrib::duty(variant, gear).turbine_torque_nm.value;
                assert_eq!(row.need_nm, row.share * turbine);
            }
        }
    }
}

/// J3: two trucks, gauge 1470 kPa on a gauge of 2500 kPa of class 1.6.
#[test]
fn gauge_pressure_against_the_governing_gear() {
    let packs = corrib::packs("teal");
    for (engine_nm, margin, chance, verdict, friction, strong_kpa, weak_kpa) in [
        (660.0, 1.0480588075453565, 0.7061541554683566, Verdict::NotProven, 0.107, 1408.4, 1385.6),
        (840.0, 0.823474777357066, 0.005628182635219192, Verdict::NoGo, 0.136, 1757.9, 1735.1),
    ] {
        let forward = &corrib::GEARS[..10];
        let reviews: Vec<_> = forward
            .iter()
            .map(|&(gear, closed, _)| {
                let duty = Duty {
                    pressure_kpa: Reading::of_class(1470.0, 2500.0, 1.6).unwrap(),
                    turbine_torque_nm: Reading { value: engine_nm, u: 0.0 },
                    ..corrib::duty("teal", gear)
                };
                review(&corrib::solve("teal", closed), &packs, duty).unwrap().weakest()
            })
            .collect();
        let margins: Vec<f64> = reviews.iter().map(|row| row.margin).collect();
        let position = governing(&margins).unwrap() as usize;
        let weakest = reviews[position];
        assert_eq!((forward[position].0, corrib::ELEMENTS[usize::from(weakest.element)]), ("3", "C1"));
        assert_relative_eq!(weakest.margin, margin, max_relative = 1e-5);
        assert_relative_eq!(weakest.chance, chance, max_relative = 1e-5);
        assert_eq!(weakest.verdict, verdict);
        assert!((weakest.friction_needed - friction).abs() < 0.0005);
        assert!((weakest.pressure_needed.strong_spring_kpa - strong_kpa).abs() < 0.05);
        assert!((weakest.pressure_needed.weak_spring_kpa - weak_kpa).abs() < 0.05);
    }
}

/// The head of C3 counts once the input turns; the balanced clutches and the brakes never feel it.
#[test]
fn only_the_drum_without_a_dam_gains_from_speed() {
    let (packs, state) = (corrib::packs("teal"), corrib::solve("teal", ["B1", "C1", "C3"]));
    let at = |turbine_speed_rpm| {
        review(&state, &packs, Duty { turbine_speed_rpm, ..corrib::duty("teal", "4") }).unwrap().elements().to_vec()
    };
    for (still, turning) in at(0.0).iter().zip(at(3000.0)) {
        if corrib::ELEMENTS[usize::from(still.element)] == "C3" {
            let head_n = (turning.capacity_nm - still.capacity_nm) / (0.112 * 6.0 * 77.350_649_350_649_35e-3);
            assert_relative_eq!(head_n, 688.1721440562852, max_relative = 1e-6);
        } else {
            assert_eq!(still.capacity_nm, turning.capacity_nm);
        }
    }
}

#[test]
fn a_review_refuses_what_it_cannot_answer() {
    let (packs, duty) = (corrib::packs("teal"), corrib::duty("teal", "3"));
    let third = corrib::solve("teal", ["B1", "C1", "C2"]);
    let tied_up = corrib::solve("teal", ["B1", "B2", "C2"]);
    assert!(review(&third, &packs, duty).is_ok());
    assert!(matches!(review(&third, &[], duty), Err(Error::Missing { name: "packs", .. })));
    assert!(matches!(review(&third, &packs[1..2], duty), Err(Error::Missing { name: "packs", .. })));
    assert!(review(&tied_up, &packs, duty).is_ok(), "gear 1B");
    let neutral = corrib::solve("teal", ["C1", "C1", "C1"].map(|_| "C1"));
    assert!(matches!(review(&neutral, &packs, duty), Err(Error::NoAnswer { name: "state", .. })));
    let nowhere = [ElementPack { turns_with: 200, ..packs[0] }];
    assert!(matches!(review(&third, &nowhere, duty), Err(Error::Missing { name: "turns_with", .. })));
    let crowd = vec![packs[0]; 17];
    assert!(matches!(review(&third, &crowd, duty), Err(Error::Count { name: "packs", .. })));
    for bad in [f64::NAN, f64::INFINITY, 0.0, -1.0] {
        let torque = Duty { turbine_torque_nm: Reading { value: bad, u: 0.0 }, ..duty };
        assert!(review(&third, &packs, torque).is_err(), "{bad}");
    }
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(review(&third, &packs, Duty { geometry_u_rel: bad, ..duty }).is_err());
        assert!(review(&third, &packs, Duty { oil_density_kg_m3: bad, ..duty }).is_err());
        assert!(review(&third, &packs, Duty { pressure_kpa: Reading { value: bad, u: 0.0 }, ..duty }).is_err());
        assert!(review(&third, &packs, Duty { friction: Reading { value: 0.1, u: bad }, ..duty }).is_err());
        let torque = Duty { turbine_torque_nm: Reading { value: 600.0, u: bad }, ..duty };
        assert!(review(&third, &packs, torque).is_err());
    }
    assert!(review(&third, &packs, Duty { turbine_speed_rpm: f64::NAN, ..duty }).is_err());
}

#[test]
fn friction_is_the_measurement_that_would_settle_j3() {
    let working = Working {
        pressure_kpa: Reading::of_class(1470.0, 2500.0, 1.6).unwrap(),
        friction: Reading { value: 0.112, u: 0.009 },
        geometry_u_rel: 0.02,
        drum_speed_rpm: 0.0,
        oil_density_kg_m3: 790.0,
    };
    let rule = Rule::stated_chances(0.95, 0.05).unwrap();
    let need = Reading::exact(783.5744680851095).unwrap();
    let hold = corrib::pack("C1", "teal").pack.hold(need, working, rule).unwrap();
    let next = settle(&hold.judgment, &hold.budget).unwrap();
    assert_eq!((next.input, next.enough), (1, true));
    let measured = Working { friction: Reading { value: 0.112, u: next.u_needed * 0.999 }, ..working };
    let settled = corrib::pack("C1", "teal").pack.hold(need, measured, rule).unwrap();
    assert_eq!(settled.judgment.verdict, Verdict::Go);
}

#[test]
fn governing_refuses_an_empty_list() {
    assert!(matches!(governing(&[]), Err(Error::Count { name: "margins", .. })));
}

#[test]
fn every_card_is_found_by_its_id() {
    for card in trainwright::clutch::CARDS {
        assert_eq!(trainwright::card::find(card.id), Some(card));
    }
}

fn rings_of(radius: std::ops::Range<f64>) -> impl Strategy<Value = Annulus> {
    (radius, 1.05..2.0).prop_map(|(inner, over)| Annulus { inner_radius_mm: inner, outer_radius_mm: inner * over })
}

prop_compose! {
    fn some_pack()(
        lining in rings_of(20.0..120.0), piston in rings_of(20.0..120.0), faces in 1_u32..20, worn in any::<bool>(),
        weak in 0.0..2000.0, stiffer in 0.0..500.0, seal_drag_n in 0.0..100.0, unbalanced in any::<bool>(),
    ) -> Pack {
        let head = Head { wetted: piston, free_surface_radius_mm: piston.inner_radius_mm * 0.9 };
        let return_spring_n = Limits { lower: weak, upper: weak + stiffer };
        Pack { lining, piston, faces, worn, return_spring_n, seal_drag_n, head: if unbalanced { head } else { Head::NONE }, dam: Head::NONE }
    }
}

prop_compose! {
    fn some_applied()(pressure_kpa in 0.0..3000.0, friction in 0.02..0.6, drum_speed_rpm in -8000.0..8000.0) -> Applied {
        Applied { pressure_kpa, friction, drum_speed_rpm, oil_density_kg_m3: 800.0 }
    }
}

prop_compose! {
    fn some_slip()(
        input_inertia_kg_m2 in 0.01..10.0, output_inertia_kg_m2 in 0.01..10.0, input_speed_rpm in -6000.0..6000.0,
        output_speed_rpm in -6000.0..6000.0, clutch_torque_nm in 0.0..2000.0, drive_torque_nm in -800.0..800.0,
        load_torque_nm in -800.0..800.0,
    ) -> Slip {
        Slip {
            input_inertia_kg_m2, output_inertia_kg_m2, input_speed_rpm, output_speed_rpm, clutch_torque_nm,
            drive_torque_nm, load_torque_nm,
        }
    }
}

proptest! {
    #[test]
    fn a_worn_radius_is_never_above_the_new_one(ring in rings_of(1.0..200.0)) {
        let (new, worn) = (ring.mean_radius_new_mm().unwrap(), ring.mean_radius_worn_mm().unwrap());
        prop_assert!(ring.inner_radius_mm < worn && worn <= new && new < ring.outer_radius_mm);
    }

    #[test]
    fn capacity_grows_with_pressure_friction_and_plates(pack in some_pack(), at in some_applied(), more in 1.0..2.0_f64) {
        let torque = |pack: Pack, at: Applied| pack.capacity(at).unwrap().torque_nm;
        let base = torque(pack, at);
        prop_assert!(base >= 0.0);
        for (what, grown) in [
            ("pressure", torque(pack, Applied { pressure_kpa: at.pressure_kpa * more, ..at })),
            ("friction", torque(pack, Applied { friction: f64::min(at.friction * more, 1.0), ..at })),
            ("plates", torque(Pack { faces: pack.faces + 2, ..pack }, at)),
            ("speed", torque(pack, Applied { drum_speed_rpm: at.drum_speed_rpm * more, ..at })),
            ("new lining", torque(Pack { worn: false, ..pack }, at) * (1.0 + 1e-15)),
        ] {
            prop_assert!(grown >= base, "{what}: {base} to {grown}");
        }
    }

    #[test]
    fn pressure_and_friction_needed_undo_capacity(pack in some_pack(), at in some_applied(), torque_nm in 1.0..3000.0) {
        let needed = pack.pressure_needed(torque_nm, at).unwrap();
        prop_assert!(needed.weak_spring_kpa <= needed.strong_spring_kpa);
        if needed.strong_spring_kpa > 0.0 {
            let capacity = pack.capacity(Applied { pressure_kpa: needed.strong_spring_kpa, ..at }).unwrap();
            prop_assert!((capacity.torque_nm / torque_nm - 1.0).abs() < 1e-9, "{}", capacity.torque_nm);
        }
        let capacity = pack.capacity(at).unwrap();
        if capacity.torque_nm > 0.0 {
            let friction = pack.friction_needed(capacity.torque_nm, at).unwrap();
            prop_assert!((friction / at.friction - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn a_column_row_is_the_capacity_bit_for_bit(pack in some_pack(), at in some_applied()) {
        let line = pack.capacity_line(at.oil_density_kg_m3).unwrap();
        let row = line.capacity_nm(at.pressure_kpa, at.drum_speed_rpm, at.friction).unwrap();
        let capacity = pack.capacity(at).unwrap();
        prop_assert_eq!(row.to_bits(), capacity.torque_nm.to_bits());
        let forces = capacity.apply_force_n + capacity.head_force_n - capacity.dam_force_n
            - capacity.return_spring_n - capacity.seal_drag_n;
        prop_assert!((forces - capacity.net_force_n).abs() < 1e-9 * capacity.apply_force_n.max(1e3));
    }

    #[test]
    fn a_dam_like_the_piston_cancels_the_head(pack in some_pack(), at in some_applied()) {
        let balanced = Pack { dam: pack.head, ..pack };
        let without = Pack { head: Head::NONE, dam: Head::NONE, ..pack };
        prop_assert_eq!(balanced.capacity(at).unwrap().torque_nm, without.capacity(at).unwrap().torque_nm);
        prop_assert!(balanced.drag_speed_rpm(800.0).is_err());
    }

    #[test]
    fn a_head_is_the_integral_of_its_pressure(wetted in rings_of(10.0..90.0), surface in 0.0..200.0, rpm in -9000.0..9000.0) {
        let head = Head { wetted, free_surface_radius_mm: surface };
        // p(r) r is a cubic: the weights 1, 4, 1 integrate it exactly from the free surface outward.
        let (inner, outer) = (wetted.inner_radius_mm.max(surface), wetted.outer_radius_mm);
        let around = |r: f64| head.head_pressure_kpa(r, 850.0, rpm).unwrap() * 1e-3 * 2.0 * PI * r;
        let sum = if inner < outer {
            (around(inner) + 4.0 * around((inner + outer) / 2.0) + around(outer)) * (outer - inner) / 6.0
        } else {
            0.0
        };
        let force = head.head_force_n(850.0, rpm).unwrap();
        prop_assert!((force - sum).abs() <= 1e-9 * (1.0 + sum), "{force} {sum}");
    }

    #[test]
    fn bands_obey_the_rope_equation(radius in 20.0..200.0, wrap in 10.0..1080.0, force in 0.0..9000.0, mu in 0.01..0.4) {
        let band = Band { drum_radius_mm: radius, width_mm: 40.0, wrap_deg: wrap };
        let (with, against) = (band.energized(force, mu).unwrap(), band.deenergized(force, mu).unwrap());
        prop_assert!((with.torque_nm - with.tension_ratio * against.torque_nm).abs() <= 1e-9 * with.torque_nm);
        prop_assert!(with.torque_nm >= against.torque_nm);
        for (up, down, here) in [
            (band.energized(force, mu + 1e-6), band.energized(force, mu - 1e-6), with),
            (band.deenergized(force, mu + 1e-6), band.deenergized(force, mu - 1e-6), against),
        ] {
            let slope = (up.unwrap().torque_nm - down.unwrap().torque_nm) / 2e-6;
            prop_assert!((slope - here.nm_per_friction).abs() <= 1e-5 * here.nm_per_friction.max(1.0));
        }
    }

    #[test]
    fn energy_balances_over_a_slip(slip in some_slip()) {
        let end = slip.slip_end().unwrap();
        prop_assert!(end.energy_j >= 0.0);
        if end.locks {
            let kinetic = |inertia: f64, rpm: f64| 0.5 * inertia * (rpm * PI / 30.0).powi(2);
            let before = kinetic(slip.input_inertia_kg_m2, slip.input_speed_rpm)
                + kinetic(slip.output_inertia_kg_m2, slip.output_speed_rpm);
            let after = kinetic(slip.input_inertia_kg_m2 + slip.output_inertia_kg_m2, end.final_speed_rpm);
            let scale = before + after + end.drive_work_j.abs() + end.load_work_j.abs() + end.energy_j;
            let gap = before + end.drive_work_j - end.load_work_j - after - end.energy_j;
            prop_assert!(gap.abs() < 1e-9 * scale, "{gap} of {scale}");
        } else {
            prop_assert!(end.slip_shrinks_rpm_s <= 0.0 && end.time_s == f64::INFINITY);
        }
    }

    #[test]
    fn a_held_input_is_an_endless_inertia(slip in some_slip()) {
        let held = HeldInput {
            output_inertia_kg_m2: slip.output_inertia_kg_m2, input_speed_rpm: slip.input_speed_rpm,
            output_speed_rpm: slip.output_speed_rpm, clutch_torque_nm: slip.clutch_torque_nm,
            load_torque_nm: slip.load_torque_nm,
        }.held_input_end().unwrap();
        let endless = Slip { input_inertia_kg_m2: 1e6, drive_torque_nm: 0.0, ..slip }.slip_end().unwrap();
        prop_assume!(held.slip_shrinks_rpm_s.abs() > 1.0);
        prop_assert_eq!(held.locks, endless.locks);
        if held.locks {
            prop_assert!((held.time_s / endless.time_s - 1.0).abs() < 0.02);
            prop_assert!((held.final_speed_rpm - slip.input_speed_rpm).abs() < 1e-6);
        }
    }

    #[test]
    fn no_number_makes_a_pack_answer_with_none(fields in proptest::collection::vec(any::<f64>(), 18), faces in any::<u32>(), worn in any::<bool>()) {
        let ring = |at: usize| Annulus { inner_radius_mm: fields[at], outer_radius_mm: fields[at + 1] };
        let pack = Pack {
            lining: ring(0), piston: ring(2), faces, worn, return_spring_n: Limits { lower: fields[4], upper: fields[5] },
            seal_drag_n: fields[6], head: Head { wetted: ring(7), free_surface_radius_mm: fields[9] },
            dam: Head { wetted: ring(10), free_surface_radius_mm: fields[12] },
        };
        let at = Applied {
            pressure_kpa: fields[13], friction: fields[14], drum_speed_rpm: fields[15], oil_density_kg_m3: fields[16],
        };
        if let Ok(capacity) = pack.capacity(at) {
            prop_assert!(capacity.torque_nm.is_finite() && capacity.torque_nm >= 0.0);
        }
        if let Ok(needed) = pack.pressure_needed(fields[17], at) {
            prop_assert!(needed.strong_spring_kpa >= 0.0);
        }
    }
}
