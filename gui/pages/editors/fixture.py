"""How torque gets from hand to axle: the fixture, with the hub drawn as it is filled in."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QWidget

from gui.models.display import Display
from gui.models.fixture_entry import FIELDS, FixtureDraft, check, draft_of, lever_of, read_label
from gui.models.job import FIXTURE_WORDS
from gui.pages.editors.base import Editor, ShelfBar
from gui.pages.editors.chord import ChordPart
from gui.pages.editors.fixture_label import LabelButton
from gui.pages.hub_words import hub_view
from gui.translation import tr
from gui.widgets.hub import HubDrawing
from gui.widgets.parts import Choice, Field, label, line

if TYPE_CHECKING:
    from collections.abc import Callable

    from gui.models.job import JobCard
    from gui.shared import Shared
    from gui.work import Worker
    from logger.header import Lever


class FixtureEditor(Editor):
    """Fills in the card's lever."""

    def __init__(self, shared: Shared, card: JobCard, worker: Callable[[], Worker]) -> None:
        super().__init__("Fixture", "How the lever meets the wheel. It decides what the reading means at the axle.")
        self._shared, self._card = shared, card
        self.kind = Choice("Kind of fixture", FIXTURE_WORDS.items())
        self.name = Field("Name, to find it again", "long lever on five studs")
        self.studs = Choice("Studs", [(str(n), str(n)) for n in range(3, 11)])
        self.chord = ChordPart(shared)
        self.fields = {
            key: self.chord.field if key == "chord_mm" else Field(caption, hint)
            for key, (caption, hint, _) in FIELDS.items()
        }
        self.drawing = HubDrawing(shared.look, editable=True)
        self.factor = label("", "title", wrap=True)
        self.notes = label("", "warn", wrap=True)
        self.shelf: ShelfBar[Lever] = ShelfBar(shared.library.fixtures, "fixture", self.take, self._lever)
        self.label = LabelButton(shared, worker, self._lever, self.shelf.say)
        self._lay_out()
        for choice in (self.kind, self.studs):
            choice.changed.connect(self._edited)
        self.name.changed.connect(self._named)
        self.name.edit.editingFinished.connect(self._name_ended)
        self.label.scan_asked.connect(self._ask_scan)
        for key, field in self.fields.items():
            if key != "chord_mm":
                field.changed.connect(self._edited)
        self.chord.changed.connect(self._measured)
        self.chord.taken.connect(self._taken)
        self.chord.widened.connect(self._share_width)
        self.area.resized.connect(self._share_width)
        self.drawing.angle_picked.connect(self._turned)
        self.drawing.studs_picked.connect(self._studded)
        self.studs.set_key("5")
        self._before: Lever | None = None
        self._lengths = ""
        self.load()
        shared.display.changes.listen(self._unit_changed)

    def _lay_out(self) -> None:
        self.head.insertWidget(1, self.label)
        self.body.addWidget(self.shelf)
        row = self._sides = line(gap=16)
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        grid.addWidget(self.kind, 0, 0, 1, 2)
        grid.addWidget(self.name, 1, 0, 1, 2)
        grid.setRowStretch(20, 1)
        self._grid = grid
        row.addLayout(grid, 5)
        side = QGridLayout()
        self.drawing.setMinimumHeight(190)
        side.addWidget(self.drawing, 0, 0)
        side.addWidget(self.factor, 1, 0)
        side.addWidget(self.chord, 2, 0)
        side.addWidget(self.notes, 3, 0)
        side.setRowStretch(0, 1)
        row.addLayout(side, 6)
        self.body.addLayout(row)
        self.body.addStretch(1)

    def _share_width(self) -> None:
        """Put drawing and distance beside the fields where they fit, and below them where they do not."""
        halves = [half.minimumSize().width() for n in range(2) if (half := self._sides.itemAt(n)) is not None]
        fits = sum(halves) + self._sides.spacing() <= self.area.room
        way = QBoxLayout.Direction.LeftToRight if fits else QBoxLayout.Direction.TopToBottom
        if self._sides.direction() != way:
            self._sides.setDirection(way)

    def load(self) -> None:
        """Show the card's lever."""
        lever, display = self._card.lever, self._shared.display
        self._show(draft_of(lever, display) if lever is not None else FixtureDraft(display=display))

    def _unit_changed(self) -> None:
        """Show lengths in the unit on screen; what cannot be used yet stays as it is typed."""
        checked = check(self._draft_as(self._lengths))
        if checked.lever is not None and self._lengths != self._shared.display.lengths:
            self._show(draft_of(checked.lever, self._shared.display))
        self.refresh()

    def take(self, lever: Lever) -> None:
        """Use a lever that was picked."""
        self._show(draft_of(lever, self._shared.display))
        self._edited()

    def _show(self, draft: FixtureDraft) -> None:
        self.kind.set_key(draft.kind)
        self.name.set_text(draft.name)
        self.studs.set_key(draft.studs or "5")
        self.chord.show_draft(draft)
        self._before, self._lengths = draft.before, self._shared.display.lengths
        for key, field in self.fields.items():
            field.set_text(draft.values.get(key, ""))
            field.show_hint(self._shared.display.in_lengths(tr(field.hint)))
        self.refresh()

    def _draft(self) -> FixtureDraft:
        return self._draft_as(self._shared.display.lengths)

    def _draft_as(self, lengths: str) -> FixtureDraft:
        """Give what stands in the fields, filled when lengths were shown in this unit."""
        values = {key: field.text for key, field in self.fields.items()}
        kind, studs, apart = self.kind.key, self.studs.key, self.chord.apart.key
        return FixtureDraft(kind, self.name.text, studs, values, apart, self._before, Display(lengths=lengths))

    def _lever(self) -> Lever | None:
        return check(self._draft()).lever

    def _edited(self) -> None:
        """Take the form over to the card; one with faults leaves no earlier fixture there to be tested with."""
        draft = self._draft()
        checked = check(draft)
        started = any(text.strip() for text in draft.values.values())
        self._card.put(lever=checked.lever, lever_faulty=checked.lever is None and started)
        self.refresh()

    def refresh(self) -> None:
        """Show faults, notes, factor and drawing."""
        draft = self._draft()
        checked = check(draft)
        self._arrange(draft.kind)
        for key, field in self.fields.items():
            typed = bool(field.text.strip())
            field.set_wrong(checked.wrong.get(key, "") if typed else "")
        self.chord.show_draft(draft)
        missing = [FIELDS[k][0].lower() for k in checked.wrong if k in FIELDS and not self.fields[k].text.strip()]
        other = [text for key, text in checked.wrong.items() if key not in FIELDS and key != "name"]
        self.notes.setText(self._shared.display.in_lengths("\n".join((*checked.notes, *other))))
        self.notes.setVisible(bool(self.notes.text()))
        number = self._shared.display.number
        if checked.lever_factor is not None:
            self.factor.setText(f"At the axle: reading × {number(checked.lever_factor, 4)}")
        else:
            self.factor.setText(f"Still needed: {', '.join(missing)}" if missing else "Not a usable fixture yet")
        shown = checked.lever or lever_of(draft, {})
        self.drawing.show_view(hub_view(shown, checked.lever_factor, self._shared))

    def _arrange(self, kind: str) -> None:
        """Put the fields of this kind of fixture into two columns without holes."""
        shown: list[QWidget] = [self.studs] if kind in {"one stud", "cross-bar"} else []
        own = {key: field for key, field in self.fields.items() if key != "chord_mm"}
        shown += [field for key, field in own.items() if kind in FIELDS[key][2]]
        self.chord.setVisible(kind in FIELDS["chord_mm"][2])
        for part in (self.studs, *own.values()):
            self._grid.removeWidget(part)
            part.setVisible(part in shown)
        for index, part in enumerate(shown):
            self._grid.addWidget(part, 2 + index // 2, index % 2)

    def _measured(self) -> None:
        self._edited()
        QTimer.singleShot(0, self, lambda: self.area.ensureWidgetVisible(self.chord))  # once it has its size

    def _taken(self, key: str, text: str) -> None:
        """Write it into its field as if it were typed: the field can undo it."""
        edit = self.fields[key].edit
        edit.selectAll()
        edit.insert(text)
        self._edited()

    def _ask_scan(self) -> None:
        self.name.edit.setFocus()
        self.name.edit.selectAll()
        self.shelf.say("Scan the label now, or paste or type its line into the name.")

    def _named(self) -> None:
        """Take the name, or the whole fixture once the line of its label is complete."""
        self.name.set_wrong("")
        scanned, _ = read_label(self.name.text)
        if scanned is None:
            self._edited()
            return
        self.take(scanned)
        self.shelf.say(f"Filled from the label of {scanned.name or scanned.fixture}")

    def _name_ended(self) -> None:
        """Say why a line that has ended is not a label's; the next scan takes its place."""
        _, why = read_label(self.name.text)
        self.name.set_wrong(why)
        if why:
            self.name.edit.selectAll()

    def _turned(self, angle: float) -> None:
        self.fields["angle_deg"].set_text(f"{angle:g}")
        self._edited()

    def _studded(self, studs: int) -> None:
        self.studs.set_key(str(studs))
        self._edited()
