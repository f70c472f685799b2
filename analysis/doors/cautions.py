"""Show what to mind before lifting, before pulling, while pulling, and when reading the result."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from logger.edges.door import Exit

if TYPE_CHECKING:
    from analysis.cautions import Moment


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("--gates", action="store_true", help="only those to confirm before the first pull of a job")


def run(args: argparse.Namespace) -> int:
    """Do it."""
    from analysis.cautions import Moment
    from logger.edges.console import say

    for moment in Moment:
        _show(moment, gates=args.gates)
    say("(common practice, no source; the vehicle maker's manual comes first)")
    return Exit.OK


def _show(moment: Moment, *, gates: bool) -> None:
    from analysis.cautions import cautions_for
    from logger.edges.console import say

    found = cautions_for(moment, gates_only=gates)
    if found:
        say(f"{str(moment).capitalize()}:")
        for caution in found:
            say(f"  - {caution.text}")
