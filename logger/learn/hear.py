"""Listening to an unknown device: at the speed that gives text, for a while, keeping what came.

Nothing is sent, except a question that the user has confirmed.
"""

from __future__ import annotations

import asyncio
import contextlib
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Final

from logger.decoder.description import BleSettings, SerialSettings
from logger.edges.small_file import read_bounded
from logger.samples import Chunk

if TYPE_CHECKING:
    from logger.links.base import Link
    from logger.links.ble_pick import Offer

SPEEDS: Final = (9600, 115200, 57600, 38400, 19200, 230400, 460800, 921600, 1000000)
TRY_S: Final = 1.5  # at each speed: a gauge that sends ten lines a second shows fifteen
GOOD: Final = 0.95  # of the bytes are text: the speed is right
MOST_BYTES: Final = 20_000_000  # of a captured file: an hour at the highest usual speed


@dataclass(frozen=True, slots=True)
class Place:
    """Where to listen."""

    # port, ble: a serial port, or a Bluetooth identity
    port: str = ""
    ble: str = ""
    baud: int | None = None  # speed of the port; None: the usual ones are tried
    settings: BleSettings = field(default_factory=BleSettings)  # of a Bluetooth device
    request: bytes = b""  # what is asked again and again; empty: nothing. The user has confirmed it.
    interval_s: float = 0.1  # between questions
    # what is sent once to a Bluetooth device, so that it begins; empty: nothing. The user has confirmed it.
    start: bytes = b""


@dataclass(slots=True)
class Heard:
    """What has come so far; another thread may look at it while it grows."""

    chunks: list[Chunk] = field(default_factory=list)  # of a port or a file
    # serial, ble: settings it was heard with
    serial: SerialSettings | None = None
    ble: BleSettings | None = None
    # dict of str to (Offer, list of Chunk); of a Bluetooth device: what came of each characteristic that may deliver
    # readings
    radio: dict[str, tuple[Offer, list[Chunk]]] = field(default_factory=dict)

    @property
    def size(self) -> int:
        """Bytes so far."""
        streams = [self.chunks, *(chunks for _, chunks in list(self.radio.values()))]
        return sum(len(chunk.data) for chunks in streams for chunk in list(chunks))


async def hear(place: Place, seconds: float, heard: Heard | None = None) -> Heard:
    """Listen, and give what came; cancelled, it closes the device and ``heard`` keeps what came until then.

    Raises:
        LinkError: The device cannot be opened.
        LinkLost: It is gone.
    """
    heard = heard if heard is not None else Heard()
    if place.ble:
        from logger.links.ble_listen import Say, Streams, listen

        heard.ble = place.settings
        say = Say(place.start, place.request, place.interval_s)
        await listen(place.ble, place.settings, seconds, Streams(heard=heard.radio), say)
        return heard
    heard.serial = SerialSettings(baud=place.baud) if place.baud else await _right_speed(place)
    await _listen(_port(place, heard.serial), place, seconds, heard.chunks)
    return heard


async def _right_speed(place: Place) -> SerialSettings:
    """Give the speed at which most of what comes is text."""
    best: tuple[float, SerialSettings] = (-1.0, SerialSettings())
    for baud in SPEEDS:
        settings, came = SerialSettings(baud=baud), list[Chunk]()
        await _listen(_port(place, settings), place, TRY_S, came)
        share = readable(b"".join(chunk.data for chunk in came))
        best = max(best, (share, settings), key=lambda tried: tried[0])
        if share > GOOD:
            break
    return best[1]


def _port(place: Place, settings: SerialSettings) -> Link:
    from logger.links.serial_port import SerialLink

    return SerialLink(place.port, settings)


def readable(data: bytes) -> float:
    """Give the share of bytes that text consists of; nothing heard is worth nothing."""
    from logger.learn.text import parity_of, without_parity

    data = without_parity(data) if data and parity_of(data) else data
    good = sum(32 <= byte < 127 or byte in b"\r\n\t\x02\x03" for byte in data)
    return good / len(data) if data else 0.0


async def _listen(link: Link, place: Place, seconds: float, into: list[Chunk]) -> None:
    if place.request:
        from logger.links.polled import PolledLink

        link = PolledLink(link, place.request, place.interval_s, max(1.0, 2 * place.interval_s))
    await link.open()
    try:
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(seconds):
                while chunks := await link.read():
                    into += chunks
    finally:
        await link.close()


def heard_in(path: Path | str) -> Heard:
    """Give the bytes that somebody captured in a file; when they came is not known.

    Raises:
        FileError: It cannot be read, or is no capture of a few minutes.
    """
    data = read_bounded(Path(path), MOST_BYTES, "capture a minute or two")
    return Heard([Chunk(0.0, data)] if data else [], SerialSettings())
