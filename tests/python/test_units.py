"""Unit conversions against pint, and there and back."""

from __future__ import annotations

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from trainwright import road, units

UNITS = {
    ("in_to_mm", "mm_to_in"): ("inch", "millimeter"),
    ("thou_to_mm", "mm_to_thou"): ("thou", "millimeter"),
    ("mile_to_km", "km_to_mile"): ("mile", "kilometer"),
    ("mph_to_km_h", "km_h_to_mph"): ("mile/hour", "kilometer/hour"),
    ("lb_to_kg", "kg_to_lb"): ("pound", "kilogram"),
    ("lbf_to_n", "n_to_lbf"): ("force_pound", "newton"),
    ("lbf_ft_to_nm", "nm_to_lbf_ft"): ("force_pound*foot", "newton*meter"),
    ("psi_to_kpa", "kpa_to_psi"): ("psi", "kilopascal"),
    ("quart_to_l", "l_to_quart"): ("quart", "liter"),
    ("gallon_to_l", "l_to_gallon"): ("gallon", "liter"),
    ("in3_to_cm3", "cm3_to_in3"): ("inch**3", "centimeter**3"),
    ("hp_to_kw", "kw_to_hp"): ("horsepower", "kilowatt"),
    ("per_sqrt_lbf_ft_to_per_sqrt_nm", "per_sqrt_nm_to_per_sqrt_lbf_ft"): (
        "1/(force_pound*foot)**0.5",
        "1/(newton*meter)**0.5",
    ),
    ("f_to_k_difference", "k_to_f_difference"): ("delta_degF", "kelvin"),
    ("f_to_c", "c_to_f"): ("degF", "degC"),
}
registry = pint.UnitRegistry()


@pytest.mark.parametrize(("names", "pair"), UNITS.items(), ids=lambda item: item[0])
def test_pint_agrees(names: tuple[str, str], pair: tuple[str, str]) -> None:
    into_si, into_shop = (getattr(units, name) for name in names)
    shop, si = pair
    for value in (1.0, 17.125, 137.0):
        assert into_si(value) == pytest.approx(registry.Quantity(value, shop).to(si).magnitude, rel=1e-12)
        assert into_shop(value) == pytest.approx(registry.Quantity(value, si).to(shop).magnitude, rel=1e-12)


@pytest.mark.parametrize("names", UNITS, ids=lambda names: names[0])
@given(value=st.floats(-1e12, 1e12))
def test_there_and_back(names: tuple[str, str], value: float) -> None:
    into_si, into_shop = (getattr(units, name) for name in names)
    assert into_shop(into_si(value)) == pytest.approx(value, rel=1e-12, abs=1e-10)


def test_columns_are_converted_at_once() -> None:
    psi = np.array([0.0, 58.0, 217.6])
    assert units.psi_to_kpa(psi) == pytest.approx([units.psi_to_kpa(value) for value in psi.tolist()])
    assert units.f_to_c([32, 212]).tolist() == [0.0, 100.0]


def test_quantities_of_the_road_chapter_are_converted_by_their_suffix() -> None:
    truck = road.Combination(
        mass_kg=registry.Quantity(9920, "pound"),
        rolling_coefficient=0.01,
        drag_area_m2=registry.Quantity(40, "foot**2"),
    )
    assert truck.mass_kg == pytest.approx(units.lb_to_kg(9920))
    assert truck.drag_area_m2 == pytest.approx(40 * 0.3048**2)
    listed = road.CoastDown.from_lbf_mph(a_lbf=46.31, b_lbf_per_mph=0.0865, c_lbf_per_mph2=0.0148)
    converted = road.CoastDown(
        a_n=registry.Quantity(46.31, "force_pound"),
        b_n_per_km_h=registry.Quantity(0.0865, "force_pound/mph"),
        c_n_per_km_h2=registry.Quantity(0.0148, "force_pound/mph**2"),
    )
    assert list(converted.as_dict().values()) == pytest.approx(list(listed.as_dict().values()))


@pytest.mark.parametrize("junk", ["75", None, True])
def test_what_is_not_a_number_is_refused(junk: object) -> None:
    with pytest.raises(ValueError, match="give a number"):
        units.psi_to_kpa(junk)  # type: ignore[arg-type]
