"""A report as PDF, from the same content as the page: identity and page number on every sheet, a marked end.

Conventions: lengths in points on A4; the machine-readable part travels as XMP metadata, base64 in ``record``.
"""

from __future__ import annotations

import base64
import logging
from collections.abc import Sequence
from importlib.resources import as_file, files
from typing import TYPE_CHECKING

from analysis.limits import State
from analysis.report import drawing as d
from analysis.report.material import Kind
from analysis.report.words import SIMULATED

if TYPE_CHECKING:
    from fpdf import FPDF

    from analysis.report.content import Content, Section, Table, Verdict

PAGE = (595.28, 841.89)
MARGIN = 36.0
WIDTH = PAGE[0] - 2 * MARGIN
BOTTOM = PAGE[1] - 40.0

RECORD_OPENS, RECORD_CLOSES = b"<hw:record>", b"</hw:record>"
_XMP = (
    '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">'
    '<rdf:Description rdf:about="" xmlns:hw="urn:heldwheel:report">{}</rdf:Description></rdf:RDF>'
)

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
    return bytes(_Sheet(content).finished())


def _rgb(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


class _Sheet:
    """Draws a content from top to bottom, on as many sheets as it needs."""

    def __init__(self, content: Content) -> None:
        self.content = content
        self.pdf = self._opened()
        self.known = set(self.pdf.fonts["sans"].cmap) | {ord(" ")}  # type: ignore[union-attr]
        self.pdf.add_page()

    def _opened(self) -> FPDF:
        from fpdf import FPDF

        sheet = self

        class Paged(FPDF):
            def header(self) -> None:
                if sheet.content.simulated:
                    sheet.across(self, "SIMULATED")

            def footer(self) -> None:
                sheet.foot(self)

        pdf = Paged(unit="pt", format="A4")
        pdf.set_margins(MARGIN, 32, MARGIN)
        pdf.set_auto_page_break(auto=True, margin=PAGE[1] - BOTTOM)
        pdf.c_margin = 0
        fonts = files("analysis.report.fonts")
        for style, name in (("", "sans.ttf"), ("B", "sans-bold.ttf")):
            with as_file(fonts.joinpath(name)) as path:
                pdf.add_font("sans", style, path)
        pdf.set_title(f"{self.content.identity} {self.content.title}")
        pdf.set_producer("Heldwheel")
        pdf.set_lang("en")
        pdf.set_creation_date(self.content.issued)
        record = base64.b64encode(self.content.record.encode("utf-8")).decode("ascii")
        pdf.set_xmp_metadata(_XMP.format(f"<hw:record>{record}</hw:record>"))
        return pdf

    def finished(self) -> bytearray:
        """Draw everything and close the document."""
        self.head()
        self.fields(self.content.facts)
        if self.content.simulated:
            self.warning(SIMULATED)
        self.result()
        self.picture()
        self.sections()
        self.cautions()
        self.sign()
        return self.pdf.output()

    # Pieces of text

    def text(self, text: str) -> str:
        """Replace what the font cannot show, so that nothing vanishes silently."""
        return "".join(c if ord(c) in self.known else "\N{REPLACEMENT CHARACTER}" for c in text)

    def font(self, size: float, colour: str = d.INK, *, bold: bool = False) -> None:
        self.pdf.set_font("sans", "B" if bold else "", size)
        self.pdf.set_text_color(*_rgb(colour))

    def paragraph(
        self,
        text: str,
        size: float = 7.6,
        colour: str = d.INK,
        *,
        bold: bool = False,
        x: float = MARGIN,
        width: float = WIDTH,
        gap: float = 1.5,
    ) -> None:
        self.font(size, colour, bold=bold)
        self.pdf.set_x(x)
        self.pdf.multi_cell(width, size * 1.32, self.text(text), align="L", new_x="LMARGIN", new_y="NEXT")
        self.pdf.set_y(self.pdf.get_y() + gap)

    def room(self, height: float) -> None:
        """Begin a new sheet where the next block would not fit."""
        if self.pdf.get_y() + height > BOTTOM:
            self.pdf.add_page()

    # Fixed parts

    def head(self) -> None:
        pdf, c = self.pdf, self.content
        top = pdf.get_y()
        self.font(12.5, bold=True)
        pdf.multi_cell(WIDTH * 0.64, 15, self.text(c.shop), align="L", new_x="LMARGIN", new_y="NEXT")
        for line in c.address:
            self.paragraph(line, 8, d.MUTED, width=WIDTH * 0.64, gap=0)
        left_bottom = pdf.get_y()
        pdf.set_xy(MARGIN + WIDTH * 0.64, top)
        self.font(10, bold=True)
        pdf.cell(WIDTH * 0.36, 14, c.identity, align="R", new_x="LMARGIN", new_y="NEXT")
        self.font(8, d.MUTED)
        pdf.set_x(MARGIN + WIDTH * 0.64)
        pdf.cell(WIDTH * 0.36, 10, f"for the {c.kind}", align="R", new_x="LMARGIN", new_y="NEXT")
        y = max(left_bottom, pdf.get_y()) + 4
        pdf.set_draw_color(*_rgb(d.ACCENT))
        pdf.set_line_width(1.6)
        pdf.line(MARGIN, y, MARGIN + WIDTH, y)
        pdf.set_y(y + 7)
        self.paragraph(c.title, 13.5, bold=True, gap=4)

    def foot(self, pdf: FPDF) -> None:
        pdf.set_y(PAGE[1] - 30)
        pdf.set_font("sans", "", 6.8)
        pdf.set_text_color(*_rgb(d.MUTED))
        pdf.cell(WIDTH * 0.84, 9, self.content.footer)
        pdf.cell(WIDTH * 0.16, 9, f"page {pdf.page_no()} of {{nb}}", align="R")

    def across(self, pdf: FPDF, word: str) -> None:
        """Write a word across the sheet, behind everything."""
        pdf.set_font("sans", "B", 84)
        pdf.set_text_color(248, 230, 231)
        width = pdf.get_string_width(word)
        with pdf.rotation(52, PAGE[0] / 2, PAGE[1] / 2):
            pdf.text(PAGE[0] / 2 - width / 2, PAGE[1] / 2 + 28, word)

    def warning(self, text: str) -> None:
        pdf = self.pdf
        pdf.set_draw_color(*_rgb(d.WRONG))
        pdf.set_line_width(1.1)
        self.font(8.5, d.WRONG, bold=True)
        pdf.set_y(pdf.get_y() + 3)
        pdf.cell(WIDTH, 14, text, border=1, align="C", new_x="LMARGIN", new_y="NEXT")
        pdf.set_y(pdf.get_y() + 3)

    def fields(
        self, fields: Sequence[tuple[str, str]], x: float = MARGIN, width: float = WIDTH, columns: int = 2
    ) -> None:
        """Set labels and values in columns, row by row."""
        pdf = self.pdf
        column, label = width / columns, 54.0
        for i in range(0, len(fields), columns):
            self.room(12)
            top = bottom = pdf.get_y()
            for j, (name, value) in enumerate(fields[i : i + columns]):
                at = x + j * column
                pdf.set_xy(at, top)
                self.font(7.6, d.MUTED)
                pdf.cell(label, 10, name)
                self.font(7.6)
                pdf.set_xy(at + label, top)
                pdf.multi_cell(column - label - 8, 10, self.text(value), align="L", new_x="LMARGIN", new_y="NEXT")
                bottom = max(bottom, pdf.get_y())
            pdf.set_y(bottom + 0.6)

    def result(self) -> None:
        """Set the judged torques at the left, the result against the limit at the right."""
        pdf, c = self.pdf, self.content
        top = pdf.get_y() + 5
        pdf.set_y(top)
        left = WIDTH * 0.42 if c.verdict else WIDTH
        for line in c.headlines:
            self.paragraph(line.label, 8, d.MUTED, bold=True, width=left, gap=0)
            self.font(18, bold=True)
            pdf.cell(left, 21, self.text(line.value), new_x="LMARGIN", new_y="NEXT")
            self.paragraph(line.remark, 7.2, d.MUTED, width=left - 10, gap=4)
        if not c.headlines:
            self.paragraph("No pull gave a value that may be used.", 9, width=left)
        bottom = pdf.get_y()
        if c.verdict:
            pdf.set_y(top)
            self.verdict(c.verdict, MARGIN + left + 14, WIDTH - left - 14)
        pdf.set_y(max(bottom, pdf.get_y()) + 3)

    def verdict(self, verdict: Verdict, x: float, width: float) -> None:
        pdf, colour = self.pdf, _STATE_COLOURS[verdict.state]
        top = pdf.get_y()
        self.paragraph(f"{verdict.shape} {verdict.state}", 16, colour, bold=True, x=x, width=width, gap=1)
        self.paragraph(verdict.meaning, 8, x=x, width=width)
        self.paragraph(f"Limit: {verdict.limit}", 8, bold=True, x=x, width=width)
        if verdict.chance:
            self.paragraph(f"Probability of conformity: {verdict.chance}", 8, x=x, width=width)
        self.paragraph(f"Rule: {verdict.rule}", 7.2, d.MUTED, x=x, width=width, gap=0)
        pdf.set_fill_color(*_rgb(colour))
        pdf.rect(x - 10, top + 1, 3.6, pdf.get_y() - top - 1, style="F")

    def picture(self) -> None:
        picture = self.content.drawing
        self.room(picture.height + 24)
        top = self.pdf.get_y()
        for shape in picture.shapes:
            self.shape(shape, top)
        self.pdf.set_y(top + picture.height + 2)
        self.paragraph(self.content.legend, 6.8, d.MUTED, gap=2)

    def shape(self, shape: d.Shape, top: float) -> None:
        pdf = self.pdf
        match shape:
            case d.Line():
                pdf.set_draw_color(*_rgb(shape.colour))
                pdf.set_line_width(shape.width)
                if shape.dashed:
                    pdf.set_dash_pattern(4, 2.5)
                pdf.polyline([(MARGIN + x, top + y) for x, y in shape.points])
                if shape.dashed:
                    pdf.set_dash_pattern()
            case d.Box():
                pdf.set_fill_color(*_rgb(shape.colour))
                pdf.rect(MARGIN + shape.x, top + shape.y, shape.width, shape.height, style="F")
            case d.Mark(shape="peak"):
                pdf.set_fill_color(*_rgb(shape.colour))
                pdf.polygon([(MARGIN + x, top + y) for x, y in d.mark_points(shape)], style="F")
            case d.Mark():
                pdf.set_draw_color(*_rgb(shape.colour))
                pdf.set_line_width(1)
                pdf.circle(MARGIN + shape.x, top + shape.y, 3)
            case d.Text():
                self.font(shape.size, shape.colour, bold=shape.bold)
                text = self.text(shape.text)
                width = pdf.get_string_width(text)
                shift = {"start": 0.0, "middle": width / 2, "end": width}[shape.anchor]
                pdf.text(MARGIN + shape.x - shift, top + shape.y, text)

    # Sections

    def sections(self) -> None:
        """Set the blocks in order; two half ones in a row stand side by side."""
        waiting = list(self.content.sections)
        while waiting:
            first = waiting.pop(0)
            if first.half and waiting and waiting[0].half:
                self.pair(first, waiting.pop(0))
            else:
                self.section(first)

    def pair(self, left: Section, right: Section) -> None:
        gap = 16.0
        width = (WIDTH - gap) / 2
        self.room(max(self.height(left, width), self.height(right, width)))
        top = self.pdf.get_y()
        self.section(left, MARGIN, width)
        bottom = self.pdf.get_y()
        self.pdf.set_y(top)
        self.section(right, MARGIN + width + gap, width)
        self.pdf.set_y(max(bottom, self.pdf.get_y()))

    def height(self, section: Section, width: float) -> float:
        """Give about how high a block without a table will be."""
        self.font(7.6)
        fields = sum(self.needs(value, width - 62, 10) + 0.6 for _, value in section.fields)
        return 20 + fields + sum(self.needs(line, width, 10.1) + 0.8 for line in section.lines)

    def section(self, section: Section, x: float = MARGIN, width: float = WIDTH) -> None:
        self.room(30)
        self.pdf.set_y(self.pdf.get_y() + 3)
        self.paragraph(section.heading, 8.6, d.ACCENT, bold=True, x=x, width=width, gap=1)
        if section.fields:
            self.fields(section.fields, x, width, 1 if section.half else 2)
        if section.table:
            self.table(section.table)
        for line in section.lines:
            self.paragraph(line, x=x, width=width, gap=0.8)

    def table(self, table: Table) -> None:
        """Set a table: columns as wide as they need, the last one takes what is left and wraps."""
        pdf, size, high = self.pdf, 7.0, 9.2
        widths = self.widths(table, size)
        self.row(table.headings, widths, table.right, size, high, d.MUTED, bold=True)
        pdf.set_draw_color(*_rgb(d.MUTED))
        pdf.set_line_width(0.6)
        pdf.line(MARGIN, pdf.get_y(), MARGIN + WIDTH, pdf.get_y())
        pdf.set_y(pdf.get_y() + 1)
        for i, row in enumerate(table.rows):
            self.row(row, widths, table.right, size, high, d.MUTED if i in table.dim else d.INK)
            pdf.set_draw_color(*_rgb(d.RULE))
            pdf.set_line_width(0.35)
            pdf.line(MARGIN, pdf.get_y(), MARGIN + WIDTH, pdf.get_y())
            pdf.set_y(pdf.get_y() + 0.8)
        pdf.set_y(pdf.get_y() + 2)

    def widths(self, table: Table, size: float) -> list[float]:
        needs = []
        for i, heading in enumerate(table.headings):
            self.font(size, bold=True)
            need = self.pdf.get_string_width(self.text(heading))
            self.font(size)
            cells = (self.pdf.get_string_width(self.text(row[i])) for row in table.rows)
            needs.append(max(need, *cells, 0.0) + 9 if table.rows else need + 9)
        needs[-1] = max(60.0, WIDTH - sum(needs[:-1]))
        shrink = min(1.0, (WIDTH - needs[-1]) / max(1.0, sum(needs[:-1])))
        return [need * shrink for need in needs[:-1]] + [needs[-1]]

    def row(
        self,
        cells: Sequence[str],
        widths: Sequence[float],
        right: Sequence[int],
        size: float,
        high: float,
        colour: str,
        *,
        bold: bool = False,
    ) -> None:
        pdf = self.pdf
        self.font(size, colour, bold=bold)
        height = max(high, *(self.needs(cell, width - 6, high) for cell, width in zip(cells, widths, strict=True)))
        self.room(height + 2)
        self.font(size, colour, bold=bold)
        x, y = MARGIN, pdf.get_y()
        for i, (cell, width) in enumerate(zip(cells, widths, strict=True)):
            pdf.set_xy(x, y)
            pdf.multi_cell(
                width - 6, high, self.text(cell), align="R" if i in right else "L", new_x="LMARGIN", new_y="NEXT"
            )
            x += width
        pdf.set_y(y + height)

    def needs(self, cell: str, width: float, high: float) -> float:
        """Give the height that a cell takes when it wraps."""
        self.pdf.set_auto_page_break(auto=False)  # a trial must not begin a new sheet
        height = self.pdf.multi_cell(width, high, self.text(cell), align="L", dry_run=True, output="HEIGHT")
        self.pdf.set_auto_page_break(auto=True, margin=PAGE[1] - BOTTOM)
        return float(height) if isinstance(height, float | int) else high

    def cautions(self) -> None:
        self.room(60)
        self.pdf.set_y(self.pdf.get_y() + 3)
        self.paragraph("Cautions", 8.6, d.ACCENT, bold=True, gap=1)
        columns = 2 if self.content.kind is Kind.ENGINEER else 1
        width = (WIDTH - 16 * (columns - 1)) / columns
        for i in range(0, len(self.content.cautions), columns):
            self.room(20)
            top = bottom = self.pdf.get_y()
            for j, line in enumerate(self.content.cautions[i : i + columns]):
                x = MARGIN + j * (width + 16)
                self.pdf.set_xy(x, top)
                self.font(7.2)
                self.pdf.cell(8, 9.5, "•")
                self.pdf.set_y(top)
                self.paragraph(line, 7.2, x=x + 8, width=width - 8, gap=0.3)
                bottom = max(bottom, self.pdf.get_y())
            self.pdf.set_y(bottom)
        for line in self.content.statements:
            self.paragraph(line, 7.2, d.MUTED, gap=0.3)

    def sign(self) -> None:
        pdf, names = self.pdf, self.content.signatures
        self.room(58)
        gap = 22.0
        width = (WIDTH - gap * (len(names) - 1)) / len(names)
        y = pdf.get_y() + 30
        pdf.set_draw_color(*_rgb(d.INK))
        pdf.set_line_width(0.6)
        self.font(7.2, d.MUTED)
        for i, name in enumerate(names):
            x = MARGIN + i * (width + gap)
            pdf.line(x, y, x + width, y)
            pdf.set_xy(x, y + 2)
            pdf.cell(width, 9, name)
        pdf.set_xy(MARGIN, y + 14)
        pdf.cell(WIDTH, 9, f"end of {self.content.identity}", align="C", new_x="LMARGIN", new_y="NEXT")
