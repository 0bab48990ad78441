"""Runners of the duty chapter's vectors."""

from runners.train import closed, number, train

from trainwright import Error, Reading
from trainwright import duty as core
from trainwright.road import Driveline


def mesh_duty(row):
    of = train(row["train"])
    sets = of.sets
    place = int(row["set"])
    name = sets[place] if place < len(sets) else "none"
    found = core.mesh_duty(of.solve(closed(row)), set=name)
    wheels = [found.sun, found.sun_2, found.ring]
    parts = [part for wheel in wheels for part in ((wheel.contacts, wheel.torque) if wheel else (None, None))]
    return [number(part) for part in (*parts, found.planet_contacts, found.planet_2_contacts)]


MEANINGS = ["value", "out of range", "indicator", "reserved", "error", "not available"]


def _signal(row):
    number = int(row["number"])
    if number:
        return core.bus_signal(network=["J1939", "OBD"][int(row["network"])], number=number)
    rest = {name: row.number(name) for name in ("resolution", "offset", "lower", "upper")}
    return core.BusSignal(rules=["marked", "plain"][int(row["rules"])], bits=int(row["bits"]), **rest)


def decode(row):
    found = _signal(row).decode(int(row["raw"]))
    return [float(MEANINGS.index(found.meaning)), found.value]


def classify(row):
    found = _signal(row).classify(row.number("value"))
    return [float(MEANINGS.index(found.meaning)), found.value]


def step_error(row):
    return [_signal(row).step_error(row.number("value"))]


def _list(row, column):
    return [float(cell) for cell in row[column].split()]


def _numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def _fields(answer, *names):
    return [float(getattr(answer, name)) for name in names]


def _refused():
    error = Error("refused by the room that C and Rust give")
    error.kind = "COUNT"
    return error


def rainflow(row):
    residue = ["half cycles", "repeated"][int(row["residue"])]
    count, cycles = core.rainflow(_list(row, "values"), residue=residue)
    if row["stack"] != "64" or count.entries > int(row["size"]):
        raise _refused()  # Python makes room for what there is
    sums = [0.0, 0.0, 0.0]
    for size, mean, number in zip(*(cycles[name].tolist() for name in ("range", "mean", "cycles")), strict=True):
        for place, part in enumerate((size, size * size * size, mean)):
            sums[place] += part * number
    return [*_fields(count, "cycles", "reversals", "pieces", "missing", "largest_range"), *sums]


def residence(row):
    rest, seconds = core.residence(time_s=_list(row, "time_s"), values=_list(row, "values"), edges=_list(row, "edges"), gap_limit_s=row.number("gap_limit_s"))
    names = ["inside_s", "below_s", "above_s", "missing_s", "gap_s", "duplicates", "reversed"]
    return [*seconds.tolist(), *_fields(rest, *names)]


def from_rating(row):
    line = core.DamageLine.from_rating(**row.numbers())
    return _fields(line, "slope", "reference_nm", "reference_contacts")


def damage(row):
    line = core.DamageLine(**_numbers(row, "slope", "reference_nm", "reference_contacts"))
    found = line.damage(contacts=_list(row, "contacts"), torque_nm=_list(row, "torque_nm"))
    return _fields(found, "total", "greatest", "governing", "governing_share", "contacts")


def damage_interval(row):
    known = _numbers(row, "slope_low", "slope_high", "reference_low_nm", "reference_high_nm", "reference_contacts")
    found = core.damage_interval(contacts=_list(row, "contacts"), torque_nm=_list(row, "torque_nm"), known=core.DamageRange(**known))
    return _fields(found, "lower", "upper", "slope_at_lower", "slope_at_upper")


def aging_factor(row):
    rest = _numbers(row, "reference_c", "halving_k", "activation_k", "least_factor")
    factor = core.AgingRule(kind=["halving", "arrhenius"][int(row["kind"])], **rest).aging_factor(row.number("temp_c"))
    return [factor, 1e5 / factor]


def halving(row):
    return _fields(core.AgingRule.halving(**row.numbers()), "reference_c", "halving_k", "least_factor")


def arrhenius(row):
    return _fields(core.AgingRule.arrhenius(**row.numbers()), "reference_c", "activation_k")


def fluid_life(row):
    rule = core.AgingRule(kind="halving", **_numbers(row, "reference_c", "halving_k", "least_factor"))
    known = _numbers(row, "unknown_h", "life_h")
    found = core.fluid_life(temp_c=_list(row, "temp_c"), duration_h=_list(row, "duration_h"), rule=rule, **known)
    return _fields(found, "used", "used_lower", "used_upper", "known_h", "left_h", "worst_share", "worst_from_c")


def rank_intervals(row):
    ranks = core.rank_intervals(_list(row, "lower"), _list(row, "upper"))
    return [float(place) for rank in ranks for place in (rank.first, rank.last)]


def resampled_total(row):
    return [core.resampled_total(_list(row, "periods"), seed=int(row["seed"]), draw=int(row["draw"]))]


def ratio_of(row):
    rule = core.RatioRule(block_rows=int(row["block_rows"]), **_numbers(row, "least", "quantum", "u_rel"))
    found = core.ratio_of(_list(row, "true_values"), _list(row, "shown_values"), rule=rule)
    names = ["scatter_u", "step_u", "true_u", "mean_shown", "used", "slow", "missing", "blocks"]
    return [found.ratio.value, found.ratio.u, *_fields(found, *names)]


def _driveline(row, which, u):
    value = row.number(f"circumference_{which}_mm")
    return Driveline(axle_ratio=row.number(f"axle_{which}"), circumference_mm=Reading(value=value, u=u))


def other_driveline(row):
    fitted = _driveline(row, "fitted", row.number("circumference_fitted_u_mm"))
    cause = core.other_driveline(_driveline(row, "programmed", 0.0), fitted, weight=row.number("weight"))
    return [cause.road.value, cause.road.u, cause.gear, cause.weight]


def other_teeth(row):
    cause = core.other_teeth(programmed=int(row["programmed"]), fitted=int(row["fitted"]), weight=row.number("weight"))
    return [cause.road.value, cause.gear]


def weigh_causes(row):
    causes = {}
    for place, cell in enumerate(row["causes"].split()):
        k, u, gear, weight = (float(part) for part in cell.split(":"))
        causes[str(place)] = core.RatioCause(road=Reading(value=k, u=u), gear=gear, weight=weight)
    gear = Reading(value=row.number("gear"), u=row.number("gear_u")) if row["gear"] else None
    road = Reading(value=row.number("road"), u=row.number("road_u"))
    found = core.weigh_causes(road=road, gear=gear, causes=causes, **_numbers(row, "enough", "most_z"))
    fits = found.fits()
    kinds = ["explained", "cannot tell", "none fits"]
    first = [fits[name].chance for name in ("0", "1")]
    return [float(kinds.index(found.kind)), float(found.best), found.chance, found.road_z, found.gear_z, *first]


def _screen_truck():
    from trainwright._native import fleet
    from trainwright.clutch import CapacityLine

    lines = [(9000, 0, 1200, 500), (8000, 2e-5, 1000, 400)]
    fields = ("piston_area_mm2", "head_n_per_rpm2", "held_back_n", "arm_mm")

    def holding(element, share):
        line = CapacityLine(**dict(zip(fields, lines[element], strict=True)))
        return fleet.Holding(element=str(element), share=share, turns=element, line=line, friction=0.1)

    def gear(name, number, ratio, efficiency, contacts, share, packs):
        return fleet.Gear(name=name, number=number, ratio=ratio, efficiency=efficiency, holding=packs,
                          contacts={"P": contacts}, sun_torque={"P": share})

    return fleet.Unit(
        gears=[
            gear("1", 1, 3, 0.96, 3, 0.8, [holding(0, 1)]),
            gear("2", 2, 1, 0.99, 0, 0, [holding(0, 0.6), holding(1, 0.4)]),
            gear("R", -1, -2.5, 0.95, 5, 2, [holding(1, 2.5)]),
        ],
        rated_input_nm=500, rated_output_nm=1500, limits=fleet.Limits.common_practice(),
        slope=6, reference_contacts=1e6, reference_torque_nm={"P": 1000},
        speed_ratio=[0, 0.5, 0.9], torque_ratio=[2, 1.5, 1], output_rpm_per_km_h=20,
        fluid_life_h=2000, fluid_reference_c=80, fluid_halving_k=10,
    )


def row(row):
    from trainwright._native import fleet

    given = int(row["given"])
    now = {name: row.number(name) for place, name in enumerate(fleet.COLUMNS) if given >> place & 1}
    before = now | {"time_s": row.number("before_s")}
    if "engine_torque_nm" in now:
        before["engine_torque_nm"] = row.number("before_nm")
    answer = _screen_truck().row(now, before)
    names = ("flags", "gear", "weakest", "duration_s", "input_torque_nm", "output_torque_nm", "least_margin",
             "turns_at_rated", "converter_loss_kw", "gear_loss_kw", "aged_s", "gps_over_speed", "gps_over_output")
    return [-1.0 if answer[name] != answer[name] else float(answer[name]) for name in names]
