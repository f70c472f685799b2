"""A second test is read only when it is signed."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from analysis.pipeline import Asked, read_file
from analysis.verdict.confirm import Confirmation, confirmation
from logger.errors import InputError
from logger.recordings.dialled import is_dialled, read_dialled
from logger.recordings.sidecar import read_sidecar

if TYPE_CHECKING:
    from datetime import datetime
    from pathlib import Path

    from analysis.verdict.recorded import RecordingReading


def read_second(first: RecordingReading, second: Path | str, asked: Asked) -> tuple[RecordingReading, Confirmation]:
    """Read a second test and set it against the first.

    Raises:
        InputError: It is not signed, or no second opinion of the first: see ``confirmation``.
        FileError: It cannot be read.
    """
    check_signed(second)
    reading = read_file(second, replace(asked, both_free=None, build_sheet=None))
    return reading, confirmation(first, reading)


def check_signed(second: Path | str) -> None:
    """Refuse a second test that is not signed yet.

    Raises:
        InputError: It is not.
    """
    if _signed(second) is None:
        raise InputError(f"{second} is not signed yet: sign it first, then both tests are shown")


def _signed(path: Path | str) -> datetime | None:
    """Give when a test was signed; a job read from a dial is written when it is."""
    if is_dialled(path):
        return read_dialled(path)[0].signed
    sidecar = read_sidecar(path)
    return None if sidecar is None else sidecar.signed
