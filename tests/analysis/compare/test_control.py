"""The EWMA chart."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.compare.control import ChartState, ewma, steady_width, verdict, watch
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
