"""Identify an axle by counting turns of the propshaft and of both wheels.

Conventions:
- Turns are signed: a wheel that turned against the other one counts negative. A wheel that was held counts 0.
- An interval is a limit of error, not a statistical one: the ratio lies inside it as long as every count was read
  within its stated error.

Offers ``read_ratio`` and ``read_candidates`` (the user's own list); see ``analysis.identify.stud_circle`` for chords.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

from logger.errors import InputError
from logger.header import Record

PROPSHAFT_ERROR_TURNS = 0.125
"""A chalk mark on the propshaft is read to an eighth of a turn: common practice, no source."""

NEIGHBOURS_SHOWN = 5
"""Enough to show both sides of the best ratio and what it could be confused with."""

SAME_TURNS = 0.05
"""Two wheels turned together when their counts agree within this fraction: tyres and marks differ by less."""


class Case(StrEnum):
    """Which of the counting cases applies."""

    TOGETHER = "both wheels together"
    HELD = "one wheel held"
    BACKWARDS = "one wheel turned backwards"
    BOTH_COUNTED = "both wheels counted"


@dataclass(frozen=True, slots=True)
class RatioCandidate:
    """A ratio that an axle may have, with its tooth counts where they are known."""

    ratio: float
    ring: int | None = None
    pinion: int | None = None

    @property
    def teeth(self) -> str:
        """Ring and pinion, ``41/11``; empty where not known."""
        return f"{self.ring}/{self.pinion}" if self.ring and self.pinion else ""


def _pairs(*pairs: tuple[int, int]) -> tuple[RatioCandidate, ...]:
    return tuple(RatioCandidate(ring / pinion, ring, pinion) for ring, pinion in pairs)


TOOTH_PAIRS = _pairs(
    # Common practice, no source: printed on axle tags and in parts lists; the others are from memory.
    *[(41, 10), (41, 12), (40, 13), (41, 11), (37, 10)],
    *[(41, 15), (38, 13), (43, 14), (37, 12), (45, 14), (42, 13), (45, 13), (39, 11), (40, 11), (39, 10)],
    *[(43, 11), (37, 9), (43, 10), (39, 9), (40, 9), (41, 9), (44, 9)],
)
"""Ring and pinion tooth counts in use."""

SOLD_RATIOS = tuple(
    RatioCandidate(ratio)
    # Common practice, no source: ratios commonly sold, whose tooth counts differ from axle to axle.
    for ratio in (
        *[2.47, 2.84, 2.91, 3.00, 3.10, 3.15, 3.25, 3.27, 3.33, 3.40, 3.50, 3.60, 3.75, 3.82, 3.89, 4.00],
        *[4.40, 4.50, 4.63, 4.71, 4.78, 4.86, 5.00, 5.13, 5.25, 5.29, 5.33, 5.43, 5.50, 5.57, 5.67, 5.75],
        *[5.83, 6.00, 6.14, 6.20, 6.33, 6.43, 6.50, 6.86],
    )
)
"""Ratios on sale that no listed tooth pair gives; figures as printed, two decimals."""

CANDIDATES = tuple(sorted((*TOOTH_PAIRS, *SOLD_RATIOS), key=lambda c: c.ratio))
"""What a counted ratio is compared with when the user gives no list."""


@dataclass(frozen=True, slots=True)
class Neighbour:
    """One candidate beside the counted ratio."""

    candidate: RatioCandidate
    difference: float
    inside: bool


@dataclass(frozen=True, slots=True)
class RatioReading:
    """A ratio by counting, and what it may be."""

    # ratio, low, high: the count and its limits of error
    ratio: float
    low: float
    high: float
    case: Case  # which case applies
    formula: str  # the equation with the numbers put in
    caution: str  # what would make the same counts mean something else
    neighbours: tuple[Neighbour, ...]  # the nearest candidates, nearest first
    settled: bool  # whether exactly one candidate lies inside the interval
    # whole wheel turns, counted in the same case, that tell the nearest candidate from the next one; None where the
    # list holds only one
    wheel_turns_to_settle: int | None
    # propshaft turns per turn of the wheel in the held test (i/2): the ripple to look for in its trace
    orders_per_wheel_turn: float

    def to_json(self) -> dict[str, object]:
        """Give the reading as plain values (schema ``heldwheel ratio 1``)."""
        return {
            "schema": "heldwheel ratio 1",
            "ratio": round(self.ratio, 6),
            "interval": [round(self.low, 6), round(self.high, 6)],
            "case": self.case.value,
            "formula": self.formula,
            "caution": self.caution,
            "neighbours": [
                {
                    "ratio": round(n.candidate.ratio, 4),
                    "teeth": n.candidate.teeth or None,
                    "difference": round(n.difference, 4),
                    "inside": n.inside,
                }
                for n in self.neighbours
            ],
            "settled": self.settled,
            "wheel_turns_to_settle": self.wheel_turns_to_settle,
            "propshaft_turns_per_wheel_turn_held": round(self.orders_per_wheel_turn, 6),
        }


def read_ratio(
    propshaft_turns: float,
    left_turns: float,
    right_turns: float,
    *,
    propshaft_error_turns: float = PROPSHAFT_ERROR_TURNS,
    wheel_error_turns: float = 0.0,
    candidates: Sequence[RatioCandidate] = CANDIDATES,
) -> RatioReading:
    """Give the axle ratio from counted turns: ``i = 2N/(n_left + n_right)``.

    Args:
        propshaft_turns: N, turns of the propshaft; its sign does not matter.
        left_turns, right_turns: Turns of each wheel; negative for a wheel that turned backwards, 0 for one that was
            held.
        propshaft_error_turns: Limit of error of N.
        wheel_error_turns: Limit of error of each wheel that turned; 0 for a wheel brought back to its mark.
        candidates: What the ratio may be.

    Raises:
        InputError: Counts that give no ratio, with the way out.

    Any differential, open or limited-slip, turns its carrier at the mean of its two side gears, and the propshaft
    turns the carrier through i. With one wheel held the carrier makes *half* the turns of the other wheel, hence the
    half-count case i = 2N/n; leaving the half out is wrong by exactly a factor of two.

    >>> read_ratio(18, 10, 0).ratio
    3.6
    """
    turns = abs(propshaft_turns)
    _check_counts(turns, left_turns, right_turns, propshaft_error_turns, wheel_error_turns)
    both = abs(left_turns + right_turns)
    error = wheel_error_turns * ((left_turns != 0) + (right_turns != 0))
    if both <= error:
        raise InputError(
            f"the wheels turned {left_turns:g} and {right_turns:g}: against each other and alike, so the propshaft "
            "stood still and its ratio cannot be counted. Hold one wheel, turn the other ten times, and count again."
        )
    ratio = 2 * turns / both
    low, high = (
        2 * (turns - propshaft_error_turns) / (both + error),
        2 * (turns + propshaft_error_turns) / (both - error),
    )
    case = _case(left_turns, right_turns)
    near = sorted(candidates, key=lambda c: (abs(c.ratio - ratio), c.ratio))
    neighbours = tuple(Neighbour(c, c.ratio - ratio, low <= c.ratio <= high) for c in near[:NEIGHBOURS_SHOWN])
    inside = {round(c.ratio, 4) for c in candidates if low <= c.ratio <= high}
    return RatioReading(
        ratio,
        low,
        high,
        case,
        _formula(case, turns, left_turns, right_turns, ratio),
        _caution(case, ratio),
        neighbours,
        len(inside) == 1,
        _turns_to_settle(case, near, propshaft_error_turns, wheel_error_turns),
        ratio / 2,
    )


def _check_counts(turns: float, left: float, right: float, propshaft_error: float, wheel_error: float) -> None:
    for name, value in (("propshaft", turns), ("left", left), ("right", right)):
        if not math.isfinite(value):
            raise InputError(f"{name} turns must be a number, not {value}")
    if not (0 <= propshaft_error < math.inf and 0 <= wheel_error < math.inf):
        raise InputError("a counting error cannot be negative; 0.125 means read to an eighth of a turn")
    if turns <= propshaft_error:
        raise InputError(
            f"{turns:g} propshaft turns are not more than their own counting error of {propshaft_error:g}; "
            "turn the wheel ten times and count again"
        )


def _case(left: float, right: float) -> Case:
    if left * right < 0:
        return Case.BACKWARDS
    if left == 0 or right == 0:
        return Case.HELD
    if abs(left - right) <= SAME_TURNS * max(abs(left), abs(right)):
        return Case.TOGETHER
    return Case.BOTH_COUNTED


def _formula(case: Case, turns: float, left: float, right: float, ratio: float) -> str:
    if case is Case.HELD:
        return f"i = 2N/n = 2 × {turns:g} / {abs(left + right):g} = {ratio:.4g} (half count: the other wheel was held)"
    if left == right:
        return f"i = N/n = {turns:g} / {abs(left):g} = {ratio:.4g}"
    return f"i = 2N/(n_left + n_right) = 2 × {turns:g} / ({left:g} + {right:g}) = {ratio:.4g}"


def _caution(case: Case, ratio: float) -> str:
    if case is Case.HELD:
        return (
            f"If the other wheel was not held but turned with it, the same counts would mean {ratio / 2:.4g}; "
            f"if it turned backwards, more than {ratio:.4g}. Count both wheels."
        )
    if case is Case.TOGETHER:
        return f"If one wheel had stood still, the same propshaft count would mean {2 * ratio:.4g}. Count both wheels."
    return "The sum of both counts is what matters: a miscount of either wheel enters in full."


def _turns_to_settle(
    case: Case, near: Sequence[RatioCandidate], propshaft_error: float, wheel_error: float
) -> int | None:
    """Whole wheel turns n for which the interval is narrower than the gap to the next different candidate.

    The half interval is about (2e + i·f)/S with S = n_left + n_right, e and f the counting errors; S = n with one
    wheel held, 2n with both turning alike.
    """
    gaps = [abs(c.ratio - near[0].ratio) for c in near if abs(c.ratio - near[0].ratio) > 5e-4] if near else []
    if not gaps:
        return None
    per_turn, moving = (1, 1) if case is Case.HELD else (2, 2)
    error = 2 * propshaft_error + near[0].ratio * wheel_error * moving
    return max(1, math.floor(2 * error / min(gaps) / per_turn) + 1)


class CandidateList(Record, frozen=True, kw_only=True):
    """The user's own list of ratios: a TOML file with ``ratios = [3.08, "41/11"]``."""

    ratios: tuple[float | str, ...]
    name: str = ""


def candidate(value: float | str) -> RatioCandidate:
    """Give a candidate from a ratio (3.73) or tooth counts (``"41/11"``).

    Raises:
        InputError: What is neither.
    """
    text = str(value).strip()
    ring, slash, pinion = text.partition("/")
    try:
        if slash:
            found = RatioCandidate(int(ring) / int(pinion), int(ring), int(pinion))
        else:
            found = RatioCandidate(float(text.replace(",", ".")))
    except (ValueError, ZeroDivisionError):
        found = RatioCandidate(math.nan)
    if not 1 <= found.ratio <= 100:
        raise InputError(f"'{text}' is no axle ratio; write 3.73 or tooth counts as ring/pinion: 41/11")
    return found


def candidates_from(values: Iterable[float | str]) -> tuple[RatioCandidate, ...]:
    """Give candidates in ascending order; see ``candidate``."""
    return tuple(sorted((candidate(value) for value in values), key=lambda c: c.ratio))


def read_candidates(path: str | Path) -> tuple[RatioCandidate, ...]:
    """Read the user's own list of ratios from a TOML file.

    Raises:
        DescriptionError, InputError: A file that is not such a list.
    """
    from logger.edges.toml_file import read_toml

    listed = read_toml(Path(path), CandidateList)
    if not listed.ratios:
        raise InputError(f'{path}: ratios: the list is empty; write ratios = [3.08, "41/11"]')
    return candidates_from(listed.ratios)
