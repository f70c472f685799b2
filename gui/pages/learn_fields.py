"""Which number is the torque: every one that may be it, with a mark beside those that move with the lever."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from gui.translation import tr
from gui.widgets.parts import Choice, Field, button, column, label
from logger.edges.console import clean
from logger.edges.units import parse_number
from logger.errors import QuantityError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtWidgets import QPushButton

    from gui.models.display import Display
    from gui.models.learning import ShownCandidate
    from logger.learn.learn import Wanted

MOST_ROWS = 6
MOVES = 0.15  # of its whole movement within the last moments: the lever is being pushed
BAR = 10  # signs of the bar


class FieldRows(QWidget):
    """One large button a number; emits ``chosen`` with its place in the line."""

    chosen = Signal(str)

    def __init__(self, display: Display) -> None:
        super().__init__()
        self._display = display
        self.title = label(
            "Push the lever and see which number moves with it, then press that number.", "caption", wrap=True
        )
        self.rows: list[QPushButton] = []
        self._numbers: list[str] = []
        inside = column(self, gap=6)
        inside.addWidget(self.title)
        for index in range(MOST_ROWS):
            made = button("", partial(self._press, index), tip="Take this number as the torque")
            made.setCheckable(True)
            self.rows.append(made)
            inside.addWidget(made)
        self.show_candidates((), "")

    def show_candidates(self, candidates: Sequence[ShownCandidate], chosen: str) -> None:
        """Show the numbers; ``chosen`` is the name or the place of the one that is taken."""
        several = candidates[:MOST_ROWS] if len(candidates) > 1 else ()
        self._numbers = [str(one.number) for one in several]
        self.setVisible(bool(several))
        for made, one in zip(self.rows, several, strict=False):
            text = self._words(one)
            made.setText(text)
            made.setAccessibleName(text)
            made.setChecked(chosen in (one.name, str(one.number)))
        for index, made in enumerate(self.rows):
            made.setVisible(index < len(several))

    def _words(self, one: ShownCandidate) -> str:
        bar = "▮" * round(BAR * min(1.0, one.moving)) or "·"
        state = tr("moves now" if one.moving > MOVES else "still")
        now = f"{self._display.number(one.now, 2)} {one.unit}".strip()
        return clean(f"{one.number}   {one.name}   {now}   {state}  {bar}", 120)

    def _press(self, index: int) -> None:
        for at, made in enumerate(self.rows):
            made.setChecked(at == index)
        self.chosen.emit(self._numbers[index])


class Answers(QWidget):
    """What the bytes do not say and a reading depends on; only what is asked is shown. Emits ``said``."""

    said = Signal()

    def __init__(self) -> None:
        super().__init__()
        marks = [("", "Say what it means"), (",", "It marks decimals: 12,5"), (".", "It stands between two numbers")]
        groups = [("", "Say what it means"), (",", "1,234.5 is one number"), ("none", "Two numbers")]
        self.decimal = Choice("The comma", marks)
        self.thousands = Choice("Thousands", groups)
        self.fields = {
            "scale": Field("Reading = number sent ×", "0.01"),
            "lines": Field("Lines of the torque begin with", "as shown above"),
            "template": Field("Layout of a line", "{torque:8}{temperature:6}"),
        }
        self._asked: dict[str, QWidget] = {"decimal": self.decimal, "thousands": self.thousands, **self.fields}
        inside = column(self, gap=6)
        for part in self._asked.values():
            inside.addWidget(part)
        for choice in (self.decimal, self.thousands):
            choice.changed.connect(self.said.emit)
        for field in self.fields.values():
            field.edit.editingFinished.connect(self.said.emit)
        self.ask(())

    def ask(self, asked: Sequence[str]) -> None:
        """Show what is asked, and what was answered."""
        for name, part in self._asked.items():
            answered = part.text.strip() if isinstance(part, Field) else part.key if isinstance(part, Choice) else ""
            part.setVisible(name in asked or bool(answered))
        self.setVisible(any(not part.isHidden() for part in self._asked.values()))

    def clear(self) -> None:
        """Forget what was said about another device."""
        for field in self.fields.values():
            field.set_text("")
        for choice in (self.decimal, self.thousands):
            choice.set_key("")

    def added(self, wanted: Wanted) -> Wanted:
        """Give what is wanted, with what was said here."""
        text = {name: field.text.strip() for name, field in self.fields.items()}
        try:
            scale = parse_number(text["scale"]) if text["scale"] else None
        except QuantityError as error:
            self.fields["scale"].set_wrong(str(error))
            scale = None
        return replace(
            wanted, scale=scale, lines=text["lines"], template=text["template"],
            decimal=self.decimal.key, thousands=self.thousands.key or None,
        )  # fmt: skip
