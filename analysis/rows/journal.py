"""What of a batch is done so far, on the disk: a run that was stopped goes on, and memory holds no rows."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO, Self

import msgspec

from logger.errors import FileError

if TYPE_CHECKING:
    from analysis.rows.tables import Row


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of one file: its rows, or why there are none.

    ``number`` is the file's place in the list, from 0.
    """

    number: int
    file: str
    rows: tuple[Row, ...] = ()
    error: str = ""


def _file_key(path: Path | str) -> list[object] | None:
    """Give what changes when a recording or its sidecar changes; None where it cannot be seen."""
    from logger.recordings.sidecar import sidecar_path

    try:
        said = os.stat(path)
        beside = sidecar_path(path)
        extra = [beside.stat().st_mtime_ns, beside.stat().st_size] if beside.exists() else []
    except OSError:
        return None
    return [os.path.abspath(path), said.st_size, said.st_mtime_ns, *extra]


class _Line(msgspec.Struct, frozen=True):
    """One line of the journal."""

    settings: str
    key: list[str | int]
    rows: tuple[dict[str, str | int | float | bool | None], ...]
    error: str


_JOURNAL_LINE = msgspec.json.Decoder(_Line)


class Journal:
    """What is done so far, one line of JSON per file; a torn last line is as if it were not there.

    Attributes:
        done: Where the line of each file begins, by the file's place in the list: the rows themselves stay on the disk.
        errors: Files that could not be read, and why.
        count: Rows in all.
    """

    def __init__(self, path: Path, settings: str) -> None:
        self._path = path
        self._settings = settings
        self._file: BinaryIO | None = None
        self._size = 0
        self._keys: list[list[object] | None] = []
        self.done: dict[int, int] = {}
        self.errors: dict[int, str] = {}
        self.count = 0

    def load(self, paths: Sequence[Path | str]) -> None:
        """Find the outcomes of an earlier run that still hold for these files."""
        self._keys = [_file_key(path) for path in paths]
        places: dict[str, list[int]] = {}
        for number, key in enumerate(self._keys):
            if key is not None:
                places.setdefault(json.dumps(key), []).append(number)
        counts: dict[int, int] = {}
        try:
            with self._path.open("rb") as file:
                for line in file:
                    self._size += len(line)
                    try:
                        said = _JOURNAL_LINE.decode(line)
                    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError):
                        continue
                    if said.settings == self._settings:
                        for number in places.get(json.dumps(said.key), []):
                            self.done[number], counts[number] = self._size - len(line), len(said.rows)
                            self._note_error(number, said.error)
        except FileNotFoundError:
            return
        except OSError as error:
            raise FileError(f"{self._path}: cannot be read: {error}; remove it to begin anew") from error
        self.count = sum(counts.values())

    def _note_error(self, number: int, error: str) -> None:
        self.errors.pop(number, None)
        if error:
            self.errors[number] = error

    def __enter__(self) -> Self:
        try:
            self._file = self._path.open("ab")
            if self._size:  # a line that was torn by a kill must not swallow the next one
                self._append(b"\n")
        except OSError as error:
            raise FileError(f"{self._path}: cannot be written: {error.strerror or error}") from error
        return self

    def __exit__(self, *_: object) -> None:
        if self._file is not None:
            self._file.close()

    def _append(self, data: bytes) -> None:
        if self._file is not None:
            self._file.write(data)
            self._file.flush()
            self._size += len(data)

    def add(self, outcome: Outcome) -> None:
        """Write down one outcome; one whose file cannot be seen is read again the next time."""
        key = self._keys[outcome.number] or []
        said = {"settings": self._settings, "key": key, "rows": outcome.rows, "error": outcome.error}
        at = self._size
        try:
            self._append(json.dumps(said).encode() + b"\n")
        except OSError as error:
            raise FileError(f"{self._path}: cannot be written: {error.strerror or error}") from error
        self.done[outcome.number] = at
        self._note_error(outcome.number, outcome.error)
        self.count += len(outcome.rows)

    def rows(self) -> Iterator[Row]:
        """Give all rows in the order of the files, one by one."""
        try:
            with self._path.open("rb") as file:
                for number in sorted(self.done):
                    file.seek(self.done[number])
                    yield from json.loads(file.readline())["rows"]
        except (OSError, ValueError, KeyError) as error:
            raise FileError(f"{self._path}: another program has changed it: {error}; run the batch again") from error

    def remove(self) -> None:
        """Forget the journal: the table is written."""
        self._path.unlink(missing_ok=True)
