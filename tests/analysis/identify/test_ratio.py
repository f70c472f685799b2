"""Axle ratio by counting, tooth pairs and neighbours."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.identify.ratio import (
    CANDIDATES,
    TOOTH_PAIRS,
    Case,
    RatioCandidate,
    candidates_from,
    read_candidates,
    read_ratio,
)
from logger.errors import HeldwheelError, InputError


def test_half_count():
    # Common practice, no source: ten turns of one wheel, the other held, and 18 of the propshaft mean 3.60.
    reading = read_ratio(18, 10, 0)
    assert reading.ratio == 3.6
    assert reading.case is Case.HELD
    assert (reading.low, reading.high) == pytest.approx((3.575, 3.625))  # an eighth of a turn in ten: ± 0.025
    assert reading.settled
    assert reading.neighbours[0].candidate.ratio == pytest.approx(3.6)
    assert "half count" in reading.formula
    assert "1.8" in reading.caution


def test_both_together():
    reading = read_ratio(37.3, 10, 10)
    assert reading.case is Case.TOGETHER
    assert reading.ratio == pytest.approx(3.73)
    assert (reading.low, reading.high) == pytest.approx((3.7175, 3.7425))  # ± 0.0125
    assert reading.neighbours[0].candidate.teeth == "41/11"


def test_eighth_of_a_turn_in_ten_barely_splits_370_and_373():
    held = read_ratio(18.57, 10, 0, candidates=candidates_from([3.70, 3.73]))
    assert not held.settled
    assert held.wheel_turns_to_settle == 17
    assert read_ratio(18.57 * 1.7, 17, 0, candidates=candidates_from([3.70, 3.73])).settled


def test_wheel_that_turned_backwards_counts_negative():
    # The general law: the carrier turns at the mean of the wheels.
    reading = read_ratio(18, 12, -2)
    assert reading.case is Case.BACKWARDS
    assert reading.ratio == pytest.approx(3.6)


def test_both_counted_apart():
    reading = read_ratio(18, 7, 3)
    assert reading.case is Case.BOTH_COUNTED
    assert reading.ratio == pytest.approx(3.6)


def test_a_little_over_three_turns_together_points_to_308():
    # Common practice, no source.
    listed = candidates_from([3.08, 3.27, 3.50])
    reading = read_ratio(3.1, 1, 1, candidates=listed)
    assert [n.candidate.ratio for n in reading.neighbours] == [3.08, 3.27, 3.50]
    assert reading.settled
    assert reading.wheel_turns_to_settle == 2


@given(
    ratio=st.sampled_from(TOOTH_PAIRS),
    left=st.integers(-40, 40),
    right=st.integers(-40, 40),
    error=st.floats(-0.125, 0.125),
)
def test_truth_lies_inside(ratio, left, right, error):
    turns = abs(ratio.ratio * (left + right) / 2)
    if turns + error <= 0.125:
        return
    reading = read_ratio(turns + error, left, right)
    assert reading.low - 1e-12 <= ratio.ratio <= reading.high + 1e-12


@given(turns=st.floats(1, 500), left=st.integers(1, 60), right=st.integers(0, 60))
def test_turns_to_settle_settle(turns, left, right):
    reading = read_ratio(turns, left, right)
    if reading.wheel_turns_to_settle is None:
        return
    best = reading.neighbours[0].candidate.ratio
    n = reading.wheel_turns_to_settle
    other = n if reading.case is not Case.HELD else 0
    again = read_ratio(best * (n + other) / 2, n, other)
    inside = {round(c.ratio, 4) for c in CANDIDATES if again.low <= c.ratio <= again.high}
    assert inside == {round(best, 4)}


@pytest.mark.parametrize(
    ("pair", "printed"), [((41, 10), 4.10), ((41, 12), 3.42), ((40, 13), 3.08), ((41, 11), 3.73), ((37, 10), 3.70)]
)
def test_tooth_pairs_as_printed(pair, printed):
    # Common practice, no source: ratios as parts lists print them.
    ring, pinion = pair
    assert any((c.ring, c.pinion) == pair for c in TOOTH_PAIRS)
    assert round(ring / pinion, 2) == printed


@pytest.mark.parametrize(
    ("counts", "hint"),
    [
        ((18, 10, -10), "Hold one wheel"),
        ((0, 10, 0), "counting error"),
        ((float("nan"), 1, 1), "must be a number"),
        ((0.1, 10, 10), "counting error"),
    ],
)
def test_raises(counts, hint):
    with pytest.raises(InputError, match=hint):
        read_ratio(*counts)


def test_own_list(tmp_path):
    path = tmp_path / "mine.toml"
    path.write_text('ratios = ["41/11", 3.55]\n', encoding="utf-8")
    assert read_candidates(path) == (RatioCandidate(3.55), RatioCandidate(41 / 11, 41, 11))
    path.write_text("ratio = [3.55]\n", encoding="utf-8")
    with pytest.raises(HeldwheelError, match="mine"):
        read_candidates(path)
    path.write_text('ratios = ["11 to 41"]\n', encoding="utf-8")
    with pytest.raises(InputError, match="ring/pinion"):
        read_candidates(path)


def test_every_tooth_pair_gives_a_ratio_that_is_sold():
    """Ratios as parts lists print them, to two or three figures (from memory)."""
    printed = [4.10, 3.42, 3.08, 3.73, 3.70, 2.73, 2.92, 3.07, 3.08, 3.21, 3.23, 3.46, 3.55, 3.64, 3.90]
    printed += [3.91, 4.11, 4.30, 4.33, 4.44, 4.56, 4.89]
    assert [pair.ratio for pair in TOOTH_PAIRS] == pytest.approx(printed, abs=0.006)
