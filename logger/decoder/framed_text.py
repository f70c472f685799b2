"""Text between STX and ETX, with or without line ends around it, and with a check sum behind the ETX or none.

Each frame becomes a line for ``LineDecoder``. The check may have any value, also that of a line's end or a mark:
it is taken by its length, never looked into.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import msgspec

from logger.decoder.crc import check
from logger.decoder.lines import LineDecoder
from logger.decoder.template import MAX_LINE, LineFormat
from logger.samples import Decoded, Event, EventKind, empty

if TYPE_CHECKING:
    from logger.samples import Column

STX: Final = b"\x02"
ETX: Final = b"\x03"
_BETWEEN: Final = b" \t\r\n\x00"  # what may stand between two frames


class FramedTextDecoder:
    """A stream decoder for text frames.

    Args:
        lines: With the terminator ``ETX``; its template is what stands between the marks.
        unit: Unit of the torque column.
        simulated_mark: Text that only a simulated device sends.
    """

    def __init__(self, lines: LineFormat, unit: str, simulated_mark: str = "") -> None:
        behind = lines.check is not None and lines.check.mark == ETX.decode()
        self._check = lines.check if behind else None
        inner = msgspec.structs.replace(lines, terminator="LF", check=None if behind else lines.check)
        self._lines = LineDecoder(inner, unit, simulated_mark)
        self._buffer = b""
        self._garbage = 0

    @property
    def columns(self) -> tuple[Column, ...]:
        """The columns, torque first."""
        return self._lines.columns

    @property
    def simulated(self) -> bool:
        """The device has said that it is a simulation."""
        return self._lines.simulated

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due during a silence, give or take."""
        self._lines.expect(samples, leeway)

    def reset(self, *, midway: bool = True) -> Decoded:
        """Forget a half-received frame; its bytes are an event."""
        self._garbage += len(self._buffer)
        self._buffer = b""
        return self._told(empty(self.columns))

    def feed(self, *chunks: bytes) -> Decoded:
        """Decode the frames that these chunks complete."""
        return self._told(self._lines.feed(*[self._as_lines(chunk) for chunk in chunks]))

    def _told(self, decoded: Decoded) -> Decoded:
        """Add what belongs to no frame."""
        if not self._garbage:
            return decoded
        text = f"{self._garbage} bytes that belong to no frame, or whose check sum does not hold"
        told = Event(EventKind.GARBAGE, 0, self._garbage, text)
        self._garbage = 0
        return Decoded(decoded.columns, decoded.chunk_of, decoded.counter, (told, *decoded.events))

    def _as_lines(self, chunk: bytes) -> bytes:
        """Give the good frames that this chunk completes, each as a line."""
        self._buffer += chunk
        size = self._check.size if self._check is not None else 0
        found, begin = [], 0
        while (end := self._buffer.find(ETX, begin)) >= 0 and end + 1 + size <= len(self._buffer):
            stop = end + 1 + size
            start = self._buffer.rfind(STX, begin, end)
            noise = self._buffer[begin : start if start >= 0 else stop]
            self._garbage += len(noise.strip(_BETWEEN))
            if start >= 0:
                frame = self._buffer[start:stop]
                if self._holds(frame, end - start):
                    found.append(frame[1 : end - start].replace(b"\r", b" ").replace(b"\n", b" ") + b"\n")
                else:
                    self._garbage += len(frame)
            begin = stop
        self._buffer = self._buffer[begin:]
        if len(self._buffer) > MAX_LINE:
            self._garbage += len(self._buffer)
            self._buffer = b""
        return b"".join(found)

    def _holds(self, frame: bytes, end: int) -> bool:
        form = self._check
        if form is None:
            return True
        covered = frame[form.covers_from : end + form.covers_mark]
        stated = frame[end + 1 :]
        try:
            value = stated if form.form == "bytes" else bytes.fromhex(stated.decode("ascii"))
        except (ValueError, UnicodeDecodeError):
            return False
        return int.from_bytes(value, form.order) == check(covered, form.name)
