"""The logger: decoding text, from a pty to the disk, processor time at 1 kHz, loading an hour, memory per sample.

References run beside ours in the same process on the same bytes; figures are medians. The device of the pty figures is
another process.
"""

from __future__ import annotations

import asyncio
import os
import re
import statistics
import subprocess
import sys
import tempfile
import time
import tty
from collections.abc import Callable
from functools import partial
from pathlib import Path

import numpy as np
import pandas as pd

from logger.decoder.description import Description, SerialSettings
from logger.decoder.lines import LineDecoder
from logger.decoder.template import LineFormat
from logger.header import Header, TransducerFacts
from logger.links.serial_port import SerialLink
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import Block, Column, Ending, EndReason
from logger.stream.session import build_session

CHUNK = 4096
LINES = 200_000
FLOOD = 600_000  # lines through the pty
RATE, SECONDS = 1000, 12  # of the processor-time figure; the first two seconds are not counted
HOUR = 3_600_000

Row = dict[str, object]


def seconds(work: Callable[[], object], times: int = 5) -> float:
    """Give the median time of some work."""
    taken = []
    for _ in range(times):
        begun = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begun)
    return statistics.median(taken)


def run() -> list[Row]:
    """Take all figures."""
    with tempfile.TemporaryDirectory() as folder:
        hour = write_hour(Path(folder) / "hour.csv")
        return [*decoding(), pty_to_disk(Path(folder)), at_one_kilohertz(Path(folder)), *loading(hour)]


# --- decoding -----------------------------------------------------------------------------------------------------


def decoding() -> list[Row]:
    rng = np.random.default_rng(1)
    values = np.cumsum(rng.normal(size=LINES)) * 0.1
    plain = b"".join(b"%.2f\r\n" % v for v in values)
    counted = b"".join(b"%d,%.3f\r\n" % (i, v) for i, v in enumerate(values))
    padded = b"".join(b"ST,%+08.2f N.m\r\n" % v for v in values)
    one, two, three = cut(plain), cut(counted), cut(padded)
    rows = []
    for what, template, chunks, reference, against, target in (
        ("'x.xx'", "{torque}", one, by_pattern, "a pattern per line", ">= 4.5"),
        ("'x.xx'", "{torque}", one, by_split, "split and float", ">= 1"),
        ("'n,x.xxx', gaps counted", "{counter},{torque}", two, by_split, "split and float", ">= 1"),
        ("'ST,+0012.34 N.m'", "ST,{torque} {unit}", three, by_pattern, "a pattern per line", ""),
    ):
        times = [
            (seconds(partial(decode, template, chunks), 1), seconds(partial(reference, chunks), 1)) for _ in range(7)
        ]
        name = f"decode lines {what} in 4 KiB: against {against}"
        rows.append(rates(name, *(statistics.median(t) for t in zip(*times, strict=True)), target))
    return rows


def rates(name: str, ours: float, reference: float, target: str) -> Row:
    millions = [f"{LINES / t / 1e6:.1f} M/s" for t in (ours, reference)]
    return {"name": name, "ours": millions[0], "reference": millions[1], "ratio": reference / ours, "target": target}


def cut(data: bytes) -> list[bytes]:
    return [data[i : i + CHUNK] for i in range(0, len(data), CHUNK)]


def decode(template: str, chunks: list[bytes]) -> None:
    decoder = LineDecoder(LineFormat(template=template, terminator="CRLF"), "N·m")
    count = sum(len(decoder.feed(chunk)) for chunk in chunks)
    if count != LINES:
        raise AssertionError(f"{count} of {LINES} lines were decoded")


NUMBER = re.compile(rb"\s*(?:ST,)?([+-]?[0-9]+\.[0-9]+)(?: N\.m)?\s*$")


def by_pattern(chunks: list[bytes]) -> None:
    rest = b""
    values = []
    for chunk in chunks:
        *lines, rest = (rest + chunk).split(b"\n")
        for line in lines:
            found = NUMBER.match(line)
            if found:
                values.append(float(found.group(1)))
    if len(values) != LINES:
        raise AssertionError


def by_split(chunks: list[bytes]) -> None:
    rest = b""
    values: list[float] = []
    for chunk in chunks:
        data = rest + chunk
        end = data.rfind(b"\n") + 1
        values.extend(map(float, data[:end].replace(b",", b" ").split()))
        rest = data[end:]
    if len(values) % LINES:
        raise AssertionError


# --- from a pty to the disk ---------------------------------------------------------------------------------------

DEVICE = """
import os, sys, time
handle, count, rate = int(sys.argv[1]), int(sys.argv[2]), float(sys.argv[3])
sys.stdin.readline()
if rate:
    begun, sent = time.monotonic(), 0
    while sent < count:
        due = min(count, int((time.monotonic() - begun) * rate))
        if due > sent:
            os.write(handle, b"".join(b"%d,%.2f\\r\\n" % (i, i * 0.01) for i in range(sent, due)))
            sent = due
        time.sleep(0.004)
else:
    data = b"".join(b"%d,%.2f\\r\\n" % (i, i * 0.01) for i in range(count))
    while data:
        data = data[os.write(handle, data[:65536]):]
"""


class Device:
    """Another process that sends counted lines into a pty, as fast as they are taken or at a rate."""

    def __init__(self, count: int, rate: float = 0.0) -> None:
        self._near, self._far = os.openpty()
        tty.setraw(self._far)
        self.path = os.ttyname(self._far)
        words = [sys.executable, "-c", DEVICE, str(self._near), str(count), str(rate)]
        self._process = subprocess.Popen(words, stdin=subprocess.PIPE, pass_fds=(self._near,))
        time.sleep(0.3)

    def go(self) -> None:
        assert self._process.stdin is not None
        self._process.stdin.write(b"\n")
        self._process.stdin.flush()

    def done(self) -> bool:
        return self._process.poll() is not None

    def end(self) -> None:
        self._process.kill()
        self._process.communicate()
        os.close(self._near)
        os.close(self._far)


DESCRIPTION = Description(
    name="counted gauge",
    lines=LineFormat(template="{counter},{torque}", terminator="CRLF"),
    serial=SerialSettings(baud=1_000_000),
    transducer=TransducerFacts(unit="N·m"),
)


def pty_to_disk(folder: Path) -> Row:
    """Compare with the barest loop that reads, parses, writes and flushes."""
    bare, ours, lost = [], [], 0
    for attempt in range(3):
        bare.append(bare_loop(folder / f"bare{attempt}.csv"))
        taken, kept = recorded(folder / f"ours{attempt}.csv", FLOOD, 0.0)
        ours.append(taken)
        lost += FLOOD - kept
    a, b = statistics.median(ours), statistics.median(bare)
    return {
        "name": f"pty to disk, {FLOOD} lines, {lost} lost: against a bare read-parse-write loop",
        "ours": f"{FLOOD / a / 1e3:.0f} k/s",
        "reference": f"{FLOOD / b / 1e3:.0f} k/s",
        "ratio": b / a if not lost else 0.0,
        "target": ">= 0.5",
    }


def bare_loop(path: Path) -> float:
    device = Device(FLOOD)
    handle = os.open(device.path, os.O_RDONLY | os.O_NOCTTY)
    device.go()
    count, rest = 0, b""
    begun = time.perf_counter()
    with path.open("w", encoding="utf-8", newline="") as out:
        while count < FLOOD:
            data = rest + os.read(handle, 65536)
            end = data.rfind(b"\n") + 1
            rest = data[end:]
            for line in data[:end].split():
                number, value = line.split(b",")
                out.write(f"{int(number)},{float(value)}\n")
                count += 1
            out.flush()
    taken = time.perf_counter() - begun
    os.close(handle)
    device.end()
    return taken


async def until(true: Callable[[], bool]) -> None:
    """Wait until something holds, two minutes at most."""
    deadline = time.perf_counter() + 120
    while not true() and time.perf_counter() < deadline:  # noqa: ASYNC110 - what is waited for has no event
        await asyncio.sleep(0.02)


def recorded(path: Path, count: int, rate: float) -> tuple[float, int]:
    """Record ``count`` lines; give the time from the first byte to the closed file, and how many are in it."""
    device = Device(count, rate)
    session = build_session(SerialLink(device.path, DESCRIPTION.serial or SerialSettings()), DESCRIPTION)
    writer = RecordingWriter(path, Header(transducer=DESCRIPTION.transducer), session.columns)
    session.subscribe(writer)

    async def record() -> float:
        running = asyncio.ensure_future(session.run())
        await asyncio.sleep(0.3)
        device.go()
        begun = time.perf_counter()
        await until(lambda: session.health.samples >= count or running.done())
        session.stop()
        await running
        return time.perf_counter() - begun

    taken = asyncio.run(record())
    device.end()
    return taken, len(read_trace(path).time_s)


def at_one_kilohertz(folder: Path) -> Row:
    """Processor time of a whole recorder process beside its wall time."""
    words = [
        sys.executable,
        "-c",
        "from tests.bench.bench_logger import one_kilohertz as f; f()",
        str(folder / "k.csv"),
    ]
    shown = subprocess.run(words, check=True, capture_output=True, text=True, cwd=Path(__file__).parents[2]).stdout
    percent, kept = shown.split()
    return {
        "name": f"recording at 1 kHz: percent of one core ({kept} of {RATE * SECONDS} samples)",
        "ours": f"{float(percent):.2f} %",
        "reference": "100 %",
        "ratio": float(percent),
        "target": "<= 2",
    }


def one_kilohertz() -> None:
    """Record at 1 kHz in this process, and print its processor time in percent and the samples."""
    path = Path(sys.argv[1])
    device = Device(RATE * SECONDS, RATE)
    session = build_session(SerialLink(device.path, DESCRIPTION.serial or SerialSettings()), DESCRIPTION)
    writer = RecordingWriter(path, Header(transducer=DESCRIPTION.transducer), session.columns)
    session.subscribe(writer)

    async def record() -> float:
        running = asyncio.ensure_future(session.run())
        await asyncio.sleep(0.3)
        device.go()
        await asyncio.sleep(2.0)
        cpu, wall = time.process_time(), time.perf_counter()
        await asyncio.sleep(SECONDS - 3.0)
        percent = 100 * (time.process_time() - cpu) / (time.perf_counter() - wall)
        await until(lambda: session.health.samples >= RATE * SECONDS or running.done())
        session.stop()
        await running
        return percent

    percent = asyncio.run(record())
    device.end()
    sys.stdout.write(f"{percent} {len(read_trace(path).time_s)}\n")


# --- loading an hour ----------------------------------------------------------------------------------------------


def write_hour(path: Path) -> Path:
    """Write an hour at 1 kHz as a recorder does: four channels, ten batches a second."""
    columns = (Column("torque", "N·m"), Column("angle", "°"), Column("temperature", "°C"))
    writer = RecordingWriter(path, Header(transducer=TransducerFacts(unit="N·m")), columns)
    rng = np.random.default_rng(2)
    torque = np.round(np.cumsum(rng.normal(size=HOUR)) * 0.01, 2)
    angle = np.round(np.arange(HOUR) * 0.01, 1)
    temperature = np.round(20 + np.arange(HOUR) * 1e-6, 1)
    writer._halt()  # batches are cut here, not by the clock
    for k in range(0, HOUR, 100):
        part = slice(k, k + 100)
        time_s = np.arange(k, k + 100) / 1000
        writer.on_block(Block(time_s, {"torque": torque[part], "angle": angle[part], "temperature": temperature[part]}))
        writer._flush()
    writer.on_end(Ending(EndReason.STOPPED))
    return path


def loading(path: Path) -> list[Row]:
    reference = seconds(lambda: pd.read_csv(path, comment="#", engine="c"), 3)
    ours = seconds(lambda: read_trace(path), 3)
    trace = read_trace(path)
    if trace.state != "closed" or len(trace.time_s) != HOUR:
        raise AssertionError(trace.problems)
    arrays = [trace.time_s, trace.torque, *trace.columns.values()]
    each = sum(array.nbytes for array in arrays) / HOUR
    return [
        {
            "name": "load an hour at 1 kHz, hash and every check included: against pandas' C engine",
            "ours": f"{ours:.2f} s",
            "reference": f"{reference:.2f} s",
            "ratio": ours / reference,
            "target": "<= 2",
        },
        {
            "name": "memory of an hour at 1 kHz, four channels: bytes a sample",
            "ours": each,
            "reference": 40,
            "ratio": each,
            "target": "<= 40",
        },
        {
            "name": "most memory while loading it: bytes a sample (file's own bytes included)",
            "ours": peak_while_loading(path),
            "reference": "",
            "ratio": None,
            "target": "",
        },
    ]


def peak_while_loading(path: Path) -> float | str:
    """Give the resident memory that loading adds at most, in a process of its own."""
    code = (
        "import re, sys, pathlib, pandas; from logger.recordings.files import read_trace\n"
        "status = pathlib.Path('/proc/self/status')\n"
        "kib = lambda name: int(re.search(name + r':\\s*(\\d+)', status.read_text())[1])\n"
        "before = kib('VmRSS'); read_trace(sys.argv[1]); print((kib('VmHWM') - before) * 1024)"
    )
    if not Path("/proc/self/status").exists():
        return ""
    words = [sys.executable, "-c", code, str(path)]
    shown = subprocess.run(words, check=True, capture_output=True, text=True, cwd=Path(__file__).parents[2]).stdout
    return int(shown) / HOUR
