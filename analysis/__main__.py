"""``heldwheel-read``: what recordings say."""

from __future__ import annotations

import sys

from logger.door import run_door

COMMANDS = {
    "pulls": "find the pulls of recordings: breakaway, rotating torque, interval, result",
    "lever": "correct a reading for the lever, with its uncertainty; also a dial reading typed in",
    "limit": "compare a torque and its uncertainty with a limit",
    "axle": "identify an axle by counting turns, and a stud circle from a chord",
    "groups": "compare groups of recordings: fluids, builds, before and after",
    "plan": "how many fills, builds or pulls a comparison needs",
    "report": "write the page that someone can sign (HTML, PDF), or verify one",
    "batch": "read many recordings into one table",
}


def main() -> int:
    """Run the door."""
    return run_door(
        "heldwheel-read",
        "Breakaway and rotating torque from recordings, at the axle, with an interval and a result.",
        COMMANDS,
        "analysis.doors",
    )


if __name__ == "__main__":
    sys.exit(main())
