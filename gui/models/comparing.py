"""Groups of recordings as the Compare page shows them; the reading and the statistics run in the worker."""

from __future__ import annotations

import math
import statistics
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from analysis.compare.runs import Quantity, Run, text_of
from logger.errors import FileError, HeldwheelError

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from analysis.compare.comparisons import Effect
    from analysis.compare.groups import Comparison
    from analysis.compare.trend import Line

# Facts that are one per recording group nothing; tags that are common to group by come first.
NEVER_BY = ("file", "started", "sha256")


@dataclass(frozen=True, slots=True)
class Question:
    """What is compared with what.

    Attributes
    ----------
    quantity : str
        One of ``analysis.compare.runs.Quantity``.
    by, control, unit, block : str
        Tags, and the group that others are compared with; empty for the first one, no block.
    all_pairs : bool
        Every group against every other.
    margin_nm, difference_nm : float or None
        Difference that counts as no change; difference that must not be missed.
    anyway : str
        Reason for comparing what should not be compared.
    """

    quantity: str = "breakaway"
    by: str = ""
    control: str = ""
    unit: str = "fill"
    block: str = ""
    all_pairs: bool = False
    margin_nm: float | None = None
    difference_nm: float | None = None
    anyway: str = ""


def read_runs(paths: Sequence[str]) -> tuple[list[Run], list[str]]:
    """Read some recordings; those that cannot be read are told."""
    from analysis.pipeline import read_files
    from analysis.summary import run_of

    runs, bad = [], []
    for reading in read_files(list(paths)):
        if reading.ok:
            runs.append(run_of(reading))
        else:
            bad.append(f"{Path(reading.file).name}: {'; '.join(reading.problems)}")
    return runs, bad


@dataclass(frozen=True, slots=True)
class Trend:
    """A quantity against a numeric tag: one point per fill, and the straight line through them."""

    tag: str
    x: tuple[float, ...]
    y: tuple[float, ...]
    line: Line


@dataclass(frozen=True, slots=True)
class Answer:
    """Groups, the trend where the tag is a number, and how many fills a wanted difference needs."""

    comparison: Comparison
    trend: Trend | None = None
    plan: str = ""


def answer(runs: Sequence[Run], question: Question) -> Answer:
    """Compare, fit a trend, plan.

    Raises
    ------
    InputError
        Fewer than two groups, or recordings that must not be compared; the text says what to do.
    """
    found = _compared(runs, question)
    return Answer(found, _trend(runs, question), _plan(found, question.difference_nm))


def _trend(runs: Sequence[Run], question: Question) -> Trend | None:
    from analysis.compare.runs import units_of
    from analysis.compare.trend import fit_line

    units, _ = units_of(runs, Quantity(question.quantity), by=question.by, unit=question.unit)
    try:
        x = tuple(float(unit.group) for unit in units)
        y = tuple(unit.value for unit in units)
        return Trend(question.by, x, y, fit_line(x, y))
    except (ValueError, HeldwheelError):  # a tag of words, or too few points, has no trend
        return None


def _plan(found: Comparison, difference: float | None) -> str:
    from analysis.compare.planner import fills_needed

    if difference is None:
        return ""
    if math.isnan(found.between_sd):
        return "Planning needs the scatter from fill to fill: at least two fills in a group."
    try:
        plan = fills_needed(found.between_sd, difference, candidates=max(1, len(found.groups) - 1))
    except HeldwheelError as error:
        return str(error)
    return f"{plan.per_group} fills per group and {plan.control} of the control: {plan.text}"


def trend_words(trend: Trend, factor: float, unit: str, number: Callable[[float, int], str]) -> str:
    """Give a trend in one sentence: slope with interval first, p second."""
    line = trend.line
    slope = " to ".join(number(v * factor, 2) for v in (line.slope_low, line.slope_high))
    shown = "a trend is shown" if not line.slope_low <= 0 <= line.slope_high else "no trend is shown"
    return (
        f"Per 1 of {trend.tag}: {number(line.slope * factor, 2)} ({slope}){unit}; {shown}, p {line.p:.2g}, "
        f"{line.n} fills, least squares. The band holds one further fill (95 %)."
    )


def _compared(runs: Sequence[Run], question: Question) -> Comparison:
    """Compare.

    Raises
    ------
    InputError
        Fewer than two groups, or recordings that must not be compared; the text says what to do.
    """
    from analysis.compare.groups import compare

    return compare(
        runs,
        Quantity(question.quantity),
        by=question.by,
        control=question.control or None,
        unit=question.unit,
        block=question.block,
        against="all pairs" if question.all_pairs else "control",
        margin=question.margin_nm,
        anyway=question.anyway,
    )


def tags_to_group_by(runs: Sequence[Run]) -> list[str]:
    """Give the tags that divide these runs into two to twenty groups, the most telling first."""
    values: dict[str, set[str]] = {}
    for run in runs:
        for tag, value in run.tags.items():
            values.setdefault(tag, set()).add(text_of(value))
    found = [tag for tag, seen in values.items() if 2 <= len(seen - {""}) <= 20 and tag not in NEVER_BY]
    return sorted(found, key=lambda tag: (len(values[tag]), tag))


def groups_in(runs: Sequence[Run], by: str) -> list[str]:
    """Give the groups that a tag makes, in order of appearance."""
    return [name for name in dict.fromkeys(text_of(run.tags.get(by)) for run in runs) if name]


def effect_words(effect: Effect, unit: str, factor: float) -> str:
    """Give an effect in one sentence: difference with interval first, p second."""
    d = effect.difference
    size = f"{d.value * factor:+.3g} ({d.low * factor:+.3g} to {d.high * factor:+.3g}){unit}"
    ratio = ""
    if effect.ratio is not None:
        r = effect.ratio
        ratio = f", {(r.value - 1) * 100:+.1f} % ({(r.low - 1) * 100:+.1f} to {(r.high - 1) * 100:+.1f})"
    shown = "a difference is shown" if not d.low <= 0 <= d.high else "no difference is shown"
    words = f"{effect.treated} against {effect.control}: "
    return words + f"{size}{ratio}; {shown}, p {effect.p:.2g}, {effect.method}".replace("-", "−")


def table_of(found: Comparison) -> list[tuple[str, ...]]:
    """Give one row per group as text with decimal points: for export."""
    rows: list[tuple[str, ...]] = [
        ("group", "fills", "recordings", "pulls", "median", "mean", "low_95", "high_95", "sd")
    ]
    for group in found.groups:
        figures = (statistics.median(group.values), group.mean, group.low, group.high, group.sd)
        rows.append(
            (
                group.name,
                str(len(group.units)),
                str(group.runs),
                str(group.pulls),
                *("" if math.isnan(v) else f"{v:.9g}" for v in figures),
            )
        )
    return rows


def export(found: Comparison, target: str) -> str:
    """Write a comparison as CSV or JSON.

    Raises
    ------
    FileError
        It cannot be written.
    """
    import csv
    import json

    from analysis.tables import neutral

    try:
        with open(target, "w", encoding="utf-8", newline="") as file:
            if target.lower().endswith(".json"):
                json.dump(found.to_json(), file, ensure_ascii=False, allow_nan=False)
            else:
                writer = csv.writer(file)
                for head, *figures in table_of(found):
                    writer.writerow([neutral(head), *figures])
    except (OSError, HeldwheelError) as error:
        raise FileError(f"{target}: cannot be written: {error}") from error
    return target
