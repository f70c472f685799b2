"""The register: expiry, locks, the file, the door."""

from datetime import UTC, date, datetime

import pytest

from logger.__main__ import main
from logger.errors import DescriptionError, InputError
from logger.header import TransducerFacts
from logger.instruments.register import (
    Instruments,
    RegisteredTransducer,
    WeightCheck,
    change_register,
    due_warnings,
    find,
    keep_weighing,
    known_facts,
    put,
    read_register,
    register_path,
    remove,
    warnings,
    weighing_words,
)
from logger.instruments.weigh import check_point, dead_weight

TODAY = date(2026, 5, 1)


def facts(**given):
    return TransducerFacts(serial="G-1042", name="workshop transducer", **given)


@pytest.mark.parametrize(
    ("due", "words"),
    [
        (None, "no due date"),
        (date(2026, 4, 30), "EXPIRED 2026-04-30 (1 days ago)"),
        (date(2026, 5, 1), "in 0 days"),
        (date(2026, 5, 31), "in 30 days"),
        (date(2026, 6, 1), ""),
    ],
)
def test_due(due, words):
    told = due_warnings(facts(certificate_due=due), TODAY)
    assert (words in told[0]) if words else not told


def test_a_certificate_from_the_future_is_a_slip():
    told = due_warnings(facts(certificate_date=date(2027, 1, 1), certificate_due=date(2028, 1, 1)), TODAY)
    assert "in the future" in told[0]


def test_locks_and_failed_weighings_are_told():
    failed = WeightCheck(
        at=datetime(2026, 4, 1, tzinfo=UTC), agreement="outside", worst_percent=3, u95_percent=1, loads=2
    )
    instrument = RegisteredTransducer(
        facts=facts(certificate_due=date(2027, 1, 1)), weighings=(failed,), locked="dropped"
    )
    told = warnings(instrument, TODAY)
    assert told[0] == "workshop transducer is locked: dropped"
    assert "2026-04-01" in told[1]


def test_put_replaces_and_remove_removes():
    first = put(Instruments(), RegisteredTransducer(facts=facts()))
    again = put(first, RegisteredTransducer(facts=TransducerFacts(serial="g-1042", name="renamed")))
    assert [i.facts.name for i in again.instruments] == ["renamed"]
    assert find(again, "G-1042") is find(again, "renamed") is again.instruments[0]
    assert find(again, "") is None
    assert not remove(again, "G-1042").instruments
    with pytest.raises(InputError):
        remove(again, "other")
    with pytest.raises(InputError, match="serial number"):
        put(again, RegisteredTransducer(facts=TransducerFacts()))


def test_the_file_goes_round(tmp_path):
    path = tmp_path / "folder" / "instruments.toml"
    assert read_register(path) == Instruments()
    weighed = WeightCheck(
        at=datetime(2026, 4, 1, 9, 30, tzinfo=UTC), agreement="within", worst_percent=0.4, u95_percent=0.3, loads=3
    )
    made = Instruments(instruments=(RegisteredTransducer(facts=facts(certificate_due=TODAY), weighings=(weighed,)),))
    change_register(lambda _: made, path)
    assert read_register(path) == made
    path.write_text('schema = "heldwheel instruments 1"\n[[instruments]]\nowner = 1\n', encoding="utf-8")
    with pytest.raises(DescriptionError):
        read_register(path)


def door(monkeypatch, *words):
    monkeypatch.setattr("sys.argv", ["heldwheel-log", "register", *words])
    return main()


def test_door(monkeypatch, tmp_path, capsys):
    monkeypatch.setenv("HELDWHEEL_HOME", str(tmp_path))
    assert register_path() == tmp_path / "instruments.toml"
    assert door(monkeypatch) == 0
    assert "empty" in capsys.readouterr().out
    given = ("--serial", "G-1", "--name", "gauge", "--due", "2020-01-01", "--capacity", "150lbf·ft", "--accuracy", "1")
    assert door(monkeypatch, "add", *given) == 0
    assert read_register().instruments[0].facts.capacity_nm == pytest.approx(203.37, abs=0.01)
    assert door(monkeypatch, "lock", "G-1", "dropped") == 0
    capsys.readouterr()
    assert door(monkeypatch) == 0
    shown = capsys.readouterr().out
    assert "EXPIRED" in shown
    assert "dropped" in shown
    assert door(monkeypatch, "unlock", "G-1") == 0
    assert not read_register().instruments[0].locked
    assert door(monkeypatch, "remove", "G-1") == 0
    assert door(monkeypatch, "remove", "G-1") == 2
    assert door(monkeypatch, "lock") == 2
    assert door(monkeypatch, "lock", "G-9") == 2


def test_facts_are_completed_and_warned_about(tmp_path):
    path = tmp_path / "instruments.toml"
    kept = facts(
        certificate="2025/7", certificate_due=date(2020, 1, 1), capacity_nm=200.0, accuracy_percent_of_reading=1.0
    )
    change_register(lambda _: Instruments(instruments=(RegisteredTransducer(facts=kept, locked="dropped"),)), path)
    own = TransducerFacts(serial="g-1042", capacity_nm=150.0)
    completed, told = known_facts(own, path)
    assert (completed.capacity_nm, completed.certificate, completed.accuracy_percent_of_reading) == (
        150.0,
        "2025/7",
        1.0,
    )
    assert "locked" in told[0]
    assert "EXPIRED" in told[1]
    unknown, told = known_facts(TransducerFacts(serial="other"), path)
    assert unknown == TransducerFacts(serial="other")
    assert "no due date" in told[0]
    assert known_facts(TransducerFacts(), path)[1]


def test_a_weighing_is_kept_and_told_in_later_recordings(tmp_path):
    path = tmp_path / "instruments.toml"
    load = dead_weight(10, 0.5, gravity=9.81)
    points = [check_point(load, [load.torque_nm * factor], allowed=2.0) for factor in (1.002, 0.995)]
    own = facts(weight_check="once, long ago")
    keep_weighing(points, own, path)
    keep_weighing(points[:1], own, path)
    (instrument,) = read_register(path).instruments
    assert [(one.loads, one.worst_percent) for one in instrument.weighings] == [(2, -0.5), (1, 0.2)]
    completed, _ = known_facts(own, path)
    assert completed.weight_check == weighing_words(instrument.weighings[-1])
    assert "within, 1 load, at worst +0.20 % ±" in completed.weight_check
    with pytest.raises(InputError, match="serial number"):
        keep_weighing(points, TransducerFacts(name="no number"), path)
