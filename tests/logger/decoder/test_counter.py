"""The wrap-around counter: losses exact, duplicates and late packets told apart, silences longer than a wrap."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.decoder.counter import Unwrapper


def feed(unwrapper, raw, size=1):
    raw = np.asarray(raw, np.int64)
    return unwrapper.feed(raw, np.full(len(raw), size, np.int64))


def lost(placed):
    return 0 if placed.lost is None else int(placed.lost.sum())


def test_empty():
    assert len(feed(Unwrapper(256), []).keep) == 0


def test_wraps_without_loss():
    placed = feed(Unwrapper(256), np.arange(1000) % 256)
    assert placed.lost is None
    assert placed.first.tolist() == list(range(1000))
    assert (placed.duplicates, placed.late, placed.reordered, placed.anew_at, placed.unsure_at) == (0, 0, 0, None, None)


def test_loss_is_exact_and_in_samples():
    unwrapper = Unwrapper(65536)
    placed = feed(unwrapper, [65534, 65535, 3, 4], size=20)
    assert placed.lost.tolist() == [0, 0, 60, 0]
    assert (placed.first - 65534 * 20).tolist() == [0, 20, 100, 120]  # packet number x 20 samples


def test_a_counter_of_samples():
    placed = feed(Unwrapper(1 << 16, counts_samples=True), [0, 20, 60, 80], size=20)
    assert placed.lost.tolist() == [0, 0, 20, 0]


def test_duplicates_in_one_drain_and_in_the_next():
    unwrapper = Unwrapper(256)
    assert feed(unwrapper, [1, 2, 2, 3]).duplicates == 1
    again = feed(unwrapper, [3, 4])
    assert (again.duplicates, again.late, lost(again)) == (1, 0, 0)
    assert again.first.tolist() == [4]


def test_changed_places_in_one_drain_are_put_back():
    placed = feed(Unwrapper(256), [250, 252, 251, 253, 254])
    assert (placed.reordered, placed.duplicates, lost(placed)) == (1, 0, 0)
    assert placed.keep.tolist() == [0, 2, 1, 3, 4]


def test_late_after_its_drain_is_dropped_and_its_loss_stands():
    unwrapper = Unwrapper(256)
    assert lost(feed(unwrapper, [1, 2, 4])) == 1
    late = feed(unwrapper, [3, 5])
    assert (late.late, late.duplicates, lost(late)) == (1, 0, 0)
    assert late.first.tolist() == [5]


@pytest.mark.parametrize("before", [0, 24, 50, 64, 100])
def test_what_came_a_wrap_ago_is_not_taken_for_its_like(before):
    """Of a counter that wraps at 40, 10 is lost and comes late; the 10 of the wrap before is another one."""
    unwrapper = Unwrapper(40)
    feed(unwrapper, np.arange(50 - before, 50) % 40)
    assert lost(feed(unwrapper, [11, 12] if before else [9, 11, 12])) == 1
    late = feed(unwrapper, [10, 13, 12])
    assert (late.late, late.duplicates, lost(late)) == (1, 1, 0)


@pytest.mark.parametrize("twice", [0, 1, 15, 16])
def test_what_is_sent_again_is_known_sixteen_packets_later(twice):
    """0 to 19 came, one in each drain; 20 was due when one of them came again."""
    unwrapper = Unwrapper(256)
    for raw in range(20):
        feed(unwrapper, [raw])
    again = feed(unwrapper, [19 - twice, 20])
    assert (again.duplicates, again.late, lost(again)) == ((1, 0, 0) if twice < 16 else (0, 0, 239 + 16))


@pytest.mark.parametrize(
    ("silent", "leeway", "value", "anew"),
    [
        # four packets due: what comes may still be sent twice; from more than four on it may be a new beginning
        (4, 0, 3, False),
        (4.5, 0, 3, True),
        (14, 10, 3, False),
        (14.5, 10, 3, True),
        # fifty due, two in a hundred more by its clock: 51 can have been reached, 52 not
        (50, 0, 51, True),
        (50, 0, 52, False),
        (60, 10, 51, True),
        (60, 10, 52, False),
    ],
)
@pytest.mark.parametrize(("step", "size"), [(1, 1), (7, 1), (1, 2), (7, 4)])
def test_what_is_sent_twice_behind_a_silence_and_what_is_a_new_beginning(silent, leeway, value, anew, step, size):
    unwrapper = Unwrapper(1 << 16, step=step)
    begin = value - 8
    feed(unwrapper, np.arange(max(0, begin), value + 9) * step, size)
    unwrapper.expect(silent * size, leeway * size)
    placed = feed(unwrapper, [value * step], size)
    if anew:
        assert placed.anew_at == value * step
        assert placed.lost == pytest.approx([silent * size], abs=size / 2)
    else:
        assert (placed.duplicates, len(placed.keep)) == (1, 0)
    # what comes then is due, and the same value once more is sent twice
    again = feed(unwrapper, [(value + (1 if anew else 9)) * step, value * step], size)
    assert (lost(again), again.duplicates) == (0, 1)


def silence(before, silent, ahead, *, modulus, step=1, size=1):
    """Packets 0 to ``before`` - 1, a silence, and one that is so many packets ahead: lost packets, anew, unsure."""
    unwrapper = Unwrapper(modulus * step, step=step)
    for begin in range(0, before, 5):
        feed(unwrapper, np.arange(begin, min(before, begin + 5)) * step % (modulus * step), size)
    unwrapper.expect(silent * size)
    placed = feed(unwrapper, [(before + ahead) * step % (modulus * step)], size)
    assert len(placed.keep) == 1
    return lost(placed) / size, placed.anew_at, placed.unsure_at is not None


@pytest.mark.parametrize(
    ("before", "silent", "ahead", "modulus", "told"),
    [
        # of 1000 packets due 2 % is 20, and 16 may wait: counting on is taken for true from 964 to 1036
        (10, 1000, 1036, 65_536, (1036, None, False)),
        (10, 1000, 1037, 65_536, (1000, 1047, True)),
        (10, 1000, 964, 65_536, (964, None, False)),
        (10, 1000, 963, 65_536, (963, None, True)),  # it stopped counting meanwhile, or began anew
        (536, 1000, 500, 65_536, (500, None, True)),  # 1036: a device that began anew could have come as far
        (537, 1000, 500, 65_536, (500, None, False)),
        # 36 either way is all of a counter that wraps at 72, and not of one that wraps at 73
        (10, 1000, 1005, 72, (1005, None, True)),
        (10, 1000, 1005, 73, (1005, None, False)),
        (10, 200, 203, 101, (203, None, False)),  # one that wraps at an odd number, twice around
        (10, 202, 203, 101, (203, None, False)),
        # longer than it takes to wrap: a few packets ahead are believed, more are not
        (10, 1000, 16, 256, (16, None, True)),
        (10, 1000, 17, 256, (1000, 27, True)),
        (10, 256, 100, 256, (256, 110, True)),
        (10, 255, 100, 256, (100, None, True)),
    ],
)
@pytest.mark.parametrize(("step", "size"), [(1, 1), (3, 1), (1, 4), (3, 2)])
def test_what_a_silence_cost_at_the_borders(before, silent, ahead, modulus, told, step, size):
    cost, anew_at, unsure = told
    assert silence(before, silent, ahead, modulus=modulus, step=step, size=size) == (
        cost,
        None if anew_at is None else anew_at * step,
        unsure,
    )


@pytest.mark.parametrize(
    ("before", "ahead", "unsure"), [(10, 17, True), (30, 17, True), (31, 17, False), (10, 18, False)]
)
def test_counting_on_and_a_new_beginning_may_lie_at_the_same_value(before, ahead, unsure):
    """Of 30 due 17 either way: from 13 to 47 since it began anew, and no more than 17 ahead of where it was."""
    assert silence(before, 30, ahead, modulus=65_536) == (ahead, None, unsure)


@pytest.mark.parametrize(("ahead", "cost"), [(933, 933), (934, 899)])
@pytest.mark.parametrize(("step", "size"), [(1, 1), (3, 1), (1, 4), (3, 2)])
def test_what_a_first_jump_leaves_of_a_silence_is_for_the_next(ahead, cost, step, size):
    """1000 due, 100 of them lost and one come: of the 899 left 34 either way, 2 % and the 16 that may wait."""
    unwrapper = Unwrapper(1 << 16, step=step)
    feed(unwrapper, np.arange(2000, 2010) * step, size)
    unwrapper.expect(1000 * size)
    assert lost(feed(unwrapper, [2110 * step], size)) == 100 * size
    assert lost(feed(unwrapper, [(2111 + ahead) * step], size)) == cost * size


def test_a_silence_is_over_when_all_that_was_due_has_come():
    """Whether something is still expected shows in that single samples are not taken in one step."""

    def waits(unwrapper, raw):
        return unwrapper.run_on(np.array([raw])) is None

    unwrapper = Unwrapper(1 << 16)
    feed(unwrapper, np.arange(10))
    for more, leeway in ((5, 0), (5, 0), (20, 15), (5, 0)):
        begin = unwrapper._next
        unwrapper.expect(more, leeway)
        for raw in range(begin, begin + 5):
            assert waits(unwrapper, raw)
            feed(unwrapper, [raw])
        assert not waits(unwrapper, begin + 5)
    begin = unwrapper._next
    unwrapper.expect(2.0)
    unwrapper.expect(3.0)  # both
    feed(unwrapper, np.arange(begin, begin + 4))
    assert waits(unwrapper, begin + 4)
    feed(unwrapper, [begin + 4])
    assert not waits(unwrapper, begin + 5)
    begin = unwrapper._next
    unwrapper.expect(100.0, 50.0)
    assert lost(feed(unwrapper, [begin + 100])) == 100  # explained at once, leeway and all
    assert not waits(unwrapper, begin + 101)
    unwrapper.expect(2.0)
    feed(unwrapper, [begin + 102])
    assert waits(unwrapper, begin + 103)


def test_a_silence_of_several_wraps_is_counted_exactly():
    # 4 kHz in packets of 100, a 16-bit sample counter, 40 s away: 2.4 wraps; the clock is wrong by 0.2 s.
    unwrapper = Unwrapper(1 << 16, counts_samples=True)
    feed(unwrapper, [0, 100], size=100)
    unwrapper.expect(40.2 * 4000, 0.5 * 4000)
    placed = feed(unwrapper, [(200 + 160_000) % 65536], size=100)
    assert lost(placed) == 160_000
    assert placed.anew_at is None
    assert placed.first.tolist() == [160_200]


def test_a_counter_that_began_anew_gives_an_estimate():
    unwrapper = Unwrapper(1 << 32)
    feed(unwrapper, np.arange(50_000, 50_010))
    unwrapper.expect(300)
    placed = feed(unwrapper, [0, 1])
    assert placed.anew_at == 0
    assert placed.lost.tolist() == [300, 0]
    assert placed.first.tolist() == [50_310, 50_311]


def test_a_device_that_counts_only_while_somebody_listens():
    # 10 s away at 100/s, of which it noticed after 4.85 s that nobody listened.
    unwrapper = Unwrapper(1 << 16)
    feed(unwrapper, np.arange(5000, 5010))
    unwrapper.expect(1155, 50)
    placed = feed(unwrapper, [5495, 5496])
    assert (placed.lost.tolist(), placed.anew_at, placed.unsure_at) == ([485, 0], None, None)


def test_a_value_that_a_new_beginning_could_have_reached_is_an_estimate():
    unwrapper = Unwrapper(1 << 16)
    feed(unwrapper, np.arange(100, 110))
    unwrapper.expect(1155, 50)
    placed = feed(unwrapper, [595])
    assert (placed.lost.tolist(), placed.anew_at, placed.unsure_at) == ([485], None, 0)


def test_what_waited_comes_first_and_the_jump_behind_it_is_what_the_silence_cost():
    # A port held 4 s of a stop of 100 s: 1000 samples a second, 16 bits, one wrap and a half.
    unwrapper = Unwrapper(1 << 16)
    feed(unwrapper, np.arange(10))
    unwrapper.expect(100_000, 500)
    assert lost(feed(unwrapper, np.arange(10, 4010))) == 0
    assert lost(feed(unwrapper, [100_010 % 65536, 100_011 % 65536])) == 96_000


def test_it_begins_at_the_devices_own_value():
    unwrapper = Unwrapper(256)
    unwrapper.expect(100)  # nothing was heard before: nothing can be missing
    assert feed(unwrapper, [77, 78]).first.tolist() == [77, 78]
    assert feed(Unwrapper(256, step=10), [70, 80]).first.tolist() == [7, 8]


@given(
    st.lists(st.integers(0, 5), min_size=1, max_size=120),
    st.integers(0, 65535),
    st.integers(1, 40),
    st.sampled_from([256, 65536]),
)
def test_any_losses_any_start_any_drains(gaps, start, drain, modulus):
    """A second algorithm: plain big-integer positions."""
    positions = start + np.cumsum(np.array(gaps) + 1)
    unwrapper = Unwrapper(modulus)
    first, total = [], 0
    for begin in range(0, len(positions), drain):
        placed = feed(unwrapper, positions[begin : begin + drain] % modulus)
        first += placed.first.tolist()
        total += lost(placed)
    assert np.array_equal(np.array(first) % modulus, positions % modulus)  # the device's own value, unwrapped
    assert np.array_equal(np.diff(first), np.diff(positions))
    assert total == sum(gaps[1:])


@pytest.mark.parametrize("step", [1, 7])
def test_step(step):
    placed = feed(Unwrapper(1000, step=step), [995, (995 + step) % 1000, (995 + 4 * step) % 1000])
    assert lost(placed) == 2


def test_running_on_in_one_step_is_what_packet_by_packet_gives():
    quick, slow = Unwrapper(100, counts_samples=True), Unwrapper(100, counts_samples=True)
    for raw in ([5, 6, 7], [8, 9], [10], [12, 13], [14, 15], [98, 99, 0, 1], [2, 3], [3, 4], [5, 7]):
        counter = np.array(raw)
        first = quick.run_on(counter)
        if first is None:
            first = quick.feed(counter, np.ones(len(counter), np.int64)).first
        assert first.tolist() == slow.feed(counter, np.ones(len(counter), np.int64)).first.tolist()
    quick.expect(50)
    assert quick.run_on(np.array([8])) is None
