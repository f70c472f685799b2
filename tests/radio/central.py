"""The central's end of the virtual radio: what an adapter and its host stack offer to whoever programs them."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final, TypeVar
from uuid import UUID

from bumble import core, hci

from tests.radio.air import MAX_MTU, Air, make_device

if TYPE_CHECKING:
    from bumble.device import Advertisement, Connection
    from bumble.gatt_client import CharacteristicProxy, DescriptorProxy, ServiceProxy

T = TypeVar("T")

CENTRAL_ADDRESS: Final = "C0:00:00:00:00:01"


class GoneError(Exception):
    """The connection ended while something was asked of it."""


@dataclass(frozen=True, slots=True)
class Heard:
    """One advertisement."""

    address: str
    name: str | None
    service_uuids: tuple[str, ...]
    rssi: int


def uuid_text(uuid: core.UUID) -> str:
    """Give a UUID in its plain long form."""
    return str(UUID(bytes=uuid.to_bytes(force_128=True)[::-1]))


class Central:
    """An adapter on the virtual radio."""

    def __init__(self, air: Air, address: str = CENTRAL_ADDRESS) -> None:
        self._device = make_device(air, "central", address)
        self._listeners: list[Callable[[Heard], None]] = []
        self._connecting = asyncio.Lock()
        self.powered = False
        self.peers: dict[str, Peer] = {}  # by address; those that are still connected count
        self._device.on("advertisement", self._on_advertisement)

    async def power_on(self) -> None:
        """Switch the adapter on."""
        await self._device.power_on()
        self.powered = True

    async def power_off(self) -> None:
        """Switch the adapter off: its connections end."""
        for connection in list(self._device.connections.values()):
            await connection.disconnect()
        self._listeners.clear()
        self.powered = False
        await self._device.power_off()

    async def listen(self, listener: Callable[[Heard], None]) -> None:
        """Give advertisements to a listener; the first one starts scanning."""
        self._listeners.append(listener)
        if len(self._listeners) == 1:
            await self._device.start_scanning(filter_duplicates=False)

    async def deafen(self, listener: Callable[[Heard], None]) -> None:
        """Take a listener away; the last one stops scanning."""
        if listener in self._listeners:
            self._listeners.remove(listener)
            if not self._listeners:
                await self._device.stop_scanning()

    async def connect(self, address: str, timeout_s: float, on_gone: Callable[[], None]) -> Peer:
        """Connect, negotiate the packet size and discover everything.

        Raises
        ------
        TimeoutError
            Nobody answered. The attempt is cancelled, also when the caller is.
        """
        standing = self.peers.get(address)
        if standing is not None and standing.connected:  # made by somebody who is gone: the system has kept it
            standing.hand_over(on_gone)
            return standing
        async with self._connecting:
            try:
                async with asyncio.timeout(timeout_s):
                    connection = await self._device.connect_le(hci.Address(address), timeout=None)
            except (TimeoutError, asyncio.CancelledError):
                await self._device.send_sync_command(hci.HCI_LE_Create_Connection_Cancel_Command())
                raise
        peer = Peer(connection, on_gone)
        await peer.io(connection.gatt_client.request_mtu(MAX_MTU))
        await peer.discover()
        self.peers[address] = peer
        return peer

    def _on_advertisement(self, advertisement: Advertisement) -> None:
        kinds = core.AdvertisingData.Type
        names = advertisement.data.get_all(kinds.COMPLETE_LOCAL_NAME)
        listed = [
            *advertisement.data.get_all(kinds.COMPLETE_LIST_OF_128_BIT_SERVICE_CLASS_UUIDS),
            *advertisement.data.get_all(kinds.COMPLETE_LIST_OF_16_BIT_SERVICE_CLASS_UUIDS),
        ]
        uuids = {uuid_text(uuid): None for some in listed for uuid in some}
        heard = Heard(
            advertisement.address.to_string(with_type_qualifier=False),
            str(names[0]) if names else None,
            tuple(uuids),
            advertisement.rssi,
        )
        for listener in list(self._listeners):
            listener(heard)


class Peer:
    """A connected device, as the central sees it."""

    def __init__(self, connection: Connection, on_gone: Callable[[], None]) -> None:
        self._connection = connection
        self._gone: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._on_gone = on_gone
        self.services: list[ServiceProxy] = []
        connection.on("disconnection", self._ended)

    def hand_over(self, on_gone: Callable[[], None]) -> None:
        """Let somebody else hear of the connection's end."""
        self._on_gone = on_gone

    @property
    def connected(self) -> bool:
        """Whether the connection stands."""
        return not self._gone.done()

    @property
    def mtu(self) -> int:
        """The negotiated packet size."""
        return int(self._connection.att_mtu)

    async def discover(self) -> None:
        """Find services, characteristics and descriptors."""
        client = self._connection.gatt_client
        self.services = await self.io(client.discover_services())
        for service in self.services:
            for characteristic in await self.io(service.discover_characteristics()):
                await self.io(characteristic.discover_descriptors())

    async def io(self, asked: Awaitable[T]) -> T:
        """Wait for an answer or the end of the connection, whichever comes first.

        Raises
        ------
        GoneError
            The connection ended first.
        """
        task = asyncio.ensure_future(asked)
        try:
            either: set[asyncio.Future[Any]] = {task, self._gone}
            await asyncio.wait(either, return_when=asyncio.FIRST_COMPLETED)
        finally:
            if not task.done():
                task.cancel()
        if not task.done() or task.cancelled():
            raise GoneError
        return task.result()

    async def read(self, attribute: CharacteristicProxy[Any] | DescriptorProxy) -> bytes:
        """Read a characteristic or a descriptor."""
        return bytes(await self.io(self._connection.gatt_client.read_value(attribute)))

    async def write(
        self, attribute: CharacteristicProxy[Any] | DescriptorProxy, data: bytes, *, response: bool
    ) -> None:
        """Write a characteristic or a descriptor."""
        await self.io(self._connection.gatt_client.write_value(attribute, data, response))

    async def subscribe(self, characteristic: CharacteristicProxy[Any], listener: Callable[[bytes], None]) -> None:
        """Have notifications."""
        await self.io(self._connection.gatt_client.subscribe(characteristic, listener))

    async def unsubscribe(self, characteristic: CharacteristicProxy[Any]) -> None:
        """Have no more notifications."""
        await self.io(self._connection.gatt_client.unsubscribe(characteristic))

    async def disconnect(self) -> None:
        """End the connection."""
        if self.connected:
            await self._connection.disconnect()

    def _ended(self, *_reason: object) -> None:
        if not self._gone.done():
            self._gone.set_result(None)
            self._on_gone()
