"""The judge chapter against SciPy, and the properties of a decision."""

import pickle

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats
from trainwright import Error, judge
from trainwright.judge import Input, Limits, Reading, Rule

finite = st.floats(-1e6, 1e6)
positive = st.floats(1e-6, 1e3)


def test_normal_distribution_is_scipys():
    z = np.linspace(-30.0, 8.0, 2001)
    np.testing.assert_allclose(judge.normal_cdf(z), stats.norm.cdf(z), rtol=1e-12)
    p = np.concatenate([np.logspace(-300, -1, 500), np.linspace(0.1, 0.999999, 500)])
    np.testing.assert_allclose(judge.normal_quantile(p), stats.norm.ppf(p), rtol=1e-12)


@pytest.mark.parametrize("freedom", [1.0, 1.5, 2.0, 3.0, 7.0, 18.0, 60.0, 400.0, 9999.0, 1e4, 1e7])
def test_student_distribution_is_scipys(freedom):
    t = np.linspace(-8.0, 8.0, 401)
    np.testing.assert_allclose(judge.student_cdf(t, freedom), stats.t.cdf(t, freedom), rtol=1e-12)
    p = np.concatenate([np.logspace(-8, -1, 50), np.linspace(0.1, 0.49, 50)])
    np.testing.assert_allclose(judge.student_quantile(p, freedom), stats.t.ppf(p, freedom), rtol=1e-12)
    coverage = np.linspace(0.05, 0.9999, 100)
    np.testing.assert_allclose(judge.coverage_factor(coverage, freedom), stats.t.isf((1 - coverage) / 2, freedom), rtol=1e-11)


@given(finite, positive, finite, st.floats(0.0, 1e6))
def test_chance_inside_is_the_normal_probability(value, u, lower, width):
    chance = judge.chance_inside(Reading(value=value, u=u), Limits(lower=lower, upper=lower + width))
    expected = stats.norm.cdf((lower + width - value) / u) - stats.norm.cdf((lower - value) / u)
    assert chance == pytest.approx(expected, rel=1e-9, abs=1e-15)


@given(finite, positive, finite, st.floats(0.0, 1e3), st.floats(0.6, 0.99))
def test_a_decision_survives_pickling_and_says_what_would_be_go(value, u, lower, width, chance):
    limits = Limits(lower=lower, upper=lower + width)
    outcome = judge.judge(Reading(value=value, u=u), limits, Rule.conformance(chance))
    assert pickle.loads(pickle.dumps(outcome)) == outcome
    if np.isfinite(outcome.value_to_go):
        assert judge.judge(Reading(value=outcome.value_to_go, u=u), limits, Rule.conformance(chance)).verdict == "GO"


@given(st.lists(st.tuples(st.floats(-100.0, 100.0), st.floats(1e-3, 1e3)), min_size=1, max_size=16))
def test_a_sum_combines_as_the_root_of_squares(terms):
    readings = [Reading(value=value, u=u) for value, u in terms]
    total, budget = judge.propagate(readings, lambda *values: sum(values))
    assert total.u == pytest.approx(np.sqrt(sum(u * u for _, u in terms)), rel=1e-6)
    assert sum(budget.share) == pytest.approx(1.0)
    assert pickle.loads(pickle.dumps(budget)) == budget
    assert eval(repr(budget), {"Budget": judge.Budget}) == budget


def test_an_exception_of_the_formula_reaches_the_caller():
    with pytest.raises(ZeroDivisionError):
        judge.propagate([Reading(value=1.0, u=1.0)], lambda x: 1.0 / (x - 1.0))


def test_wrong_inputs_are_refused_and_named():
    for call, kind in [
        (lambda: Reading.rectangular(1.0, half_width=-1.0), "OUT_OF_RANGE"),
        (lambda: Rule.conformance(0.5), "OUT_OF_RANGE"),
        (lambda: Rule.stated_chances(go=0.95, no_go=float("nan")), "NOT_FINITE"),
        (lambda: Limits(lower=2.0, upper=1.0), "REVERSED"),
        (lambda: judge.combine([]), "COUNT"),
        (lambda: judge.combine([Input(sensitivity=1.0, u=1.0)] * 17), "COUNT"),
        (lambda: judge.combine_correlated([Input(sensitivity=1.0, u=1.0)] * 2, [[1.0, 0.2], [0.3, 1.0]]), "INCONSISTENT"),
        (lambda: judge.expand(Reading(value=1.0, u=1.0), freedom=0.5, coverage=0.95), "OUT_OF_RANGE"),
        (lambda: judge.mean_of([1.0]), "COUNT"),
        (lambda: judge.normal_quantile(1.0), "OUT_OF_RANGE"),
    ]:
        with pytest.raises(Error) as refusal:
            call()
        assert refusal.value.kind == kind
