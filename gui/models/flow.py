"""The order of a test: safety checks, zero, drag where wanted (and then the wheel held), pulls, zero again, sign.

A step is entered only when what it rests on is there; why not is said in words. Nothing here knows samples or torque.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum


class Step(StrEnum):
    """One step of a test; its value is its name on screen."""

    SAFETY = "Safety checks"
    ZERO = "Zero"
    DRAG = "Drag"
    HOLD = "Hold the wheel"
    PULLS = "Pulls"
    ZERO_AGAIN = "Zero again"
    SIGN = "Sign"


class Stand(StrEnum):
    """How a step stands."""

    TO_COME = "to come"
    NOW = "now"
    DONE = "done"
    SKIPPED = "skipped"
    WRONG = "wrong"


@dataclass(slots=True)
class Flow:
    """Where a test stands.

    Args:
        with_drag: Whether the drag of both wheels free is measured first.
    """

    with_drag: bool = False
    now: Step | None = None
    finished: bool = False
    stands: dict[Step, Stand] = field(default_factory=lambda: dict.fromkeys(Step, Stand.TO_COME))

    @property
    def steps(self) -> tuple[Step, ...]:
        """The steps of this test in order."""
        return tuple(step for step in Step if self.with_drag or step not in {Step.DRAG, Step.HOLD})

    @property
    def running(self) -> bool:
        """Whether a test is under way."""
        return self.now is not None and not self.finished

    def start(self) -> None:
        """Begin a test at its safety checks; what an earlier one left is forgotten."""
        self.stands = dict.fromkeys(Step, Stand.TO_COME)
        self.finished = False
        self._enter(Step.SAFETY)

    def done(self) -> None:
        """Close the step that is on, and enter the next."""
        self._leave(Stand.DONE)

    def skip(self) -> None:
        """Leave the step that is on out; only the drag and the second zero may be excluded."""
        if self.now in {Step.DRAG, Step.ZERO_AGAIN}:
            self._leave(Stand.SKIPPED)

    def back_to(self, step: Step) -> None:
        """Go back to a step: the one that is on is to come again, what is done between them stays done."""
        if self.now is None or self.finished:
            return
        self.stands[self.now] = Stand.TO_COME
        self._enter(step)

    def mark_wrong(self, step: Step) -> None:
        """Say that a step that is done turned out wrong (the zero moved)."""
        self.stands[step] = Stand.WRONG

    def _leave(self, stand: Stand) -> None:
        if self.now is None or self.finished:
            return
        self.stands[self.now] = stand
        left = [step for step in self.steps if self.stands[step] is Stand.TO_COME]
        if left:
            self._enter(left[0])
        else:
            self.finished, self.now = True, None

    def _enter(self, step: Step) -> None:
        self.now = step
        self.stands[step] = Stand.NOW
