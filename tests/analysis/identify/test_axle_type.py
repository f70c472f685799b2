"""Type recognition: it must stop where the torque would mean nothing."""

from __future__ import annotations

import itertools

import pytest

from analysis.identify.axle_type import JUDGED, QUESTIONS, Type, named, recognise, type_conflict, types_of
from logger.errors import InputError
from logger.header import Axle, Conditions, Limit

# Common practice, no source: what each type does.
BEHAVIOUR = {
    Type.OPEN: {"both-up": "opposite", "one-held": "free", "in-gear": "free"},
    Type.PLATE: {"both-up": "same", "one-held": "even", "in-gear": "much"},
    Type.GEAR: {"both-up": "opposite", "one-held": "low", "in-gear": "much"},
    Type.VISCOUS: {"both-up": "same", "one-held": "speed"},
    Type.LOCKER: {"both-up": "locked", "one-held": "one-way"},
    Type.GOVERNOR: {"both-up": "opposite", "one-held": "low", "in-gear": "free"},
    Type.SOLID: {"both-up": "locked", "one-held": "locked"},
}


@pytest.mark.parametrize("kind", BEHAVIOUR)
def test_typical_behaviour(kind):
    reading = recognise({"brakes": "free", **BEHAVIOUR[kind]})
    assert kind in reading.candidates
    assert reading.judged is (kind is Type.PLATE)


def test_plate_is_judged_only_with_free_brakes():
    seen = BEHAVIOUR[Type.PLATE]
    assert recognise({"brakes": "free", **seen}).judged
    for brakes in ({"brakes": "drag"}, {"brakes": "unknown"}, {}):
        reading = recognise({**brakes, **seen})
        assert not reading.judged
        assert "brake" in reading.text


def test_easy_turning_wheel_is_not_judged():
    reading = recognise({"brakes": "free", "one-held": "free"})
    assert not reading.judged
    assert Type.OPEN in reading.candidates
    assert not set(reading.candidates) & JUDGED


def test_nothing_tried_says_what_to_try():
    reading = recognise({"brakes": "free"})
    assert set(reading.candidates) == set(Type)
    assert not reading.judged
    assert "both-up" in reading.text


def test_contradiction():
    reading = recognise({"brakes": "free", "both-up": "opposite", "one-held": "locked"})
    assert reading.candidates == ()
    assert not reading.judged


def test_slack_is_lash():
    reading = recognise({"brakes": "free", "one-held": "even", "slack": "much"})
    assert any("lash" in caution for caution in reading.cautions)


def test_judged_never_with_another_type_left():
    for answers in itertools.product(*(question.answers for question in QUESTIONS)):
        reading = recognise(dict(zip((q.key for q in QUESTIONS), answers, strict=True)))
        if reading.judged:
            assert set(reading.candidates) <= JUDGED
            assert reading.candidates
        for kind in Type:
            assert (kind in reading.candidates) is (kind not in reading.excluded)


@pytest.mark.parametrize("seen", [{"both": "same"}, {"both-up": "sideways"}])
def test_raises(seen):
    with pytest.raises(InputError):
        recognise(seen)


@pytest.mark.parametrize("kinds", [(Type.PLATE,), (Type.PLATE, Type.CONE, Type.RAMP), (Type.GEAR, Type.VISCOUS)])
def test_a_finding_is_written_and_read_back(kinds):
    assert types_of(named(kinds)) == frozenset(kinds)


@pytest.mark.parametrize("text", ["", "plates", "clutch plate, rebuilt", "clutch plate / of my own"])
def test_words_of_ones_own_are_no_type(text):
    assert types_of(text) == frozenset()
    assert type_conflict(Axle(type=text), Conditions()) is None


@pytest.mark.parametrize("kind", Type)
def test_conflict_of_every_type(kind):
    conflict = type_conflict(Axle(type=kind.value), Conditions())
    assert (conflict is None) is (kind in JUDGED)
    if conflict is not None:
        assert conflict.refused
        assert kind.value in conflict.text
        lifted = type_conflict(Axle(type=kind.value, type_reason="for the club's own notes"), Conditions())
        assert not lifted.refused
        assert "for the club's own notes" in lifted.text


def test_a_geared_unit_is_judged_by_its_ratio():
    ratio = Limit(quantity="rotating maximum", kind="ratio min", unit="1", lower=2.5, source="manual")
    assert type_conflict(Axle(type="helical or worm gear"), Conditions(), ratio) is None
    assert type_conflict(Axle(type="open"), Conditions(), ratio).refused
    assert type_conflict(Axle(type="clutch plate"), Conditions(), ratio) is None


def test_conflict_of_a_type_that_is_not_settled():
    conflict = type_conflict(Axle(type=named([Type.PLATE, Type.GOVERNOR])), Conditions())
    assert conflict.refused
    assert "governor" in conflict.text
    assert type_conflict(Axle(type=named([Type.PLATE, Type.CONE])), Conditions()) is None


def test_a_brake_that_drags_is_told():
    conflict = type_conflict(Axle(type="cone"), Conditions(brakes_free=False))
    assert not conflict.refused
    assert "brake" in conflict.text
    assert type_conflict(Axle(type="cone"), Conditions(brakes_free=True)) is None


def test_a_type_that_what_was_seen_speaks_against_is_told():
    seen = {"brakes": "free", "both-up": "opposite", "one-held": "free"}
    conflict = type_conflict(Axle(type="clutch plate", seen=seen), Conditions())
    assert not conflict.refused
    assert "both wheels up: it turns the other way" in conflict.text
    assert type_conflict(Axle(type="clutch plate", seen={"both-up": "same"}), Conditions()) is None
    assert type_conflict(Axle(type="clutch plate", seen={"of my own": "words"}), Conditions()) is None
