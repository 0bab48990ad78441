//! The vectors that the three languages share.

use super::*;

fn limits(row: &Row, part: &str) -> Limits {
    Limits { lower: row.number(&format!("{part}_lower_mm")), upper: row.number(&format!("{part}_upper_mm")) }
}

fn reading(row: &Row, part: &str) -> Reading {
    of_unit(row, part, "mm")
}

fn of_unit(row: &Row, part: &str, unit: &str) -> Reading {
    Reading { value: row.number(&format!("{part}_{unit}")), u: row.number(&format!("{part}_u_{unit}")) }
}

fn expansion(row: &Row, part: &str) -> Reading {
    of_unit(row, &format!("{part}_expansion"), "per_k")
}

fn warm_part(row: &Row, part: &str) -> WarmPart {
    WarmPart { size_mm: reading(row, part), expansion_per_k: expansion(row, part) }
}

fn warmth(row: &Row) -> Warmth {
    Warmth { temp_c: of_unit(row, "temp", "c"), shaft_warmer_k: of_unit(row, "shaft_warmer", "k") }
}

fn elastic(row: &Row, part: &str) -> Elastic {
    Elastic { young_mpa: row.number(&format!("{part}_young_mpa")), poisson: row.number(&format!("{part}_poisson")) }
}

fn joint(row: &Row) -> PressJoint {
    PressJoint {
        inside_mm: row.number("inside_mm"),
        interface_mm: row.number("interface_mm"),
        outside_mm: row.number("outside_mm"),
        inner: elastic(row, "inner"),
        outer: elastic(row, "outer"),
    }
}

fn bushing(row: &Row) -> PressedBushing {
    let metal = |part| Metal { elastic: elastic(row, part), expansion_per_k: expansion(row, part) };
    PressedBushing {
        housing_bore_mm: reading(row, "housing_bore"),
        outside_mm: reading(row, "outside"),
        wall_mm: row.number("wall_mm"),
        bore_mm: reading(row, "bore"),
        housing_outside_mm: row.number("housing_outside_mm"),
        housing: metal("housing"),
        shell: metal("shell"),
    }
}

fn worn(row: &Row) -> WornGap {
    WornGap {
        new_mm: reading(row, "new"),
        worn_mm: reading(row, "worn"),
        new_eccentricity: row.number("new_eccentricity"),
        worn_eccentricity: row.number("worn_eccentricity"),
    }
}

#[test]
fn clearances() {
    vectors("fit_clearance", |row| {
        let c = clearance(limits(row, "shaft"), limits(row, "bore"), row.number("limit_mm"))?;
        Ok([c.clearance_mm.lower, c.clearance_mm.upper, f64::from(c.fit_class as i32)])
    });
    vectors("fit_toleranced", |row| {
        let reading = toleranced(limits(row, "size"), Spread(row.text("spread").parse().unwrap()))?;
        Ok([reading.value, reading.u])
    });
    vectors("fit_measured", |row| {
        let rule = Rule::conformance(row.number("go"))?;
        let c = measured(reading(row, "shaft"), reading(row, "bore"), limits(row, "wanted"), rule)?;
        let verdict = f64::from(c.judgment.verdict as i32);
        Ok([c.clearance_mm.value, c.clearance_mm.u, c.chance_tight, c.chance_loose, c.judgment.chance, verdict])
    });
}

#[test]
fn warm_fits() {
    vectors("fit_warm_clearance", |row| {
        let rule = Rule::conformance(row.number("go"))?;
        let (shaft, bore) = (warm_part(row, "shaft"), warm_part(row, "bore"));
        let c = warm_clearance(shaft, bore, warmth(row), limits(row, "wanted"), rule)?;
        let warm = c.at_temperature;
        Ok([
            c.clearance_20c_mm,
            c.change_mm,
            warm.clearance_mm.value,
            warm.clearance_mm.u,
            warm.judgment.chance,
            f64::from(warm.judgment.verdict as i32),
        ])
    });
    vectors("fit_size_20c", |row| {
        let warm = WarmReading {
            shown_mm: reading(row, "shown"),
            part_expansion_per_k: expansion(row, "part"),
            part_temp_c: of_unit(row, "part_temp", "c"),
            instrument_expansion_per_k: expansion(row, "instrument"),
            instrument_temp_c: of_unit(row, "instrument_temp", "c"),
        };
        let size = warm.size_20c()?;
        Ok([size.size_mm.value, size.size_mm.u, size.correction_mm, f64::from(size.budget.largest)])
    });
}

#[test]
fn press_fits() {
    vectors("fit_pressed", |row| {
        let p = joint(row).pressed(row.number("interference_mm"))?;
        Ok([p.pressure_mpa, p.bore_closure_mm, p.outside_growth_mm, p.inner_hoop_mpa, p.outer_hoop_mpa])
    });
    vectors("fit_retention", |row| {
        let held = joint(row).retention(row.number("pressure_mpa"), row.number("length_mm"), row.number("friction"))?;
        Ok([held.force_n, held.torque_nm])
    });
    vectors("fit_bushing_at", |row| {
        let p = bushing(row).bushing_at(row.number("temp_c"))?;
        Ok([p.interference_mm, p.pressure_mpa, p.bore_closure_mm, p.outer_hoop_mpa])
    });
    vectors("fit_let_go_c", |row| {
        let let_go = bushing(row).let_go_c()?;
        Ok([let_go.value, let_go.u])
    });
    vectors("fit_bushing_held", |row| {
        let friction = Reading { value: row.number("friction"), u: row.number("friction_u") };
        let held = bushing(row).bushing_held(row.number("temp_c"), row.number("length_mm"), friction)?;
        Ok([held.force_n.value, held.torque_nm.value, held.torque_nm.u])
    });
    vectors("fit_running_clearance", |row| {
        let rule = Rule::conformance(row.number("go"))?;
        let shaft = warm_part(row, "shaft");
        let c = bushing(row).running_clearance(shaft, warmth(row), limits(row, "wanted"), rule)?;
        let warm = c.clearance.at_temperature;
        let verdict = f64::from(warm.judgment.verdict as i32);
        Ok([warm.clearance_mm.value, warm.clearance_mm.u, c.as_housing_mm, c.as_shell_mm, verdict])
    });
}

#[test]
fn tolerance_classes() {
    vectors("fit_iso_limits", |row| {
        let limits = iso_limits(row.number("nominal_mm"), row.text("zone"))?;
        Ok([limits.lower_deviation_mm, limits.upper_deviation_mm])
    });
    vectors("fit_iso_size", |row| {
        let limits = iso_size(row.text("text"))?;
        Ok([limits.size_mm.lower, limits.size_mm.upper, f64::from(limits.hole)])
    });
    vectors("fit_iso_fit", |row| {
        let clearance = iso_fit(row.text("text"))?.clearance;
        let class = f64::from(clearance.fit_class as i32);
        Ok([clearance.clearance_mm.lower, clearance.clearance_mm.upper, class])
    });
}

#[test]
fn loads_and_leaks() {
    vectors("fit_bushing_load", |row| {
        let sizes = (row.number("diameter_mm"), row.number("length_mm"));
        let load = bushing_load(row.number("force_n"), sizes.0, sizes.1, row.number("speed_rpm"))?;
        Ok([load.unit_load_mpa, load.sliding_m_s, load.pv_mpa_m_s])
    });
    vectors("fit_eccentricity_factor", |row| Ok([eccentricity_factor(row.number("eccentricity"))?]));
    vectors("fit_gap_leak", |row| {
        let gap = Gap {
            diameter_mm: row.number("diameter_mm"),
            clearance_mm: row.number("clearance_mm"),
            length_mm: row.number("length_mm"),
            eccentricity: row.number("eccentricity"),
        };
        let (drop, viscosity) = (row.number("pressure_drop_kpa"), row.number("viscosity_mpa_s"));
        let leak = gap.gap_leak(drop, viscosity, row.number("density_kg_m3"))?;
        Ok([leak.flow_l_min, leak.speed_m_s, leak.reynolds])
    });
    vectors("fit_leak_ratio", |row| {
        let leak = worn(row).leak_ratio(row.number("coverage"))?;
        Ok([leak.ratio, leak.first_order_u, leak.lower, leak.upper])
    });
    vectors("fit_chance_leaks_more", |row| Ok([worn(row).chance_leaks_more(row.number("times"))?]));
}
