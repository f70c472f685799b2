"""Turns as they are counted at the wheel, and the ratio that they mean."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.identify.ratio import CANDIDATES, PROPSHAFT_ERROR_TURNS, CandidateList, candidates_from, read_ratio
from gui.models.typed import decimal
from logger.edges.units import parse_number
from logger.errors import InputError, QuantityError

if TYPE_CHECKING:
    from analysis.identify.ratio import RatioCandidate, RatioReading

COUNTS = ("propshaft", "left", "right")
PROPSHAFT_READ = {
    "0.5": "to half a turn",
    "0.25": "to a quarter of a turn",
    "0.125": "to an eighth of a turn",
    "0.0625": "to a sixteenth of a turn",
}
WHEELS_READ = {
    "0.0": "brought back to their marks",
    "0.125": "to an eighth of a turn",
    "0.25": "to a quarter of a turn",
}
COUNT_MOST = 1000.0  # turns: nobody turns a wheel further by hand


@dataclass(frozen=True, slots=True)
class TurnCounts:
    """Turns that were taken over, with their limits of error."""

    propshaft: float
    left: float
    right: float
    propshaft_error: float
    wheel_error: float


@dataclass(frozen=True, slots=True)
class TypedTurns:
    """What stands in the fields, as typed."""

    propshaft: str = ""
    left: str = ""
    right: str = ""
    propshaft_error: str = str(PROPSHAFT_ERROR_TURNS)
    wheel_error: str = "0.0"
    own: str = ""  # ratios of the user's own to compare with; empty for the usual ones
    own_name: str = ""


@dataclass(frozen=True, slots=True)
class CheckedCount:
    """What the turns amount to."""

    reading: RatioReading | None  # the ratio, once all three counts are there
    counts: TurnCounts | None  # the turns behind it
    wrong: dict[str, str]  # per field: why it cannot be used
    problem: str = ""  # why the counts together give no ratio


def check_count(draft: TypedTurns) -> CheckedCount:
    """Work the ratio out from the counts as they stand."""
    wrong: dict[str, str] = {}
    turns = {key: turns_of(key, getattr(draft, key), wrong) for key in COUNTS}
    listed = _candidates(draft.own, wrong)
    propshaft, left, right = (turns[key] for key in COUNTS)
    if propshaft is None or left is None or right is None or listed is None:
        return CheckedCount(None, None, wrong)
    counts = TurnCounts(abs(propshaft), left, right, float(draft.propshaft_error), float(draft.wheel_error))
    try:
        return CheckedCount(reading_of(counts, listed), counts, {})
    except InputError as error:
        return CheckedCount(None, None, {}, str(error))


def reading_of(counts: TurnCounts, listed: tuple[RatioCandidate, ...] = CANDIDATES) -> RatioReading:
    """Give the ratio of counted turns.

    Raises:
        InputError: Counts that give no ratio.
    """
    return read_ratio(
        counts.propshaft,
        counts.left,
        counts.right,
        propshaft_error_turns=counts.propshaft_error,
        wheel_error_turns=counts.wheel_error,
        candidates=listed,
    )


def own_list(draft: TypedTurns) -> CandidateList | None:
    """Give the user's own ratios as a list to save; None while there is none, or one with faults."""
    wrong: dict[str, str] = {}
    if not draft.own.strip() or _candidates(draft.own, wrong) is None:
        return None
    return CandidateList(name=draft.own_name.strip(), ratios=tuple(_own_words(draft.own)))


def own_text(listed: CandidateList) -> str:
    """Give a saved list as it is typed."""
    return "  ".join(f"{value:g}" if isinstance(value, float | int) else value for value in listed.ratios)


def _own_words(text: str) -> list[str]:
    return [word.strip(",;") for word in text.replace(";", " ").split() if word.strip(",;")]


def _candidates(text: str, wrong: dict[str, str]) -> tuple[RatioCandidate, ...] | None:
    if not text.strip():
        return CANDIDATES
    try:
        return candidates_from(_own_words(text))
    except InputError as error:
        wrong["own"] = str(error)
        return None


def turns_of(key: str, text: str, wrong: dict[str, str]) -> float | None:
    """Read a count; None where there is none yet, or one that cannot be used, which is then told in ``wrong``."""
    if not text.strip():
        return None
    try:
        value = parse_number(decimal(text))
    except QuantityError as error:
        wrong[key] = f"{error}; write turns as 18, 18.5 or 18 3/8"
        return None
    if abs(value) > COUNT_MOST:
        wrong[key] = f"No more than {COUNT_MOST:g} turns are counted by hand"
        return None
    if key == "propshaft" and value < 0:
        wrong[key] = "Its turns count without a sign"
        return None
    return value
