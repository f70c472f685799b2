"""Plan a comparison: how many fills (or builds) it needs, and in which order to test them.

The unit of experiment is a fill (drain, flush, fill, run-in), not a pull: more pulls of one fill do not replace
another fill. The scatter from fill to fill comes from a pilot of three or four fills.

    heldwheel-read plan --sd 1.5 --difference 3
    heldwheel-read plan --sd 1.5 --difference 3 --candidates 3
    heldwheel-read plan --sd 1.5 --difference 3 --no-blocks    (compared without --block)
    heldwheel-read plan --sd 1.5 --margin 2                    (to show "no change beyond 2")
    heldwheel-read plan --sd 1.5 --half-width 0.8              (repeats for an interval of ± 0.8)
    heldwheel-read plan --order reference "oil B" "oil C" --blocks 4 --seed 7
"""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

from logger.edges.door import Exit

if TYPE_CHECKING:
    from analysis.compare.planner import Plan


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("--sd", type=float, help="standard deviation from fill to fill, in any unit")
    what = parser.add_mutually_exclusive_group(required=True)
    what.add_argument("--difference", type=float, help="difference that must not be missed, in the same unit")
    what.add_argument("--margin", type=float, help="no-change margin")
    what.add_argument("--half-width", type=float, help="wanted half width of the 95 %% interval of a mean")
    what.add_argument("--order", nargs="+", metavar="GROUP", help="groups to put in a randomised block order")
    parser.add_argument("--candidates", type=int, default=1, help="groups compared with the one control (default 1)")
    parser.add_argument(
        "--no-blocks",
        action="store_true",
        help="fills in any order, compared without --block; otherwise every group once in each block (a day)",
    )
    parser.add_argument("--power", type=float, default=0.80, help="chance of showing it if it is there (default 0.8)")
    parser.add_argument("--alpha", type=float, default=0.05, help="chance of showing what is not there (default 0.05)")
    parser.add_argument("--blocks", type=int, default=3, help="days, operators or warm-ups, for --order (default 3)")
    parser.add_argument("--again", type=int, default=0, help="blocks with a second test of the first group (default 0)")
    parser.add_argument("--seed", type=int, help="makes the order repeatable; chosen and shown if not given")
    parser.add_argument("--json", action="store_true", help="print the plan as JSON")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.compare import planner
    from logger.edges import console
    from logger.errors import InputError

    if args.order:
        return _order(args)
    if args.sd is None:
        raise InputError("--sd is missing: the scatter from fill to fill, from a pilot of three or four fills")
    if args.half_width is not None:
        n = planner.repeats_for_interval(args.sd, args.half_width)
        text = f"{n} values give an interval of ± {args.half_width:g} or less"
        console.say(json.dumps({"schema": "heldwheel plan 1", "values": n}) if args.json else text)
        return Exit.OK
    if args.margin is not None:
        plan = planner.equivalence_needed(
            args.sd, args.margin, power=args.power, alpha=args.alpha, blocked=not args.no_blocks
        )
    else:
        plan = planner.fills_needed(
            args.sd,
            args.difference,
            candidates=args.candidates,
            power=args.power,
            alpha=args.alpha,
            blocked=not args.no_blocks,
        )
    console.say(_as_json(plan) if args.json else _as_text(plan))
    return Exit.OK


def _as_json(plan: Plan) -> str:
    from dataclasses import asdict

    return json.dumps({"schema": "heldwheel plan 1", **asdict(plan)}, ensure_ascii=False)


def _as_text(plan: Plan) -> str:
    return (
        f"{plan.per_group} fills of each candidate and {plan.control} of the control, {plan.total} in all (power "
        f"{plan.power:.0%}):\n{plan.text}.\nA fill is the unit; take the pulls of one fill together first."
    )


def _order(args: argparse.Namespace) -> int:
    import secrets

    from analysis.compare.planner import run_order
    from logger.edges import console

    seed = secrets.randbelow(1_000_000) if args.seed is None else args.seed
    order = run_order(args.order, args.blocks, seed=seed, again=args.again)
    if args.json:
        console.say(json.dumps({"schema": "heldwheel order 1", "seed": seed, "blocks": order}, ensure_ascii=False))
        return Exit.OK
    for i, block in enumerate(order, 1):
        console.say(f"block {i}: " + ", then ".join(block))
    console.say(f"seed {seed}: put it on the record; the same seed gives the same order")
    return Exit.OK
