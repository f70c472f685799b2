r"""Writing a recording: one text file that a spreadsheet, ``pandas.read_csv(comment="#")`` and a person can read.

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

Rules:
1. Append only; an existing file is never overwritten. Values stand as the device delivered them, with as many digits.
2. A sample is *saved* when its batch line has been handed to the system, within 0.25 s: a kill of the program does not
   take it. Each second another thread has file and folder put on the disk and looks whether the file is still there,
   whole; only what was saved before that is *on the disk*, and outlives a power cut.
3. A batch is whole or not there: a number cut short is still a number, so without its batch line a row is not used.
4. A value that the device did not deliver is an empty cell, never 0.
5. ``counter`` is the device's own, in samples, carried on over its wraps: whoever likes may fit the times anew.
6. What was received is in the file or in memory until it is; a failure of any kind is told by the next block or at the
   end, and ``rescue`` writes all there is elsewhere.
7. A comma or semicolon of a text that a spreadsheet would take for the beginning of a formula stands as ``\u002C``.
"""

from __future__ import annotations

import contextlib
import hashlib
import re
import threading
import time
import zlib
from collections import deque
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Final

import msgspec

from logger.errors import FileError
from logger.recordings.appended import AppendedFile, failed
from logger.recordings.recording_text import FIRST_LINE, column_names, format_event, format_header, format_rows
from logger.samples import Block, Column, Ending, Event, EventKind
from logger.version import VERSION

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from logger.header import Header


FLUSH_S: Final = 0.05  # from one batch to the next at least: with 0.1 s of gathering before, all is saved within 0.15 s
SYNC_S: Final = 1.0
_BATCH_LINE: Final = re.compile(rb"^# batch rows=([0-9]{1,9}) crc32=([0-9A-F]{8})\n", re.MULTILINE)
MOST_UNSAVED: Final = 500_000  # samples in memory: beyond, the source is not read until some are saved
BEHIND_S: Final = 2.0  # a batch that waits longer is told
BIG_BATCH: Final = 50_000  # rows: bounds the memory that formatting takes when a fast source is recorded


class RecordingWriter:
    """A subscriber that writes a recording.

    Samples are taken in memory at once; a thread of its own writes them, so that a slow disk never holds up reading.

    Args:
        path: A new file.
        header: What is known at the start. ``started``, ``program`` and ``simulated`` are completed from the first
            samples.
        columns: ``session.columns``.

    Raises:
        FileError: The file exists or cannot be made, or a text of the header is no UTF-8.
    """

    def __init__(self, path: Path | str, header: Header, columns: Sequence[Column]) -> None:
        self.path = Path(path)
        try:
            format_header(header).encode()
        except UnicodeEncodeError as error:
            text = ascii(error.object[error.start - 20 : error.end + 20])
            raise FileError(f"{path}: a text about the test is no UTF-8, near {text}; type it anew") from error
        self._header = header
        self._columns = tuple(columns)
        self._file = AppendedFile(self.path)
        self._waiting: deque[tuple[float, Block]] = deque()  # with when it came
        self._received = 0
        self._saved = 0
        self._on_disk = 0
        self._lost = 0
        self._failure: FileError | None = None
        self._head = b""  # its first batch, once written
        self._whole: tuple[int, str] | None = None  # length and hash above the closing line, once that is written
        self._closed = False
        self._synced = 0
        self._stop = threading.Event()
        self._news = threading.Event()  # something waits to be written
        if not self._write(FIRST_LINE.encode()) and self._failure is not None:
            self._file.close()
            self.path.unlink(missing_ok=True)  # nothing is in it
            raise self._failure
        self._threads = [
            threading.Thread(target=self._guarded, args=(work,), name=f"{what} {self.path.name}", daemon=True)
            for what, work in (("write", self._keep_writing), ("sync", self._keep_syncing))
        ]
        for thread in self._threads:
            thread.start()

    @property
    def saved(self) -> int:
        """Samples handed to the system whole, batch line included: what a kill of the program cannot take back."""
        return self._saved

    @property
    def on_disk(self) -> int:
        """Of them those that the disk is known to have: what a power cut cannot take back."""
        return self._on_disk

    @property
    def unsaved(self) -> int:
        """Samples received but not yet (or, after a failure, never) saved."""
        return self._received - self._saved

    @property
    def lost(self) -> int:
        """Samples that were saved, taken out of the file by somebody else, and not found again by ``rescue``."""
        return self._lost

    @property
    def failure(self) -> FileError | None:
        """Why writing has failed; None while all is well."""
        return self._failure

    @property
    def behind_s(self) -> float:
        """For how long the oldest sample has been waiting to be saved; 0 while that is the usual moment."""
        try:
            waited_s = time.monotonic() - self._waiting[0][0]
        except IndexError:
            return 0.0
        return waited_s if waited_s > BEHIND_S else 0.0

    @property
    def full(self) -> bool:
        """So many samples wait that no more should be read from the source for the moment."""
        return self._failure is None and self.unsaved > MOST_UNSAVED

    def on_block(self, block: Block) -> None:
        """Take samples and events.

        Raises:
            FileError: Writing has failed; the text says how many samples are safe and how many are kept in memory.
        """
        self._waiting.append((time.monotonic(), block))
        self._received += len(block)
        self._news.set()
        if self._failure is not None:
            raise self._told(self._failure)

    def on_end(self, ending: Ending) -> None:
        """Write what is left and the closing line, and see that all is on the disk and still there.

        Raises:
            FileError: It could not be closed; see ``on_block``.
        """
        if self._closed:
            return
        self._closed = True
        self._halt()
        self._guarded(self._finish)
        if self._failure is not None:
            raise self._told(self._failure)

    def rescue(self, folder: Path | str) -> Path:
        """After a failure: write everything, saved or not, as a new recording elsewhere and give its path.

        What somebody else has taken out of the file is counted as ``lost``, and the new recording says so.

        Raises:
            FileError: It cannot be written there either.
        """
        self._halt()  # no thread may go on writing once the failure is forgotten
        if self._whole is not None and self._failure is None:
            return self.path  # closed whole, or rescued before
        old, whole = self._file, self._whole or (self._file.length, self._file.sha256)
        try:
            there = old.read_back()[: whole[0]]
        except OSError:
            there = b""  # what it held is lost; what waits is not
        before = self._failure, self._whole, self._saved, self._lost, self._head, deque(self._waiting)
        self._file = _free_file(Path(folder), self.path)
        self._failure = self._whole = None
        if (len(there), hashlib.sha256(there).hexdigest()) == whole:
            self._write(there)
        else:
            self._write_what_is_left(there, old.recent)
        self._guarded(self._finish)
        if self._failure is not None:
            failure, made = self._failure, self._file
            self._file = old  # all is as it was: another folder may do
            self._failure, self._whole, self._saved, self._lost, self._head, self._waiting = before
            with contextlib.suppress(OSError):
                made.close()
                made.path.unlink()
            raise self._told(failure)
        with contextlib.suppress(OSError):
            old.close()
        self.path = self._file.path
        return self.path

    def _write_what_is_left(self, there: bytes, recent: list[bytes]) -> None:
        """Begin a recording anew with the whole batches of a file that somebody has changed, and with recent ones."""
        kept: list[bytes] = []
        start, first = 0, FIRST_LINE.encode()
        for found in _BATCH_LINE.finditer(there):
            good = zlib.crc32(there[start : found.start()]) == int(found[2], 16)
            if good and not there.startswith(first, start):
                kept.append(there[start : found.end()])
            start = found.end()
        recent = [data for data in recent if _BATCH_LINE.search(data) and not self._head.endswith(data)]
        again = set(recent)
        kept = [*(data for data in kept if data not in again), *recent]
        rows = sum(int(found[1]) for found in map(_BATCH_LINE.search, kept) if found is not None)
        self._lost, self._saved = self._saved - rows, rows
        text = f"{self._lost} samples that had been saved are missing here: another program changed the first file"
        event = format_event(Event(EventKind.GAP, 0, self._lost, text, 0.0)) if self._lost else ""
        self._write(self._head or first)  # the rest of a header that was never written follows
        if event:
            self._batch(event.encode(), 0)
        self._write(b"".join(kept))

    def _told(self, failure: FileError) -> FileError:
        kept = self.unsaved
        known = f"{self._saved} samples had been saved, {self._on_disk} of them are known to be on the disk"
        return FileError(f"{failure}; {known}" + (f"; {kept} received since are kept in memory" if kept else ""))

    def _halt(self) -> None:
        """End both threads."""
        self._stop.set()
        self._news.set()
        for thread in self._threads:
            thread.join()

    # --- writing ------------------------------------------------------------------------------------------------------

    def _guarded(self, work: Callable[[], None]) -> None:
        """Do a thread's work; whatever goes wrong is the recording's failure, never the silent end of a thread."""
        try:
            work()
        except Exception as error:  # noqa: BLE001 - our own bugs too
            self._failure = self._failure or failed(self._file.path, error)

    def _keep_writing(self) -> None:
        while self._news.wait() and not self._stop.is_set() and self._failure is None:
            self._news.clear()
            due_s = time.monotonic() + FLUSH_S  # by the clock: a batch that takes long does not delay the next
            self._flush()
            self._stop.wait(max(0.0, due_s - time.monotonic()))

    def _keep_syncing(self) -> None:
        """Bring what is written onto the disk, and see that the file is still there."""
        while not self._stop.wait(SYNC_S) and self._failure is None:
            saved, length = self._saved, self._file.length
            if length != self._synced:
                self._file.sync()
                self._synced = length
            self._file.look()
            self._on_disk = saved

    def _flush(self) -> None:
        """Write all blocks that wait, as batches."""
        if not self._head:
            self._begin()
            if not self._head:
                return  # events before the first sample wait for the header
        while self._waiting and self._failure is None:
            blocks: list[Block] = []
            rows = 0
            while rows < BIG_BATCH and len(blocks) < len(self._waiting):
                blocks.append(self._waiting[len(blocks)][1])
                rows += len(blocks[-1])
            data = b"".join(self._format(block) for block in blocks)
            if not data or self._batch(data, rows):
                for _ in blocks:
                    self._waiting.popleft()
                self._saved += rows

    def _begin(self) -> None:
        """Write the header, once the first samples have told whether the device is simulated."""
        blocks = [block for _, block in tuple(self._waiting)]  # a copy at once: more may come meanwhile
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
        text = (format_header(header)[len(FIRST_LINE) :] + names + "\n").encode()
        if self._batch(text, 0, zlib.crc32(FIRST_LINE.encode())):
            crc = zlib.crc32(text, zlib.crc32(FIRST_LINE.encode()))
            self._head = FIRST_LINE.encode() + text + _batch_line(0, crc)

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
        return self._write(data + _batch_line(rows, zlib.crc32(data, crc)))

    def _finish(self) -> None:
        """Write what waits and the closing line; whatever fails now leaves the file open for ``rescue``."""
        if self._failure is None:
            self._flush()
        if self._failure is not None:
            return
        self._whole = self._file.length, self._file.sha256
        if self._write(f"# closed samples={self._saved} sha256={self._whole[1]}\n".encode()):
            self._file.sync()
            self._file.look()
            self._on_disk = self._saved
            self._file.close()

    def _write(self, data: bytes) -> bool:
        """Append; on failure the file ends with a whole batch."""
        try:
            self._file.append(data)
        except OSError as error:
            self._failure = failed(self._file.path, error)
            return False
        return True


def _batch_line(rows: int, crc: int) -> bytes:
    return f"# batch rows={rows} crc32={crc:08X}\n".encode()


def _free_file(folder: Path, path: Path) -> AppendedFile:
    """Make a file in ``folder`` by a name that is not taken yet, also not by another program at this moment."""
    for number in range(1000):
        name = folder / f"{path.stem}.rescued{number or ''}{path.suffix}"
        try:
            return AppendedFile(name)
        except FileError:
            if not name.exists():
                raise
    raise FileError(f"{folder}: there are a thousand rescued recordings of this name already")
