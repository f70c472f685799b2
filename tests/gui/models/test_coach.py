"""What the coach says at the borders of its rules: round numbers that floats hold exactly."""

from __future__ import annotations

import numpy as np
import pytest

from gui.models.coach import Coach, Hint, HintUrgency, _rise

NAN = float("nan")


def told(coach: Coach, at_s: float, *torque_nm: float) -> Hint:
    """Feed some samples, the last of them at ``at_s``."""
    return coach.feed(at_s - np.arange(len(torque_nm))[::-1] / 64, np.array(torque_nm), None, 0.0)


@pytest.mark.parametrize(
    ("at_s", "torque", "slope"),
    [
        ([0.0, 1 / 32, 1 / 16, 1 / 8], [0.0, 1.0, 2.0, 4.0], 32.0),  # half of the look, four readings: just enough
        ([0.0, 1 / 16, 1 / 8], [0.0, 2.0, 4.0], 0.0),
        ([0.0, 1 / 64, 1 / 32, 3 / 32], [0.0, 1.0, 2.0, 6.0], 0.0),
        ([0.0, 1 / 32, 1 / 16, 1 / 8], [-4.0, -3.0, -2.0, 0.0], -32.0),  # of the magnitude
        ([0.0, 1 / 32, 3 / 64, 1 / 16, 1 / 8], [0.0, 1.0, NAN, 2.0, 4.0], 32.0),
        ([0.0, 1 / 4, 5 / 16, 6 / 16, 7 / 16], [99.0, 0.0, 2.0, 4.0, 6.0], 32.0),  # the first is beyond the look
        ([0.0, 3 / 16, 4 / 16, 5 / 16, 6 / 16, 7 / 16], [50.0, 60.0, 2.0, 4.0, 6.0, 8.0], 32.0),  # so is the second
    ],
)  # fmt: skip
def test_a_rise_is_the_slope_of_least_squares(at_s: list[float], torque: list[float], slope: float) -> None:
    """Also eleven days after the session began."""
    for since in (0.0, 2.0**20):
        assert _rise(np.array(at_s) + since, np.array(torque)) == pytest.approx(slope, rel=1e-12, abs=1e-12)


def test_a_rise_of_a_scatter_is_that_of_a_fitted_line() -> None:
    """Against numpy's fit of a polynomial."""
    time_s = np.arange(0, 0.25, 0.01)
    torque = 5.0 + 3.0 * time_s + np.random.default_rng(3).normal(0, 0.5, len(time_s))
    assert _rise(time_s, torque) == pytest.approx(np.polyfit(time_s, torque, 1)[0], rel=1e-9)


def test_the_level_is_the_greatest_of_the_last_three_readings() -> None:
    assert told(Coach(capacity_nm=100.0), 1.0, 100.0, 0.0, 0.0) is Hint.STOP
    assert told(Coach(capacity_nm=100.0), 1.0, 100.0, 0.0, 0.0, 0.0) is Hint.READY
    assert told(Coach(capacity_nm=100.0), 1.0, -100.0, NAN, NAN) is Hint.STOP
    assert told(Coach(capacity_nm=100.0), 1.0, 100.0, NAN, NAN, NAN) is Hint.READY


def test_a_load_of_which_nothing_is_read_any_more_is_let_go() -> None:
    coach = Coach(interest_nm=5.0)
    told(coach, 0.0, 2.0)
    assert coach.loaded
    told(coach, 1.0, NAN)
    assert not coach.loaded


def test_a_load_begins_above_its_border_and_ends_at_six_tenths_of_it() -> None:
    """At least 1.5 N·m; of 40 N·m 15 % are 6."""
    for interest, border in ((0.0, 1.5), (40.0, 6.0)):
        coach = Coach(interest_nm=interest)
        told(coach, 0.0, border)
        assert not coach.loaded
        told(coach, 1.0, border * 1.001)
        assert coach.loaded
        told(coach, 2.0, 0.6 * border)
        assert not coach.loaded


@pytest.mark.parametrize(
    ("held_s", "turned", "hint"),
    [
        (2.0, None, Hint.LOADING),
        (2.125, None, Hint.IF_IT_TURNS),
        (6.0, None, Hint.IF_IT_TURNS),
        (6.0, 0.5, Hint.LOADING),
        (6.125, 0.5, Hint.NOTHING_TURNS),
        (6.5, None, Hint.IF_IT_TURNS),
        (6.5, 2.0, Hint.KEEP_TURNING),
        (6.625, 2.0, Hint.RELEASE),
        (6.625, 0.5, Hint.NOTHING_TURNS),
        (6.625, None, Hint.RELEASE),
    ],
)
def test_times_under_load_are_met_to_the_sample(held_s: float, turned: float | None, hint: Hint) -> None:
    """2 s to the slip, 6 s without motion, 5 s of steady turning and 1.5 s more; the load began a second in."""
    coach = Coach(turned_deg=turned)
    told(coach, 1.0, 10.0)
    coach.hint = Hint.NONE
    assert told(coach, 1.0 + held_s, 10.0) is hint


def test_a_load_that_still_rises_after_six_seconds_is_not_called_loading() -> None:
    for held_s, hint in ((5.875, Hint.LOADING), (6.0, Hint.IF_IT_TURNS)):
        coach = Coach(interest_nm=20.0)
        told(coach, 0.0, 10.0)
        coach.hint = Hint.NONE
        assert told(coach, held_s, *(10.0 + 5.0 * np.arange(-15, 1) / 64)) is hint


def test_what_gave_way_is_forgotten_with_the_load() -> None:
    coach = Coach()
    for at_s, level in ((0.0, 40.0), (1.0, 30.0), (2.0, 0.0), (10.0, 30.0)):
        told(coach, at_s, level)
    assert told(coach, 14.0, 30.0) is Hint.IF_IT_TURNS
    assert told(coach, 16.0, 28.0) is Hint.KEEP_TURNING


def test_a_line_that_comes_in_the_same_moment_waits_and_one_after_its_time_does_not() -> None:
    coach = Coach()
    zero = np.zeros(1)
    said = [coach.feed(np.array([t]), zero, rest, 5.0) for t, rest in ((8.0, 1.0), (8.0, 9.0), (9.0, 9.0), (9.25, 9.0))]
    assert said == [Hint.LET_REST, Hint.LET_REST, Hint.LET_REST, Hint.READY]
    assert coach.feed(np.array([8.0]), zero, 1.0, 5.0) is Hint.LET_REST  # another recording's time
    coach = Coach()
    said = [coach.feed(np.array([t]), zero, rest, 5.0) for t, rest in ((0.0, 1.0), (1.2, 9.0))]
    assert said == [Hint.LET_REST, Hint.READY]


def test_a_stop_is_more_urgent_than_any_other_line() -> None:
    assert HintUrgency.CALM < HintUrgency.ACT < HintUrgency.STOP
    coach = Coach(capacity_nm=100.0)
    said = [told(coach, n / 16, level) for n, level in enumerate((0.0, 80.0, 100.0, 80.0))]
    assert said == [Hint.READY, Hint.CAPACITY, Hint.STOP, Hint.STOP]


def test_a_coach_knows_nothing_at_first() -> None:
    """20 N·m are expected, 5 s of steady turning are enough: common practice, no source."""
    coach = Coach()
    assert (coach.interest_nm, coach.enough_s, coach.hint, coach.loaded) == (20.0, 5.0, Hint.NONE, False)
