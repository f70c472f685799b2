"""A result against a limit: the limit as its source states it, the rule that decides, the probability behind it.

Conventions:
- Torques in N·m; a ratio limit (in gear ÷ neutral) has no unit. ``Bounds`` keep the limit as written beside it.
- A rule turns a value and its uncertainty into a state. w is the guard band: by default the expanded uncertainty U
  (95 %), or 1.645 u (one-sided 95 %), which is then named.
- Bounds are inclusive: a value just on the edge of its acceptance range is within.

Reference: JCGM 106:2012 (probability of conformity, guard bands), ILAC-G8:09/2019 and ISO 14253-1:2017 (decision
rules).  Offered: ``bounds_from``, ``Bounds``, ``decide``, ``not_valid``, ``Result``, ``State``, ``Rule``, ``Guard``,
``decided_by``, ``rule_words``, ``probability_within``; slips of entry are found by ``analysis.identify.slips``.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from analysis.uncertainty.budget import t_factor
from logger.edges.units import torque_factor
from logger.errors import DescriptionError, Fault, QuantityError

if TYPE_CHECKING:
    from analysis.verdict.repeats import JobValue
    from logger.header import Decision, Limit


class State(StrEnum):
    """What a result is, in words."""

    WITHIN = "within"
    OUTSIDE = "outside"
    TOO_CLOSE = "too close to call"
    NOT_VALID = "not valid"


# A shape beside the words, so that no state is told by colour alone.
SHAPES = {State.WITHIN: "●", State.OUTSIDE: "■", State.TOO_CLOSE: "◆", State.NOT_VALID: "▲"}


class Rule(StrEnum):
    """How uncertainty decides near a limit."""

    THREE_WAY = "three-way"  # within or outside only if the whole guarded interval lies on one side
    SIMPLE = "simple"  # uncertainty ignored: the risk at the limit is shared, up to half of all decisions there
    ACCEPTANCE = "guarded acceptance"  # whoever proves conformity carries the uncertainty
    REJECTION = "guarded rejection"  # whoever proves the opposite carries it


class Guard(StrEnum):
    """Width of the guard band."""

    U95 = "U (95 %)"  # less than 2.5 % risk of a wrong within or outside
    ONE_SIDED = "1.645 u"  # less than 5 %


def rule_words(rule: Rule, guard: Guard) -> str:
    """Name what decides.

    >>> rule_words(Rule.THREE_WAY, Guard.U95), rule_words(Rule.SIMPLE, Guard.U95)
    ('three-way, guard band w = U (95 %)', 'simple')
    """
    return str(rule) if rule is Rule.SIMPLE else f"{rule}, guard band w = {guard}"


def decided_by(decision: Decision | None, rule: Rule | None = None, guard: Guard | None = None) -> tuple[Rule, Guard]:
    """Give rule and guard band: those stated now, else the job's own, else three-way with U (95 %)."""
    own = (Rule.THREE_WAY, Guard.U95) if decision is None else (Rule(decision.rule), Guard(decision.guard))
    return rule or own[0], guard or own[1]


@dataclass(frozen=True, slots=True)
class Bounds:
    """A checked limit in SI."""

    written: Limit  # as its source states it
    # lower, upper: in N·m, or without unit for a ratio
    lower: float | None
    upper: float | None

    @property
    def quantity(self) -> str:
        """Which quantity the limit names."""
        return "in gear ÷ neutral" if self.written.is_ratio else self.written.quantity

    @property
    def torques(self) -> tuple[float | None, float | None]:
        """Lower and upper bound in N·m; a ratio has neither."""
        return (None, None) if self.written.is_ratio else (self.lower, self.upper)

    @property
    def words(self) -> str:
        """The limit in its own unit: ``at least 20 lbf·ft``."""
        limit = self.written
        unit = "" if self.written.is_ratio else f" {limit.unit}"
        if self.lower is None:
            return f"at most {limit.upper:g}{unit}"
        if self.upper is None:
            return f"at least {limit.lower:g}{unit}"
        return f"{limit.lower:g} to {limit.upper:g}{unit}"

    @property
    def source(self) -> str:
        """Source and page."""
        page = self.written.page.strip()
        return ", ".join(part for part in (self.written.source, f"p. {page}" if page[:1].isdigit() else page) if part)


# No limit in any unit is beyond these, and arithmetic cannot overflow within them.
POSSIBLE = (1e-6, 1e9)


def bounds_from(limit: Limit, *, file: str = "limit") -> Bounds:
    """Check a limit and give it in SI.

    Args:
        limit: As written.
        file: Named in the message.

    Raises:
        DescriptionError: Everything wrong with it: no source, a bound that is missing, not positive or too many, an
            unknown unit.
    """
    faults: list[Fault] = []
    if not limit.source.strip():
        faults.append(Fault("limit.source", "say where the limit comes from: manual or rule, with its edition"))
    needed = limit.bounds
    for key in ("lower", "upper"):
        value = getattr(limit, key)
        if value is None and key in needed:
            faults.append(Fault(f"limit.{key}", f"a limit of kind '{limit.kind}' needs it"))
        elif value is not None and key not in needed:
            faults.append(Fault(f"limit.{key}", f"a limit of kind '{limit.kind}' has none; a band has both"))
        elif value is not None and not POSSIBLE[0] <= value <= POSSIBLE[1]:
            faults.append(Fault(f"limit.{key}", "must be a positive number, and no absurd one"))
    if limit.lower is not None and limit.upper is not None and limit.lower >= limit.upper:
        faults.append(Fault("limit.upper", "must lie above limit.lower"))
    factor = 1.0
    if not limit.is_ratio:
        try:
            factor = torque_factor(limit.unit)
        except QuantityError as error:
            faults.append(Fault("limit.unit", str(error)))
    if faults:
        raise DescriptionError(file, faults)
    lower, upper = (None if value is None else value * factor for value in (limit.lower, limit.upper))
    return Bounds(limit, lower, upper)


@dataclass(frozen=True, slots=True)
class Result:
    """A value against a limit."""

    state: State  # within, outside, too close to call, not valid
    bounds: Bounds  # the limit
    # rule, guard: what decided; named on every result
    rule: Rule
    guard: Guard
    # value, u, dof: what was judged: N·m, or a ratio. NaN where nothing could be.
    value: float = math.nan
    u: float = math.nan
    dof: float = math.inf
    probability: float = math.nan  # of conformity, 0 to 1
    notes: tuple[str, ...] = ()  # what the reader must know beside it
    decided: JobValue | None = None  # the value of a job that it was decided by

    @property
    def u95(self) -> float:
        """Expanded uncertainty, 95 %."""
        return t_factor(self.dof) * self.u

    @property
    def shape(self) -> str:
        """The shape that goes with the state."""
        return SHAPES[self.state]

    @property
    def words(self) -> str:
        """Shape, state, limit, rule in one line."""
        parts = f"{self.shape} {self.state}: {self.bounds.quantity} {self.bounds.words} ({self.bounds.source})"
        chance = "" if math.isnan(self.probability) else f"; probability of conformity {percent(self.probability)}"
        return f"{parts}; rule: {rule_words(self.rule, self.guard)}{chance}"

    def to_json(self) -> dict[str, object]:
        """Give it as JSON-ready values."""
        limit = self.bounds.written
        return {
            "state": str(self.state),
            "quantity": self.bounds.quantity,
            "value": _number(self.value),
            "u95": _number(self.u95),
            "limit": {
                "kind": limit.kind,
                "lower": self.bounds.lower,
                "upper": self.bounds.upper,
                "unit": "1" if limit.is_ratio else "N·m",
                "as_written": self.bounds.words,
                "source": self.bounds.source,
            },
            "rule": str(self.rule),
            "guard": "none" if self.rule is Rule.SIMPLE else str(self.guard),
            "probability": _number(self.probability),
            "notes": list(self.notes),
        }


def _number(value: float) -> float | None:
    return value if math.isfinite(value) else None


def percent(probability: float) -> str:
    """Write a probability without claiming certainty: ``97.7 %``, ``> 99.9 %``."""
    if probability > 0.999:
        return "> 99.9 %"
    return "< 0.1 %" if probability < 0.001 else f"{probability * 100:.1f} %"


def probability_within(
    value: float, u: float, lower: float | None, upper: float | None, dof: float = math.inf
) -> float:
    """Give the probability of conformity of a value with standard uncertainty u.

    Reference: JCGM 106:2012, clause 7 (no prior knowledge of the item; normal, or t with ``dof``).

    >>> round(probability_within(509.7, 8.6, 490.0, None), 3)
    0.989
    """
    from scipy.special import stdtr  # here, so that --help need not wait for it

    low, high = -math.inf if lower is None else lower, math.inf if upper is None else upper
    if u <= 0:
        return float(low <= value <= high)
    below = 0.0 if math.isinf(low) else float(stdtr(dof, (low - value) / u))
    above = 0.0 if math.isinf(high) else float(stdtr(dof, (value - high) / u))
    return min(1.0, max(0.0, 1 - below - above))


def decide(
    value: float,
    u: float,
    bounds: Bounds,
    *,
    dof: float = math.inf,
    rule: Rule = Rule.THREE_WAY,
    guard: Guard = Guard.U95,
    notes: tuple[str, ...] = (),
) -> Result:
    """Judge a value against a limit.

    Args:
        value, u, dof: Of the quantity that the limit names: N·m (or a ratio), standard uncertainty, degrees of freedom.
        bounds: The limit.
        rule, guard: How uncertainty decides, and with which guard band.
        notes: Carried along.

    Raises:
        ValueError: A value or uncertainty that is no number: that must have been found before.
    """
    if not (math.isfinite(value) and math.isfinite(u) and u >= 0):
        raise ValueError(f"nothing to decide: {value} with u {u}")
    w = guard_band(u, dof, guard)
    room = min(
        math.inf if bounds.lower is None else value - bounds.lower,
        math.inf if bounds.upper is None else bounds.upper - value,
    )
    if bounds.lower is not None and bounds.upper is not None and 2 * w > bounds.upper - bounds.lower:
        notes = (*notes, "the interval is wider than the limit's band: no value could be shown to lie within")
    probability = probability_within(value, u, bounds.lower, bounds.upper, dof)
    return Result(_state(room, w, rule), bounds, rule, guard, value, u, dof, probability, notes)


def guard_band(u: float, dof: float = math.inf, guard: Guard = Guard.U95) -> float:
    """Give the width w of the guard band."""
    return t_factor(dof, 0.95 if guard is Guard.U95 else 0.90) * u


def _state(room: float, w: float, rule: Rule) -> State:
    """Decide from the room that a value has to its nearest limit; negative = beyond it."""
    if rule is Rule.SIMPLE:
        return State.WITHIN if room >= 0 else State.OUTSIDE
    if rule is Rule.ACCEPTANCE:
        return State.WITHIN if room >= w else State.OUTSIDE
    if rule is Rule.REJECTION:
        return State.OUTSIDE if room < -w else State.WITHIN
    if room >= w:
        return State.WITHIN
    return State.OUTSIDE if room < -w else State.TOO_CLOSE


def not_valid(bounds: Bounds, *reasons: str, rule: Rule = Rule.THREE_WAY, guard: Guard = Guard.U95) -> Result:
    """Give the result of a test that cannot be judged, with the reasons."""
    return Result(State.NOT_VALID, bounds, rule, guard, notes=reasons)
