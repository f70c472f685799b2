"""What happens to a running stream: the clock is stepped, the program stopped, the device unplugged, the port taken."""

from __future__ import annotations

import asyncio
import os
import pty
import random
import signal
import subprocess
import sys
import tempfile
import threading
import time
import tty
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING
from unittest import mock

import numpy as np

from logger import recording
from logger.errors import LinkError
from logger.files import Trace, read_trace
from logger.header import Header
from logger.links.serial_port import SerialLink
from logger.recording import RecordingWriter
from logger.session import build_session
from logger.virtual.port import VirtualPort
from tests.faults.kills import Board, device, forked, recorder
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, Kept, lines, recorded, session_of
from tests.faults.tally import Campaign, Tally

if TYPE_CHECKING:
    from logger.samples import Ending

WAIT_S = 60.0  # for what comes within a second or two on an idle machine


def _rows_right(tally: Tally, trace: Trace, told: str) -> None:
    """Every row is what was sent, and every number missing between them was counted."""
    numbers = trace.columns["number"]
    tally.require(bool((trace.torque == torque_of(numbers)).all()), f"{told}: wrong rows")
    steps = np.diff(numbers)
    tally.require(bool((steps > 0).all()), f"{told}: rows twice or out of order")
    missing = int((steps - 1).sum())
    counted = sum(event.count for event in trace.events if event.kind == "gap")
    tally.require(counted == missing, f"{told}: {missing} samples are missing, {counted} were told")
    tally.require(bool((np.diff(trace.time_s) > 0).all()), f"{told}: times do not increase")


# --- the computer's clock -------------------------------------------------------------------------------------------


def clock_steps(cases: int) -> Tally:
    """The wall clock is set forward and back while recording: times of samples do not follow, and it is told."""
    tally = Tally("clock set back and forward", cases)
    real = time.time
    for number in range(cases):
        step_s = (3600.0, -3600.0, 30.0, -86400.0, 1e9, -0.8)[number % 6]
        offset = 0.0
        script: list[bytes | float | Exception] = []
        for n in range(20):
            script += [lines(n * 20, 20), 0.02]

        def stepped() -> float:
            return real() + offset  # noqa: B023 - it is stepped below

        def step() -> None:
            nonlocal offset
            time.sleep(0.3)
            offset = step_s  # noqa: B023

        with tempfile.TemporaryDirectory() as folder, mock.patch("logger.health.time.time", stepped):
            session, kept = session_of(script)
            threading.Thread(target=step).start()
            recorded(session, f"{folder}/a.csv")
            trace = read_trace(f"{folder}/a.csv")
        told = [text for text in kept.told("clock") if "clock was set" in text]
        tally.require(len(told) == 1, f"a step of {step_s:g} s: told {told}")
        _rows_right(tally, trace, f"a step of {step_s:g} s")
        tally.require(trace.time_s[-1] < 5, f"a step of {step_s:g} s: the times follow it")
        tally.require(trace.state == "closed" and any(e.kind == "clock" for e in trace.events), "not in the recording")
        tally.counts["rows"] += len(trace.time_s)
    tally.outcome = f"none of {tally.counts['rows']:,} samples; no time moved, each step told once"
    return tally


def summer_time(cases: int) -> Tally:
    """A recording that begins before summer time ends and goes on after: one start, with its zone; times run on."""
    tally = Tally("summer time begins or ends while recording", cases)
    old = os.environ.get("TZ")
    moments = ("2026-03-29T00:59:59", "2026-10-25T00:59:59")
    try:
        os.environ["TZ"] = "CET-1CEST,M3.5.0,M10.5.0/3"  # central European rules, in POSIX words
        time.tzset()
        for number in range(cases):
            moment = datetime.fromisoformat(moments[number % 2]).replace(tzinfo=UTC)
            tally.counts[moment.astimezone().strftime("begins at %H:%M:%S%z")] += 1
            clock = mock.Mock(wraps=datetime)
            clock.now.return_value = moment
            script = [part for n in range(6) for part in (lines(n * 20, 20), 0.05)]
            with tempfile.TemporaryDirectory() as folder, mock.patch.object(recording, "datetime", clock):
                session, _ = session_of(script)
                recorded(session, f"{folder}/a.csv")
                trace = read_trace(f"{folder}/a.csv")
            started = trace.header.started
            tally.require(started is not None and started.tzinfo is not None, "the start has no time zone")
            near = started is not None and abs(started - moment) < timedelta(seconds=3)
            tally.require(near, f"{moment} was recorded as {started}")
            _rows_right(tally, trace, "summer time")
            tally.counts["rows"] += len(trace.time_s)
    finally:
        os.environ.pop("TZ", None)
        if old is not None:
            os.environ["TZ"] = old
        time.tzset()
    tally.outcome = f"none of {tally.counts['rows']:,} samples; every start has its zone"
    return tally


# --- the program is stopped -----------------------------------------------------------------------------------------


def suspended(seconds: int) -> Tally:
    """SIGSTOP for so many seconds while the device goes on: what the port cannot hold is counted, nothing is wrong."""
    tally = Tally(f"SIGSTOP for {seconds} s", 1)
    command = [sys.executable, "-m", "tests.faults.streams", str(seconds)]
    with tempfile.TemporaryDirectory() as folder:
        done = subprocess.run(
            [*command, f"{folder}/a.csv"], capture_output=True, text=True, cwd=Path(__file__).parents[2], check=False
        )
        if done.returncode:
            tally.fail(done.stderr[-500:])
            return tally
        saved = int(done.stdout)
        trace = read_trace(f"{folder}/a.csv")
    tally.require(len(trace.time_s) >= saved, f"{saved} samples were acknowledged, {len(trace.time_s)} are there")
    _rows_right(tally, trace, "after the stop")
    told = [event.text for event in trace.events if event.kind == "clock"]
    stopped = [text for text in told if float(text.split()[-2]) > seconds - 1]  # a starved machine stops it for less
    tally.require(len(stopped) == 1, f"the stop is told as {told}")
    numbers = trace.columns["number"]
    lost = int(np.diff(numbers).max()) - 1
    tally.counts["samples lost and counted"] = lost
    tally.require(lost > 1000 * (seconds - 1), f"only {lost} samples are missing after {seconds} s")
    apart = float(trace.time_s[np.diff(numbers).argmax() + 1] - trace.time_s[np.diff(numbers).argmax()])
    tally.figures["time over the gap s"] = apart
    tally.require(abs(apart - (lost + 1) / 1000) < 0.05, f"{lost} samples lost, but the times are {apart:.2f} s apart")
    tally.outcome = f"none of {saved:,} acknowledged samples; {lost:,} that the port could not hold, counted"
    return tally


def suspend_program(seconds: int, path: Path) -> None:
    """Record from a forked device, stop the recorder for a while, let it go on, kill it; print what was saved."""
    master, slave = pty.openpty()
    tty.setraw(slave)
    board = Board()
    sender = forked(device, master, board)
    child = forked(recorder, os.ttyname(slave), path, board)
    time.sleep(1.2)
    os.kill(child, signal.SIGSTOP)
    time.sleep(seconds)
    os.kill(child, signal.SIGCONT)
    time.sleep(1.5)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    os.kill(sender, signal.SIGKILL)
    os.waitpid(sender, 0)
    sys.stdout.write(str(int(board.get(1))))


# --- the port -------------------------------------------------------------------------------------------------------


def _open_files() -> int:
    return len(os.listdir("/proc/self/fd")) if Path("/proc/self/fd").exists() else 0


class Plugged:
    """A session on a virtual port that is plugged and unplugged: what it recorded, and what it left open."""

    def __init__(self, folder: str) -> None:
        link = Path(folder) / "gauge"
        pieces = ((n / 50, lines(n * 20, 20)) for n in range(50 * 3_600))
        self.port = VirtualPort(pieces, link=link, held=True)
        assert DESCRIPTION.serial is not None
        self.session = build_session(SerialLink(str(link), DESCRIPTION.serial), DESCRIPTION)
        self.kept = Kept()
        self.session.subscribe(self.kept)
        self.ending: Ending | None = None
        self.left = (0, 0)  # files and threads

    def run(self, doing: Callable[[], Awaitable[None]]) -> None:
        """Plug in, record while something is done to the port, and stop."""
        with self.port:
            before = (_open_files(), threading.active_count())
            self.ending = asyncio.run(self._run(doing))
            self.left = (_open_files() - before[0], threading.active_count() - before[1])

    async def _run(self, doing: Callable[[], Awaitable[None]]) -> Ending:
        self._running = asyncio.ensure_future(self.session.run())
        await asyncio.sleep(0.3)
        self.port.go()
        await doing()
        self.session.stop()
        return await self._running

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

    def judge(self, tally: Tally) -> None:
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
        tally.require(self.left[0] <= 2 and self.left[1] <= 1, f"{self.left} files and threads are left open")
        tally.outcome = f"no sample that came; {gaps:,} sent while away, each counted; no file or thread left open"


def reconnects(cases: int) -> Tally:
    """Unplugged and plugged in so often, each time until samples come again."""
    tally = Tally("unplugged and plugged in again", cases)
    with tempfile.TemporaryDirectory() as folder:
        plugged = Plugged(folder)

        async def doing() -> None:
            for number in range(cases):
                await plugged.samples()
                plugged.port.unplug()
                await asyncio.sleep(0.05)
                plugged.port.plug()
                await plugged.until(lambda: plugged.session.health.reconnects > number, "reconnect")  # noqa: B023

        plugged.run(doing)
    plugged.judge(tally)
    told = len(plugged.kept.told("reconnect"))
    tally.require(told == cases, f"{told} reconnects told")
    return tally


def loose_plug(cases: int, seed: int) -> Tally:
    """A plug that is loose: away and back at any moment, also while the port is being opened or set up."""
    tally = Tally("loose plug", cases)
    rng = random.Random(f"loose plug:{seed}")
    with tempfile.TemporaryDirectory() as folder:
        plugged = Plugged(folder)

        async def doing() -> None:
            await plugged.samples()
            for _ in range(cases):
                plugged.port.unplug()
                await asyncio.sleep(rng.uniform(0, 0.05))
                plugged.port.plug()
                await asyncio.sleep(rng.choice((rng.uniform(0, 0.02), rng.uniform(0, 0.4))))
            await plugged.samples()
            await plugged.samples()

        plugged.run(doing)
    plugged.judge(tally)
    tally.counts["reconnects"] = plugged.session.health.reconnects
    return tally


def two_programs(cases: int) -> Tally:
    """A second program opens the port in use: it is told so, and the first loses nothing."""
    tally = Tally("two programs on one port", cases)
    pieces = ((n / 50, lines(n * 20, 20)) for n in range(50 * 60))
    with VirtualPort(pieces, held=True) as port:
        assert DESCRIPTION.serial is not None
        session = build_session(SerialLink(port.path, DESCRIPTION.serial), DESCRIPTION)
        kept = Kept()
        session.subscribe(kept)

        async def both() -> None:
            running = asyncio.create_task(session.run())
            await asyncio.sleep(0.3)
            port.go()
            await asyncio.sleep(0.2)
            for _ in range(cases):
                second = SerialLink(port.path, DESCRIPTION.serial)  # type: ignore[arg-type]
                try:
                    await second.open()
                except LinkError as error:
                    tally.counts["refused"] += 1
                    tally.require("in use" in str(error), f"the reason is not named: {error}")
                else:
                    tally.fail("the port was opened twice")
                await second.close()
            await asyncio.sleep(0.2)
            session.stop()
            await running

        asyncio.run(both())
    numbers = kept.column("number")
    tally.require(len(numbers) > 0 and bool((np.diff(numbers) == 1).all()), "the first program lost samples")
    tally.outcome = f"none of the first program's {len(numbers):,} samples; the second is refused in words"
    return tally


def stream_ends_in_words(cases: int) -> Tally:
    """Whatever a link or a subscriber raises ends the stream with one value; all others get all samples."""
    tally = Tally("errors of links and subscribers", cases)

    class Fails:
        def on_block(self, block: object) -> None:
            raise ZeroDivisionError("a bug in a window")

        def on_end(self, ending: object) -> None:
            raise ZeroDivisionError("a bug in a window")

    for number in range(cases):
        error = (ValueError("x"), OSError(5, "Input/output error"), LinkError("gone"), RuntimeError("?"))[number % 4]
        session, kept = session_of([lines(0, 50), 0.01, lines(50, 50), error])
        if number % 2:
            session.subscribe(Fails())  # type: ignore[arg-type]
        with tempfile.TemporaryDirectory() as folder:
            writer = RecordingWriter(f"{folder}/a.csv", Header(), session.columns)
            session.subscribe(writer)
            ending = asyncio.run(session.run())
            trace = read_trace(f"{folder}/a.csv")
        tally.require(ending.reason == "failed" and ending.error is not None, f"{error!r}: ended as {ending}")
        tally.require(kept.ending is not None, f"{error!r}: a subscriber was not told")
        seen = kept.column("number")
        expected = len(seen) if number % 2 else 100
        tally.require(
            len(seen) == expected and trace.state == "closed", f"{error!r}: {len(seen)} samples, {trace.state}"
        )
        tally.require(
            bool(np.array_equal(trace.columns["number"], seen)), f"{error!r}: the recording has other samples"
        )
        tally.counts["samples"] += len(seen)
    tally.outcome = f"none of {tally.counts['samples']:,} samples that were read; every recording is closed"
    return tally


CAMPAIGNS = [
    Campaign("clock set back and forward", clock_steps, 3, 60, long_s=150),
    Campaign("summer time", summer_time, 2, 20, long_s=20),
    Campaign("suspend (cases are seconds)", suspended, 3, 60, long_s=70),
    Campaign("connects and disconnects", reconnects, 4, 100, long_s=40),
    Campaign("loose plug", loose_plug, 20, 200, seeded=True, long_s=35),
    Campaign("two programs on one port", two_programs, 5, 100),
    Campaign("errors of links and subscribers", stream_ends_in_words, 8, 100),
]

if __name__ == "__main__":
    suspend_program(int(sys.argv[1]), Path(sys.argv[2]))
