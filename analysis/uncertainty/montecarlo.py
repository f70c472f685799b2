"""Propagation of distributions by Monte Carlo (JCGM 101), beside the budget and in judgement of it.

Conventions:
- Inputs are those of a budget; the model is the same function, called with arrays of trials.
- An input with finite degrees of freedom is drawn from a scaled and shifted t-distribution (JCGM 101, 6.4.9).
- Correlated inputs must be normal (JCGM 101, 6.4.8).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from analysis.uncertainty.budget import LEVEL, PER_HALF_WIDTH, Budget, Correlation, Input, Model, Shape

Floats = NDArray[np.float64]

TRIALS = 1_000_000  # JCGM 101, 7.2.2: about 1e6 gives a 95 % interval correct to one or two digits
BLOCK = 10_000  # JCGM 101, 7.9.4: trials per adaptive block
MOST_BLOCKS = 2_000  # the adaptive procedure stops here: 2e7 trials
SEED = 20_080_101  # fixed, so that a result can be made again


@dataclass(frozen=True, slots=True)
class MonteCarlo:
    """A distribution's summary."""

    # mean, u: estimate and standard uncertainty
    mean: float
    u: float
    # low, high: Probabilistically symmetric coverage interval
    low: float
    high: float
    shortest: tuple[float, float]  # shortest coverage interval (JCGM 101, 5.3.4)
    trials: int  # how many trials were made
    stable: bool = True  # whether the adaptive procedure reached its tolerance (always so for a fixed number)


def tolerance(u: float, digits: int = 2) -> float:
    """Give the numerical tolerance of a standard uncertainty stated with so many digits (JCGM 101, 7.9.2).

    >>> tolerance(2.0, 1), tolerance(2.0, 2), tolerance(2.0, 3)
    (0.5, 0.05, 0.005)
    """
    if u <= 0:
        return 0.0
    power = math.floor(math.log10(u)) - (digits - 1)
    if round(u / 10.0**power) >= 10**digits:  # 9.96 with two digits is 10
        power += 1
    return float(f"0.5e{power}")


def _standard(i: Input, count: int, rng: np.random.Generator) -> Floats:
    """Trials of (X - value) for one input."""
    if i.u == 0:
        return np.zeros(count)
    if i.shape is Shape.NORMAL:
        return i.u * (rng.standard_normal(count) if math.isinf(i.dof) else rng.standard_t(i.dof, count))
    half = i.u / PER_HALF_WIDTH[i.shape]
    if i.shape is Shape.RECTANGULAR:
        return half * rng.uniform(-1, 1, count)
    if i.shape is Shape.TRIANGULAR:
        return half * rng.triangular(-1, 0, 1, count)
    return half * np.sin(rng.uniform(0, 2 * math.pi, count))


def _factor(inputs: Sequence[Input], correlations: Sequence[Correlation]) -> Floats | None:
    """Give the lower Cholesky factor of the correlation matrix, or None where nothing correlates.

    Raises:
        ValueError: Correlated inputs that are not normal, or coefficients that contradict each other.
    """
    if not correlations:
        return None
    place = {i.name: k for k, i in enumerate(inputs)}
    matrix = np.eye(len(inputs))
    for a, b, r in correlations:
        for name in (a, b):
            if inputs[place[name]].shape is not Shape.NORMAL:
                raise ValueError(f"{name} is correlated and {inputs[place[name]].shape}: only normal inputs can be")
        matrix[place[a], place[b]] = matrix[place[b], place[a]] = r
    try:
        return np.asarray(np.linalg.cholesky(matrix), np.float64)
    except np.linalg.LinAlgError:
        raise ValueError("the correlation coefficients contradict each other") from None


def _draw(inputs: Sequence[Input], factor: Floats | None, count: int, rng: np.random.Generator) -> Mapping[str, Floats]:
    if factor is None:
        return {i.name: i.value + _standard(i, count, rng) for i in inputs}
    z = factor @ rng.standard_normal((len(inputs), count))
    tied = np.abs(factor - np.eye(len(inputs))).sum(axis=0) + np.abs(factor - np.eye(len(inputs))).sum(axis=1) > 0
    return {i.name: i.value + (i.u * z[k] if tied[k] else _standard(i, count, rng)) for k, i in enumerate(inputs)}


def _shortest(ordered: Floats, level: float) -> tuple[float, float]:
    inside = max(1, min(len(ordered) - 1, round(level * len(ordered))))
    widths = ordered[inside:] - ordered[:-inside]
    first = int(np.argmin(widths))
    return float(ordered[first]), float(ordered[first + inside])


def _summary(values: Floats, level: float, *, stable: bool = True) -> MonteCarlo:
    ordered = np.sort(values)
    low, high = np.quantile(ordered, [(1 - level) / 2, (1 + level) / 2])
    return MonteCarlo(
        mean=float(ordered.mean()),
        u=float(ordered.std(ddof=1)),
        low=float(low),
        high=float(high),
        shortest=_shortest(ordered, level),
        trials=len(ordered),
        stable=stable,
    )


def monte_carlo(
    model: Model,
    inputs: Sequence[Input],
    *,
    correlations: Sequence[Correlation] = (),
    level: float = LEVEL,
    trials: int | None = TRIALS,
    digits: int = 2,
    seed: int = SEED,
) -> MonteCarlo:
    """Propagate distributions through a model.

    Args:
        model: Gives an array of results from a mapping of input name to array of trials.
        inputs: All inputs of the model.
        correlations: (name, name, coefficient); Between normal inputs.
        level: Coverage probability of the intervals.
        trials: A fixed number, or None for the adaptive procedure of JCGM 101, 7.9.
        digits: Significant digits of u that the adaptive procedure makes stable.
        seed: Of the generator.

    Raises:
        ValueError: See ``_factor``.
    """
    rng = np.random.default_rng(seed)
    factor = _factor(inputs, correlations)

    def block(count: int) -> Floats:
        return np.broadcast_to(np.asarray(model(_draw(inputs, factor, count, rng)), float), count)

    return _adaptive(block, level, digits) if trials is None else _summary(block(trials), level)


def _adaptive(block: Callable[[int], Floats], level: float, digits: int) -> MonteCarlo:
    """Add blocks until mean, u and both ends are stable to the digits wanted (JCGM 101, 7.9.4)."""
    blocks: list[Floats] = []
    summaries: list[tuple[float, float, float, float]] = []
    while len(blocks) < MOST_BLOCKS:
        blocks.append(block(BLOCK))
        one = _summary(blocks[-1], level)
        summaries.append((one.mean, one.u, one.low, one.high))
        if len(blocks) > 1:
            spread = np.std(summaries, axis=0, ddof=1) / math.sqrt(len(blocks))
            if 2 * spread.max() < tolerance(float(np.std(np.concatenate(blocks), ddof=1)), digits):
                return _summary(np.concatenate(blocks), level)
    return _summary(np.concatenate(blocks), level, stable=False)


def disagreement(budget: Budget, other: MonteCarlo, *, level: float = LEVEL, digits: int = 1) -> str:
    """Say whether a budget's interval fails the check against Monte Carlo.

    Args:
        budget: First-order result.
        other: The same by propagation of distributions, at the same ``level``.
        digits: Significant digits of u to be right in the ends of the interval.

    Returns:
        str: Empty where both ends agree within the numerical tolerance; otherwise one sentence.

    Reference: JCGM 101:2008, 8.1 (validation of the GUM uncertainty framework).
    """
    wide = budget.expanded(level)
    allowed = tolerance(budget.u, digits)
    low, high = abs(budget.value - wide - other.low), abs(budget.value + wide - other.high)
    if low <= allowed and high <= allowed:
        return ""
    return (
        f"{budget.quantity}: the budget's interval {budget.value - wide:.4g} to {budget.value + wide:.4g} and "
        f"Monte Carlo's {other.low:.4g} to {other.high:.4g} {budget.unit} differ by more than {allowed:.2g}: "
        "use Monte Carlo's"
    )
