"""The train chapter against SymPy (exact) and NumPy (every engagement), and what Python adds to it."""

import itertools
import pickle
import tomllib
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
import sympy
import trainwright
from hypothesis import given
from hypothesis import strategies as st
from trainwright import Error, Train

DEMO = Path(trainwright.__file__).parent / "demo"
TRAINS = sorted((DEMO / "trains").glob("*.toml"))
FAMILY = (DEMO / "family.toml").read_text()
NAMES = [path.stem for path in TRAINS]


class Equations:
    """The speed equations of a record, written down here a second time and independently of the library."""

    def __init__(self, text: str):
        self.record = tomllib.loads(text)["train"]
        self.members = Train.from_toml(text).members
        self.sets = [row for one in self.record["set"] if not one.get("only") for row in self.rows(one)]

    def rows(self, one: dict) -> list[list[int]]:
        z, joins = one["teeth"], one["joins"]

        def row(**coefficients: int) -> list[int]:
            values = [0] * len(self.members)
            for gear, coefficient in coefficients.items():
                values[self.members.index(joins[gear])] += coefficient
            return values

        match one.get("kind", "simple"):
            case "simple":
                return [row(sun=z["sun"], ring=z["ring"], carrier=-z["sun"] - z["ring"])]
            case "double_pinion":
                return [row(sun=z["sun"], ring=-z["ring"], carrier=z["ring"] - z["sun"])]
            case "two_sun":
                large, small, ring = z["sun_large"], z["sun_small"], z["ring"]
                return [
                    row(sun_large=large, ring=ring, carrier=-large - ring),
                    row(sun_small=small, ring=-ring, carrier=ring - small),
                ]
            case other:
                raise AssertionError(other)

    def unit(self, name: str) -> list[int]:
        return [int(member == name) for member in self.members]

    def closed(self, elements: list[str]) -> list[list[int]]:
        joins = [self.record["element"][name]["joins"] for name in elements]
        closures = [[a - b for a, b in zip(self.unit(first), self.unit(second))] for first, second in joins]
        return [*self.sets, *closures, self.unit(self.record.get("fixed", "case"))]


def exact(value) -> Fraction:
    return Fraction(int(value.p), int(value.q))


@pytest.mark.parametrize("path", TRAINS, ids=NAMES)
def test_every_gear_is_the_null_space_of_sympy(path):
    text = path.read_text()
    equations = Equations(text)
    given, output = equations.record["input"], equations.record["output"]
    for gear in Train.from_toml(text).gears():
        rows = equations.closed(gear.closed)
        free = sympy.Matrix(rows).nullspace()
        assert gear.mobility == len(free)
        at = equations.members.index(given)
        for name, speed in gear.speeds_exact.items():
            column = equations.members.index(name)
            ratios = {exact(v[column] / v[at]) if v[at] else (None if v[column] else 0) for v in free} - {0}
            expected = None if None in ratios or len(ratios) > 1 else ratios.pop() if ratios else Fraction(0)
            assert speed == expected, (gear, name)
        assert gear.ratio_exact == 1 / gear.speeds_exact[output]

        # torques: equilibrium of every member, unit torque on the input
        unknown = [*rows, equations.unit(output)]
        system = sympy.Matrix([[row[m] for row in unknown] + [-int(name == given)] for m, name in enumerate(equations.members)])
        reduced, pivots = system.rref()
        for number, name in enumerate(gear.closed, len(equations.sets)):
            row = reduced.row(pivots.index(number)) if number in pivots else None
            alone = row is not None and all(x == 0 for j, x in enumerate(row[:-1]) if j != number)
            assert gear.shares_exact[name] == (exact(row[-1]) if alone else None), (gear, name)


def kind_by_rank(rows: np.ndarray, given: int, output: int) -> tuple[str, np.ndarray]:
    _, values, right = np.linalg.svd(rows)
    free = right[np.count_nonzero(values > 1e-9 * values[0]) :]
    ends = free[:, [given, output]]
    rank = np.linalg.matrix_rank(ends, tol=1e-9) if len(free) else 0
    if rank == 2:
        return "neutral", free
    held = np.abs(ends).max(axis=0, initial=0.0) < 1e-9
    return {(True, True): "tied up", (True, False): "input held", (False, True): "output held"}.get(tuple(held), "gear"), free


@pytest.mark.parametrize("path", TRAINS, ids=NAMES)
def test_every_engagement_is_the_null_space_of_numpy(path):
    text = path.read_text()
    train, equations = Train.from_toml(text), Equations(text)
    given, output = (equations.members.index(equations.record[end]) for end in ("input", "output"))
    for count in range(len(train.elements) + 1):
        for closed in itertools.combinations(train.elements, count):
            state = train.solve(list(closed))
            rows = np.array(equations.closed(list(closed)), dtype=float)
            kind, free = kind_by_rank(rows / np.abs(rows).max(axis=1, keepdims=True), given, output)
            assert state.kind == kind, closed
            assert state.mobility == len(free)
            if kind == "gear":
                ends = free[np.abs(free[:, output]).argmax()]
                assert state.ratio == pytest.approx(ends[given] / ends[output], rel=1e-9)


@pytest.mark.parametrize("path", TRAINS, ids=NAMES)
def test_ratios_are_as_published_but_for_the_noted_misprint(path):
    for gear in Train.from_toml(path.read_text()).gears():
        if gear.published is None:
            continue
        digits = len(gear.published.partition(".")[2])
        agrees = abs(gear.ratio - float(gear.published)) <= 0.5 * 10.0**-digits + 1e-12
        assert agrees == ("misprint" not in (gear.note or "")), gear


@given(st.integers(10, 80), st.integers(1, 80), st.permutations(["sun", "ring", "carrier"]))
def test_a_single_set_in_every_arrangement(sun, more, roles):
    given, output, held = roles
    train = Train.from_toml(f"""
        [train]
        members = ["sun", "ring", "carrier", "case"]
        input = "{given}"
        output = "{output}"
        fixed = "case"
        [[train.set]]
        id = "P1"
        teeth = {{ sun = {sun}, ring = {sun + more} }}
        joins = {{ sun = "sun", ring = "ring", carrier = "carrier" }}
        [train.element]
        B1 = {{ kind = "brake", joins = ["{held}", "case"] }}
        """)
    weights = {"sun": sun, "ring": sun + more, "carrier": -2 * sun - more}
    state = train.solve(["B1"])
    assert state.ratio_exact == Fraction(-weights[output], weights[given])
    assert 1 + state.output_torque * state.speeds[output] == pytest.approx(0.0, abs=1e-15)
    assert state.shares_exact["B1"] == Fraction(weights[held], weights[given])


def test_the_demo_family_by_variant():
    teal, heron = (Train.from_toml(FAMILY, variant=name) for name in ("teal", "heron"))
    first = {train.gears()[0].ratio_exact for train in (teal, heron)}
    assert first == {Fraction(854760, 201019), Fraction(16269580, 3819361)}
    same = [a.id for a, b in zip(teal.gears(), heron.gears()) if a.ratio_exact == b.ratio_exact]
    assert same == ["3", "5", "6", "8"]
    assert teal.state_counts() == {"gear": 10, "neutral": 16, "input held": 0, "output held": 0, "tied up": 6}
    forbidden = [state.closed for state in teal.states() if state.overspeeds(output_per_input=2.0)]
    assert forbidden == [["B2", "C1", "C2"]]


def test_the_one_way_clutch_of_the_demo_family():
    train = Train.from_toml(FAMILY)
    assert train.resolve(["B1", "C2"]).closed == ["B1", "C2", "F1"]
    assert train.resolve(["B1", "C2"], load="coast").kind == "neutral"
    assert train.resolve(["B1", "C3"]).kind == "neutral", "F1 cannot carry reverse"
    assert train.solve(["B1", "C3", "F1"]).ratio == pytest.approx(-2.9670, abs=5e-5)
    assert train.resolve(["B1", "B2", "C2"]).closed == ["B1", "B2", "C2"], "beside a closed brake it carries nothing"


def test_shares_that_statics_cannot_tell_are_none():
    train = Train.from_toml(FAMILY)
    first = train.solve(["B1", "B2", "C2", "F1"])
    assert first.shares["B2"] is first.shares["F1"] is None
    assert first.shares["B1"] == pytest.approx(2.4824, abs=5e-5)
    assert first.redundant == 1


def test_a_train_and_its_parts_in_python():
    train = Train.from_toml(FAMILY, variant="heron")
    assert pickle.loads(pickle.dumps(train)) == train
    assert train.sets == ["P1", "P2", "P3", "P4"]
    fifth = {gear.id: gear for gear in train.gears()}["5"]
    assert repr(fifth) == "<gear 5: B1 C2 C3 closed: ratio 1.3830>"
    assert abs(fifth.planet_speeds("P3")["planet_on_pin"]) == pytest.approx(7.26, abs=0.01)
    assert list(fifth.speeds) == train.members
    assert list(fifth.slips) == list(fifth.shares) == train.elements


@pytest.mark.parametrize(
    "ask",
    [
        lambda train: train.solve(["X9"]),
        lambda train: train.resolve(["B1"], load="sideways"),
        lambda train: train.solve([]).planet_speeds("P9"),
        lambda _: Train.from_toml("[train]"),
        lambda _: Train.from_toml("junk"),
        lambda _: Train.from_toml(FAMILY, variant="puce"),
        lambda _: Train.from_toml(FAMILY.replace("ring = 94", "ring = 0")),
    ],
)
def test_wrong_input_is_refused_in_words(ask):
    with pytest.raises(Error, match=r"\w+ \w+"):
        ask(Train.from_toml(FAMILY))
