"""What pulls say at the axle and against the limit: the analysis' own functions, so that live equals the file."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import msgspec

from analysis.to_axle.at_axle import instrument_from, level_from
from analysis.verdict.judge import AtAxle, Judgement, budgets_of, judge_pulls, values_of
from analysis.verdict.limits import Bounds, bounds_from, decided_by, rule_words
from analysis.verdict.recorded import PullReading, RecordingReading
from analysis.verdict.sides import drag_test
from gui.models.caught import JobValue, Judged, Value
from gui.models.ratio import half_words
from logger.errors import DescriptionError

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from analysis.to_axle.drag import PackMean
    from analysis.trace.results import Pull
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.limits import Result
    from gui.models.job import JobCard, Purpose
    from logger.header import Zero


@dataclass(slots=True)
class Judge:
    """Judges pulls of one job card.

    Parameters
    ----------
    card : JobCard
        Fixture, transducer, limit, and the rule that decides.
    zero : Zero or None
        The true zero, once it is taken.
    """

    card: JobCard
    zero: Zero | None = None

    def at_axle(self) -> AtAxle | None:
        """Give what brings a pull to the axle; None while the fixture is not usable."""
        fixture, _ = self.card.fixture()
        if fixture is None or fixture.reads != "torque":
            return None
        facts = self.card.facts
        level = level_from(self.zero, gain=facts.gain or 1.0, resolution_nm=facts.resolution_nm or 0.0)
        return AtAxle(fixture, instrument_from(facts), level)

    def bounds(self) -> Bounds | None:
        """Give the checked limit; None without one that a job can be compared with."""
        limit = self.card.limit
        if limit is None or limit.kind == "ratio min":
            return None
        try:
            return bounds_from(limit)
        except DescriptionError:
            return None

    def pulls(self, pulls: Sequence[Pull], counting: Sequence[bool]) -> tuple[list[Judged], JobValue | None]:
        """Judge all pulls of a job.

        Parameters
        ----------
        pulls : sequence of Pull
            In the order they were made.
        counting : sequence of bool
            Which of them the user has not excluded.

        Returns
        -------
        judged : list of Judged
            One per pull.
        value : JobValue or None
            What the valid ones that count say together.
        """
        if self.at_axle() is None:
            _, problem = self.card.fixture()
            said = [Judged(notes=(*_reasons(pull), problem), valid=pull.valid) for pull in pulls]
            return said, None
        found = self.judgement(pulls, counting)
        each = zip(pulls, found.budgets, found.results, strict=True)
        return [_said(pull, budgets, result) for pull, budgets, result in each], self._job(found, self.bounds())

    def judgement(self, pulls: Sequence[Pull], counting: Sequence[bool]) -> Judgement:
        """Give all that the pulls say, as the reading of their recording gives it; see ``pulls``."""
        rule, guard = decided_by(self.card.decision)
        header = self.card.header("pulls", started=None, zero=self.zero, simulated=False)
        listed = list(zip(pulls, counting, strict=True))
        return judge_pulls(listed, header, self.at_axle(), self.bounds(), rule=rule, guard=guard)

    def _job(self, found: Judgement, bounds: Bounds | None) -> JobValue | None:
        if not found.job:
            return None
        main, result = found.job[0], found.result
        half = half_words(self.card.limit, self.card.test.gear)
        if half:
            main = next((v for v in found.job if v.budget.quantity == "rotating maximum"), main)
        own = [v for v in found.job if bounds is not None and v.budget.quantity == bounds.quantity]
        if own:
            main = next((v for v in own if result is not None and v.budget.value == result.value), own[0])
        conflict = self.card.type_conflict()
        refused = (conflict.text,) if conflict is not None and conflict.refused and result is None else ()
        others = tuple(
            (v.budget.quantity, Value(v.budget.value, v.budget.u95), len(v.values), v.direction)
            for v in found.job
            if v is not main
        )
        return JobValue(
            main.budget.quantity,
            Value(main.budget.value, main.budget.u95),
            len(main.values),
            str(result.state) if result is not None else "",
            rule_words(result.rule, result.guard) if result is not None else "",
            result.notes if result is not None else refused or ((half,) if half else main.notes),
            others,
            main.direction,
        )

    def pack_means(self, held: Sequence[Pull], free: Sequence[Pull]) -> tuple[PackMean, ...]:
        """Give what the packs say with the drag of both wheels free taken off, as for a file of these pulls.

        Parameters
        ----------
        held, free : sequence of Pull
            Those that count, with the other side held and with both wheels free.
        """
        at = self.at_axle()
        if at is None or not held or not free:
            return ()
        before = msgspec.structs.replace(self.zero, after_nm=None) if self.zero is not None else None
        tested = self._reading("pulls", held, self.zero)
        return drag_test({self.card.test.side or "right": tested}, self._reading("drag", free, before)).means

    def _reading(self, purpose: Purpose, pulls: Sequence[Pull], zero: Zero | None) -> RecordingReading:
        """Give pulls as the reading of their recording would."""
        at = Judge(self.card, zero).at_axle()
        budgets = [budgets_of(pull, at) if at is not None else {} for pull in pulls]
        return RecordingReading(
            purpose,
            ok=True,
            header=self.card.header(purpose, started=None, zero=zero, simulated=False),
            at=at,
            pulls=tuple(PullReading(pull, said) for pull, said in zip(pulls, budgets, strict=True)),
            job=values_of([(pull.direction, said) for pull, said in zip(pulls, budgets, strict=True)]),
        )


def _said(pull: Pull, budgets: Mapping[str, Budget], result: Result | None) -> Judged:
    values = (_value(budgets.get("breakaway")), _value(budgets.get("rotating mean")))
    said = (*_reasons(pull), *pull.notes)
    return Judged(*values, str(result.state) if result is not None else "", said, valid=pull.valid)


def _reasons(pull: Pull) -> tuple[str, ...]:
    return tuple(reason.text for reason in pull.reasons)


def _value(budget: Budget | None) -> Value | None:
    return None if budget is None else Value(budget.value, budget.u95)
