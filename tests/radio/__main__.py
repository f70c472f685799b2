"""A Bluetooth gauge to record from on a Linux machine without an adapter, as a process of its own.

    python -m tests.radio --gauge standard                 the standard Torque characteristic: needs no description
    python -m tests.radio --gauge packet --describe gauge.toml

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
import signal
import sys
from pathlib import Path

import msgspec

from logger.toml_file import write_toml
from logger.virtual.central import Central
from logger.virtual.device import STREAM, VirtualDevice
from logger.virtual.gauges import TORQUE_UUID, device_gauge, perform, standard_gauge, standard_pieces
from logger.virtual.physics import simulate
from logger.virtual.radio import Air
from logger.virtual.scenarios import scenario
from tests.radio.minibluez import MiniBluez
from tests.radio.world import private_bus

ADDRESS = "F0:00:00:00:00:01"


async def serve(args: argparse.Namespace, bus: str) -> None:
    """Serve until somebody ends it."""
    run = simulate(scenario(args.scenario), args.seed)
    air = Air()
    central = Central(air)
    await central.power_on()
    bluez = MiniBluez(central, bus)
    await bluez.start()
    if args.gauge == "standard":
        gauge, characteristic, pieces = standard_gauge(air, ADDRESS), TORQUE_UUID, standard_pieces(run)
    else:
        device = VirtualDevice(run, "packet")
        gauge, characteristic, pieces = device_gauge(air, ADDRESS), STREAM, list(device)
        if args.describe:
            write_toml(args.describe, msgspec.structs.replace(device.description, link="ble"))
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
    parser.add_argument("--gauge", choices=["standard", "packet"], default="standard")
    parser.add_argument("--scenario", default="healthy")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--describe", type=Path, metavar="FILE", help="write the packet gauge's description here")
    parser.add_argument("--seconds", type=float, default=600.0)
    args = parser.parse_args()
    with private_bus() as bus:
        asyncio.run(serve(args, bus))


if __name__ == "__main__":
    main()
