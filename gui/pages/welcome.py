"""What the Test page shows before a test: where to begin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QSizePolicy, QWidget

from gui.widgets.fitting import Columns
from gui.widgets.parts import button, card, column, label, scrolled
from gui.widgets.sketch import PullSketch

if TYPE_CHECKING:
    from gui.shared import Shared


class Welcome(QWidget):
    """Three ways to begin; emits ``practise``, ``connect_asked`` and ``dial``."""

    practise = Signal()
    connect_asked = Signal()
    dial = Signal()

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        frame = card()
        outer = column(self)
        outer.addWidget(frame)
        body = QWidget()
        inside = column(body, margin=12, gap=14)
        column(frame, margin=8).addWidget(scrolled(body))
        inside.addWidget(label("Hold one wheel, turn the other", "title"))
        about = label(
            "Two torques are wanted: the one that breaks the clutch pack away, and the one that keeps it rotating. "
            "Each pull is caught by itself, corrected for the lever, and compared with your limit.",
            wrap=True,
        )
        inside.addWidget(about)
        self.first = button("Practise now", self.practise.emit, role="main", tip="Key P")
        ways = [
            _way("No transducer at hand", "A virtual transducer pulls for you on a simulated axle. All of it is "
                 "marked as simulated.", self.first),
            _way("With a transducer", "Bluetooth, serial port or Modbus. Choose it once; it is kept in your list.",
                 button("Choose a transducer", self.connect_asked.emit, tip="Key 6")),
            _way("With a dial wrench", "Read the dial and type it in: the same lever, interval and limit apply.",
                 button("Type a reading", self.dial.emit, tip="Key D")),
        ]  # fmt: skip
        together = Columns(shared.look, ways, 3, 170, gap=14)
        together.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        inside.addWidget(together)
        inside.addWidget(PullSketch(shared.look), 4)
        inside.addStretch(1)
        caution = label(
            "Heldwheel measures; it does not declare a car safe or legal. The maker's manual, local rules and "
            "qualified people decide. One driven wheel in the air can still drive the car off its stand: engine off.",
            "caption",
            wrap=True,
        )
        inside.addWidget(caution)


def _way(title: str, text: str, press: QWidget) -> QFrame:
    frame = QFrame()
    frame.setObjectName("notice")
    inside = column(frame, margin=16, gap=10)
    inside.addWidget(label(title, "head", wrap=True))
    about = label(text, wrap=True)
    about.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    inside.addWidget(about, 1)
    inside.addWidget(press)
    return frame
