"""What changes files on Review, and how it is taken back: rename, bin, decisions written beside a recording."""

from __future__ import annotations

import os
import re
import time
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from logger.edges.small_file import free_name, write_whole
from logger.errors import FileError, InputError
from logger.recordings.dialled import ENDING
from logger.recordings.heads import OURS
from logger.recordings.sidecar import read_sidecar, sidecar_path

if TYPE_CHECKING:
    from collections.abc import Callable

BIN = "Removed"  # folder beside the recordings: nothing is deleted by the program
QUIET_S = 10.0  # a recording without its closing line that was written to more recently may be in use
UNFIT = re.compile(r'[<>:"/\\|?*\x00-\x1f]')  # what some system does not take in a file's name
DEVICES = re.compile(r"(?i)(con|prn|aux|nul|com\d|lpt\d)(\..*)?")


@dataclass(frozen=True, slots=True)
class UndoStep:
    """Something that was done, in words, and what takes it back; that gives the file to show afterwards."""

    words: str
    back: Callable[[], str]


@dataclass(slots=True)
class Undo:
    """What was done since the window was opened, latest last."""

    steps: list[UndoStep] = field(default_factory=list)

    @property
    def words(self) -> str:
        """The latest step, in words; empty without one."""
        return self.steps[-1].words if self.steps else ""

    def take_back(self) -> str:
        """Take the latest step back and give the file that it was about.

        Raises:
            FileError: It cannot be taken back, as something else has changed since.
        """
        return self.steps.pop().back() if self.steps else ""


def rename(path: str, name: str, *, purpose: str = "") -> tuple[str, UndoStep]:
    """Give a recording another name; its sidecar goes along.

    Args:
        path, name: The recording, and its name without the ending.
        purpose: What it was recorded for.

    Returns:
        path: Where it is now.
        step: Takes it back.

    Raises:
        InputError: No name for a file, or one that is taken.
        FileError: It cannot be moved.
    """
    stem, old = name.strip(), Path(path)
    if not stem or stem.startswith(".") or UNFIT.search(stem) or DEVICES.fullmatch(stem) or len(stem) > 120:
        raise InputError("A name is made of letters, digits, blanks and dashes.")
    if purpose in {"drag", "zero"}:
        raise InputError("Tests name their drag and zero recordings: these keep their names.")
    new = old.with_name(stem + ending_of(old))
    pairs = _pairs(old, new)
    if any(os.path.lexists(target) for _, target in pairs):
        raise InputError(f"There is a {new.name} already.")
    _move(pairs)
    return str(new), UndoStep(f"renaming to {new.name}", lambda: _back(pairs))


def to_bin(path: str) -> UndoStep:
    """Move a recording and its sidecar into the folder of removed ones, and give what takes that back.

    Raises:
        FileError: It is being written, or cannot be moved.
    """
    old = Path(path)
    try:
        fresh = time.time() - old.stat().st_mtime < QUIET_S
    except OSError as error:
        raise FileError(f"{old.name}: cannot be moved: {error.strerror or error}") from None
    if fresh and _open(old):
        raise FileError(f"{old.name}: is being recorded; end the test first")
    stem = old.name[: len(old.name) - len(ending_of(old))]
    pairs = _pairs(old, free_name(old.parent / BIN, stem, old.name.removeprefix(stem)))
    _move(pairs)
    return UndoStep(f"removing {old.name}", lambda: _back(pairs))


def decided(path: str, before: bytes | None) -> UndoStep | None:
    """Give what takes the last change of a recording's sidecar back; None where it is signed, or did not change.

    A signed test is final: another decision makes another revision, nothing is taken back.
    """
    beside, after = sidecar_path(path), sidecar_bytes(path)
    sidecar = read_sidecar(path)
    if after == before or (sidecar is not None and sidecar.signed is not None):
        return None

    def back() -> str:
        if sidecar_bytes(path) != after:
            raise FileError(f"{beside.name}: has been changed since by another window; nothing was taken back")
        if before is None:
            beside.unlink(missing_ok=True)
        else:
            write_whole(beside, before)
        return path

    return UndoStep(f"the change of {Path(path).name}", back)


def sidecar_bytes(path: str) -> bytes | None:
    """Give what stands beside a recording; None for nothing."""
    try:
        return sidecar_path(path).read_bytes()
    except OSError:
        return None


def ending_of(path: Path) -> str:
    """Give a file's ending, the long one of dial readings too.

    >>> ending_of(Path("a.dial.toml")), ending_of(Path("left.1.csv"))
    ('.dial.toml', '.csv')
    """
    return ENDING if path.name.lower().endswith(ENDING) else path.suffix


def _open(path: Path) -> bool:
    with path.open("rb") as file:
        head = file.read(32)
        file.seek(max(0, path.stat().st_size - 200))
        return head.startswith(OURS) and b"\n# closed samples=" not in file.read()


def _pairs(old: Path, new: Path) -> tuple[tuple[Path, Path], ...]:
    beside = ((sidecar_path(old), sidecar_path(new)),) if os.path.lexists(sidecar_path(old)) else ()
    return ((old, new), *beside)


def _move(pairs: tuple[tuple[Path, Path], ...]) -> None:
    """Move all of them or none."""
    done: list[tuple[Path, Path]] = []
    try:
        for source, target in pairs:
            target.parent.mkdir(exist_ok=True)
            os.rename(source, target)
            done.append((source, target))
    except OSError as error:
        for source, target in reversed(done):
            os.rename(target, source)
        raise FileError(f"{pairs[0][0].name}: cannot be moved: {error.strerror or error}") from None


def _back(pairs: tuple[tuple[Path, Path], ...]) -> str:
    if os.path.lexists(pairs[0][0]):
        raise FileError(f"{pairs[0][0].name}: there is another file of that name now")
    _move(tuple((target, source) for source, target in pairs if os.path.lexists(target)))
    return str(pairs[0][0])
