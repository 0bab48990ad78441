"""Runners of the fit chapter's vectors whose columns are not the arguments themselves."""

from runners.judge import VERDICTS

from trainwright import fit as core
from trainwright.judge import Limits, Reading, Rule

CLASSES = ["blocked", "may bind", "inside", "may be loose", "loose"]
SPREADS = {0: "rectangular", 1: "normal 3 sigma"}


def limits(row, part):
    return Limits(lower=row.number(f"{part}_lower_mm"), upper=row.number(f"{part}_upper_mm"))


def reading(row, part, unit="mm"):
    return Reading(value=row.number(f"{part}_{unit}"), u=row.number(f"{part}_u_{unit}"))


def expansion(row, part):
    return reading(row, f"{part}_expansion", "per_k")


def warm_part(row, part):
    return core.WarmPart(size_mm=reading(row, part), expansion_per_k=expansion(row, part))


def warmth(row):
    return core.Warmth(temp_c=reading(row, "temp", "c"), shaft_warmer_k=reading(row, "shaft_warmer", "k"))


def elastic(row, part):
    return core.Elastic(young_mpa=row.number(f"{part}_young_mpa"), poisson=row.number(f"{part}_poisson"))


def numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def joint(row):
    sizes = numbers(row, "inside_mm", "interface_mm", "outside_mm")
    return core.PressJoint(**sizes, inner=elastic(row, "inner"), outer=elastic(row, "outer"))


def bushing(row):
    def metal(part):
        return core.Metal(elastic=elastic(row, part), expansion_per_k=expansion(row, part))

    return core.PressedBushing(
        housing_bore_mm=reading(row, "housing_bore"),
        outside_mm=reading(row, "outside"),
        bore_mm=reading(row, "bore"),
        **numbers(row, "wall_mm", "housing_outside_mm"),
        housing=metal("housing"),
        shell=metal("shell"),
    )


def worn(row):
    eccentric = numbers(row, "new_eccentricity", "worn_eccentricity")
    return core.WornGap(new_mm=reading(row, "new"), worn_mm=reading(row, "worn"), **eccentric)


def clearance(row):
    fit = core.clearance(shaft_mm=limits(row, "shaft"), bore_mm=limits(row, "bore"), limit_mm=row.number("limit_mm"))
    return [fit.clearance_mm.lower, fit.clearance_mm.upper, float(CLASSES.index(fit.fit_class))]


def toleranced(row):
    # Python names its spreads, so a number without a name cannot be passed on: the refusal is the interface's own.
    spread = SPREADS.get(int(row.number("spread")))
    if spread is None:
        Rule.conformance(2.0)
    found = core.toleranced(size_mm=limits(row, "size"), spread=spread)
    return [found.value, found.u]


def measured(row):
    rule = Rule.conformance(row.number("go"))
    fit = core.measured(
        shaft_mm=reading(row, "shaft"), bore_mm=reading(row, "bore"), wanted_mm=limits(row, "wanted"), rule=rule
    )
    chances = [fit.chance_tight, fit.chance_loose, fit.judgment.chance]
    return [fit.clearance_mm.value, fit.clearance_mm.u, *chances, VERDICTS[fit.judgment.verdict]]


def warm_clearance(row):
    rule = Rule.conformance(row.number("go"))
    shaft, bore = warm_part(row, "shaft"), warm_part(row, "bore")
    fit = core.warm_clearance(shaft=shaft, bore=bore, warmth=warmth(row), wanted_mm=limits(row, "wanted"), rule=rule)
    warm = fit.at_temperature
    sizes = [fit.clearance_20c_mm, fit.change_mm, warm.clearance_mm.value, warm.clearance_mm.u]
    return [*sizes, warm.judgment.chance, VERDICTS[warm.judgment.verdict]]


def size_20c(row):
    warm = core.WarmReading(
        shown_mm=reading(row, "shown"),
        part_expansion_per_k=expansion(row, "part"),
        part_temp_c=reading(row, "part_temp", "c"),
        instrument_expansion_per_k=expansion(row, "instrument"),
        instrument_temp_c=reading(row, "instrument_temp", "c"),
    )
    size = warm.size_20c()
    return [size.size_mm.value, size.size_mm.u, size.correction_mm, float(size.budget.largest)]


def pressed(row):
    p = joint(row).pressed(interference_mm=row.number("interference_mm"))
    return [p.pressure_mpa, p.bore_closure_mm, p.outside_growth_mm, p.inner_hoop_mpa, p.outer_hoop_mpa]


def retention(row):
    held = joint(row).retention(**numbers(row, "pressure_mpa", "length_mm", "friction"))
    return [held.force_n, held.torque_nm]


def bushing_at(row):
    p = bushing(row).bushing_at(temp_c=row.number("temp_c"))
    return [p.interference_mm, p.pressure_mpa, p.bore_closure_mm, p.outer_hoop_mpa]


def let_go_c(row):
    let_go = bushing(row).let_go_c()
    return [let_go.value, let_go.u]


def bushing_held(row):
    friction = Reading(value=row.number("friction"), u=row.number("friction_u"))
    held = bushing(row).bushing_held(**numbers(row, "temp_c", "length_mm"), friction=friction)
    return [held.force_n.value, held.torque_nm.value, held.torque_nm.u]


def running_clearance(row):
    rule = Rule.conformance(row.number("go"))
    wanted = limits(row, "wanted")
    fit = bushing(row).running_clearance(shaft=warm_part(row, "shaft"), warmth=warmth(row), wanted_mm=wanted, rule=rule)
    warm = fit.clearance.at_temperature
    sizes = [warm.clearance_mm.value, warm.clearance_mm.u, fit.as_housing_mm, fit.as_shell_mm]
    return [*sizes, VERDICTS[warm.judgment.verdict]]


def iso_limits(row):
    limits = core.iso_limits(row["zone"], nominal_mm=row.number("nominal_mm"))
    return [limits.lower_deviation_mm, limits.upper_deviation_mm]


def iso_size(row):
    limits = core.iso_size(row["text"])
    return [limits.size_mm.lower, limits.size_mm.upper, float(limits.hole)]


def iso_fit(row):
    fit = core.iso_fit(row["text"]).clearance
    return [fit.clearance_mm.lower, fit.clearance_mm.upper, float(CLASSES.index(fit.fit_class))]


def gap_leak(row):
    gap = core.Gap(**numbers(row, "diameter_mm", "clearance_mm", "length_mm", "eccentricity"))
    leak = gap.gap_leak(**numbers(row, "pressure_drop_kpa", "viscosity_mpa_s", "density_kg_m3"))
    return [leak.flow_l_min, leak.speed_m_s, leak.reynolds]


def leak_ratio(row):
    leak = worn(row).leak_ratio(coverage=row.number("coverage"))
    return [leak.ratio, leak.first_order_u, leak.lower, leak.upper]


def chance_leaks_more(row):
    return [worn(row).chance_leaks_more(times=row.number("times"))]
