"""Runners of the vectors of criteria, launch, grip, rotating inertia and run-up."""

from runners.judge import VERDICTS
from runners.tow_load import _numbers, _reading, _rule
from runners.train import closed, train

from trainwright import tow as core
from trainwright.converter import Characteristic, EngineCurve, EngineToday
from trainwright.error import refusal
from trainwright.judge import Reading
from trainwright.road import Combination, Driveline

CRITERIA = ["0 to 30 mph", "0 to 60 mph", "40 to 60 mph", "long grade", "starts forward", "starts reverse", "grade forward", "grade reverse", "brake uphill", "brake downhill", "stop", "hitch bend"]  # fmt: skip
OUTCOMES = ["met", "not met", "not proven", "not given", "no figure"]
ENGINE = EngineCurve(speed_rpm=[800, 1100, 1400, 1800, 2200, 2600, 3000, 3400], torque_nm=[340, 520, 640, 660, 650, 615, 560, 480], max_rpm=3600)
CONVERTER = Characteristic(
    speed_ratio=[0, 0.2, 0.4, 0.6, 0.7, 0.8, 0.87, 0.93, 0.97],
    torque_ratio=[1.92, 1.72, 1.51, 1.28, 1.17, 1.06, 1, 1, 1],
    k_rpm_per_sqrt_nm=[71, 71.3, 72.2, 74.7, 77.8, 84.1, 95, 128, 196],
)
GEARS = [
    core.RunUpGear(ratio=ratio, efficiency=efficiency, output_inertia_kg_m2=inertia, lockable=ratio < 4)
    for ratio, efficiency, inertia in [(4.7, 0.96, 0.9), (2.6, 0.965, 0.35), (1.5, 0.97, 0.15), (1.0, 0.98, 0.1)]
]


def _criterion(row):
    number = int(row["criterion"])
    if not 1 <= number <= len(CRITERIA):  # Python names its criteria and refuses another word as text
        raise refusal("criterion", f"{number} is none", "OUT_OF_RANGE")
    return CRITERIA[number - 1]


def _rated(row):
    flags = {name: row[name] == "1" for name in ("dual_rear", "trailer_brakes")}
    return core.RatedFor(**flags, **_numbers(row, "gvwr_kg", "trailer_kg"))


def criterion_limits(row):
    limits = core.criterion_limits(_criterion(row), _rated(row))
    return [limits.lower, limits.upper]


def check_criterion(row):
    value, u = row.number("value"), row.number("u")
    never = value == float("inf")
    reading = None if never or value != value else Reading(value=value, u=u)
    check = core.check_criterion(_criterion(row), reading, _rated(row), _rule(row), never=never)
    return [check.limits.lower, check.limits.upper, check.chance, float(OUTCOMES.index(check.outcome))]


def _driveline(row, u):
    return Driveline(**_numbers(row, "axle_ratio", "transfer_ratio"), circumference_mm=Reading(value=row.number("circumference_mm"), u=u))


def launch(row):
    at = core.Launch(
        turbine_nm=_reading(row, "turbine_nm", "turbine_u_nm"),
        driveline=_driveline(row, row.number("circumference_u_mm")),
        mass_kg=_reading(row, "mass_kg", "mass_u_kg"),
        **_numbers(row, "gear_ratio", "gear_efficiency", "axle_efficiency", "rolling_coefficient", "break_away_coefficient"),
    )
    force = at.launch(grade_pct=row.number("grade_pct"), rule=_rule(row))
    judged = [force.budget.u, force.judgment.chance, VERDICTS[force.judgment.verdict]]
    return [force.output_nm, force.tractive_n, force.grade_n, force.rolling_n, force.left_n, *judged, force.largest_grade_pct, force.proven_grade_pct]


def grip_on_grade(row):
    sizes = _numbers(row, "driven_axle_kg", "truck_kg", "trailer_kg", "wheelbase_mm", "cg_height_mm", "hitch_height_mm")
    stance = core.Stance(**sizes, tail_up=row["tail_up"] == "1")
    grip = core.grip_on_grade(stance, **_numbers(row, "grade_pct", "tire_friction", "rolling_coefficient"))
    return [grip.normal_n, grip.grip_n, grip.needed_n, grip.largest_grade_pct]


def output_inertia_kg_m2(row):
    state = train(row["train"]).solve(closed(row))
    inertia = {f"m{member}": row.number(f"inertia_{member}") for member in range(3)}
    return [core.output_inertia_kg_m2(state, inertia)]


def equivalent_mass(row):
    mass = core.equivalent_mass(_driveline(row, 0.0), **_numbers(row, "mass_kg", "wheel_inertia_kg_m2", "output_inertia_kg_m2"))
    return [mass.wheels_kg, mass.train_kg, mass.total_kg, mass.factor]


def run_up(row):
    run = core.RunUp(
        combination=Combination(**_numbers(row, "mass_kg", "rolling_coefficient", "drag_area_m2")),
        driveline=Driveline(axle_ratio=row.number("axle_ratio"), circumference_mm=Reading(value=row.number("circumference_mm"), u=0)),
        today=EngineToday(**_numbers(row, "torque_factor", "accessory_nm")),
        **_numbers(
            row, "axle_efficiency", "air_density_kg_m3", "grade_pct", "wheel_inertia_kg_m2", "engine_inertia_kg_m2", "lowest_locked_rpm", "grip_n", "shift_s",
        ),
    )  # fmt: skip
    up = run.run_up(ENGINE, CONVERTER, GEARS, **_numbers(row, "from_km_h", "to_km_h"))
    return [float(up.reaches), up.reached_km_h, up.time_s, up.distance_m, float(up.shifts), float(up.last_gear), up.start_n, up.start_m_s2]
