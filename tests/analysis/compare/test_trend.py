"""Trends, predictions, inverse predictions and run-in."""

from __future__ import annotations

import math
from dataclasses import replace
from importlib.resources import files

import numpy as np
import pytest
from scipy import stats

from analysis.compare.trend import RunInState, fit_line, run_in, run_in_along
from logger.errors import InputError


@pytest.mark.published("NIST StRD Norris", rows=("7.11",), status="READ-P")
def test_norris():
    text = files("scipy.stats").joinpath("tests", "data", "nist_linregress", "Norris.dat").read_text()
    y, x = np.array([line.split() for line in text.splitlines()[60:] if line.strip()], dtype=float).T
    assert len(x) == 36
    line = fit_line(x, y)
    assert line.intercept == pytest.approx(-0.262323073774029, rel=1e-10)
    assert line.u_intercept == pytest.approx(0.232818234301152, rel=1e-10)
    assert line.slope == pytest.approx(1.00211681802045, rel=1e-13)
    assert line.u_slope == pytest.approx(0.429796848199937e-03, rel=1e-10)
    assert line.s == pytest.approx(0.884796396144373, rel=1e-10)
    assert line.r2 == pytest.approx(0.999993745883712, rel=1e-13)
    assert (line.slope / line.u_slope) ** 2 == pytest.approx(5436385.54079785, rel=1e-9)


TEMPERATURE = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511]
CORRECTION = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160]


@pytest.mark.published(
    "JCGM 100 H.3 (thermometer, via open-source test suites)", rows=("3.10", "3.11"), status="READ-S"
)
def test_gum_h3():
    line = fit_line([t - 20 for t in TEMPERATURE], CORRECTION)
    assert line.intercept == pytest.approx(-0.1712, abs=5e-5)
    assert line.u_intercept == pytest.approx(0.0029, abs=5e-5)
    assert line.slope == pytest.approx(0.00218, abs=5e-6)
    assert line.u_slope == pytest.approx(0.00067, abs=5e-6)
    assert line.correlation == pytest.approx(-0.930, abs=5e-4)
    assert line.s == pytest.approx(0.0035, abs=5e-5)
    assert line.df == 9
    at_thirty = line.predict(10)
    assert at_thirty.y == pytest.approx(-0.1494, abs=5e-5)
    assert at_thirty.u_line == pytest.approx(0.0041, abs=5e-5)
    assert at_thirty.extrapolated


@pytest.mark.published(
    "Natrella, Handbook 91, worksheet 5-4.1 (via an open-source test suite)", rows=("3.30",), status="READ-S"
)
def test_natrella():
    x = [30, *range(100, 1501, 100)]
    y = [4642, 4612, 4565, 4513, 4476, 4433, 4389, 4347, 4303, 4251, 4201, 4140, 4100, 4073, 4024, 3999]
    line = fit_line(x, y)
    assert line.slope == pytest.approx(-0.44985482, abs=5e-9)
    assert line.u_slope**2 == pytest.approx(2.5649045e-5, rel=1e-7)
    assert line.intercept == pytest.approx(4654.9846, abs=5e-5)
    assert line.u_intercept**2 == pytest.approx(19.879452, rel=1e-7)
    assert line.s == pytest.approx(9.277617, abs=1e-6)  # printed cut off, not rounded
    assert line.predict(1200).u_line ** 2 == pytest.approx(10.53, abs=5e-3)
    at_750 = line.predict(750)
    assert at_750.u_line**2 + line.s**2 == pytest.approx(91.45, abs=5e-3)
    assert not at_750.extrapolated


LINEARITY = {
    2.0: [2.70, 2.50, 2.40, 2.50, 2.70, 2.30, 2.50, 2.50, 2.40, 2.40, 2.60, 2.40],
    4.0: [5.10, 3.90, 4.20, 5.00, 3.80, 3.90, 3.90, 3.90, 3.90, 4.00, 4.10, 3.80],
    6.0: [5.80, 5.70, 5.90, 5.90, 6.00, 6.10, 6.00, 6.10, 6.40, 6.30, 6.00, 6.10],
    8.0: [7.60, 7.70, 7.80, 7.70, 7.80, 7.80, 7.80, 7.70, 7.80, 7.50, 7.60, 7.70],
    10.0: [9.10, 9.30, 9.50, 9.30, 9.40, 9.50, 9.50, 9.50, 9.60, 9.20, 9.30, 9.40],
}


@pytest.mark.published("AIAG MSA 4th ed., linearity (via an open-source test suite)", rows=("5.7",), status="READ-S")
def test_gauge_linearity():
    references = [r for r, trials in LINEARITY.items() for _ in trials]
    bias = [value - r for r, trials in LINEARITY.items() for value in trials]
    line = fit_line(references, bias)
    assert line.slope == pytest.approx(-0.1317, abs=5e-5)
    assert line.intercept == pytest.approx(0.7367, abs=5e-5)
    assert line.slope / line.u_slope == pytest.approx(-12.043, abs=5e-4)
    assert line.intercept / line.u_intercept == pytest.approx(10.158, abs=5e-4)
    assert line.r2 == pytest.approx(0.7143, abs=5e-5)
    assert line.df == 58
    means = [sum(trials) / 12 - r for r, trials in LINEARITY.items()]
    assert means == pytest.approx([0.491667, 0.125, 0.025, -0.291667, -0.616667], abs=5e-7)


def test_against_statsmodels():
    # A general-purpose library as a second opinion, on shim thickness against torque.
    import statsmodels.api as sm

    rng = np.random.default_rng(8)
    x = np.array([0.0, 0.1, 0.1, 0.2, 0.3, 0.3, 0.4])
    y = 31 + 45 * x + rng.normal(0, 1.5, len(x))
    line = fit_line(x, y)
    model = sm.OLS(y, sm.add_constant(x)).fit()
    frame = model.get_prediction([[1, 0.25]]).summary_frame(alpha=0.05)
    at = line.predict(0.25)
    assert (at.line_low, at.line_high) == pytest.approx((frame.mean_ci_lower[0], frame.mean_ci_upper[0]))
    assert (at.next_low, at.next_high) == pytest.approx((frame.obs_ci_lower[0], frame.obs_ci_upper[0]))
    assert line.p == pytest.approx(model.pvalues[1])
    assert (line.slope_low, line.slope_high) == pytest.approx(tuple(model.conf_int()[1]))


def test_inverse_is_the_prediction_turned_round():
    rng = np.random.default_rng(9)
    x = np.linspace(0, 0.5, 9)
    line = fit_line(x, 31 + 45 * x + rng.normal(0, 1.0, len(x)))
    wanted = line.inverse(45.0)
    assert line.predict(wanted.x).y == pytest.approx(45.0)
    # At both ends of the interval the prediction interval just touches the wanted value.
    assert line.predict(wanted.low).next_high == pytest.approx(45.0)
    assert line.predict(wanted.high).next_low == pytest.approx(45.0)
    assert wanted.text == ""
    assert line.inverse(90.0).extrapolated


def test_inverse_with_falling_line():
    rng = np.random.default_rng(10)
    x = np.linspace(0, 10_000, 12)
    line = fit_line(x, 60 - 0.002 * x + rng.normal(0, 0.8, len(x)))
    wanted = line.inverse(50.0)
    assert wanted.low < wanted.x < wanted.high
    assert line.predict(wanted.low).next_low == pytest.approx(50.0)


def test_inverse_without_slope():
    line = fit_line([0, 1, 2, 3], [5.0, 5.4, 4.8, 5.3])
    wanted = line.inverse(6.0)
    assert (wanted.low, wanted.high) == (-np.inf, np.inf)
    assert "cannot be distinguished from zero" in wanted.text


def test_inverse_covers_the_truth():
    rng = np.random.default_rng(12)
    x = np.repeat([0.0, 0.2, 0.4], 3)
    inside = 0
    for _ in range(400):
        line = fit_line(x, 31 + 45 * x + rng.normal(0, 1.5, len(x)))
        # The next unit is built with a shim of 0.27 and shows this:
        shown = 31 + 45 * 0.27 + rng.normal(0, 1.5)
        wanted = line.inverse(shown)
        inside += wanted.low <= 0.27 <= wanted.high
    assert 0.91 <= inside / 400 <= 0.985


def test_run_in():
    rng = np.random.default_rng(6)
    cycles = np.arange(60)
    torque = 46 + 14 * np.exp(-cycles / 8) + rng.normal(0, 0.05, len(cycles))
    early, late = run_in(cycles[:12], torque[:12]), run_in(cycles, torque)
    assert early.state is RunInState.MOVING
    assert early.percent_per_ten < -5
    assert late.state is RunInState.SETTLED
    assert late.decay is not None
    assert late.decay.final == pytest.approx(46, rel=0.01)
    assert late.decay.drop == pytest.approx(14, rel=0.05)
    assert late.decay.scale == pytest.approx(8, rel=0.1)


def test_run_in_that_cannot_be_told():
    rng = np.random.default_rng(13)
    reading = run_in(np.arange(8), 50 + rng.normal(0, 3.0, 8))
    assert reading.state is RunInState.UNKNOWN
    assert reading.low < 0 < reading.high


@pytest.mark.parametrize("scatter", [0.002, 0.004, 0.008])
def test_settled_has_stated_error_rates(scatter):
    """Looked at after every cycle of sixty: a pack that goes on changing by the bound is seldom called settled, and one
    that has settled is found to have."""
    rng, called, found = np.random.default_rng(8), 0, 0
    cycles = np.arange(60)
    for _ in range(60):
        noise = 1 + scatter * rng.standard_normal(60)
        moving = run_in_along(cycles, 50 * np.exp(0.001 * cycles) * noise)
        called += any(judged is not None and judged.state is RunInState.SETTLED for judged in moving)
        found += run_in(cycles, 50 * noise).state is RunInState.SETTLED
    assert called / 60 <= 0.05 + 0.085  # three standard deviations of 60 runs
    assert found / 60 >= 0.9


def test_too_few_cycles_for_their_scatter_show_nothing():
    rng = np.random.default_rng(1)
    reading = run_in(range(12), 50 * (1 + 0.008 * rng.standard_normal(12)))
    assert reading.state is RunInState.UNKNOWN
    assert 20 < reading.needed < 60
    assert f"about {reading.needed} cycles are needed" in reading.text


def test_few_fills_far_off_their_line_are_said_to_cover_less():
    line = fit_line([0.0, 1.0, 2.0, 3.0], [10.0, 13.0, 13.5, 18.0])
    assert "covers less than 95 %" in line.inverse(14.0).text
    assert fit_line([0.0, 1.0, 2.0, 3.0], [10.0, 12.0, 14.1, 16.0]).inverse(14.0).text == ""


def test_run_in_of_a_constant_has_no_curve():
    reading = run_in(range(20), [50.0] * 20)
    assert reading.state is RunInState.SETTLED
    assert reading.decay is None


@pytest.mark.parametrize(
    ("x", "y", "hint"),
    [([1, 2], [1, 2], "too few"), ([1, 1, 1], [1, 2, 3], "same x"), ([1, 2, np.nan], [1, 2, 3], "finite")],
)
def test_raises(x, y, hint):
    with pytest.raises(InputError, match=hint):
        fit_line(x, y)


def test_run_in_raises():
    with pytest.raises(InputError, match="too few"):
        run_in([1, 2, 3], [1, 2, 3])
    with pytest.raises(InputError, match="positive"):
        run_in([1, 2, 3, 4], [-1, -2, -1, -2.5])


def test_how_many_cycles_a_scatter_needs_by_hand():
    """The least n with 10 t(n - 2) s/√(n³/12) within half of 1 %, t at 99.7 %; steps of n by a fiftieth."""
    values = np.array([50.0, 51.0] * 6)
    reading = run_in(range(12), values)
    share = np.sqrt(0.5) / np.mean(values[-10:])

    def within(n):
        return 10 * stats.t.ppf(0.9985, n - 2) * share <= 0.005 * np.sqrt(n**3 / 12)

    least = next(n for n in range(12, 1000) if within(n))
    assert least <= reading.needed <= least * 1.02 + 1
    assert within(reading.needed)


def test_run_in_is_judged_by_ten_cycles_at_least():
    values = 50 + 1e-4 * (-1.0) ** np.arange(30)
    assert run_in(range(30), values).over == 10
    assert run_in(range(9), values[:9]).over == 9
    assert run_in(range(9), values[:9]).state is RunInState.UNKNOWN


@pytest.mark.parametrize(("n", "curve"), [(5, False), (6, True), (30, True)])
def test_a_curve_needs_six_cycles(n, curve):
    """40 + 10 exp(-x/4): found again where its end is in sight."""
    x = np.linspace(0, 30, n)
    found = run_in(x, 40 + 10 * np.exp(-x / 4)).decay
    assert (found is not None) is curve
    if n == 30:
        assert (found.final, found.drop) == (pytest.approx(40, abs=0.1), pytest.approx(10, rel=0.05))
        assert found.scale == pytest.approx(4, rel=0.05)


@pytest.mark.parametrize(("x", "beyond"), [(0.0, False), (3.0, False), (-0.01, True), (3.01, True)])
def test_beyond_what_was_tested_is_an_extrapolation(x, beyond):
    line = fit_line([0.0, 1.0, 2.0, 3.0], [10.0, 12.0, 14.1, 16.0])
    found = line.predict(x)
    assert found.extrapolated is beyond
    back = line.inverse(found.y)
    assert back.x == pytest.approx(x)
    assert back.low < back.x < back.high
    assert x in (0.0, 3.0) or back.extrapolated is beyond


@pytest.mark.parametrize(
    ("x", "trend"),
    [
        ([1e9, 1e9 + 1, 1e9], False),  # beside 1e9 one is nothing ...
        ([1e9, 1e9 + 10, 1e9], True),
        ([0.0, 1e-9, 0.0], False),  # ... nor is 1e-9 beside 1
        ([0.0, 1e-6, 0.0], True),
    ],
)
def test_what_counts_as_one_x(x, trend):
    if trend:
        assert fit_line(x, [1.0, 2.0, 1.0]).slope == pytest.approx(1 / (x[1] - x[0]))
        return
    with pytest.raises(InputError, match="same x"):
        fit_line(x, [1.0, 2.0, 1.0])


def test_lines_without_scatter():
    level, rise = fit_line([0, 1, 2], [5.0, 5.0, 5.0]), fit_line([0, 1, 2], [1.0, 2.0, 3.0])
    assert (level.p, level.r2, level.s, level.slope) == (1.0, 1.0, 0.0, 0.0)
    assert (rise.p, rise.r2, rise.s, rise.slope) == (0.0, 1.0, 0.0, 1.0)
    assert math.isnan(level.correlation)
    none = level.inverse(6.0)
    assert none.text.startswith("there is no slope")
    assert math.isnan(none.x)
    assert none.extrapolated
    assert fit_line([0, 1, 2, 3], [5.0, 5.4, 4.8, 5.3]).inverse(5.1).extrapolated


@pytest.mark.parametrize(("n", "g", "said"), [(4, 0.095, False), (4, 0.105, True), (5, 0.105, False), (5, 0.5, False)])
def test_few_fills_cover_less_from_a_tenth_on(n, g, said):
    """g = (t u/b)², t of n - 2 degrees of freedom."""
    line = fit_line(range(n), [10.0 + i + 0.1 * (-1) ** i for i in range(n)])
    line = replace(line, u_slope=math.sqrt(g) * line.slope / float(stats.t.ppf(0.975, n - 2)))
    assert bool(line.inverse(11.0).text) is said


@pytest.mark.parametrize(
    ("per_ten", "state"),
    [
        (1.05, RunInState.MOVING),
        (0.95, RunInState.SETTLED),
        (-0.95, RunInState.SETTLED),
        (-1.05, RunInState.MOVING),
    ],
)
def test_a_straight_course_has_settled_within_one_per_cent_in_ten_cycles(per_ten, state):
    """Of the mean of ten cycles, 50 N·m."""
    found = run_in(range(10), 50 * (1 + per_ten / 1000 * (np.arange(10) - 4.5)))
    assert found.state is state
    assert found.percent_per_ten == pytest.approx(per_ten)
    assert found.level == pytest.approx(50.0)


def test_run_in_needs_four_cycles_and_a_level():
    assert run_in(range(4), [50.0, 50.1, 50.0, 50.1]).over == 4
    with pytest.raises(InputError, match="positive"):
        run_in(range(4), [-1.0, 1.0, -1.0, 1.0])
    with pytest.raises(InputError, match="same x"):
        run_in([2, 2, 2, 2], [50.0, 50.1, 50.0, 50.1])


def test_up_to_fifty_cycles_the_need_is_counted_one_by_one():
    values = np.array([50.0, 50.3] * 6)
    share = 0.3 * np.sqrt(0.5) / np.mean(values[-10:])
    least = next(n for n in range(12, 50) if 10 * stats.t.ppf(0.9985, n - 2) * share <= 0.005 * np.sqrt(n**3 / 12))
    assert run_in(range(12), values).needed == least


def test_a_curve_whose_end_is_not_in_sight_is_none():
    x = np.linspace(0, 30, 30)
    assert run_in(x, 40 + 10 * np.exp(-x / 200)).decay is None
