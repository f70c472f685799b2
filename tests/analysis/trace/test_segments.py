"""Where a load begins and ends, in block medians."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.trace.segments import Segmenter
from analysis.trace.traces import Sensor

STEP = 0.05


def blocks(*levels, seed=0):
    """Make block medians from (seconds, level) with a little noise; ramps of 0.5 s between them."""
    times, values, at = [0.0], [levels[0][1]], 0.0
    for seconds, level in levels:
        times += [at + 0.5 if at else 0.0, at + seconds]
        values += [level, level]
        at += seconds
    t = np.arange(0, at, STEP)
    return t, np.interp(t, times, values) + 0.02 * np.random.default_rng(seed).standard_normal(len(t))


def spans(t, b, *, begins_loaded=False, cuts=(), capacity=200.0):
    segmenter = Segmenter(Sensor(capacity_nm=capacity), 0.01, begins_loaded=begins_loaded)
    edges = [0, *cuts, len(t)]
    found = [s for low, high in itertools.pairwise(edges) for s in segmenter.push(t[low:high], b[low:high])]
    return found + segmenter.finish()


def seconds(span):
    return span.start * STEP, span.end * STEP


def test_rest_holds_no_span():
    assert spans(*blocks((20, 0.3))) == []


def test_one_load():
    (span,) = spans(*blocks((3, 0.3), (5, 40.0), (3, 0.3)))
    assert seconds(span) == (pytest.approx(3.0, abs=0.1), pytest.approx(8.35, abs=0.15))
    assert span.level_nm == pytest.approx(0.3, abs=0.1)
    assert not span.from_start
    assert not span.to_end


def test_known_soon_after_the_release():
    (span,) = spans(*blocks((3, 0.3), (5, 40.0), (3, 0.3)))
    assert span.seen - span.end <= 0.25 / STEP


def test_two_directions():
    first, second = spans(*blocks((3, 0.0), (4, 40.0), (4, -40.0), (3, 0.0)))
    assert seconds(second)[0] == pytest.approx(7.3, abs=0.3)
    assert seconds(first)[1] <= seconds(second)[0]


def test_slow_drift_is_followed():
    t = np.arange(0, 600, STEP)
    assert spans(t, 0.01 * t + 0.02 * np.random.default_rng(1).standard_normal(len(t))) == []


def test_lever_put_on_long_before():
    """The load begins where it grows far beyond the lever's weight, not minutes earlier."""
    *_, span = spans(*blocks((3, 0.0), (120, 5.0), (5, 45.0), (3, 5.0)))
    assert seconds(span)[0] == pytest.approx(123.2, abs=0.5)
    assert span.level_nm == pytest.approx(5.0, abs=1.0)  # roughly: the hand-off level is found later


def test_comes_back_to_another_level():
    """The lever hangs differently afterwards: more than the release share, but still."""
    (span,) = spans(*blocks((3, 0.0), (5, 12.0), (6, 5.0)))[:1]
    assert seconds(span)[1] == pytest.approx(8.4, abs=0.3)


def test_cut_at_the_start():
    (span,) = spans(*blocks((4, 60.0), (5, 0.5)), begins_loaded=True)
    assert span.from_start
    assert span.start == 0
    assert seconds(span)[1] == pytest.approx(4.4, abs=0.2)


def test_cut_at_the_end():
    (span,) = spans(*blocks((3, 0.3), (5, 40.0)))
    assert span.to_end
    assert span.end == round(8 / STEP)


@given(st.lists(st.integers(0, 300), max_size=8))
def test_same_however_it_is_cut(cuts):
    t, b = blocks((3, 0.3), (3, 40.0), (2, 2.0), (4, -30.0), (3, 0.3))
    assert spans(t, b, cuts=sorted(cuts)) == spans(t, b)


def test_a_lever_that_comes_to_hang_just_below_half_ends_the_load():
    """12 N·m, then 6.3, then 5.8 in steps that count as still: below half for a second, the load is over."""
    found = spans(*blocks((3, 0.0), (5, 12.0), (3, 6.3), (6, 5.8)))
    assert not found[0].to_end
    assert seconds(found[0])[1] == pytest.approx(8.5, abs=0.4)


@pytest.mark.parametrize("seed", range(12))
def test_the_quick_way_through_a_load_finds_what_the_slow_one_does(seed):
    rng = np.random.default_rng(seed)
    levels = rng.choice([0.0, 0.0, 4.0, -3.0, 15.0, 30.0, -25.0, 40.0], 14)
    t, b = blocks((3, 0.0), *((float(rng.uniform(0.6, 5)), float(x)) for x in levels), (4, 0.0), seed=seed)

    class Slow(Segmenter):
        def _run_loaded(self, times, blocks, at):
            return at

    quick, slow = (kind(Sensor(capacity_nm=200.0), 0.01) for kind in (Segmenter, Slow))
    found = [[*one.push(t, b), *one.finish()] for one in (quick, slow)]
    assert [(s.start, s.end, s.reversed) for s in found[0]] == [(s.start, s.end, s.reversed) for s in found[1]]
    assert found[0]


# ---------------------------------------------------------------------- at the borders, without noise
EIGHTH = 0.125  # s; blocks of round numbers


def exactly(*stretches, begins_loaded=False):
    """Give the spans of ``count`` blocks of each level; the transducer is one of 1000 N·m."""
    levels = [float(level) for level, count in stretches for _ in range(count)]
    segmenter = Segmenter(Sensor(capacity_nm=1000.0), 0.0, begins_loaded=begins_loaded)
    found = segmenter.push(EIGHTH * np.arange(len(levels)), np.array(levels))
    return found + segmenter.finish()


@pytest.mark.parametrize(("level", "loads"), [(3.0, 0), (3.01, 1), (-3.0, 0), (-3.01, 1)])
def test_a_load_begins_beyond_three_thousandths_of_the_capacity(level, loads):
    assert len(exactly((0, 8), (level, 1), (0, 8))) == loads


@pytest.mark.parametrize(
    ("level", "seen"),
    [
        (24.9, 24 + 3),  # below a quarter for 0.15 s: the third block
        (25.0, 24 + 10),  # still below half for longer than a second: the tenth
        (49.9, 24 + 10),
    ],
)
def test_when_a_load_is_known_to_be_over(level, seen):
    span, *_ = exactly((0, 8), (100, 16), (level, 24))
    assert (span.start, span.end, span.seen, span.height_nm) == (8, 24, seen, 100.0)
    assert not span.to_end


@pytest.mark.parametrize(
    ("top", "over"),
    [
        (((100, 6),), True),  # half a second near its maximum, from the second block on: it slipped
        (((100, 5),), False),
        (((100, 5), (103, 1)), True),  # by three hundredths it did not clearly grow
        (((100, 5), (103.1, 1)), False),
        (((100, 5), (50.1, 1)), True),  # above half is near enough
        (((100, 5), (50.0, 1)), False),
    ],
)
def test_what_lies_still_after_a_sharp_peak_is_the_plateau(top, over):
    """40 N·m for three seconds: the end of a load that had kept up for more than 0.4 s, else a part of it."""
    span, *_ = exactly((0, 8), *top, (40, 24))
    assert span.to_end is not over


@pytest.mark.parametrize(("level", "start"), [(-25.0, 25), (-25.1, 24)])
def test_a_load_goes_straight_into_one_the_other_way(level, start):
    """... from a quarter of it on."""
    first, second = exactly((0, 8), (100, 16), (level, 1), (-80, 15))
    assert (first.start, first.end, first.upwards, first.reversed) == (8, start, True, False)
    assert (second.start, second.upwards, second.reversed, second.height_nm) == (start, False, True, 80.0)


@pytest.mark.parametrize(("first", "is_reversed"), [(40.0, False), (40.1, True)])
def test_a_load_of_two_fifths_was_a_stroke(first, is_reversed):
    """It does not lie still, so it is no lever."""
    *_, second = exactly((0, 8), *((first, 1), (30, 1)) * 8, (-30, 1), (-100, 16))
    assert second.reversed is is_reversed


@pytest.mark.parametrize(("level", "again"), [(50.0, False), (50.1, True), (-50.0, False), (-50.1, True)])
def test_what_comes_back_to_half_at_once_is_the_next_load(level, again):
    """... from the level before; less is a lever that rings and comes to hang there."""
    first, *more = exactly((0, 8), (100, 16), (0, 3), (level, 16))
    assert first.end == 24
    assert [(span.start, span.level_nm) for span in more] == ([(27, 0.0)] if again else [])


@pytest.mark.parametrize(
    ("level", "count", "start", "level_nm"),
    [
        (39.0, 3, 11, 10.0),  # 29 N·m beyond what lay 10 N·m up: 2.9 times
        (38.9, 3, 8, 0.0),
        (39.0, 2, 8, 0.0),  # lay still for a quarter of a second
    ],
)
def test_a_lever_put_on_before_is_not_of_the_load(level, count, start, level_nm):
    span, *_ = exactly((0, 8), (10, count), (level, 16))
    assert (span.start, span.level_nm) == (start, level_nm)


@pytest.mark.parametrize(("level", "over"), [(25.0, False), (24.9, True)])
def test_a_load_that_was_there_first_ends_at_a_quarter_of_it(level, over):
    (span,) = exactly((100, 16), (level, 8), begins_loaded=True)
    assert (span.start, span.from_start, span.to_end) == (0 if over else 16, True, not over)


@pytest.mark.parametrize(
    ("rest", "level", "cut"),
    [
        (5, 29.1, False),  # it kept to its first level for more than half a second, and grew to 2.9 times that
        (5, 29.0, True),
        (4, 29.1, True),
    ],
)
def test_a_stream_may_begin_at_rest_after_all(rest, level, cut):
    found = exactly((10, rest), (level, 16), (0, 8), begins_loaded=True)
    assert found[0].from_start is cut


@pytest.mark.parametrize(
    ("after_s", "level", "noise"),
    [
        (0.0625, 0.125, 0.0625 * 2 / 1.128),  # a sixteenth of the way in a sixteenth of a second
        (0.125, 0.25, 0.1 * 2 / 1.128),  # the noise by a tenth at most
        (1.0625, 2.0, 0.1 * 2 / 1.128),  # all of it after more than a second
        (4.0, 2.0, 0.1 * 2 / 1.128),
    ],
)
def test_the_level_at_rest_is_followed_within_a_second(after_s, level, noise):
    """One step of 2 N·m; the mean step of white noise is 1.128 deviations."""
    segmenter = Segmenter(Sensor(capacity_nm=1000.0), 0.0)
    segmenter.push(np.array([0.0, 0.5, 0.5 + after_s]), np.array([0.0, 0.0, 2.0]))
    assert segmenter.level_nm == pytest.approx(level)
    assert segmenter._noise_nm == pytest.approx(noise)


def test_a_noisy_rest_needs_more_for_a_load():
    """Six deviations of the block medians."""
    for level, loads in ((5.9, 0), (6.1, 1)):
        segmenter = Segmenter(Sensor(capacity_nm=1000.0), 0.0, noise_nm=1.0)
        segmenter.push(np.array([0.0, 0.125]), np.array([0.0, level]))
        assert (segmenter.open_since is not None) is bool(loads)
    coarse = Segmenter(Sensor(), 2.0)  # ... or two steps of the reading
    coarse.push(np.array([0.0, 0.125]), np.array([0.0, 4.0]))
    assert coarse.open_since is None
    coarse.push(np.array([0.25]), np.array([5.0]))
    assert coarse.open_since == 2


STRETCHES = [
    ((0, 8), (100, 16), (24.5, 24)),
    ((0, 8), (100, 6), (40, 24)),
    ((0, 8), (100, 5), (40, 24)),
    ((0, 8), (100, 16), (-30, 1), (-80, 15), (0, 8)),
    ((0, 8), (100, 16), (0, 3), (50.5, 16)),
    ((0, 8), (100, 16), (0, 3), (50, 16), (0, 8), (80, 16), (0, 8)),
    ((0, 8), (10, 3), (39, 16), (10, 8)),
    ((0, 8), (10, 8), (-2, 1), (100, 16), (0, 8), (60, 8), (10, 16), (60, 8), (0, 8)),
    ((0, 8), (100, 8), (-20, 1), (-30, 16), (-100, 8), (0, 8), (40, 8), (0, 4)),
]


@pytest.mark.parametrize("stretches", STRETCHES)
@pytest.mark.parametrize("way", [1, -1])
def test_loads_are_the_same_from_another_zero_and_the_other_way(stretches, way):
    """The stretch before and all of it moved by 64 N·m, or turned round."""
    plain = exactly(*stretches)
    moved = exactly(*((64 + way * level, count) for level, count in stretches))
    assert [(s.start, s.end, s.seen, s.to_end, s.reversed, s.height_nm) for s in moved] == [
        (s.start, s.end, s.seen, s.to_end, s.reversed, s.height_nm) for s in plain
    ]
    assert [way * (s.level_nm - 64) for s in moved] == [s.level_nm for s in plain]
    assert [s.upwards is (way > 0) for s in moved] == [s.upwards for s in plain]


@pytest.mark.parametrize(
    ("rings", "start"),
    [
        (((0, 3),), 30),  # three blocks in a row that did not move: it hangs
        (((0, 2),), None),
        (((3, 1), (0, 1), (3, 1)), None),  # each moves by as much as a load begins with
        (((2.9, 1), (0, 1), (2.9, 1)), 30),
        (((10, 1), (0, 1)) * 6, 38),  # rings for a second and a half at most
    ],
)
def test_a_lever_rings_after_a_release_until_it_hangs(rings, start):
    """Let go at the 25th block, over at the 27th; what comes up by 10 N·m when it hangs is a load again."""
    first, *more = exactly((0, 8), (100, 16), (0, 3), *rings, (13, 16))
    assert first.seen == 27
    assert [span.start for span in more][:1] == ([] if start is None else [start])
