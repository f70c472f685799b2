"""Values in order, axle by axle: whether a pack has run in and since when, and a chart of its jobs over time."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.compare.runs import LEFT_OUT, Quantity
from analysis.compare.series import PER_AXLE
from analysis.compare.trend import SETTLED_LEVEL, SETTLED_PER_TEN, one_of
from gui.models.sheets import QuantityScale, Sheet, Written, left_out_sheet, sheets, significant
from logger.errors import HeldwheelError, InputError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.control import EwmaChart
    from analysis.compare.runs import Run
    from analysis.compare.series import Points
    from analysis.compare.trend import RunIn
    from gui.models.comparing import Common

PER = ", ".join(PER_AXLE)
SIGNAL, QUIET = "┃ out of band", "in band"


def tags_in(text: str) -> tuple[str, ...]:
    """Give the tags of a list as it is typed.

    >>> tags_in("vehicle,  axle ,")
    ('vehicle', 'axle')
    """
    return tuple(part.strip() for part in text.split(",") if part.strip())


# ---------------------------------------------------------------------- run-in


@dataclass(frozen=True, slots=True)
class Settling:
    """One axle's run-in; SI."""

    axle: str  # its name
    points: Points  # values in order of the counting tag
    along: tuple[RunIn | None, ...]  # the judgement after each point, by what was known then
    now: RunIn  # the last one
    since: int | None  # place from which it has been settled


@dataclass(frozen=True, slots=True)
class RunInAnswer:
    """All axles that can be judged, and why others cannot."""

    axles: tuple[Settling, ...]
    problems: tuple[str, ...]
    simulated: bool


def settle(runs: Sequence[Run], common: Common, tag: str, per: str = PER) -> RunInAnswer:
    """Judge the run-in of every axle by itself.

    Raises:
        InputError: No axle can be judged; the text says why.
    """
    from analysis.compare.series import axle_of

    found, problems = [], []
    held = [run for run in runs if run.tags.get(tag) is not None]
    names = dict.fromkeys(axle_of(run, tags_in(per)) for run in held)
    for name in names:
        of = [run for run in held if axle_of(run, tags_in(per)) == name]
        try:
            found.append(_settling(name, of, common, tag))
        except HeldwheelError as error:
            problems.append(f"{name}: {error}")
    if not found:
        raise InputError("; ".join(problems) or f"no recording has the tag '{tag}'")
    left = [f"{run.file}{LEFT_OUT}it has no tag '{tag}'" for run in runs if run.tags.get(tag) is None]
    return RunInAnswer(tuple(found), (*problems, *left), any(run.simulated for run in held))


def _settling(name: str, runs: Sequence[Run], common: Common, tag: str) -> Settling:
    from analysis.compare.series import points_against
    from analysis.compare.trend import run_in, run_in_along, settled_since

    points = points_against(runs, Quantity(common.quantity), tag, unit=common.unit)
    now = run_in(points.x, points.y)  # says what is missing where it cannot be judged
    along = run_in_along(points.x, points.y)
    return Settling(name, points, tuple(along), now, settled_since(along))


def run_in_headline(of: Settling, scale: QuantityScale) -> str:
    """Give the answer: settled since when, or not, with the rule's figures."""
    display, state = scale.display, of.now.state.value
    since = "" if of.since is None else f" since {one_of(of.points.tag)} {significant(display, of.points.x[of.since])}"
    low, high = (display.number(v, 2) for v in (of.now.low, of.now.high))
    needs = f" At this scatter it takes about {of.now.needed} to show it." if of.now.needed else ""
    level = display.number(100 * SETTLED_LEVEL, 1)
    return (
        f"{state[0].upper()}{state[1:]}{since}.{needs}\n"
        f"{display.number(of.now.percent_per_ten, 2)} % per ten {of.points.tag} ({level} %: {low} to {high}); "
        f"settled means wholly within ±{display.number(100 * SETTLED_PER_TEN, 0)} %."
    )


def run_in_sheets(of: Settling, answer: RunInAnswer, scale: QuantityScale, files: Sequence[str] = ()) -> list[Sheet]:
    """Give the values in order with what was known after each, and what is excluded."""
    display = scale.display
    rows = []
    for place, (unit, x, y) in enumerate(zip(of.points.units, of.points.x, of.points.y, strict=True)):
        judged = of.along[place]
        state, change, span = "too few yet", "–", "–"
        if judged is not None:
            state = judged.state.value
            change = display.number(judged.percent_per_ten, 2)
            span = f"{display.number(judged.low, 2)} to {display.number(judged.high, 2)}"
        mark = "●" if place == of.since else " "
        rows.append(
            (significant(display, x), scale.number(y), change, span, f"{mark} {state}", unit.name, str(unit.runs))
        )
    heads = (
        of.points.tag,
        scale.title,
        "% per ten",
        f"{display.number(100 * SETTLED_LEVEL, 1)} % interval",
        "Judged then",
        "Fill",
        "Recordings",
    )
    out = [line for line in (*of.points.remarks, *answer.problems) if LEFT_OUT in line]
    return sheets(
        Sheet("In order", heads, tuple(rows), frozenset({4, 5})), _decay(of, scale), left_out_sheet(out, (), files)
    )


def _decay(of: Settling, scale: QuantityScale) -> Sheet | None:
    decay = of.now.decay
    if decay is None:
        return None
    gone = f"{scale.signed(decay.drop)} {scale.unit}".strip()
    rows = (
        ("Goes towards", scale.words(decay.final)),
        ("Above it at the start", gone),
        (f"Falls to a third (1/e) within, in {of.points.tag}", significant(scale.display, decay.scale)),
    )
    return Sheet("Curve", ("Figure", "Value"), rows)


def run_in_warnings(of: Settling, answer: RunInAnswer) -> list[str]:
    """Give what may explain a change besides run-in."""
    lines = [line for line in (*of.points.remarks, *answer.problems) if LEFT_OUT not in line]
    return [*lines, *of.points.warnings]


def run_in_written(of: Settling, scale: QuantityScale, *, simulated: bool) -> Written:
    """Give a run-in as it is written."""
    points, now = of.points, of.now
    judged: dict[str, object] = {
        "state": now.state.value,
        "percent_per_ten": [now.percent_per_ten, now.low, now.high],
        "since": None if of.since is None else points.x[of.since],
    }
    if now.decay is not None:
        judged["final"] = now.decay.final
    rows: list[tuple[str | float | None, ...]] = [(points.tag, scale.quantity.value, "fill", "judged_then")]
    for unit, x, y, then in zip(points.units, points.x, points.y, of.along, strict=True):
        rows.append((x, y, unit.name, "" if then is None else then.state.value))
    plain: dict[str, object] = {
        "schema": "heldwheel trend 1",
        "quantity": scale.quantity.value,
        "unit": scale.quantity.unit,
        "simulated": simulated,
        "against": points.tag,
        "points": [list(pair) for pair in zip(points.x, points.y, strict=True)],
        "run_in": judged,
    }
    return Written(tuple(rows), plain, simulated)


# ---------------------------------------------------------------------- over time


@dataclass(frozen=True, slots=True)
class Watched:
    """One axle's jobs in order of date, and their chart; SI."""

    axle: str
    files: tuple[str, ...]
    dates: tuple[str, ...]
    values: tuple[float, ...]
    chart: EwmaChart
    baseline: int
    warnings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WatchAnswer:
    """All axles that can be charted, and why others cannot."""

    axles: tuple[Watched, ...]
    problems: tuple[str, ...]
    simulated: bool


def watch_axles(runs: Sequence[Run], common: Common, baseline: int, per: str = PER) -> WatchAnswer:
    """Chart every axle by itself, in order of date.

    Raises:
        InputError: No axle can be charted; the text says why.
    """
    from analysis.compare.comparability import check, mixed
    from analysis.compare.control import watch
    from analysis.compare.series import axles_in_order

    found, problems = [], []
    tags = tags_in(per)
    for name, known in axles_in_order(runs, Quantity(common.quantity), tags).items():
        members = [run for run, _ in known]
        checked = check({"all": members})
        if checked.refusals:
            problems.append(f"{name}: cannot stand on one chart: {'; '.join(checked.refusals)}")
            continue
        try:
            chart = watch([value for _, value in known], baseline=baseline)
        except HeldwheelError as error:
            problems.append(f"{name}: {error}")
            continue
        dates, values = tuple(str(run.tags.get("date", "")) for run in members), tuple(value for _, value in known)
        warnings = (*checked.warnings, *mixed({"this axle": members}, known=tags))
        found.append(Watched(name, tuple(run.file for run in members), dates, values, chart, baseline, warnings))
    if not found:
        raise InputError("; ".join(problems) or f"no recording has a {common.quantity}")
    return WatchAnswer(tuple(found), tuple(problems), any(run.simulated for run in runs))


def watch_headline(of: Watched, scale: QuantityScale) -> str:
    """Give the answer: what is shown, since when, against which reference level."""
    from analysis.compare.control import ChartState, verdict

    state = f"reference level {scale.words(of.chart.target)}, scatter {scale.words(of.chart.sd)}"
    based = f"{state}, from the first {of.baseline} jobs"
    shows, text = verdict(of.chart)
    text = text[0].upper() + text[1:]
    if shows is ChartState.SIGNAL:
        first = of.chart.alarms[0]
        return f"{text} since {of.dates[first] or of.files[first]}; {based}."
    return f"{text}; {based}."


def watch_sheets(of: Watched, scale: QuantityScale, files: Sequence[str] = ()) -> list[Sheet]:
    """Give the jobs in order with their limits."""
    rows = []
    for place, value in enumerate(of.values):
        chart = of.chart
        says = SIGNAL if place in chart.alarms else QUIET
        says += ", reference level" if place < of.baseline else ""
        span = scale.span(float(chart.low[place]), float(chart.high[place]))
        average = scale.number(float(chart.average[place]))
        rows.append((of.dates[place], scale.number(value), average, span, says, of.files[place]))
    heads = ("Date", scale.title, "Average", "Band", "Finding", "Recording")
    return sheets(Sheet("Jobs", heads, tuple(rows), frozenset({0, 4, 5})), left_out_sheet((), (), files))


def watch_written(answer: WatchAnswer, scale: QuantityScale) -> Written:
    """Give the charts as they are written: every axle."""
    from analysis.compare.control import verdict

    rows: list[tuple[str | float | None, ...]] = [
        ("axle", "date", "file", scale.quantity.value, "average", "low", "high", "outside")
    ]
    charts = []
    for of in answer.axles:
        chart = of.chart
        for place, value in enumerate(of.values):
            figures = (float(chart.average[place]), float(chart.low[place]), float(chart.high[place]))
            outside = "yes" if place in chart.alarms else "no"
            rows.append((of.axle, of.dates[place], of.files[place], value, *figures, outside))
        charts.append(
            {
                "axle": of.axle,
                "files": list(of.files),
                "values": list(of.values),
                "average": chart.average.tolist(),
                "low": chart.low.tolist(),
                "high": chart.high.tolist(),
                "alarms": list(chart.alarms),
                "shows": verdict(chart)[0].value,
            }
        )
    plain: dict[str, object] = {
        "schema": "heldwheel trend 1",
        "quantity": scale.quantity.value,
        "unit": scale.quantity.unit,
        "simulated": answer.simulated,
        "charts": charts,
    }
    return Written(tuple(rows), plain, answer.simulated)


def decay_curve(of: Settling, x: Sequence[float]) -> list[float]:
    """Give the run-in curve at some places; empty where the values do not determine one."""
    decay = of.now.decay
    if decay is None:
        return []
    return [decay.final + decay.drop * math.exp(-(at - of.points.x[0]) / decay.scale) for at in x]
