"""Readings of a dial, typed in: through the same lever, interval and limit as a recording."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, cast

import msgspec

from analysis.to_axle.dial import Dial, dial_reading
from analysis.verdict.limits import decide, decided_by, rule_words
from analysis.verdict.repeats import job_value
from gui.models.caught import JobValue, Value
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
    from analysis.verdict.limits import Bounds
    from gui.models.job import JobCard
    from logger.header import Decision
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
        dial = _dial(draft, fixture.reads)
        shown = _quantity(draft.reading, fixture.reads, draft.unit)
        return DialChecked(dial_reading(shown, dial, fixture, quantity=draft.quantity), doubts=dial.doubts(shown))
    except HeldwheelError as error:
        return DialChecked(None, str(error))


def sum_up(budgets: Sequence[Budget], bounds: Bounds | None, decision: Decision | None = None) -> JobValue | None:
    """Give the value of several readings of one quantity, judged where the limit names that quantity."""
    if not budgets:
        return None
    repeats = job_value(list(budgets))
    value = Value(repeats.budget.value, repeats.budget.u95)
    if bounds is None or bounds.quantity != budgets[0].quantity:
        return JobValue(budgets[0].quantity, value, len(budgets), notes=repeats.notes)
    rule, guard = decided_by(decision)
    result = decide(repeats.budget.value, repeats.budget.u, bounds, dof=repeats.budget.dof, rule=rule, guard=guard)
    notes = (*repeats.notes, *result.notes)
    return JobValue(budgets[0].quantity, value, len(budgets), str(result.state), rule_words(rule, guard), notes)


UNITS = {"force": "N", "mass": "kg"}


def reading_of(draft: DialDraft, reads: str) -> DialReading:
    """Give a kept draft as it is written down: numbers in the dial's own unit.

    Raises
    ------
    HeldwheelError
        A number of it cannot be read.
    """
    dial = _dial(draft, reads)
    unit = UNITS.get(reads, draft.unit)
    factor = torque_factor(unit) if reads == "torque" else 1.0

    def own(value: float | None) -> float | None:
        return None if value is None else round(value / factor, 9)

    return DialReading(
        at=draft.at,
        shown=round(_quantity(draft.reading, reads, draft.unit) / factor, 9),
        unit=unit,
        quantity=cast("Quantity", draft.quantity),
        division=own(dial.marks),
        error_percent=None if dial.limit_of_error is None else round(100 * dial.limit_of_error, 9),
        full_scale=own(dial.full_scale),
    )


def file_job(card: JobCard, checks: Sequence[str], signed_by: str, folder: Path) -> Path:
    """Write the kept readings of a job card as a signed job among the recordings, and give its file.

    Raises
    ------
    HeldwheelError, OSError
        A reading cannot be used, or the file cannot be written.
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
    header = card.header("pulls", started=first, zero=None, simulated=False)
    header = msgspec.structs.replace(
        header,
        job=msgspec.structs.replace(header.job, operator=signed_by.strip()),
        transducer=TransducerFacts(name="dial"),
        second=None,
    )
    readings = tuple(reading_of(draft, fixture.reads) for draft in card.dial)
    folder.mkdir(parents=True, exist_ok=True)
    path = free_name(folder, f"{now:%Y%m%d-%H%M%S}", ENDING)
    write_dialled(path, DialFile(header=header, readings=readings, checks=tuple(checks), signed=now))
    change_sidecar(path, lambda found: msgspec.structs.replace(found, signed=now))
    return path


def _dial(draft: DialDraft, reads: str) -> Dial:
    def optional(text: str) -> float | None:
        return _quantity(text, reads, draft.unit) if text.strip() else None

    error = parse_number(draft.error_percent.replace("%", "")) / 100 if draft.error_percent.strip() else None
    return Dial(optional(draft.marks), error, optional(draft.full_scale))


def _quantity(text: str, reads: str, unit: str) -> float:
    if reads == "torque":
        try:
            return parse_number(text) * torque_factor(unit)
        except HeldwheelError:
            return parse_quantity(text, "torque", unit)
    if reads in {"force", "mass"}:
        return quantity(text, "force" if reads == "force" else "mass")
    raise InputError(f"a dial cannot show a {reads}")
