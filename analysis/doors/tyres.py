"""Say what tyres of unlike circumference do: the differential turns all the time, and its packs slip and heat.

Measure both alike: same pressure, same load, rolled out over one turn or taped round the tread.

    heldwheel-read tyres --left 1985mm --right 1968mm
    heldwheel-read tyres --left 78in --right 77.5in --uncertainty 2mm --speed 120

Exit codes: 0 below 1 %, 1 above, 3 not told by such measuring. 1 % is common practice, no source; the maker's manual
comes first.
"""

from __future__ import annotations

import argparse
import json

from logger.edges.door import Exit

EXITS = {"yes": Exit.OUTSIDE, "no": Exit.OK, "not told": Exit.TOO_CLOSE}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("--left", required=True, metavar="LENGTH", help="circumference of the left tyre, with its unit")
    parser.add_argument("--right", required=True, metavar="LENGTH", help="circumference of the right tyre")
    parser.add_argument(
        "--uncertainty", default="3mm", metavar="LENGTH", help="standard uncertainty of each (3mm: by tape)"
    )
    parser.add_argument("--speed", type=float, default=100.0, metavar="KM_H", help="road speed in km/h (100)")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.identify.tyres import lines_of, tyre_mismatch
    from logger.edges import console
    from logger.edges.units import parse_quantity

    left, right, u = (parse_quantity(text, "length") for text in (args.left, args.right, args.uncertainty))
    found = tyre_mismatch(left, right, u, args.speed / 3.6)
    if args.json:
        console.say(json.dumps(found.to_json(), ensure_ascii=False))
        return EXITS[found.told]
    for line in lines_of(found):
        console.say(line)
    return EXITS[found.told]
