"""Runners of the fluid chapter's vectors whose columns are not the arguments themselves."""

from pathlib import Path

import trainwright
from trainwright import fluid as core
from trainwright import record
from trainwright.judge import Reading, Rule

FILL = record.load(Path(trainwright.__file__).parent / "demo" / "fluids.toml").fill()


def fluid(row):
    return core.Fluid(
        density_15c_kg_m3=row.number("density_15c_kg_m3"),
        expansion_per_k=row.number("expansion_per_k"),
        viscosity_40c_mm2_s=27.4,
        viscosity_100c_mm2_s=5.6,
    )


def volume_factor(row):
    return [fluid(row).volume_factor(temp_c=row.number("temp_c"))]


def temp_for_volume_factor(row):
    return [fluid(row).temp_for_volume_factor(factor=row.number("factor"))]


def density(row):
    return [fluid(row).density(temp_c=row.number("temp_c"))]


def points(row):
    return {name: row.number(name) for name in ("first_c", "first_mm2_s", "second_c", "second_mm2_s")}


def through(row):
    line = core.ViscosityLine.through(**points(row))
    return [line.a, line.b]


def through_older(row):
    line = core.ViscosityLine.through_older(**points(row))
    return [line.a, line.b, line.added_mm2_s]


def through_thin(row):
    line = core.ViscosityLine.through_thin(**points(row))
    return [line.a, line.b]


def viscosity_at(row):
    older = row.number("added_mm2_s") == 0.8
    draw = core.ViscosityLine.through_older if older else core.ViscosityLine.through
    return [draw(**points(row)).viscosity_at(temp_c=row.number("temp_c"))]


def thin_viscosity_at(row):
    return [core.ViscosityLine.through_thin(**points(row)).thin_viscosity_at(temp_c=row.number("temp_c"))]


def temp_for_viscosity(row):
    line = core.ViscosityLine.through(**points(row))
    return [line.temp_for_viscosity(viscosity_mm2_s=row.number("viscosity_mm2_s"))]


def blend(row):
    def portion(which):
        mixed = core.Fluid(
            density_15c_kg_m3=row.number(f"{which}_density_kg_m3"),
            expansion_per_k=row.number(f"{which}_expansion_per_k"),
            viscosity_40c_mm2_s=row.number(f"{which}_40c_mm2_s"),
            viscosity_100c_mm2_s=row.number(f"{which}_100c_mm2_s"),
        )
        return core.Portion(fluid=mixed, volume_ml=row.number(f"{which}_ml"))

    mix = core.blend([portion("first"), portion("second")])
    return [mix.density_15c_kg_m3, mix.expansion_per_k, mix.viscosity_40c_mm2_s, mix.viscosity_100c_mm2_s]


def blend_viscosity(row):
    def portion(which):
        return core.ViscosityPortion(
            viscosity_mm2_s=row.number(f"{which}_mm2_s"), volume_ml=row.number(f"{which}_ml")
        )

    return [core.blend_viscosity([portion("first"), portion("second")])]


def blend_friction(row):
    def portion(which):
        return core.FrictionPortion(friction=row.number(f"{which}_friction"), volume_ml=row.number(f"{which}_ml"))

    return [core.blend_friction([portion("first"), portion("second")])]


def old_share(row):
    return [core.old_share(changed_fraction=row.number("changed_fraction"), changes=int(row["changes"]))]


def sump(row):
    return core.Sump(
        height_mm=[row.number("bottom_mm"), 0.0, row.number("top_mm")],
        free_area_cm2=[row.number("bottom_cm2"), row.number("edge_cm2"), row.number("top_cm2")],
    )


def volume_to(row):
    return [sump(row).volume_to(height_mm=row.number("height_mm"))]


def level_for(row):
    return [sump(row).level_for(volume_ml=row.number("volume_ml"))]


def free_area_at(row):
    return [sump(row).free_area_at(height_mm=row.number("height_mm"))]


def level_at(row):
    at = FILL.level_at(fluid(row), excess_ml=row.number("excess_ml"), temp_c=row.number("temp_c"))
    return [at.above_edge_ml, at.level_mm, at.constant_area_level_mm, at.gear_margin_mm, at.pickup_margin_mm]


def adjust_fill(row):
    check = core.LevelCheck(
        temp_c=Reading(value=row.number("temp_c"), u=row.number("temp_u_c")),
        level_mm=Reading(value=row.number("level_mm"), u=row.number("level_u_mm")),
        area_scale=Reading(value=row.number("area_scale"), u=row.number("area_scale_u")),
    )
    found = FILL.adjust_fill(fluid(row), check, Rule.conformance(0.95))
    add, excess = found.add_now_ml, found.excess_ml
    limits = [excess.limits.lower, excess.limits.upper]
    return [add.value, add.u, excess.reading.value, excess.reading.u, *limits, excess.chance, found.chance_in_window]


def engine_off_level_mm(row):
    return [FILL.engine_off_level_mm(running_level_mm=row.number("running_level_mm"))]


def gear_dips_at_c(row):
    return [FILL.gear_dips_at_c(fluid(row), excess_ml=row.number("excess_ml"))]


def loss_to_pickup_ml(row):
    return [FILL.loss_to_pickup_ml(level_mm=row.number("level_mm"))]


def pour_volumes(row):
    pour = FILL.pour_volumes(fluid(row), can_c=row.number("can_c"))
    return [pour.dry_ml, pour.service_ml, pour.cooler_ml, pour.old_share]
