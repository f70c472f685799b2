"""Find a stud circle from the stud-to-stud distance, centre to centre.

Measure stud edge to stud edge on the same side: that is centre to centre. On an odd number of studs none lies
opposite another. Several distances check each other.

    heldwheel-read stud-circle --studs 5 --chord 67.2mm
    heldwheel-read stud-circle --studs 5 --chord 67.2mm 1 --chord 108.7mm 2
"""

from __future__ import annotations

import argparse
import json

from logger.edges.door import Exit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("--studs", type=int, required=True, help="number of studs on the hub")
    parser.add_argument(
        "--chord",
        nargs="+",
        action="append",
        required=True,
        metavar=("LENGTH", "APART"),
        help="distance with its unit, and how many studs apart the two are (default 1, adjacent); may be repeated",
    )
    parser.add_argument("--chord-u", default="0.5mm", metavar="LENGTH", help="its standard uncertainty (0.5mm)")
    parser.add_argument("--json", action="store_true", help="print the circle as JSON")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.identify.stud_circle import circle_from_chords
    from logger.edges import console
    from logger.edges.units import parse_quantity

    chords = [_chord(words) for words in args.chord]
    circle = circle_from_chords(args.studs, chords, u_chord_m=parse_quantity(args.chord_u, "length"))
    if args.json:
        console.say(json.dumps(circle.to_json(), ensure_ascii=False))
        return Exit.OK
    console.say(
        f"Stud circle {circle.diameter_m * 1e3:.1f} mm, standard uncertainty {circle.u_m * 1e3:.1f} mm, "
        f"{circle.studs} studs"
    )
    if len(chords) > 1:
        console.say(f"The distances agree within {circle.spread_m * 1e3:.1f} mm of circle.")
    if circle.near_mm:
        console.say("Common circles near it: " + ", ".join(f"{mm:g} mm" for mm in circle.near_mm))
    console.say(
        f"A bar bolted to these two studs has its middle {circle.midpoint_m * 1e3:.1f} mm off the wheel's centre."
    )
    return Exit.OK


def _chord(words: list[str]) -> tuple[float, int]:
    from logger.edges.units import parse_quantity
    from logger.errors import InputError

    if len(words) > 2 or (len(words) == 2 and not words[1].isdecimal()):
        raise InputError(f"--chord {' '.join(words)}: give a length and, after it, how many studs apart: 67.2mm 1")
    return parse_quantity(words[0], "length"), int(words[1]) if len(words) == 2 else 1
