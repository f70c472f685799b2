"""The link that a description and an address ask for, and what it would send."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from logger.decoder.crc import check
from logger.decoder.description import SerialSettings, command_bytes
from logger.decoder.registers import plan
from logger.edges.confirm import shown_bytes
from logger.errors import InputError

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.links.base import Link

# Modbus application protocol 1.1b3, 6.3 and 6.4: read holding registers, read input registers.
_READ: Final = {"holding": 3, "input": 4}


def asks(description: Description) -> str:
    """Say what a transducer is asked while it is recorded; empty for one that sends by itself."""
    if description.modbus is not None:
        modbus = description.modbus
        parts = ", ".join(f"{b.table} {b.address} to {b.address + b.count - 1}" for b in plan(modbus.registers))
        return f"a request for Modbus registers ({parts}) of device {modbus.device} every {modbus.interval_s:g} s"
    if description.poll is not None:
        poll = description.poll
        return f"'{shown_bytes(command_bytes(poll.request))}' every {poll.interval_s:g} s"
    return ""


def asked_bytes(description: Description) -> tuple[bytes, ...]:
    """Give what goes over the wire each time a transducer is asked, request by request, its check sum included.

    Reference: Modbus over serial line 1.02, 2.5.1: address, function, data high byte first, CRC-16 low byte first.
    """
    if description.modbus is not None:
        device = description.modbus.device
        heads = [
            bytes((device, _READ[b.table])) + b.address.to_bytes(2, "big") + b.count.to_bytes(2, "big")
            for b in plan(description.modbus.registers)
        ]
        return tuple(head + check(head, "crc-16/modbus").to_bytes(2, "little") for head in heads)
    return (command_bytes(description.poll.request),) if description.poll is not None else ()


def build_link(description: Description, address: str, *, confirmed: bool = False) -> Link:
    """Build the link to a described transducer.

    Args:
        description: Its ``link`` says which kind.
        address: A port (``/dev/ttyUSB0``, ``COM3``) or a Bluetooth identity.
        confirmed: The user has seen what ``asks`` says and agreed.

    Raises:
        InputError: The address cannot be of this kind, or the kind has none; or it must be asked and the user has not
            agreed.
    """
    if not confirmed and asks(description):
        raise InputError(f"{description.name}: sends nothing by itself; it needs {asks(description)}, once you agree")
    serial = description.serial or SerialSettings()
    if description.link == "modbus" or description.modbus is not None:
        from logger.links.modbus import ModbusLink

        if description.modbus is None:
            raise InputError(f"{description.name}: its description lacks the [modbus] table")
        return ModbusLink(address, serial, description.modbus)
    if description.link == "ble":
        from logger.decoder.description import BleSettings
        from logger.links.ble import BleLink

        return _polled(description, BleLink(address, description.ble or BleSettings()))
    if description.link in ("serial", "virtual"):  # a virtual transducer may stream over a real port
        from logger.links.serial_port import SerialLink

        return _polled(description, SerialLink(address, serial))
    raise InputError(f"{description.name}: a transducer of the kind '{description.link}' has no address to open")


def _polled(description: Description, link: Link) -> Link:
    """Ask for readings, where the device must be asked."""
    poll = description.poll
    if poll is None:
        return link
    from logger.links.polled import PolledLink

    return PolledLink(link, command_bytes(poll.request), poll.interval_s, poll.timeout_s)
