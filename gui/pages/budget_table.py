"""What the interval of a job's value is made of: one row per input, the largest first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from analysis.trace.results import DIRECTION_WORDS
from gui.models.job import QUANTITY_WORDS
from gui.widgets.parts import Choice, column, label
from gui.widgets.table import TextTable
from logger.edges.lengths import of_metres

if TYPE_CHECKING:
    from analysis.uncertainty.budget import Budget
    from analysis.verdict.recorded import RecordingReading
    from gui.shared import Shared

TABLE_PX = 140  # lower than this, it all scrolls
HEADS = ("Input", "Share", "Contribution", "From", "Value", "Standard uncertainty", "Sensitivity", "ν")


class BudgetTable(QWidget):
    """A list of values over the budget of the chosen one."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        self._budgets: dict[str, Budget] = {}
        self.choice = Choice("Uncertainty budget of")
        self.table = TextTable(HEADS, "Uncertainty budget", {0, HEADS.index("From")})
        self.table.setMinimumHeight(TABLE_PX)
        self.sum = label("", "caption", wrap=True)
        layout = column(self, gap=6)
        for part in (self.choice, self.table, self.sum):
            layout.addWidget(part)
        layout.setStretch(1, 1)
        self.choice.changed.connect(self._show)

    def show_reading(self, reading: RecordingReading) -> None:
        """Offer the budgets of a recording's values."""
        self._budgets = {}
        for value in reading.job:
            way = DIRECTION_WORDS[value.direction]
            name = f"{QUANTITY_WORDS[value.budget.quantity]}, {way}, {len(value.values)} pulls"
            self._budgets[name] = value.budget
        self.choice.set_options([(name, name) for name in self._budgets] or [("", "No value at the axle")])
        self._show()

    def _show(self) -> None:
        budget = self._budgets.get(self.choice.key)
        self.table.setRowCount(0)
        if budget is None:
            self.sum.setText("A budget needs at least one valid pull and a fixture.")
            return
        display = self._shared.display
        variance = sum(row.contribution**2 for row in budget.rows) or 1.0
        rows = sorted(budget.rows, key=lambda row: -abs(row.contribution))
        cells = []
        for row in rows:
            scale, unit = of_metres("" if row.input.unit == "1" else row.input.unit, display.lengths)
            scale, unit = (display.factor, display.unit) if unit == "N·m" else (scale, unit)
            cells.append(
                (
                    row.input.name,
                    f"{row.contribution**2 / variance:.0%}",
                    display.number(display.value(abs(row.contribution)), 3),
                    display.in_lengths(row.input.note),
                    f"{row.input.value * scale:.5g} {unit}".strip(),
                    f"{row.input.u * scale:.3g} {unit}".strip(),
                    f"{display.value(row.sensitivity) / scale:.4g}",
                    "∞" if row.input.dof > 1e4 else f"{row.input.dof:.0f}",
                )
            )
        self.table.fill(cells)
        freedom = "many" if budget.dof > 1e4 else f"{budget.dof:.0f}"
        self.sum.setText(
            f"Together {display.torque(budget.value, budget.u95)} (95 %), {freedom} effective degrees of freedom; "
            f"contributions in {display.unit}. According to JCGM 100."
        )
