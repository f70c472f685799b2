"""A virtual radio: Bluetooth peripherals and a central without an adapter, down to the link layer.

::

    air = Air()
    gauge = Peripheral(air, "workshop transducer", "F0:00:00:00:00:01", services)
    await gauge.power_on()                     # it advertises
    await gauge.notify(TORQUE_UUID, data)      # to whoever has subscribed

The host stacks on both ends are real ones; only the air between them is simulated, and it can be made worse: a
peripheral out of range, packets held back, a supervision timeout. Needs the extra ``radio``.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

from bumble import att, core, gatt, hci
from bumble.controller import Controller
from bumble.device import Device, DeviceConfiguration
from bumble.host import Host
from bumble.link import LocalLink
from bumble.transport.common import AsyncPipeSink

if TYPE_CHECKING:
    from bumble import ll

CONNECTION_TIMEOUT: Final = 0x08  # HCI error code: nothing was heard for the supervision timeout
MAX_MTU: Final = 247  # what common radio chips take
MAX_NAME: Final = 100  # bytes of an advertised name
ADVERTISING_MS: Final = 50.0  # dominates the time to connect


class SimController(Controller):
    """A controller that completes a cancelled connection attempt, as the specification demands."""

    def on_hci_le_create_connection_cancel_command(
        self, _command: hci.HCI_LE_Create_Connection_Cancel_Command
    ) -> hci.HCI_StatusReturnParameters:
        """See Bluetooth core specification, volume 4, part E, 7.8.13."""
        pending, self.pending_le_connection = self.pending_le_connection, None
        if pending is None:
            return hci.HCI_StatusReturnParameters(hci.HCI_ErrorCode.COMMAND_DISALLOWED_ERROR)
        cancelled = hci.HCI_LE_Connection_Complete_Event(
            status=hci.HCI_ErrorCode.UNKNOWN_CONNECTION_IDENTIFIER_ERROR,
            connection_handle=0,
            role=hci.Role.CENTRAL,
            peer_address_type=pending.peer_address.address_type,
            peer_address=pending.peer_address,
            connection_interval=0,
            peripheral_latency=0,
            supervision_timeout=0,
            central_clock_accuracy=0,
        )
        asyncio.get_running_loop().call_soon(self.send_hci_packet, cancelled)
        return hci.HCI_StatusReturnParameters(hci.HCI_ErrorCode.SUCCESS)


class Air(LocalLink):
    """What lies between the antennas."""

    def __init__(self) -> None:
        super().__init__()  # type: ignore[no-untyped-call]
        self.interval_s = 0.0  # the connection interval: data travel at its multiples only
        self._unheard: set[hci.Address] = set()
        self._held: list[tuple[Any, ...]] | None = None

    def out_of_range(self, address: str, away: bool = True) -> None:
        """Let nobody hear this device, nor it anybody; connections end after their supervision timeout."""
        where = hci.Address(address)
        if not away:
            self._unheard.discard(where)
            return
        self._unheard.add(where)

    def time_out(self, address: str) -> None:
        """End the connections of a device as a supervision timeout does: each end notices by itself."""
        where = hci.Address(address)
        for controller in self.controllers:
            for peer, connection in list(controller.le_connections.items()):
                if where in (peer, connection.self_address):
                    controller.on_le_disconnected(connection, CONNECTION_TIMEOUT)

    def hold(self) -> None:
        """Hold all data back, as an interfered channel does."""
        self._held = []

    def release(self) -> None:
        """Deliver what was held back, in order."""
        held, self._held = self._held or [], None
        for packet in held:
            super().send_acl_data(*packet)

    def send_acl_data(
        self, sender_controller: Controller, destination_address: hci.Address, transport: Any, data: bytes
    ) -> None:
        """Carry data, if it is heard; at the next connection event, if there are such."""
        packet = (sender_controller, destination_address, transport, data)
        if destination_address in self._unheard or sender_controller.random_address in self._unheard:
            return
        if self._held is not None:
            self._held.append(packet)
            return
        if not self.interval_s:
            super().send_acl_data(*packet)
            return
        loop = asyncio.get_running_loop()
        event = (loop.time() // self.interval_s + 1) * self.interval_s
        loop.call_at(event, super().send_acl_data, *packet)

    def send_advertising_pdu(self, sender_controller: Controller, packet: ll.AdvertisingPdu) -> None:
        """Carry an advertisement or a connection request, if it is heard."""
        ends = {sender_controller.random_address, getattr(packet, "advertiser_address", None)}
        if not ends & self._unheard:
            super().send_advertising_pdu(sender_controller, packet)

    def send_ll_control_pdu(
        self, sender_address: hci.Address, receiver_address: hci.Address, packet: ll.ControlPdu
    ) -> None:
        """Carry link control, if it is heard and the other end still exists."""
        if not {sender_address, receiver_address} & self._unheard and self.find_le_controller(receiver_address):
            super().send_ll_control_pdu(sender_address, receiver_address, packet)


def make_device(air: Air, name: str, address: str) -> Device:
    """Give a device with its own controller on this air, still powered off."""
    controller = SimController(name, link=air)
    controller.random_address = hci.Address(address)
    configuration = DeviceConfiguration(
        name=name,
        address=hci.Address(address),
        advertising_interval_min=ADVERTISING_MS,
        advertising_interval_max=ADVERTISING_MS,
    )
    host = Host()
    device = Device(config=configuration, host=host)
    host.set_packet_source(controller)
    host.set_packet_sink(AsyncPipeSink(controller))
    controller.set_packet_sink(host)  # type: ignore[no-untyped-call, unused-ignore]
    return device


@dataclass(frozen=True, slots=True)
class Characteristic:
    """One characteristic of a virtual peripheral.

    Attributes
    ----------
    uuid : str
    notify : bool
        It can be subscribed to.
    value : bytes, callable or None
        What a read gives; None: it cannot be read.
    on_write : callable or None
        Receives what is written; None: it cannot be written.
    descriptors : mapping of int to bytes
        Short UUID to value.
    error : int
        ATT error code that reads and writes are answered with; 0x05 is "insufficient authentication".
    """

    uuid: str
    notify: bool = False
    value: bytes | Callable[[], bytes] | None = None
    on_write: Callable[[bytes], None] | None = None
    descriptors: Mapping[int, bytes] = field(default_factory=dict)
    error: int = 0


@dataclass(frozen=True, slots=True)
class Service:
    """A service: its UUID and characteristics."""

    uuid: str
    characteristics: Sequence[Characteristic]


class Peripheral:
    """A Bluetooth device that somebody might buy, on a virtual radio.

    Parameters
    ----------
    air : Air
    name : str
        As it advertises it, whatever characters that has.
    address : str
        Static random address: its identity.
    services : sequence of Service
    max_mtu : int
        23 for a device that never learnt more.
    """

    def __init__(
        self, air: Air, name: str, address: str, services: Sequence[Service], *, max_mtu: int = MAX_MTU
    ) -> None:
        self.air = air
        self.name = name
        self.address = address
        self._services = services
        self.device = make_device(air, name, address)
        self.device.gatt_server.max_mtu = max_mtu
        self._handles: dict[str, gatt.Characteristic[bytes]] = {}
        self.device.add_services([self._service(service) for service in services])
        self.subscribed = asyncio.Event()  # set when somebody subscribes to anything
        self.device.gatt_server.on("characteristic_subscription", lambda *_: self.subscribed.set())

    async def power_on(self) -> None:
        """Switch on and advertise."""
        await self.device.power_on()
        await self.advertise()

    async def power_off(self) -> None:
        """Switch off: connections end."""
        await self.disconnect()
        await self.device.power_off()

    async def advertise(self, on: bool = True) -> None:
        """Start or stop advertising; it begins again by itself after a disconnection."""
        if not on:
            await self.device.stop_advertising()
            return
        kinds = core.AdvertisingData
        data = [(kinds.FLAGS, b"\x06"), (kinds.COMPLETE_LOCAL_NAME, self.name.encode()[:MAX_NAME])]
        if self._services:  # the name and the UUID fit in one packet here; a real device splits them in two
            first = core.UUID(self._services[0].uuid).to_bytes(force_128=True)
            data.append((kinds.COMPLETE_LIST_OF_128_BIT_SERVICE_CLASS_UUIDS, first))
        await self.device.start_advertising(advertising_data=bytes(core.AdvertisingData(data)), auto_restart=True)

    async def notify(self, uuid: str, data: bytes) -> None:
        """Notify whoever has subscribed; data beyond the connection's packet size are cut off, as radios do."""
        await self.device.notify_subscribers(self._handles[uuid], data)

    def subscribers(self, uuid: str) -> int:
        """Give how many connections have subscribed."""
        handle = self._handles[uuid].handle
        return sum(
            1
            for subscribed in self.device.gatt_server.subscribers.values()
            if subscribed.get(handle, b"\0")[:1] != b"\0"
        )

    async def until_subscribed(self, uuid: str) -> None:
        """Wait until somebody has subscribed to a characteristic."""
        while not self.subscribers(uuid):
            self.subscribed.clear()
            await self.subscribed.wait()

    async def disconnect(self) -> None:
        """End all connections from this side."""
        for connection in list(self.device.connections.values()):
            await connection.disconnect()

    def _service(self, service: Service) -> gatt.Service:
        return gatt.Service(service.uuid, [self._characteristic(c) for c in service.characteristics])

    def _characteristic(self, given: Characteristic) -> gatt.Characteristic[bytes]:
        kinds = gatt.Characteristic.Properties
        properties = kinds(0)
        permissions = gatt.Characteristic.Permissions(0)
        if given.notify:
            properties |= kinds.NOTIFY
        if given.value is not None:
            properties |= kinds.READ
            permissions |= gatt.Characteristic.Permissions.READABLE
        if given.on_write is not None:
            properties |= kinds.WRITE | kinds.WRITE_WITHOUT_RESPONSE
            permissions |= gatt.Characteristic.Permissions.WRITEABLE

        def read(_connection: object) -> bytes:
            if given.error:
                raise att.ATT_Error(given.error)
            return given.value() if callable(given.value) else given.value or b""

        def write(_connection: object, data: bytes) -> None:
            if given.error:
                raise att.ATT_Error(given.error)
            if given.on_write is not None:
                given.on_write(bytes(data))

        made: gatt.Characteristic[bytes] = gatt.Characteristic(
            given.uuid,
            properties,
            permissions,
            gatt.CharacteristicValue(read=read, write=write),
            [
                gatt.Descriptor(core.UUID.from_16_bits(short), gatt.Descriptor.READABLE, data)
                for short, data in given.descriptors.items()
            ],
        )
        self._handles[given.uuid] = made
        return made
