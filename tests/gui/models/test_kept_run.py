"""Whole tests walked through by script, and all that the window would show after every step, held against a file."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from analysis.trace.results import Code, Reason
from analysis.verdict.job import Job
from gui.models.flow import Step
from gui.models.job import JobCard
from gui.models.relay import FoundPull, ScreenSamples
from gui.models.run import TestRun
from gui.models.state import LinkState
from logger.errors import FileError
from logger.header import Axle, Lever, Limit, Test
from logger.samples import Ending, EndReason, Event, EventKind
from tests.analysis.made import Shape, trace
from tests.gui.models.test_steps import pull
from tests.kept import everything, kept
from tests.steps import steps

MINIMUM = Limit(
    quantity="breakaway", kind="min", unit="N·m", lower=30.0, source="invented", held="other side", gear="neutral"
)
RATIO = Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="invented")
HUB = Lever(fixture="hub centre", weight_kg=1.0, centroid_mm=200.0)
CARDS = {
    "plain": {
        "lever": HUB,
        "limit": MINIMUM,
        "test": Test(place="car", held="other side", gear="neutral", side="left"),
    },
    "bare": {},
    "drag": {"lever": HUB, "limit": MINIMUM, "with_drag": True},
    "ratio": {"lever": HUB, "limit": RATIO, "test": Test(held="none", gear="in gear")},
    "open": {"axle": Axle(type="open"), "limit": MINIMUM, "lever": HUB},
    "short": {"lever": HUB, "pulls_wanted": 2, "dwell_s": 4.0},
}


def card_of(name: str) -> JobCard:
    card = JobCard()
    card.put(**CARDS[name])
    return card


def shown(of: TestRun) -> list[object]:
    """Give what the window shows of a run."""
    action, value = of.action(), of.value
    return [
        of.flow.now and of.flow.now.name,
        [stand.name for stand in of.flow.stands.values()],
        action.text,
        action.enabled,
        of.purpose,
        of.can_skip,
        of.can_reconnect,
        of.can_go_back,
        of.can_zero,
        of.hint.name,
        of.silent,
        of.dwell_left_s,
        of.now_nm,
        of.axle_now(),
        of.axle_highest(),
        of.turned_deg,
        of.pace and of.pace.rpm,
        of.lost,
        of.battery,
        of.notice and [of.notice.text, of.notice.serious],
        [check.ticked for check in of.checks],
        [[p.number, p.rejected, p.counts, p.breakaway, p.rotating, p.state, len(p.notes)] for p in of.pulls.pulls],
        value and everything(value)[:6],
        [of.zeros.in_use_nm, of.zeros.moved_nm],
        of.zeroing and of.zeroing.state.name,
    ]


def feed(of: TestRun, t: float, torque: np.ndarray, *, angle: bool = False, events: tuple[Event, ...] = ()) -> float:
    """Feed a stretch at 20 readings a second, in drains of half a second."""
    for n in range(0, len(torque), 10):
        time_s = t + np.arange(n, min(n + 10, len(torque))) / 20
        degrees = 6.0 * 3 * time_s if angle else None
        drain = torque[n : n + 10]
        of.samples(ScreenSamples(time_s, drain, degrees, events if n == 0 else (), drain))
    return t + len(torque) / 20


@pytest.mark.parametrize("name", CARDS)
@pytest.mark.parametrize("way", ["straight", "troubled"])
def test_kept_run(name, way):
    with steps(
        "gui.models.run",
        "gui.models.caught",
        "gui.models.flow",
        "gui.models.action",
        "gui.models.zeros",
        "gui.models.highest",
        "gui.models.checks",
        "gui.models.zeroing",
    ) as said:
        answers = walked(name, troubled=way == "troubled")
    kept("models-run", f"{name} {way}", [answers, said])


def walked(name: str, *, troubled: bool) -> list[object]:
    card = card_of(name)
    of = TestRun(card)
    seen: list[object] = [shown(of)]
    of.start()
    of.link = LinkState.LIVE
    t = 0.0
    for _ in range(40):
        if of.flow.now in {Step.ZERO, Step.PULLS, Step.DRAG, None}:
            break
        of.act()
    seen.append(shown(of))
    of.act()  # zero
    t = feed(of, t, np.full(60, 0.35) + 0.01 * (np.arange(60) % 3))
    seen.append(shown(of))
    job = Job(of.card.judged_by("pulls"))
    for k, torque in enumerate((40.0, 44.0, 36.0, 41.0, 40.5, 39.0)):
        ramp = np.concatenate(
            [
                np.linspace(0.3, torque, 30),
                np.full(60, 0.9 * torque),
                np.linspace(0.9 * torque, 0.3, 6),
                np.full(20, 0.3),
            ]
        )
        begun = t
        event = (Event(EventKind.GAP, 0, 3, "", t), Event(EventKind.BATTERY, 0, 0, "12 %", t)) if k == 2 else ()
        t = feed(of, t, ramp[:50], angle=k % 2 == 0, events=event)
        seen.append(shown(of)[7:18])
        t = feed(of, t, ramp[50:], angle=k % 2 == 0)
        if of.flow.now in {Step.PULLS, Step.DRAG, Step.ZERO_AGAIN}:
            of.found(FoundPull(0, 0.0, pull(begun, torque), job))
        if troubled and k == 1:
            of.leave_out(1, "jerked") if of.pulls.pulls else None
            of.reject_last()
            seen.append(shown(of))
            of.undo()
            of.samples(
                ScreenSamples(np.empty(0), np.empty(0), None, (Event(EventKind.AUTO_ZERO, 0, 0, "", t),), np.empty(0))
            )
            seen.append(shown(of))
            of.zero_anew()
            of.act()
            t = feed(of, t + 1.0, np.full(60, 1.5 if name == "plain" else 0.4))
        if troubled and k == 3:
            of.link = LinkState.SILENT
            seen.append(shown(of)[4:12])
            of.link = LinkState.LIVE
            of.card.put(test=Test(held="case"))
            of.judge_again()
            seen.append(shown(of))
            for _ in range(12):
                if of.flow.now in {Step.PULLS, None}:
                    break
                of.act()
                t = feed(of, t, np.full(50, 0.4)) if of.zeroing else t
        seen.append(shown(of))
    of.act()
    seen.append(shown(of))
    of.go_back()
    of.skip()
    of.act()
    t = feed(of, t, np.full(60, 0.9 if troubled else 0.4))
    seen.append(shown(of))
    if troubled:
        of.ended(Ending(EndReason.FAILED, "it broke", FileError("x")), safe="All is safe.")
        seen.append(shown(of))
        of.answer_notice()
    of.skip()
    of.freeze()
    of.act()
    seen.append(shown(of))
    return seen


def test_kept_pulls_of_a_real_reading():
    """Pulls as a job reads them, judged, left out, and taken back."""
    card = card_of("plain")
    of = TestRun(card)
    t, y = trace(
        Shape(), Shape(breakaway_nm=48.0), Shape(breakaway_nm=30.0, rotating_nm=26.0), rate_hz=50.0, noise_nm=0.02
    )
    job = Job(card.judged_by("pulls"))
    answers = []
    for at in range(0, len(t), 25):
        for one in job.feed(t[at : at + 25], np.round(y[at : at + 25], 3)):
            of.pulls.add(0.0, one, job)
            answers.append(shown(of)[21:])
    for number, reason in ((2, ""), (1, "late"), (2, "again")):
        of.pulls.reject(number, reason)
        answers.append(shown(of)[21:])
    answers.append([of.pulls.undo(), of.pulls.undo(), shown(of)[21:]])
    of.pulls.restore(1)
    answers.append(
        [[p.notes for p in of.pulls.pulls], shown(of)[21:], of.pulls.undo(), of.pulls.undo(), of.pulls.undo()]
    )
    first = of.pulls.pulls[0].pull
    for back in (
        replace(first, taken_back=True, reasons=(Reason(Code.SHORT, "none after all"),)),
        replace(first, taken_back=True, end_s=first.end_s + 1),
    ):
        of.pulls.add(0.0, back, job)
        answers.append(shown(of)[21:])
    kept("models-run", "a reading", answers)
