"""Photographs of a test: taken in beside the recordings by the worker, with a caption each."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from gui.translation import tr
from gui.widgets.parts import Field, button, column, label, line, restyle
from logger.recordings.photos import ENDINGS, take_in

if TYPE_CHECKING:
    from gui.tester import Tester
    from logger.header import Photo

# What a report needs a picture of: common practice, no source.
WANTED = ("the axle's tag", "how the wheel is held", "the lever on the wheel", "the odometer")
PICTURES = f"Photographs ({' '.join(f'*{ending}' for ending in ENDINGS)})"


class PhotoPart(QWidget):
    """The photographs on the job card; emits ``changed`` when one is added, named or taken off."""

    changed = Signal()

    def __init__(self, tester: Tester) -> None:
        super().__init__()
        self._tester = tester
        self._removed: tuple[int, Photo] | None = None
        layout = column(self, gap=8)
        text = f"Copied beside the recordings and named with their hash. Worth a picture: {', '.join(WANTED)}."
        layout.addWidget(label(text, "caption", wrap=True))
        self._rows = column(gap=8)
        layout.addLayout(self._rows)
        self.captions: list[Field] = []
        self.message = label("", "caption", wrap=True)
        self.message.hide()
        layout.addWidget(self.message)
        foot = line(gap=8)
        self.add = button("Add a photograph", self._ask)
        self.back = button("Put it back", self.restore, tip="The photograph that was removed last")
        self.back.hide()
        foot.addWidget(self.add)
        foot.addWidget(self.back)
        foot.addStretch(1)
        layout.addLayout(foot)
        self.refresh()

    @property
    def photos(self) -> tuple[Photo, ...]:
        """What is on the card."""
        return self._tester.card.photos

    def _put(self, photos: tuple[Photo, ...]) -> None:
        self._tester.card.put(photos=photos)
        self.changed.emit()

    def refresh(self) -> None:
        """Show the photographs on the card."""
        while (item := self._rows.takeAt(0)) is not None:
            row = item.widget()
            if row is not None:
                row.hide()
                row.deleteLater()
        self.captions = []
        for index, photo in enumerate(self.photos):
            self._rows.addWidget(self._row(index, photo))

    def _row(self, index: int, photo: Photo) -> QWidget:
        made = QWidget()
        row = line(made, gap=8)
        hint = WANTED[index] if index < len(WANTED) else "what it shows"
        caption = Field(photo.file, hint, photo.caption)
        caption.edit.setAccessibleName(tr(f"What {photo.file} shows"))
        caption.changed.connect(lambda: self._named(index, caption.text))
        self.captions.append(caption)
        row.addWidget(caption, 1)
        side = column(gap=3)
        side.addWidget(label("", "caption"))
        off = button("Remove", partial(self.remove, index), tip="Leaves the file where it is")
        off.setAccessibleName(tr(f"Remove {photo.file} from the card"))
        side.addWidget(off)
        row.addLayout(side)
        return made

    def _named(self, index: int, caption: str) -> None:
        photos = list(self.photos)
        photos[index] = msgspec.structs.replace(photos[index], caption=" ".join(caption.split()))
        self._put(tuple(photos))

    def _ask(self) -> None:
        paths, _ = QFileDialog.getOpenFileNames(self, tr("Photographs of this test"), "", PICTURES)
        for path in paths:
            self.take(Path(path))

    def take(self, path: Path) -> None:
        """Have a photograph copied and hashed, then put it on the card."""
        self.say(f"Taking in {path.name} …")
        folder = self._tester.settings.recordings
        self._tester.worker.ask(take_in, path, folder, then=self._taken, failed=partial(self.say, wrong=True))

    def _taken(self, photo: Photo) -> None:
        if photo.file in (known.file for known in self.photos):
            self.say(f"{photo.file} is on the card already.")
            return
        self.say("")
        self._put((*self.photos, photo))
        self.refresh()
        self.captions[-1].edit.setFocus()

    def remove(self, index: int) -> None:
        """Take a photograph off the card; its file stays, and it can be put back."""
        self._removed = (index, self.photos[index])
        self._put(tuple(p for i, p in enumerate(self.photos) if i != index))
        self.refresh()
        self.say(f"{self._removed[1].file} is removed from the card; the file is still there.")
        self.back.show()
        self.add.setFocus()

    def restore(self) -> None:
        """Put the photograph back that was taken off last."""
        if self._removed is not None:
            index, photo = self._removed
            self._removed = None
            self._put((*self.photos[:index], photo, *self.photos[index:]))
            self.refresh()
        self.say("")
        self.back.hide()
        self.add.setFocus()

    def say(self, text: str, *, wrong: bool = False) -> None:
        """Show what came of the last action."""
        self.message.setText(text)
        self.message.setVisible(bool(text))
        restyle(self.message, "wrong" if wrong else "caption")
