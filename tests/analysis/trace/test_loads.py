"""A load as it is worked with, and what tells it from a lever that hangs."""

from __future__ import annotations

import math

import numpy as np
import pytest

from analysis.trace import loads
from analysis.trace.loads import Load, Window, lands, lies_still, rings_out, stands_out, turned
from analysis.trace.traces import Samples, Sensor

EIGHTH = 0.125


def window(torque, first, last, *, every_s=EIGHTH, resolution_nm=0.0, level_nm=0.0, from_start=False):
    samples = Samples(every_s * np.arange(len(torque)), np.asarray(torque, float), None)
    return Window(samples, first, last, level_nm, from_start, False, False, resolution_nm)


def load(x, every_s=EIGHTH, *, noise=0.01, top=100.0, half=None):
    """Give a load of these readings, all of them above half of it."""
    half = np.arange(len(x)) if half is None else np.array(half)
    return Load(every_s * np.arange(len(x)), np.asarray(x, float), None, 0, len(x), 1, 0.0, noise, 0.01, top, half, 0)


@pytest.mark.parametrize("way", [1, -1])
def test_a_load_is_turned_to_positive(way):
    """From rest at 2 N·m: 40 N·m from there; above half are those beyond 22 N·m."""
    x = np.r_[np.full(16, 2.0), 12.0, 22.0, 22.1, np.full(37, 42.0), 22.1, np.full(8, 2.0)]
    found = turned(window(way * x, 16, 58, level_nm=way * 2.0))
    assert (found.sign, found.level_nm, found.top_nm, found.first, found.last) == (way, 2.0, 42.0, 16, 58)
    assert found.half.tolist() == list(range(18, 57))
    assert found.held_s == 38 * EIGHTH
    assert found.end_s == 58 * EIGHTH
    assert found.interval_s == EIGHTH
    assert found.under_way_s() == 15 * EIGHTH  # the last reading below a quarter: 12 N·m is one
    assert np.array_equal(found.torque_nm, x)


@pytest.mark.parametrize(("count", "is_load"), [(3, False), (4, True)])
def test_fewer_than_four_samples_are_no_load(count, is_load):
    assert (turned(window([0.0] * 8 + [40.0] * count + [0.0] * 4, 8, 8 + count)) is not None) is is_load


def test_a_load_that_was_there_first_counts_from_what_lay_still_after_it():
    """The median over the second half of what came after; from zero where nothing did."""
    x = [40.0] * 16 + [9.0] * 4 + [3.0] * 4
    assert turned(window(x, 0, 16, level_nm=40.0, from_start=True)).level_nm == 3.0
    assert turned(window([40.0] * 16, 0, 16, level_nm=40.0, from_start=True)).level_nm == 0.0
    assert turned(window(x, 0, 16, level_nm=40.0)) is None  # nothing above its level


@pytest.mark.parametrize(
    ("half", "every_s", "rang"),
    [
        ([0, 1, 2, 3], 0.0625, 0),
        ([0, 1, 11, 12, 13], 0.03, 0),  # below it for 0.3 s
        ([0, 1, 8, 9, 10], 0.05, 2),  # 0.35 s: it rang for 0.05 s, then the ramp came
        ([0, 1, 2, 9, 10], 0.05, 3),  # it rang for 0.1 s
        ([0, 1, 2, 3, 10, 11], 0.05, 0),  # longer: a pull
        ([0, 1, 8, 9, 16, 17, 18], 0.05, 4),
        ([0, 1, 3, 4, 12, 13, 14], 0.05, 4),  # two crests
        ([0, 1, 3, 4, 6, 7, 9, 10, 20, 21], 0.05, 8),
        ([0, 1, 3, 4, 6, 7, 9, 10, 12, 20, 21], 0.05, 0),  # for more than half a second
        ([0, 1, 3, 4, 5, 6, 12, 13], 0.05, 0),  # the second crest is too long for one
        ([0, 1, 8, 9], 0.0501, 0),  # readings too far apart to tell
    ],
)
def test_a_lever_that_rang_before_the_ramp(half, every_s, rang):
    assert loads._ringing(np.array(half), every_s) == rang


@pytest.mark.parametrize(
    ("torque", "resolution_nm", "step"),
    [
        ([0, 0, 0.5, 40, 40, 39.75], 0.0, 0.25),
        ([0, 0, 10, 40, 40, 20], 0.0, 1.5),  # a twentieth of its range where no step is known
        ([0, 0, 10, 40, 40, 20], 0.5, 0.5),
        ([0, 0, 0.25, 40, 40, 20], 0.5, 0.25),
    ],
)
def test_the_smallest_step_that_was_seen(torque, resolution_nm, step):
    assert loads._step(window(torque, 2, 6, resolution_nm=resolution_nm), np.array(torque[2:], float)) == step


def test_noise_is_that_of_the_rest_and_of_a_step_at_least():
    """From eight readings of rest on; second differences of ± 1 are 4."""
    shakes = np.resize([1.0, -1.0], 8)
    x = np.r_[shakes, np.linspace(0, 40, 40)]
    wanted = 4 / 0.6745 / math.sqrt(6)
    assert loads._noise(window(x, 8, 48), 0.0) == pytest.approx(wanted)
    assert loads._noise(window(x, 8, 48), 12.0) == pytest.approx(12 / math.sqrt(12))
    assert loads._noise(window(x[1:], 7, 47), 0.0) < 0.1 * wanted  # of fewer, the whole window tells


@pytest.mark.parametrize(
    ("shake", "spread", "noise", "capacity", "still"),
    [
        (0.09, 0.0, 0.0, None, True),  # block to block by less than 0.95 thousandths of 100 N·m
        (0.10, 0.0, 0.0, None, False),
        (0.28, 0.0, 0.1, None, True),  # ... or three times the noise
        (0.29, 0.0, 0.1, None, False),
        (0.0, 1.9, 0.0, None, True),  # two hundredths from end to end
        (0.0, 2.1, 0.0, None, False),
        (0.0, 2.1, 0.4, None, True),  # ... or six times the noise
        (0.0, 0.0, 0.0, 105.0, False),  # beyond 95 hundredths of the capacity
        (0.0, 0.0, 0.0, 106.0, True),
    ],
)
def test_a_lever_lies_still(shake, spread, noise, capacity, still):
    """A hundred readings, each a block; those from the middle to nine tenths tell."""
    x = np.full(100, 100.0)
    x[:50] += np.linspace(-20, 0, 50)
    x[90:] -= 30.0
    x[50:90] += shake * np.resize([0.5, -0.5], 40) + np.where(np.arange(40) < 20, 0.0, spread)
    assert lies_still(load(x, noise=noise, top=100.0), x, 100.0, Sensor(capacity_nm=capacity)) is still


@pytest.mark.parametrize(
    ("late", "every_s", "rings"),
    [(0.39, 0.01, True), (0.41, 0.01, False), (0.39, 0.011, False)],
)
def test_what_rings_is_quieter_by_a_fifth_in_the_end(late, every_s, rings):
    """Steps of ± 1 N·m in the first quarter of its blocks, ± ``late``/2 in the last; readings 0.01 s apart at most."""
    n = 200
    size = np.where(np.arange(n) < n // 2, 1.0, late / 2)
    x = 100 + size * np.resize([1.0, 1.0, -1.0, -1.0], n)
    assert rings_out(load(x, every_s), x) is rings


@pytest.mark.parametrize(("blocks", "told"), [(17, True), (16, False)])
def test_sixteen_steps_show_that_it_rang(blocks, told):
    x = 100 + np.where(np.arange(2 * blocks) < blocks, 5.0, 0.0) * np.resize([1.0, 1.0, -1.0, -1.0], 2 * blocks)
    x = np.r_[x, np.full(math.ceil(2 * blocks / 9), 100.0)]  # the last tenth is let go
    assert rings_out(load(x, 0.01), x) is told


@pytest.mark.parametrize(("top", "out"), [(103.0, False), (103.1, True)])
def test_a_breakaway_stands_out_by_three_hundredths(top, out):
    """The 99th of a hundred in the first half against the middle of the second."""
    x = np.r_[np.full(98, 90.0), top, 200.0, np.full(50, 99.0), np.full(50, 100.0)]
    assert stands_out(load(x), x) is out


@pytest.mark.parametrize(
    ("x", "every_s", "at_once"),
    [
        ([0, 19, 60, 100], 0.01, True),  # from one reading to the next
        ([0, 19, 40, 60, 100], 0.0099, True),  # within 0.02 s
        ([19, 40, 60, 100], 0.01, False),
        ([0, 20, 60, 100], 0.01, False),  # at a fifth the ramp was under way
        ([0, 19, 60, 100], 0.0501, False),
        ([0, 19, 60, 100, 100], 0.05, True),
    ],
)
def test_a_lever_that_is_put_on_is_there_at_once(x, every_s, at_once):
    of = load(x, every_s, half=np.flatnonzero(np.array(x) > 50))
    assert bool(lands(of, np.array(x, float), 100.0)) is at_once
