"""The bar at the bottom of the Test page: the one large button, what it waits for, and how the transducer stands."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from gui.models.flow import Step
from gui.models.state import LinkState
from gui.translation import tr
from gui.widgets.fitting import FlowLayout
from gui.widgets.parts import button, column, label, restyle

if TYPE_CHECKING:
    from PySide6.QtGui import QResizeEvent

    from gui.models.run import TestRun
    from gui.shared import Shared
    from logger.stream.health import Health


WORDS_PX = 190  # of what the button waits for and how the transducer stands, at text scale 1


class Foot(QWidget):
    """Emits ``acted``, ``skipped``, ``back_asked``, ``stopped``, ``far``, ``dial`` and ``card_asked``."""

    acted = Signal()
    skipped = Signal()
    back_asked = Signal()
    stopped = Signal()
    far = Signal()
    dial = Signal()
    card_asked = Signal()

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self.setObjectName("foot")
        self.main = button("Start the test", self.acted.emit, role="main", tip="Space bar")
        self.main.setMinimumHeight(56)
        self.why = label("", "caption", wrap=True)
        self.skip = button("Skip", self.skipped.emit, tip="Key S", keeps_focus=True)
        self.back = button("Back to the pulls", self.back_asked.emit, tip="More pulls after all", keeps_focus=True)
        self.card = button("Job card", self.card_asked.emit, tip="Keys 1 to 6", keeps_focus=True)
        self.card.hide()
        self.stop = button("End the test", self.stopped.emit, tip="Key E", keeps_focus=True)
        self.far_button = button("Far view", self.far.emit, tip="Key F", keeps_focus=True)
        self.dial_button = button("Dial reading", self.dial.emit, tip="Key D", keeps_focus=True)
        self.device = label("", "caption", wrap=True)
        self.stream = label("", "caption", wrap=True)
        self._rows = QGridLayout(self)
        self._rows.setContentsMargins(10, 8, 10, 8)
        self._rows.setHorizontalSpacing(12)
        self._rows.setVerticalSpacing(6)
        self._words = QWidget()
        state = column(self._words, gap=1)
        for words in (self.why, self.device, self.stream):
            state.addWidget(words)
        self._others = QWidget()
        others = FlowLayout(
            self._others, gap=8, right=True
        )  # what comes and goes stands first: the others keep their place
        for part in (self.back, self.skip, self.card, self.dial_button, self.far_button, self.stop):
            others.addWidget(part)
        self._below = False
        self._rows.addWidget(self.main, 0, 0)
        self._rows.addWidget(self._words, 0, 1)
        self._rows.addWidget(self._others, 0, 2)
        self._rows.setColumnStretch(1, 1)

    def _share_width(self) -> None:
        """Put the smaller buttons beside the large one where they fit, and below it where they do not."""
        scale = self._shared.look.scale
        there = [self.dial_button]
        if not self.stop.isHidden():  # what comes and goes during a test moves nothing
            there += [self.far_button, self.stop, self.skip, *([] if self.card.isHidden() else [self.card])]
        shown = [b.sizeHint().width() + 8 for b in there]
        below = self.main.minimumWidth() + WORDS_PX * scale + sum(shown) + 44 > self.width()
        if below is not self._below:
            self._below = below
            self._rows.removeWidget(self._others)
            self._rows.addWidget(self._others, *((1, 0, 1, 3) if below else (0, 2)))
        self._others.setMinimumWidth(0 if below else sum(shown))

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Share the width anew."""
        super().resizeEvent(event)
        self._share_width()

    def refresh(self, run: TestRun, health: Health | None, recording: str, *, elsewhere: bool = False) -> None:
        """Show what the large button does now, and the transducer; ``elsewhere`` is the button to be pressed next."""
        action = run.action()
        self.main.setText(action.text)
        self.main.setMinimumWidth(min(max(300, self.main.sizeHint().width()), max(200, self.width() - 20)))
        self.main.setAccessibleName(f"{tr(action.text)}. {tr('Space bar')}")
        ready = "second" if elsewhere else "main"  # one accent at a time
        restyle(self.main, ready if action.enabled else "wait")  # never disabled: the space bar must stay here
        self.main.setAccessibleDescription("" if action.enabled else tr(action.why_not))
        advice = health.advice if health is not None and run.link is not LinkState.ENDED else ""
        self.why.setText(advice or ("" if action.enabled else action.why_not))
        self.why.setToolTip(tr(advice))
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
        self.why.setVisible(bool(self.why.text()))
        self._share_width()

    def _device(self, run: TestRun, health: Health | None) -> None:
        number = self._shared.display.number
        words = [f"Transducer {run.link}"]
        if run.stale:
            words = ["No signal"]
        elif health is not None and math.isfinite(health.rate_hz) and run.link is LinkState.LIVE:
            words.append(f"{number(health.rate_hz, 0)} readings/s")
        if run.link is not LinkState.NONE:
            words.append(_lost_words(run, health))
        if run.battery:
            words.append(f"battery {run.battery}")
        self.device.setText(" · ".join(words))
        bad = run.silent or bool(run.battery)
        restyle(self.device, "warn" if bad else "caption")


def _skip_words(run: TestRun) -> str:
    if run.link is LinkState.ENDED:
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
