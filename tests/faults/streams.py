"""What happens to a running stream: the clock is stepped, the program stopped, the device unplugged, the port taken."""

from __future__ import annotations

import asyncio
import os
import pty
import signal
import subprocess
import sys
import tempfile
import threading
import time
import tty
from datetime import UTC, datetime, timedelta
from pathlib import Path
from unittest import mock

import numpy as np

from logger.errors import LinkError
from logger.header import Header
from logger.links.serial_port import SerialLink
from logger.recordings import recording
from logger.recordings.files import Trace, read_trace
from logger.recordings.recording import RecordingWriter
from logger.stream.session import build_session
from logger.virtual.port import VirtualPort
from tests.faults.kills import Board, device, forked, recorder
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, Kept, lines, recorded, session_of
from tests.faults.tally import Campaign, Tally


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

        with tempfile.TemporaryDirectory() as folder, mock.patch("logger.stream.health.time.time", stepped):
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
    until = time.monotonic() + 60  # a busy machine may take long to begin
    while not board.get(1) and time.monotonic() < until:
        time.sleep(0.1)
    time.sleep(1.0)
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
    Campaign("two programs on one port", two_programs, 5, 100),
    Campaign("errors of links and subscribers", stream_ends_in_words, 8, 100),
]

if __name__ == "__main__":
    suspend_program(int(sys.argv[1]), Path(sys.argv[2]))
