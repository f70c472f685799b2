"""Reading our own recordings: every row is used only if its batch checks.

Every hash here is computed from the bytes; what a file states of itself is only compared with it.
"""

from __future__ import annotations

import hashlib
import io
import re
import threading
import zlib
from bisect import bisect_right
from dataclasses import dataclass, field
from itertools import accumulate
from typing import TYPE_CHECKING, Final, NamedTuple

import numpy as np

from logger.edges.toml_file import parse_toml
from logger.edges.units import reading_unit
from logger.errors import DescriptionError, FileError, QuantityError
from logger.header import SCHEMA, Header
from logger.samples import Event, EventKind

if TYPE_CHECKING:
    import pandas as pd

    from logger.samples import Floats

_BATCH: Final = re.compile(rb"# batch rows=([0-9]{1,9}) crc32=([0-9A-F]{8})\n")
_CLOSED: Final = re.compile(rb"# closed samples=([0-9]{1,12}) sha256=([0-9a-f]{64})\n")
_EVENT: Final = re.compile(rb"# event time_s=(-?[0-9.]{1,20}) kind=([a-z_-]{1,30}) count=([0-9]{1,18}) text=(.*)")
_ESCAPED: Final = re.compile(r"\\u(002C|003B)")  # separators, see ``logger.recordings.recording_text.spreadsheet_safe``
_KINDS: Final = {kind.value.replace(" ", "_").encode(): kind for kind in EventKind}
_FIRST_ROW: Final = re.compile(rb"^[^#\n].*", re.MULTILINE)
HEAD_BYTES: Final = 1 << 16
MAX_COLUMNS: Final = 64
MAX_PROBLEMS: Final = 20  # damaged batches told one by one


@dataclass(slots=True)
class Stored:
    """What a recording holds."""

    header: Header = field(default_factory=Header)
    names: tuple[str, ...] = ()  # columns, ``time_s`` first
    columns: dict[str, Floats] = field(default_factory=dict)  # shape (n,); values of the rows whose batches check
    unit: str = "N·m"
    events: list[Event] = field(default_factory=list)
    closed: bool = False  # its closing line is there, and hash, count and every batch check
    # sha256, above_sha256: of all its bytes (what ``sha256sum`` prints), and of all above its closing line (what that
    # line must state)
    sha256: str = ""
    above_sha256: str = ""
    problems: list[str] = field(default_factory=list)


class _Batch(NamedTuple):
    """Bytes ``start`` to ``end``, whose batch line ends at ``stop``."""

    start: int
    end: int
    stop: int
    rows: int
    good: bool


def is_recording(data: bytes) -> bool:
    """Tell whether this is one of our recordings, even if its first line is damaged."""
    head, first = data[:HEAD_BYTES], f"# {SCHEMA}\n".encode()
    if data.strip() and first.startswith(head):  # stopped within its first line
        return True
    return head.startswith(first) or b"\n# batch rows=" in head or f'"{SCHEMA}"'.encode() in head


def read_recording(data: bytes, file: str) -> Stored:
    """Read a recording's bytes.

    Raises:
        FileError: Its columns cannot be made out.
    """
    stored = Stored()
    hashing = _Hashing(data)
    batches = _batches(data)
    closed = _CLOSED.match(data, batches[-1].stop) if batches else None
    _read_head(data, batches, file, stored)
    table = _table(data, batches, file, stored.names)
    if len(table) != sum(batch.rows for batch in batches if batch.good):  # a damaged count in a batch line
        batches = [b._replace(good=b.good and b.rows == _rows(data, b)) for b in batches]
        table = _table(data, batches, file, stored.names)
    _judge_closing(data, closed, hashing, batches, stored)
    _judge_batches(data, batches, closed, stored)
    _take(table, file, stored)
    stored.events = _events(data, [batch for batch in batches if batch.good])
    return stored


class _Hashing:
    """Computes the hashes of all above the closing line and of all bytes, beside the other checks on another core."""

    def __init__(self, data: bytes) -> None:
        at = data.rfind(b"\n# closed ") + 1
        self.length = at or len(data)
        self._above = self._all = ""
        self._thread = threading.Thread(target=self._run, args=(memoryview(data),), name="hash")
        self._thread.start()

    def _run(self, data: memoryview) -> None:
        found = hashlib.sha256(data[: self.length])
        self._above = found.hexdigest()
        found.update(data[self.length :])
        self._all = found.hexdigest()

    def result(self) -> tuple[str, str]:
        """Give the hash of all above the closing line, and of all bytes."""
        self._thread.join()
        return self._above, self._all


def _batches(data: bytes) -> list[_Batch]:
    """Find every batch and check it."""
    batches = []
    view = memoryview(data)
    start = 0
    at = data.find(b"\n# batch ")
    while at >= 0:
        found = _BATCH.match(data, at + 1)
        if found is not None:
            end, stop = at + 1, found.end()
            good = zlib.crc32(view[start:end]) == int(found[2], 16)
            batches.append(_Batch(start, end, stop, int(found[1]), good))
            start = stop
        at = data.find(b"\n# batch ", at + 9 if found is None else stop - 1)
    if batches and batches[0].rows:  # the first batch is the header: it counts no rows
        batches[0] = batches[0]._replace(good=False, rows=0)
    return batches


def _rows(data: bytes, batch: _Batch) -> int:
    """Count the rows of a batch: its lines that are no comments; the line of column names is none."""
    if batch.start == 0:
        return 0
    return data.count(b"\n", batch.start, batch.end) - data.count(b"\n#", batch.start - 1, batch.end)


def _judge_closing(
    data: bytes, closed: re.Match[bytes] | None, hashing: _Hashing, batches: list[_Batch], stored: Stored
) -> None:
    stored.above_sha256, stored.sha256 = hashing.result()
    if closed is None or closed.end() != len(data) or closed.start() != hashing.length:
        stored.problems.append("was never closed (the program or the computer stopped); what checks was recovered")
        return
    if closed[2].decode() != stored.above_sha256:
        stored.problems.append(
            "was changed after it was closed: its hash does not match. Only rows whose own check holds are used"
        )
    elif int(closed[1]) != sum(batch.rows for batch in batches):
        stored.problems.append("its closing line counts other samples than its batches")
    else:
        stored.closed = all(batch.good for batch in batches)


def _judge_batches(data: bytes, batches: list[_Batch], closed: re.Match[bytes] | None, stored: Stored) -> None:
    bad = [batch for batch in batches if not batch.good]
    for batch in bad[:MAX_PROBLEMS]:
        line = data.count(b"\n", 0, batch.start) + 1
        if batch.start == 0:
            stored.problems.append(
                "its header was changed or damaged: unit, lever and all else it says are not certain"
            )
        else:
            stored.problems.append(f"line {line}: {batch.rows} rows do not match their check and are excluded")
    if len(bad) > MAX_PROBLEMS:
        stored.problems.append(f"{len(bad) - MAX_PROBLEMS} more batches do not match their checks and are excluded")
    if not batches:
        stored.problems.append("not one of its batches is whole: nothing in it can be used")
        return
    rest = len(data) - (batches[-1].stop if closed is None else closed.end())
    if rest > 0:
        stored.problems.append(f"its last {rest} bytes are no whole batch and are excluded")


def _read_head(data: bytes, batches: list[_Batch], file: str, stored: Stored) -> None:
    """Read header and column names."""
    end = batches[0].end if batches else len(data)
    lines = data[: min(end, 16 * HEAD_BYTES)].decode("utf-8", "replace").split("\n")
    comments = [line.removeprefix("#").removeprefix(" ") for line in lines if line.startswith("#")]
    names = next((line for line in lines if line and not line.startswith("#")), "")
    try:
        stored.header = parse_toml("\n".join(comments[1:]), Header, file)
    except DescriptionError as error:
        if batches:
            stored.problems.append(f"its header cannot be read ({str(error.faults[0])[:200]}); it is taken as empty")
    stored.names = tuple(name.strip() for name in names.split(","))
    torque = stored.names[1] if len(stored.names) > 1 else ""
    if not batches:  # stopped before the first batch
        stored.names = ("time_s", "torque_Nm")
        return
    kind, _, unit = torque.partition("_")
    stored.unit = _unit(unit)
    twice = len(set(stored.names)) < len(stored.names) or len(stored.names) > MAX_COLUMNS
    if stored.names[0] != "time_s" or kind not in ("torque", "force") or not stored.unit or twice:
        raise FileError(
            f"{file}: its line of column names '{names[:80]}' is damaged: it must begin with time_s,torque_<unit> or "
            "time_s,force_<unit>"
        )
    stated = stored.header.transducer.unit
    if stated and _unit(stated) != stored.unit:
        stored.problems.append(f"its header says {stated}, its torque column {stored.unit}: the column is used")


def _unit(text: str) -> str:
    """Give the canonical unit; nothing if it is none."""
    try:
        return reading_unit(text)
    except QuantityError:
        return ""


def _table(data: bytes, batches: list[_Batch], file: str, names: tuple[str, ...]) -> pd.DataFrame:
    """Read the rows of the good batches."""
    import pandas as pd

    good = [batch for batch in batches if batch.good and batch.start]
    if not any(batch.rows for batch in good):
        return pd.DataFrame({name: np.empty(0) for name in names})
    if len(good) == len(batches) - 1:
        text = memoryview(data)[batches[0].stop : good[-1].end]
    else:
        text = memoryview(b"".join(data[batch.start : batch.end] for batch in good))
    first = _FIRST_ROW.search(text)  # pandas judges the rows by the first one
    if first is not None and first[0].count(b",") != len(names) - 1:
        raise FileError(f"{file}: its rows have {first[0].count(b',') + 1} values where {len(names)} columns are named")
    try:
        return pd.read_csv(
            io.BytesIO(text),
            comment="#",
            header=None,
            names=list(names),
            index_col=False,
            dtype=np.float64,
            engine="c",
            float_precision="high",  # exact up to 15 digits, and as fast
        )
    except (ValueError, OverflowError) as error:
        raise FileError(f"{file}: holds rows that are no numbers: {str(error)[:200]}") from error


def _take(table: pd.DataFrame, file: str, stored: Stored) -> None:
    stored.columns = {name: table[name].to_numpy() for name in stored.names}
    time_s = stored.columns["time_s"]
    if not np.isfinite(time_s).all() or (time_s[1:] < time_s[:-1]).any():
        raise FileError(f"{file}: its times go back or are missing; it was not written by this program")


def _events(data: bytes, good: list[_Batch]) -> list[Event]:
    """Read the events in good batches; ``index`` is the row that each stands before."""
    events: list[Event] = []
    starts = [batch.start for batch in good]
    before = [0, *accumulate(batch.rows for batch in good)]
    last, row, at = -1, 0, 0
    hit = data.find(b"\n# event ") + 1
    while hit:
        stop = data.find(b"\n", hit)
        which = bisect_right(starts, hit) - 1
        if which >= 0 and hit < good[which].end:
            if which != last:
                last, row, at = which, before[which], good[which].start
            row += data.count(b"\n", at, hit)
            event = _event(data[hit:stop], row)
            if event is not None:
                events.append(event)
            at = stop + 1
        hit = data.find(b"\n# event ", stop) + 1 if stop >= 0 else 0
    return events


def _event(line: bytes, row: int) -> Event | None:
    found = _EVENT.match(line)
    kind = _KINDS.get(found[2]) if found is not None else None
    if found is None or kind is None:
        return None
    try:
        time_s = float(found[1])
    except ValueError:
        return None
    text = _ESCAPED.sub(lambda code: chr(int(code[1], 16)), found[4].decode("utf-8", "replace"))
    return Event(kind, row, int(found[3]), text, time_s)
