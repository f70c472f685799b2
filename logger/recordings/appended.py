"""A new file that only grows, and how far the disk is known to have it.

Three different things, always named so:

written
    Handed to the system whole: a kill of the program does not take it, a power cut may.
on the disk
    The system has said that file *and* folder are on the disk: a power cut does not take it either.
still there
    The file's name leads to this very file, as long as it was written: nobody has moved, replaced or cut it.
"""

from __future__ import annotations

import contextlib
import errno
import hashlib
import os
import threading
from collections import deque
from typing import TYPE_CHECKING, Final

from logger.edges.small_file import sync_folder
from logger.errors import FileError

if TYPE_CHECKING:
    from pathlib import Path

MOST_RECENT: Final = 16_000_000  # bytes
_MODE: Final = os.O_RDWR | os.O_CREAT | os.O_EXCL | os.O_APPEND | getattr(os, "O_BINARY", 0)


class AppendedFile:
    """A file that is made here and only appended to.

    Args:
        path: A new file.

    Attributes:
        length: Bytes written.

    Raises:
        FileError: It exists, or cannot be made.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self.length = 0
        self._handle = created(path)
        self._identity = os.fstat(self._handle)
        self._hash = hashlib.sha256()
        self._folder_synced = False
        self._recent: deque[tuple[int, bytes]] = deque()  # what was appended since the last look, with where it ends
        self._recent_bytes = 0
        self._appending = threading.Lock()

    @property
    def recent(self) -> list[bytes]:
        """What was appended since the file was last seen to be there: it can be written anew if it is not."""
        return [data for _, data in tuple(self._recent)]

    @property
    def sha256(self) -> str:
        """Of all bytes written."""
        return self._hash.hexdigest()

    def append(self, data: bytes) -> None:
        """Write all of it; on failure what was written in part is taken back.

        Raises:
            OSError: The system does not take it.
        """
        with self._appending:
            done = 0
            try:
                while done < len(data):
                    done += os.write(self._handle, data[done:])
            except OSError:
                with contextlib.suppress(OSError):
                    os.ftruncate(self._handle, self.length)
                raise
            self.length += done
        self._hash.update(data)
        self._recent.append((self.length, data))
        self._recent_bytes += len(data)
        while self._recent_bytes > MOST_RECENT:  # a disk that hangs for long
            self._forget()

    def sync(self) -> None:
        """Bring file and folder onto the disk.

        Raises:
            OSError: The disk reports an error.
        """
        os.fsync(self._handle)
        if not self._folder_synced:
            sync_folder(self.path.parent)
            self._folder_synced = True

    def look(self) -> None:
        """See that the file is still there, with just the bytes that were written.

        Raises:
            OSError: It is not.
        """
        with self._appending:
            there, length = self.path.stat(), self.length
        if (there.st_ino, there.st_dev) != (self._identity.st_ino, self._identity.st_dev):
            raise FileNotFoundError(errno.ENOENT, "another file has taken its place")
        if there.st_size < length:
            raise OSError(0, "another program has cut it short")
        if there.st_size > length:
            raise OSError(0, "another program has written into it")
        while self._recent and self._recent[0][0] <= length:
            self._forget()

    def _forget(self) -> None:
        with contextlib.suppress(IndexError):  # both threads may
            self._recent_bytes -= len(self._recent.popleft()[1])

    def read_back(self) -> bytes:
        """Give what is in the file now, wherever its name leads.

        Raises:
            OSError: It cannot be read.
        """
        os.lseek(self._handle, 0, os.SEEK_SET)
        with os.fdopen(os.dup(self._handle), "rb") as file:
            return file.read()

    def close(self) -> None:
        """Let it go.

        Raises:
            OSError: The system reports an error that it had kept.
        """
        os.close(self._handle)


def created(path: Path) -> int:
    """Create a new file for appending.

    Raises:
        FileError: It exists, or cannot be made.
    """
    try:
        return os.open(path, _MODE, 0o666)
    except FileExistsError:
        raise FileError(f"{path}: exists already and is never overwritten; choose another name") from None
    except OSError as error:
        raise failed(path, error) from error
    except ValueError as error:
        raise FileError(f"{path}: cannot be made: the name holds a null character") from error


def failed(path: Path, error: Exception) -> FileError:
    """Say what stops writing, and what to do."""
    if not isinstance(error, OSError):
        return FileError(f"{path}: cannot be written: internal error: {type(error).__name__}: {error}")
    if error.errno == errno.ENOENT and error.strerror != os.strerror(errno.ENOENT):
        return FileError(f"{path}: cannot be written: {error.strerror}")
    what = {
        errno.ENOSPC: "the disk is full; free some space or record elsewhere",
        errno.EDQUOT: "your share of the disk is used up; free some space or record elsewhere",
        errno.EROFS: "the disk is write-protected; record elsewhere",
        errno.EACCES: "you are not permitted to write there; record elsewhere",
        errno.EPERM: "you are not permitted to write there; record elsewhere",
        errno.ENOENT: "the file or its folder is not there (removed, or a typing error)",
        errno.ENOTDIR: "a part of its path is no folder",
        errno.EIO: "the disk reports an error or was removed",
        errno.ENAMETOOLONG: "the name is too long",
    }.get(error.errno or 0, error.strerror or str(error))
    return FileError(f"{path}: cannot be written: {what}")
