"""In gear against neutral: two recordings, both wheels free, judged against a ratio limit."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from analysis.verdict.limits import Bounds, Guard, Result, Rule, decide, decided_by
from analysis.verdict.sides import gear_ratio, greatest_pair
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.pipeline import Asked
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.recorded import RecordingReading
    from analysis.verdict.repeats import JobValue

GEARS = ("in gear", "neutral")


@dataclass(frozen=True, slots=True)
class GearRatio:
    """What two recordings say together."""

    # in_gear, neutral: the rotating maxima that were divided
    in_gear: JobValue
    neutral: JobValue
    budget: Budget  # the ratio, without unit
    result: Result | None  # against a ratio limit, where there is one
    doubts: tuple[str, ...]  # what about the two may not belong together


def read_halves(in_gear: Path | str, neutral: Path | str, asked: Asked) -> tuple[RecordingReading, RecordingReading]:
    """Read both recordings. The ratio's limit is no limit of the single ones, and each is told by its place."""
    from analysis.pipeline import read_file

    alone = replace(asked, limit=None, gear=None, both_free=None)
    halves = read_file(in_gear, alone), read_file(neutral, alone)
    if halves[0].sha256 == halves[1].sha256:
        raise InputError(
            f"{in_gear} and {neutral} are the same recording: a ratio needs one in gear and one in neutral"
        )
    return halves


def judged_ratio(
    in_gear: RecordingReading,
    neutral: RecordingReading,
    bounds: Bounds | None = None,
    *,
    rule: Rule | None = None,
    guard: Guard | None = None,
) -> GearRatio:
    """Give in gear ÷ neutral and judge it.

    Args:
        in_gear, neutral: The two halves.
        bounds: The ratio limit; without it the one that a recording names.
        rule, guard: Instead of the rule of the recording in gear.

    Raises:
        InputError: A limit of another kind, a half that says it is the other one, or one without rotating torque at the
            axle.
    """
    if bounds is not None and not bounds.written.is_ratio:
        raise InputError('in gear ÷ neutral is compared with a ratio: --limit "ratio >= 2.5"')
    for gear, reading in zip(GEARS, (in_gear, neutral), strict=True):
        said = reading.header.test.gear if reading.header is not None else None
        if said not in (None, gear):
            raise InputError(f"{reading.file}: is taken as the half '{gear}', but says of itself '{said}'")
    pair, budget = greatest_pair(in_gear, neutral), gear_ratio(in_gear, neutral)
    doubts = _doubts(in_gear, neutral, pair)
    if bounds is None:
        named = (r.bounds for r in (in_gear, neutral) if r.bounds is not None)
        bounds = next((b for b in named if b.written.is_ratio), None)
    if bounds is None:
        return GearRatio(*pair, budget, None, doubts)
    own = in_gear.header.decision if in_gear.header is not None else None
    rule, guard = decided_by(own, rule, guard)
    result = decide(budget.value, budget.u, bounds, dof=budget.dof, rule=rule, guard=guard, notes=doubts)
    return GearRatio(*pair, budget, result, doubts)


def ratio_words(budget: Budget) -> str:
    """Write a ratio with its 95 % interval, as many digits as two of the interval need (JCGM 100, 7.2.6)."""
    decimals = max(0, min(4, 1 - math.floor(math.log10(budget.u95)))) if budget.u95 > 0 else 2
    return f"{budget.value:.{decimals}f} ± {budget.u95:.{decimals}f}"


def _doubts(in_gear: RecordingReading, neutral: RecordingReading, pair: tuple[JobValue, JobValue]) -> tuple[str, ...]:
    """Say what about the two may not belong together."""
    heads = [r.header for r in (in_gear, neutral) if r.header is not None]
    found = []
    if any(head.test.held not in (None, "none") for head in heads):
        found.append("the ratio is for both wheels free: here one was held")
    if pair[0].direction != pair[1].direction:
        found.append("the wheel was turned one way in gear and the other way in neutral")
    for what, values in (
        ("vehicle", {head.job.vehicle for head in heads}),
        ("side", {head.test.side for head in heads}),
        ("limit", {str(head.limit.lower) for head in heads if head.limit is not None}),
    ):
        if len(values) > 1:
            found.append(f"the two recordings name another {what}: do they belong together?")
    return tuple(found)
