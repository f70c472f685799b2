"""What a radio stack raises, in the user's words and with the fix."""

from __future__ import annotations

from typing import Final

from bleak.exc import (
    BleakBluetoothNotAvailableError,
    BleakBluetoothNotAvailableReason,
    BleakDBusError,
    BleakGATTProtocolError,
)

from logger.errors import LinkError

# ATT error codes for "not without pairing" (Bluetooth core specification, volume 3, part F, 3.4.1.1).
_PAIRING_CODES: Final = {0x05, 0x08, 0x0C, 0x0F}
_PAIRING_WORDS: Final = ("Authentication", "NotAuthorized", "NotPermitted", "AuthenticationFailed")
_PAIR: Final = "it refuses without pairing: pair it in the system's Bluetooth settings, then try again"

_NOT_AVAILABLE: Final = {
    BleakBluetoothNotAvailableReason.NO_BLUETOOTH: "this computer has no Bluetooth radio; plug in an adapter",
    BleakBluetoothNotAvailableReason.NO_BLE_CENTRAL_ROLE: "this Bluetooth adapter does not know low energy",
    BleakBluetoothNotAvailableReason.POWERED_OFF: "Bluetooth is switched off; switch it on",
    BleakBluetoothNotAvailableReason.DENIED_BY_USER: "this program may not use Bluetooth; allow it in the settings",
    BleakBluetoothNotAvailableReason.DENIED_BY_SYSTEM: "the system forbids the use of Bluetooth",
}


def why_not(error: BaseException) -> str:
    """Say why Bluetooth does not do it, and what to do."""
    if isinstance(error, BleakBluetoothNotAvailableError):
        return _NOT_AVAILABLE.get(error.reason, "Bluetooth is not available")
    if isinstance(error, TimeoutError):
        return "no answer in time; bring the device nearer and end other connections to it"
    if _wants_pairing(error):
        return _PAIR
    if isinstance(error, BleakGATTProtocolError):
        return f"the device refuses ({_short(error)})"
    if isinstance(error, BleakDBusError):
        return _dbus(error)
    if isinstance(error, (FileNotFoundError, ConnectionError, EOFError)):
        return "the system's Bluetooth service is not there; is it installed and running?"
    return _short(error) or type(error).__name__


def connect_error(identity: str, error: BaseException, seconds: float) -> LinkError:
    """Give the error for a connection that was not made."""
    if isinstance(error, TimeoutError):
        return LinkError(
            f"{identity}: no connection within {seconds:g} s; bring it near and end other connections to it"
        )
    return LinkError(f"{identity}: cannot connect: {why_not(error)}")


def no_subscription(name: str) -> str:
    """Say what to do where a device never answers a subscription: some systems pair unasked and find nobody to ask."""
    return (
        "does not answer the subscription. It may have to be paired first: do so in the system's Bluetooth settings "
        f"(or with bluetoothctl: pair {name.rpartition('(')[2].rstrip(')')}), then try again; else bring it nearer"
    )


def _wants_pairing(error: BaseException) -> bool:
    if isinstance(error, BleakGATTProtocolError):
        return int(error.code) in _PAIRING_CODES
    return isinstance(error, BleakDBusError) and any(word in str(error) for word in _PAIRING_WORDS)


def _dbus(error: BleakDBusError) -> str:
    if "NotReady" in error.dbus_error:
        return "Bluetooth is switched off; switch it on"
    if "ServiceUnknown" in error.dbus_error or "NoReply" in error.dbus_error:
        return "the system's Bluetooth service has stopped; start it again"
    return f"the system's Bluetooth service says {_short(error)}"


def _short(error: BaseException) -> str:
    return "".join(c for c in str(error) if c.isprintable())[:200]
