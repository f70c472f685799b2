"""``heldwheel-log``: find transducers, record them, replay recordings."""

from __future__ import annotations

import sys

from logger.edges.door import enter, run_door

COMMANDS = {
    "find": "list serial ports and Bluetooth transducers; opens nothing",
    "record": "record a transducer until it is stopped, losing nothing",
    "replay": "play a recording again through the same decoder and recorder",
    "learn": "listen to an unknown transducer and write its description",
    "describe": "list, show and copy shipped descriptions; what each of their keys means",
    "weigh": "check a transducer against a known weight on a known arm",
    "register": "keep transducers with their certificates and due dates",
    "practise": "stream the virtual transducer: dial in a pack and your own mistakes",
}


def main() -> int:
    """Run the door as a program."""
    return enter(door)


def door() -> int:
    """Run the command that the process was given."""
    return run_door(
        "heldwheel-log",
        "Record torque transducers on serial ports and Bluetooth without losing a sample.",
        COMMANDS,
        "logger.doors",
    )


if __name__ == "__main__":
    sys.exit(main())
