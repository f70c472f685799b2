"""Files beside the recordings: opened only if they are regular ones, read with a bound, replaced whole.

Conventions:
- Only a regular file is opened: a pipe or a device in its place would hold the program for ever.
- What is replaced is replaced whole: a temporary file is written and synced, takes the place of the old one, and the
  folder is synced; who reads sees the old or the new one, also after a power cut. A new file has the rights that the
  user's umask gives, a replaced one keeps its own.
- Whoever reads a file in order to write it again holds the lock of its folder meanwhile, so that two programs lose
  nothing of each other's.
"""

from __future__ import annotations

import contextlib
import errno
import hashlib
import os
import re
import secrets
import stat
from pathlib import Path
from typing import IO, TYPE_CHECKING, Final

from logger.errors import FileError

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

PIECE = 1 << 20  # bytes hashed at once
LOCK_FILE: Final = ".heldwheel.lock"
LONGEST_NAME: Final = 255  # bytes: what the file systems in use take at most
LOCK_S: Final = 15.0  # a program holds it for some milliseconds
_DEVICE: Final = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")  # names that Windows gives to devices
NOT_SYNCED: Final = (errno.EINVAL, errno.EACCES, errno.EPERM, errno.EBADF, errno.ENOTSUP)  # no such thing there


def open_regular(path: Path | str) -> IO[bytes]:
    """Open a file for reading, if it is a regular one.

    Raises:
        FileNotFoundError: There is none.
        FileError: It is a folder, a pipe, a device, or cannot be opened.
    """
    try:
        handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    except FileNotFoundError:
        raise
    except (OSError, ValueError) as error:  # ValueError: a name with a null character
        raise FileError(f"{path}: cannot be read: {getattr(error, 'strerror', None) or error}") from error
    if not stat.S_ISREG(os.fstat(handle).st_mode):
        os.close(handle)
        raise FileError(f"{path}: is no regular file but a folder, pipe or device; copy it into a file first")
    return os.fdopen(handle, "rb")


def read_bounded(path: Path, most: int, else_it_is: str) -> bytes:
    """Read a regular file of at most so many bytes.

    Raises:
        FileError: It cannot be opened, is no regular file, or is larger; ``else_it_is`` says what that means.
    """
    try:
        with open_regular(path) as file:
            data = file.read(most + 1)
    except FileNotFoundError:
        raise FileError(f"{path}: there is no such file: look at its name and folder") from None
    except FileError:
        raise
    except OSError as error:
        raise FileError(f"{path}: cannot be read: {error.strerror or error}") from error
    if len(data) > most:
        raise FileError(f"{path}: is larger than {most} bytes; {else_it_is}")
    return data


def hash_of(path: Path, most: int | None = None) -> str:
    """Give the SHA-256 of a regular file, in hex digits: what ``sha256sum`` prints.

    Raises:
        FileError: It is none, cannot be read, or is larger than ``most`` bytes.
    """
    found = hashlib.sha256()
    try:
        with open_regular(path) as file:
            if most is not None and os.fstat(file.fileno()).st_size > most:
                raise FileError(f"{path}: is larger than {most} bytes")
            while piece := file.read(PIECE):
                found.update(piece)
    except FileNotFoundError:
        raise FileError(f"{path}: there is no such file") from None
    except FileError:
        raise
    except OSError as error:
        raise FileError(f"{path}: cannot be read: {error.strerror or error}") from error
    return found.hexdigest()


def write_whole(path: Path | str, data: bytes | Iterable[bytes]) -> None:
    """Write a file whole or not at all, piece by piece: what was there is replaced only by all of the new one.

    Raises:
        FileError: It cannot be written; what was there is unchanged.
    """
    target = Path(os.path.realpath(path))  # a link goes on pointing at it
    part = target.with_name(f".{target.name[:40]}.{secrets.token_hex(6)}.part")
    try:
        handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
        try:
            with os.fdopen(handle, "wb") as file:
                if target.is_file():
                    os.chmod(part, target.stat().st_mode & 0o777)
                file.writelines([data] if isinstance(data, bytes) else data)
                file.flush()
                os.fsync(file.fileno())
            os.replace(part, target)
        except BaseException:
            with contextlib.suppress(OSError):
                part.unlink()
            raise
        sync_folder(target.parent)
    except (OSError, ValueError) as error:
        text = getattr(error, "strerror", None) or error
        raise FileError(f"{path}: cannot be written: {text}; what was there is unchanged") from error


def sync_folder(folder: Path) -> None:
    """Bring a folder onto the disk, so that a power cut does not take a new or renamed file's name.

    Where the system knows no such thing, or this folder may not be opened, nothing is done.

    Raises:
        OSError: The disk reports an error.
    """
    if os.name == "nt":
        return
    try:
        handle = os.open(folder, os.O_RDONLY)
    except PermissionError:
        return
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in NOT_SYNCED:
            raise
    finally:
        os.close(handle)


@contextlib.contextmanager
def locked(folder: Path | str) -> Iterator[None]:
    """Keep other programs and windows from changing the records of a folder meanwhile; not to be nested.

    Raises:
        FileError: The folder cannot be written to, or another program holds it for long.
    """
    from filelock import FileLock, Timeout

    lock = FileLock(Path(folder) / LOCK_FILE, timeout=LOCK_S, thread_local=False)
    try:
        lock.acquire()
    except Timeout:
        raise FileError(f"{folder}: another program has been writing there for {LOCK_S:g} s; try again") from None
    except (OSError, ValueError, NotImplementedError) as error:
        text = getattr(error, "strerror", None) or error
        raise FileError(f"{folder}: cannot be written to: {text}") from error
    try:
        yield
    finally:
        lock.release()


def beside(recording: Path | str, name: str) -> Path | None:
    """Give the file of this name in the folder of a recording; None where the name is none.

    Names come from records that others write: whatever looks like a folder is cut off, so that nothing outside the
    recording's folder is ever opened.
    """
    last = name.replace("\\", "/").rpartition("/")[2].strip()
    if not last or last in (".", "..") or ":" in last or not last.isprintable() or len(last.encode()) > LONGEST_NAME:
        return None
    return Path(recording).parent / last


def free_name(folder: Path, stem: str, ending: str = "") -> Path:
    """Give a file of this stem that is not there yet: numbered from 2 on where the name is taken."""
    path, number = folder / f"{stem}{ending}", 2
    while os.path.lexists(path):
        path, number = folder / f"{stem}-{number}{ending}", number + 1
    return path


def file_stem(name: str) -> str:
    """Give a file name without surprises: letters, figures, dashes, at most 60 characters.

    >>> file_stem("Long lever / 5 studs")
    'long-lever-5-studs'
    """
    plain = re.sub(r"[^\w]+", "-", name.strip().lower()).strip("-_")[:60]
    return f"{plain}-" if _DEVICE.fullmatch(plain) else plain or "unnamed"
