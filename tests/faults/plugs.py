"""A device that goes away and comes back, by cable and by radio: a hundred times, and at any moment."""

from __future__ import annotations

import asyncio
import logging
import os
import random
import tempfile
import threading
from collections.abc import Awaitable, Callable, Iterator
from itertools import count
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from logger.links.serial_port import SerialLink
from logger.stream.session import Session, build_session
from logger.virtual.port import VirtualPort
from tests.faults.air import gauge_on_the_air
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, Kept, lines
from tests.faults.tally import Campaign, Tally
from tests.radio.gauges import OWN_STREAM, play

if TYPE_CHECKING:
    from logger.samples import Ending

WAIT_S = 60.0  # for what comes within a second or two on an idle machine


class Watched:
    """A session whose device goes away: what it recorded, and what it left open."""

    def __init__(self, session: Session) -> None:
        self.session = session
        self.kept = Kept()
        session.subscribe(self.kept)
        self.ending: Ending | None = None

    async def run(self, doing: Callable[[], Awaitable[None]]) -> None:
        """Record while something is done to the device, and stop."""
        self._running = asyncio.ensure_future(self.session.run())
        await doing()
        self.session.stop()
        self.ending = await self._running

    async def until(self, true: Callable[[], bool], what: str) -> None:
        """Wait for something, however slow the machine; say what the session does if it does not come."""
        try:
            async with asyncio.timeout(WAIT_S):
                while not true():
                    if self._running.done():
                        raise RuntimeError(f"no {what}: the session has ended: {self._running.result()}")
                    await asyncio.sleep(0.01)
        except TimeoutError:
            raise RuntimeError(f"no {what} within {WAIT_S:g} s: {self.session.health}") from None

    async def samples(self) -> None:
        """Wait for new samples."""
        seen = len(self.kept.blocks)
        await self.until(lambda: any(len(block) for block in self.kept.blocks[seen:]), "sample")

    async def back(self, times: int) -> None:
        """Wait until the device has come back so often."""
        await self.until(lambda: self.session.health.reconnects >= times, f"reconnect {times}")

    def judge(self, tally: Tally, left: tuple[int, int]) -> None:
        """Every sample that came is there once, every missing one was counted, nothing is left open."""
        numbers = self.kept.column("number")
        gaps = sum(event.count for block in self.kept.blocks for event in block.events if event.kind == "gap")
        tally.counts["samples"] = len(numbers)
        tally.counts["sent while away, counted"] = gaps
        tally.require(self.ending is not None and self.ending.reason == "stopped", f"it ended as {self.ending}")
        tally.require(bool((self.kept.column("torque") == torque_of(numbers)).all()), "wrong samples")
        tally.require(bool((np.diff(numbers) > 0).all()), "samples twice or out of order")
        missing = int((np.diff(numbers) - 1).sum())
        tally.require(gaps == missing, f"{missing} samples are missing, {gaps} were told")
        away, back = len(self.kept.told("disconnect")), len(self.kept.told("reconnect"))
        tally.require(away == back, f"{away} disconnects and {back} reconnects told")
        tally.require(left[0] <= 2 and left[1] <= 1, f"{left} files and threads are left open")
        tally.outcome = f"no sample that came; {gaps:,} sent while away, each counted; no file or thread left open"


def _open() -> tuple[int, int]:
    """Count this process's open files and threads."""
    files = len(os.listdir("/proc/self/fd")) if Path("/proc/self/fd").exists() else 0
    return files, threading.active_count()


def _on_a_port(tally: Tally, doing: Callable[[Watched, VirtualPort], Awaitable[None]]) -> Watched:
    """Record from a virtual port while something is done to it."""
    pieces = ((n / 50, lines(n * 20, 20)) for n in range(50 * 3_600))
    with tempfile.TemporaryDirectory() as folder:
        link = Path(folder) / "gauge"
        with VirtualPort(pieces, link=link, held=True) as port:
            assert DESCRIPTION.serial is not None
            watched = Watched(build_session(SerialLink(str(link), DESCRIPTION.serial), DESCRIPTION))

            async def done() -> None:
                await asyncio.sleep(0.3)
                port.go()
                await doing(watched, port)

            before = _open()
            asyncio.run(watched.run(done))
            left = _open()
    watched.judge(tally, (left[0] - before[0], left[1] - before[1]))
    return watched


def reconnects(cases: int) -> Tally:
    """Unplugged and plugged in so often, each time until samples come again."""
    tally = Tally("unplugged and plugged in again", cases)

    async def doing(watched: Watched, port: VirtualPort) -> None:
        for number in range(cases):
            await watched.samples()
            port.unplug()
            await asyncio.sleep(0.05)
            port.plug()
            await watched.back(number + 1)

    told = len(_on_a_port(tally, doing).kept.told("reconnect"))
    tally.require(told == cases, f"{told} reconnects told")
    return tally


def loose_plug(cases: int, seed: int) -> Tally:
    """A plug that is loose: away and back at any moment, also while the port is being opened or set up."""
    tally = Tally("loose plug", cases)
    rng = random.Random(f"loose plug:{seed}")

    async def doing(watched: Watched, port: VirtualPort) -> None:
        await watched.samples()
        for _ in range(cases):
            port.unplug()
            await asyncio.sleep(rng.uniform(0, 0.05))
            port.plug()
            await asyncio.sleep(rng.choice((rng.uniform(0, 0.02), rng.uniform(0, 0.4))))
        await watched.samples()
        await watched.samples()

    tally.counts["reconnects"] = _on_a_port(tally, doing).session.health.reconnects
    tally.require(tally.counts["reconnects"] > 0, "it was never away")
    return tally


def radio_reconnects(cases: int) -> Tally:
    """A device on the radio ends the connection so often, and is found, asked and subscribed to again."""
    tally = Tally("radio connection ended and made again", cases)
    asyncio.run(_on_the_air(tally, cases))
    return tally


async def _on_the_air(tally: Tally, cases: int) -> None:
    logging.getLogger("bumble").setLevel(logging.ERROR)  # it warns of what was on the air when a connection ends
    gauge, link, description = await gauge_on_the_air()
    watched = Watched(build_session(link, description))
    packets: Iterator[bytes] = (lines(10 * number, 10) for number in count())
    playing = asyncio.ensure_future(play(gauge, OWN_STREAM, packets, 0.01))

    async def doing() -> None:
        for number in range(cases):
            await watched.samples()
            await gauge.disconnect()
            await watched.back(number + 1)
        await watched.samples()

    before = _open()
    await watched.run(doing)
    left = _open()
    playing.cancel()
    await asyncio.gather(playing, return_exceptions=True)
    watched.judge(tally, (left[0] - before[0], left[1] - before[1]))
    told = len(watched.kept.told("reconnect"))
    tally.require(told == cases, f"{told} reconnects told")


CAMPAIGNS = [
    Campaign("connects and disconnects", reconnects, 4, 100, long_s=40),
    Campaign("connects and disconnects, radio", radio_reconnects, 3, 100, long_s=60),
    Campaign("loose plug", loose_plug, 20, 200, seeded=True, long_s=35),
]
