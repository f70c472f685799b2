"""Readings of a dial, typed in: through the same lever, interval and limit as a recording."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, cast

import msgspec

from analysis.verdict.dialled import at_axle_of, dial_of, judge_dialled
from gui.models.caught import together
from gui.models.typed import quantity
from logger.edges.small_file import free_name
from logger.edges.units import parse_number, parse_quantity, torque_factor
from logger.errors import HeldwheelError, InputError
from logger.header import Record, TransducerFacts
from logger.recordings.dialled import ENDING, DialFile, DialReading, write_dialled
from logger.recordings.sidecar import change_sidecar

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from analysis.uncertainty.budget import Budget
    from gui.models.caught import ValueSoFar
    from gui.models.job import JobCard
    from logger.header import Header
    from logger.recordings.dialled import Quantity


class DialDraft(Record, frozen=True):
    """What stands in the fields, as typed: kept like this on the job card, so that a better fixture still applies."""

    reading: str = ""
    unit: str = "N·m"
    quantity: str = "breakaway"
    marks: str = ""
    error_percent: str = ""
    full_scale: str = ""
    at: datetime | None = None  # when it was kept


@dataclass(frozen=True, slots=True)
class DialChecked:
    """What a draft amounts to: a budget once it can be used, what is wrong, what is doubtful."""

    budget: Budget | None
    wrong: str = ""
    doubts: tuple[str, ...] = ()


def check(draft: DialDraft, card: JobCard) -> DialChecked:
    """Work a typed reading out."""
    fixture, problem = card.fixture()
    if fixture is None:
        return DialChecked(None, problem)
    if not draft.reading.strip():
        return DialChecked(None)
    try:
        reading = reading_of(draft, fixture.reads)
        shown, dial = dial_of(reading)
        return DialChecked(at_axle_of(reading, fixture)[draft.quantity], doubts=dial.doubts(shown))
    except HeldwheelError as error:
        return DialChecked(None, str(error))


def sum_up(drafts: Sequence[DialDraft], card: JobCard, quantity: str) -> ValueSoFar | None:
    """Give what readings of one quantity say together, judged as their file will be; those of no use are left out."""
    fixture, _ = card.fixture()
    usable = [draft for draft in drafts if draft.quantity == quantity and check(draft, card).budget is not None]
    if fixture is None or not usable:
        return None
    readings = [reading_of(draft, fixture.reads) for draft in usable]
    return together(judge_dialled("", _header(card), readings), quantity)


def _header(card: JobCard) -> Header:
    return msgspec.structs.replace(card.judged_by("pulls"), transducer=TransducerFacts(name="dial"), second=None)


UNITS = {"force": "N", "mass": "kg"}


def reading_of(draft: DialDraft, reads: str) -> DialReading:
    """Give a kept draft as it is written down: numbers in the dial's own unit.

    Raises:
        HeldwheelError: A number of it cannot be read.
    """
    unit = UNITS.get(reads, draft.unit)
    factor = torque_factor(unit) if reads == "torque" else 1.0

    def own(text: str) -> float | None:
        return round(_quantity(text, reads, draft.unit) / factor, 9) if text.strip() else None

    error = draft.error_percent.replace("%", "")
    return DialReading(
        at=draft.at,
        shown=round(_quantity(draft.reading, reads, draft.unit) / factor, 9),
        unit=unit,
        quantity=cast("Quantity", draft.quantity),
        division=own(draft.marks),
        error_percent=round(parse_number(error), 9) if error.strip() else None,
        full_scale=own(draft.full_scale),
    )


def file_job(card: JobCard, checks: Sequence[str], signed_by: str, folder: Path) -> Path:
    """Write the kept readings of a job card as a signed job among the recordings, and give its file.

    Raises:
        HeldwheelError, OSError: A reading cannot be used, or the file cannot be written.
    """
    fixture, problem = card.fixture()
    if fixture is None:
        raise InputError(problem)
    if not card.dial:
        raise InputError("There is no reading yet: keep one first.")
    if not signed_by.strip():
        raise InputError("Enter who did the test.")
    now = datetime.now().astimezone().replace(microsecond=0)
    first = min((draft.at for draft in card.dial if draft.at is not None), default=now)
    header = _header(card)
    job = msgspec.structs.replace(header.job, operator=signed_by.strip())
    header = msgspec.structs.replace(header, job=job, started=first)
    readings = tuple(reading_of(draft, fixture.reads) for draft in card.dial)
    folder.mkdir(parents=True, exist_ok=True)
    path = free_name(folder, f"{now:%Y%m%d-%H%M%S}", ENDING)
    write_dialled(path, DialFile(header=header, readings=readings, checks=tuple(checks), signed=now))
    change_sidecar(path, lambda found: msgspec.structs.replace(found, signed=now))
    return path


def _quantity(text: str, reads: str, unit: str) -> float:
    if reads == "torque":
        return parse_quantity(text, "torque", unit)
    if reads in {"force", "mass"}:
        return quantity(text, "force" if reads == "force" else "mass")
    raise InputError(f"a dial cannot show a {reads}")
