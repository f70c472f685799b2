"""The axle under test: what is known of it, its ratio by turns, its type by behaviour, its build."""

from __future__ import annotations

import contextlib
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QPushButton, QWidget

from analysis.identify.axle_type import named
from analysis.identify.tyres import UNLIKE
from gui.models.axle_entry import AxleEntry, finding, ratio_doubt, type_options
from gui.models.turn_count import reading_of
from gui.pages.editors.base import Editor
from gui.pages.editors.behaviour import TypePart
from gui.pages.editors.build import BuildPart
from gui.pages.editors.turns import TurnsPart
from gui.translation import tr
from gui.widgets.parts import Choice, Field, Switch, button, column, label, line, open_once
from logger.errors import InputError

if TYPE_CHECKING:
    from gui.models.job import JobCard
    from gui.shared import Shared

KNOWN, TURNS, TYPE, BUILD = "What is &known", "&Count the turns", "&Find the type", "The &build"
TEXTS = {
    "tag": ("Axle &tag", "as stamped"),
    "ratio": ("Rat&io", "3.73 or 41/11"),
    "pack_build": ("Pack &build", "2 × 6 plates, order, springs"),
    "shim": ("&Shim", "0.3 mm"),
    "reason": ("R&eason to judge it all the same, kept with the recording", "before and after on the same axle"),
}


class KnownPart(QWidget):
    """Tag, type, ratio, build and shim, and what speaks against the type; emits what is asked for."""

    turns_asked = Signal()
    type_asked = Signal()
    tyres_asked = Signal()

    def __init__(self, entry: AxleEntry) -> None:
        super().__init__()
        self._entry = entry
        self.fields = {key: Field(caption, hint) for key, (caption, hint) in TEXTS.items()}
        self.type = Choice("T&ype found", type_options(""))
        self.warning = QFrame()
        self.warning.setObjectName("notice")
        self.against = label("", "warn", wrap=True)
        self.mark = label("▲", "wrongmark")
        self.counted, self.behaved = label("", wrap=True), label("", wrap=True)
        self.to_turns = button("Count the turns", self.turns_asked.emit)
        self.to_type = button("Find the type", self.type_asked.emit)
        self.to_tyres = button("Compare the tyres", self.tyres_asked.emit)
        self._lay_out()
        for key, field in self.fields.items():
            field.changed.connect(lambda key=key, f=field: entry.type_in(key, f.text))
        self.type.changed.connect(lambda: entry.put(type=self.type.key))

    def _lay_out(self) -> None:
        layout = column(self, gap=10)
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        grid.addWidget(self.fields["tag"], 0, 0)
        grid.addWidget(self.type, 0, 1, 1, 2)
        grid.addWidget(self.fields["ratio"], 1, 0)
        grid.addWidget(self.fields["pack_build"], 1, 1)
        grid.addWidget(self.fields["shim"], 1, 2)
        for at in range(3):
            grid.setColumnStretch(at, 1)
        layout.addLayout(grid)
        inside = column(self.warning, margin=12, gap=8)
        row = line(gap=12)
        row.addWidget(self.mark)
        row.addWidget(self.against, 1)
        inside.addLayout(row)
        inside.addWidget(self.fields["reason"])
        layout.addWidget(self.warning)
        ways = line(gap=14)
        for title, words, press in (
            ("Ratio by turns", self.counted, self.to_turns),
            ("Type by what the wheels do", self.behaved, self.to_type),
        ):
            ways.addWidget(_way(title, words, press), 1)
        layout.addLayout(ways)
        tyres = line(gap=14)
        tyres.addWidget(label(UNLIKE, wrap=True), 1)
        tyres.addWidget(self.to_tyres)
        layout.addLayout(tyres)

    def refresh(self, card: JobCard, shared: Shared) -> None:
        """Show the draft, what is wrong with it, and what speaks against its type."""
        draft = self._entry.draft
        for key, field in self.fields.items():
            field.set_text(getattr(draft, key))
            field.set_wrong(self._entry.wrong.get(key, ""))
            field.show_hint(shared.display.in_lengths(tr(field.hint)))
        doubt = ratio_doubt(draft)
        if doubt and "ratio" not in self._entry.wrong:
            self.fields["ratio"].set_wrong(doubt)
        self.type.set_options(type_options(draft.type))
        self.type.set_key(draft.type)
        conflict = card.type_conflict()
        self.warning.setVisible(conflict is not None)
        if conflict is not None:
            text = f"{conflict.text[0].upper()}{conflict.text[1:]}."
            self.against.setText(f"{text} Pulls are recorded, but no result is given." if conflict.refused else text)
        self.fields["reason"].setVisible(conflict is not None and (conflict.refused or bool(draft.reason)))
        self._counted(shared)

    def _counted(self, shared: Shared) -> None:
        draft, number = self._entry.draft, shared.display.number
        self.counted.setText("A tag can be wrong after a swap. Turns of propshaft and wheels tell the ratio.")
        if draft.taken is not None:
            with contextlib.suppress(InputError):
                found = reading_of(draft.taken)
                between = f"between {number(found.low, 3)} and {number(found.high, 3)}"
                self.counted.setText(f"Counted, {found.case.value}: {number(found.ratio, 3)}, {between}.")
        kept = finding(draft.kept)
        text = "A low number on the wrong type means nothing. Five things to try tell what it is."
        if kept is not None:
            text = (
                f"What was seen fits: {named(kept.candidates)}." if kept.candidates else "Nothing fits what was seen."
            )
        self.behaved.setText(text)


def _way(title: str, words: QLabel, press: QPushButton) -> QFrame:
    frame = QFrame()
    frame.setObjectName("notice")
    inside = column(frame, margin=14, gap=8)
    inside.addWidget(label(title, "head", wrap=True))
    words.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    inside.addWidget(words, 1)
    inside.addWidget(press)
    return frame


class AxleEditor(Editor):
    """Fills in the card's axle, in four parts of which one is open."""

    def __init__(self, shared: Shared, card: JobCard) -> None:
        super().__init__("Axle", "Which axle it is, and whether a held-wheel torque means anything for it.")
        self._shared, self._card = shared, card
        self.entry = AxleEntry(card, shared.display)
        self.known = KnownPart(self.entry)
        self.turns = TurnsPart(shared, self.entry)
        self.type = TypePart(shared, self.entry)
        self.build = BuildPart(shared, card)
        self.parts: dict[str, QWidget] = {KNOWN: self.known, TURNS: self.turns, TYPE: self.type, BUILD: self.build}
        self.switch = Switch(tuple(self.parts), "Part")
        self.undo = button("&Undo", self._undo, tip="Takes the last change back. Ctrl+Z")
        self.open = KNOWN
        row = line(gap=10)
        row.addWidget(self.switch)
        row.addStretch(1)
        row.addWidget(self.undo)
        self.body.addLayout(row)
        for part in self.parts.values():
            self.body.addWidget(part)
        self.body.addStretch(1)
        QShortcut(QKeySequence(QKeySequence.StandardKey.Undo), self, self._undo)
        self.head.insertWidget(1, self.build.keep)
        self.switch.picked.connect(self.show_part)
        self.known.turns_asked.connect(lambda: self.show_part(TURNS))
        self.known.type_asked.connect(lambda: self.show_part(TYPE))
        self.known.tyres_asked.connect(self.compare_tyres)
        self.turns.taken.connect(self._taken)
        self.type.taken.connect(self._taken)
        self.entry.changes.listen(self.refresh)
        self.build.entry.changes.listen(self.refresh)
        shared.display.changes.listen(self.refresh)
        self.show_part(KNOWN)

    def show_part(self, name: str) -> None:
        """Open one of the four parts."""
        self.open = name
        self.switch.set_on(name)
        for part_name, part in self.parts.items():
            part.setVisible(part_name == name)
        self.build.keep.setVisible(name == BUILD)
        self.refresh()
        self.area.verticalScrollBar().setValue(0)
        if name == TURNS:
            self.turns.counters["propshaft"].field.edit.setFocus()
        elif name == TYPE:
            self.type.focus()
        elif name == BUILD:
            self.build.look()

    def compare_tyres(self) -> None:
        """Say what tyres of unlike circumference do to this axle."""
        from gui.pages.before_dialogs import TyresDialog

        dialog = TyresDialog(self._shared, self)
        open_once(dialog)

    def _taken(self) -> None:
        """Show what is on the card now, with the keyboard where something is still asked."""
        self.show_part(KNOWN)
        reason = self.known.fields["reason"]
        (reason.edit if reason.isVisible() else self.done).setFocus()

    def _undo(self) -> None:
        (self.build.entry if self.open == BUILD else self.entry).undo()

    def refresh(self) -> None:
        """Show everything as it stands."""
        self.undo.setEnabled((self.build.entry if self.open == BUILD else self.entry).can_undo)
        self.known.refresh(self._card, self._shared)
        self.turns.refresh()
        self.type.refresh()
        self.settled.emit()
