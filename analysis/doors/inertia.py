"""Effective inertia from a free spin-down: the wheel's angle recorded while it runs out, and the drag that slows it.

Both driven wheels raised, neutral, engine off. First measure the drag of what turns (a drag test at about that speed).
Then take the lever off, push the wheel by hand, stand clear, and record its angle until it stands. Hands and clothes
off what turns.

    heldwheel-read inertia spin-down.csv --drag "14.2 N·m" --drag-u "0.5 N·m"

The inertia is that of everything that turned, referred to the wheel: I = T / α. With a torque it says how slowly the
wheel must be brought to speed for inertia to stay below 2 % of it.
"""

from __future__ import annotations

import argparse
import json

from logger.edges.door import Exit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("file", metavar="FILE", help="recording or table with the wheel's angle")
    parser.add_argument("--drag", required=True, metavar="TORQUE", help="drag of the same parts, with its unit")
    parser.add_argument("--drag-u", metavar="TORQUE", help="its standard uncertainty; default: 5 %% of it, assumed")
    parser.add_argument("--torque", metavar="TORQUE", help="the torque that will be measured: say how slowly to begin")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.doors.shown import budget_table
    from analysis.rows.run_out import run_out
    from analysis.verdict.recorded import budget_json
    from logger.edges import console
    from logger.edges.units import parse_quantity

    u, torque = (parse_quantity(text, "torque") if text else None for text in (args.drag_u, args.torque))
    said = run_out(args.file, parse_quantity(args.drag, "torque"), u, torque, args.torque or "")
    found = said.found
    if args.json:
        body = {"schema": "heldwheel inertia 1", "slowing_rad_s2": found.slowing_rad_s2, "start_s": found.start_s}
        body |= {
            "end_s": found.end_s,
            "simulated": said.simulated,
            "quickest_rad_s2": None if torque is None else found.quickest_rad_s2(torque),
            **budget_json(found.budget),
        }
        console.say(json.dumps(body, ensure_ascii=False))
        return Exit.OK
    if said.simulated:
        console.say("SIMULATED DATA")
    console.say(said.lines[0])
    budget_table(found.budget, "kg·m²")
    for line in said.lines[1:]:
        console.say(line)
    return Exit.OK
