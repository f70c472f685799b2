"""A thousand recordings to one table: two cores beside one, and a run resumed beside a run from scratch."""

from __future__ import annotations

import contextlib
import csv
import io
import os
import resource
import shutil
import tempfile
import time
from concurrent.futures import Executor, Future
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from analysis.rows.batch import batch, read_one

if TYPE_CHECKING:
    from analysis.rows.journal import Outcome

RECORDINGS = Path(__file__).resolve().parents[2] / "recordings"
FILES = 1000
SCALE = 1000
BAD = 5


def _folder(where: Path) -> list[Path]:
    """Fill a folder with copies of the example recordings, and a few files that are none."""
    originals = sorted(RECORDINGS.glob("0[1-5]-*.csv"))
    paths = []
    for i in range(FILES - BAD):
        path = where / f"{i:04d}.csv"
        shutil.copyfile(originals[i % len(originals)], path)
        paths.append(path)
    for i in range(BAD):
        path = where / f"bad-{i}.csv"
        path.write_text("no torque here\n1\n", encoding="utf-8")
        paths.append(path)
    return paths


def _timed(paths: list[Path], table: Path, workers: int) -> tuple[float, bytes]:
    began = time.perf_counter()
    done = batch(paths, table, workers=workers)
    seconds = time.perf_counter() - began
    if done.rows != FILES - BAD or len(done.bad) != BAD:
        raise RuntimeError(f"expected {FILES - BAD} rows and {BAD} bad files, got {done.rows} and {len(done.bad)}")
    return seconds, table.read_bytes()


def _resumed(paths: list[Path], table: Path) -> tuple[float, int]:
    """Stop a run after about nine tenths, and time the rest."""
    stop_at = FILES * 9 // 10

    def stop(done: int, _total: int, _bad: int) -> None:
        if done >= stop_at:
            raise KeyboardInterrupt

    with contextlib.suppress(KeyboardInterrupt):
        batch(paths, table, workers=2, progress=stop)
    began = time.perf_counter()
    done = batch(paths, table, workers=2)
    return time.perf_counter() - began, done.resumed


def _difference(*tables: bytes) -> str:
    """Give the first place where tables differ: file and column; empty where they are equal."""
    texts = [table.decode("utf-8") for table in tables]
    rows = [list(csv.DictReader(io.StringIO(text))) for text in texts]
    for number, group in enumerate(zip(*rows, strict=False)):
        for name in group[0]:
            if len({row.get(name) for row in group}) > 1:
                return f"row {number}, {group[0]['file']}, {name}: " + " | ".join(str(row.get(name)) for row in group)
    return "" if len(set(texts)) == 1 else "numbers of rows"


class _ReadAlready(Executor):
    """Gives the same rows for every file at once: what is left is the batch's own work and memory."""

    def __init__(self, outcome: Outcome) -> None:
        self._outcome = outcome

    def submit(self, _work: object, /, *words: Any, **_: Any) -> Future[Any]:
        done: Future[Any] = Future()
        done.set_result([replace(self._outcome, number=number, file=path) for number, path in words[0]])
        return done


def _own_part(folder: Path, count: int) -> tuple[float, float]:
    """Give milliseconds a recording of a batch of so many takes beside reading, and the peak memory (MB)."""
    original = RECORDINGS / "05-event-1.csv"
    paths = [folder / f"{count}-{number:05d}.csv" for number in range(count)]
    for path in paths:
        path.symlink_to(original)
    reads = _ReadAlready(read_one(0, str(original), "recording", None))
    began = time.perf_counter()
    done = batch(paths, folder / f"{count}.csv", executor=reads, workers=2)
    if done.rows != count:
        raise RuntimeError(f"expected {count} rows, got {done.rows}")
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return (time.perf_counter() - began) / count * 1e3, peak


def _scale() -> list[dict[str, object]]:
    """Show that a batch ten times as large costs ten times the time, and no row stays in memory."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        few_ms, few_mb = _own_part(folder, SCALE)
        many_ms, many_mb = _own_part(folder, 10 * SCALE)
        row = len((folder / f"{SCALE}.csv").read_bytes()) / SCALE
    grown = (many_mb - few_mb) * 2**20 / (9 * SCALE)
    return [
        {
            "name": f"batch: its own part of a recording (ms), of {10 * SCALE} beside of {SCALE}",
            "ours": round(many_ms, 2),
            "reference": round(few_ms, 2),
            "ratio": many_ms / few_ms,
            "target": "<= 1.5",
        },
        {
            "name": f"batch: memory that a further recording takes (bytes), {SCALE} to {10 * SCALE}; its row as text",
            "ours": round(grown),
            "reference": round(row),
            "ratio": grown / row,
            "target": "<= 4",
        },
    ]


def run() -> list[dict[str, object]]:
    """Give the rows of this benchmark."""
    scale = _scale()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        paths = _folder(folder)
        _timed(paths, folder / "warm.csv", 2)  # bytecode and file cache
        one, first = _timed(paths, folder / "one.csv", 1)
        two, second = _timed(paths, folder / "two.csv", 2)
        rest, resumed = _resumed(paths, folder / "again.csv")
        different = _difference(first, second, (folder / "again.csv").read_bytes())
    return [
        *scale,
        {
            "name": f"batch: {FILES} recordings a second, two cores beside one ({os.cpu_count()} there)",
            "ours": round(FILES / two, 1),
            "reference": round(FILES / one, 1),
            "ratio": one / two,
            "target": ">= 1.7",
        },
        {
            "name": f"batch: seconds of a run resumed with {resumed} files done, beside a whole run",
            "ours": round(rest, 2),
            "reference": round(two, 2),
            "ratio": rest / two,
            "target": "<= 0.35",
        },
        {
            "name": f"batch: tables of one core, two cores and a resumed run are equal; {BAD} bad files listed",
            "ours": different or "equal",
            "reference": "equal",
            "ratio": 0.0 if different else 1.0,
            "target": "= 1",
        },
    ]
