"""Links: packets decoded in batches beside a ``struct.unpack`` loop; two minutes at 4 kHz over the virtual radio."""

from __future__ import annotations

import asyncio
import os
import struct
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from logger.decoder.build import build_decoder
from logger.decoder.description import BleSettings, Description
from logger.decoder.layouts import CounterField, Packet, PlacedNumber
from logger.decoder.notifications import NotificationDecoder
from logger.header import Header, TransducerFacts
from logger.links.ble import Backends, BleLink
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import EventKind
from logger.stream.session import build_session
from tests.radio.air import Air
from tests.radio.bleak_backend import backends_on
from tests.radio.central import Central
from tests.radio.gauges import OWN_STREAM, play, stream_gauge

SECONDS = float(os.environ.get("HELDWHEEL_BENCH_RADIO_S", "120"))
RATE, SIZE = 4000.0, 100  # 25 ms packets; 203 bytes fit into an MTU of 247
ADDRESS = "F0:00:00:00:00:01"


def layout(size: int) -> Packet:
    return Packet(
        fields=(PlacedNumber(name="torque", type="s16", unit="N·m", scale=0.01),),
        samples=size,
        samples_at=2,
        counter=CounterField(at=0),
    )


def run() -> list[dict[str, object]]:
    return [*_decoding(), *_radio()]


def _best(work: Callable[[], object], times: int = 5) -> float:
    took = []
    for _ in range(times):
        begin = time.perf_counter()
        work()
        took.append(time.perf_counter() - begin)
    return min(took)


def _decoding() -> list[dict[str, object]]:
    rows = []
    for size, drain, target in ((20, 2000, ">= 12"), (20, 50, ""), (120, 500, ">= 12")):
        wire = struct.Struct(f"<H{size}h")
        values = np.random.default_rng(1).integers(-3000, 3000, (200_000 // size, size)).tolist()
        packets = [wire.pack(i % 65536, *row) for i, row in enumerate(values)]

        def loop(packets: list[bytes] = packets, wire: struct.Struct = wire) -> list[float]:
            out, due, lost = [], 0, 0
            for packet in packets:
                counter, *samples = wire.unpack(packet)
                lost += (counter - due) % 65536
                due = counter + 1
                for sample in samples:
                    out.append(sample * 0.01)
            return out

        def batch(packets: list[bytes] = packets, size: int = size, drain: int = drain) -> None:
            decoder = NotificationDecoder(layout(size))
            for start in range(0, len(packets), drain):
                decoder.feed(*packets[start : start + drain])

        ours, reference = (len(packets) * size / _best(work) / 1e6 for work in (batch, loop))
        rows.append(
            {
                "name": f"{drain} notifications of {size} samples joined, against a loop",
                "ours": f"{ours:.0f} M/s",
                "reference": f"{reference:.1f} M/s",
                "ratio": round(ours / reference, 1),
                "target": target,
            }
        )
    return rows


def _radio() -> list[dict[str, object]]:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "radio.csv")
        begin, cpu = time.perf_counter(), time.process_time()
        sent = asyncio.run(_stream(path))
        share = 100 * (time.process_time() - cpu) / (time.perf_counter() - begin)
        trace = read_trace(path)
    lost = sent - len(trace.time_s)
    gaps = sum(1 for event in trace.events if event.kind is EventKind.GAP)
    what = f"4 kHz in 25 ms packets for {SECONDS:.0f} s, radio to recording"
    return [
        {"name": f"{what}: samples lost", "ours": lost, "reference": sent, "ratio": lost, "target": "= 0"},
        {"name": f"{what}: gaps", "ours": gaps, "reference": 0, "ratio": gaps, "target": "= 0"},
        {"name": f"{what}: one core, %", "ours": f"{share:.0f} %", "reference": "", "ratio": None, "target": ""},
    ]


async def _stream(path: Path) -> int:
    air = Air()
    central = Central(air)
    await central.power_on()
    backends = backends_on(central)
    gauge = stream_gauge(air, ADDRESS)
    await gauge.power_on()
    description = Description(
        name="bench",
        link="ble",
        ble=BleSettings(characteristic=OWN_STREAM),
        notification=layout(SIZE),
        transducer=TransducerFacts(rate_hz=RATE),
    )
    link = BleLink(ADDRESS, description.ble or BleSettings(), backends=Backends(backends.scanner, backends.client))
    session = build_session(link, description, build_decoder(description))
    session.subscribe(RecordingWriter(path, Header(transducer=description.transducer), session.columns))
    running = asyncio.ensure_future(session.run())
    await gauge.until_subscribed(OWN_STREAM)
    count = round(SECONDS * RATE / SIZE)
    wire = struct.Struct(f"<H{SIZE}h")
    packets = (wire.pack(n % 65536, *((n * SIZE + i) % 5000 for i in range(SIZE))) for n in range(count))
    await play(gauge, OWN_STREAM, packets, SIZE / RATE)
    await asyncio.sleep(0.3)
    session.stop()
    await running
    return count * SIZE
