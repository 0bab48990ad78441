"""Runners of the converter chapter's vectors whose columns are not the arguments themselves."""

from pathlib import Path

import trainwright
from runners.train import closed, train
from trainwright import Limits, Reading, record, units
from trainwright import converter as core
from trainwright.judge import Rule

ENGINE = core.EngineCurve(speed_rpm=[1000, 1500, 2000], torque_nm=[330, 365, 395], max_rpm=5700)
# A converter on a public page of worked mathematics, up to 0.3.
PUBLISHED = core.Characteristic(
    speed_ratio=[0, 0.1, 0.2, 0.3],
    torque_ratio=[2.23, 2.07, 1.97, 1.84],
    k_rpm_per_sqrt_nm=[units.per_sqrt_lbf_ft_to_per_sqrt_nm(k) for k in (137.46, 137.06, 135.86, 135.66)],
)


def torque_at_nm(row):
    return [ENGINE.torque_at_nm(speed_rpm=row.number("speed_rpm"))]


def torque_ratio_at(row):
    return [PUBLISHED.torque_ratio_at(speed_ratio=row.number("speed_ratio"))]


def capacity_factor_at(row):
    return [PUBLISHED.capacity_factor_at(speed_ratio=row.number("speed_ratio"))]


def coupling_point(row):
    torque_ratio = [row.number(column) for column in ("at_stall", "at_08", "at_09")]
    return [
        core.Characteristic(
            speed_ratio=[0, 0.8, 0.9], torque_ratio=torque_ratio, k_rpm_per_sqrt_nm=[70, 84, 100]
        ).coupling_point()
    ]


FLEET = record.load(Path(trainwright.__file__).parent / "demo" / "fleet.toml")
# See the top of converter_operating_points.csv.
EVEN = core.Characteristic(speed_ratio=[0, 0.9], torque_ratio=[2, 1], k_rpm_per_sqrt_nm=[70, 70])
HUMPED = core.Characteristic(
    speed_ratio=[0, 0.2, 0.4, 0.6, 0.8, 0.9],
    torque_ratio=[2, 1.75, 1.5, 1.28, 1.06, 1],
    k_rpm_per_sqrt_nm=[80, 76, 70, 74, 90, 130],
)
ENGINES = {
    "dip": ([800, 1200, 1600, 2000], [300, 200, 600, 700], EVEN),
    "straight": ([1000, 2000], [200, 800], EVEN),
    "weak": ([800, 2000], [50, 60], EVEN),
    "strong": ([800, 2000], [900, 900], EVEN),
    "humped": ([800, 3000], [500, 450], HUMPED),
}
RULE = Rule.conformance(0.95)


def drive(row):
    name = row["engine"]
    if name in ENGINES:
        speed_rpm, torque_nm, converter = ENGINES[name]
        return core.EngineCurve(speed_rpm=speed_rpm, torque_nm=torque_nm, max_rpm=5000), converter
    return FLEET.engine_curve(name), FLEET.characteristic(FLEET.as_dict()["engine"][name]["converter"])


def at(row):
    today = core.EngineToday(torque_factor=row.number("torque_factor"), accessory_nm=row.number("accessory_nm"))
    return {"turbine_rpm": row.number("turbine_rpm"), "today": today}


def operating_points(row):
    found = core.operating_points(*drive(row), **at(row))
    speeds = [point.engine_rpm for point in found] or [0.0]
    return [float(len(found)), float(sum(point.stable for point in found)), speeds[0], speeds[-1]]


def operating_point(row):
    point = core.operating_point(*drive(row), **at(row))
    return [
        getattr(point, name)
        for name in (
            *("engine_rpm", "speed_ratio", "torque_ratio", "k_rpm_per_sqrt_nm", "impeller_nm", "turbine_nm"),
            *("impeller_kw", "turbine_kw", "heat_kw", "efficiency"),
        )
    ]


def air(row):
    return core.InletAir(**{name: row.number(name) for name in ("pressure_kpa_abs", "vapor_kpa_abs", "temp_c")})


def air_correction_j1349(row):
    return [core.air_correction_j1349(air(row))]


def in_test_range_j1349(row):
    return [float(air(row).in_test_range_j1349())]


def air_torque_factor(row):
    curve, today = (
        core.InletAir(pressure_kpa_abs=row.number(pressure), temp_c=row.number(temp))
        for pressure, temp in (("curve_kpa_abs", "curve_c"), ("pressure_kpa_abs", "temp_c"))
    )
    return [core.air_torque_factor(curve=curve, today=today)]


def reading(row, value, u):
    return Reading(value=row.number(value), u=row.number(u))


def stall_speed(row):
    inputs = core.StallInputs(
        torque_factor=reading(row, "torque_factor", "torque_factor_u"),
        accessory_nm=reading(row, "accessory_nm", "accessory_u_nm"),
        k_factor=reading(row, "k_factor", "k_factor_u"),
    )
    stall = core.stall_speed(*drive(row), inputs=inputs)
    return [stall.speed_rpm.value, stall.speed_rpm.u, stall.turbine_nm.value, stall.turbine_nm.u, *stall.budget.share]


VERDICTS = {"GO": 1.0, "NO-GO": -1.0, "NOT PROVEN": 0.0}
SIDES = {"far low": -2.0, "low": -1.0, "inside": 0.0, "high": 1.0, "far high": 2.0}


def judge_stall(row):
    inputs = core.StallInputs(
        torque_factor=Reading(value=1, u=row.number("torque_factor_u")),
        k_factor=Reading(value=1, u=row.number("k_factor_u")),
    )
    allow = row.number("allow_rpm")
    measured = core.MeasuredStall(
        speed_rpm=reading(row, "measured_rpm", "measured_u_rpm"),
        allow_rpm=Limits(lower=-allow, upper=allow),
        stator_share=0.33,
        stop_rpm=200,
        rule=RULE,
    )
    said = core.judge_stall(*drive(row), measured, inputs=inputs)
    difference, judgment = said.difference_rpm, said.judgment
    verdict, side = VERDICTS[judgment.verdict], SIDES[said.side]
    return [difference.value, difference.u, judgment.chance, verdict, side, said.torque_share, said.k_share]


def state(row):
    return train(row["train"]).solve(closed(row))


def plan_stall(row):
    plan = core.plan_stall(
        core.operating_point(*drive(row), turbine_rpm=0),
        state(row),
        ratings=core.StallRatings(
            turbine_nm=row.number("rated_turbine_nm"), output_nm=row.number("rated_output_nm"), longest_s=5
        ),
        charge=core.FluidCharge(
            volume_l=2.3, density_kg_m3=860, specific_heat_j_kg_k=2000, start_c=row.number("start_c"), most_c=150
        ),
    )
    return [
        float(getattr(plan, name))
        for name in (
            *("output_nm", "turbine_passed", "output_passed", "too_hot", "allowed", "rise_k", "permitted_s"),
            *("limit_turbine_nm", "limit_engine_nm", "limit_rpm", "limit_heat_kw", "limit_s"),
        )
    ]


def element_torques(row):
    solved = state(row)
    torques = core.element_torques(solved, turbine_nm=row.number("turbine_nm"))
    names = train(row["train"]).elements
    mask = lambda known: float(sum(1 << names.index(name) for name, nm in torques.items() if (nm is not None) == known))
    return [*(torques.get(names[place]) or 0.0 for place in (0, 3, 5)), mask(True), mask(False)]


def charge(row, start_c, most_c):
    names = ("volume_l", "density_kg_m3", "specific_heat_j_kg_k")
    return core.FluidCharge(**{name: row.number(name) for name in names}, start_c=start_c, most_c=most_c)


def rise_k(row):
    return [charge(row, 70, 150).rise_k(heat_kw=row.number("heat_kw"), time_s=row.number("time_s"))]


def heat_s(row):
    return [charge(row, row.number("start_c"), row.number("most_c")).heat_s(heat_kw=row.number("heat_kw"))]


def lockup_slip(row):
    engine, turbine = (
        Reading.quantized(row.number(name), quantum=row.number("quantum_rpm")) for name in ("engine_rpm", "turbine_rpm")
    )
    limits = core.SlipLimits(target_rpm=row.number("target_rpm"), alarm_rpm=row.number("alarm_rpm"), rule=RULE)
    slip = core.lockup_slip(engine_rpm=engine, turbine_rpm=turbine, limits=limits)
    verdicts = [VERDICTS[judged.verdict] for judged in (slip.on_target, slip.within_alarm)]
    return [slip.slip_rpm.value, slip.slip_rpm.u, *verdicts, slip.within_alarm.chance]
