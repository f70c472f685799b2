"""In gear against neutral, from values put together by hand."""

from __future__ import annotations

import pytest

from analysis.pipeline import Asked
from analysis.rows.gear import judged_ratio, ratio_words, read_halves
from analysis.verdict.limits import Guard, Rule, State, bounds_from
from logger.errors import InputError
from logger.header import Decision, Header, JobFacts, Limit, Test
from tests.analysis.rows.readings import budget, reading, value

GREATEST = "rotating maximum"
RATIO = Limit(quantity=GREATEST, kind="ratio min", unit="1", lower=2.5, source="invented")
TORQUE = Limit(quantity=GREATEST, kind="min", unit="N·m", lower=20.0, source="invented")


def half(nm, *, direction=1, test=None, limit=None, bounds=None, decision=None, vehicle="blue", head=True):
    found = Header(test=test or Test(), job=JobFacts(vehicle=vehicle), limit=limit, decision=decision)
    made = reading(value(GREATEST, nm, 0.0, direction), header=found, bounds=bounds and bounds_from(bounds))
    return made if head else type(made)("bare.csv", True, job=made.job)


@pytest.mark.parametrize(
    ("u", "words"),
    [
        (0.01, "2.512 ± 0.020"),  # 95 %: 1.96 u
        (0.1, "2.51 ± 0.20"),
        (10.0, "3 ± 20"),
        (100.0, "3 ± 196"),
        (1e-6, "2.5123 ± 0.0000"),
        (0.0, "2.51 ± 0.00"),
    ],
)
def test_a_ratio_has_as_many_digits_as_two_of_its_interval(u, words):
    assert ratio_words(budget("in gear ÷ neutral", 2.51234, u)) == words


@pytest.mark.parametrize(("in_gear", "state"), [(30.0, State.WITHIN), (20.0, State.OUTSIDE)])
def test_a_ratio_is_judged(in_gear, state):
    found = judged_ratio(half(in_gear), half(10.0), bounds_from(RATIO))
    assert found.budget.value == in_gear / 10
    assert (found.in_gear.budget.value, found.neutral.budget.value) == (in_gear, 10.0)
    assert (found.result.state, found.doubts) == (state, ())


def test_the_limit_is_what_is_asked_or_what_a_half_names():
    assert judged_ratio(half(30.0), half(10.0)).result is None
    assert judged_ratio(half(30.0, bounds=TORQUE), half(10.0, bounds=TORQUE)).result is None
    for halves in ((half(30.0, bounds=RATIO), half(10.0)), (half(30.0, bounds=TORQUE), half(10.0, bounds=RATIO))):
        assert judged_ratio(*halves).result.state is State.WITHIN
    with pytest.raises(InputError, match="compared with a ratio"):
        judged_ratio(half(30.0), half(10.0), bounds_from(TORQUE))


def test_the_rule_is_that_of_the_half_in_gear():
    own = Decision(rule=Rule.SIMPLE.value, guard=Guard.U95.value)
    assert judged_ratio(half(30.0, decision=own), half(10.0), bounds_from(RATIO)).result.rule is Rule.SIMPLE
    assert judged_ratio(half(30.0), half(10.0, decision=own), bounds_from(RATIO)).result.rule is Rule.THREE_WAY
    asked = judged_ratio(half(30.0, decision=own), half(10.0), bounds_from(RATIO), rule=Rule.THREE_WAY)
    assert asked.result.rule is Rule.THREE_WAY
    assert (
        judged_ratio(half(30.0, head=False), half(10.0, head=False), bounds_from(RATIO)).result.rule is Rule.THREE_WAY
    )


def test_a_half_that_says_it_is_the_other_one_is_refused():
    said = {gear: Test(gear=gear) for gear in ("in gear", "neutral")}
    assert judged_ratio(half(30.0, test=said["in gear"]), half(10.0, test=said["neutral"])).budget.value == 3
    with pytest.raises(InputError, match="as the half 'in gear', but says of itself 'neutral'"):
        judged_ratio(half(30.0, test=said["neutral"]), half(10.0))
    with pytest.raises(InputError, match="as the half 'neutral', but says of itself 'in gear'"):
        judged_ratio(half(30.0), half(10.0, test=said["in gear"]))


FREE = Test(held="none")


@pytest.mark.parametrize(
    ("one", "other", "doubt"),
    [
        ({"test": FREE}, {}, None),
        ({}, {"test": Test(held="case")}, "for both wheels free"),
        ({"test": Test(held="other side")}, {}, "for both wheels free"),
        ({"direction": -1}, {}, "one way in gear and the other way in neutral"),
        ({"vehicle": "red"}, {}, "name another vehicle"),
        ({"test": Test(side="left")}, {"test": Test(side="right")}, "name another side"),
        ({"test": Test(side="left")}, {"test": Test(side="left")}, None),
        ({"limit": RATIO}, {}, None),
        ({"limit": RATIO}, {"limit": TORQUE}, "name another limit"),
    ],
)
def test_what_may_not_belong_together_is_told(one, other, doubt):
    doubts = judged_ratio(half(30.0, **one), half(10.0, **other)).doubts
    assert [doubt in text for text in doubts] == ([] if doubt is None else [True])


def test_one_recording_is_not_both_halves(monkeypatch):
    asked, seen = Asked(limit=RATIO, gear="in gear", both_free="free.csv", held="none"), []

    def read(path, stated):
        seen.append(stated)
        return reading(sha256=path[0])

    monkeypatch.setattr("analysis.pipeline.read_file", read)
    assert [one.sha256 for one in read_halves("a.csv", "b.csv", asked)] == ["a", "b"]
    assert seen == 2 * [Asked(held="none")]
    with pytest.raises(InputError, match=r"a\.csv and a2\.csv are the same recording"):
        read_halves("a.csv", "a2.csv", asked)
