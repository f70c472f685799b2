"""A fixture's label with a QR code; the line of one that was scanned.

    heldwheel-read fixture --fixture-file lever-450.toml --label lever-450.pdf
    heldwheel-read fixture --lever 450mm±4mm --stud-circle 5x114.3mm --name "long lever" --label long.svg
    heldwheel-read fixture --read "HELDWHEEL FIXTURE KIND ONE STUD ... CHECK 05199" --save lever-450.toml

Without --label the line of the code is printed. In the window, Fixture takes the line in its field for the name.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from logger.doors.lever_limit import LEVER_HELP, add_lever_options, lever_from
from logger.edges.door import Exit
from logger.errors import InputError


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.epilog = LEVER_HELP
    add_lever_options(parser)
    parser.add_argument("--name", metavar="TEXT", help="what the fixture is called")
    parser.add_argument("--label", type=Path, metavar="FILE", help="write its label: label.pdf or label.svg")
    parser.add_argument("--paper", choices=["A4", "letter"], default="A4", help="of the PDF (A4)")
    parser.add_argument("--read", metavar="LINE", help="instead of describing it: the line that a scanner gave")
    parser.add_argument("--save", metavar="FILE", help="write the fixture as TOML, to pick it later")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    import msgspec

    from analysis.report.fixture_label import fixture_words, write_label
    from analysis.report.material import PaperSize
    from analysis.to_axle.fixtures import fixture_from
    from logger.edges import console
    from logger.edges.toml_file import write_toml
    from logger.instruments.fixture_line import lever_of_line, line_of

    lever = lever_from(args)
    if (lever is None) == (args.read is None):
        raise InputError("describe a fixture (--fixture-file, --lever ...) or --read the line of a label: one of both")
    if lever is None:
        try:
            lever = lever_of_line(args.read)
        except InputError as error:
            raise InputError(f"--read: {error}") from None
    if args.name is not None:
        lever = msgspec.structs.replace(lever, name=args.name.strip())
    fixture = fixture_from(lever, file=args.fixture_file or "fixture")
    if args.label:
        write_label(lever, args.label, PaperSize(args.paper))
        console.say(f"written: {args.label}")
    if args.save:
        write_toml(args.save, lever)
        console.say(f"saved: {args.save}")
    if args.read is not None:
        console.say(console.clean(lever.name, 200) or "no name")
        for caption, value in fixture_words(lever):
            console.say(f"  {caption}: {value}")
    elif not args.label:
        console.say(line_of(lever))
    for text in fixture.notes:
        console.note(f"note: {text}")
    return Exit.OK
