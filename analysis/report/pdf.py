"""A report as PDF, from the same content as the page: identity and page number on every sheet, a marked end.

What fits on one sheet stands on one: a report is set roomily if that is enough, else closely, else as closely as can
be; one that needs more sheets in any case is set roomily. The machine-readable part travels as XMP metadata, base64
in ``record``.
"""

from __future__ import annotations

import base64
import logging
from collections.abc import Sequence
from itertools import product
from typing import TYPE_CHECKING

from analysis.report import drawing as d
from analysis.report.content import blocks
from analysis.report.material import MARGIN
from analysis.report.paper import CLOSE, CLOSEST, GAP, ROOMY, Paper, TypeSetting, rgb
from analysis.report.spoken import said
from analysis.report.words import SIMULATED
from analysis.verdict.limits import State

if TYPE_CHECKING:
    from fpdf import FPDF

    from analysis.report.content import Content, Headline, Section, Verdict

RECORD_OPENS, RECORD_CLOSES = b"<hw:record>", b"</hw:record>"
_XMP = (
    '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">'
    '<rdf:Description rdf:about="" xmlns:hw="urn:heldwheel:report">{}</rdf:Description></rdf:RDF>'
)

BULLET = 8.0
FOOT = 25.0
"""From the lower edge to the foot: most printers leave some 5 mm blank."""

_STATE_COLOURS = {
    State.WITHIN: "#1450a5",
    State.OUTSIDE: "#a11d2a",
    State.TOO_CLOSE: "#735a00",
    State.NOT_VALID: "#5d5169",
}


def to_pdf(content: Content) -> bytes:
    """Write a report as PDF; the same content gives the same bytes."""
    # The font writer reports every table it leaves out; none is missed.
    for name in ("fontTools", "fpdf"):
        logging.getLogger(name).setLevel(logging.ERROR)
    sheet = _Sheet(content, ROOMY)
    for setting in (CLOSE, CLOSEST):
        if sheet.pdf.pages_count == 1:
            break
        closer = _Sheet(content, setting)
        sheet, other = (closer, sheet) if closer.pdf.pages_count == 1 else (sheet, closer)
        other.drop()
    return bytes(sheet.pdf.output())


def _document(content: Content) -> FPDF:
    """Open a document whose every sheet carries mark, identity and page number."""
    from fpdf import FPDF

    width, high = content.paper.width, content.paper.points[1]

    class Paged(FPDF):
        def header(self) -> None:
            if content.simulated:
                _across(self, said("SIMULATED", content.language))

        def footer(self) -> None:
            self.set_y(high - FOOT)
            self.set_font("sans", "", 7)
            self.set_text_color(*rgb(d.MUTED))
            self.cell(width * 0.84, 9, content.footer)
            self.cell(
                width * 0.16,
                9,
                f"{said('page', content.language)} {self.page_no()} {said('of', content.language)} {{nb}}",
                align="R",
            )

    pdf = Paged(unit="pt", format=content.paper.points)
    pdf.set_title(f"{content.identity} {content.title}")
    pdf.set_producer("Heldwheel")
    pdf.set_lang(content.language)
    pdf.set_creation_date(content.issued)
    record = base64.b64encode(content.record.encode("utf-8")).decode("ascii")
    pdf.set_xmp_metadata(_XMP.format(f"<hw:record>{record}</hw:record>"))
    return pdf


def _even(heights: Sequence[float]) -> list[int | None]:
    """Share blocks among two columns so that the higher one is as low as possible; the first stands on the left."""
    best: list[int | None] = []
    lowest = float("inf")
    for others in product((1, 0), repeat=len(heights) - 1):
        shares = [0, *others]
        right = sum(h for h, column in zip(heights, shares, strict=True) if column)
        if max(right, sum(heights) - right) < lowest:
            lowest, best = max(right, sum(heights) - right), list(shares)
    return best


def _across(pdf: FPDF, word: str) -> None:
    """Write a word across the sheet, behind everything."""
    pdf.set_font("sans", "B", 84)
    pdf.set_text_color(248, 230, 231)
    width = pdf.get_string_width(word)
    x, y = pdf.w / 2, pdf.h / 2
    with pdf.rotation(52, x, y):
        pdf.text(x - width / 2, y + 28, word)


class _Sheet(Paper):
    """Composes a content from top to bottom, on as many sheets as it needs."""

    def __init__(self, content: Content, setting: TypeSetting) -> None:
        super().__init__(_document(content), setting, content.paper)
        self.content = content
        self.pdf.add_page()
        self.head()
        self.fields(self.content.facts, MARGIN, self.width, 2)
        if self.content.simulated:
            self.warning(self.say(SIMULATED))
        for alert in self.content.alerts:
            self.warning(alert)
        self.result()
        self.room(self.content.drawing.height + 24)
        self.draw(self.content.drawing)
        self.paragraph(self.content.legend, self.set.small, d.MUTED, gap=1)
        for half, sections in blocks(self.content.sections):
            if half:
                self.columns(sections)
            else:
                for section in sections:
                    self.section(section)
        self.sign()

    def say(self, text: str) -> str:
        """Give a fixed text in the page's language."""
        return said(text, self.content.language)

    # Fixed parts

    def head(self) -> None:
        pdf, c, split = self.pdf, self.content, self.width * 0.64
        top = self.y
        self.paragraph(c.shop, 12.5, bold=True, width=split, gap=0)
        if c.address:
            self.paragraph(" · ".join(c.address), 8, d.MUTED, width=split, gap=0)
        left_bottom = self.y
        self.font(10, bold=True)
        pdf.set_xy(MARGIN + split, top)
        pdf.cell(self.width - split, 14, c.identity, align="R", new_x="LMARGIN", new_y="NEXT")
        self.font(8, d.MUTED)
        pdf.set_x(MARGIN + split)
        pdf.cell(
            self.width - split, 10, self.say(f"{c.kind.capitalize()} report"), align="R", new_x="LMARGIN", new_y="NEXT"
        )
        y = max(left_bottom, self.y) + 3
        pdf.set_draw_color(*rgb(d.ACCENT))
        pdf.set_line_width(1.6)
        pdf.line(MARGIN, y, MARGIN + self.width, y)
        self.move(y + self.set.gap + 2)
        self.paragraph(c.title, 13.5, bold=True, gap=self.set.gap)

    def warning(self, text: str) -> None:
        self.pdf.set_draw_color(*rgb(d.WRONG))
        self.pdf.set_line_width(1.1)
        self.font(8, d.WRONG, bold=True)
        self.move(self.y + self.set.gap)
        high = 8 * self.set.lead + 2.5
        self.pdf.multi_cell(self.width, high, self.text(text), border=1, align="C", new_x="LMARGIN", new_y="NEXT")

    def result(self) -> None:
        """Set the judged torques at the left, the result against the limit at the right."""
        c = self.content
        top = self.y + self.set.gap + 2
        self.move(top)
        left = self.width * 0.42 if c.verdict else self.width
        beside = all(self.beside(line) <= left for line in c.headlines)
        for line in c.headlines:
            self.headline(line, left, beside=beside)
            self.paragraph(line.remark, self.set.small, d.MUTED, width=left - 10, gap=self.set.gap)
        if not c.headlines:
            self.paragraph(self.say("No pull gave a value that may be used."), 9, width=left)
        bottom = self.y
        if c.verdict:
            self.move(top)
            self.verdict(c.verdict, MARGIN + left + 14, self.width - left - 14)
        self.move(max(bottom, self.y) + self.set.gap)

    def beside(self, line: Headline) -> float:
        """Give how wide a torque is with its name beside it."""
        self.font(8, bold=True)
        name = self.pdf.get_string_width(self.text(line.label))
        self.font(self.set.large, bold=True)
        return float(self.pdf.get_string_width(self.text(line.value)) + 6 + name)

    def headline(self, line: Headline, width: float, *, beside: bool) -> None:
        """Set a torque large, with its name beside or above it."""
        if not beside:
            self.paragraph(line.label, 8, d.MUTED, bold=True, width=width, gap=0)
        top = self.y
        self.paragraph(line.value, self.set.large, bold=True, width=width, gap=0)
        if beside:
            at = MARGIN + self.pdf.get_string_width(self.text(line.value)) + 6
            self.font(8, d.MUTED, bold=True)
            self.pdf.text(at, top + self.set.large * (0.5 * self.set.lead + 0.36), self.text(line.label))

    def verdict(self, verdict: Verdict, at: float, width: float) -> None:
        colour, top = _STATE_COLOURS[verdict.state], self.y
        self.paragraph(f"{verdict.shape} {self.say(verdict.state)}", 16, colour, bold=True, at=at, width=width, gap=1)
        self.paragraph(verdict.meaning, at=at, width=width)
        self.paragraph(f"{self.say('Limit:')} {verdict.limit}", bold=True, at=at, width=width)
        if verdict.chance:
            self.paragraph(f"{self.say('Probability of conformity:')} {verdict.chance}", at=at, width=width)
        self.paragraph(f"{self.say('Rule:')} {verdict.rule}", self.set.small, d.MUTED, at=at, width=width, gap=0)
        self.pdf.set_fill_color(*rgb(colour))
        self.pdf.rect(at - 10, top + 1, 3.6, self.y - top - 1, style="F")

    # Sections

    def columns(self, sections: Sequence[Section]) -> None:
        """Set blocks in two columns so that these come out as even as can be; in order where they fill a sheet."""
        width = (self.width - GAP) / 2
        heights = [self.height(section, width) for section in sections]
        wanted = _even(heights)
        ends = [self.y, self.y]
        if max(sum(h for h, c in zip(heights, wanted, strict=True) if c == column) for column in (0, 1)) > (
            self.lowest - self.y
        ):
            wanted = [None] * len(sections)
        for section, height, column in zip(sections, heights, wanted, strict=True):
            if height > self.lowest - self.set.top:  # higher than a sheet: across
                self.move(max(ends))
                self.section(section)
                ends = [self.y, self.y]
                continue
            if column is None:
                column = 0 if ends[0] <= ends[1] else 1
            if ends[column] + height > self.lowest:
                self.pdf.add_page()
                column, ends = 0, [self.y, self.y]
            self.move(ends[column])
            self.section(section, MARGIN + column * (width + GAP), width)
            ends[column] = self.y
        self.move(max(ends))

    def height(self, section: Section, width: float) -> float:
        """Give how high a block without a table will be."""
        label = self.label_width(section.fields) + 8
        fields = sum(self.takes(value, width - label) + self.set.thin / 2 for _, value in section.fields)
        width -= BULLET if section.bullets else 0
        lines = sum(self.takes(line, width) + self.set.thin for line in section.lines)
        return self.set.gap + 8.6 * self.set.lead + 1 + fields + lines

    def section(self, section: Section, at: float = MARGIN, width: float | None = None) -> None:
        whole, width = width is None, width or self.width
        if whole:
            self.room(30)
        self.move(self.y + self.set.gap)
        self.paragraph(section.heading, 8.6, d.ACCENT, bold=True, at=at, width=width, gap=1)
        if section.fields:
            self.fields(section.fields, at, width, 2 if whole else 1)
        if section.table:
            self.table(section.table)
        for line in section.lines:
            if section.bullets:
                self.room(2 * self.set.body * self.set.lead)
                top = self.y
                self.paragraph("•", at=at, width=BULLET, gap=0)
                self.move(top)
            shift = BULLET if section.bullets else 0.0
            self.paragraph(line, at=at + shift, width=width - shift)

    def sign(self) -> None:
        """State what the page is, set the lines to sign on, and mark the end."""
        pdf, names = self.pdf, self.content.signatures
        self.room(self.set.sign + 44)
        self.move(self.y + self.set.gap)
        self.paragraph(" ".join(self.content.statements), self.set.small, d.MUTED, gap=0)
        gap = 22.0
        width = (self.width - gap * (len(names) - 1)) / len(names)
        y = self.y + self.set.sign
        pdf.set_draw_color(*rgb(d.INK))
        pdf.set_line_width(0.6)
        for i, name in enumerate(names):
            at = MARGIN + i * (width + gap)
            pdf.line(at, y, at + width, y)
            self.move(y + 2)
            self.paragraph(name, colour=d.MUTED, at=at, width=width, gap=0)
        self.font(self.set.small, d.MUTED)
        pdf.set_xy(MARGIN, y + 13)
        pdf.cell(
            self.width,
            9,
            f"{self.say('end of')} {self.content.whole_identity}",
            align="C",
            new_x="LMARGIN",
            new_y="NEXT",
        )
