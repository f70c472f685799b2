"""Before the test: tyres against the virtual differential's kinematics, what other types are tried for."""

from __future__ import annotations

import json

import numpy as np
import pytest

from analysis.__main__ import COMMANDS
from analysis.identify.axle_type import JUDGED, Type
from analysis.identify.functions import FUNCTIONS, functions_of
from analysis.identify.tyres import lines_of, tyre_mismatch
from logger.edges.door import run_door
from logger.errors import InputError
from logger.virtual.drivetrain import Motion, march
from logger.virtual.scenarios import axle, pack


def command(capsys, words):
    code = run_door("heldwheel-read", "", COMMANDS, "analysis.doors", words)
    shown = capsys.readouterr()
    return code, shown.out, shown.err


def test_packs_slip_at_half_of_what_the_wheels_differ_by() -> None:
    """The virtual axle with one wheel turning and the other held: its packs slip by half the difference, to 1 %."""
    turning = axle(pack(20.0, seed=None), pack(20.0, seed=None))
    state, speed = Motion(), 4.0
    _, log = march(turning, state, 4000, 5e-4, lambda _n, _a, w: (2000.0 * speed, 2000.0), lambda _a: 0.0, 0.01)
    late = slice(3000, None)
    wheel = float(np.mean(log.wheel_rad_s[late]))
    slip = float(np.polyfit(np.arange(1000) * 5e-4, log.driven_slip_rad[late], 1)[0])
    assert slip == pytest.approx(wheel / 2, rel=0.01)
    # Two tyres whose wheels differ by just this speed: the formula gives the same slip.
    v = 20.0
    right_m = 2.0
    left_m = 1 / (1 / right_m - wheel / (2 * np.pi) / v)
    found = tyre_mismatch(left_m, right_m, 0.0, v)
    assert found.wheel_rpm == pytest.approx(wheel * 30 / np.pi)
    assert found.pack_rpm == pytest.approx(abs(slip) * 30 / np.pi, rel=0.01)


def test_turns_per_kilometre_do_not_depend_on_the_speed() -> None:
    slow, fast = (tyre_mismatch(1.985, 1.968, 0.001, v) for v in (5.0, 50.0))
    assert slow.pack_turns_per_km == fast.pack_turns_per_km == pytest.approx((1000 / 1.968 - 1000 / 1.985) / 2)
    # At a speed v a kilometre takes 1000/v seconds: the two statements agree.
    assert fast.pack_rpm / 60 * 1000 / 50.0 == pytest.approx(fast.pack_turns_per_km)


@pytest.mark.parametrize(
    ("right", "u", "told"),
    [
        *[(1.99, 0.001, "no"), (1.95, 0.003, "yes"), (1.98, 0.003, "not told")],
        *[(1.979, 0.0, "yes"), (1.981, 0.0, "no")],  # 1.06 and 0.95 %
    ],
)
def test_one_per_cent_is_told_with_its_interval(right: float, u: float, told: str) -> None:
    assert tyre_mismatch(2.0, right, u, 10.0).told == told
    assert tyre_mismatch(right, 2.0, u, 10.0).told == told


def test_just_one_per_cent_is_neither() -> None:
    """1/32 m over 25/8 m is 0.01: all three are floats."""
    found = tyre_mismatch(3.125 + 1 / 64, 3.125 - 1 / 64, 0.0, 10.0)
    assert (found.share, found.told) == (0.01, "not told")


@pytest.mark.parametrize(
    ("left", "right", "words"),
    [
        (2.0, 1.98, "The left tyre is larger by 1.01 ± 0.14 % (95 %)."),  # √2 · 1.96 · 1 mm over 1.99 m
        (1.98, 2.0, "The right tyre is larger by 1.01 ± 0.14 % (95 %)."),
        (2.0, 2.0, "Both tyres are alike."),
    ],
)
def test_which_tyre_is_larger_is_said(left: float, right: float, words: str) -> None:
    said = lines_of(tyre_mismatch(left, right, 0.001, 100 / 3.6))
    assert said[0] == words
    # 100 km/h over 2 m and 1.98 m: 833.3 and 841.8 turns a minute; a kilometre: 500 and 505.05 turns
    apart = "8.4 turns a minute: each pack slips at 4.2, and 2.5 turns" if left != right else "0.0 turns a minute"
    assert said[1].startswith("At 100 km/h, straight ahead, the wheels differ by " + apart)


def test_the_smallest_and_the_largest_tyre() -> None:
    assert tyre_mismatch(0.3, 10.0, 0.0, 0.0).pack_rpm == 0
    for left, right in ((0.29, 1.0), (1.0, 0.29), (10.1, 1.0), (1.0, 10.1)):
        with pytest.raises(InputError, match=r"between 0\.3 m and 10 m"):
            tyre_mismatch(left, right, 0.0, 0.0)


@pytest.mark.parametrize(("left", "u", "speed"), [(0.2, 0.001, 1), (635.0, 0.001, 1), (2.0, -1, 1), (2.0, 0.1, -1)])
def test_what_is_no_tyre_is_refused(left: float, u: float, speed: float) -> None:
    with pytest.raises(InputError):
        tyre_mismatch(left, 2.0, u, speed)


def test_every_type_that_the_torque_does_not_judge_has_its_functions() -> None:
    assert set(FUNCTIONS) == set(Type) - JUDGED
    assert functions_of([Type.PLATE, Type.CONE, Type.RAMP]) == ()
    assert functions_of([Type.LOCKER, Type.VISCOUS])[0].startswith("Locker")
    assert functions_of(list(Type)) == ()
    few = (Type.LOCKER, Type.GEAR, Type.OPEN, Type.SOLID)
    assert functions_of(few[:3]) == (*FUNCTIONS[Type.LOCKER], *FUNCTIONS[Type.GEAR], *FUNCTIONS[Type.OPEN])
    assert functions_of(few) == ()


def test_commands(capsys) -> None:
    code, said, _ = command(capsys, ["tyres", "--left", "2000mm", "--right", "1950mm"])
    assert code == 1
    assert "Above 1 %" in said
    code, said, _ = command(capsys, ["tyres", "--left", "78in", "--right", "78in", "--uncertainty", "1mm", "--json"])
    assert code == 0
    assert json.loads(said)["pack_rpm"] == 0
    code, said, _ = command(capsys, ["type", "--brakes", "free", "--one-held", "one-way", "--both-up", "same"])
    assert code == 4
    assert "☐ Locker: both wheels up" in said
