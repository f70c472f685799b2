"""Readings of a dial, typed in: through the same lever, interval and limit as a recording."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.to_axle.dial import Dial, dial_reading
from analysis.verdict.limits import decide, decided_by, rule_words
from analysis.verdict.repeats import job_value
from gui.models.caught import JobValue, Value
from gui.models.typed import quantity
from logger.edges.units import parse_number, parse_quantity, torque_factor
from logger.errors import HeldwheelError, InputError
from logger.header import Record

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.uncertainty.budget import Budget
    from analysis.verdict.limits import Bounds
    from gui.models.job import JobCard
    from logger.header import Decision


class DialDraft(Record, frozen=True):
    """What stands in the fields, as typed: kept like this on the job card, so that a better fixture still applies."""

    reading: str = ""
    unit: str = "N·m"
    quantity: str = "breakaway"
    marks: str = ""
    error_percent: str = ""
    full_scale: str = ""


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
