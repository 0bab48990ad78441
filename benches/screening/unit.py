"""A unit as plain arrays, worked out from the records by other means than the library's: for the rivals of the bench and as a test oracle."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

import numpy as np
from trainwright.record import Family, Fleet


@dataclass(frozen=True)
class Unit:
    """Constants of the pass. G gears, E elements, S sets."""

    gears: list[str]
    elements: list[str]
    sets: list[str]
    ratio: np.ndarray  # [G]
    efficiency: np.ndarray  # [G]
    share: np.ndarray  # [G, E], positive, 0 where open
    drum: np.ndarray  # [G, E], drum speed over input speed
    contacts: np.ndarray  # [G, S], per turn of the input
    sun: np.ndarray  # [G, S], sun torque over input torque, positive
    area_mm2: np.ndarray  # [E]
    head_n_per_rpm2: np.ndarray  # [E]
    held_back_n: np.ndarray  # [E]
    arm_m: np.ndarray  # [E], friction included
    rated_input_nm: float
    rated_output_nm: float
    reference_nm: np.ndarray  # [S]
    reference_contacts: float
    slope: float
    output_rpm_per_km_h: float
    speed_ratio: np.ndarray
    torque_ratio: np.ndarray


def annulus(radius_mm: list[float]) -> float:
    return pi * (radius_mm[1] ** 2 - radius_mm[0] ** 2)


def head(radius_mm: list[float], surface_mm: float, density: float) -> float:
    """Force of the oil head over the square of speed: π ρ/4 [(Ro² − r0²)² − (Ri² − r0²)²] (2π/60)²."""
    ri, ro, r0 = (1e-3 * r for r in (*radius_mm, surface_mm))
    return pi * density / 4 * ((ro**2 - r0**2) ** 2 - (ri**2 - r0**2) ** 2) * (2 * pi / 60) ** 2


def torques(family: Family, variant: str, closed: list[str]) -> dict[str, float]:
    """Sun torque of each set for one of input torque, by least squares over the equilibrium of the members."""
    record = family.as_dict()["train"]
    members = record["members"]
    rows = []
    sets = in_variant(record["set"], variant)
    for one in sets:
        row = np.zeros(len(members))
        sun, ring = one["teeth"]["sun"], one["teeth"]["ring"]
        row[members.index(one["joins"]["sun"])] += sun
        row[members.index(one["joins"]["ring"])] += ring
        row[members.index(one["joins"]["carrier"])] -= sun + ring
        rows.append(row)
    for element in closed:
        row = np.zeros(len(members))
        first, second = record["element"][element]["joins"]
        row[members.index(first)], row[members.index(second)] = 1.0, -1.0
        rows.append(row)
    for fixed in (record["output"], record["fixed"]):
        row = np.zeros(len(members))
        row[members.index(fixed)] = 1.0
        rows.append(row)
    outside = np.zeros(len(members))
    outside[members.index(record["input"])] = -1.0
    factors = np.linalg.lstsq(np.array(rows).T, outside, rcond=None)[0]
    return {one["id"]: factor * one["teeth"]["sun"] for one, factor in zip(sets, factors)}


def in_variant(sets: list[dict], variant: str) -> list[dict]:
    """The sets of a variant: one that is only for it replaces the general one of the same name."""
    chosen = {}
    for one in sets:
        if one.get("only") and variant not in one["only"]:
            continue
        if one.get("only") or one["id"] not in chosen:
            chosen[one["id"]] = one
    return list(chosen.values())


def unit(family: Family, fleet: Fleet, truck: str, *, oil_density_kg_m3: float) -> Unit:
    record, trucks = family.as_dict(), fleet.as_dict()
    built = next(entry for entry in trucks["truck"] if entry["id"] == truck)
    variant, train = built["variant"], family.train(built["variant"])
    gears, seen = [], set()
    for gear in train.gears():
        if gear.ratio_exact not in seen:
            seen.add(gear.ratio_exact)
            gears.append(gear)
    elements = sorted(record["clutch"])
    sets = in_variant(record["train"]["set"], variant)
    share = np.array([[abs(gear.shares.get(element) or 0.0) for element in elements] for gear in gears])
    turns = [record["clutch"][element]["turns_with"] for element in elements]
    drum = np.array([[gear.speeds[member] for member in turns] for gear in gears])
    sun = np.array([[abs(torques(family, variant, list(gear.closed))[one["id"]]) for one in sets] for gear in gears])
    contacts = np.array(
        [[one["planets"] * abs(gear.speeds[one["joins"]["sun"]] - gear.speeds[one["joins"]["carrier"]]) for one in sets] for gear in gears]
    )
    friction = record["friction"]["static"]["best"]
    area, held, arm, heads = [], [], [], []
    for element in elements:
        clutch = record["clutch"][element]
        ri, ro = clutch["lining_radius_mm"]
        mean = 2 / 3 * (ro**3 - ri**3) / (ro**2 - ri**2)
        area.append(annulus(clutch["piston_radius_mm"]))
        held.append(clutch["return_spring_n"][1])
        arm.append(friction * 2 * clutch["plates"][variant] * mean * 1e-3)
        heads.append(0.0 if clutch["balanced"] else head(clutch["piston_radius_mm"], clutch["head_radius_mm"], oil_density_kg_m3))
    rated = record["variant"][variant]
    fatigue = record["fatigue"]
    forward = [number for number, gear in enumerate(gears) if gear.ratio > 0]
    engine = trucks["engine"][built["engine"]]
    converter = trucks["converter"][engine["converter"]]
    tire = built["tire_programmed"] or built["tire"]
    turns_per_m = 1000.0 / fleet.rolling(tire).circumference_mm.value if tire in trucks["tire"] else np.nan
    return Unit(
        gears=[gear.id for gear in gears], elements=elements, sets=[one["id"] for one in sets],
        ratio=np.array([gear.ratio for gear in gears]),
        efficiency=np.array([record["train"]["efficiency"][gear.id] for gear in gears]),
        share=share, drum=drum, contacts=contacts, sun=sun,
        area_mm2=np.array(area), head_n_per_rpm2=np.array(heads), held_back_n=np.array(held), arm_m=np.array(arm),
        rated_input_nm=rated["rated_turbine_nm"], rated_output_nm=rated["rated_output_nm"],
        reference_nm=fatigue["reference_over_rated"] * rated["rated_turbine_nm"] * sun[forward].max(axis=0),
        reference_contacts=fatigue["reference_contacts"], slope=fatigue["slope"]["gear_bending"],
        output_rpm_per_km_h=(built["axle_programmed"] or built["axle"]) * turns_per_m * 1000.0 / 60.0,
        speed_ratio=np.array(converter["speed_ratio"]), torque_ratio=np.array(converter["torque_ratio"]),
    )  # fmt: skip
