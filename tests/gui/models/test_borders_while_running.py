"""Borders of the coach, the zero, the pace and what is drawn: by hand."""

from __future__ import annotations

import numpy as np
import pytest

from gui.models import learning, pace
from gui.models.coach import LOOK_S, Coach, Hint, _rise
from gui.models.practice import PracticeLink, scenario_for_practice
from gui.models.trace import GrowingTrace, joined
from gui.models.zeroing import Zeroing, ZeroState
from tests.gui.models.test_borders import a_run


def test_the_zero_waits_out_a_swing_that_the_noise_does_not_hide() -> None:
    """Swinging by 0.4 N·m under noise of 0.02 N·m."""
    rng = np.random.default_rng(5)
    time_s = np.arange(0, 6, 0.001)
    torque = 0.4 * np.sin(2 * np.pi * 0.7 * time_s) + rng.normal(0, 0.02, len(time_s))
    zeroing = Zeroing()
    for at in range(0, len(time_s), 20):
        assert zeroing.feed(time_s[at : at + 20], torque[at : at + 20]) is None


def test_the_rise_is_the_slope_where_enough_of_the_look_is_there() -> None:
    time_s = np.arange(0, 1, 0.005)
    assert _rise(time_s, 12.0 * time_s) == pytest.approx(12.0)
    assert _rise(time_s, -12.0 * time_s) == pytest.approx(12.0)
    late = time_s[time_s > time_s[-1] - 0.4 * LOOK_S]
    assert _rise(late, 12.0 * late) == 0.0
    assert _rise(time_s[-3:], 12.0 * time_s[-3:]) == 0.0


# ---------------------------------------------------------------------- the coach
def coached(level: float, before_s: float, *, slope: float = 0.0, top: float = 0.0, **keys: object) -> Hint:
    """Load a wheel ``before_s`` ago, let the torque reach ``top``, and give what is said at ``level`` now."""
    coach = Coach(**({"interest_nm": 20.0} | keys))
    coach.feed(np.array([0.0]), np.array([3.1]), None, 0.0)
    assert coach.loaded
    if top:
        coach.feed(np.array([0.1]), np.array([top]), None, 0.0)
    now = before_s + np.arange(-0.3, 0.001, 0.01)
    coach.hint = Hint.NONE
    return coach.feed(now, level + slope * (now - now[-1]), None, 0.0)


@pytest.mark.parametrize(
    ("level", "hint"), [(79.9, Hint.LOADING), (80.0, Hint.CAPACITY), (99.9, Hint.CAPACITY), (100.0, Hint.STOP)]
)
def test_the_rated_torque_is_told_from_four_fifths_on(level: float, hint: Hint) -> None:
    """Common practice, no source."""
    assert coached(level, 1.0, capacity_nm=100.0) is hint
    assert coached(level, 1.0) is Hint.LOADING


@pytest.mark.parametrize(("slope", "hint"), [(28.0, Hint.LOADING), (29.0, Hint.SLOWER)])
def test_a_ramp_of_less_than_seven_tenths_of_a_second_is_too_fast(slope: float, hint: Hint) -> None:
    """20 N·m in 0.7 s are 28.6 N·m/s."""
    assert coached(10.0, 1.0, slope=slope) is hint


@pytest.mark.parametrize(
    ("before_s", "keys", "hint"),
    [
        (1.9, {}, Hint.LOADING),
        (2.1, {}, Hint.IF_IT_TURNS),
        (2.1, {"slope": 0.99}, Hint.IF_IT_TURNS),
        (2.1, {"slope": 1.01}, Hint.LOADING),
        (6.1, {"slope": 1.01}, Hint.IF_IT_TURNS),
        (2.1, {"top": 20.7}, Hint.KEEP_TURNING),
        (2.1, {"top": 20.6}, Hint.IF_IT_TURNS),
        (2.1, {"turned_deg": 1.0}, Hint.KEEP_TURNING),
        (2.1, {"turned_deg": -1.0}, Hint.KEEP_TURNING),
        (5.9, {"turned_deg": 0.9}, Hint.LOADING),
        (6.1, {"turned_deg": 0.9}, Hint.NOTHING_TURNS),
        (6.4, {"top": 20.7}, Hint.KEEP_TURNING),
        (6.6, {"top": 20.7}, Hint.RELEASE),
        (6.6, {}, Hint.RELEASE),
        (6.6, {"turned_deg": 0.0}, Hint.NOTHING_TURNS),
        (3.4, {"enough_s": 2.0}, Hint.IF_IT_TURNS),
        (3.6, {"enough_s": 2.0}, Hint.RELEASE),
    ],
)
def test_what_is_said_under_load(before_s: float, keys: dict[str, float], hint: Hint) -> None:
    """Two seconds to the slip; it gave way 3 % below its highest; a degree is turned; 5 s and 1.5 s are enough."""
    assert coached(20.0, before_s, **keys) is hint


@pytest.mark.parametrize(
    ("interest", "levels", "loaded"),
    [
        (20.0, (2.9,), False),
        (20.0, (3.1, 1.9), True),
        (20.0, (3.1, 1.7), False),
        (5.0, (1.4,), False),
        (5.0, (1.6,), True),
    ],
)
def test_when_a_wheel_counts_as_loaded(interest: float, levels: tuple[float, ...], loaded: bool) -> None:
    """From 15 % of the torque that matters, at least 1.5 N·m; below six tenths of that it is let go."""
    coach = Coach(interest_nm=interest)
    for n, level in enumerate(levels):
        coach.feed(np.array([float(n)]), np.array([-level]), None, 0.0)
    assert coach.loaded is loaded


@pytest.mark.parametrize(("rested", "hint"), [(9.9, Hint.LET_REST), (10.0, Hint.READY), (None, Hint.READY)])
def test_the_rest_between_pulls(rested: float | None, hint: Hint) -> None:
    assert Coach().feed(np.array([0.0]), np.zeros(1), rested, 10.0) is hint


def test_a_line_stays_long_enough_to_be_read_unless_something_presses() -> None:
    coach = Coach(capacity_nm=100.0)
    said = [coach.feed(np.array([t]), np.array([x]), 0.0, 5.0) for t, x in ((10.0, 0.0), (11.1, 5.0), (11.25, 5.0))]
    assert said == [Hint.LET_REST, Hint.LET_REST, Hint.LOADING]
    assert coach.feed(np.array([11.3]), np.array([85.0]), None, 0.0) is Hint.CAPACITY
    assert coach.feed(np.array([11.4]), np.array([100.0]), None, 0.0) is Hint.STOP
    assert coach.feed(np.array([11.5]), np.array([85.0]), None, 0.0) is Hint.STOP
    assert coach.feed(np.array([3.0]), np.array([85.0]), None, 0.0) is Hint.CAPACITY  # another recording's time
    assert coach.feed(np.empty(0), np.empty(0), None, 0.0) is Hint.CAPACITY
    assert Coach().feed(np.array([0.0]), np.array([np.nan]), None, 0.0) is Hint.READY


# ---------------------------------------------------------------------- the zero
def fed(zeroing: Zeroing, time_s: np.ndarray, torque: np.ndarray, step: int = 10) -> object:
    for at in range(0, len(time_s), step):
        if zeroing.feed(time_s[at : at + step], torque[at : at + step]) is not None:
            break
    return zeroing.taken


def test_a_zero_is_the_mean_of_a_second_and_a_half_and_says_when() -> None:
    """Fifteen readings of ± 0.01 leave ± 0.01/15 of a tenth; the scatter of a stair is its steps'."""
    time_s = np.arange(0, 4, 0.01)
    taken = fed(Zeroing(), time_s, 0.3 + 0.01 * (-1.0) ** np.arange(400))
    assert taken.value_nm == pytest.approx(0.3)
    assert taken.at_s == pytest.approx(1.49)
    assert taken.u_nm == pytest.approx(0.01 / 15 / 3)
    stair = 0.001 * (np.arange(400) // 15)
    taken = fed(Zeroing(), time_s, stair)
    assert taken.value_nm == pytest.approx(0.0045, abs=2e-4)
    assert taken.u_nm == pytest.approx(np.std(0.001 * np.arange(10), ddof=1) / np.sqrt(10), rel=0.05)


@pytest.mark.parametrize(("moved", "state"), [(0.19, ZeroState.WAITING), (0.21, ZeroState.MOVING)])
def test_a_zero_is_quiet_while_its_parts_agree(moved: float, state: ZeroState) -> None:
    """One per cent of 20 N·m, and never less than 0.15 N·m."""
    time_s = np.arange(0, 1, 0.01)
    zeroing = Zeroing()
    fed(zeroing, time_s, np.where(time_s < 0.5, 0.0, moved), 100)
    assert zeroing.state is state
    assert zeroing.share == pytest.approx(0.66)
    fed(zeroing, time_s + 1, np.full(100, moved), 5)
    assert zeroing.share == pytest.approx(0.66 if state is ZeroState.MOVING else 1.0, abs=0.01)
    floor = Zeroing(0.01)
    assert floor.steady_nm == 0.15
    assert Zeroing(0.4).steady_nm == 0.4


def test_a_slow_gauge_needs_eight_readings() -> None:
    for n, taken in ((8, False), (9, True)):
        time_s = np.arange(n) * 1.5 / 8 * 1.02
        zeroing = Zeroing()
        zeroing.feed(time_s, np.full(n, 0.2))
        assert (zeroing.taken is not None) is taken


# ---------------------------------------------------------------------- the wheel's pace
@pytest.mark.parametrize(
    ("rpm", "aim", "zone"),
    [
        (1.99, None, pace.Zone.SLOW), (2.0, None, pace.Zone.IN),
        (10.0, None, pace.Zone.IN), (10.1, None, pace.Zone.FAST),
        (1.9, 4.0, pace.Zone.SLOW), (2.0, 4.0, pace.Zone.IN), (6.0, 4.0, pace.Zone.IN), (6.1, 4.0, pace.Zone.FAST),
    ],
)  # fmt: skip
def test_the_zone_of_a_speed(rpm: float, aim: float | None, zone: pace.Zone) -> None:
    """By hand two to ten turns a minute (common practice, no source), or half to one and a half of the job's own."""
    assert pace.Pace(rpm, pace.zone_for(aim)).zone is zone


def test_a_speed_is_that_of_the_last_second() -> None:
    """Six degrees a second are one turn a minute."""
    time_s = np.arange(0, 2, 0.1)
    wheel = pace.Wheel()
    turned = wheel.feed(time_s, -18.0 * time_s)
    assert turned == pytest.approx(-18.0 * 0.9)
    assert wheel.pace().rpm == pytest.approx(3.0)
    wheel.mark()
    wheel.feed(time_s + 2, -18.0 * (time_s + 2))
    assert wheel.turned_deg == pytest.approx(-36.0)
    assert wheel.feed(np.array([9.0]), np.array([np.nan])) is None
    assert wheel.pace() is None
    assert pace.Wheel().turned_deg is None
    assert pace.pace_of(np.array([0.0, 0.39]), np.zeros(2)) is None
    assert pace.pace_of(np.array([0.0, 0.41]), np.array([0.0, 4.1])).rpm == pytest.approx(10 / 6)
    assert pace.pace_of(np.array([0.0]), np.zeros(1)) is None


def test_a_sound_tells_when_the_zone_is_left_and_again_after_a_while() -> None:
    slow, good, pacer = pace.Pace(1.0), pace.Pace(5.0), pace.Pacer()
    told = [
        pacer.due(one, Hint.KEEP_TURNING, at) for at, one in ((0, good), (1, slow), (2.4, slow), (2.5, slow), (3, good))
    ]
    assert told == [None, pace.Zone.SLOW, None, pace.Zone.SLOW, None]
    assert pacer.due(slow, Hint.LOADING, 9.0) is None
    assert pacer.due(None, Hint.KEEP_TURNING, 9.0) is None
    assert pacer.due(slow, Hint.KEEP_TURNING, 9.1) is pace.Zone.SLOW


# ---------------------------------------------------------------------- what is drawn
@pytest.mark.parametrize("columns", [1, 7, 50, 400])
@pytest.mark.parametrize("step", [50, 4096, 20_000])
def test_no_peak_of_a_long_trace_is_missing(columns: int, step: int) -> None:
    rng = np.random.default_rng(6)
    time_s = np.arange(20_000) / 1000
    torque = rng.normal(0, 1, len(time_s))
    trace = GrowingTrace()
    for at in range(0, len(time_s), step):
        trace.append(time_s[at : at + step], torque[at : at + step])
    assert (trace.start_s, trace.end_s, len(trace)) == (0.0, 19.999, 20_000)
    for start_s, end_s in ((0.0, 20.0), (3.3, 17.7)):
        t, x = trace.stretch(start_s, end_s, columns)
        within = torque[(time_s >= start_s) & (time_s <= end_s)]
        assert x.max() >= within.max()
        assert x.min() <= within.min()
        assert len(t) == len(x) <= 2 * columns + 2
        assert t[0] == pytest.approx(start_s, abs=end_s / columns / 2 + 0.6)
        assert (np.diff(t) >= 0).all()


def test_a_pyramid_holds_the_least_and_greatest_of_its_blocks() -> None:
    torque = np.random.default_rng(7).normal(0, 1, 64 * 8 * 9 + 30)
    trace = GrowingTrace(np.arange(len(torque)) / 100, torque)
    (least, greatest), (second, _) = trace.levels()[:2]
    assert least.tolist() == torque[: 64 * 72].reshape(-1, 64).min(axis=1).tolist()
    assert greatest.tolist() == torque[: 64 * 72].reshape(-1, 64).max(axis=1).tolist()
    assert second.tolist() == torque[: 64 * 72].reshape(-1, 512).min(axis=1).tolist()
    again = GrowingTrace.over(trace.time_s, trace.torque_nm, trace.levels())
    for columns in (3, 40):
        for one, other in zip(again.stretch(1.0, 40.0, columns), trace.stretch(1.0, 40.0, columns), strict=True):
            assert one.tolist() == other.tolist()
    empty = GrowingTrace()
    assert (empty.start_s, empty.end_s) == (0.0, 0.0)


def test_a_stretch_takes_one_sample_beyond_each_end_and_all_where_they_are_few() -> None:
    time_s = np.arange(100.0)
    trace = GrowingTrace(time_s, -time_s)
    assert trace.stretch(10.0, 20.0, 6)[0].tolist() != list(range(9, 22))
    assert trace.stretch(10.0, 20.0, 7)[1].tolist() == [-n for n in range(9, 22)]
    assert trace.stretch(-5.0, 200.0, 50)[0].tolist() == time_s.tolist()


@pytest.mark.parametrize(
    ("usual", "longest", "broken"), [(0.01, 0.5, False), (0.01, 0.51, True), (0.2, 0.99, False), (0.2, 1.01, True)]
)
def test_a_line_is_broken_where_nothing_was_sent(usual: float, longest: float, broken: bool) -> None:
    time_s = np.cumsum([*[usual] * 20, longest, *[usual] * 20])
    found = joined(time_s)
    assert (found is not None) is broken
    assert found is None or np.flatnonzero(~found).tolist() == [19]
    assert joined(np.empty(0)) is None


@pytest.mark.parametrize(
    ("torque", "sign"),
    [([0.0], 0), ([2.0] * 40, 0), ([1.0] * 30 + [1.4, 3.0, 9.0], 1), ([1.0] * 30 + [1.5, -3, -9, 2], -1)],
)
def test_the_first_load_tells_the_sign(torque: list[float], sign: int) -> None:
    """From half of the greatest departure on: a twitch before does not count."""
    assert learning._first_load(np.array(torque)) == sign


def test_the_coach_knows_how_long_it_has_rested() -> None:
    made = a_run()
    made.card.put(dwell_s=10.0)
    made.trace.append(np.array([49.0, 49.5, 50.0]), np.zeros(3))
    for since, hint in ((41.0, Hint.LET_REST), (39.0, Hint.READY)):
        made._rest_from_s, made.coach.hint = since, Hint.NONE
        made._coach()
        assert made.coach.hint is hint


def test_a_practice_weight_swings_and_comes_to_rest() -> None:
    """(1 - e^(-t/0.15)) of the change, with a ring that dies away in 0.6 s."""
    link = PracticeLink(scenario_for_practice())
    link.hang(10.0)
    rate = link._scenario.sensor.rate_hz
    torque = link._weight(np.array([0, round(rate * 0.15), round(rate * 8)]))
    assert torque[0] == 0.0
    assert 10 * (1 - np.exp(-1)) - 1.0 < torque[1] < 10 * (1 - np.exp(-1)) + 1.0
    assert torque[2] == pytest.approx(10.0, abs=1e-4)
    link._count = round(rate * 10)
    link.hang(10.0)  # the same again does nothing
    assert link._weight(np.array([round(rate * 10)]))[0] == pytest.approx(10.0, abs=1e-4)
    link.hang(4.0)
    after = link._weight(np.array([round(rate * 10), round(rate * 18)]))
    assert after == pytest.approx([10.0, 4.0], abs=1e-4)
