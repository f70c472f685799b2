"""What the one large button does now, in words, and why it cannot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from gui.models.flow import Step

if TYPE_CHECKING:
    from gui.models.run import TestRun


@dataclass(frozen=True, slots=True)
class Action:
    """What the one large button does now."""

    text: str
    enabled: bool = True
    why_not: str = ""


def action_of(run: TestRun) -> Action:
    """Say what the space bar does."""
    from gui.models.state import LinkState

    step = run.flow.now
    if run.flow.finished:
        return Action("Next test")
    if step is None:
        missing = run.card.missing()
        return Action("Start the test", not missing, f"Still missing: {', '.join(missing)}" if missing else "")
    if step in {Step.SAFETY, Step.HOLD}:
        return _check_action(run)
    if run.can_reconnect:
        return Action("Connect again")
    if step is not Step.SIGN and (run.link is not LinkState.LIVE or run.stale):
        what = "no signal" if run.stale and run.link is LinkState.LIVE else str(run.link)
        return Action("Waiting for the transducer", enabled=False, why_not=f"Transducer: {what}")
    return {
        Step.ZERO: _zero_action,
        Step.DRAG: _drag_action,
        Step.PULLS: _pulls_action,
        Step.ZERO_AGAIN: _zero_action,
        Step.SIGN: _sign_action,
    }[step](run)


def _check_action(run: TestRun) -> Action:
    left = sum(not check.ticked for check in run.checks)
    if run.card.practice:
        return Action("I have read them: go on")
    if left == 0:
        return Action("All checked: go on")
    return Action("Done: next check" if left > 1 else "Done: last check")


def _zero_action(run: TestRun) -> Action:
    if run.zeroing is None:
        return Action("Take the zero")
    return Action("Taking the zero", enabled=False, why_not="Hands off: nothing may touch the lever")


def _drag_action(run: TestRun) -> Action:
    if run.drag.counting:
        return Action("Drag is measured: go on")
    return Action("Turn slowly", enabled=False, why_not="It is caught by itself; without it: Without drag")


def _pulls_action(run: TestRun) -> Action:
    """Go on once all pulls are there and the lever is unloaded; until then nothing that a bump could press."""
    count, wanted = len(run.pulls.counting), run.card.pulls_wanted
    if count >= wanted and not run.coach.loaded:
        return Action("Enough pulls: zero again")
    if count >= wanted:
        return Action("Finish this pull", enabled=False, why_not="The lever is loaded")
    return Action(f"Pull {count + 1} of {wanted}", enabled=False, why_not="Pulls are caught by themselves: just pull")


def _sign_action(run: TestRun) -> Action:
    return Action("Sign and finish", bool(run.signed_by.strip()), "Enter who did the test")
