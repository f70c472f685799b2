"""Recordings cut at random bytes and with flipped bits: no row may silently say something else.

A number cut short is still a number and a flipped digit still a digit, so a plain reader is wrong in many of these
cases; it is run beside ours, to show that the faults are real.
"""

from __future__ import annotations

import csv
import random
import tempfile
from functools import partial
from pathlib import Path

from logger.errors import FileError
from logger.recordings.files import read_trace
from tests.faults.recordings import HEADER, flipped, torque_of, write, wrong_rows
from tests.faults.tally import Campaign, Tally

SAMPLES = 2_000


def _plainly_wrong(data: bytes) -> bool:
    """Tell whether a reader that knows no checks takes a damaged row for a good one."""
    rows = csv.reader(line for line in data.decode("utf-8", "replace").splitlines() if not line.startswith("#"))
    next(rows, None)
    for row in rows:
        try:
            counter, torque = float(row[2]), float(row[1] or "nan")
        except (IndexError, ValueError):
            continue  # it would have noticed
        true = torque_of(counter) if counter % 211 else float("nan")
        if not (torque == true or (torque != torque and true != true)):
            return True
    return False


def _judge(tally: Tally, path: Path, data: bytes, whole: bytes, told: str) -> None:
    """Read one damaged file and count what came out."""
    path.write_bytes(data)
    tally.counts["plain reader wrong"] += _plainly_wrong(data)
    try:
        trace = read_trace(path)
    except FileError as error:
        tally.counts["refused in words"] += 1
        tally.require(str(path) in str(error), f"{told}: the message does not name the file: {error}")
        return
    wrong = wrong_rows(trace)
    tally.require(not wrong, f"{told}: {wrong} wrong rows")
    tally.counts["rows read"] += len(trace.time_s)
    tally.counts[trace.state] += 1
    if data == whole:
        return
    if trace.state == "closed":  # only what changes nothing that is read may pass as untouched
        tally.require(len(trace.time_s) == SAMPLES and trace.header == HEADER, f"{told}: passes as closed")
    else:
        tally.require(bool(trace.problems), f"{told}: nothing is said about it")


def _cases(cases: int, seed: int, kind: str, closed: bool) -> Tally:
    tally = Tally(f"{kind}, {'closed' if closed else 'unclosed'} files", cases)
    rng = random.Random(f"{kind}:{closed}:{seed}")
    with tempfile.TemporaryDirectory() as folder:
        whole = write(Path(folder) / "whole.csv", SAMPLES)
        if not closed:
            whole = whole[: whole.rindex(b"# closed ")]
        for number in range(cases):
            if kind == "truncations":
                at = rng.randrange(len(whole))
                data, told = whole[:at], f"cut at byte {at}"
            else:
                data = flipped(whole, rng)
                at = next(i for i, (a, b) in enumerate(zip(whole, data, strict=True)) if a != b)
                told = f"bit {(whole[at] ^ data[at]).bit_length() - 1} of byte {at}"
            _judge(tally, Path(folder) / f"{number}.csv", data, whole, told)
            (Path(folder) / f"{number}.csv").unlink()
    tally.outcome = (
        f"no row silently wrong in {tally.counts['rows read']:,}; a reader without checks takes wrong rows in "
        f"{tally.counts['plain reader wrong']} of the files"
    )
    return tally


CAMPAIGNS = [
    Campaign(
        f"{kind}, {'closed' if closed else 'unclosed'}", partial(_cases, kind=kind, closed=closed), 40, 300, seeded=True
    )
    for kind in ("truncations", "flipped bits")
    for closed in (False, True)
]
