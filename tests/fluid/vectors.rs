//! The vectors that the three languages share.

use super::*;

fn fluid(row: &Row) -> Fluid {
    Fluid {
        density_15c_kg_m3: row.number("density_15c_kg_m3"),
        expansion_per_k: row.number("expansion_per_k"),
        ..*ALDER
    }
}

fn points(row: &Row) -> ViscosityPoints {
    ViscosityPoints {
        first_c: row.number("first_c"),
        first_mm2_s: row.number("first_mm2_s"),
        second_c: row.number("second_c"),
        second_mm2_s: row.number("second_mm2_s"),
    }
}

fn sump(row: &Row) -> Result<Sump> {
    Sump::from_table(
        &[row.number("bottom_mm"), 0.0, row.number("top_mm")],
        &[row.number("bottom_cm2"), row.number("edge_cm2"), row.number("top_cm2")],
    )
}

fn check(row: &Row) -> LevelCheck {
    let reading = |value, u| Reading { value: row.number(value), u: row.number(u) };
    LevelCheck {
        temp_c: reading("temp_c", "temp_u_c"),
        level_mm: reading("level_mm", "level_u_mm"),
        area_scale: reading("area_scale", "area_scale_u"),
    }
}

#[test]
fn density_vectors() {
    vectors("fluid_volume_correction", |row| {
        let c = volume_correction(row.number("density_15c_kg_m3"), row.number("temp_c"))?;
        Ok([c.alpha_per_k, c.rise_k, c.factor, c.density_kg_m3])
    });
    vectors("fluid_volume_correction_60f", |row| {
        let c = volume_correction_60f(row.number("density_60f_kg_m3"), row.number("temp_c"))?;
        Ok([c.alpha_per_k, c.factor, c.density_kg_m3])
    });
    vectors("fluid_correction_factor", |row| Ok([correction_factor(row.number("alpha_per_k"), row.number("rise_k"))?]));
    vectors("fluid_density_15c_from_observed", |row| {
        Ok([density_15c_from_observed(row.number("density_kg_m3"), row.number("temp_c"))?])
    });
    vectors("fluid_expansion_from_15c", |row| {
        Ok([expansion_from_15c(row.number("expansion_per_k"), row.number("reference_c"))?])
    });
    vectors("fluid_growth_ml", |row| {
        Ok([growth_ml(Growth {
            volume_ml: row.number("volume_ml"),
            expansion_per_k: row.number("expansion_per_k"),
            vessel_linear_per_k: row.number("vessel_linear_per_k"),
            rise_k: row.number("rise_k"),
        })?])
    });
    vectors("fluid_volume_factor", |row| Ok([fluid(row).volume_factor(row.number("temp_c"))?]));
    vectors("fluid_temp_for_volume_factor", |row| Ok([fluid(row).temp_for_volume_factor(row.number("factor"))?]));
    vectors("fluid_density", |row| Ok([fluid(row).density(row.number("temp_c"))?]));
}

#[test]
fn viscosity_vectors() {
    vectors("fluid_through", |row| ViscosityLine::through(points(row)).map(|line| [line.a, line.b]));
    vectors("fluid_through_older", |row| {
        ViscosityLine::through_older(points(row)).map(|line| [line.a, line.b, line.added_mm2_s])
    });
    vectors("fluid_through_thin", |row| ViscosityLine::through_thin(points(row)).map(|line| [line.a, line.b]));
    vectors("fluid_viscosity_at", |row| {
        let older = row.number("added_mm2_s") == 0.8;
        let draw = if older { ViscosityLine::through_older } else { ViscosityLine::through };
        Ok([draw(points(row))?.viscosity_at(row.number("temp_c"))?])
    });
    vectors("fluid_thin_viscosity_at", |row| {
        Ok([ViscosityLine::through_thin(points(row))?.thin_viscosity_at(row.number("temp_c"))?])
    });
    vectors("fluid_temp_for_viscosity", |row| {
        Ok([ViscosityLine::through(points(row))?.temp_for_viscosity(row.number("viscosity_mm2_s"))?])
    });
    vectors("fluid_dynamic_viscosity", |row| {
        Ok([dynamic_viscosity(row.number("kinematic_mm2_s"), row.number("density_kg_m3"))?])
    });
    vectors("fluid_viscosity_index", |row| {
        let vi = viscosity_index(ViscosityPair {
            viscosity_40c_mm2_s: row.number("viscosity_40c_mm2_s"),
            viscosity_100c_mm2_s: row.number("viscosity_100c_mm2_s"),
        })?;
        Ok([vi.zero_40c_mm2_s, vi.hundred_40c_mm2_s, vi.index, vi.reported])
    });
    vectors("fluid_viscosity_100c_for_index", |row| {
        Ok([viscosity_100c_for_index(row.number("viscosity_40c_mm2_s"), row.number("index"))?])
    });
}

#[test]
fn mixing_vectors() {
    vectors("fluid_blend", |row| {
        let portion = |which: &str| {
            let number = |column: &str| row.number(&format!("{which}_{column}"));
            Portion {
                fluid: Fluid {
                    density_15c_kg_m3: number("density_kg_m3"),
                    expansion_per_k: number("expansion_per_k"),
                    viscosity_40c_mm2_s: number("40c_mm2_s"),
                    viscosity_100c_mm2_s: number("100c_mm2_s"),
                },
                volume_ml: number("ml"),
            }
        };
        let mix = blend(&[portion("first"), portion("second")])?;
        Ok([mix.density_15c_kg_m3, mix.expansion_per_k, mix.viscosity_40c_mm2_s, mix.viscosity_100c_mm2_s])
    });
    vectors("fluid_blend_viscosity", |row| {
        let portion =
            |viscosity, ml| ViscosityPortion { viscosity_mm2_s: row.number(viscosity), volume_ml: row.number(ml) };
        Ok([blend_viscosity(&[portion("first_mm2_s", "first_ml"), portion("second_mm2_s", "second_ml")])?])
    });
    vectors("fluid_blend_friction", |row| {
        let portion = |friction, ml| FrictionPortion { friction: row.number(friction), volume_ml: row.number(ml) };
        Ok([blend_friction(&[portion("first_friction", "first_ml"), portion("second_friction", "second_ml")])?])
    });
    vectors("fluid_old_share", |row| Ok([old_share(row.number("changed_fraction"), row.count("changes"))?]));
}

#[test]
fn level_vectors() {
    vectors("fluid_constant_area_level_mm", |row| {
        Ok([constant_area_level_mm(row.number("above_edge_ml"), row.number("area_cm2"))?])
    });
    vectors("fluid_tilt_shift_mm", |row| Ok([tilt_shift_mm(row.number("offset_mm"), row.number("tilt_deg"))?]));
    vectors("fluid_volume_to", |row| Ok([sump(row)?.volume_to(row.number("height_mm"))?]));
    vectors("fluid_level_for", |row| Ok([sump(row)?.level_for(row.number("volume_ml"))?]));
    vectors("fluid_free_area_at", |row| Ok([sump(row)?.free_area_at(row.number("height_mm"))?]));
    vectors("fluid_level_at", |row| {
        let at = FILL.level_at(&fluid(row), row.number("excess_ml"), row.number("temp_c"))?;
        Ok([at.above_edge_ml, at.level_mm, at.constant_area_level_mm, at.gear_margin_mm, at.pickup_margin_mm])
    });
    vectors("fluid_adjust_fill", |row| {
        let fill = FILL.adjust_fill(&fluid(row), check(row), Rule::conformance(0.95)?)?;
        let excess = fill.excess_ml;
        Ok([
            fill.add_now_ml.value,
            fill.add_now_ml.u,
            excess.reading.value,
            excess.reading.u,
            excess.limits.lower,
            excess.limits.upper,
            excess.chance,
            fill.chance_in_window,
        ])
    });
    vectors("fluid_engine_off_level_mm", |row| Ok([FILL.engine_off_level_mm(row.number("running_level_mm"))?]));
    vectors("fluid_gear_dips_at_c", |row| Ok([FILL.gear_dips_at_c(&fluid(row), row.number("excess_ml"))?]));
    vectors("fluid_loss_to_pickup_ml", |row| Ok([FILL.loss_to_pickup_ml(row.number("level_mm"))?]));
    vectors("fluid_pour_volumes", |row| {
        let pour = FILL.pour_volumes(&fluid(row), row.number("can_c"))?;
        Ok([pour.dry_ml, pour.service_ml, pour.cooler_ml, pour.old_share])
    });
}
