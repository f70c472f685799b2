"""Find the pulls of recordings: breakaway and rotating torque, at the sensor and at the axle, interval, result."""

from __future__ import annotations

import argparse
import json
import time
from typing import TYPE_CHECKING

from analysis.doors.asking import add_reading_options, asked_of, keep_answers
from analysis.doors.options import LIMIT_HELP, limit_doubts
from logger.doors.lever_limit import LEVER_HELP
from logger.edges.door import Exit
from logger.edges.units import canonical_unit, torque_factor

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from analysis.verdict.recorded import PullReading, RecordingReading

MANY = 3  # files from which progress is shown

EXITS = """\
exit codes: 0 within the limit, or no limit asked; 1 outside; 2 a file or option that cannot be used;
3 too close to call; 4 not valid. Of several results the gravest: 2, then 1, 4, 3, 0."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.epilog = (
        "examples:\n"
        "  heldwheel-read pulls hill-climb-07.csv\n"
        "  heldwheel-read pulls *.csv --lever 450mm --stud-circle 5x114.3mm --limit rear-axle.limit.toml\n"
        '  heldwheel-read pulls old.csv --torque-column T --torque-unit "lbf·ft" --time-column t --json\n\n'
        "What a file does not say comes from <stem>.sidecar.toml beside it, or from these options, which win.\n\n"
        f"{LEVER_HELP}\n\n{LIMIT_HELP}\n\n{EXITS}"
    )
    parser.usage = f"{parser.prog} FILE... [options]"
    parser.add_argument(
        "files", nargs="+", metavar="FILE", help="recordings or tables with time and torque; - reads standard input"
    )
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel pulls 1')")
    parser.add_argument("--budget", action="store_true", help="show what each input contributes to the interval")
    parser.add_argument(
        "--monte-carlo", action="store_true", help="check every interval at the axle by a million trials"
    )
    parser.add_argument(
        "--both-free", metavar="FILE", help="the drag baseline: shows the pack mean beside the torque as read"
    )
    parser.add_argument("--unit", metavar="UNIT", help="unit of the table; default: that of the recording")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Do it."""
    from dataclasses import replace
    from pathlib import Path

    from analysis.doors.shown import exit_for
    from analysis.pipeline import read_files
    from logger.edges.console import Progress, note, say

    unit = canonical_unit(args.unit) if args.unit else None
    asked = replace(asked_of(args), both_free=Path(args.both_free) if args.both_free else None)
    if asked.limit is not None:
        for line in limit_doubts(asked.limit):
            note(f"note: {line}")
    begun = time.monotonic()
    with Progress() as progress:

        def show(i: int, path: Path | str) -> None:
            if len(args.files) >= MANY:
                progress.show(f"reading {i + 1} of {len(args.files)}: {path}", time.monotonic() - begun)

        readings = list(read_files(args.files, asked, before=show))
    keep_answers(readings, asked)
    if args.json:
        from analysis.verdict.recorded import to_json

        say(json.dumps(to_json(readings, budgets=args.budget), ensure_ascii=False, indent=1, allow_nan=False))
    else:
        for reading in readings:
            _show(reading, unit or reading.unit, budget=args.budget)
    if args.monte_carlo:
        _check(readings)
    for reading in readings:
        if not reading.ok:
            for line in reading.problems:
                note(f"heldwheel-read pulls: {line}")
    if not all(reading.ok for reading in readings):
        return Exit.BAD_INPUT
    return exit_for([reading.result for reading in readings if reading.result is not None])


def _check(readings: Iterable[RecordingReading]) -> None:
    """Check the intervals of all pulls by Monte Carlo, and say where it disagrees."""
    from analysis.verdict.judge import disagreements
    from logger.edges.console import note

    for reading in readings:
        found = [text for p in reading.pulls if reading.at is not None for text in disagreements(p.pull, reading.at)]
        for text in found or (["Monte Carlo agrees with every interval"] if reading.pulls and reading.at else []):
            note(f"{reading.file}: {text}")


def _show(reading: RecordingReading, unit: str, *, budget: bool) -> None:
    """Show one recording: its pulls, what they say together, what is not in order."""
    from analysis.doors.shown import budget_table
    from analysis.trace.results import DIRECTION_WORDS
    from logger.edges.console import say

    if not reading.ok:
        return
    _pull_table(reading, unit)
    jobs = _job_lines(reading, unit)
    drag = _drag_lines(reading, unit)
    said = {text.strip() for text in (*jobs, *drag)}
    for line in (*_reasons(reading), *_angle_lines(reading, unit), *jobs, *drag):
        say(line)
    if reading.result is not None:
        say(reading.result.words)
        _notes(reading.result.notes, said, "  ")
    if budget:
        for value in reading.job:
            direction = DIRECTION_WORDS[value.direction]
            budget_table(value.budget, unit, title=f"Budget: {value.budget.quantity}, {direction}")
    _notes(reading.problems, said, "  note: ")
    say()


def _notes(lines: Iterable[str], said: set[str], before: str) -> None:
    """Say each line once."""
    from logger.edges.console import say

    for text in lines:
        if text not in said:
            said.add(text)
            say(before + text)


def _pull_table(reading: RecordingReading, unit: str) -> None:
    from analysis.doors.shown import STYLES
    from logger.edges.console import say, table

    mark = "SIMULATED  " if reading.simulated else ""
    where = "at the axle" if reading.at is not None else "at the sensor"
    rate = reading.trace.rate_hz if reading.trace is not None else float("nan")
    state = {"recovered": ", recovered: it was not closed", "foreign": ", not our recording"}.get(reading.state, "")
    how = f"{rate:.4g} readings a second" if not reading.dial else "readings of a dial"
    title = f"{mark}{reading.file}  ({how}{state})"
    if not reading.pulls:
        say(title)
        say("  no pull found")
        return
    rows, styles = [], []
    for number, read in enumerate(reading.pulls, 1):
        rows.append(_pull_row(number, read, unit))
        styles.append(STYLES[str(read.result.state)] if read.result is not None else "")
    headings = ("pull", "start", "direction", f"breakaway {where}", f"rotating {where}", "result")
    table(headings, rows, title=title, right=(0, 1), styles=styles)


def _pull_row(number: int, read: PullReading, unit: str) -> tuple[str, ...]:
    from analysis.trace.results import DIRECTION_WORDS

    pull = read.pull
    breakaway = _figure(read, "breakaway", unit)
    if pull.breakaway is not None and not pull.breakaway.distinct_peak:
        breakaway += " (slip began, no peak)"
    rotating = _figure(read, "rotating mean", unit)
    if pull.stick_slip is not None:
        rotating += f" (stick-slip, {pull.stick_slip.frequency_hz:.1f} Hz)"
    return (
        str(number),
        f"{pull.start_s:.2f} s",
        DIRECTION_WORDS[pull.direction],
        breakaway,
        rotating,
        _verdict(read, unit),
    )


def _figure(read: PullReading, quantity: str, unit: str) -> str:
    """Give a torque with its interval: at the axle where it is known, else at the sensor."""
    from logger.edges.units import format_torque

    budget = read.axle.get(quantity)
    if budget is not None:
        return format_torque(budget.value, unit, budget.u95)
    part = read.pull.breakaway if quantity == "breakaway" else read.pull.rotating
    return "–" if part is None else format_torque(part.at_sensor_nm, unit, part.u95_sensor_nm)


def _verdict(read: PullReading, unit: str) -> str:
    """Give the pull's result in words with a shape."""
    from analysis.verdict.limits import SHAPES, State

    if read.left_out:
        return "excluded"
    if not read.pull.valid:
        return f"{SHAPES[State.NOT_VALID]} not valid: {', '.join(r.code for r in read.pull.reasons)}"
    if read.result is None:
        return "valid"
    wide = read.result.u95 / torque_factor(unit)
    return f"{read.result.shape} {read.result.state} (± {wide:.2g} {unit} if this pull were judged alone)"


def _reasons(reading: RecordingReading) -> list[str]:
    """Give what keeps a pull from counting, and what to do next."""
    lines = []
    for number, read in enumerate(reading.pulls, 1):
        lines += [f"  pull {number}: {r.code}: {r.text}" for r in read.pull.reasons]
        lines += [f"  pull {number}: {text}" for text in read.pull.notes]
        if read.pull.left_out:
            lines.append(f"  pull {number}: {read.pull.left_out} readings that stand out alone were excluded")
        if read.left_out:
            lines.append(f"  pull {number}: excluded: {read.left_out}")
    return lines


def _angle_lines(reading: RecordingReading, unit: str) -> list[str]:
    """Give what the angle adds to every pull: stiffness, wind-up and play, and what repeats as the wheel turns."""
    from analysis.trace.held import held_unknown
    from analysis.verdict.elastic import elastic_words
    from analysis.verdict.orders import pattern_lines
    from logger.edges.units import format_torque

    def torque(nm: float, u95: float | None) -> str:
        return format_torque(nm, unit, u95)

    def figure(value: float, decimals: int) -> str:
        return f"{value:.{decimals}f}"

    lines = []
    for number, read in enumerate(reading.pulls, 1):
        if read.pull.elastic is not None:
            lines.append(elastic_words(number, read.pull.elastic, read.stiffness, torque, figure))
    lines += pattern_lines([read.patterns for read in reading.pulls], torque, figure)
    held = reading.header.test.held if reading.header is not None else None
    lines += [text for text in (held_unknown((read.pull for read in reading.pulls), held),) if text]
    return [f"  {text}" for text in lines]


def _job_lines(reading: RecordingReading, unit: str) -> list[str]:
    """Give what the pulls say together."""
    from analysis.trace.results import DIRECTION_WORDS
    from logger.edges.units import format_torque

    lines = []
    for value in reading.job:
        if value.budget.quantity == "rotating maximum" and (
            reading.bounds is None or reading.bounds.quantity != "rotating maximum"
        ):
            continue
        n = len(value.values)
        pulls = "1 pull" if n == 1 else f"median of {n} pulls, CV {value.cv * 100:.1f} %" if n > 2 else f"{n} pulls"
        shown = format_torque(value.budget.value, unit, value.budget.u95)
        lines.append(f"  {value.budget.quantity}, {DIRECTION_WORDS[value.direction]}: {shown} (95 %; {pulls})")
        lines += [f"    {note}" for note in value.notes]
    return lines


def _drag_lines(reading: RecordingReading, unit: str) -> list[str]:
    """Give the pack mean with the drag taken off, or why it is withheld."""
    from logger.edges.units import format_torque

    if reading.drag is None:
        return []
    lines = []
    for m in reading.drag.test.means:
        mean = m.budget
        shown = m.how if mean is None else f"{format_torque(mean.value, unit, mean.u95)} (95 %; {m.how})"
        lines.append(f"  pack mean, {m.quantity}, {m.way}: {shown}")
    return [*lines, *(f"    {note}" for note in reading.drag.test.notes)]
