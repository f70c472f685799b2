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


# ------------------------------------------------ worked by hand, in quarters of a second: these are exact in binary
def test_a_counter_clock_worked_by_hand():
    clock = CounterClock(0.25)
    assert clock.at(99.0) == 0.0
    # 10.0 - 0.5: the third of them cannot have been taken later, nor the first later than 9.5
    assert clock.date(np.full(3, 10.0), np.array([7, 8, 9])).tolist() == [0.0, 0.25, 0.5]
    assert clock.at(10.0) == 0.5
    # 10.5 - 1.0 is 9.5 again
    assert clock.date(np.array([10.5, 10.5]), np.array([10, 11])).tolist() == [0.75, 1.0]
    # 10.5 - 1.5 is 9.0: half a second better, approached by 0.125 a drain, no farther than there
    assert clock.date(np.array([10.5, 10.5]), np.array([12, 13])).tolist() == [1.125, 1.375]
    assert clock.date(np.array([10.75]), np.array([14])).tolist() == [1.5]
    assert clock.date(np.array([11.25]), np.array([15])).tolist() == [1.625]
    assert clock.date(np.array([11.25]), np.array([16])).tolist() == [1.75]
    assert clock.date(np.array([11.25]), np.array([17])).tolist() == [1.875]  # 11.25 - 2.5 is 8.75
    assert clock.date(np.array([99.0]), np.array([18])).tolist() == [2.0]
    assert clock.date(np.array([99.0]), np.array([19])).tolist() == [2.25]


@pytest.mark.parametrize(
    ("arrival_s", "time_s"),
    [(12.25, 2.75), (12.0, 2.5), (11.75, 2.25), (11.5, 2.25), (1.0, 2.25)],
)
def test_behind_a_restart_a_counter_clock_goes_on_by_a_period_at_least(arrival_s, time_s):
    clock = CounterClock(0.25)
    assert clock.date(np.array([9.5]), np.array([100])).tolist() == [0.0]
    assert clock.date(np.array([11.5]), np.array([108])).tolist() == [2.0]
    clock.restart()
    found = clock.date(np.array([arrival_s, arrival_s + 0.25]), np.array([3, 4]))
    assert found.tolist() == [time_s, time_s + 0.25]
    assert clock.at(10.0) == 0.5  # what is seen to happen keeps its scale


def test_an_arrival_clock_worked_by_hand():
    clock = ArrivalClock(0.25)
    assert clock.at(99.0) == 0.0
    assert clock.date(np.full(4, 10.0)).tolist() == [0.0, 0.25, 0.5, 0.75]  # from 9.25 to 10.0
    assert clock.at(10.0) == 0.75
    assert clock.date(np.full(4, 11.0)).tolist() == [1.0, 1.25, 1.5, 1.75]  # just on from 10.0
    assert clock.date(np.full(4, 11.5)).tolist() == [1.875, 2.0, 2.125, 2.25]  # closer than described: spread over it
    assert clock.date(np.full(2, 13.25)) == pytest.approx([3.75, 4.0], abs=1e-6)  # behind a pause
    # what arrives with what was dated already follows it by a millionth of a second each
    assert clock.date(np.full(2, 13.25)) == pytest.approx([4.000001, 4.000002], abs=1e-9)
    assert clock.date(np.full(1, 13.25)) == pytest.approx([4.000003], abs=1e-9)
    assert clock.date(np.array([13.5])) == pytest.approx([4.25], abs=1e-9)


@pytest.mark.parametrize(
    ("second_s", "times"),
    [
        (10.25, [0.0, 0.25]),
        (10.125, [0.0, 0.125]),  # half a period late is in time
        (10.0625, [0.0, 0.25]),  # later: both are dated by the second
        (10.0, [0.0, 0.25]),
    ],
)
def test_a_chunk_is_in_time_up_to_half_a_period(second_s, times):
    assert ArrivalClock(0.25).date(np.array([10.0, second_s])) == pytest.approx(times, abs=1e-6)


def test_the_last_chunk_of_a_drain_dates_those_before_it_where_they_are_late():
    """Starts by chunk: 9.75, 9.75, 9.25: the first two came half a second late; dated from 9.25 on."""
    clock = ArrivalClock(0.25)
    assert clock.date(np.array([10.0, 10.25, 10.0 + 0.25])) == pytest.approx([0.0, 0.25, 0.5], abs=1e-6)
    assert clock.at(10.25) == pytest.approx(0.5, abs=1e-6)


@pytest.mark.parametrize(
    ("drains", "times"),
    [
        # (arrival, samples): the rate of the last drain is that between the first and the last one in the window
        (((0.0, 1), (1.0, 1), (6.0, 4)), 6.0 - 1.2 * np.arange(3, -1, -1)),  # five seconds are within: 6 s for 5
        (((0.0, 1), (1.0, 1), (6.25, 3)), 6.25 - 1.75 * np.arange(2, -1, -1)),  # more are not: 5.25 s for 3
        (((0.0, 1), (100.0, 10)), 10.0 * np.arange(1, 11)),  # two are always kept
        (((0.0, 1), (1.0, 1), (100.0, 9)), 1.0 + 11.0 * np.arange(1, 10)),  # 99 s for 9
        (((0.0, 1), (0.0, 3)), 1e-6 * np.arange(1, 4)),
    ],
)
def test_an_undescribed_rate_worked_by_hand(drains, times):
    clock = ArrivalClock()
    found = [clock.date(np.full(size, arrival_s)) for arrival_s, size in drains]
    assert found[-1] == pytest.approx(times, abs=2e-6)


def test_a_restart_forgets_the_rate():
    clock = ArrivalClock()
    clock.date(np.array([0.0]))
    clock.date(np.full(4, 1.0))
    clock.restart()
    assert clock.date(np.full(3, 9.0)) == pytest.approx([8.998, 8.999, 9.0], abs=1e-6)
