"""Recordings taken away, cut or replaced at any moment, threads that fail, power cuts: what is lost, and is it said?"""

from __future__ import annotations

import contextlib
import os
import random
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from unittest.mock import patch

from logger.edges import small_file
from logger.errors import FileError
from logger.recordings import appended, recording
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import Ending, EndReason
from tests.faults import recordings
from tests.faults.tally import Campaign, Tally

STOPPED = Ending(EndReason.STOPPED)
STEP = 50


def _other(path: Path) -> None:
    (path.parent / "other").write_text("time_s,torque_Nm\n0,1\n", encoding="utf-8")
    os.replace(path.parent / "other", path)


def _written_into(path: Path) -> None:
    with path.open("ab") as file:
        file.write(b"0,1\n")


HARMS: dict[str, Callable[[Path], object]] = {
    "removed": Path.unlink,
    "moved": lambda path: path.rename(path.parent / "elsewhere.csv"),
    "replaced": _other,
    "emptied": lambda path: os.truncate(path, 0),
    "cut short": lambda path: os.truncate(path, path.stat().st_size // 3),
    "written into": _written_into,
}
BUGS = {"a writing thread that fails": "_flush", "a syncing thread that fails": "_keep_syncing"}


def one(kind: str, rng: random.Random, folder: Path) -> tuple[int, int, str]:
    """Record, do harm at a random moment, end; give what was received, what is lost, and what is wrong."""
    path, steps = folder / "a.csv", rng.randint(2, 12)
    moment, sync_s = rng.randint(1, steps), rng.choice([0.02, 60.0])
    with patch.object(recording, "SYNC_S", sync_s), patch.object(recording, "FLUSH_S", 0.005):
        bug = patch.object(RecordingWriter, BUGS[kind], _broken) if kind in BUGS else contextlib.nullcontext()
        with bug:
            writer = RecordingWriter(path, recordings.HEADER, recordings.COLUMNS)
            told = _fed(writer, kind, steps, moment)
    received = steps * STEP
    if not told:
        return received, 0, f"{kind}: nobody is told"
    try:
        rescued = read_trace(writer.rescue(folder))
    except FileError as error:
        return received, 0, f"{kind}: {error}"
    missing = received - len(rescued.time_s)
    wrong = recordings.wrong_rows(rescued)
    sound = rescued.state == "closed" and not wrong and missing == writer.lost
    in_words = not writer.lost or any(str(writer.lost) in event.text for event in rescued.events)
    allowed = writer.lost == 0 or kind in ("emptied", "cut short")
    fits = sound and in_words and allowed
    return received, writer.lost, "" if fits else f"{kind}: {missing} missing, {writer.lost} told, {rescued.state}"


def _fed(writer: RecordingWriter, kind: str, steps: int, moment: int) -> bool:
    """Feed it, with the harm before one step or after the last; tell whether a failure is told at the end at last."""
    for step in range(steps + 1):
        if step == moment and kind in HARMS:
            while writer.unsaved and writer.failure is None:
                time.sleep(0.001)
            if writer.path.exists():
                HARMS[kind](writer.path)
        if step < steps:
            with contextlib.suppress(FileError):
                writer.on_block(recordings.block_of(step * STEP, STEP))
            time.sleep(0.004)
    try:
        writer.on_end(STOPPED)
    except FileError as error:
        return "a.csv" in str(error) and "samples had been saved" in str(error)
    return False


def _broken(_writer: RecordingWriter) -> None:
    raise RuntimeError("a bug")


def taken(cases: int, seed: int) -> Tally:
    """Take recordings away in every way, and count."""
    tally = Tally("recordings taken away, writers that fail", cases)
    kinds = [*HARMS, *BUGS]
    for number in range(cases):
        kind = kinds[number % len(kinds)]
        with tempfile.TemporaryDirectory() as folder:
            received, lost, wrong = one(kind, random.Random(f"{seed} {number}"), Path(folder))
        tally.counts[kind] += 1
        tally.counts["received"] += received
        tally.counts["taken out by somebody else, told"] += lost
        tally.require(not wrong, f"{wrong} (seed {seed}, {number})")
    tally.outcome = (
        f"of {tally.counts['received']:,} samples only {tally.counts['taken out by somebody else, told']:,} that "
        "somebody else had cut out of the file, each counted; every end is told"
    )
    return tally


class Cut:
    """A disk that keeps after a power cut only what it was told to sync: of a file its bytes, of a folder its names."""

    def __init__(self) -> None:
        self.sizes: dict[int, int] = {}
        self.names: dict[str, int] = {}

    def fsync(self, handle: int) -> None:
        """Note what is on the disk from now on."""
        said = os.fstat(handle)
        if os.path.isdir(f"/proc/self/fd/{handle}"):
            folder = os.readlink(f"/proc/self/fd/{handle}")
            self.names |= {entry.path: entry.inode() for entry in os.scandir(folder)}
        else:
            self.sizes[said.st_ino] = said.st_size

    def left(self, path: Path) -> bytes | None:
        """Give what is left of a file; None where its name was not on the disk."""
        inode = self.names.get(str(path))
        if inode is None:
            return None
        return path.read_bytes()[: self.sizes.get(inode, 0)]


@contextlib.contextmanager
def _on(disk: Cut) -> Iterator[None]:
    with patch.object(appended.os, "fsync", disk.fsync), patch.object(small_file.os, "fsync", disk.fsync):
        yield


def power(cases: int, seed: int) -> Tally:
    """Cut the power at random moments, and compare with what was said to be on the disk."""
    tally = Tally("power cuts", cases)
    for number in range(cases):
        rng, disk = random.Random(f"{seed} {number}"), Cut()
        with tempfile.TemporaryDirectory() as folder, _on(disk), patch.object(recording, "SYNC_S", 0.01):
            path = Path(os.path.realpath(folder)) / "a.csv"
            writer = RecordingWriter(path, recordings.HEADER, recordings.COLUMNS)
            for step in range(rng.randint(1, 10)):
                writer.on_block(recordings.block_of(step * STEP, STEP))
                time.sleep(rng.uniform(0.0, 0.03))
            said = writer.on_disk
            left = disk.left(path)
            writer.on_end(STOPPED)
            closed = disk.left(path)
            tally.require(closed == path.read_bytes(), f"closed, and not all on the disk (seed {seed}, {number})")
            rows = 0
            if left:
                (path.parent / "left.csv").write_bytes(left)
                with contextlib.suppress(FileError):
                    rows = len(read_trace(path.parent / "left.csv").time_s)
            tally.counts["samples on the disk"] += said
            tally.require(rows >= said, f"{rows} rows of {said} that were on the disk (seed {seed}, {number})")
    tally.outcome = f"none of {tally.counts['samples on the disk']:,} samples told to be on it; closed files are whole"
    return tally


CAMPAIGNS = [
    Campaign("taken away", taken, 16, 400, seeded=True, long_s=40),
    Campaign("power cuts", power, 8, 200, seeded=True, long_s=40),
]
