"""A Bluetooth gauge to record from on a Linux machine without an adapter, as a process of its own.

    python -m tests.radio --gauge standard                 the standard Torque characteristic: needs no description
    python -m tests.radio --gauge packet --describe transducer.toml
    python -m tests.radio --gauge text                     lines through a UART-like service, split over packets

Starts a private D-Bus with a small ``org.bluez`` service and a virtual peripheral behind it, and prints what a recorder
needs, one ``NAME=value`` per line::

    DBUS_SYSTEM_BUS_ADDRESS=unix:path=.../socket
    ADDRESS=F0:00:00:00:00:01

then serves until it is ended (SIGTERM) or ``--seconds`` have passed. The recorder itself knows nothing of this: it
finds the system bus where the environment says. Everything it sends is simulated and says so.
"""

from __future__ import annotations

import argparse
import asyncio
import contextlib
import logging
import signal
import sys
from pathlib import Path

import msgspec

from logger.decoder.description import BleSettings, Command, Description
from logger.edges.toml_file import write_toml
from logger.virtual.device import STREAM, Piece, VirtualDevice
from logger.virtual.physics import SimulatedRun, simulate
from logger.virtual.scenarios import scenario
from tests.radio.air import MAX_MTU, Air, Peripheral
from tests.radio.central import Central
from tests.radio.gauges import (
    OWN_COMMAND,
    OWN_STREAM,
    TORQUE_UUID,
    device_gauge,
    perform,
    standard_gauge,
    standard_pieces,
    stream_gauge,
)
from tests.radio.minibluez import MiniBluez
from tests.radio.world import private_bus

ADDRESS = "F0:00:00:00:00:01"


def made(kind: str, air: Air, run: SimulatedRun, mtu: int) -> tuple[Peripheral, str, list[Piece], Description | None]:
    """Give a gauge, its characteristic, what it sends, and its description where it needs one."""
    if kind == "standard":
        return standard_gauge(air, ADDRESS), TORQUE_UUID, standard_pieces(run), None
    if kind == "packet":
        device = VirtualDevice(run, "packet")
        description = msgspec.structs.replace(device.description, link="ble")
        return device_gauge(air, ADDRESS, max_mtu=mtu), STREAM, list(device), description

    def on_command(data: bytes) -> None:
        sys.stdout.write(f"RECEIVED={data.hex()}\n")
        sys.stdout.flush()

    device = VirtualDevice(run, "text")
    sent = [(due, line[i : i + 20]) for due, line in device for i in range(0, len(line), 20)]
    ble = BleSettings(characteristic=OWN_STREAM, command=OWN_COMMAND)
    zero = {"zero": Command(send=r"zero\n", does="takes the present torque as zero")}
    description = msgspec.structs.replace(device.description, link="ble", ble=ble, serial=None, commands=zero)
    return stream_gauge(air, ADDRESS, on_command=on_command), OWN_STREAM, sent, description


async def serve(args: argparse.Namespace, bus: str) -> None:
    """Serve until somebody ends it."""
    run = simulate(scenario(args.scenario), args.seed)
    air = Air()
    central = Central(air)
    await central.power_on()
    bluez = MiniBluez(central, bus)
    await bluez.start()
    gauge, characteristic, pieces, description = made(args.gauge, air, run, args.mtu)
    if args.describe and description is not None:
        write_toml(args.describe, description)
    await gauge.power_on()
    playing = asyncio.create_task(perform(gauge, characteristic, pieces))
    ended = asyncio.Event()
    for number in (signal.SIGTERM, signal.SIGINT):
        asyncio.get_running_loop().add_signal_handler(number, ended.set)
    sys.stdout.write(f"DBUS_SYSTEM_BUS_ADDRESS={bus}\nADDRESS={ADDRESS}\n")
    sys.stdout.flush()
    with contextlib.suppress(TimeoutError):
        async with asyncio.timeout(args.seconds):
            await ended.wait()
    playing.cancel()
    await bluez.stop()


def main() -> None:
    """Run it."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--gauge", choices=["standard", "packet", "text"], default="standard")
    parser.add_argument("--scenario", default="healthy")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--describe", type=Path, metavar="FILE", help="write the gauge's description here")
    parser.add_argument("--mtu", type=int, default=MAX_MTU, help="packet size of the packet gauge")
    parser.add_argument("--seconds", type=float, default=600.0)
    args = parser.parse_args()
    logging.getLogger("bumble").setLevel(logging.ERROR)  # it warns of every connection that ends while data travel
    with private_bus() as bus:
        asyncio.run(serve(args, bus))


if __name__ == "__main__":
    main()
