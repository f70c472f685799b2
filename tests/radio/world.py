"""One virtual radio, reached in two ways: through bleak's ``backend=`` seam, or through bleak's own Linux code.

``radio``  bleak API -> our backend -> central -> air -> peripheral
``bluez``  bleak API -> bleak's unmodified Linux code -> private D-Bus -> ``minibluez`` -> central -> air -> peripheral
"""

from __future__ import annotations

import asyncio
import contextlib
import ctypes
import signal
import subprocess
import tempfile
from collections.abc import AsyncIterator, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from logger.links.ble import SYSTEM, Backends
from tests.radio.air import Air, Peripheral
from tests.radio.bleak_backend import backends_on
from tests.radio.central import Central
from tests.radio.minibluez import MiniBluez

if TYPE_CHECKING:
    import pytest

TIERS = ("radio", "bluez")

_CONFIG = """<!DOCTYPE busconfig PUBLIC "-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN"
 "http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd">
<busconfig><type>custom</type><listen>unix:path={socket}</listen><auth>EXTERNAL</auth>
<policy context="default"><allow user="*"/><allow own="*"/><allow send_destination="*" eavesdrop="false"/>
<allow receive_sender="*"/></policy></busconfig>
"""


def _die_with_parent() -> None:
    """Ask the kernel to end this process when its parent is killed."""
    set_death_signal = 1  # PR_SET_PDEATHSIG in sys/prctl.h
    ctypes.CDLL(None).prctl(set_death_signal, signal.SIGTERM)


@contextlib.contextmanager
def private_bus() -> Iterator[str]:
    """A D-Bus of our own; gives its address."""
    with tempfile.TemporaryDirectory(prefix="bus") as folder:
        config, socket = Path(folder, "bus.conf"), Path(folder, "socket")
        config.write_text(_CONFIG.format(socket=socket), encoding="utf-8")
        daemon = subprocess.Popen(
            ["dbus-daemon", f"--config-file={config}", "--nofork", "--print-address"],
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,  # it complains about limits that a container does not grant
            text=True,
            preexec_fn=_die_with_parent,
        )
        try:
            daemon.stdout.readline()  # it prints its address when it listens
            yield f"unix:path={socket}"
        finally:
            daemon.terminate()
            daemon.wait(10)
            daemon.stdout.close()


class World:
    """Air, one adapter, and whatever peripherals a test adds."""

    def __init__(self, tier: str, central: Central, air: Air, bluez: MiniBluez | None, bus: str = "") -> None:
        self.tier = tier
        self.air = air
        self._central = central
        self._bluez = bluez
        self._bus = bus
        on_radio = backends_on(central)
        self.backends = SYSTEM if bluez else Backends(on_radio.scanner, on_radio.client, on_radio.adapter)

    async def add(self, *peripherals: Peripheral) -> None:
        """Switch peripherals on."""
        for peripheral in peripherals:
            await peripheral.power_on()

    async def adapter(self, on: bool) -> None:
        """Switch the computer's Bluetooth on or off."""
        if self._bluez is not None:
            await self._bluez.power(on)
            await asyncio.sleep(0.05)  # until whoever listens has heard
        elif on:
            await self._central.power_on()
        else:
            await self._central.power_off()

    def strike_dumb(self) -> None:
        """The radio stack dies: nothing arrives any more, and nobody says so."""
        if self._bluez is not None:
            self._bluez.vanish()
        else:
            self.air.hold()

    async def revive(self) -> None:
        """The radio stack is started again; its connections are gone."""
        if self._bluez is not None:
            await self._central.power_off()
            await self._central.power_on()
            self._bluez = MiniBluez(self._central, self._bus)
            await self._bluez.start()
        else:
            self.air.release()

    async def close(self) -> None:
        """End the service."""
        if self._bluez is not None:
            await self._bluez.stop()
            await asyncio.sleep(0.01)  # bleak's own bus watcher ends


@contextlib.asynccontextmanager
async def world(tier: str, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[World]:
    """Build a world of one tier."""
    air = Air()
    central = Central(air)
    await central.power_on()
    if tier == "radio":
        yield World(tier, central, air, None)
        return
    with private_bus() as address:
        monkeypatch.setenv("DBUS_SYSTEM_BUS_ADDRESS", address)
        bluez = MiniBluez(central, address)
        await bluez.start()
        made = World(tier, central, air, bluez, address)
        try:
            yield made
        finally:
            await made.close()
