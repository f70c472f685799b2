"""What pulls say at the axle and against the limit, as the analysis has it: live the same figures as from the file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from analysis.at_axle import Instrument, Level, Reading, at_axle, instrument_from, level_from
from analysis.limits import Bounds, Result, Rule, bounds_from, decide
from analysis.repeats import job_value, single_pull
from gui.models.caught import JobValue, Judged, Value
from logger.errors import DescriptionError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.budget import Budget
    from analysis.lever import Fixture
    from analysis.repeats import JobValue as Repeats
    from analysis.results import Pull
    from gui.models.job import JobCard
    from logger.header import Zero

QUANTITIES = ("breakaway", "rotating mean", "rotating maximum")


class Judge:
    """Judges pulls of one job card.

    Parameters
    ----------
    card : JobCard
        Fixture, transducer, limit.
    rule : Rule
        How uncertainty decides near the limit.
    """

    def __init__(self, card: JobCard, rule: Rule = Rule.THREE_WAY) -> None:
        self._card, self._rule = card, rule
        self.zero: Zero | None = None

    def pull(self, pull: Pull) -> Judged:
        """Say what one pull says by itself."""
        fixture, problem = self._card.fixture()
        notes = tuple(reason.text for reason in pull.reasons)
        if fixture is None:
            return Judged(notes=(*notes, problem), valid=pull.valid)
        budgets = self.budgets(pull, fixture)
        state = ""
        bounds = self.bounds()
        if bounds is not None:
            state = "not valid" if not pull.valid else self._state(budgets.get(bounds.quantity), bounds)
        return Judged(
            _value(budgets.get("breakaway")), _value(budgets.get("rotating mean")), state, notes, valid=pull.valid
        )

    def _state(self, budget: Budget | None, bounds: Bounds) -> str:
        if budget is None:
            return ""
        alone = single_pull(budget, job_value([budget]))
        return str(decide(alone.value, alone.u, bounds, dof=alone.dof, rule=self._rule).state)

    def job(self, pulls: Sequence[Pull]) -> JobValue | None:
        """Say what the pulls that count say together; None while they say nothing."""
        fixture, _ = self._card.fixture()
        if fixture is None:
            return None
        bounds = self.bounds()
        values: dict[str, Repeats] = {}
        for quantity in QUANTITIES:
            repeats = self._repeats(pulls, fixture, quantity, bounds)
            if repeats is not None:
                values[quantity] = repeats
        main = bounds.quantity if bounds is not None and bounds.quantity in values else next(iter(values), None)
        if main is None:
            return None
        others = tuple(
            (quantity, Value(r.budget.value, r.budget.u95), len(r.values))
            for quantity, r in values.items()
            if quantity != main
        )
        return self._job_value(values[main], main, bounds, others)

    def _job_value(
        self, repeats: Repeats, main: str, bounds: Bounds | None, others: tuple[tuple[str, Value, int], ...]
    ) -> JobValue:
        state, rule, notes = "", "", repeats.notes
        conflict = self._card.conflict()
        if bounds is not None and conflict is not None and conflict.refused:
            state, notes = "not valid", (*notes, conflict.text)
        elif bounds is not None and bounds.quantity == main:
            result: Result = decide(
                repeats.budget.value, repeats.budget.u, bounds, dof=repeats.budget.dof, rule=self._rule
            )
            state, rule, notes = str(result.state), str(result.rule), (*notes, *result.notes)
        value = Value(repeats.budget.value, repeats.budget.u95)
        return JobValue(main, value, len(repeats.values), state, rule, tuple(notes), others)

    def _repeats(self, pulls: Sequence[Pull], fixture: Fixture, quantity: str, bounds: Bounds | None) -> Repeats | None:
        """Give the value per direction, and of two directions the less favourable one."""
        found: list[Repeats] = []
        for direction in (1, -1):
            budgets = [self.budgets(p, fixture).get(quantity) for p in pulls if p.direction == direction]
            known = [budget for budget in budgets if budget is not None]
            if known:
                found.append(job_value(known, direction=direction))
        if not found:
            return None
        highest_is_worse = bounds is not None and bounds.lower is None
        return (max if highest_is_worse else min)(found, key=lambda r: r.budget.value)

    def budgets(self, pull: Pull, fixture: Fixture) -> dict[str, Budget]:
        """Give the budget of each quantity that a pull has."""
        instrument, level = self._instrument(), self._level()
        readings = {}
        if pull.breakaway is not None:
            b = pull.breakaway
            readings["breakaway"] = Reading("breakaway", b.at_sensor_nm, b.u_trace_nm, pull.direction, pull.handoff_nm)
        if pull.rotating is not None:
            r = pull.rotating
            for name, value in (("rotating mean", r.at_sensor_nm), ("rotating maximum", r.max_nm)):
                readings[name] = Reading(name, value, r.u_trace_nm, pull.direction, pull.handoff_nm, None, None)
        return {name: at_axle(reading, fixture, instrument, level) for name, reading in readings.items()}

    def bounds(self) -> Bounds | None:
        """Give the checked limit; None without one that can be used here."""
        limit = self._card.limit
        if limit is None or limit.kind == "ratio min":
            return None
        try:
            return bounds_from(limit)
        except DescriptionError:
            return None

    def _instrument(self) -> Instrument:
        return instrument_from(self._card.facts)

    def _level(self) -> Level:
        return level_from(
            self.zero, gain=self._card.facts.gain or 1.0, resolution_nm=self._card.facts.resolution_nm or 0.0
        )


def _value(budget: Budget | None) -> Value | None:
    return None if budget is None else Value(budget.value, budget.u95)
