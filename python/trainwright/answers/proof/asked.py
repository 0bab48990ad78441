"""What a proof run judges a log against: as given, else the record's, else common practice by name, else our own choice; each with its source."""

from __future__ import annotations

from dataclasses import dataclass

from ... import live, practice
from ...edge import number
from ...judge import Limits, Rule
from ...record import Fleet, Fluids
from .. import RULE

SLIP_RPM = 5.0
"""Slip at the input that is too much in a gear: our own choice, printed with the answer."""
LOOKED_FOR_RPM = 1.0
"""Slip that the alarm of the monitor looks for, at most: our own choice, printed with the answer."""
RATIO_WITHIN = 0.005
"""Share by which a measured ratio may differ from the exact one: our own choice, printed with the answer."""
RATIO_U_REL = 2e-4
"""Relative standard uncertainty at which the monitor closes a window of a ratio: our own choice."""

BY_PRACTICE, OWN, GIVEN, RECORDED = "common practice, no source", "our own choice", "as given", "the record's"


@dataclass(frozen=True)
class Asked:
    """What the log is judged against."""

    limits: live.Limits
    """Of the monitor; the difference in age of two speeds is taken as the time between two rows of the log."""
    slip_rpm: float
    """Slip at the input that is too much."""
    ratio_within: float
    """Share by which a ratio may differ from the exact one."""
    flare_rpm: Limits
    """Between the two a flare is called by some and passed by others."""
    shift_s: Limits
    working_c: float
    """Fluid temperature from which the unit is at work."""
    window_c: Limits | None = None
    """Temperatures of the level check."""
    lockup_rpm: tuple[float, float] = (practice.LOCKUP_SLIP_NORMAL_RPM, practice.LOCKUP_SLIP_SUSPECT_RPM)
    """Slip that the control of the lock-up clutch aims at, and slip that is a fault."""
    pressure_u_kpa: float = 0.0
    torque_u_rel: float = 0.0
    temp_u_k: float = 0.0
    rule: Rule = RULE
    sources: tuple[tuple[str, str, str], ...] = ()
    """Label, value and source of each, for the answer."""


def asked_of(
    *, fluids: Fluids | None = None, fleet: Fleet | None = None, slip_rpm: float | None = None, ratio_within: float | None = None, flare_rpm: float | None = None,
    shift_s: Limits | None = None, cold_c: float | None = None, working_c: float | None = None, hottest_c: float | None = None,
    pressure_u_kpa: float = 0.0, torque_u_rel: float = 0.0, temp_u_k: float = 0.0, rule: Rule = RULE,
) -> Asked:  # fmt: skip
    """What a log is judged against. The window of the level check comes from the fluids, the limits of the lock-up slip from the fleet."""
    slip = SLIP_RPM if slip_rpm is None else slip_rpm
    usual = live.Limits.common_practice(slip_rpm=min(LOOKED_FOR_RPM, slip), skew_s=0.0, ratio_u_rel=RATIO_U_REL)
    changed = {name: value for name, value in (("cold_c", cold_c), ("hot_c", hottest_c)) if value is not None}
    limits = live.Limits(**{**usual.as_dict(), **changed})
    rules = (fleet.as_dict().get("converter_rules") if fleet else None) or {}
    window = (fluids.as_dict().get("fill") or {}).get("check_window_c") if fluids else None
    asked = Asked(
        limits=limits,
        slip_rpm=slip,
        ratio_within=RATIO_WITHIN if ratio_within is None else ratio_within,
        flare_rpm=Limits(lower=practice.FLARE_LOW_RPM, upper=practice.FLARE_HIGH_RPM) if flare_rpm is None else Limits(lower=flare_rpm, upper=flare_rpm),
        shift_s=shift_s or Limits(lower=practice.SHIFT_TIME_LOW_S, upper=practice.SHIFT_TIME_HIGH_S),
        working_c=practice.SUMP_NORMAL_LOW_C if working_c is None else working_c,
        window_c=Limits(lower=window[0], upper=window[1]) if window else None,
        lockup_rpm=(
            rules.get("lockup_slip_target_rpm") or practice.LOCKUP_SLIP_NORMAL_RPM, rules.get("lockup_slip_alarm_rpm") or practice.LOCKUP_SLIP_SUSPECT_RPM,
        ),
        pressure_u_kpa=pressure_u_kpa, torque_u_rel=torque_u_rel, temp_u_k=temp_u_k, rule=rule,
    )  # fmt: skip
    span = number(asked.flare_rpm.lower, 0) if flare_rpm else f"{number(asked.flare_rpm.lower, 0)} to {number(asked.flare_rpm.upper, 0)}"
    sources = (
        ("ratio", f"± {number(100 * asked.ratio_within, 2)} %", f"{OWN if ratio_within is None else GIVEN}: off the exact one"),
        ("slip", f"{number(slip, 0)} rpm", f"{OWN if slip_rpm is None else GIVEN}; the alarm looks from {number(limits.slip_rpm, 1)} rpm on, false once in {number(limits.run_length_s / 3600, 0)} h in a gear"),
        ("shift time", f"{number(asked.shift_s.lower, 1)} to {number(asked.shift_s.upper, 1)} s", f"{GIVEN if shift_s else BY_PRACTICE}: the speed change alone"),
        ("flare", f"{span} rpm", GIVEN if flare_rpm else f"{BY_PRACTICE}: GO below, NO-GO above"),
        ("tie-up", f"{number(100 * limits.dip_share, 1)} %", f"{BY_PRACTICE}: dip of the output speed"),
        ("cold", f"below {number(limits.cold_c, 0)} °C", BY_PRACTICE if cold_c is None else GIVEN),
        ("warm-up", f"{number(limits.warm_up_s, 0)} s", f"{BY_PRACTICE}: driven so long below that, a temperature that stands is its sensor's fault"),
        ("at work", f"from {number(asked.working_c, 0)} °C", BY_PRACTICE if working_c is None else GIVEN),
        ("fluid at most", f"{number(limits.hot_c, 0)} °C", BY_PRACTICE if hottest_c is None else GIVEN),
        ("lock-up slip", f"{number(asked.lockup_rpm[1], 0)} rpm", RECORDED if rules.get("lockup_slip_alarm_rpm") else BY_PRACTICE),
        *([("level check", f"{number(window[0], 0)} to {number(window[1], 0)} °C", RECORDED)] if window else []),
    )  # fmt: skip
    return Asked(**{**asked.__dict__, "sources": sources})
