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
