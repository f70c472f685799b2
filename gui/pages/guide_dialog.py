"""The guide in the window (F1): drawings, steps, mistakes and their sizes, cautions, keys; and the page to print."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, Qt
from PySide6.QtSvgWidgets import QSvgWidget
from PySide6.QtWidgets import QDialog, QFileDialog, QWidget

from analysis.report.drawing import ACCENT, BAND, INK, MUTED, STEADY, to_svg
from analysis.report.guide import HEADS, LEAD, MISTAKES, STEPS, TITLE, cautions_by_moment, write_guide
from analysis.report.guide_drawing import guide_drawing
from analysis.report.material import PaperSize
from gui.translation import spoken_language, tr
from gui.widgets.parts import button, card, column, dialog_size, label, line, scrolled
from gui.widgets.table import TextTable
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from gui.shared import Shared

DRAWN_PX, MARGIN_PX = 860, 16
PRINTED = {INK: "text", MUTED: "muted", ACCENT: "accent", BAND: "band", STEADY: "accent"}
"""Colours of the page, and those of the window in their place."""
ROW_PX = 44
KEYS = (
    ("Space", "next step"),
    ("S", "skip a step that may be skipped"),
    ("R, U", "exclude the last pull, undo"),
    ("F, E", "far view, end the test"),
    ("P, D", "practise, dial reading"),
    ("1 to 6", "job, kind of test, fixture, axle, limit, transducer"),
    ("Ctrl+1, 2, 3", "Test, Review, Compare"),
    ("F2, Delete, Ctrl+Z", "on Review: rename, remove, undo"),
    ("0, +, −, arrows", "on a trace: all of it, zoom, move"),
    ("arrows, Return", "on a picture of Compare: from point to point, open its recordings"),
    ("Right button, Menu", "copy or save a picture; what can be done with a recording"),
    ("Ctrl+,", "settings, About"),
    ("X", "put a message away"),
    ("Ctrl+U, Ctrl+L", "next unit, light or dark"),
    ("Ctrl++, Ctrl+−", "larger and smaller text"),
)


class GuideDialog(QDialog):
    """Shows the guide and writes its page."""

    def __init__(self, shared: Shared, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr(TITLE))
        self._shared = shared
        self.said = label("", "caption", wrap=True)
        self._lay_out()
        self.resize(dialog_size(parent, 1000 * shared.look.scale, 760 * shared.look.scale))

    def _lay_out(self) -> None:
        layout = column(self, margin=18, gap=10)
        layout.addWidget(label(TITLE, "title"))
        body = QWidget()
        inside = column(body, gap=8)
        inside.addWidget(label(LEAD, wrap=True))
        inside.addWidget(self._drawing())
        for number, (name, text) in enumerate(STEPS, 1):
            inside.addWidget(label(f"{number}   {tr(name)}", "head"))
            inside.addWidget(label(text, wrap=True))
        inside.addWidget(label("Mistakes and their sizes", "title"))
        inside.addWidget(self._mistakes())
        inside.addWidget(label("Cautions", "title"))
        for name, texts in cautions_by_moment():
            inside.addWidget(label(name, "head"))
            inside.addWidget(label("\n".join(f"•  {tr(text)}" for text in texts), wrap=True))
        inside.addWidget(label("Keys", "title"))
        inside.addWidget(label("\n".join(f"{tr(keys)}:  {tr(what)}" for keys, what in KEYS), wrap=True))
        layout.addWidget(scrolled(body), 1)
        layout.addWidget(self.said)
        foot = line(gap=10)
        self.save = button("Save the page to print", self.ask_where, tip="One sheet, PDF or HTML")
        foot.addWidget(self.save)
        foot.addStretch(1)
        foot.addWidget(button("Close", self.accept, role="main", tip="Key Esc"))
        layout.addLayout(foot)

    def _drawing(self) -> QWidget:
        """Show the drawings on a card, in the window's colours."""
        drawn, picture, frame = guide_drawing(spoken_language()), QSvgWidget(), card()
        svg = re.sub("|".join(PRINTED), lambda found: self._shared.look.colour(PRINTED[found[0]]).name(), to_svg(drawn))
        picture.load(QByteArray(svg.encode("utf-8")))
        picture.setFixedSize(DRAWN_PX, round(DRAWN_PX * drawn.height / drawn.width))
        picture.setAccessibleName(tr(drawn.about))
        inside = column(frame, margin=MARGIN_PX)
        inside.addWidget(picture, 0, Qt.AlignmentFlag.AlignHCenter)
        return frame

    def _mistakes(self) -> TextTable:
        table = TextTable(HEADS, "Mistakes and their sizes", {0, 1, 2})
        table.verticalHeader().setDefaultSectionSize(round(ROW_PX * self._shared.look.scale))
        table.fill([tuple(map(self._shared.display.in_lengths, row)) for row in MISTAKES])
        table.setMinimumHeight(round(ROW_PX * self._shared.look.scale * 8))
        return table

    def ask_where(self) -> None:
        """Ask for a file name, and write the page there."""
        target, _ = QFileDialog.getSaveFileName(
            self, tr("Save the guide as"), "guide.pdf", "PDF (*.pdf);;HTML (*.html)"
        )
        if not target:
            return
        try:
            choices = self._shared.settings.choices
            write_guide(Path(target), PaperSize(choices.paper), spoken_language())
        except HeldwheelError as error:
            self.said.setText(f"▲ {error}")
            return
        self.said.setText(f"Saved as {target}")
