"""Correct a reading for the lever; also a dial reading typed in, with its interval and a result against a limit."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from analysis.doors.options import LEVER_HELP, LIMIT_HELP, QUANTITIES, add_lever_options, add_limit_options
from logger.door import Exit

if TYPE_CHECKING:
    from analysis.budget import Budget
    from analysis.dial import Dial
    from analysis.lever import Fixture
    from analysis.limits import Bounds
    from analysis.repeats import JobValue


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.epilog = (
        "examples:\n"
        "  heldwheel-read lever --lever 17.5in --stud-circle 4.25in\n"
        '  heldwheel-read lever --lever 450mm --stud-circle 5x114.3mm --reading "18 lbf·ft" \\\n'
        '      --mark-spacing "5 lbf·ft" --class 4% --full-scale "250 lbf·ft" \\\n'
        '      --limit "breakaway >= 20 lbf·ft" --source "workshop manual" --budget\n'
        '  heldwheel-read lever --fixture cord --radius 8.3125in --reading "24 lbf"\n\n'
        f"{LEVER_HELP}\n\n{LIMIT_HELP}\n\n"
        "exit codes: 0 within or no limit, 1 outside, 2 bad input, 3 too close to call"
    )
    add_lever_options(parser)
    group = parser.add_argument_group("reading")
    group.add_argument("--reading", action="append", metavar="TORQUE", help="what the dial showed; once for each pull")
    group.add_argument("--mark-spacing", metavar="TORQUE", help="distance of two marks of the dial")
    group.add_argument("--class", dest="dial_class", metavar="PERCENT", help="greatest error, percent of reading: 4%%")
    group.add_argument("--full-scale", metavar="TORQUE", help="upper end of its range")
    group.add_argument(
        "--quantity", choices=QUANTITIES, help="what was read; default: what the limit names, or breakaway"
    )
    group.add_argument("--repeatability", metavar="PERCENT", help="pull-to-pull scatter, used under three readings")
    group.add_argument("--unit", default=None, metavar="UNIT", help="unit of the answer; default: that of the reading")
    group.add_argument("--budget", action="store_true", help="show what each input contributes")
    group.add_argument("--monte-carlo", action="store_true", help="check the interval by a million trials")
    add_limit_options(parser)
    parser.add_argument("--save", metavar="FILE", help="write the lever as TOML, to pick it later")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(args: argparse.Namespace) -> int:
    """Do it."""
    from analysis.doors.options import lever_from, limit_from
    from analysis.fixtures import fixture_from
    from analysis.limits import bounds_from
    from logger.errors import InputError
    from logger.toml_file import write_toml

    lever = lever_from(args)
    if lever is None:
        raise InputError("describe the lever: --lever 450mm --stud-circle 5x114.3mm, or --fixture; see --help")
    fixture = fixture_from(lever, file=args.lever_file or "options")
    limit = limit_from(args)
    bounds = bounds_from(limit, file=args.limit) if limit is not None else None
    if args.save:
        write_toml(args.save, lever)
    if not args.reading:
        if bounds is not None:
            raise InputError("a limit needs a reading to compare: add --reading")
        return _factors(fixture, as_json=args.json, saved=args.save)
    return _readings(args, fixture, bounds)


def _factors(fixture: Fixture, *, as_json: bool, saved: str | None) -> int:
    """Show the factor, and the table of what each input does to it."""
    from analysis.budget import propagate
    from logger.console import note, say

    unit = {"torque": "1", "force": "N·m per N", "mass": "N·m per kg"}[fixture.reads]
    budget = propagate("factor", fixture.factor_at, fixture.inputs, unit, slopes=fixture.slopes)
    if as_json:
        _print_json(
            {
                "schema": "heldwheel lever 1",
                "fixture": fixture.kind,
                "factor": budget.value,
                "u95": budget.u95,
                "reads": fixture.reads,
                "notes": list(fixture.notes),
                "inputs": [_input_json(row) for row in budget.rows],
            }
        )
        return Exit.OK
    from analysis.doors.shown import budget_table

    times = "" if unit == "1" else f" {unit}"
    say(f"{fixture.kind}: torque at the axle = {budget.value:.4f}{times} × what is read  (± {budget.u95:.2g}, 95 %)")
    if fixture.inputs:
        budget_table(budget, title="What the factor depends on")
    for line in fixture.notes:
        note(f"note: {line}")
    if saved:
        note(f"saved: {saved}")
    return Exit.OK


def _readings(args: argparse.Namespace, fixture: Fixture, bounds: Bounds | None) -> int:
    """Take typed readings through lever, budget and decision."""
    from analysis.dial import dial_reading
    from analysis.repeats import job_value, single_pull

    shown, unit = _shown(args, fixture)
    dial = _dial(args, fixture)
    quantity = args.quantity or (bounds.quantity if bounds is not None else "breakaway")
    pulls = [dial_reading(value, dial, fixture, quantity=quantity) for value in shown]
    job = job_value(pulls, repeatability=_percent(args.repeatability, "--repeatability"))
    judged = job.budget if len(pulls) > 1 else single_pull(pulls[0], job)
    notes = (*fixture.notes, *dial.doubts(shown[0]), *job.notes)
    return _answer(args, fixture, pulls, job, judged, unit, bounds, notes)
