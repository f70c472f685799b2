"""The recordings in a folder as a list: read in small pieces, filtered, sorted; thousands of them.

Conventions:
- An entry is made from a recording's header and last bytes alone: its samples are not read for the list.
- What a recording says is known once it has been read; the list keeps that beside the entry while the window is open.
"""

from __future__ import annotations

import os
import re
from dataclasses import dataclass, field
from datetime import datetime
from typing import TYPE_CHECKING

import msgspec

from analysis.compare.tags import tag_words, tags_of_header
from logger.edges.small_file import open_regular
from logger.errors import HeldwheelError
from logger.header import Header, Sidecar
from logger.recordings.dialled import ENDING, is_dialled, read_dialled
from logger.recordings.heads import HEAD_BYTES, OURS, header_of
from logger.recordings.sidecar import merged, read_sidecar, revision_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from pathlib import Path

TAIL_BYTES = 200  # the closing line is shorter
FIRST_SCREEN = 40  # entries that fill the first screen
PIECE = 200  # entries read at a time after that


@dataclass(frozen=True, slots=True)
class ArchiveEntry:
    """One recording in the list."""

    # path, started, size: file, start (of the file where the header has none), bytes
    path: str
    started: datetime
    size: int = 0
    # vehicle, customer, number, side, purpose, transducer: from header and sidecar
    vehicle: str = ""
    customer: str = ""
    number: str = ""
    side: str = ""
    purpose: str = ""
    transducer: str = ""
    # tags, facts: the user's tags, and what Compare can group by besides
    tags: dict[str, str | float] = field(default_factory=dict)
    facts: dict[str, str | float] = field(default_factory=dict)
    # simulated, closed, ours: marked simulated; closed in order; a recording of ours at all
    simulated: bool = False
    closed: bool = True
    ours: bool = True
    corrections: int = 0  # decisions in its sidecar
    # signed, revision: whether somebody has signed for it, and the decisions made after that, counted from 1
    signed: bool = False
    revision: int = 1
    problem: str = ""  # why it cannot be read; empty if it can

    @property
    def name(self) -> str:
        """The file's name."""
        return os.path.basename(self.path)

    @property
    def words(self) -> str:
        """Everything that a search looks through, in lower case."""
        tags = " ".join(f"{key}={value}" for key, value in self.tags.items())
        marks = " ".join(
            word
            for word, on in (("simulated", self.simulated), ("recovered", not self.closed), ("foreign", not self.ours))
            if on
        )
        parts = (self.name, self.vehicle, self.customer, self.number, self.side, self.purpose, self.transducer)
        return " ".join((*parts, tags, marks, f"{self.started:%Y-%m-%d}")).lower()

    def holds(self, word: str) -> bool:
        """Whether a word of a search fits; ``oil=reference`` is looked for among the facts that Compare offers, too.

        In quotation marks a fact is meant as a whole: ``tag="A 1"`` finds neither A 12 nor A.
        """
        whole = WHOLE.fullmatch(word)
        word = word.replace('"', "")
        if whole is None and word in self.words:
            return True
        named = ((key, tag_words(key).partition(",")[0]) for key in self.facts) if "=" in word else ()
        facts = (f"{name}={self.facts[key]}".lower() for key, *names in named for name in (key, *names))
        return any(word == fact if whole else word in fact for fact in facts)


@dataclass(frozen=True, slots=True)
class ListedValues:
    """What a recording says, once read: for the list's columns."""

    state: str = ""
    breakaway_nm: float | None = None
    rotating_nm: float | None = None


WORD = re.compile(r'(?:"[^"]*"|\S)+')
WHOLE = re.compile(r'[^"=]+="[^"]*"')
TRACES = (".csv", ".txt", ".tsv", ".xlsx", ".xls", ".ods", ".parquet", ".jsonl")


def list_files(folder: Path) -> list[str]:
    """Give the traces in a folder, newest first; sidecars and other files are no traces."""
    found: list[tuple[float, str]] = []
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                if entry.name.lower().endswith((*TRACES, ENDING)) and not entry.name.startswith("."):
                    found.append((entry.stat().st_mtime, entry.path))
    except OSError:
        return []
    return [path for _, path in sorted(found, reverse=True)]


def first_look(folder: Path) -> tuple[list[str], list[ArchiveEntry]]:
    """Give all traces of a folder, and the entries of the first screenful."""
    paths = list_files(folder)
    return paths, read_entries(paths[:FIRST_SCREEN])


def searched(search: str) -> list[str]:
    """Give the words of a search; what stands in quotation marks is one.

    >>> searched('Shim tag="Front axle 43/11" 2026-05')
    ['shim', 'tag="front axle 43/11"', '2026-05']
    """
    return WORD.findall(search.lower())


def find_tests(folder: Path, search: str) -> list[str]:
    """Give the traces in a folder that can be compared and hold every word of a search."""
    words = searched(search)
    return [
        entry.path
        for entry in read_entries(list_files(folder))
        if entry.purpose not in {"drag", "zero"} and all(entry.holds(word) for word in words)
    ]


def read_entries(paths: Sequence[str]) -> list[ArchiveEntry]:
    """Read some entries; one that cannot be read is an entry that says why."""
    return [read_entry(path) for path in paths]


def read_entry(path: str) -> ArchiveEntry:
    """Read one entry from a recording's header and last bytes."""
    try:
        with open_regular(path) as file:
            size = os.fstat(file.fileno()).st_size
            when = datetime.fromtimestamp(os.fstat(file.fileno()).st_mtime).astimezone()
            head = file.read(HEAD_BYTES)
            file.seek(max(0, size - TAIL_BYTES))
            tail = file.read()
    except OSError as error:
        return ArchiveEntry(path, datetime.now().astimezone(), problem=f"cannot be read: {error.strerror or error}")
    dial = is_dialled(path)
    ours = head.startswith(OURS) or dial
    try:
        sidecar = read_sidecar(path)
        header = read_dialled(path)[0].header if dial else Header()
        header = header_of(head, os.path.basename(path)) if ours and not dial else header
    except HeldwheelError as error:
        return ArchiveEntry(path, when, size, ours=ours, problem=str(error).splitlines()[0])
    whole = merged(header, sidecar)
    return ArchiveEntry(
        path=path,
        started=whole.started or when,
        size=size,
        vehicle=whole.job.vehicle,
        customer=whole.job.customer,
        number=whole.job.number,
        side=whole.test.side or "",
        purpose="dial" if dial else whole.test.purpose or ("" if ours else "imported"),
        transducer=whole.transducer.name,
        tags={**whole.job.tags, **(sidecar.tags if sidecar is not None else {})},
        facts=tags_of_header(whole, os.path.basename(path)),
        simulated=whole.simulated,
        closed=not ours or dial or b"\n# closed samples=" in tail,
        ours=ours,
        corrections=len(sidecar.corrections) if sidecar is not None else 0,
        signed=sidecar is not None and sidecar.signed is not None,
        revision=revision_of(sidecar),
    )


COLUMNS = ("When", "What", "Result")


def _of_kind(entry: ArchiveEntry, kind: str) -> bool:
    """Say whether an entry is of a kind; zeros and drags belong to the test that was made with them."""
    if kind == "tests":
        return entry.purpose not in {"zero", "drag"} or not entry.closed or bool(entry.problem)
    return not kind or entry.purpose == kind or (kind == "recovered" and not entry.closed)


@dataclass(slots=True)
class Archive:
    """The list: all entries, those that pass the filter, in order."""

    entries: list[ArchiveEntry] = field(default_factory=list)
    said: dict[str, ListedValues] = field(default_factory=dict)
    shown: list[ArchiveEntry] = field(default_factory=list)
    search: str = ""
    purpose: str = ""
    _order: str = "When"
    _down: bool = True

    def add(self, entries: Iterable[ArchiveEntry]) -> None:
        """Take more entries; one of the same file is replaced."""
        known = {entry.path: index for index, entry in enumerate(self.entries)}
        for entry in entries:
            if entry.path in known:
                self.entries[known[entry.path]] = entry
            else:
                known[entry.path] = len(self.entries)
                self.entries.append(entry)
        self.arrange()

    def clear(self) -> None:
        """Forget all entries; what has been read stays known."""
        self.entries, self.shown = [], []

    def filter(self, search: str, purpose: str) -> None:
        """Show what holds every word of the search, and is of this purpose."""
        self.search, self.purpose = search, purpose
        self.arrange()

    def sort(self, column: str, *, down: bool) -> None:
        """Order by a column."""
        self._order, self._down = column, down
        self.arrange()

    def arrange(self) -> None:
        """Apply filter and order."""
        words = searched(self.search)
        found = [
            entry
            for entry in self.entries
            if _of_kind(entry, self.purpose) and all(entry.holds(word) for word in words)
        ]
        keys = {
            "When": lambda e: e.started.timestamp(),
            "What": lambda e: (e.vehicle.lower(), e.side, e.purpose),
            "Result": lambda e: (
                self.said.get(e.path, ListedValues()).state,
                self.said.get(e.path, ListedValues()).breakaway_nm or 0.0,
            ),
        }
        self.shown = sorted(found, key=keys[self._order], reverse=self._down)

    @property
    def unclosed(self) -> list[ArchiveEntry]:
        """Recordings that were cut off."""
        return [entry for entry in self.entries if not entry.closed]


def tags_of(text: str) -> dict[str, str | float]:
    """Read tags as they are typed: ``shim=0.2, fill=B``; a number stays a number.

    >>> tags_of("shim=0.2, fill = B")
    {'shim': 0.2, 'fill': 'B'}
    """
    found: dict[str, str | float] = {}
    for part in text.split(","):
        key, sep, value = part.partition("=")
        if sep and key.strip():
            try:
                found[key.strip()] = float(value)
            except ValueError:
                found[key.strip()] = value.strip()
    return found


def with_tags(path: str, tags: dict[str, str | float]) -> Sidecar:
    """Write tags into a recording's sidecar and give it; the recording is not touched."""
    from logger.recordings.sidecar import change_sidecar

    return change_sidecar(path, lambda found: msgspec.structs.replace(found, tags=tags))
