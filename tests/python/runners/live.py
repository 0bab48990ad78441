"""Runners of the live chapter's vectors."""

from trainwright import live as core


def _sensor(row, prefix=""):
    rest = {name: row.number(prefix + name) for name in ("step_rpm", "noise_rpm", "tick_s")}
    return core.SpeedSensor(source=row[f"{prefix}reading"], teeth=int(row[f"{prefix}teeth"]), **rest, age_limit_s=0.1, greatest_rpm=8000.0)


def _numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def _element(row):
    return core.Element(name="C1", **_numbers(row, "heat_capacity_j_k", "cooling_s", "limit_c"))


def u_rpm(row):
    return [_sensor(row).u_rpm(rpm=row.number("rpm"), window_s=row.number("window_s"), values=int(row["values"]))]


def ratio_window_s(row):
    pair = core.SpeedPair(input=_sensor(row, "input_").spread(), output=_sensor(row, "output_").spread(), sample_s=row.number("sample_s"))
    return [pair.ratio_window_s(**_numbers(row, "input_rpm", "ratio", "u_rel"))]


def plate_after_c(row):
    return [_element(row).plate_after_c(**_numbers(row, "plate_c", "fluid_c", "energy_j", "span_s"))]


def shifts_to_limit(row):
    found = _element(row).shifts_to_limit(**_numbers(row, "plate_c", "fluid_c", "energy_j", "pace_s"))
    return [found.rise_k, found.settled_c, float(found.shifts)]


def add_slip(row):
    seen = core.GearEvidence(**_numbers(row, "forward", "backward")).add_slip(**_numbers(row, "slip", "wanted"))
    return [seen.forward, seen.backward]


def weigh_suspects(row):
    gears, elements = [], 0
    for text in row["unit"].split():
        number, ratio, suspects = text.split(":")
        pairs = [pair.split("/") for pair in suspects.split("+")]
        elements = max(elements, *(int(element) + 1 for element, _ in pairs))
        held = [core.Suspect(element=element, slip_per_input_slip=float(factor)) for element, factor in pairs]
        gears.append(core.Gear(name=str(len(gears)), number=int(number), ratio=float(ratio), suspects=held))
    sensor = core.SpeedSensor.bus(step_rpm=0.5, noise_rpm=0.9, age_limit_s=0.1, greatest_rpm=8000.0)
    unit = core.Unit(
        gears=gears, elements=[core.Element(name=str(number)) for number in range(elements)], input=sensor, output=sensor,
        limits=core.Limits.common_practice(slip_rpm=1.0, skew_s=0.0, ratio_u_rel=1e-4), sample_s=0.01,
    )  # fmt: skip
    cells = [cell.split(":") for cell in row["seen"].split()]
    found = unit.weigh_suspects({place: core.GearEvidence(forward=float(f), backward=float(b)) for place, f, b in cells})
    none = (255.0, float("-inf"))
    first, second = ([(float(s.element), s.ln_odds) for s in found.suspects] + [none, none])[:2]
    following = -1.0 if found.next_gear is None else float(found.next_gear)
    return [*first, *second, float(len(found.suspects)), found.sensors_ln_odds, following, found.next_bit]
