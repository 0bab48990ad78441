//! Random contacts, wedges and park locks.

use super::*;

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
