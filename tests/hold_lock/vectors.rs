//! The vectors that the three languages share.

use super::*;

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
        let (need, allow) = (row.reading("need_nm", "need_u_nm"), row.reading("allow_mpa", "allow_u_mpa"));
        wedge(row).wedge_hold(need, allow, row.number("geometry_u_rel"), row.rule()?).map(held)
    });
    vectors("hold_locks", |row| {
        let judged = locks(row.number("half_angle_deg"), row.reading("friction", "friction_u"), row.rule()?)?;
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
        let (need, allow) = (row.reading("need_nm", "need_u_nm"), row.reading("allow_mpa", "allow_u_mpa"));
        ratchet(row).strut_hold(need, allow, row.number("geometry_u_rel"), row.rule()?).map(held)
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
        mass_kg: row.reading("mass_kg", "mass_u_kg"),
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
        let hold = gear(row, "").park_hold(parked(row), strength, row.rule()?)?;
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
