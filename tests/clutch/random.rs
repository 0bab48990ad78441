//! Random packs, shifts and inputs.

use super::*;

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
