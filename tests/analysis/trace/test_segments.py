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
