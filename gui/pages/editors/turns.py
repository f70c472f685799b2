"""Counting turns at the wheel: three counts with large buttons, and what ratio they mean while they are counted."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QWidget

from analysis.cautions import BEFORE_TURNING
from gui.models.turn_count import COUNTS, PROPSHAFT_READ, WHEELS_READ, check_count, own_list, own_text
from gui.pages.editors.base import ShelfBar
from gui.translation import tr
from gui.widgets.fitting import Beside, Columns, FlowLayout
from gui.widgets.parts import Choice, Field, button, column, label, line, restyle
from gui.widgets.ratio_line import RatioLine, RatioView, Tick

if TYPE_CHECKING:
    from analysis.identify.ratio import CandidateList, RatioCandidate, RatioReading
    from gui.models.axle_entry import AxleEntry
    from gui.models.turn_count import TypedTurns
    from gui.shared import Shared

TAKEN_MOST = 2  # ratios inside the interval that get a button
CAPTIONS = {"propshaft": "&Propshaft turns", "left": "&Left wheel", "right": "&Right wheel"}
HINTS = {"propshaft": "18 3/8", "left": "10", "right": "0 if held"}
TEACH = (
    f"{BEFORE_TURNING}\n"
    "Both driven wheels raised, neutral. Turn one wheel ten times by its chalk mark, and count the "
    "propshaft and the other wheel.\n"
    "One wheel held: it counts 0, and the propshaft makes half of what it would with both: "
    "ratio = 2 × propshaft ÷ wheel.\n"
    "Both together: both count. Ratio = propshaft ÷ wheel.\n"
    "A wheel that turned backwards counts negative: the sum of both is what matters."
)


class Counter(QFrame):
    """One count; emits ``typed``, ``added`` with turns, and ``held``."""

    typed = Signal()
    added = Signal(float)
    held = Signal()

    def __init__(self, key: str) -> None:
        super().__init__()
        self.setObjectName("notice")
        self.field = Field(CAPTIONS[key], HINTS[key])
        name = CAPTIONS[key].replace("&", "")
        small, words = (0.125, "1/8") if key == "propshaft" else (0.5, "1/2")
        layout = column(self, margin=8, gap=8)
        top, row = line(gap=4), line(gap=4)
        top.addWidget(self.field, 1)
        if key != "propshaft":
            still = button("Held", self.held.emit, tip=f"{name}: held, so 0")
            top.addWidget(still, 0, Qt.AlignmentFlag.AlignBottom)
        layout.addLayout(top)
        self._press(row, "−1", -1.0, f"{name}: one less, or backwards. Key Down")
        self._press(row, f"+{words}", small, f"{name}: {words} more. Key Shift+Up")
        self.plus = self._press(row, "+1", 1.0, f"{name}: one more. Key Up")
        layout.addLayout(row)
        self.field.changed.connect(self.typed)
        for keys, turns in (("Up", 1.0), ("Down", -1.0), ("Shift+Up", small), ("Shift+Down", -small)):
            short = QShortcut(QKeySequence(keys), self.field.edit)
            short.setContext(Qt.ShortcutContext.WidgetShortcut)
            short.activated.connect(lambda turns=turns: self.added.emit(turns))

    def _press(self, row: QHBoxLayout, text: str, turns: float, tip: str) -> QPushButton:
        made = button(text, lambda: self.added.emit(turns), role="count", tip=tip)
        made.setAccessibleName(tr(tip))
        row.addWidget(made, 2 if turns == 1.0 else 1)
        return made


class TurnsPart(QWidget):
    """The counts, the ratio they mean, and what it may be; emits ``taken`` once a ratio is put on the card."""

    taken = Signal()

    def __init__(self, shared: Shared, entry: AxleEntry) -> None:
        super().__init__()
        self._shared, self._entry = shared, entry
        self.counters = {key: Counter(key) for key in COUNTS}
        self.teach = label(TEACH, "", wrap=True)
        self.ratio = label("", "title", wrap=True)
        self.case = label("", wrap=True)
        self.caution = label("", "caption", wrap=True)
        self.settled = label("", wrap=True)
        self.problem = label("", "wrong", wrap=True)
        self.line = RatioLine(shared.look)
        self.takes = [button("") for _ in range(TAKEN_MOST + 1)]
        self.take_over = label("Take")
        self.again = button("Count a&new", self._count_anew, tip="Empties the counts; the card keeps what it has")
        self.propshaft_read = Choice("Propshaft is read", PROPSHAFT_READ.items())
        self.wheels_read = Choice("Wheels are read", WHEELS_READ.items())
        self.own = Field("Compare with these only", "3.08  3.55  41/11; empty for the usual ones")
        self.own_name = Field("Name of this list", "rear axles of the club")
        self.shelf: ShelfBar[CandidateList] = ShelfBar(
            shared.library.ratios, "ratio list", self._use_list, lambda: own_list(entry.draft.turns)
        )
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        layout = column(self, gap=6)
        layout.addWidget(Columns(self._shared.look, list(self.counters.values()), len(COUNTS), gap=6))
        for part in (self.teach, self.problem):
            layout.addWidget(part)
        top = line(gap=16)
        words = column(gap=2)
        words.addWidget(self.ratio)
        words.addWidget(self.case)
        top.addLayout(words, 1)
        top.addWidget(self.again)
        layout.addLayout(top)
        layout.addWidget(self.settled)
        layout.addWidget(self.line)
        foot = FlowLayout(gap=10)
        foot.addWidget(self.take_over)
        for take in self.takes:
            foot.addWidget(take)
        layout.addLayout(foot)
        layout.addWidget(self.caution)
        layout.addWidget(Beside([(self.propshaft_read, 1), (self.wheels_read, 1)], gap=10))
        layout.addWidget(Beside([(self.own, 3), (self.own_name, 2)], gap=10))
        layout.addWidget(self.shelf)

    def _connect(self) -> None:
        entry = self._entry
        for number, (key, counter) in enumerate(self.counters.items()):
            counter.typed.connect(lambda key=key, c=counter: entry.type_in(key, c.field.text))
            counter.added.connect(lambda turns, key=key: entry.add(key, turns))
            counter.held.connect(lambda key=key: entry.count(**{key: "0"}))
            counter.field.edit.returnPressed.connect(lambda n=number: self._on(n))
        self.propshaft_read.changed.connect(lambda: entry.count(propshaft_error=self.propshaft_read.key))
        self.wheels_read.changed.connect(lambda: entry.count(wheel_error=self.wheels_read.key))
        self.own.changed.connect(lambda: entry.type_in("own", self.own.text))
        self.own_name.changed.connect(lambda: entry.type_in("own_name", self.own_name.text))
        for number, take in enumerate(self.takes):
            take.clicked.connect(lambda _on=False, n=number: self._take(n))

    def _use_list(self, listed: CandidateList) -> None:
        self._entry.count(own=own_text(listed), own_name=listed.name)

    def _count_anew(self) -> None:
        self._entry.count(propshaft="", left="", right="")
        self.counters["propshaft"].field.edit.setFocus()

    def _on(self, number: int) -> None:
        """Go on from a count: to the next one, and after the last to taking over."""
        if number + 1 < len(COUNTS):
            self.counters[COUNTS[number + 1]].field.edit.setFocus()
        elif self.takes[0].isVisible():
            self.takes[0].setFocus()

    def _take(self, number: int) -> None:
        inside = self._inside(check_count(self._entry.draft.turns).reading)
        self._entry.take_counted(None if number >= len(inside) else inside[number])
        self.taken.emit()

    @staticmethod
    def _inside(reading: RatioReading | None) -> list[RatioCandidate]:
        if reading is None:
            return []
        return [near.candidate for near in reading.neighbours if near.inside][:TAKEN_MOST]

    # ------------------------------------------------------------------ showing
    def refresh(self) -> None:
        """Show counts and ratio as they stand."""
        draft = self._entry.draft.turns
        checked = check_count(draft)
        self._show_draft(draft, checked.wrong)
        self.problem.setText(checked.problem)
        self.problem.setVisible(bool(checked.problem))
        reading = checked.reading
        self.teach.setVisible(reading is None and not checked.problem)
        for part in (self.ratio, self.case, self.settled, self.line, self.caution):
            part.setVisible(reading is not None)
        self.again.setVisible(any(getattr(draft, key) for key in COUNTS))
        self._show_takes(reading)
        if reading is not None:
            self._show_reading(reading)

    def _show_draft(self, draft: TypedTurns, wrong: dict[str, str]) -> None:
        for key, counter in self.counters.items():
            counter.field.set_text(getattr(draft, key))
            counter.field.set_wrong(wrong.get(key, ""))
        self.propshaft_read.set_key(draft.propshaft_error)
        self.wheels_read.set_key(draft.wheel_error)
        self.own.set_text(draft.own)
        self.own.set_wrong(wrong.get("own", ""))
        self.own_name.set_text(draft.own_name)

    def _show_reading(self, reading: RatioReading) -> None:
        number = self._shared.display.number
        low, high = number(reading.low, 3), number(reading.high, 3)
        self.ratio.setText(f"Ratio {number(reading.ratio, 3)}, between {low} and {high} by counting error")
        case = reading.case.value
        self.case.setText(self._marked(f"{case[0].upper()}{case[1:]}: {reading.formula}"))
        self.caution.setText(
            self._marked(f"{reading.caution} Tags can be wrong after a swap; counted teeth, ring ÷ pinion, are exact.")
        )
        self.settled.setText(self._marked(settling(reading)))
        ticks = tuple(
            Tick(
                near.candidate.ratio,
                near.candidate.teeth,
                number(near.candidate.ratio, 3 if near.candidate.teeth else 2),
                near.inside,
            )
            for near in reading.neighbours
        )
        self.line.show_view(RatioView(reading.low, reading.high, reading.ratio, ticks))

    def _show_takes(self, reading: RatioReading | None) -> None:
        number = self._shared.display.number
        inside = self._inside(reading)
        texts = []
        for found in inside:
            figure = number(found.ratio, 3)
            texts.append(f"{found.teeth} = {figure}" if found.teeth else figure)
        if reading is not None:
            texts.append(f"{number(reading.ratio, 3)} as counted")
        self.take_over.setVisible(reading is not None)
        for place, take in enumerate(self.takes):
            take.setVisible(place < len(texts))
            if place < len(texts):
                take.setText(texts[place])
                take.setAccessibleName(tr(f"Put {texts[place]} on the card, with its counts"))
                restyle(take, "main" if place == 0 and len(inside) == 1 else "")

    def _marked(self, text: str) -> str:
        """Write figures in a sentence with the decimal mark on screen."""
        return re.sub(r"(?<=\d)\.(?=\d)", ",", text) if self._shared.display.comma else text


def settling(reading: RatioReading) -> str:
    """Say whether the count tells the ratios apart, and how many turns do."""
    inside = sum(near.inside for near in reading.neighbours)
    if reading.settled:
        text = "Settled: one ratio lies inside."
    elif inside:
        text = f"Not settled: {inside} ratios lie inside."
    else:
        text = "None of these ratios lies inside: count again, or look at the tag."
    turns = reading.wheel_turns_to_settle
    if turns and not reading.settled:
        what = "turn" if turns == 1 else "turns"
        text += f" Count {turns} wheel {what} to tell the two nearest ratios apart."
    return text
