"""How good a shop's own measuring is: operators x axles x repeats, every cell the same number of recordings.

    heldwheel-read repeatability study/ --operator operator --axle axle

Each recording is one repeat: its value is the median of its valid pulls. The tags name operator and axle.
"""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

from analysis.doors.asking import add_reading_options
from analysis.doors.groups import QUANTITIES, read_runs
from logger.door import Exit

if TYPE_CHECKING:
    from analysis.repeatability import Study


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="recordings, folders, or patterns in quotes")
    parser.add_argument("--operator", default="operator", metavar="TAG", help="tag that names the operator")
    parser.add_argument("--axle", default="axle", metavar="TAG", help="tag that names the axle (or side)")
    parser.add_argument("--quantity", choices=QUANTITIES, default="breakaway", help="what is studied (breakaway)")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel repeatability 1')")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from dataclasses import asdict

    from analysis.repeatability import cells, study
    from analysis.runs import Quantity
    from logger import console

    runs, bad = read_runs(args)
    found = study(cells(runs, Quantity(args.quantity), axle=args.axle, operator=args.operator))
    for line in bad:
        console.note(f"skipped: {line}")
    if args.json:
        console.say(json.dumps({"schema": "heldwheel repeatability 1", **asdict(found)}, ensure_ascii=False))
    else:
        if any(run.simulated for run in runs):
            console.say("SIMULATED DATA")
        _show(found)
    return Exit.BAD_INPUT if bad else Exit.OK


def _show(found: Study) -> None:
    from logger import console

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
    levels = max(1, int(found.categories))
    pooled = "; interaction pooled" if found.pooled else ""
    console.say(f"Measuring takes {found.percent:.0f} % of the whole spread: {levels} levels told apart{pooled}.")
