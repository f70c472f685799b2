"""About: version, what it is built on, where everything lies; to be copied when somebody asks for help."""

from __future__ import annotations

import platform
from importlib.metadata import PackageNotFoundError, version
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, qVersion
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QWidget

from gui.widgets.parts import button, column, dialog_size, label, line, scrolled
from logger.version import VERSION

if TYPE_CHECKING:
    from gui.shared import Shared

BUILT_ON = ("PySide6", "pyqtgraph", "numpy", "scipy", "pandas", "bleak", "pyserial", "pymodbus", "fpdf2", "jinja2")
WHAT = (
    "Heldwheel records the torque at a wheel while it is turned by a lever, and says what it is worth. It measures; it "
    "does not declare a car safe or legal."
)
TRAIL = (
    "Paper trail: a recording is closed with its SHA-256 and never changed. What is decided later stands beside it "
    "with time, name and reason, and makes a new revision once the test is signed. A report names both by their "
    "hashes; heldwheel-read report --verify does the work again and compares."
)


def facts(shared: Shared) -> list[str]:
    """Give what somebody who helps wants to know."""
    built = []
    for name in BUILT_ON:
        try:
            built.append(f"{name} {version(name)}")
        except PackageNotFoundError:
            continue
    return [
        f"Heldwheel {VERSION}",
        f"Python {platform.python_version()}, Qt {qVersion()}, {platform.platform(terse=True)}",
        ", ".join(built),
        f"Recordings: {shared.settings.recordings}",
        f"Settings and lists: {shared.settings.folder}",
    ]


class AboutDialog(QDialog):
    """Shows the facts; a button copies them."""

    def __init__(self, shared: Shared, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Heldwheel")
        self.facts = facts(shared)
        layout = column(self, margin=18, gap=12)
        body = QWidget()
        inside = column(body, gap=12)
        inside.addWidget(label(self.facts[0], "title"))
        inside.addWidget(label(WHAT, wrap=True))
        for text in self.facts[1:]:
            fact = label(text, wrap=True)
            fact.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            inside.addWidget(fact)
        inside.addWidget(label(TRAIL, "caption", wrap=True))
        inside.addStretch(1)
        layout.addWidget(scrolled(body), 1)
        foot = line(gap=10)
        foot.addWidget(button("Copy", self.copy, tip="These lines, for a message"))
        foot.addStretch(1)
        foot.addWidget(button("Close", self.accept, role="main", tip="Key Esc"))
        layout.addLayout(foot)
        self.resize(dialog_size(parent, 640 * shared.look.scale, 440 * shared.look.scale))

    def copy(self) -> None:
        """Put the facts on the clipboard."""
        QGuiApplication.clipboard().setText("\n".join(self.facts))
