"""``heldwheel-read``: what recordings say."""

from __future__ import annotations

import sys

from logger.edges.door import enter, run_door

COMMANDS = {
    "pulls": "find the pulls of recordings: breakaway, rotating torque, interval, result",
    "drag": "take drag off: pack mean from held and both-free tests, left against right, in gear ÷ neutral",
    "lever": "correct a reading for the lever, with its uncertainty; also a dial reading typed in",
    "fixture": "print a fixture's label with a QR code; read the line of one",
    "limit": "compare a torque and its uncertainty with a limit",
    "ratio": "identify an axle's ratio by counting turns of the propshaft and of both wheels",
    "type": "recognise the type of a differential by what its wheels do",
    "tyres": "what tyres of unlike circumference do to the differential, straight ahead",
    "inertia": "effective inertia from a free spin-down and the drag that slows it",
    "chatter": "chatter on the road: level of a sound or acceleration from figure-eights; no torque",
    "stud-circle": "find a stud circle from the stud-to-stud distance",
    "groups": "compare groups of recordings: oils, builds, before and after",
    "builds": "builds of an axle: what changed, the torques measured with each, friction figure",
    "due": "which axles are to be tested again, by their schedules; a calendar file",
    "trend": "torque against shim thickness, distance, temperature; run-in; a chart per axle",
    "confirm": "a second opinion: another operator or transducer, blind, judged by the combined interval",
    "repeatability": "how good a workshop's own measuring is: operators, axles, repeats",
    "plan": "how many fills, builds or pulls a comparison needs, and in which order",
    "report": "write the page that someone can sign (HTML, PDF), or verify one",
    "index": "an index of the reports in one folder with their hashes; check it, sign it",
    "batch": "read many recordings into one table",
    "cautions": "what to mind before lifting, pulling and reading",
    "guide": "how to make the test, with drawings: one page to print",
}


def main() -> int:
    """Run the door as a program."""
    return enter(door)


def door() -> int:
    """Run the command that the process was given."""
    return run_door(
        "heldwheel-read",
        "Breakaway and rotating torque from recordings, at the axle, with an interval and a result.",
        COMMANDS,
        "analysis.doors",
    )


if __name__ == "__main__":
    sys.exit(main())
