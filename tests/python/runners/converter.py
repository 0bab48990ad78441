"""Runners of the converter chapter's vectors whose columns are not the arguments themselves."""

from trainwright import converter as core
from trainwright import units

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
