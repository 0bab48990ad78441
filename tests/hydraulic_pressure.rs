//! Line pressure by gear, suspects of a pressure table and cooler flow against their sources, their properties and wrong inputs.

mod support;

use approx::assert_relative_eq;
use proptest::prelude::*;
use support::trains::train;
use support::{Row, vectors};
use trainwright::clutch::{Annulus, Duty, ElementPack, Head, Pack, review};
use trainwright::hydraulic::*;
use trainwright::judge::{Limits, Reading, Rule, Verdict};
use trainwright::record::{Family, Fluids, Record};

/// The pack of the row; its sizes stand at the head of the file.
fn packs(row: &Row) -> Vec<ElementPack> {
    let dry = Annulus { inner_radius_mm: 0.0, outer_radius_mm: 0.0 };
    let none = Head { wetted: dry, free_surface_radius_mm: 0.0 };
    let pack = Pack {
        lining: Annulus { inner_radius_mm: 56.0, outer_radius_mm: 78.0 },
        piston: Annulus { inner_radius_mm: 46.0, outer_radius_mm: 73.0 },
        faces: row.count("faces"),
        worn: false,
        return_spring_n: Limits { lower: row.number("weak_spring_n"), upper: row.number("strong_spring_n") },
        seal_drag_n: 0.0,
        head: none,
        dam: none,
    };
    let place = |cell: &str| {
        let (element, member) = cell.split_once(':').unwrap();
        ElementPack { pack, element: element.parse().unwrap(), turns_with: member.parse().unwrap() }
    };
    row.text("packs").split_whitespace().map(place).collect()
}

#[test]
fn gear_pressures() {
    vectors("hydraulic_gear_pressure", |row| {
        let state = train(row.text("train"))?.solve(row.count("closed"))?;
        let duty = Duty {
            pressure_kpa: row.reading("pressure_kpa", "pressure_u_kpa"),
            friction: Reading { value: 0.112, u: 0.009 },
            geometry_u_rel: 0.02,
            oil_density_kg_m3: 790.0,
            turbine_torque_nm: Reading { value: row.number("turbine_torque_nm"), u: 0.0 },
            turbine_speed_rpm: 0.0,
            rule: Rule::stated_chances(0.95, 0.05)?,
        };
        let reviewed = review(&state, &packs(row), duty)?;
        let found = gear_pressure(&reviewed, duty.pressure_kpa, row.number("control_max_kpa"))?;
        let needed = [found.needed.strong_spring_kpa, found.needed.weak_spring_kpa];
        let [element, unknown, verdict] =
            [f64::from(found.element), found.unknown.into(), f64::from(found.verdict as i32)];
        let spare = [found.spare_kpa, found.reserve, found.control_spare_kpa];
        Ok([element, needed[0], needed[1], spare[0], spare[1], spare[2], unknown, found.chance, verdict])
    });
}

fn points(row: &Row, column: &str) -> Vec<(PressurePoint, Vec<f64>)> {
    let parsed = row.text(column).split_whitespace().map(|cell| {
        let parts: Vec<f64> = cell.split(':').map(|part| part.parse().unwrap()).collect();
        (PressurePoint { closed: parts[0] as u32, at_stall: parts[1] != 0.0, temp_c: parts[2] }, parts[3..].to_vec())
    });
    parsed.collect()
}

fn readings(row: &Row) -> Vec<PressureReading> {
    let parsed = points(row, "readings").into_iter().map(|(at, rest)| PressureReading {
        at,
        reading_kpa: Reading { value: rest[0], u: rest[1] },
        limits_kpa: Limits { lower: rest[2], upper: rest[3] },
    });
    parsed.collect()
}

fn pattern(row: &Row) -> PatternRule {
    PatternRule { kept: row.number("kept"), hot_from_c: row.number("hot_from_c") }
}

#[test]
fn suspects() {
    vectors("hydraulic_suspect_circuits", |row| {
        let found = suspect_circuits(&readings(row), row.count("elements"), pattern(row))?;
        let [first, second, last] = [0, 1, found.count as usize - 1].map(|place| found.ranked[place]);
        let which = [f64::from(first.kind as i32), f64::from(first.element)];
        let shares = [first.share, second.share, last.share];
        Ok([found.count.into(), which[0], which[1], shares[0], shares[1], shares[2], found.untested.into()])
    });
    vectors("hydraulic_next_reading", |row| {
        let found = suspect_circuits(&readings(row), row.count("elements"), pattern(row))?;
        let candidates: Vec<_> = points(row, "candidates").into_iter().map(|(at, _)| at).collect();
        let NextReading { candidate, bits } = next_reading(&found, &candidates, pattern(row))?;
        Ok([candidate.into(), bits])
    });
}

#[test]
fn coolers() {
    let table = |row: &Row| CoolerLimits::from_flows(&row.numbers("temperatures_c"), &row.numbers("flows_l_min"));
    vectors("hydraulic_timed_flow", |row| {
        let flow = timed_flow(row.reading("volume_l", "volume_u_l"), row.reading("time_s", "time_u_s"))?.flow_l_min;
        Ok([flow.value, flow.u])
    });
    vectors("hydraulic_flow_at_reference", |row| {
        let (flow, temp) = (row.reading("flow_l_min", "flow_u_l_min"), row.reading("temp_c", "temp_u_c"));
        let there = flow_at_reference(flow, &row.fluid(), temp, row.number("reference_c"))?;
        Ok([there.value, there.u])
    });
    vectors("hydraulic_least_flow_at", |row| {
        let LeastFlow { least_l_min, least_l_min_per_k } = table(row)?.least_flow_at(row.number("temp_c"))?;
        Ok([least_l_min, least_l_min_per_k])
    });
    vectors("hydraulic_cooler_check", |row| {
        let reading = CoolerReading {
            volume_l: row.reading("volume_l", "volume_u_l"),
            time_s: row.reading("time_s", "time_u_s"),
            temp_c: row.reading("temp_c", "temp_u_c"),
        };
        let check = table(row)?.cooler_check(reading, row.rule()?)?;
        let Reading { value, u } = check.judgment.reading;
        let decided = [check.judgment.chance, f64::from(check.judgment.verdict as i32)];
        Ok([check.flow_l_min.value, check.least.least_l_min, value, u, decided[0], decided[1]])
    });
}

// ---- the invented family

const FLUIDS: &str = include_str!("../python/trainwright/demo/fluids.toml");
const FAMILY: &str = include_str!("../python/trainwright/demo/family.toml");

#[test]
fn a_table_of_least_flows_has_one_flow_for_each_temperature() {
    assert_eq!(CoolerLimits::from_flows(&[30.0, 50.0], &[2.4]).unwrap_err().kind(), "INCONSISTENT");
    let long: Vec<f64> = (0..17).map(f64::from).collect();
    assert_eq!(CoolerLimits::from_flows(&long, &long).unwrap_err().kind(), "COUNT");
}

#[test]
fn the_demo_cooler_asks_more_of_hot_oil() {
    let limits = Fluids::from_toml("fluids.toml", FLUIDS).unwrap().cooler_limits().unwrap();
    let least = [30.0, 50.0, 70.0, 90.0].map(|temp| limits.least_flow_at(temp).unwrap().least_l_min);
    assert_eq!(least, [2.4, 3.8, 5.2, 6.0]);
    // One quart in 20 s passes cold and fails hot: a limit without a temperature is worthless.
    let at = |temp_c| CoolerReading {
        volume_l: Reading::relative(0.946_352_946, 0.02).unwrap(),
        time_s: Reading::new(20.0, 0.3).unwrap(),
        temp_c: Reading::new(temp_c, 1.0).unwrap(),
    };
    let rule = Rule::stated_chances(0.95, 0.05).unwrap();
    assert_eq!(limits.cooler_check(at(31.0), rule).unwrap().judgment.verdict, Verdict::Go);
    assert_eq!(limits.cooler_check(at(80.0), rule).unwrap().judgment.verdict, Verdict::NoGo);
}

#[test]
fn the_demo_gears_need_what_an_independent_script_found() {
    // Invented family, teal at its rated torque, the strongest spring; kPa by an independent script (exact shares).
    let family = Family::from_toml("family.toml", FAMILY).unwrap();
    let named = family.train("teal").unwrap();
    let rated = family.variant.as_ref().unwrap().get("teal").unwrap().rated_turbine_nm;
    let packs: Vec<ElementPack> = family
        .clutch
        .iter()
        .map(|(element, record)| ElementPack {
            pack: record.pack("teal").unwrap(),
            element: named.elements.iter().position(|name| name == element).unwrap() as u8,
            turns_with: named.members.iter().position(|name| *name == record.turns_with).unwrap() as u8,
        })
        .collect();
    let needed = |gear: &str, torque_nm: f64, reading_kpa: f64| {
        let gear = named.gears.iter().find(|row| row.id == gear).unwrap();
        let state = named.train.solve(gear.closed | gear.one_way).unwrap();
        let exact = |value| Reading::exact(value).unwrap();
        let duty = Duty {
            pressure_kpa: Reading::of_class(reading_kpa, 2500.0, 1.6).unwrap(),
            friction: Reading::new(0.112, 0.009).unwrap(),
            geometry_u_rel: 0.02,
            oil_density_kg_m3: 790.0,
            turbine_torque_nm: exact(torque_nm),
            turbine_speed_rpm: 0.0,
            rule: Rule::stated_chances(0.95, 0.05).unwrap(),
        };
        gear_pressure(&review(&state, &packs, duty).unwrap(), duty.pressure_kpa, 1500.0).unwrap()
    };
    for (gear, element, kpa) in [
        ("1", "B1", 1_221.240_144_778_760_6),
        ("2", "B1", 938.473_734_066_356_3),
        ("3", "C1", 1_369.571_540_503_396_8),
        ("4", "C1", 636.048_977_684_923_1),
        ("5", "C3", 657.937_793_950_384_6),
        ("6", "C2", 1_120.782_214_555_835_7),
        ("7", "C3", 754.323_703_944_242_5),
        ("8", "C3", 657.937_793_950_383_6),
    ] {
        let found = needed(gear, rated, 1470.0);
        assert_eq!(named.elements[usize::from(found.element)], element, "gear {gear}");
        assert_relative_eq!(found.needed.strong_spring_kpa, kpa, max_relative = 1e-6);
        assert_relative_eq!(found.spare_kpa, 1470.0 - kpa, max_relative = 1e-4);
    }
    // J3: 1470 kPa in third. 660 N·m needs 1408 (1386 with the weakest spring), 0.706; 840 needs 1758 of 1500: no.
    let t12 = needed("3", 660.0, 1470.0);
    assert_relative_eq!(t12.needed.strong_spring_kpa, 1_408.407_876_339_474_6, max_relative = 1e-5);
    assert_relative_eq!(t12.needed.weak_spring_kpa, 1_385.621_921_212_716_9, max_relative = 1e-5);
    assert_relative_eq!(t12.chance, 0.706_154_155_468_356_6, max_relative = 1e-5);
    assert_eq!(t12.verdict, Verdict::NotProven);
    let t13 = needed("3", 840.0, 1470.0);
    assert_relative_eq!(t13.needed.strong_spring_kpa, 1_757.934_898_864_173_6, max_relative = 1e-5);
    assert!(t13.control_spare_kpa < 0.0 && t13.spare_kpa < 0.0);
    assert_eq!(t13.verdict, Verdict::NoGo);
}

#[test]
fn a_leak_behind_one_element_is_found_and_told_from_the_pump() {
    // Elements 0 to 4. Low wherever 2 is applied, right elsewhere; then the same with only two readings that both have it.
    let rule = PatternRule { kept: 0.9, hot_from_c: 70.0 };
    let at = |closed, kpa| PressureReading {
        at: PressurePoint { closed, at_stall: false, temp_c: 85.0 },
        reading_kpa: Reading { value: kpa, u: 10.0 },
        limits_kpa: Limits { lower: 360.0, upper: 440.0 },
    };
    let all = [at(0b00101, 300.0), at(0b01001, 400.0), at(0b10100, 290.0), at(0b01010, 410.0)];
    let found = suspect_circuits(&all, 0b11111, rule).unwrap();
    let first = found.ranked[0];
    assert_eq!((first.kind, first.element, first.fits, first.against), (SuspectKind::Circuit, 2, 4, 0));
    // Every reading was hot: worn seals of the same circuit predict the same, and must weigh the same.
    assert_eq!((found.ranked[1].kind, found.ranked[1].element), (SuspectKind::CircuitHot, 2));
    assert_eq!((first.share, first.group), (found.ranked[1].share, found.ranked[1].group));
    let cold = PressurePoint { closed: 0b00101, at_stall: false, temp_c: 25.0 };
    let again = PressurePoint { closed: 0b00101, at_stall: false, temp_c: 85.0 };
    assert_eq!(next_reading(&found, &[again, cold], rule).unwrap().candidate, 1);
    // With the element in every reading its leak and a weak pump cannot be told apart.
    let two = [at(0b00101, 300.0), at(0b10100, 290.0)];
    let found = suspect_circuits(&two, 0b11111, rule).unwrap();
    let of = |kind| found.ranked.iter().take(found.count as usize).find(|row| row.kind == kind).unwrap();
    let leak = found.ranked.iter().find(|row| row.kind == SuspectKind::Circuit && row.element == 2).unwrap();
    assert_eq!((of(SuspectKind::Supply).share, of(SuspectKind::Supply).group), (leak.share, leak.group));
    assert_eq!(found.untested, 0b01010);
}

proptest! {
    #[test]
    fn shares_of_suspects_sum_to_one_in_falling_order(
        found in proptest::collection::vec((0_u32..32, any::<bool>(), 0.0..120.0_f64, 100.0..2000.0_f64, 0.0..50.0_f64), 1..12),
        kept in 0.4..0.99_f64,
    ) {
        let rows: Vec<_> = found.iter().map(|&(closed, at_stall, temp_c, value, u)| PressureReading {
            at: PressurePoint { closed, at_stall, temp_c },
            reading_kpa: Reading { value, u },
            limits_kpa: if at_stall { Limits { lower: 1400.0, upper: 1600.0 } } else { Limits { lower: 360.0, upper: 440.0 } },
        }).collect();
        let rule = PatternRule { kept, hot_from_c: 70.0 };
        let all = suspect_circuits(&rows, 31, rule).unwrap();
        let used = &all.ranked[..all.count as usize];
        assert_relative_eq!(used.iter().map(|row| row.share).sum::<f64>(), 1.0, max_relative = 1e-12);
        prop_assert!(used.windows(2).all(|pair| pair[0].share >= pair[1].share));
        prop_assert!(used.iter().all(|row| row.fits + row.against == rows.len() as u32));
        // The order in which the readings were taken does not matter.
        let mut turned = rows.clone();
        turned.reverse();
        let again = suspect_circuits(&turned, 31, rule).unwrap();
        prop_assert!((again.ranked[0].share - all.ranked[0].share).abs() < 1e-12);
    }
}
