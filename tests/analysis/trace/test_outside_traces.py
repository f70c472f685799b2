"""Traces of other things from other libraries: sanity checks of single steps, no evidence about differentials.

- Ground reaction forces of walking people (``spm1d``): force against time with a first and a second peak.
- Hand positions of actors (``aeon``, GunPoint): a rise, a plateau, a fall.
- The yearly flow of the Nile (``statsmodels``): a level that changes once, after 1898.
"""

from __future__ import annotations

import warnings

import numpy as np
import pytest

from analysis.trace.breakaway import find_peak
from analysis.trace.gates import LAY_STILL
from analysis.trace.plateau import _over
from analysis.trace.reading import read_torque


def test_first_peak_of_walking_forces():
    """The first peak of the vertical force is the highest before mid-stance; the second may well be higher."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from spm1d.data.uv1d.regress import SpeedGRF
    forces = SpeedGRF().get_data()[0]
    t = np.linspace(0, 2.5, forces.shape[1])  # as slow as a pull: a stance takes a third of that
    clear = 0
    for force in forces:
        middle = 35 + int(np.argmin(force[35:65]))
        first, valley = float(force[:middle].max()), float(force[middle])
        if valley < 0.95 * first:  # slow walkers show hardly any
            clear += 1
            peak = find_peak(t, force, valley, 0.001)
            assert peak.torque_nm == pytest.approx(first, rel=0.02)
            assert peak.time_s == pytest.approx(t[int(np.argmax(force[:middle]))], abs=0.05)
    assert clear >= 30


def test_rise_plateau_fall_of_a_pointing_hand():
    """Class "point": the hand rises, points, and goes back; the level found is that of the time at the top; a hand
    that points as still as a lever hangs is named, for there is nothing beside it to compare it with."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from aeon.datasets import load_gunpoint

        series, labels = load_gunpoint()
    pointing = series[labels == "2", 0]
    assert len(pointing) >= 90
    rng = np.random.default_rng(1)
    found, long = 0, 0
    for raw in pointing:
        y = 20.0 * np.concatenate([np.full(75, raw[:8].mean()), raw, np.full(75, raw[-8:].mean())])
        top = float(np.median(np.sort(20.0 * raw)[-20:]))
        if (20.0 * raw > top - 0.1 * np.ptp(y)).sum() < 35:
            continue  # the hand points for less than the second and a half that a pull takes
        long += 1
        y += rng.normal(0, 0.1, len(y))
        reading = read_torque(np.arange(len(y)) / 25.0, y)
        read = reading.pulls
        pulls = [p for p in read if p.rotating and p.direction > 0]
        levels = [p.handoff_nm + p.rotating.at_sensor_nm for p in pulls]
        stated = any(abs(level - top) < 0.03 * np.ptp(y) for level in levels)
        found += stated or any(LAY_STILL in p.reasons for p in read)
    assert long >= 40
    assert found >= 0.8 * long  # the others hold too short or too unevenly for a slip


@pytest.mark.published("Nile 1871-1970 (statsmodels data; change after 1898)", rows=("9.6",), status="READ-P")
def test_transient_before_the_level_of_the_nile():
    """The truncation rule cuts off what belongs to another level: 28 years, and 849.97 remains as the mean."""
    from statsmodels.datasets import nile

    flow = nile.load_pandas().data["volume"].to_numpy(float)
    assert len(flow) == 100
    t = np.arange(100) * 0.05  # blocks of two years
    cut = _over(t, flow, np.ones(100, bool), 0.05)
    assert round(cut / 0.05 - 0.5) in (27, 28)
    assert flow[28:].mean() == pytest.approx(849.97, abs=0.005)
    assert flow[:28].mean() == pytest.approx(1097.75, abs=0.005)
