"""SIGKILL at random moments while recording: from a pty that another process writes to, or over the virtual radio.

What is measured
----------------
A sample has *arrived* when the link that reads for the recorder has its last byte: the chunk's own moment. After the
kill the file is read; of the samples that are not in it, the one that had arrived first tells by how much the recorder
was behind: ``LOSS_MOST_S`` at most. A sample that had been *acknowledged* (``RecordingWriter.saved``) must be there.
What was sent and still lay in the system's buffer is told beside it: a process that is not let run cannot read.

A machine that does not let the recorder run makes it late, and no program can help it. So the recorder looks at the
clock every 2 ms; what it was away beyond ``STALL_S`` counts as the machine's, less all processor time that the recorder
itself used meanwhile: a recorder that holds itself up has no excuse.

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
from typing import TYPE_CHECKING, Any

import numpy as np
import pandas as pd  # noqa: F401 - warm before the forks

from logger.errors import FileError
from logger.header import Header
from logger.links.serial_port import SerialLink
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.stream.session import Session, build_session
from tests.faults.air import gauge_on_the_air
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, lines
from tests.faults.tally import Campaign, Tally
from tests.radio.gauges import OWN_STREAM, play

if TYPE_CHECKING:
    from logger.decoder.description import Description
    from logger.links.ble import BleLink
    from logger.samples import Chunk

RATE_HZ = 1000
LOSS_MOST_S = 0.25
BEAT_S = 0.002
STALL_S = 0.02  # away for longer than this between two beats: held up
BEFORE = ("no file", "empty file")  # nothing was recorded yet
PROGRAMS = 3  # side by side; each sleeps most of the time


class Board:
    """Numbers that processes share: what was sent, arrived and acknowledged, and how the machine does.

    ``BEAT`` is when the recorder's process last ran at all and ``USED`` the processor time it had used by then;
    ``STALLED`` is for how long in the last moments the machine did not let it run.
    """

    def __init__(self) -> None:
        self._memory = mmap.mmap(-1, 8 * (FIELDS + 2 * MOST_CHUNKS))
        self._rest = b""

    def put(self, place: int, value: float) -> None:
        """Write one number."""
        struct.pack_into("d", self._memory, 8 * place, value)

    def get(self, place: int) -> float:
        """Read one number."""
        return float(struct.unpack_from("d", self._memory, 8 * place)[0])

    def arrived(self, chunk: Chunk) -> None:
        """Note up to which number whole lines have arrived, and when."""
        whole, _, self._rest = (self._rest + chunk.data).rpartition(b"\n")
        number = whole.rpartition(b",")[2].strip()
        count = int(self.get(CHUNKS))
        if number.isdigit() and count < MOST_CHUNKS:
            self.put(FIELDS + 2 * count, chunk.arrival_s)
            self.put(FIELDS + 2 * count + 1, float(number))
            self.put(CHUNKS, count + 1)

    def arrivals(self) -> list[tuple[float, int]]:
        """Give when samples arrived, and up to which number."""
        places = range(FIELDS, FIELDS + 2 * int(self.get(CHUNKS)), 2)
        return [(self.get(place), int(self.get(place + 1))) for place in places]


SENT, SAVED, BEAT, USED, STALLED, CHUNKS = range(6)
FIELDS = 6
MOST_CHUNKS = 4_096  # of the first seconds; later ones are not noted


class _Noted(deque["Chunk"]):
    """The chunks that a link has received and not yet handed over, each noted on the board."""

    def __init__(self, board: Board) -> None:
        super().__init__()
        self._board = board

    def append(self, chunk: Chunk) -> None:
        """Take a chunk."""
        super().append(chunk)
        self._board.arrived(chunk)


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


def recorder(port: str, path: Path, board: Board) -> None:
    """Record until killed, telling what is saved."""
    assert DESCRIPTION.serial is not None
    asyncio.run(_recording(SerialLink(port, DESCRIPTION.serial), DESCRIPTION, path, board).run())


def radio_recorder(path: Path, board: Board) -> None:
    """Record from a gauge on the virtual radio until killed, with it; every notification holds ten lines."""
    asyncio.run(_over_the_radio(path, board))


async def _over_the_radio(path: Path, board: Board) -> None:
    gauge, link, description = await gauge_on_the_air()
    running = asyncio.create_task(_recording(link, description, path, board).run())

    def packets() -> Iterator[bytes]:
        for number in count():
            yield lines(10 * number, 10)
            board.put(SENT, 10 * (number + 1))

    while not gauge.subscribers(OWN_STREAM):  # noqa: ASYNC110 - nobody tells
        await asyncio.sleep(0.01)
    await play(gauge, OWN_STREAM, packets(), 10 / RATE_HZ)
    await running


def _recording(link: SerialLink | BleLink, description: Description, path: Path, board: Board) -> Session:
    """Let a session record, and tell what arrives and what is saved."""
    link._chunks = _Noted(board)
    session = build_session(link, description)
    writer = RecordingWriter(path, Header(transducer=DESCRIPTION.transducer), session.columns)
    session.subscribe(writer)
    threading.Thread(target=_tell, args=(writer, board), daemon=True).start()
    return session


def _tell(writer: RecordingWriter, board: Board) -> None:
    """Tell what is saved, and for how long in the last moments the machine did not let this process run."""
    stalls: deque[tuple[float, float]] = deque()
    before_s, used_s = time.monotonic(), time.process_time()
    while True:
        board.put(SAVED, writer.saved)
        time.sleep(BEAT_S)
        now_s, now_used_s = time.monotonic(), time.process_time()
        stalls.append((now_s, _held_up(now_s - before_s, now_used_s - used_s)))
        while now_s - stalls[0][0] > 2 * LOSS_MOST_S:
            stalls.popleft()
        board.put(STALLED, sum(stall for _, stall in stalls))
        board.put(USED, now_used_s)
        board.put(BEAT, now_s)
        before_s, used_s = now_s, now_used_s


def _held_up(away_s: float, used_s: float) -> float:
    """Give for how long the machine kept a process from running that used so much processor time meanwhile."""
    return max(0.0, away_s - BEAT_S - used_s) if away_s > STALL_S else 0.0


def _used_s(process: int) -> float:
    """Give the processor time that a process has used, to the tick above."""
    fields = Path(f"/proc/{process}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12]) + 1) / os.sysconf("SC_CLK_TCK")


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
    return _killed(child, board) | judged(path, board)


def serial_case(rng: random.Random, folder: Path, number: int) -> dict[str, object]:
    """Record from a port, kill, and say what is left."""
    path = folder / f"{number}.csv"
    master, slave = pty.openpty()
    tty.setraw(slave)
    board = Board()
    sender = forked(device, master, board)
    child = forked(recorder, os.ttyname(slave), path, board)
    time.sleep(rng.uniform(0.02, 1.6))
    found = _killed(child, board)
    os.kill(sender, signal.SIGKILL)
    os.waitpid(sender, 0)
    os.close(master)
    os.close(slave)
    return found | judged(path, board)


def _killed(child: int, board: Board) -> dict[str, object]:
    """Kill, and say when, what had been sent by then and for how long the machine had held the recorder up."""
    sent, used_s, begun_s = board.get(SENT), _used_s(child), time.monotonic()
    os.kill(child, signal.SIGKILL)
    now_s = time.monotonic()
    os.waitpid(child, 0)
    stalled_s = board.get(STALLED) + now_s - begun_s
    if board.get(BEAT):
        stalled_s += _held_up(now_s - board.get(BEAT), max(0.0, used_s - board.get(USED)))
    return {"killed_s": now_s, "sent": int(sent), "saved": int(board.get(SAVED)), "stalled_s": stalled_s}


def judged(path: Path, board: Board) -> dict[str, object]:
    """Read what is left, compare it with what was sent, and find the first that arrived and is not there."""
    arrivals = board.arrivals()
    found: dict[str, object] = {"rows": 0, "state": "no file", "arrived": arrivals[-1][1] if arrivals else -1}
    last = -1
    if path.exists() and not path.stat().st_size:
        found["state"] = "empty file"  # between its making and its first line
    elif path.exists():
        try:
            trace = read_trace(path)
        except FileError as error:
            return found | {"state": f"refused: {error}"}
        number = trace.columns.get("number", np.empty(0))
        last = int(number[-1]) if len(number) else -1
        found |= {
            "rows": len(number),
            "wrong": int((trace.torque != torque_of(number)).sum()),
            "counter": int((trace.columns.get("counter", number) != number).sum()),  # the device's own, beside it
            "lost": int((np.diff(number) - 1).sum()),  # the port's buffer was full: nobody let the recorder run
            "told": sum(event.count for event in trace.events if event.kind == "gap"),
            "back": int((np.diff(number) < 1).sum()),
            "state": trace.state,
            "unmarked": bool(len(number)) and not trace.header.simulated,
        }
    return found | {"last": last, "first_lost_s": next((at_s for at_s, number in arrivals if number > last), None)}


CASES = {"serial": serial_case, "radio": radio_case}


def program(link: str, cases: int, seed: int) -> None:
    """Run cases one after another, each printed as it ends."""
    rng = random.Random(seed)
    with tempfile.TemporaryDirectory() as folder:
        for number in range(cases):
            sys.stdout.write(json.dumps(CASES[link](rng, Path(folder), number)) + "\n")
            sys.stdout.flush()


def run(link: str, cases: int) -> Tally:
    """Run the kills in a few programs at once and count."""
    tally = Tally(f"SIGKILL while recording, {link}", cases)
    shares = [len(range(first, cases, PROGRAMS)) for first in range(PROGRAMS)]
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

    tally.outcome = (
        f"none of {tally.counts['samples acknowledged as saved']:,} samples acknowledged as saved; of what had arrived "
        f"at most {tally.figures.get('behind s', 0):.3f} s; every file that was begun opens"
    )
    return tally


def _count(tally: Tally, found: dict[str, Any]) -> None:
    rows, saved, state = found["rows"], found["saved"], found["state"]
    tally.counts[f"killed before the file began ({state})" if state in BEFORE else state] += 1
    tally.counts["samples acknowledged as saved"] += saved
    tally.counts["held up by the machine"] += found["stalled_s"] > STALL_S
    tally.require(state in ("recovered", *BEFORE), f"it does not open as recovered: {found}")
    tally.require(rows >= saved, f"acknowledged samples are lost: {found}")
    wrong = [what for what in ("wrong", "back", "counter") if found.get(what)]
    tally.require(not wrong, f"wrong rows ({wrong}): {found}")
    tally.require(found.get("lost") == found.get("told"), f"missing rows that were not told: {found}")
    tally.counts["sent while the port was full, counted"] += found.get("lost", 0)
    tally.require(not found.get("unmarked"), f"not marked as simulated: {found}")
    first_lost_s = found.get("first_lost_s")
    behind_s = max(0.0, found["killed_s"] - first_lost_s) if first_lost_s is not None else 0.0
    tally.most("behind s", behind_s)
    tally.most("machine held it up s", found["stalled_s"])
    tally.most("sent, never read s", max(0, found["sent"] - 1 - found["arrived"]) / RATE_HZ if rows else 0.0)
    allowed_s = LOSS_MOST_S + found["stalled_s"]
    tally.require(
        behind_s <= allowed_s, f"{behind_s:.3f} s behind what had arrived, {allowed_s:.3f} s allowed: {found}"
    )


CAMPAIGNS = [
    Campaign("SIGKILL, serial", lambda cases: run("serial", cases), 6, 200),
    Campaign("SIGKILL, radio", lambda cases: run("radio", cases), 6, 200),
]

if __name__ == "__main__":
    program(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
