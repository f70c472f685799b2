"""How to make the test: one printable page with drawings, the mistakes and their sizes, the cautions.

The words are those of VOCABULARY.md. Sizes name where they come from; a trade fact without one is common practice.
"""

from __future__ import annotations

import logging
from html import escape
from pathlib import Path

from analysis.cautions import BEFORE_TURNING, CAUTIONS, Moment, cautions_for
from analysis.report import drawing as d
from analysis.report.content import PageTable
from analysis.report.drawing import to_svg
from analysis.report.guide_drawing import guide_drawing
from analysis.report.material import MARGIN, PaperSize
from analysis.report.paper import GAP, Paper, TypeSetting
from analysis.report.spoken import Tell, check_language, said
from logger.errors import FileError, InputError
from logger.version import VERSION

TITLE = "How to make a held-wheel torque test"
LEAD = (
    "Hold one wheel of the axle, turn the other with a lever. The pack of a clutch-type limited-slip differential then "
    "slips: B is the torque that breaks it away, R the torque that keeps it rotating. "
    f"{BEFORE_TURNING} The maker's manual comes first."
)

STEPS = (
    (
        "Hold one wheel",
        "On the floor or strapped, never by hand. Raise the other. Neutral, brakes free; turn it by hand.",
    ),
    (
        "Fit the lever",
        "On a stud, pointing outward in line with the wheel's centre. Measure to the middle of your hand.",
    ),
    ("Take the zero", "Transducer warm, lever hanging free or off, hands off. Take it once more after the last pull."),
    ("Load smoothly", "Two to three seconds until it slips. No jerk. Stop if the torque climbs and nothing moves."),
    (
        "Keep turning",
        "Slowly, 2 to 10 turns a minute, two turns. Ease the load off, keep hold. Rest, and again: five pulls.",
    ),
)

_GEOMETRY = "geometry of the lever, 1 + r/L"
_COMMON = "common practice, no source"

# What goes wrong; how much it changes the number; where that size comes from.
MISTAKES = (
    ("Lever on a stud, read as it is", "11 % low (5 × 114.3 mm, lever 450 mm; 16 % at 300 mm)", _GEOMETRY),
    ("Lever on a stud pointing inward", "15 % high (5 × 114.3 mm, lever 450 mm)", _GEOMETRY),
    ("Hand 20 mm from where L was measured", "0.5 % at 450 mm", _GEOMETRY),
    ("Jerked, or still speeding up", "20 to 34 N·m high (1.0 to 1.7 kg·m² at 20 rad/s²)", "inertia × acceleration"),
    ("Zero taken with the lever held level", "up to 6.1 N·m off (2.5 kg at 0.25 m)", "weight × distance"),
    ("Slow display, ten readings a second", "15 N·m low (50 N·m a second, 0.3 s late)", "ramp × delay"),
    ("A brake drags", "4 to 10 N·m high, or it will not turn at all", _COMMON),
    ("A gear is engaged, or the case is held", "about twice the torque", "packs add up, no mean"),
    ("lbf·ft, lbf·in, N·m, kgf·m mixed up", "× 12, × 1.36, × 9.8", "NIST SP 811, appendix B.8"),
    ("Large transducer for a small torque", "27 N·m is 8 % of a range of 339 N·m: wide interval", _COMMON),
    ("One pull only", "a single peak scatters by several to tens of per cent", _COMMON),
    ("Drag taken for the pack", "16 to 21 N·m without any pack friction", _COMMON),
    (
        "Wind-up of the shafts taken for slip",
        "0.6 to 1.8° at 100 N·m before anything slips",
        "steel shafts, 38 to 28 mm",
    ),
)

SAID = frozenset({"zero", "smooth", "enough", "stud-reads-low", "drag", "case-clamped", "units", "simulated"})
"""Cautions that steps and mistakes say already."""

_SETTING = TypeSetting(body=7.5, small=7.0, lead=1.13, gap=2.0, thin=0.35, top=22.0, bottom=20.0)
_CLOSER = TypeSetting(body=7.5, small=7.0, lead=1.07, gap=1.5, thin=0.2, top=18.0, bottom=18.0)
"""Where a language needs more room than English."""

HEADS = ("mistake", "what it does", "from")


def write_guide(path: Path, paper: PaperSize = PaperSize.A4, language: str = "en") -> None:
    """Write the guide as ``.html`` or ``.pdf``, by the ending of the name.

    Raises:
        InputError: The name has another ending, or there is no catalogue of the language.
        FileError: The file cannot be written.
    """
    if path.suffix not in {".html", ".pdf"}:
        raise InputError(f"{path}: the guide is written as .html or .pdf")
    check_language(language)
    data = guide_pdf(paper, language) if path.suffix == ".pdf" else guide_html(language).encode("utf-8")
    try:
        path.write_bytes(data)
    except OSError as error:
        raise FileError(f"{path}: cannot be written: {error.strerror or error}") from error


def cautions_by_moment() -> list[tuple[str, tuple[str, ...]]]:
    """Give the cautions by moment, without those that steps and mistakes say."""
    moments = (Moment.LIFTING, Moment.SETTING_UP, Moment.PULLING, Moment.AFTER, Moment.READING)
    first = CAUTIONS[0].text
    found = [
        (str(moment).capitalize(), tuple(c.text for c in cautions_for(moment) if c.key not in SAID))
        for moment in moments
    ]
    return [("Always", (first,)), *found]


def guide_html(language: str = "en") -> str:
    """Give the guide as one HTML page: everything inside, no script."""

    def say(text: str) -> str:
        return escape(said(text, language))

    steps = "".join(f"<li><b>{say(name)}.</b> {say(text)}</li>" for name, text in STEPS)
    rows = "".join("<tr>" + "".join(f"<td>{say(cell)}</td>" for cell in row) + "</tr>" for row in MISTAKES)
    heads = "".join(f"<th>{say(head)}</th>" for head in HEADS)
    cautions = "".join(
        f"<h3>{say(name)}</h3><ul>{''.join(f'<li>{say(text)}</li>' for text in texts)}</ul>"
        for name, texts in cautions_by_moment()
    )
    drawing = to_svg(guide_drawing(language))
    return (
        f'<!doctype html>\n<html lang="{language}"><head><meta charset="utf-8"><title>{say(TITLE)}</title>'
        f"<style>{_STYLE}</style></head><body><h1>{say(TITLE)}</h1><p>{say(LEAD)}</p>{drawing}<ol>{steps}</ol>"
        f"<h2>{say('Mistakes and their sizes')}</h2><table><tr>{heads}</tr>{rows}</table>"
        f'<h2>{say("Cautions")}</h2><div class="cautions">{cautions}</div>'
        f'<p class="foot">Heldwheel {VERSION}. {say(_FOOT)}</p>'
        "</body></html>\n"
    )


_FOOT = (
    "Common practice, no source, unless one is named; the vehicle maker's manual, local rules and qualified "
    "people decide."
)
_STYLE = (
    "body{font:14px/1.35 sans-serif;color:#1b2124;max-width:980px;margin:24px auto;padding:0 16px}h1{font-size:22px}"
    "h2{font-size:17px;margin:14px 0 4px}h3{font-size:14px;margin:6px 0 0}svg{width:100%;height:auto}"
    "table{border-collapse:collapse;width:100%}td,th{border-bottom:1px solid #d5d1c7;padding:2px 6px;text-align:left;"
    "vertical-align:top}.cautions{columns:2;column-gap:24px}ul,ol{margin:2px 0 "
    "6px;padding-left:18px}.foot{color:#50585d}"
    "@media "
    "print{@page{margin:10mm}body{font-size:8pt;line-height:1.2;margin:0;padding:0;max-width:none}h1{font-size:13pt}"
    "h2{font-size:10pt}h3{font-size:8pt}}"
)


def guide_pdf(paper: PaperSize = PaperSize.A4, language: str = "en") -> bytes:
    """Give the guide as PDF: one sheet, set more closely where that is needed."""
    sheet = _sheet(paper, language, _SETTING)
    if sheet.pdf.pages_count > 1:
        sheet.drop()
        sheet = _sheet(paper, language, _CLOSER)
    return bytes(sheet.pdf.output())


def _sheet(paper: PaperSize, language: str, setting: TypeSetting) -> Paper:
    from fpdf import FPDF

    def say(text: str) -> str:
        return said(text, language)

    for name in ("fontTools", "fpdf"):
        logging.getLogger(name).setLevel(logging.ERROR)
    pdf = FPDF(unit="pt", format=paper.points)
    pdf.set_title(say(TITLE))
    pdf.set_producer("Heldwheel")
    pdf.set_lang(language)
    sheet = Paper(pdf, setting, paper)
    pdf.add_page()
    sheet.paragraph(say(TITLE), 13.5, bold=True)
    sheet.paragraph(say(LEAD), gap=6)
    sheet.draw(guide_drawing(language))
    sheet.move(sheet.y + 4)
    for number, (name, text) in enumerate(STEPS, 1):
        sheet.fields([(f"{number}  {say(name)}", say(text))], MARGIN, sheet.width, 1)
    _head(sheet, say("Mistakes and their sizes"))
    sheet.table(PageTable(tuple(map(say, HEADS)), tuple(tuple(map(say, row)) for row in MISTAKES)))
    _columns(sheet, say)
    sheet.paragraph(f"Heldwheel {VERSION}. {say(_FOOT)}", setting.small, d.MUTED)
    return sheet


def _head(sheet: Paper, text: str) -> None:
    sheet.move(sheet.y + 4)
    sheet.paragraph(text, 10, bold=True, gap=1)


def _columns(sheet: Paper, say: Tell) -> None:
    """Set the cautions in two columns that end as even as can be."""
    width = (sheet.width - GAP) / 2
    lines = [
        line
        for name, texts in cautions_by_moment()
        for line in ((say(name), True), *((say(text), False) for text in texts))
    ]
    heights = [sheet.takes(text if bold else f"• {text}", width) + sheet.set.thin for text, bold in lines]
    half = sum(heights) / 2
    sheet.room(half + 16)
    _head(sheet, say("Cautions"))
    ends = [sheet.y, sheet.y]
    top, used = sheet.y, 0.0
    for (text, bold), height in zip(lines, heights, strict=True):
        column = 0 if used < half else 1
        sheet.move(ends[column] if ends[column] else top)
        sheet.paragraph(text if bold else f"• {text}", bold=bold, at=MARGIN + column * (width + GAP), width=width)
        ends[column] = sheet.y
        used += height
    sheet.move(max(ends) + 3)
