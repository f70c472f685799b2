"""Job, vehicle, oil and kind of test, and the rest of the sheet in groups that are folded until they are wanted."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from PySide6.QtWidgets import QCheckBox, QGridLayout, QWidget

from gui.models.job import HELD_WORDS
from gui.models.sheet import FIRST, GROUPS, Entry, EntryKind, filled, read, shown
from gui.pages.editors.base import Editor
from gui.pages.editors.photos import PhotoPart
from gui.translation import tr
from gui.widgets.fold import Fold
from gui.widgets.parts import Choice, Field, label
from logger.edges.units import parse_quantity
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from gui.tester import Tester

CHOICES = {
    "place": ("Where", {"car": "In the car", "bench": "On the bench"}),
    "held": ("Held", HELD_WORDS),
    "gear": ("Gear", {"neutral": "Neutral", "in gear": "In gear"}),
    "side": ("Side turned", {"left": "Left", "right": "Right"}),
}
PHOTOGRAPHS = "Photographs"


class JobEditor(Editor):
    """Fills in job, conditions and kind of test: what is needed first in sight, the rest of the sheet folded."""

    def __init__(self, tester: Tester) -> None:
        super().__init__("Job", "What is tested, and how. Without the kind of test a limit cannot be compared.")
        self._card = tester.card
        self.choices = {key: Choice(caption, words.items()) for key, (caption, words) in CHOICES.items()}
        self.pulls, self.dwell = Field("Pulls wanted", "5"), Field("Rest before each pull", "15 s")
        self.drag = QCheckBox(tr("Measure the drag of both wheels free first"))
        self.texts: dict[tuple[str, str], Field] = {}
        self.picks: dict[tuple[str, str], Choice] = {}
        self._entries = {e.name: e for e in (*FIRST, *(e for _, group in GROUPS for e in group))}
        self._make(self._entries.values())
        self.photos = PhotoPart(tester)
        self.folds = {title: Fold(title, self._grid(group)) for title, group in GROUPS}
        self.folds[PHOTOGRAPHS] = Fold(PHOTOGRAPHS, self.photos)
        self._lay_out()
        for field in (self.pulls, self.dwell):
            field.changed.connect(self._plan_edited)
        for choice in self.choices.values():
            choice.changed.connect(self._plan_edited)
        self.drag.toggled.connect(lambda _on: self._plan_edited())
        self.photos.changed.connect(self._summarise)
        self.load()

    def _make(self, entries: Iterable[Entry]) -> None:
        """Make a field or a choice for each entry."""
        for entry in entries:
            part: Field | Choice
            if entry.kind is EntryKind.CHOICE:
                part = self.picks[entry.name] = Choice(entry.caption, entry.options.items())
            else:
                part = self.texts[entry.name] = Field(entry.caption, entry.hint)
            part.changed.connect(lambda entry=entry: self._edited(entry))

    def _part(self, entry: Entry) -> Field | Choice:
        return self.picks[entry.name] if entry.kind is EntryKind.CHOICE else self.texts[entry.name]

    def _grid(self, entries: Sequence[Entry]) -> QWidget:
        made = QWidget()
        made.setLayout(_grid([self._part(entry) for entry in entries], 3))
        return made

    def _lay_out(self) -> None:
        self.body.addWidget(label("Kind of test", "head"))
        self.body.addLayout(_grid([*self.choices.values(), self.pulls, self.dwell], 4))
        self.body.addWidget(self.drag)
        self.body.addWidget(label("Vehicle and oil", "head"))
        self.body.addWidget(self._grid(FIRST))
        for fold in self.folds.values():
            self.body.addWidget(fold)
        self.body.addStretch(1)

    def load(self) -> None:
        """Show the card."""
        card = self._card
        for name, field in self.texts.items():
            field.set_text(shown(self._entries[name], card))
            field.set_wrong("")
        for name, pick in self.picks.items():
            pick.set_key(shown(self._entries[name], card))
        for key, choice in self.choices.items():
            choice.set_key(getattr(card.test, key) or "")
        self.pulls.set_text(str(card.pulls_wanted))
        self.dwell.set_text(f"{card.dwell_s:g}")
        self.drag.setChecked(card.with_drag)
        self.photos.refresh()
        self._summarise()

    def _summarise(self) -> None:
        """Say on each fold what is filled in."""
        for title, group in GROUPS:
            count = filled(group, self._card)
            self.folds[title].say(f"{count} of {len(group)} filled in" if count else "")
        count = len(self._card.photos)
        self.folds[PHOTOGRAPHS].say(f"{count}" if count else "")

    def _edited(self, entry: Entry) -> None:
        """Take one field over to the card; what cannot be read says so and leaves the card as it was."""
        part = self._part(entry)
        text = part.key if isinstance(part, Choice) else part.text
        try:
            value = read(entry, text)
        except HeldwheelError as error:
            if isinstance(part, Field):
                part.set_wrong(str(error))
            return
        if isinstance(part, Field):
            part.set_wrong("")
        record = msgspec.structs.replace(getattr(self._card, entry.record), **{entry.key: value})
        self._card.put(**{entry.record: record})
        self._summarise()

    def _plan_edited(self) -> None:
        """Take the kind of test, the number of pulls and the rest over to the card."""
        card = self._card
        dwell = self._number(self.dwell, "time", "s")
        pulls = self._number(self.pulls, "", "")
        test = msgspec.structs.replace(card.test, **{k: c.key or None for k, c in self.choices.items()})
        card.put(
            test=test,
            with_drag=self.drag.isChecked(),
            dwell_s=card.dwell_s if dwell is None else max(0.0, dwell),
            pulls_wanted=card.pulls_wanted if pulls is None else max(1, min(50, round(pulls))),
        )

    def _number(self, field: Field, kind: str, unit: str) -> float | None:
        if not field.text.strip():
            field.set_wrong("")
            return None
        try:
            value = float(field.text) if not kind else parse_quantity(field.text, kind, unit)  # type: ignore[arg-type]
        except HeldwheelError as error:
            field.set_wrong(str(error))
            return None
        except ValueError:
            field.set_wrong("A whole number, such as 5")
            return None
        field.set_wrong("")
        return value


def _grid(parts: Sequence[QWidget], columns: int) -> QGridLayout:
    grid = QGridLayout()
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(10)
    grid.setVerticalSpacing(8)
    for index, part in enumerate(parts):
        grid.addWidget(part, index // columns, index % columns)
    for at in range(columns):
        grid.setColumnStretch(at, 1)
    return grid
