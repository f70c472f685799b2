"""Live = file: the same pulls to the last bit, soon after each release, at a cost that does not grow."""

from __future__ import annotations

import tracemalloc

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.trace.live import LiveReader
from analysis.trace.pulls import Read
from analysis.trace.reading import read_torque
from analysis.trace.results import Pull
from analysis.trace.segments import Span
from analysis.trace.traces import Sensor
from tests.analysis import practice
from tests.analysis.made import Shape, trace

RECORDINGS = [practice.load(name) for name in practice.names()]


def stream(recording, cuts):
    """Feed a recording in pieces; give the reader and (pull, time of the newest sample) as they came."""
    reader = LiveReader(recording.sensor)
    stated = []
    for low, high in zip([0, *cuts], [*cuts, len(recording.time_s)], strict=True):
        angle = None if recording.angle_deg is None else recording.angle_deg[low:high]
        for pull in reader.feed(recording.time_s[low:high], recording.torque_nm[low:high], angle):
            stated.append((pull, recording.time_s[high - 1]))
    stated += [(pull, float("inf")) for pull in reader.finish()]
    return reader, stated


@given(st.data())
def test_same_however_it_is_cut(data):
    recording = data.draw(st.sampled_from(RECORDINGS))
    n = len(recording.time_s)
    cuts = sorted(data.draw(st.lists(st.integers(0, n), max_size=40)))
    reader, stated = stream(recording, cuts)
    whole = read_torque(recording.time_s, recording.torque_nm, angle_deg=recording.angle_deg, sensor=recording.sensor)
    assert repr(reader.reading()) == repr(whole)
    assert [pull for pull, _ in stated] == list(whole.pulls)


@pytest.mark.parametrize("recording", RECORDINGS, ids=lambda r: r.name)
def test_packets(recording):
    """Even packets, as a transducer sends them: 20 samples each."""
    reader, _ = stream(recording, range(20, len(recording.time_s), 20))
    whole = read_torque(recording.time_s, recording.torque_nm, angle_deg=recording.angle_deg, sensor=recording.sensor)
    assert repr(reader.reading()) == repr(whole)


@pytest.mark.parametrize("recording", RECORDINGS, ids=lambda r: r.name)
def test_result_comes_soon(recording):
    """A pull that states a torque is there 0.3 s after its release, and a sample or two of a slow transducer later."""
    _, stated = stream(recording, range(1, len(recording.time_s)))
    step = float(np.median(np.diff(recording.time_s)))
    for pull, now in stated:
        if np.isfinite(now) and (pull.breakaway or pull.rotating):
            assert now - pull.end_s <= 0.3 + 0.1 * step, pull.start_s


def test_a_stated_figure_never_changes():
    recording = practice.load("multi-turn-001")
    reader = LiveReader(recording.sensor)
    seen = ()
    for i in range(0, len(recording.time_s), 50):
        reader.feed(recording.time_s[i : i + 50], recording.torque_nm[i : i + 50])
        now = reader.reading().pulls
        assert now[: len(seen)] == seen
        seen = now
    assert len(seen) >= 2


def test_keeps_only_what_it_needs():
    """Twenty minutes of rest and pulls: what is kept in memory does not grow with the stream."""
    t, y = trace(*[Shape()] * 10, rate_hz=200.0)
    reader = LiveReader()
    tracemalloc.start()
    held = []
    for turn in range(12):
        for i in range(0, len(t), 100):
            reader.feed(t[i : i + 100] + turn * (t[-1] + 0.005), y[i : i + 100])
        held.append(tracemalloc.get_traced_memory()[0])
    tracemalloc.stop()
    assert len(reader.reading().pulls) == 120
    per_turn = (held[-1] - held[1]) / 10
    assert per_turn < 30_000  # the pulls themselves; the samples would take 400 kB


def test_empty_and_single():
    reader = LiveReader()
    assert reader.feed([], []) == ()
    assert reader.feed([1.0], [2.0]) == ()
    assert reader.finish() == ()
    assert reader.reading().pulls == ()


@pytest.mark.parametrize(
    ("level", "wide", "loaded"),
    [
        (20.0, 0.21, True),  # block means range over more than a hundredth of it: a pack slips
        (20.0, 0.19, False),  # a lever hangs
        (20.0, 9.9, True),
        (20.0, 10.1, False),  # more than half of it: it was not steady under any load
        (3.9, 0.3, False),  # below 0.04 of the capacity a lever's weight is there
        (4.1, 0.3, True),
        (15.1, 0.0, True),  # beyond 0.15 of it however still
        (14.9, 0.0, False),
    ],
)
def test_a_stream_that_begins_under_load_is_restless_or_far_from_zero(level, wide, loaded):
    """Blocks of one reading: the least and the greatest of twenty are so far apart."""
    reader = LiveReader(Sensor(capacity_nm=200.0 if level == 20.0 else 100.0, resolution_nm=0.001))
    reader._block = 1
    reader._resolution_nm = 0.001
    half = 0.5 * wide * np.sin(np.linspace(0, 2 * np.pi, 21)[:20])
    half[[5, 15]] = 0.5 * wide, -0.5 * wide
    assert reader._begins_loaded(level + half) is loaded


@pytest.mark.parametrize(
    ("height", "up", "apart_blocks", "same", "other"),
    [
        (34.9, True, 10, 8.0, None),  # a lever may weigh as much: the level from which the stream began
        (34.9, False, 10, 8.0, None),  # ... whichever way it is let go
        (35.1, True, 10, 0.5, None),  # a load: the level behind it
        (35.1, False, 10, None, 0.5),
        (29.9, True, 10, None, None),  # too small beside what follows
        (34.9, True, 79, 8.0, None),
        (34.9, True, 80, None, None),  # four seconds before
    ],
)
def test_a_load_from_the_start_may_have_been_a_lever(height, up, apart_blocks, same, other):
    reader = LiveReader()
    reader._rate_hz, reader._block = 20.0, 1
    cut = Span(0, 100, 8.0, from_start=True, height_nm=height, upwards=up)
    reader._last = Read(Pull(0.0, 5.0, 1, 0.5), height_nm=height), cut
    following = Span(100 + apart_blocks, 300, 0.5, height_nm=100.0, upwards=True)
    assert reader._gripped(following, upwards=True) == same
    assert reader._gripped(following, upwards=False) == other
