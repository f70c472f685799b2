"""The few words under a step's name: how far it is, what it found, what would make its numbers mean nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gui.models.flow import Stand, Step

if TYPE_CHECKING:
    from gui.models.display import Display
    from gui.models.run import TestRun


def step_detail(run: TestRun, step: Step, display: Display) -> tuple[str, bool]:
    """Give a few words under a step's name, and whether they warn: a number that would mean nothing, before a pull."""
    conflict = run.card.type_conflict()
    if step is Step.PULLS and conflict is not None and conflict.refused and not run.pulls.pulls:
        return "not judged: axle's type", True
    return _so_far(run, step, display), False


def _so_far(run: TestRun, step: Step, display: Display) -> str:
    if step is Step.ZERO and run.zeros.first is not None:
        return f"at {display.torque(run.zeros.in_use_nm)}"
    if step is Step.PULLS and run.flow.stands[step] is not Stand.TO_COME:
        return f"{len(run.pulls.counting)} of {run.card.pulls_wanted}"
    if step is Step.DRAG and run.drag.value is not None:
        return display.torque(run.drag.value.value.nm)
    if step is Step.ZERO_AGAIN and run.zeros.moved_nm is not None:
        return f"moved {display.torque(run.zeros.moved_nm)}"
    if step in {Step.SAFETY, Step.HOLD} and run.flow.now is step:
        return f"{sum(check.ticked for check in run.checks)} of {len(run.checks)}"
    return ""
