"""SIGKILL at random moments while recording: from a pty that another process writes to, or over the virtual radio.

Run as a program it is a small parent that forks, for each case, a device and a recorder, kills the recorder, and prints
one JSON line with what the device had sent, what had been acknowledged as saved, and what the file holds::

    python -m tests.faults.kills serial|radio CASES SEED

A fork of a warm parent saves the imports of 200 recorders; nothing runs in the parent but this loop.
"""

from __future__ import annotations

import asyncio
import json
import mmap
import os
import pty
import random
import signal
import struct
import subprocess
import sys
import tempfile
import threading
import time
import traceback
import tty
from collections import deque
from collections.abc import Iterator
from itertools import count
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec
import numpy as np
import pandas as pd  # noqa: F401 - warm before the forks

from logger.description import BleSettings
from logger.errors import FileError
from logger.files import read_trace
from logger.header import Header
from logger.links.ble import Backends, BleLink
from logger.links.serial_port import SerialLink
from logger.recording import RecordingWriter
from logger.session import Session, build_session
from logger.virtual.bleak_backend import backends_on
from logger.virtual.central import Central
from logger.virtual.gauges import OWN_STREAM, play, stream_gauge
from logger.virtual.radio import Air
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, lines
from tests.faults.tally import Campaign, Tally

if TYPE_CHECKING:
    from logger.samples import Block, Ending

RATE_HZ = 1000
GAUGE = "F0:00:00:00:00:01"
LOSS_MOST_S = 0.25
STALL_S = 0.02  # a process that sleeps 2 ms and is away for longer was not let run by the machine


class Board:
    """Numbers that processes share: samples sent and acknowledged, when the first block came, and how the machine does.

    ``BEAT`` is when the recorder's process last ran at all, ``STALLED`` for how long in the last moments it did not.
    """

    def __init__(self) -> None:
        self._memory = mmap.mmap(-1, 40)

    def put(self, place: int, value: float) -> None:
        """Write one number."""
        struct.pack_into("d", self._memory, 8 * place, value)

    def get(self, place: int) -> float:
        """Read one number."""
        return float(struct.unpack_from("d", self._memory, 8 * place)[0])


SENT, SAVED, BEGUN, BEAT, STALLED = range(5)


def device(master: int, board: Board) -> None:
    """Send a line every millisecond until killed."""
    os.set_blocking(master, False)
    begun = time.monotonic()
    number = 0
    rest = b""
    while True:
        due = int((time.monotonic() - begun) * RATE_HZ)
        rest += lines(number, due - number)
        number = due
        try:
            rest = rest[os.write(master, rest) :] if rest else rest
        except BlockingIOError:
            rest = b""  # nobody reads yet
        board.put(SENT, number - rest.count(b"\n"))
        time.sleep(0.004)


class _Begun:
    """Notes when the first block came."""

    def __init__(self, board: Board) -> None:
        self._board = board

    def on_block(self, block: Block) -> None:
        """Take a block."""
        if len(block) and not self._board.get(BEGUN):
            self._board.put(BEGUN, time.monotonic())

    def on_end(self, ending: Ending) -> None:
        """Nothing to do."""


def recorder(port: str, path: Path, board: Board) -> None:
    """Record until killed, telling what is saved."""
    assert DESCRIPTION.serial is not None
    session = build_session(SerialLink(port, DESCRIPTION.serial), DESCRIPTION)
    asyncio.run(_recording(session, path, board).run())


def radio_recorder(path: Path, board: Board) -> None:
    """Record from a gauge on the virtual radio until killed, with it; every notification holds ten lines."""
    asyncio.run(_over_the_radio(path, board))


async def _over_the_radio(path: Path, board: Board) -> None:
    air = Air()
    central, gauge = Central(air), stream_gauge(air, GAUGE)
    await central.power_on()
    await gauge.power_on()
    seam = backends_on(central)
    ble = BleSettings(characteristic=OWN_STREAM)
    description = msgspec.structs.replace(DESCRIPTION, link="ble", ble=ble)
    link = BleLink(GAUGE, ble, name="gauge", backends=Backends(seam.scanner, seam.client))
    running = asyncio.create_task(_recording(build_session(link, description), path, board).run())

    def packets() -> Iterator[bytes]:
        for number in count():
            yield lines(10 * number, 10)
            board.put(SENT, 10 * (number + 1))

    while not gauge.subscribers(OWN_STREAM):  # noqa: ASYNC110 - nobody tells
        await asyncio.sleep(0.01)
    await play(gauge, OWN_STREAM, packets(), 10 / RATE_HZ)
    await running


def _recording(session: Session, path: Path, board: Board) -> Session:
    """Let a session record, and tell what is saved."""
    writer = RecordingWriter(path, Header(transducer=DESCRIPTION.transducer), session.columns)
    session.subscribe(_Begun(board))
    session.subscribe(writer)

    def tell() -> None:
        stalls: deque[tuple[float, float]] = deque()
        before = time.monotonic()
        while True:
            board.put(SAVED, writer.saved)
            time.sleep(0.002)
            now = time.monotonic()
            stalls.append((now, max(0.0, now - before - STALL_S)))
            while now - stalls[0][0] > 2 * LOSS_MOST_S:
                stalls.popleft()
            board.put(STALLED, sum(stall for _, stall in stalls))
            board.put(BEAT, now)
            before = now

    threading.Thread(target=tell, daemon=True).start()
    return session


def forked(work: object, *args: object) -> int:
    """Run a function in a fork that never comes back."""
    child = os.fork()
    if child:
        return child
    try:
        work(*args)  # type: ignore[operator]
    except BaseException:  # noqa: BLE001 - it must be seen, and must not come back into the parent's code
        traceback.print_exc()
    finally:
        os._exit(1)


def radio_case(rng: random.Random, folder: Path, number: int) -> dict[str, object]:
    """Record over the radio, kill, and say what is left."""
    path = folder / f"{number}.csv"
    board = Board()
    child = forked(radio_recorder, path, board)
    time.sleep(rng.uniform(0.05, 2.4))
    sent, now = board.get(SENT), time.monotonic()
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return _left(path, board, sent, now)


def serial_case(rng: random.Random, folder: Path, number: int) -> dict[str, object]:
    """Record from a port, kill, and say what is left."""
    path = folder / f"{number}.csv"
    master, slave = pty.openpty()
    tty.setraw(slave)
    board = Board()
    sender = forked(device, master, board)
    child = forked(recorder, os.ttyname(slave), path, board)
    time.sleep(rng.uniform(0.02, 1.6))
    sent, now = board.get(SENT), time.monotonic()
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    os.kill(sender, signal.SIGKILL)
    os.waitpid(sender, 0)
    os.close(master)
    os.close(slave)
    return _left(path, board, sent, now)


def _left(path: Path, board: Board, sent: float, now: float) -> dict[str, object]:
    saved, begun = int(board.get(SAVED)), board.get(BEGUN)
    stalled = board.get(STALLED) + (max(0.0, now - board.get(BEAT) - STALL_S) if begun else 0.0)
    found = {"sent": sent, "saved": saved, "begun_s": now - begun if begun else 0.0, "stalled_s": stalled}
    return found | (judged(path) if path.exists() else {"rows": 0, "last": -1, "state": "no file"})


def judged(path: Path) -> dict[str, object]:
    """Read what is left and compare it with what was sent."""
    try:
        trace = read_trace(path)
    except FileError as error:
        return {"rows": 0, "last": -1, "state": f"refused: {error}"}
    counter = trace.columns.get("number", np.empty(0))
    wrong = int((trace.torque != torque_of(counter)).sum())
    gaps = int((np.diff(counter) != 1).sum())
    wrong += int((trace.columns.get("counter", counter) != counter).sum())  # the device's own count, beside its number
    last = int(counter[-1]) if len(counter) else -1
    unmarked = bool(len(counter)) and not trace.header.simulated
    return {
        "rows": len(counter),
        "last": last,
        "wrong": wrong,
        "gaps": gaps,
        "state": trace.state,
        "unmarked": unmarked,
    }


CASES = {"serial": serial_case, "radio": radio_case}


def program(link: str, cases: int, seed: int) -> None:
    """Run cases one after another, each printed as it ends."""
    rng = random.Random(seed)
    with tempfile.TemporaryDirectory() as folder:
        for number in range(cases):
            sys.stdout.write(json.dumps(CASES[link](rng, Path(folder), number)) + "\n")
            sys.stdout.flush()


def run(link: str, cases: int) -> Tally:
    """Run the kills in two programs at once and count."""
    tally = Tally(f"SIGKILL while recording, {link}", cases)
    shares = [cases // 2, cases - cases // 2]
    command = [sys.executable, "-m", "tests.faults.kills", link]
    programs = [
        subprocess.Popen(
            [*command, str(n), str(seed)], stdout=subprocess.PIPE, text=True, cwd=Path(__file__).parents[2]
        )
        for seed, n in enumerate(shares)
        if n
    ]
    seen = 0
    for running in programs:
        out, _ = running.communicate()
        for line in out.splitlines():
            seen += 1
            _count(tally, json.loads(line))
    tally.require(seen == cases, f"only {seen} of {cases} cases came to an end")
    tally.require(tally.counts["recovered"] >= max(1, cases // 6), "hardly a recording had begun when it was killed")
    return tally


def _count(tally: Tally, found: dict[str, object]) -> None:
    rows, saved, sent, last = (int(float(str(found[k]))) for k in ("rows", "saved", "sent", "last"))
    state = str(found["state"])
    tally.counts["killed before the file began" if state == "no file" else state] += 1
    tally.counts["samples saved"] += saved
    tally.require(state in ("recovered", "no file"), f"it does not open as recovered: {found}")
    tally.require(rows >= saved, f"acknowledged samples are lost: {found}")
    tally.require(not found.get("wrong") and not found.get("gaps"), f"wrong or missing rows: {found}")
    tally.require(not found.get("unmarked"), f"not marked as simulated: {found}")
    loss_s = (sent - 1 - last) / RATE_HZ if rows else float(str(found["begun_s"]))
    tally.most("lost s", loss_s)
    stalled_s = float(str(found["stalled_s"]))
    tally.most("machine stalled s", stalled_s)
    tally.require(loss_s <= LOSS_MOST_S + stalled_s, f"{loss_s:.3f} s of what had arrived are lost: {found}")


CAMPAIGNS = [
    Campaign("SIGKILL, serial", lambda cases: run("serial", cases), 6, 200),
    Campaign("SIGKILL, radio", lambda cases: run("radio", cases), 6, 200),
]

if __name__ == "__main__":
    program(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
