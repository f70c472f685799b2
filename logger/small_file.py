"""Files from others that are small by nature: read whole with a bound, or hashed piece by piece.

Offered: ``read_bounded``, ``hash_of``, ``beside``.
"""

from __future__ import annotations

import hashlib
from pathlib import Path

from logger.errors import FileError

PIECE = 1 << 20  # bytes hashed at once


def read_bounded(path: Path, most: int, else_it_is: str) -> bytes:
    """Read a file of at most so many bytes.

    Raises
    ------
    FileError
        It cannot be opened, or is larger; ``else_it_is`` says what that means.
    """
    try:
        with path.open("rb") as file:
            data = file.read(most + 1)
    except FileNotFoundError:
        raise FileError(f"{path}: there is no such file: look at its name and folder") from None
    except OSError as error:
        raise FileError(f"{path}: cannot be read: {error.strerror or error}") from error
    if len(data) > most:
        raise FileError(f"{path}: is larger than {most} bytes; {else_it_is}")
    return data


def hash_of(path: Path, most: int) -> str:
    """Give the SHA-256 of a regular file of at most so many bytes, in hex digits.

    Raises
    ------
    FileError
        It is none, cannot be read, or is larger.
    """
    try:
        if not path.is_file():
            raise FileError(f"{path}: there is no such file")
        if path.stat().st_size > most:
            raise FileError(f"{path}: is larger than {most} bytes")
        found = hashlib.sha256()
        with path.open("rb") as file:
            while piece := file.read(PIECE):
                found.update(piece)
    except (OSError, ValueError) as error:  # a name with a null byte is a ValueError
        raise FileError(f"{path}: cannot be read: {getattr(error, 'strerror', None) or error}") from error
    return found.hexdigest()


def beside(recording: Path | str, name: str) -> Path | None:
    """Give the file of this name in the folder of a recording; None where the name is none.

    Names come from records that others write: whatever looks like a folder is cut off, so that nothing outside the
    recording's folder is ever opened.
    """
    last = name.replace("\\", "/").rpartition("/")[2].strip()
    if not last or last in (".", "..") or ":" in last or not last.isprintable():
        return None
    return Path(recording).parent / last
