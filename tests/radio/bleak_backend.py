"""The virtual radio behind bleak's public ``backend=`` parameter: programs written against bleak run on it unchanged.

::

    backends = backends_on(central)            # three classes
    BleakScanner(backend=backends.scanner)
    BleakClient(address, backend=backends.client)
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Self, TypeVar

from bleak.backends.adapter import BaseBleakAdapter
from bleak.backends.characteristic import BleakGATTCharacteristic
from bleak.backends.client import BaseBleakClient, NotifyCallback
from bleak.backends.descriptor import BleakGATTDescriptor
from bleak.backends.device import BLEDevice
from bleak.backends.scanner import AdvertisementData, BaseBleakScanner
from bleak.backends.service import BleakGATTService, BleakGATTServiceCollection
from bleak.exc import (
    BleakBluetoothNotAvailableError,
    BleakBluetoothNotAvailableReason,
    BleakError,
    BleakGATTProtocolError,
    BleakGATTProtocolErrorCode,
)
from bumble import att

from tests.radio.central import Central, GoneError, Heard, Peer, uuid_text

if TYPE_CHECKING:
    from collections.abc import Awaitable

    from bleak.args import SizedBuffer

T = TypeVar("T")

_PROPERTIES = {
    0x01: "broadcast", 0x02: "read", 0x04: "write-without-response", 0x08: "write", 0x10: "notify", 0x20: "indicate",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class RadioBackends:
    """The classes that bleak takes as ``backend=``."""

    scanner: type[BaseBleakScanner]
    client: type[BaseBleakClient]
    adapter: type[BaseBleakAdapter]


def backends_on(central: Central) -> RadioBackends:
    """Give bleak backends that use this central."""

    class RadioScanner(_Scanner):
        _central = central

    class RadioClient(_Client):
        _central = central

    class RadioAdapter(_Adapter):
        _central = central

    return RadioBackends(RadioScanner, RadioClient, RadioAdapter)


class _Adapter(BaseBleakAdapter):
    _central: Central

    @classmethod
    async def get(cls, **_options: Any) -> Self:
        return cls()

    async def get_connected_devices(self, service_uuids: frozenset[str]) -> list[BLEDevice]:
        standing = {address: peer for address, peer in self._central.peers.items() if peer.connected}
        return [
            BLEDevice(address, None, peer)
            for address, peer in standing.items()
            if service_uuids & {uuid_text(service.uuid) for service in peer.services}
        ]


class _Scanner(BaseBleakScanner):
    _central: Central

    def __init__(
        self, detection_callback: Any, service_uuids: list[str] | None, _scanning_mode: str, **_options: Any
    ) -> None:
        super().__init__(detection_callback, service_uuids)

    async def start(self) -> None:
        self.seen_devices = {}
        if not self._central.powered:
            raise BleakBluetoothNotAvailableError("off", BleakBluetoothNotAvailableReason.POWERED_OFF)
        await self._central.listen(self._on_heard)

    async def stop(self) -> None:
        await self._central.deafen(self._on_heard)

    def _on_heard(self, heard: Heard) -> None:
        if not self.is_allowed_uuid(list(heard.service_uuids)):
            return
        data = AdvertisementData(heard.name, {}, {}, list(heard.service_uuids), None, heard.rssi, ())
        device = self.create_or_update_device(heard.address, heard.address, heard.name, heard, data)
        self.call_detection_callbacks(device, data)


class _Client(BaseBleakClient):
    _central: Central

    def __init__(self, address_or_ble_device: Any, **options: Any) -> None:
        super().__init__(
            address_or_ble_device,
            disconnected_callback=options.get("disconnected_callback"),
            timeout=options.get("timeout", 10.0),
        )
        self._peer: Peer | None = None
        self._name = getattr(address_or_ble_device, "name", None) or self.address

    @property
    def name(self) -> str:
        return self._name

    @property
    def mtu_size(self) -> int:
        return self._peer.mtu if self._peer else 23

    @property
    def is_connected(self) -> bool:
        return self._peer is not None and self._peer.connected

    async def connect(self, pair: bool, **_options: Any) -> None:
        del pair
        try:
            self._peer = await self._central.connect(self.address, self._timeout, self._gone)
        except GoneError:
            raise BleakError("the device ended the connection while it was being made") from None
        self.services = _tree(self._peer)

    async def disconnect(self) -> None:
        if self._peer is not None:
            await self._peer.disconnect()

    async def pair(self, *_args: Any, **_options: Any) -> None:
        raise BleakError("the virtual radio does not pair")

    async def unpair(self) -> None:
        raise BleakError("the virtual radio does not pair")

    async def read_gatt_char(self, characteristic: BleakGATTCharacteristic, **_options: Any) -> bytearray:
        return bytearray(await self._ask(lambda peer: peer.read(characteristic.obj)))

    async def read_gatt_descriptor(self, descriptor: BleakGATTDescriptor, **_options: Any) -> bytearray:
        return bytearray(await self._ask(lambda peer: peer.read(descriptor.obj)))

    async def write_gatt_char(self, characteristic: BleakGATTCharacteristic, data: SizedBuffer, response: bool) -> None:
        await self._ask(lambda peer: peer.write(characteristic.obj, bytes(data), response=response))

    async def write_gatt_descriptor(self, descriptor: BleakGATTDescriptor, data: SizedBuffer) -> None:
        await self._ask(lambda peer: peer.write(descriptor.obj, bytes(data), response=True))

    async def start_notify(
        self, characteristic: BleakGATTCharacteristic, callback: NotifyCallback, **_options: Any
    ) -> None:
        await self._ask(lambda peer: peer.subscribe(characteristic.obj, lambda data: callback(bytearray(data))))

    async def stop_notify(self, characteristic: BleakGATTCharacteristic) -> None:
        await self._ask(lambda peer: peer.unsubscribe(characteristic.obj))

    async def _ask(self, question: Callable[[Peer], Awaitable[T]]) -> T:
        """Ask the peer, with failures as bleak's own backends report them."""
        if self._peer is None or not self._peer.connected:
            raise BleakError("not connected")
        try:
            return await question(self._peer)
        except GoneError:
            raise BleakError("disconnected") from None
        except att.ATT_Error as error:
            raise BleakGATTProtocolError(BleakGATTProtocolErrorCode(int(error.error_code))) from error

    def _gone(self) -> None:
        self.services = None
        if self._disconnected_callback is not None:
            self._disconnected_callback()


def _tree(peer: Peer) -> BleakGATTServiceCollection:
    tree = BleakGATTServiceCollection()
    for service in peer.services:
        branch = BleakGATTService(service, service.handle, uuid_text(service.uuid))
        tree.add_service(branch)
        for characteristic in service.characteristics:
            flags = int(characteristic.properties)
            leaf = BleakGATTCharacteristic(
                characteristic,
                characteristic.handle,
                uuid_text(characteristic.uuid),
                [name for bit, name in _PROPERTIES.items() if flags & bit],  # type: ignore[misc]
                lambda: peer.mtu - 3,
                branch,
            )
            tree.add_characteristic(leaf)
            for descriptor in characteristic.descriptors:
                tree.add_descriptor(
                    BleakGATTDescriptor(descriptor, descriptor.handle, uuid_text(descriptor.type), leaf)
                )
    return tree
