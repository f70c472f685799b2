"""An index of a season's reports in one folder, with their hashes; check one, sign it.

    heldwheel-read index reports/ --title "Season 2026" --sign shop.key
    heldwheel-read index --verify reports/index.html --key shop.key.pub

The index is a page of HTML beside the reports. Verifying hashes every report again and looks whether the page is what
its list gives; it does not do the work of each report again: heldwheel-read report --verify does. Exit codes of
--verify: 0 it holds, 1 it does not, 2 it cannot be read.
"""

from __future__ import annotations

import argparse

from logger.edges.door import Exit
from logger.errors import InputError


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("folder", nargs="?", metavar="FOLDER", help="where the reports lie")
    parser.add_argument("--title", default="Reports", help="what stands above the list")
    parser.add_argument("--name", default="index.html", help="of the page in that folder (index.html)")
    parser.add_argument("--sign", metavar="KEY", help="sign it with this private key (Ed25519, PEM)")
    parser.add_argument("--verify", metavar="PAGE", help="check this index instead of writing one")
    parser.add_argument(
        "--key", metavar="PUBLIC", help="for --verify: public key of the workshop that must have signed"
    )


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from analysis.report.index import check_index, make_index
    from analysis.report.signature import check, sign
    from logger.edges import console

    if args.verify:
        holds, said = check_index(args.verify)
        fits, signed = check(args.verify, args.key)
        console.say(f"{args.verify}: {'holds' if holds and fits else 'does not hold'}")
        for line in (*said, signed):
            console.say(f"  {console.clean(line, 400)}")
        return Exit.OK if holds and fits else Exit.OUTSIDE
    if not args.folder:
        raise InputError("say which folder: heldwheel-read index FOLDER")
    out, count, other = make_index(args.folder, args.title, args.name)
    for text in other:
        console.note(f"not listed: {text}")
    console.say(f"{out}: {count} report{'s' * (count != 1)}")
    if args.sign:
        console.say(f"signed: {sign(out, args.sign)}")
    return Exit.OK
