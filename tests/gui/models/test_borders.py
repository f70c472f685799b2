"""What the models of the window say at the edges of their rules: hung weights, hints, names, steps."""

from __future__ import annotations

import math
from datetime import datetime
from pathlib import Path

import numpy as np
import pytest

from analysis.verdict.job import Job
from gui.models import comparing, learning, limit_entry, ordering, pace, planning, undoing
from gui.models.calibrating import Calibrating
from gui.models.coach import LOOK_S, Coach, Hint, _rise
from gui.models.details import keep_details
from gui.models.display import Display
from gui.models.flow import Step
from gui.models.importing import TablePreview
from gui.models.job import JobCard
from gui.models.loading import angle_of
from gui.models.practice import PracticeLink, scenario_for_practice
from gui.models.run import TestRun
from gui.models.state import LinkState
from gui.models.stream import recording_stem
from gui.models.trace import GrowingTrace, joined
from gui.models.trending import follow
from gui.models.weighing import ANTICLOCKWISE, Doing, Hanging, Weighing, cautions, plan_of
from gui.models.zeroing import Zeroing, ZeroState
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.errors import FileError, InputError
from logger.header import Header, JobFacts, Table, Test, TransducerFacts
from logger.samples import Chunk, Event, EventKind
from tests.gui.models.test_answers import COMMON, ComparisonAsked, run, scale
from tests.gui.models.test_steps import pull

G = 9.80665
"""Standard gravity, m/s² (ISO 80000-3)."""

TIME_S = np.arange(0, 4, 0.01)


def weighing(*masses: str, way: str = "clockwise", down: bool = True, **facts: object) -> Weighing:
    said = TransducerFacts(**({"unit": "N·m", "capacity_nm": 200.0} | facts))
    plan, wrong = plan_of(Hanging(masses, arm="500 mm", way=way, down=down), said)
    assert plan is not None, wrong
    return Weighing(plan)


def hang(of: Weighing, *levels: float) -> None:
    for level in levels:
        before = of.step
        for at in range(0, len(TIME_S), 20):
            of.insist()
            if of.feed(TIME_S[at : at + 20] + 10.0 * before, np.full(20, level)):
                break
        assert of.step == before + 1


def test_loads_go_up_and_down_again_and_each_step_has_its_change() -> None:
    """10 and 20 kg at half a metre: 49.0 and 98.1 N·m; the heaviest hangs once."""
    of = weighing("20 kg", "10 kg")
    masses = [None if load is None else load.weight.mass_kg for load in of.plan.steps]
    assert masses == [None, 10.0, 20.0, 10.0, None]
    assert of.plan.torque_nm(2) == pytest.approx(20 * G * 0.5)
    changes = [of.change_nm]
    for level in (0.3, 49.3, 98.4, 49.3, 0.3):
        hang(of, level)
        changes.append(of.change_nm)
    ten = 10 * G * 0.5
    assert changes == pytest.approx([0.0, ten, ten, -ten, -ten, 0.0])
    assert of.doing is Doing.DONE
    assert [load.weight.mass_kg for load in weighing("10 kg", "20 kg", down=False).plan.steps if load] == [10.0, 20.0]


def test_what_is_shown_counts_from_the_first_reading_with_nothing_hung() -> None:
    of = weighing("10 kg")
    hang(of, 0.5, 49.5, 0.6)
    assert [row.shown_nm for row in of.rows] == pytest.approx([0.0, 49.0, 0.1], abs=1e-9)
    assert of.drift_nm == pytest.approx(0.1)


def test_the_other_way_round_reads_negative_and_is_shown_positive() -> None:
    of = weighing("10 kg", way=ANTICLOCKWISE)
    assert of.plan.torque_nm(1) == pytest.approx(-10 * G * 0.5)
    hang(of, 0.0, -49.0)
    assert of.rows[1].shown_nm == pytest.approx(49.0)
    assert weighing("10 kg", way=ANTICLOCKWISE, sign="none").plan.torque_nm(1) > 0


def test_a_step_is_waited_for_from_its_own_first_sample_and_its_share_is_of_the_quiet() -> None:
    of = weighing("10 kg")
    of.feed(np.array([100.0, 100.1]), np.zeros(2))
    of.feed(np.array([103.0]), np.zeros(1))
    assert of.waited_s == pytest.approx(3.0)
    of = weighing("10 kg")
    hang(of, 0.0)
    assert of.doing is Doing.HANG
    assert of.share == 0.0
    of.again()
    assert of.step == 0


@pytest.mark.parametrize(("resolution", "u"), [(None, 0.0), (1.0, 1.0 / np.sqrt(12))])
def test_the_step_of_the_reading_is_in_a_point_only_where_it_is_known(resolution: float | None, u: float) -> None:
    """A rectangle of a whole step (JCGM 100, F.2.2.1) beside what weight and arm leave open."""
    of = weighing("10 kg", resolution_nm=resolution)
    hang(of, 0.0, 49.0)
    without = weighing("10 kg")
    hang(without, 0.0, 49.0)
    (point,), (plain,) = of.points, without.points
    assert point.u95_percent >= plain.u95_percent
    assert (point.u95_percent > plain.u95_percent + 0.1) is bool(u)


def test_numbers_of_a_transducer_without_calibration_are_its_own() -> None:
    """What it counts is shown as it counts: there is nothing yet that would make a torque of it."""
    description = Description(
        name="raw", transducer=TransducerFacts(unit="lbf·ft"), lines=LineFormat(template="{torque}")
    )
    plan, _ = plan_of(Hanging(("10 kg",), arm="500 mm"), description.transducer)
    assert plan is not None
    of = Calibrating(plan, description)
    of.feed(TIME_S[:10], np.full(10, 1000.0))
    assert of.now_nm == pytest.approx(1000.0)
    assert of.moving is False
    assert of.rows == ()


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


def a_run(pulls: int = 0) -> TestRun:
    made = TestRun(JobCard())
    made.flow.start()
    while made.flow.now is not Step.PULLS:
        made.flow.done()
    job = Job(made.card.judged_by("pulls"))
    for number in range(pulls):
        made.pulls.add(0.0, pull(10.0 * number), job)
    return made


def test_the_pull_that_is_named_is_left_out_and_comes_back() -> None:
    made = a_run(3)
    made.leave_out(2, "jerked")
    assert [p.rejected for p in made.pulls.pulls] == ["", "jerked", ""]
    made.leave_out(2)
    assert not made.pulls.pulls[1].rejected
    made.reject_last()
    assert made.pulls.pulls[2].rejected == "excluded by hand"


def test_what_the_button_says_during_pulls() -> None:
    made = a_run(1)
    made.link = LinkState.LIVE
    assert made.action().text == f"Pull 2 of {made.card.pulls_wanted}"
    assert not made.action().enabled
    enough = a_run(made.card.pulls_wanted)
    enough.link = LinkState.LIVE
    assert enough.action().text == "Enough pulls: zero again"
    enough.coach.loaded = True
    assert enough.action().text == "Finish this pull"


def test_the_rest_that_is_left() -> None:
    made = a_run()
    made.card.put(dwell_s=15.0)
    assert made.dwell_left_s is None
    made._rest_from_s = made.trace.end_s - 14.5
    assert made.dwell_left_s == pytest.approx(0.5)
    made._rest_from_s = made.trace.end_s - 15.5
    assert made.dwell_left_s is None
    made._rest_from_s = made.trace.end_s - 1.0
    made.link = LinkState.SILENT
    assert made.silent
    assert made.dwell_left_s is None


@pytest.mark.parametrize(("told", "shown"), [("12 %", "12 %"), ("", "low")])
def test_a_battery_says_how_low_or_that_it_is(told: str, shown: str) -> None:
    made = a_run()
    made._event(Event(EventKind.BATTERY, 0, 0, told, 0.0))
    assert made.battery == shown


def test_a_recordings_name_says_when_what_which_side_and_why() -> None:
    started = datetime(2026, 3, 4, 5, 6, 7).astimezone()
    test = Test(side="left", purpose="drag")
    whole = Header(started=started, job=JobFacts(vehicle="blue car", number="A 7"), test=test)
    assert recording_stem(whole).split("-")[:2] == ["20260304", "050607"]
    assert "blue" in recording_stem(whole)
    assert recording_stem(whole).endswith("left-drag")
    assert "7" in recording_stem(Header(started=started, job=JobFacts(number="A 7"), test=Test())).split("050607")[1]
    assert recording_stem(Header(started=started, test=Test())).endswith("-test")


def test_groups_are_told_with_the_whole_first_and_the_scatter_behind() -> None:
    runs = [
        run(f"{oil}{n}", 40.0 + n + 9.0 * (oil == "b"), oil=oil, fill=f"{oil}{n}") for oil in "abc" for n in range(3)
    ]
    found = comparing.compare_groups(runs, COMMON, ComparisonAsked("oil")).comparison
    assert found is not None
    (notes,) = (sheet for sheet in comparing.group_sheets(found, scale()) if sheet.name.startswith("Notes"))
    said = [row[-1][:7] for row in notes.rows]
    assert said.index("Against") == 0


def test_the_reference_level_is_named_at_its_own_jobs_alone() -> None:
    runs = [run(f"{n}", 50.0 + (n % 3), date=f"2026-05-{n + 1:02}") for n in range(9)]
    (of,) = ordering.watch_axles(runs, COMMON, 5).axles
    jobs = ordering.watch_sheets(of, scale())[0]
    assert ["reference level" in row[4] for row in jobs.rows] == [True] * 5 + [False] * 4


def test_the_band_is_drawn_from_end_to_end_in_even_steps() -> None:
    runs = [run(f"{n}", 50.0 - n + 0.1 * (n % 2), shim=float(n), fill=f"{n}") for n in range(6)]
    trend = follow(runs, COMMON, "shim")
    at = [point.x for point in trend.along]
    assert np.ptp(np.diff(at)) == pytest.approx(0.0, abs=1e-9)
    assert at[0] <= 0.0
    assert at[-1] >= 5.0


def test_the_last_whole_line_is_shown_as_it_came() -> None:
    description = Description(name="x", lines=LineFormat(template="{torque}"))
    assert learning._last_raw(description, [Chunk(0.0, b"1.0\n2.0\n")]) == "2.0"
    assert learning._last_raw(description, [Chunk(0.0, b"1.")]) in {"", "1."}
    assert learning._last_raw(description, []) == ""


@pytest.mark.parametrize(("unit", "force"), [("N", True), ("N·m", False), (None, False)])
def test_a_table_of_forces_is_known_by_its_unit(unit: str | None, force: bool) -> None:
    assert TablePreview(used=Table(unit=unit)).is_force is force


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


# ---------------------------------------------------------------------- a check with weights
def test_what_is_typed_for_a_check_with_weights() -> None:
    facts = TransducerFacts(unit="N·m", capacity_nm=50.0)

    def wrong(**keys: object) -> set[str]:
        return set(plan_of(Hanging(**({"masses": ("10 kg",), "arm": "500 mm"} | keys)), facts)[1])

    assert wrong() == set()
    assert wrong(arm="") == {"arm"}
    assert wrong(masses=("", " ")) == {"mass1"}
    assert wrong(masses=("10 kg", "11 kg")) == {"mass2"}  # 53.9 N·m of 50
    assert wrong(masses=("10",)) == {"mass1"}  # in which unit?
    assert wrong(allowed="0 %") == {"allowed"}
    assert wrong(allowed="± 0.5 %") == set()
    plan, _ = plan_of(Hanging((" 10 kg ",), arm="500 mm", latitude="52°"), facts)
    assert plan.place_known
    assert plan.steps[1].words == "10 kg"
    # International gravity formula at 52° (WGS 84, from memory): 9.8126 m/s².
    assert plan.torque_nm(1) == pytest.approx(10 * 9.8126 * 0.5, rel=2e-4)


@pytest.mark.parametrize(("back", "told"), [(0.04, False), (0.09, False), (0.11, True), (-0.11, True)])
def test_a_zero_that_did_not_come_back_is_told(back: float, told: bool) -> None:
    """Beyond 0.2 % of the smallest load (49 N·m: 0.098), and 0.05 N·m."""
    of = weighing("10 kg")
    hang(of, 0.0, 49.0, back)
    said = cautions(of, lambda nm: f"{nm:.2f}")
    assert any(f"came back to {back:.2f}" in text for text in said) is told
    assert any("Standard gravity" in text for text in said)
    assert not any("other way round" in text for text in said)


def test_a_check_that_reads_the_other_way_round_is_told() -> None:
    of = weighing("10 kg")
    hang(of, 0.0, -49.0, 0.0)
    assert any("other way round" in text for text in cautions(of, str))


@pytest.mark.parametrize(("level", "heavy"), [(14.6, False), (14.8, True)])
def test_a_weight_counts_as_hung_when_three_tenths_of_it_are_there(level: float, heavy: bool) -> None:
    of = weighing("10 kg")
    hang(of, 0.0)
    of.feed(np.arange(20) / 100, np.full(20, level))
    assert of.doing is (Doing.SETTLE if heavy else Doing.HANG)
    of.feed(np.arange(20) / 100, np.full(20, np.nan))
    assert of.now_nm is None


def test_two_loads_make_a_calibration() -> None:
    """100 counts with nothing, 10 900 with 49.03 N·m: 0.00454 N·m a count, and 100 counts are nothing."""
    description = Description(name="raw", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}"))
    plan, _ = plan_of(Hanging(("10 kg", "5 kg"), arm="500 mm"), description.transducer)
    of = Calibrating(plan, description)
    for level in (100.0, 10_900.0):
        of.feed(np.array([0.0]), np.array([level]))
        assert of.share == 0.0
        of.insist()
        for at in np.arange(0, 20, 0.1):
            if of.feed(at + np.arange(10) / 100, np.full(10, level)):
                break
            assert of.share < 1.0
        assert of.share == 0.0
    assert of.done
    made = of.made
    assert 10_900 * made.scale + made.offset == pytest.approx(10 * G * 0.5)
    assert 100 * made.scale + made.offset == pytest.approx(0.0, abs=1e-9)
    name = of.description(()).name
    assert of.description((name,)).name == f"{name} (2)"
    assert of.description((name, f"{name} (2)")).name == f"{name} (3)"


# ---------------------------------------------------------------------- words and figures
@pytest.mark.parametrize(
    ("nm", "u95", "text"),
    [
        (38.44, None, "38.4"), (38.44, 1.2, "38.4 ± 1.2"), (38.44, 0.123, "38.44 ± 0.12"), (38.44, 12.3, "38 ± 12"),
        (38.44, 0.0996, "38.44 ± 0.10"), (38.44, 0.0, "38.4"), (38.44, -1.0, "38.4"), (38.44, math.inf, "38.4"),
        (386.0, 123.0, "386 ± 123"), (-3.04, None, "−3.0"),
    ],
)  # fmt: skip
def test_an_interval_decides_the_decimals(nm: float, u95: float | None, text: str) -> None:
    """Two significant digits (JCGM 100, 7.2.6), at most one beyond what is shown of a torque alone."""
    assert Display("N·m").figure(nm, u95) == text


@pytest.mark.parametrize(
    ("other", "unit", "said"),
    [
        ("41.59", "N·m", False),
        ("41.7", "N·m", True),
        ("38.41", "N·m", False),
        ("38.3", "N·m", True),
        ("0", "N·m", False),
    ],
)
def test_two_figures_of_a_limit_agree_within_four_per_cent(other: str, unit: str, said: bool) -> None:
    draft = limit_entry.LimitDraft(lower="40", source="x", beside=other, beside_unit=unit)
    assert bool(limit_entry.check(draft).warnings) is said


@pytest.mark.parametrize(
    ("keys", "wrong"),
    [
        ({"lower": "0"}, {"lower"}), ({"lower": "-3"}, {"lower"}), ({"lower": ""}, {"lower"}),
        ({"lower": "0.1"}, set()),
        ({"kind": "max", "upper": "50"}, set()), ({"kind": "band", "lower": "50", "upper": "50"}, {"upper"}),
        ({"kind": "band", "lower": "50", "upper": "50.1"}, set()), ({"unit": "parsec"}, {"unit"}),
    ],
)  # fmt: skip
def test_a_limit_is_a_figure_above_zero(keys: dict[str, str], wrong: set[str]) -> None:
    found = limit_entry.check(limit_entry.LimitDraft(**({"lower": "40", "source": "manual"} | keys)))
    assert set(found.wrong) == wrong
    assert (found.limit is None) is bool(wrong)
    if found.limit is not None:
        again = limit_entry.draft_of(found.limit)
        assert limit_entry.check(again).limit == found.limit


def test_a_plan_is_drawn_beyond_its_answer() -> None:
    """From two fills to 1.6 times as many as are needed, at least to six."""
    assert planning._fills(2) == [2, 3, 4, 5, 6]
    assert planning._fills(5) == [2, 3, 4, 5, 6, 7, 8]
    many = planning._fills(100)
    assert (many[0], many[-1] >= 157, 100 in many) == (2, True, True)
    assert len(many) <= 42
    wish = planning.Wish("half width", 1.0, 2.0, "", 0.8, (), 1)
    planned = planning.plan((), COMMON, wish)
    assert (planned.per_group, planned.plan, planned.order) == (18, None, ())  # t(17) 2/√18 = 0.995
    assert dict(planned.curve)[18.0] == pytest.approx(0.9946, abs=1e-3)
    groups = planning.plan((), COMMON, planning.Wish("difference", 4.0, 2.0, "", 0.8, ("a", "b", "c"), 1))
    assert [sorted(block) for block in groups.order] == [["a", "b", "c"]] * groups.per_group
    assert dict(groups.curve)[float(groups.per_group)] >= 0.8 > dict(groups.curve)[groups.per_group - 1.0]
    rows = planning.order_sheet(groups).rows
    assert [row[0] for row in rows] == [str(n + 1) for n in range(3 * groups.per_group)]
    assert [row[1] for row in rows[:4]] == ["1", "1", "1", "2"]


# ---------------------------------------------------------------------- files
@pytest.mark.parametrize("name", ["", " ", ".x", "a/b", "a:b", "con", "LPT1", "nul.txt", "x" * 121])
def test_names_that_no_file_can_have(tmp_path: Path, name: str) -> None:
    path = tmp_path / "old.csv"
    path.write_text("x", "utf-8")
    with pytest.raises(InputError, match="letters"):
        undoing.rename(str(path), name)
    assert path.exists()


def test_a_recording_is_renamed_and_put_away_and_comes_back(tmp_path: Path) -> None:
    path = tmp_path / "old.csv"
    path.write_text("x", "utf-8")
    new, step = undoing.rename(str(path), "x" * 120)
    assert Path(new).name == f"{'x' * 120}.csv"
    assert step.back() == str(path)
    for purpose in ("drag", "zero"):
        with pytest.raises(InputError, match="keep their names"):
            undoing.rename(str(path), "other", purpose=purpose)
    undo = undoing.Undo()
    assert (undo.words, undo.take_back()) == ("", "")
    undo.steps.append(undoing.to_bin(str(path)))
    assert not path.exists()
    path.write_text("another", "utf-8")
    with pytest.raises(FileError, match="another file of that name"):
        undo.steps[-1].back()
    path.unlink()
    assert undo.take_back() == str(path)
    assert path.read_text("utf-8") == "x"


def test_a_change_says_what_and_why(tmp_path: Path) -> None:
    recording = tmp_path / "a.csv"
    recording.write_text("x", "utf-8")
    before, after = JobCard(), JobCard()
    with pytest.raises(InputError, match="Nothing has been changed"):
        keep_details(recording, before, after, "why", "me")
    after.swap({"test": Test(side="left")})
    for reason in ("", "  "):
        with pytest.raises(InputError, match="Say why"):
            keep_details(recording, before, after, reason, "me")
    assert keep_details(recording, before, after, "typed wrong", "me") == ("kind of test",)


@pytest.mark.parametrize(("samples", "shown"), [(100, 100), (39_999, 39_999), (60_001, 20_001)])
def test_an_angle_is_drawn_at_twenty_thousand_points(tmp_path: Path, samples: int, shown: int) -> None:
    path = tmp_path / "a.csv"
    rows = "".join(f"{n / 1000:.3f},{n % 50},{n / 10:.1f}\n" for n in range(samples))
    path.write_text(f"time_s,torque_nm,angle_deg\n{rows}", "utf-8")
    path.with_suffix(".sidecar.toml").write_text("[transducer]\ngain = 1.25\n", "utf-8")
    angle, torque, time_s = angle_of(str(path))
    assert len(angle) == len(torque) == len(time_s) == shown
    assert torque[1] == pytest.approx(max(1, samples // 20_000) / 1.25)


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


def test_a_card_says_what_a_test_lacks() -> None:
    card = JobCard()
    assert card.pulls_wanted == 5
    assert card.missing() == ("a transducer", "a fixture")
