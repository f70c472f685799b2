"""Writing a recording: one text file that a spreadsheet, ``pandas.read_csv(comment="#")`` and a person can read.

::

    # heldwheel recording 1
    # schema = "heldwheel recording 1"              header: TOML behind "# "
    # started = 2026-05-01T10:00:00+02:00
    # [transducer]
    # unit = "lbf·in"
    time_s,torque_lbf_in,counter,late_ms            columns with their units
    # batch rows=0 crc32=9A3F2C10                   CRC-32 of all bytes since the last batch line
    0.0,12.3,100,0.0
    # event time_s=0.021000 kind=gap count=20 text=20 samples lost
    0.021,12.4,121,1.25
    # batch rows=2 crc32=0B1C2D3E
    # closed samples=2 sha256=…                     of all bytes above this line

Rules
-----
1. Append only; an existing file is never overwritten. Values stand as the device delivered them, with as many digits.
2. A sample counts as saved when its batch line has been handed to the system: at least each 0.25 s. The system is
   told to put it on the disk each second, from another thread.
3. A batch is whole or not there: a number cut short is still a number, so without its batch line a row is not used.
4. A value that the device did not deliver is an empty cell, never 0.
5. ``counter`` is the device's own, in samples, carried on over its wraps: whoever likes may fit the times anew.

Offered: ``RecordingWriter``, ``column_names``, ``format_rows``, ``format_header``, ``format_event``.
"""

from __future__ import annotations

import contextlib
import errno
import hashlib
import math
import os
import threading
import time
import zlib
from collections import deque
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

import msgspec
import numpy as np

from logger.errors import FileError
from logger.header import SCHEMA, Header
from logger.samples import Block, Column, Ending, Event, EventKind
from logger.toml_file import format_toml
from logger.units import column_unit
from logger.version import VERSION

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.samples import Floats

FIRST_LINE: Final = f"# {SCHEMA}\n"
FLUSH_S: Final = 0.05  # from one batch to the next at least: with 0.1 s of gathering before, all is saved within 0.15 s
SYNC_S: Final = 1.0
MAX_TEXT: Final = 300  # characters of an event's text
LEAST_PLAIN, MOST_PLAIN = 1e-6, 1e15  # largest value of a column that is rounded: all powers of ten used are exact
DOUBLE_DIGITS: Final = 15  # that every float holds exactly
SINGLE_DIGITS: Final = 12  # 9 hold a 32-bit float; three more for values far below the largest one beside them
_NUMBERS: Final = msgspec.json.Encoder()
BIG_BATCH: Final = 50_000  # rows: bounds the memory that formatting takes when a fast source is recorded


def column_names(columns: Sequence[Column]) -> tuple[str, ...]:
    """Give the names in the file, unit included: ``torque_lbf_in``, ``angle_deg``, ``late_ms``."""
    return tuple(f"{c.name}_{column_unit(c.unit)}" if column_unit(c.unit) else c.name for c in columns)


def format_header(header: Header) -> str:
    """Give the header's lines."""
    toml = format_toml(header)
    if not toml.startswith("schema = "):  # excluded where it is the record's default
        toml = f'schema = "{SCHEMA}"\n' + toml
    lines = toml.removesuffix("\n").split("\n")  # not splitlines: a text may hold other line separators
    return FIRST_LINE + "".join(f"# {line}".rstrip() + "\n" for line in lines)


def format_event(event: Event) -> str:
    """Give an event's line."""
    text = "".join(c if c.isprintable() else " " for c in event.text[:MAX_TEXT]).strip()
    kind = event.kind.value.replace(" ", "_")
    time_s = event.time_s if math.isfinite(event.time_s) else 0.0
    return f"# event time_s={time_s:.6f} kind={kind} count={event.count} text={text}\n"


def format_rows(time_s: Floats, values: Sequence[Floats]) -> bytes:
    """Give rows: time to the microsecond, values with as many digits as they have; NaN is an empty cell.

    A JSON encoder writes the numbers: the shortest text that gives the same float again, three times as fast as ``%``.
    """
    if not len(time_s):
        return b""
    rows = list(zip(time_s.round(6).tolist(), *map(_plain, values), strict=True))
    return _NUMBERS.encode(rows)[2:-2].replace(b"],[", b"\n").replace(b"null", b"") + b"\n"


def _plain(values: Floats) -> list[Any]:
    """Give the numbers that a device delivered, without the noise of computing with them.

    A number that a device wrote in at most 15 digits, or a raw integer times a decimal scale, is found again among
    numbers of 15 digits. A 32-bit float has fewer, and 15 would show the noise of its conversion.
    """
    known = values[np.isfinite(values)]
    largest = float(np.abs(known).max(initial=0.0))
    if LEAST_PLAIN < largest < MOST_PLAIN:
        whole = known.astype(np.int64)
        if len(known) == len(values) and np.array_equal(whole, known):
            return list(whole.tolist())
        single = np.array_equal(known, known.astype(np.float32)) and not np.array_equal(known, known.round(9))
        values = values.round((SINGLE_DIGITS if single else DOUBLE_DIGITS) - math.ceil(math.log10(largest)))
    return list(values.tolist())


class RecordingWriter:
    """A subscriber that writes a recording.

    Samples are taken in memory at once; a thread of its own writes them, so that a slow disk never holds up reading.

    Parameters
    ----------
    path : Path
        A new file.
    header : Header
        What is known at the start. ``started``, ``program`` and ``simulated`` are completed from the first samples.
    columns : sequence of Column
        ``session.columns``.

    Raises
    ------
    FileError
        The file exists, or cannot be made.
    """

    def __init__(self, path: Path | str, header: Header, columns: Sequence[Column]) -> None:
        self.path = Path(path)
        self._header = header
        self._columns = tuple(columns)
        self._handle = _created(self.path)
        self._identity = os.fstat(self._handle)
        self._hash = hashlib.sha256()
        self._waiting: deque[Block] = deque()
        self._received = 0
        self._saved = 0
        self._length = 0  # bytes that are whole
        self._failure: FileError | None = None
        self._begun = False
        self._closed = False
        self._synced = 0
        self._stop = threading.Event()
        self._news = threading.Event()  # something waits to be written
        if not self._write(FIRST_LINE.encode()) and self._failure is not None:
            os.close(self._handle)
            self.path.unlink(missing_ok=True)  # nothing is in it
            raise self._failure
        self._threads = [
            threading.Thread(target=self._keep_writing, name=f"write {self.path.name}", daemon=True),
            threading.Thread(target=self._keep_syncing, name=f"sync {self.path.name}", daemon=True),
        ]
        for thread in self._threads:
            thread.start()

    @property
    def saved(self) -> int:
        """Samples handed to the system whole, batch line included: what a kill of the program cannot take back."""
        return self._saved

    @property
    def unsaved(self) -> int:
        """Samples received but not yet (or, after a failure, never) saved."""
        return self._received - self._saved

    @property
    def failure(self) -> FileError | None:
        """Why writing has failed; None while all is well."""
        return self._failure

    def on_block(self, block: Block) -> None:
        """Take samples and events.

        Raises
        ------
        FileError
            Writing has failed; the text says how many samples are safe and how many are kept in memory.
        """
        self._waiting.append(block)
        self._received += len(block)
        self._news.set()
        if self._failure is not None:
            raise self._told(self._failure)

    def on_end(self, ending: Ending) -> None:
        """Write what is left and the closing line.

        Raises
        ------
        FileError
            It could not be closed; see ``on_block``.
        """
        if self._closed:
            return
        self._closed = True
        self._halt()
        if self._failure is None:
            self._flush()
        if self._failure is None:
            self._close()
        if self._failure is not None:
            raise self._told(self._failure)

    def rescue(self, folder: Path | str) -> Path:
        """After a failure: write everything, saved or not, as a new recording elsewhere and give its path.

        Raises
        ------
        FileError
            It cannot be written there either.
        """
        self._halt()  # no thread may go on writing once the failure is forgotten
        target = _free_name(Path(folder), self.path)
        handle = _created(target)
        try:
            os.lseek(self._handle, 0, os.SEEK_SET)
            with os.fdopen(self._handle, "rb") as file:
                saved = file.read(self._length)
        except OSError as error:
            raise _failed(self.path, error) from error
        self._handle, self.path, self._failure = handle, target, None
        self._identity = os.fstat(handle)
        self._hash, self._length = hashlib.sha256(), 0
        self._write(saved)
        self._flush()
        if self._failure is None:
            self._close()
        if self._failure is not None:
            raise self._told(self._failure)
        return target

    def _told(self, failure: FileError) -> FileError:
        kept = self.unsaved
        rest = f"; {kept} samples received since are kept in memory" if kept else ""
        return FileError(f"{failure}; {self._saved} samples are saved in it{rest}")

    def _halt(self) -> None:
        """End both threads."""
        self._stop.set()
        self._news.set()
        for thread in self._threads:
            thread.join()

    # --- writing ------------------------------------------------------------------------------------------------------

    def _keep_writing(self) -> None:
        while self._news.wait() and not self._stop.is_set() and self._failure is None:
            self._news.clear()
            due_s = time.monotonic() + FLUSH_S  # by the clock: a batch that takes long does not delay the next
            self._flush()
            self._stop.wait(max(0.0, due_s - time.monotonic()))

    def _keep_syncing(self) -> None:
        """Bring what is written onto the disk, and see that the file is still there."""
        while not self._stop.wait(SYNC_S) and self._failure is None:
            length = self._length
            if length == self._synced:
                continue
            try:
                os.fsync(self._handle)
                self._synced = length
                there = self.path.stat()
                if (there.st_ino, there.st_dev) != (self._identity.st_ino, self._identity.st_dev):
                    raise FileNotFoundError(errno.ENOENT, "another file has taken its place")
            except OSError as error:
                self._failure = _failed(self.path, error)

    def _flush(self) -> None:
        """Write all blocks that wait, as batches."""
        if not self._begun:
            self._begin()
            if not self._begun:
                return  # events before the first sample wait for the header
        while self._waiting and self._failure is None:
            blocks: list[Block] = []
            rows = 0
            while rows < BIG_BATCH and len(blocks) < len(self._waiting):
                blocks.append(self._waiting[len(blocks)])
                rows += len(blocks[-1])
            data = b"".join(self._format(block) for block in blocks)
            if not data or self._batch(data, rows):
                for _ in blocks:
                    self._waiting.popleft()
                self._saved += rows

    def _begin(self) -> None:
        """Write the header, once the first samples have told whether the device is simulated."""
        blocks = tuple(self._waiting)
        first = next((block for block in blocks if len(block)), None)
        if first is None and not self._closed:
            return
        told = any(event.kind is EventKind.SIMULATED for block in blocks for event in block.events)
        age = timedelta(seconds=float(first.time_s[-1])) if first is not None else timedelta()
        header = msgspec.structs.replace(
            self._header,
            started=self._header.started or (datetime.now(UTC).astimezone() - age).replace(microsecond=0),
            program=self._header.program or f"heldwheel {VERSION}",
            simulated=self._header.simulated or told,
        )
        names = ",".join(("time_s", *column_names(self._columns)))
        text = format_header(header)[len(FIRST_LINE) :] + names + "\n"
        self._begun = self._batch(text.encode(), 0, zlib.crc32(FIRST_LINE.encode()))

    def _format(self, block: Block) -> bytes:
        """Give a block's rows with its events at their places."""
        values = [block.columns[column.name] for column in self._columns]
        parts = []
        start = 0
        for event in block.events:
            parts.append(format_rows(block.time_s[start : event.index], [v[start : event.index] for v in values]))
            at = min(event.index, len(block) - 1)
            dated = event if event.time_s == event.time_s or at < 0 else event.at(float(block.time_s[at]))
            parts.append(format_event(dated).encode())
            start = max(start, event.index)
        parts.append(format_rows(block.time_s[start:], [v[start:] for v in values]))
        return b"".join(parts)

    def _batch(self, data: bytes, rows: int, crc: int = 0) -> bool:
        return self._write(data + f"# batch rows={rows} crc32={zlib.crc32(data, crc):08X}\n".encode())

    def _close(self) -> None:
        self._write(f"# closed samples={self._saved} sha256={self._hash.hexdigest()}\n".encode())
        try:
            os.fsync(self._handle)
            os.close(self._handle)
        except OSError as error:
            self._failure = self._failure or _failed(self.path, error)

    def _write(self, data: bytes) -> bool:
        """Append; on failure take back what was written in part, so that the file ends with a whole batch."""
        done = 0
        try:
            while done < len(data):
                done += os.write(self._handle, data[done:])
        except OSError as error:
            with contextlib.suppress(OSError):
                os.ftruncate(self._handle, self._length)
            self._failure = _failed(self.path, error)
            return False
        self._length += done
        self._hash.update(data)
        return True


def _created(path: Path) -> int:
    """Create a new file for writing."""
    try:
        return os.open(path, os.O_RDWR | os.O_CREAT | os.O_EXCL | os.O_APPEND | getattr(os, "O_BINARY", 0), 0o644)
    except FileExistsError:
        raise FileError(f"{path}: exists already and is never overwritten; choose another name") from None
    except OSError as error:
        raise _failed(path, error) from error
    except ValueError as error:
        raise FileError(f"{path}: cannot be made: the name holds a null character") from error


def _failed(path: Path, error: OSError) -> FileError:
    """Say what stops writing, and what to do."""
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


def _free_name(folder: Path, path: Path) -> Path:
    """Give a name in ``folder`` that does not exist yet."""
    for number in range(1000):
        name = folder / f"{path.stem}.rescued{number or ''}{path.suffix}"
        if not name.exists():
            return name
    raise FileError(f"{folder}: there are a thousand rescued recordings of this name already")
