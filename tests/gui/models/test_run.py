"""A test as it runs, at the borders of its rules: breaks, rest, zeros that moved, checks that are asked again."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.verdict.job import Job
from gui.models.coach import Hint
from gui.models.flow import Step
from gui.models.job import JobCard
from gui.models.relay import ScreenSamples
from gui.models.run import TestRun
from gui.models.state import LinkState
from gui.models.zeroing import ZeroValue
from logger.header import Limit, Test, Zero
from logger.samples import Ending, EndReason
from tests.gui.models.test_steps import pull

BAND = Limit(quantity="breakaway", kind="band", unit="N·m", lower=30.0, upper=50.0, source="invented")


def at(step: Step, **parts: object) -> TestRun:
    """Give a test that has come to a step."""
    made = TestRun(JobCard())
    made.card.put(**parts)
    made.start()
    while made.flow.now is not step:
        made.flow.done()
    made.link = LinkState.LIVE
    return made


def feed(of: TestRun, *time_s: float, level: float = 0.0) -> None:
    shown = np.full(len(time_s), level)
    of.samples(ScreenSamples(np.array(time_s), shown, None, (), shown))


def zero(nm: float) -> ZeroValue:
    return ZeroValue(nm, 0.01, 1.0)


@pytest.mark.parametrize(("next_s", "anew"), [(1.25, False), (1.5, False), (1.53125, True)])
def test_the_coach_begins_anew_after_a_break_of_more_than_half_a_second(next_s: float, *, anew: bool) -> None:
    of = at(Step.PULLS)
    feed(of, 0.0)
    feed(of, 0.875, 0.9375, 1.0)
    coach = of.coach
    feed(of, next_s)
    assert (of.coach is not coach) is anew


@pytest.mark.parametrize(("parts", "interest"), [({}, 20.0), ({"limit": BAND}, 30.0)])
def test_what_is_expected_of_a_pull_is_the_least_of_its_limits(parts: dict[str, object], interest: float) -> None:
    """20 N·m where there is none: common practice, no source."""
    of = at(Step.PULLS, **parts)
    feed(of, 0.0)
    assert of.coach.interest_nm == interest
    assert of._steady_nm() == pytest.approx(interest / 100)


def test_the_coach_sees_the_torque_from_its_zero() -> None:
    """3.0 N·m and less are rest: 15 % of 20."""
    for zero_nm, loaded in ((0.0, True), (2.0, False), (-2.0, True)):
        of = at(Step.PULLS)
        of.zeros.take(zero(zero_nm))
        feed(of, 0.0, 0.5, level=4.0)
        assert of.coach.loaded is loaded


def test_the_rest_ends_to_the_sample() -> None:
    of = at(Step.PULLS, dwell_s=10.0)
    feed(of, 40.0, 50.0)
    for since_s, left, hint in ((40.5, 0.5, Hint.LET_REST), (40.0, None, Hint.READY)):
        of._rest_from_s, of.coach.hint = since_s, Hint.NONE
        feed(of, 50.0)
        assert (of.dwell_left_s, of.hint) == (left, hint)


@pytest.mark.parametrize(("moved_nm", "told"), [(0.2, False), (-0.2, False), (0.21, True), (-0.21, True)])
def test_a_zero_has_moved_beyond_a_hundredth_of_what_matters(moved_nm: float, *, told: bool) -> None:
    """Of 20 N·m: common practice, no source."""
    of = at(Step.PULLS)
    of.zeros.take(zero(0.0))
    job = Job(of.card.judged_by("pulls"))
    of.pulls.add(0.0, pull(0.0), job)
    of._forget_other_zero(zero(moved_nm))
    assert [caught.rejected for caught in of.pulls.pulls] == ["made before the new zero" if told else ""]
    of.zeros.take_again(zero(moved_nm))
    of._compare_zeros()
    assert (of.notice is not None) is told


def test_the_second_zero_is_that_of_the_last_recording_alone() -> None:
    of = at(Step.PULLS)
    first, last = (Job(of.card.judged_by("pulls")) for _ in range(2))
    first.take_zero(Zero(value_nm=5.0))
    of.zeros.take(zero(0.1))
    last.take_zero(of.zeros.written)
    for start_s, job in ((0.0, first), (20.0, last)):
        of.pulls.add(start_s, pull(0.0), job)
    before = first.header.zero
    of._second_zero(zero(0.15))
    assert last.header.zero.after_nm == 0.15
    assert first.header.zero == before
    # A last recording with another zero keeps it.
    of.pulls.add(40.0, pull(0.0), first)
    of._second_zero(zero(0.18))
    assert first.header.zero == before
    assert last.header.zero.after_nm == 0.15
    of.pulls.pulls.clear()
    of._second_zero(zero(0.2))
    assert of.zeros.written.after_nm == 0.2


def test_checks_are_asked_again_only_while_something_can_still_go_wrong() -> None:
    """Once for a changed kind of test; not when it is to be signed, nor after that, nor before the start."""
    case = Test(place="bench", held="case")
    of = at(Step.PULLS)
    of.card.put(test=case)
    of.recheck()
    assert (of.flow.now, of.notice.serious) == (Step.SAFETY, True)
    of = at(Step.SIGN)
    asked = of.checks
    of.card.put(test=case)
    of.recheck()
    assert (of.flow.now, of.checks, of.notice) == (Step.SIGN, asked, None)
    of.flow.done()
    assert of.flow.finished
    of.recheck()
    assert (of.checks, of.notice) == (asked, None)
    of = TestRun(JobCard())
    of.recheck()
    assert of.checks == []


def test_in_practice_all_checks_are_read_at_once() -> None:
    of = at(Step.SAFETY, practice=True)
    assert len(of.checks) > 1
    of.act()
    assert all(check.ticked for check in of.checks)
    assert of.flow.now is Step.ZERO
    of = at(Step.SAFETY)
    for left in range(len(of.checks), 0, -1):
        assert sum(not check.ticked for check in of.checks) == left
        of.act()
    assert of.flow.now is Step.SAFETY
    of.act()
    assert of.flow.now is Step.ZERO


@pytest.mark.parametrize(
    ("reason", "error", "rescue"),
    [
        (EndReason.FAILED, OSError(28, "full"), True),
        (EndReason.FAILED, ValueError("x"), False),
        (EndReason.FAILED, None, False),
        (EndReason.LOST, OSError(5, "gone"), False),
    ],
)
def test_a_disk_that_fails_can_be_rescued_from(reason: EndReason, error: Exception | None, *, rescue: bool) -> None:
    of = at(Step.PULLS)
    of.ended(Ending(reason, "told", error), safe="Safe.")
    assert (of.notice.text, of.notice.can_rescue) == ("told Safe.", rescue)
    assert of.link is LinkState.ENDED
