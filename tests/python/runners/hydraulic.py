"""Runners of the hydraulic chapter's vectors whose columns are not the arguments themselves."""

from runners.judge import VERDICTS
from runners.train import names_of, train

from trainwright import clutch
from trainwright import hydraulic as core
from trainwright.fit import Gap
from trainwright.fluid import Fluid
from trainwright.judge import Limits, Reading, Rule

KINDS = [
    "nothing", "supply", "supply when hot", "supply at idle", "supply at hot idle", "boost", "stuck high", "high at idle",
    "circuit", "circuit when hot",
]  # fmt: skip
FLUID = ("density_15c_kg_m3", "expansion_per_k", "viscosity_40c_mm2_s", "viscosity_100c_mm2_s")
OIL = ("pressure_drop_kpa", "viscosity_mpa_s", "density_kg_m3", "wall_speed_m_s")


def _numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def _list(row, column):
    return [float(cell) for cell in row[column].split()]


def _reading(row, value, u):
    return Reading(value=row.number(value), u=row.number(u))


def _rule(row):
    return Rule.stated_chances(**_numbers(row, "go", "no_go"))


def _fluid(row):
    return Fluid(**_numbers(row, *FLUID))


def _decided(judgment):
    return [judgment.chance, VERDICTS[judgment.verdict]]


def chamber_displacement(row):
    teeth = {name: int(row[name]) for name in ("inner_teeth", "outer_teeth")}
    pump = core.InternalGearPump(**teeth, **_numbers(row, "chamber_max_mm2", "chamber_min_mm2", "face_mm"))
    found = pump.chamber_displacement()
    return [found.inner_cm3_rev, found.outer_cm3_rev]


def oil_at(row):
    oil = core.oil_at(_fluid(row), temp_c=_reading(row, "temp_c", "temp_u_c"))
    return [oil.density_kg_m3, oil.viscosity_mm2_s, oil.viscosity_mpa_s.value, oil.viscosity_mpa_s.u]


def _pump(row):
    return core.Pump(
        displacement_cm3_rev=Reading.exact(row.number("displacement_cm3_rev")),
        leak_l_min_mpa=Reading.exact(row.number("leak_l_min_mpa")),
        leak_viscosity_mpa_s=row.number("leak_viscosity_mpa_s"),
    )


def pump_flow(row):
    flow = _pump(row).pump_flow(**_numbers(row, "speed_rpm", "pressure_kpa", "viscosity_mpa_s"))
    return list(flow.as_dict().values())


def least_speed_rpm(row):
    return [_pump(row).least_speed_rpm(**_numbers(row, "pressure_kpa", "viscosity_mpa_s", "demand_l_min"))]


def flow_margin(row):
    pump = core.Pump(
        displacement_cm3_rev=_reading(row, "displacement_cm3_rev", "displacement_u_cm3_rev"),
        leak_l_min_mpa=_reading(row, "leak_l_min_mpa", "leak_u_l_min_mpa"),
        leak_viscosity_mpa_s=row.number("leak_viscosity_mpa_s"),
    )
    duty = core.PumpDuty(
        speed_rpm=_reading(row, "speed_rpm", "speed_u_rpm"),
        pressure_kpa=_reading(row, "pressure_kpa", "pressure_u_kpa"),
        viscosity_mpa_s=_reading(row, "viscosity_mpa_s", "viscosity_u_mpa_s"),
        demand_l_min=_reading(row, "demand_l_min", "demand_u_l_min"),
    )
    margin = pump.flow_margin(duty, _rule(row))
    spare = margin.judgment.reading
    return [margin.least_speed_rpm, spare.value, spare.u, margin.budget.share[2], *_decided(margin.judgment)]


def hottest_c(row):
    return [_pump(row).hottest_c(_fluid(row), **_numbers(row, "speed_rpm", "pressure_kpa", "demand_l_min"))]


def slot_flow(row):
    slot = core.Slot(**_numbers(row, "width_mm", "clearance_mm", "length_mm"))
    return list(slot.slot_flow(**_numbers(row, *OIL)).as_dict().values())


def sliding_gap(row):
    gap = Gap(**_numbers(row, "diameter_mm", "clearance_mm", "length_mm", "eccentricity"))
    flow = core.sliding_gap(gap, **_numbers(row, *OIL))
    return [flow.leak.flow_l_min, flow.wall_l_min, flow.flow_l_min]


def pump_clearance(row):
    clearance, new = _reading(row, "clearance_mm", "clearance_u_mm"), _reading(row, "new_mm", "new_u_mm")
    found = core.pump_clearance(clearance, new_mm=new, limit_mm=row.number("limit_mm"), rule=_rule(row))
    return [*_decided(found.judgment), found.leak.ratio, found.leak.lower, found.leak.upper]


def _hole(row):
    return core.Orifice(**_numbers(row, "diameter_mm", "discharge"))


def orifice_flow(row):
    flow = _hole(row).orifice_flow(**_numbers(row, "pressure_drop_kpa", "density_kg_m3", "viscosity_mpa_s"))
    return [float(value) for value in flow.as_dict().values()]


def orifice_drop_kpa(row):
    return [_hole(row).orifice_drop_kpa(**_numbers(row, "flow_l_min", "density_kg_m3"))]


def _holes(row):
    return [core.Orifice(diameter_mm=diameter, discharge=row.number("discharge")) for diameter in _list(row, "diameters_mm")]


def in_parallel_mm2(row):
    return [core.in_parallel_mm2(_holes(row))]


def in_series_mm2(row):
    return [core.in_series_mm2(_holes(row))]


def _metering(row):
    return core.Metering(**_numbers(row, "discharge", "width_mm", "opening_mm", "jet_deg"))


def _land(row, which):
    return core.Land(outer_diameter_mm=row.number(f"{which}_outer_mm"), inner_diameter_mm=row.number(f"{which}_inner_mm"))


def _regulator(row):
    spring = _numbers(row, "preload_n", "rate_n_mm", "stroke_mm")
    return core.Regulator(**spring, balance=_land(row, "balance"), boost=_land(row, "boost"), metering=_metering(row))


def flow_force_n(row):
    return [_metering(row).flow_force_n(pressure_drop_kpa=row.number("pressure_drop_kpa"))]


def regulated(row):
    return list(_regulator(row).regulated(boost_pressure_kpa=row.number("boost_pressure_kpa")).as_dict().values())


def spring_for_n(row):
    return [_regulator(row).spring_for_n(**_numbers(row, "pressure_kpa", "boost_pressure_kpa"))]


def gear_pressure(row):
    none = clutch.Head(wetted=clutch.Annulus(inner_radius_mm=0, outer_radius_mm=0), free_surface_radius_mm=0)
    pack = clutch.Pack(
        lining=clutch.Annulus(inner_radius_mm=56, outer_radius_mm=78),
        piston=clutch.Annulus(inner_radius_mm=46, outer_radius_mm=73),
        faces=int(row["faces"]),
        worn=False,
        return_spring_n=Limits(lower=row.number("weak_spring_n"), upper=row.number("strong_spring_n")),
        seal_drag_n=0,
        head=none,
        dam=none,
    )
    places = [place.split(":") for place in row["packs"].split()]
    gauge = _reading(row, "pressure_kpa", "pressure_u_kpa")
    review = clutch.review(
        train(row["train"]).solve(names_of(int(row["closed"]))),
        {f"e{element}": clutch.ElementPack(pack=pack, turns_with=f"m{member}") for element, member in places},
        pressure_kpa=gauge,
        friction=Reading(value=0.112, u=0.009),
        geometry_u_rel=0.02,
        oil_density_kg_m3=790,
        turbine_torque_nm=Reading.exact(row.number("turbine_torque_nm")),
        turbine_speed_rpm=0,
        rule=Rule.stated_chances(go=0.95, no_go=0.05),
    )
    found = core.gear_pressure(review, reading_kpa=gauge, control_max_kpa=row.number("control_max_kpa"))
    needed = [found.needed.strong_spring_kpa, found.needed.weak_spring_kpa]
    spare = [found.spare_kpa, found.reserve, found.control_spare_kpa]
    return [float(found.element), *needed, *spare, float(found.unknown), found.chance, VERDICTS[found.verdict]]


def _cells(row, column):
    return [[float(part) for part in cell.split(":")] for cell in row[column].split()]


def _point(closed, at_stall, temp_c):
    return core.PressurePoint(closed=int(closed), at_stall=bool(at_stall), temp_c=temp_c)


def _suspects(row):
    rule = core.PatternRule(**_numbers(row, "kept", "hot_from_c"))
    readings = [
        core.PressureReading(
            at=_point(*cell[:3]), reading_kpa=Reading(value=cell[3], u=cell[4]), limits_kpa=Limits(lower=cell[5], upper=cell[6])
        )
        for cell in _cells(row, "readings")
    ]
    return core.suspect_circuits(readings, elements=int(row["elements"]), rule=rule), rule


def suspect_circuits(row):
    found, _ = _suspects(row)
    first, second, *_, last = found.ranked
    kind = float(KINDS.index(first.kind))
    shares = [first.share, second.share, last.share]
    return [float(len(found.ranked)), kind, float(first.element), *shares, float(found.untested)]


def next_reading(row):
    found, rule = _suspects(row)
    candidates = [_point(*cell) for cell in _cells(row, "candidates")]
    following = core.next_reading(found, candidates, rule=rule)
    return [float(following.candidate), following.bits]


def timed_flow(row):
    volume, time = _reading(row, "volume_l", "volume_u_l"), _reading(row, "time_s", "time_u_s")
    flow = core.timed_flow(volume_l=volume, time_s=time).flow_l_min
    return [flow.value, flow.u]


def flow_at_reference(row):
    flow, temp = _reading(row, "flow_l_min", "flow_u_l_min"), _reading(row, "temp_c", "temp_u_c")
    there = core.flow_at_reference(flow, _fluid(row), temp_c=temp, reference_c=row.number("reference_c"))
    return [there.value, there.u]


def _limits(row):
    return core.CoolerLimits(temperature_c=_list(row, "temperatures_c"), least_flow_l_min=_list(row, "flows_l_min"))


def least_flow_at(row):
    least = _limits(row).least_flow_at(temp_c=row.number("temp_c"))
    return [least.least_l_min, least.least_l_min_per_k]


def cooler_check(row):
    reading = core.CoolerReading(
        volume_l=_reading(row, "volume_l", "volume_u_l"),
        time_s=_reading(row, "time_s", "time_u_s"),
        temp_c=_reading(row, "temp_c", "temp_u_c"),
    )
    check = _limits(row).cooler_check(reading, _rule(row))
    spare = check.judgment.reading
    return [check.flow_l_min.value, check.least.least_l_min, spare.value, spare.u, *_decided(check.judgment)]
