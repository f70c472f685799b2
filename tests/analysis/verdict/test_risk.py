"""Risks over a population against scipy's bivariate normal and against counting."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from analysis.verdict.risk import gamma_population, normal_population, risks, torque_population
from logger.errors import InputError


@pytest.mark.parametrize("guard", [0.0, 0.4, -0.4])
def test_against_the_bivariate_normal(guard):
    """True value and reading are jointly normal: the wrongly accepted are a corner of the plane."""
    mean, sd, u, lower = 30.0, 3.0, 0.8, 27.0
    cov = [[sd**2, sd**2], [sd**2, sd**2 + u**2]]
    both = stats.multivariate_normal([mean, mean], cov)
    below = stats.norm(mean, sd).cdf(lower)
    rejected = stats.norm(mean, (sd**2 + u**2) ** 0.5).cdf(lower + guard)
    both_below = both.cdf([lower, lower + guard])
    consumer, producer = risks(normal_population(mean, sd), u, lower, None, guard=guard)
    assert consumer == pytest.approx(below - both_below, abs=2e-5)
    assert producer == pytest.approx(rejected - both_below, abs=2e-5)


def test_against_counting():
    rng = np.random.default_rng(3)
    true = rng.gamma(4, 1 / 4, 400_000)
    read = true + rng.normal(0, 0.25, true.size)
    consumer, producer = risks(gamma_population(4, 4), 0.25, 0.3, 2.0, guard=0.1)
    passed = (read >= 0.4) & (read <= 1.9)
    conforms = (true >= 0.3) & (true <= 2.0)
    assert consumer == pytest.approx(np.mean(passed & ~conforms), abs=6e-4)
    assert producer == pytest.approx(np.mean(~passed & conforms), abs=1.5e-3)


def test_perfect_measurement_decides_rightly():
    assert risks(normal_population(30, 3), 0.0, 27.0, 33.0) == (0.0, 0.0)


def test_wider_guard_trades_one_risk_for_the_other():
    found = [risks(normal_population(30, 3), 0.8, 27.0, None, guard=g) for g in (-0.8, 0.0, 0.8)]
    assert [c for c, _ in found] == sorted((c for c, _ in found), reverse=True)
    assert [p for _, p in found] == sorted(p for _, p in found)


@pytest.mark.parametrize(
    "make", [lambda: normal_population(30, 0), lambda: gamma_population(0, 1), lambda: gamma_population(1, -1)]
)
def test_impossible_populations(make):
    with pytest.raises(InputError):
        make()


@pytest.mark.parametrize(("mean", "sd"), [(30.0, 3.0), (10.0, 5.0)])
def test_torques_are_never_negative(mean, sd):
    """Mean and spread are as asked; next to nothing lies below zero."""
    population = torque_population(mean, sd)
    x = np.linspace(max(population.low, 1e-9), population.high, 200_001)
    density, step = population.density(x), x[1] - x[0]
    assert (density * x).sum() * step == pytest.approx(mean, rel=1e-3)
    assert ((density * (x - mean) ** 2).sum() * step) ** 0.5 == pytest.approx(sd, rel=1e-3)
    assert risks(population, 0.0, 0.0, None, guard=-1e9)[0] < 1e-4
    with pytest.raises(InputError, match="positive"):
        torque_population(-1.0, sd)
