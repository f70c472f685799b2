"""Many recordings to one table: every core at work, progress, resumable, bad files listed and skipped.

Conventions:
- A worker is a fresh process that reads one file at a time; one that dies takes only the file it was reading with it.
- What is done stands at once in a journal beside the table (``<table>.part``): one line of JSON per file, keyed by the
  file's path, size and time of change, and by the settings. A run that was stopped goes on where it was.
- Rows come out in the order in which the files were given, however the workers finish, and out of the journal: memory
  holds none.
- The work runs on the machine's own cores, or on an executor that is given: ``analysis.rows.cluster`` has that of an
engine.

Offers ``read_many``, ``batch`` (to a file) and ``read_table`` (to a data frame).
"""

from __future__ import annotations

import hashlib
import json
import os
import threading
import time
from collections.abc import Callable, Generator, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Executor, Future, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass
from multiprocessing import get_context, parent_process
from multiprocessing.connection import wait as wait_for
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from analysis.rows.journal import Journal, Outcome
from analysis.rows.tables import PULL_COLUMNS, RECORDING_COLUMNS, BadFile, check_ending, write_table
from logger.errors import HeldwheelError, InputError

if TYPE_CHECKING:
    import pandas as pd

    from analysis.pipeline import Asked

By = Literal["recording", "pull"]
COLUMNS = {"recording": RECORDING_COLUMNS, "pull": PULL_COLUMNS}

CHUNK = 4
"""Files handed to a worker at once: handing over costs little beside reading, and progress stays smooth."""

DIED = "the reader died over it (out of memory, or killed)"

DEATHS_IN_A_ROW = 10
"""So many files in a row do not each kill a process: the processes cannot run at all."""

AHEAD = 3
"""Chunks per worker that wait in line."""


Item = tuple[int, str]
"""A file's place in the list, and its path."""


@dataclass(frozen=True, slots=True)
class Summary:
    """What a batch did."""

    table: Path  # where the table is
    # files, rows: files given, rows written
    files: int
    rows: int
    resumed: int  # files whose rows came from an earlier run's journal
    bad: tuple[BadFile, ...]  # files that could not be read
    seconds: float  # time taken


Progress = Callable[[int, int, int], None]
"""Called with files done, files in all, bad files so far."""


def read_one(number: int, path: str, by: By, asked: Asked | None) -> Outcome:
    """Read one file to its rows; any error the file causes becomes the outcome's text."""
    from analysis.pipeline import read_file
    from analysis.rows.summary import pull_rows, recording_row

    try:
        reading = read_file(path, asked)
        rows = [recording_row(reading)] if by == "recording" else pull_rows(reading)
    except HeldwheelError as error:
        return Outcome(number, path, error=str(error))
    except (MemoryError, RecursionError) as error:
        return Outcome(number, path, error=f"{path}: too large or too deep to read ({type(error).__name__})")
    except Exception as error:  # noqa: BLE001 - one file must not stop a thousand; the text says it is our fault
        return Outcome(number, path, error=f"{path}: our error, please report it: {type(error).__name__}: {error}")
    return Outcome(number, path, tuple(rows))


def _read_chunk(chunk: Sequence[tuple[int, str]], by: By, asked: Asked | None) -> list[Outcome]:
    return [read_one(number, path, by, asked) for number, path in chunk]


def read_many(
    paths: Sequence[Path | str],
    *,
    by: By = "recording",
    asked: Asked | None = None,
    workers: int | None = None,
    skip: frozenset[int] = frozenset(),
    executor: Executor | None = None,
) -> Iterator[Outcome]:
    """Read many files with several processes, in whatever order they finish.

    Args:
        paths: The files.
        by: One row per recording, or one per pull.
        asked: Lever, limit, rule for all of them.
        workers: Processes; all cores if not given, none (this process alone) for 1.
        skip: Places in the list that are done already.
        executor: What reads them, instead of processes of this machine: anything that takes work as
            ``concurrent.futures`` does; ``workers`` is then how many files it reads at once.

    Raises:
        InputError: A number of workers below 1.
    """
    todo = [(number, str(path)) for number, path in enumerate(paths) if number not in skip]
    workers = _cores() if workers is None else workers
    if workers < 1:
        raise InputError("at least one worker is needed")
    workers = min(workers, max(1, len(todo)))
    if workers == 1 and executor is None:
        for number, path in todo:
            yield read_one(number, path, by, asked)
        return
    chunks = [todo[i : i + CHUNK] for i in range(0, len(todo), CHUNK)]
    if executor is not None:
        yield from _with_executor(chunks, by, asked, executor, workers)
        return
    suspects: list[Item] = []
    while chunks:
        suspects += yield from _with_pool(chunks, by, asked, workers)
    yield from _one_by_one(suspects, by, asked)


def _one_by_one(suspects: Sequence[Item], by: By, asked: Asked | None) -> Iterator[Outcome]:
    """Read each of what was being read as a process died in a process of its own."""
    dead = 0
    for number, path in suspects:
        outcome = _read_alone(number, path, by, asked)
        dead = dead + 1 if outcome.error.endswith(DIED) else 0
        if dead == DEATHS_IN_A_ROW:
            raise InputError(
                "the reading processes die at once, whatever they read: the program is damaged; reinstall it"
            )
        yield outcome


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _pool(workers: int) -> ProcessPoolExecutor:
    # Fresh processes: forking one that runs threads (a window) can hang.
    return ProcessPoolExecutor(workers, mp_context=get_context("spawn"), initializer=end_with_parent)


def end_with_parent() -> None:
    """Let this process end with the one that started it, however that ended: a pool's processes would wait for ever."""
    parent = parent_process()
    if parent is None:
        return

    def watch() -> None:
        wait_for([parent.sentinel])
        os._exit(1)

    threading.Thread(target=watch, name="end with parent", daemon=True).start()


def _with_pool(
    chunks: list[list[Item]], by: By, asked: Asked | None, workers: int
) -> Generator[Outcome, None, list[Item]]:
    """Read chunks, taking them off the list, until all are done or a worker dies.

    Returns:
        The files that were under way when a worker died: one of them may have killed it. None were, otherwise.
    """
    running: dict[Future[list[Outcome]], list[Item]] = {}
    pool = _pool(workers)
    try:
        while chunks or running:
            while chunks and len(running) < workers * AHEAD:
                chunk = chunks.pop(0)
                running[pool.submit(_read_chunk, chunk, by, asked)] = chunk
            finished, _ = wait(running, return_when=FIRST_COMPLETED)
            for future in finished:
                outcomes = future.result()
                del running[future]
                yield from outcomes
    except BrokenProcessPool:
        return [item for chunk in running.values() for item in chunk]
    finally:
        pool.shutdown(wait=True, cancel_futures=True)
    return []


def _with_executor(
    chunks: list[list[Item]], by: By, asked: Asked | None, executor: Executor, workers: int
) -> Iterator[Outcome]:
    """Read chunks on a given executor; what fails there is handed out once more, file by file."""
    running: dict[Future[list[Outcome]], list[Item]] = {}
    while chunks or running:
        while chunks and len(running) < workers * AHEAD:
            chunk = chunks.pop(0)
            running[executor.submit(_read_chunk, chunk, by, asked)] = chunk
        finished, _ = wait(running, return_when=FIRST_COMPLETED)
        for future in finished:
            chunk = running.pop(future)
            if future.cancelled() or future.exception() is not None:
                if len(chunk) == 1:
                    number, path = chunk[0]
                    yield Outcome(number, path, error=f"{path}: {DIED}")
                chunks += [[item] for item in chunk] if len(chunk) > 1 else []
            else:
                yield from future.result()


def _read_alone(number: int, path: str, by: By, asked: Asked | None) -> Outcome:
    """Read a file in a process of its own, so that its death is known to be this file's."""
    pool = _pool(1)
    try:
        return pool.submit(read_one, number, path, by, asked).result()
    except BrokenProcessPool:
        return Outcome(number, path, error=f"{path}: {DIED}")
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def batch(
    paths: Sequence[Path | str],
    table: Path | str,
    *,
    by: By = "recording",
    asked: Asked | None = None,
    workers: int | None = None,
    progress: Progress | None = None,
    executor: Executor | None = None,
) -> Summary:
    """Read many recordings into one table, or into a data set by month.

    Raises:
        InputError: No files, or a table of another kind; see ``analysis.rows.tables.check_ending``.
        FileError: Table or journal cannot be written.
    """
    table = Path(table)
    check_ending(table)
    if not paths:
        raise InputError("no recordings to read")
    began = time.monotonic()
    journal = Journal(table.with_name(table.name + ".part"), _settings_key(by, asked))
    journal.load(paths)
    resumed = len(journal.done)
    with journal:
        skip = frozenset(journal.done)
        for outcome in read_many(paths, by=by, asked=asked, workers=workers, skip=skip, executor=executor):
            journal.add(outcome)
            if progress is not None:
                progress(len(journal.done), len(paths), len(journal.errors))
    errors = tuple(BadFile(str(paths[number]), journal.errors[number]) for number in sorted(journal.errors))
    write_table(table, COLUMNS[by], journal.rows(), errors)
    journal.remove()
    return Summary(table, len(paths), journal.count, resumed, errors, time.monotonic() - began)


def read_table(
    paths: Sequence[Path | str], *, by: By = "recording", asked: Asked | None = None, workers: int | None = 1
) -> pd.DataFrame:
    """Read recordings to a data frame: columns as in ``tables``; ``attrs["bad_files"]`` lists the others."""
    import pandas as pd

    outcomes = sorted(read_many(paths, by=by, asked=asked, workers=workers), key=lambda o: o.number)
    rows = [row for outcome in outcomes for row in outcome.rows]
    frame = pd.DataFrame(rows, columns=[column.name for column in COLUMNS[by]])
    frame.attrs["bad_files"] = [(o.file, o.error) for o in outcomes if o.error]
    return frame


def _settings_key(by: By, asked: Asked | None) -> str:
    from analysis.pipeline import Asked
    from analysis.rows.summary import asked_plain
    from logger.version import VERSION

    said = json.dumps([by, VERSION, asked_plain(asked or Asked())], sort_keys=True, default=str)
    return hashlib.sha256(said.encode("utf-8")).hexdigest()[:16]
