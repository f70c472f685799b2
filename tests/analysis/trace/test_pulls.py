"""The steps from a load to a pull, each at its border."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace import pulls
from analysis.trace.breakaway import Peak
from analysis.trace.gates import CUT_END, CUT_START, LET_GO, TOO_SMALL, ZERO_MOVED
from analysis.trace.loads import Load, Window
from analysis.trace.plateau import Plateau
from analysis.trace.pulls import Read, read_pull
from analysis.trace.results import Pull
from analysis.trace.stated import Part
from analysis.trace.traces import Samples, Sensor


def window(torque, every_s=0.125, *, resolution_nm=0.001, **keys):
    """Give a load of these readings with eight seconds of rest before and one after it."""
    before, after = round(8 / every_s), round(1 / every_s)
    x = np.r_[np.zeros(before), np.asarray(torque, float), np.zeros(after)]
    samples = Samples(every_s * np.arange(len(x)), x, None)
    parts = {"from_start": False, "to_end": False, "reversed": False} | keys
    return Window(samples, before, before + len(torque), 0.0, resolution_nm=resolution_nm, **parts)


@pytest.mark.parametrize(("top", "read"), [(2.3, False), (2.4, True)])
def test_a_load_is_eight_deviations_of_the_rest(top, read):
    """A step of 1 N·m is a deviation of 1/√12: eight are 2.31 N·m."""
    found = read_pull(window([top / 2, *[top] * 40], resolution_nm=1.0), None, Sensor())
    assert (found is not None) is read


@pytest.mark.parametrize(("top", "small"), [(1.99, True), (2.0, False), (2.1, False)])
def test_a_load_below_two_hundredths_of_the_capacity_is_not_read(top, small):
    found = read_pull(window([top / 2, *[top] * 40]), None, Sensor(capacity_nm=100.0))
    assert (found.pull.reasons == (TOO_SMALL,)) is small
    assert found.height_nm == top


@pytest.mark.parametrize(("readings", "read"), [(4, False), (5, True)])
def test_a_load_above_half_for_less_than_half_a_second_is_a_bump(readings, read):
    found = read_pull(window([10.0, *[40.0] * readings, 10.0]), None, Sensor(capacity_nm=100.0))
    assert (found is not None) is read


@pytest.mark.parametrize(
    ("height", "direction", "begins_s", "let_go_s", "goes_on"),
    [
        (40.0, 1, 1.2, -0.1, True),  # two fifths of what follows, 1.2 s later
        (39.9, 1, 1.2, -0.1, False),
        (40.0, 1, 1.3, -0.1, False),
        (40.0, -1, 1.2, -0.1, False),
        (40.0, 1, 1.2, -1.2, True),
        (40.0, 1, 1.2, -1.3, False),  # it hung for a second and more before it was gone
    ],
)
def test_a_grip_goes_on_with_the_pull_before(height, direction, begins_s, let_go_s, goes_on):
    before = Read(Pull(-9.0, 0.0, direction, 0.0), height_nm=height, let_go_s=let_go_s)
    t, x = np.array([0.1, begins_s, 2.0, 3.0, 4.0]), np.array([10.0, 12.0, 110.0, 110.0, 110.0])
    load = Load(t, x, None, 0, 5, 1, 10.0, 0.01, 0.01, 110.0, np.array([2, 3, 4]), 0)
    assert (pulls._gripped_again(before, load) is before) is goes_on
    assert pulls._gripped_again(None, load) is None


def part(x, every_s=0.25, *, slip=100.0, clipped=(), zero_moved=False):
    cut = np.zeros(len(x), bool)
    cut[list(clipped)] = True
    return Part(every_s * np.arange(len(x)), np.asarray(x, float), None, cut, slip, 0.01, zero_moved)


def peak(torque=100.0, index=2):
    return Peak(0.25 * index, torque, 0.1, index, 0.1)


def test_a_ramp_without_a_peak_slips_from_its_knee_on():
    of = part([0, 50, 97.0, 98.0, 100, 100])
    assert pulls._slips_from(of, None) == 0.75  # above 97 hundredths of the level
    assert pulls._slips_from(of, peak(104.0)) == 0.75  # no peak that stands out
    assert pulls._slips_from(of, peak(110.0)) == 0.5


@pytest.mark.parametrize(
    ("next_nm", "later", "back"),
    [
        (95.0, [97.0] * 3, False),  # it did not break, and does not come back to 97 hundredths
        (95.0, [97.1] * 3, True),
        (94.9, [105.0] * 3, False),  # it broke: only what goes on beyond it is no breakaway
        (94.9, [105.1] * 3, True),
        (95.0, [90.0] * 38 + [98.0] * 2, True),  # the 39th of forty
        (95.0, [90.0] * 39 + [98.0], False),
        (95.0, [], False),
        (95.0, [98.0], True),
    ],
)
def test_a_torque_that_is_at_its_peak_again_after_a_second(next_nm, later, back):
    """The peak half a second in; the reading after it; then those from a second after it on."""
    of = part([0, 50, 100.0, next_nm, 80, 80, *later])
    assert pulls._comes_back(of, peak()) is back


def test_what_is_said_of_a_load_that_gave_up():
    cut = window([1.0], from_start=True, to_end=True)
    assert pulls._gave_up(cut, zero_moved=True) == (CUT_START, ZERO_MOVED, CUT_END)
    assert pulls._gave_up(window([1.0], to_end=True)) == (CUT_END,)
    assert pulls._gave_up(window([1.0])) == (LET_GO,)


def level(climb=0.0, other_nm=0.0):
    """Give a level of a hundred readings from the tenth on."""
    steady = np.zeros(120, bool)
    steady[10:110] = True
    return Plateau(2.5, 27.5, 100.0, 0.1, 25.0, 101.0, 0.1, steady, uneven=False, climb=climb, other_nm=other_nm)


NOT_STUCK = slice(0, 0)


@pytest.mark.parametrize(
    ("clipped", "frozen", "kept"),
    [
        (range(20, 25), NOT_STUCK, True),  # a twentieth of it
        (range(20, 26), NOT_STUCK, False),
        ((), slice(20, 25), True),
        ((), slice(20, 26), False),
        (range(110, 120), NOT_STUCK, True),  # after it
    ],
)
def test_a_level_that_is_cut_off_or_stuck_is_not_stated(clipped, frozen, kept):
    found = pulls._stated(part([100.0] * 120, clipped=clipped), peak(110.0), level(), frozen, to_end=False)
    assert found[0] == peak(110.0)
    assert (found[1] is not None) is kept


@pytest.mark.parametrize(
    ("climb", "to_end", "kept"),
    [(0.25, False, True), (0.26, False, False), (0.05, True, True), (0.06, True, False), (-0.06, True, False)],
)
def test_a_level_that_climbs_is_not_stated(climb, to_end, kept):
    """By a quarter; by more than a twentieth where the recording ends: its zero may drift. A clear peak stays."""
    for torque, clear in ((110.0, True), (102.0, False)):
        found = pulls._stated(part([100.0] * 120), peak(torque), level(climb), NOT_STUCK, to_end=to_end)
        assert (found[1] is not None) is kept
        assert (found[0] is not None) is (kept or clear)


def test_neither_is_stated_where_two_levels_lasted_as_long():
    assert pulls._stated(part([100.0] * 120), peak(110.0), level(other_nm=131.0), NOT_STUCK, to_end=False) == (
        None,
        None,
    )
    assert (
        pulls._stated(part([100.0] * 120), peak(110.0), level(other_nm=130.0), NOT_STUCK, to_end=False)[1] is not None
    )


@pytest.mark.parametrize(
    ("frozen", "kept"), [(slice(2, 5), False), (slice(0, 3), False), (slice(3, 5), True), (slice(0, 2), True)]
)
def test_a_peak_that_is_stuck_is_none(frozen, kept):
    found = pulls._stated(part([100.0] * 120), peak(110.0), level(), frozen, to_end=False)
    assert (found[0] is not None) is kept


def test_the_usual_time_between_samples():
    """Of twenty steps, eleven of one second and nine of two."""
    t = np.r_[0.0, np.cumsum([1.0] * 11 + [2.0] * 9)]
    assert Part(t, t, None, t > 99, 1.0, 0.01, zero_moved=False).interval_s == 1.0
