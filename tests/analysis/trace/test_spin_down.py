"""Inertia from a spin-down: against the virtual axle that runs out freely, whose inertias are its own parameters."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from analysis.__main__ import COMMANDS
from analysis.trace import spin_down
from analysis.trace.spin_down import Inertia, inertia_of, lines_of
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from logger.edges.door import run_door
from logger.errors import InputError
from logger.virtual.drivetrain import Motion, march
from logger.virtual.pack import Friction
from logger.virtual.scenarios import axle, pack

STEP_S = 5e-4
LEVEL = Friction(3.0, 3.0, stiffness_nm_rad=3e3, damping_nms=0.1)  # a drag that does not depend on speed


@cache
def run_out(rising: float = 0.0):
    """Let both wheels and the driveline run out from 20 rad/s: everything turns together, its packs hold."""
    drag = replace(LEVEL, viscous_nms=rising)
    free = axle(pack(60.0, seed=None), pack(60.0, seed=None))
    free = replace(free, held="none", driven_drag=drag, other_drag=drag, case_drag=drag)
    state = Motion(speed=(20.0,) * 5)
    _, log = march(free, state, 9000, STEP_S, lambda *_: (0.0, 0.0), lambda _a: 0.0, 0.0)
    inertia = free.wheel_kgm2 + free.other_kgm2 + free.case_kgm2 + 2 * free.gear_kgm2
    every = 5
    return np.arange(9000)[::every] * STEP_S, np.degrees(log.wheel_rad[::every]), inertia


@pytest.mark.parametrize("way", [1.0, -1.0])
@pytest.mark.parametrize("step_deg", [0.0, 0.5])
def test_inertia_is_that_of_the_virtual_axle(way: float, step_deg: float) -> None:
    time_s, angle, true = run_out()
    angle = np.round(angle / step_deg) * step_deg if step_deg else angle
    found = inertia_of(time_s, way * angle, 9.0, 0.2)
    assert abs(found.budget.value - true) < found.budget.u95 < 0.15 * true
    assert found.budget.value == pytest.approx(true, rel=0.03)


def command(capsys, words):
    code = run_door("heldwheel-read", "", COMMANDS, "analysis.doors", words)
    shown = capsys.readouterr()
    return code, shown.out, shown.err


def test_a_drag_that_rises_with_speed_widens_the_interval() -> None:
    time_s, angle, true = run_out(0.1)
    found, even = inertia_of(time_s, angle, 9.0 + 3 * 0.1 * 12, 0.2), inertia_of(*run_out()[:2], 9.0, 0.2)
    assert abs(found.budget.value - true) < found.budget.u95
    assert found.budget.u95 / found.budget.value > even.budget.u95 / even.budget.value


def test_how_slowly_to_begin_follows_from_newton() -> None:
    found = inertia_of(*run_out()[:2], 9.0, 0.2)
    assert found.quickest_rad_s2(27.0, 0.02) * found.budget.value == pytest.approx(0.54)


def test_what_does_not_spin_down_is_refused() -> None:
    time_s = np.linspace(0, 5, 500)
    with pytest.raises(InputError, match="no spin-down"):
        inertia_of(time_s, 0 * time_s, 9.0, 0.1)
    with pytest.raises(InputError, match=r"slows down|too short"):
        inertia_of(time_s, 200 * time_s, 9.0, 0.1)
    with pytest.raises(InputError, match="above zero"):
        inertia_of(*run_out()[:2], 0.0, 0.1)


def test_command(tmp_path, capsys) -> None:
    time_s, angle, _ = run_out()
    path = tmp_path / "spin.csv"
    rows = [f"{t:.4f},0.0,{a:.2f}" for t, a in zip(time_s, angle, strict=True)]
    path.write_text("\n".join(["time_s,torque_Nm,angle_deg", *rows]) + "\n", encoding="utf-8")
    asked = ["inertia", str(path), "--drag", "9 N·m", "--drag-u", "0.2 N·m", "--torque", "27 N·m"]
    code, said, _ = command(capsys, asked)
    assert code == 0
    assert said.startswith("Inertia 2.3")
    assert "For less than 2 % of 27 N·m" in said
    assert inertia_of(time_s, angle, 9.0, 9.0 * spin_down.ASSUMED_SHARE).budget.rows[0].input.u == pytest.approx(0.45)


# ---------------------------------------------------------------------- straight from Newton
def slowing(readings: int, every_s: float = 0.01, alpha: float = 1.0, first: float = 10.0):
    """Give times (s) and angles (degrees) of a wheel that slows down evenly by ``alpha`` rad/s²."""
    t = every_s * np.arange(readings)
    return t, np.degrees(first * t - alpha * t**2 / 2)


def test_an_even_slowing_by_hand() -> None:
    """480 readings: means of two find the beginning; from the fourth to the last but one, means of seven are fitted."""
    found = inertia_of(*slowing(480), 0.5, 0.0)
    assert found.budget.value == pytest.approx(0.5)
    assert found.slowing_rad_s2 == pytest.approx(1.0)
    assert (found.start_s, found.end_s) == (pytest.approx(0.06), pytest.approx(4.75))
    assert found.fastest_rad_s == pytest.approx(10 - (0.06 + 0.13) / 2)
    assert found.quickest_rad_s2(50.0) == pytest.approx(0.02 * 50 / 0.5)


def test_it_counts_down_to_a_fifth_of_the_highest_speed() -> None:
    """From 10 rad/s by 2 rad/s²: at 2 rad/s after 4 s."""
    found = inertia_of(*slowing(500, alpha=2.0), 9.0, 0.2)
    assert found.end_s == pytest.approx(4.0, abs=0.05)
    assert found.slowing_rad_s2 == pytest.approx(2.0)


def test_a_push_comes_before_it() -> None:
    """The wheel is pushed for a second, and runs out from then on."""
    t, angle = slowing(400)
    pushed = np.degrees(10 * 0.5 * np.arange(0, 1, 0.01) ** 2)
    found = inertia_of(
        np.r_[np.arange(0, 1, 0.01), 1 + t], np.r_[pushed, pushed[-1] + 5.7 * 0.01 * 10 + angle], 9.0, 0.0
    )
    assert 1.0 < found.start_s < 1.1
    assert found.slowing_rad_s2 == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("readings", "refused"), [(19, "no spin-down"), (20, "too short"), (22, "too short"), (23, "")]
)
def test_twenty_readings_show_a_curve(readings: int, refused: str) -> None:
    """Of 23, the first two and the last are not of it."""
    t, angle = slowing(readings, 0.1)
    if refused:
        with pytest.raises(InputError, match=refused):
            inertia_of(t, angle, 9.0, 0.2)
        return
    found = inertia_of(t, angle, 9.0, 0.2)
    assert (found.start_s, found.end_s) == (pytest.approx(0.2), pytest.approx(2.1))


@pytest.mark.parametrize(("turned", "refused"), [(180.0, "no spin-down"), (181.0, "too short")])
def test_half_a_turn_is_needed(turned: float, refused: str) -> None:
    """Half a turn is not enough; more than that less both ends is none either."""
    t, angle = slowing(100)
    with pytest.raises(InputError, match=refused):
        inertia_of(t, angle / angle[-1] * turned, 9.0, 0.2)


def test_what_is_fitted_must_turn_so_far_itself(monkeypatch) -> None:
    t, angle = slowing(23, 0.1)
    turned = float(np.radians(angle[21]) - np.radians(angle[2]))
    monkeypatch.setattr(spin_down, "LEAST_TURN_RAD", turned)
    assert inertia_of(t, angle, 9.0, 0.2).start_s == pytest.approx(0.2)
    monkeypatch.setattr(spin_down, "LEAST_TURN_RAD", 1.0001 * turned)
    with pytest.raises(InputError, match="too short"):
        inertia_of(t, angle, 9.0, 0.2)


@pytest.mark.parametrize(("drag", "u"), [(0.0, 0.1), (-1.0, 0.1), (9.0, -0.1), (9.0, np.inf), (np.inf, 0.1)])
def test_a_drag_that_is_none(drag: float, u: float) -> None:
    with pytest.raises(InputError, match="above zero"):
        inertia_of(*slowing(480), drag, u)


@pytest.mark.parametrize(
    ("slows", "u", "told"), [(1.0, 0.5, True), (1.0, 0.501, False), (0.0, 0.0, False), (-1.0, 0.0, False)]
)
def test_a_slowing_is_shown_from_twice_its_uncertainty_on(monkeypatch, slows: float, u: float, *, told: bool) -> None:
    monkeypatch.setattr(spin_down, "_slowing", lambda *_: (slows, u, 10.0))
    if told:
        assert inertia_of(*slowing(480), 9.0, 0.2).budget.value == 9.0
        return
    with pytest.raises(InputError, match="nothing slows down"):
        inertia_of(*slowing(480), 9.0, 0.2)


def test_the_slowing_is_numpys_parabola() -> None:
    """Readings that scatter to and fro depend on nothing: n - 3 degrees of freedom, as in ``numpy.polyfit``."""
    t = np.linspace(1.0, 5.0, 40)
    turn = 3 + 10 * t - 0.75 * t**2 + 0.01 * np.resize([1.0, -1.0], 40)
    fit, cov = np.polyfit(t, turn, 2, cov=True)
    got, u, dof = spin_down._slowing(t, turn)
    assert got == pytest.approx(-2 * fit[0])
    assert u == pytest.approx(2 * math.sqrt(cov[0, 0]))
    assert dof == 37


def test_readings_that_hang_together_count_as_few() -> None:
    """A slow wave about the parabola: neighbours count as alike by 0.9 at most, 400 · 0.1/1.9 - 3."""
    t = np.linspace(0.0, 5.0, 400)
    assert spin_down._slowing(t, 10 * t - t**2 + 0.01 * np.sin(2 * np.pi * t))[2] == pytest.approx(400 / 19 - 3)


def test_a_slowing_that_changes_pays_half_of_what_its_halves_differ() -> None:
    """Each half is fitted by ``numpy.polyfit``; the difference is a rectangle."""
    t = 0.01 * np.arange(480)
    angle = np.degrees(10 * t - t**2 / 2 + 0.004 * t**4)
    drag, slow = inertia_of(t, angle, 9.0, 0.2).budget.rows
    means, turn = spin_down._part(t, angle)
    whole, first, second = (-2 * np.polyfit(means[p], turn[p], 2)[0] for p in (slice(68), slice(34), slice(34, 68)))
    _, scatter, dof = spin_down._slowing(means, turn)
    assert len(means) == 68
    assert slow.input.value == pytest.approx(whole)
    assert slow.input.u == pytest.approx(math.hypot(scatter, (first - second) / 2 / math.sqrt(3)))
    assert slow.input.dof == dof
    assert drag.sensitivity == pytest.approx(1 / whole)
    assert slow.sensitivity == pytest.approx(-9.0 / whole**2)


def test_what_is_said_of_it() -> None:
    """2 kg·m² ± 1.96 · 0.1; 2 % of 100 N·m are 1 rad/s²; 10 rad/s are 95 turns a minute, 5 of them 0.52 rad/s."""
    budget = Budget("inertia", 2.0, "kg·m²", (BudgetRow(Input("drag", 2.0, 0.1), 1.0),))
    found = Inertia(budget, 1.5, 0.25, 4.0, 10.0)
    first, *rest = lines_of(found, u_stated=False, torque_nm=100.0, torque="100 N·m")
    assert first.startswith("Inertia 2 ± 0.2 kg·m² (95 %): slows by 1.5 rad/s² from 0.2 to 4.0 s, from 95 turns")
    assert rest[0].endswith("5 % of it.")
    assert "less than 1 rad/s², 5 turns a minute in 0.5 s" in rest[1]
    assert lines_of(found, u_stated=True) == (first, spin_down.CHANGES_NOTHING)
