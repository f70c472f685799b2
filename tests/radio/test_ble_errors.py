"""What a radio stack raises, in the user's words: each with what to do."""

import pytest
from bleak.exc import (
    BleakBluetoothNotAvailableError,
    BleakBluetoothNotAvailableReason,
    BleakDBusError,
    BleakError,
    BleakGATTProtocolError,
    BleakGATTProtocolErrorCode,
)

from logger.links.ble_errors import connect_error, why_not


@pytest.mark.parametrize("reason", BleakBluetoothNotAvailableReason)
def test_every_reason_has_words(reason):
    assert "Bluetooth" in why_not(BleakBluetoothNotAvailableError("x", reason))


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (TimeoutError(), "no answer in time"),
        (BleakGATTProtocolError(BleakGATTProtocolErrorCode.INSUFFICIENT_AUTHENTICATION), "pair it"),
        (BleakGATTProtocolError(BleakGATTProtocolErrorCode.INSUFFICIENT_ENCRYPTION), "pair it"),
        (BleakGATTProtocolError(BleakGATTProtocolErrorCode.WRITE_NOT_PERMITTED), "refuses"),
        (BleakDBusError("org.bluez.Error.NotPermitted", ["Not paired"]), "pair it"),
        (BleakDBusError("org.bluez.Error.AuthenticationFailed", ["x"]), "pair it"),
        (BleakDBusError("org.bluez.Error.NotReady", ["Resource Not Ready"]), "switched off"),
        (BleakDBusError("org.freedesktop.DBus.Error.ServiceUnknown", ["x"]), "has stopped"),
        (BleakDBusError("org.bluez.Error.Failed", ["busy\x1b[2J"]), "service says"),
        (FileNotFoundError(2, "No such file"), "installed and running"),
        (ConnectionRefusedError(), "installed and running"),
        (EOFError(), "installed and running"),
        (BleakError("disconnected"), "disconnected"),
        (OSError(), "OSError"),
    ],
)
def test_words(error, words):
    told = why_not(error)
    assert words in told
    assert "\x1b" not in told


def test_connecting():
    assert "no connection within 15 s" in str(connect_error("F0", TimeoutError(), 15.0))
    assert "cannot connect: disconnected" in str(connect_error("F0", BleakError("disconnected"), 15.0))
