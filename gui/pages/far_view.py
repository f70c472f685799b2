"""The whole screen for someone three metres away: figure, ruler, coach, result, and nothing else."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QWidget

from gui.models.coach import URGENCY, Hint, HintUrgency
from gui.pages.live_panel import coach_words
from gui.translation import tr
from gui.widgets.badge import Badge
from gui.widgets.figure import FigureView, TorqueFigure
from gui.widgets.parts import column, label, line, restyle

if TYPE_CHECKING:
    from PySide6.QtGui import QCloseEvent, QKeyEvent

    from gui.models.run import TestRun
    from gui.shared import Shared


class FarView(QWidget):
    """A window of its own over the whole screen; emits ``left`` when it is closed, ``acted`` for the space bar."""

    left = Signal()
    acted = Signal()
    key = Signal(int)

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self.setObjectName("page")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setWindowTitle(tr("Heldwheel, far view"))
        self.figure = TorqueFigure(shared.look)
        self.coach = label("")
        self.coach.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.value = label("")
        self.badge = Badge(shared.look, 44)
        self.notice = label("", "wronghead", wrap=True)
        self.simulated = label("SIMULATED", "warn")
        self.how = label("Space: next step    R: exclude last    F: close", "caption")
        layout = column(self, margin=24, gap=16)
        layout.addWidget(self.figure, 6)
        layout.addWidget(self.coach, 2)
        layout.addWidget(self.notice)
        row = line(gap=20)
        row.addWidget(self.value, 1)
        row.addWidget(self.badge)
        layout.addLayout(row, 2)
        foot = line()
        foot.addWidget(self.how, 1)
        foot.addWidget(self.simulated)
        layout.addLayout(foot)

    def refresh(self, run: TestRun, view: FigureView) -> None:
        """Show the run."""
        look, display = self._shared.look, self._shared.display
        self.figure.show_view(view)
        words = str(Hint.STOP) if run.hint is Hint.STOP else coach_words(run, display) or " "
        self.coach.setText(words)
        urgency = URGENCY.get(run.hint, HintUrgency.CALM)
        restyle(self.coach, {HintUrgency.STOP: "wrong", HintUrgency.ACT: "warn"}.get(urgency, ""))
        self.coach.setFont(look.font(self._fitting(words, self.height() * 0.085, 1.0), bold=True, scaled=False))
        self.notice.setText(run.notice.text if run.notice is not None else "")
        self.notice.setVisible(run.notice is not None)
        self.notice.setFont(look.font(22, bold=True))
        count = tr(f"{len(run.pulls.counting)} of {run.card.pulls_wanted} pulls")
        value = run.value
        text = count if value is None else f"{display.torque(value.value.nm, value.value.u95_nm)}    {count}"
        self.value.setText(text)
        self.value.setFont(look.font(self._fitting(text, self.height() * 0.055, 0.6), bold=True, scaled=False))
        state = value.state if value is not None else ""
        self.badge.setVisible(bool(state))
        self.badge.show_state(state)
        self.simulated.setVisible(run.simulated)
        self.simulated.setFont(look.font(24, bold=True))

    def _fitting(self, text: str, px: float, share: float) -> float:
        """Give the largest size, up to ``px``, at which a text fits a share of the width."""
        width = QFontMetricsF(self._shared.look.font(100, bold=True, scaled=False)).horizontalAdvance(text)
        return max(16.0, min(px, 100 * share * (self.width() - 60) / max(1.0, width)))

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Close with F or Esc; hand every other key on."""
        if event.key() in {Qt.Key.Key_F, Qt.Key.Key_Escape}:
            self.close()
        elif event.key() == Qt.Key.Key_Space:
            self.acted.emit()
        else:
            self.key.emit(event.key())

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """Tell that it is gone."""
        self.left.emit()
        super().closeEvent(event)
