"""Runners of the vectors of line contact, teeth, one-way clutches and park locks."""

from runners.judge import VERDICTS
from runners.train import KINDS, closed, train

from trainwright import hold as core
from trainwright.judge import Limits, Reading, Rule
from trainwright.road import Driveline

GEAR = ["face_mm", "tooth_root_mm", "contact_diameter_mm", "root_diameter_mm", "tip_diameter_mm"]
ROLES = ["holds", "overruns", "could hold", "cannot hold", "idle"]


def _numbers(row, *columns):
    return {column: row.number(column) for column in columns}


def _count(row, column):
    return int(row.number(column))


def _fields(answer, *names):
    return [float(getattr(answer, name)) for name in names]


def _reading(row, value, u):
    return Reading(value=row.number(value), u=row.number(u))


def _rule(row):
    return Rule.stated_chances(**_numbers(row, "go", "no_go"))


def _decided(judgment):
    return [judgment.chance, VERDICTS[judgment.verdict]]


def _body(row, which):
    return core.ContactBody(**{name: row.number(f"{which}_{name}") for name in ("radius_mm", "young_mpa", "poisson")})


def _contact(row):
    return core.LineContact(first=_body(row, "first"), second=_body(row, "second"), length_mm=row.number("length_mm"))


def pressed(row):
    names = ["effective_radius_mm", "contact_modulus_mpa", "half_width_mm", "peak_mpa", "shear_mpa", "shear_depth_mm"]
    return _fields(_contact(row).pressed(force_n=row.number("force_n")), *names)


def force_at_peak_n(row):
    return [_contact(row).force_at_peak_n(peak_mpa=row.number("peak_mpa"))]


def form_factor(row):
    return [core.form_factor(_count(row, "teeth"))]


def velocity_factor(row):
    return [core.velocity_factor(**_numbers(row, "pitch_diameter_mm", "speed_rpm"), finish=row["finish"])]


def _tooth(row):
    return core.SpurTooth(teeth=_count(row, "teeth"), **_numbers(row, "module_mm", "face_mm"))


def tooth_bending(row):
    bent = _tooth(row).tooth_bending(**_numbers(row, "force_n", "velocity_factor"))
    return _fields(bent, "form_factor", "thickness_mm", "bending_mpa", "shear_mpa")


def force_at_bending_n(row):
    return [_tooth(row).force_at_bending_n(**_numbers(row, "bending_mpa", "velocity_factor"))]


def _wedge(row):
    race, body = (
        core.ContactBody(radius_mm=row.number(f"{which}_radius_mm"), **_numbers(row, "young_mpa", "poisson"))
        for which in ("race", "body")
    )
    return core.Wedge(count=_count(row, "count"), race=race, body=body, **_numbers(row, "length_mm", "half_angle_deg"))


def wedged(row):
    load = _wedge(row).wedged(torque_nm=row.number("torque_nm"))
    pressure = _fields(load.pressure, "effective_radius_mm", "half_width_mm", "peak_mpa")
    return [*_fields(load, "tangential_n", "normal_n", "friction_needed"), *pressure]


def wedge_capacity_nm(row):
    return [_wedge(row).wedge_capacity_nm(allow_mpa=row.number("allow_mpa"))]


def _held(hold):
    return [hold.capacity_nm, hold.margin, hold.budget.u, *_decided(hold.judgment)]


def _demand(row):
    allow = _reading(row, "allow_mpa", "allow_u_mpa")
    return {"allow_mpa": allow, "geometry_u_rel": row.number("geometry_u_rel"), "rule": _rule(row)}


def wedge_hold(row):
    return _held(_wedge(row).wedge_hold(_reading(row, "need_nm", "need_u_nm"), **_demand(row)))


def locks(row):
    judged = core.locks(
        half_angle_deg=row.number("half_angle_deg"), friction=_reading(row, "friction", "friction_u"), rule=_rule(row)
    )
    return [judged.limits.lower, *_decided(judged)]


def _ratchet(row):
    counts = {name: _count(row, name) for name in ("struts", "notches", "carrying")}
    return core.Ratchet(**counts, **_numbers(row, "strut_width_mm", "strut_thickness_mm", "pitch_radius_mm", "strut_deg"))


def ratchet_index(row):
    return _fields(_ratchet(row).ratchet_index(), "backlash_deg", "positions", "together")


def strut_load(row):
    load = _ratchet(row).strut_load(torque_nm=row.number("torque_nm"))
    return _fields(load, "tangential_n", "strut_n", "separating_n", "stress_mpa")


def strut_capacity_nm(row):
    return [_ratchet(row).strut_capacity_nm(allow_mpa=row.number("allow_mpa"))]


def strut_hold(row):
    return _held(_ratchet(row).strut_hold(_reading(row, "need_nm", "need_u_nm"), **_demand(row)))


def take_up(row):
    return _fields(core.take_up(**row.numbers()), "time_s", "speed_rpm", "energy_j")


def one_way_duty(row):
    unit = train(row["train"])
    name = unit.elements[_count(row, "element")]
    duty = core.one_way_duty(unit, name, closed=closed(row), load=row["load"])
    beside = 255.0 if duty.beside is None else float(unit.elements.index(duty.beside))
    open_is_infinite = [float("inf") if value is None else value for value in (duty.share, duty.slip)]
    return [float(ROLES.index(duty.role)), beside, float(KINDS.index(duty.backwards)), *open_is_infinite]


def _line(row, u=0.0):
    circumference = Reading(value=row.number("circumference_mm"), u=u)
    return Driveline(**_numbers(row, "axle_ratio", "transfer_ratio"), circumference_mm=circumference)


def _gear(row, which=""):
    sizes = {name: row.number(f"{which}{name}") for name in GEAR}
    return core.ParkGear(teeth=_count(row, f"{which}teeth"), **sizes)


def _parked(row):
    return core.Parked(
        mass_kg=_reading(row, "mass_kg", "mass_u_kg"),
        **_numbers(row, "grade_pct", "rocking_factor"),
        driveline=_line(row, row.number("circumference_u_mm")),
    )


def park_load(row):
    load = core.park_load(_line(row), **_numbers(row, "mass_kg", "grade_pct", "rocking_factor"))
    return _fields(load, "grade_deg", "grade_n", "wheel_radius_mm", "static_nm", "torque_nm")


STRESS = ["tooth_n", "arm_mm", "bending_mpa", "shear_mpa", "von_mises_mpa"]


def tooth_stress(row):
    return _fields(_gear(row).tooth_stress(**_numbers(row, "torque_nm", "stress_factor")), *STRESS)


def stress_on_grade(row):
    given = _numbers(row, "mass_kg", "grade_pct", "rocking_factor", "stress_factor")
    return _fields(_gear(row).stress_on_grade(_line(row), **given), *STRESS)


def largest_grade_pct(row):
    return [_gear(row).largest_grade_pct(_parked(row), **_numbers(row, "allow_mpa", "stress_factor"))]


def park_hold(row):
    strength = core.ToothStrength(**_numbers(row, "yield_mpa", "stress_factor", "stress_u_rel"))
    hold = _gear(row).park_hold(_parked(row), strength, _rule(row))
    grades = _fields(hold, "largest_grade_pct", "proven_grade_pct")
    return [hold.stress.von_mises_mpa, hold.margin, hold.budget.u, *_decided(hold.judgment), *grades]


def free_roll(row):
    return _fields(_gear(row).free_roll(_parked(row)), "roll_mm", "energy_j", "speed_km_h")


def window_deg(row):
    return [_gear(row).window_deg(**_numbers(row, "space_mm", "pawl_tip_mm"))]


def compare_park_gears(row):
    gears = (_gear(row, which) for which in ("first_", "second_"))
    ratios = core.compare_park_gears(*gears, stress_factor=row.number("stress_factor"))
    return _fields(ratios, "bending_ratio", "shear_ratio", "torque_ratio", "free_roll_ratio")


def _pawl(row):
    friction = Limits(lower=row.number("least_friction"), upper=row.number("greatest_friction"))
    return core.Pawl(friction=friction, **_numbers(row, "flank_deg", "inertia_kg_m2", "spring_nm", "drop_deg"))


def ejection(row):
    out = _pawl(row).ejection(tooth_n=row.number("tooth_n"))
    return _fields(out, "least_n", "most_n", "least_share", "most_share", "friction_to_stick", "releases")


def tip_pressure(row):
    tip = core.ContactBody(**_numbers(row, "radius_mm", "young_mpa", "poisson"))
    flank = core.ContactBody(radius_mm=float("inf"), **_numbers(row, "young_mpa", "poisson"))
    contact = core.LineContact(first=tip, second=flank, length_mm=row.number("length_mm"))
    return _fields(_pawl(row).tip_pressure(contact, tooth_n=row.number("tooth_n")), "half_width_mm", "peak_mpa")


def latch(row):
    found = _pawl(row).latch(_line(row), window_deg=row.number("window_deg"))
    return _fields(found, "drop_time_s", "output_rpm", "road_km_h")


def grip_nm(row):
    return [core.grip_nm(_line(row), **_numbers(row, "axle_load_kg", "grade_pct", "tire_friction"))]


def roll_limits_49_cfr_571_114(row):
    return _fields(core.roll_limits_49_cfr_571_114(grade_pct=row.number("grade_pct")), "lower", "upper")
