"""Quantities as people type and read them: in either system, and back in the unit that was typed."""

from __future__ import annotations

import doctest
import math
from decimal import Decimal

import click
import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st
from trainwright import Error, answers, edge
from trainwright.cli.common import AsTyped, Named


@pytest.mark.parametrize(
    ("text", "suffix", "value", "u"),
    [
        ("4000", "rpm", 4000.0, 0.0),
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
        ("75F±1F", "c", 43 / 1.8, 1 / 1.8),
        ("75 F ± 0.5 C", "c", 43 / 1.8, 0.5),
        ("1.7318in", "mm", 43.98772, 0.0),
        ("1731.8thou", "mm", 43.98772, 0.0),
        ("1731.8 thousandths", "mm", 43.98772, 0.0),
        ("1.7318in±0.0001in", "mm", 43.98772, 0.00254),
        ("1.7318 in +- 0.1 thou", "mm", 43.98772, 0.00254),
        ("1000±5", "rpm", 1000.0, 5.0),
        ("1000rpm±5", "rpm", 1000.0, 5.0),
    ],
)
def test_a_typed_quantity_is_read(text: str, suffix: str, value: float, u: float) -> None:
    reading = edge.read(text, suffix, "x")
    assert reading.value == pytest.approx(value, rel=1e-12)
    assert reading.u == pytest.approx(u, rel=1e-9)


@pytest.mark.parametrize("text", ["", "psi", "213", "1,470kPa", "1470 furlongs", "12 13 kPa", "213C", "nan", "inf", "1e", "--3",
                                  "213±3", "213psi±3", "213psi±-3psi", "±3psi", "213psi±", "213psi±3psi±1psi", "213psi±3mm"])  # fmt: skip
def test_junk_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(Error, match="give a number and kPa or psi, for example 20kPa or 20psi") as caught:
        edge.read(text, "kpa", "gauge")
    assert (caught.value.kind, caught.value.parameter) == ("TEXT", "gauge")


@given(st.text(max_size=12), st.sampled_from(sorted(edge.UNITS)))
def test_any_text_gives_a_number_or_a_refusal(text: str, suffix: str) -> None:
    try:
        assert math.isfinite(edge.read(text, suffix, "x").value)
    except Error as error:
        assert error.parameter in ("x", "value", "u")


@given(st.floats(-1e6, 1e6), st.sampled_from([unit for units in edge.UNITS.values() for unit in units]))
def test_units_go_there_and_back(value: float, unit: edge.Unit) -> None:
    assert unit.to_inside(unit.from_inside(value)) == pytest.approx(value, rel=1e-12, abs=1e-9)
    assert unit.difference_to_inside(unit.difference_from_inside(value)) == pytest.approx(value, rel=1e-12, abs=1e-9)


@given(st.integers(-10**9, 10**9), st.integers(0, 6), st.sampled_from([(suffix, unit) for suffix, units in edge.UNITS.items() for unit in units]))
def test_what_was_typed_comes_back_as_it_was(digits: int, decimals: int, of: tuple[str, edge.Unit]) -> None:
    """Typed in any unit, converted to the unit inside and back: every digit is there again."""
    suffix, unit = of
    text = f"{Decimal(digits).scaleb(-decimals):f}"
    typed = edge.read_typed(f"{text}{unit.sign}", suffix, "x")
    shown = edge.show_as(typed.reading, typed).split(" (")[0]
    assert shown.replace("−", "-") == f"{text if digits else text.lstrip('-')} {unit.sign}"
    assert edge.read_typed(shown, suffix, "x").reading == typed.reading


@given(st.integers(1, 10**8), st.sampled_from(["in", "thou"]))
def test_a_length_read_back_from_the_brackets_is_the_same_to_the_last_digit_shown(digits: int, sign: str) -> None:
    typed = edge.read_typed(f"{Decimal(digits).scaleb(-4 if sign == 'in' else -1):f}{sign}", "mm", "x")
    millimeters = edge.show_as(typed.reading, typed, edge.FIT).split("(")[1].rstrip(")")
    assert edge.read(millimeters, "mm", "x").value == pytest.approx(typed.reading.value, abs=0.0005 + 1e-9)


def test_a_value_is_shown_in_both_systems() -> None:
    assert edge.show(1408.4, "kpa") == "1408 kPa (204 psi)"
    assert edge.show(24.0, "c") == "24.0 °C (75 °F)"
    assert edge.show(-0.001, "mm") == "0.00 mm (0.000 in)"
    assert edge.show(-7.82, "mm") == "−7.82 mm (−0.308 in)"
    assert edge.show(203.1, "ml") == "203 mL"


@pytest.mark.parametrize(
    ("text", "suffix", "shown"),
    [
        ("1.7318in", "mm", "1.7318 in (43.988 mm)"),
        ("1731.8thou", "mm", "1731.8 thou (43.988 mm)"),
        ("43.988mm", "mm", "43.988 mm (1.7318 in)"),
        ("43.988±0.002mm", "mm", "43.988 ± 0.002 mm (1.7318 ± 0.00008 in)"),
        ("1.7318in±0.1thou", "mm", "1.7318 ± 0.0001 in (43.988 ± 0.0025 mm)"),
        ("44mm", "mm", "44 mm (1.732 in)"),
        ("75F±1F", "c", "75 ± 1 °F (23.9 ± 0.6 °C)"),
        ("75±0.9F", "c", "75.0 ± 0.9 °F (23.89 ± 0.50 °C)"),
        ("213psi", "kpa", "213 psi (1469 kPa)"),
        ("203 mL", "ml", "203 mL"),
    ],
)
def test_a_typed_quantity_is_shown_in_its_unit_first(text: str, suffix: str, shown: str) -> None:
    typed = edge.read_typed(text, suffix, "x")
    assert edge.show_as(typed.reading, typed) == shown


@pytest.mark.parametrize(
    ("like", "shown", "alone"),
    [("1.5in", "0.0017 in (0.043 mm)", "0.0017"), ("1500thou", "1.7 thou (0.043 mm)", "1.7"), ("38mm", "0.043 mm (0.0017 in)", "0.043")],
)
def test_what_follows_is_shown_in_the_typed_unit_with_the_decimals_of_a_fit(like: str, shown: str, alone: str) -> None:
    typed = edge.read_typed(like, "mm", "x")
    assert edge.show_as(0.0432, typed, edge.FIT) == shown
    assert edge.number_as(0.0432, typed, edge.FIT) == alone
    assert edge.show_as(0.0432, None, edge.FIT) == "0.043 mm (0.0017 in)" == edge.show(0.0432, "mm", edge.FIT)


def test_the_examples_in_the_docstrings() -> None:
    for module in (edge, answers):
        found = doctest.testmod(module)
        assert found.attempted and not found.failed


# ---- the types of the console


@click.command()
@click.option("--journal", type=AsTyped("mm"))
@click.option("--measured", type=Named("mm"), multiple=True)
def typed_lengths(journal: edge.Typed | None, measured: tuple[tuple[str, edge.Typed], ...]) -> None:
    """Shows what it was given."""
    for name, typed in [*([("journal", journal)] if journal else []), *measured]:
        click.echo(f"{name}: {edge.show_as(typed.reading, typed)}")


def test_lengths_typed_at_the_console_keep_their_unit() -> None:
    done = CliRunner().invoke(typed_lengths, ["--journal", "1.7318in", "--measured", "sump_depth=62.1mm", "--measured", "step = 12.5 thou"])
    assert done.output.splitlines() == ["journal: 1.7318 in (43.988 mm)", "sump_depth: 62.1 mm (2.445 in)", "step: 12.5 thou (0.318 mm)"]


@pytest.mark.parametrize(
    ("arguments", "mend"),
    [
        (("--journal", "1.7318"), "journal: 1.7318 has no unit; give a number and mm or in or thou, for example 20mm or 20in or 20thou"),
        (("--measured", "62.1mm"), "'62.1mm' is no name and quantity; write them as name=20mm"),
        (("--measured", "=62.1mm"), "write them as name=20mm"),
        (("--measured", "sump_depth=62.1"), "sump_depth: 62.1 has no unit; give a number and mm or in or thou"),
        (("--measured", "sump_depth=62.1psi"), "sump_depth: unit 'psi' is not accepted here"),
    ],
)
def test_a_length_that_cannot_be_read_is_refused_with_the_mend(arguments: tuple[str, ...], mend: str) -> None:
    done = CliRunner().invoke(typed_lengths, arguments)
    assert done.exit_code == 2
    assert mend in " ".join(done.output.replace("│", " ").split())


def test_help_shows_the_units_that_may_be_typed() -> None:
    text = CliRunner().invoke(typed_lengths, ["--help"]).output
    assert "--journal mm|in|thou" in text
    assert "--measured NAME=mm|in|thou" in text
