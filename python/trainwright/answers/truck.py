"""A truck of the fleet as its record writes it."""

from __future__ import annotations

from typing import Any

from ..error import refusal
from ..record import Fleet


def truck_of(fleet: Fleet, truck_id: str) -> dict[str, Any]:
    """A truck as the fleet's record writes it."""
    trucks: dict[str, dict[str, Any]] = {entry["id"]: entry for entry in fleet.as_dict()["truck"]}
    if truck_id not in trucks:
        raise refusal("truck", f"the fleet has no truck {truck_id!r}; it has {', '.join(trucks)}")
    return trucks[truck_id]


def tires_of(fleet: Fleet, truck_id: str) -> list[str]:
    """The tire of a truck, or those that it may have."""
    truck = truck_of(fleet, truck_id)
    return [truck["tire"]] if truck["tire"] != "unknown" else list(truck["tire_candidates"])
