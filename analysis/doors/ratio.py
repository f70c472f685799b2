"""Identify an axle's ratio by counting: ``i = 2N / (n_left + n_right)``.

Engine off and key away, car on stands, wheels on the floor chocked, brakes released: see heldwheel-read cautions.
Raise both driven wheels, gearbox in neutral. Turn one wheel ten times by its chalk mark, count the turns of the
propshaft (to an eighth) and of the *other* wheel: 0 if it was held, negative if it turned the other way.

    heldwheel-read ratio --propshaft 18 --left 10 --right 0
    heldwheel-read ratio --propshaft 3.1 --left 1 --right 1 --among 3.08 3.27 3.50
"""

from __future__ import annotations

import argparse
import json

from logger.edges.door import Exit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    from analysis.identify.ratio import PROPSHAFT_ERROR_TURNS

    parser.add_argument("--propshaft", type=float, required=True, metavar="N", help="turns of the propshaft")
    parser.add_argument("--left", type=float, required=True, metavar="n", help="turns of the left wheel; 0 if held")
    parser.add_argument("--right", type=float, required=True, metavar="n", help="turns of the right wheel; 0 if held")
    parser.add_argument(
        "--propshaft-error",
        type=float,
        default=PROPSHAFT_ERROR_TURNS,
        metavar="TURNS",
        help="limit of error of the propshaft's count (default: an eighth of a turn)",
    )
    parser.add_argument(
        "--wheel-error",
        type=float,
        default=0.0,
        metavar="TURNS",
        help="limit of error of a wheel's count (default 0: brought back to its mark)",
    )
    lists = parser.add_mutually_exclusive_group()
    lists.add_argument("--among", nargs="+", metavar="RATIO", help="compare with these only: 3.73 or 41/11")
    lists.add_argument("--list", metavar="FILE", help='your own list, a TOML file: ratios = [3.08, "41/11"]')
    parser.add_argument("--json", action="store_true", help="print the reading as JSON")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.identify.ratio import CANDIDATES, candidates_from, read_candidates, read_ratio

    candidates = CANDIDATES
    if args.among:
        candidates = candidates_from(args.among)
    elif args.list:
        candidates = read_candidates(args.list)
    reading = read_ratio(
        args.propshaft,
        args.left,
        args.right,
        propshaft_error_turns=args.propshaft_error,
        wheel_error_turns=args.wheel_error,
        candidates=candidates,
    )
    from logger.edges import console

    if args.json:
        console.say(json.dumps(reading.to_json(), ensure_ascii=False))
        return Exit.OK
    console.say(f"Ratio {reading.ratio:.3f}, between {reading.low:.3f} and {reading.high:.3f} by counting error")
    console.say(f"{reading.case.value}: {reading.formula}")
    console.say(reading.caution)
    console.table(
        ("ratio", "teeth", "difference", "inside the interval"),
        [
            (f"{n.candidate.ratio:.3f}", n.candidate.teeth, f"{n.difference:+.3f}", "yes" if n.inside else "no")
            for n in reading.neighbours
        ],
        right=(0, 2),
    )
    turns = reading.wheel_turns_to_settle
    if reading.settled:
        console.say("Settled: one ratio of the list lies inside.")
    else:
        console.say("Not settled by this count.")
    if turns:
        console.say(f"{turns} whole wheel turns counted this way tell the two nearest ratios apart in any case.")
    console.say("Tags and codes can be wrong after a swap; the tooth count, ring ÷ pinion, is exact.")
    return Exit.OK
