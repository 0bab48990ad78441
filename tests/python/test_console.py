"""The console command, and the quantities that people type."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from trainwright import Error, edge


@pytest.mark.parametrize(
    ("text", "suffix", "value", "u"),
    [
        ("1470", "kpa", 1470.0, 0.0),
        ("1470kPa", "kpa", 1470.0, 0.0),
        ("213 psi", "kpa", 213 * 6.894757293168361, 0.0),
        ("213±3psi", "kpa", 213 * 6.894757293168361, 3 * 6.894757293168361),
        ("75F", "c", 43 / 1.8, 0.0),
        ("75 +- 1.8 °F", "c", 43 / 1.8, 1.0),
        ("-40F", "c", -40.0, 0.0),
        ("−5.5 mm", "mm", -5.5, 0.0),
        (".5in", "mm", 12.7, 0.0),
        ('35"', "mm", 889.0, 0.0),
        ("660 N·m", "nm", 660.0, 0.0),
        ("487 lb-ft", "nm", 487 * 1.3558179483314004, 0.0),
        ("487 lbf·ft", "nm", 487 * 1.3558179483314004, 0.0),
        ("60mph", "km_h", 96.56064, 0.0),
        ("2 qt", "l", 1.892705892, 0.0),
    ],
)
def test_a_typed_quantity_is_read(text: str, suffix: str, value: float, u: float) -> None:
    reading = edge.read(text, suffix, "x")
    assert reading.value == pytest.approx(value, rel=1e-12)
    assert reading.u == pytest.approx(u, rel=1e-9)


@pytest.mark.parametrize("text", ["", "psi", "1,470kPa", "1470 furlongs", "12 13 kPa", "213C", "nan", "inf", "1e", "--3"])
def test_junk_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(Error, match="give a number and kPa or psi, for example 20kpa or 20psi") as caught:
        edge.read(text, "kpa", "gauge")
    assert (caught.value.kind, caught.value.parameter) == ("TEXT", "gauge")


@given(st.text(max_size=12), st.sampled_from(sorted(edge.UNITS)))
def test_any_text_gives_a_number_or_a_refusal(text: str, suffix: str) -> None:
    try:
        assert math.isfinite(edge.read(text, suffix, "x").value)
    except Error as error:
        assert error.parameter in ("x", "value", "u")


@given(st.floats(-1e6, 1e6), st.sampled_from(sorted(suffix for suffix, unit in edge.UNITS.items() if unit.to_shop)))
def test_units_go_there_and_back(value: float, suffix: str) -> None:
    unit = edge.UNITS[suffix]
    assert unit.from_shop and unit.to_shop
    assert unit.from_shop(unit.to_shop(value)) == pytest.approx(value, rel=1e-12, abs=1e-9)


def test_a_value_is_shown_in_both_systems() -> None:
    assert edge.show(1408.4, "kpa") == "1408 kPa (204 psi)"
    assert edge.show(24.0, "c") == "24.0 °C (75 °F)"
    assert edge.show(-0.001, "mm") == "0.00 mm (0.000 in)"
    assert edge.show(-7.82, "mm") == "−7.82 mm (−0.308 in)"
    assert edge.show(203.1, "ml") == "203 mL"
