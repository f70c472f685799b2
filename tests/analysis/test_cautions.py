"""The cautions: none lost, each with its own key, those that can hurt people gated."""

from __future__ import annotations

from analysis.cautions import CAUTIONS, Moment, cautions_for


def test_every_caution_has_its_own_key_and_words():
    keys = [c.key for c in CAUTIONS]
    assert len(set(keys)) == len(keys) == 32
    assert all(c.text.endswith(".") and len(c.text) > 20 for c in CAUTIONS)
    assert {c.moment for c in CAUTIONS} == set(Moment)


def test_gates_are_about_people_and_car_not_about_numbers():
    gates = cautions_for(gates_only=True)
    assert {c.key for c in gates} >= {"engine-off", "chocks", "stands", "high-voltage", "held", "clear", "neutral"}
    assert not any(c.moment is Moment.READING for c in gates)


def test_order_and_choice():
    assert cautions_for(Moment.LIFTING)[0].key == "engine-off"
    assert cautions_for() == CAUTIONS
    assert len(cautions_for(Moment.LIFTING, Moment.PULLING)) == 5 + 3
