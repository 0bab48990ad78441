"""Runners of the stack chapter's vectors whose columns are not the arguments themselves."""

from runners.fit import SPREADS
from runners.judge import VERDICTS
from runners.judge import limits as size

from trainwright import judge
from trainwright import stack as core
from trainwright.clutch import Annulus
from trainwright.judge import Limits, Reading


def reading(row, value, u):
    return Reading(value=row.number(value), u=row.number(u))


def numbers(row, column):
    return [float(cell) for cell in row[column].split()]


def link(of):
    return [of.value_mm, of.half_width_mm, of.u_mm]


def rule(row):
    return judge.Rule(go=row.number("go"), no_go=row.number("no_go"), k=0, kind="stated chances")


def toleranced(row):
    # Python names its spreads, so a number without a name cannot be passed on: the refusal is the interface's own.
    spread = SPREADS.get(int(row.number("spread")))
    if spread is None:
        judge.Rule.stated_chances(go=2.0, no_go=0.0)
    return link(core.ChainLink.toleranced(row.number("sensitivity"), size(row), spread=spread))


def measured(row):
    return link(core.ChainLink.measured(row.number("sensitivity"), reading(row, "value", "u"), k=row.number("k")))


def chain(row):
    names = ("sensitivity", "value_mm", "half_width_mm", "u_mm")
    columns = [numbers(row, name) for name in names]
    found = core.chain([core.ChainLink(**dict(zip(names, cells))) for cells in zip(*columns)])
    ranges = [found.worst_mm.lower, found.worst_mm.upper, found.rss_half_mm, found.rss_mm.lower, found.rss_mm.upper]
    return [
        found.reading_mm.value, found.reading_mm.u, found.worst_half_mm, *ranges, found.rss_chance, float(found.budget.largest)
    ]  # fmt: skip


def growth(row, u=""):
    def part(name, unit):
        return Reading(value=row.number(f"{name}{unit}"), u=row.number(f"{name}{u}{unit}") if u else 0.0)

    return core.AxialGrowth(
        case_length_mm=part("case_length", "_mm"),
        train_length_mm=part("train_length", "_mm"),
        case_expansion_per_k=part("case_expansion", "_per_k"),
        train_expansion_per_k=part("train_expansion", "_per_k"),
        reference_c=row.number("reference_c"),
    )


def grown(row):
    hot = growth(row, "_u").grown(
        temp_c=reading(row, "temp_c", "temp_u_c"), train_hotter_k=reading(row, "train_hotter_k", "train_hotter_u_k")
    )
    return [hot.case_mm, hot.train_mm, hot.growth_mm.value, hot.growth_mm.u, float(hot.budget.largest)]


def growth_mm(row):
    return [growth(row).growth_mm(temp_c=row.number("temp_c"), train_hotter_k=row.number("train_hotter_k"))]


def selection(row, **changes):
    return core.Selection(
        room_mm=reading(row, "room_mm", "room_u_mm"),
        window_mm=size(row),
        target_mm=row.number("target_mm"),
        growth_mm=reading(row, "growth_mm", "growth_u_mm"),
        hot_window_mm=Limits(lower=row.number("hot_lower"), upper=row.number("hot_upper")),
        rule=rule(row),
        by=["nearest target", "least risk"][int(row.number("by"))],
        hot_counts=row.number("hot_counts") != 0,
    )


def pieces(row):
    cells = zip(numbers(row, "thickness_mm"), numbers(row, "thickness_u_mm"), numbers(row, "in_stock"))
    return [core.Piece(thickness_mm=Reading(value=value, u=u), in_stock=stock != 0) for value, u, stock in cells]


def outcome(row):
    found = selection(row).outcome(core.Piece(thickness_mm=reading(row, "thickness_mm", "thickness_u_mm")))
    judged = [[at.reading.value, at.reading.u, at.chance, VERDICTS[at.verdict]] for at in (found.cold, found.hot)]
    return [*judged[0], *judged[1], found.off_target_mm, found.off_middle_mm, found.chance, float(found.inside)]


def choose(row):
    found = selection(row).choose(pieces(row))
    places = ("found", "position", "nearest_target", "least_risk", "missing_better", "missing", "wanted_mm")
    ranges = [found.inside_mm.lower, found.inside_mm.upper, found.go_mm.lower, found.go_mm.upper]
    return [*(float(getattr(found, name)) for name in places), *ranges]


def pick(row):
    of = selection(row)
    found = of.pick(pieces(row), room_mm=of.room_mm)
    return [found[name] for name in ("position", "thickness_mm", "value_mm", "u_mm", "chance")]


def mean_of_steps(row):
    found = core.mean_of_steps(numbers(row, "values"), quantum=row.number("quantum"), u_of_one=row.number("u_of_one"))
    return [found.reading.value, found.reading.u, found.deviation, found.freedom]


def what_to_measure(row):
    budget = judge.combine([judge.Input(sensitivity=c, u=u) for c, u in zip(numbers(row, "sensitivity"), numbers(row, "u"))])
    chances = judge.Rule.stated_chances(go=row.number("go"), no_go=row.number("no_go"))
    judgment = judge.judge(Reading(value=row.number("value"), u=budget.u), size(row), chances)
    first, second, *_ = core.what_to_measure(judgment, budget, numbers(row, "u_measured"))
    return [
        float(first.input), float(second.input), first.share, second.share_so_far, first.u_of_result, first.chance_go,
        first.chance_no_go, first.u_needed, float(first.enough),
    ]  # fmt: skip


def room_from_fitted(row):
    room = core.room_from_fitted(
        clearance_mm=reading(row, "clearance_mm", "clearance_u_mm"), fitted_mm=reading(row, "fitted_mm", "fitted_u_mm")
    )
    return [room.value, room.u]


def room_from_heights(row):
    parts = ("drum_depth", "friction", "steel", "pressure_plate", "wave_plate")
    room = core.PackHeights(
        friction_plates=int(row.number("friction_plates")),
        steel_plates=int(row.number("steel_plates")),
        **{f"{part}_mm": reading(row, f"{part}_mm", f"{part}_u_mm") for part in parts},
    ).room_from_heights()
    return [room.plates_mm, room.room_mm.value, room.room_mm.u, float(room.budget.largest)]


def piston_travel(row):
    parts = ("clearance", "wave", "bend", "land")
    stroke = core.PistonStroke(**{f"{part}_mm": reading(row, f"{part}_mm", f"{part}_u_mm") for part in parts})
    travel = stroke.piston_travel(rule=rule(row))
    judged = travel.judgment
    return [
        travel.travel_mm.value, travel.travel_mm.u, judged.reading.value, judged.reading.u, judged.chance,
        VERDICTS[judged.verdict], float(travel.budget.largest),
    ]  # fmt: skip


def apply_fill(row):
    piston = Annulus(inner_radius_mm=row.number("inner_radius_mm"), outer_radius_mm=row.number("outer_radius_mm"))
    travel_mm, flow_l_min = reading(row, "travel_mm", "travel_u_mm"), reading(row, "flow_l_min", "flow_u_l_min")
    fill = core.apply_fill(piston, travel_mm=travel_mm, flow_l_min=flow_l_min)
    return [fill.area_mm2, fill.volume_ml.value, fill.volume_ml.u, fill.time_s.value, fill.time_s.u]
