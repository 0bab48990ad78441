"""What every class, function and array of the wheel has in common, shown on the judge chapter; and the docstrings."""

from __future__ import annotations

import copy
import doctest
import inspect
import pickle
import subprocess
import sys
import warnings
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
import trainwright
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp
from trainwright import Error, Limits, RangeWarning, Reading, fleet, live
from trainwright.judge import chance_inside, normal_cdf

CHAPTERS = {name: getattr(trainwright, name) for name in trainwright.__all__ if hasattr(getattr(trainwright, name), "__all__")}
PUBLIC = {f"{chapter}.{name}": getattr(module, name) for chapter, module in CHAPTERS.items() for name in module.__all__}
finite = st.floats(allow_nan=False, allow_infinity=False)
readings = st.builds(lambda value, u: Reading(value=value, u=u), finite, st.floats(0, 1e300))


# ---- classes


@given(readings)
def test_a_class_survives_repr_pickle_and_copy(reading: Reading) -> None:
    assert eval(repr(reading)) == reading
    assert pickle.loads(pickle.dumps(reading)) == reading
    assert copy.deepcopy(reading) == reading
    assert hash(copy.copy(reading)) == hash(reading)
    assert Reading(**reading.as_dict()) == reading


def test_open_limits_can_be_pasted_back() -> None:
    assert eval(repr(Limits(upper=0.14))) == Limits(upper=0.14)


def test_equality_is_by_value_and_by_class() -> None:
    assert Reading(value=1, u=2) == Reading(value=1.0, u=2.0)
    assert Reading(value=1, u=2) != Reading(value=1, u=3)
    assert Reading(value=1, u=2) != Limits(lower=1, upper=2)


def test_a_class_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        Reading(value=1, u=2).value = 3  # type: ignore[misc]


def test_physical_arguments_are_keywords() -> None:
    with pytest.raises(TypeError):
        Reading(1.0, 2.0)  # type: ignore[misc]


def test_a_notebook_shows_the_fields() -> None:
    assert "<th style=\"text-align:left\">value</th><td>1.5</td>" in Reading(value=1.5, u=0.1)._repr_html_()


@pytest.mark.parametrize("name", sorted(name for name, item in PUBLIC.items() if inspect.isclass(item)))
def test_a_class_says_where_it_lives(name: str) -> None:
    assert PUBLIC[name].__module__ == f"trainwright.{name.split('.')[0]}"


# ---- refusals


@pytest.mark.parametrize(
    ("value", "u", "kind", "parameter"),
    [
        (float("nan"), 0.1, "NOT_FINITE", "value"),
        (float("inf"), 0.1, "NOT_FINITE", "value"),
        (1.0, -0.1, "OUT_OF_RANGE", "u"),
        ("1.0", 0.1, "TEXT", "value"),
        (None, 0.1, "TEXT", "value"),
        (True, 0.1, "TEXT", "value"),
    ],
)
def test_a_refusal_names_kind_and_parameter(value: float, u: float, kind: str, parameter: str) -> None:
    with pytest.raises(Error) as caught:
        Reading(value=value, u=u)
    assert (caught.value.kind, caught.value.parameter) == (kind, parameter)
    assert str(caught.value).startswith(f"{parameter} = ")
    assert pickle.loads(pickle.dumps(caught.value)).kind == kind


def test_an_error_is_a_value_error() -> None:
    assert issubclass(Error, ValueError)
    with pytest.raises(Error, match="lower 2 is above upper 1"):
        Limits(lower=2, upper=1)


# ---- arrays


def test_scalars_give_a_float_and_arrays_an_array() -> None:
    assert type(normal_cdf(0)) is float
    assert type(normal_cdf(np.float64(0))) is float
    assert type(normal_cdf(np.array(0.0))) is float
    assert normal_cdf([0, 0]).tolist() == [0.5, 0.5]
    assert normal_cdf(np.zeros(3, dtype=np.float32)).dtype == np.float64


shapes = hnp.mutually_broadcastable_shapes(num_shapes=3, max_dims=4, max_side=5)


@given(shapes, st.data())
def test_arrays_broadcast_as_in_numpy(shapes: hnp.BroadcastableShapes, data: st.DataObject) -> None:
    elements = st.floats(-3, 3)
    value, u, upper = (data.draw(hnp.arrays(np.float64, shape, elements=elements)) for shape in shapes.input_shapes)
    got = chance_inside({"value": value, "u": abs(u)}, {"lower": -np.inf, "upper": upper})
    rows = np.broadcast(value, abs(u), upper)
    want = [chance_inside(Reading(value=v, u=s), Limits(upper=limit)) for v, s, limit in rows]
    assert np.shape(got) == shapes.result_shape
    assert np.array_equal(np.ravel(got), want)


@given(st.integers(1, 3), st.integers(-3, -1), st.booleans())
def test_views_are_read_where_they_lie(step: int, back: int, transposed: bool) -> None:
    z = np.linspace(-3, 3, 20 * 30).reshape(20, 30)[::step, ::back]
    z = z.T if transposed else z
    assert np.array_equal(normal_cdf(z), normal_cdf(z.copy()))


def test_many_rows_give_the_bits_of_one() -> None:
    z = np.linspace(-5, 5, 100_001)
    got = normal_cdf(z)
    assert all(got[row] == normal_cdf(z[row]) for row in range(0, z.size, 997))


def test_shapes_that_do_not_go_together_are_refused() -> None:
    with pytest.raises(Error, match="do not go together") as caught:
        chance_inside({"value": np.zeros(3), "u": np.zeros(4)}, Limits(upper=1))
    assert caught.value.parameter == "shape"


def test_bad_rows_are_nan_and_counted_once() -> None:
    u = np.full(10_000, 0.1)
    u[[70, 5000, 9999]] = -1.0
    with pytest.warns(RangeWarning, match="3 of 10000 rows refused; the first is row 70: u = -1") as caught:
        got = chance_inside({"value": 0.0, "u": u}, Limits(upper=1))
    assert len(caught) == 1
    assert np.flatnonzero(np.isnan(got)).tolist() == [70, 5000, 9999]


def test_missing_data_is_not_a_refusal() -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        got = chance_inside({"value": [0.0, np.nan], "u": 0.1}, Limits(upper=1))
    assert np.isnan(got).tolist() == [False, True]


def test_out_is_filled_and_returned() -> None:
    z = np.linspace(-1, 1, 6).reshape(2, 3)
    out = np.empty((2, 3))
    assert normal_cdf(z, out=out) is out
    assert np.array_equal(out, normal_cdf(z))
    assert normal_cdf(0.0, out=out) is out
    assert (out == 0.5).all()


@pytest.mark.parametrize("out", [np.empty(3), np.empty((2, 3), np.float32), np.empty((3, 2)).T, [0.0], None.__class__])
def test_a_wrong_out_is_refused(out: object) -> None:
    with pytest.raises(Error) as caught:
        normal_cdf(np.zeros((2, 3)), out=out)  # type: ignore[arg-type]
    assert caught.value.parameter == "out"


def test_out_cannot_be_an_input_or_read_only() -> None:
    z = np.zeros(3)
    with pytest.raises(Error, match="no input"):
        normal_cdf(z, out=z)
    frozen = np.zeros(3)
    frozen.flags.writeable = False
    with pytest.raises(Error, match="writable"):
        normal_cdf(z, out=frozen)
    assert normal_cdf(frozen).tolist() == [0.5] * 3


@pytest.mark.parametrize("junk", ["75", None, True, ["a"], object(), {"a": 1}, [[1, 2], [3]]])
def test_what_is_not_a_number_is_refused(junk: object) -> None:
    with pytest.raises(Error, match="give a number or an array of numbers"):
        normal_cdf(junk)  # type: ignore[arg-type]


def test_columns_name_the_missing_one() -> None:
    with pytest.raises(Error, match="u is missing"):
        chance_inside({"value": [1.0]}, Limits(upper=1))


def test_no_rows_give_no_rows() -> None:
    assert normal_cdf(np.empty((0, 3))).shape == (0, 3)


# ---- quantities of pint


def test_a_quantity_is_converted_by_the_suffix() -> None:
    pint = pytest.importorskip("pint")
    unit = pint.UnitRegistry()
    assert trainwright.units.c_to_f(unit.Quantity(75.0, "degF")) == pytest.approx(75.0)
    assert trainwright.units.c_to_f(unit.Quantity(np.array([75.0, 212.0]), "degF")).tolist() == pytest.approx([75.0, 212.0])
    with pytest.raises(pint.DimensionalityError):
        trainwright.units.c_to_f(unit.Quantity(1.0, "mm"))


# ---- documentation and types


@pytest.mark.parametrize("name", sorted(PUBLIC))
def test_every_public_item_is_documented(name: str) -> None:
    item = PUBLIC[name]
    assert inspect.getdoc(item), name
    if inspect.isclass(item) and not issubclass(item, BaseException):
        for member in (member for member in vars(item) if member[0] != "_"):
            assert inspect.getdoc(inspect.getattr_static(item, member)), f"{name}.{member}"


def docstrings() -> list[doctest.DocTest]:
    parser = doctest.DocTestParser()
    tests = []

    def collect(name: str, item: object, names: dict[str, object]) -> None:
        test = parser.get_doctest(inspect.getdoc(item) or "", dict(names), name, None, None)
        if test.examples:
            tests.append(test)
        if inspect.isclass(item):
            for member in (member for member in vars(item) if member[0] != "_"):
                collect(f"{name}.{member}", inspect.getattr_static(item, member), names)

    at_hand = {"trainwright": trainwright, "np": np, "Fraction": Fraction, **vars(trainwright)}
    for name in trainwright.__all__:
        collect(name, getattr(trainwright, name), at_hand)
    for name, item in PUBLIC.items():
        collect(name, item, {**at_hand, **vars(CHAPTERS[name.split(".")[0]])})
    return tests


@pytest.mark.parametrize("test", docstrings(), ids=lambda test: test.name)
def test_examples_in_docstrings(test: doctest.DocTest) -> None:
    report: list[str] = []
    result = doctest.DocTestRunner(optionflags=doctest.NORMALIZE_WHITESPACE).run(test, out=report.append)
    assert not result.failed, "".join(report)


def test_cards_are_complete_and_known() -> None:
    for card in trainwright.cards():
        assert card == trainwright.card(card.id)
        assert pickle.loads(pickle.dumps(card)) == card
        assert card.purpose and card.equation and card.symbols and card.range and card.locator
        assert card.source.known in ("read", "memory", "derived", "practice")
        assert card.equation in str(card)
    with pytest.raises(Error, match="no such card"):
        trainwright.card("judge.nothing")


RULES_OF_A_ROW = {
    f"duty.{rule}" for rule in ("gear_in_effect", "unlocked_torque_nm", "holds_nm", "damages", "converter_loss_kw", "faster_aging", "satellite")
}
"""Rules of the pass over rows, which Python has as one function."""
RULES_OF_A_SAMPLE = {
    f"live.{rule}"
    for rule in ("judge_slip", "last_shift", "dip_rpm", "energy_j", "lockup_settled", "wrong_teeth", "swapped", "temp_stuck")
}
"""Rules of the monitor, which Python has as one class."""


@pytest.mark.parametrize("id", [card.id for card in trainwright.cards()])
def test_a_formula_names_its_source_in_its_help(id: str) -> None:
    chapter, name = id.split(".")
    owners = [CHAPTERS[chapter], *(item for item in vars(CHAPTERS[chapter]).values() if inspect.isclass(item))]
    helps = [inspect.getdoc(getattr(owner, name)) or "" for owner in owners if hasattr(owner, name)]
    if id in RULES_OF_A_ROW:
        helps = [inspect.getdoc(fleet.Unit.row) or ""]
    if id in RULES_OF_A_SAMPLE:
        helps = [inspect.getdoc(live.Monitor) or ""]
    assert helps and any("Source: " in text for text in helps)


def run(*command: str) -> None:
    done = subprocess.run([sys.executable, "-m", *command], capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def test_stubs_match_what_is_compiled() -> None:
    """`make stubs` makes them anew."""
    pytest.importorskip("mypy")
    run("mypy.stubtest", "trainwright", "--ignore-disjoint-bases")


def test_a_typed_program_and_the_package_pass_the_strict_checker() -> None:
    pytest.importorskip("mypy")
    run("mypy", "--strict", str(Path(__file__).parent / "typed_program.py"))
    package = Path(trainwright.__file__).parent
    run("mypy", "--strict", *map(str, [*package.glob("*.py"), *(package / folder for folder in ("answers", "cli", "fleet", "parts", "report"))]))
