"""Compare a torque and its uncertainty with a limit: probability of conformity, and every rule side by side."""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

from analysis.doors.options import LIMIT_HELP, add_limit_options, limit_doubts
from logger.doors.lever_limit import limit_from
from logger.edges.units import canonical_unit, parse_number, parse_quantity
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.verdict.limits import Bounds, Result


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.epilog = (
        "examples:\n"
        '  heldwheel-read limit 28.5Nm --u95 1.2Nm --limit "breakaway >= 20 lbf·ft" --source "workshop manual"\n'
        "  heldwheel-read limit 28.5Nm --u95 1.2Nm --limit rear.limit.toml --rule guarded-acceptance\n"
        '  heldwheel-read limit 2.67 --u95 0.15 --limit "ratio >= 2.5" --source "workshop manual"\n'
        '  heldwheel-read limit --limit "breakaway >= 20 lbf·ft" --source "workshop manual" --save rear.limit.toml\n'
        '  heldwheel-read limit 31Nm --u95 1.2Nm --limit rear.limit.toml --population "34 N·m" --spread "6 N·m"\n\n'
        f"{LIMIT_HELP}\n\n"
        "exit codes: 0 within, 1 outside, 2 bad input, 3 too close to call (by the rule asked for)"
    )
    parser.add_argument(
        "value", nargs="?", metavar="TORQUE", help="the result: 28.5Nm, '21 lbf·ft'; a ratio has no unit"
    )
    parser.add_argument("--u95", metavar="TORQUE", help="its expanded uncertainty, 95 %%")
    parser.add_argument("--dof", type=float, default=float("inf"), metavar="N", help="its degrees of freedom, if few")
    parser.add_argument("--unit", metavar="UNIT", help="unit of the answer; default: the limit's")
    add_limit_options(parser, nothing_else=True)
    group = parser.add_argument_group("risk over many axles")
    group.add_argument("--population", metavar="TORQUE", help="mean of the axles that come to be tested")
    group.add_argument("--spread", metavar="TORQUE", help="their standard deviation")
    parser.add_argument("--save", metavar="FILE", help="write the limit as TOML, to pick it later")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(args: argparse.Namespace) -> int:
    """Do it."""
    from analysis.doors.shown import exit_for
    from analysis.verdict.limits import Guard, Rule, bounds_from, decide, decided_by
    from logger.edges.console import note
    from logger.edges.toml_file import write_toml

    limit = limit_from(args, held=args.held)
    if limit is None:
        raise InputError("say which limit: --limit")
    bounds = bounds_from(limit, file=args.limit)
    for line in limit_doubts(limit):
        note(f"note: {line}")
    if args.save:
        write_toml(args.save, limit)
        note(f"saved: {args.save}")
    if args.value is None:
        if not args.save:
            raise InputError("say what to compare: a torque with its --u95, or --save to keep the limit")
        return 0
    if args.u95 is None:
        raise InputError("a value without --u95 cannot be judged honestly; if it really has none, write --u95 0Nm")
    if not args.dof >= 1:
        raise InputError("--dof must be 1 or more")
    value, u95 = (_read(text, bounds) for text in (args.value, args.u95))
    if u95 < 0:
        raise InputError("--u95 cannot be negative")
    u = _standard(u95, args.dof)
    results = [
        decide(value, u, bounds, dof=args.dof, rule=rule, guard=guard)
        for rule in Rule
        for guard in (Guard if rule is not Rule.SIMPLE else (Guard.U95,))
    ]
    rule, guard = decided_by(None, args.rule, args.guard)
    chosen = decide(value, u, bounds, dof=args.dof, rule=rule, guard=guard)
    _show(args, bounds, chosen, results)
    return exit_for([chosen])


def _read(text: str, bounds: Bounds) -> float:
    return parse_number(text) if bounds.written.is_ratio else parse_quantity(text, "torque")


def _standard(u95: float, dof: float) -> float:
    from analysis.uncertainty.budget import t_factor

    return u95 / t_factor(dof)


def _show(args: argparse.Namespace, bounds: Bounds, chosen: Result, results: list[Result]) -> None:
    from analysis.doors.shown import STYLES, both_units
    from analysis.verdict.limits import percent
    from logger.edges.console import note, say, table

    risks = _risks(args, bounds, results)
    if args.json:
        shown = chosen.to_json() | {"schema": "heldwheel limit 1", "rules": [r.to_json() for r in results]}
        say(json.dumps(shown | ({"risks": risks} if risks else {}), ensure_ascii=False, indent=1, allow_nan=False))
        return
    ratio = bounds.written.is_ratio
    unit = canonical_unit(args.unit or bounds.written.unit) if not ratio else ""
    value = f"{chosen.value:.3f} ± {chosen.u95:.2g}" if ratio else both_units(chosen.value, chosen.u95, unit)
    say(f"{value} (95 %) against {bounds.quantity} {bounds.words} ({bounds.source})")
    say(chosen.words)
    rows = []
    for i, r in enumerate(results):
        guard = "w = 0" if str(r.rule) == "simple" else f"w = {r.guard}"
        risk = [percent(x) for x in risks[i].values()] if risks else []
        rows.append((f"{r.rule}", guard, f"{r.shape} {r.state}", *risk))
    headings = ["rule", "guard band", "result"]
    if risks:
        headings += ["wrongly within", "wrongly outside"]
    table(headings, rows, styles=[STYLES[str(r.state)] for r in results])
    for line in chosen.notes:
        note(f"note: {line}")
    if risks:
        note("note: risks are shares of all axles that come to be tested, of the population stated")


def _risks(args: argparse.Namespace, bounds: Bounds, results: list[Result]) -> list[dict[str, float]]:
    """Give the shares of wrong decisions of each rule over a population of axles."""
    if args.population is None and args.spread is None:
        return []
    if args.population is None or args.spread is None:
        raise InputError("--population and --spread go together: mean and standard deviation")
    from analysis.verdict.limits import guard_band
    from analysis.verdict.risk import risks, torque_population

    population = torque_population(_read(args.population, bounds), _read(args.spread, bounds))
    found = []
    for r in results:
        w = 0.0 if str(r.rule) == "simple" else guard_band(r.u, r.dof, r.guard)
        pass_w, fail_w = {"guarded rejection": (-w, -w), "guarded acceptance": (w, w), "simple": (0.0, 0.0)}.get(
            str(r.rule), (w, -w)
        )
        wrongly_within, _ = risks(population, r.u, bounds.lower, bounds.upper, guard=pass_w)
        _, wrongly_outside = risks(population, r.u, bounds.lower, bounds.upper, guard=fail_w)
        found.append({"wrongly_within": wrongly_within, "wrongly_outside": wrongly_outside})
    return found
