"""Take drag off: pack mean from held and both-free tests, what left and right say, and the in-gear ÷ neutral ratio."""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

from analysis.doors.asking import add_reading_options, asked_of, keep_answers
from logger.edges.door import Exit
from logger.edges.units import canonical_unit
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.pipeline import Asked
    from analysis.to_axle.drag import DragTest
    from analysis.verdict.limits import Bounds
    from analysis.verdict.recorded import RecordingReading

ABOUT = """\
examples:
  heldwheel-read drag --right right.csv --left left.csv --both-free free.csv
  heldwheel-read drag --right right.csv --both-free free.csv
  heldwheel-read drag --right driven.csv --held-end reaction.csv      two transducers at once, no baseline needed
  heldwheel-read drag --in-gear gear.csv --neutral neutral.csv --limit "ratio >= 2.5" --source "workshop manual"

Turn the baseline (both wheels free, neutral, brakes free) at half the wheel speed of the held tests. Raw torque and
pack mean are both shown: a limit is nearly always for raw torque, drag included.

exit codes: 0 done, or the ratio within its limit; 1 outside; 2 bad input; 3 too close to call"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.epilog = ABOUT
    parser.usage = f"{parser.prog} --right FILE --left FILE --both-free FILE [options]"
    parser.add_argument("--right", metavar="FILE", help="right wheel turned, the left held")
    parser.add_argument("--left", metavar="FILE", help="left wheel turned, the right held")
    parser.add_argument("--both-free", metavar="FILE", help="the baseline: both wheels free, one turned")
    parser.add_argument("--held-end", metavar="FILE", help="a second transducer on the held shaft, at the same time")
    parser.add_argument("--in-gear", metavar="FILE", help="both wheels free, a gear engaged")
    parser.add_argument("--neutral", metavar="FILE", help="both wheels free, neutral")
    parser.add_argument("--unit", metavar="UNIT", default="N·m", help="unit of the table")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel drag 1')")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Do it."""
    from analysis.verdict.limits import bounds_from

    asked = asked_of(args)
    if bool(args.in_gear) != bool(args.neutral):
        raise InputError("--in-gear and --neutral go together")
    if args.in_gear:
        bounds = bounds_from(asked.limit, file=args.limit) if asked.limit is not None else None
        return _ratio(args, asked, bounds)
    if not (args.right or args.left):
        raise InputError("give a held test, --right or --left, and the baseline, --both-free; see --help")
    if args.held_end:
        return _ends(args, asked)
    from analysis.verdict.sides import drag_test

    held = {side: _read(path, asked) for side, path in (("right", args.right), ("left", args.left)) if path}
    both = _read(args.both_free, asked) if args.both_free else None
    for reading in held.values():
        if both is not None and reading.sha256 == both.sha256:
            raise InputError(f"{reading.file} is given as the held test and as its own baseline with both free")
    _show(args, drag_test(held, both), simulated=any(r.simulated for r in (*held.values(), *((both,) if both else ()))))
    return Exit.OK


def _read(path: str, asked: Asked) -> RecordingReading:
    from analysis.pipeline import read_file
    from logger.edges.console import note

    reading = read_file(path, asked)
    keep_answers([reading], asked)
    for text in reading.problems:
        note(f"{path}: {text}")
    return reading


def _show(args: argparse.Namespace, test: DragTest, *, simulated: bool) -> None:
    from analysis.to_axle.drag import rolling
    from logger.edges.console import say, table
    from logger.edges.units import format_torque

    if args.json:
        say(json.dumps(test.to_json() | {"simulated": simulated}, ensure_ascii=False, indent=1, allow_nan=False))
        return
    unit = canonical_unit(args.unit)
    rows = []
    for quantity, matrix in test.raw.items():
        for (side, direction), b in matrix.cells.items():
            rows.append(
                (f"{side} wheel turned", rolling(side, direction), quantity, format_torque(b.value, unit, b.u95), "")
            )
    for (quantity, way), b in test.baseline.items():
        rows.append(("both free", way, quantity, format_torque(b.value, unit, b.u95), ""))
    for m in test.means:
        shown = format_torque(m.budget.value, unit, m.budget.u95) if m.budget is not None else "–"
        rows.append(("pack mean", m.way, m.quantity, shown, m.how))
    title = "SIMULATED  " if simulated else ""
    table(("what", "rolling", "quantity", "at the axle", "how"), rows, title=f"{title}Torque with and without drag")
    for text in test.notes:
        say(f"  {text}")


def _ends(args: argparse.Namespace, asked: Asked) -> int:
    """Show what sensors at both ends say."""
    from analysis.verdict.sides import both_ends
    from logger.edges.console import say
    from logger.edges.units import format_torque

    if bool(args.right) == bool(args.left):
        raise InputError("--held-end goes with the recording of the turned wheel: --right or --left, not both")
    driven = _read(args.right or args.left, _without_limit(asked))
    held = _read(args.held_end, _without_limit(asked))
    found = both_ends(driven, held)
    simulated = driven.simulated or held.simulated
    if args.json:
        values = [
            {
                "quantity": e.quantity,
                "pack_mean_nm": e.mean.value,
                "u95_pack_mean_nm": e.mean.u95,
                "driveline_nm": e.driveline.value,
                "u95_driveline_nm": e.driveline.u95,
            }
            for e in found
        ]
        say(json.dumps({"schema": "heldwheel drag 1", "simulated": simulated, "both_ends": values}, allow_nan=False))
        return Exit.OK
    unit = canonical_unit(args.unit)
    for e in found:
        mark = "SIMULATED  " if simulated else ""
        mean, drag = (format_torque(b.value, unit, b.u95) for b in (e.mean, e.driveline))
        say(f"{mark}{e.quantity}: pack mean {mean}, driveline drag {drag}")
    say("  the turned wheel end's own drag is in both: half of it in the mean, all of it in the driveline's")
    return Exit.OK


def _ratio(args: argparse.Namespace, asked: Asked, bounds: Bounds | None) -> int:
    from analysis.doors.shown import exit_for
    from analysis.rows.gear import judged_ratio, read_halves
    from logger.edges.console import note, say

    halves = read_halves(args.in_gear, args.neutral, asked)
    for reading in halves:
        for text in reading.problems:
            note(f"{reading.file}: {text}")
    found = judged_ratio(*halves, bounds, rule=asked.rule, guard=asked.guard)
    budget, result = found.budget, found.result
    if args.json:
        shown = {"schema": "heldwheel drag 1", "ratio": budget.value, "u95": budget.u95}
        judged = {"result": result.to_json() if result is not None else None}
        say(json.dumps(shown | judged, ensure_ascii=False, indent=1, allow_nan=False))
    else:
        say(f"in gear ÷ neutral: {budget.value:.3f} ± {budget.u95:.2g} (95 %)")
        for text in found.doubts:
            say(f"  {text}")
        if result is not None:
            say(result.words)
    return exit_for([result] if result is not None else [])


def _without_limit(asked: Asked) -> Asked:
    from dataclasses import replace

    return replace(asked, limit=None)
