"""A PDF sheet to set text on: fonts, paragraphs, labelled fields, tables and drawings, with nothing of a report in it.

Conventions: lengths in points; ``at`` is the left edge, ``width`` what a block may take; the pen moves down.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import as_file, files
from typing import TYPE_CHECKING

from analysis.report import drawing as d
from analysis.report.material import MARGIN

if TYPE_CHECKING:
    from fpdf import FPDF

    from analysis.report.content import PageTable
    from analysis.report.material import PaperSize

GAP = 16.0
"""Between two columns."""


@dataclass(frozen=True, slots=True)
class TypeSetting:
    """How closely a sheet is set."""

    # body, small: size of the type; the body is never below 7.5 points, which is legible in print
    body: float = 7.8
    small: float = 7.2
    lead: float = 1.32  # distance of lines over size
    # gap, thin: above a block; below a paragraph or a row
    gap: float = 4.0
    thin: float = 0.8
    # top, bottom: margins; the foot stands in the lower one
    top: float = 32.0
    bottom: float = 40.0
    large: float = 18.0  # size of the judged torques
    sign: float = 30.0  # room above the line for a signature


ROOMY = TypeSetting()
CLOSE = TypeSetting(body=7.5, small=7.0, lead=1.2, gap=1.7, thin=0.5, top=22.0, bottom=28.0, large=14.0, sign=24.0)

CLOSEST = TypeSetting(body=7.5, small=7.0, lead=1.14, gap=1.2, thin=0.3, top=20.0, bottom=28.0, large=13.0, sign=23.0)
"""For what is one sheet of A4 and would be two of letter, which is shorter by 50 points."""


def rgb(colour: str) -> tuple[int, int, int]:
    """Give a colour's parts."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


class Paper:
    """One or more sheets, set from top to bottom.

    Args:
        pdf: The document, with its head and foot.
        setting: How closely it is set.
        size: Of a sheet.
    """

    def __init__(self, pdf: FPDF, setting: TypeSetting, size: PaperSize) -> None:
        self.pdf, self.set = pdf, setting
        self.width, self.high = size.width, size.points[1]
        pdf.set_margins(MARGIN, setting.top, MARGIN)
        pdf.set_auto_page_break(auto=True, margin=setting.bottom)
        pdf.c_margin = 0
        fonts = files("analysis.report.fonts")
        for style, name in (("", "sans.ttf"), ("B", "sans-bold.ttf")):
            with as_file(fonts.joinpath(name)) as path:
                pdf.add_font("sans", style, path)
        self.known = set(pdf.fonts["sans"].cmap) | {ord(" ")}  # type: ignore[union-attr]

    def drop(self) -> None:
        """Close the fonts of a document that is not written."""
        for font in self.pdf.fonts.values():
            font.ttfont.close()  # type: ignore[union-attr]

    @property
    def lowest(self) -> float:
        """Where the sheet ends."""
        return self.high - self.set.bottom

    @property
    def y(self) -> float:
        """Where the pen is."""
        return float(self.pdf.get_y())

    def move(self, y: float) -> None:
        """Put the pen there."""
        self.pdf.set_y(y)

    def room(self, height: float) -> None:
        """Begin a new sheet where the next block would not fit."""
        if self.y + height > self.lowest:
            self.pdf.add_page()

    # Text

    def text(self, text: str) -> str:
        """Replace what the font cannot show, so that nothing vanishes silently."""
        return "".join(c if ord(c) in self.known else "\N{REPLACEMENT CHARACTER}" for c in text)

    def font(self, size: float, colour: str = d.INK, *, bold: bool = False) -> None:
        """Take up a font."""
        self.pdf.set_font("sans", "B" if bold else "", size)
        self.pdf.set_text_color(*rgb(colour))

    def paragraph(
        self,
        text: str,
        size: float | None = None,
        colour: str = d.INK,
        *,
        bold: bool = False,
        at: float = MARGIN,
        width: float | None = None,
        gap: float | None = None,
    ) -> None:
        """Set a text that wraps."""
        size = size or self.set.body
        self.font(size, colour, bold=bold)
        self.pdf.set_x(at)
        high = size * self.set.lead
        self.pdf.multi_cell(width or self.width, high, self.text(text), align="L", new_x="LMARGIN", new_y="NEXT")
        self.move(self.y + (self.set.thin if gap is None else gap))

    def takes(self, text: str, width: float, size: float | None = None) -> float:
        """Give the height that a text takes when it wraps."""
        size = size or self.set.body
        self.font(size)
        self.pdf.set_auto_page_break(auto=False)  # a trial must not begin a new sheet
        height = self.pdf.multi_cell(width, size * self.set.lead, self.text(text), dry_run=True, output="HEIGHT")
        self.pdf.set_auto_page_break(auto=True, margin=self.set.bottom)
        return float(height) if isinstance(height, float | int) else size * self.set.lead

    # Fields

    def fields(self, pairs: Sequence[tuple[str, str]], at: float, width: float, columns: int) -> None:
        """Set labels and values in columns, row by row."""
        column, label = width / columns, self.label_width(pairs)
        for i in range(0, len(pairs), columns):
            self.room(self.set.body * self.set.lead)
            top = bottom = self.y
            for j, (name, value) in enumerate(pairs[i : i + columns]):
                x = at + j * column
                self.move(top)
                self.paragraph(name, colour=d.MUTED, at=x, width=label, gap=0)
                self.move(top)
                self.paragraph(value, at=x + label, width=column - label - 8, gap=0)
                bottom = max(bottom, self.y)
            self.move(bottom + self.set.thin / 2)

    def label_width(self, pairs: Sequence[tuple[str, str]]) -> float:
        """Give what the widest label takes."""
        self.font(self.set.body)
        return max((self.pdf.get_string_width(name) for name, _ in pairs), default=0.0) + 7

    # Tables

    def table(self, table: PageTable) -> None:
        """Set a table: columns as wide as they need, the last one takes what is left and wraps."""
        pdf = self.pdf
        widths = self._widths(table)
        self._row(table.headings, widths, table.right, d.MUTED, bold=True)
        self._line(d.MUTED, 0.6)
        self.move(self.y + 0.5)
        for i, row in enumerate(table.rows):
            self._row(row, widths, table.right, d.MUTED if i in table.dim else d.INK)
            self._line(d.RULE, 0.35)
        pdf.set_y(pdf.get_y() + 1)

    def _line(self, colour: str, width: float) -> None:
        self.pdf.set_draw_color(*rgb(colour))
        self.pdf.set_line_width(width)
        self.pdf.line(MARGIN, self.y, MARGIN + self.width, self.y)
        self.move(self.y + self.set.thin)

    def _widths(self, table: PageTable) -> list[float]:
        size, needs = self.set.body, []
        for i, heading in enumerate(table.headings):
            self.font(size, bold=True)
            need = self.pdf.get_string_width(self.text(heading))
            self.font(size)
            cells = (self.pdf.get_string_width(self.text(row[i])) for row in table.rows)
            needs.append(max(need, *cells, 0.0) + 8 if table.rows else need + 8)
        needs[-1] = max(60.0, self.width - sum(needs[:-1]))
        shrink = min(1.0, (self.width - needs[-1]) / max(1.0, sum(needs[:-1])))
        return [need * shrink for need in needs[:-1]] + [needs[-1]]

    def _row(
        self, cells: Sequence[str], widths: Sequence[float], right: Sequence[int], colour: str, *, bold: bool = False
    ) -> None:
        high = self.set.body * self.set.lead
        height = max(high, *(self.takes(cell, width - 6) for cell, width in zip(cells, widths, strict=True)))
        self.room(height + 2)
        self.font(self.set.body, colour, bold=bold)
        x, y = MARGIN, self.y
        for i, (cell, width) in enumerate(zip(cells, widths, strict=True)):
            self.pdf.set_xy(x, y)
            self.pdf.multi_cell(
                width - 6, high, self.text(cell), align="R" if i in right else "L", new_x="LMARGIN", new_y="NEXT"
            )
            x += width
        self.move(y + height)

    # Drawings

    def draw(self, picture: d.Drawing) -> None:
        """Draw a picture at the left margin."""
        self.room(picture.height)
        top = self.y
        for shape in picture.shapes:
            self._shape(shape, top)
        self.move(top + picture.height)

    def _shape(self, shape: d.Shape, top: float) -> None:
        pdf = self.pdf
        match shape:
            case d.Polyline():
                pdf.set_draw_color(*rgb(shape.colour))
                pdf.set_line_width(shape.width)
                if shape.dashed:
                    pdf.set_dash_pattern(4, 2.5)
                pdf.polyline([(MARGIN + x, top + y) for x, y in shape.points])
                if shape.dashed:
                    pdf.set_dash_pattern()
            case d.Box():
                pdf.set_fill_color(*rgb(shape.colour))
                pdf.rect(MARGIN + shape.x, top + shape.y, shape.width, shape.height, style="F")
            case d.Ring():
                pdf.set_draw_color(*rgb(shape.colour))
                pdf.set_line_width(1)
                pdf.circle(MARGIN + shape.x, top + shape.y, 3)
            case d.Text():
                self.font(shape.size, shape.colour, bold=shape.bold)
                text = self.text(shape.text)
                width = pdf.get_string_width(text)
                shift = {"start": 0.0, "middle": width / 2, "end": width}[shape.anchor]
                pdf.text(MARGIN + shape.x - shift, top + shape.y, text)
