"""All settings in one place: how the window looks and sounds, units, language, folder, what stands on every report."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QDialog, QFileDialog, QWidget

from gui.models.display import UNITS
from gui.models.issuing import PAPERS
from gui.theme import SCALES
from gui.translation import LANGUAGES, tr
from gui.widgets.fitting import Columns, FlowLayout
from gui.widgets.parts import Choice, Field, button, column, dialog_size, label, line, scrolled

if TYPE_CHECKING:
    from gui.shared import Shared

COLOURS = (("dark", "Dark"), ("light", "Light"))
DECIMALS = (("", "Point: 38.5"), ("comma", "Comma: 38,5"))
LENGTHS = (("mm", "Millimetres"), ("in", "Inches"))
REPORTS = (
    "For reports written from now on. Without a name here, a report shows the workshop that its recording names; "
    "without someone who authorises it, the line to sign on stays empty."
)


class SettingsDialog(QDialog):
    """Fields for every choice that is remembered; emits ``guide`` and ``about`` when these are asked for."""

    guide = Signal()
    about = Signal()

    def __init__(self, shared: Shared, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Settings"))
        self._shared = shared
        choices = shared.settings.choices
        self.palette_choice = Choice("Colours", COLOURS)
        self.palette_choice.set_key(shared.look.palette.name)
        self.scale = Choice("Text size", [(str(scale), f"{round(scale * 100)} %") for scale in SCALES])
        self.scale.set_key(str(shared.look.scale))
        self.unit = Choice("Torque in", [(unit, unit) for unit in UNITS])
        self.unit.set_key(shared.display.unit)
        self.lengths = Choice("Lengths in", LENGTHS)
        self.lengths.set_key(shared.display.lengths)
        self.decimal = Choice("Decimal mark", DECIMALS)
        self.decimal.set_key("comma" if shared.display.comma else "")
        self.language = Choice("Language, from the next start on", LANGUAGES.items())
        self.language.set_key(choices.language)
        self.sounds = QCheckBox(tr("Sounds"))
        self.sounds.setChecked(shared.sounds.on)
        self.folder = Field("New recordings go to", "", str(shared.settings.recordings))
        self.shop = Field("Workshop", "name at the head of the page", choices.shop)
        self.address = Field("Address", "a stroke / begins a new line", choices.address)
        self.authorised = Field("Authorised by", "printed under the line to sign on", choices.authorised)
        self.paper = Choice("Paper", PAPERS)
        self.paper.set_key(choices.paper)
        self._lay_out()
        self.resize(dialog_size(parent, 760 * shared.look.scale, 700 * shared.look.scale))

    def _lay_out(self) -> None:
        layout = column(self, margin=18, gap=12)
        body = QWidget()
        inside = column(body, gap=12)
        inside.addWidget(label("Window", "title"))
        look_parts = (self.palette_choice, self.scale, self.language, self.unit, self.lengths, self.decimal)
        inside.addWidget(Columns(self._shared.look, look_parts, most=3))
        inside.addWidget(self.sounds)
        inside.addWidget(self.folder)
        row = FlowLayout(gap=10)
        row.addWidget(button("Choose a folder", self.ask_folder))
        inside.addLayout(row)
        inside.addWidget(label("On every report", "title"))
        inside.addWidget(label(REPORTS, "caption", wrap=True))
        for part in (self.shop, self.address, self.authorised, self.paper):
            inside.addWidget(part)
        inside.addStretch(1)
        layout.addWidget(scrolled(body), 1)
        foot = line(gap=10)
        foot.addWidget(button("Guide", self.guide.emit, tip="How to make the test, and all keys: F1"))
        foot.addWidget(button("About", self.about.emit, tip="Version, folders, what it is built on"))
        foot.addStretch(1)
        foot.addWidget(button("Cancel", self.reject, tip="Key Esc"))
        keep = button("Save", self.keep, role="main", tip="Key Enter")
        keep.setDefault(True)
        foot.addWidget(keep)
        layout.addLayout(foot)

    def ask_folder(self) -> None:
        """Ask for the folder that new recordings go to."""
        folder = QFileDialog.getExistingDirectory(self, tr("New recordings go to"), self.folder.text)
        if folder:
            self.folder.set_text(folder)

    def keep(self) -> None:
        """Take what was chosen, and remember it."""
        shared, settings = self._shared, self._shared.settings
        folder = self.folder.text.strip()
        if folder and not Path(folder).is_absolute():
            self.folder.set_wrong("Write the whole path of a folder.")
            return
        comma = self.decimal.key == "comma"
        if folder and Path(folder) != settings.recordings:
            settings.remember(recordings=folder)
        shared.look.use(palette=self.palette_choice.key, scale=float(self.scale.key))
        shared.display.use(unit=self.unit.key, comma=comma, lengths=self.lengths.key)
        shared.sounds.on = self.sounds.isChecked()
        settings.remember(
            palette=self.palette_choice.key,
            scale=float(self.scale.key),
            unit=self.unit.key,
            comma=comma,
            lengths=self.lengths.key,
            language=self.language.key,
            sounds=self.sounds.isChecked(),
            shop=self.shop.text.strip(),
            address=self.address.text.strip(),
            authorised=self.authorised.text.strip(),
            paper=self.paper.key,
        )
        self.accept()
