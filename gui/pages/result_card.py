"""A recording's result: value, word and shape, the other quantities, the rule, what the reader must know."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QSizePolicy, QWidget

from analysis.verdict.adequacy import certificate_advice
from analysis.verdict.limits import percent, rule_words
from gui.models.job import QUANTITY_WORDS
from gui.models.ratio import half_words, ratio_of, unjudged_words
from gui.translation import sentence
from gui.widgets.badge import Badge
from gui.widgets.parts import column, label, scrolled

if TYPE_CHECKING:
    from collections.abc import Sequence

    from analysis.verdict.recorded import RecordingReading
    from gui.shared import Shared


class ResultCard(QWidget):
    """The card."""

    def __init__(self, shared: Shared) -> None:
        super().__init__()
        self._shared = shared
        body = QWidget()
        inside = column(body, gap=6)
        self._quantity = label("", "caption", wrap=True)
        self._expired = label("", "wronghead", wrap=True)
        self._value = label("–", "title", wrap=True)
        self._badge = Badge(shared.look, 17)
        self._limit = label("", "", wrap=True)
        self._others = label("", "", wrap=True)
        self._notes = label("", "caption", wrap=True)
        for part in (self._expired, self._quantity, self._value, self._badge, self._limit, self._others, self._notes):
            inside.addWidget(part)
        inside.addStretch(1)
        column(self).addWidget(scrolled(body))
        self.setMinimumWidth(300)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Ignored)

    def show_readings(self, readings: Sequence[RecordingReading]) -> None:
        """Show the first recording's result; of one in gear and one in neutral, their ratio."""
        expired = dict.fromkeys(text for reading in readings for text in _expired(reading))
        self._expired.setText("\n".join(f"▲ {text}" for text in expired))
        self._expired.setVisible(bool(expired))
        ratio = ratio_of(readings)
        if ratio is None:
            self.show_reading(readings[0])
            return
        self._quantity.setText("In gear ÷ neutral, rotating maxima, 95 %")
        self._value.setText(ratio.text.replace(".", ",") if self._shared.display.comma else ratio.text)
        self._badge.show_state(ratio.state, None if ratio.state else "No limit to compare with")
        self._limit.setText(f"Limit: {ratio.limit}\nRule: {ratio.rule}" if ratio.limit else "")
        self._others.setText("\n".join(ratio.parts))
        self._notes.setText("\n".join(map(sentence, ratio.notes)))

    def show_reading(self, reading: RecordingReading) -> None:
        """Show a recording's result."""
        display, result = self._shared.display, reading.result
        main = reading.main
        if main is None:
            lost = reading.header is None or reading.header.lever is None
            self._quantity.setText("No fixture: Edit details gives the torque at the axle" if lost else "No value")
            self._value.setText("–")
        else:
            count = len(main.values)
            pulls = "one pull" if count == 1 else f"median of {count} pulls"
            self._quantity.setText(f"{QUANTITY_WORDS[main.budget.quantity]} at the axle, {pulls}")
            self._value.setText(display.torque(main.budget.value, main.budget.u95))
        limit = reading.header.limit if reading.header is not None else None
        half = half_words(limit, reading.header.test.gear) if reading.header is not None else ""
        state = str(result.state) if result is not None and not reading.half else ""
        self._badge.show_state(state, None if state else unjudged_words(limit))
        self._limit.setText(self._limit_words(reading))
        lines = [
            f"{QUANTITY_WORDS[v.budget.quantity]}: {display.torque(v.budget.value, v.budget.u95)}"
            for v in reading.job
            if v is not main
        ]
        for m in reading.drag.test.means if reading.drag is not None else ():
            packs = display.torque(m.budget.value, m.budget.u95) if m.budget is not None else m.how
            lines.append(f"Pack mean, drag taken off, {m.quantity}, {m.way}: {packs}")
        self._others.setText("\n".join(lines))
        notes = [*(result.notes if result is not None else main.notes if main is not None else ())]
        self._notes.setText("\n".join(dict.fromkeys(map(sentence, [half] if half else notes))))

    def _limit_words(self, reading: RecordingReading) -> str:
        result, bounds = reading.result, reading.bounds
        if bounds is None or result is None:
            return ""
        words = f"Limit: {QUANTITY_WORDS.get(bounds.quantity, bounds.quantity).lower()} {bounds.words}\n{bounds.source}"
        chance = result.probability
        likely = percent(chance).replace(".", ",") if self._shared.display.comma else percent(chance)
        sure = f", probability of conformity {likely}" if 0 <= chance <= 1 else ""
        return f"{words}\nRule: {rule_words(result.rule, result.guard)}{sure}"


def _expired(reading: RecordingReading) -> tuple[str, ...]:
    header = reading.header
    if header is None or header.started is None:
        return ()
    return certificate_advice(header.transducer, header.started.date())
