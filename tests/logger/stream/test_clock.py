"""Clocks: samples are dated by counter or arrival, never go back, and a late packet moves nothing."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.header import TransducerFacts
from logger.stream.clock import ArrivalClock, CounterClock, build_clock

T0 = 5000.0


def test_counter_times_rest_on_the_earliest_arrival():
    clock = CounterClock(0.001)
    late = [0.030, 0.005, 0.0, 0.025]
    times = []
    for k, delay in enumerate(late):
        counter = np.arange(20 * k, 20 * k + 20)
        times.append(clock.date(np.full(20, T0 + 0.02 * (k + 1) + delay), counter))
    got = np.concatenate(times)
    assert got[0] == 0.0
    assert (np.diff(got) > 0).all()
    # Within a drain the nominal period holds; the better anchor is approached by half a period per drain.
    assert np.diff(times[0]) == pytest.approx(0.001)
    assert times[1][0] - times[0][-1] == pytest.approx(0.0005)
    assert clock.time_from == "device counter"


def test_lost_samples_leave_their_time():
    clock = CounterClock(0.01)
    first = clock.date(np.full(2, T0), np.array([0, 1]))
    second = clock.date(np.full(1, T0 + 0.5), np.array([50]))
    assert second[0] - first[0] == pytest.approx(0.5)


def test_after_a_restart_times_go_on():
    clock = CounterClock(0.01)
    before = clock.date(np.array([T0]), np.array([1000]))
    clock.restart()
    after = clock.date(np.array([T0 + 60.0]), np.array([3]))
    assert after[0] - before[0] == pytest.approx(60.0)
    clock.restart()
    again = clock.date(np.array([T0 + 60.0]), np.array([0]))  # earlier than what was dated already
    assert again[0] > after[0]


def test_late_is_never_negative_once_settled():
    rng = np.random.default_rng(3)
    clock = CounterClock(0.001)
    for k in range(500):
        arrival = T0 + 0.02 * (k + 1) + rng.exponential(0.004)
        time_s = clock.date(np.full(20, arrival), np.arange(20 * k, 20 * k + 20))
        if k > 300:
            assert (arrival + clock.at(0.0) - time_s > -1e-3).all()


def test_bursts_are_spread_at_the_nominal_period():
    clock = ArrivalClock(0.001)
    times = clock.date(np.repeat([T0, T0 + 0.016, T0 + 0.032], 16), None)
    assert np.diff(times) == pytest.approx(0.001)
    assert times[0] == 0.0
    later = clock.date(np.full(16, T0 + 5.0))
    assert np.diff(later) == pytest.approx(0.001)  # not spread over the silence
    assert clock.at(T0 + 5.0) == pytest.approx(later[-1])
    assert clock.time_from == "arrival"


def test_without_a_nominal_rate_the_seen_one_spreads_bursts():
    clock = ArrivalClock()
    parts = [clock.date(np.full(10, T0 + 0.1 * k)) for k in range(30)]
    assert np.diff(np.concatenate(parts[5:])) == pytest.approx(0.01, rel=0.05)


def test_nothing_to_date():
    assert len(CounterClock(0.001).date(np.empty(0), None)) == 0
    assert len(ArrivalClock().date(np.empty(0))) == 0
    assert CounterClock(0.001).at(T0) == ArrivalClock().at(T0) == 0.0


@given(
    st.lists(st.tuples(st.integers(1, 30), st.floats(0, 0.2)), min_size=1, max_size=30),
    st.sampled_from([None, 0.001, 0.01]),
)
def test_arrival_times_always_increase(bursts, period):
    clock = ArrivalClock(period)
    arrival = T0
    times = []
    for size, gap in bursts:
        arrival += gap
        times.append(clock.date(np.full(size, arrival)))
    assert (np.diff(np.concatenate(times)) > 0).all()


@given(st.lists(st.tuples(st.integers(1, 30), st.floats(0, 0.3), st.integers(0, 50)), min_size=1, max_size=30))
def test_counter_times_always_increase(packets):
    clock = CounterClock(0.001)
    arrival, counter = T0, 0
    times = []
    for size, gap, lost in packets:
        arrival += gap
        counter += lost
        times.append(clock.date(np.full(size, arrival), np.arange(counter, counter + size)))
        counter += size
    assert (np.diff(np.concatenate(times)) > 0).all()


def test_the_counter_dates_only_with_a_known_rate():
    counted = LineFormat(template="{counter},{torque}")
    rate = TransducerFacts(rate_hz=500)
    assert isinstance(build_clock(Description(name="x", lines=counted, transducer=rate)), CounterClock)
    assert isinstance(build_clock(Description(name="x", lines=counted)), ArrivalClock)
    plain = LineFormat(template="{torque}")
    assert isinstance(build_clock(Description(name="x", lines=plain, transducer=rate)), ArrivalClock)


def test_the_very_first_burst_is_spread_over_milliseconds():
    assert ArrivalClock().date(np.full(4, 100.0)) == pytest.approx([0, 0.001, 0.002, 0.003])


def test_a_burst_reaches_no_further_back_than_its_samples():
    """At 0.01 s: five at 10 s, five at 10.1 s; those lie from 10.06 on, a pause before them."""
    clock = ArrivalClock(0.01)
    first = clock.date(np.full(5, 10.0))
    second = clock.date(np.full(5, 10.1))
    assert first == pytest.approx([0, 0.01, 0.02, 0.03, 0.04])
    assert second == pytest.approx([0.10, 0.11, 0.12, 0.13, 0.14], abs=1e-6)
    assert clock.at(10.1) == pytest.approx(0.14)
    assert ArrivalClock().at(5.0) == 0.0


def test_a_chunk_that_those_behind_it_show_to_be_late_is_dated_back():
    """Of two chunks of four, 0.01 s apart, the first came 0.03 s late: both end with the second."""
    late = ArrivalClock(0.01).date(np.array([10.07] * 4 + [10.08] * 4))
    assert late == pytest.approx(0.01 * np.arange(8), abs=1e-6)
    in_time = ArrivalClock(0.01).date(np.array([10.04] * 4 + [10.08] * 4))
    assert in_time == pytest.approx(0.01 * np.arange(8), abs=1e-6)
    pause = ArrivalClock(0.01).date(np.array([10.0] * 4 + [10.2] * 4))
    assert np.diff(pause)[3] == pytest.approx(0.17, abs=1e-5)


def test_an_undescribed_rate_is_that_of_the_last_five_seconds():
    """Ten a second for ten seconds, then twenty a second: after five more seconds a burst is spread by 0.05 s."""
    clock, at = ArrivalClock(), 0.0
    for _ in range(100):
        at += 0.1
        clock.date(np.array([at]))
    for _ in range(130):
        at += 0.05
        clock.date(np.array([at]))
    assert np.diff(clock.date(np.full(4, at + 1.0))) == pytest.approx(np.full(3, 0.05), rel=0.2)


def test_a_better_anchor_is_approached_by_half_a_period_a_drain():
    clock = CounterClock(0.1)
    times = [clock.date(np.array([10.0 + 0.1 * n + (0.5 if n < 2 else 0.0)]), np.array([n]))[0] for n in range(14)]
    assert times[:2] == pytest.approx([0.0, 0.1])
    assert np.diff(times)[1:11] == pytest.approx(np.full(10, 0.05))
    assert np.diff(times)[11:] == pytest.approx(np.full(2, 0.1))
    assert clock.at(12.0) == pytest.approx(1.5)
    with pytest.raises(ValueError, match="needs a counter"):
        clock.date(np.array([12.0]), None)
