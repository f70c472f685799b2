"""A program that cannot keep up: what waits is bounded, falling behind is told, stopping takes a moment."""

from __future__ import annotations

import asyncio
import tempfile
import threading
import time
from pathlib import Path
from unittest.mock import patch

from logger.recordings import recording
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import Chunk, EndReason
from tests.faults.sources import lines, recorded, session_of
from tests.faults.tally import Campaign, Tally

STEP = 500
SLOW_S = 0.05  # that every batch takes to be written
MOST = 5_000  # samples that may wait
STOP_MOST_S = 2.0


class _Slow(RecordingWriter):
    """A recording on a disk that is far too slow."""

    def _batch(self, data: bytes, rows: int, crc: int = 0) -> bool:
        time.sleep(SLOW_S)
        return super()._batch(data, rows, crc)


def saving(tally: Tally, folder: Path) -> None:
    """Flood a slow disk and stop in the middle: no more than a bound waits, and all that was read is in the file."""
    session, kept = session_of([part for n in range(2000) for part in (lines(n * STEP, STEP), 0.0005)])
    most = 0

    def watch() -> None:
        nonlocal most
        until_s = time.monotonic() + 1.5
        while time.monotonic() < until_s:
            writer = session._audience._listening[-1]
            most = max(most, getattr(writer, "unsaved", 0))
            time.sleep(0.005)
        session.stop()

    with patch.object(recording, "MOST_UNSAVED", MOST), patch("tests.faults.sources.RecordingWriter", _Slow):
        threading.Thread(target=watch, daemon=True).start()
        _, ending = recorded(session, str(folder / "a.csv"))
    trace = read_trace(folder / "a.csv")
    read = len(kept.column("number"))
    tally.counts["samples kept"] += read
    tally.most("samples waiting", most)
    tally.require(ending.reason is EndReason.STOPPED and trace.state == "closed", f"{ending}")
    tally.require(len(trace.time_s) == read, f"{len(trace.time_s)} of {read} samples in the file")
    tally.require(most <= MOST + 2000 * STEP // 100, f"{most} samples wait")
    told = any("fallen behind" in text for text in kept.told("note"))
    tally.require(
        told or most <= MOST, f"{most} samples wait, and falling behind is not told"
    )  # a flood may starve, too
    tally.counts["fell behind"] += told


def stopping(tally: Tally) -> None:
    """Stop while a slow decoder has far more before it than it can do: the rest is counted, the session ends failed."""
    sent = [lines(n * STEP, STEP) for n in range(600)]
    session, kept = session_of([60.0])
    maker, given = session._blocks, session._link.read

    async def read() -> list[Chunk]:
        session._link.read = given  # type: ignore[method-assign]
        return [Chunk(time.monotonic(), data) for data in sent]

    session._link.read = read  # type: ignore[method-assign]
    take, begun = maker.take, threading.Event()

    def slow(chunks: list[object]) -> object:
        begun.set()
        time.sleep(0.02 * len(chunks))
        return take(chunks)  # type: ignore[arg-type]

    stopped_s = 0.0

    def stop() -> None:
        nonlocal stopped_s
        begun.wait()
        time.sleep(0.3)
        stopped_s = time.monotonic()
        session.stop()

    with patch.object(maker, "take", slow):
        threading.Thread(target=stop, daemon=True).start()
        used_s = time.process_time()
        ending = asyncio.run(session.run())
    took_s = time.monotonic() - stopped_s
    tally.most("stopping took s", took_s)
    told = [event for block in kept.blocks for event in block.events if "were not read" in event.text]
    missed = sum(event.count for event in told)
    read = sum(map(len, sent[: len(kept.column("number")) // STEP]))
    tally.counts["bytes told as not read"] += missed
    tally.require(
        missed > 0 and ending.reason is EndReason.FAILED, f"{missed} bytes are missed and the end is {ending}"
    )
    tally.require(read > 0 and read + missed == sum(map(len, sent)), f"{read} bytes read, {missed} told as not read")
    tally.require(took_s <= STOP_MOST_S + (time.process_time() - used_s), f"stopping took {took_s:.1f} s")


def run(cases: int) -> Tally:
    """Do both so often."""
    tally = Tally("floods that a program cannot keep up with", 2 * cases)
    for _ in range(cases):
        with tempfile.TemporaryDirectory() as folder:
            saving(tally, Path(folder))
        stopping(tally)
    tally.outcome = (
        f"none of {tally.counts['samples kept']:,} samples; at most {tally.figures['samples waiting']:,.0f} waited; "
        f"stopped within {tally.figures['stopping took s']:.1f} s, what was not read any more counted and told"
    )
    return tally


CAMPAIGN = Campaign("floods", run, 1, 20, long_s=120)
