"""Saved fixtures, limits and transducers: a folder each, a TOML file per entry, to be picked and sent on."""

from __future__ import annotations

import re
import shutil
from typing import TYPE_CHECKING, Generic, TypeVar

import msgspec

from logger.errors import FileError, HeldwheelError, InputError
from logger.header import Lever, Limit
from logger.toml_file import read_toml, write_toml

if TYPE_CHECKING:
    from pathlib import Path

    from logger.description import Description


R = TypeVar("R", bound=msgspec.Struct)
_DEVICE = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")  # names that Windows gives to devices
MAX_ENTRIES = 2_000  # files looked at in a folder: more is no list to pick from


def file_stem(name: str) -> str:
    """Give a file name without surprises: letters, figures, dashes, at most 60 characters.

    Examples
    --------
    >>> file_stem("Long lever / 5 studs")
    'long-lever-5-studs'
    """
    plain = re.sub(r"[^\w]+", "-", name.strip().lower()).strip("-_")[:60]
    return f"{plain}-" if _DEVICE.fullmatch(plain) else plain or "unnamed"


class Shelf(Generic[R]):
    """One list: a folder of TOML files of one record type that has a ``name``.

    Parameters
    ----------
    folder : Path
        Where the files are; made when first needed.
    record : type
        Their record type.
    """

    def __init__(self, folder: Path, record: type[R]) -> None:
        self.folder, self._record = folder, record
        self.problems: list[str] = []

    def entries(self) -> dict[str, R]:
        """Give what is saved by name, in order; files that cannot be read are told in ``problems``."""
        self.problems = []
        found: dict[str, R] = {}
        for path in sorted(self.folder.glob("*.toml"))[:MAX_ENTRIES]:
            try:
                entry = read_toml(path, self._record)
            except HeldwheelError as error:
                self.problems.append(str(error))
                continue
            found[getattr(entry, "name", "") or path.stem] = entry
        return dict(sorted(found.items(), key=lambda item: item[0].casefold()))

    def save(self, entry: R) -> Path:
        """Save under the entry's own name; one of the same name is replaced.

        Raises
        ------
        InputError
            It has no name.
        FileError
            It cannot be written.
        """
        name = str(getattr(entry, "name", "")).strip()
        if not name:
            raise InputError("Give it a name first, to find it again in the list.")
        path = self._path(name)
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise FileError(f"{self.folder}: cannot be made: {error.strerror or error}") from error
        write_toml(path, entry)
        return path

    def remove(self, name: str) -> None:
        """Forget an entry; its file is renamed, not deleted."""
        path = self._path(name)
        if path.exists():
            path.replace(path.with_suffix(".toml.removed"))

    def bring_in(self, path: Path) -> R:
        """Read somebody's file, save it in the list and give it.

        Raises
        ------
        HeldwheelError
            It is no such file; every fault is named.
        """
        entry = read_toml(path, self._record)
        if not getattr(entry, "name", ""):
            entry = msgspec.structs.replace(entry, name=path.stem)
        self.save(entry)
        return entry

    def send_out(self, name: str, path: Path) -> None:
        """Write an entry to a file for somebody else.

        Raises
        ------
        FileError
            It cannot be written.
        """
        try:
            shutil.copyfile(self._path(name), path)
        except OSError as error:
            raise FileError(f"{path}: cannot be written: {error.strerror or error}") from error

    def _path(self, name: str) -> Path:
        return self.folder / f"{file_stem(name)}.toml"


class Library:
    """The three lists of one user."""

    def __init__(self, folder: Path) -> None:
        self.fixtures: Shelf[Lever] = Shelf(folder / "fixtures", Lever)
        self.limits: Shelf[Limit] = Shelf(folder / "limits", Limit)
        self._folder = folder

    @property
    def transducers(self) -> Shelf[Description]:
        """The transducers; their record is loaded when they are first asked for."""
        from logger import description

        return Shelf(self._folder / "transducers", description.Description)
