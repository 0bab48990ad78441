"""Units of a fleet from its records."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from .._native.fleet import Gear, Holding, Limits, Unit
from ..duty import mesh_duty
from ..error import refusal
from ..record import Family, Fleet, Fluids
from ..train import Gear as TrainGear
from ..train import Train


def units(
    family: Family,
    fleet: Fleet,
    fluids: Fluids,
    *,
    trucks: Iterable[str] | Mapping[Any, str] | None = None,
    limits: Limits | None = None,
    fluid: str | None = None,
    oil_c: float = 90.0,
    fluid_life_h: float | None = None,
    fluid_reference_c: float | None = None,
    fluid_halving_k: float | None = None,
) -> Units:
    """One unit for each truck of a fleet record, as :func:`trainwright.fleet.screen` takes them.

    * ``trucks``: names of the record, all of them unless given; or for a larger fleet a name in the rows to the truck of the record
      that it is built like, as ``{"V00001": "T12"}``
    * ``limits``: when a row counts as locked, hot, low in margin; :meth:`Limits.common_practice` unless given
    * ``fluids``, ``fluid``: the oil whose head helps a clutch without a balance dam, at ``oil_c``; the lightest of the record unless
      named, which gives the least capacity
    * ``fluid_life_h`` at ``fluid_reference_c``, halved for every ``fluid_halving_k``: without them no fluid life is counted

    What the truck is programmed for is what its own speed goes by, so that GPS shows a wrong tire or axle. Where the record knows the
    tire only as one of several, no speed is compared with the output.
    """
    named = {name: name for name in fleet.trucks} if trucks is None else _named(trucks)
    life = {"fluid_life_h": fluid_life_h, "fluid_reference_c": fluid_reference_c, "fluid_halving_k": fluid_halving_k}
    return Units(family, fleet, fluids, named, limits or Limits.common_practice(), {"fluid": fluid, "oil_c": oil_c}, life)


class Units(dict[Any, Unit]):
    """Units by truck, which remember their records: so they travel to the workers of a cluster as the records do."""

    def __init__(
        self, family: Family, fleet: Fleet, fluids: Fluids, trucks: dict[Any, str], limits: Limits, oil: dict[str, Any], life: dict[str, Any]
    ) -> None:
        self._made_of = (family, fleet, fluids, trucks, limits, oil, life)
        super().__init__(_made(*self._made_of))

    def __reduce__(self) -> tuple[Any, ...]:
        return Units, self._made_of


def _made(
    family: Family, fleet: Fleet, fluids: Fluids, trucks: dict[Any, str], limits: Limits, oil: dict[str, Any], life: dict[str, Any]
) -> dict[Any, Unit]:
    built = {truck["id"]: truck for truck in fleet.as_dict()["truck"]}
    for like in trucks.values():
        if like not in built:
            raise refusal("trucks", f"the fleet record has no truck {like!r}; it has {', '.join(fleet.trucks)}", "TEXT")
    density = _density(fluids, **oil)
    gears = {variant: gears_of(family, variant, density) for variant in {built[like]["variant"] for like in trucks.values()}}
    made = {like: _unit(family, fleet, built[like], gears[built[like]["variant"]], limits, life) for like in set(trucks.values())}
    return {name: made[like] for name, like in trucks.items()}


def _named(trucks: Iterable[str] | Mapping[Any, str]) -> dict[Any, str]:
    return dict(trucks) if isinstance(trucks, Mapping) else {name: name for name in trucks}


def _density(fluids: Fluids, fluid: str | None, oil_c: float) -> float:
    """Of the fluid named, or the lightest."""
    names = [fluid] if fluid else list(fluids.as_dict()["fluid"])
    return min(float(fluids.fluid(name).density(temp_c=oil_c)) for name in names)


def gears_of(family: Family, variant: str, density_kg_m3: float) -> list[Gear]:
    """Gears with a ratio of their own; of two with the same ratio the first, as a row cannot tell them apart."""
    train, packs = family.train(variant), family.packs(variant)
    friction = family.static_friction.value
    lines = {name: placed.pack.capacity_line(oil_density_kg_m3=density_kg_m3) for name, placed in packs.items()}
    efficiency = family.as_dict()["train"]["efficiency"] or {}
    made: list[Gear] = []
    seen = set()
    forward = reverse = 0
    for gear in train.gears():
        if gear.ratio is None or gear.ratio_exact in seen:
            continue
        seen.add(gear.ratio_exact)
        if gear.id not in efficiency:
            raise refusal("efficiency", f"the record has no efficiency of gear {gear.id}; give train.efficiency")
        if gear.ratio > 0:
            forward += 1
        else:
            reverse += 1
        holding = [
            Holding(element=name, share=abs(share), turns=gear.speeds[packs[name].turns_with] or 0.0, line=lines[name], friction=friction)
            for name in gear.closed
            if name in packs and (share := gear.shares[name])
        ]
        contacts, torque = _meshes(train, gear)
        made.append(
            Gear(
                name=gear.id, number=forward if gear.ratio > 0 else -reverse, ratio=gear.ratio, efficiency=efficiency[gear.id],
                holding=holding, contacts=contacts, sun_torque=torque,
            )  # fmt: skip
        )
    return made


def _meshes(train: Train, gear: TrainGear) -> tuple[dict[str, float], dict[str, float]]:
    """Contacts of the sun of each set per turn of the input, and its torque per input torque."""
    contacts, torque = {}, {}
    for name in train.sets:
        sun = mesh_duty(gear, set=name).sun
        if sun is None or (sun.torque is None and sun.contacts == 0.0):
            continue
        if sun.torque is None or (sun.contacts is None and sun.torque != 0.0):
            raise refusal("gear", f"contacts or torque of set {name} cannot be told in gear {gear.id}: its damage would be open, and open is not zero", "NO_ANSWER")
        contacts[name], torque[name] = sun.contacts or 0.0, abs(sun.torque)  # without torque, contacts do no damage
    return contacts, torque


def _unit(family: Family, fleet: Fleet, truck: dict[str, Any], gears: list[Gear], limits: Limits, life: dict[str, Any]) -> Unit:
    record, trucks = family.as_dict(), fleet.as_dict()
    rated = record["variant"][truck["variant"]]
    more: dict[str, Any] = {}
    if (fatigue := record["fatigue"]) is not None:
        forward = [gear for gear in gears if gear.ratio > 0]
        sets = {name for gear in forward for name in gear.sun_torque}
        reference = {
            name: fatigue["reference_over_rated"] * rated["rated_turbine_nm"] * max(gear.sun_torque.get(name, 0.0) for gear in forward)
            for name in sorted(sets)
        }
        more |= {
            "slope": fatigue["slope"]["gear_bending"],
            "reference_contacts": fatigue["reference_contacts"],
            "reference_torque_nm": {name: torque for name, torque in reference.items() if torque > 0.0},
        }
    engine = trucks["engine"][truck["engine"]] if truck["engine"] else None
    if engine and engine["converter"]:
        converter = trucks["converter"][engine["converter"]]
        more |= {"speed_ratio": converter["speed_ratio"], "torque_ratio": converter["torque_ratio"]}
    if truck["tire_programmed"] or truck["tire"] in trucks["tire"]:
        more["output_rpm_per_km_h"] = 1.0 / fleet.programmed(truck["id"]).road_km_h(output_rpm=1.0)
    return Unit(gears=gears, rated_input_nm=rated["rated_turbine_nm"], rated_output_nm=rated["rated_output_nm"], limits=limits, **more, **life)
