"""Axle ratio by counting, tooth pairs and neighbours."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.identify.ratio import (
    CANDIDATES,
    SOLD_RATIOS,
    TOOTH_PAIRS,
    Case,
    RatioCandidate,
    candidate,
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


def test_sold_ratios_as_printed():
    """Ratios as parts lists print them, in tenths and the hundredths between (from memory)."""
    hundredths = {
        *(200 + n for n in (47, 84, 91)),
        *(300 + n for n in (0, 10, 15, 25, 27, 33, 40, 50, 60, 75, 82, 89)),
        *(400 + n for n in (0, 40, 50, 63, 71, 78, 86)),
        *(500 + n for n in (0, 13, 25, 29, 33, 43, 50, 57, 67, 75, 83)),
        *(600 + n for n in (0, 14, 20, 33, 43, 50, 86)),
    }
    assert [round(100 * one.ratio) for one in SOLD_RATIOS] == sorted(hundredths)
    assert [one.ratio for one in SOLD_RATIOS] == [h / 100 for h in sorted(hundredths)]
    assert len(CANDIDATES) == len(TOOTH_PAIRS) + len(SOLD_RATIOS)


def test_wheels_that_are_not_back_on_their_mark_widen_the_interval():
    """By hand: 2 (N ± e)/(S ∓ f), a tenth of a turn for each wheel that turned."""
    both = read_ratio(37.3, 10, 10, wheel_error_turns=0.1)
    assert (both.low, both.high) == pytest.approx((2 * 37.175 / 20.2, 2 * 37.425 / 19.8))
    once = read_ratio(3.7, 1, 1, wheel_error_turns=0.1)
    assert (once.low, once.high) == pytest.approx((2 * 3.575 / 2.2, 2 * 3.825 / 1.8))
    for wheels in ((0, 10), (10, 0)):
        held = read_ratio(18.5, *wheels, wheel_error_turns=0.1)
        assert (held.low, held.high) == pytest.approx((2 * 18.375 / 10.1, 2 * 18.625 / 9.9))


def test_turns_to_settle_by_hand():
    """n > 2 (2e + i f S/n)/gap: 0.03 apart, e = 1/8, f = 0.04: 26.5 turns with one wheel held, 18.2 with both."""
    listed = candidates_from([3.70, 3.73])
    assert read_ratio(18.5, 10, 0, wheel_error_turns=0.04, candidates=listed).wheel_turns_to_settle == 27
    assert read_ratio(37, 10, 10, wheel_error_turns=0.04, candidates=listed).wheel_turns_to_settle == 19
    # The nearest ratio counts, here 3 of 3 and 4 beside 3.1: 2 (1/4 + 3/2)/1 = 3.5 turns.
    wide = candidates_from([3.0, 4.0])
    assert read_ratio(15.5, 10, 0, wheel_error_turns=0.5, candidates=wide).wheel_turns_to_settle == 4


@pytest.mark.parametrize(("other", "told"), [(3.7004, None), (3.70052, 962), (3.7006, 834)])
def test_ratios_that_print_alike_are_one(other, told):
    """Half a thousandth apart is the same axle; of others it takes 0.5/0.0006 = 833.3 turns, or 0.5/0.00052 = 961.5."""
    reading = read_ratio(18.5, 10, 0, candidates=(RatioCandidate(3.7), RatioCandidate(other)))
    assert reading.wheel_turns_to_settle == told
    assert read_ratio(18.5, 10, 0, candidates=(RatioCandidate(3.7),)).wheel_turns_to_settle is None
    assert read_ratio(18.5, 10, 0, candidates=(RatioCandidate(3.7), RatioCandidate(9.0))).wheel_turns_to_settle == 1


def test_the_limits_of_error_belong_to_the_interval():
    edges = candidates_from([3.575, 3.625])  # of 18 ± 1/8 turns to ten
    reading = read_ratio(18, 10, 0, candidates=edges)
    assert [n.inside for n in reading.neighbours] == [True, True]
    assert not reading.settled
    assert read_ratio(18, 10, 0, candidates=candidates_from([3.575, 3.63])).settled
    assert sorted(n.difference for n in reading.neighbours) == pytest.approx([-0.025, 0.025])
    assert len(read_ratio(18, 10, 0).neighbours) == 5


@pytest.mark.parametrize(
    ("right", "case"),
    [(9.5, Case.TOGETHER), (9.49, Case.BOTH_COUNTED), (10.5, Case.TOGETHER), (10.6, Case.BOTH_COUNTED)],
)
def test_wheels_turned_together_within_a_twentieth(right, case):
    assert read_ratio(37, 10, right).case is case


@pytest.mark.parametrize(
    ("left", "right", "case"),
    [
        (0.5, 1.5, Case.BOTH_COUNTED),
        (-0.5, -1.5, Case.BOTH_COUNTED),
        (0.5, -0.1, Case.BACKWARDS),
        (-1, 3, Case.BACKWARDS),
    ],
)
def test_parts_of_a_turn_are_of_the_case_of_their_signs(left, right, case):
    assert read_ratio(3.7, left, right).case is case


def test_tooth_counts_are_shown_where_both_are_known():
    assert RatioCandidate(41 / 11, 41, 11).teeth == "41/11"
    assert {RatioCandidate(3.7, ring=41).teeth, RatioCandidate(3.7, pinion=11).teeth, RatioCandidate(3.7).teeth} == {""}


def test_tooth_counts_and_their_printed_ratio_are_one_axle():
    """41/11 is 3.72727, printed with four decimals 3.7273."""
    both = (RatioCandidate(41 / 11, 41, 11), RatioCandidate(3.7273))
    assert read_ratio(37.27, 10, 10, candidates=both).settled
    assert not read_ratio(37.27, 10, 10, candidates=(*both, RatioCandidate(3.7275))).settled


@pytest.mark.parametrize("counts", [(0.125, 1, 1), (-0.125, 1, 1), (18, 5, -5)])
def test_counts_no_larger_than_their_error_give_no_ratio(counts):
    with pytest.raises(InputError):
        read_ratio(*counts)
    assert read_ratio(0.13, 1, 1).ratio == 0.13


def test_errors_of_counting_bound_what_can_be_read():
    with pytest.raises(InputError, match="stood still"):
        read_ratio(18, 5, -4, wheel_error_turns=0.5)
    assert read_ratio(18, 5, -4, wheel_error_turns=0.4).ratio == 36
    errors = ("wheel_error_turns", "propshaft_error_turns")
    for wrong in ({name: value} for name in errors for value in (-0.1, float("inf"), float("nan"))):
        with pytest.raises(InputError, match="negative"):
            read_ratio(18, 10, 0, **wrong)
    exact = read_ratio(18, 10, 0, propshaft_error_turns=0.0)
    assert (exact.low, exact.high) == (3.6, 3.6)


@pytest.mark.parametrize(
    ("counts", "formula", "caution"),
    [
        ((18, 10, 0), "i = 2N/n = 2 × 18 / 10 = 3.6 (half", "would mean 1.8; if it turned backwards, more than 3.6."),
        ((37, 10, 10), "i = N/n = 37 / 10 = 3.7", "would mean 7.4."),
        ((36.63, 10, 9.8), "i = 2N/(n_left + n_right) = 2 × 36.63 / (10 + 9.8) = 3.7", "would mean 7.4."),
        ((18, 7, 3), "i = 2N/(n_left + n_right) = 2 × 18 / (7 + 3) = 3.6", "miscount of either wheel"),
        ((-18, 12, -2), "i = 2N/(n_left + n_right) = 2 × 18 / (12 + -2) = 3.6", "miscount of either wheel"),
    ],
)
def test_the_equation_has_the_numbers_in_it(counts, formula, caution):
    reading = read_ratio(*counts)
    assert reading.formula.startswith(formula)
    assert caution in reading.caution


def test_plain_values_of_a_reading():
    said = read_ratio(11, 3, 3, candidates=(RatioCandidate(41 / 11, 41, 11), RatioCandidate(3.6))).to_json()
    assert said["ratio"] == 3.666667
    assert said["interval"] == [3.625, 3.708333]
    assert said["propshaft_turns_per_wheel_turn_held"] == 1.833333
    assert said["neighbours"] == [
        {"ratio": 3.7273, "teeth": "41/11", "difference": 0.0606, "inside": False},
        {"ratio": 3.6, "teeth": None, "difference": -0.0667, "inside": False},
    ]


@pytest.mark.parametrize(("text", "ratio"), [("1", 1.0), (100, 100.0), ("3,73", 3.73), ("41/41", 1.0)])
def test_a_ratio_of_ones_own(text, ratio):
    assert candidate(text).ratio == ratio


@pytest.mark.parametrize("text", ["0.99", "100.5", "41/0", "10/41", "", "nan"])
def test_no_axle_ratio(text):
    with pytest.raises(InputError, match="no axle ratio"):
        candidate(text)
