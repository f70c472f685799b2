"""A test as it runs: steps, zero, pulls, coach, stream.

It is told what happens and says what to show; it owns no thread, no device and no file.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

import msgspec
import numpy as np

from gui.models.caught import PullList, Value
from gui.models.changes import Changes
from gui.models.coach import Coach, Hint
from gui.models.flow import Flow, Step
from gui.models.trace import GrowingTrace
from gui.models.zeroing import Zeroing, ZeroValue
from logger.header import Zero
from logger.samples import EventKind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from gui.models.caught import CaughtPull, JobValue
    from gui.models.job import JobCard, Purpose
    from gui.models.judge import Judge
    from gui.models.relay import Found, Samples
    from logger.samples import Ending, Event

COACH_LOOK_S = 1.0
SPIKE_SHARE = 3  # samples: the highest so far is a median of this many, so that one wild sample is no torque


class Link(StrEnum):
    """How the transducer stands."""

    NONE = "not connected"
    OPENING = "connecting"
    LIVE = "live"
    SILENT = "silent"
    RETRYING = "reconnecting"
    ENDED = "disconnected"


@dataclass(frozen=True, slots=True)
class Notice:
    """A message that stays until it is answered: what happened, what is safe, what to do."""

    text: str
    serious: bool = False
    can_rescue: bool = False


@dataclass(slots=True)
class Check:
    """One safety check."""

    text: str
    ticked: bool = False


@dataclass(frozen=True, slots=True)
class Action:
    """What the one large button does now."""

    text: str
    enabled: bool = True
    why_not: str = ""


class TestRun:
    """One test, from its safety checks to its signature.

    Parameters
    ----------
    card : JobCard
        What is tested.
    checks : sequence of str
        The safety checks that gate the first pull.
    judge : Judge
        What pulls say at the axle and against the limit.
    """

    __test__ = False  # it is no test case

    def __init__(self, card: JobCard, checks: Sequence[str], judge: Judge) -> None:
        self.card, self._judge = card, judge
        self.changes = Changes()
        self.flow = Flow(card.with_drag)
        self.checks = [Check(text) for text in checks]
        self.trace = GrowingTrace()
        self.pulls = PullList(judge.pulls)
        self.drag = PullList(judge.pulls)
        self.coach = Coach()
        self.zeroing: Zeroing | None = None
        self.zero: ZeroValue | None = None
        self.zero_again: ZeroValue | None = None
        self.highest_nm: float | None = None
        self.now_nm: float | None = None
        self.link = Link.NONE
        self.notice: Notice | None = None
        self.simulated = False
        self.battery = ""
        self.lost = 0
        self.stage = 0
        self.signed_by = ""
        self.last_caught: CaughtPull | None = None
        self._rest_from_s: float | None = None
        self._moved_nm = 0.0

    # ------------------------------------------------------------------ steps
    @property
    def purpose(self) -> Purpose | None:
        """What should be recorded now; None: nothing."""
        purposes: dict[Step, Purpose] = {Step.ZERO: "zero", Step.DRAG: "drag", Step.PULLS: "pulls"}
        purposes[Step.ZERO_AGAIN] = "pulls"
        return purposes.get(self.flow.now) if self.flow.now is not None else None

    def action(self) -> Action:
        """Say what the space bar does."""
        step = self.flow.now
        if self.flow.finished:
            return Action("Next test")
        if step is None:
            missing = self.card.missing()
            return Action("Start the test", not missing, f"Still missing: {', '.join(missing)}" if missing else "")
        if step is Step.SAFETY:
            return self._check_action()
        if self.link is Link.ENDED and step is not Step.SIGN:
            return Action("Connect again")
        if self.link is not Link.LIVE and step is not Step.SIGN:
            return Action("Waiting for the transducer", enabled=False, why_not=f"Transducer: {self.link}")
        return {
            Step.ZERO: self._zero_action(),
            Step.DRAG: Action("Skip the drag" if not self.drag.counting else "Drag is measured: go on"),
            Step.PULLS: self._pulls_action(),
            Step.ZERO_AGAIN: self._zero_action(),
            Step.SIGN: Action("Sign and finish", bool(self.signed_by.strip()), "Enter who did the test"),
        }[step]

    def _check_action(self) -> Action:
        left = sum(not check.ticked for check in self.checks)
        if self.card.practice:
            return Action("I have read them: go on")
        if left == 0:
            return Action("All checked: go on")
        return Action("Done: next check" if left > 1 else "Done: last check")

    def _zero_action(self) -> Action:
        if self.zeroing is None:
            return Action("Take the zero")
        return Action("Taking the zero", enabled=False, why_not="Hands off: nothing may touch the lever")

    def _pulls_action(self) -> Action:
        count, wanted = len(self.pulls.counting), self.card.pulls_wanted
        if count >= wanted:
            return Action("Enough pulls: zero again")
        if count == 0:
            return Action("Stop here", enabled=False, why_not="Pulls are caught by themselves: just pull")
        return Action(f"Stop after {count} of {wanted} pulls")

    def act(self) -> None:
        """Do what the large button says."""
        if not self.action().enabled:
            return
        step = self.flow.now
        if step is Step.SAFETY:
            self._tick_next()
        elif step in {Step.ZERO, Step.ZERO_AGAIN}:
            self.zeroing = Zeroing(self._steady_nm())
        elif step is Step.DRAG:
            self.flow.done() if self.drag.counting else self.flow.skip()
        elif step is Step.PULLS or step is Step.SIGN:
            self.flow.done()
        self.changes.tell()

    def start(self) -> None:
        """Begin at the safety checks."""
        self.flow.with_drag = self.card.with_drag
        self.flow.start()
        for check in self.checks:
            check.ticked = False
        conflict = self.card.type_conflict()
        if conflict is not None and conflict.refused and self.notice is None:
            self.notice = Notice(
                f"{conflict.text[0].upper()}{conflict.text[1:]}. Pulls are recorded, but no result is given: put the "
                "type right on the Axle card, or a reason to judge it all the same.",
                serious=True,
            )
        self.changes.tell()

    def skip(self) -> None:
        """Leave the step out where that is allowed."""
        self.zeroing = None
        if self.flow.now is Step.PULLS and self.link is Link.ENDED and self.pulls.counting:
            self.flow.done()
        self.flow.skip()
        self.changes.tell()

    @property
    def can_skip(self) -> bool:
        """Whether the step may be excluded; without its transducer a test may be signed as it is."""
        lost = self.flow.now is Step.PULLS and self.link is Link.ENDED and bool(self.pulls.counting)
        return self.flow.now in {Step.DRAG, Step.ZERO_AGAIN} or lost

    def tick(self, index: int, *, on: bool = True) -> None:
        """Tick one safety check."""
        self.checks[index].ticked = on
        self.changes.tell()

    def _tick_next(self) -> None:
        if self.card.practice:
            for check in self.checks:
                check.ticked = True
        for check in self.checks:
            if not check.ticked:
                check.ticked = True
                break
        else:
            self.flow.done()

    def _steady_nm(self) -> float:
        from gui.models.zeroing import MOVED_SHARE, SMALLEST_NM

        limits = [value for value in self.card.limit_nm() if value is not None]
        return MOVED_SHARE * (min(limits) if limits else SMALLEST_NM)

    # ------------------------------------------------------------------ stream
    def samples(self, news: Samples) -> None:
        """Take the next samples and events of the stream."""
        for event in news.events:
            self._event(event)
        if not len(news.time_s):
            return
        self.trace.append(news.time_s, news.torque_nm)
        finite = news.torque_nm[np.isfinite(news.torque_nm)]
        if len(finite):
            self.now_nm = float(np.mean(finite[-8:]))
        self._zero(news)
        self._highest(finite)
        if self.flow.now in {Step.PULLS, Step.DRAG}:
            self._coach()

    def _highest(self, finite: np.ndarray) -> None:
        if self.flow.now is not Step.PULLS or not len(finite):
            return
        if len(finite) >= SPIKE_SHARE:
            three = np.lib.stride_tricks.sliding_window_view(finite, SPIKE_SHARE)
            finite = np.median(three, axis=1)
        most = float(finite[np.argmax(np.abs(finite - self.zero_nm))]) - self.zero_nm
        if self.highest_nm is None or abs(most) > abs(self.highest_nm):
            self.highest_nm = most

    @property
    def zero_nm(self) -> float:
        """The true zero in use, at the transducer; 0 before one is taken."""
        return self.zero.value_nm if self.zero is not None else 0.0

    def at_axle(self, sensor_nm: float | None) -> float | None:
        """Give a reading relative to the true zero as torque at the axle."""
        return None if sensor_nm is None else sensor_nm * (self.card.factor or 1.0)

    def axle_now(self) -> float | None:
        """Give the torque at the axle now."""
        return None if self.now_nm is None else self.at_axle(self.now_nm - self.zero_nm)

    def _zero(self, news: Samples) -> None:
        if self.zeroing is None:
            return
        taken = self.zeroing.feed(news.time_s, news.torque_nm)
        if taken is None:
            return
        self.zeroing = None
        if self.flow.now is Step.ZERO_AGAIN:
            self.zero_again = taken
            if self._judge.zero is not None:
                self._judge.zero = msgspec.structs.replace(self._judge.zero, after_nm=taken.value_nm)
                self.pulls.again()
        else:
            self.zero = taken
            self._judge.zero = Zero(value_nm=taken.value_nm, value_nm_u=taken.u_nm, how="lever hanging")
            self.pulls.again()
        self.flow.done()
        self._compare_zeros()
        self.changes.tell()

    def _compare_zeros(self) -> None:
        if self.zero is None or self.zero_again is None:
            return
        self._moved_nm = self.zero_again.value_nm - self.zero.value_nm
        if abs(self._moved_nm) > self._steady_nm():
            self.flow.mark_wrong(Step.ZERO_AGAIN)
            self.notice = Notice(
                "The zero has moved since the start. The pulls are kept, but their result may be off by as much: "
                "warm the transducer up, take a new zero and repeat.",
                serious=True,
            )

    @property
    def zero_moved_nm(self) -> float | None:
        """By how much the zero differs at the end; None before it was taken twice."""
        return self._moved_nm if self.zero_again is not None and self.zero is not None else None

    def _coach(self) -> None:
        capacity = self.card.facts.capacity_nm
        limits = [value for value in self.card.limit_nm() if value is not None]
        self.coach.capacity_nm = capacity
        self.coach.interest_nm = (min(limits) if limits else 20.0) / (self.card.factor or 1.0)
        end = self.trace.end_s
        first = int(np.searchsorted(self.trace.time_s, end - COACH_LOOK_S))
        rest = None if self._rest_from_s is None else end - self._rest_from_s
        torque = self.trace.torque_nm[first:] - self.zero_nm
        self.coach.feed(self.trace.time_s[first:], torque, rest, self.card.dwell_s)

    @property
    def hint(self) -> Hint:
        """What the coach says now."""
        return self.coach.hint if self.flow.now in {Step.PULLS, Step.DRAG} else Hint.NONE

    @property
    def dwell_left_s(self) -> float | None:
        """Rest that is left before the next pull; None while there is nothing to wait for."""
        if self._rest_from_s is None or self.flow.now is not Step.PULLS or self.coach.loaded:
            return None
        left = self.card.dwell_s - (self.trace.end_s - self._rest_from_s)
        return left if left > 0 else None

    def _event(self, event: Event) -> None:
        if event.kind is EventKind.GAP:
            self.lost += event.count
        elif event.kind is EventKind.BATTERY:
            self.battery = event.text or "low"
        elif event.kind is EventKind.AUTO_ZERO:
            self.notice = Notice("The transducer has zeroed itself under load. Take a new zero.", serious=True)
            self.changes.tell()

    def found(self, news: Found) -> CaughtPull:
        """Take a pull that was caught."""
        listed = self.drag if self.flow.now is Step.DRAG else self.pulls
        caught = listed.add(news.start_s, news.pull)
        if listed is self.pulls:
            self.last_caught = caught
            self._rest_from_s = news.start_s + news.pull.end_s
        self.changes.tell()
        return caught

    def reject_last(self, reason: str = "excluded by hand") -> None:
        """Leave the last pull that counts out."""
        counting = self.pulls.counting
        if counting:
            self.pulls.reject(counting[-1].number, reason)
            self.changes.tell()

    def undo(self) -> None:
        """Take the last rejection back."""
        self.pulls.undo()
        self.changes.tell()

    def ended(self, ending: Ending, *, safe: str) -> None:
        """Learn that the stream has ended; ``safe`` says in words what is on disk."""
        from logger.samples import EndReason

        self.link = Link.ENDED
        if ending.reason in {EndReason.LOST, EndReason.FAILED}:
            what = ending.text or ("The transducer is gone." if ending.reason is EndReason.LOST else "It has failed.")
            disk = ending.reason is EndReason.FAILED and isinstance(ending.error, OSError)
            self.notice = Notice(f"{what} {safe}".strip(), serious=True, can_rescue=disk)
        self.changes.tell()

    def answer_notice(self) -> None:
        """Put the message away."""
        self.notice = None
        self.changes.tell()

    def pack_mean(self) -> tuple[tuple[str, Value | None, str], ...]:
        """Give the mean of the packs, drag taken off: quantity, value or None, why it is withheld; empty without."""
        means = self._judge.pack_means([c.pull for c in self.pulls.counting], [c.pull for c in self.drag.counting])
        ways = len({m.way for m in means}) > 1
        return tuple(
            (
                f"{m.quantity}, {m.way}" if ways else m.quantity,
                None if m.budget is None else Value(m.budget.value, m.budget.u95),
                "" if m.budget is not None else m.how,
            )
            for m in means
        )

    @property
    def true_zero(self) -> Zero | None:
        """The zero as it is written down: before, and after once it was taken again."""
        return self._judge.zero

    @property
    def value(self) -> JobValue | None:
        """The job's value so far."""
        return self.pulls.value
