"""A serial port: bytes read in a thread, in chunks, each stamped as it arrives.

Conventions:
- Local ports only, opened for us alone; listening sends nothing.
- The thread reads at once when bytes come after a pause, then lets them gather for ``GATHER_S``: an isolated line is
  stamped to the moment, a stream costs few wake-ups, and a stamp is never early.
"""

from __future__ import annotations

import asyncio
import contextlib
import errno
import stat
import sys
import threading
import time
from collections import deque
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Final

from logger.errors import LinkError, LinkLost
from logger.links.base import MID_LINE_S, MOST_QUEUED
from logger.links.ports import local_port
from logger.samples import Chunk

_TERMINAL: tuple[type[Exception], ...] = ()
if sys.platform != "win32":
    import termios

    _TERMINAL = (termios.error,)  # no OSError: a port that goes away while it is set up

if TYPE_CHECKING:
    import serial

    from logger.decoder.description import SerialSettings

GATHER_S: Final = 0.025  # USB adapters hold bytes back for 16 ms as delivered; waking costs more than reading
BUSY_BYTES: Final = 1024  # a chunk of this size: more is waiting, read on at once
FLOOD_BYTES_S: Final = 600_000.0  # faster than 4 Mbaud: a buffer, whose writer stands still while it is full
FLOOD_S: Final = 0.001
OPEN_S: Final = 5.0
WRITE_S: Final = 2.0
# TypeError: pyserial, when a port closes under it
_FAILURES: Final[tuple[type[Exception], ...]] = (OSError, TypeError, ValueError, *_TERMINAL)
_IN_USE: Final = (errno.EBUSY, errno.EAGAIN, errno.EWOULDBLOCK)


@dataclass(frozen=True, slots=True)
class SerialPort:
    """A port that is present: its device name and what it says about itself."""

    device: str
    text: str
    serial: str = ""


def serial_ports() -> list[SerialPort]:
    """List the serial ports that are present; opens none."""
    from serial.tools import list_ports

    ports = []
    for port in list_ports.comports():
        about = port.description if port.description and port.description != "n/a" else port.hwid or ""
        maker = port.manufacturer or ""
        text = about if not maker or maker in about else f"{about} ({maker})"
        text = "" if text == "n/a" else text
        ports.append(SerialPort(port.device, _clean(text), _clean(port.serial_number or "")))
    return sorted(ports, key=lambda port: port.device)


def _clean(text: str) -> str:
    return "".join(c if c.isprintable() else "?" for c in text)[:100]


class SerialLink:
    """A link over a serial port.

    Args:
        port: ``/dev/ttyUSB0``, ``COM3``.
        settings: Speed and framing.

    Raises:
        InputError: The name is a network address or no device name.
    """

    joins_midstream: Final = True  # whoever opens a port may find the device in the middle of a line
    mid_line_s: Final = MID_LINE_S

    def __init__(self, port: str, settings: SerialSettings) -> None:
        self._name = local_port(port)
        self._settings = settings
        self._port: serial.Serial | None = None
        self._thread: threading.Thread | None = None
        self._stopping = threading.Event()
        self._loop: asyncio.AbstractEventLoop | None = None
        self._ready = asyncio.Event()
        self._chunks: deque[Chunk] = deque()
        self._waiting = False  # the loop waits for something to take
        self._queued = 0  # bytes that nobody has taken, about
        self._error: Exception | None = None

    @property
    def name(self) -> str:
        """The device name."""
        return self._name

    async def open(self) -> None:
        """Open the port.

        Raises:
            LinkError: It is not there, not permitted, in use, or no serial port; the text says what to do.
        """
        await self.close()
        self._chunks.clear()
        self._loop = asyncio.get_running_loop()
        self._ready = asyncio.Event()
        self._waiting = False
        self._error = None
        try:
            async with asyncio.timeout(OPEN_S):
                self._port = await asyncio.to_thread(self._opened)
        except TimeoutError:
            raise LinkError(
                f"{self._name}: does not open within {OPEN_S:g} s; unplug it and plug it in again"
            ) from None
        self._stopping.clear()
        self._thread = threading.Thread(target=self._pump, args=(self._port,), name=f"read {self._name}", daemon=True)
        self._thread.start()

    def _opened(self) -> serial.Serial:
        import serial

        wanted = self._settings
        try:
            if self._name.startswith("/") and not stat.S_ISCHR(Path(self._name).stat().st_mode):
                raise LinkError(f"{self._name}: is no serial port; 'heldwheel-log find' lists them")
            port = serial.Serial(
                baudrate=wanted.baud,
                bytesize=wanted.bits,
                parity=wanted.parity[0].upper(),
                stopbits=wanted.stop_bits,
                xonxoff=wanted.flow == "xon/xoff",
                rtscts=wanted.flow == "rts/cts",
                write_timeout=WRITE_S,
                exclusive=True,
            )
            port.port = self._name
            if wanted.dtr is not None:
                port.dtr = wanted.dtr
            if wanted.rts is not None:
                port.rts = wanted.rts
            port.open()
        except LinkError:
            raise
        except _FAILURES as error:  # pyserial's own error is an OSError
            raise LinkError(open_failure(self._name, error)) from error
        return port

    def _pump(self, port: serial.Serial) -> None:
        """Read until told to stop or the port fails."""
        gathered, since = 0, time.monotonic()
        try:
            while not self._stopping.is_set():
                if self._queued > MOST_QUEUED:  # nobody takes it: the system's buffer waits, and then the device
                    time.sleep(GATHER_S)
                    continue
                waiting = port.in_waiting
                data = port.read(waiting or 1)  # with nothing there, wait for the first byte
                if data:
                    if not waiting:
                        data += port.read(port.in_waiting)
                    now = time.monotonic()
                    self._queued += len(data)
                    self._chunks.append(Chunk(now, data))
                    self._tell()
                    gathered += len(data)
                    if len(data) < BUSY_BYTES:
                        time.sleep(GATHER_S if gathered < FLOOD_BYTES_S * (now - since) else FLOOD_S)
                        gathered, since = 0, now
        except _FAILURES as error:
            self._error = error
            self._tell()

    def _tell(self) -> None:
        """Wake the loop, if it waits."""
        if not self._waiting or self._loop is None:
            return
        self._waiting = False
        with contextlib.suppress(RuntimeError):  # the loop has ended
            self._loop.call_soon_threadsafe(self._ready.set)

    async def read(self) -> list[Chunk]:
        """Wait for bytes and give all that have arrived.

        Raises:
            LinkLost: The port is gone.
        """
        while True:
            self._ready.clear()
            self._waiting = True  # before looking: what comes from now on wakes us
            chunks = []
            while self._chunks:
                chunks.append(self._chunks.popleft())
            if chunks:
                self._waiting = False
                self._queued = 0
                return chunks
            if self._error is not None:
                raise LinkLost(f"{self._name}: the port is gone: unplugged, or the device was switched off")
            await self._ready.wait()

    async def write(self, data: bytes) -> None:
        """Send a confirmed command.

        Raises:
            LinkLost: The port is gone.
        """
        port = self._port
        try:
            if port is None:
                raise OSError("closed")
            await asyncio.to_thread(port.write, data)
        except OSError as error:
            raise LinkLost(f"{self._name}: cannot be written to: {error}") from error

    async def close(self) -> None:
        """Close the port; never raises. What was read until then can still be had."""
        port, self._port = self._port, None
        thread, self._thread = self._thread, None
        self._stopping.set()
        if port is not None:
            await asyncio.to_thread(_shut, port, thread)


def _shut(port: serial.Serial, thread: threading.Thread | None) -> None:
    with contextlib.suppress(OSError, TypeError, AttributeError):
        port.cancel_read()
    if thread is not None:
        thread.join(timeout=2)
    with contextlib.suppress(OSError, TypeError):
        port.close()


def open_failure(name: str, error: Exception) -> str:
    """Say why a port does not open, and what to do."""
    number = getattr(error, "errno", None)
    text = str(error)
    if number == errno.ENOENT or "FileNotFoundError" in text:
        present = ", ".join(port.device for port in serial_ports()) or "none; is the cable plugged in?"
        return f"{name}: there is no such port; present are: {present}"
    denied = number in (errno.EACCES, errno.EPERM)
    if denied and name.startswith("/"):
        return f"{name}: {_not_permitted(name)}"
    if denied or number in _IN_USE or "PermissionError" in text:  # Windows says "access denied" for a port in use
        return f"{name}: is in use by another program; close it there first"
    if isinstance(error, ValueError):
        return f"{name}: cannot be set as described ({text}); check the [serial] table of the description"
    return f"{name}: cannot be opened: {getattr(error, 'strerror', None) or text}; is it a serial port?"


def _not_permitted(name: str) -> str:
    """Name the group that may use the port, read from its device node."""
    group = "dialout"
    if sys.platform != "win32":
        with contextlib.suppress(OSError, KeyError):
            group = Path(name).group()
    return (
        f"you are not permitted to use this port; it belongs to the group '{group}': "
        f"run 'sudo usermod -a -G {group} $USER' and log in again"
    )
