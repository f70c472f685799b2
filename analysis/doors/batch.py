"""Read many recordings into one table with every core: CSV, JSON, Parquet, a workbook, or a data set by month.

Files that cannot be read are listed and skipped (exit code 2 if there were any). A run that was stopped goes on where
it was: what is done stands in <table>.part beside the table until the table is written. On a cluster all machines
must see the recordings under the same paths; one that dies loses nothing, its files are read by others.

    heldwheel-read batch season/ --out season.csv
    heldwheel-read batch "season/*.csv" --out pulls.json --rows pull --limit rear.limit.toml
    heldwheel-read batch archive/ --out archive-by-month --cluster tcp://bench-1:8786
"""

from __future__ import annotations

import argparse
import time

from analysis.doors.asking import add_reading_options, asked_of, recordings_in
from logger.edges.door import Exit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Describe the command's arguments."""
    parser.add_argument("files", nargs="*", metavar="FILE", help="recordings, folders, or patterns in quotes")
    parser.add_argument(
        "--out", metavar="TABLE", help="the table: name.csv, .json, .parquet, .xlsx; or a folder, Parquet by month"
    )
    parser.add_argument("--rows", choices=("recording", "pull"), default="recording", help="one row per (recording)")
    parser.add_argument("--workers", type=int, metavar="N", help="processes (default: one per core)")
    parser.add_argument(
        "--cluster",
        metavar="ADDRESS",
        help="read on a dask.distributed cluster: tcp://host:8786 (pip: heldwheel[cluster])",
    )
    parser.add_argument("--columns", action="store_true", help="list the columns with their units, and stop")
    parser.add_argument("--schema", action="store_true", help="print the JSON schema of the table, and stop")
    add_reading_options(parser)


def run(args: argparse.Namespace) -> int:
    """Run the command."""
    from logger.errors import InputError

    if args.schema or args.columns:
        return _describe(args)
    if not args.files or not args.out:
        raise InputError("say which recordings and which table: heldwheel-read batch season/ --out season.csv")
    return _read(args)


def _describe(args: argparse.Namespace) -> int:
    import json

    from analysis.rows.tables import PULL_COLUMNS, RECORDING_COLUMNS, schema
    from logger.edges import console

    if args.schema:
        console.say(json.dumps(schema(), indent=2, ensure_ascii=False))
        return Exit.OK
    columns = RECORDING_COLUMNS if args.rows == "recording" else PULL_COLUMNS
    console.table(("column", "type", "unit", "holds"), [(c.name, c.type, c.unit, c.about) for c in columns])
    return Exit.OK


def _read(args: argparse.Namespace) -> int:
    from analysis.rows.batch import batch
    from logger.edges import console

    files = recordings_in(args.files)
    began = time.monotonic()
    with console.Progress() as line:

        def progress(done: int, total: int, bad: int) -> None:
            now = time.monotonic() - began
            left = now / done * (total - done)
            trouble = f", {bad} bad" if bad else ""
            line.show(f"{done} of {total} read{trouble}, {left:.0f} s left", now)

        more = {"by": args.rows, "asked": asked_of(args), "progress": progress}
        if args.cluster:
            from analysis.rows.cluster import cluster

            with cluster(args.cluster) as (executor, workers):
                done = batch(files, args.out, executor=executor, workers=args.workers or workers, **more)
        else:
            done = batch(files, args.out, workers=args.workers, **more)
    again = f" ({done.resumed} from the run before)" if done.resumed else ""
    console.say(f"{done.table}: {done.rows} rows from {done.files - len(done.bad)} recordings{again}")
    for bad in done.bad:
        console.note(f"skipped: {bad.error.splitlines()[0]}")
    return Exit.BAD_INPUT if done.bad else Exit.OK
