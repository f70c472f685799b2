"""The cautions: none lost, each with its own key, those that can hurt people gated, chosen by kind of test."""

from __future__ import annotations

import itertools

import pytest

from analysis.cautions import BEFORE_TURNING, CAUTIONS, Fact, Moment, cautions_for, facts_of, gates_for
from logger.header import Conditions, Test

KINDS = [
    Test(place=place, held=held, gear=gear)
    for place, held, gear in itertools.product(
        ("car", "bench", None), ("other side", "case", "none", None), ("neutral", "in gear", None)
    )
]


def keys(test: Test, conditions: Conditions | None = None) -> set[str]:
    return {c.key for c in gates_for(test, conditions)}


def test_every_caution_has_its_own_key_and_words():
    found = [c.key for c in CAUTIONS]
    assert len(set(found)) == len(found)
    assert all(c.text.endswith(".") and len(c.text) > 20 for c in CAUTIONS)
    assert {c.moment for c in CAUTIONS} == set(Moment)
    assert len({c.text for c in CAUTIONS}) == len(CAUTIONS)


# What the trade warns of (common practice, no source): each must stand in some caution, by a word of its own.
@pytest.mark.parametrize(
    ("word", "key"),
    [
        ("start-stop", "engine-off"),
        ("remote start", "engine-off"),
        ("READY", "high-voltage"),
        ("generates voltage", "high-voltage"),
        ("front and rear", "chocks"),
        ("four stands or a lift", "chocks"),
        ("shake it on the stands", "reaction"),
        ("nobody in or under the car", "reaction"),
        ("park no longer holds", "propshaft-off"),
        ("service mode", "brakes-free"),
        ("starter", "in-gear"),
        ("no extension pipe", "rating"),
        ("impact tool", "rating"),
        ("Eye protection", "eyes"),
        ("Keep turning only if the wheel moves", "stop"),
        ("Wheel nuts to the maker's torque", "after-nuts"),
        ("pumped", "after-brakes"),
        ("Chocks away last", "after-chocks"),
        ("points inward reads high", "stud-reads-low"),
    ],
)
def test_what_the_trade_warns_of_is_there(word: str, key: str) -> None:
    assert word in next(c.text for c in CAUTIONS if c.key == key)


def test_gates_are_about_people_and_car_not_about_numbers():
    gates = cautions_for(gates_only=True)
    assert {c.key for c in gates} >= {
        "engine-off",
        "chocks",
        "stands",
        "high-voltage",
        "held",
        "clear",
        "neutral",
        "type",
    }
    assert not any(c.moment is Moment.READING for c in gates)


@pytest.mark.parametrize("test", KINDS, ids=lambda t: f"{t.place}-{t.held}-{t.gear}")
def test_no_kind_of_test_is_asked_to_confirm_what_is_false_for_it(test: Test) -> None:
    asked = keys(test)
    on_bench, in_gear = test.place == "bench", test.gear == "in gear"
    assert not asked & ({"chocks", "stands", "engine-off", "neutral", "brakes-free"} if on_bench else {"clamped"})
    assert len(asked & {"held", "shaft-held", "case-held", "both-free"}) == 1
    if not on_bench:
        assert ("in-gear" in asked) is in_gear
        assert ("neutral" in asked) is not in_gear
    assert {"measures-only", "rating", "eyes", "clear", "stop"} <= asked


def test_what_is_not_stated_is_taken_as_the_usual_test_in_the_car():
    assert facts_of(Test()) == {Fact.CAR, Fact.HELD, Fact.NEUTRAL, Fact.SHAFT_ON}
    assert "propshaft-off" in keys(Test(), Conditions(propshaft_fitted=False))
    assert "propshaft-off" not in keys(Test(), Conditions())


def test_a_wheel_that_is_held_after_the_drag_is_asked_for_again():
    drag, pulls = Test(place="car", held="none"), Test(place="car", held="other side")
    assert keys(pulls) - keys(drag) >= {"held"}
    assert keys(drag) - keys(pulls) == {"both-free"}


def test_order_and_choice():
    assert cautions_for(Moment.LIFTING)[0].key == "engine-off"
    assert cautions_for() == CAUTIONS
    after = [c.key for c in cautions_for(Moment.AFTER, facts=facts_of(Test()))]
    assert after[0] == "after-lever"
    assert after[-1] == "after-chocks"
    assert "after-propshaft" not in after
    assert [c.key for c in cautions_for(Moment.AFTER, facts=facts_of(Test(place="bench")))] == ["after-lever"]


def test_what_turns_a_wheel_outside_a_test_says_it_in_short():
    assert all(word in BEFORE_TURNING for word in ("Engine off", "stands", "chocked"))
