"""A program that cannot keep up: what waits is bounded, falling behind is told, stopping takes a moment.

A disk is slow by counts, a decoder in simulated time: what is shown does not rest on how fast this machine is.
"""

from __future__ import annotations

import random
import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING
from unittest.mock import patch

from logger.links import ble
from logger.recordings import recording
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Chunk, EndReason, EventKind
from tests.faults.sources import lines, recorded, session_of
from tests.faults.tally import Campaign, Tally
from tests.simulated import clocks as simulated_clocks
from tests.simulated.clocks import HANDED_AT_ONCE, Clocks, simulated
from tests.simulated.gauge import Gauge, Kind
from tests.simulated.schedules import Kept, session_on

if TYPE_CHECKING:
    from logger.stream.session import Session

STEP = 500
MOST = 5_000  # samples that may wait to be saved
BATCHES = 3  # that are written before the user stops
STOP_MOST_S = 2.0
QUEUED = 100_000  # bytes that may wait in a link


def saving(tally: Tally, folder: Path) -> None:
    """Flood a disk that takes a batch only when too much waits, and stop: a bound waits, all that was read is saved."""
    session, kept = session_of([part for n in range(2000) for part in (lines(n * STEP, STEP), 0.0005)])
    waited = []

    class Slow(RecordingWriter):
        def _batch(self, data: bytes, rows: int, crc: int = 0) -> bool:
            while rows and len(waited) < BATCHES and not self.full and not self._stop.is_set():
                time.sleep(0.001)
            if rows and self.full:
                waited.append(self.unsaved)
                if len(waited) == BATCHES:
                    session.stop()
            return super()._batch(data, rows, crc)

    with patch.object(recording, "MOST_UNSAVED", MOST), patch("tests.faults.sources.RecordingWriter", Slow):
        _, ending = recorded(session, str(folder / "a.csv"))
    trace = read_trace(folder / "a.csv")
    read = len(kept.column("number"))
    tally.counts["samples kept"] += read
    tally.most("samples waiting", max(waited, default=0))
    tally.require(ending.reason is EndReason.STOPPED and trace.state == "closed", f"{ending}")
    tally.require(len(trace.time_s) == read, f"{len(trace.time_s)} of {read} samples in the file")
    tally.require(len(waited) == BATCHES, "the disk was never too slow")
    tally.require(max(waited, default=0) <= MOST + STEP, f"{waited} samples wait")
    tally.require(any("fallen behind" in text for text in kept.told("note")), "falling behind is not told")


def starved(rng: random.Random) -> tuple[Gauge, Session, Kept]:
    """Give a gauge that sends more than its program can decode, in simulated time."""
    clocks = Clocks()
    kind = Kind(rng.choice((100.0, 200.0, 500.0)), 20, rng.choice(("packets", "samples")), 32, True, 0.0)
    gauge = Gauge(clocks, kind, rng)
    session, kept = session_on(gauge), Kept(clocks)
    session.subscribe(kept)
    take = session._blocks.take
    slow_by = rng.uniform(1.2, 2.5)  # times what comes

    def slow(chunks: list[Chunk]) -> Block:
        clocks.hold(slow_by * len(chunks) / kind.packet_hz)
        return take(chunks)

    patch.object(session._blocks, "take", slow).start()
    return gauge, session, kept


def stopping(tally: Tally, seed: int) -> None:
    """Stop a program that is far behind: it ends in two seconds of its time, and counts what it did not read.

    What waits lies in the program itself, where it is counted, or still in the system's socket.
    """
    rng = random.Random(f"stopping {seed}")
    in_program = rng.random() < 0.5
    gauge, session, kept = starved(rng)
    clocks, truth = gauge.clocks, gauge.truth

    def stop() -> None:
        truth.stopped_s = clocks.monotonic()
        session.stop()

    def ask() -> None:
        truth.stop_asked = True
        clocks.inbox.appendleft(stop)  # a signal does not queue up behind what a socket holds

    clocks.at(rng.uniform(15.0, 30.0), ask)
    at_once = 1_000_000 if in_program else HANDED_AT_ONCE
    with simulated(clocks) as runner, patch.object(simulated_clocks, "HANDED_AT_ONCE", at_once):
        ending = runner.run(session.run())
    assert truth.stopped_s is not None
    took_s = clocks.monotonic() - truth.stopped_s
    tally.most("stopping took s", took_s)
    tally.require(took_s <= STOP_MOST_S, f"seed {seed}: stopping took {took_s:.1f} s")
    missed = sum(event.count for _, _, event in kept.events if "were not read" in event.text)
    tally.counts["bytes told as not read"] += missed
    tally.require((missed > 0) == (ending.reason is EndReason.FAILED), f"seed {seed}: {missed} missed, {ending}")
    samples = len(kept.numbers) + missed // (4 + 4 * gauge.kind.samples) * gauge.kind.samples
    arrived = gauge.kind.samples * len(truth.arrived_s)
    least = len(truth.came) if in_program else 1
    tally.require(least <= samples <= arrived, f"seed {seed}: {samples} read or told of {least} to {arrived}")
    tally.require(missed > 0 or not in_program, f"seed {seed}: it had not fallen behind")
    whole = not kept.numbers or kept.numbers == list(range(kept.numbers[0], kept.numbers[-1] + 1))
    tally.require(whole, f"seed {seed}: a sample between others is missing")


def queueing(tally: Tally, seed: int) -> None:
    """Go on: the radio's packets wait up to a bound, then the connection is given up, told, and made again."""
    gauge, session, kept = starved(random.Random(f"queueing {seed}"))
    clocks, most = gauge.clocks, 0

    def watch() -> None:
        nonlocal most
        most = max(most, session._link._queued)  # type: ignore[attr-defined]
        over = session.health.reconnects > 0 or clocks.true_s > 600.0
        clocks.at(
            clocks.true_s + (3.0 if over else 0.1), (lambda: clocks.inbox.append(session.stop)) if over else watch
        )

    watch()
    all_at_once = patch.object(simulated_clocks, "HANDED_AT_ONCE", 1_000_000)
    with simulated(clocks) as runner, patch.object(ble, "MOST_QUEUED", QUEUED), all_at_once:
        runner.run(session.run())
    tally.most("bytes waiting", most)
    tally.require(most <= QUEUED + 100, f"seed {seed}: {most} bytes wait")
    told = [event for _, _, event in kept.events if event.kind is EventKind.DISCONNECT and "behind" in event.text]
    tally.counts["fell behind"] += len(told)
    tally.require(bool(told), f"seed {seed}: falling behind is not told")
    lost = sum(event.count for _, _, event in kept.events if event.kind is EventKind.GAP)
    numbers = kept.numbers
    between = numbers[-1] - numbers[0] + 1 - len(numbers)
    tally.require(lost == between, f"seed {seed}: {between} samples are missing, {lost} are told as lost")


def run(cases: int, seed: int = 0) -> Tally:
    """Do each so often."""
    tally = Tally("floods that a program cannot keep up with", 3 * cases)
    for number in range(cases):
        with tempfile.TemporaryDirectory() as folder:
            saving(tally, Path(folder))
        stopping(tally, seed * 1_000_000 + number)
        queueing(tally, seed * 1_000_000 + number)
    figures = tally.figures
    tally.outcome = (
        f"none of {tally.counts['samples kept']:,} samples that were read; at most {figures['samples waiting']:,.0f} "
        f"samples and {figures['bytes waiting']:,.0f} bytes waited (bounds {MOST:,} and {QUEUED:,}); stopped within "
        f"{figures['stopping took s']:.1f} s of simulated time; what was not read any more is counted and told"
    )
    return tally


CAMPAIGN = Campaign("floods", run, 1, 20, seeded=True, long_s=120)
