"""Virtual Bluetooth gauges in the kinds that people can buy: standard, force at a radius, text, binary.

Each says "simulated" in its Device Information, so that whoever records it knows. Addresses and UUIDs are invented.
"""

from __future__ import annotations

import asyncio
import struct
from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, Final

from logger.decoder.standard import (
    BATTERY_LEVEL,
    BATTERY_SERVICE,
    DEVICE_INFORMATION_SERVICE,
    INDUSTRIAL_MEASUREMENT_SERVICE,
    PRESENTATION_FORMAT,
    TORQUE,
    TORQUE_NOT_KNOWN,
    uuid,
)
from logger.virtual.device import SERVICE, STREAM
from tests.radio.air import MAX_MTU, Air, Characteristic, Peripheral, Service

if TYPE_CHECKING:
    from logger.virtual.physics import SimulatedRun

TORQUE_UUID: Final = uuid(TORQUE)
# Invented, belonging to nobody: a service with a stream and a command characteristic.
OWN_SERVICE: Final = "7d1c0001-5a3e-4b7f-9c21-6f0e8a41c5d2"
OWN_STREAM: Final = "7d1c0002-5a3e-4b7f-9c21-6f0e8a41c5d2"
OWN_COMMAND: Final = "7d1c0003-5a3e-4b7f-9c21-6f0e8a41c5d2"
SIMULATED: Final = "simulated transducer"


def about(serial: str = "S-0001", *, battery: Callable[[], int] = lambda: 80) -> list[Service]:
    """Give Device Information and Battery services."""
    information = {0x2A29: b"nobody", 0x2A24: SIMULATED.encode(), 0x2A25: serial.encode(), 0x2A26: b"1.0"}
    return [
        Service(
            uuid(DEVICE_INFORMATION_SERVICE),
            [Characteristic(uuid(short), value=value) for short, value in information.items()],
        ),
        Service(
            uuid(BATTERY_SERVICE),
            [Characteristic(uuid(BATTERY_LEVEL), notify=True, value=lambda: bytes([battery()]))],
        ),
    ]


def standard_gauge(
    air: Air, address: str, *, name: str = "bench transducer", extra: Sequence[Service] | None = None
) -> Peripheral:
    """Give a gauge with the standard Torque characteristic: it needs no description."""
    torque = Characteristic(TORQUE_UUID, notify=True, value=standard_torque(0.0))
    services = [Service(uuid(INDUSTRIAL_MEASUREMENT_SERVICE), [torque])]
    return Peripheral(air, name, address, [*services, *(about() if extra is None else extra)])


def standard_torque(torque_nm: float | None) -> bytes:
    """Give the value of the Torque characteristic: sint32, 0.01 N·m; None is "not known".

    Examples
    --------
    >>> standard_torque(27.0).hex()
    '8c0a0000'
    """
    return struct.pack("<i", TORQUE_NOT_KNOWN if torque_nm is None else round(torque_nm * 100))


def format_gauge(air: Air, address: str, form: bytes, *, name: str = "format transducer") -> Peripheral:
    """Give a gauge whose own characteristic is explained by its Presentation Format descriptor."""
    stream = Characteristic(OWN_STREAM, notify=True, descriptors={PRESENTATION_FORMAT: form})
    return Peripheral(air, name, address, [Service(OWN_SERVICE, [stream]), *about()])


def stream_gauge(
    air: Air,
    address: str,
    *,
    name: str = "stream transducer",
    on_command: Callable[[bytes], None] = lambda _data: None,
    max_mtu: int = MAX_MTU,
    error: int = 0,
    battery: Callable[[], int] = lambda: 80,
) -> Peripheral:
    """Give a gauge with a stream that a description must explain (text lines or packets), and a command input."""
    services = [
        Service(
            OWN_SERVICE,
            [
                Characteristic(OWN_STREAM, notify=True),
                Characteristic(OWN_COMMAND, on_write=on_command, error=error),
            ],
        ),
        *about(battery=battery),
    ]
    return Peripheral(air, name, address, services, max_mtu=max_mtu)


async def play(gauge: Peripheral, characteristic: str, packets: Iterable[bytes], period_s: float) -> None:
    """Notify packets at their times: packet k at k × period after the call, however long each one takes."""
    loop = asyncio.get_running_loop()
    begin = loop.time()
    for count, packet in enumerate(packets):
        wait = begin + count * period_s - loop.time()
        if wait > 0:
            await asyncio.sleep(wait)
        await gauge.notify(characteristic, packet)


def device_gauge(air: Air, address: str, *, name: str = "virtual transducer", max_mtu: int = MAX_MTU) -> Peripheral:
    """Give the gauge that a ``VirtualDevice`` of the form ``packet`` speaks through; its description decodes it."""
    stream = Characteristic(STREAM, notify=True)
    return Peripheral(air, name, address, [Service(SERVICE, [stream]), *about("SIM-1")], max_mtu=max_mtu)


async def perform(gauge: Peripheral, characteristic: str, pieces: Sequence[tuple[float, bytes]]) -> None:
    """Notify pieces at their due times, over and over, for as long as somebody is subscribed."""
    loop = asyncio.get_running_loop()
    while True:
        await gauge.until_subscribed(characteristic)
        begin = loop.time()
        for due_s, data in pieces:
            wait_s = begin + due_s - loop.time()
            if wait_s > 0:
                await asyncio.sleep(wait_s)
            if not gauge.subscribers(characteristic):
                break
            await gauge.notify(characteristic, data)


def standard_pieces(run: SimulatedRun, rate_hz: float = 100.0) -> list[tuple[float, bytes]]:
    """Give a run as values of the standard Torque characteristic, one per notification."""
    step = max(1, round(run.scenario.sensor.rate_hz / rate_hz))
    return [
        (time_s, standard_torque(None if torque != torque else torque))
        for time_s, torque in zip(run.time_s[::step].tolist(), run.torque_nm[::step].tolist(), strict=True)
    ]
