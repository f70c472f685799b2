"""Pulls at the axle and against a limit: one way for files and for the live window.

Conventions:
- ``budgets_of`` gives what one pull says at the axle, by quantity; ``values_of`` what the valid pulls say together, by
  quantity and direction; ``judge`` compares a value with the limit that names its quantity.
- A pull is judged as one pull of many; a job by its median. Where both directions were pulled, the less favourable one
  is the job's result.

Offered: ``QUANTITIES``, ``AtAxle``, ``readings_of``, ``budgets_of``, ``disagreements``, ``values_of``, ``judge_pull``,
``judge_job``, and all of it at once: ``judge_pulls``, or
``judge_budgets`` for readings without a trace.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from analysis.identify.axle_type import type_conflict
from analysis.identify.slips import kind_conflict, slip_against
from analysis.to_axle.at_axle import Instrument, Level, TracedTorque, at_axle, trials_model, waves_left
from analysis.verdict.limits import Bounds, Guard, Result, Rule, State, decide, not_valid
from analysis.verdict.repeats import (
    DIRECTION_POLICY,
    RANDOM_ROWS,
    JobValue,
    further_pulls,
    job_value,
    single_pull,
)
from analysis.verdict.scatter import LEAST_PULLS

if TYPE_CHECKING:
    from analysis.to_axle.lever import Fixture
    from analysis.trace.results import Pull
    from analysis.uncertainty.budget import Budget
    from logger.header import Header

QUANTITIES = ("breakaway", "rotating mean", "rotating maximum")


@dataclass(frozen=True, slots=True)
class AtAxle:
    """All that is needed to bring a pull to the axle."""

    # fixture, instrument, level: lever, transducer, true zero
    fixture: Fixture
    instrument: Instrument
    level: Level


def budgets_of(pull: Pull, at: AtAxle) -> dict[str, Budget]:
    """Give what a pull says at the axle, by quantity; a quantity that it does not have is absent."""
    return {r.quantity: at_axle(r, at.fixture, at.instrument, at.level) for r in readings_of(pull)}


def readings_of(pull: Pull) -> list[TracedTorque]:
    """Give what a pull says at the sensor, ready to be brought to the axle."""
    found = []
    turned = pull.turned
    if pull.breakaway is not None:
        b = pull.breakaway
        since = turned.to_breakaway_rad if turned else 0.0
        at_once = (pull.direction, pull.handoff_nm, 0.0, since, 0.0, b.u_method_nm)
        found.append(TracedTorque("breakaway", b.at_sensor_nm, b.u_trace_nm, *at_once))
    if pull.rotating is not None:
        r = pull.rotating
        turn = turned.rotating_rad if turned else None
        since = turned.to_rotating_rad if turned else None
        speed_nm = pull.turning.acceleration_nm if pull.turning else 0.0
        waves = waves_left(turn, r.steady_s)
        where = (pull.direction, pull.handoff_nm, turn, since, speed_nm, r.u_method_nm, waves)
        found.append(TracedTorque("rotating mean", r.at_sensor_nm, r.u_trace_nm, *where))
        # A maximum happened at one place of the turn, which nobody knows: the lever's weight does not average out.
        once = (pull.direction, pull.handoff_nm, 0.0, None, 0.0, r.u_method_nm, waves)
        found.append(TracedTorque("rotating maximum", r.max_nm, math.hypot(r.u_trace_nm, r.max_u_nm), *once))
    return found


def disagreements(pull: Pull, at: AtAxle) -> tuple[str, ...]:
    """Check a pull's budgets by a million Monte Carlo trials each; empty where both agree (JCGM 101, clause 8)."""
    from analysis.uncertainty.montecarlo import disagreement, monte_carlo

    found = []
    for reading in readings_of(pull):
        budget = at_axle(reading, at.fixture, at.instrument, at.level)
        inputs, model = trials_model(reading, at.fixture, budget)
        found.append(disagreement(budget, monte_carlo(model, inputs)))
    return tuple(text for text in found if text)


def values_of(
    pulls: Sequence[tuple[int, Mapping[str, Budget]]],
    *,
    repeatability: float | None = None,
    drop_outliers: bool = False,
) -> tuple[JobValue, ...]:
    """Give the value of each quantity and direction.

    Args:
        pulls: (direction, budgets); The pulls that count, in order: valid and not excluded.
        repeatability, drop_outliers: See ``job_value``.
    """
    values = []
    for quantity in QUANTITIES:
        for direction in (1, -1):
            budgets = [b[quantity] for d, b in pulls if d == direction and quantity in b]
            if budgets:
                value = job_value(
                    budgets, repeatability=repeatability, drop_outliers=drop_outliers, direction=direction
                )
                values.append(value)
    return tuple(values)


def judge_pull(
    budgets: Mapping[str, Budget],
    job: Sequence[JobValue],
    direction: int,
    bounds: Bounds,
    *,
    rule: Rule = Rule.THREE_WAY,
    guard: Guard = Guard.U95,
) -> Result | None:
    """Judge one valid pull as one pull of many; None if it has not the quantity that the limit names."""
    budget = budgets.get(bounds.quantity)
    if budget is None:
        return None
    own = [v for v in job if v.budget.quantity == bounds.quantity and v.direction == direction]
    whole = single_pull(budget, own[0] if own else job_value([budget], direction=direction))
    return decide(whole.value, whole.u, bounds, dof=whole.dof, rule=rule, guard=guard)


def judge_job(
    job: Sequence[JobValue],
    bounds: Bounds,
    *,
    rule: Rule = Rule.THREE_WAY,
    guard: Guard = Guard.U95,
    notes: tuple[str, ...] = (),
) -> Result:
    """Judge the job: the less favourable direction of the quantity that the limit names."""
    own = [v for v in job if v.budget.quantity == bounds.quantity]
    if not own:
        reason = f"no valid pull gives the {bounds.quantity} that the limit names"
        return not_valid(bounds, reason, *notes, rule=rule, guard=guard)
    results = [
        decide(v.budget.value, v.budget.u, bounds, dof=v.budget.dof, rule=rule, guard=guard, notes=(*v.notes, *notes))
        for v in own
    ]
    worst = min(range(len(own)), key=lambda i: results[i].probability)
    result = replace(results[worst], decided=own[worst])
    if len(own) > 1:
        result = replace(result, notes=(*result.notes, DIRECTION_POLICY))
    if result.state is State.TOO_CLOSE:
        result = replace(result, notes=(*result.notes, _what_would_settle(own[worst], bounds)))
    return result


@dataclass(frozen=True, slots=True)
class Judgement:
    """All that the pulls of one job say."""

    budgets: tuple[dict[str, Budget], ...]  # what each pull says at the axle, by quantity
    # each pull as one of many; None for one that was excluded, and where there is nothing to compare with
    results: tuple[Result | None, ...]
    job: tuple[JobValue, ...]  # what the pulls that count say together
    result: Result | None = None  # of the job against its limit
    notes: tuple[str, ...] = ()  # what the comparison rests on


def judge_pulls(
    pulls: Sequence[tuple[Pull, bool]],
    header: Header,
    at: AtAxle | Sequence[AtAxle | None] | None,
    bounds: Bounds | None,
    *,
    rule: Rule = Rule.THREE_WAY,
    guard: Guard = Guard.U95,
    repeatability: float | None = None,
    drop_outliers: bool = False,
) -> Judgement:
    """Bring all pulls of a job to the axle and judge them, each and together: for a file, and while it grows.

    Args:
        pulls: (Pull, bool); In order, and whether the user lets it count.
        header: What was tested, and how.
        at: What brings a pull to the axle; None where the fixture is not known.
        bounds: The limit.
        rule, guard, repeatability, drop_outliers: See ``judge_job`` and ``job_value``.
    """
    ats = list(at) if isinstance(at, Sequence) else [at] * len(pulls)
    each = zip(pulls, ats, strict=True)
    budgets = tuple(budgets_of(pull, own) if own is not None else {} for (pull, _), own in each)
    used = [(pull, own) for (pull, counts), own in zip(pulls, budgets, strict=True) if counts and pull.valid]
    counted = [(pull.direction, own) for pull, own in used]
    job = values_of(counted, repeatability=repeatability, drop_outliers=drop_outliers)
    nothing: tuple[Result | None, ...] = (None,) * len(pulls)
    if bounds is None:
        return Judgement(budgets, nothing, job)
    refused, notes = _refusal(header, bounds, ats[-1] if isinstance(at, Sequence) else at)
    if refused:
        return Judgement(budgets, nothing, job, not_valid(bounds, refused, rule=rule, guard=guard), notes)
    results = tuple(
        _one(pull, own, job, bounds, rule, guard) if counts else None
        for (pull, counts), own in zip(pulls, budgets, strict=True)
    )
    peaks = [pull.breakaway for pull, _ in used if pull.breakaway is not None]
    if bounds.quantity == "breakaway" and any(not peak.distinct_peak for peak in peaks):
        notes = (*notes, "no separate breakaway peak: the torque at which slip began is compared")
    notes = (*notes, *(text for v in job for text in slip_against(bounds.written, v.budget.quantity, v.budget.value)))
    return Judgement(budgets, results, job, judge_job(job, bounds, rule=rule, guard=guard, notes=notes), notes)


def judge_budgets(
    listed: Sequence[tuple[int, dict[str, Budget], bool]],
    header: Header,
    at: AtAxle | None,
    bounds: Bounds | None,
    *,
    rule: Rule = Rule.THREE_WAY,
    guard: Guard = Guard.U95,
    repeatability: float | None = None,
) -> Judgement:
    """Judge torques that were read without a trace, each and together; see ``judge_pulls``.

    Args:
        listed: (direction, budgets, counts); What each reading says at the axle, by quantity, and whether the user lets
            it count.
    """
    budgets = tuple(own for _, own, _ in listed)
    nothing: tuple[Result | None, ...] = (None,) * len(listed)
    job = values_of([(way, own) for way, own, counts in listed if counts], repeatability=repeatability)
    if bounds is None:
        return Judgement(budgets, nothing, job)
    refused, notes = _refusal(header, bounds, at)
    if refused:
        return Judgement(budgets, nothing, job, not_valid(bounds, refused, rule=rule, guard=guard), notes)
    results = tuple(
        judge_pull(own, job, way, bounds, rule=rule, guard=guard) if counts else None for way, own, counts in listed
    )
    notes = (*notes, *(text for v in job for text in slip_against(bounds.written, v.budget.quantity, v.budget.value)))
    return Judgement(budgets, results, job, judge_job(job, bounds, rule=rule, guard=guard, notes=notes), notes)


def _one(
    pull: Pull, budgets: Mapping[str, Budget], job: Sequence[JobValue], bounds: Bounds, rule: Rule, guard: Guard
) -> Result | None:
    if not pull.valid:
        return not_valid(bounds, *(reason.text for reason in pull.reasons), rule=rule, guard=guard)
    return judge_pull(budgets, job, pull.direction, bounds, rule=rule, guard=guard)


def _refusal(header: Header, bounds: Bounds, at: AtAxle | None) -> tuple[str, tuple[str, ...]]:
    """Give the reason why these pulls cannot be compared with their limit, and warnings."""
    if header.test.purpose in ("drag", "zero", "weigh"):
        return f"this is a recording for '{header.test.purpose}', not of held pulls", ()
    found = (type_conflict(header.axle, header.conditions, bounds.written), kind_conflict(bounds.written, header.test))
    conflicts = [conflict for conflict in found if conflict is not None]
    for conflict in conflicts:
        if conflict.refused:
            return conflict.text, ()
    if bounds.written.is_ratio:
        return "a ratio limit compares two recordings: in gear and in neutral", ()
    if at is None:
        return "the lever is not known, so the torque at the axle is not either", ()
    if at.fixture.kind == "held side":
        return (
            "the transducer was on the held side: it does not show the torque at the turned wheel that a limit is for"
        ), ()
    return "", tuple(conflict.text for conflict in conflicts)


def _what_would_settle(value: JobValue, bounds: Bounds) -> str:
    """Say whether more pulls would narrow the interval enough to decide, if the value stays where it is."""
    if len(value.values) < LEAST_PULLS:
        return "too few pulls to know their scatter: make three or more, five if you can"
    edges = [edge for edge in (bounds.lower, bounds.upper) if edge is not None]
    room = min(abs(value.budget.value - edge) for edge in edges)
    more = further_pulls(value, room)
    if more is not None:
        return f"about {more} more pulls like these would settle it, if the value stays where it is"
    shared = value.budget.without(*RANDOM_ROWS)
    if shared.u95 > room:
        return (
            f"more pulls cannot settle it: what they share (transducer, lever, zero) is ± {shared.u95:.2g} N·m, the "
            f"limit is {room:.2g} N·m away; state the lever's lengths or use a better transducer"
        )
    return "more pulls like these would hardly settle it: they scatter too much for so small a distance"
