"""The highest torque since the pulls began, and in which pull it was; marks of pulls on a trace."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from analysis.to_axle.axle_scale import AxleScale
from gui.models import marks
from gui.models.caught import Value
from gui.models.highest import Highest
from gui.models.marks import PullMark


def pull(number: int, start_s: float, *, rejected: str = "", breakaway: float | None = None) -> SimpleNamespace:
    """Give a pull from 1 s to 3 s of a recording that began at ``start_s``."""
    value = None if breakaway is None else Value(breakaway)
    of = SimpleNamespace(start_s=1.0, end_s=3.0)
    return SimpleNamespace(
        number=number, start_s=start_s, pull=of, rejected=rejected, counts=not rejected, breakaway=value
    )


def fed(*blocks: tuple[float, list[float]]) -> Highest:
    """Feed blocks of samples a hundredth of a second apart."""
    made = Highest()
    for start_s, torque in blocks:
        made.feed(start_s + np.arange(len(torque)) / 100, np.array(torque))
    return made


@pytest.mark.parametrize(
    ("torque", "highest"),
    [
        ([1.0, 9.0, 1.0], 1.0),  # one wild sample is no torque: the median of three
        ([1.0, 9.0, 8.0], 8.0),
        ([1.0, 9.0], 9.0),  # fewer than three are taken as they are
        ([-7.0], -7.0),
        ([1.0, -8.0, -9.0, -8.0, 5.0, 5.0], -8.0),
        ([float("nan"), 4.0, float("nan"), 5.0, 4.0], 4.0),
    ],
)
def test_the_highest_is_a_median_of_three(torque: list[float], highest: float) -> None:
    assert fed((0.0, torque)).find([]) == (highest, 0)


def test_nothing_was_highest_before_a_reading() -> None:
    assert Highest().find([]) is None
    assert fed((0.0, []), (1.0, [float("nan")] * 5)).find([]) is None
    assert Highest().at_axle([], AxleScale()) is None


def test_the_highest_belongs_to_the_pull_in_which_it_was_seen() -> None:
    """A block's highest is at the middle of its three samples: 11.0 s is where the first pull begins."""
    of = fed((0.0, [20.0] * 3), (10.99, [30.0] * 3), (12.99, [29.0] * 3), (40.0, [10.0] * 3))
    assert of.find([pull(1, 10.0), pull(2, 30.0)]) == (30.0, 1)
    assert of.find([pull(1, 10.001), pull(2, 30.0)]) == (30.0, 0)
    # Excluded: the next outside of it; both ends belong to it.
    assert of.find([pull(1, 10.0, rejected="x"), pull(2, 30.0)]) == (20.0, 0)
    assert of.find([pull(1, 9.999, rejected="x"), pull(2, 30.0)]) == (29.0, 0)
    assert of.find([pull(1, 10.0)]) == (30.0, 1), "it counts again"
    of.feed(np.array([50.0]), np.array([-30.0]))
    assert of.find([pull(1, 10.0)]) == (30.0, 1), "the first of two that are alike"
    of.feed(np.array([51.0]), np.array([-30.5]))
    assert of.find([pull(1, 10.0), pull(2, 50.0)]) == (-30.5, 2)


def test_a_breakaway_that_was_read_between_two_readings_counts() -> None:
    of = fed((10.99, [-30.0] * 3))
    pulls = [pull(1, 10.0), pull(2, 40.0, breakaway=31.0), pull(3, 50.0, breakaway=99.0, rejected="x")]
    assert of.at_axle(pulls, AxleScale()) == (-31.0, 2)
    assert of.at_axle(pulls[:1], AxleScale()) == (-30.0, 1)
    assert of.at_axle([pull(1, 10.0, breakaway=29.0)], AxleScale()) == (-30.0, 1)


def test_a_mark_stands_where_the_pull_does_in_the_unit_drawn() -> None:
    """Twice the newton metres, 100 s after its recording's own time, anticlockwise downwards."""
    read = SimpleNamespace(
        direction=-1,
        breakaway=SimpleNamespace(time_s=2.0, at_sensor_nm=30.0, u95_sensor_nm=0.5),
        rotating=SimpleNamespace(start_s=3.0, end_s=4.0, at_sensor_nm=20.0, u95_sensor_nm=0.25),
    )
    values = {"breakaway": Value(40.0, 1.5), "rotating": Value(35.0, None)}
    live = SimpleNamespace(number=7, start_s=100.0, pull=read, state="within", rejected="", **values)
    assert marks.mark_of(live, 2.0) == PullMark("7", (102.0, -80.0, 3.0), (103.0, 104.0, -70.0, 0.0), "within", False)
    live = SimpleNamespace(number=7, start_s=100.0, pull=read, state="", rejected="x", breakaway=None, rotating=None)
    assert marks.mark_of(live, 2.0) == PullMark("7", rejected=True)
    live.breakaway, live.rotating = Value(40.0, None), Value(35.0, 0.5)
    assert marks.mark_of(live, 2.0).breakaway == (102.0, -80.0, 0.0)
    assert marks.mark_of(live, 2.0).rotating == (103.0, 104.0, -70.0, 1.0)
    live.pull = SimpleNamespace(direction=1, breakaway=None, rotating=None)
    assert marks.mark_of(live, 2.0) == PullMark("7", rejected=True)


def test_a_recordings_marks_are_at_the_axle_or_as_the_transducer_read_them() -> None:
    read = SimpleNamespace(
        direction=-1,
        breakaway=SimpleNamespace(time_s=2.0, at_sensor_nm=30.0, u95_sensor_nm=0.5),
        rotating=SimpleNamespace(start_s=3.0, end_s=4.0, at_sensor_nm=20.0, u95_sensor_nm=0.25),
    )
    axle = {
        "breakaway": SimpleNamespace(value=40.0, u95=1.5),
        "rotating mean": SimpleNamespace(value=35.0, u95=1.0),
    }
    none = SimpleNamespace(direction=1, breakaway=None, rotating=None)
    pulls = (
        SimpleNamespace(pull=read, axle=axle, result=SimpleNamespace(state="within"), left_out=""),
        SimpleNamespace(pull=read, axle={}, result=None, left_out="jerked"),
        SimpleNamespace(pull=none, axle={}, result=None, left_out=""),
    )
    assert marks.marks_of(SimpleNamespace(pulls=pulls), 2.0) == [
        PullMark("1", (2.0, -80.0, 3.0), (3.0, 4.0, -70.0, 2.0), "within"),
        PullMark("2", (2.0, -60.0, 1.0), (3.0, 4.0, -40.0, 0.5), "", rejected=True),
        PullMark("3"),
    ]
