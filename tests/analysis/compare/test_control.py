"""The EWMA chart."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.compare import control
from analysis.compare.control import ChartState, EwmaChart, ewma, limit_width, steady_width, verdict, watch
from logger.errors import InputError

READINGS = [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5]
READINGS += [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]
AVERAGES = [50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33]
AVERAGES += [50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99]


@pytest.mark.published("NIST/SEMATECH e-Handbook 6.3.2.4 (EWMA chart)", rows=("7.40",), status="READ-S")
def test_handbook():
    chart = ewma(READINGS, target=50, sd=2.0539, weight=0.3, width=3)
    assert chart.average == pytest.approx(AVERAGES, abs=0.0051)
    assert chart.steady_high == pytest.approx(52.5884, abs=5e-4)
    assert chart.steady_low == pytest.approx(47.4115, abs=5e-4)
    assert chart.alarms == ()
    # The limits of single jobs run up to those, the lower one below the target: 50 -/+ 3 (2.0539) 0.3 for the first.
    assert chart.low[0] == pytest.approx(50 - 3 * 2.0539 * 0.3)
    assert chart.high[0] == pytest.approx(50 + 3 * 2.0539 * 0.3)
    assert chart.low[-1] == pytest.approx(chart.steady_low, abs=1e-3)
    assert (chart.low < chart.high).all()


@pytest.mark.published("EWMA steady multiplier (via an open-source test suite)", rows=("7.41",), status="READ-S")
def test_steady_width():
    assert steady_width(0.1) == pytest.approx(0.22942, abs=5e-6)


def test_limits_hold_what_they_promise():
    # Against simulation: the spread of the average at each step is the limit over the width.
    rng = np.random.default_rng(2)
    many = np.array([ewma(rng.normal(0, 1, 12), target=0, sd=1).average for _ in range(4000)])
    chart = ewma(np.zeros(12), target=0, sd=1)
    assert many.std(axis=0) == pytest.approx(chart.high / 3, rel=0.05)


def test_a_wearing_pack_alarms():
    rng = np.random.default_rng(3)
    torque = np.concatenate([rng.normal(52, 1, 6), np.linspace(51, 42, 6)])
    chart = watch(torque, baseline=6)
    assert chart.alarms
    assert min(chart.alarms) > 6
    assert verdict(chart) == (ChartState.SIGNAL, "a change is shown: below its band")


def test_watch_uses_the_baseline_only():
    chart = watch([50, 51, 49, 50, 90], baseline=4)
    assert chart.target == 50
    assert chart.sd == pytest.approx(np.std([50, 51, 49, 50], ddof=1))
    assert chart.alarms == (4,)


@pytest.mark.parametrize("baseline", [4, 6, 10])
def test_a_good_axle_seldom_alarms(baseline):
    """Any false alarm in 20 jobs after an estimated good state, or a good state that seems to drift.

    With limits at three deviations, as for a known state, it would be 24 to 43 %.
    """
    rng = np.random.default_rng(baseline)
    charts = [verdict(watch(50 + rng.standard_normal(baseline + 20), baseline=baseline))[0] for _ in range(1500)]
    assert np.mean([shows in (ChartState.SIGNAL, ChartState.DRIFTS) for shows in charts]) < 0.05 + 0.015


def test_a_falling_good_state_is_none():
    chart = watch([60.0, 58.6, 57.0, 55.4, 53.8, 52.2], baseline=6)
    assert verdict(chart)[0] is ChartState.DRIFTS
    assert verdict(chart)[1].startswith("the first 6 jobs fall by 14 %")


def test_only_a_good_state_shows_nothing():
    assert verdict(watch([50, 51, 49, 50], baseline=4))[0] is ChartState.TOO_FEW
    assert verdict(watch([50, 51, 49, 50, 50.5], baseline=4)) == (
        ChartState.NONE,
        "no change is shown in 1 jobs after the first 4",
    )


@pytest.mark.parametrize(("values", "baseline"), [([1, 2, 3], 3), ([1, 2, 3, 4], 5), ([2, 2, 2, 2], 4)])
def test_raises(values, baseline):
    with pytest.raises(InputError):
        watch(values, baseline=baseline)


@pytest.mark.parametrize("value", [0.0, -1.0, np.nan])
@pytest.mark.parametrize("what", ["sd", "width", "weight"])
def test_ewma_raises(what: str, value: float):
    ewma([1.0], target=0, sd=1.0, width=3.0, weight=1.0)
    with pytest.raises(InputError):
        ewma([1.0], target=0, **{"sd": 1.0, "width": 3.0, "weight": 1.0, what: value})


def test_ewma_takes_finite_values_only():
    with pytest.raises(InputError):
        ewma([np.nan], target=0, sd=1)
    with pytest.raises(InputError):
        ewma([1.0], target=np.inf, sd=1)


@pytest.mark.parametrize(("value", "alarms"), [(51.0, ()), (49.0, ()), (51.001, (0,)), (48.999, (0,))])
def test_at_its_limit_a_job_is_within(value, alarms):
    """Of weight 1 the average is the job itself; limits at one standard deviation."""
    assert ewma([value], target=50, sd=1.0, weight=1.0, width=1.0).alarms == alarms


def test_what_makes_a_chart():
    chart = ewma([60.0, 50.0], target=50, sd=1.0)
    assert chart.average == pytest.approx([53.0, 52.1])  # three tenths of the newest
    assert chart.baseline == 0
    assert ewma([50.0], target=50, sd=0.5, weight=0.3, width=0.5).steady_high > 50
    for kwargs in ({"weight": 1.5}, {"weight": -0.1}):
        with pytest.raises(InputError, match="weight"):
            ewma([50.0], target=50, sd=1.0, **kwargs)
    with pytest.raises(InputError, match="one finite value"):
        ewma([[50.0, 51.0]], target=50, sd=1.0)


def test_the_first_alarm_tells_the_way():
    none = np.empty(0)
    chart = EwmaChart(np.array([50.0, 53.0, 47.0]), none, none, 50.0, 1.0, (1, 2), 48.0, 52.0, 4)
    assert verdict(chart) == (ChartState.SIGNAL, "a change is shown: above its band")


@pytest.mark.parametrize("baseline", [4, 10])
def test_limits_are_drawn_as_charts_are_made(monkeypatch, baseline):
    """The same draws, each charted by itself: 4 % of the charts have a job beyond the limits."""
    monkeypatch.setattr(control, "CHARTS", 300)
    worst = []
    for jobs in np.random.default_rng(2024).standard_normal((300, baseline + 20)):
        good = jobs[:baseline]
        chart = ewma(jobs, target=good.mean(), sd=good.std(ddof=1), weight=0.3, width=1.0)
        worst.append(np.max(np.abs(chart.average - chart.target) / (chart.high - chart.target)))
    assert limit_width.__wrapped__(baseline, 0.3) == pytest.approx(np.quantile(worst, 0.96), rel=1e-9)


@pytest.mark.parametrize("baseline", [4, 10])
def test_limits_are_passed_by_four_in_a_hundred_good_axles(baseline):
    """Counted over other draws than those that the limits come from: jobs of a good axle after its good state."""
    x = np.random.default_rng(7).standard_normal((40_000, baseline + 20))
    good = x[:, :baseline]
    z, sd, weight = good.mean(axis=1), good.std(axis=1, ddof=1), 0.3
    target, out, share = z, np.zeros(len(x), bool), 0.0
    for job in x.T:
        z = weight * job + (1 - weight) * z
        share = weight**2 + (1 - weight) ** 2 * share  # variance of the average, of that of a job
        out |= np.abs(z - target) > limit_width(baseline, weight) * sd * np.sqrt(share)
    assert out.mean() == pytest.approx(0.04, abs=0.003)


@pytest.mark.parametrize(("scatter", "drifts"), [(0.159, True), (0.160, False)])
@pytest.mark.parametrize("way", [1, -1])
def test_a_good_state_drifts_from_one_in_a_hundred_on(way, scatter, drifts):
    """Four jobs, one more each, off the line by ± c: t = 1/(c √0.4), Student's t of 2 is 9.925 at 1 %."""
    jobs = 50 + way * np.array([-1.5 + scatter, -0.5 - scatter, 0.5 - scatter, 1.5 + scatter])
    assert watch(jobs, baseline=4).drift == pytest.approx(way * 3 / 50 if drifts else 0.0)


@pytest.mark.parametrize(("jobs", "baseline", "there"), [(4, 5, 4), (10, 3, 3)])
def test_how_many_good_jobs_there_are(jobs, baseline, there):
    with pytest.raises(InputError, match=f"4 or more good jobs as its baseline; there are {there}"):
        watch(np.arange(jobs), baseline=baseline)
