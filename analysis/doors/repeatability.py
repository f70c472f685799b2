"""How good a workshop's own measuring is: operators x axles x repeats, every cell the same number of recordings.

    heldwheel-read repeatability study/ --operator operator --axle axle
    heldwheel-read repeatability both/ --ways transducer           two transducers on the same axles

Each recording is one repeat: its value is the median of its valid pulls. The tags name operator and axle.
"""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

from analysis.doors.asking import add_reading_options
from analysis.doors.groups import add_quantity, read_runs
from logger.edges.door import Exit

if TYPE_CHECKING:
    from analysis.compare.repeatability import LimitsOfAgreement, Study


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="recordings, folders, or patterns in quotes")
    parser.add_argument("--operator", default="operator", metavar="TAG", help="tag that names the operator")
    parser.add_argument("--axle", default="axle", metavar="TAG", help="tag that names the axle (or side)")
    parser.add_argument("--ways", metavar="TAG", help="instead: how two transducers or operators agree, axle by axle")
    add_quantity(parser, "what is studied (breakaway)")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel repeatability 1')")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from dataclasses import asdict

    from analysis.compare.repeatability import agreement, cells, pairs, study
    from analysis.compare.runs import Quantity
    from logger.edges import console

    runs, bad = read_runs(args)
    quantity = Quantity(args.quantity)
    for line in bad:
        console.note(f"skipped: {line}")
    if any(run.simulated for run in runs) and not args.json:
        console.say("SIMULATED DATA")
    if args.ways:
        names, a, b = pairs(runs, quantity, axle=args.axle, way=args.ways)
        agreed = agreement(a, b)
        said = {"ways": list(names), **asdict(agreed)}
    else:
        names, agreed = ("", ""), None
        found = study(cells(runs, quantity, axle=args.axle, operator=args.operator), unit=quantity.unit)
        said = asdict(found)
    if args.json:
        simulated = any(run.simulated for run in runs)
        body = {"schema": "heldwheel repeatability 1", "simulated": simulated, **said}
        console.say(json.dumps(body, ensure_ascii=False))
    elif agreed is not None:
        _show_agreement(names, agreed, quantity.unit)
    else:
        _show(found)
    return Exit.BAD_INPUT if bad else Exit.OK


def _show_agreement(names: tuple[str, str], agreed: LimitsOfAgreement, unit: str) -> None:
    from logger.edges import console

    u = "" if unit == "1" else f" {unit}"
    console.say(
        f"{names[0]} reads {agreed.bias:+.3g}{u} beside {names[1]}, 95 % {agreed.low:+.3g} to {agreed.high:+.3g}; "
        f"{agreed.n} axles"
    )
    console.say(
        f"Single differences lie between {agreed.limit_low:+.3g} and {agreed.limit_high:+.3g}{u} in 95 % of axles "
        "(limits of agreement)."
    )


def _show(found: Study) -> None:
    from logger.edges import console

    console.say(found.text)
    console.table(
        ("scatter", "standard deviation", "share of variance"),
        [
            (name, f"{sd:.3g}", f"{(sd / found.total) ** 2 * 100:.1f} %")
            for name, sd in (
                ("same operator again", found.repeatability),
                ("operator to operator", found.reproducibility),
                ("measuring, both together", found.measuring),
                ("axle to axle", found.axles),
                ("everything", found.total),
            )
        ],
        right=(1, 2),
    )
    pooled = "; interaction pooled" if found.pooled else ""
    console.say(f"Measuring takes {found.percent:.0f} % of the whole spread: {found.levels} levels told apart{pooled}.")
