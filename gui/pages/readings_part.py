"""The recordings that are chosen on the Review page, read in the worker; the latest of them are kept."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from gui.models.loading import Loaded, load
from gui.models.undoing import UndoStep, decided, sidecar_bytes

if TYPE_CHECKING:
    from collections.abc import Sequence
    from concurrent.futures import Future

    from gui.models.archive import ArchiveEntry
    from gui.work import Worker

MOST_OVERLAID = 6  # traces on one plot: more cannot be told apart


class ReadingsPart(QObject):
    """Reads recordings; emits ``begun`` and ``read`` with an entry, ``failed`` with an entry and why."""

    begun = Signal(object)
    read = Signal(object)
    failed = Signal(object, str)

    def __init__(self, worker: Worker, parent: QObject) -> None:
        super().__init__(parent)
        self._worker = worker
        self.loading: dict[str, Future[Loaded]] = {}
        self.loaded: dict[str, Loaded] = {}
        self.sidecars: dict[str, bytes | None] = {}  # as they were when the recording was read

    def want(self, entries: Sequence[ArchiveEntry]) -> None:
        """Read those that are not read yet, and none that is wanted no more."""
        for path in self.loading.keys() - {entry.path for entry in entries}:
            self._worker.forget(self.loading.pop(path))
        for entry in entries:
            if entry.path not in self.loaded and entry.path not in self.loading:
                self.begun.emit(entry)
                self.loading[entry.path] = self._worker.ask(
                    load,
                    entry.path,
                    self._worker.room,
                    then=partial(self._take, entry),
                    failed=partial(self._fail, entry),
                )

    def _take(self, entry: ArchiveEntry, loaded: Loaded) -> None:
        self.loading.pop(entry.path, None)
        self.loaded[entry.path] = loaded
        self.sidecars[entry.path] = sidecar_bytes(entry.path)
        while len(self.loaded) > 2 * MOST_OVERLAID:
            self.loaded.pop(next(iter(self.loaded)))
        self.read.emit(entry)

    def _fail(self, entry: ArchiveEntry, text: str) -> None:
        self.loading.pop(entry.path, None)
        self.failed.emit(entry, text)

    def decided(self, path: str) -> UndoStep | None:
        """Give the step that a decision beside a recording was since it was read, and forget the reading."""
        step = decided(path, self.sidecars.pop(path)) if path in self.sidecars else None
        self.forget(path)
        return step

    def forget(self, path: str) -> None:
        """Forget what was read of a recording, and what is being read of it: it has changed meanwhile."""
        self.sidecars.pop(path, None)
        self.loaded.pop(path, None)
        if path in self.loading:
            self._worker.forget(self.loading.pop(path))
