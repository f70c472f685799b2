"""What every answer has: fields of its own, a sentence, what speaks against it, a picture, tables beneath."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QSplitter, QVBoxLayout, QWidget

from analysis.compare.runs import Quantity
from analysis.compare.tags import tag_words
from gui.models.comparing import Common, Tags
from gui.models.sheets import QuantityScale, Sheet, Written, significant
from gui.translation import tr
from gui.widgets.parts import Choice, Field, column, label, restyle, scrolled
from gui.widgets.sheet_tabs import SheetTabs
from logger.edges.units import parse_number, torque_factor
from logger.errors import QuantityError

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from analysis.compare.runs import Run
    from gui.shared import Shared
    from gui.widgets.chart import Chart

SMALL_HINT = "0.05"  # for ratios and slopes
PICTURE_PX = 190  # where the window is lower, the answer scrolls
WARNINGS_SHOWN = 2  # more would push the picture away; all stand in a table


@dataclass(frozen=True, slots=True)
class Ask:
    """A question for the worker: a function, and what it takes after the recordings and what is common."""

    function: Callable[..., Any]
    arguments: tuple[object, ...]


class AnswerPanel(QWidget):
    """One answer; emits ``asked`` when a field of its own was changed.

    A subclass adds its fields, says what to ask (``ask``), and shows the answer (``redraw``).
    """

    asked = Signal()
    by_fill = True  # whether it matters what names a fill

    def __init__(self, shared: Shared, picture: Chart, empty: str) -> None:
        super().__init__()
        self._shared, self.picture, self._empty = shared, picture, empty
        self.common = Common()
        self.files: list[str] = []  # that could not be read
        self._typed_in: dict[Field, str] = {}  # the unit that a plain number was typed in
        self.answer: Any = None
        self.fields = QWidget()
        self._fields = column(self.fields, gap=8)
        self.teaching = label(empty, "", wrap=True)
        self.teaching.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.headline = label("", "head", wrap=True)
        self.warning = label("", "warn", wrap=True)
        self.tabs = SheetTabs(shared.look)
        self.body = QSplitter(Qt.Orientation.Vertical)
        self._lay_out()
        self.show_nothing()

    def _lay_out(self) -> None:
        self.inside: QVBoxLayout = column(self, gap=8)
        self.inside.addWidget(self.headline)
        self.inside.addWidget(self.warning)
        self.body.setChildrenCollapsible(False)
        self.picture.setMinimumHeight(PICTURE_PX)
        self.body.setHandleWidth(8)
        self.body.addWidget(self.picture)
        self.body.addWidget(self.tabs)
        self.body.setStretchFactor(0, 5)
        self.body.setStretchFactor(1, 3)
        self.body.setSizes([500, 300])
        self.inside.addWidget(self.body, 1)
        self._taught = scrolled(self.teaching)
        self.inside.addWidget(self._taught, 1)

    def add(self, *parts: Field | Choice | QWidget) -> None:
        """Put fields into the question's column; a change asks again."""
        for part in parts:
            self._fields.addWidget(part)
            if isinstance(part, Choice):
                part.changed.connect(self.asked.emit)
            elif isinstance(part, Field):
                part.edit.editingFinished.connect(self.asked.emit)

    # ------------------------------------------------------------------ for a subclass
    def offer(self, runs: Sequence[Run], tags: Tags) -> None:
        """Take other recordings: fill the lists to choose from."""
        raise NotImplementedError

    def ask(self, runs: Sequence[Run]) -> Ask | str:
        """Give the question for the worker, or what is still missing."""
        raise NotImplementedError

    def redraw(self) -> None:
        """Show ``answer`` in the unit on screen."""
        raise NotImplementedError

    def written(self) -> Written | None:
        """Give what is written to a file; None without an answer."""
        raise NotImplementedError

    # ------------------------------------------------------------------ showing
    @property
    def simulated(self) -> bool:
        """Whether the answer rests on simulated recordings."""
        return bool(getattr(self.answer, "simulated", False))

    @property
    def scale(self) -> QuantityScale:
        """How the quantity stands on screen."""
        return QuantityScale(Quantity(self.common.quantity), self._shared.display)

    def take(self, answer: object) -> None:
        """Show an answer."""
        self.answer = answer
        self.redraw()

    def show_nothing(self, text: str = "") -> None:
        """Teach instead of answering: what is missing, and what this answer is for."""
        self._show_text(text, self._empty, "")

    def show_waiting(self) -> None:
        """Say that the answer is on its way, where there is no earlier one to look at."""
        if self.answer is None:
            self.show_nothing("Working …")

    def show_problem(self, text: str) -> None:
        """Say why there is no answer."""
        self._show_text("There is no answer.", f"▲ {text[:1].upper()}{text[1:]}", "warn")

    def _show_text(self, headline: str, text: str, role: str) -> None:
        self.answer = None
        self.headline.setText(headline)
        restyle(self.teaching, role)
        self.teaching.setText(text)
        self._visible(answered=False)

    def _visible(self, *, answered: bool) -> None:
        self._taught.setVisible(not answered)
        self.headline.setVisible(bool(self.headline.text()))
        self.warning.setVisible(answered and bool(self.warning.text()))
        self.body.setVisible(answered)

    def show_parts(self, headline: str, warnings: Sequence[str], sheets: Iterable[Sheet]) -> None:
        """Show sentence, warnings and tables; the picture is the subclass's."""
        sheets = list(sheets)
        lines = [f"▲ {text}" for text in warnings[:WARNINGS_SHOWN]]
        if len(warnings) > WARNINGS_SHOWN:
            lines[-1] += f"  (and {len(warnings) - WARNINGS_SHOWN} more below)"
            rows = tuple((text,) for text in warnings)
            sheets.insert(min(2, len(sheets)), Sheet(f"Warnings ({len(rows)})", ("Warning",), rows))
        self.headline.setText(headline)
        self.warning.setText("\n".join(lines))
        self.tabs.show_sheets(sheets, simulated=self.simulated)
        self._visible(answered=True)

    # ------------------------------------------------------------------ reading fields
    def typed(self, field: Field, *, needed: bool = False) -> float | None:
        """Read a field in the quantity's unit; what cannot be read is marked and counts as nothing."""
        now, before = self._shared.display.unit, self._typed_in.get(field)
        if before not in {None, now} and self.scale.quantity.unit == "N·m":
            self._convert(field, torque_factor(before or now) / torque_factor(now))
        self._typed_in[field] = now
        hint = field.hint if self.scale.quantity.unit == "N·m" else SMALL_HINT
        field.edit.setPlaceholderText(f"{tr(hint)} {self.scale.unit}".strip())
        return self._read(field, self.scale.typed, needed=needed)

    def _convert(self, field: Field, factor: float) -> None:
        """Follow a change of the unit on screen: a plain number meant the unit that it was typed in."""
        try:
            value = parse_number(field.text) * factor
        except QuantityError:
            return  # it names its own unit, or is no number
        field.set_text(significant(self._shared.display, value, 4))

    def _read(self, field: Field, read: Callable[[str], float | None], *, needed: bool = False) -> float | None:
        field.set_wrong("")
        try:
            return read(field.text) if field.text.strip() or needed else None
        except QuantityError as error:
            field.set_wrong(str(error))
            return None


def tag_options(tags: Iterable[str], none: str = "") -> list[tuple[str, str]]:
    """Give tags to choose from, with a choice of none where that is one."""
    return [*([("", none)] if none else []), *((tag, tag_words(tag)) for tag in tags)]
