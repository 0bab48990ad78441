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
