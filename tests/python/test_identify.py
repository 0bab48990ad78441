"""The identify chapter against brute force, sampling, the demonstration's answers, and wrong input."""

from __future__ import annotations

import itertools
import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from scipy import integrate, stats
from trainwright import Error, Limits, Reading, identify, record
from trainwright.judge import Rule

DEMO = Path(record.__file__).parent / "demo"
FAMILY = record.load(DEMO / "family.toml")
INSTRUMENTS = record.load(DEMO / "instruments.toml")
RULE = Rule.stated_chances(go=0.95, no_go=0.05)
SEEN = {"cooler_port_m18": True, "extension_bolts_8": False, "output_sensor_left": True}
MEASURED_MM = {"sump_depth": 62.1, "output_rear_journal": 43.988, "output_rear_bore": 44.407, "output_pilot_bore": 32.281}


def unit(sizes: int = 4, **changes: Any) -> identify.Identification:
    """The unit of job J1 with so many of its sizes."""
    measured_mm = dict(list(MEASURED_MM.items())[:sizes])
    return FAMILY.identify(**{"seen": SEEN, "measured_mm": measured_mm, "instruments": INSTRUMENTS, "rule": RULE, **changes})


# ---- the demonstration, computed independently for it (numpy)


@pytest.mark.parametrize(
    ("sizes", "chances", "outcome"),
    [
        (0, [0.02900708909860724, 0.9340292144006088, 0.036963696500783925], "not settled"),
        (1, [0.030028529704460415, 0.9669196352008032, 0.0030518350947363964], "one variant"),
        (2, [0.5542651033847336, 0.4443324745419402, 0.0014024220733262372], "not settled"),
        (4, [0.0009275753403062281, 0.9959290288164833, 0.0031433958432105637], "mixed"),
    ],
)
def test_the_unit_on_the_bench(sizes: int, chances: list[float], outcome: str) -> None:
    found = unit(sizes)
    assert list(found.chance.values()) == pytest.approx(chances, rel=1e-12)
    assert found.outcome == outcome
    assert found.best == max(found.chance, key=found.chance.__getitem__)


def test_only_the_output_shaft_is_foreign() -> None:
    found = unit()
    [shaft] = found.conflicts
    assert (shaft.name, shaft.origin) == ("output_shaft", "teal")
    assert shaft.finding.exchanged == pytest.approx(0.999095517821693, rel=1e-12)
    assert shaft.finding.foreign > 0.999 and found.parts["case"].finding.foreign < 0.05
    assert found.weighed.chance_mixed > 0.999 and found.weighed.ln_gap > 1000
    assert sum(shaft.origins.values()) == pytest.approx(1.0)


def test_the_next_look_after_three() -> None:
    rates = {look.look.id: look.worth.bits_per_minute for look in unit(0).next_looks}
    assert next(iter(rates)) == "sump_depth"
    assert rates["sump_depth"] == pytest.approx(0.049, abs=0.0005)
    assert rates["output_rear_journal"] == pytest.approx(0.004, abs=0.0005)
    assert not set(rates) & set(SEEN), "a look that was made tells nothing"
    assert list(rates.values()) == sorted(rates.values(), reverse=True)


def test_every_look_says_how_the_chances_moved() -> None:
    found = unit()
    assert [made.look.id for made in found.made] == [*SEEN, *MEASURED_MM]
    assert list(found.made[-1].chance.values()) == list(found.chance.values())
    assert found.made[4].chance["wren"] < found.made[3].chance["wren"] / 2, "the journal speaks against wren"


# ---- brute force and sampling


def likelihood(look: identify.Look, found: bool | float) -> np.ndarray:
    """With scipy, of a mark or a size in each variant."""
    if look.chance is not None:
        chance = np.array(list(look.chance.values()))
        return chance if found else 1 - chance
    lower, upper = (np.array([getattr(limits, side) for limits in look.size_mm.values()]) for side in ("lower", "upper"))
    cdf = stats.norm(scale=look.u_mm).cdf
    return (cdf(found - lower) - cdf(found - upper)) / (upper - lower)


def hypotheses(looks: dict[str, identify.Look], found: dict[str, bool | float]) -> dict[tuple[int, ...], float]:
    """Weight of every variant of the unit with every origin of every part that was looked at (None: not exchanged)."""
    prior = np.array(list(FAMILY.as_dict()["prior"].values()))
    by_part: dict[str, np.ndarray] = {}
    exchanged: dict[str, float] = {}
    for id, value in found.items():
        part = looks[id].part
        by_part[part] = by_part.get(part, np.ones(len(prior))) * likelihood(looks[id], value)
        exchanged[part] = looks[id].exchanged
    weights = {}
    for hypothesis in itertools.product(range(len(prior)), *([None, *range(len(prior))] for _ in by_part)):
        variant, *origins = hypothesis
        weight = prior[variant]
        for (part, row), origin in zip(by_part.items(), origins):
            s = exchanged[part]
            weight *= (1 - s) * row[variant] if origin is None else s * prior[origin] * row[origin]
        weights[hypothesis] = weight
    return weights


@pytest.mark.parametrize("sizes", range(5))
def test_against_every_exchange_hypothesis(sizes: int) -> None:
    found = unit(sizes)
    looks = {look.id: look for look in FAMILY.looks(instruments=INSTRUMENTS)}
    weights = hypotheses(looks, SEEN | dict(list(MEASURED_MM.items())[:sizes]))
    total = sum(weights.values())
    for place, chance in enumerate(found.chance.values()):
        assert chance == pytest.approx(sum(w for h, w in weights.items() if h[0] == place) / total, rel=1e-9)
    unmixed = sum(w for h, w in weights.items() if all(origin in (None, h[0]) for origin in h[1:]))
    assert found.weighed.chance_mixed == pytest.approx(1 - unmixed / total, abs=1e-12)
    assert found.weighed.ln_evidence == pytest.approx(np.log(total), rel=1e-9)
    for nth, part in enumerate(found.parts.values(), start=1):
        exchanged = sum(w for h, w in weights.items() if h[nth] is not None)
        foreign = sum(w for h, w in weights.items() if h[nth] not in (None, h[0]))
        assert part.finding.exchanged == pytest.approx(exchanged / total, rel=1e-9)
        assert part.finding.foreign == pytest.approx(foreign / total, rel=1e-9, abs=1e-12)
        for place, chance in enumerate(part.origins.values()):
            came = sum(w for h, w in weights.items() if (h[0] if h[nth] is None else h[nth]) == place)
            assert chance == pytest.approx(came / total, rel=1e-9, abs=1e-12)


def entropy_bits(chances: np.ndarray) -> np.ndarray:
    return -np.sum(np.where(chances > 0, chances * np.log2(np.where(chances > 0, chances, 1)), 0), axis=-1)


def test_the_worth_of_a_look_against_sampling() -> None:
    """Units drawn from the model, looked at three times; what the sump then tells is the drop of entropy, on average."""
    random = np.random.default_rng(20)
    looks = {look.id: look for look in FAMILY.looks(instruments=INSTRUMENTS)}
    sump = looks["sump_depth"]
    before = unit(0)
    p = np.array(list(before.chance.values()))
    size_mm = list(sump.size_mm.values())
    prior = np.array(list(before.prior.values()))
    count = 400_000
    variant = random.choice(3, count, p=p)
    origin = np.where(random.random(count) < sump.exchanged, random.choice(3, count, p=prior), variant)
    lower, upper = (np.array([getattr(limits, side) for limits in size_mm]) for side in ("lower", "upper"))
    x = random.uniform(lower[origin], upper[origin]) + random.normal(0, sump.u_mm, count)
    reading = {"value": x[:, None], "u": sump.u_mm}
    rows = np.exp(identify.ln_density(reading_mm=reading, size_mm={"lower": lower, "upper": upper}))
    mixed = rows @ prior
    after = p * ((1 - sump.exchanged) * rows + sump.exchanged * mixed[:, None])
    after /= after.sum(axis=1, keepdims=True)
    worth = next(look.worth for look in before.next_looks if look.look.id == "sump_depth")
    drop = before.weighed.entropy_bits - entropy_bits(after)
    assert worth.bits == pytest.approx(drop.mean(), abs=4 * drop.std() / count**0.5)
    settled = (after.max(axis=1) >= RULE.go).mean()
    assert worth.settles == pytest.approx(settled, abs=4 * (settled * (1 - settled) / count) ** 0.5)


def test_the_worth_of_a_size_against_quadrature() -> None:
    """Overlapping limits, a coarse instrument and an exchanged part, with scipy.integrate."""
    prior, s, u = np.array([0.5, 0.3, 0.2]), 0.15, 0.3
    lower, upper = np.array([10.0, 10.8, 11.1]), np.array([11.0, 11.9, 11.4])

    def integrand(x: float) -> float:
        g = (stats.norm.cdf((x - lower) / u) - stats.norm.cdf((x - upper) / u)) / (upper - lower)
        f = (1 - s) * g + s * (prior @ g)
        return float(np.sum(prior * f * np.log2(f / (prior @ f))))

    want, _ = integrate.quad(integrand, 8.0, 14.0, points=[*lower, *upper], limit=400, epsabs=1e-12)
    made = identify.weigh(prior=prior, exchanged=[s], ln_likelihood=np.zeros((1, 3)))
    sizes = [Limits(lower=a, upper=b) for a, b in zip(lower, upper)]
    assert made.size_worth(0, size_mm=sizes, u_mm=u, minutes=1, rule=RULE).bits == pytest.approx(want, rel=1e-9)


# ---- arrays without a record


def test_arrays_give_what_the_record_gives() -> None:
    looks = {look.id: look for look in FAMILY.looks(instruments=INSTRUMENTS)}
    parts = list(dict.fromkeys(look.part for look in looks.values()))
    rows, part = [], []
    for id, found in (SEEN | MEASURED_MM).items():
        look = looks[id]
        if look.chance is not None:
            rows.append(identify.ln_seen(list(look.chance.values()), seen=found))
        else:
            columns = {side: [getattr(limits, side) for limits in look.size_mm.values()] for side in ("lower", "upper")}
            rows.append(identify.ln_density(reading_mm=Reading(value=found, u=look.u_mm), size_mm=columns))
        part.append(parts.index(look.part))
    exchanged = {look.part: look.exchanged for look in looks.values()}
    prior = list(unit().prior.values())
    made = identify.weigh(prior=prior, exchanged=[exchanged[name] for name in parts], ln_likelihood=rows, part=part)
    assert made.chance.tolist() == list(unit().chance.values())
    assert made.conclude(RULE).outcome == "mixed"
    assert made.part(parts.index("output_shaft")) == unit().parts["output_shaft"].finding


def test_arrays_that_do_not_go_together_are_refused() -> None:
    one = {"prior": [0.5, 0.5], "exchanged": [0.1]}
    for changes, message in [
        ({"ln_likelihood": np.zeros((1, 3))}, "3 columns, and the prior has 2 variants"),
        ({"ln_likelihood": np.zeros((2, 2)), "part": [0]}, "1 given for 2 looks"),
        ({"ln_likelihood": np.zeros((1, 2)), "part": [1]}, "exchanged has 1 parts, counted from 0"),
        ({"ln_likelihood": np.zeros((1, 2)), "prior": [0.5, 0.6]}, "do not sum to 1"),
        ({"ln_likelihood": [[np.nan, 0.0]]}, "ln_likelihood = NaN"),
    ]:
        with pytest.raises(Error, match=message):
            identify.weigh(**{**one, **changes})
    made = identify.weigh(**one, ln_likelihood=np.zeros((0, 2)))
    with pytest.raises(Error, match="part = 7"):
        made.part(7)


# ---- wrong and odd input, by the names of the record


@pytest.mark.parametrize(
    ("found", "place", "message"),
    [
        ({"seen": {"cooler_port_m19": True}}, "seen.cooler_port_m19", "did you mean cooler_port_m18?"),
        ({"seen": {"sump_depth": True}}, "seen.sump_depth", "this is a size, not a mark"),
        ({"measured_mm": {"cooler_port_m18": 18.0}}, "measured_mm.cooler_port_m18", "this is a mark, not a size"),
        ({"measured_mm": {"sump_depth": Reading(value=62.0, u=0.0)}}, "measured_mm.sump_depth", "u = 0: must be above 0"),
        ({"measured_mm": {"output_rear_journal": 4.3988}}, "measured_mm.output_rear_journal", "reaches from 25 to 75 mm"),
        ({"measured_mm": {"sump_depth": 62.0}, "instruments": None}, "measured_mm.sump_depth", "steel_rule is not known"),
        ({"prior": {"teal": 0.5, "wren": 0.5}}, "prior.heron", "give one chance for each variant"),
        ({"prior": {"teal": 0.5, "wren": 0.4, "heron": 0.2}}, "prior", "the chances sum to 1.1, not 1"),
        ({"prior": {"teal": 0.5, "wren": 0.4, "herom": 0.1}}, "prior.herom", "did you mean heron?"),
        ({"rule": Rule.simple_acceptance()}, "go", "outside 0.5 to 1"),
    ],
)
def test_a_refusal_names_the_place_and_the_mend(found: dict[str, Any], place: str, message: str) -> None:
    with pytest.raises(Error) as caught:
        FAMILY.identify(**{"instruments": INSTRUMENTS, "rule": RULE, **found})
    assert caught.value.problems[0].key == place
    assert message in str(caught.value)


def test_marks_that_no_variant_explains_name_the_part() -> None:
    text = FAMILY.to_toml().replace("teal = 0.01\nwren = 0.65\nheron = 0.99", "teal = 0.0\nwren = 0.0\nheron = 1.0")
    changed = record.Family.from_toml(text.replace("teal = 0.01\nwren = 0.97\nheron = 0.99", "teal = 1.0\nwren = 1.0\nheron = 0.0"))
    with pytest.raises(Error, match="(?s)seen.output_sensor_left.*together with cooler_port_m18.*look at the part case again"):
        changed.identify(seen={"cooler_port_m18": True, "output_sensor_left": True}, rule=RULE)


def test_a_reading_that_fits_no_variant_settles_nothing() -> None:
    worn = unit(1, measured_mm={"sump_depth": 62.1, "output_rear_journal": 44.295})
    assert worn.outcome == "unexplained"
    [sump, journal] = worn.made[-2:]
    assert not sump.unexplained and journal.unexplained
    assert (journal.nearest, round(journal.outside_mm, 3)) == ("wren", -0.03)
    assert all(np.isfinite(list(worn.chance.values())))


def test_a_reading_outside_the_instrument_is_flagged_where_the_record_asks_for_it() -> None:
    text = INSTRUMENTS.to_toml()
    narrow = record.Instruments.from_toml(text.replace("range_mm = [18.0, 130.0]", "range_mm = [35.0, 130.0]"))
    found = unit(instruments=narrow)
    assert [made.out_of_range for made in found.made] == [False] * 6 + [True]
    assert found.chance == unit().chance
    with pytest.raises(Error, match="reaches from 35 to 130 mm"):
        unit(measured_mm={"output_rear_bore": 34.0}, instruments=narrow)


def test_the_shops_own_prior_is_used() -> None:
    counts = dict(zip(FAMILY.variants, identify.prior_of_counts([2, 3, 95])))
    assert sum(counts.values()) == pytest.approx(1.0)
    mostly_heron = unit(0, prior=counts)
    assert mostly_heron.chance["heron"] > unit(0).chance["heron"]
    assert mostly_heron.prior == pytest.approx(counts)


def test_nothing_found_leaves_the_prior() -> None:
    found = FAMILY.identify(instruments=INSTRUMENTS, rule=RULE)
    assert found.chance == pytest.approx(found.prior)
    assert (found.outcome, found.parts, found.made) == ("not settled", {}, [])
    assert len(found.next_looks) == 10


def test_without_instruments_only_marks_are_valued() -> None:
    worths = {look.look.id: look.worth for look in unit(0, instruments=None).next_looks}
    assert worths["sump_depth"] is None and worths["input_splines_30"].bits > 0
    assert list(worths)[-1] in MEASURED_MM, "what cannot be valued comes last"


def test_looks_tell_what_there_is() -> None:
    looks = {look.id: look for look in FAMILY.looks(instruments=INSTRUMENTS)}
    assert looks["sump_depth"].instrument == "steel_rule" and looks["sump_depth"].u_mm == 0.4
    assert looks["sump_depth"].size_mm["heron"] == Limits(lower=77.0, upper=79.0) and looks["sump_depth"].chance is None
    assert looks["park_teeth_18"].chance == {"teal": 0.0, "wren": 0.01, "heron": 0.995}
    assert json.dumps(unit().weighed.as_dict()), "numbers only"
