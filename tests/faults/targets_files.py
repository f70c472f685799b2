"""Fuzz targets: recordings, foreign traces, sidecars and drives that somebody else made, or a disk spoilt."""

from __future__ import annotations

import atexit
import csv
import json
import math
import os
import random
import re
import shutil
import tempfile
from functools import cache
from pathlib import Path

import numpy as np

from analysis.road.levels import band_for, band_levels, find_events
from logger.foreign.vibration import read_vibration
from logger.header import Header
from logger.recordings.files import read_trace
from logger.recordings.recording_text import format_header
from logger.recordings.sidecar import merged, read_sidecar, sidecar_path
from logger.recordings.stored import read_recording
from tests.faults.fuzz import Target
from tests.faults.mutate import mutated, noise
from tests.faults.recordings import HEADER, write, wrong_rows
from tests.faults.targets_text import SIDECAR
from tests.logger.foreign_tables import parquet, workbook


@cache
def folder() -> Path:
    """Give this process's own folder, in memory where there is such."""
    memory = Path("/dev/shm")  # a fresh folder is made in it
    made = Path(tempfile.mkdtemp(prefix=f"heldwheel-faults-{os.getpid()}-", dir=memory if memory.is_dir() else None))
    atexit.register(shutil.rmtree, made, ignore_errors=True)
    return made


@cache
def _recording() -> bytes:
    path = folder() / "seed.csv"
    path.unlink(missing_ok=True)
    return write(path, 30, block=10, flush_every=1)


_TOKENS = [
    b"# closed samples=30 sha256=" + b"0" * 64 + b"\n", b"# batch rows=10 crc32=00000000\n", b"# batch rows=0 crc32=",
    b"# event time_s=1 kind=gap count=999999999999999999 text=\n", b"# event time_s=nan kind=note count=0 text=x\n",
    b"time_s,torque_Nm\n", b"0.1,2,3,4\n", b",,,\n", b"1e999,nan,inf,-inf\n", b'"', b"# heldwheel recording 1\n",
]  # fmt: skip


def recordings(rng: random.Random) -> str:
    """A damaged recording gives true rows only, says what is wrong with it, or is refused."""
    whole = _recording()
    data = noise(rng) if rng.random() < 0.02 else mutated(rng, [whole], _TOKENS)
    path = folder() / "damaged.csv"
    path.write_bytes(data)
    trace = read_trace(path)
    if trace.state == "foreign":  # nothing in it looks like a recording any more: read as somebody else's file
        return "foreign"
    if any("header" in problem for problem in trace.problems):
        return "header damaged, told"
    assert not wrong_rows(trace), "wrong rows"
    assert not len(trace.time_s) or (trace.unit, trace.header) == ("lbf·in", HEADER), "another header"
    assert trace.torque_nm.shape == trace.time_s.shape
    assert all(0 <= event.index <= len(trace.time_s) for event in trace.events)
    assert all(event.text.isprintable() for event in trace.events)
    if trace.state == "closed":
        assert data == whole or (len(trace.time_s) == 30 and trace.header == HEADER)
    else:
        assert trace.problems
    assert all(problem.isprintable() for problem in trace.problems), f"control characters in {trace.problems}"
    return "read"


# --- foreign traces -------------------------------------------------------------------------------------------------


@cache
def _foreign() -> list[bytes]:
    return [
        b"time_s,torque_Nm\n" + b"".join(b"%.3f,%.2f\n" % (n / 100, n * 1.25) for n in range(20)),
        b"# made elsewhere\nTime (s);Torque (lbf\xc2\xb7ft);note\r\n"
        + b"0,00;1,5;a\r\n0,01;-1,25;b\r\n0,02;3;c\r\n" * 1,
        b"time_ms\tangle_deg\ttorque_lbf_in\n" + b"".join(b"%d\t%d\t%.1f\n" % (n * 2, n, n / 3) for n in range(15)),
        b'"time_s","torque [N\xb7m]"\n0.0,"1.5"\n0.1,"2.5"\n0.2,NaN\n0.3,\n0.4,5\n',
        b"t_s,torque_kgf_cm\n0,1e1\n1,2E1\n2,+3\n3,-.5\n",
        ("Zeit [s];Drehmoment [Nm]\n" + "0,00;1,5\n0,01;OL\n0,02;-3,25\n0,03;---\n").encode("utf-16"),
        b"Operator: A\nRate: 100 Hz\n\nTime,Torque\nms,Nm\n"
        + b"".join(b"%d,%.2f\n" % (n * 10, n * 1.25) for n in range(20)),
        b"Date,Time,Torque (Nm)\n" + b"".join(b"2026-05-01,10:00:%06.3f,%.2f\n" % (n / 100, n) for n in range(20)),
        json.dumps([{"time_s": n / 100, "torque_Nm": n * 1.25} for n in range(20)]).encode(),
        json.dumps({"time_s": [0.0, 0.1, 0.2], "torque_Nm": [1.0, 2.0, None]}).encode(),
        workbook({"Data": [["Time (s)", "Torque (Nm)"], [0.0, 1.5], [0.1, "OL"], [0.2, 2.5]]}),
        parquet({"time_s": np.arange(20) / 100, "torque_Nm": np.arange(20) * 1.25}),
    ]


def _plain(text: str, separator: str, decimal: str) -> dict[str, list[float]] | None:
    """Read a table the slow, strict way; None where that is not possible."""
    lines = [line for line in text.split("\n") if line.strip() and not line.startswith("#")]
    rows = [[cell.split("#")[0].strip() for cell in row] for row in csv.reader(lines, delimiter=separator)]
    names, body = rows[0], rows[1:]
    table: dict[str, list[float]] = {name: [] for name in names}
    for row in body:
        for i, name in enumerate(names):
            try:
                cell = row[i].replace(decimal, ".") if i < len(row) else "nan"
                table[name].append(float(cell or "nan"))
            except ValueError:
                if any(c.isalpha() or c == "\ufeff" for c in cell) and cell.upper() not in {"OL", "N/A"}:
                    return None  # a unit, in a row of units or behind a figure, which this reader does not know
                table[name].append(math.nan)
    return table


def foreign(rng: random.Random) -> str:
    """A foreign trace is read as it is written, or refused; never shifted, cut or guessed."""
    data = (
        noise(rng)
        if rng.random() < 0.03
        else mutated(rng, _foreign(), [b"time_s", b"torque_Nm", b",", b";", b"NaN", b"1,5"])
    )
    path = folder() / "foreign.csv"
    path.write_bytes(data)
    trace = read_trace(path)
    if trace.state != "foreign":
        return "recording"
    assert len(trace.time_s) == len(trace.torque) >= 2
    assert np.isfinite(trace.time_s).all()
    assert not np.isinf(trace.torque).any()
    assert not np.isnan(trace.torque).any() or trace.problems
    return "read" if trace.problems else _compared(data, trace.time_s, trace.torque)


def _compared(data: bytes, time_s: np.ndarray, torque: np.ndarray) -> str:
    """Compare with a plain reading, where the text is simple enough for one."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return "read"
    if any(c in text for c in '"#\x00{:') or "\r" in text.replace("\r\n", "\n"):
        return "read"
    text = text.replace("\r\n", "\n")
    body = text if text.endswith("\n") else text.rpartition("\n")[0]
    head = next(line for line in body.split("\n") if line.strip())
    separator = max(";\t,", key=head.count)
    lines = [line for line in body.split("\n") if line.strip()][1:]
    if separator != "," and re.search(r"\d,\d{3}\D", text):  # thousands, which the plain reading does not know
        return "read"
    if not head.count(separator) or any(line.count(separator) != head.count(separator) for line in lines):
        return "read"
    decimal = "," if separator != "," and "," in lines[0] else "."
    table = _plain(body, separator, decimal)
    if table is None:
        return "read"
    columns = [np.array(column) for column in table.values()]
    scales = (1.0, 1e-3, 60.0, 1e-6)
    assert any(len(c) == len(time_s) and np.allclose(c * s, time_s, rtol=1e-12) for c in columns for s in scales), (
        "other times"
    )
    assert any(len(c) == len(torque) and np.allclose(c, torque, rtol=1e-12, equal_nan=True) for c in columns), (
        "other torques"
    )
    return "read and compared"


def sidecars(rng: random.Random) -> str:
    """A sidecar is read and laid over the header, or refused with its faults."""
    path = folder() / "with-sidecar.csv"
    sidecar_path(path).write_bytes(mutated(rng, [SIDECAR]))
    sidecar = read_sidecar(path)
    assert sidecar is not None
    header = merged(HEADER, sidecar)
    assert header.simulated, "the mark of a simulated device was taken away"
    return "read"


def headers(rng: random.Random) -> str:
    """Whatever a header says, it comes back from the file as it was written."""
    from tests.faults.targets_text import SEEDS_OF, _made

    texts = [
        "",
        "a\nb",
        "a\u2028b",
        "\x85# closed samples=0",
        "\r",
        '"""',
        "\\",
        "#",
        "=1+1",
        "\x00",
        "a\x0bb\x0c",
        "é" * 50,
    ]
    job = {
        "notes": rng.choice(texts),
        "number": rng.choice(texts),
        "tags": {rng.choice(texts): rng.choice([*texts, 1.5])},
    }
    import msgspec

    tree = {
        "job": job,
        "lever": msgspec.to_builtins(
            _made(rng, next(r for r in SEEDS_OF if r.__name__ == "Lever"), {"fixture": ["cord"]})
        ),
    }
    header = msgspec.convert(tree, Header)
    text = format_header(header)
    assert all(line.startswith("#") for line in text.removesuffix("\n").split("\n"))
    import zlib

    head = (text + "time_s,torque_Nm\n").encode()
    stored = read_recording(head + b"# batch rows=0 crc32=%08X\n" % zlib.crc32(head), "x.csv")
    assert stored.header == header, f"{stored.header} is not {header}: {stored.problems}"
    return "read"


def names(rng: random.Random) -> str:
    """Paths that are no files, and names that play tricks, are refused in words."""
    tricks = [
        "",
        ".",
        "..",
        "/",
        "/dev/null",
        "a\x00b",
        "../" * 40,
        "x" * 300,
        "\udcff",
        "con",
        "~",
        "a\nb.csv",
        "*.csv",
        str(folder()),
    ]
    path = rng.choice(tricks) + rng.choice(["", "/", ".csv", "\x00"])
    return read_trace(path).state


# --- drives ---------------------------------------------------------------------------------------------------------


@cache
def _drives() -> list[bytes]:
    from scipy import interpolate, signal  # before memory is measured
    from scipy.io import wavfile

    assert interpolate.CubicSpline
    assert signal.butter
    swing = np.sin(np.arange(4800) / 5)
    found = [
        b"time [s],x [m/s^2],y (g)\n" + b"".join(b"%.3f,%.3f,%.4f\n" % (n / 40, n % 7, n % 3) for n in range(420)),
        b"Zeit [ms];a [mm/s^2]\n" + b"".join(b"%d;%d,5\n" % (n * 25, n % 5) for n in range(420)),
    ]
    for kept in ((swing * 9000).astype(np.int16), np.column_stack([swing, swing]).astype(np.float32)):
        wavfile.write(folder() / "seed.wav", 400, kept)
        found.append((folder() / "seed.wav").read_bytes())
    return found


def drives(rng: random.Random) -> str:
    """A damaged sound or acceleration gives levels that are numbers or missing, or is refused in words."""
    data = noise(rng) if rng.random() < 0.03 else mutated(rng, _drives(), [b"data", b"fmt ", b"RIFF", b"1e300", b"nan"])
    path = folder() / "drive.csv"
    path.write_bytes(data)
    read = read_vibration(path)
    assert 20 <= read.rate_hz <= 1e6
    assert read.samples.ndim == 2
    assert len(read.samples)
    band = band_for(read.kind, read.rate_hz, (0.1 * read.rate_hz, 0.4 * read.rate_hz))
    levels = band_levels(
        read.kind, read.samples, read.rate_hz, band,
        zero=read.zero, unit=read.unit, ends=read.ends, gaps_s=read.gaps_s,
    )  # fmt: skip
    assert not np.isinf(levels.db).any()
    found = find_events(levels)
    assert 0 <= found.share <= 1 + 1e-9
    assert math.isfinite(found.threshold_db)
    return "read"


TARGETS = [
    Target("recordings", recordings, long_s=130),
    Target("foreign traces", foreign, long_s=40),
    Target("sidecars", sidecars, long_s=22),
    Target("headers", headers, long_s=290),
    Target("drives", drives, short=60, long_s=900),
    Target("path names", names, long_s=1),
]
