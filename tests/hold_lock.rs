//! One-way clutches, park lock, tooth bending and line contact against their sources, their properties and wrong inputs.

mod support;

use approx::assert_relative_eq;
use proptest::prelude::*;
use std::f64::consts::PI;
use support::trains::train;
use support::{Row, vectors};
use trainwright::Error;
use trainwright::hold::{
    ContactBody, LineContact, LinePressure, OneWayDuty, OneWayHold, OneWayRole, ParkGear, ParkStress, Parked, Pawl,
    Ratchet, SpurTooth, ToothFinish, ToothStrength, Wedge, compare_park_gears, form_factor, grip_nm, locks,
    one_way_duty, park_load, roll_limits_49_cfr_571_114, take_up, velocity_factor,
};
use trainwright::judge::{Judgment, Limits, Reading, Rule, Verdict};
use trainwright::record::{Family, Record};
use trainwright::road::Driveline;
use trainwright::train::{Fraction, Load, StateKind};

fn reading(row: &Row, value: &str, u: &str) -> Reading {
    Reading { value: row.number(value), u: row.number(u) }
}

fn rule(row: &Row) -> Result<Rule, Error> {
    Rule::stated_chances(row.number("go"), row.number("no_go"))
}

fn decided(judgment: Judgment) -> [f64; 2] {
    [judgment.chance, f64::from(judgment.verdict as i32)]
}

fn body(row: &Row, which: &str) -> ContactBody {
    ContactBody {
        radius_mm: row.number(&format!("{which}_radius_mm")),
        young_mpa: row.number(&format!("{which}_young_mpa")),
        poisson: row.number(&format!("{which}_poisson")),
    }
}

fn contact(row: &Row) -> LineContact {
    LineContact { first: body(row, "first"), second: body(row, "second"), length_mm: row.number("length_mm") }
}

#[test]
fn contacts() {
    vectors("hold_pressed", |row| {
        let LinePressure {
            effective_radius_mm,
            contact_modulus_mpa,
            half_width_mm,
            peak_mpa,
            shear_mpa,
            shear_depth_mm,
        } = contact(row).pressed(row.number("force_n"))?;
        Ok([effective_radius_mm, contact_modulus_mpa, half_width_mm, peak_mpa, shear_mpa, shear_depth_mm])
    });
    vectors("hold_force_at_peak_n", |row| Ok([contact(row).force_at_peak_n(row.number("peak_mpa"))?]));
}

fn tooth(row: &Row) -> SpurTooth {
    SpurTooth { teeth: row.count("teeth"), module_mm: row.number("module_mm"), face_mm: row.number("face_mm") }
}

#[test]
fn teeth() {
    vectors("hold_form_factor", |row| Ok([form_factor(row.count("teeth"))?]));
    vectors("hold_velocity_factor", |row| {
        let finish = match row.text("finish") {
            "cast" => ToothFinish::Cast,
            "cut" => ToothFinish::Cut,
            "hobbed" => ToothFinish::Hobbed,
            "ground" => ToothFinish::Ground,
            other => panic!("{other}"),
        };
        Ok([velocity_factor(row.number("pitch_diameter_mm"), row.number("speed_rpm"), finish)?])
    });
    vectors("hold_tooth_bending", |row| {
        let bent = tooth(row).tooth_bending(row.number("force_n"), row.number("velocity_factor"))?;
        Ok([bent.form_factor, bent.thickness_mm, bent.bending_mpa, bent.shear_mpa])
    });
    vectors("hold_force_at_bending_n", |row| {
        Ok([tooth(row).force_at_bending_n(row.number("bending_mpa"), row.number("velocity_factor"))?])
    });
}

fn wedge(row: &Row) -> Wedge {
    let steel =
        |radius_mm| ContactBody { radius_mm, young_mpa: row.number("young_mpa"), poisson: row.number("poisson") };
    Wedge {
        count: row.count("count"),
        race: steel(row.number("race_radius_mm")),
        body: steel(row.number("body_radius_mm")),
        length_mm: row.number("length_mm"),
        half_angle_deg: row.number("half_angle_deg"),
    }
}

fn ratchet(row: &Row) -> Ratchet {
    Ratchet {
        struts: row.count("struts"),
        notches: row.count("notches"),
        carrying: row.count("carrying"),
        strut_width_mm: row.number("strut_width_mm"),
        strut_thickness_mm: row.number("strut_thickness_mm"),
        pitch_radius_mm: row.number("pitch_radius_mm"),
        strut_deg: row.number("strut_deg"),
    }
}

fn held(hold: OneWayHold) -> [f64; 5] {
    let [chance, verdict] = decided(hold.judgment);
    [hold.capacity_nm, hold.margin, hold.budget.u, chance, verdict]
}

#[test]
fn one_way_clutches() {
    vectors("hold_wedged", |row| {
        let load = wedge(row).wedged(row.number("torque_nm"))?;
        let LinePressure { effective_radius_mm, half_width_mm, peak_mpa, .. } = load.pressure;
        let forces = [load.tangential_n, load.normal_n, load.friction_needed];
        Ok([forces[0], forces[1], forces[2], effective_radius_mm, half_width_mm, peak_mpa])
    });
    vectors("hold_wedge_capacity_nm", |row| Ok([wedge(row).wedge_capacity_nm(row.number("allow_mpa"))?]));
    vectors("hold_wedge_hold", |row| {
        let (need, allow) = (reading(row, "need_nm", "need_u_nm"), reading(row, "allow_mpa", "allow_u_mpa"));
        wedge(row).wedge_hold(need, allow, row.number("geometry_u_rel"), rule(row)?).map(held)
    });
    vectors("hold_locks", |row| {
        let judged = locks(row.number("half_angle_deg"), reading(row, "friction", "friction_u"), rule(row)?)?;
        let [chance, verdict] = decided(judged);
        Ok([judged.limits.lower, chance, verdict])
    });
    vectors("hold_ratchet_index", |row| {
        let index = ratchet(row).ratchet_index()?;
        Ok([index.backlash_deg, index.positions.into(), index.together.into()])
    });
    vectors("hold_strut_load", |row| {
        let load = ratchet(row).strut_load(row.number("torque_nm"))?;
        Ok([load.tangential_n, load.strut_n, load.separating_n, load.stress_mpa])
    });
    vectors("hold_strut_capacity_nm", |row| Ok([ratchet(row).strut_capacity_nm(row.number("allow_mpa"))?]));
    vectors("hold_strut_hold", |row| {
        let (need, allow) = (reading(row, "need_nm", "need_u_nm"), reading(row, "allow_mpa", "allow_u_mpa"));
        ratchet(row).strut_hold(need, allow, row.number("geometry_u_rel"), rule(row)?).map(held)
    });
    vectors("hold_take_up", |row| {
        let closed = take_up(row.number("backlash_deg"), row.number("torque_nm"), row.number("inertia_kg_m2"))?;
        Ok([closed.time_s, closed.speed_rpm, closed.energy_j])
    });
    vectors("hold_one_way_duty", |row| {
        let load = match row.text("load") {
            "none" => Load::None,
            "drive" => Load::Drive,
            "coast" => Load::Coast,
            other => panic!("{other}"),
        };
        let OneWayDuty { role, beside, backwards, share, slip } =
            one_way_duty(&train(row.text("train"))?, row.count("element") as u8, row.count("closed"), load)?;
        let number = |fraction: Fraction| fraction.value().unwrap_or(f64::INFINITY);
        Ok([f64::from(role as u8), beside.into(), f64::from(backwards as u8), number(share), number(slip)])
    });
}

fn gear(row: &Row, which: &str) -> ParkGear {
    let number = |name: &str| row.number(&format!("{which}{name}"));
    ParkGear {
        teeth: row.count(&format!("{which}teeth")),
        face_mm: number("face_mm"),
        tooth_root_mm: number("tooth_root_mm"),
        contact_diameter_mm: number("contact_diameter_mm"),
        root_diameter_mm: number("root_diameter_mm"),
        tip_diameter_mm: number("tip_diameter_mm"),
    }
}

fn driveline(row: &Row, u: f64) -> Driveline {
    Driveline {
        axle_ratio: row.number("axle_ratio"),
        transfer_ratio: row.number("transfer_ratio"),
        circumference_mm: Reading { value: row.number("circumference_mm"), u },
    }
}

fn parked(row: &Row) -> Parked {
    Parked {
        mass_kg: reading(row, "mass_kg", "mass_u_kg"),
        grade_pct: row.number("grade_pct"),
        rocking_factor: row.number("rocking_factor"),
        driveline: driveline(row, row.number("circumference_u_mm")),
    }
}

fn stressed(stress: ParkStress) -> [f64; 5] {
    [stress.tooth_n, stress.arm_mm, stress.bending_mpa, stress.shear_mpa, stress.von_mises_mpa]
}

fn pawl(row: &Row) -> Pawl {
    Pawl {
        flank_deg: row.number("flank_deg"),
        friction: Limits { lower: row.number("least_friction"), upper: row.number("greatest_friction") },
        inertia_kg_m2: row.number("inertia_kg_m2"),
        spring_nm: row.number("spring_nm"),
        drop_deg: row.number("drop_deg"),
    }
}

#[test]
fn park_locks() {
    vectors("hold_park_load", |row| {
        let (line, factor) = (driveline(row, 0.0), row.number("rocking_factor"));
        let load = park_load(line, row.number("mass_kg"), row.number("grade_pct"), factor)?;
        Ok([load.grade_deg, load.grade_n, load.wheel_radius_mm, load.static_nm, load.torque_nm])
    });
    vectors("hold_tooth_stress", |row| {
        gear(row, "").tooth_stress(row.number("torque_nm"), row.number("stress_factor")).map(stressed)
    });
    vectors("hold_stress_on_grade", |row| {
        gear(row, "").stress_on_grade(parked(row), row.number("stress_factor")).map(stressed)
    });
    vectors("hold_largest_grade_pct", |row| {
        Ok([gear(row, "").largest_grade_pct(parked(row), row.number("allow_mpa"), row.number("stress_factor"))?])
    });
    vectors("hold_park_hold", |row| {
        let strength = ToothStrength {
            yield_mpa: row.number("yield_mpa"),
            stress_factor: row.number("stress_factor"),
            stress_u_rel: row.number("stress_u_rel"),
        };
        let hold = gear(row, "").park_hold(parked(row), strength, rule(row)?)?;
        let [chance, verdict] = decided(hold.judgment);
        Ok([
            hold.stress.von_mises_mpa,
            hold.margin,
            hold.budget.u,
            chance,
            verdict,
            hold.largest_grade_pct,
            hold.proven_grade_pct,
        ])
    });
    vectors("hold_free_roll", |row| {
        let roll = gear(row, "").free_roll(parked(row))?;
        Ok([roll.roll_mm, roll.energy_j, roll.speed_km_h])
    });
    vectors("hold_window_deg", |row| {
        Ok([gear(row, "").window_deg(row.number("space_mm"), row.number("pawl_tip_mm"))?])
    });
    vectors("hold_compare_park_gears", |row| {
        let factor = row.number("stress_factor");
        let ratios = compare_park_gears(gear(row, "first_"), gear(row, "second_"), factor)?;
        Ok([ratios.bending_ratio, ratios.shear_ratio, ratios.torque_ratio, ratios.free_roll_ratio])
    });
    vectors("hold_ejection", |row| {
        let out = pawl(row).ejection(row.number("tooth_n"))?;
        let releases = f64::from(u8::from(out.releases));
        Ok([out.least_n, out.most_n, out.least_share, out.most_share, out.friction_to_stick, releases])
    });
    vectors("hold_tip_pressure", |row| {
        let steel =
            |radius_mm| ContactBody { radius_mm, young_mpa: row.number("young_mpa"), poisson: row.number("poisson") };
        let flank = steel(f64::INFINITY);
        let contact =
            LineContact { first: steel(row.number("radius_mm")), second: flank, length_mm: row.number("length_mm") };
        let tip = pawl(row).tip_pressure(contact, row.number("tooth_n"))?;
        Ok([tip.half_width_mm, tip.peak_mpa])
    });
    vectors("hold_latch", |row| {
        let latch = pawl(row).latch(driveline(row, 0.0), row.number("window_deg"))?;
        Ok([latch.drop_time_s, latch.output_rpm, latch.road_km_h])
    });
    vectors("hold_grip_nm", |row| {
        let (load, grade) = (row.number("axle_load_kg"), row.number("grade_pct"));
        Ok([grip_nm(driveline(row, 0.0), load, grade, row.number("tire_friction"))?])
    });
    vectors("hold_roll_limits_49_cfr_571_114", |row| {
        let limits = roll_limits_49_cfr_571_114(row.number("grade_pct"))?;
        Ok([limits.lower, limits.upper])
    });
}

#[test]
fn fewer_coarser_involute_teeth_on_the_same_circle_are_stronger() {
    // 20 and 16 teeth of 14 mm width on a pitch circle of 80 mm, with the table's form factors: 4 · 0.322 against 5 · 0.296.
    let tooth = |teeth: u32| SpurTooth { teeth, module_mm: 80.0 / f64::from(teeth), face_mm: 14.0 };
    let [many, few] = [20, 16].map(|teeth| tooth(teeth).tooth_bending(1000.0, 1.0).unwrap());
    assert_relative_eq!(few.bending_mpa / many.bending_mpa, 0.870_27, max_relative = 1e-5);
    assert_relative_eq!(few.shear_mpa / many.shear_mpa, 0.8, max_relative = 1e-12);
}

#[test]
fn every_gear_of_the_demonstration_has_its_one_way_duty() {
    let family = Family::from_toml("family.toml", include_str!("../python/trainwright/demo/family.toml")).unwrap();
    for variant in ["teal", "wren", "heron"] {
        let unit = family.train(variant).unwrap();
        let f1 = unit.elements.iter().position(|name| name == "F1").unwrap() as u8;
        let duties: Vec<_> = unit
            .gears
            .iter()
            .map(|gear| (gear.id.as_str(), one_way_duty(&unit.train, f1, gear.closed, Load::Drive).unwrap()))
            .collect();
        let with = |role| duties.iter().filter(|(_, duty)| duty.role == role).map(|(id, _)| *id).collect::<Vec<_>>();
        assert_eq!(with(OneWayRole::Holds), ["1", "2"]);
        assert_eq!(with(OneWayRole::CouldHold), ["1B", "2B"]);
        assert_eq!(with(OneWayRole::Overruns), ["3", "4", "5", "6"]);
        assert_eq!(with(OneWayRole::CannotHold), ["7", "8", "R"]);
        for (id, duty) in &duties {
            let backwards = match duty.role {
                OneWayRole::Holds => StateKind::Neutral,
                OneWayRole::Overruns => StateKind::TiedUp,
                _ => StateKind::Gear,
            };
            assert_eq!(duty.backwards, backwards, "{variant} {id}");
        }
    }
}

#[test]
fn an_element_that_is_not_there_has_no_duty() {
    let family = Family::from_toml("family.toml", include_str!("../python/trainwright/demo/family.toml")).unwrap();
    let unit = family.train("teal").unwrap().train;
    let f1 = unit.one_way_mask().trailing_zeros() as u8;
    for (element, closed) in [(9, 0b101), (u8::MAX, 0b101), (f1, 1 << 12)] {
        let refused = one_way_duty(&unit, element, closed, Load::Drive).unwrap_err();
        assert!(matches!(refused, Error::Inconsistent { .. }), "{refused}");
    }
}

/// Steel on steel.
fn steel(radius_mm: f64) -> ContactBody {
    ContactBody { radius_mm, young_mpa: 206_000.0, poisson: 0.3 }
}

fn some_gear() -> impl Strategy<Value = ParkGear> {
    (8_u32..40, 5.0..40.0, 0.3..0.8, 60.0..200.0, 1.02..1.2, 1.0..1.1).prop_map(
        |(teeth, face_mm, share, root, over, tip)| {
            let contact = root * over;
            ParkGear {
                teeth,
                face_mm,
                tooth_root_mm: share * PI * root / f64::from(teeth),
                contact_diameter_mm: contact,
                root_diameter_mm: root,
                tip_diameter_mm: contact * tip,
            }
        },
    )
}

fn some_parked() -> impl Strategy<Value = Parked> {
    (500.0..40_000.0, 1.0..100.0, 1.0..3.0, 2.0..6.0, 1800.0..3200.0).prop_map(
        |(mass_kg, grade_pct, rocking_factor, axle, circumference_mm)| Parked {
            mass_kg: Reading::exact(mass_kg).unwrap(),
            grade_pct,
            rocking_factor,
            driveline: Driveline::new(axle, 1.0, Reading::relative(circumference_mm, 0.006).unwrap()).unwrap(),
        },
    )
}

const STRENGTH: ToothStrength = ToothStrength { yield_mpa: 980.0, stress_factor: 1.0, stress_u_rel: 0.06 };

fn usual() -> Rule {
    Rule::stated_chances(0.95, 0.05).unwrap()
}

proptest! {
    #[test]
    fn pressure_over_the_contact_sums_to_the_force(
        force_n in 0.1..1e5_f64, radius_mm in 0.5..100.0_f64, over in 1.01..20.0_f64, length_mm in 1.0..50.0, hollow in any::<bool>(),
    ) {
        let other = if hollow { -radius_mm * over } else { radius_mm * over };
        let contact = LineContact { first: steel(radius_mm), second: steel(other), length_mm };
        let pressed = contact.pressed(force_n).unwrap();
        // The pressure is a half ellipse: its area is π/2 of half width times peak.
        let sum = PI / 2.0 * pressed.half_width_mm * pressed.peak_mpa * length_mm;
        prop_assert!((sum / force_n - 1.0).abs() < 1e-12);
        let turned = LineContact { first: contact.second, second: contact.first, length_mm };
        let other_way = turned.pressed(force_n).unwrap();
        prop_assert!((other_way.peak_mpa / pressed.peak_mpa - 1.0).abs() < 1e-14);
        let back = contact.force_at_peak_n(pressed.peak_mpa).unwrap();
        prop_assert!((back / force_n - 1.0).abs() < 1e-12);
    }

    #[test]
    fn more_teeth_have_a_greater_form_factor(teeth in 12_u32..100_000) {
        let (this, next) = (form_factor(teeth).unwrap(), form_factor(teeth + 1).unwrap());
        prop_assert!(this < next && next < 0.485);
    }

    #[test]
    fn a_backlash_times_its_positions_is_a_turn(struts in 1_u32..=1000, notches in 1_u32..=1000) {
        let ratchet = Ratchet {
            struts, notches, carrying: 1, strut_width_mm: 12.0, strut_thickness_mm: 4.0, pitch_radius_mm: 57.0, strut_deg: 0.0,
        };
        let index = ratchet.ratchet_index().unwrap();
        prop_assert!((index.backlash_deg * f64::from(index.positions) - 360.0).abs() < 1e-9);
        prop_assert_eq!(u64::from(index.positions) * u64::from(index.together), u64::from(struts) * u64::from(notches));
        // Turn the notches through one of their own pitches in the fine steps: the struts that meet a notch come in groups.
        let together = (0..struts).filter(|strut| (strut * notches) % struts == 0).count();
        prop_assert_eq!(together, index.together as usize);
    }

    #[test]
    fn more_that_carry_never_carry_less(carrying in 1_u32..10, more in 0_u32..10, deg in 0.0..30.0, need in 1.0..5000.0) {
        let with = |carrying| Ratchet {
            struts: 20, notches: 40, carrying, strut_width_mm: 12.0, strut_thickness_mm: 4.0, pitch_radius_mm: 57.0,
            strut_deg: deg,
        };
        let (few, many) = (with(carrying), with(carrying + more));
        prop_assert!(few.strut_capacity_nm(900.0).unwrap() <= many.strut_capacity_nm(900.0).unwrap());
        let at_capacity = few.strut_load(few.strut_capacity_nm(900.0).unwrap()).unwrap();
        prop_assert!((at_capacity.stress_mpa / 900.0 - 1.0).abs() < 1e-12);
        let chance = |ratchet: Ratchet| {
            let (need, allow) = (Reading::exact(need).unwrap(), Reading::exact(900.0).unwrap());
            ratchet.strut_hold(need, allow, 0.1, usual()).unwrap().judgment.chance
        };
        prop_assert!(chance(few) <= chance(many) + 1e-12);
    }

    #[test]
    fn a_wedge_at_its_capacity_is_at_its_pressure(
        count in 1_u32..40, race in 20.0..100.0, sprag in 2.0..10.0, length_mm in 4.0..20.0, half_angle_deg in 2.0..10.0,
        allow in 500.0..4600.0,
    ) {
        let wedge = Wedge { count, race: steel(race), body: steel(sprag), length_mm, half_angle_deg };
        let capacity_nm = wedge.wedge_capacity_nm(allow).unwrap();
        let load = wedge.wedged(capacity_nm).unwrap();
        prop_assert!((load.pressure.peak_mpa / allow - 1.0).abs() < 1e-12);
        prop_assert!((load.tangential_n / load.normal_n - load.friction_needed).abs() < 1e-12);
        // Half the pressure is a quarter of the torque.
        prop_assert!((wedge.wedge_capacity_nm(allow / 2.0).unwrap() * 4.0 / capacity_nm - 1.0).abs() < 1e-12);
        let outer = Wedge { race: steel(-race), ..wedge };
        prop_assert!(outer.wedge_capacity_nm(allow).unwrap() > capacity_nm);
    }

    #[test]
    fn stress_is_proportional_to_mass_and_to_rocking(gear in some_gear(), parked in some_parked(), times in 1.0..1.6_f64) {
        let stress = |parked| -> f64 { gear.stress_on_grade(parked, 1.0).unwrap().von_mises_mpa };
        let heavier = Parked { mass_kg: Reading::exact(parked.mass_kg.value * times).unwrap(), ..parked };
        let rocking = Parked { rocking_factor: parked.rocking_factor * times, ..parked };
        prop_assert!((stress(heavier) / stress(parked) / times - 1.0).abs() < 1e-12);
        prop_assert!((stress(rocking) / stress(parked) / times - 1.0).abs() < 1e-12);
        let steeper = Parked { grade_pct: (parked.grade_pct * times).min(100.0), ..parked };
        prop_assert!(stress(steeper) >= stress(parked) * (1.0 - 1e-12));
    }

    #[test]
    fn at_the_largest_grade_the_stress_is_at_yield_and_at_the_proven_grade_it_is_just_a_go(
        gear in some_gear(), parked in some_parked(),
    ) {
        let hold = gear.park_hold(parked, STRENGTH, usual()).unwrap();
        prop_assert!(hold.proven_grade_pct <= hold.largest_grade_pct);
        let at = |grade_pct| gear.park_hold(Parked { grade_pct, ..parked }, STRENGTH, usual()).unwrap();
        if hold.largest_grade_pct < 100.0 {
            let stress = at(hold.largest_grade_pct).stress.von_mises_mpa;
            prop_assert!((stress / 980.0 - 1.0).abs() < 1e-9, "{stress}");
        }
        if hold.proven_grade_pct < 99.0 && hold.proven_grade_pct > 0.01 {
            prop_assert_eq!(at(hold.proven_grade_pct * (1.0 - 1e-9)).judgment.verdict, Verdict::Go);
            prop_assert_ne!(at(hold.proven_grade_pct * (1.0 + 1e-6)).judgment.verdict, Verdict::Go);
        }
    }

    #[test]
    fn free_roll_gives_its_energy_to_speed(gear in some_gear(), parked in some_parked()) {
        let roll = gear.free_roll(parked).unwrap();
        let speed_m_s = roll.speed_km_h / 3.6;
        prop_assert!((0.5 * parked.mass_kg.value * speed_m_s * speed_m_s / roll.energy_j - 1.0).abs() < 1e-12);
        let turn = roll.roll_mm * f64::from(gear.teeth) * parked.driveline.axle_ratio;
        prop_assert!((turn / parked.driveline.circumference_mm.value - 1.0).abs() < 1e-12);
    }

    #[test]
    fn comparison_is_undone_by_turning_it_round(one in some_gear(), two in some_gear()) {
        let (there, back) = (compare_park_gears(one, two, 1.0).unwrap(), compare_park_gears(two, one, 1.0).unwrap());
        prop_assert!((there.bending_ratio * back.bending_ratio - 1.0).abs() < 1e-12);
        prop_assert!((there.shear_ratio * back.shear_ratio - 1.0).abs() < 1e-12);
        prop_assert!((there.torque_ratio * back.torque_ratio - 1.0).abs() < 1e-12);
        prop_assert!((there.free_roll_ratio * back.free_roll_ratio - 1.0).abs() < 1e-12);
        let (low, high) = (there.bending_ratio.min(there.shear_ratio), there.bending_ratio.max(there.shear_ratio));
        prop_assert!(low * (1.0 - 1e-12) <= there.torque_ratio && there.torque_ratio <= high * (1.0 + 1e-12));
    }

    #[test]
    fn the_pawl_leaves_exactly_below_the_friction_at_which_it_sticks(flank_deg in 1.0..45.0, least in 0.0..0.5_f64, more in 0.0..0.5_f64) {
        let pawl = Pawl {
            flank_deg, friction: Limits::between(least, least + more).unwrap(), inertia_kg_m2: 1e-4, spring_nm: 1.0, drop_deg: 9.0,
        };
        let out = pawl.ejection(1000.0).unwrap();
        prop_assert!(out.least_n <= out.most_n);
        prop_assume!((least + more - out.friction_to_stick).abs() > 1e-9);
        prop_assert_eq!(out.releases, least + more < out.friction_to_stick);
    }

    #[test]
    fn no_number_makes_a_park_gear_answer_with_none(fields in proptest::collection::vec(any::<f64>(), 15), teeth in any::<u32>()) {
        let gear = ParkGear {
            teeth, face_mm: fields[0], tooth_root_mm: fields[1], contact_diameter_mm: fields[2], root_diameter_mm: fields[3],
            tip_diameter_mm: fields[4],
        };
        let parked = Parked {
            mass_kg: Reading { value: fields[5], u: fields[6] }, grade_pct: fields[7], rocking_factor: fields[8],
            driveline: Driveline {
                axle_ratio: fields[9], transfer_ratio: fields[10],
                circumference_mm: Reading { value: fields[11], u: fields[12] },
            },
        };
        if let Ok(hold) = gear.park_hold(parked, ToothStrength { yield_mpa: fields[13], ..STRENGTH }, usual()) {
            prop_assert!((0.0..=100.0).contains(&hold.largest_grade_pct) && (0.0..=100.0).contains(&hold.proven_grade_pct));
            prop_assert!(!hold.judgment.chance.is_nan());
        }
        if let Ok(stress) = gear.tooth_stress(fields[14], 1.0) {
            prop_assert!(stress.von_mises_mpa >= 0.0);
        }
    }
}
