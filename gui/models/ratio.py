"""A ratio limit: the greatest rotating torque in gear ÷ that in neutral, both wheels free, from two recordings."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.limits import decide, decided_by, rule_words
from analysis.sides import gear_ratio
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.recorded import RecordingReading
    from logger.header import Limit

GEAR_WORDS = {"neutral": "in neutral", "in gear": "in gear"}
OTHER_GEAR = {"neutral": "in gear", "in gear": "neutral"}


@dataclass(frozen=True, slots=True)
class Ratio:
    """What two recordings say together.

    Attributes
    ----------
    text : str
        The ratio with its interval, or why there is none.
    parts : tuple of str
        Which recording is which half.
    state, rule, limit : str
        The result, what decided, and against what; empty without a limit of this kind.
    notes : tuple of str
        What the reader must know.
    """

    text: str
    parts: tuple[str, ...]
    state: str = ""
    rule: str = ""
    limit: str = ""
    notes: tuple[str, ...] = ()


def half_words(limit: Limit | None, gear: str | None) -> str:
    """Say what a single recording is worth for a ratio limit; empty for any other limit.

    >>> from logger.header import Limit
    >>> ratio = Limit(quantity="rotating maximum", kind="ratio min", unit="1", source="manual", lower=2.5)
    >>> half_words(ratio, "neutral")[:50]
    'This is the half in neutral. The limit compares tw'
    """
    if limit is None or limit.kind != "ratio min":
        return ""
    if gear not in OTHER_GEAR:
        return "The limit compares a recording in gear with one in neutral: say under “Kind of test” which this is."
    other = GEAR_WORDS[OTHER_GEAR[gear]]
    return (
        f"This is the half {GEAR_WORDS[gear]}. The limit compares two recordings, both wheels free: the greatest "
        f"rotating torque in gear ÷ that in neutral. Record the half {other}, too; on the Review page choose both."
    )


def unjudged_words(limit: Limit | None) -> str:
    """Say why a single value has no result."""
    return "Half of a ratio" if limit is not None and limit.kind == "ratio min" else "No limit to compare with"


def ratio_of(readings: Sequence[RecordingReading]) -> Ratio | None:
    """Give the ratio of two recordings; None where they are not one in gear and one in neutral."""
    by_gear = {r.header.test.gear: r for r in readings if r.header is not None}
    if len(readings) != 2 or set(by_gear) != {"in gear", "neutral"}:
        return None
    in_gear, neutral = by_gear["in gear"], by_gear["neutral"]
    parts = tuple(f"{GEAR_WORDS[gear]}: {_name(by_gear[gear])}" for gear in ("in gear", "neutral"))
    parts = tuple(part[0].upper() + part[1:] for part in parts)
    try:
        budget = gear_ratio(in_gear, neutral)
    except HeldwheelError as error:
        return Ratio("–", parts, notes=(str(error),))
    decimals = max(0, min(4, 1 - math.floor(math.log10(budget.u95)))) if budget.u95 > 0 else 2  # JCGM 100, 7.2.6
    text = f"{budget.value:.{decimals}f} ± {budget.u95:.{decimals}f}"
    notes = _doubts(in_gear, neutral)
    bounds = next((r.bounds for r in (in_gear, neutral) if r.bounds and r.bounds.written.kind == "ratio min"), None)
    if bounds is None:
        return Ratio(text, parts, notes=notes)
    own = in_gear.header.decision if in_gear.header is not None else None
    rule, guard = decided_by(own)
    result = decide(budget.value, budget.u, bounds, dof=budget.dof, rule=rule, guard=guard, notes=notes)
    limit = f"{bounds.words}\n{bounds.source}"
    return Ratio(text, parts, str(result.state), rule_words(rule, guard), limit, result.notes)


def _doubts(in_gear: RecordingReading, neutral: RecordingReading) -> tuple[str, ...]:
    """Say what about the two may not belong together."""
    heads = [r.header for r in (in_gear, neutral) if r.header is not None]
    found = []
    if any(head.test.held not in (None, "none") for head in heads):
        found.append("the ratio is for both wheels free: here one was held")
    for what, values in (
        ("vehicle", {head.job.vehicle for head in heads}),
        ("side", {head.test.side for head in heads}),
        ("limit", {str(head.limit.lower) for head in heads if head.limit is not None}),
    ):
        if len(values) > 1:
            found.append(f"the two recordings name another {what}: do they belong together?")
    if any(r.simulated for r in (in_gear, neutral)):
        found.append("simulated: must never be filed as a test")
    return tuple(found)


def _name(reading: RecordingReading) -> str:
    return reading.file.replace("\\", "/").rsplit("/", 1)[-1]
