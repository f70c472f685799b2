"""The job card: what it still needs, what it calls its transducer, what belongs to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
import pytest

from gui.models.job import DWELL_S, PULLS_WANTED, JobCard
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.header import Lever, TransducerFacts
from logger.instruments.register import RegisteredTransducer, change_register, put

if TYPE_CHECKING:
    from pathlib import Path

HUB = Lever(fixture="hub centre")


def device(link: str = "serial", **facts: str) -> Description:
    lines = LineFormat(template="{torque}")
    return Description(name="bench", link=link, transducer=TransducerFacts(unit="N·m", **facts), lines=lines)


@pytest.mark.parametrize(
    ("parts", "missing"),
    [
        ({}, ("a transducer", "a fixture")),
        ({"description": device(), "lever": HUB}, ("the port or address of the transducer",)),
        ({"description": device(), "lever": HUB, "address": "COM3"}, ()),
        ({"description": device(identity="COM3"), "lever": HUB}, ()),
        ({"description": device(), "lever": HUB, "practice": True}, ()),
        ({"description": device("virtual"), "lever": HUB}, ()),
        ({"description": device("virtual"), "lever": HUB, "lever_faulty": True}, ("a fixture without faults",)),
        ({"description": device("virtual"), "lever_faulty": True}, ("a fixture without faults",)),
        ({"description": device("virtual"), "lever": Lever(fixture="one stud")}, ("a fixture without faults",)),
        ({"description": device("virtual")}, ("a fixture",)),
    ],
)
def test_what_is_missing_before_a_test(parts: dict[str, object], missing: tuple[str, ...]) -> None:
    card = JobCard()
    card.put(**parts)
    assert card.missing() == missing


@pytest.mark.parametrize(
    ("address", "facts", "identity", "name"),
    [
        ("", {}, "", "bench"), ("COM3", {}, "COM3", "bench"), ("", {"identity": "COM7", "name": "T1"}, "COM7", "T1"),
        ("COM3", {"identity": "COM7"}, "COM3", "bench"),
    ],
)  # fmt: skip
def test_a_recording_names_its_transducer(address: str, facts: dict[str, str], identity: str, name: str) -> None:
    card = JobCard()
    card.put(description=device(**facts), address=address)
    written = card.header("pulls", started=None, zero=None, simulated=False).transducer
    assert (written.identity, written.name, written.unit) == (identity, name, card.unit)
    assert (JobCard().header("pulls", started=None, zero=None, simulated=False).transducer.name) == ""


@pytest.mark.parametrize("facts", [{"serial": "S 1"}, {"name": "T1"}, {"serial": "S 1", "name": "other"}])
def test_a_locked_transducer_is_found_by_its_serial_number_or_its_name(
    facts: dict[str, str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("HELDWHEEL_HOME", str(tmp_path))
    known = RegisteredTransducer(facts=TransducerFacts(serial="S 1", name="T1", unit="N·m"), locked="dropped")
    change_register(lambda found: put(found, known))
    card = JobCard()
    card.put(description=device(**facts))
    assert "locked: dropped" in card.device_advice()
    card.put(description=device(name="another"))
    assert "locked" not in card.device_advice()


def test_another_card_takes_everything_that_is_filled_in_and_nothing_else() -> None:
    first = JobCard()
    assert (first.pulls_wanted, first.dwell_s) == (PULLS_WANTED, DWELL_S) == (5, 15.0)  # common practice, no source
    assert (first.with_drag, first.practice, first.lever_faulty, first.generation) == (False, False, False, 0)
    assert {"changes", "generation"}.isdisjoint(first.parts())
    assert {"job", "lever", "dwell_s", "practice"} <= first.parts().keys()
    assert not any(name.startswith("_") for name in first.parts())
    told = []
    first.changes.listen(lambda: told.append(1))
    other = JobCard()
    other.put(lever=HUB, dwell_s=3.0, job=msgspec.structs.replace(other.job, vehicle="blue"))
    first.swap(other.parts())
    assert (first.lever, first.dwell_s, first.job.vehicle, first.generation, len(told)) == (HUB, 3.0, "blue", 1, 1)
    first.swap({})
    assert (first.lever, first.dwell_s, first.generation, len(told)) == (None, DWELL_S, 2, 2)
