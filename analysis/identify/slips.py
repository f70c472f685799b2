"""Slips that a limit is entered or compared with: the wrong unit, the wrong kind of test."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.trace.results import DIRECTION_WORDS, DIRECTIONS
from logger.edges.units import torque_factor

if TYPE_CHECKING:
    from logger.header import Limit, Test

# How far two numbers lie apart when one is in the wrong unit.
UNIT_SLIPS = {
    12.0: "lbf·in against lbf·ft",
    1.355818: "N·m against lbf·ft",
    9.80665: "N·m against kgf·m",
    100.0: "kgf·cm against kgf·m",
    7.233014: "kgf·m against lbf·ft",
    8.850746: "N·m against lbf·in",
}
# Pairs in print are rounded to two digits.
SLIP_TOLERANCE = 0.03
# Printed limits of this test lie between 5 and 270 N·m (common practice, no source); beyond twice that on either side
# the unit is doubtful.
LIKELY_NM = (2.5, 540.0)
LARGE_SLIP = 7.0  # the smallest of the unmistakable ones: kgf·m against lbf·ft
_TRIED_UNITS = ("N·m", "lbf·ft", "lbf·in", "kgf·m", "kgf·cm")


def unit_guard(value: float, unit: str, limit_nm: float | None = None) -> tuple[str, ...]:
    """Say whether a torque looks like a slip of the unit.

    Args:
        value, unit: As entered, before conversion.
        limit_nm: What it should be near: the same limit printed in a second unit, or the torque it is compared with.

    Returns:
        tuple of str: Empty, or a sentence for each suspicion.

    Raises:
        QuantityError: The unit is not known.

    >>> unit_guard(0.8, "kgf·cm", 7.8)[0]
    '0.8 kgf·cm is 0.0785 N·m, 1/99.4 of 7.8 N·m: kgf·cm against kgf·m?'
    """
    nm = value * torque_factor(unit)
    shown = f"{value:g} {unit} is {nm:.3g} N·m"
    if limit_nm is None:
        if LIKELY_NM[0] <= nm <= LIKELY_NM[1]:
            return ()
        fits = [u for u in _TRIED_UNITS if u != unit and LIKELY_NM[0] <= value * torque_factor(u) <= LIKELY_NM[1]]
        if fits:
            return (f"{shown}, unusual for this test; is it {' or '.join(fits)}?",)
        written = shown if torque_factor(unit) != 1 else f"{value:g} {unit}"
        why = "unusual for this test" if nm > 0 else f"{'below ' if nm < 0 else ''}zero, which no limit of a torque is"
        return (f"{written} is {why}: look at the figure again",)
    if nm <= 0 or limit_nm <= 0:
        return ()
    ratio = max(nm / limit_nm, limit_nm / nm)
    times = f"{ratio:.3g} times" if nm > limit_nm else f"1/{ratio:.3g} of"
    return tuple(
        f"{shown}, {times} {limit_nm:.3g} N·m: {what}?"
        for slip, what in UNIT_SLIPS.items()
        if abs(ratio / slip - 1) < SLIP_TOLERANCE
    )


def slip_against(limit: Limit, quantity: str, measured_nm: float) -> tuple[str, ...]:
    """Say whether a limit and the torque measured against it differ as two units do.

    Only slips of a factor of seven and more: a pack may well turn at 1.36 times its limit.
    """
    if limit.is_ratio or limit.quantity != quantity:
        return ()
    found: list[str] = []
    for value in (limit.lower, limit.upper):
        if value is not None:
            nm = value * torque_factor(limit.unit)
            far = min(nm, measured_nm) > 0 and max(nm / measured_nm, measured_nm / nm) > LARGE_SLIP
            found += unit_guard(value, limit.unit, measured_nm) if far else ()
    return tuple(found)


@dataclass(frozen=True, slots=True)
class Conflict:
    """A limit and a test of different kinds: refused where the number means something else, otherwise a warning."""

    refused: bool
    text: str


def _member(held: str | None, gear: str | None) -> str | None:
    """Which member is held: a case clamped on the bench and a gear engaged in the car come to the same."""
    return "case" if held == "case" or gear == "in gear" else held


def kind_conflict(limit: Limit, test: Test) -> Conflict | None:
    """Compare the kind of test that a limit is for with the kind that was made.

    With the other side held the driven wheel shows the mean of the two packs; with the case held (vice on the ring
    gear, or a gear engaged) their sum: the trap of a factor of two. With neither held it shows drag.
    """
    if limit.is_ratio:
        if test.held in (None, "none"):
            return None
        return Conflict(False, "a ratio in gear ÷ neutral is for both wheels free; in this test one part was held")
    wanted, made = _member(limit.held, limit.gear), _member(test.held, test.gear)
    if wanted is None or made is None:
        if wanted is None and made is None:
            return None
        which = "the test" if made is None else "the limit"
        return Conflict(False, f"{which} does not say which part is held: a held case reads about double")
    if wanted != made:
        names = {"case": "the case held or a gear engaged", "other side": "the other side held", "none": "neither held"}
        factor = " (about a factor of two)" if {wanted, made} == {"case", "other side"} else ""
        return Conflict(
            True, f"the limit is for {names[wanted]}, the test was with {names[made]}{factor}: no comparison"
        )
    if limit.place and test.place and limit.place != test.place:
        return Conflict(False, f"the limit is for the {limit.place}, the test was made on the {test.place}")
    return None


def direction_conflict(test: Test, directions: Sequence[int]) -> tuple[str, ...]:
    """Say whether every pull reads against the direction that was to be turned: a reversed sign looks just like it.

    >>> from logger.header import Test
    >>> direction_conflict(Test(direction="clockwise"), [-1, -1])[0][:57]
    'all pulls read anticlockwise, the card says clockwise. Po'
    """
    wanted = next((sign for sign, code in DIRECTIONS.items() if code == test.direction), None)
    if wanted is None or not directions or wanted in directions:
        return ()
    asked, read = DIRECTION_WORDS[wanted], DIRECTION_WORDS[-wanted]
    return (
        f"all pulls read {read}, the card says {asked}. Possible causes: turned the other way, the other side of "
        "the car, "
        "the sign of the transducer reversed",
    )
