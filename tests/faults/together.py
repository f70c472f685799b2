"""Two of everything at once: programs of their own that write the same records, until one has lost what another wrote.

A program is ``python -m tests.faults.together WORK FOLDER NAME COUNT``.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

from analysis.pipeline import read_file
from analysis.rows.batch import batch
from gui.models.library import Shelf
from gui.models.settings import Settings
from logger.errors import FileError
from logger.header import Correction, Lever, TransducerFacts
from logger.instruments.register import RegisteredTransducer, change_register, put, read_register
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.recordings.sidecar import add_correction, read_sidecar
from logger.samples import Ending, EndReason
from tests.faults import recordings
from tests.faults.tally import Campaign, Tally

WRITERS = 2
EACH = 25
ROOT = Path(__file__).parents[2]


def corrections(folder: Path, name: str, count: int) -> None:
    """Correct one recording again and again."""
    at = datetime(2026, 5, 1, tzinfo=UTC)
    for number in range(count):
        add_correction(folder / "a.csv", Correction(at=at, reason=f"{name} {number}", pull_start_s=float(number)))


def register(folder: Path, name: str, count: int) -> None:
    """Put transducers into one register."""
    for number in range(count):
        one = RegisteredTransducer(facts=TransducerFacts(serial=f"{name}-{number}"))
        change_register(lambda found, one=one: put(found, one), folder / "instruments.toml")


def lists(folder: Path, name: str, count: int) -> None:
    """Save levers whose names shorten to the same file names."""
    shelf = Shelf(folder / "fixtures", Lever)
    for number in range(count):
        shelf.save(Lever(fixture="hub centre", name=f"lever {number} {'/' if name == '0' else '?'}{name}"))


def windows(folder: Path, name: str, count: int) -> None:
    """Change one choice of a window's again and again; every window changes another."""
    settings = Settings(folder)
    for number in range(count):
        settings.remember(**{("shop", "operator")[int(name)]: str(number + 1)})


def names(folder: Path, _name: str, count: int) -> None:
    """Begin recordings by names that the other program takes, too; an existing one is never written over."""
    for number in range(count):
        try:
            writer = RecordingWriter(folder / f"{number}.csv", recordings.HEADER, recordings.COLUMNS)
        except FileError:
            continue
        writer.on_block(recordings.block_of(0, 50))
        writer.on_end(Ending(EndReason.STOPPED))


def tables(folder: Path, name: str, count: int) -> None:
    """Record in small steps, or read the whole folder into a table meanwhile."""
    if name == "0":
        writer = RecordingWriter(folder / "growing.csv", recordings.HEADER, recordings.COLUMNS)
        for number in range(20 * count):
            writer.on_block(recordings.block_of(50 * number, 50))
            time.sleep(0.01)
        writer.on_end(Ending(EndReason.STOPPED))
        return
    while not (folder / "growing.csv").exists():
        time.sleep(0.01)
    for _ in range(max(1, count // 8)):
        batch(sorted(map(str, folder.glob("*.csv"))), folder / "table.json", workers=1)


WORKS: dict[str, Callable[[Path, str, int], None]] = {
    f.__name__: f for f in (corrections, register, lists, windows, names, tables)
}


def kept(work: str, folder: Path) -> tuple[int, int]:
    """Give how much of what was written is there, and how much was written."""
    both = WRITERS * EACH
    if work == "corrections":
        sidecar = read_sidecar(folder / "a.csv")
        return (0 if sidecar is None else len({c.reason for c in sidecar.corrections})), both
    if work == "register":
        return len(read_register(folder / "instruments.toml").instruments), both
    if work == "lists":
        return len(Shelf(folder / "fixtures", Lever).entries()), both
    if work == "windows":
        choices = Settings(folder).choices
        return (choices.shop == str(EACH)) + (choices.operator == str(EACH)), WRITERS
    if work == "names":
        return sum(read_trace(folder / f"{n}.csv").state == "closed" for n in range(EACH)), EACH
    return int(read_file(folder / "growing.csv").state == "closed") + (folder / "table.json").exists(), 2


def run(cases: int) -> Tally:
    """Let two programs do every work at once, so often, and count what is there afterwards."""
    tally = Tally("two of everything", cases * len(WORKS))
    for _ in range(cases):
        for work in WORKS:
            with tempfile.TemporaryDirectory() as folder:
                programs = [
                    subprocess.Popen(
                        [sys.executable, "-m", "tests.faults.together", work, folder, str(name), str(EACH)],
                        stderr=subprocess.PIPE,
                        cwd=ROOT,
                    )
                    for name in range(WRITERS)
                ]
                told = [program.communicate()[1] for program in programs]
                tally.require(not any(program.returncode for program in programs), f"{work}: {told}")
                there, written = kept(work, Path(folder))
                tally.counts[f"{work} written"] += written
                tally.counts["written"] += written
                tally.require(there == written, f"{work}: {there} of {written} are there")
                parts = [path.name for path in Path(folder).rglob("*.part")]
                tally.require(not parts, f"{work}: left behind: {parts}")
    tally.outcome = f"none of {tally.counts['written']:,} records (corrections, transducers, levers, choices, files)"
    return tally


CAMPAIGN = Campaign("two of everything", run, 1, 5, long_s=240)

if __name__ == "__main__":
    WORKS[sys.argv[1]](Path(sys.argv[2]), sys.argv[3], int(sys.argv[4]))
