# ruff: noqa: N802 - methods are named as the bus members that call them
"""A small ``org.bluez`` service over the virtual radio: what an unmodified Linux program needs of the real one.

It answers on whatever bus it is given (a private one) with one adapter, ``hci0``. Behaviour that matters to a client
was taken from the real service: handles are declaration handles, the Generic Access service is hidden, a read of a
subscribed characteristic is also delivered as a notification, refusals carry the real service's error names.
"""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import Awaitable, Callable
from typing import Any

from bumble import att
from dbus_fast import Message, MessageType, Variant
from dbus_fast.aio import MessageBus

from tests.radio.central import Central, GoneError, Heard, Peer, uuid_text

BLUEZ = "org.bluez"
ADAPTER = "/org/bluez/hci0"
OBJECTS = "org.freedesktop.DBus.ObjectManager"
PROPERTIES = "org.freedesktop.DBus.Properties"
CONNECT_S = 20.0  # the real service gives up after about this long

Interfaces = dict[str, dict[str, Variant]]


class RefusalError(Exception):
    """An error reply: its name and text."""

    def __init__(self, name: str, text: str) -> None:
        super().__init__(name, text)
        self.name = name if "." in name else f"org.bluez.Error.{name}"
        self.text = text


class MiniBluez:
    """The service.

    Parameters
    ----------
    central : Central
        The adapter on the virtual radio, powered on.
    address : str
        Bus address.
    """

    def __init__(self, central: Central, address: str) -> None:
        self._central = central
        self._bus = MessageBus(bus_address=address)
        self._objects: dict[str, Interfaces] = {
            ADAPTER: {
                "org.bluez.Adapter1": {
                    "Address": Variant("s", "C0:00:00:00:00:01"),
                    "Name": Variant("s", "virtual"),
                    "Alias": Variant("s", "virtual"),
                    "Powered": Variant("b", True),
                    "Discovering": Variant("b", False),
                    "Roles": Variant("as", ["central", "peripheral"]),
                    "UUIDs": Variant("as", []),
                }
            }
        }
        self._peers: dict[str, Peer] = {}
        self._attributes: dict[str, Any] = {}
        self._notifying: set[str] = set()
        self._tasks: set[asyncio.Task[None]] = set()

    async def start(self) -> None:
        """Appear on the bus."""
        await self._bus.connect()
        self._bus.add_message_handler(self._on_message)
        await self._bus.request_name(BLUEZ)

    def vanish(self) -> None:
        """Leave the bus without a word, as a killed service does."""
        self._bus.disconnect()

    async def stop(self) -> None:
        """End everything."""
        for task in list(self._tasks):
            task.cancel()
        for peer in list(self._peers.values()):
            with contextlib.suppress(Exception):
                await peer.disconnect()
        self._bus.disconnect()

    async def power(self, on: bool) -> None:
        """Switch the adapter on or off, as a user does in the system's settings."""
        if not on:
            for peer in list(self._peers.values()):
                await peer.disconnect()
            await self._central.deafen(self._heard)
        self._change(ADAPTER, "org.bluez.Adapter1", Powered=Variant("b", on), Discovering=Variant("b", False))

    def forget(self, address: str) -> None:
        """Drop a device, as the service does with one not heard for a while."""
        path = self._device_path(address)
        if path in self._objects:
            self._remove(path)

    @property
    def _powered(self) -> bool:
        return bool(self._objects[ADAPTER]["org.bluez.Adapter1"]["Powered"].value)

    # messages

    def _on_message(self, message: Message) -> bool:
        if message.message_type is not MessageType.METHOD_CALL or message.destination not in {
            BLUEZ,
            self._bus.unique_name,
        }:
            return False
        task = asyncio.get_running_loop().create_task(self._answer(message))
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)
        return True

    async def _answer(self, message: Message) -> None:
        try:
            signature, body = await self._call(message)
            reply = Message.new_method_return(message, signature, body)
        except RefusalError as refusal:
            reply = Message.new_error(message, refusal.name, refusal.text)
        except GoneError:
            reply = Message.new_error(message, "org.bluez.Error.Failed", "Operation failed with ATT error: 0x0e")
        except att.ATT_Error as error:
            refusal = _refusal(int(error.error_code))
            reply = Message.new_error(message, refusal.name, refusal.text)
        if self._bus.connected:
            await self._bus.send(reply)

    async def _call(self, message: Message) -> tuple[str, list[Any]]:
        member = str(message.member)
        if message.interface == OBJECTS and member == "GetManagedObjects":
            return "a{oa{sa{sv}}}", [self._objects]
        if message.path not in self._objects:
            raise RefusalError("org.freedesktop.DBus.Error.UnknownObject", f"no object {message.path}")
        if message.interface == PROPERTIES and member == "GetAll":
            return "a{sv}", [self._objects[str(message.path)].get(message.body[0], {})]
        kind = str(message.interface).rsplit(".", 1)[-1].rstrip("1").lower()
        method: Callable[..., Awaitable[tuple[str, list[Any]]]] | None = getattr(self, f"_{kind}_{member}", None)
        if method is None:
            raise RefusalError("org.freedesktop.DBus.Error.UnknownMethod", f"{message.interface}.{member}")
        return await method(str(message.path), *message.body)

    # Adapter1

    async def _adapter_SetDiscoveryFilter(self, _path: str, _filters: object) -> tuple[str, list[Any]]:
        return "", []

    async def _adapter_StartDiscovery(self, _path: str) -> tuple[str, list[Any]]:
        if not self._powered:
            raise RefusalError("NotReady", "Resource Not Ready")
        await self._central.deafen(self._heard)
        await self._central.listen(self._heard)
        self._change(ADAPTER, "org.bluez.Adapter1", Discovering=Variant("b", True))
        return "", []

    async def _adapter_StopDiscovery(self, _path: str) -> tuple[str, list[Any]]:
        if not self._powered:
            raise RefusalError("NotReady", "Resource Not Ready")
        await self._central.deafen(self._heard)
        self._change(ADAPTER, "org.bluez.Adapter1", Discovering=Variant("b", False))
        return "", []

    def _heard(self, heard: Heard) -> None:
        path = self._device_path(heard.address)
        if path in self._objects:
            self._change(path, "org.bluez.Device1", RSSI=Variant("n", heard.rssi))
            return
        plain = heard.address.replace(":", "-")
        properties = {
            "Address": Variant("s", heard.address),
            "AddressType": Variant("s", "random"),
            "Alias": Variant("s", heard.name or plain),
            "Paired": Variant("b", False),
            "Connected": Variant("b", False),
            "ServicesResolved": Variant("b", False),
            "UUIDs": Variant("as", list(heard.service_uuids)),
            "Adapter": Variant("o", ADAPTER),
            "RSSI": Variant("n", heard.rssi),
        }
        if heard.name:
            properties["Name"] = Variant("s", heard.name)
        self._add(path, {"org.bluez.Device1": properties})

    # Device1

    async def _device_Connect(self, path: str) -> tuple[str, list[Any]]:
        if not self._powered:
            raise RefusalError("Failed", "br-connection-adapter-not-powered")
        if path in self._peers:  # connected already
            return "", []
        address = str(self._objects[path]["org.bluez.Device1"]["Address"].value)
        try:
            peer = await self._central.connect(address, CONNECT_S, lambda: self._gone(path))
        except TimeoutError:
            raise RefusalError("Failed", "le-connection-abort-by-local") from None
        self._peers[path] = peer
        self._change(path, "org.bluez.Device1", Connected=Variant("b", True))
        self._publish(path, peer)
        uuids = Variant("as", [uuid_text(service.uuid) for service in peer.services])
        self._change(path, "org.bluez.Device1", UUIDs=uuids, ServicesResolved=Variant("b", True))
        return "", []

    async def _device_Disconnect(self, path: str) -> tuple[str, list[Any]]:
        if path in self._peers:
            await self._peers[path].disconnect()
        return "", []

    def _gone(self, path: str) -> None:
        self._peers.pop(path, None)
        for below in [p for p in self._objects if p.startswith(f"{path}/")]:
            self._notifying.discard(below)
            self._remove(below)
        off = Variant("b", False)
        self._change(path, "org.bluez.Device1", Connected=off, ServicesResolved=off)

    def _publish(self, path: str, peer: Peer) -> None:
        """Publish the services of a device."""
        for service in peer.services:
            uuid = uuid_text(service.uuid)
            if uuid.startswith("00001800"):
                continue
            at_service = f"{path}/service{service.handle:04x}"
            self._add(
                at_service,
                {
                    "org.bluez.GattService1": {
                        "UUID": Variant("s", uuid),
                        "Device": Variant("o", path),
                        "Primary": Variant("b", True),
                        "Includes": Variant("ao", []),
                    }
                },
            )
            for characteristic in service.characteristics:
                at = f"{at_service}/char{characteristic.handle - 1:04x}"
                self._attributes[at] = (peer, characteristic)
                self._add(
                    at,
                    {
                        "org.bluez.GattCharacteristic1": {
                            "UUID": Variant("s", uuid_text(characteristic.uuid)),
                            "Service": Variant("o", at_service),
                            "Value": Variant("ay", b""),
                            "Flags": Variant("as", _flags(int(characteristic.properties))),
                            "Notifying": Variant("b", False),
                            "MTU": Variant("q", peer.mtu),
                        }
                    },
                )
                for descriptor in characteristic.descriptors:
                    below = f"{at}/desc{descriptor.handle:04x}"
                    self._attributes[below] = (peer, descriptor)
                    self._add(
                        below,
                        {
                            "org.bluez.GattDescriptor1": {
                                "UUID": Variant("s", uuid_text(descriptor.type)),
                                "Characteristic": Variant("o", at),
                                "Value": Variant("ay", b""),
                            }
                        },
                    )

    # GattCharacteristic1 and GattDescriptor1

    async def _gattcharacteristic_ReadValue(self, path: str, _options: object) -> tuple[str, list[Any]]:
        peer, attribute = self._attributes[path]
        value = await peer.read(attribute)
        if path in self._notifying:  # as the real service does: a reader's value reaches every subscriber
            self._change(path, "org.bluez.GattCharacteristic1", Value=Variant("ay", value))
        return "ay", [value]

    async def _gattcharacteristic_WriteValue(
        self, path: str, value: bytes, options: dict[str, Variant]
    ) -> tuple[str, list[Any]]:
        peer, attribute = self._attributes[path]
        kind = options.get("type", Variant("s", "request")).value
        await peer.write(attribute, bytes(value), response=kind == "request")
        return "", []

    async def _gattcharacteristic_StartNotify(self, path: str) -> tuple[str, list[Any]]:
        if path in self._notifying:  # one subscription on the air, however many programs want it
            return "", []
        peer, attribute = self._attributes[path]

        def on_value(value: bytes) -> None:
            self._change(path, "org.bluez.GattCharacteristic1", Value=Variant("ay", bytes(value)))

        await peer.subscribe(attribute, on_value)
        self._notifying.add(path)
        self._change(path, "org.bluez.GattCharacteristic1", Notifying=Variant("b", True))
        return "", []

    async def _gattcharacteristic_StopNotify(self, path: str) -> tuple[str, list[Any]]:
        peer, attribute = self._attributes[path]
        self._notifying.discard(path)
        await peer.unsubscribe(attribute)
        return "", []

    async def _gattdescriptor_ReadValue(self, path: str, _options: object) -> tuple[str, list[Any]]:
        peer, attribute = self._attributes[path]
        return "ay", [await peer.read(attribute)]

    # objects

    def _device_path(self, address: str) -> str:
        return f"{ADAPTER}/dev_{address.replace(':', '_')}"

    def _add(self, path: str, interfaces: Interfaces) -> None:
        self._objects[path] = interfaces
        self._emit("/", OBJECTS, "InterfacesAdded", "oa{sa{sv}}", [path, interfaces])

    def _remove(self, path: str) -> None:
        interfaces = list(self._objects.pop(path))
        self._attributes.pop(path, None)
        self._emit("/", OBJECTS, "InterfacesRemoved", "oas", [path, interfaces])

    def _change(self, path: str, interface: str, **values: Variant) -> None:
        if path in self._objects:
            self._objects[path][interface].update(values)
            self._emit(path, PROPERTIES, "PropertiesChanged", "sa{sv}as", [interface, values, []])

    def _emit(self, path: str, interface: str, member: str, signature: str, body: list[Any]) -> None:
        if self._bus.connected:
            signal = Message.new_signal(path, interface, member, signature, body)
            self._bus.send(signal)


def _flags(properties: int) -> list[str]:
    named = {0x01: "broadcast", 0x02: "read", 0x04: "write-without-response", 0x08: "write", 0x10: "notify",
             0x20: "indicate"}  # fmt: skip
    return [name for bit, name in named.items() if properties & bit]


def _refusal(code: int) -> RefusalError:
    """The real service's names for ATT errors."""
    if code in {0x02, 0x03}:
        return RefusalError("NotPermitted", "Read not permitted" if code == 0x02 else "Write not permitted")
    if code in {0x05, 0x0C, 0x0F}:
        return RefusalError("NotPermitted", "Not paired")
    if code == 0x08:
        return RefusalError("NotAuthorized", "Operation Not Authorized")
    return RefusalError("Failed", f"Operation failed with ATT error: 0x{code:02x}")
