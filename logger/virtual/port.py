"""A virtual serial port: bytes on a pseudo-terminal at their times, with unplugging. POSIX only.

The terminal is raw from the start and its far side stays open, so that no early byte is echoed or line-buffered.
Pseudo-terminals ignore the baud rate; bytes are let out by a budget every few milliseconds instead, and a backlog grows
as on a real line.
"""

from __future__ import annotations

import os
import sys
import threading
import time
from collections import deque
from collections.abc import Iterable
from pathlib import Path
from types import TracebackType

from logger.errors import LinkError

# The budget is dealt out this often: a real receiver's buffer empties about as often.
TICK_S = 0.004
# Bits on the line per byte: start, eight data, stop.
BITS = 10
# So much may wait on a line that nobody reads; then the oldest is lost, as in a gauge.
BACKLOG_BYTES = 1 << 20


NO_TERMINALS = LinkError("Virtual ports need a POSIX system (Linux, macOS). Use the virtual transducer in-process.")


def _terminal() -> tuple[int, int]:
    """Make a raw pseudo-terminal: near and far end."""
    if sys.platform == "win32":
        raise NO_TERMINALS
    import tty

    near, far = os.openpty()
    tty.setraw(far)
    os.set_blocking(near, False)
    return near, far


def _name_of(terminal: int) -> str:
    if sys.platform == "win32":
        raise NO_TERMINALS
    return os.ttyname(terminal)


class VirtualPort:
    """A pseudo-terminal that plays pieces ``(due time in seconds, bytes)``; a context manager.

    Args:
        pieces: (float, bytes); What is sent and when, from the moment of entering (or of ``go``).
        link: A symbolic link to make to the terminal; it survives unplugging and plugging in again.
        speed: Times real time; infinity: as fast as it is read.
        baud: Limit of the line.
        held: Play only when ``go`` is called: whoever opens a port throws away what came before.
    """

    def __init__(
        self,
        pieces: Iterable[tuple[float, bytes]],
        *,
        link: Path | None = None,
        speed: float = 1.0,
        baud: int | None = None,
        held: bool = False,
    ) -> None:
        if os.name != "posix":
            raise NO_TERMINALS
        self._pieces, self._link, self._speed = iter(pieces), link, speed
        self._per_tick = None if baud is None else baud / BITS * TICK_S
        self._near = self._far = -1
        self._lock = threading.Lock()
        self._stop = threading.Event()
        self._go = threading.Event()
        if not held:
            self._go.set()
        self._waiting: deque[bytes] = deque()
        self._waiting_bytes = 0
        self.finished = threading.Event()
        self.lost_bytes = 0
        self.received = bytearray()
        self._thread = threading.Thread(target=self._play, name="virtual port", daemon=True)

    @property
    def path(self) -> str:
        """What to open: the link, or the terminal itself."""
        return str(self._link) if self._link is not None else _name_of(self._far)

    def __enter__(self) -> VirtualPort:
        self.plug()
        self._thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._stop.set()
        self._go.set()
        self._thread.join(timeout=5)
        self.unplug()

    def plug(self) -> None:
        """Make a terminal, and let the link point to it."""
        with self._lock:
            self._near, self._far = _terminal()
            if self._link is not None:
                self._link.unlink(missing_ok=True)
                self._link.symlink_to(_name_of(self._far))

    def unplug(self) -> None:
        """Take the terminal away; time goes on, and what is due meanwhile is lost."""
        with self._lock:
            if self._link is not None:  # first: a closed terminal's number goes to whoever asks next
                self._link.unlink(missing_ok=True)
            for end in (self._near, self._far):
                if end >= 0:
                    os.close(end)
            self._near = self._far = -1

    def go(self) -> None:
        """Begin to play."""
        self._go.set()

    def _play(self) -> None:
        self._go.wait()
        start = time.monotonic()
        due, data = next(self._pieces, (None, b""))
        budget = 0.0
        while not self._stop.is_set():
            now = time.monotonic()
            while due is not None and due <= (now - start) * self._speed:
                self._queue(data)
                due, data = next(self._pieces, (None, b""))
                if self._speed == float("inf") and self._waiting_bytes > 1 << 16:
                    break
            if self._per_tick is not None:
                budget = min(budget + self._per_tick, 4 * self._per_tick)
            budget = self._let_out(budget)
            if due is None and not self._waiting:
                self.finished.set()
            self._stop.wait(TICK_S)

    def _queue(self, data: bytes) -> None:
        with self._lock:
            if self._near < 0:
                self.lost_bytes += len(data)
                return
            self._waiting.append(data)
            self._waiting_bytes += len(data)
            while self._waiting_bytes > BACKLOG_BYTES:
                dropped = len(self._waiting.popleft())
                self._waiting_bytes -= dropped
                self.lost_bytes += dropped

    def _let_out(self, budget: float) -> float:
        """Write what the line and the reader take; give the budget that is left."""
        with self._lock:
            if self._near < 0:
                self.lost_bytes += self._waiting_bytes
                self._waiting.clear()
                self._waiting_bytes = 0
                return budget
            self._listen()
            while self._waiting:
                data = b"".join(self._waiting)
                piece = data if self._per_tick is None else data[: int(budget)]
                if not piece:
                    break
                try:
                    count = os.write(self._near, piece)
                except BlockingIOError:
                    break
                budget -= count if self._per_tick is not None else 0
                self._waiting = deque([data[count:]]) if count < len(data) else deque()
                self._waiting_bytes -= count
        return budget

    def _listen(self) -> None:
        """Keep what the program writes to the device."""
        try:
            self.received += os.read(self._near, 4096)
        except (BlockingIOError, OSError):
            return
