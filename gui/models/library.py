"""Saved fixtures, limits and transducers: a folder each, a TOML file per entry, to be picked and sent on."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING, Generic, TypeVar

import msgspec

from logger.edges.small_file import file_stem, free_name, locked, write_whole
from logger.edges.toml_file import read_toml, write_toml
from logger.errors import FileError, HeldwheelError, InputError
from logger.header import Lever, Limit

if TYPE_CHECKING:
    from pathlib import Path

    from analysis.identify.ratio import CandidateList
    from logger.decoder.description import Description


R = TypeVar("R", bound=msgspec.Struct)
MAX_ENTRIES = 2_000  # files looked at in a folder: more is no list to pick from


class Shelf(Generic[R]):
    """One list: a folder of TOML files of one record type that has a ``name``.

    Nothing that was saved is lost: what is replaced or taken off stays in the folder under another ending, and
    ``undo`` brings it back.

    Args:
        folder: Where the files are; made when first needed.
        record: Their record type.
    """

    def __init__(self, folder: Path, record: type[R]) -> None:
        self.folder, self._record = folder, record
        self.problems: list[str] = []
        self._files: dict[str, Path] = {}
        self._undo: list[tuple[Path, Path | None]] = []  # a file, and where what it was before is kept

    def entries(self) -> dict[str, R]:
        """Give what is saved by name, in order; files that cannot be read are told in ``problems``."""
        self.problems, self._files = [], {}
        found: dict[str, R] = {}
        for path in sorted(self.folder.glob("*.toml"))[:MAX_ENTRIES]:
            try:
                entry = read_toml(path, self._record)
            except HeldwheelError as error:
                self.problems.append(str(error))
                continue
            name = getattr(entry, "name", "") or path.stem
            if name in found:  # two files say the same name: both are offered
                name = f"{name} ({path.name})"
            found[name], self._files[name] = entry, path
        return dict(sorted(found.items(), key=lambda item: item[0].casefold()))

    def save(self, entry: R) -> Path:
        """Save under the entry's own name; one of the same name is replaced, and kept for ``undo``.

        Raises:
            InputError: It has no name.
            FileError: It cannot be written.
        """
        name = str(getattr(entry, "name", "")).strip()
        if not name:
            raise InputError("Give it a name first, to find it again in the list.")
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise FileError(f"{self.folder}: cannot be made: {error.strerror or error}") from error
        with locked(self.folder):  # of two windows none takes a name that the other has just taken
            known = self.entries()
            path = self._files.get(name) or free_name(self.folder, file_stem(name), ".toml")
            if known.get(name) == entry:
                return path
            kept = self._keep(path, "replaced") if path.exists() else None
            write_toml(path, entry)
        self._undo.append((path, kept))
        return path

    def remove(self, name: str) -> None:
        """Forget an entry; its file is kept for ``undo``.

        Raises:
            FileError: The folder cannot be written to.
        """
        self.entries()
        path = self._files.get(name)
        if path is not None:
            kept = self._keep(path, "removed")
            path.unlink(missing_ok=True)
            self._undo.append((path, kept))

    @property
    def can_undo(self) -> bool:
        """Whether something was saved or removed since the window was opened."""
        return bool(self._undo)

    def undo(self) -> None:
        """Take the last saving or removing back.

        Raises:
            FileError: The folder cannot be written to.
        """
        if not self._undo:
            return
        path, kept = self._undo.pop()
        try:
            if kept is None:
                path.replace(free_name(path.parent, f"{path.stem}.toml.removed"))
            else:
                if path.exists():
                    self._keep(path, "replaced")
                write_whole(path, kept.read_bytes())
        except OSError as error:
            raise FileError(f"{path}: cannot be brought back: {error.strerror or error}") from error

    def bring_in(self, path: Path) -> R:
        """Read somebody's file, save it in the list and give it; one of the same name stays and this one is renamed.

        Raises:
            HeldwheelError: It is no such file; every fault is named.
        """
        entry = read_toml(path, self._record)
        wanted = getattr(entry, "name", "").strip() or path.stem
        entry = msgspec.structs.replace(entry, name=wanted)
        known, number = self.entries(), 2
        while known.get(entry.name, entry) != entry:  # type: ignore[attr-defined]  # every record of a shelf has one
            entry = msgspec.structs.replace(entry, name=f"{wanted} ({number})")
            number += 1
        self.save(entry)
        return entry

    def send_out(self, name: str, path: Path) -> None:
        """Write an entry to a file for somebody else.

        Raises:
            FileError: It cannot be written, or there is no such entry.
        """
        self.entries()
        source = self._files.get(name)
        if source is None:
            raise FileError(f"{name or 'nothing'}: is not in the list")
        try:
            shutil.copyfile(source, path)
        except OSError as error:
            raise FileError(f"{path}: cannot be written: {error.strerror or error}") from error

    def name_of(self, path: Path) -> str:
        """Give the name that a file has in the list; empty if it is not there."""
        return next((name for name, known in self._files.items() if known == path), "")

    def _keep(self, path: Path, why: str) -> Path:
        """Keep what a file holds under another ending, and give where."""
        kept = free_name(path.parent, f"{path.stem}.toml.{why}")
        try:
            shutil.copyfile(path, kept)
        except OSError as error:
            raise FileError(f"{kept}: cannot be written: {error.strerror or error}") from error
        return kept


class Library:
    """The lists of one user."""

    def __init__(self, folder: Path) -> None:
        self.fixtures: Shelf[Lever] = Shelf(folder / "fixtures", Lever)
        self.limits: Shelf[Limit] = Shelf(folder / "limits", Limit)
        self._folder = folder

    @property
    def ratios(self) -> Shelf[CandidateList]:
        """Lists of axle ratios to compare with; their record is loaded when they are first asked for."""
        from analysis.identify import ratio as axle

        return Shelf(self._folder / "ratios", axle.CandidateList)

    @property
    def transducers(self) -> Shelf[Description]:
        """The transducers; their record is loaded when they are first asked for."""
        from logger.decoder import description

        return Shelf(self._folder / "transducers", description.Description)
