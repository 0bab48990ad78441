"""The stack chapter against Monte Carlo, scipy, the demonstration family and wrong inputs."""

from __future__ import annotations

import math
import pickle
import warnings

import numpy as np
import pytest
import trainwright
from scipy.integrate import quad
from scipy.stats import multivariate_normal, norm
from trainwright import judge, stack
from trainwright.judge import Limits, Reading, Rule

RULE = Rule.stated_chances(go=0.95, no_go=0.05)
DRAWS = 400_000


def measured(sign, size, u):
    return stack.ChainLink.measured(sign, Reading(value=size, u=u), k=2)


def shims(*sizes, u=0.012, missing=()):
    return [stack.Piece(thickness_mm=Reading(value=size, u=u), in_stock=size not in missing) for size in sizes]


SHIMS = shims(1.10, 1.25, 1.40, 1.55, 1.70, 1.85, 2.00, 2.15, 2.30)


def end_play(**changes):
    fields = {
        "room_mm": stack.chain([measured(+1, 2.153, 0.010), measured(-1, 0.0, 0.028)]).reading_mm,
        "window_mm": Limits(lower=0.20, upper=0.60),
        "target_mm": 0.36,
        "rule": RULE,
        "by": "nearest target",
    }
    return stack.Selection(**fields | changes)


# ---- chains against Monte Carlo

# P. J. Drake, Dimensioning and Tolerancing Handbook (1999), chapter 9, motor assembly (from memory), inches.
MOTOR = [
    (-1, 0.3595, 0.0155), (1, 0.0320, 0.002), (1, 0.0600, 0.003), (1, 0.4305, 0.0075), (1, 0.1200, 0.005), (1, 1.5030, 0.007),
    (1, 0.1200, 0.005), (1, 0.4305, 0.0075), (1, 0.4500, 0.007), (-1, 3.0250, 0.006), (1, 0.3000, 0.030),
]  # fmt: skip


def motor(spread):
    inch = 25.4
    sizes = [(sign, Limits(lower=(size - t) * inch, upper=(size + t) * inch)) for sign, size, t in MOTOR]
    return stack.chain([stack.ChainLink.toleranced(sign, size, spread=spread) for sign, size in sizes])


def test_the_motor_assembly_as_printed():
    gap = motor("normal 3 sigma")
    inches = [round(value / 25.4, 4) for value in (gap.reading_mm.value, gap.worst_half_mm, gap.rss_half_mm)]
    assert inches == [0.0615, 0.0955, 0.0381]
    assert gap.budget.largest == 10


@pytest.mark.parametrize("spread", ["normal 3 sigma", "rectangular"])
def test_chain_against_monte_carlo(spread):
    gap = motor(spread)
    normal = spread != "rectangular"
    random = np.random.default_rng(1)
    parts = [
        random.normal(size, t / 3, DRAWS) if normal else random.uniform(size - t, size + t, DRAWS) for _, size, t in MOTOR
    ]
    drawn = 25.4 * sum(sign * part for (sign, _, _), part in zip(MOTOR, parts))
    assert gap.reading_mm.value == pytest.approx(drawn.mean(), abs=5 * drawn.std() / math.sqrt(DRAWS))
    assert gap.reading_mm.u == pytest.approx(drawn.std(), rel=0.005)
    inside = np.mean((gap.rss_mm.lower <= drawn) & (drawn <= gap.rss_mm.upper))
    if normal:
        assert gap.rss_chance == pytest.approx(0.9973, abs=1e-4)
        assert inside == pytest.approx(gap.rss_chance, abs=5 * math.sqrt(0.0027 / DRAWS))
    else:
        # One part makes 62 % of the variance, so the sum of rectangular parts is not normal: 0.922 of it lies within the root
        # sum of squares, by its characteristic function, and not the 0.917 of a normal distribution of the same uncertainty.
        assert gap.rss_chance == pytest.approx(2 * norm.cdf(math.sqrt(3)) - 1, abs=1e-12)
        half, wide = gap.rss_half_mm / 25.4, np.array([t for _, _, t in MOTOR])
        truth = 2 / math.pi * quad(lambda w: half * np.sinc(half * w / math.pi) * np.prod(np.sinc(wide * w / math.pi)), 0, 4000, limit=500)[0]
        assert truth == pytest.approx(0.922, abs=0.0005)
        assert inside == pytest.approx(truth, abs=5 * math.sqrt(0.08 / DRAWS))


def test_where_the_root_sum_of_squares_and_the_truth_differ():
    # The sum of two equal rectangular parts is triangular: 1 − (1 − 1/√2)² of it lies within the root sum of squares.
    part = stack.ChainLink.toleranced(+1, Limits(lower=9.9, upper=10.1), spread="rectangular")
    two = stack.chain([part, part])
    random = np.random.default_rng(2)
    drawn = random.uniform(9.9, 10.1, (2, DRAWS)).sum(axis=0)
    inside = np.mean((two.rss_mm.lower <= drawn) & (drawn <= two.rss_mm.upper))
    assert inside == pytest.approx(1 - (1 - 1 / math.sqrt(2)) ** 2, abs=0.002)
    assert two.rss_chance == pytest.approx(0.9167, abs=1e-4)  # the normal approximation: 0.003 more
    # Alone, a rectangular part never leaves its tolerance; the approximation says that 8 % do.
    one = stack.chain([part])
    assert (one.rss_half_mm, one.worst_half_mm) == pytest.approx((0.1, 0.1))
    assert one.rss_chance == pytest.approx(0.9167, abs=1e-4)


def test_growth_against_monte_carlo():
    growth = stack.AxialGrowth(
        case_length_mm=Reading(value=310, u=0.5),
        train_length_mm=Reading(value=309.7, u=0.1),
        case_expansion_per_k=Reading.rectangular(23e-6, half_width=1e-6),
        train_expansion_per_k=Reading.rectangular(11.5e-6, half_width=0.5e-6),
        reference_c=20,
    )
    hot = growth.grown(temp_c=Reading(value=90, u=3), train_hotter_k=Reading(value=10, u=5))
    random = np.random.default_rng(3)
    case, train = random.normal(310, 0.5, DRAWS), random.normal(309.7, 0.1, DRAWS)
    case_expands, train_expands = random.uniform(22e-6, 24e-6, DRAWS), random.uniform(11e-6, 12e-6, DRAWS)
    warmed = random.normal(90, 3, DRAWS) - 20
    drawn = case_expands * case * warmed - train_expands * train * (warmed + random.normal(10, 5, DRAWS))
    assert hot.growth_mm.value == pytest.approx(drawn.mean(), abs=5 * drawn.std() / math.sqrt(DRAWS))
    assert hot.growth_mm.u == pytest.approx(drawn.std(), rel=0.01)
    assert hot.growth_mm.value == pytest.approx(hot.case_mm - hot.train_mm)


# ---- choice


# The demonstration's job J4, computed independently for it.
@pytest.mark.parametrize(
    "size, play, chance",
    [(1.55, 0.603, 0.4627263918887873), (1.70, 0.453, 0.9999977279378596), (1.85, 0.303, 0.9993420324262065), (2.00, 0.153, 0.0713391658644218)],
)  # fmt: skip
def test_shims_of_the_demonstration(size, play, chance):
    cold = end_play().outcome(shims(size)[0]).cold
    assert cold.reading.value == pytest.approx(play, rel=1e-9)
    assert cold.reading.u == pytest.approx(0.03206243908376279, abs=1e-9)
    assert cold.chance == pytest.approx(chance, rel=1e-9)


def test_the_two_rules_choose_different_shims():
    choice = end_play().choose(SHIMS)
    sizes = [SHIMS[at].thickness_mm.value for at in (choice.position, choice.nearest_target, choice.least_risk)]
    assert sizes == [1.85, 1.85, 1.70]
    assert choice.found and not choice.missing_better
    assert choice.wanted_mm == pytest.approx(1.793)
    assert (choice.inside_mm.lower, choice.inside_mm.upper) == pytest.approx((1.553, 1.953))


def test_nothing_lands_inside_is_an_answer_that_says_what_would():
    choice = end_play().choose(shims(1.40, 1.50, 2.00))
    assert not choice.found
    would_do = shims((choice.go_mm.lower + choice.go_mm.upper) / 2)[0]
    assert end_play().outcome(would_do).cold.verdict == "GO"
    gone = end_play(by="least risk").choose(shims(1.70, 1.85, missing=(1.70,)))
    assert (gone.found, gone.position, gone.missing_better, gone.missing) == (True, 1, True, 0)


def test_a_hot_window_turns_the_choice():
    hot = {"growth_mm": Reading(value=0.24955, u=0.014), "hot_window_mm": Limits(lower=0.20, upper=0.60)}
    shown = end_play(by="least risk", **hot).choose(SHIMS)
    counted = end_play(by="least risk", hot_counts=True, **hot).choose(SHIMS)
    assert [SHIMS[choice.position].thickness_mm.value for choice in (shown, counted)] == [1.70, 1.85]


@pytest.mark.parametrize("size", [1.55, 1.70, 1.80, 1.85, 1.95])
def test_the_chance_of_both_is_a_bound_and_close_to_the_truth(size):
    selection = end_play(
        growth_mm=Reading(value=0.24955, u=0.014), hot_window_mm=Limits(lower=0.25, upper=0.70), hot_counts=True
    )
    outcome = selection.outcome(shims(size)[0])
    cold, hot = outcome.cold.reading, outcome.hot.reading
    both = multivariate_normal([cold.value, hot.value], [[cold.u**2, cold.u**2], [cold.u**2, hot.u**2]])
    truth = both.cdf([0.60, 0.70], lower_limit=[0.20, 0.25])
    assert outcome.chance <= truth + 1e-9
    assert truth <= min(outcome.cold.chance, outcome.hot.chance) + 1e-9
    if truth > 0.9:
        assert outcome.chance == pytest.approx(truth, abs=0.001)


def test_pick_takes_columns_of_rooms():
    selection = end_play()
    gaps = np.linspace(1.0, 3.2, 300)
    with warnings.catch_warnings(record=True) as caught:
        warnings.simplefilter("always")
        picked = selection.pick(SHIMS, room_mm={"value": gaps, "u": 0.0297})
    assert [str(warning.message).split(";")[0] for warning in caught] == [f"{np.isnan(picked['chance']).sum()} of 300 rows refused"]
    for place in range(0, 300, 7):
        room = Reading(value=gaps[place], u=0.0297)
        one = end_play(room_mm=room).choose(SHIMS)
        assert one.found == (not math.isnan(picked["position"][place]))
        if one.found:
            outcome = end_play(room_mm=room).outcome(SHIMS[one.position])
            got = [picked[name][place] for name in ("position", "thickness_mm", "value_mm", "u_mm", "chance")]
            cold = outcome.cold.reading
            assert got == [one.position, outcome.piece.thickness_mm.value, cold.value, cold.u, outcome.chance]
    grid = selection.pick(SHIMS, room_mm={"value": np.full((2, 3), 2.153), "u": np.array([0.01, 0.02, 0.03])})
    assert grid["thickness_mm"].shape == (2, 3)


# ---- what to measure


@pytest.mark.parametrize("shim", [1.55, 1.58, 1.62, 1.85])
def test_the_chance_that_measuring_settles_it_against_simulation(shim):
    parts = [(+1, 2.153, 0.010), (-1, 0.0, 0.028), (-1, shim, 0.012)]
    play = stack.chain([measured(*part) for part in parts])
    limits = Limits(lower=0.20, upper=0.60)
    gains = stack.what_to_measure(judge.judge(play.reading_mm, limits, RULE), play.budget, [0.007, 0.004, 0.002])
    gasket = gains[0]
    assert gasket.input == 1
    # The gasket lies where it may; the micrometer adds its own error; what it reads takes the place of what was known.
    random = np.random.default_rng(4)
    read = random.normal(0.0, 0.028, DRAWS) + random.normal(0.0, 0.004, DRAWS)
    u = math.hypot(0.010, 0.012, 0.004)
    assert gasket.u_of_result == pytest.approx(u)
    then = judge.judge(Reading(value=0.4, u=u), limits, RULE)
    value = 2.153 - shim - read
    go = np.mean((then.acceptance.lower <= value) & (value <= then.acceptance.upper))
    no_go = np.mean((value < then.rejection.lower) | (then.rejection.upper < value))
    assert gasket.chance_go == pytest.approx(go, abs=0.003)
    assert gasket.chance_no_go == pytest.approx(no_go, abs=0.003)


def test_one_settlement_for_each_input():
    play = stack.chain([measured(+1, 2.153, 0.010), measured(-1, 0.0, 0.028), measured(-1, 1.60, 0.012)])
    judgment = judge.judge(play.reading_mm, Limits(lower=0.20, upper=0.60), RULE)
    assert judgment.verdict == "NOT PROVEN"
    assert judge.settle(judgment, play.budget) == judge.settle_by(judgment, play.budget, 1)
    needed = judge.settle_by(judgment, play.budget, 1).u_needed
    better = stack.chain([measured(+1, 2.153, 0.010), measured(-1, 0.0, needed * (1 - 1e-9)), measured(-1, 1.60, 0.012)])
    assert judge.judge(better.reading_mm, Limits(lower=0.20, upper=0.60), RULE).verdict == "GO"
    assert not judge.settle_by(judgment, play.budget, 2).enough


# ---- feelers


@pytest.mark.parametrize("scatter", [0.0, 0.002, 0.03, 0.06])
def test_the_uncertainty_of_feeler_readings_is_not_too_small(scatter):
    # Clearances anywhere, feelers in steps of 0.05, four places: the error of the mean over what is stated for it.
    random = np.random.default_rng(5)
    true = random.uniform(1.4, 2.0, 4000)
    errors, stated = [], []
    for clearance in true:
        places = clearance + random.normal(0, scatter, 4)
        mean = stack.mean_of_steps(list(np.round(places / 0.05) * 0.05), quantum=0.05, u_of_one=max(scatter, 1e-9)).reading
        errors.append(mean.value - clearance)
        stated.append(mean.u)
    ratio = np.std(errors) / math.sqrt(np.mean(np.square(stated)))
    assert ratio < 1.05, "the stated uncertainty is too small"
    assert ratio > 0.75, "the stated uncertainty is far too large"


# ---- packs


def test_rings_of_the_demonstration():
    room = stack.room_from_fitted(clearance_mm=Reading(value=2.27, u=0.022 / 2), fitted_mm=Reading(value=2.90, u=0.015))
    window = Limits(lower=1.40, upper=2.00)
    selection = stack.Selection(room_mm=room, window_mm=window, target_mm=1.70, rule=RULE, by="nearest target")
    rings = shims(2.40, 2.65, 2.90, 3.15, 3.40, 3.65, u=0.015)
    expected = {3.15: (2.02, 0.2013036052700124), 3.40: (1.77, 1.0), 3.65: (1.52, 0.999999744110888)}
    for ring in rings[3:]:
        cold = selection.outcome(ring).cold
        assert (cold.reading.value, cold.chance) == pytest.approx(expected[ring.thickness_mm.value], rel=1e-9)
        assert cold.reading.u == pytest.approx(math.hypot(0.011, 0.015, 0.015))
    choice = selection.choose(rings)
    assert rings[choice.position].thickness_mm.value == rings[choice.least_risk].thickness_mm.value == 3.40


def test_heights_make_a_chain():
    def size(value, u):
        return Reading(value=value, u=u)

    drum, friction, steel, plate, wave = size(33.2, 0.02), size(1.95, 0.01), size(1.8, 0.004), size(4.5, 0.007), size(1.6, 0.05)
    room = stack.PackHeights(
        drum_depth_mm=drum, friction_plates=6, friction_mm=friction, steel_plates=6, steel_mm=steel, pressure_plate_mm=plate, wave_plate_mm=wave,
    ).room_from_heights()  # fmt: skip
    parts = [(1, drum), (-6, friction), (-6, steel), (-1, plate), (-1, wave)]
    chained = stack.chain([stack.ChainLink.measured(sign, part, k=2) for sign, part in parts])
    assert (room.room_mm.value, room.room_mm.u) == pytest.approx((chained.reading_mm.value, chained.reading_mm.u))
    assert room.budget.share == pytest.approx(chained.budget.share)


# ---- classes and refusals


def test_objects_pickle_and_paste_back():
    selection = end_play(growth_mm=Reading(value=0.25, u=0.01), hot_window_mm=Limits(upper=0.7), hot_counts=True)
    objects = [
        SHIMS[0], selection, selection.outcome(SHIMS[4]), selection.choose(SHIMS), measured(1, 2.0, 0.1),
        stack.chain([measured(1, 2.0, 0.1)]), stack.PistonStroke(clearance_mm=Reading(value=1, u=0), wave_mm=Reading(value=0, u=0),
        bend_mm=Reading(value=0, u=0), land_mm=Reading(value=2, u=0)),
    ]  # fmt: skip
    names = vars(stack) | {"Reading": Reading, "Limits": Limits, **{name: getattr(judge, name) for name in ("Rule", "Judgment", "Budget")}}
    for item in objects:
        assert pickle.loads(pickle.dumps(item)) == item
        assert eval(repr(item), dict(names)) == item
        assert "<table" in item._repr_html_()


@pytest.mark.parametrize(
    "wrong, kind, parameter",
    [
        ({"window_mm": Limits(upper=0.6)}, "NOT_FINITE", "limits"),
        ({"target_mm": 0.7}, "OUT_OF_RANGE", "target_mm"),
        ({"hot_counts": True}, "MISSING", "hot_window_mm"),
        ({"by": "cheapest"}, "TEXT", "by"),
        ({"room_mm": Reading(value=1e9, u=0)}, "OUT_OF_RANGE", "room_mm"),
    ],
)
def test_a_wrong_selection_is_refused_with_its_mend(wrong, kind, parameter):
    with pytest.raises(trainwright.Error) as refused:
        end_play(**wrong).choose(SHIMS)
    assert (refused.value.kind, refused.value.parameter) == (kind, parameter)
    assert str(refused.value).startswith(parameter)


def test_wrong_lists_are_refused():
    with pytest.raises(trainwright.Error, match="pieces: 0 given"):
        end_play().choose([])
    with pytest.raises(trainwright.Error, match="links: 0 given, 1 to 16 accepted"):
        stack.chain([])
    with pytest.raises(trainwright.Error, match="links: 17 given"):
        stack.chain([measured(1, 1, 0.1)] * 17)
    with pytest.raises(trainwright.Error, match="the plates stand higher than the drum is deep: count the steels again"):
        exact = [Reading.exact(value) for value in (10, 2, 2)]
        stack.PackHeights(
            drum_depth_mm=exact[0], friction_plates=3, friction_mm=exact[1], steel_plates=3, steel_mm=exact[2]
        ).room_from_heights()
