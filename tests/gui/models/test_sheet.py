"""The job's sheet without a window: every field goes to its record and comes back, and what cannot be read says so."""

from __future__ import annotations

from datetime import date
from typing import get_type_hints

import msgspec
import pytest

from gui.models.job import JobCard
from gui.models.sheet import FIRST, GROUPS, LONGEST, Entry, EntryKind, filled, read, shown
from logger.errors import HeldwheelError
from logger.header import Header, Photo

ENTRIES = (*FIRST, *(entry for _, group in GROUPS for entry in group))
TYPED = {
    EntryKind.TEXT: "  two  words ",
    EntryKind.DAY: "2026-05-14",
    EntryKind.NUMBER: "4.5",
    EntryKind.TEMPERATURE: "68 °F",
}
HELD = {
    EntryKind.TEXT: "two words",
    EntryKind.DAY: date(2026, 5, 14),
    EntryKind.NUMBER: 4.5,
    EntryKind.TEMPERATURE: pytest.approx(20.0),
}


def put(card: JobCard, entry: Entry, text: str) -> None:
    record = msgspec.structs.replace(getattr(card, entry.record), **{entry.key: read(entry, text)})
    card.put(**{entry.record: record})


def test_every_field_has_a_key_of_its_own():
    assert len({entry.name for entry in ENTRIES}) == len(ENTRIES)
    for entry in ENTRIES:
        hints = get_type_hints(type(getattr(JobCard(), entry.record)))
        assert entry.key in hints
        assert entry.caption


@pytest.mark.parametrize("entry", [e for e in ENTRIES if e.kind is not EntryKind.CHOICE], ids=lambda e: e.key)
def test_typed_kept_and_shown(entry):
    card = JobCard()
    assert shown(entry, card) == ""
    put(card, entry, TYPED[entry.kind])
    assert getattr(getattr(card, entry.record), entry.key) == HELD[entry.kind]
    put(card, entry, shown(entry, card))
    assert getattr(getattr(card, entry.record), entry.key) == HELD[entry.kind]
    assert filled(ENTRIES, card) == 1
    put(card, entry, " ")
    assert filled(ENTRIES, card) == 0


@pytest.mark.parametrize("entry", [e for e in ENTRIES if e.kind is EntryKind.CHOICE], ids=lambda e: e.key)
def test_choices(entry):
    card = JobCard()
    for key in entry.options:
        put(card, entry, key)
        assert shown(entry, card) == key
    assert "" in entry.options, "what is not known must be sayable"


@pytest.mark.parametrize("text", ["14 May", "2026-13-40", "yesterday", "14/05/2026"])
def test_days_that_are_none(text):
    with pytest.raises(HeldwheelError, match="2026-05-14"):
        read(Entry("job", "received", "", kind=EntryKind.DAY), text)


def test_numbers_that_are_none():
    with pytest.raises(HeldwheelError):
        read(Entry("test", "speed_rpm", "", kind=EntryKind.NUMBER), "fast")


def test_a_pasted_novel_is_cut():
    assert len(read(FIRST[0], "x" * 10_000)) == LONGEST


def test_the_sheet_and_its_photos_go_into_the_recording():
    card = JobCard()
    for entry in ENTRIES:
        put(card, entry, TYPED.get(entry.kind) or list(entry.options)[1])
    card.put(photos=(Photo(file="a.jpg", sha256="ab" * 32),))
    header = card.header("pulls", started=None, zero=None, simulated=False)
    for record in ("job", "axle", "conditions"):
        assert getattr(header, record) == getattr(card, record)
    assert header.test.support == "two words"
    assert header.photos == card.photos
    assert isinstance(header, Header)
