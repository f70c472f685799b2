"""Inertia from a spin-down: against the virtual axle that runs out freely, whose inertias are its own parameters."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from analysis.__main__ import COMMANDS
from analysis.trace.spin_down import inertia_of
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
