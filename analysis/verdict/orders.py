"""What repeats as the wheel turns, by name: of the wheel, the slipping packs, the pinion; at the axle, and its words.

With the other side held the case turns half as fast as the wheel: the packs slip one turn, and the pinion makes half
the axle ratio of turns, for two and one of the wheel's. With both wheels free the pinion makes the whole ratio and no
pack slips; with the case held the pinion stands, and the packs slip as fast as the wheel turns.

A pattern is a hint of what may be looked at, never a finding: different parts turn alike, and a hand that pushes
unevenly round the turn makes one, too.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.to_axle.at_axle import ANGLE_HALF_WIDTH_RAD, CALIBRATION, NOT_SENSED
from analysis.trace.orders import find_waves, turns_needed
from analysis.uncertainty.budget import Budget, BudgetRow, Input, half_width, t_factor

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.to_axle.lever import Fixture
    from analysis.trace.orders import Wave
    from analysis.trace.results import Pull, Round
    from analysis.verdict.judge import AtAxle
    from logger.header import Header

WAVES_PACK = "a plate or spring that is uneven: the packs slip once round in two turns of the wheel"
ONCE = "a dragging brake, a bent hub, a bearing, an unbalanced wheel, the lever's own weight, or a pack's second wave"
TWICE = "an oval drum, a hub drawn out of true by its fixings, or a pack's fourth wave"
PINION = "gear mesh, a pinion bearing or flange out of true, an unbalanced propshaft"
JOINT = "a universal joint that works at an angle"
"""What has such a pattern (common practice, no source); a universal joint turns unevenly twice a turn."""

APART = 0.25
"""From this share of the turns that it takes on, an order is fitted along with the others although nothing is said of
it: two waves have then run apart by an eighth of their length."""

DEGREES = 180 / math.pi


@dataclass(frozen=True, slots=True)
class Pattern:
    """One order of a pull."""

    name: str  # in words
    per_turn: float  # how often it repeats in a turn of the wheel
    hint: str  # what may make it
    turns: float  # steady turns of the wheel there were
    needs_turns: float  # ... and that it takes.
    wave: Wave | None = None  # at the sensor, from the start of the pull; None where it cannot be told
    at_axle: Budget | None = None  # its amplitude at the axle, N·m
    # the amplitude at the axle with the stated weight of the lever taken off, where the sensor does not see it
    lever_off: Budget | None = None
    lever_off_peak_deg: float = math.nan  # where that is highest

    @property
    def seen(self) -> bool:
        """Whether it stands out of the rest."""
        return self.wave is not None and self.wave.seen

    @property
    def size_nm(self) -> tuple[float, float]:
        """Amplitude and its 95 % half-width: at the axle where that is known, else at the sensor."""
        if self.at_axle is not None:
            return self.at_axle.value, self.at_axle.u95
        return (math.nan, math.nan) if self.wave is None else (self.wave.amplitude_nm, self.wave.circle_nm)

    @property
    def most_nm(self) -> float:
        """How large it may be."""
        return sum(self.size_nm)

    @property
    def peak_deg(self) -> float:
        """Angle of the wheel from the start of the pull at which it is highest first, degrees."""
        return math.nan if self.wave is None else _peak_deg(self.per_turn, self.wave.cos_nm, self.wave.sin_nm)

    @property
    def peak_u95_deg(self) -> float:
        """Its 95 % half-width; half the distance of two peaks where any angle is possible."""
        wave = self.wave
        return math.nan if wave is None else _spread_deg(self.per_turn, wave.amplitude_nm, wave.circle_nm)

    def to_json(self) -> dict[str, object]:
        """Give the pattern as JSON-ready values."""
        wave, axle, off = self.wave, self.at_axle, self.lever_off
        return {
            "name": self.name,
            "per_turn": self.per_turn,
            "turns": self.turns,
            "needs_turns": None if math.isinf(self.needs_turns) else self.needs_turns,
            "told": wave is not None,
            "seen": self.seen,
            "amplitude_nm": None if wave is None else wave.amplitude_nm,
            "amplitude_u95_nm": None if wave is None else wave.circle_nm,
            "peak_deg": None if wave is None else self.peak_deg,
            "peak_u95_deg": None if wave is None else self.peak_u95_deg,
            "at_axle_nm": None if axle is None else axle.value,
            "u95_axle_nm": None if axle is None else axle.u95,
            "without_lever_nm": None if off is None else off.value,
            "u95_without_lever_nm": None if off is None else off.u95,
            "hint": self.hint,
        }


def patterns_of(pull: Pull, header: Header, at: AtAxle | None) -> tuple[Pattern, ...]:
    """Give the orders of a pull; none without an angle.

    Args:
        header: Axle ratio, and what was held: without both nothing is said of the pinion.
        at: What brings the pull to the axle, where the fixture is known.
    """
    seen = pull.round
    if seen is None:
        return ()
    named = _named(header)
    needs = [turns_needed(named[n][1], [k for _, k, _ in named[:n]]) for n in range(len(named))]
    if seen.turns < min(needs):
        return tuple(_pattern(*one, seen, need, None, pull, at) for one, need in zip(named, needs, strict=True))
    # What cannot be told, but runs apart from its neighbour within the pull, must not be taken for another's.
    fitted = [n for n, need in enumerate(needs) if seen.turns >= APART * need]
    waves = dict(zip(fitted, find_waves(seen, [named[n][1] for n in fitted]), strict=False))
    found = []
    for n, ((name, order, hint), need) in enumerate(zip(named, needs, strict=True)):
        wave = waves.get(n) if seen.turns >= need else None
        unlike = [
            need for (_, k, _), need in zip(named, needs, strict=True) if seen.turns < need and _near(k, order, need)
        ]
        if wave is not None and unlike:
            hint = f"{hint}, or the pinion's turn, {_apart(max(unlike))}"
        found.append(_pattern(name, order, hint, seen, need, wave, pull, at))
    return tuple(found)


def _apart(turns: float) -> str:
    return f"which takes {turns:.1f} turns to tell from it" if math.isfinite(turns) else "which is just as long"


def _near(order: float, other: float, needs_turns: float) -> bool:
    """Tell whether an order takes as many turns because of this other one."""
    return abs(order - other) * needs_turns < 1 if math.isfinite(needs_turns) else order == other


def _named(header: Header) -> list[tuple[str, float, str]]:
    """Give name, order and hint of what can turn; those of the pinion last, because they give way."""
    held, ratio = header.test.held, header.axle.ratio
    found = [("once per turn of the wheel", 1.0, ONCE), ("twice per turn of the wheel", 2.0, TWICE)]
    if held in {None, "other side"}:
        found.insert(0, ("every second turn of the wheel", 0.5, WAVES_PACK))
    pinion = {"other side": 0.5, "none": 1.0}.get(held or "")
    if ratio and pinion:
        found += [("once per turn of the pinion", pinion * ratio, PINION)]
        found += [("twice per turn of the pinion", 2 * pinion * ratio, JOINT)]
    return found


def _pattern(
    name: str, order: float, hint: str, seen: Round, need: float, wave: Wave | None, pull: Pull, at: AtAxle | None
) -> Pattern:
    if wave is None or at is None:
        return Pattern(name, order, hint, seen.turns, need, wave)
    factor = at.fixture.factor
    parts = factor * wave.cos_nm, factor * wave.sin_nm
    budget = _budget(wave, at, *parts)
    weight = _lever_wave(at.fixture, pull.direction) if order == 1.0 else None
    if weight is None:
        return Pattern(name, order, hint, seen.turns, need, wave, budget)
    off = parts[0] + weight[0], parts[1] + weight[1]
    size = math.hypot(*weight)
    note = "lever's stated weight, m g r cos(angle); start angle within ± 15°"
    # A phasor turned by an angle moves by twice the sine of its half.
    row = half_width(NOT_SENSED, size, 2 * size * math.sin(ANGLE_HALF_WIDTH_RAD / 2), shared=True, note=note)
    less = _budget(wave, at, *off, BudgetRow(row, 1.0))
    return Pattern(name, order, hint, seen.turns, need, wave, budget, less, _peak_deg(order, *off))


def _budget(wave: Wave, at: AtAxle, cos_nm: float, sin_nm: float, *more: BudgetRow) -> Budget:
    """Give the amplitude of a pattern at the axle with its rows."""
    fixture, value = at.fixture, math.hypot(cos_nm, sin_nm)
    u = wave.circle_nm / t_factor(wave.dof)
    fit = Input("pattern", wave.amplitude_nm, u, dof=wave.dof, note="what else varies round the turn")
    rows = [BudgetRow(fit, fixture.factor)]
    rows += [BudgetRow(i, fixture.factor * wave.amplitude_nm) for i in at.instrument.inputs if i.name == CALIBRATION]
    rows += [BudgetRow(i, wave.amplitude_nm * fixture.slopes[i.name]) for i in fixture.inputs]
    return Budget("pattern", value, "N·m", (*rows, *more))


def _lever_wave(fixture: Fixture, direction: int) -> tuple[float, float] | None:
    """Give the part of a stated lever's weight that the sensor misses, as cosine and sine of the angle turned."""
    weight = fixture.weight
    if weight is None or weight.assumed or weight.start_angle_rad is None or not fixture.unsensed_most_nm:
        return None
    start = weight.start_angle_rad
    return direction * fixture.unsensed_nm(start), direction * fixture.unsensed_nm(start + direction * math.pi / 2)


def _peak_deg(order: float, cos_nm: float, sin_nm: float) -> float:
    return math.atan2(sin_nm, cos_nm) % (2 * math.pi) * DEGREES / order


def _spread_deg(order: float, amplitude_nm: float, circle_nm: float) -> float:
    """Give how far a peak may lie off: the angle under which the circle about a phasor's end is seen."""
    return (math.asin(circle_nm / amplitude_nm) if circle_nm < amplitude_nm else math.pi) * DEGREES / order


def pattern_lines(
    pulls: Sequence[Sequence[Pattern]],
    torque: Callable[[float, float | None], str],
    figure: Callable[[float, int], str],
) -> list[str]:
    """Say what repeats in each pull: a line for each pattern that is seen, one for what is not, or cannot be told.

    Args:
        pulls: Those of every pull, in order; empty where it has no angle.
        torque, figure: See ``analysis.verdict.elastic.elastic_words``.
    """
    with_angle = [own for own in pulls if own]
    longest = max((own[0].turns for own in with_angle), default=0.0)
    least = min((p.needs_turns for own in with_angle for p in own), default=0.0)
    if longest < least:
        text = f"the longest pull has {figure(longest, 1)} steady turns, {figure(least, 0)} would do"
        return [f"What repeats per turn cannot be told: {text}"]
    return [text for number, own in enumerate(pulls, 1) if own for text in _lines(number, own, torque, figure)]


def _lines(
    number: int,
    patterns: Sequence[Pattern],
    torque: Callable[[float, float | None], str],
    figure: Callable[[float, int], str],
) -> list[str]:
    turns = figure(patterns[0].turns, 1)
    if all(p.wave is None for p in patterns) and patterns[0].turns >= min(p.needs_turns for p in patterns):
        return [f"Pull {number}, what repeats per turn: cannot be told, too much varies that does not repeat"]
    if all(p.wave is None for p in patterns):
        least = figure(min(p.needs_turns for p in patterns), 0)
        return [f"Pull {number}, what repeats per turn: cannot be told in {turns} steady turns, {least} would do"]
    lines = [text for p in patterns if p.seen for text in _seen_lines(number, p, torque, figure)]
    absent = [f"{p.name} below {torque(p.most_nm, None)}" for p in patterns if p.wave is not None and not p.seen]
    if absent:
        lines.append(f"Pull {number}, not seen: {' · '.join(absent)}")
    untold = [
        f"{p.name} takes {figure(p.needs_turns, 1)}"
        if math.isfinite(p.needs_turns)
        else f"{p.name} repeats like another"
        for p in patterns
        if p.wave is None
    ]
    if untold:
        lines.append(f"Pull {number}, cannot be told in {turns} steady turns: {' · '.join(untold)}")
    return lines


def _seen_lines(
    number: int, p: Pattern, torque: Callable[[float, float | None], str], figure: Callable[[float, int], str]
) -> list[str]:
    def peak(angle_deg: float, u95_deg: float) -> str:
        return f"highest {figure(angle_deg, 0)} ± {figure(u95_deg, 0)}° after its start"

    where = "at the axle" if p.at_axle else "at the sensor"
    size = f"amplitude {torque(*p.size_nm)} {where}, {peak(p.peak_deg, p.peak_u95_deg)}"
    lines = [f"Pull {number}, {p.name}: {size}. A hint only; it may be: {p.hint}"]
    if p.lever_off is not None:
        value, u95 = p.lever_off.value, p.lever_off.u95
        off = f"amplitude {torque(value, u95)}, {peak(p.lever_off_peak_deg, _spread_deg(p.per_turn, value, u95))}"
        lines.append(f"Pull {number}, {p.name}, the lever's stated weight taken off: {off}")
    return lines
