"""How often a rule decides wrongly over all axles that come to be tested (JCGM 106, clause 9).

Conventions:
- A population is a density of true values; the measurement adds a normal error with standard uncertainty u.
- Acceptance runs from lower + guard to upper - guard: a positive guard accepts less, a negative one more.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import gammaln, ndtr

from logger.errors import InputError

Floats = NDArray[np.float64]

PANELS = 200  # of 16 Gauss-Legendre points each: densities of this kind to ten digits
POINTS = 16
FAR_FROM_ZERO = 4.0  # standard deviations: a normal population has 3e-5 of itself below zero
TAIL = 12.0  # standard deviations to either side; what lies beyond is below rounding


@dataclass(frozen=True, slots=True)
class Population:
    """A density of true values and the range that holds all of it."""

    density: Callable[[Floats], Floats]
    low: float
    high: float


def normal_population(mean: float, sd: float) -> Population:
    """Give a normal population.

    Raises:
        InputError: A spread that is not positive.
    """
    if not (sd > 0 and math.isfinite(sd) and math.isfinite(mean)):
        raise InputError("the spread of a population must be positive")
    scale = 1 / (sd * math.sqrt(2 * math.pi))
    return Population(lambda x: scale * np.exp(-(((x - mean) / sd) ** 2) / 2), mean - TAIL * sd, mean + TAIL * sd)


def gamma_population(shape: float, rate: float) -> Population:
    """Give a gamma population: of quantities that cannot be negative.

    Raises:
        InputError: A shape or rate that is not positive.
    """
    if not (shape > 0 and rate > 0):
        raise InputError("shape and rate of a gamma population must be positive")
    log_scale = shape * math.log(rate) - float(gammaln(shape))
    high = (shape + TAIL * 2 * math.sqrt(shape) + TAIL * 2) / rate
    return Population(lambda x: np.exp(log_scale + (shape - 1) * np.log(x) - rate * x), 0.0, high)


def _integral(f: Callable[[Floats], Floats], low: float, high: float) -> float:
    if not high > low:
        return 0.0
    nodes, weights = np.polynomial.legendre.leggauss(POINTS)
    edges = np.linspace(low, high, PANELS + 1)
    half = (edges[1] - edges[0]) / 2
    x = (edges[:-1, None] + half) + half * nodes[None, :]
    return float((f(x) * weights).sum() * half)


def torque_population(mean: float, sd: float) -> Population:
    """Give a population of torques, which cannot be negative: normal where that makes no difference, else gamma.

    Raises:
        InputError: A mean or spread that is not positive.
    """
    if not mean > 0:
        raise InputError("the mean of a population of torques must be positive")
    population = normal_population(mean, sd)
    return population if mean >= FAR_FROM_ZERO * sd else gamma_population((mean / sd) ** 2, mean / sd**2)


def risks(
    population: Population, u: float, lower: float | None, upper: float | None, *, guard: float = 0.0
) -> tuple[float, float]:
    """Give the shares of all items that are wrongly accepted and wrongly rejected.

    Args:
        population: Of true values.
        u: Standard uncertainty of the measurement.
        lower, upper: The limit.
        guard: From the limit to the acceptance limit, inwards.

    Returns:
        consumer, producer: Global risks (JCGM 106, 9.4 and 9.5): accepted but beyond the limit; rejected but within.
    """
    low, high = -math.inf if lower is None else lower, math.inf if upper is None else upper

    def accepted(x: Floats) -> Floats:
        if u <= 0:
            return ((x >= low + guard) & (x <= high - guard)).astype(float)
        above = np.ones_like(x) if math.isinf(low) else ndtr((x - low - guard) / u)
        below = np.zeros_like(x) if math.isinf(high) else ndtr((x - high + guard) / u)
        return np.asarray(np.maximum(0.0, above - below), np.float64)

    def passing(x: Floats) -> Floats:
        return population.density(x) * accepted(x)

    def failing(x: Floats) -> Floats:
        return population.density(x) * (1 - accepted(x))

    inside = max(low, population.low), min(high, population.high)
    consumer = _integral(passing, population.low, min(low, population.high))
    consumer += _integral(passing, max(high, population.low), population.high)
    return consumer, _integral(failing, *inside)
