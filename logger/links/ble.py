"""Bluetooth: scan, meet a device, and stream one characteristic's notifications.

Conventions:
- A device is matched by the identity the user picked, never by its name: two gauges of one make have one name.
- Everything is bounded: a scan, a connection, each question. A radio stack that died reports nothing; the session's
  watchdog notices, closes the link and opens it anew, which subscribes again.
- All reads happen before subscribing: on some systems a read of a subscribed characteristic is delivered as one more
  notification.
"""

from __future__ import annotations

import asyncio
import contextlib
import re
import time
from collections import deque
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, Final

from bleak import BleakAdapter, BleakClient, BleakScanner
from bleak.exc import BleakError

from logger.decoder.standard import BATTERY_LEVEL, uuid
from logger.errors import InputError, LinkError, LinkLost
from logger.links.base import MOST_QUEUED
from logger.links.ble_device import ASK_S, FAILURES, DeviceFacts, characteristic, clean, device_facts, offers, percent
from logger.links.ble_errors import connect_error, no_subscription, why_not
from logger.links.ble_pick import Pick, pick_described, pick_standard
from logger.samples import Chunk, Event, EventKind

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from bleak.backends.adapter import BaseBleakAdapter
    from bleak.backends.characteristic import BleakGATTCharacteristic
    from bleak.backends.client import BaseBleakClient
    from bleak.backends.device import BLEDevice
    from bleak.backends.scanner import BaseBleakScanner

    from logger.decoder.description import BleSettings

SCAN_S: Final = 6.0  # advertisements come every 20 ms to 1.3 s, and some are missed
CONNECT_S: Final = 15.0  # a busy radio needs several attempts of a few seconds
LOOK_S: Final = 20.0  # for all that is asked of a device after connecting: some answer slowly, some never
BATTERY_LOW_PERCENT: Final = 15  # common practice, no source: cheap cells drop quickly below it

NO_SIGNAL_DBM: Final = -127  # of a device that is not heard

# Services of which nearly every device has one: access, attributes, device information, battery.
_COMMON: Final = ("1800", "1801", "180a", "180f")
_MAC = re.compile(r"[0-9A-Fa-f]{2}(:[0-9A-Fa-f]{2}){5}")
_UUID = re.compile(r"[0-9A-Fa-f]{8}(-[0-9A-Fa-f]{4}){3}-[0-9A-Fa-f]{12}")


@dataclass(frozen=True, slots=True)
class Backends:
    """bleak's own ``backend=`` parameters; None is the system's Bluetooth."""

    scanner: type[BaseBleakScanner] | None = None
    client: type[BaseBleakClient] | None = None
    adapter: type[BaseBleakAdapter] | None = None


SYSTEM: Final = Backends()


@dataclass(frozen=True, slots=True)
class FoundDevice:
    """A device that a scan heard."""

    identity: str  # what to pick it by: an address, on some systems a UUID
    name: str  # cleaned of control characters; may be shared by several devices
    rssi_dbm: int  # signal at this moment
    services: tuple[str, ...]  # UUIDs that it advertises, or that the system remembers of it
    # this computer is connected to it already, by another program or by one that was killed: it may not be heard
    connected: bool = False


def check_identity(identity: str) -> str:
    """Give the identity in the form devices are matched by.

    Raises:
        InputError: It is no identity; a name is none.
    """
    if not (_MAC.fullmatch(identity) or _UUID.fullmatch(identity)):
        raise InputError(
            f"'{clean(identity)}' is no Bluetooth identity such as C4:12:00:00:00:07; "
            "'heldwheel-log find --ble' shows them. A name is not enough: several devices may have the same"
        )
    return identity.upper()


async def scan(seconds: float = SCAN_S, backends: Backends = SYSTEM) -> list[FoundDevice]:
    """Listen for devices; connects to none.

    Raises:
        LinkError: There is no Bluetooth, or it is off.
    """
    with told("search for Bluetooth devices"):
        async with asyncio.timeout(seconds + CONNECT_S):
            heard = await BleakScanner.discover(timeout=seconds, return_adv=True, **_backend(backends.scanner))
    found = [
        FoundDevice(device.address, clean(data.local_name or device.name), data.rssi, tuple(data.service_uuids))
        for device, data in heard.values()
    ]
    held = {device.address: device for device in await _held(backends)}
    found = [replace(one, connected=one.identity in held) for one in found]
    unheard = set(held) - {one.identity for one in found}
    found += [FoundDevice(one, clean(held[one].name), NO_SIGNAL_DBM, (), connected=True) for one in unheard]
    return sorted(found, key=lambda one: (-one.rssi_dbm, one.identity))


async def _held(backends: Backends) -> list[BLEDevice]:
    """Give the devices that this computer is connected to already: they do not advertise, and no search finds them.

    A program that was killed leaves such a connection behind on some systems.
    """
    with contextlib.suppress(*FAILURES, NotImplementedError):
        async with asyncio.timeout(ASK_S):
            adapter = await BleakAdapter.get(**_backend(backends.adapter))
            return await adapter.get_connected_devices(list(_COMMON))
    return []


async def meet(
    identity: str,
    settings: BleSettings | None = None,
    *,
    radius_mm: float | None = None,
    backends: Backends = SYSTEM,
) -> tuple[DeviceFacts, Pick]:
    """Connect once, read what the device is and which characteristic delivers torque, and leave; subscribes to nothing.

    Args:
        identity: The identity the user picked.
        settings: From a description; without one the open standards decide.
        radius_mm: For a device that delivers a force.

    Raises:
        LinkError: It cannot be reached.
        InputError: It does not say what it measures.
    """
    async with connected(check_identity(identity), backends, lambda: None) as client:
        with told(f"ask {identity}"):
            async with asyncio.timeout(LOOK_S):
                facts, found = await device_facts(client, identity), await offers(client)
        if settings is not None:
            return facts, pick_described(found, settings.characteristic, settings.service)
        return facts, pick_standard(found, radius_mm)


class BleLink:
    """A link that streams one characteristic.

    Args:
        identity: The device the user picked.
        settings: ``characteristic`` must be filled in (see ``meet``), or the only one that notifies is used.
        name: What the user calls it.
    """

    # Whoever subscribes may find a text device in the middle of a line: its rest comes within a connection interval,
    # which is 4 s at the most (Bluetooth Core 5.4, vol 6, part B, 4.5.1; from memory). A packet is always whole.
    joins_midstream: Final = True
    mid_line_s: Final = 4.0

    def __init__(self, identity: str, settings: BleSettings, *, name: str = "", backends: Backends = SYSTEM) -> None:
        self._identity = check_identity(identity)
        self._settings = settings
        self._name = f"{clean(name)} ({self._identity})" if name else self._identity
        self._backends = backends
        self._stack = contextlib.AsyncExitStack()
        self._client: BleakClient | None = None
        self._command: BleakGATTCharacteristic | None = None
        self._chunks: deque[Chunk] = deque()
        self._queued = 0  # bytes that nobody has taken
        self._ready = asyncio.Event()
        self._gone = ""  # why the connection is over
        self._given_up = False
        self._events: list[Event] = []
        self.facts: DeviceFacts | None = None

    @property
    def name(self) -> str:
        """Name and identity."""
        return self._name

    @property
    def simulated(self) -> bool:
        """The device says that it is simulated."""
        return self.facts is not None and self.facts.simulated

    def events(self) -> list[Event]:
        """Give what the device told beside its readings since the last call."""
        told, self._events = self._events, []
        return told

    async def open(self) -> None:
        """Find the device by its identity, connect, ask what it is, subscribe.

        Raises:
            LinkError: It cannot be reached, refuses, or lacks what the description names.
        """
        await self.close()
        self._chunks.clear()
        self._queued = 0
        self._gone, self._given_up = "", False
        self._ready = asyncio.Event()
        async with contextlib.AsyncExitStack() as stack:
            client = await stack.enter_async_context(connected(self._identity, self._backends, self._on_gone))
            with told(f"subscribe to {self.name}"):
                async with asyncio.timeout(LOOK_S):
                    await self._prepare(client)
            self._client = client
            self._stack = stack.pop_all()

    async def read(self) -> list[Chunk]:
        """Wait for notifications and give all that have arrived.

        Raises:
            LinkLost: The connection has ended and everything that came before was given.
        """
        while not self._chunks:
            if self._gone:
                raise LinkLost(f"{self.name}: {self._gone}")
            self._ready.clear()
            await self._ready.wait()
        chunks, self._queued = list(self._chunks), 0
        self._chunks.clear()
        return chunks

    async def write(self, data: bytes) -> None:
        """Write a confirmed command to the command characteristic.

        Raises:
            LinkLost: The connection has ended.
            LinkError: The device has no such characteristic or refuses.
        """
        if self._client is None or self._gone:
            raise LinkLost(f"{self.name}: not connected")
        if self._command is None:
            raise LinkError(f"{self.name}: its description names no ble.command characteristic for that")
        with told(f"send to {self.name}"):
            async with asyncio.timeout(ASK_S):
                await self._client.write_gatt_char(self._command, data, response=self._settings.command_with_response)

    async def close(self) -> None:
        """Disconnect; never raises. What arrives until then can still be read."""
        self._client = None
        await self._stack.aclose()

    async def _prepare(self, client: BleakClient) -> None:
        """Ask the device what it is, then subscribe: all reads come first."""
        self.facts = await device_facts(client, self._identity)
        self._tell_battery(self.facts.battery_percent)
        pick = pick_described(await offers(client), self._settings.characteristic, self._settings.service)
        self._command = _command(client, self._settings.command)
        await self._subscribe(client, pick)

    async def _subscribe(self, client: BleakClient, pick: Pick) -> None:
        level = characteristic(client, uuid(BATTERY_LEVEL))
        if level is not None and "notify" in level.properties:
            with contextlib.suppress(LinkError, *FAILURES):  # without it there are readings all the same
                await subscribe(client, level, self._on_battery, self.name)
        source = characteristic(client, pick.uuid)
        if source is None:
            raise BleakError(f"{pick.uuid} went away")
        await subscribe(client, source, self._on_data, self.name)

    def _on_battery(self, _source: object, data: bytearray) -> None:
        self._tell_battery(percent(bytes(data)))

    def _on_data(self, _source: object, data: bytearray) -> None:
        arrival_s = time.monotonic()
        if self._given_up:
            return
        self._queued += len(data)
        self._chunks.append(Chunk(arrival_s, bytes(data)))
        self._ready.set()
        if self._queued > MOST_QUEUED:  # a radio cannot be made to wait: what it sends from now on is lost, and told
            self._given_up = True
            self._over(f"the connection is given up: the program has fallen behind, {self._queued} bytes wait")

    def _on_gone(self) -> None:
        self._over("the Bluetooth connection ended (out of range, or switched off)")

    def _over(self, why: str) -> None:
        self._gone = self._gone or why
        self._ready.set()

    def _tell_battery(self, percent: int | None) -> None:
        if self.facts is not None and percent is not None:
            self.facts = replace(self.facts, battery_percent=percent)
        if percent is not None and percent <= BATTERY_LOW_PERCENT:
            self._events.append(Event(EventKind.BATTERY, count=percent, text=f"battery at {percent} %"))


async def subscribe(client: BleakClient, source: BleakGATTCharacteristic, on_data: Any, name: str) -> None:
    """Subscribe; a device that wants to be paired first may never answer.

    Raises:
        LinkError: No answer came.
    """
    try:
        async with asyncio.timeout(ASK_S):
            await client.start_notify(source, on_data)
    except TimeoutError as error:
        raise LinkError(f"{name}: {no_subscription(name)}") from error


@contextlib.asynccontextmanager
async def connected(identity: str, backends: Backends, on_gone: Any) -> AsyncIterator[BleakClient]:
    """Find, connect, and on leaving disconnect: all bounded."""
    with told("use Bluetooth"):
        async with asyncio.timeout(SCAN_S + ASK_S):
            device = await BleakScanner.find_device_by_address(identity, SCAN_S, **_backend(backends.scanner))
    if device is None:
        device = next((held for held in await _held(backends) if held.address.upper() == identity), None)
    if device is None:
        raise LinkError(
            f"{identity}: not heard within {SCAN_S:g} s: switch it on, bring it near, end other connections to it"
        )
    client = BleakClient(
        device, disconnected_callback=lambda _client: on_gone(), timeout=CONNECT_S, **_backend(backends.client)
    )
    try:
        try:
            async with asyncio.timeout(CONNECT_S + ASK_S):
                await client.connect()
        except FAILURES as error:
            raise connect_error(identity, error, CONNECT_S) from error
        yield client
    finally:
        await _farewell(client)


async def _farewell(client: BleakClient) -> None:
    """Disconnect, whatever state the radio stack is in."""
    with contextlib.suppress(*FAILURES, KeyError):
        async with asyncio.timeout(ASK_S):
            await client.disconnect()


@contextlib.contextmanager
def told(doing: str) -> Any:
    """Turn what a radio stack raises into one error for the user."""
    try:
        yield
    except LinkError:
        raise
    except FAILURES as error:
        raise LinkError(f"cannot {doing}: {why_not(error)}") from error


def _backend(backend: type | None) -> dict[str, Any]:
    return {} if backend is None else {"backend": backend}


def _command(client: BleakClient, wanted: str) -> BleakGATTCharacteristic | None:
    if not wanted:
        return None
    found = characteristic(client, wanted.lower())
    if found is None:
        raise LinkError(f"the device has no characteristic {wanted} to write commands to")
    return found
