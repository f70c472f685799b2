"""Drag: the torque balance of a differential solved by hand, and what is shared between the tests."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.to_axle.drag import (
    NON_LINEARITY,
    Drag,
    Matrix,
    factor_two,
    half_speed_note,
    held_end,
    in_gear_ratio,
    pack_mean,
    pack_mean_one_side,
    rolling,
)
from analysis.uncertainty.budget import Budget, BudgetRow, Input


def _torque(value, *, own=0.2, relative=0.005, quantity="rotating mean"):
    rows = (
        BudgetRow(Input("trace", value, own), 1.0),
        BudgetRow(Input("calibration", 1.0, relative, "1", shared=True), value),
    )
    return Budget(quantity, value, "N·m", rows)


def _held(f_left, f_right, d_c, d_driven):
    """Torque at the driven wheel, other side held: three equations of balance, solved for T.

    Driven side gear T - D + G - F_d = 0; case -2G + F_d - F_h - D_c = 0; hence T = D + F_d - G.
    """
    g = (f_right - f_left - d_c) / 2
    return d_driven + f_right - g


def _hold(f_left, f_right, d_c):
    """Reaction at the held shaft: T_hold + G + F_h = 0 in size."""
    return f_left + (f_right - f_left - d_c) / 2


def test_worked_example():
    """Packs 20 and 60, driveline 14, wheel ends 3 and 9: held tests 56 and 50, both free 26, mean of the packs 40."""
    right, left = _held(20, 60, 14, 9), _held(60, 20, 14, 3)
    assert (right, left) == (56, 50)
    assert pack_mean(_torque(right), _torque(left), _torque(26)).value == pytest.approx(40.0)


@given(*(st.floats(1, 100) for _ in range(5)))
def test_mean_of_the_packs_whatever_the_drags(f_left, f_right, d_c, d_left, d_right):
    right, left = _held(f_left, f_right, d_c, d_right), _held(f_right, f_left, d_c, d_left)
    both = d_left + d_right + d_c
    mean = (f_left + f_right) / 2
    assert pack_mean(_torque(right), _torque(left), _torque(both)).value == pytest.approx(mean)
    hold = _hold(f_left, f_right, d_c)
    by_ends, driveline = held_end(_torque(right), _torque(hold), _torque(d_right))
    assert by_ends.value == pytest.approx(mean)
    assert driveline.value == pytest.approx(d_c)
    # Left and right readings differ by the wheel ends alone, however unequal the packs.
    assert right - left == pytest.approx(d_right - d_left)


def test_shared_calibration_enters_once_and_random_parts_by_quarters():
    budget = pack_mean(_torque(56), _torque(50), _torque(26))
    assert budget.row("calibration").sensitivity == pytest.approx((56 + 50 - 26) / 2)
    assert budget.without("calibration").u == pytest.approx(0.5 * math.sqrt(3) * 0.2)
    assert budget.quantity == "pack mean, rotating mean"


def test_one_side_assumes_wheel_ends_alike_and_says_how_unlike():
    alike = pack_mean_one_side(_torque(56), _torque(26))
    assert alike.value == pytest.approx(43.0)  # 3 N·m off: the right wheel end drags 6 N·m more than the left
    unlike = pack_mean_one_side(_torque(56), _torque(26), wheel_ends_differ_nm=6.0)
    assert unlike.u > alike.u
    assert unlike.row("wheel ends unlike").contribution == pytest.approx(3 / math.sqrt(3))


def test_different_quantities_are_not_mixed():
    with pytest.raises(ValueError, match="different quantities"):
        pack_mean(_torque(56, quantity="breakaway"), _torque(50), _torque(26))


def test_breakaway_is_corrected_by_a_breakaway_only():
    raw = _torque(60, quantity="breakaway")
    corrected, reason = Drag(rotating=_torque(20)).correct(raw)
    assert corrected is None
    assert "withheld" in reason
    assert "not the drag at rest" in reason
    corrected, reason = Drag(breakaway=_torque(24, quantity="breakaway")).correct(raw)
    assert corrected is not None
    assert corrected.value == pytest.approx(48.0)
    assert corrected.quantity == "pack mean, breakaway"
    assert reason == ""


def test_rotating_maximum_is_corrected_by_the_rotating_drag():
    corrected, _ = Drag(rotating=_torque(20)).correct(_torque(60, quantity="rotating maximum"))
    assert corrected is not None
    assert corrected.value == pytest.approx(50.0)


def test_correction_of_nothing_but_drag_is_withheld():
    corrected, reason = Drag(rotating=_torque(44)).correct(_torque(21))
    assert corrected is None
    assert "explains all of it" in reason


@pytest.mark.parametrize(
    ("held", "both", "said"), [(0.5, 0.25, ""), (0.5, 0.5, "100 %"), (None, 0.3, "half the wheel speed")]
)
def test_baseline_at_half_speed(held, both, said):
    note = half_speed_note(held, both)
    assert (note == "") if not said else (said in note)


@pytest.mark.parametrize(
    ("a", "b", "said"), [(30, 61, True), (61, 30, True), (30, 45, False), (30, 90, False), (0, 30, False)]
)
def test_factor_of_two(a, b, said):
    assert bool(factor_two(a, b)) is said


@pytest.mark.published("Helical type: in gear ÷ neutral (2004)", rows=("11.4",), status="READ-P")
def test_in_gear_over_neutral():
    """7.8 ÷ 2.9 N·m, printed 2.67 = 0.8 ÷ 0.3 kgf·m, against at least 2.5."""
    assert in_gear_ratio(_torque(0.8), _torque(0.3)).value == pytest.approx(2.67, abs=0.005)
    ratio = in_gear_ratio(_torque(7.8, own=0.05), _torque(2.9, own=0.05))
    assert ratio.value == pytest.approx(2.69, abs=0.005)
    assert ratio.unit == "1"
    assert ratio.row("calibration").sensitivity == pytest.approx(0.0, abs=1e-12)  # one transducer: it cancels
    # What is wrong at 2.9 N·m need not be wrong at 7.8: so much of the relative error as they lie apart stays.
    error = ratio.row(NON_LINEARITY).contribution
    assert error == pytest.approx(7.8 / 2.9 * _torque(7.8).row("calibration").input.u * (7.8 - 2.9) / 7.8)
    expected = math.hypot(7.8 / 2.9 * math.hypot(0.05 / 7.8, 0.05 / 2.9), error)
    assert ratio.u == pytest.approx(expected, rel=1e-9)


def test_ratio_needs_something_to_divide_by():
    with pytest.raises(ValueError, match="neutral"):
        in_gear_ratio(_torque(7.8), _torque(0.0))


def test_matrix_says_what_a_difference_means():
    """Clockwise on the right and anticlockwise on the left, seen from outside, both roll forwards."""
    cells = {("right", 1): 56.0, ("left", -1): 50.0, ("right", -1): 50.1, ("left", 1): 50.0}
    matrix = Matrix({place: _torque(value) for place, value in cells.items()})
    forwards, backwards = matrix.words()
    assert forwards.startswith("right less left, forwards: +6 ± ")
    assert "right wheel end drags more" in forwards
    assert "not a weak pack" in forwards
    assert "no difference shown" in backwards
    difference = matrix.difference("forwards")
    assert difference is not None
    assert difference.u == pytest.approx(math.sqrt(2 * 0.2**2 + (0.005 * 6) ** 2))
    assert Matrix({("right", 1): _torque(56)}).words() == ()


@pytest.mark.parametrize(
    ("side", "direction", "way"),
    [("right", 1, "forwards"), ("right", -1, "backwards"), ("left", -1, "forwards"), ("left", 1, "backwards")],
)
def test_way_of_rolling(side, direction, way):
    assert rolling(side, direction) == way
