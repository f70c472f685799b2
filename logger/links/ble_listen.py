"""Listening to all that an unknown Bluetooth device notifies of, to find out which of it is the torque.

Nothing is written to it but what the user has confirmed.
"""

from __future__ import annotations

import asyncio
import contextlib
import time
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from logger.errors import InputError, LinkError, LinkLost
from logger.links.ble import SYSTEM, Backends, check_identity, connected, subscribe, told
from logger.links.ble_device import ASK_S, FAILURES, DeviceFacts, characteristic, device_facts, offers
from logger.links.ble_pick import Offer, listenable
from logger.samples import Chunk

if TYPE_CHECKING:
    from bleak import BleakClient
    from bleak.backends.characteristic import BleakGATTCharacteristic

    from logger.decoder.description import BleSettings

MOST_STREAMS = 8


@dataclass(slots=True)
class Streams:
    """What was heard of each characteristic, and what the device says about itself."""

    facts: DeviceFacts | None = None
    heard: dict[str, tuple[Offer, list[Chunk]]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Say:
    """What is written to the device; the user has confirmed it."""

    start: bytes = b""
    request: bytes = b""
    interval_s: float = 0.1


async def listen(
    identity: str,
    settings: BleSettings,
    seconds: float,
    into: Streams,
    say: Say | None = None,
    backends: Backends = SYSTEM,
) -> None:
    """Connect, subscribe to every characteristic that may deliver readings, and keep what comes.

    Args:
        identity: The device the user picked.
        settings: A characteristic or service that is named narrows the choice.
        into: Grows while it is listened to; what came stays when the task is cancelled.

    Raises:
        LinkError: It cannot be reached, or refuses.
        LinkLost: The connection ended meanwhile.
        InputError: It notifies of nothing, or not of what is named; or a command has nowhere to go.
    """
    gone = asyncio.Event()
    say = say or Say()
    async with connected(check_identity(identity), backends, gone.set) as client:
        with told(f"listen to {identity}"):
            into.facts = await device_facts(client, identity)
            found = listenable(await offers(client), settings.characteristic, settings.service)[:MOST_STREAMS]
            command = _command(client, settings, say)
            refused: list[str] = []
            for offer in found:
                into.heard[offer.uuid] = (offer, [])
                refused.append(await _subscribe(client, offer, into.heard[offer.uuid][1], identity))
            if all(refused):
                raise LinkError(refused[0])
            if command is not None and say.start:
                await _write(client, command, settings, say.start)
            until = time.monotonic() + seconds
            while (left := until - time.monotonic()) > 0 and not gone.is_set():
                if command is not None and say.request:
                    await _write(client, command, settings, say.request)
                await _wait(gone, min(left, say.interval_s) if say.request else left)
    if gone.is_set() and time.monotonic() < until:
        raise LinkLost(f"{identity}: the Bluetooth connection ended while it was listened to")


async def _wait(gone: asyncio.Event, seconds: float) -> None:
    """Let time pass, or less of it if the connection ends."""
    with contextlib.suppress(TimeoutError):
        async with asyncio.timeout(seconds):
            await gone.wait()


def _command(client: BleakClient, settings: BleSettings, say: Say) -> BleakGATTCharacteristic | None:
    if not say.start and not say.request:
        return None
    found = characteristic(client, settings.command.lower()) if settings.command else None
    if found is None:
        raise InputError("say where the command goes: --command UUID, a characteristic of the device that takes it")
    return found


async def _write(client: BleakClient, command: BleakGATTCharacteristic, settings: BleSettings, data: bytes) -> None:
    response = settings.command_with_response and "write" in command.properties
    async with asyncio.timeout(ASK_S):
        await client.write_gatt_char(command, data, response=response)


async def _subscribe(client: BleakClient, offer: Offer, chunks: list[Chunk], identity: str) -> str:
    """Subscribe, or say why not: one of several that refuses is no reason to give the others up."""

    def on_data(_source: object, data: bytearray) -> None:
        chunks.append(Chunk(time.monotonic(), bytes(data)))

    source = characteristic(client, offer.uuid)
    if source is not None:
        try:
            await subscribe(client, source, on_data, identity)
        except (LinkError, *FAILURES) as error:
            return str(error)
    return ""
