"""Which transducer: from the saved list, from a description file, or found on this computer."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from gui.pages.editors.base import Editor, ShelfBar
from gui.widgets.parts import Choice, Field, button, label, line

if TYPE_CHECKING:
    from gui.shared import Shared
    from gui.tester import Tester
    from logger.description import Description


class TransducerEditor(Editor):
    """Picks the card's transducer and its port or address."""

    def __init__(self, shared: Shared, tester: Tester) -> None:
        super().__init__("Transducer", "How its bytes become readings, and what its numbers are worth.")
        self._shared, self._card = shared, tester.card
        from logger.description import shipped

        examples = [("", "Choose one"), *((name, name.replace("-", " ")) for name in shipped())]
        self.examples = Choice("Descriptions that come with the program", examples)
        self.address = Field("Port or Bluetooth address", "/dev/ttyUSB0, COM3, or as found below")
        self.facts = label("", wrap=True)
        self.found = Choice("Found on this computer", [("", "Press “Look for ports”")])
        self.message = label("", "warn", wrap=True)
        self.shelf: ShelfBar[Description] = ShelfBar(
            shared.library.transducers, "transducer", self.take, lambda: self._card.description
        )
        self._lay_out()
        self.examples.changed.connect(self._example)
        self.found.changed.connect(self._take_found)
        self.address.changed.connect(lambda: self._card.put(address=self.address.text.strip()))
        self.load()

    def _lay_out(self) -> None:
        self.body.addWidget(self.shelf)
        self.body.addWidget(self.examples)
        self.body.addWidget(self.address)
        row = line(gap=10)
        row.addWidget(self.found, 1)
        row.addWidget(button("Look for ports", self._look, tip="Lists ports; opens none and sends nothing"))
        self.body.addLayout(row)
        self.body.addWidget(self.message)
        self.body.addWidget(label("What its numbers are worth", "head"))
        self.body.addWidget(self.facts)
        self.body.addStretch(1)

    def load(self) -> None:
        """Show the card's transducer."""
        self.address.set_text(self._card.address)
        self.refresh()

    def take(self, description: Description) -> None:
        """Use a transducer that was picked."""
        self._card.put(description=description, address=self._card.address or description.transducer.identity)
        self.load()

    def _example(self) -> None:
        from logger.description import read_description
        from logger.errors import HeldwheelError

        if not self.examples.key:
            return
        try:
            self.take(read_description(self.examples.key))
        except HeldwheelError as error:
            self.message.setText(str(error))

    def _look(self) -> None:
        from serial.tools.list_ports import comports

        ports = sorted(comports(), key=lambda port: port.device)
        options = [(port.device, f"{port.device}  {port.description or ''}".strip()) for port in ports]
        self.found.set_options(options or [("", "No serial port on this computer")])
        if options:
            self._take_found()

    def _take_found(self) -> None:
        if self.found.key:
            self.address.set_text(self.found.key)
            self._card.put(address=self.found.key)

    def refresh(self) -> None:
        """Show what is known of it."""
        description = self._card.description
        if description is None:
            self.facts.setText("No transducer chosen.")
            return
        facts, display = description.transducer, self._shared.display
        lines = [f"Name: {facts.name or description.name}"]
        if facts.serial:
            lines.append(f"Serial number: {facts.serial}")
        if facts.capacity_nm:
            lines.append(f"Capacity: {display.torque(facts.capacity_nm)}")
        if facts.accuracy_percent_of_reading is not None:
            lines.append(f"Accuracy: ± {display.number(facts.accuracy_percent_of_reading, 2)} % of reading, 95 %")
        else:
            lines.append("Accuracy: not stated, so the interval leaves it out")
        if facts.certificate:
            due = f", due {facts.certificate_due}" if facts.certificate_due else ""
            lines.append(f"Certificate: {facts.certificate}{due}")
        extra = msgspec.structs.asdict(facts)
        if extra.get("sign") == "none":
            lines.append("It shows no sign: the direction of a pull cannot be told")
        self.facts.setText("\n".join(lines))
