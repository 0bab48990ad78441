"""Losses of the gear meshes in every gear of a train, from the efficiency of a mesh that the shop states."""

from __future__ import annotations

from typing import Any

from ..edge import number
from ..error import Error
from ..sheet import Row, Table
from ..train import Gear, Losses, State, Train


def losses_table(train: Train, mesh_efficiency: float) -> tuple[Table, dict[str, dict[str, Any]]]:
    """Efficiency of every gear in drive and in coast, self-locking and circulating power; and the same as data by gear."""
    applied = {element for state in train.states(load="none") for element in state.closed}
    rows, data = [], {}
    for gear in train.gears():
        coasting = train.resolve([element for element in gear.closed if element in applied], load="coast")
        drive, drive_remark = _side(gear, mesh_efficiency, "drive")
        coast, coast_remark = _side(coasting, mesh_efficiency, "coast")
        flow = gear.power_flow()
        largest, rolling = flow.largest, max(flow.rolling_power.values(), default=0.0)
        circulating = f"power circulates, up to {number(largest, 2)} of the input's" if largest > 1 + 1e-9 else ""
        remark = "; ".join(part for part in (drive_remark, coast_remark, circulating) if part)
        torque = "" if drive is None else number(drive.torque_ratio, 4)
        rows.append(Row((gear.id, _percent(drive), torque, _percent(coast), number(rolling, 2), remark), "NOT PROVEN" if _stops(drive) or _stops(coast) else ""))
        data[gear.id] = {"drive": _data(drive), "coast": _data(coast), "largest_power": largest, "rolling_power": rolling, "remark": remark}
    table = Table(
        f"Losses of the meshes, each mesh with the stated efficiency {number(mesh_efficiency, 4)}",
        ("gear", ">drive", ">torque ratio", ">coast", ">rolling", "remark"),
        rows,
        "Drive: output power over input power. Coast: the vehicle drives the input. Rolling: most that passes the meshes of a set as "
        "its carrier sees it, per unit of input power, without losses.",
    )
    return table, data


def _side(state: State | Gear, mesh_efficiency: float, load: str) -> tuple[Losses | None, str]:
    """Losses with one side driving, and what must be said of them."""
    if state.kind != "gear":
        return None, f"no {load}: a one-way clutch overruns" if load == "coast" else f"no {load}: {state.kind}"
    try:
        found = state.losses(external=mesh_efficiency, internal=mesh_efficiency, load=load)
    except Error as error:
        if error.kind != "NO_ANSWER":
            raise
        return None, f"{load} not determined: {error}"
    if not found.converged:
        return found, f"jams in {load}"
    return found, f"self-locking: cannot {load}" if found.self_locking else ""


def _stops(side: Losses | None) -> bool:
    return side is not None and (side.self_locking or not side.converged)


def _percent(side: Losses | None) -> str:
    return "" if side is None else f"{number(100 * side.efficiency, 2)} %"


def _data(side: Losses | None) -> dict[str, Any] | None:
    if side is None:
        return None
    names = ("efficiency", "torque_ratio", "self_locking", "converged", "set_loss", "rolling_power")
    return {name: getattr(side, name) for name in names}
