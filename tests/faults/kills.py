"""SIGKILL at random moments while recording from a pty that another process writes to.

Run as a program it is a small parent that forks, for each case, a device and a recorder, kills the recorder, and prints
one JSON line with what the device had sent, what had been acknowledged as saved, and what the file holds::

    python -m tests.faults.kills CASES SEED

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
import tty
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd  # noqa: F401 - warm before the forks

from logger.errors import FileError
from logger.files import read_trace
from logger.header import Header
from logger.links.serial_port import SerialLink
from logger.recording import RecordingWriter
from logger.session import build_session
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, lines
from tests.faults.tally import Campaign, Tally

if TYPE_CHECKING:
    from logger.samples import Block, Ending

RATE_HZ = 1000
LOSS_MOST_S = 0.25


class Board:
    """Three numbers that processes share: samples sent, samples acknowledged, when the first block came."""

    def __init__(self) -> None:
        self._memory = mmap.mmap(-1, 24)

    def put(self, place: int, value: float) -> None:
        """Write one number."""
        struct.pack_into("d", self._memory, 8 * place, value)

    def get(self, place: int) -> float:
        """Read one number."""
        return float(struct.unpack_from("d", self._memory, 8 * place)[0])


SENT, SAVED, BEGUN = range(3)


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
    writer = RecordingWriter(path, Header(transducer=DESCRIPTION.transducer), session.columns)
    session.subscribe(_Begun(board))
    session.subscribe(writer)

    def tell() -> None:
        while True:
            board.put(SAVED, writer.saved)
            time.sleep(0.002)

    threading.Thread(target=tell, daemon=True).start()
    asyncio.run(session.run())


def forked(work: object, *args: object) -> int:
    """Run a function in a fork that never comes back."""
    child = os.fork()
    if child:
        return child
    try:
        work(*args)  # type: ignore[operator]
    finally:
        os._exit(1)


def case(rng: random.Random, folder: Path, number: int) -> dict[str, object]:
    """Record, kill, and say what is left."""
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
    saved, begun = int(board.get(SAVED)), board.get(BEGUN)
    os.kill(sender, signal.SIGKILL)
    os.waitpid(sender, 0)
    os.close(master)
    os.close(slave)
    found = {"sent": sent, "saved": saved, "begun_s": now - begun if begun else 0.0}
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


def program(cases: int, seed: int) -> None:
    """Run cases one after another, each printed as it ends."""
    rng = random.Random(seed)
    with tempfile.TemporaryDirectory() as folder:
        for number in range(cases):
            sys.stdout.write(json.dumps(case(rng, Path(folder), number)) + "\n")
            sys.stdout.flush()


def run(cases: int) -> Tally:
    """Run the kills in three programs at once and count."""
    tally = Tally("SIGKILL while recording from a port", cases)
    shares = [cases // 3 + (i < cases % 3) for i in range(3)]
    command = [sys.executable, "-m", "tests.faults.kills"]
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
    tally.require(loss_s <= LOSS_MOST_S, f"{loss_s:.3f} s of what had arrived are lost: {found}")


CAMPAIGN = Campaign("SIGKILL, serial", run, 6, 200)

if __name__ == "__main__":
    program(int(sys.argv[1]), int(sys.argv[2]))
