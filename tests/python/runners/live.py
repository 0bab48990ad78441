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


RATIOS = [2.0, 1.4, 1.0, -2.5]
SUSPECTS = [[("A", -1.5), ("B", 2.0)], [("A", -2.0), ("C", 3.0)], [("B", 2.5), ("C", -1.25)], [("A", 1.0)]]
NO_GEAR = {"none": -1.0, "standing": -2.0, "unknown": -3.0}
_driven = {}


def _unit(sensor):
    """The unit of tests/live_push.rs."""
    rest = {"noise_rpm": 0.0, "age_limit_s": 0.05, "greatest_rpm": 8000.0}
    make = {
        "bus": lambda _: core.SpeedSensor.bus(step_rpm=0.5, **rest),
        "counted": lambda teeth: core.SpeedSensor.counted(teeth=teeth, **rest),
        "edges": lambda teeth: core.SpeedSensor.edges(teeth=teeth, tick_s=1e-6, **rest),
    }[sensor]
    return core.Unit(
        gears=[
            core.Gear(name=str(place), number=-1 if ratio < 0 else place + 1, ratio=ratio, suspects=[core.Suspect(element=e, slip_per_input_slip=f) for e, f in held])
            for place, (ratio, held) in enumerate(zip(RATIOS, SUSPECTS, strict=True))
        ],
        elements=[core.Element(name=name, heat_capacity_j_k=400.0, cooling_s=20.0, limit_c=250.0) for name in "ABC"],
        input=make(40),
        output=make(30),
        engine=core.SpeedSensor.bus(step_rpm=1.0, noise_rpm=4.0, age_limit_s=0.1, greatest_rpm=8000.0),
        limits=core.Limits(
            standing_rpm=30.0, slip_rpm=4.0, run_length_s=360000.0, skew_s=0.0, ratio_u_rel=1e-3, settle_s=0.2, follow_s=2.0,
            flare_rpm=40.0, dip_share=0.02, lockup_slip_rpm=50.0, cold_c=40.0, hot_c=120.0, warm_up_s=600.0,
        ),
        sample_s=0.02,
    )  # fmt: skip


def _gear(name):
    return NO_GEAR[name] if name in NO_GEAR else float(name)


def _formed(value):
    return -1.0 if value is None or value != value else value


def push(row):
    """A new drive starts a new monitor."""
    if row["drive"] not in _driven:
        _driven.clear()
        _driven[row["drive"]] = core.Monitor(_unit(row["sensor"]))
    monitor = _driven[row["drive"]]
    speeds = {}
    for shaft in ("input", "output"):
        if row[f"{shaft}_state"] == "0":  # what is not there is left out
            speeds[f"{shaft}_rpm" if row["sensor"] == "bus" else f"{shaft}_pulses"] = row.number(shaft)
            if row["sensor"] == "edges":
                speeds[f"{shaft}_ticks"] = row.number(f"{shaft}_ticks")
    rest = {"engine_rpm": row.number("engine_rpm"), "engine_torque_nm": row.number("torque_nm"), "temp_c": row.number("temp_c")}
    events = monitor.push(time_us=row.number("time_us"), **speeds, **rest, gear=int(row["commanded"]), lockup=row.number("lockup"))
    state = monitor.state
    shown = [state.ratio, state.ratio_u, state.slip_rpm, state.slip_u_rpm, state.converter_slip_rpm]
    head = [_gear(state.gear), float(core.PHASES.index(state.phase)), float(state.alarm), float(state.used), *map(_formed, shown), float(len(events))]
    if not events:
        return [*head, 0.0, -3.0, -3.0, 0.0, 0.0, 0.0, -1.0, -1.0]
    first = events[0]
    suspects = sum(1 << "ABC".index(name) for name in first.suspects)
    kind = core.EVENT_KINDS.index(first.kind)
    return [
        *head, float(kind), _gear(first.gear), _gear(first.other_gear), float(suspects), float(first.at_us), float(first.found_us),
        _formed(first.value), _formed(first.u),
    ]  # fmt: skip
