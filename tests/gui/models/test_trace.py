"""The growing trace: no peak is lost, however it is thinned."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gui.models.trace import BLOCK, FAN, GrowingTrace, joined


def made(n: int, seed: int = 1) -> tuple[np.ndarray, np.ndarray]:
    rng = np.random.default_rng(seed)
    return np.arange(n) / 1000, rng.normal(size=n).cumsum()


def test_few_samples_are_given_as_they_are() -> None:
    time_s, torque = made(500)
    trace = GrowingTrace(time_s, torque)
    x, y = trace.stretch(0.1, 0.2, 300)
    assert x[0] <= 0.1
    assert x[-1] >= 0.2
    np.testing.assert_array_equal(y, torque[99:202])


@given(
    n=st.integers(3 * BLOCK, 40_000),
    cuts=st.lists(st.integers(1, 5_000), min_size=1, max_size=12),
    columns=st.integers(10, 400),
)
def test_least_and_greatest_survive_any_blocks_and_any_width(n: int, cuts: list[int], columns: int) -> None:
    time_s, torque = made(n, seed=n)
    trace = GrowingTrace()
    at, turn = 0, 0
    while at < n:
        step = cuts[turn % len(cuts)]
        trace.append(time_s[at : at + step], torque[at : at + step])
        at, turn = at + step, turn + 1
    x, y = trace.stretch(time_s[0], time_s[-1], columns)
    assert y.max() == torque.max()
    assert y.min() == torque.min()
    assert len(x) <= 2 * columns + 2
    assert (np.diff(x) >= 0).all()


def test_a_spike_anywhere_in_an_hour_is_seen() -> None:
    n = 3_600_000
    torque = np.zeros(n)
    for at in (0, 777_777, n - 1):
        torque[at] = 50.0
    trace = GrowingTrace(np.arange(n) / 1000, torque)
    _, y = trace.stretch(0, 3600, 1200)
    assert (y == 50.0).sum() == 3
    assert len(y) <= 2402


def test_missing_values_hide_nothing_beside_them() -> None:
    torque = np.ones(BLOCK * FAN * FAN)
    torque[::2] = np.nan
    torque[1001] = 9.0
    trace = GrowingTrace(np.arange(len(torque)) / 100, torque)
    _, y = trace.stretch(0, trace.end_s, 20)
    assert np.nanmax(y) == 9.0
    assert np.isfinite(y).all()


def test_empty_trace_gives_nothing() -> None:
    x, y = GrowingTrace().stretch(0, 10, 100)
    assert len(x) == len(y) == 0


@pytest.mark.parametrize("n", [BLOCK - 1, BLOCK, BLOCK + 1])
def test_edges_of_a_block(n: int) -> None:
    time_s, torque = made(n)
    _, y = GrowingTrace(time_s, torque).stretch(0, 1, 5)
    assert y.max() == torque.max()


@pytest.mark.parametrize(
    ("samples", "wanted", "span"),
    [
        (63, 1000, 1), (64, 1000, 64), (100, 63, 1), (100, 64, 64),
        (4095, 1000, 64), (4096, 511, 64), (4096, 512, 512), (4096, 10_000, 512),
    ],
)  # fmt: skip
def test_the_widest_blocks_that_a_column_holds_are_read(samples: int, wanted: int, span: int) -> None:
    """Blocks of 64, and of 512 from 64 of those on."""
    trace = GrowingTrace(*made(samples))
    found, least, _ = trace._level_for(wanted)
    assert found == span
    assert len(least) == samples // span


def test_the_end_of_a_long_trace_has_its_own_detail() -> None:
    time_s, torque = made(100_000)
    x, y = GrowingTrace(time_s, torque).stretch(time_s[-1000], time_s[-1], 10)
    assert len(x) >= 20
    assert y.max() >= torque[-1000:].max()
    assert x[0] >= time_s[-1000 - BLOCK]


@pytest.mark.parametrize(
    ("steps", "apart"),
    [
        ([0.125] * 9 + [0.625], None),  # five usual ones, exactly
        ([0.125] * 9 + [0.75], [9]),
        ([0.125] * 9 + [0.625, 1.0], [10]),
        ([0.0625] * 9 + [0.5], None),  # half a second, exactly
        ([0.0625] * 9 + [0.5, 0.75], [10]),
        ([0.0] * 20 + [0.25] * 9 + [1.0], None),  # two points at one time are none of the usual steps
        ([0.0] * 20 + [0.25] * 9 + [1.5], [29]),
    ],
)
def test_where_a_line_is_broken(steps: list[float], apart: list[int] | None) -> None:
    found = joined(np.cumsum([0.0, *steps]))
    assert (None if found is None else np.flatnonzero(~found).tolist()) == apart
    assert found is None or found.dtype == bool
