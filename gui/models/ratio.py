"""A ratio limit: the rotating maximum in gear ÷ that in neutral, both wheels free, from two recordings."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.rows.gear import judged_ratio, ratio_words
from analysis.verdict.limits import rule_words
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.verdict.recorded import RecordingReading
    from logger.header import Limit

GEAR_WORDS = {"neutral": "in neutral", "in gear": "in gear"}
OTHER_GEAR = {"neutral": "in gear", "in gear": "neutral"}


@dataclass(frozen=True, slots=True)
class Ratio:
    """What two recordings say together."""

    text: str  # the ratio with its interval, or why there is none
    parts: tuple[str, ...]  # which recording is which half
    # state, rule, limit: the result, what decided, and against what; empty without a limit of this kind
    state: str = ""
    rule: str = ""
    limit: str = ""
    notes: tuple[str, ...] = ()  # what the reader must know


def half_words(limit: Limit | None, gear: str | None) -> str:
    """Say what a single recording is worth for a ratio limit; empty for any other limit.

    >>> from logger.header import Limit
    >>> ratio = Limit(quantity="rotating maximum", kind="ratio min", unit="1", source="manual", lower=2.5)
    >>> half_words(ratio, "neutral")[:50]
    'This is the half in neutral. The limit compares tw'
    """
    if limit is None or not limit.is_ratio:
        return ""
    if gear not in OTHER_GEAR:
        return "The limit compares a recording in gear with one in neutral: say under “Kind of test” which this is."
    other = GEAR_WORDS[OTHER_GEAR[gear]]
    return (
        f"This is the half {GEAR_WORDS[gear]}. The limit compares two recordings, both wheels free: the rotating "
        f"maximum in gear ÷ that in neutral. Record the half {other}, too; on the Review page choose both."
    )


def unjudged_words(limit: Limit | None) -> str:
    """Say why a single value has no result."""
    return "Half of a ratio" if limit is not None and limit.is_ratio else "No limit to compare with"


def halves_of(readings: Sequence[RecordingReading]) -> tuple[RecordingReading, RecordingReading] | None:
    """Give the half in gear and the one in neutral; None where the recordings are not these two."""
    by_gear = {r.header.test.gear: r for r in readings if r.header is not None}
    if len(readings) != 2 or set(by_gear) != {"in gear", "neutral"}:
        return None
    return by_gear["in gear"], by_gear["neutral"]


def ratio_of(readings: Sequence[RecordingReading]) -> Ratio | None:
    """Give the ratio of two recordings; None where they are not one in gear and one in neutral."""
    halves = halves_of(readings)
    if halves is None:
        return None
    parts = tuple(f"{words}: {_name(half)}" for words, half in zip(("In gear", "In neutral"), halves, strict=True))
    try:
        found = judged_ratio(*halves)
    except HeldwheelError as error:
        return Ratio("–", parts, notes=(str(error),))
    text, result = ratio_words(found.budget), found.result
    marked = ("simulated: must never be filed as a test",) if any(half.simulated for half in halves) else ()
    if result is None:
        return Ratio(text, parts, notes=(*found.doubts, *marked))
    limit, rule = f"{result.bounds.words}\n{result.bounds.source}", rule_words(result.rule, result.guard)
    return Ratio(text, parts, str(result.state), rule, limit, (*result.notes, *marked))


def _name(reading: RecordingReading) -> str:
    return reading.file.replace("\\", "/").rsplit("/", 1)[-1]
