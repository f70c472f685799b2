"""Choices that outlive the window: one small TOML file in the user's configuration folder.

A file that cannot be read or written never stops the program: choices then last as long as the window. One that is
damaged, or written by a newer version, is never written over: what of it can be used is used, and before the first
change it is kept aside under another name. Of two windows each changes only what was changed in it.
"""

from __future__ import annotations

import contextlib
import os
import tomllib
from pathlib import Path
from typing import Literal

import msgspec

from logger.edges.small_file import free_name, locked, read_bounded
from logger.edges.toml_file import MAX_BYTES, parse_toml, read_toml, write_toml
from logger.errors import HeldwheelError
from logger.header import Record

FOLDER_KEY = "HELDWHEEL_HOME"  # keeps everything in one folder of the user's choice: a stick, a test


class Choices(Record, frozen=True, kw_only=True):
    """What is remembered."""

    palette: str = "dark"
    scale: float = 1.0
    unit: str = "N·m"
    comma: bool = False
    lengths: Literal["mm", "in"] = "mm"
    sounds: bool = True
    language: str = "en"
    page: str = "Test"
    window: tuple[int, int, int, int] | None = None  # left, top, width, height
    maximised: bool = False
    recordings: str = ""  # folder that new ones go to; empty for the usual one
    looked_at: str = ""  # folder that Review shows; empty for the one that new recordings go to
    fixture: str = ""  # names of what was used last
    limit: str = ""
    transducer: str = ""
    ports: dict[str, str] = msgspec.field(default_factory=dict)  # of each transducer by name: where it was last
    operator: str = ""
    job: str = ""  # file name of the job that is being filled in
    shop: str = ""  # on every report
    address: str = ""
    authorised: str = ""
    paper: Literal["A4", "letter"] = "A4"
    seen: tuple[str, ...] = ()  # hints that need not be shown again


def home() -> tuple[Path, Path]:
    """Give the folders for choices and lists, and for recordings."""
    own = os.environ.get(FOLDER_KEY)
    if own:
        return Path(own), Path(own) / "recordings"
    import platformdirs

    return Path(platformdirs.user_config_dir("heldwheel")), Path(platformdirs.user_documents_dir()) / "Heldwheel"


class Settings:
    """The choices, read once and written on every change."""

    def __init__(self, folder: Path | None = None) -> None:
        config, recordings = home()
        self.folder = folder if folder is not None else config
        self._recordings = recordings if folder is None else folder / "recordings"
        self.problem = ""
        self.choices = Choices()
        self.fresh = not os.path.lexists(self._file)  # nothing has been chosen yet
        if os.path.lexists(self._file):
            try:
                self.choices = read_toml(self._file, Choices)
            except HeldwheelError as error:
                self.problem = str(error)
                self.choices = _what_fits(self._file)

    @property
    def _file(self) -> Path:
        return self.folder / "window.toml"

    @property
    def recordings(self) -> Path:
        """Folder that recordings are written to."""
        named = self.choices.recordings
        return Path(named) if named and "\0" not in named else self._recordings

    @property
    def looked_at(self) -> Path:
        """Folder whose recordings are reviewed and compared."""
        return Path(self.choices.looked_at) if self.choices.looked_at else self.recordings

    def remember(self, **changes: object) -> None:
        """Change some choices and write them; an unwritable folder is a problem in words, not an error."""
        self.choices = msgspec.structs.replace(self.choices, **changes)
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            with locked(self.folder):
                self.choices = msgspec.structs.replace(self._standing(), **changes)
                write_toml(self._file, self.choices)
        except (HeldwheelError, OSError) as error:
            self.problem = str(error)

    def _standing(self) -> Choices:
        """Give the choices in the file, which another window may have changed; a file that cannot be read is put aside.

        Raises:
            OSError: It cannot be put aside: it must not be written over.
        """
        if not os.path.lexists(self._file):
            return self.choices
        try:
            return read_toml(self._file, Choices)
        except HeldwheelError as error:
            kept = free_name(self._file.parent, f"{self._file.stem}.toml.kept")
            os.rename(self._file, kept)
            self.problem = f"{error}; it is kept as {kept.name}"
            return self.choices


def _what_fits(path: Path) -> Choices:
    """Give what can be used of a file that is not in order: every key that is known and holds what it may hold."""
    import tomli_w

    try:
        found = tomllib.loads(read_bounded(path, MAX_BYTES, "").decode("utf-8-sig"))
    except (HeldwheelError, ValueError, RecursionError):
        return Choices()
    fitting = {}
    for name in Choices.__struct_fields__:
        with contextlib.suppress(HeldwheelError, ValueError, RecursionError):
            if name in found:
                fitting[name] = getattr(parse_toml(tomli_w.dumps({name: found[name]}), Choices, ""), name)
    return Choices(**fitting)
