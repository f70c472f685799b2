"""``<stem>.dial.toml``: a job whose torques were read from a dial: what was tested, each reading, what was checked.

It is written once, when the job is signed. Its last line carries the SHA-256 of everything above it, as a recording's
does; what is put right later goes to a sidecar beside it.
"""

from __future__ import annotations

import hashlib
from datetime import datetime
from pathlib import Path
from typing import Literal

from logger.edges.small_file import read_bounded, write_whole
from logger.edges.toml_file import MAX_BYTES, format_toml, parse_toml
from logger.errors import FileError
from logger.header import Header, Record

ENDING = ".dial.toml"
CLOSED = "# closed sha256="


Quantity = Literal["breakaway", "rotating mean", "rotating maximum"]


class DialReading(Record, frozen=True, kw_only=True):
    """What a dial showed once, and what is known of the dial; all in ``unit``."""

    at: datetime | None = None  # when it was typed in
    shown: float
    unit: str = "N·m"  # of torque; or N, kg where the fixture reads a force or a mass
    quantity: Quantity = "breakaway"
    division: float | None = None  # from one mark of the scale to the next
    error_percent: float | None = None  # of the reading: its accuracy class
    full_scale: float | None = None


class DialFile(Record, frozen=True, kw_only=True):
    """One job read from a dial, as it was signed."""

    schema: Literal["heldwheel dial 1"] = "heldwheel dial 1"
    header: Header
    readings: tuple[DialReading, ...]
    checks: tuple[str, ...] = ()  # the safety checks that were ticked before the first reading
    signed: datetime


def is_dialled(path: Path | str) -> bool:
    """Tell by its name whether a file holds readings of a dial."""
    return str(path).lower().endswith(ENDING)


def write_dialled(path: Path | str, kept: DialFile) -> None:
    """Write a signed job whole or not at all.

    Raises:
        FileError: It cannot be written, or there is a file of that name: what is signed is never replaced.
    """
    if Path(path).exists():
        raise FileError(f"{path}: there is a file of that name, and what is signed is never replaced")
    above = format_toml(kept).encode()
    write_whole(path, above + f"{CLOSED}{hashlib.sha256(above).hexdigest()}\n".encode())


def read_dialled(path: Path | str) -> tuple[DialFile, str, str, tuple[str, ...]]:
    """Read a signed job.

    Returns:
        kept: What it holds.
        sha256, above_sha256: Hashes of the file's bytes, and of those above its closing line.
        problems: What is not in order with the file.

    Raises:
        FileError, DescriptionError: It cannot be read, or is no such file.
    """
    data = read_bounded(Path(path), MAX_BYTES, "this is no file of dial readings")
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        raise FileError(f"{path}: is no UTF-8 text, so no file of dial readings") from None
    above, mark, said = text.rpartition(CLOSED)
    own = hashlib.sha256((above if mark else text).encode()).hexdigest()
    problems: tuple[str, ...] = ()
    if not mark:
        problems = ("the closing line is missing: whether the file is as it was signed cannot be told",)
    elif said.strip() != own:
        problems = ("the file has been changed since it was signed: its SHA-256 differs",)
    kept = parse_toml(text, DialFile, str(path))
    if not kept.readings:
        raise FileError(f"{path}: holds no reading")
    return kept, hashlib.sha256(data).hexdigest(), own, problems
