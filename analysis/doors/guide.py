"""Write the guide to the test: one printable page with drawings, the mistakes and their sizes, the cautions.

heldwheel-read guide --out guide.pdf
heldwheel-read guide --language de --out guide.html
"""

from __future__ import annotations

import argparse
from pathlib import Path

from analysis.language.translator import LANGUAGES
from logger.edges.door import Exit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("--out", type=Path, required=True, metavar="FILE", help="guide.pdf or guide.html")
    parser.add_argument("--paper", choices=["A4", "letter"], default="A4", help="of the PDF (A4)")
    parser.add_argument("--language", choices=tuple(LANGUAGES), default="en", help="of the guide (en)")


def run(args: argparse.Namespace) -> int:
    """Do it."""
    from analysis.report.guide import write_guide
    from analysis.report.material import PaperSize
    from logger.edges.console import say

    write_guide(args.out, PaperSize(args.paper), args.language)
    say(f"written: {args.out}")
    return Exit.OK
