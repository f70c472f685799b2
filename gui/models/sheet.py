"""What the job's sheet asks for: which record and key, in which words, and how it is typed; by group, needed first."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum
from typing import TYPE_CHECKING

from logger.edges.units import parse_number, parse_quantity
from logger.errors import InputError

if TYPE_CHECKING:
    from gui.models.job import JobCard

LONGEST = 400
"""Characters of a field that are kept: what is longer was pasted by mistake, and would not stand on a page either."""


class EntryKind(StrEnum):
    """How a value is typed."""

    TEXT = "text"
    DAY = "day"
    NUMBER = "number"
    TEMPERATURE = "temperature"
    CHOICE = "choice"


@dataclass(frozen=True, slots=True)
class Entry:
    """One field of the sheet."""

    # record, key: where it is kept on the job card
    record: str
    key: str
    # caption, hint: its name, and an example
    caption: str
    hint: str = ""
    kind: EntryKind = EntryKind.TEXT  # how it is typed
    # of a choice: what is kept, in words; ``yes`` and ``no`` stand for true and false, empty for not stated
    options: Mapping[str, str] = field(default_factory=dict)

    @property
    def name(self) -> tuple[str, str]:
        """Record and key."""
        return self.record, self.key


def _either(record: str, key: str, caption: str, yes: str, no: str) -> Entry:
    return Entry(record, key, caption, kind=EntryKind.CHOICE, options={"": "Not stated", "yes": yes, "no": no})


FIRST = (
    Entry("job", "vehicle", "Vehicle", "blue hill-climb car"),
    Entry("job", "odometer", "Odometer", "as read, 53,214 miles"),
    Entry("job", "number", "Job number"),
    Entry("job", "customer", "Customer"),
    Entry("job", "operator", "Tested by"),
    Entry("conditions", "oil_temperature_c", "Oil temperature", "35 °C", EntryKind.TEMPERATURE),
    Entry("conditions", "fluid", "Oil", "grade"),
    Entry("conditions", "modifier", "Friction modifier", "kind and amount"),
    Entry("job", "notes", "Complaint, remarks", "chatters in slow turns"),
)
"""What a test is known by: always in sight."""

GROUPS: tuple[tuple[str, tuple[Entry, ...]], ...] = (
    (
        "Dates, place and people",
        (
            Entry("job", "received", "Received on", "2026-05-14", EntryKind.DAY),
            Entry("job", "shop", "Workshop", "as on the report"),
            Entry("job", "site", "Done at", "if not in the workshop"),
            Entry("job", "witness", "Witness"),
        ),
    ),
    (
        "How it was held and turned",
        (
            Entry("test", "held_how", "Held by", "strap to the floor"),
            Entry("test", "support", "Car stands on", "two stands under the axle"),
            Entry("conditions", "tyre", "Tyre", "size, pressure, circumference"),
            _either("conditions", "wheel_fitted", "Wheel", "Fitted", "Off"),
            _either("conditions", "brakes_free", "Brakes", "Free", "Not free"),
            _either("conditions", "pads_fitted", "Brake pads", "Fitted", "Out"),
            Entry(
                "conditions",
                "parking_brake",
                "Parking brake",
                kind=EntryKind.CHOICE,
                options={"": "Not stated", "off": "Off", "on": "On"},
            ),
            _either("conditions", "propshaft_fitted", "Propshaft", "Fitted", "Off"),
            Entry("test", "conditioning_turns", "Turned before the pulls", "5", EntryKind.NUMBER),
            Entry("test", "speed_rpm", "Speed, turns a minute", "4", EntryKind.NUMBER),
            Entry("test", "deviations", "Deviations from plan", "one side only"),
        ),
    ),
    (
        "Oil in detail",
        (
            Entry("conditions", "fluid_amount", "Amount", "1.1 l"),
            Entry("conditions", "fluid_age", "Age", "6 months"),
            Entry("conditions", "fluid_appearance", "Appearance", "clear, no glitter"),
            Entry("conditions", "oil_temperature_at", "Temperature taken", "at the drain plug"),
            Entry("conditions", "modifier_percent", "Modifier, % of the fill", "4", EntryKind.NUMBER),
        ),
    ),
    (
        "The axle's history",
        (
            Entry("axle", "as_received", "As received", "dry, no leaks"),
            Entry("axle", "last_service", "Last service", "2025-11, oil"),
            Entry("axle", "friction_material", "Friction material", "sintered"),
            Entry("axle", "teeth", "Teeth counted", "43/11"),
        ),
    ),
)
"""The rest of the sheet, folded until it is wanted."""


def shown(entry: Entry, card: JobCard) -> str:
    """Give what a field shows; for a choice its key."""
    value = getattr(getattr(card, entry.record), entry.key)
    if value is None:
        return ""
    if entry.kind is EntryKind.CHOICE and isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)


def read(entry: Entry, text: str) -> object:
    """Give the value that a text stands for; None, or an empty text, where nothing is typed.

    Raises:
        HeldwheelError: It cannot be read; the text says how to write it.
    """
    text = " ".join(text.split())[:LONGEST]
    if entry.kind is EntryKind.TEXT:
        return text
    if not text:
        return None
    if entry.kind is EntryKind.CHOICE:
        return {"yes": True, "no": False}.get(text, text)
    if entry.kind is EntryKind.TEMPERATURE:
        return parse_quantity(text, "temperature", "°C")
    if entry.kind is EntryKind.NUMBER:
        return parse_number(text)
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise InputError("Write the day as 2026-05-14") from None


def filled(entries: Iterable[Entry], card: JobCard) -> int:
    """Count what is filled in."""
    return sum(bool(shown(entry, card)) for entry in entries)
