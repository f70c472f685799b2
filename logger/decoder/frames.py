"""Binary frames in a byte stream: sync bytes, length, counter, samples, check sum.

However the stream is cut into chunks, the samples are the same. Bytes that belong to no frame are counted. A frame
without a check sum is believed, after garbage, only when the next frame begins just behind it: sync bytes may also
occur inside a value.
"""

from __future__ import annotations

from bisect import bisect_left
from itertools import accumulate
from typing import TYPE_CHECKING

import numpy as np

from logger.decoder.floats import WIDTH
from logger.decoder.layouts import MAX_PACKET
from logger.decoder.packets import PacketDecoder, check_holds, joined
from logger.samples import Column, Decoded, Event, EventKind, empty

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.decoder.floats import Bytes
    from logger.decoder.layouts import Frame


class FrameDecoder:
    """A stream decoder for frames of one layout.

    Args:
        frame: What a frame looks like.
        unit: Unit of the torque where its field names none.
    """

    def __init__(self, frame: Frame, unit: str = "") -> None:
        self._frame = frame
        self._sync = frame.sync_bytes
        self._packets = PacketDecoder(frame.packet, unit)
        self._buffer = b""
        self._locked = False  # the last thing in the stream was a good frame
        self._garbage = 0  # bytes skipped since the last event about them

    @property
    def columns(self) -> tuple[Column, ...]:
        """The columns, torque first."""
        return self._packets.columns

    @property
    def simulated(self) -> bool:
        """The device has said that it is a simulation."""
        return self._packets.simulated

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due during a silence, give or take."""
        self._packets.expect(samples, leeway)

    def reset(self, *, midway: bool = True) -> Decoded:
        """Forget a half-received frame; its bytes are an event."""
        dropped, self._buffer, self._locked = len(self._buffer) + self._garbage, b"", False
        self._garbage = 0
        self._packets.forget()
        if not dropped:
            return empty(self.columns)
        return empty(self.columns, events=(Event(EventKind.GARBAGE, 0, dropped, "bytes of an unfinished frame"),))

    def feed(self, *chunks: bytes) -> Decoded:
        """Decode the frames that these chunks complete."""
        before = len(self._buffer)
        ends = [before + end for end in accumulate(map(len, chunks))]
        data = b"".join((self._buffer, *chunks))
        parts: list[Decoded] = []
        position, window = 0, 1
        while (length := self._length_at(data, position)) is not None:
            if not length:
                position = self._skip(data, position)
                window = 1
                continue
            taken = self._take(data, position, length, window, ends, parts)
            if taken is None:
                break
            position = position + taken * length if taken else self._skip(data, position)
            window = min(2 * window, 1 << 16) if taken else 1
        self._buffer = data[position:]
        if self._garbage >= MAX_PACKET:
            parts.append(self._tell_garbage())
        return joined(parts, self.columns)

    def _length_at(self, data: bytes, position: int) -> int | None:
        """Give the length of the frame that begins here; 0: none does; None: more bytes are needed to tell."""
        head = data[position : position + len(self._sync)]
        if head != self._sync:
            return None if len(data) - position < len(self._sync) and self._sync.startswith(head) else 0
        fixed, stated = self._frame.packet.length, self._frame.length
        length = fixed
        if stated is not None:
            at = position + stated.at
            end = at + WIDTH[stated.type]
            if len(data) < end:
                return None
            length = int.from_bytes(data[at:end], stated.order) + stated.adds
            if length > MAX_PACKET or not self._frame.packet.samples_in(length):
                return 0
        if length is None:
            return 0
        return length if len(data) - position >= length else None

    def _skip(self, data: bytes, position: int) -> int:
        """Go to where the next frame may begin."""
        following = data.find(self._sync, position + 1)
        if following < 0:  # keep what may be the first part of the sync bytes
            following = max(position + 1, len(data) - len(self._sync) + 1)
        self._garbage += following - position
        self._locked = False
        return following

    def _take(
        self, data: bytes, position: int, length: int, window: int, ends: list[int], parts: list[Decoded]
    ) -> int | None:
        """Decode the good frames of equal length from here on; give their number, or None to wait for more bytes."""
        count = min((len(data) - position) // length, window)
        rows = np.frombuffer(data, np.uint8, count * length, position).reshape(count, length)
        good = self._good(rows)
        taken = int(np.argmin(good)) if not good.all() else count
        if taken and not self._locked and self._frame.packet.check is None:
            behind = data[position + length : position + length + len(self._sync)]
            if len(behind) < len(self._sync):
                return None
            if behind != self._sync:
                return 0
        if not taken:
            return 0
        finish = position + length * np.arange(1, taken + 1)
        chunk_of = np.array([bisect_left(ends, int(end)) for end in finish], np.int64)
        self._locked = True
        if self._garbage:
            parts.append(self._tell_garbage())
        parts.append(self._packets.decode_rows(rows[:taken], chunk_of))
        return taken

    def _tell_garbage(self) -> Decoded:
        told = Event(EventKind.GARBAGE, 0, self._garbage, f"{self._garbage} bytes that belong to no frame")
        self._garbage = 0
        return empty(self.columns, events=(told,))

    def _good(self, rows: Bytes) -> NDArray[np.bool_]:
        """Tell which rows are frames: sync bytes, stated length and check sum."""
        sync = np.frombuffer(self._sync, np.uint8)
        good: NDArray[np.bool_] = np.all(rows[:, : len(sync)] == sync, axis=1)
        stated, check = self._frame.length, self._frame.packet.check
        if stated is not None:
            field = rows[:, stated.at : stated.at + WIDTH[stated.type]].astype(np.int64)
            weights = 256 ** np.arange(field.shape[1])
            value = field @ (weights[::-1] if stated.order == "big" else weights)
            good &= value + stated.adds == rows.shape[1]
        if check is not None:
            good &= check_holds(rows, check.name, check.order == "big", check.covers_from)
        return good
