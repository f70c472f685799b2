"""Compare groups of recordings by any tag: oils, builds, before and after, left and right.

The unit of experiment is a fill (or build): pulls are taken together to recordings, recordings to fills by the tag
that --fill names. With two groups the difference is Welch's (or within --block), with more Dunnett's against the
control, or Tukey's for all pairs. The effect and its 95 % interval come first, p second.

    heldwheel-read groups season/ --by modifier --control none
    heldwheel-read groups season/ --by modifier --control none --quantity breakaway/rotating --margin 0.05
    heldwheel-read groups season/ --by modifier --all-pairs --json

Tags are the recordings' own, and the facts of their headers: modifier, side, operator, vehicle, pack_build ...
"""

from __future__ import annotations

import argparse
import json
import math
import re
from typing import TYPE_CHECKING

from analysis.doors.asking import add_reading_options, asked_of, recordings_in
from logger.edges.door import Exit

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.compare.comparisons import Effect
    from analysis.compare.groups import Comparison
    from analysis.compare.runs import Run

QUANTITIES = ("breakaway", "rotating", "breakaway ÷ rotating", "chatter index", "torque-speed slope")


def add_quantity(parser: argparse.ArgumentParser, about: str) -> None:
    """Add the option that names a quantity; the sign of a ratio may be typed as a stroke."""
    parser.add_argument(
        "--quantity",
        type=lambda text: re.sub(r"\s*/\s*", " ÷ ", text),
        choices=QUANTITIES,
        default="breakaway",
        help=f"{about}; “breakaway/rotating” may be typed for the ratio",
    )


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="recordings, folders, or patterns in quotes")
    parser.add_argument("--by", required=True, metavar="TAG", help="tag that names the group")
    parser.add_argument("--fill", default="fill", metavar="TAG", help="tag that names the fill or build (fill)")
    parser.add_argument("--block", default="", metavar="TAG", help="tag that names the block: day, operator")
    parser.add_argument("--control", metavar="GROUP", help="group that the others are compared with (the first)")
    parser.add_argument("--all-pairs", action="store_true", help="every pair instead of against the control")
    add_quantity(parser, "what is compared (breakaway)")
    parser.add_argument("--margin", type=float, help="no-change margin: test sameness as well")
    parser.add_argument("--anyway", default="", metavar="REASON", help="compare although the settings forbid it")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel groups 1')")
    add_reading_options(parser)


def read_runs(args: argparse.Namespace) -> tuple[list[Run], list[str]]:
    """Read the recordings of a comparison; those that cannot be read are listed."""
    from analysis.pipeline import read_files
    from analysis.rows.summary import run_of

    runs, bad = [], []
    for reading in read_files(recordings_in(args.files), asked_of(args)):
        if reading.ok:
            runs.append(run_of(reading))
        else:
            bad.append("; ".join(reading.problems))
    return runs, bad


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.compare.groups import compare
    from analysis.compare.runs import Quantity
    from logger.edges import console

    runs, bad = read_runs(args)
    found = compare(
        runs,
        Quantity(args.quantity),
        by=args.by,
        control=args.control,
        unit=args.fill,
        block=args.block,
        against="all pairs" if args.all_pairs else "control",
        margin=args.margin,
        anyway=args.anyway,
    )
    for line in bad:
        console.note(f"skipped: {line}")
    if args.json:
        console.say(json.dumps(found.to_json(), ensure_ascii=False, allow_nan=False))
    else:
        _show(found, args.by)
    return Exit.BAD_INPUT if bad else Exit.OK


def _show(found: Comparison, by: str) -> None:
    from logger.edges import console

    unit = "" if found.quantity.unit == "1" else f" {found.quantity.unit}"
    if found.simulated:
        console.say("SIMULATED DATA")
    for effect in found.effects:
        console.say(_verdict(effect, found.quantity.value))
        console.say(_words(effect, found.quantity.value, unit))
    for name, same in found.equivalences.items():
        what = "no change" if same.equivalent else "sameness is not shown"
        low, high = same.difference.low, same.difference.high
        console.say(
            f"{name}: {what} within ± {same.margin:g}{unit} (90 % interval {low:+.3g} to {high:+.3g}, {_p(same.p)})"
        )
    for name, boot in found.bootstrap.items():
        console.say(f"{name}: bootstrap interval {boot.low:+.3g} to {boot.high:+.3g}{unit}")
    console.table(
        (by, "fills", "recordings", "pulls", f"mean{unit}", "95 % interval", "sd of fills"),
        [
            (
                group.name,
                str(len(group.units)),
                str(group.runs),
                str(group.pulls),
                f"{group.mean:.4g}",
                "–" if math.isnan(group.low) else f"{group.low:.4g} to {group.high:.4g}",
                "–" if math.isnan(group.sd) else f"{group.sd:.2g}",
            )
            for group in found.groups
        ],
        right=(1, 2, 3, 4, 5, 6),
    )
    _scatter(found, unit)
    _lines("warning", found.comparability.warnings)
    _lines("not checked", found.comparability.unknown)
    _lines("note", found.remarks)
    if found.excluded:
        console.say(f"{len(found.excluded)} pulls excluded by the rules stated beforehand:")
        _lines(" ", found.excluded)


def _scatter(found: Comparison, unit: str) -> None:
    from logger.edges import console

    if not math.isnan(found.overall_p):
        console.say(f'Against "no group differs": {_p(found.overall_p)} (one-way analysis of variance)')
    if not math.isnan(found.between_sd):
        within = (
            ""
            if math.isnan(found.within_sd)
            else f", from recording to recording of one fill {found.within_sd:.2g}{unit}"
        )
        console.say(f"Scatter from fill to fill {found.between_sd:.2g}{unit}{within}: for heldwheel-read plan --sd")


def _verdict(effect: Effect, quantity: str) -> str:
    """Say first what is shown: by the interval, which decides."""
    if not effect.shown:
        return f"{effect.treated} against {effect.control}: a difference in {quantity} is not shown"
    return f"{effect.treated} against {effect.control}: {'more' if effect.difference.value > 0 else 'less'} is shown"


def _words(effect: Effect, quantity: str, unit: str) -> str:
    d = effect.difference
    ratio = ""
    if effect.ratio is not None:
        r = effect.ratio
        ratio = f"; {(r.value - 1) * 100:+.1f} % ({(r.low - 1) * 100:+.1f} to {(r.high - 1) * 100:+.1f})"
    return (
        f"{effect.treated} against {effect.control}, {quantity}: {d.value:+.3g}{unit}, "
        f"95 % {d.low:+.3g} to {d.high:+.3g}{ratio}; "
        f"{_p(effect.p)}, {effect.n_treated} and {effect.n_control} fills, {effect.method}"
    )


def _p(p: float) -> str:
    """Write a p value without digits that mean nothing."""
    return "p < 0.0001" if p < 1e-4 else f"p = {p:.2g}"


def _lines(label: str, lines: Sequence[str]) -> None:
    from logger.edges import console

    for line in lines:
        console.say(f"{label}: {line}" if label.strip() else f"  {line}")
