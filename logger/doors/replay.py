r"""Play a recording again through the same session and recorder; the new file carries its source's name and hash.

heldwheel-log replay left-1.csv --out again.csv             at its own speed
heldwheel-log replay left-1.csv --out again.csv --speed inf     at once
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

RESULT_IS_A_FILE = True  # a display that takes nothing is no failure of a recording


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("file", type=Path, help="the recording (or a foreign CSV trace)")
    parser.add_argument("--out", type=Path, metavar="FILE", help="the new recording (default: named by the time)")
    parser.add_argument("--speed", type=float, default=1.0, help="times real time; inf: at once (default 1)")
    parser.add_argument("--seconds", type=float, metavar="S", help="stop after so long")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.decoder.rows import RowDecoder
    from logger.doors.recording import record, started_name
    from logger.edges.console import clean, note
    from logger.links.replay import ReplayLink, replay_columns, replay_header
    from logger.recordings.files import read_trace
    from logger.stream.session import Session

    trace = read_trace(args.file)
    for problem in trace.problems:
        note(f"{args.file}: {clean(problem)}")
    session = Session(ReplayLink(trace, args.speed), RowDecoder(replay_columns(trace)), None)
    return record(session, replay_header(trace), args.out or started_name(), seconds=args.seconds)
