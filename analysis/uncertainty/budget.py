"""An uncertainty budget: what each input contributes, and the interval that follows (JCGM 100).

Conventions:
- An ``Input`` is what is known about one quantity: value, standard uncertainty u, degrees of freedom.
- A ``BudgetRow`` is an input with its sensitivity c = dy/dx; its contribution is |c| u, in the result's unit.
- A ``Budget`` is a result with its rows. Combined uncertainty, effective degrees of freedom and the expanded
  uncertainty are computed from the rows, never stored beside them.
- Rows whose inputs are ``shared`` and have one name are the same thing (one certificate, one lever): ``combine``
  adds their sensitivities before squaring, so that they neither shrink with repeats nor grow in differences.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any, TypeAlias

Value: TypeAlias = Any  # a float, or an array of Monte Carlo trials: models must work on both
Model: TypeAlias = Callable[[Mapping[str, Value]], Value]

LEVEL = 0.95  # coverage probability of every interval we state unless another is named
NORMAL_95 = 1.959964  # two-sided 95 % factor of the normal distribution: certificates that say "95 %"


class Shape(StrEnum):
    """The distribution that describes what is known about an input (JCGM 101, table 1)."""

    NORMAL = "normal"  # with finite degrees of freedom: scaled and shifted t
    RECTANGULAR = "rectangular"
    TRIANGULAR = "triangular"
    ARCSINE = "arcsine"  # U-shaped: a cyclic effect at an unknown phase


# Standard uncertainty per half-width a (JCGM 100, 4.3.7-4.3.9; JCGM 101, 6.4).
PER_HALF_WIDTH = {
    Shape.RECTANGULAR: 1 / math.sqrt(3),
    Shape.TRIANGULAR: 1 / math.sqrt(6),
    Shape.ARCSINE: 1 / math.sqrt(2),
}


@dataclass(frozen=True, slots=True)
class Input:
    """What is known about one quantity."""

    name: str  # what it is, in the user's words; unique within a budget
    # value, u: estimate and standard uncertainty, in ``unit``
    value: float
    u: float
    unit: str = "N·m"
    dof: float = math.inf  # degrees of freedom of ``u``; infinite for a stated uncertainty
    shape: Shape = Shape.NORMAL  # for Monte Carlo
    # whether all pulls of a job share it (certificate, lever, zero): equal names are then one thing
    shared: bool = False
    note: str = ""  # where it comes from; "assumed" where the user did not state it


def half_width(
    name: str, value: float, half: float, unit: str = "N·m", shape: Shape = Shape.RECTANGULAR, **rest: Any
) -> Input:
    """Give an input known to lie within ``value`` ± ``half`` (JCGM 100, 4.3.7).

    >>> half_width("angle", 0.0, 1.0, "rad").u
    0.5773502691896258
    """
    return Input(name, value, half * PER_HALF_WIDTH[shape], unit, shape=shape, **rest)


@dataclass(frozen=True, slots=True)
class BudgetRow:
    """An input and its sensitivity: the change of the result per unit of the input."""

    input: Input
    sensitivity: float

    @property
    def contribution(self) -> float:
        """Its part of the standard uncertainty, in the result's unit."""
        return abs(self.sensitivity) * self.input.u


Correlation: TypeAlias = tuple[str, str, float]


@dataclass(frozen=True, slots=True)
class Budget:
    """A result, its rows, and what follows from them."""

    # quantity, value, unit: the result
    quantity: str
    value: float
    unit: str
    rows: tuple[BudgetRow, ...]  # one per input
    # (name, name, coefficient); between inputs estimated together (JCGM 100, 5.2)
    correlations: tuple[Correlation, ...] = ()

    @property
    def u(self) -> float:
        """Combined standard uncertainty (JCGM 100, eq. 10 and 16)."""
        return math.sqrt(max(0.0, sum(_cluster_variance(rows, self.correlations) for rows in self._clusters())))

    @property
    def dof(self) -> float:
        """Effective degrees of freedom by Welch-Satterthwaite (JCGM 100, eq. G.2b), not truncated.

        Correlated inputs count as one component with the fewest degrees of freedom among them.
        """
        return welch_satterthwaite(
            (math.sqrt(max(0.0, _cluster_variance(rows, self.correlations))), min(row.input.dof for row in rows))
            for rows in self._clusters()
        )

    def expanded(self, level: float = LEVEL) -> float:
        """Half-width of the interval that covers ``level`` (JCGM 100, G.6.4)."""
        return t_factor(self.dof, level) * self.u

    @property
    def u95(self) -> float:
        """Expanded uncertainty, 95 %."""
        return self.expanded()

    def row(self, name: str) -> BudgetRow:
        """Give the row of an input.

        Raises:
            KeyError: There is none of that name.
        """
        for row in self.rows:
            if row.input.name == name:
                return row
        raise KeyError(name)

    def plus(self, *inputs: Input) -> Budget:
        """Add inputs that act on the result directly (sensitivity 1), such as repeatability."""
        return replace(self, rows=(*self.rows, *(BudgetRow(i, 1.0) for i in inputs)))

    def without(self, *names: str) -> Budget:
        """Leave out the rows of these inputs."""
        return replace(self, rows=tuple(row for row in self.rows if row.input.name not in names))

    def _clusters(self) -> list[list[BudgetRow]]:
        """Rows grouped so that no correlation crosses groups."""
        group = {row.input.name: {row.input.name} for row in self.rows}
        for first, second, _ in self.correlations:
            merged = group[first] | group[second]
            for name in merged:
                group[name] = merged
        seen: set[frozenset[str]] = set()
        clusters = []
        for row in self.rows:
            names = frozenset(group[row.input.name])
            if names not in seen:
                seen.add(names)
                clusters.append([r for r in self.rows if r.input.name in names])
        return clusters


def _cluster_variance(rows: Sequence[BudgetRow], correlations: Sequence[Correlation]) -> float:
    # A group holds both ends of a correlation or none.
    part = {row.input.name: row.sensitivity * row.input.u for row in rows}
    variance = sum(row.contribution**2 for row in rows)
    return variance + sum(2 * r * part[a] * part[b] for a, b, r in correlations if a in part)


def welch_satterthwaite(components: Iterable[tuple[float, float]]) -> float:
    """Give the effective degrees of freedom of components (contribution, degrees of freedom), not truncated.

    Reference: JCGM 100:2008, eq. (G.2b).

    >>> round(welch_satterthwaite([(0.57, 9), (0.25, math.inf)]), 1)
    12.8
    """
    parts = list(components)
    largest = max((u for u, _ in parts), default=0.0) or 1.0  # of it, so that no power leaves the range of numbers
    total = sum((u / largest) ** 2 for u, _ in parts) ** 2
    below = sum((u / largest) ** 4 / dof for u, dof in parts)
    return total / below if below > 0 else math.inf


def t_factor(dof: float, level: float = LEVEL) -> float:
    """Give the coverage factor: Student's t for degrees of freedom truncated to the next lower integer.

    Reference: JCGM 100:2008, G.4.1 (truncation) and table G.2. Fewer than one degree of freedom counts as one.

    >>> round(t_factor(16.7), 2), round(t_factor(math.inf), 2)
    (2.12, 1.96)
    """
    from scipy.special import stdtrit  # here, so that --help need not wait for it

    whole = math.inf if math.isinf(dof) else max(1.0, math.floor(dof))
    return float(stdtrit(whole, (1 + level) / 2))


def propagate(
    quantity: str,
    model: Model,
    inputs: Sequence[Input],
    unit: str = "N·m",
    *,
    slopes: Mapping[str, float] | None = None,
    correlations: Sequence[Correlation] = (),
) -> Budget:
    """Propagate uncertainties through a model, to first order (JCGM 100, 5.1 and 5.2).

    Args:
        quantity, unit: Of the result.
        model: Gives the result from a mapping of input name to value.
        inputs: All inputs of the model.
        slopes: Partial derivatives at the estimates; without them central differences are used.
        correlations: (name, name, coefficient); Between inputs.
    """
    at = {i.name: i.value for i in inputs}
    if slopes is None:
        slopes = {i.name: _slope(model, at, i) for i in inputs}
    rows = tuple(BudgetRow(i, slopes[i.name]) for i in inputs)
    return Budget(quantity, float(model(at)), unit, rows, tuple(correlations))


def _step(i: Input) -> float:
    """Give a step for differences: small against u where there is one, and far above rounding."""
    return i.u * 1e-3 if i.u > 0 else 1e-6 * max(abs(i.value), 1.0)


def _slope(model: Model, at: Mapping[str, float], i: Input) -> float:
    h = _step(i)
    up, down = model({**at, i.name: i.value + h}), model({**at, i.name: i.value - h})
    return float(up - down) / (2 * h)


def second_order(model: Model, inputs: Sequence[Input]) -> float:
    """Give the standard uncertainty that first-order propagation leaves out where slopes vanish.

    Returns:
        float: sqrt of the sum over i, j of (f_ij² / 2 + f_i f_ijj) u_i² u_j²: f_ij from differences over one u. It
            matters for an angle at its turning point: a lever in line with the stud has no first-order effect at all.

    Reference: JCGM 100:2008, 5.1.2, note (inputs about normal).
    """
    at = {i.name: i.value for i in inputs}
    moving = [i for i in inputs if i.u > 0]

    def f(**shift: float) -> float:
        steps = {i.name: shift.get(i.name, 0.0) * i.u for i in moving}
        return float(model({**at, **{name: at[name] + step for name, step in steps.items()}}))

    variance = 0.0
    for i in moving:
        first = (f(**{i.name: 1.0}) - f(**{i.name: -1.0})) / 2
        for j in moving:
            variance += _mixed(f, i.name, j.name) ** 2 / 2 + first * _third(f, i.name, j.name)
    return math.sqrt(max(0.0, variance))


def _mixed(f: Callable[..., float], i: str, j: str) -> float:
    if i == j:
        return f(**{i: 1.0}) - 2 * f() + f(**{i: -1.0})
    return (f(**{i: 1.0, j: 1.0}) - f(**{i: 1.0, j: -1.0}) - f(**{i: -1.0, j: 1.0}) + f(**{i: -1.0, j: -1.0})) / 4


def _third(f: Callable[..., float], i: str, j: str) -> float:
    if i == j:
        return (f(**{i: 2.0}) - 2 * f(**{i: 1.0}) + 2 * f(**{i: -1.0}) - f(**{i: -2.0})) / 2

    def bend(at: float) -> float:
        return f(**{i: at, j: 1.0}) - 2 * f(**{i: at}) + f(**{i: at, j: -1.0})

    return (bend(1.0) - bend(-1.0)) / 2


def combine(quantity: str, terms: Sequence[tuple[float, Budget]], unit: str = "N·m") -> Budget:
    """Give the weighted sum of results whose inputs may be shared.

    Args:
        quantity, unit: Of the sum.
        terms: (weight, Budget); For a mean of two packs ``[(0.5, right), (0.5, left), (-0.5, both)]``.

    Returns:
        Shared inputs of one name appear once, with the sum of their weighted sensitivities (JCGM 100, 5.2 and F.1.2.3:
            a common input is an input of the combined model). Other inputs stay apart, named after their result.
    """
    shared: dict[str, BudgetRow] = {}
    own: list[BudgetRow] = []
    correlations: dict[tuple[str, str], float] = {}
    for weight, budget in terms:
        private = {
            row.input.name: f"{budget.quantity}: {row.input.name}" for row in budget.rows if not row.input.shared
        }
        for row in budget.rows:
            slope = weight * row.sensitivity
            if row.input.shared:
                before = shared.get(row.input.name)
                shared[row.input.name] = BudgetRow(row.input, slope + (before.sensitivity if before else 0.0))
            else:
                own.append(BudgetRow(replace(row.input, name=private[row.input.name]), slope))
        correlations |= {(private.get(a, a), private.get(b, b)): r for a, b, r in budget.correlations}
    value = sum(weight * budget.value for weight, budget in terms)
    pairs = tuple((a, b, r) for (a, b), r in correlations.items())
    return Budget(quantity, value, unit, (*shared.values(), *own), pairs)
