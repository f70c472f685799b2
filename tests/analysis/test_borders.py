"""Numbers and words at the edges of the statistics' rules, worked by hand or by another way to the same figure."""

from __future__ import annotations

from datetime import date

import numpy as np
import pytest
from scipy import stats

from analysis.compare.control import ChartState, verdict, watch
from analysis.compare.planner import equivalence_needed, half_width_of, repeats_for_interval
from analysis.compare.repeatability import study
from analysis.compare.runs import Quantity, Run, Setting, units_of
from analysis.compare.trend import RunIn, RunInState, run_in_along, settled_since
from analysis.to_axle.calibration import Calibration, unlevered
from analysis.to_axle.true_zero import zero_at_start
from analysis.trace.results import Code, Pull, Reason
from analysis.uncertainty.budget import Input, second_order
from analysis.verdict.adequacy import certificate_advice, range_advice
from analysis.verdict.corrected import CalibratedTrace, apply_corrections
from analysis.verdict.risk import gamma_population, risks, torque_population
from analysis.verdict.scatter import outliers, persistence, warm_up
from logger.errors import InputError
from logger.header import Correction, TransducerFacts


def test_second_order_of_a_product_of_three_bends():
    """f = x y² + y x²/2 about (1, 2), u 0.1 and 0.2.

    By hand: f_x = y² + x y = 6, f_y = 2 x y + x²/2 = 4.5, f_xx = y = 2, f_yy = 2 x = 2, f_xy = 2 y + x = 5,
    f_xyy = 2, f_yxx = 1, f_xxx = f_yyy = 0; JCGM 100, 5.1.2, note: the sum over i, j of
    (f_ij²/2 + f_i f_ijj) u_i² u_j².
    """
    x, y = Input("x", 1.0, 0.1), Input("y", 2.0, 0.2)
    found = second_order(lambda v: v["x"] * v["y"] ** 2 + v["y"] * v["x"] ** 2 / 2, (x, y))
    own = (2**2 / 2) * 0.1**4 + (2**2 / 2) * 0.2**4
    both = (5**2 / 2 + 6 * 2 + 5**2 / 2 + 4.5 * 1) * 0.1**2 * 0.2**2
    assert found == pytest.approx(np.sqrt(own + both), rel=1e-9)


def test_second_order_of_a_cube():
    """x³ about 2: f' f''' + f''²/2 = 12·6 + 12²/2 = 144."""
    assert second_order(lambda v: v["x"] ** 3, (Input("x", 2.0, 0.1),)) == pytest.approx(
        np.sqrt(144 * 0.1**4), rel=1e-3
    )


@pytest.mark.parametrize(
    "values",
    [[31.0, 30.5, 30.0, 29.5, 29.0], [30.0, 30.2, 30.9, 31.4, 31.5, 32.2, 32.4], [1.0, 1.1, 1.3, 1.2, 1.6, 1.7]],
)
def test_pulls_alike_pay_what_their_correlation_costs(values):
    """The variance of a mean of values correlated by r^|i - j| is the sum over all pairs, s²/n² Σ r^|i - j|."""
    x = np.array(values)
    n = len(x)
    eta = (np.diff(x) ** 2).sum() / ((x - x.mean()) ** 2).sum()
    r = 1 - eta / 2
    r = min(r + (1 + 4 * r) / n, 0.7)
    lags = np.abs(np.subtract.outer(np.arange(n), np.arange(n)))
    g = (r**lags).sum() / n
    assert persistence(values) == pytest.approx(np.sqrt(g * (n - 1) / (n - g)), rel=1e-9)


def test_a_course_is_told_in_per_cent_from_first_to_last():
    """A straight fall from 31.5 to 28.5 N·m is one of 10 % of the mean 30."""
    falling = [31.5, 30.75, 30.0, 29.25, 28.5]
    assert "falls by 10.0 %" in warm_up(falling)
    assert "rises by 10.0 %" in warm_up(falling[::-1])


def test_the_furthest_pull_is_the_outlier_on_either_side():
    """Grubbs's statistic of these is 2.03 and beyond the tabled 1.887 (n = 6, two-sided 5 %)."""
    near = [30.0, 30.1, 29.9, 30.05, 29.95]
    assert outliers([*near, 27.0]) == (5,)
    assert outliers([33.0, *near]) == (0,)
    assert outliers([27.0, *near]) == (0,)
    assert outliers([*near, 30.2]) == ()


@pytest.mark.parametrize(("mean", "sd"), [(10.0, 4.0), (30.0, 12.0), (5.0, 4.5)])
def test_a_population_near_zero_is_the_gamma_distribution_of_its_moments(mean, sd):
    population = torque_population(mean, sd)
    known = stats.gamma((mean / sd) ** 2, scale=sd**2 / mean)
    at = np.array([0.2, 0.5, 1.0, 1.7]) * mean
    assert population.density(at) == pytest.approx(known.pdf(at), rel=1e-9)
    assert population.low == 0.0
    assert known.sf(population.high) < 1e-9
    assert population.high < mean + 50 * sd
    consumer, producer = risks(population, 1e-9, mean / 2, None)
    assert consumer + producer < 1e-4


@pytest.mark.parametrize(("shape", "rate"), [(0.0, 1.0), (1.0, 0.0), (-1.0, 2.0)])
def test_a_gamma_population_without_extent_is_refused(shape, rate):
    with pytest.raises(InputError, match="positive"):
        gamma_population(shape, rate)
    assert gamma_population(0.5, 0.5).high > 1.0


@pytest.mark.parametrize("n", [2, 3, 8, 30])
def test_repeats_for_an_interval_are_the_fewest(n):
    """t s/√n with the tabled t: exactly as many as reach it, and one fewer does not."""
    wanted = stats.t.ppf(0.975, n - 1) * 2.0 / np.sqrt(n)
    assert half_width_of(2.0, n) == pytest.approx(wanted)
    assert repeats_for_interval(2.0, wanted * 1.0001) == n
    assert repeats_for_interval(2.0, wanted * 0.9999) == n + 1


def test_showing_sameness_needs_more_than_blocks_do():
    """A margin of two scatters. Without blocks the difference has √2 of the scatter too, but twice the freedom."""
    blocked, free = (equivalence_needed(1.0, 2.0, blocked=one) for one in (True, False))
    for plan, dof in ((blocked, blocked.per_group - 1), (free, 2 * free.per_group - 2)):
        assert plan.power >= 0.8
        rng = np.random.default_rng(4)
        n = plan.per_group
        difference = rng.normal(0, np.sqrt(2 / n), 20_000)
        s = np.sqrt(2 * rng.chisquare(dof, 20_000) / dof / n)
        shown = np.abs(difference) + stats.t.ppf(0.95, dof) * s < 2.0
        assert plan.power == pytest.approx(shown.mean(), abs=0.02)
    assert "blocks" in blocked.text
    assert blocked.text != free.text


def test_two_by_two_by_two_is_the_smallest_study():
    y = 50 + np.random.default_rng(1).normal(0, 1, (2, 2, 2)) + np.array([0.0, 5.0])[:, None, None]
    assert study(y).measuring > 0
    for axis in range(3):
        with pytest.raises(InputError, match="two or more"):
            study(np.take(y, [0], axis=axis))


def test_a_recording_without_a_fill_is_one_of_its_own_and_told():
    setting = Setting("car, other side held, neutral")
    runs = [
        Run(name, {"oil": "a"} | tags, setting, {Quantity.BREAKAWAY: (40.0,)}, 1)
        for name, tags in (("1", {"fill": "x"}), ("2", {"fill": "x"}), ("3", {}), ("4", {}))
    ]
    units, remarks = units_of(runs, Quantity.BREAKAWAY, by="oil")
    assert [(u.name, u.runs) for u in units] == [("x", 2), ("3", 1), ("4", 1)]
    assert [r.split(",")[0] for r in remarks] == ["2 recordings without a tag 'fill'"]
    assert not units_of(runs[:2], Quantity.BREAKAWAY, by="oil")[1]


@pytest.mark.parametrize(("step", "word"), [(0.02, "rise"), (-0.02, "fall")])
def test_a_reference_that_moves_itself_is_none_and_says_which_way(step, word):
    chart = watch(50.0 * (1 + step * np.arange(10)) + 0.01 * (-1.0) ** np.arange(10), baseline=8)
    shows, text = verdict(chart)
    assert shows is ChartState.DRIFTS
    assert f"jobs {word} by" in text


def test_settled_counts_from_the_first_of_an_unbroken_row():
    cycles = np.arange(0.0, 60.0, 2.0)
    values = 46.0 + 0.01 * np.cos(9 * cycles)
    along = run_in_along(cycles, values)
    since = settled_since(along)
    states = [None if one is None else one.state for one in along]
    assert since is not None
    assert all(state is RunInState.SETTLED for state in states[since:])
    assert states[since - 1] is not RunInState.SETTLED
    assert settled_since([*along, None]) is None
    assert settled_since([]) is None
    every: list[RunIn | None] = [one for one in along if one is not None and one.state is RunInState.SETTLED]
    assert settled_since(every) == 0


@pytest.mark.parametrize(("day", "words"), [(10, None), (11, "one day before"), (12, "2 days before")])
def test_days_that_a_certificate_is_late(day, words):
    facts = TransducerFacts(certificate_due=date(2026, 3, 10))
    said = certificate_advice(facts, date(2026, 3, day))
    assert (words is None) is (said == ())
    assert words is None or words in said[0]


@pytest.mark.parametrize(
    ("highest", "words"), [(19.9, "20 % of"), (20.0, ""), (80.0, ""), (80.6, "81 % of"), (160.0, "160 % of")]
)
def test_the_best_part_of_the_range_ends_at_a_fifth_and_four_fifths(highest, words):
    """Common practice, no source: 20 to 80 % of the capacity."""
    said = range_advice(100.0, None, highest)
    assert len(said) == bool(words)
    assert not words or words in said[0]


def test_a_calibration_that_says_nothing_leaves_readings_alone():
    read = np.array([1.0, -2.5])
    assert Calibration().true(read).tolist() == [1.0, -2.5]
    assert Calibration(gain=1.25).true(read).tolist() == pytest.approx([0.8, -2.0])
    assert Calibration(per_unit=0.5, arm_m=2.0, gain=2.0).true(read).tolist() == pytest.approx([0.5, -1.25])


def test_three_readings_in_half_a_second_are_a_level():
    time_s = np.arange(0, 3, 0.2)
    level, u = zero_at_start(time_s, np.full(len(time_s), 1.5), 0.03, 0.0)
    assert level == pytest.approx(1.5)
    assert u == pytest.approx(0.03 / np.sqrt(len(time_s)))
    with pytest.raises(InputError, match="half a second"):
        zero_at_start(np.arange(0, 3, 0.3), np.full(10, 1.5), 0.03, 0.0)


AT = "2026-03-04T05:06:07+00:00"


def _moved(torque: np.ndarray, relative_u: float = 0.0, noise_nm: float = 0.0):
    """Set the stretch of rotation of a pull by hand, from 2 to 8 s."""
    from datetime import datetime

    time_s = np.arange(0, 10, 0.01)
    pull = Pull(0.0, 9.0, 1, 0.0, None, None)
    correction = Correction(
        pull_start_s=0.0, rotating_start_s=2.0, rotating_end_s=8.0, at=datetime.fromisoformat(AT), reason="x"
    )
    return apply_corrections([pull], [correction], CalibratedTrace(time_s, torque(time_s), noise_nm, relative_u))


def test_a_stretch_set_by_hand_gives_its_mean_and_pays_for_the_sensor():
    """A sensor known to 1 % (standard) leaves 1.96 · 0.3 N·m of 30 N·m, however steady the trace."""
    (plain,), _ = _moved(lambda t: np.full(len(t), 30.0))
    (unsure,), _ = _moved(lambda t: np.full(len(t), 30.0), relative_u=0.01)
    assert plain.pull.rotating.at_sensor_nm == pytest.approx(30.0)
    widened = unsure.pull.rotating.u95_sensor_nm**2 - plain.pull.rotating.u95_sensor_nm**2
    assert np.sqrt(widened) == pytest.approx(1.96 * 0.3, rel=1e-3)
    assert plain.pull.rotating.u95_sensor_nm < 0.1 * 30.0


@pytest.mark.parametrize("level", [0.0, -5.0])
def test_a_stretch_without_torque_is_refused(level):
    (kept,), problems = _moved(lambda t: np.full(len(t), level))
    assert kept.pull.rotating is None
    assert any("no rotating torque" in problem for problem in problems)


@pytest.mark.parametrize(
    ("keys", "kept"),
    [
        ({"breakaway_s": 1.0}, {Code.UNSTEADY, Code.SHORT, Code.CLIPPED}),
        ({"rotating_start_s": 2.0, "rotating_end_s": 8.0}, {Code.NEVER_SLIPPED, Code.NOT_RESOLVED, Code.CLIPPED}),
    ],
)
def test_a_value_set_by_hand_settles_what_kept_it_from_being_read(keys, kept):
    from datetime import datetime

    every = (Code.NEVER_SLIPPED, Code.NOT_RESOLVED, Code.UNSTEADY, Code.SHORT, Code.CLIPPED)
    pull = Pull(0.0, 9.0, 1, 0.0, None, None, reasons=tuple(Reason(code, "x") for code in every))
    correction = Correction(pull_start_s=0.0, at=datetime.fromisoformat(AT), reason="x", **keys)
    time_s = np.arange(0, 10, 0.01)
    (moved,), problems = apply_corrections(
        [pull], [correction], CalibratedTrace(time_s, np.full(1000, 30.0), 0.01, 0.0)
    )
    assert not problems
    assert {reason.code for reason in moved.pull.reasons} == kept


@pytest.mark.parametrize("keys", [{"rotating_start_s": 2.0}, {"rotating_end_s": 8.0}])
def test_one_end_of_a_stretch_needs_the_other(keys):
    from datetime import datetime

    pull = Pull(0.0, 9.0, 1, 0.0, None, None)
    correction = Correction(pull_start_s=0.0, at=datetime.fromisoformat(AT), reason="x", **keys)
    time_s = np.arange(0, 10, 0.01)
    (kept,), problems = apply_corrections([pull], [correction], CalibratedTrace(time_s, np.full(1000, 30.0), 0.01, 0.0))
    assert kept.pull.rotating is None
    assert any("give both ends" in problem for problem in problems)


@pytest.mark.parametrize(("sign", "way"), [("reversed", -1), ("signed", 1), ("none", 1)])
def test_a_unit_a_sign_and_a_gain_make_a_torque(sign, way):
    """1 lbf·ft = 1.355 818 N·m (NIST SP 811, appendix B.8); 10 of them at a gain of 1.25."""
    found = unlevered(TransducerFacts(sign=sign, gain=1.25), "lbf·ft")
    assert found.true(np.array([10.0])).tolist() == pytest.approx([way * 10 * 1.355818 / 1.25], rel=1e-6)
