"""Pulls as they are caught: what each says at the axle, which are excluded and why, and the job's value from them."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from analysis.trace.results import Pull


@dataclass(frozen=True, slots=True)
class Value:
    """A torque at the axle with its expanded uncertainty (95 %), N·m; the interval is None where it is not known."""

    nm: float
    u95_nm: float | None = None


@dataclass(frozen=True, slots=True)
class Judged:
    """What one pull says.

    Attributes
    ----------
    breakaway, rotating : Value or None
        At the axle.
    state : str
        Its result by itself, as a single pull; empty without a limit.
    notes : tuple of str
        Why it is not valid and what to do, or what the reader must know.
    valid : bool
        Whether it may count.
    """

    breakaway: Value | None = None
    rotating: Value | None = None
    state: str = ""
    notes: tuple[str, ...] = ()
    valid: bool = True


@dataclass(frozen=True, slots=True)
class JobValue:
    """What all pulls that count say together.

    Attributes
    ----------
    quantity : str
        Which quantity is judged.
    value : Value
        Median of the pulls that count, with its interval.
    count : int
        How many pulls count.
    state, rule : str
        The result and the rule that decided.
    notes : tuple of str
        For the user.
    other : tuple of (str, Value, int, int)
        Further quantities: name, value, pulls, direction.
    direction : int
        +1 clockwise, -1 anticlockwise.
    """

    quantity: str
    value: Value
    count: int
    state: str = ""
    rule: str = ""
    notes: tuple[str, ...] = ()
    other: tuple[tuple[str, Value, int, int], ...] = ()
    direction: int = 1


@dataclass(frozen=True, slots=True)
class CaughtPull:
    """One pull in the list.

    Attributes
    ----------
    number : int
        Counted from 1, never used again.
    start_s : float
        Of its recording on the session's time: what shifts the pull's times onto the live trace.
    pull : Pull
        As read.
    judged : Judged
        At the axle.
    rejected : str
        Why the user left it out; empty if it counts.
    """

    number: int
    start_s: float
    pull: Pull
    judged: Judged = Judged()
    rejected: str = ""

    @property
    def counts(self) -> bool:
        """Whether it enters the job's value."""
        return self.judged.valid and not self.rejected


@dataclass(slots=True)
class PullList:
    """The pulls of a job.

    Parameters
    ----------
    judge : callable
        From all pulls, and whether each counts, to what each says and what they say together.
    """

    judge: Callable[[Sequence[Pull], Sequence[bool]], tuple[list[Judged], JobValue | None]]
    pulls: list[CaughtPull] = field(default_factory=list)
    value: JobValue | None = None
    _undo: list[tuple[int, str]] = field(default_factory=list)

    def add(self, start_s: float, pull: Pull) -> CaughtPull:
        """Take a pull that was caught, or in place of one that is taken back what is said of it now."""
        if pull.taken_back:
            for at, caught in enumerate(self.pulls):
                if caught.start_s == start_s and caught.pull.start_s == pull.start_s:
                    self.pulls[at] = replace(caught, pull=pull)
                    self.again()
                    return self.pulls[at]
        self.pulls.append(CaughtPull(len(self.pulls) + 1, start_s, pull))
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
        """Judge everything anew: a pull came, or fixture, limit or zero have changed."""
        judged, self.value = self.judge([c.pull for c in self.pulls], [not c.rejected for c in self.pulls])
        self.pulls = [replace(caught, judged=said) for caught, said in zip(self.pulls, judged, strict=True)]

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
