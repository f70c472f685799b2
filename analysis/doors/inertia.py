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

USUAL_RPM = 5.0
"""A usual speed of turning by hand (common practice, no source)."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("file", metavar="FILE", help="recording or table with the wheel's angle")
    parser.add_argument("--drag", required=True, metavar="TORQUE", help="drag of the same parts, with its unit")
    parser.add_argument("--drag-u", metavar="TORQUE", help="its standard uncertainty; default: 5 %% of it, assumed")
    parser.add_argument("--torque", metavar="TORQUE", help="the torque that will be measured: say how slowly to begin")
    parser.add_argument("--json", action="store_true", help="print JSON")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from math import pi

    from analysis.doors.shown import budget_table
    from analysis.pipeline import wheel_angle
    from analysis.trace.spin_down import inertia_of
    from analysis.verdict.recorded import budget_json
    from logger.edges import console
    from logger.edges.units import parse_quantity

    drag = parse_quantity(args.drag, "torque")
    u = parse_quantity(args.drag_u, "torque") if args.drag_u else 0.05 * drag
    found = inertia_of(*wheel_angle(args.file), drag, u)
    quickest = found.quickest_rad_s2(parse_quantity(args.torque, "torque")) if args.torque else None
    if args.json:
        said = {"schema": "heldwheel inertia 1", "slowing_rad_s2": found.slowing_rad_s2, "start_s": found.start_s}
        said |= {"end_s": found.end_s, "quickest_rad_s2": quickest, **budget_json(found.budget)}
        console.say(json.dumps(said, ensure_ascii=False))
        return Exit.OK
    console.say(
        f"Inertia {found.budget.value:.3g} ± {found.budget.u95:.2g} kg·m² (95 %): slows by {found.slowing_rad_s2:.3g} "
        f"rad/s² from {found.start_s:.1f} to {found.end_s:.1f} s, from {found.fastest_rad_s * 30 / pi:.0f} turns a "
        "minute on."
    )
    budget_table(found.budget, "kg·m²")
    if not args.drag_u:
        console.say("The drag's uncertainty is assumed: 5 % of it.")
    if quickest is not None:
        console.say(
            f"For less than 2 % of {args.torque}: accelerate by less than {quickest:.2g} rad/s², {USUAL_RPM:g} turns a "
            f"minute in {USUAL_RPM * pi / 30 / quickest:.1f} s or more."
        )
    return Exit.OK
