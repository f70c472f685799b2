"""A day of recording in minutes: constant memory, no growth in cost, every sample there.

The real decoder, clock and writer are fed blocks of a second as fast as they take them; only the waiting between them
is excluded. The long form records 24 hours at 1,000 samples a second (86.4 million) and checks every one, and an hour
through the session at the pace of its own loop.

Cost is processor time of all threads, not time on the wall. It is taken in units of what making the same lines costs at
the same moment: a shared machine's processor slows down for both, and the numbers of both grow longer through the day.
"""

from __future__ import annotations

import asyncio
import hashlib
import os
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np

from logger.decoder.build import build_decoder
from logger.header import Header
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Ending, EndReason
from logger.stream.clock import build_clock
from tests.faults.fuzz import memory
from tests.faults.recordings import torque_of
from tests.faults.sources import DESCRIPTION, lines, session_of
from tests.faults.tally import Campaign, Tally

GROWTH_MOST = 30e6  # bytes between the first tenth and the end: buffers of the allocator, no samples
DEARER_MOST = 1.25  # last tenth over first; growth with length would make it many times as dear
BACKLOG_MOST = 20_000  # samples that may wait for the disk when they come a thousand times as fast as real


def soaked(seconds: int, rate_hz: int) -> Tally:
    """Record so many seconds at a rate, one second at a time."""
    tally = Tally(
        f"{seconds / 3600:.3g} h at {rate_hz} Hz through decoder, clock and writer", seconds, counted="s of data"
    )
    decoder, clock = build_decoder(DESCRIPTION), build_clock(DESCRIPTION)
    tenths: list[tuple[float, float, int]] = []  # processor time of recording, and of making the lines; bytes so far
    grown = []
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "soak.csv"
        columns = tuple(decoder.columns)
        writer = RecordingWriter(path, Header(transducer=DESCRIPTION.transducer), columns)
        begun_s, making_s = time.process_time(), 0.0
        for second in range(seconds):
            asked_s = time.thread_time()
            data = lines(second * rate_hz, rate_hz)
            making_s += time.thread_time() - asked_s
            decoded = decoder.feed(data)
            time_s = clock.date(np.full(len(decoded), float(second)), decoded.counter)
            writer.on_block(Block(time_s, decoded.columns, decoded.events))
            while writer.unsaved > BACKLOG_MOST:  # a real device never comes so fast
                time.sleep(0.01)
            if second % max(1, seconds // 50) == 0:
                grown.append(memory())
            if (second + 1) * 10 // seconds > second * 10 // seconds:
                while writer.unsaved and writer.failure is None:  # this tenth pays for its own writing
                    time.sleep(0.001)
                tenths.append((time.process_time() - begun_s - making_s, making_s, path.stat().st_size))
                begun_s, making_s = time.process_time(), 0.0
        writer.on_end(Ending(EndReason.STOPPED))
        _judge_cost(tally, tenths, grown, seconds)
        if seconds <= 3_600:
            trace = read_trace(path)
            tally.require(trace.state == "closed", f"the recording is {trace.state}: {trace.problems}")
        count = _checked(tally, path)
        tally.counts["samples"] = count
        tally.require(count == seconds * rate_hz, f"{count} samples of {seconds * rate_hz}")
    grew, costs, dearer = (tally.figures[f] for f in ("grown MB", "ms of CPU a second", "last over first tenth"))
    tally.outcome = (
        f"none of {count:,} samples; memory grew by {grew:.1f} MB; a second of data costs {costs:.2f} ms of a core, "
        f"in the last tenth {dearer:.2f} x as much as in the first"
    )
    return tally


def _judge_cost(tally: Tally, tenths: list[tuple[float, float, int]], grown: list[float], seconds: int) -> None:
    """Judge what recording took and kept."""
    (first, made_first, size_first), (_, _, size_before), (last, made_last, size) = tenths[0], tenths[-2], tenths[-1]
    growth = max(grown[len(grown) // 2 :]) - grown[len(grown) // 10]
    dearer = (last / made_last) / (first / made_first)
    tally.figures["grown MB"] = growth / 1e6
    tally.figures["ms of CPU a second"] = sum(cost for cost, _, _ in tenths) / seconds * 1e3
    tally.figures["last over first tenth"] = dearer
    tally.figures["the same, by the clock of the processor alone"] = last / first
    tally.figures["bytes, last over first tenth"] = (size - size_before) / size_first
    tally.require(growth < GROWTH_MOST, f"memory grew by {growth / 1e6:.0f} MB")
    tally.require(dearer < DEARER_MOST, f"a second costs {dearer:.2f} times as much at the end")


def _checked(tally: Tally, path: Path) -> int:
    """Check every row and the closing line without holding the recording in memory; give the number of rows."""
    import pandas as pd

    count = 0
    with pd.read_csv(path, comment="#", chunksize=1_000_000) as parts:
        for part in parts:
            numbers = part["number"].to_numpy()
            right = np.array_equal(numbers, np.arange(count, count + len(part)))
            tally.require(right, f"samples are missing, twice or moved in the million from {count}")
            tally.require(bool((part.iloc[:, 1].to_numpy() == torque_of(numbers)).all()), f"wrong samples from {count}")
            count += len(part)
    digest = hashlib.sha256()
    with path.open("rb") as file:
        file.seek(-200, os.SEEK_END)
        tail = file.read()
        left = path.stat().st_size - (len(tail) - tail.rindex(b"# closed "))
        stated = tail.rpartition(b"sha256=")[2].strip().decode()
        file.seek(0)
        while left:
            data = file.read(min(left, 1 << 24))
            digest.update(data)
            left -= len(data)
    tally.require(stated == digest.hexdigest(), "the closing line has another hash")
    return count


def in_a_session(seconds: int) -> Tally:
    """The same through a session, whose own loop sets the pace: its health counts every sample."""
    tally = Tally(f"{seconds} seconds at 1 kHz through a session", seconds, counted="s of data")

    def script() -> Iterator[bytes | float | Exception]:
        for second in range(seconds):
            yield lines(second * 1000, 1000)

    session, kept = session_of(script())
    before: list[float] = []
    kept.on_block = lambda block: before.append(memory())  # type: ignore[method-assign]
    ending = asyncio.run(session.run())
    tally.counts["samples"] = session.health.samples
    tally.figures["grown MB"] = (before[-1] - before[len(before) // 10]) / 1e6
    tally.require(ending.reason == "finished", f"{ending}")
    tally.require(session.health.samples in (seconds * 1000, seconds * 1000 - 1), f"{session.health.samples} samples")
    tally.require(tally.figures["grown MB"] * 1e6 < GROWTH_MOST, f"memory grew by {tally.figures['grown MB']:.0f} MB")
    tally.outcome = f"none of {session.health.samples:,} samples; memory grew by {tally.figures['grown MB']:.1f} MB"
    return tally


CAMPAIGNS = [
    Campaign("soak: seconds at 1 kHz", lambda seconds: soaked(seconds, 1000), 600, 86_400, long_s=400),
    Campaign("soak: seconds in a session", in_a_session, 60, 3_600, long_s=60),
]
