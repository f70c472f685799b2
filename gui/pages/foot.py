"""The bar at the bottom of the Test page: the one large button, what it waits for, and how the transducer stands."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from gui.models.flow import Step
from gui.models.state import Link
from gui.widgets.parts import button, column, label, line, restyle

if TYPE_CHECKING:
    from gui.models.run import TestRun
    from gui.shared import Shared
    from logger.health import Health


class Foot(QWidget):
    """Emits ``acted``, ``skipped``, ``back_asked``, ``stopped``, ``far`` and ``dial``."""

    acted = Signal()
    skipped = Signal()
    back_asked = Signal()
    stopped = Signal()
    far = Signal()
    dial = Signal()

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self.setObjectName("foot")
        self.main = button("Start the test", self.acted.emit, role="main", tip="Space bar")
        self.main.setMinimumHeight(56)
        self.why = label("", "caption", wrap=True)
        self.skip = button("Skip", self.skipped.emit, tip="Key S", keeps_focus=True)
        self.back = button("Back to the pulls", self.back_asked.emit, tip="More pulls after all", keeps_focus=True)
        self.stop = button("End the test", self.stopped.emit, tip="Key E", keeps_focus=True)
        self.far_button = button("Far view", self.far.emit, tip="Key F", keeps_focus=True)
        self.dial_button = button("Dial reading", self.dial.emit, tip="Key D", keeps_focus=True)
        self.device = label("", "caption")
        self.stream = label("", "caption")
        layout = line(self, margin=10, gap=12)
        layout.addWidget(self.main)
        layout.addWidget(self.why, 1)
        state = column(gap=1)
        state.addStretch(1)
        state.addWidget(self.device)
        state.addWidget(self.stream)
        state.addStretch(1)
        layout.addLayout(state, 1)
        for part in (self.skip, self.back, self.dial_button, self.far_button, self.stop):
            layout.addWidget(part)

    def refresh(self, run: TestRun, health: Health | None, recording: str) -> None:
        """Show what the large button does now, and the transducer."""
        action = run.action()
        self.main.setText(action.text)
        self.main.setMinimumWidth(max(300, self.main.sizeHint().width()))
        self.main.setAccessibleName(f"{action.text}. Space bar")
        restyle(self.main, "main" if action.enabled else "wait")  # never disabled: the space bar must stay here
        self.main.setAccessibleDescription("" if action.enabled else action.why_not)
        advice = health.advice if health is not None and run.link is not Link.ENDED else ""
        self.why.setText(advice or ("" if action.enabled else action.why_not))
        self.why.setToolTip(advice)
        restyle(self.why, "warn" if advice else "caption")
        self.skip.setVisible(run.can_skip)
        self.skip.setText(_skip_words(run))
        self.back.setVisible(run.can_go_back)
        self.stop.setVisible(run.flow.running)
        self.far_button.setVisible(run.flow.running)
        self._device(run, health)
        words, _, name = recording.partition("\n")
        self.stream.setText(words)
        self.stream.setToolTip(name)
        self.stream.setVisible(bool(words))

    def _device(self, run: TestRun, health: Health | None) -> None:
        number = self._shared.display.number
        words = [f"Transducer {run.link}"]
        if run.stale:
            words = ["No signal"]
        elif health is not None and math.isfinite(health.rate_hz) and run.link is Link.LIVE:
            words.append(f"{number(health.rate_hz, 0)} readings/s")
        if run.link is not Link.NONE:
            words.append(_lost_words(run, health))
        if run.battery:
            words.append(f"battery {run.battery}")
        self.device.setText(" · ".join(words))
        bad = run.silent or bool(run.battery)
        restyle(self.device, "warn" if bad else "caption")


def _skip_words(run: TestRun) -> str:
    if run.link is Link.ENDED:
        return "Skip to signing"
    if run.flow.now is Step.PULLS:
        return f"Stop after {len(run.pulls.counting)} of {run.card.pulls_wanted}"
    return "Without drag" if run.flow.now is Step.DRAG else "Without second zero"


def _lost_words(run: TestRun, health: Health | None) -> str:
    """Say what is missing: what was sent while the transducer was away is not counted by every transducer."""
    lost = f"{run.lost} lost" if run.lost else ""
    if run.silent or (health is not None and health.reconnects):
        return lost or "with a gap"
    return lost or "none lost"
