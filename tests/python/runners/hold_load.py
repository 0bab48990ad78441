"""Runners of the vectors of thrust bearings, shafts, splines and comparisons."""

from runners.judge import VERDICTS
from runners.train import closed, train

from trainwright import clutch
from trainwright import hold as core
from trainwright.judge import Limits, Reading, Rule

EFFECTS = ["same", "buys", "costs", "differs"]
NEEDLES = ["needle_diameter_mm", "needle_length_mm", "pitch_diameter_mm"]


def _numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def _list(row, column):
    return [float(cell) for cell in row[column].split()]


def _fields(answer, *names):
    return [float(getattr(answer, name)) for name in names]


def _ratios(answer, *names):
    return [getattr(answer, name).ratio for name in names]


def _rule(row):
    return Rule.stated_chances(**_numbers(row, "go", "no_go"))


def _decided(judgment):
    return [judgment.chance, VERDICTS[judgment.verdict]]


def _needles(row):
    return core.NeedleThrust(needles=int(row.number("needles")), **_numbers(row, *NEEDLES))


def needle_capacity(row):
    sizes = ["inside_mm", "outside_mm", "gap_mm", "size_ratio", "dynamic_factor", "static_n", "dynamic_n"]
    return _fields(_needles(row).needle_capacity(), *sizes)


def mean_load(row):
    stages = [[float(cell) for cell in stage.split(":")] for stage in row["stages"].split()]
    loads, speeds, shares = ([stage[place] for stage in stages] for place in range(3))
    mean = core.mean_load(load_n=loads, speed_rpm=speeds, share=shares, exponent=row.number("exponent"))
    return _fields(mean, "load_n", "speed_rpm", "greatest_n", "governing", "governing_share")


def needle_hold(row):
    load = Reading(value=row.number("load_n"), u=row.number("load_u_n"))
    hold = _needles(row).needle_hold(load, least_static_factor=row.number("least_static_factor"), rule=_rule(row))
    return [hold.static_factor, hold.judgment.limits.upper, *_decided(hold.judgment)]


def needle_lasts(row):
    load = Reading(value=row.number("load_n"), u=row.number("load_u_n"))
    lasts = _needles(row).needle_lasts(load, rule=_rule(row), **_numbers(row, "speed_rpm", "least_life_h"))
    return [lasts.life.life_mrev, lasts.life.life_h, lasts.load_for_life_n, *_decided(lasts.judgment)]


def washer_load(row):
    washer = core.ThrustWasher(**_numbers(row, "outside_mm", "inside_mm", "face_share"))
    load = washer.washer_load(**_numbers(row, "load_n", "speed_rpm"))
    return _fields(load, "area_mm2", "unit_load_mpa", "mean_diameter_mm", "sliding_m_s", "pv_mpa_m_s")


def _helical(row):
    return core.Helical(**_numbers(row, "module_mm", "helix_deg"))


def axial_thrust(row):
    thrust = core.axial_thrust(torque_nm=row.number("torque_nm"), teeth=int(row.number("teeth")), helical=_helical(row))
    return _fields(thrust, "pitch_radius_mm", "tangential_n", "axial_n")


def wheel_thrust(row):
    unit = train(row["train"])
    pushed = core.wheel_thrust(
        unit.solve(closed(row)),
        set=unit.sets[int(row["set"])],
        wheel=["sun", "sun_2", "ring"][int(row["wheel"])],
        helical=_helical(row),
        **_numbers(row, "input_torque_nm", "input_speed_rpm"),
    )
    thrust = pushed.thrust
    return [pushed.torque_nm, thrust.pitch_radius_mm, thrust.tangential_n, thrust.axial_n, pushed.carrier_slip_rpm]


def _shaft(row, side=""):
    return core.Shaft(outside_mm=row.number(f"{side}outside_mm"), inside_mm=row.number(f"{side}inside_mm"))


def torsion(row):
    stress = _shaft(row).torsion(torque_nm=row.number("torque_nm"))
    return _fields(stress, "polar_moment_mm4", "section_modulus_mm3", "stress_mpa", "bore_stress_mpa")


def twist_deg(row):
    return [_shaft(row).twist_deg(**_numbers(row, "torque_nm", "length_mm", "shear_modulus_mpa"))]


def hollow_over_solid(row):
    return _fields(_shaft(row).hollow_over_solid(), "strength", "mass")


def shaft_hold(row):
    load = core.ShaftLoad(
        torque_nm=Reading(value=row.number("torque_nm"), u=row.number("torque_u_nm")),
        shear_yield_mpa=Reading(value=row.number("shear_yield_mpa"), u=row.number("shear_yield_u_mpa")),
        **_numbers(row, "stress_factor", "stress_u_rel"),
    )
    hold = _shaft(row).shaft_hold(load, rule=_rule(row))
    shown = _fields(hold, "yield_share", "torque_at_yield_nm", "factor_at_yield")
    return [hold.torsion.stress_mpa, *shown, *_decided(hold.judgment)]


def spline_load(row):
    sizes = _numbers(row, "major_mm", "minor_mm", "pitch_diameter_mm", "length_mm")
    load = core.Spline(teeth=int(row.number("teeth")), **sizes).spline_load(**_numbers(row, "torque_nm", "carrying_share"))
    return _fields(load, "height_mm", "mean_radius_mm", "thickness_mm", "tooth_n", "bearing_mpa", "shear_mpa")


def change(row):
    better = ["neither", "more", "less"][int(row.number("better"))]
    changed = core.change(row.number("before"), row.number("after"), better=better, same_within=row.number("same_within"))
    return [changed.ratio, float(EFFECTS.index(changed.effect))]


def _race(row, side):
    needles, *sizes = _list(row, side)
    return core.NeedleThrust(needles=int(needles), **dict(zip(NEEDLES, sizes, strict=True)))


def compare_needles(row):
    change = core.compare_needles(_race(row, "before"), _race(row, "after"))
    return _ratios(change, "static_n", "dynamic_n", "life", "life_by_size", "outside_mm", "face_mm")


def compare_shafts(row):
    torques = _numbers(row, "torque_before_nm", "torque_after_nm")
    change = core.compare_shafts(_shaft(row, "before_"), _shaft(row, "after_"), **torques)
    return _ratios(change, "stress_own_mpa", "stress_same_mpa", "torque_nm", "polar_moment_mm4", "section_mm2")


def _set_pack(row, side):
    def ring(part):
        return clutch.Annulus(
            inner_radius_mm=row.number(f"{part}_inner_radius_mm"), outer_radius_mm=row.number(f"{part}_outer_radius_mm")
        )

    spring = row.number("spring_n")
    pack = clutch.Pack(
        lining=ring("lining"),
        piston=ring("piston"),
        faces=int(row.number(f"{side}_faces")),
        return_spring_n=Limits(lower=spring, upper=spring),
    )
    return core.SetPack(pack=pack, clearance_mm=row.number(f"{side}_clearance_mm"))


def compare_packs(row):
    applied = _numbers(row, "pressure_kpa", "friction")
    change = core.compare_packs(_set_pack(row, "before"), _set_pack(row, "after"), **applied)
    return _ratios(
        change, "capacity_nm", "pressure_kpa", "friction_area_mm2", "faces", "clearance_per_face_mm", "fill_ml"
    )


def _sun(row, side):
    teeth, planets, module, helix, face = _list(row, side)
    helical = core.Helical(module_mm=module, helix_deg=helix)
    return core.HelicalSun(teeth=int(teeth), planets=int(planets), helical=helical, face_mm=face)


def compare_suns(row):
    change = core.compare_suns(_sun(row, "before"), _sun(row, "after"), torque_nm=row.number("torque_nm"))
    return _ratios(change, "unit_load_mpa", "axial_n", "module_mm", "planets")
