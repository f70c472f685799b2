"""What is recorded along with the torque: an angle, a rate of turning, a temperature, the torque of the held end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from gui.widgets.parts import Choice, Field, column, label, line
from logger.errors import HeldwheelError

if TYPE_CHECKING:
    from gui.models.job import JobCard
    from gui.shared import Shared
    from logger.decoder.description import Description

MEASURES = {
    "angle": "the wheel's angle",
    "rate": "how fast it turns",
    "temperature": "a temperature",
    "torque": "the torque of the held end",
    "force": "a force",
}
SHIPPED, SAVED = "shipped:", "saved:"


class SecondPart(QWidget):
    """Picks the card's second sensor and its port or address."""

    def __init__(self, shared: Shared, card: JobCard) -> None:
        super().__init__()
        self._shared, self._card = shared, card
        self.which = Choice("Second transducer, recorded along")
        self.address = Field("Its port or Bluetooth address", "/dev/ttyUSB1, COM4, or as found above")
        self.words = label("", "caption", wrap=True)
        inside = column(self, gap=8)
        row = line(gap=10)
        row.addWidget(self.which, 1)
        row.addWidget(self.address, 1)
        inside.addLayout(row)
        inside.addWidget(self.words)
        self.which.changed.connect(self._picked)
        self.address.changed.connect(lambda: self._card.put(second_address=self.address.text.strip()))
        self.load()

    def load(self) -> None:
        """Offer what comes with the program and measures no torque, and everything that is saved."""
        from logger.decoder.description import read_description, shipped

        options = [("", "None")]
        options += [(SAVED + name, name) for name in self._shared.library.transducers.entries()]
        for name, path in shipped().items():
            if read_description(path).measures != "torque":
                options.append((SHIPPED + name, f"{name.replace('-', ' ')} (an invented example)"))
        self.which.set_options(options)
        self.address.set_text(self._card.second_address)
        self.refresh()

    def _picked(self) -> None:
        self._card.put(second=self._description())
        self.refresh()

    def _description(self) -> Description | None:
        from logger.decoder.description import read_description

        key = self.which.key
        try:
            if key.startswith(SHIPPED):
                return read_description(key.removeprefix(SHIPPED))
            return self._shared.library.transducers.entries().get(key.removeprefix(SAVED))
        except HeldwheelError as error:
            self.words.setText(str(error))
            return None

    def refresh(self) -> None:
        """Say what it adds."""
        second = self._card.second
        self.address.setVisible(second is not None)
        if second is None:
            self.words.setText("")
            return
        what = MEASURES[second.measures]
        self.words.setText(f"It tells {what}, at its own times beside the torque's. If it goes away the test goes on.")
