"""Memory of an hour at 1 kHz with four columns: what a running test keeps, and what reading its file takes.

Each figure is taken in a process of its own. The reference is what plain containers of Python take for the same
samples, measured here over a thousandth of the hour.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
import time
import tracemalloc
from pathlib import Path

import numpy as np

HOUR = 3_600_000  # samples
SECOND = 1_000


def resident() -> float:
    """Give the memory of this process, in bytes."""
    from tests.faults.fuzz import memory

    return memory()


def _block(second: int, columns: tuple[str, ...]) -> tuple[np.ndarray, dict[str, np.ndarray]]:
    n = np.arange(second * SECOND, (second + 1) * SECOND, dtype=float)
    torque = np.round(27 + 5 * np.sin(n / 3000), 2)
    values = (torque, n, np.round(n / 100 % 360, 1), np.full(SECOND, 0.25))
    return n / 1000, dict(zip(columns, values, strict=True))


def recorded(path: Path, seconds: int, with_window: bool) -> dict[str, float]:
    """Record; read live, draw and keep if there is a window. Give bytes a sample, over all and over the second half."""
    from analysis.trace.live import LiveReader
    from gui.models.trace import GrowingTrace
    from logger.header import Header
    from logger.recordings.recording import RecordingWriter
    from logger.samples import Block, Column, Ending, EndReason

    columns = (Column("torque", "N·m"), Column("counter", ""), Column("angle", "deg"), Column("late", "ms"))
    names = tuple(column.name for column in columns)
    writer = RecordingWriter(path, Header(), columns)
    live, trace = LiveReader(), GrowingTrace()
    marks = {}
    for second in range(seconds):
        time_s, values = _block(second, names)
        block = Block(time_s, values)
        writer.on_block(block)
        if with_window:
            live.feed(block.time_s, block.columns["torque"])
            trace.append(block.time_s, block.columns["torque"])
        while writer.unsaved > 20 * SECOND:
            time.sleep(0.005)
        if second in (seconds // 10, seconds // 2, seconds - 1):
            marks[second] = resident()
    writer.on_end(Ending(EndReason.STOPPED))
    tenth, half, end = marks.values()
    return {
        "whole": (end - tenth) / (0.9 * seconds * SECOND),
        "second half": (end - half) / (0.5 * seconds * SECOND),
    }


def read(path: Path) -> dict[str, float]:
    """Read a recording; give the bytes a sample that it keeps, and the most it took meanwhile."""
    import pandas as pd

    from logger.recordings.files import read_trace

    del pd  # its import is not the recording's memory
    before = resident()
    trace = read_trace(path)
    count = len(trace.time_s)
    held = trace.time_s.nbytes + trace.torque.nbytes + sum(column.nbytes for column in trace.columns.values())
    status = Path("/proc/self/status")
    peak = 0.0
    if status.exists():
        line = next(line for line in status.read_text(encoding="ascii").splitlines() if line.startswith("VmHWM"))
        peak = float(line.split()[1]) * 1024 - before
    return {"held": held / count, "resident": (resident() - before) / count, "peak": peak / count}


def plain() -> dict[str, float]:
    """Give the bytes a sample of the same four numbers and a time in a list of tuples."""
    tracemalloc.start()
    kept = [(n / 1000, 27 + n / 7, float(n), n / 11, n / 13) for n in range(HOUR // 1000)]
    size = tracemalloc.get_traced_memory()[0]
    tracemalloc.stop()
    return {"tuples": size / len(kept)}


def _apart(call: str) -> dict[str, float]:
    code = f"import json; from pathlib import Path; from tests.bench.bench_memory import *; print(json.dumps({call}))"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=Path(__file__).parents[2]
    )
    return dict(json.loads(done.stdout))


def run() -> list[dict[str, object]]:
    """Give the rows for ``make bench``."""
    seconds = HOUR // SECOND
    reference = f"{plain()['tuples']:.0f} B, list of tuples"
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "hour.csv"
        alone = _apart(f"recorded(Path({str(path)!r}), {seconds}, False)")
        shown = _apart(f"recorded(Path({str(path)!r} + '2'), {seconds}, True)")
        back = _apart(f"read(Path({str(path)!r}))")
    rows = (
        ("memory a sample, an hour recorded, no window", alone["whole"], "<= 40"),
        ("... over its second half (flat: nothing is kept)", alone["second half"], "<= 2"),
        ("memory a sample, an hour recorded, read live and drawn", shown["whole"], "<= 40"),
        ("... over its second half (flat over time)", shown["second half"], "<= 40"),
        ("memory a sample, an hour with four columns read from its file", back["held"], "<= 40"),
        ("... as the system counts it", back["resident"], "<= 48"),
    )
    table: list[dict[str, object]] = [
        {"name": name, "ours": f"{value:.1f} B", "reference": reference, "ratio": round(value, 2), "target": target}
        for name, value, target in rows
    ]
    table.append(
        {
            "name": "... the most that reading took",
            "ours": f"{back['peak']:.0f} B",
            "reference": reference,
            "ratio": None,
            "target": "",
        }
    )
    return table
