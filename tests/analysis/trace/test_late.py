"""Readings without a counter on a busy machine: late but complete is no gap, lost is one. Simulated arrivals."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace.gates import caught_up_in, gaps
from analysis.trace.live import LiveReader
from logger.stream.clock import ArrivalClock
from tests.analysis.made import Shape, trace

STALLS = ((5.0, 0.05), (12.0, 0.2), (20.0, 0.12))  # when the machine stood still, and for how long
LOST = (8.0, 8.2)


def arrivals(taken_s, adapter_s, jitter_s, stalls=(), seed=1):
    """When samples arrive: an adapter hands them on every so often, the machine reads a little later, or much later."""
    rng = np.random.default_rng(seed)
    handed_s, which = np.unique(np.ceil(taken_s / adapter_s - 1e-9) * adapter_s, return_inverse=True)
    read_s = handed_s + (rng.exponential(jitter_s, len(handed_s)) if jitter_s else 0.0)
    for begin, lasts in stalls:
        read_s = np.where((read_s >= begin) & (read_s < begin + lasts), begin + lasts, read_s)
    return np.maximum.accumulate(read_s)[which]


def dated(arrival_s, period_s, drain_s=0.1):
    """Date samples as a session does: everything that has come, then a pause."""
    clock, parts, now, at = ArrivalClock(period_s), [], 0.0, 0
    while at < len(arrival_s):
        now = max(now, arrival_s[at])
        until = int(np.searchsorted(arrival_s, now, "right"))
        parts.append(clock.date(arrival_s[at:until] + 100.0))
        at, now = until, now + drain_s
    return np.concatenate(parts)


@pytest.mark.parametrize("drain_s", [0.1, 1 / 30])
@pytest.mark.parametrize("stalls", [(), STALLS])
@pytest.mark.parametrize("jitter_s", [0.0, 0.002, 0.004])
@pytest.mark.parametrize("rate_hz", [10, 50, 100, 500, 1000])
def test_late_but_complete_is_no_gap_and_lost_is_one(rate_hz, jitter_s, stalls, drain_s):
    taken_s = np.arange(30 * rate_hz) / rate_hz
    whole = dated(arrivals(taken_s, 0.016, jitter_s, stalls), 1 / rate_hz, drain_s)
    assert (np.diff(whole) > 0).all()
    # Up to two small ones: where everything within a quarter of a second is late, nobody can know it.
    assert len(gaps(whole)) <= (2 if jitter_s and rate_hz >= 500 else 0)
    kept = taken_s[(taken_s < LOST[0]) | (taken_s >= LOST[1])]
    with_loss = dated(arrivals(kept, 0.016, jitter_s, stalls), 1 / rate_hz, drain_s)
    found = gaps(with_loss)
    steps = np.diff(with_loss)[found - 1]
    true = found[np.argmax(steps)]
    assert abs(with_loss[true] - LOST[1]) < 0.1 + 0.03, "the gap is where the samples are missing"
    assert steps.max() == pytest.approx(LOST[1] - LOST[0] + 1 / rate_hz, abs=0.03)


def test_a_chunk_that_the_next_one_shows_to_be_late_is_dated_back():
    """Notifications of one sample, held up for 0.13 s and delivered together: they were taken at their period."""
    clock = ArrivalClock(0.01)
    first = clock.date(np.array([100.0]))
    held = clock.date(100.13 + 0.0001 * np.arange(13))
    assert np.diff(np.concatenate((first, held))) == pytest.approx(0.01, abs=2e-3)
    missing = ArrivalClock(0.01)
    before = missing.date(np.array([100.0]))
    after = missing.date(100.13 + 0.0001 * np.arange(5))  # five of thirteen
    steps = np.diff(np.concatenate((before, after)))
    assert steps[0] == pytest.approx(0.09, abs=1e-3)
    assert steps[1:] == pytest.approx(0.01, abs=2e-3)


def test_times_by_counter_still_show_every_loss():
    """A counter dates exactly: what is missing never catches up."""
    counter = np.arange(4000)
    for lost in (2, 3, 20, 300):
        time_s = np.delete(counter, np.arange(1500, 1500 + lost)) * 0.001
        assert gaps(time_s).tolist() == ([1500] if lost > 1 else [])
    assert gaps(np.array([0.0])).tolist() == []
    assert gaps(np.array([0.0, 1.0])).tolist() == []


def test_a_stream_that_ends_behind_a_long_step_has_a_gap():
    time_s = np.append(np.arange(1000) * 0.01, [10.5, 10.51])
    assert gaps(time_s).tolist() == [1000]
    assert caught_up_in(0.01) == 25
    assert caught_up_in(1.0) == 1


@pytest.mark.parametrize("piece", [17, 400, 100_000])
def test_live_says_the_same_of_lateness_in_pieces_of_any_size(piece):
    shape = Shape()
    taken_s, torque_nm = trace(shape, shape, rate_hz=200.0)
    time_s = dated(arrivals(taken_s, 0.016, 0.003, ((7.0, 0.15),)), 0.005)
    kept = (taken_s < 11.0) | (taken_s >= 11.2)
    lost_s = dated(arrivals(taken_s[kept], 0.016, 0.003, ((7.0, 0.15),)), 0.005)
    for times, torque, count in ((time_s, torque_nm, 0), (lost_s, torque_nm[kept], 1)):
        reader = LiveReader()
        for at in range(0, len(times), piece):
            reader.feed(times[at : at + piece], torque[at : at + piece])
        reader.finish()
        told = [text for text in reader.reading().problems if "gaps in the stream" in text]
        assert len(told) == count
        # The last chunk before a loss may be late as well, and nothing behind it shows that: it joins the gap.
        assert all(text.startswith(("1 gaps", "2 gaps")) and "s in all, the first at 1" in text for text in told)
