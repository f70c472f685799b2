r"""List serial ports, and on request the Bluetooth devices in reach. Opens nothing, connects to nothing, sends nothing.

heldwheel-log find                  serial ports with what they say about themselves
heldwheel-log find --ble            Bluetooth devices too (listens for six seconds)
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from logger.edges.door import Exit

if TYPE_CHECKING:
    import argparse


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("--ble", action="store_true", help="listen for Bluetooth devices too")
    parser.add_argument("--seconds", type=float, default=6.0, help="how long to listen for them (default 6)")


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.edges.console import note, say, table
    from logger.links.serial_port import serial_ports

    ports = serial_ports()
    if ports:
        rows = [(port.device, port.text, port.serial) for port in ports]
        table(("port", "what it says", "serial number"), rows, title="Serial ports")
    else:
        say("No serial port is present. Is the cable plugged in, and its driver installed?")
    if args.ble:
        _show_radio(args.seconds)
    else:
        note("Bluetooth devices: heldwheel-log find --ble")
    return Exit.OK


def _show_radio(seconds: float) -> None:
    import asyncio

    from logger.edges.console import note, say, table
    from logger.errors import InputError
    from logger.links.ble import scan

    if not 0.5 <= seconds <= 120:
        raise InputError("--seconds must lie between 0.5 and 120")
    note(f"Listening for Bluetooth devices for {seconds:g} s ...")
    found = asyncio.run(scan(seconds))
    if not found:
        say("No Bluetooth device was heard. Is the transducer switched on, near, and connected to nothing else?")
        return
    rows = [
        (
            one.identity,
            one.name or "–",
            "connected" if one.connected else f"{one.rssi_dbm} dBm",
            ", ".join(one.services[:3]),
        )
        for one in found
    ]
    table(("identity", "name (may be shared)", "signal", "services"), rows, title="Bluetooth devices", right=(2,))
