"""A test as it runs: steps, zero, pulls, coach, stream.

It is told what happens and says what to show; it owns no thread, no device and no file.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from gui.models.action import Action, action_of
from gui.models.caught import PullList
from gui.models.changes import Changes
from gui.models.checks import Check, checks_for, holding_checks
from gui.models.coach import Coach, Hint
from gui.models.flow import Flow, Stand, Step
from gui.models.highest import Highest
from gui.models.pace import LAST_S, Pace, Wheel
from gui.models.state import LinkState, Notice
from gui.models.trace import GrowingTrace
from gui.models.zeroing import Zeroing, ZeroValue
from gui.models.zeros import Zeros
from logger.samples import EventKind

if TYPE_CHECKING:
    from analysis.to_axle.axle_scale import AxleScale
    from gui.models.caught import CaughtPull, ValueSoFar
    from gui.models.job import JobCard, Purpose
    from gui.models.relay import FoundPull, ScreenSamples
    from logger.samples import Ending, Event

USUAL_NM = 20.0  # at the axle: what the coach expects of a pull where there is no limit; common practice, no source
GAP_S = 0.5  # between two samples: more is a break, no line is drawn across it and the coach begins anew
PURPOSES: dict[Step, Purpose] = {
    Step.ZERO: "zero",
    Step.DRAG: "drag",
    Step.PULLS: "pulls",
    Step.ZERO_AGAIN: "pulls",
}


class TestRun:
    """One test, from its safety checks to its signature.

    Args:
        card: What is tested.
    """

    __test__ = False  # it is no test case

    def __init__(self, card: JobCard) -> None:
        self.card = card
        self.changes = Changes()
        self.flow = Flow(card.with_drag)
        self.checks: list[Check] = []
        self.trace = GrowingTrace()
        self.pulls, self.drag = PullList(card), PullList(card)
        self.coach = Coach()
        self.zeroing: Zeroing | None = None
        self.zeros = Zeros()
        self.now_nm: float | None = None
        self.link = LinkState.NONE
        self.notice: Notice | None = None
        self.stale = False  # connected, but nothing has arrived for a moment: what is shown is the past
        self.simulated = False
        self.battery = ""
        self.lost = 0
        self.signed_by = ""
        self._wheel = Wheel()
        self._highest = Highest()
        self._rest_from_s: float | None = None

    # ------------------------------------------------------------------ steps
    @property
    def purpose(self) -> Purpose | None:
        """What should be recorded now; None: nothing."""
        return None if self.flow.now is None else PURPOSES.get(self.flow.now)

    def action(self) -> Action:
        """Say what the space bar does."""
        return action_of(self)

    def act(self) -> None:
        """Do what the large button says."""
        if not self.action().enabled:
            return
        step = self.flow.now
        if step in {Step.SAFETY, Step.HOLD}:
            self._tick_next()
        elif step in {Step.ZERO, Step.ZERO_AGAIN}:
            self.zeroing = Zeroing(self._steady_nm())
        else:
            self.flow.done()
        self._entered()
        self.changes.tell()

    def _entered(self) -> None:
        """After a drag with both wheels free, ask anew what is held; a drag that was skipped changed nothing."""
        if self.flow.now is Step.HOLD:
            if self.flow.stands[Step.DRAG] is Stand.SKIPPED:
                self.checks = []
            held = holding_checks(self.card.test, self.card.conditions)
            if {check.key for check in self.checks} != {check.key for check in held}:
                self.checks = held

    def start(self) -> None:
        """Begin at the safety checks."""
        self.flow.with_drag = self.card.with_drag
        self.flow.start()
        self.checks = checks_for(self.card.test, self.card.conditions, drag_first=self.card.with_drag)
        conflict = self.card.type_conflict()
        if conflict is not None and conflict.refused and self.notice is None:
            self.notice = Notice(
                f"{conflict.text[0].upper()}{conflict.text[1:]}. Pulls are recorded, but no result is given: put the "
                "type right on the Axle card, or a reason to judge it all the same.",
                serious=True,
            )
        self.changes.tell()

    def skip(self) -> None:
        """Leave the step out, or what is left of the pulls, where that is allowed."""
        if not self.can_skip:
            return
        self.zeroing = None
        if self.flow.now is Step.PULLS:
            self.flow.done()
            if self.link is LinkState.ENDED:
                self.flow.skip()
        else:
            self.flow.skip()
        self._entered()
        self.changes.tell()

    @property
    def can_skip(self) -> bool:
        """Whether the step may be skipped; pulls may end early once one counts, unless the lever is loaded."""
        if self.flow.now is Step.PULLS:
            some = len(self.pulls.counting) > 0
            fewer = len(self.pulls.counting) < self.card.pulls_wanted
            return some and (self.link is LinkState.ENDED or (fewer and not self.coach.loaded))
        return self.flow.now in {Step.DRAG, Step.ZERO_AGAIN}

    @property
    def can_reconnect(self) -> bool:
        """Whether the stream has ended before the test was ready to be signed."""
        streams = {Step.ZERO, Step.DRAG, Step.PULLS, Step.ZERO_AGAIN}
        return self.flow.running and self.flow.now in streams and self.link is LinkState.ENDED

    @property
    def can_go_back(self) -> bool:
        """Whether more pulls may be made after all: until the second zero is taken."""
        return self.flow.now is Step.ZERO_AGAIN and self.zeroing is None and self.link is not LinkState.ENDED

    def go_back(self) -> None:
        """Go back to the pulls: they go on in the same recording."""
        if self.can_go_back:
            self.flow.back_to(Step.PULLS)
            self.changes.tell()

    def recheck(self) -> None:
        """Ask the safety checks again where the kind of test is no longer what they were ticked for."""
        if not self.checks or not self.flow.running or self.flow.now in {Step.HOLD, Step.SIGN}:
            return
        holding = self.flow.with_drag and self.flow.stands[Step.HOLD] is Stand.DONE
        asked = checks_for(self.card.test, self.card.conditions, drag_first=self.flow.with_drag and not holding)
        ticked = {check.key for check in self.checks if check.ticked}
        if {check.key for check in asked} <= {check.key for check in self.checks}:
            return
        for check in asked:
            check.ticked = check.key in ticked
        self.checks = asked
        if self.flow.now is not Step.SAFETY:
            self.zeroing = None
            self.flow.back_to(Step.SAFETY)
            self.notice = Notice(
                "The kind of test has changed, so some checks are asked again. Pulls made before stay in the list: "
                "exclude those that were made otherwise.",
                serious=True,
            )

    def tick(self, index: int, *, on: bool = True) -> None:
        """Tick one safety check."""
        self.checks[index].ticked = on
        self.changes.tell()

    def _tick_next(self) -> None:
        if self.card.practice:
            for check in self.checks:
                check.ticked = True
        waiting = next((check for check in self.checks if not check.ticked), None)
        if waiting is not None:
            waiting.ticked = True
        else:
            self.flow.done()

    def _steady_nm(self) -> float:
        from gui.models.zeroing import MOVED_SHARE, SMALLEST_NM

        limits = [value for value in self.card.limit_nm() if value is not None]
        return MOVED_SHARE * (min(limits) if limits else SMALLEST_NM)

    # ------------------------------------------------------------------ stream
    def samples(self, news: ScreenSamples) -> None:
        """Take the next samples and events of the stream."""
        for event in news.events:
            self._event(event)
        if not len(news.time_s):
            return
        if len(self.trace) and news.time_s[0] - self.trace.end_s > GAP_S:
            self.coach = Coach()  # what it saw before the break is the past
        self.trace.append(news.time_s, news.torque_nm)
        finite = news.torque_nm[np.isfinite(news.torque_nm)]
        if len(finite):
            self.now_nm = float(np.mean(finite[-8:]))
        self._zero(news)
        if self.flow.now is Step.PULLS:
            self._highest.feed(news.time_s, news.torque_nm - self.zeros.in_use_nm)
        if news.angle_deg is not None:
            self.coach.turned_deg = self._wheel.feed(news.time_s, news.angle_deg)
        if self.flow.now in {Step.PULLS, Step.DRAG}:
            self._coach()

    @property
    def turned_deg(self) -> float | None:
        """How far the wheel has turned since the lever was last loaded, clockwise positive; None without its angle."""
        return None if self.coach.turned_deg is None else self._wheel.turned_deg

    @property
    def pace(self) -> Pace | None:
        """How fast the wheel turns now; None where nothing tells."""
        if self.silent or self.coach.turned_deg is None:
            return None
        return self._wheel.pace(self.card.test.speed_rpm)

    @property
    def scale(self) -> AxleScale:
        """How what is read stands at the axle."""
        return self.card.scale(self.zeros.in_use_nm)

    def axle_highest(self) -> tuple[float, int] | None:
        """Give the highest torque at the axle since the pulls began (N·m) and the number of its pull, 0 for none.

        It was seen, or read as a breakaway between two readings. What was excluded does not count.
        """
        return self._highest.at_axle(self.pulls.pulls, self.card.scale())

    def axle_now(self) -> float | None:
        """Give the torque at the axle now."""
        return None if self.now_nm is None else self.scale.torque(self.now_nm)

    def _zero(self, news: ScreenSamples) -> None:
        if self.zeroing is None:
            return
        taken = self.zeroing.feed(news.time_s, news.torque_nm)
        if taken is None:
            return
        self.zeroing = None
        if self.flow.now is Step.ZERO_AGAIN:
            self._second_zero(taken)
        else:
            self._forget_other_zero(taken)
            self.zeros.take(taken)
        self.flow.done()
        self._compare_zeros()
        self.changes.tell()

    def _second_zero(self, taken: ZeroValue) -> None:
        """Judge the last recording again with its second zero; an earlier one had another, or none."""
        first, both = self.zeros.written, self.zeros.take_again(taken)
        if both is not None and self.pulls.pulls and self.pulls.pulls[-1].job.header.zero == first:
            self.pulls.pulls[-1].job.take_zero(both)
            self.pulls.again()

    def _forget_other_zero(self, taken: ZeroValue) -> None:
        """Exclude what was pulled from another zero: its own recording still has it right."""
        if self.zeros.first is not None and abs(taken.value_nm - self.zeros.in_use_nm) > self._steady_nm():
            for caught in self.pulls.counting:
                self.pulls.reject(caught.number, "made before the new zero")

    def _compare_zeros(self) -> None:
        moved_nm = self.zeros.moved_nm
        if moved_nm is not None and abs(moved_nm) > self._steady_nm():
            self.flow.mark_wrong(Step.ZERO_AGAIN)
            self.notice = Notice(
                "The zero has moved since the start. The pulls are kept, but their result may be off by as much: "
                "warm the transducer up, take a new zero and repeat.",
                serious=True,
            )

    def _coach(self) -> None:
        capacity = self.card.facts.capacity_nm
        limits = [value for value in self.card.limit_nm() if value is not None]
        self.coach.capacity_nm = capacity
        self.coach.interest_nm = self.card.as_read(min(limits, default=USUAL_NM))
        end = self.trace.end_s
        first = int(np.searchsorted(self.trace.time_s, end - LAST_S))
        rest = None if self._rest_from_s is None else end - self._rest_from_s
        torque = self.trace.torque_nm[first:] - self.zeros.in_use_nm
        before = self.coach.loaded
        self.coach.feed(self.trace.time_s[first:], torque, rest, self.card.dwell_s)
        if self.coach.loaded and not before:
            self._wheel.mark()

    @property
    def hint(self) -> Hint:
        """What the coach says now."""
        return self.coach.hint if self.flow.now in {Step.PULLS, Step.DRAG} and not self.silent else Hint.NONE

    @property
    def silent(self) -> bool:
        """Whether what is shown is the past: a stream that stopped, is lost, or has ended in the middle of a test."""
        return self.flow.running and (
            self.stale or self.link in {LinkState.SILENT, LinkState.RETRYING, LinkState.ENDED}
        )

    @property
    def dwell_left_s(self) -> float | None:
        """Rest that is left before the next pull; None while there is nothing to wait for."""
        if self._rest_from_s is None or self.flow.now is not Step.PULLS or self.coach.loaded or self.silent:
            return None
        left = self.card.dwell_s - (self.trace.end_s - self._rest_from_s)
        return left if left > 0 else None

    def _event(self, event: Event) -> None:
        if event.kind is EventKind.GAP:
            self.lost += event.count
        elif event.kind is EventKind.BATTERY:
            self.battery = event.text or "low"
        elif event.kind is EventKind.AUTO_ZERO:
            told = event.text or "the transducer has zeroed itself under load"
            self.notice = Notice(f"{told[0].upper()}{told[1:]}.", serious=True, can_zero=self.can_zero)
            self.changes.tell()

    @property
    def can_zero(self) -> bool:
        """Whether the zero may be taken anew in the middle of the pulls."""
        return self.flow.now in {Step.PULLS, Step.DRAG}

    def zero_anew(self) -> None:
        """Go back to the zero: the pulls stay, the next ones begin another recording."""
        if self.can_zero:
            self.flow.back_to(Step.ZERO)
            self.notice = None
            self.changes.tell()

    def found(self, news: FoundPull) -> CaughtPull:
        """Take a pull that was caught."""
        if self.flow.now is Step.ZERO_AGAIN and self.zeros.again is None and self.zeroing is None:
            self.flow.back_to(Step.PULLS)  # somebody went on pulling
        listed = self.drag if self.flow.now is Step.DRAG else self.pulls
        caught = listed.add(news.start_s, news.pull, news.job)
        if listed is self.pulls:
            self._rest_from_s = news.start_s + news.pull.end_s
        self.changes.tell()
        return caught

    def reject_last(self, reason: str = "excluded by hand") -> None:
        """Leave the last pull that counts out."""
        if self.pulls.counting:
            self.leave_out(self.pulls.counting[-1].number, reason)

    def leave_out(self, number: int, reason: str = "excluded by hand") -> None:
        """Leave a pull out, or let one that is excluded count again; a test that is signed stays as it is."""
        if self.flow.finished:
            return
        if self.pulls.pulls[number - 1].rejected:
            self.pulls.restore(number)
        else:
            self.pulls.reject(number, reason)
        self.changes.tell()

    def undo(self) -> None:
        """Take the last rejection back."""
        if not self.flow.finished:
            self.pulls.undo()
            self.changes.tell()

    def judge_again(self) -> None:
        """Judge every pull by the card as it is now; a test that is signed keeps the card it was signed with."""
        if not self.flow.finished:
            self.recheck()
            self.pulls.again()
            self.drag.again()

    def freeze(self) -> None:
        """Keep the card as it was signed: the card that goes on belongs to the next test."""
        self.card = self.pulls.card = self.drag.card = self.card.copy()

    def ended(self, ending: Ending, *, safe: str) -> None:
        """Learn that the stream has ended; ``safe`` says in words what is on disk."""
        from logger.samples import EndReason

        self.link = LinkState.ENDED
        if ending.reason in {EndReason.LOST, EndReason.FAILED}:
            what = ending.text or ("The transducer is gone." if ending.reason is EndReason.LOST else "It has failed.")
            disk = ending.reason is EndReason.FAILED and isinstance(ending.error, OSError)
            self.notice = Notice(f"{what} {safe}".strip(), serious=True, can_rescue=disk)
        self.changes.tell()

    def answer_notice(self) -> None:
        """Put the message away."""
        self.notice = None
        self.changes.tell()

    @property
    def value(self) -> ValueSoFar | None:
        """The job's value so far."""
        return self.pulls.value
