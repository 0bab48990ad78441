"""Why a truck is high on the list, and what to do about it, in words."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from .. import hazard

Truck = Mapping[str, Any]
"""Numbers of one truck by the names of the table."""

OFF_SHARE = 0.03
"""A speed that differs this much from GPS speaks of another tire, axle or tooth count; wear and pressure of a tire make about 2 %."""

OFF_ROWS = 300
"""Rows that a comparison with GPS needs."""

POOR_SHARE = 0.10
"""Share of unused rows from which the data come first."""

SLIPPING_SHARE = 0.05
"""Share of the moving time in no gear's ratio that is more than shifting."""

LIFE_SHARE = 1.0

LEAST_H = 0.01
"""Hours below which something is a blip: half a minute."""

CAUTIONS = (
    hazard.caution("towing"),
    "Damage ranks trucks; it promises no life and no number of miles.",
    "A computed capacity is not a rating: the vehicle maker's ratings, its placards and local law come first.",
)


@dataclass(frozen=True)
class Finding:
    """Something that stands out."""

    stands: Callable[[Truck], bool]
    reason: Callable[[Truck], str]
    action: str


def _hours(value: float) -> str:
    if value < 1.0:
        return f"{60.0 * value:.0f} min"
    return f"{value:.1f} h" if value < 100.0 else f"{value:,.0f} h"


def _off(truck: Truck) -> bool:
    return bool(truck["gps_rows"] >= OFF_ROWS and abs(truck["gps_over_shown"] - 1.0) > OFF_SHARE)


def _off_reason(truck: Truck) -> str:
    shown = 100.0 / truck["gps_over_shown"]
    return f"shows {shown:.1f} km/h at 100 by GPS ({truck['gps_rows']:,} rows): another tire or axle than it is programmed for"


def _margin_reason(truck: Truck) -> str:
    below = "slips by its own numbers" if truck["least_margin"] < 1.0 else "little in hand"
    return f"{truck['weakest']} holds {truck['least_margin']:.2f} times what is asked, {_hours(truck['low_margin_h'])} low: {below}"


FINDINGS: tuple[Finding, ...] = (
    Finding(
        lambda truck: truck["over_rating_h"] > LEAST_H,
        lambda truck: f"{_hours(truck['over_rating_h'])} over its rating, up to {truck['greatest_use']:.2f} of it in gear {truck['greatest_use_gear']}",
        "weigh the combination and compare with the ratings on its placard; less load, a lower gear on grades, or a stronger unit",
    ),
    Finding(
        lambda truck: truck["low_margin_h"] > LEAST_H,
        _margin_reason,
        "put a gauge on the line and compare with the pressure that the gear needs; look for leaks before the clutch burns",
    ),
    Finding(_off, _off_reason, "read the size on the tires and the tag on the axle, then program the unit for what is fitted"),
    Finding(
        lambda truck: truck["hot_h"] > LEAST_H,
        lambda truck: f"{_hours(truck['hot_h'])} hot, up to {truck['hottest_c']:.0f} °C",
        "measure the cooler flow and look at the fluid",
    ),
    Finding(
        lambda truck: truck["life_used"] > LIFE_SHARE,
        lambda truck: f"used {100 * truck['life_used']:.0f} % of its fluid's life by temperature",
        "change the fluid and filter",
    ),
    Finding(
        lambda truck: truck["no_gear_share"] > SLIPPING_SHARE,
        lambda truck: f"{100 * truck['no_gear_share']:.0f} % of the moving time in no gear's ratio: slipping, or another unit than recorded",
        "compare its ratios with the record, then look for the element that slips",
    ),
    Finding(
        lambda truck: truck["unused_share"] > POOR_SHARE,
        lambda truck: f"{100 * truck['unused_share']:.0f} % of its rows cannot be used",
        "mend its logger before judging it",
    ),
)
"""What may stand out, the most pressing first."""

QUIET_REASON = "nothing stands out"
QUIET_ACTION = "none"


def in_words(truck: Truck) -> tuple[str, str]:
    """Reasons and the first action."""
    found = [finding for finding in FINDINGS if finding.stands(truck)]
    if not found:
        return QUIET_REASON, QUIET_ACTION
    return "; ".join(finding.reason(truck) for finding in found), found[0].action
