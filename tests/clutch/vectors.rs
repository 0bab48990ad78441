//! The vectors that the three languages share.

use super::*;

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
