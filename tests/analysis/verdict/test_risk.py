"""Risks over a population against scipy's bivariate normal and against counting."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import integrate, stats
from scipy.special import ndtr

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


@pytest.mark.parametrize(("shape", "rate"), [(0.5, 0.5), (1.0, 2.0), (25.0, 0.5)])
def test_a_gamma_population_holds_all_of_it(shape, rate):
    """Up to its end; the density is that of scipy."""
    population, known = gamma_population(shape, rate), stats.gamma(shape, scale=1 / rate)
    assert population.low == 0
    assert known.sf(population.high) < 1e-9
    x = np.linspace(0.1, 30, 7)
    assert population.density(x) == pytest.approx(known.pdf(x), rel=1e-12)


def test_where_populations_end():
    """Twelve standard deviations to either side; of gamma, shape 4 and rate 2: (4 + 12 · 2 · √4 + 24)/2."""
    population = normal_population(30.0, 3.0)
    assert (population.low, population.high) == (-6.0, 66.0)
    assert gamma_population(4.0, 2.0).high == 38.0
    assert normal_population(0.0, 0.5).density(np.zeros(1)) == pytest.approx(2 / np.sqrt(2 * np.pi))
    with pytest.raises(InputError):
        gamma_population(1.0, 0.0)


def test_a_torque_is_normal_from_four_deviations_on():
    """At 4 it is the normal one, below it the gamma one, which begins at zero."""
    assert torque_population(4.0, 1.0).low == -8.0
    assert torque_population(4.2, 1.0).low == pytest.approx(-7.8)
    assert torque_population(3.9, 1.0).low == 0.0
    assert torque_population(0.5, 0.125).low == -1.0
    with pytest.raises(InputError, match="the mean"):
        torque_population(0.0, 1.0)


@pytest.mark.parametrize(("guard", "band"), [(1.0, (27.0, 28.0)), (-1.0, (26.0, 27.0))])
def test_a_perfect_measurement_with_a_guard(guard, band):
    """Only what lies between the limit and the acceptance limit is decided wrongly: at both ends alike."""
    consumer, producer = risks(normal_population(30, 3), 0.0, 27.0, 33.0, guard=guard)
    wrong = 2 * np.diff(stats.norm(30, 3).cdf(band))[0]
    assert (producer if guard > 0 else consumer) == pytest.approx(wrong, abs=2e-3)
    assert (consumer if guard > 0 else producer) == 0.0


@pytest.mark.parametrize(("lower", "upper"), [(27.0, None), (None, 33.0), (27.0, 34.0)])
def test_against_adaptive_integration(lower, upper):
    """scipy's quad over the same product of density and chance of acceptance, to nine digits."""
    u, guard = 0.8, 0.4
    low, high = -np.inf if lower is None else lower, np.inf if upper is None else upper

    def accepted(x):
        return ndtr((high - guard - x) / u) - ndtr((low + guard - x) / u)

    def density(x):
        return np.exp(-(((x - 30) / 3) ** 2) / 2) / (3 * np.sqrt(2 * np.pi))

    beyond = [(a, b) for a, b in ((-6.0, low), (high, 66.0)) if np.isfinite([a, b]).all()]
    passed = sum(integrate.quad(lambda x: density(x) * accepted(x), a, b, epsabs=1e-13)[0] for a, b in beyond)
    ends = max(low, -6.0), min(high, 66.0)
    failed = integrate.quad(lambda x: density(x) * (1 - accepted(x)), *ends, points=[27.0, 33.0], epsabs=1e-13)[0]
    assert risks(normal_population(30, 3), u, lower, upper, guard=guard) == pytest.approx((passed, failed), rel=1e-9)
