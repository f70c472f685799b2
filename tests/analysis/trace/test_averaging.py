"""How well the mean of a stretch is known from few independent readings, and what noise adds to a maximum."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.signal import lfilter

from analysis.trace.averaging import expected_maximum, highest_of, level_uncertainty, mean_uncertainty
from analysis.trace.plateau import find_plateau


def covered(phi, n, runs=400, seed=4):
    """Share of first-order processes whose mean lies within 1.96 of the stated uncertainty of the truth, 0."""
    steps = np.random.default_rng(seed).standard_normal((runs, n + 800))
    rows = lfilter([1.0], [1.0, -phi], steps, axis=1)[:, 800:]
    return float(np.mean([abs(row.mean()) < 1.96 * level_uncertainty(row) for row in rows]))


@pytest.mark.parametrize(
    ("phi", "n", "least"), [(0.0, 500, 0.93), (0.9, 500, 0.93), (0.98, 500, 0.86), (0.98, 200, 0.81)]
)
def test_a_stretch_of_few_correlation_times_pays(phi, n, least):
    """Without the t factor the last two cover 0.82 and 0.71."""
    assert least < covered(phi, n) < 0.985


def test_many_readings_pay_nothing():
    x = np.random.default_rng(1).standard_normal(400)
    assert level_uncertainty(x) == pytest.approx(mean_uncertainty(x)[0], rel=0.02)
    assert level_uncertainty(x[:8]) > 1.3 * mean_uncertainty(x[:8])[0]


@pytest.mark.parametrize(
    ("n", "tabled"),
    [
        (2, 0.56419),
        (3, 0.84628),
        (5, 1.16296),
        (10, 1.53875),
        (50, 2.24907),
        (100, 2.50759),
        (500, 3.03670),
        (1000, 3.24144),
    ],
)
def test_expected_maximum_as_tabled(n, tabled):
    """The tabled expected maximum of n standard normal values."""
    assert expected_maximum(np.zeros(n), 1.0)[0] == pytest.approx(tabled, abs=2e-5)
    assert expected_maximum(np.full(n, 40.0), 0.5)[0] == pytest.approx(40 + 0.5 * tabled, abs=2e-5)


def test_expected_maximum_of_unequal_levels():
    """Where one level stands far above the others nothing competes with it: its noise averages to nothing."""
    mean, spread = expected_maximum(np.array([0.0, 0.0, 10.0]), 1.0)
    assert mean == pytest.approx(10.0, abs=1e-3)
    assert spread == pytest.approx(1.0, abs=1e-3)


@pytest.mark.parametrize("rate", [50, 100, 1000])
@pytest.mark.parametrize("wave", [0.0, 0.01])
def test_rotating_maximum_without_that_of_the_noise(rate, wave):
    """White noise of 0.6 N·m: the highest reading lies up to 1.5 N·m above the highest torque."""
    rng, missed, u = np.random.default_rng(rate), [], []
    t = np.arange(10 * rate) / rate
    for phase in np.linspace(0, 6, 40):
        torque = 40 * (1 + wave * np.sin(2 * np.pi * t / 15 + phase))
        found = find_plateau(t, torque + 0.6 * rng.standard_normal(len(t)), 0.0, 10.0)
        missed.append(found.max_nm - torque[found.steady].max())
        u.append(found.max_u_nm)
    assert abs(np.mean(missed)) < 0.25  # 0.4 of the noise, where a slow wave leaves open how many readings compete
    assert np.mean(np.abs(missed) < 1.96 * np.array(u)) > 0.84


def test_quiet_maximum_is_the_highest():
    x = np.linspace(40.0, 41.0, 200)
    assert highest_of(x, 12) == pytest.approx((41.0, 0.0), abs=1e-9)
    assert highest_of(x[:5], 12)[0] == x[4]
