"""A confirmation: a second test of one axle by another operator or transducer, set against the first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.compare.agreement import Agreement, agreement
from analysis.trace.results import DIRECTION_WORDS
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.recorded import RecordingReading
    from logger.header import Header

ALIKE = ("place", "held", "gear", "side")


@dataclass(frozen=True, slots=True)
class ConfirmedValue:
    """One value that both tests have."""

    quantity: str
    direction: str
    first: Budget
    second: Budget
    against: Agreement


@dataclass(frozen=True, slots=True)
class Confirmation:
    """What the second test says of the first."""

    lines: tuple[ConfirmedValue, ...]  # every value that both have
    other: tuple[str, ...]  # what was otherwise: operator, transducer
    notes: tuple[str, ...]  # what is not known of either, and what may explain a difference

    @property
    def confirmed(self) -> bool:
        """Whether all values agree within their combined intervals."""
        return all(line.against.agrees for line in self.lines)

    @property
    def word(self) -> str:
        """The answer in a word; it cannot be told where nothing says that another operator or transducer was there."""
        if not self.confirmed:
            return "does not agree"
        return "agrees" if self.other else "cannot be told"


def confirmation(first: RecordingReading, second: RecordingReading) -> Confirmation:
    """Set a second test against the first, each value by the combined interval, |x₂ - x₁| ≤ √(U₁² + U₂²).

    What both share (a lever, a fixture) is counted in both intervals, so that they are rather too wide.

    Raises:
        InputError: They are one recording, of other axles or other kinds of test, by one operator with one transducer,
            or have no value in common.
    """
    a, b = first.header, second.header
    if a is None or b is None:
        raise InputError("one of the two tests cannot be read: " + "; ".join((*first.problems, *second.problems)))
    if first.sha256 == second.sha256:
        raise InputError(f"{second.file} is {first.file} itself: a confirmation is a test of its own")
    apart = [f"{key} {x} and {y}" for key, x, y in _kinds(a, b) if x and y and x != y]
    if apart:
        raise InputError(f"these are not two tests of one thing: {', '.join(apart)}")
    other, notes = _who(a, b)
    if not other and not notes:
        raise InputError("one operator with one transducer made both: that is a repeat, no second opinion")
    notes += [f"{key} is not stated in both" for key, x, y in _kinds(a, b) if bool(x) != bool(y)]
    ours = {(v.budget.quantity, v.direction): v.budget for v in first.job}
    lines = [
        ConfirmedValue(
            v.budget.quantity,
            DIRECTION_WORDS[v.direction],
            before,
            v.budget,
            agreement((before.value, before.u95), (v.budget.value, v.budget.u95)),
        )
        for v in second.job
        if (before := ours.get((v.budget.quantity, v.direction))) is not None
    ]
    if not lines:
        raise InputError("the two tests have no value at the axle in common, in one direction")
    return Confirmation(tuple(lines), tuple(other), tuple(notes))


def _kinds(a: Header, b: Header) -> list[tuple[str, str, str]]:
    """Give what must be alike, as both state it."""
    said = [("axle tag", a.axle.tag, b.axle.tag), ("vehicle", a.job.vehicle, b.job.vehicle)]
    said.append(("axle", a.job.axle, b.job.axle))
    return said + [(key, str(getattr(a.test, key) or ""), str(getattr(b.test, key) or "")) for key in ALIKE]


def _who(a: Header, b: Header) -> tuple[list[str], list[str]]:
    """Give what was otherwise, and what is not known."""
    other, notes = [], []
    devices = [h.transducer.serial or h.transducer.name for h in (a, b)]
    for what, (x, y) in (("operator", (a.job.operator, b.job.operator)), ("transducer", devices)):
        if not (x and y):
            notes.append(f"the {what} is not stated in both")
        elif x.strip().casefold() != y.strip().casefold():
            other.append(f"{what} {x}, then {y}")
    return other, notes
