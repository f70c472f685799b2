"""Which axles are to be tested again: by their schedules, from builds, tests and what they have run.

    heldwheel-read due season/                                          the list
    heldwheel-read due season/ --out retests.ics                        for a calendar (RFC 5545)
    heldwheel-read due season/ --tag 43-11 --every "500 km, 4 weeks, 2 events, 10 figure-eights"
    heldwheel-read due season/ --tag 43-11 --used "2026-06-27 53214 km, 1 event"

A schedule counts from the last test since the last build; kilometres are differences of odometer readings. After a
build the axle is due, once its figure-eights are driven. Recordings are found by the tag on their job card. Schedules
and what an axle has run are kept in <tag>.axle.toml. Exit codes: 0 nothing is due, 1 something is, 2 bad input.
"""

from __future__ import annotations

import argparse
import json
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from logger.edges.door import Exit
from logger.errors import InputError

if TYPE_CHECKING:
    from logger.recordings.axles import AxleFile


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("folder", nargs="?", default=".", metavar="FOLDER", help="where recordings and sheets lie")
    parser.add_argument("--tag", default="", help="of this axle alone")
    parser.add_argument("--every", metavar="SCHEDULE", help="set the schedule of --tag; 'never' takes it away")
    parser.add_argument("--used", metavar="USE", help="note what the axle of --tag has run: a day, then amounts")
    parser.add_argument("--today", metavar="DAY", help="as of another day, 2026-06-27")
    parser.add_argument("--out", metavar="FILE.ics", help="write what has a day as a calendar")
    parser.add_argument("--json", action="store_true", help="print JSON (schema 'heldwheel due 1')")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.compare.due import Urgency, calendar, due_of_all
    from analysis.doors.builds import sheets_in
    from logger.edges import console
    from logger.edges.small_file import write_whole
    from logger.recordings.heads import axle_tests

    folder = Path(args.folder)
    if args.every or args.used:
        _put(folder, args)
    today = _day(args.today) if args.today else datetime.now().astimezone().date()
    lines = due_of_all(sheets_in([str(folder)], args.tag), axle_tests(folder), today)
    if args.out:
        write_whole(args.out, calendar(lines, datetime.now().astimezone()).encode())
        console.note(f"{args.out}: {sum(line.on is not None for line in lines)} days")
    if args.json:
        rows: list[dict[str, Any]] = [
            {"tag": line.tag, "urgency": line.urgency.value, "text": line.text, "on": line.on and line.on.isoformat()}
            for line in lines
        ]
        console.say(json.dumps({"schema": "heldwheel due 1", "today": today.isoformat(), "due": rows}))
    else:
        for line in lines:
            console.say(f"{line.urgency.value:<9}  {line.tag}: {line.text}")
        if not lines:
            console.say("no axle here has a schedule; --help shows how one is set")
    return Exit.OUTSIDE if any(line.urgency is Urgency.DUE for line in lines) else Exit.OK


def _put(folder: Path, args: argparse.Namespace) -> None:
    import msgspec

    from analysis.compare.due import EVERY, USED, amounts
    from logger.recordings.axles import Retest, Use, change_axle

    if not args.tag:
        raise InputError("--every and --used are of one axle: name it with --tag")

    def change(axle: AxleFile) -> AxleFile:
        if args.every:
            plan = None if args.every.strip() == "never" else Retest(**amounts(args.every, EVERY))
            axle = msgspec.structs.replace(axle, retest=plan)
        if args.used:
            day, _, rest = args.used.strip().partition(" ")
            use = Use(day=_day(day), **amounts(rest, USED))
            axle = msgspec.structs.replace(axle, uses=(*axle.uses, use))
        return axle

    change_axle(folder, args.tag, change)


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise InputError(f"'{text}' is no day; write it as 2026-06-27") from None
