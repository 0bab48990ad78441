"""Losses, assembly, failure signatures and candidate trains in Python, on the demonstration family."""

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from trainwright import Error, Reading, Train, train

DEMO = Path(train.__file__).parent / "demo"
FAMILY = (DEMO / "family.toml").read_text()


@pytest.fixture(scope="module")
def wren():
    return Train.from_toml(FAMILY, "wren")


def gear(of, name):
    return next(gear for gear in of.gears() if gear.id == name)


def test_signature_names_the_gears(wren):
    b2 = wren.signature("B2", "dead")
    assert b2.lost == ["1B", "2B", "7", "8", "R"]
    assert (b2.no_drive, b2.no_braking) == (["7", "8", "R"], ["1B", "2B"])
    assert wren.signature("C3", "stuck").tied_up == ["1B", "2B", "3"]
    assert repr(b2) == "<B2 dead: lost 1B 2B 7 8 R>"


def test_symptom_shows_the_ratio(wren):
    stuck = wren.symptom("1", "C3", "stuck")
    assert (stuck.drive, stuck.kind, stuck.ratio_exact) == ("other ratio", "gear", Fraction(65, 47))
    neutral = wren.symptom(["C2", "C3"], "B1", "stuck")
    assert neutral.drive == "drives", "neutral creeps"


def test_complaint_leads_to_the_element(wren):
    seen = [("2", "no drive"), ("4", "no drive"), ("6", "no drive"), ("1", "as commanded"), ("5", "as commanded")]
    first, *others = wren.diagnose(seen)
    assert (first.element, first.failure, first.rank) == ("C1", "dead", 1)
    assert (first.matched, first.missed, first.contradicted, first.agreed) == (3, 0, 0, 2)
    assert all(other.rank > 1 for other in others)
    odd = wren.diagnose([("1", "other ratio", "drive", Reading(value=1.3832, u=0.0002))])
    assert [(suspect.element, suspect.failure) for suspect in odd] == [("C3", "stuck")]
    assert "7" in wren.gears_that_tell_faults(("B1", "dead"), ("C2", "dead"))


def test_next_gear_says_what_each_suspect_shows(wren):
    """Lost gears of step 13: B1 1 to 5 and R, C2 1, 3, 5, 6, 7."""
    suspects = [("B1", "dead"), ("C2", "dead")]
    found = wren.next_gear(suspects, ["5"])
    assert (found.gear, found.load, found.outcomes, found.tie_ups, found.information_bit) == ("2", "drive", 2, 0, 1.0)
    assert [symptom.drive for symptom in found.shown] == ["no drive", "as commanded"]
    assert "gear 2 in drive" in repr(found) and "bit" in str(found.explain())
    everything = [gear.id for gear in wren.gears()]
    in_coast = wren.next_gear(suspects, everything)
    assert in_coast.load == "coast"
    with pytest.raises(Error, match="no gear that is left") as refused:
        wren.next_gear(suspects, [*everything, *((gear, "coast") for gear in everything)])
    assert refused.value.kind == "NO_ANSWER"


def test_a_measured_ratio_is_an_observation(wren):
    seen = wren.seen_ratio("3", Reading(value=4.252, u=0.001))
    assert seen[:3] == ("3", "other ratio", "drive")
    assert wren.diagnose([seen])[0].element == "C1"


def test_job_j7(wren):
    heron = Train.from_toml(FAMILY, "heron")
    ratio = train.counted_ratio(input_pulses=13360, output_pulses=5710, input_teeth=40, output_teeth=30)
    fits = [train.fit_ratio(ratio, gear(of, "4").ratio_exact, coverage=0.99) for of in (wren, heron)]
    assert [fit.excluded for fit in fits] == [True, False]
    assert fits[0].z == pytest.approx(-14.223, abs=0.001)
    assert wren.gears_that_tell_trains(heron) == ["1", "1B", "2", "2B", "4", "7", "R"]


@given(st.floats(0.97, 1.0), st.floats(0.97, 1.0), st.sampled_from(["drive", "coast"]))
def test_losses_balance(external, internal, load):
    of = Train.from_toml(FAMILY, "wren")
    for found in of.gears():
        losses = found.losses(external=external, internal=internal, load=load)
        assert losses.converged and not losses.self_locking
        assert losses.efficiency + sum(losses.set_loss.values()) == pytest.approx(1.0, abs=1e-12)
        assert losses.torque_ratio * (1.0 if load == "drive" else losses.efficiency**2) == pytest.approx(
            found.ratio * losses.efficiency, rel=1e-12
        )


def test_power_flow_of_reverse_circulates():
    eight = Train.from_toml((DEMO / "trains" / "four_set_eight_speed.toml").read_text())
    flow = gear(eight, "R").power_flow()
    assert flow.largest == pytest.approx(1.5275, abs=5e-5)
    for powers in flow.member_power.values():
        assert sum(powers.values()) == pytest.approx(0.0, abs=1e-12)


def test_assembly_says_what_to_mend(wren):
    assert {found.finding for found in wren.assembly().values()} == {"holds"}
    text = """
[train]
input = "sun"
output = "carrier"
fixed = "ring"
[[train.set]]
id = "P1"
teeth = { sun = 15, planet = 16, ring = 47 }
planets = 3
joins = { sun = "sun", ring = "ring", carrier = "carrier" }
"""
    failed = Train.from_toml(text).assembly()["P1"]
    assert (failed.coaxial, failed.equal_spacing, failed.equal_planets) == ("holds", "fails", [1, 2])
    assert "use 2, or the angles 0.00° 121.94° 238.06°" in str(failed)


def test_wrong_inputs_are_refused_and_named(wren):
    for call, kind in [
        (lambda: wren.symptom("9", "B1", "dead"), "MISSING"),
        (lambda: wren.symptom("1", "B9", "dead"), "MISSING"),
        (lambda: wren.symptom("1", "B1", "weak"), "TEXT"),
        (lambda: wren.next_gear([("B1", "dead")]), "COUNT"),
        (lambda: wren.next_gear([("B1", "dead"), ("C9", "dead")]), "MISSING"),
        (lambda: wren.next_gear([("B1", "dead"), ("C2", "dead")], ["9"]), "MISSING"),
        (lambda: wren.diagnose([]), "COUNT"),
        (lambda: wren.diagnose([("1", "no drive", "none")]), "INCONSISTENT"),
        (lambda: gear(wren, "1").losses(external=1.1, internal=0.99), "OUT_OF_RANGE"),
        (lambda: gear(wren, "1").losses(external=0.99, internal=0.99, load="none"), "INCONSISTENT"),
        (lambda: wren.solve([]).losses(external=0.99, internal=0.99), "NO_ANSWER"),
        (lambda: train.counted_ratio(input_pulses=0, output_pulses=1, input_teeth=1, output_teeth=1), "NOT_POSITIVE"),
        (lambda: train.fit_ratio(Reading(value=1.0, u=0.1), None, coverage=0.99), "MISSING"),
    ]:
        with pytest.raises(Error) as refusal:
            call()
        assert refusal.value.kind == kind
