"""The three steps of a dead-weight check, as they are seen; the dialog says what happens between them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QProgressBar, QSizePolicy, QWidget

from gui.models.weighing import MASSES, RESULT_WORDS, WAYS, Doing, Hanging, cautions
from gui.translation import tr
from gui.widgets.badge import Badge
from gui.widgets.parts import Choice, Field, card, column, label
from gui.widgets.table import TextTable
from logger.instruments.weigh import Compliance, two_point_words

if TYPE_CHECKING:
    from gui.models.display import Display
    from gui.models.weighing import PlannedWeight, WeighedStep, Weighing
    from gui.shared import Shared
    from logger.instruments.weigh import TwoPoint

REAL, CALIBRATE, PRACTICE = "real", "calibrate", "practice"
CAUTION = (
    "Clamp the transducer's far end so that it cannot turn. Tie the weight to the arm, hang it a hand's width above "
    "the floor, and stand clear of it: no toes, knees or hands below."
)
LEVEL = "Fit the arm level now, with nothing on it: its own weight then does not count."
HEADS = ("Load", "Torque", "Shown", "Difference", "± at 95 %", "Allowed", "Result")
BADGES = {Compliance.WITHIN: "within", Compliance.OUTSIDE: "outside", Compliance.TOO_CLOSE: "too close to call"}
INSTRUCTION_PX, FIGURE_PX, RESULT_PX = 52, 76, 36  # read from three metres
BARE = 1000.0  # a bare number from here on is a count: no decimals


class WhatStep(QWidget):
    """What hangs, how far out and where on Earth; emits ``changed``."""

    changed = Signal()

    def __init__(self, name: str, display: Display) -> None:
        super().__init__()
        own = [(REAL, f"Check {name}"), (CALIBRATE, f"Calibrate {name}, a bare amplifier, by two loads")]
        practice = (PRACTICE, "Practise on the virtual transducer (simulated)")
        self.which = Choice("What for", [*(own if name else []), practice])
        self.fields = {
            "mass1": Field("Mass with its hanger", "10 kg"),
            "mass2": Field("Second mass, if any", "20 kg in all"),
            "mass3": Field("Third mass, if any", "30 kg in all"),
            "arm": Field("Drive to hanging point", "500 mm"),
            "arm_error": Field("The length is good to ±", "empty: 0.5 mm"),
            "mass_error": Field("The masses are good to ±", "5 g; empty: exact"),
            "latitude": Field("Latitude, for gravity", "47.2°"),
            "height": Field("Height above sea level", "410 m"),
            "gravity": Field("Or gravity itself, m/s²", "9.807; empty: standard"),
            "allowed": Field("Permitted error, if no certificate", "1 %"),
        }
        self.way = Choice("The weight turns it", WAYS.items())
        self.down = Choice("Loads", [("down", "Up and down again"), ("up", "Up only")])
        self._lay_out()
        for field in self.fields.values():
            field.changed.connect(self.changed.emit)
            field.show_hint(display.in_lengths(tr(field.hint)))
        for choice in (self.which, self.way, self.down):
            choice.changed.connect(self.changed.emit)
        self.which.changed.connect(self.show_choice)

    def show_choice(self) -> None:
        """Offer only what the choice needs: a calibration takes one mass and judges nothing."""
        for part in (self.fields["mass2"], self.fields["mass3"], self.fields["allowed"], self.down):
            part.setVisible(not self.calibrates)

    def _lay_out(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(8)
        *others, allowed = self.fields.values()
        for index, part in enumerate((*others, self.way, self.down, allowed)):
            grid.addWidget(part, index // 3, index % 3, Qt.AlignmentFlag.AlignTop)
            grid.setColumnStretch(index % 3, 1)
        inside = column(self, gap=10)
        inside.addWidget(label(CAUTION, "warn", wrap=True))
        inside.addWidget(label(LEVEL, wrap=True))
        inside.addWidget(self.which)
        inside.addLayout(grid)
        inside.addStretch(1)

    @property
    def practice(self) -> bool:
        """Whether the virtual transducer is weighed."""
        return self.which.key == PRACTICE

    @property
    def calibrates(self) -> bool:
        """Whether a bare amplifier is calibrated."""
        return self.which.key == CALIBRATE

    def typed(self) -> Hanging:
        """Give what stands in the fields."""
        typed = {key: field.text.replace("±", "").replace("in all", "") for key, field in self.fields.items()}
        masses = tuple(typed.pop(f"mass{n}") for n in range(1, MASSES + 1))
        if self.calibrates:
            masses, typed["allowed"] = masses[:1], ""
        return Hanging(masses=masses, way=self.way.key, down=self.down.key == "down", **typed)

    def mark(self, wrong: dict[str, str]) -> None:
        """Mark what is typed and cannot be used."""
        for key, field in self.fields.items():
            field.set_wrong(wrong.get(key, "") if field.text.strip() else "")


class HangStep(QWidget):
    """What to do next in large words, the reading in large figures, and what was measured."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._display = shared.display
        self.instruction, self.figure = label("", wrap=True), label("–")
        self.instruction.setFont(shared.look.font(INSTRUCTION_PX, bold=True))
        self.figure.setFont(shared.look.font(FIGURE_PX, bold=True))
        for part, px in ((self.instruction, INSTRUCTION_PX), (self.figure, FIGURE_PX)):
            part.setStyleSheet(f"font-size: {round(px * shared.look.scale)}px; font-weight: 600;")
        self.simulated = label("SIMULATED", "warn")
        self.state = label("", "head", wrap=True)
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(tr("How long it has been still"))
        self.table = results_table()
        frame = card()
        shown = column(frame, margin=14, gap=6)
        for widget in (self.instruction, self.figure, self.state, self.bar):
            shown.addWidget(widget)
        inside = column(self, gap=10)
        inside.addWidget(self.simulated)
        inside.addWidget(label("Stand clear of the weight. No toes below it.", "warn", wrap=True))
        inside.addWidget(frame)
        inside.addWidget(self.table, 100)
        inside.addStretch(1)

    def show_weighing(self, weighing: Weighing, link: str, *, simulated: bool) -> None:
        """Show where it stands; ``link`` says what is wrong with the connection, if anything."""
        self.simulated.setVisible(simulated)
        self.instruction.setText(instruction(weighing))
        self.figure.setText(figure(weighing, self._display))
        self.state.setText(link or state_words(weighing))
        self.bar.setValue(round(100 * weighing.share))
        self.table.setVisible(not weighing.raw)
        fill(self.table, weighing, self._display)


class ResultStep(QWidget):
    """What came of it, in words."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._display = shared.display
        self.simulated = label("SIMULATED: practice, never kept as a check", "warn", wrap=True)
        self.result, self.words = Badge(shared.look, RESULT_PX), label("", "head", wrap=True)
        self.table, self.notes = results_table(), label("", "warn", wrap=True)
        self.kept = label("", wrap=True)
        inside = column(self, gap=10)
        inside.addWidget(self.simulated)
        inside.addWidget(self.result, 0, Qt.AlignmentFlag.AlignLeft)
        for part in (self.words, self.notes, self.table, self.kept):
            inside.addWidget(part, 1 if part is self.table else 0)
        inside.addStretch(0)

    def show_calibration(self, made: TwoPoint, kept: str, *, simulated: bool) -> None:
        """Show a calibration; ``kept`` says where it goes."""
        self.simulated.setVisible(simulated)
        for part in (self.result, self.table, self.notes):
            part.hide()
        self.words.setText("\n".join(two_point_words(made)))
        self.kept.setText(kept)
        self.kept.setVisible(not simulated)

    def show_result(self, weighing: Weighing, kept: str, *, simulated: bool) -> None:
        """Show the result; ``kept`` says where it goes."""
        self.simulated.setVisible(simulated)
        for part in (self.result, self.table):
            part.show()
        state = BADGES.get(weighing.result, "")
        self.result.show_state(state, None if state else "Not judged")
        self.words.setText(RESULT_WORDS[weighing.result])
        fill(self.table, weighing, self._display)
        notes = cautions(weighing, self._display.torque)
        self.notes.setText("\n".join(notes))
        self.notes.setVisible(bool(notes))
        self.kept.setText(kept)
        self.kept.setVisible(not simulated)


def figure(weighing: Weighing, display: Display) -> str:
    """Give what is shown now: a torque, or the bare number."""
    if not weighing.raw or weighing.now_nm is None:
        return display.torque(weighing.now_nm)
    return display.number(weighing.now_nm, 0 if abs(weighing.now_nm) >= BARE else 4)


def instruction(weighing: Weighing) -> str:
    """Say what to do next, in few words."""
    if weighing.done:
        return "Done"
    load = weighing.load
    if weighing.raw and load is None:
        return "Hang nothing"
    if weighing.doing is Doing.SETTLE:
        return "Hands off" if load is not None or weighing.step else "Hang nothing. Hands off"
    if load is None:
        return "Take everything off"
    if lighter(weighing):
        return f"Take off down to {load.words}"
    return f"Hang {load.words}" if weighing.step == 1 else f"Hang {load.words} in all"


def lighter(weighing: Weighing) -> bool:
    """Whether the next load is less than the one that hangs."""
    return weighing.change_nm * weighing.plan.sense < 0


def state_words(weighing: Weighing) -> str:
    """Say what is waited for."""
    if weighing.now_nm is None:
        return "Waiting for readings …"
    count = f"Step {min(weighing.step + 1, len(weighing.plan.steps))} of {len(weighing.plan.steps)}"
    if weighing.raw:
        waiting = "Press Measure now when it hangs still; a mean is then taken."
        return f"{count}. {waiting if weighing.doing is Doing.HANG else 'Measuring …'}"
    if weighing.doing is Doing.HANG:
        return f"{count}. It measures by itself once the reading has moved and is still."
    return f"{count}. Still moving …" if weighing.moving else f"{count}. Still: measuring …"


def results_table() -> TextTable:
    """Give the table of steps."""
    table = TextTable(HEADS, "Steps of the check", words=(0, 6))
    table.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
    table.setMinimumHeight(130)
    return table


def fill(table: TextTable, weighing: Weighing, display: Display) -> None:
    """Show the steps that were measured."""
    rows = weighing.rows
    if table.rowCount() != len(rows) or not rows:
        table.fill(cells(row, display) for row in rows)
        table.scrollToBottom()


def cells(row: WeighedStep, display: Display) -> tuple[str, ...]:
    """Give a step as it stands in the table."""
    point = row.point
    shown = f"{display.number(display.value(row.shown_nm), 2)} {display.unit}"
    if point is None:
        return (load_words(row.load), f"{display.number(0.0, 2)} {display.unit}", shown, "", "", "", "")
    allowed = "not known" if point.allowed_percent is None else f"{display.number(point.allowed_percent, 2)} %"
    sign = "+" if point.deviation_percent >= 0 else ""
    return (
        load_words(row.load),
        f"{display.number(display.value(point.torque_nm), 2)} {display.unit}",
        shown,
        f"{sign}{display.number(point.deviation_percent, 2)} %",
        f"{display.number(point.u95_percent, 2)} %",
        allowed,
        str(point.agreement),
    )


def load_words(load: PlannedWeight | None) -> str:
    """Name a load."""
    return "nothing" if load is None else load.words
