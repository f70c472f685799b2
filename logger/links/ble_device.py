"""What a connected Bluetooth device says about itself: texts, battery, characteristics and their formats.

A device is not believed: texts are cleaned and cut, numbers bounded, questions limited in number and time.
"""

from __future__ import annotations

import asyncio
import contextlib
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from bleak.exc import BleakError

from logger.decoder.standard import BATTERY_LEVEL, DEVICE_INFORMATION, PRESENTATION_FORMAT, uuid
from logger.links.ble_pick import Offer

if TYPE_CHECKING:
    from bleak import BleakClient
    from bleak.backends.characteristic import BleakGATTCharacteristic

ASK_S: Final = 5.0  # for each question
MAX_TEXT: Final = 60  # characters of a name or text that a device tells about itself
MAX_OFFERS: Final = 100  # characteristics; a gauge has ten
FAILURES: Final = (BleakError, TimeoutError, OSError, EOFError)


@dataclass(frozen=True, slots=True)
class DeviceFacts:
    """What a device says about itself; texts are cleaned, numbers bounded."""

    name: str
    identity: str
    texts: dict[str, str]  # ``maker``, ``model``, ``serial``, ``firmware``, ``hardware``
    battery_percent: int | None
    packet_bytes: int  # what one notification can carry

    @property
    def simulated(self) -> bool:
        """The device says that it is simulated."""
        return any("simulated" in text.lower() for text in self.texts.values())


def clean(text: str | None) -> str:
    """Make a text from a device fit to show: printable, one line, bounded."""
    return "".join(c for c in text or "" if c.isprintable())[:MAX_TEXT].strip()


async def device_facts(client: BleakClient, identity: str) -> DeviceFacts:
    """Read Device Information and battery."""
    texts = {}
    for short, key in DEVICE_INFORMATION.items():
        text = clean((await _read(client, short) or b"").decode("utf-8", "replace"))
        if text:
            texts[key] = text
    sizes = [c.max_write_without_response_size for s in client.services for c in s.characteristics]
    battery = percent(await _read(client, BATTERY_LEVEL) or b"")
    return DeviceFacts(clean(client.name), identity, texts, battery, max(sizes, default=20))


async def _read(client: BleakClient, short: int) -> bytes | None:
    """Read an assigned characteristic; None if there is none or it is not given."""
    found = characteristic(client, uuid(short))
    if found is None or "read" not in found.properties:
        return None
    with contextlib.suppress(*FAILURES):
        async with asyncio.timeout(ASK_S):
            return bytes(await client.read_gatt_char(found))
    return None


def percent(data: bytes) -> int | None:
    """Give a battery level; None if it is none."""
    return data[0] if len(data) == 1 and data[0] <= 100 else None


def characteristic(client: BleakClient, wanted: str) -> BleakGATTCharacteristic | None:
    """Give the first characteristic of this UUID, in the order of handles (iteration order is not reliable)."""
    found = [c for s in client.services for c in s.characteristics if c.uuid == wanted]
    return min(found, key=lambda c: c.handle, default=None)


async def offers(client: BleakClient) -> list[Offer]:
    """Give the characteristics in the order of their handles, with the formats of those that notify."""
    found: list[Offer] = []
    every = [(service, one) for service in client.services for one in service.characteristics]
    for service, one in sorted(every, key=lambda pair: pair[1].handle)[:MAX_OFFERS]:
        notifies = bool({"notify", "indicate"} & set(one.properties))
        formats = await _formats(client, one) if notifies else ()
        found.append(Offer(service.uuid, one.uuid, one.handle, notifies, formats))
    return found


async def _formats(client: BleakClient, characteristic: BleakGATTCharacteristic) -> tuple[bytes, ...]:
    found = []
    for descriptor in characteristic.descriptors:
        if descriptor.uuid == uuid(PRESENTATION_FORMAT):
            with contextlib.suppress(*FAILURES):
                async with asyncio.timeout(ASK_S):
                    found.append(bytes(await client.read_gatt_descriptor(descriptor)))
    return tuple(found)
