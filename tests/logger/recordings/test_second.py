"""Rows of two sources taken apart, and an angle beside the torque while both grow: by hand, and against a loop."""

from __future__ import annotations

import numpy as np
import pytest

from logger.recordings.second import Alongside, between, split
from logger.samples import Event, EventKind

NAN = np.nan


def test_rows_are_taken_apart_by_hand():
    columns = {
        "time_s": np.arange(6) / 8,
        "source": np.array([1.0, 2.0, 1.0, 1.0, 2.0, 1.0]),
        "torque": np.array([10.0, NAN, 12.0, 13.0, NAN, 15.0]),
        "angle_deg": np.array([NAN, 1.0, NAN, NAN, 4.0, NAN]),
        "second_late_ms": np.array([NAN, 0.5, NAN, NAN, 0.7, NAN]),
        "both": np.arange(6.0),
        "empty": np.full(6, NAN),
    }
    events = [Event(EventKind.NOTE, index) for index in (0, 1, 2, 5, 6, 9)]
    kept, moved, second = split(columns, events)
    assert list(kept) == ["time_s", "torque", "angle_deg", "both", "empty"]
    assert kept["time_s"].tolist() == [0, 0.25, 0.375, 0.625]
    assert kept["torque"].tolist() == [10, 12, 13, 15]
    assert kept["both"].tolist() == [0, 2, 3, 5]
    assert np.isnan(kept["empty"]).all()
    # Samples at 1/8 s and 1/2 s lie farther apart than a quarter of a second.
    assert np.isnan(kept["angle_deg"]).all()
    assert [event.index for event in moved] == [0, 1, 1, 3, 4, 4]
    assert second is not None
    assert second.time_s.tolist() == [0.125, 0.5]
    assert {name: values.tolist() for name, values in second.columns.items()} == {
        "angle_deg": [1.0, 4.0],
        "second_late_ms": [0.5, 0.7],
    }


@pytest.mark.parametrize(
    ("time_s", "at_s", "values"),
    [
        ([0.0, 0.25], [-0.1, 0.0, 0.125, 0.25, 0.3], [NAN, 0.0, 0.5, 1.0, NAN]),  # a quarter of a second is bridged
        ([0.0, 0.26], [0.0, 0.13, 0.26], [0.0, NAN, 1.0]),  # more is not; the samples themselves stand
        ([0.0, 0.5, 0.625], [0.25, 0.5, 0.5625, 0.625], [NAN, 1.0, 1.5, 2.0]),
        ([0.0, 0.125, 0.5], [0.0625, 0.125, 0.25, 0.5], [0.5, 1.0, NAN, 2.0]),
        ([1.0], [0.9, 1.0, 1.1], [NAN, 0.0, NAN]),
        ([], [0.0], [NAN]),
    ],
)
def test_between_samples_and_not_across_a_gap(time_s, at_s, values):
    found = between(np.array(at_s), np.array(time_s), np.arange(float(len(time_s))))
    assert found == pytest.approx(np.array(values), nan_ok=True)


def merged(seed: int) -> tuple[np.ndarray, ...]:
    """Give rows of a torque and of a wheel and a held angle that come and go; gaps of up to half a second."""
    generator = np.random.default_rng(seed)
    time_s = np.cumsum(generator.choice([0.01, 0.05, 0.3], 300, p=[0.6, 0.37, 0.03]))
    source = generator.integers(1, 3, 300).astype(float)
    torque = np.where(source == 1, time_s + 100, NAN)
    angles = [np.where((source == 2) & (generator.random(300) < share), 90 * time_s, NAN) for share in (0.9, 0.5)]
    return time_s, source, torque, *angles


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("size", [1, 7, 300])
def test_while_both_grow_it_is_as_in_a_file(seed, size):
    time_s, source, torque, *angles = merged(seed)
    along, mine = Alongside(), source == 1
    given = [along.feed(*(x[at : at + size] for x in (time_s, source, torque, *angles))) for at in range(0, 300, size)]
    assert all(x.shape[1] < 300 / 4 for x in along._angles), "what is past is let go"
    parts = [np.concatenate(column) for column in zip(*given, along.rest(), strict=True)]
    assert parts[0].tolist() == time_s[mine].tolist()
    assert parts[1].tolist() == torque[mine].tolist()
    for found, angle in zip(parts[2:], angles, strict=True):
        whole = between(time_s[mine], time_s, angle)
        assert found == pytest.approx(whole, nan_ok=True)
        assert np.isfinite(whole).sum() > 50


def test_a_row_waits_for_the_angle_but_not_for_ever():
    along = Alongside()

    def feed(*rows: tuple[float, int, float]) -> list[tuple[float, ...]]:
        time_s, source, value = np.array(rows).reshape(-1, 3).T
        found = along.feed(time_s, source, np.where(source == 1, value, NAN), np.where(source == 2, value, NAN))
        return [tuple(row) for row in np.array(found).T.tolist()]

    assert feed((0.0, 1, 1.0)) == []
    assert feed((0.0, 2, 5.0)) == [(0.0, 1.0, 5.0)]  # the angle of this very moment
    assert feed((0.125, 1, 2.0)) == []
    assert feed() == []
    assert feed((0.25, 1, 3.0)) == []  # a quarter of a second away
    assert feed((0.25, 2, 7.0)) == [(0.125, 2.0, 6.0), (0.25, 3.0, 7.0)]
    assert feed((0.375, 1, 4.0), (0.5, 1, 5.0)) == []
    found = feed((0.625, 1, 6.0))  # away for longer: all before this moment have no angle
    assert [row[:2] for row in found] == [(0.375, 4.0), (0.5, 5.0)]
    assert np.isnan([row[2] for row in found]).all()
    assert feed((0.625, 2, 9.0)) == [(0.625, 6.0, 9.0)]
    assert feed((0.75, 1, 7.0)) == []
    assert [x.tolist() for x in along.rest()][:2] == [[0.75], [7.0]]


def test_a_row_waits_for_the_slower_of_two_angles_and_for_none_that_is_away():
    along = Alongside()

    def feed(*rows: tuple[float, float, float, float]) -> list[list[float]]:
        time_s, torque, first, other = np.array(rows).T
        found = along.feed(time_s, np.where(np.isnan(torque), 2.0, 1.0), torque, first, other)
        return np.array(found).T.tolist()

    assert feed((0.0, NAN, 0.0, 0.0), (0.0625, 1.0, NAN, NAN), (0.125, NAN, 2.0, NAN)) == []
    assert feed((0.25, NAN, 4.0, 8.0)) == [[0.0625, 1.0, 1.0, 2.0]]
    assert feed((0.5, NAN, 8.0, NAN), (0.5625, 2.0, NAN, NAN)) == []  # the other one is away; this one is to come
    (row,) = feed((0.625, NAN, 10.0, NAN))
    assert row[:3] == [0.5625, 2.0, 9.0]
    assert np.isnan(row[3])
