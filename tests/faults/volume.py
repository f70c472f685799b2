"""Too much of everything: 100 MB without a line's end, a hundred thousand pulls, a million events."""

from __future__ import annotations

import tempfile
import time
from pathlib import Path

import numpy as np

from analysis.trace.reading import read_torque
from logger.decoder.build import build_decoder
from logger.edges.toml_file import read_toml
from logger.errors import HeldwheelError
from logger.header import Sidecar
from logger.recordings.files import read_trace
from logger.samples import EventKind
from tests.faults.fuzz import memory
from tests.faults.sources import DESCRIPTION
from tests.faults.tally import Campaign, Tally
from tests.faults.targets_bytes import _FRAMED

CHUNK = 1 << 16
RATE_HZ = 20.0


def streams_without_end(megabytes: int) -> Tally:
    """A device sends so many megabytes without any end of a line or frame: counted as garbage, memory stays flat."""
    tally = Tally("bytes without a line's end, from a device", 0)
    for name, description, piece in (
        ("text", DESCRIPTION, b"1" * CHUNK),
        ("text, commas", DESCRIPTION, b"," * CHUNK),
        ("nulls", DESCRIPTION, bytes(CHUNK)),
        ("frames", _FRAMED, bytes(CHUNK)),
        ("frames, only sync bytes", _FRAMED, b"\xaa" * CHUNK),
    ):
        tally.cases += 1
        decoder = build_decoder(description)
        decoder.feed(piece)
        before, begun, garbage = memory(), time.process_time(), 0
        count = megabytes * (1 << 20) // CHUNK
        for _ in range(count):
            decoded = decoder.feed(piece)
            tally.require(len(decoded) == 0, f"{name}: samples came of it")
            garbage += sum(event.count for event in decoded.events if event.kind is EventKind.GARBAGE)
        garbage += sum(event.count for event in decoder.reset().events)
        tally.most("grown MB", (memory() - before) / 1e6)
        tally.most("s for 100 MB", (time.process_time() - begun) * 100 / megabytes)
        tally.require(memory() - before < 20e6, f"{name}: memory grew by {(memory() - before) / 1e6:.0f} MB")
        told = abs(garbage - (count + 1) * CHUNK)
        tally.require(told <= CHUNK, f"{name}: {garbage} bytes told as garbage of {(count + 1) * CHUNK}")
    grown, took = tally.figures["grown MB"], tally.figures["s for 100 MB"]
    tally.outcome = f"nothing read of {megabytes} MB each, all counted; memory grew by {grown:.1f} MB; {took:.1f} s"
    return tally


def files_without_end(megabytes: int) -> Tally:
    """Files of so many megabytes without a line's end are refused in words, in little time."""
    tally = Tally("files without a line's end", 0)
    size = megabytes << 20
    heads = {
        "digits.csv": b"1",
        "foreign.csv": b"time_s,torque_Nm\n0,1\n",
        "recording.csv": b"# heldwheel recording 1\n# schema = ",
        "sidecar.toml": b"[job]\nnotes = '",
        "quote.csv": b'time_s,torque_Nm\n0,"',
        "header.csv": b"time_s,torque_Nm," + b"a," * 1000,
    }
    with tempfile.TemporaryDirectory() as folder:
        for name, head in heads.items():
            tally.cases += 1
            path = Path(folder) / name
            path.write_bytes(head + b"1" * (size - len(head)))
            before, begun = memory(), time.process_time()
            try:
                found = read_toml(path, Sidecar) if name.endswith(".toml") else read_trace(path)
            except HeldwheelError as error:
                tally.counts["refused"] += 1
                tally.require(len(str(error)) < 2_000, f"{name}: a message of {len(str(error))} characters")
            else:
                empty = len(getattr(found, "time_s", ())) == 0
                tally.counts["recovered without rows"] += empty
                tally.require(empty, f"{name}: something was read")
            took = time.process_time() - begun
            tally.most("slowest s", took)
            tally.most("grown x file", (memory() - before) / size)
            tally.require(took < 5 + megabytes / 10, f"{name}: took {took:.1f} s")
            path.unlink()
    tally.outcome = (
        f"refused in words or nothing read, {megabytes} MB each in at most {tally.figures['slowest s']:.1f} s"
    )
    return tally


def many_pulls(pulls: int) -> Tally:
    """A trace of so many pulls is read in time proportional to its length; none is missed."""
    tally = Tally("pulls in one trace", pulls, counted="pulls")
    noise = np.random.default_rng(1)
    one = np.interp(np.arange(0, 8, 1 / RATE_HZ), [0, 2.0, 3.5, 3.8, 6.8, 7.1, 8.0], [0, 0, 32, 27, 27, 0, 0])
    torque = np.tile(one, pulls)
    torque += noise.normal(0, 0.05, len(torque))
    time_s = np.arange(len(torque)) / RATE_HZ
    begun = time.process_time()
    tenth = len(torque) // 10
    read_torque(time_s[:tenth], torque[:tenth])
    tenth_s = time.process_time() - begun
    begun = time.process_time()
    reading = read_torque(time_s, torque)
    took = time.process_time() - begun
    found = sum(pull.breakaway is not None or pull.rotating is not None for pull in reading.pulls)
    tally.counts["pulls found"] = found
    tally.figures["ms each"] = took / pulls * 1e3
    tally.figures["x a tenth of them"] = took / tenth_s
    tally.require(abs(found - pulls) <= pulls // 1000 + 1, f"{found} of {pulls} pulls found")
    tally.require(took < 15 * tenth_s + 1, f"ten times the pulls take {took / tenth_s:.1f} times as long")
    tally.outcome = f"{found:,} found; {tally.figures['ms each']:.1f} ms each, {took / tenth_s:.1f} x a tenth of them"
    return tally


def many_events(events: int) -> Tally:
    """A recording with so many events, and a file of batch lines only, are read in time."""
    import zlib

    tally = Tally("events in one recording", events, counted="events")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "a.csv"
        head = b'# heldwheel recording 1\n# schema = "heldwheel recording 1"\ntime_s,torque_Nm\n'
        body = b"".join(b"# event time_s=%d.0 kind=note count=0 text=x\n%d,1.5\n" % (n, n) for n in range(events))
        data = head + b"# batch rows=0 crc32=%08X\n" % zlib.crc32(head)
        data += body + b"# batch rows=%d crc32=%08X\n" % (events, zlib.crc32(body))
        path.write_bytes(data)
        begun = time.process_time()
        trace = read_trace(path)
        tally.figures["s"] = time.process_time() - begun
        tally.require(len(trace.events) == events and len(trace.time_s) == events, f"{len(trace.events)} events read")
        path.write_bytes(data + b"# batch rows=0 crc32=00000000\n" * events)
        begun = time.process_time()
        trace = read_trace(path)
        tally.figures["s, empty batches"] = time.process_time() - begun
        tally.require(len(trace.time_s) == events and len(trace.problems) < 60, f"{len(trace.problems)} problems")
        tally.require(max(tally.figures.values()) < 3 + events / 1e4, f"took {tally.figures}")
    tally.outcome = f"none of {events:,}; read in {tally.figures['s']:.1f} s"
    return tally


CAMPAIGNS = [
    Campaign("MB from a device without a line's end", streams_without_end, 2, 100, long_s=8),
    Campaign("MB in a file without a line's end", files_without_end, 5, 100, long_s=12),
    Campaign("pulls in one trace", many_pulls, 300, 100_000, long_s=500),
    Campaign("events in one recording", many_events, 5_000, 200_000),
]
