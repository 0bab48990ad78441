"""Interchange: the demonstration's answers, cuts and reach by scipy on random families, wrong inputs, console and pictures."""

from __future__ import annotations

import csv
import itertools
import json
import pickle
import random
import re
from pathlib import Path

import numpy as np
import pandas as pd
import polars as pl
import pytest
import trainwright
from click.testing import CliRunner
from scipy.sparse import csr_array
from scipy.sparse.csgraph import breadth_first_order, maximum_flow
from trainwright import Error, Limits, Reading
from trainwright.answers.interchange import both_ways
from trainwright.answers.order import Bench, order_sheet
from trainwright.cli import shop
from trainwright.interchange import Joint, Joints, Machining, cover_share
from trainwright.judge import Rule
from trainwright.parts import Records
from trainwright.parts.interchange import matrix_parts, set_parts
from trainwright.record import Family, load
from trainwright.report import plots
from trainwright.report.plots.interchange import BOX_HEIGHT, BOX_WIDTH, _layout
from vectors import ROOT

DEMO = Path(trainwright.__file__).parent / "demo"
RULE = Rule.stated_chances(go=0.95, no_go=0.05)


@pytest.fixture(scope="module")
def family() -> Family:
    return load(DEMO / "family.toml")


@pytest.fixture(scope="module")
def joints(family: Family) -> Joints:
    return family.joints()


# ---- the demonstration, computed independently


def expected(what: str) -> list[tuple[str, str, str, str]]:
    lines = (ROOT / "tests" / "interchange_demo.csv").read_text().splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return [(row["name"], row["first"], row["second"], row["answer"]) for row in rows if row["what"] == what]


@pytest.mark.parametrize(("part", "variant", "into", "answer"), expected("close"))
def test_the_matched_sets_of_the_demonstration(joints: Joints, part: str, variant: str, into: str, answer: str) -> None:
    closed = joints.close_set(part, variant=variant, into=into)
    notes = [f"machine:{rule}" for rule in closed.machining.values()] + [f"NEVER:{joint}" for joint in closed.unmended]
    assert f"{' '.join(sorted(closed.parts))} | {' '.join(notes)}".strip() == answer
    assert closed.possible == ("NEVER" not in answer)


@pytest.mark.parametrize(("part", "variant", "into", "answer"), expected("tokens"))
def test_the_prices_of_the_demonstration(joints: Joints, part: str, variant: str, into: str, answer: str) -> None:
    price = joints.close_set(part, variant=variant, into=into).price
    assert (price.total, price.unpriced) == (float(answer.split("|")[2]), 0)


def test_an_alias_goes_in_singly_and_a_part_without_joint_is_not_known(joints: Joints) -> None:
    ((_, _, _, aliases),) = expected("alias")
    assert joints.alias == aliases.split()
    for part, relation in [*((alias, "singly") for alias in joints.alias), ("sump", "not known"), ("extension", "not known")]:
        assert all(joints.answer(part, variant=of, into=into).relation == relation for of, into in itertools.permutations(joints.variants, 2))


def test_both_ways_are_the_decision_of_the_parts_table(joints: Joints) -> None:
    def words(part: str, one: str, other: str) -> str:
        return both_ways(joints.answer(part, variant=one, into=other), joints.answer(part, variant=other, into=one))

    assert words("output_shaft", "wren", "heron") == "singly both ways"
    assert words("reaction_sleeve", "teal", "wren") == "singly, one way only: wren into teal"
    assert words("output_shaft", "teal", "wren") == "only as a set, one way only: wren into teal"
    assert words("park_gear", "wren", "heron") == "only as a set"
    assert words("sump", "wren", "heron") == "not known"


def test_the_columns_make_a_data_frame(joints: Joints) -> None:
    frame = pl.DataFrame(joints.columns())
    assert frame.height == len(joints.parts) * 6 == len(pd.DataFrame(joints.columns()))
    worst = frame.filter((pl.col("alone") == "loose") & (pl.col("part") == "output_shaft"))
    assert set(worst["variant"]) == {"teal"}
    assert [answer.relation for answer in joints.matrix()] == frame["relation"].to_list()


def test_the_clearance_after_machining(joints: Joints) -> None:
    meeting = joints.machined("turn_support_register", first_of="wren", second_of="teal")
    assert (meeting.outcome, round(meeting.clearance_mm.lower, 3), round(meeting.clearance_mm.upper, 3)) == ("holds", 0.015, 0.075)
    with pytest.raises(Error, match="does not permit it between these variants"):
        joints.machined("turn_support_register", first_of="teal", second_of="wren")


def test_a_family_survives_pickle_and_its_parts(joints: Joints) -> None:
    again = pickle.loads(pickle.dumps(joints))
    assert again == joints and again.prices == joints.prices
    (rule,) = joints.machining
    assert pickle.loads(pickle.dumps(rule)) == rule
    assert all(pickle.loads(pickle.dumps(joint)) == joint for joint in joints.joints)


# ---- random families against scipy


def random_family(seed: int) -> tuple[Joints, dict[str, float]]:
    """Fits of a few sizes, covers and matches between ten parts; two of the fits may be machined; one part is fixed."""
    chosen = random.Random(seed)
    parts = [f"p{place}" for place in range(10)]
    joints, machining = [], []
    for place in range(chosen.randint(3, 16)):
        first, second = chosen.sample(parts, 2)
        kind = chosen.choice(["running", "cover", "match"])
        made = {variant: chosen.randint(0, 3) for variant in ("a", "b")}
        if kind == "running":
            sizes = {v: (Limits(lower=30 + n, upper=30.02 + n), Limits(lower=30.05 + n, upper=30.07 + n)) for v, n in made.items()}
            joints.append(Joint(name=f"j{place}", kind=kind, first=first, second=second, limit=0.1, sizes=sizes))
            if len(machining) < 3 and made["a"] > made["b"]:
                to_mm = sizes["b"][0]
                machining.append(Machining(name=f"m{place}", joint=f"j{place}", part=first, variants=["a"], to_fit=["b"], finish_mm=to_mm, check="", runout_limit_mm=0.02))
        elif kind == "cover":
            sizes = {v: (Limits(lower=0, upper=5 + n), Limits(lower=0, upper=5 + n + chosen.randint(0, 1))) for v, n in made.items()}
            joints.append(Joint(name=f"j{place}", kind=kind, first=first, second=second, limit=1, sizes=sizes))
        else:
            joints.append(Joint(name=f"j{place}", kind=kind, first=first, second=second, sizes={v: str(n // 2) for v, n in made.items()}))
    prices = {name: float(chosen.randint(1, 99)) for name in [*parts, *(rule.name for rule in machining)]}
    return Joints(variants=["a", "b"], parts=parts, joints=joints, machining=machining, fixed=["p9"], prices=prices), prices


def arcs(joints: Joints) -> list[tuple[str, str, str | None]]:
    """A part of a beside a part of b, where that does not hold: from, to, and the machining that mends it."""
    found = []
    for joint in joints.joints:
        for of, beside, ways in ((joint.first, joint.second, ("a", "b")), (joint.second, joint.first, ("b", "a"))):
            if joint.meet(first_of=ways[0], second_of=ways[1]).outcome != "holds":
                rule = next((rule.name for rule in joints.machining if rule.joint == joint.name and rule.part == of), None)
                found.append((of, beside, rule))
    return found


@pytest.mark.parametrize("seed", range(60))
def test_the_set_is_what_can_be_reached_and_the_cheapest_is_a_least_cut(seed: int) -> None:
    joints, prices = random_family(seed)
    place = {part: number for number, part in enumerate(joints.parts)}
    forced = arcs(joints)
    sink, never = len(place), 1_000_000
    reach = np.zeros((sink, sink), dtype=np.int32)
    cut = np.zeros((sink + 1, sink + 1), dtype=np.int32)
    for of, beside, rule in forced:
        reach[place[of], place[beside]] |= rule is None
        cut[place[of], place[beside]] += never if rule is None else int(prices[rule])
    for part, number in place.items():
        cut[number, sink] = never if part in joints.fixed else int(prices[part])
    for part in [part for part in joints.parts if part not in joints.fixed]:
        open_arcs = reach.copy()
        open_arcs[place["p9"], :] = 0  # nothing comes along behind what is never exchanged
        reached = {joints.parts[number] for number in breadth_first_order(csr_array(open_arcs), place[part], return_predecessors=False)}
        closed = joints.close_set(part, variant="a", into="b")
        assert set(closed.parts) == reached - {"p9"}
        assert closed.possible == ("p9" not in reached)
        order = joints.order(unit="b", aim="cheapest", wanted={part: "a"})
        flow = maximum_flow(csr_array(cut), place[part], sink).flow_value
        assert order.possible == (flow < never) == closed.possible
        if order.possible:
            assert order.price.total == flow
            assert order.cheapest


# ---- orders


def test_the_job_of_the_loose_shaft(joints: Joints) -> None:
    """J1 of the demonstration: both clearances with their uncertainty, and the order."""
    u_shaft, u_bore = 0.0016, 0.0042
    sizes = [
        ("output_journal_in_support", "output_shaft", Reading(value=43.988, u=u_shaft)),
        ("output_journal_in_support", "rear_support", Reading(value=44.407, u=u_bore)),
        ("output_pilot_in_carrier", "output_shaft", Reading(value=31.989, u=u_shaft)),
        ("output_pilot_in_carrier", "output_carrier", Reading(value=32.281, u=u_bore)),
    ]
    sheet = order_sheet(joints, Bench("wren", found={"output_shaft": "teal"}, measured=sizes))
    assert sheet.data["order"] == {"output_shaft": "wren"}
    found = {decision.about: decision for decision in sheet.decisions}
    journal, pilot = found["output journal in support, as found"], found["output pilot in carrier, as found"]
    assert (journal.verdict, pilot.verdict) == ("NO-GO", "NO-GO")
    assert "0.419 ± 0.0045 mm" in journal.basis and "0.292 ± 0.0045 mm" in pilot.basis
    assert found["output journal in support, as it would be"].verdict == "GO"
    assert [entry for entry in sheet.data["do_not"]] == [{"part": "output_shaft", "variant": "teal", "outcome": "loose"}]
    assert sheet.data["or_as_well"] == [{"part": "output_shaft", "variant": "heron", "machining": None}]
    assert sheet.answer.startswith("Order one wren output shaft: 210 tokens. The teal output shaft that was found goes together and runs loose")


def test_a_clearance_near_its_limit_is_not_proven(joints: Joints) -> None:
    sizes = [
        ("output_journal_in_support", "output_shaft", Reading(value=44.337, u=0.0016)),
        ("output_journal_in_support", "rear_support", Reading(value=44.472, u=0.0042)),
    ]
    order = joints.order(unit="wren", aim="fewest", measured=sizes, rule=RULE, spread="rectangular")
    assert (order.parts, order.not_proven) == ({}, ["output_journal_in_support"])
    chance = next(state.chance for state in order.joints if state.joint == "output_journal_in_support")
    clearances = np.random.default_rng(1).normal(44.472, 0.0042, 400_000) - np.random.default_rng(2).normal(44.337, 0.0016, 400_000)
    assert chance == pytest.approx(np.mean((clearances >= 0) & (clearances <= 0.14)), abs=0.003)
    sheet = order_sheet(joints, Bench("wren", measured=sizes))
    assert "Measure again before you order" in sheet.answer
    assert any(decision.settle.startswith("To settle it, measure the rear support to a standard uncertainty of 0.0026 mm") for decision in sheet.decisions)
    nearer = [(joint, part, Reading(value=size.value + 0.003 * (part == "rear_support"), u=size.u)) for joint, part, size in sizes]
    assert "measure both better" in order_sheet(joints, Bench("wren", measured=nearer)).decisions[0].settle


def test_a_superseded_bushing_by_seat_and_direction() -> None:
    """A bushing is replaced by another number: right at the rear seat both ways; at the front the new one is bored after fitting,
    with run-out checked, and the old one is barred. Common practice, no source."""

    def size(lower: float, upper: float) -> Limits:
        return Limits(lower=lower, upper=upper)

    front = Joint(name="front", kind="running", first="shaft", second="front_bushing", limit=0.12,
                  sizes={"old": (size(29.96, 29.98), size(30.02, 30.05)), "new": (size(29.84, 29.86), size(29.88, 29.91))})
    rear = Joint(name="rear", kind="running", first="shaft", second="rear_bushing", limit=0.12,
                 sizes={variant: (size(34.96, 34.98), size(35.02, 35.05)) for variant in ("old", "new")})
    bore = Machining(name="bore_after_fitting", joint="front", part="front_bushing", variants=["new"], to_fit=["old"], finish_mm=size(30.02, 30.05),
                     check="run-out of the bore to the rear bushing", runout_limit_mm=0.03)
    joints = Joints(variants=["old", "new"], joints=[front, rear], machining=[bore])
    assert joints.answer("rear_bushing", variant="new", into="old").relation == "singly"
    assert joints.answer("rear_bushing", variant="old", into="new").relation == "singly"
    there, back = (joints.answer("front_bushing", variant=of, into=into) for of, into in (("new", "old"), ("old", "new")))
    assert (there.relation, there.alone) == ("after machining", "blocked")
    assert (back.relation, back.alone) == ("only as a set", "loose")
    assert joints.close_set("front_bushing", variant="new", into="old").machining == {"front": "bore_after_fitting"}


# ---- wrong inputs


def fit(**changed: object) -> Joint:
    sizes = {"a": (Limits(lower=10, upper=10.01), Limits(lower=10.02, upper=10.03)), "b": (Limits(lower=11, upper=11.01), Limits(lower=11.02, upper=11.03))}
    given = {"name": "j", "kind": "running", "first": "s", "second": "t", "limit": 0.1, "sizes": sizes, **changed}
    return Joint(**given)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("make", "kind", "parameter", "said"),
    [
        (lambda: fit(limit=None), "MISSING", "limit", "a fit takes its greatest clearance in mm"),
        (lambda: fit(kind="match", sizes={"a": "1", "b": "2"}), "INCONSISTENT", "limit", "a match has none"),
        (lambda: fit(kind="round"), "TEXT", "kind", "give one of running, locating"),
        (lambda: fit(sizes={"a": "24T", "b": "18T"}), "INCONSISTENT", "sizes", "two Limits"),
        (lambda: fit(limit=-0.1), "OUT_OF_RANGE", "limit_mm", "-0.1"),
        (lambda: fit(kind="cover", limit=1.5), "OUT_OF_RANGE", "limit", "outside 0 to 1"),
        (lambda: Joints(variants=["a", "b"], joints=[fit(second="s")]), "INCONSISTENT", "joint", "a part meets itself"),
        (lambda: Joints(variants=["a", "b"], joints=[fit(), fit()]), "INCONSISTENT", "joints", "rename one of them"),
        (lambda: Joints(variants=["a", "c"], joints=[fit()]), "MISSING", "sizes", "has none for variant"),
        (lambda: Joints(variants=["a"], joints=[fit()]), "COUNT", "variants", "2 to 32 accepted"),
        (lambda: Joints(variants=["a", "b"], joints=[fit()], parts=[str(n) for n in range(300)]), "COUNT", "parts", "1 to 256 accepted"),
        (lambda: Joints(variants=["a", "b"], joints=[fit()], prices={"shaft": 1.0}), "MISSING", "prices", "there is no part or machining 'shaft'"),
        (lambda: cover_share(land_mm=Limits(lower=3, upper=3), surface_mm=Limits(lower=0, upper=5)), "NOT_POSITIVE", "land_mm", "above 0"),
    ],
)
def test_a_wrong_family_is_refused_with_its_mend(make: object, kind: str, parameter: str, said: str) -> None:
    with pytest.raises(Error) as caught:
        make()  # type: ignore[operator]
    assert (caught.value.kind, caught.value.parameter) == (kind, parameter)
    assert said in str(caught.value).replace('"', "'")


@pytest.mark.parametrize(
    ("ask", "kind", "parameter", "said"),
    [
        (lambda joints: joints.answer("shaft", variant="teal", into="wren"), "MISSING", "part", "output_shaft"),
        (lambda joints: joints.answer("output_shaft", variant="plover", into="wren"), "MISSING", "variant", "known are teal, wren, heron"),
        (lambda joints: joints.close_set("output_shaft", variant="wren", into="wren"), "INCONSISTENT", "from", "name another"),
        (lambda joints: joints.close_set("case", variant="teal", into="wren"), "NO_ANSWER", "part", "belongs to the unit itself"),
        (lambda joints: joints.order(unit="teal", aim="fewest", wanted={"case": "wren"}), "NO_ANSWER", "wanted", "never exchanged"),
        (lambda joints: joints.order(unit="teal", aim="best"), "TEXT", "aim", "fewest, cheapest"),
        (lambda joints: joints.order(unit="teal", aim="fewest", measured=[("park_pitch", "park_gear", Reading(value=24, u=0.1))], rule=RULE,
                                     spread="rectangular"), "INCONSISTENT", "measured", "only the shaft or bore of a fit"),
        (lambda joints: joints.order(unit="teal", aim="fewest", measured=[("case_bush", "case", Reading(value=40, u=0.1))]), "MISSING", "rule", "name the rule"),
        (lambda joints: joints.order(unit="teal", aim="fewest", measured=[("case_bush", "case", Reading(value=40, u=0.1))], rule=RULE), "MISSING",
         "spread", "say how parts that are not measured"),
    ],
)  # fmt: skip
def test_a_wrong_question_is_refused_with_its_mend(joints: Joints, ask: object, kind: str, parameter: str, said: str) -> None:
    with pytest.raises(Error) as caught:
        ask(joints)  # type: ignore[operator]
    assert (caught.value.kind, caught.value.parameter) == (kind, parameter)
    assert said in str(caught.value)


# ---- console


def run(*words: str) -> str:
    result = CliRunner().invoke(shop, words, env={"COLUMNS": "100"})
    assert result.exit_code == 0, result.output
    return " ".join(result.output.split())


def refused(*words: str) -> str:
    result = CliRunner().invoke(shop, words)
    assert result.exit_code != 0
    return " ".join((result.output or str(result.exception)).split())


FAMILY = str(DEMO / "family.toml")


def test_the_matrix_on_the_console() -> None:
    text = run("interchange", FAMILY)
    assert "output shaft never ! 3 m never ! 5 m singly singly" in text
    assert "A number: so many parts of its variant must go in together" in text
    assert "case never exchanged" in text


def test_the_console_is_readable_at_100_columns() -> None:
    output = CliRunner().invoke(shop, ["interchange", FAMILY], env={"COLUMNS": "100"}).output
    assert max(map(len, output.splitlines())) <= 100
    matrix = output.split("Part of one variant")[1].split("singly: alone")[0]
    assert len(matrix.splitlines()) <= 1 + 2 + 2 * 22


def test_one_part_on_the_console() -> None:
    text = run("interchange", FAMILY, "--part", "output_shaft", "--from", "wren", "--into", "teal")
    assert "only as a set, with the rear support and output carrier of wren, machined (turn support register): 725 tokens" in text
    assert "−0.310 to −0.250 mm, wanted at most" in text
    assert text.count("Not checked here") == 1
    assert run("interchange", FAMILY, "--part", "output_shaft", "--into", "teal").count("Not checked here") == 2
    assert "Why never" in run("interchange", FAMILY, "--part", "output_shaft", "--from", "teal", "--into", "wren")
    assert "does not mean that it goes in" in run("interchange", FAMILY, "--part", "sump", "--from", "teal", "--into", "wren")


def test_an_order_on_the_console() -> None:
    text = run("order", FAMILY, "--variant", "teal", "--want", "output_shaft=wren", "--cheapest")
    assert "Order one wren output shaft, one wren rear support and one wren output carrier; turn support register: 725 tokens." in text
    assert "no other order is cheaper" in text
    text = run("order", FAMILY, "--variant", "wren", "--found", "output_shaft=teal", "--measured", "output_rear_journal=1731.8thou",
               "--measured", "output_rear_bore=1748.3thou", "--instruments", str(DEMO / "instruments.toml"))
    assert "Order one wren output shaft" in text and "16.5 ± 0.18 thou (0.419 ± 0.0045 mm)" in text
    found = json.loads(CliRunner().invoke(shop, ["order", FAMILY, "--variant", "wren", "--found", "output_shaft=teal", "--json"]).output)
    assert found["order"] == {"output_shaft": "wren"} and found["do_not"][0]["outcome"] == "loose"


def test_wrong_words_on_the_console() -> None:
    assert "known: teal, wren, heron" in refused("interchange", FAMILY, "--part", "output_shaft", "--from", "plover")
    assert "add --part" in refused("interchange", FAMILY, "--from", "teal")
    assert "output_shaft=wren" in refused("order", FAMILY, "--variant", "teal", "--want", "output_shaft")
    assert "given twice" in refused("order", FAMILY, "--variant", "teal", "--want", "output_shaft=wren", "--want", "output_shaft=heron")
    assert "no fit has a size 'journal'; known: output_rear_journal" in refused("order", FAMILY, "--variant", "teal", "--measured", "journal=44mm±0.01mm")
    assert "give the record of the instruments" in refused("order", FAMILY, "--variant", "teal", "--measured", "output_rear_journal=44mm")


# ---- pictures


def pictures() -> dict[str, str]:
    records = Records.read([DEMO / "family.toml", DEMO / "jobs.toml"])
    parts = [*set_parts(records), *matrix_parts(records)]
    return {caption: draw(plots) for part in parts for caption, draw in part.pictures.items()}


def test_the_pictures_name_every_part_and_mark_the_set() -> None:
    drawn = pictures()
    assert len(drawn) == 3
    wren, never, whole = (re.sub(r"<[^>]+>", " ", svg) for svg in drawn.values())
    assert "breaks: machined" in wren and "breaks: nothing mends it" not in wren
    assert "breaks: nothing mends it" in never
    met = {part for joint in load(DEMO / "family.toml").joints().joints for part in (joint.first, joint.second)}
    assert len(met) == 19 and all(word in whole for part in met for word in part.split("_"))


def test_the_same_records_give_the_same_picture() -> None:
    once, again = (re.sub(r"picture-\d+-", "", "".join(pictures().values())) for _ in range(2))
    assert once == again


@pytest.mark.parametrize("seed", range(30))
def test_no_box_lies_on_another(seed: int) -> None:
    chosen = random.Random(seed)
    parts = [f"part {number}" for number in range(chosen.randint(2, 40))]
    links = [plots.Link(*chosen.sample(parts, 2), "fit") for _ in range(chosen.randint(1, 50))]
    places = _layout(parts, links)
    assert set(places) == {part for link in links for part in (link.first, link.second)}
    for (x1, y1), (x2, y2) in itertools.combinations(places.values(), 2):
        assert abs(x1 - x2) >= BOX_WIDTH or abs(y1 - y2) >= BOX_HEIGHT
