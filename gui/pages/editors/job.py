"""Vehicle, conditions and kind of test."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec
from PySide6.QtWidgets import QCheckBox, QGridLayout, QWidget

from gui.models.job import HELD_WORDS
from gui.pages.editors.base import Editor
from gui.widgets.parts import Choice, Field, label
from logger.errors import QuantityError
from logger.units import parse_quantity

if TYPE_CHECKING:
    from gui.models.job import JobCard

# Record and key -> caption and hint; numbers carry their kind.
TEXTS = {
    ("job", "vehicle"): ("Vehicle", "blue hill-climb car"),
    ("job", "number"): ("Job number", ""),
    ("job", "customer"): ("Customer", ""),
    ("job", "operator"): ("Who tests", ""),
    ("conditions", "fluid"): ("Oil", "grade and age"),
    ("conditions", "modifier"): ("Friction modifier", "kind and amount"),
}
TEMPERATURE = ("Oil temperature", "35 °C")
CHOICES = {
    "place": ("Where", {"car": "In the car", "bench": "On the bench"}),
    "held": ("Held", HELD_WORDS),
    "gear": ("Gear", {"neutral": "Neutral", "in gear": "In gear"}),
    "side": ("Side turned", {"left": "Left", "right": "Right"}),
}


class JobEditor(Editor):
    """Fills in job, conditions and kind of test."""

    def __init__(self, card: JobCard) -> None:
        super().__init__("Job", "What is tested, and how. Without the kind of test a limit cannot be compared.")
        self._card = card
        self.texts = {key: Field(caption, hint) for key, (caption, hint) in TEXTS.items()}
        self.choices = {key: Choice(caption, words.items()) for key, (caption, words) in CHOICES.items()}
        self.temperature = Field(*TEMPERATURE)
        self.pulls, self.dwell = Field("Pulls wanted", "5"), Field("Rest before each pull", "15 s")
        self.drag = QCheckBox("Measure the drag of both wheels free first")
        self._lay_out()
        for field in (*self.texts.values(), self.temperature, self.pulls, self.dwell):
            field.changed.connect(self._edited)
        for choice in self.choices.values():
            choice.changed.connect(self._edited)
        self.drag.toggled.connect(lambda _on: self._edited())
        self.load()

    def _lay_out(self) -> None:
        self.body.addWidget(label("Kind of test", "head"))
        self.body.addLayout(_grid([*self.choices.values(), self.pulls, self.dwell], 4))
        self.body.addWidget(self.drag)
        self.body.addWidget(label("Vehicle and oil", "head"))
        self.body.addLayout(_grid([*self.texts.values(), self.temperature], 3))
        self.body.addStretch(1)

    def load(self) -> None:
        """Show the card."""
        card = self._card
        for (record, key), field in self.texts.items():
            field.set_text(str(getattr(getattr(card, record), key)))
        for key, choice in self.choices.items():
            choice.set_key(getattr(card.test, key) or "")
        warm = card.conditions.oil_temperature_c
        self.temperature.set_text("" if warm is None else f"{warm:g}")
        self.pulls.set_text(str(card.pulls_wanted))
        self.dwell.set_text(f"{card.dwell_s:g}")
        self.drag.setChecked(card.with_drag)

    def _edited(self) -> None:
        card = self._card
        parts: dict[str, dict[str, object]] = {"job": {}, "conditions": {}}
        for (record, key), field in self.texts.items():
            parts[record][key] = field.text.strip()
        parts["conditions"]["oil_temperature_c"] = self._number(self.temperature, "temperature", "°C")
        dwell = self._number(self.dwell, "time", "s")
        pulls = self._number(self.pulls, "", "")
        records = {record: msgspec.structs.replace(getattr(card, record), **keys) for record, keys in parts.items()}
        test = msgspec.structs.replace(card.test, **{k: c.key or None for k, c in self.choices.items()})
        card.put(
            **records,
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
        except QuantityError as error:
            field.set_wrong(str(error))
            return None
        except ValueError:
            field.set_wrong("A whole number, such as 5")
            return None
        field.set_wrong("")
        return value


def _grid(parts: list[QWidget], columns: int) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(10)
    grid.setVerticalSpacing(8)
    for index, part in enumerate(parts):
        grid.addWidget(part, index // columns, index % columns)
    for at in range(columns):
        grid.setColumnStretch(at, 1)
    return grid
