"""A second opinion: the same axle tested again by another operator or transducer, judged by the combined interval.

    heldwheel-read confirm first.csv second.csv

Nothing of either test is shown before the second one is signed, so that whoever makes it does not see the first. That
they did not know it by another way is their word. Two values agree while |x2 - x1| <= sqrt(U1^2 + U2^2), that is while
the E_n number of ISO 13528 and ISO/IEC 17043 is at most 1 in size; what both tests share (a lever) widens that rather
than narrows it. Exit codes: 0 they agree, 1 they do not, 2 bad input or not signed yet.
"""

from __future__ import annotations

import argparse
import json

from analysis.doors.asking import add_reading_options, asked_of
from logger.edges.door import Exit

WORDS = {
    "agrees": "confirmed",
    "does not agree": "NOT confirmed: the two tests do not agree",
    "cannot be told": "cannot be told: the values agree, but not everything says that it is a second opinion",
}
BLIND = "not seen before the second was signed, as far as this program showed it"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("first", metavar="FIRST", help="the test that is confirmed")
    parser.add_argument("second", metavar="SECOND", help="the test by another operator or transducer")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel confirm 1')")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.pipeline import read_file
    from analysis.rows.second import check_signed, read_second
    from logger.edges import console
    from logger.edges.units import format_torque

    check_signed(args.second)  # before anything else is read
    asked = asked_of(args)
    first = read_file(args.first, asked)
    second, found = read_second(first, args.second, asked)
    simulated = first.simulated or second.simulated
    if args.json:
        lines = [
            {
                "quantity": line.quantity,
                "direction": line.direction,
                "first_nm": [line.first.value, line.first.u95],
                "second_nm": [line.second.value, line.second.u95],
                "difference_nm": [line.against.difference, line.against.u95],
                "e_n": line.against.e_n,
                "agrees": line.against.agrees,
            }
            for line in found.lines
        ]
        body = {"schema": "heldwheel confirm 1", "simulated": simulated, "confirmed": found.confirmed}
        body |= {"lines": lines, "other": list(found.other), "notes": list(found.notes)}
        console.say(json.dumps(body, ensure_ascii=False))
        return Exit.OK if found.confirmed else Exit.OUTSIDE
    if simulated:
        console.say("SIMULATED DATA")
    console.say(WORDS[found.word])
    for line in found.lines:
        a, b = (format_torque(x.value, "N·m", x.u95) for x in (line.first, line.second))
        what = "agree" if line.against.agrees else "DO NOT AGREE"
        console.say(f"  {line.quantity}, {line.direction}: {a}, then {b}")
        console.say(f"    {line.against.words('N·m')}; E_n {line.against.e_n:+.2f}: they {what}")
    for text in (*found.other, *(f"mind: {note}" for note in found.notes), BLIND):
        console.say(f"  {text}")
    return Exit.OK if found.confirmed else Exit.OUTSIDE
