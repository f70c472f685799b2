"""A fixture's label: its name, its numbers, a caution and a QR code that fills the fixture's form again.

The code holds the one line of ``logger.instruments.fixture_line``, which is printed below it for who has no scanner.
SVG is the label alone in its size; PDF is a sheet with the label in its size, to be cut out.
"""

from __future__ import annotations

import logging
import textwrap
from pathlib import Path
from typing import TYPE_CHECKING, Final

from analysis.cautions import CAUTIONS
from analysis.report import drawing as d
from analysis.report.material import PaperSize
from analysis.report.paper import ROOMY, Paper
from analysis.to_axle.fixtures import fixture_from
from analysis.uncertainty.budget import NORMAL_95
from logger.edges.small_file import write_whole
from logger.errors import InputError
from logger.instruments.fixture_line import line_of

if TYPE_CHECKING:
    from logger.header import Lever

WIDTH: Final = 340.2  # points: 120 mm
CODE: Final = 122.0  # side of the QR code with its quiet zone: 43 mm
QUIET: Final = 4  # modules around it that stay white (ISO/IEC 18004, quiet zone)
EDGE: Final = 10.0
PER_EM: Final = 0.54  # width of a character of running text over its size; capitals are wider
CAPITAL_PER_EM: Final = 0.68
LEFT: Final = WIDTH - CODE - EDGE  # room beside the code
VALUES: Final = EDGE + 110.0  # where the numbers begin
WORDS: Final = {
    "studs": "Studs",
    "stud_circle_mm": "Stud circle",
    "chord_mm": "Stud-to-stud distance",
    "chord_apart": "Studs apart",
    "length_mm": "Lever, drive to hand",
    "angle_deg": "Lever angle from stud line",
    "pull_angle_deg": "Pull, off square",
    "offset_mm": "Drive off centre",
    "radius_mm": "Radius of the force",
    "cord_mm": "Cord diameter",
    "grip_mark_mm": "Grip mark",
    "gauge_mm": "Gauge section",
    "weight_kg": "Weight of the lever",
    "centroid_mm": "Centre of mass",
    "start_angle_deg": "Start, from 3 o'clock",
}
_UNITS: Final = {"mm": " mm", "deg": "°", "kg": " kg"}


def fixture_words(lever: Lever) -> list[tuple[str, str]]:
    """Give what a fixture's record says, a caption and a value each; ± is 95 %."""
    found: list[tuple[str, str]] = [("Fixture", lever.fixture)]
    for key, caption in WORDS.items():
        value, u = getattr(lever, key), getattr(lever, f"{key}_u", None)
        if value is not None:
            unit = _UNITS.get(key.rpartition("_")[2], "")
            found.append((caption, f"{value:g}{f' ± {NORMAL_95 * u:.3g}' if u is not None else ''}{unit}"))
    return found


def label_drawing(lever: Lever) -> d.Drawing:
    """Draw a label.

    Raises:
        HeldwheelError: The fixture has faults, or does not fit a label.
    """
    fixture_from(lever, file="label")
    line = line_of(lever)
    shapes: list[d.Shape] = []
    y = EDGE
    for text in _wrapped(lever.name or lever.fixture, 13, LEFT, 0.62)[:3]:
        y += 14
        shapes.append(d.Text(EDGE, y, text, 13, d.INK, bold=True))
    y += 5
    for caption, value in fixture_words(lever):
        y += 10
        shapes.append(d.Text(EDGE, y, caption, 7.5))
        shapes.append(d.Text(VALUES, y, value, 7.5, d.INK, bold=True))
    code = _code(line, WIDTH - CODE - 1, 1)
    y = max(y, CODE) + 4
    caution = next(one.text for one in CAUTIONS if one.key == "rating")
    below = [(text, 7.5, d.INK) for text in _wrapped(f"Caution: {caution}", 7.5, WIDTH - 2 * EDGE, PER_EM)]
    below += [(text, 6.0, d.MUTED) for text in _wrapped(line, 6.0, WIDTH - 2 * EDGE, CAPITAL_PER_EM)]
    for text, size, colour in below:
        y += size * (1.35 if size > 6.0 else 1.5)
        shapes.append(d.Text(EDGE, y, text, size, colour))
    high = y + EDGE
    frame = ((0.5, 0.5), (WIDTH - 0.5, 0.5), (WIDTH - 0.5, high - 0.5), (0.5, high - 0.5), (0.5, 0.5))
    about = f"Label of the fixture {lever.name or lever.fixture}"
    paper = d.Box(0, 0, WIDTH, high, "#ffffff")
    return d.Drawing(WIDTH, high, (paper, d.Polyline(frame, d.MUTED, 0.5), *code, *shapes), about)


def write_label(lever: Lever, out: Path, paper: PaperSize = PaperSize.A4) -> None:
    """Write a label as ``.svg`` or ``.pdf``, by the ending of the name.

    Raises:
        InputError: The name has another ending.
        HeldwheelError: The fixture has faults or does not fit a label, or the file cannot be written.
    """
    ending = out.suffix.lower()
    if ending not in {".svg", ".pdf"}:
        raise InputError(f"{out}: a label is written as .svg or .pdf")
    drawing = label_drawing(lever)
    write_whole(out, _pdf(drawing, paper) if ending == ".pdf" else _svg(drawing).encode())


def _wrapped(text: str, size: float, room: float, per_em: float) -> list[str]:
    return textwrap.wrap(text, max(8, int(room / (per_em * size))))


def _code(line: str, left: float, top: float) -> list[d.Shape]:
    """Draw the QR code, the dark modules of a row that touch as one box."""
    import segno

    rows = [bytes(row) for row in segno.make(line, micro=False, mode="alphanumeric", error="m").matrix]
    side = CODE / (len(rows) + 2 * QUIET)
    left, top = left + QUIET * side, top + QUIET * side
    found: list[d.Shape] = []
    for number, row in enumerate(rows):
        place = 0
        while (start := row.find(1, place)) >= 0:
            place = row.find(0, start) if 0 in row[start:] else len(row)
            found.append(d.Box(left + start * side, top + number * side, (place - start) * side, side + 0.1, "#000000"))
    return found


def _svg(drawing: d.Drawing) -> str:
    size = f'width="{drawing.width / 72 * 25.4:.1f}mm" height="{drawing.height / 72 * 25.4:.1f}mm"'
    return d.to_svg(drawing).replace("<svg ", f'<svg {size} font-family="sans-serif" ', 1)


def _pdf(drawing: d.Drawing, paper: PaperSize) -> bytes:
    from fpdf import FPDF

    for name in ("fontTools", "fpdf"):
        logging.getLogger(name).setLevel(logging.ERROR)
    pdf = FPDF(unit="pt", format=paper.points)
    pdf.set_title(drawing.about)
    pdf.set_producer("Heldwheel")
    pdf.set_lang("en")
    sheet = Paper(pdf, ROOMY, paper)
    pdf.add_page()
    sheet.draw(drawing)
    sheet.move(sheet.y + 6)
    sheet.paragraph(
        "Print at 100 %, cut along the line, and fix it to the lever where it does not wear off.", 7.5, d.MUTED
    )
    return bytes(pdf.output())
