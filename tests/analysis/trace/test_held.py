"""A held wheel that slips or gives: against the virtual axle, whose other side gear shows what the held wheel did."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from analysis.trace.held import HELD_UNKNOWN, held_of, held_unknown
from analysis.trace.results import Breakaway, Code, Pull, Rotating, Turned
from analysis.verdict.job import Job
from logger.header import Header, Test
from logger.virtual.pack import Friction
from logger.virtual.physics import simulate
from logger.virtual.scenarios import scenario


@cache
def run_of(kind: str):
    made = scenario("tyre-slips" if kind == "slips" else "healthy")
    if kind == "strap":  # a webbing strap: soft, but it holds
        made = replace(made, axle=replace(made.axle, floor=Friction(500.0, 500.0, stiffness_nm_rad=400.0)))
    return simulate(replace(made, angle_step_deg=0.05), 3)


def read(kind: str, *, second: bool = True, held="other side"):
    run = run_of(kind)
    m = run.mechanics
    # Of the held wheel: the other side gear; its half shaft's twist, 0.3° at 50 N·m, is less than what is told here.
    held_deg = np.degrees(np.interp(run.time_s, np.arange(m.case_rad.size) * m.step_s, m.other_slip_rad + m.case_rad))
    job = Job(Header(test=Test(held=held)))
    job.feed(run.time_s, run.torque_nm, run.angle_deg, (), -held_deg if second else None)
    job.finish()
    return run, held_deg, job.judge(job.corrected((), run.time_s, run.torque_nm))


def test_a_wheel_that_stays_says_nothing() -> None:
    _, _, said = read("stays")
    assert len(said.pulls) == 5
    for one in said.pulls:
        assert one.pull.valid
        assert not any("held wheel" in note for note in one.pull.notes)
        assert one.pull.turned.held_rad is not None


def test_a_tyre_that_slips_makes_the_pull_not_valid_and_only_its_angle_tells() -> None:
    run, held_deg, said = read("slips")
    assert len(said.pulls) == len(run.truth) == 3
    for one in said.pulls:
        pull = one.pull
        assert Code.NEVER_SLIPPED in {reason.code for reason in pull.reasons}
        assert "its tyre or strap slipped, not the packs" in pull.reasons[-1].text
        level = pull.rotating
        true_deg = abs(np.ptp(np.interp([pull.start_s, level.end_s], run.time_s, held_deg)))
        assert np.degrees(pull.turned.held_rad) == pytest.approx(true_deg, rel=0.01)
        assert true_deg > 20  # it did turn along
    # The same pulls with one angle alone: they look sound, and that is said.
    _, _, one_angle = read("slips", second=False)
    assert any(read.pull.valid and read.pull.rotating for read in one_angle.pulls)
    assert held_unknown((read.pull for read in one_angle.pulls), "other side") == HELD_UNKNOWN


def test_a_soft_strap_is_told_and_leaves_the_pull_valid() -> None:
    _, _, said = read("strap")
    valid = [one.pull for one in said.pulls if one.pull.valid]
    assert valid
    for pull in valid:
        assert any("wind-up and stiffness are mostly of what holds it" in note for note in pull.notes)


def turned(whole: float, held: float, steady: float) -> Pull:
    return Pull(
        0.0, 5.0, 1, 0.0, Breakaway(1.0, 50.0, 0.1, 0.2, True), Rotating(1.2, 4.8, 45.0, 0.1, 0.2, 47.0),
        turned=Turned(0.02, whole * 0.9, whole / 2, whole, held, steady),
    )  # fmt: skip


def test_a_wheel_that_gives_while_the_other_turns_is_a_note_and_no_reason() -> None:
    found = held_of(turned(np.radians(90), np.radians(8), np.radians(7)))
    assert found.valid
    assert "gave by 7.0° while the other turned by 81°" in found.notes[0]
    assert held_of(turned(np.radians(90), np.radians(1), np.radians(0.5))).notes == ()
    assert not held_of(turned(np.radians(90), np.radians(85), np.radians(80))).valid


def test_where_nothing_is_held_nothing_is_asked() -> None:
    _, _, said = read("stays", second=False, held="none")
    pulls_read = [one.pull for one in said.pulls]
    assert held_unknown(pulls_read, "none") == ""
    assert held_unknown(pulls_read, None) == HELD_UNKNOWN
    assert held_unknown([replace(pull, turned=None) for pull in pulls_read], None) == ""
