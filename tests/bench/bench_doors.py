"""How soon the command doors answer, as whole processes, beside a bare interpreter."""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import numpy as np

RUNS = 7


def _once(words: list[str]) -> float:
    begun = time.perf_counter()
    done = subprocess.run([sys.executable, *words], capture_output=True, check=False)
    if done.returncode not in (0, 1, 3, 4):
        raise RuntimeError(done.stderr.decode())
    return time.perf_counter() - begun


def _pair(ours: list[str], reference: list[str]) -> tuple[float, float]:
    """Median times of two commands taken in turn."""
    _once(ours), _once(reference)
    pairs = [(_once(ours), _once(reference)) for _ in range(RUNS)]
    return statistics.median(p[0] for p in pairs), statistics.median(p[1] for p in pairs)


def _row(name: str, ours: list[str], reference: list[str], target: str) -> dict[str, object]:
    a, b = _pair(ours, reference)
    return {
        "name": name,
        "ours": f"{a * 1e3:.0f} ms",
        "reference": f"{b * 1e3:.0f} ms",
        "ratio": a / b,
        "target": target,
    }


def _minute_file(folder: Path) -> Path:
    """A 60 s trace at 1 kHz with a few pulls, as a foreign CSV."""
    rng = np.random.default_rng(5)
    time_s = np.arange(60_000) / 1000.0
    phase = time_s % 12.0
    shape = np.interp(phase, [0, 3, 4.5, 4.8, 9.5, 9.9, 12], [0, 0, 40, 34, 34, 0, 0])
    path = folder / "minute.csv"
    body = np.column_stack([time_s, shape + rng.normal(0, 0.05, time_s.size)])
    np.savetxt(path, body, fmt=["%.3f", "%.3f"], delimiter=",", header="time_s,torque_Nm", comments="")
    return path


def run() -> list[dict[str, object]]:
    """Give the rows for ``make bench``."""
    with tempfile.TemporaryDirectory() as folder:
        trace = str(_minute_file(Path(folder)))
        return [
            _row("heldwheel-read --help, beside python -c pass", ["-m", "analysis", "--help"], ["-c", "pass"], "<= 5"),
            _row("heldwheel-log --help, beside python -c pass", ["-m", "logger", "--help"], ["-c", "pass"], "<= 5"),
            _row(
                "heldwheel-read pulls, 60 s at 1 kHz, beside import numpy",
                ["-m", "analysis", "pulls", trace, "--json"],
                ["-c", "import numpy"],
                "<= 10",
            ),
        ]
