"""The command about a trailer: loads, ratings, launch, park, published criteria."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from .. import edge, record
from ..answers.criteria import CRITERIA, criteria_sheet
from ..answers.launch import launch_sheet, start_of
from ..answers.park import park_sheet
from ..answers.park.case import Chosen, cases, other_gear
from ..answers.tow import FIELDS, Towed, tow_sheet, towed
from ..error import Error
from ..judge import Reading
from ..sheet import Sheet
from ..tow import AxleWeights, Coupled, Distribution, Levers, TowRatings, Trailer, axle_tires_kg
from .common import NUMBER, RECORD, Plain, Quantity, Step, answers_with_sheets, command, loaded

RATING_OPTIONS = [field for field in FIELDS if not field.startswith("tires")]


def _ratings(function: Any) -> Any:
    """An option for each rating."""
    about = {
        "gcwr_kg": "Gross combination weight rating", "gvwr_kg": "gross vehicle weight rating", "gawr_front_kg": "front gross axle weight rating",
        "gawr_rear_kg": "rear gross axle weight rating", "maker_trailer_kg": "heaviest trailer that the vehicle maker allows",
        "hitch_trailer_kg": "heaviest trailer that the hitch is rated for", "hitch_load_kg": "greatest hitch load that the hitch is rated for",
        "trailer_gross_kg": "gross rating of the trailer",
    }  # fmt: skip
    for field in reversed(RATING_OPTIONS):
        names = {"hitch_load_kg": "--hitch-rating"}.get(field, "--" + field.removesuffix("_kg").replace("_", "-"))
        function = click.option(names, field, type=Plain("kg"), help=f"{about[field].capitalize()}; the record's unless given.")(function)
    return function


class Measured(click.ParamType):  # type: ignore[type-arg,unused-ignore]
    """A measured result of a criterion: ``stop=60ft``, ``0-to-30-mph=11.8±0.2s``, ``starts-forward=5``."""

    name = "criterion=value"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """The name and its reading in the unit inside."""
        if isinstance(value, tuple):
            return value
        key, _, text = value.partition("=")
        name = key.replace("-", " ")
        if name not in CRITERIA or not text:
            self.fail(f"{value!r}: give NAME=VALUE, the name one of {', '.join(known.replace(' ', '-') for known in CRITERIA)}", param, ctx)
        suffix = CRITERIA[name][0]
        try:
            if suffix in edge.UNITS:
                return name, edge.read(text, suffix, key)
            return name, Reading.exact(float(text.removesuffix("deg")))
        except (Error, ValueError) as error:
            self.fail(str(error), param, ctx)


@command(Step.ROAD)
@click.argument("file", metavar="[FLEET]", required=False, type=RECORD)
@click.option("--truck", help="Truck of the fleet.")
@click.option("--family", "family_file", type=RECORD, help="Family of its unit: adds launch, park and the published criteria.")
@click.option("--trailer", type=Quantity("kg"), help="Mass of the trailer; the record's unless given.")
@click.option("--hitch-load", type=Quantity("kg"), help="What rests on the hitch; the record's share unless given.")
@click.option("--hitch", type=click.Choice(["ball", "king_pin"]), help="How the trailer is coupled; the record's unless given.")
@click.option("--front", type=Quantity("kg"), help="Front axle on the scale, without the trailer.")
@click.option("--rear", type=Quantity("kg"), help="Rear axle on the scale, without the trailer.")
@click.option("--wheelbase", type=Plain("mm"), help="Front axle to rear axle.")
@click.option("--overhang", type=Plain("mm"), help="Ball or king pin behind the rear axle; negative ahead of it.")
@click.option("--bars", type=Plain("nm"), help="Moment of a weight-distributing hitch on the truck, nose down.")
@click.option("--ball-to-axle", type=Plain("mm"), help="Ball to the middle of the trailer's axles, for the same.")
@_ratings
@click.option("--tire-load", type=Plain("kg"), help="Load of one tire as it is fitted; the record's unless given.")
@click.option("--rear-tires", type=int, help="Tires of the rear axle, with --tire-load: 2 or 4.")
@click.option("--passenger-tires", is_flag=True, help="Passenger tires, with --tire-load: their load is divided by 1.10.")
@click.option("--grade", type=Quantity("pct"), default="12%", show_default=True, help="Grade of launch and park.")
@click.option("--torque-u", type=Plain("pct"), help="Relative standard uncertainty of the turbine torque at the launch.")
@click.option("--tire-friction", type=NUMBER, help="Friction of tire on ground, for the grip of the driven axle.")
@click.option("--result", "measured", type=Measured(), multiple=True, help="Measured result of a published criterion; may be repeated.")
@answers_with_sheets
def tow(
    file: Path | None, truck: str | None, family_file: Path | None, trailer: Reading | None, hitch_load: Reading | None, hitch: str | None, front: Reading | None,
    rear: Reading | None, wheelbase: float | None, overhang: float | None, bars: float | None, ball_to_axle: float | None, tire_load: float | None, rear_tires: int | None,
    passenger_tires: bool, grade: Reading, torque_u: float | None, tire_friction: float | None, measured: tuple[tuple[str, Reading], ...], **ratings: float | None,
) -> list[Sheet]:  # fmt: skip
    """What a trailer puts on every axle, which rating governs, and whether the truck starts and stands on a grade with it."""
    distribution = Distribution(moment_nm=bars, ball_to_axle_mm=ball_to_axle) if bars and ball_to_axle else None
    if bool(bars) != bool(ball_to_axle):
        raise click.UsageError("--bars and --ball-to-axle belong together")
    typed = {**{field: value for field, value in ratings.items() if value}, **_tires(tire_load, rear_tires, passenger_tires)}
    fleet = loaded(file, record.Fleet) if file else None
    if fleet is None:
        if family_file:
            raise click.UsageError("--family needs a fleet file and --truck: launch and park need engine, axle and tire")
        return [tow_sheet(_typed(trailer, hitch_load, hitch, front, rear, wheelbase, overhang, distribution, typed), title="Trailer on a truck")]
    if not truck:
        raise click.UsageError(f"give --truck; the fleet has {', '.join(fleet.trucks)}")
    found = [_changed(case, trailer, hitch_load, hitch, front, rear, typed) for case in towed(fleet, truck, trailer_kg=trailer.value if trailer else None, distribution=distribution)]
    sheets = [tow_sheet(case, title=f"Trailer on {case.name}") for case in found]
    if family_file is None:
        if measured:
            raise click.UsageError("--result needs --family")
        return sheets
    family, heaviest = loaded(family_file, record.Family), found[-1]
    start = start_of(family, fleet, truck, heaviest, torque_u_rel=(torque_u or 0.0) / 100, tire_friction=tire_friction)
    sheets.append(launch_sheet(start, grade_pct=grade.value, title=f"{heaviest.name} starts on {grade.value:g} %"))
    rules = family.as_dict().get("park_rules") or {}
    chosen, loads = Chosen(rules.get("rocking_factor", 1.0)), heaviest.review.loads
    case = cases(family, fleet, truck, mass_kg=loads.combination_kg, tire=start.tire)[0]
    sheets.append(
        park_sheet(
            family, case, grade_pct=grade.value, chosen=chosen, compare_with=other_gear(family, case.gear_of), title=f"{heaviest.name} in Park on {grade.value:g} %",
            story="Parking brake first, then Park: the park lock is not a brake.", axle_load_kg=loads.rear_kg.value if tire_friction else None, tire_friction=tire_friction,
        )
    )  # fmt: skip
    sheets.append(criteria_sheet(start, dict(measured), title=f"{heaviest.name} and the published criteria"))
    return sheets


def _tires(tire_load: float | None, rear_tires: int | None, passenger: bool) -> dict[str, float]:
    if tire_load is None:
        return {}
    rear = axle_tires_kg(tire_kg=tire_load, tires=rear_tires or 2, passenger=passenger)
    return {"tires_front_kg": axle_tires_kg(tire_kg=tire_load, tires=2, passenger=passenger), "tires_rear_kg": rear}


def _typed(
    trailer: Reading | None, hitch_load: Reading | None, hitch: str | None, front: Reading | None, rear: Reading | None, wheelbase: float | None, overhang: float | None,
    distribution: Distribution | None, ratings: dict[str, float],
) -> Towed:  # fmt: skip
    """The case without a fleet."""
    if not (trailer and hitch_load and front and rear and wheelbase and overhang is not None):
        raise click.UsageError("give a fleet with --truck, or --front, --rear, --trailer, --hitch-load, --wheelbase and --overhang")
    coupled = Coupled(
        weighed=AxleWeights(front_kg=front, rear_kg=rear), trailer=Trailer(mass_kg=trailer, hitch_kg=hitch_load),
        levers=Levers(wheelbase_mm=wheelbase, overhang_mm=overhang), distribution=distribution or Distribution(),
    )  # fmt: skip
    return Towed("truck", coupled, TowRatings(**ratings), hitch or ("ball" if overhang > 0 else "king_pin"), "as typed")


def _changed(
    case: Towed, trailer: Reading | None, hitch_load: Reading | None, hitch: str | None, front: Reading | None, rear: Reading | None, ratings: dict[str, float]
) -> Towed:  # fmt: skip
    """The case of the record with what was typed in its place."""
    coupled, weighed = case.coupled, case.coupled.weighed
    mass = trailer or coupled.trailer.mass_kg
    changed = Coupled(
        weighed=AxleWeights(front_kg=front or weighed.front_kg, rear_kg=rear or weighed.rear_kg),
        trailer=Trailer(mass_kg=mass, hitch_kg=hitch_load or coupled.trailer.hitch_kg), levers=coupled.levers, distribution=coupled.distribution,
    )  # fmt: skip
    known = {field: getattr(case.ratings, field) for field in FIELDS}
    typed = any((trailer, hitch_load, front, rear, ratings))
    return Towed(case.name, changed, TowRatings(**{**known, **ratings}), hitch or case.hitch, f"{case.weighed}{', changed as typed' if typed else ''}")
