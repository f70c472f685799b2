"""Limits as their sources state them, the four rules, and what may not be compared."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.identify.slips import UNIT_SLIPS, direction_conflict, kind_conflict, slip_against, unit_guard
from analysis.uncertainty.budget import t_factor
from analysis.verdict.limits import (
    Guard,
    Rule,
    State,
    bounds_from,
    decide,
    guard_band,
    not_valid,
    percent,
    probability_within,
)
from logger import header
from logger.edges.units import torque_factor
from logger.errors import DescriptionError, QuantityError
from logger.header import Limit

SOURCE = "workshop manual of the club's demonstration axle"


def _limit(**keys):
    return Limit(**{"quantity": "breakaway", "kind": "min", "unit": "lbf·ft", "source": SOURCE, "lower": 20.0} | keys)


def test_bounds_in_si_with_the_words_of_the_source():
    bounds = bounds_from(_limit(page="4-12"))
    assert bounds.lower == pytest.approx(27.116, abs=5e-4)
    assert bounds.upper is None
    assert bounds.words == "at least 20 lbf·ft"
    assert bounds.source == f"{SOURCE}, p. 4-12"


@pytest.mark.parametrize(
    ("keys", "key", "words"),
    [
        ({"source": " "}, "source", "say where the limit comes from"),
        ({"lower": None}, "lower", "needs it"),
        ({"upper": 30.0}, "upper", "has none"),
        ({"lower": -20.0}, "lower", "positive"),
        ({"lower": math.nan}, "lower", "positive"),
        ({"kind": "band"}, "upper", "needs it"),
        ({"kind": "band", "upper": 15.0}, "upper", "above limit.lower"),
        ({"kind": "max"}, "upper", "needs it"),
        ({"unit": "furlong"}, "unit", "no torque unit"),
    ],
)
def test_faults_of_a_limit(keys, key, words):
    with pytest.raises(DescriptionError) as caught:
        bounds_from(_limit(**keys), file="rear.limit.toml")
    assert any(f"limit.{key}" == fault.where and words in fault.what for fault in caught.value.faults)
    assert str(caught.value).startswith("rear.limit.toml: ")


def test_all_faults_of_a_limit_at_once():
    with pytest.raises(DescriptionError) as caught:
        bounds_from(_limit(source="", unit="stone", lower=None))
    assert len(caught.value.faults) == 3


MIN, MAX, BAND = (
    bounds_from(_limit(unit="N·m", lower=20.0)),
    bounds_from(_limit(unit="N·m", kind="max", lower=None, upper=20.0)),
    bounds_from(_limit(unit="N·m", kind="band", lower=20.0, upper=30.0)),
)
U = 1.0 / 1.959964  # so that U (95 %) is 1.0


@pytest.mark.parametrize(
    ("value", "three", "simple", "accept", "reject"),
    [
        (21.1, "within", "within", "within", "within"),
        (20.5, "too close to call", "within", "outside", "within"),
        (19.5, "too close to call", "outside", "outside", "within"),
        (18.9, "outside", "outside", "outside", "outside"),
    ],
)
def test_four_rules_at_a_minimum(value, three, simple, accept, reject):
    states = [str(decide(value, U, MIN, rule=rule).state) for rule in (Rule.THREE_WAY, Rule.SIMPLE)]
    states += [str(decide(value, U, MIN, rule=rule).state) for rule in (Rule.ACCEPTANCE, Rule.REJECTION)]
    assert states == [three, simple, accept, reject]


@given(value=st.floats(10, 40), u=st.floats(0.01, 5), rule=st.sampled_from(Rule))
def test_a_maximum_is_a_minimum_seen_in_a_mirror(value, u, rule):
    least, most = decide(value, u, MIN, rule=rule), decide(40.0 - value, u, MAX, rule=rule)
    if abs(abs(value - 20.0) - guard_band(u)) > 1e-9 and abs(value - 20.0) > 1e-9:
        assert least.state is most.state
    assert least.probability == pytest.approx(most.probability, abs=1e-12)


@given(value=st.floats(5, 45), u=st.floats(0.01, 3))
def test_three_way_is_within_only_if_all_other_rules_are(value, u):
    for bounds in (MIN, MAX, BAND):
        three, others = decide(value, u, bounds).state, [decide(value, u, bounds, rule=r).state for r in Rule]
        if three is State.WITHIN:
            assert set(others) == {State.WITHIN}
        if three is State.OUTSIDE:
            assert set(others) == {State.OUTSIDE}


def test_interval_wider_than_the_band_is_said():
    result = decide(25.0, 4.0, BAND)
    assert result.state is State.TOO_CLOSE
    assert any("wider than the limit's band" in note for note in result.notes)


def test_few_degrees_of_freedom_widen_the_guard():
    assert guard_band(1.0, 2) == pytest.approx(4.303, abs=5e-4)
    assert decide(22.0, 1.0, MIN, dof=2).state is State.TOO_CLOSE
    assert decide(22.0, 1.0, MIN).state is State.WITHIN
    assert decide(22.0, 1.0, MIN, dof=2).u95 == pytest.approx(t_factor(2))


def test_one_sided_guard_is_narrower_and_named():
    assert decide(20.9, U, MIN, guard=Guard.ONE_SIDED).state is State.WITHIN
    assert "w = 1.645 u" in decide(20.9, U, MIN, guard=Guard.ONE_SIDED).words


def test_rule_source_and_probability_stand_in_the_words():
    words = decide(25.0, U, MIN).words
    for part in ("●", "within", "at least 20 N·m", SOURCE, "three-way", "w = U (95 %)", "> 99.9 %"):
        assert part in words


def test_exact_value():
    assert decide(20.0, 0.0, MIN).state is State.WITHIN
    assert decide(20.0, 0.0, MIN).probability == 1.0
    assert decide(19.999, 0.0, MIN).state is State.OUTSIDE


@pytest.mark.parametrize(("value", "u"), [(math.nan, 1.0), (1.0, math.nan), (1.0, -1.0), (math.inf, 1.0)])
def test_nothing_to_decide(value, u):
    with pytest.raises(ValueError, match="nothing to decide"):
        decide(value, u, MIN)


def test_not_valid_keeps_its_reasons():
    result = not_valid(MIN, "jerked")
    assert result.state is State.NOT_VALID
    assert result.to_json()["value"] is None
    assert result.notes == ("jerked",)
    assert "▲ not valid" in result.words


@given(value=st.floats(-50, 50), u=st.floats(1e-3, 10), dof=st.sampled_from([1, 3, 10, math.inf]))
def test_probability_is_one(value, u, dof):
    inside = probability_within(value, u, -5.0, 7.0, dof)
    below, above = probability_within(value, u, None, -5.0, dof), probability_within(value, u, 7.0, None, dof)
    assert 0 <= inside <= 1
    assert inside + below + above == pytest.approx(1.0, abs=1e-9)


def test_percent_claims_no_certainty():
    assert (percent(1.0), percent(0.0), percent(0.9773)) == ("> 99.9 %", "< 0.1 %", "97.7 %")


@pytest.mark.published("Helical check in a service manual (2004)", rows=("2.12",), status="READ-P")
@pytest.mark.parametrize(("value", "nm"), [(0.8, 7.8), (0.3, 2.9)])
def test_misprinted_unit_is_caught(value, nm):
    """Two numbers printed side by side that differ by a hundred: the unit is a misprint; as kgf·m they agree."""
    assert any("kgf·cm against kgf·m" in text for text in unit_guard(value, "kgf·cm", nm))
    assert unit_guard(value, "kgf·m", nm) == ()


@pytest.mark.parametrize(
    ("value", "unit", "limit_nm", "words"),
    [
        (20, "lbf·in", 27.1, "lbf·in against lbf·ft"),
        (27.1, "lbf·ft", 27.1, "N·m against lbf·ft"),
        (2.77, "N·m", 27.1, "N·m against kgf·m"),
        (20, "kgf·m", 27.1, "kgf·m against lbf·ft"),
    ],
)
def test_slips_of_the_unit(value, unit, limit_nm, words):
    assert any(words in text for text in unit_guard(value, unit, limit_nm))


def test_no_slip_no_word():
    assert unit_guard(20, "lbf·ft", 27.1) == ()
    assert unit_guard(20, "lbf·ft") == ()


@pytest.mark.parametrize(
    ("keys", "quantity", "measured", "said"),
    [
        ({"unit": "lbf·in"}, "breakaway", 27.1, True),
        ({"unit": "lbf·in"}, "rotating mean", 27.1, False),
        ({"unit": "N·m"}, "breakaway", 27.1, False),
        ({"unit": "kgf·m"}, "breakaway", 27.1, True),
        ({"kind": "ratio min", "unit": "1"}, "breakaway", 200.0, False),
    ],
)
def test_limit_and_measured_torque_that_differ_as_units_do(keys, quantity, measured, said):
    """A pack may well turn at 1.36 times its limit: only large slips are doubted."""
    assert bool(slip_against(_limit(**keys), quantity, measured)) is said


def test_unlikely_size_suggests_units():
    assert "lbf·ft" in unit_guard(15, "lbf·in")[0]
    assert unit_guard(15, "lbf·in")[0].startswith("15 lbf·in is 1.69 N·m, unusual")
    with pytest.raises(QuantityError):
        unit_guard(1, "parsec")


@pytest.mark.parametrize(
    ("limit", "test", "refused", "words"),
    [
        ({"held": "other side"}, {"held": "case"}, True, "factor of two"),
        ({"held": "other side"}, {"held": "other side", "gear": "in gear"}, True, "factor of two"),
        ({"held": "case"}, {"held": "other side"}, True, "factor of two"),
        ({"held": "other side"}, {"held": "none"}, True, "neither held"),
        ({"held": "other side"}, {}, False, "the test does not say"),
        ({}, {"held": "case"}, False, "the limit does not say"),
        ({"kind": "ratio min", "unit": "1"}, {"held": "other side"}, False, "is for both wheels free"),
        ({"held": "case", "place": "bench"}, {"held": "case", "place": "car"}, False, "made on the car"),
    ],
)
def test_kinds_of_test(limit, test, refused, words):
    conflict = kind_conflict(_limit(**limit), header.Test(**test))
    assert conflict is not None
    assert conflict.refused is refused
    assert words in conflict.text


@pytest.mark.parametrize(
    ("limit", "test"),
    [({}, {}), ({"held": "other side"}, {"held": "other side"}), ({"held": "case"}, {"gear": "in gear"})],
)
def test_kinds_that_agree(limit, test):
    assert kind_conflict(_limit(**limit), header.Test(**test)) is None


@pytest.mark.parametrize(
    ("words", "one", "other"),
    [
        ("lbf·in against lbf·ft", "lbf·ft", "lbf·in"),
        ("N·m against lbf·ft", "lbf·ft", "N·m"),
        ("N·m against kgf·m", "kgf·m", "N·m"),
        ("kgf·cm against kgf·m", "kgf·m", "kgf·cm"),
        ("kgf·m against lbf·ft", "kgf·m", "lbf·ft"),
        ("N·m against lbf·in", "N·m", "lbf·in"),
    ],
)
def test_factors_of_a_slip_are_those_of_the_units(words, one, other):
    assert {said: factor for factor, said in UNIT_SLIPS.items()}[words] == pytest.approx(
        torque_factor(one) / torque_factor(other), rel=1e-6
    )


@pytest.mark.parametrize(("times", "said"), [(1.029, True), (0.971, True), (1.031, False), (0.969, False)])
def test_a_slip_is_told_within_three_per_cent(times, said):
    """Pairs in print are rounded to two digits: common practice, no source."""
    assert bool(unit_guard(100 * times, "N·m", 1.0)) is said


@pytest.mark.parametrize(("nm", "said"), [(2.5, False), (2.49, True), (540.0, False), (541.0, True)])
def test_torques_that_are_likely_for_this_test(nm, said):
    """Half of the smallest printed limit to twice the largest: common practice, no source."""
    found = unit_guard(nm, "N·m")
    assert bool(found) is said
    assert not said or "unusual for this test; is it" in found[0]


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (0.0, "N·m", "0 N·m is zero, which"),
        (-3.0, "N·m", "-3 N·m is below zero, which"),
        (-3.0, "lbf·ft", "-3 lbf·ft is -4.07 N·m is below zero, which"),
        (9e9, "N·m", "9e+09 N·m is unusual for this test: look"),
        (0.1, "N·m", "0.1 N·m is unusual for this test: look"),
        (25.0, "kgf·cm", "25 kgf·cm is 2.45 N·m, unusual for this test; is it N·m or lbf·ft or lbf·in or kgf·m?"),
    ],
)
def test_what_is_no_torque_in_any_unit(value, unit, text):
    assert unit_guard(value, unit)[0].startswith(text)


@pytest.mark.parametrize(("value", "unit"), [(2.5, "kgf·cm"), (540.0, "lbf·ft")])
def test_a_unit_that_would_just_be_likely_is_named(value, unit):
    """2.5 kgf·cm are 0.245 N·m, 540 lbf·ft are 732 N·m: as newton metres both lie at an end of what is likely."""
    assert "is it N·m" in unit_guard(value, unit)[0]


@pytest.mark.parametrize("measured", [0.0, -5.0])
def test_nothing_is_compared_with_what_is_no_torque(measured):
    assert unit_guard(10.0, "N·m", measured) == ()
    assert unit_guard(-measured, "N·m", 10.0) == () or measured < 0
    assert slip_against(_limit(), "breakaway", measured) == ()


def test_which_of_the_two_is_larger():
    assert "12 times 10 N·m" in unit_guard(120.0, "N·m", 10.0)[0]
    assert "1/12 of 120 N·m" in unit_guard(10.0, "N·m", 120.0)[0]


@pytest.mark.parametrize(("directions", "said"), [([1], False), ([-1, 1], False), ([-1, -1], True), ([], False)])
def test_every_pull_against_the_card(directions, said):
    found = direction_conflict(header.Test(direction="clockwise"), directions)
    assert bool(found) is said
    assert not said or found[0].startswith("all pulls read anticlockwise, the card says clockwise")
    assert direction_conflict(header.Test(), [-1]) == ()


@pytest.mark.parametrize(("upper", "right"), [(30.0, False), (30.5, True)])
def test_a_band_has_a_width(upper, right):
    band = _limit(kind="band", unit="N·m", lower=30.0, upper=upper)
    if right:
        assert bounds_from(band).torques == (30.0, upper)
        return
    with pytest.raises(DescriptionError, match=r"must lie above limit\.lower"):
        bounds_from(band)
