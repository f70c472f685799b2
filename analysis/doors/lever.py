"""Correct a reading for the lever; also a dial reading typed in, with its interval and a result against a limit."""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING, cast

from analysis.doors.options import LIMIT_HELP, add_limit_options, percent_from
from logger.doors.lever_limit import LEVER_HELP, QUANTITIES, add_lever_options, lever_from, limit_from
from logger.edges.door import Exit
from logger.edges.units import canonical_unit, parse_quantity
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.to_axle.dial import Dial
    from analysis.to_axle.lever import Fixture
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.limits import Bounds, Result
    from analysis.verdict.repeats import JobValue
    from logger.edges.units import Kind


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
    parser.usage = f"{parser.prog} --lever LENGTH --stud-circle CIRCLE [--reading TORQUE] [options]"
    add_lever_options(parser)
    group = parser.add_argument_group("reading")
    group.add_argument("--reading", action="append", metavar="TORQUE", help="what the dial showed; once for each pull")
    group.add_argument("--mark-spacing", metavar="TORQUE", help="scale division of the dial")
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
    from analysis.to_axle.fixtures import fixture_from
    from analysis.verdict.limits import bounds_from
    from logger.edges.toml_file import write_toml

    lever = lever_from(args)
    if lever is None:
        raise InputError("describe the lever: --lever 450mm --stud-circle 5x114.3mm, or --fixture; see --help")
    fixture = fixture_from(lever, file=args.fixture_file or "options")
    limit = limit_from(args, held=args.held)
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
    from analysis.doors.shown import budget_table
    from analysis.uncertainty.budget import propagate
    from analysis.verdict.recorded import budget_json
    from logger.edges.console import note, say

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
                "inputs": budget_json(budget)["rows"],
            }
        )
        return Exit.OK
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
    from analysis.doors.shown import exit_for
    from analysis.to_axle.dial import dial_reading
    from analysis.verdict.recorded import budget_json
    from analysis.verdict.repeats import job_value

    shown, unit = _shown(args, fixture)
    dial = _dial(args, fixture)
    quantity = args.quantity or (bounds.quantity if bounds is not None else "breakaway")
    pulls = [dial_reading(value, dial, fixture, quantity=quantity) for value in shown]
    job = job_value(pulls, repeatability=percent_from(args.repeatability, "--repeatability"))
    notes = (*fixture.notes, *dial.doubts(min(shown)), *job.notes)
    result = _result(args, job.budget, bounds)
    disagreement = _monte_carlo(pulls[0], fixture) if args.monte_carlo else ""
    notes = (*notes, disagreement) if disagreement else notes
    if args.json:
        _print_json(
            {
                "schema": "heldwheel lever 1",
                "fixture": fixture.kind,
                "factor": fixture.factor,
                "quantity": quantity,
                "readings": [{"at_sensor": x, "at_axle_nm": b.value} for x, b in zip(shown, pulls, strict=True)],
                "at_axle_nm": job.budget.value,
                "u95_axle_nm": job.budget.u95,
                "result": result.to_json() if result is not None else None,
                "budget": budget_json(job.budget),
                "notes": list(notes),
            }
        )
    else:
        _show(args, fixture, pulls, job, unit, result, notes)
    return exit_for([result] if result is not None else [])


def _result(args: argparse.Namespace, budget: Budget, bounds: Bounds | None) -> Result | None:
    from analysis.verdict.limits import decide, decided_by

    if bounds is None:
        return None
    if bounds.quantity != budget.quantity:
        raise InputError(f"the limit is for {bounds.quantity}, the reading is a {budget.quantity}: no comparison")
    rule, guard = decided_by(None, args.rule, args.guard)
    return decide(budget.value, budget.u, bounds, dof=budget.dof, rule=rule, guard=guard)


def _monte_carlo(pull: Budget, fixture: Fixture) -> str:
    """Check the budget of one reading by trials; empty where both agree."""
    from analysis.to_axle.at_axle import TracedTorque, trials_model
    from analysis.uncertainty.montecarlo import disagreement, monte_carlo

    row = pull.row("trace").input
    inputs, model = trials_model(TracedTorque(pull.quantity, row.value, row.u), fixture, pull)
    return disagreement(pull, monte_carlo(model, inputs)) or "Monte Carlo (1e6 trials) agrees with the budget"


def _show(
    args: argparse.Namespace,
    fixture: Fixture,
    pulls: list[Budget],
    job: JobValue,
    unit: str,
    result: Result | None,
    notes: tuple[str, ...],
) -> None:
    from analysis.doors.shown import both_units, budget_table
    from logger.edges.console import note, say

    for text, pull in zip(args.reading, pulls, strict=True):
        say(f"{text} shown, {fixture.kind}: {both_units(pull.value, None, unit)} at the axle")
    name = job.budget.quantity if len(pulls) == 1 else f"{job.budget.quantity}, median of {len(pulls)}"
    say(f"{name}: {both_units(job.budget.value, job.budget.u95, unit)} (95 %)")
    if result is not None:
        say(result.words)
    if args.budget:
        budget_table(job.budget, unit)
    for line in (*notes, *(result.notes if result is not None else ())):
        note(f"note: {line}")


def _shown(args: argparse.Namespace, fixture: Fixture) -> tuple[list[float], str]:
    """Read the readings in SI, and the unit to answer in."""
    kind = cast("Kind", fixture.reads)
    values = [parse_quantity(text, kind) for text in args.reading]
    unit = args.unit or (_unit_of(args.reading[0]) if kind == "torque" else "N·m")
    return values, canonical_unit(unit)


def _unit_of(text: str) -> str:
    return text.strip().lstrip("+-0123456789.,eE ")


def _dial(args: argparse.Namespace, fixture: Fixture) -> Dial:
    from analysis.to_axle.dial import Dial

    kind = cast("Kind", fixture.reads)
    marks, full = (
        None if text is None else parse_quantity(text, kind) for text in (args.mark_spacing, args.full_scale)
    )
    return Dial(marks, percent_from(args.dial_class, "--class"), full)


def _print_json(value: object) -> None:
    from logger.edges.console import say

    say(json.dumps(value, ensure_ascii=False, indent=1, allow_nan=False))
