"""Pulls as they are caught: what each says at the axle, which are excluded and why, and the job's value from them."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass, field, replace
from itertools import groupby
from typing import TYPE_CHECKING

from analysis.identify.axle_type import type_conflict
from analysis.verdict.corrected import Corrected
from analysis.verdict.job import judge
from analysis.verdict.limits import rule_words
from analysis.verdict.sides import with_drag
from gui.models.ratio import half_words
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from analysis.trace.results import Pull
    from analysis.verdict.job import Job
    from analysis.verdict.recorded import PullReading, RecordingReading
    from gui.models.job import JobCard


@dataclass(frozen=True, slots=True)
class Value:
    """A torque at the axle with its expanded uncertainty (95 %), N·m; the interval is None where it is not known."""

    nm: float
    u95_nm: float | None = None


@dataclass(frozen=True, slots=True)
class ValueSoFar:
    """What all pulls that count say together."""

    quantity: str  # which quantity is judged
    value: Value  # median of the pulls that count, with its interval
    count: int  # how many pulls count
    # state, rule: the result and the rule that decided
    state: str = ""
    rule: str = ""
    notes: tuple[str, ...] = ()  # for the user
    # (str, Value, int, int); further quantities: name, value, pulls, direction
    other: tuple[tuple[str, Value, int, int], ...] = ()
    direction: int = 1  # +1 clockwise, -1 anticlockwise


@dataclass(frozen=True, slots=True)
class CaughtPull:
    """One pull in the list."""

    number: int  # counted from 1, never used again
    start_s: float  # of its recording on the session's time: what shifts the pull's times onto the live trace
    pull: Pull  # as read
    job: Job  # of its recording
    read: PullReading | None = None  # what its recording's job makes of it; None before it was judged
    rejected: str = ""  # why the user left it out; empty if it counts

    @property
    def counts(self) -> bool:
        """Whether it enters the job's value."""
        return self.valid and not self.rejected

    @property
    def breakaway(self) -> Value | None:
        """At the axle."""
        return self._value("breakaway")

    @property
    def rotating(self) -> Value | None:
        """The mean while turning, at the axle."""
        return self._value("rotating mean")

    @property
    def state(self) -> str:
        """Its result by itself, as a single pull; empty without a limit."""
        result = self.read.result if self.read is not None else None
        bounds = self.job.setup.bounds
        return "" if result is None or (bounds is not None and bounds.written.is_ratio) else str(result.state)

    @property
    def notes(self) -> tuple[str, ...]:
        """Why it is not valid and what to do, or what the reader must know."""
        if self.read is None:
            return ()
        setup, pull = self.job.setup, self.read.pull
        return *(reason.text for reason in pull.reasons), *pull.notes, *(setup.notes if setup.at is None else ())

    @property
    def valid(self) -> bool:
        """Whether it may count."""
        return self.read is None or self.read.pull.valid

    def _value(self, quantity: str) -> Value | None:
        budget = self.read.axle.get(quantity) if self.read is not None else None
        return None if budget is None else Value(budget.value, budget.u95)


@dataclass(slots=True)
class PullList:
    """The pulls of a test, whichever of its recordings they are in."""

    card: JobCard  # what they are judged by
    pulls: list[CaughtPull] = field(default_factory=list)
    # what they say, as the reading of their file gives it; None before the first
    reading: RecordingReading | None = None
    _undo: list[tuple[int, str]] = field(default_factory=list)

    def add(self, start_s: float, pull: Pull, job: Job) -> CaughtPull:
        """Take a pull that was caught, or in place of one that is taken back what is said of it now."""
        if pull.taken_back:
            for at, caught in enumerate(self.pulls):
                was = caught.pull
                if (caught.start_s, was.start_s, was.end_s) == (start_s, pull.start_s, pull.end_s):
                    self.pulls[at] = replace(caught, pull=pull)
                    self.again()
                    return self.pulls[at]
        self.pulls.append(CaughtPull(len(self.pulls) + 1, start_s, pull, job))
        self.again()
        return self.pulls[-1]

    def reject(self, number: int, reason: str) -> None:
        """Leave a pull out, with a reason; it stays in the list and in the recording."""
        self._set(number, reason.strip() or "excluded by hand")

    def restore(self, number: int) -> None:
        """Let a pull that was excluded count again."""
        self._set(number, "")

    def undo(self) -> int | None:
        """Take the last change back; gives the pull's number."""
        if not self._undo:
            return None
        number, before = self._undo.pop()
        self._put(number, before)
        return number

    def again(self) -> None:
        """Judge everything anew by the card as it is now; where it cannot be used a recording is judged as it was."""
        if not self.pulls:
            return
        for job in {id(caught.job): caught.job for caught in self.pulls}.values():
            with suppress(HeldwheelError):
                job.restate(self.card.judged_by("drag" if job.header.test.purpose == "drag" else "pulls"))
        parts = [
            (own[0].job, [Corrected(caught.pull, caught.rejected) for caught in own])
            for own in (list(group) for _, group in groupby(self.pulls, lambda caught: id(caught.job)))
        ]
        self.reading = judge(parts)
        each = zip(self.pulls, self.reading.pulls, strict=True)
        self.pulls = [replace(caught, read=read) for caught, read in each]

    @property
    def value(self) -> ValueSoFar | None:
        """What the pulls that count say together."""
        return None if self.reading is None else together(self.reading)

    @property
    def can_undo(self) -> bool:
        """Whether there is a rejection to take back."""
        return bool(self._undo)

    @property
    def counting(self) -> list[CaughtPull]:
        """The pulls that enter the job's value."""
        return [caught for caught in self.pulls if caught.counts]

    def _set(self, number: int, reason: str) -> None:
        self._undo.append((number, self.pulls[number - 1].rejected))
        self._put(number, reason)

    def _put(self, number: int, reason: str) -> None:
        self.pulls[number - 1] = replace(self.pulls[number - 1], rejected=reason)
        self.again()


def together(reading: RecordingReading, quantity: str = "") -> ValueSoFar | None:
    """Give what the pulls of a reading say together, for the panel: of what was judged, or of one quantity."""
    main, header = reading.main, reading.header
    if quantity and (main is None or main.budget.quantity != quantity):
        main = next((v for v in reading.job if v.budget.quantity == quantity), None)
    if main is None or header is None:
        return None
    named = not quantity or reading.bounds is None or reading.bounds.quantity == quantity
    result = reading.result if named and not reading.half else None
    half = half_words(header.limit, header.test.gear)
    conflict = type_conflict(header.axle, header.conditions, header.limit)
    refused = (conflict.text,) if conflict is not None and conflict.refused else ()
    others = tuple(
        (v.budget.quantity, Value(v.budget.value, v.budget.u95), len(v.values), v.direction)
        for v in reading.job
        if v is not main
    )
    return ValueSoFar(
        main.budget.quantity,
        Value(main.budget.value, main.budget.u95),
        len(main.values),
        str(result.state) if result is not None else "",
        rule_words(result.rule, result.guard) if result is not None else "",
        result.notes if result is not None else refused or ((half,) if half else main.notes),
        others,
        main.direction,
    )


def pack_means(held: PullList, free: PullList) -> tuple[tuple[str, Value | None, str], ...]:
    """Give the mean of the packs, drag taken off: quantity, value or None, why it is withheld; empty without."""
    if held.reading is None or free.reading is None:
        return ()
    try:
        drag = with_drag(held.reading, free.reading).drag
    except HeldwheelError:
        return ()
    means = drag.test.means if drag is not None else ()
    ways = len({m.way for m in means}) > 1
    return tuple(
        (
            f"{m.quantity}, {m.way}" if ways else m.quantity,
            None if m.budget is None else Value(m.budget.value, m.budget.u95),
            "" if m.budget is not None else m.how,
        )
        for m in means
    )
