"""A virtual transducer as its bytes: a run in a described format, each piece due at its time.

Three forms, each with its description, so that the ordinary decoders read them:

- ``text``: one line per sample, ``SIM,000123,+27.13 Nm,OK,+12.35`` and CRLF (the angle only where there is one).
- ``frame``: frames of several samples for a serial stream: sync ``AA 55``, counter, status, samples, CRC-16.
- ``packet``: counter, status, samples; one Bluetooth notification each.

The simulated mark travels in every line, and in a status bit of every frame and packet. A sample beyond the range shows
``OL`` in a line and the missing value in a frame; one that the transducer calls invalid, the status ``ERR``; a low
battery, ``LB``.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import partial
from math import ceil, log10
from typing import TYPE_CHECKING, Literal

import numpy as np

from logger.decoder.crc import CheckName, checks
from logger.decoder.description import BleSettings, Description, SerialSettings
from logger.decoder.layouts import CheckSum, CounterField, Frame, Packet, PlacedNumber, StatusField
from logger.decoder.template import LineFormat, NumberField, StatusWords
from logger.edges.units import torque_factor
from logger.header import TransducerFacts
from logger.virtual.sensor import Status

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.virtual.physics import SimulatedRun

Form = Literal["text", "frame", "packet"]
Piece = tuple[float, bytes]

MARK = "SIM"
TEXT_COUNTER, BINARY_COUNTER = 1_000_000, 65536  # where the counters wrap: six digits, two bytes
# Raw torque and angle of a frame: 1 mN·m and 0.1° per count; the largest int32 means "no value".
TORQUE_SCALE, ANGLE_SCALE, NO_VALUE = 1e-3, 0.1, 0x7FFFFFFF
SYNC = b"\xaa\x55"
CHECK: CheckName = "crc-16/modbus"
# Identifiers of the virtual radio's service and stream; drawn at random for this project.
SERVICE = "7d1f0001-6c1e-4f57-9a55-3c1d0b8e2a90"
STREAM = "7d1f0002-6c1e-4f57-9a55-3c1d0b8e2a90"


@dataclass(frozen=True, slots=True)
class Wire:
    """What happens to the bytes on their way; shares are of pieces (lines, frames, packets)."""

    # lost, doubled, swapped, spoiled: share of pieces that vanish, arrive twice, arrive after their successor, or have
    # a byte flipped
    lost: float = 0.0
    doubled: float = 0.0
    swapped: float = 0.0
    spoiled: float = 0.0
    garbage: float = 0.0  # share of pieces preceded by bytes that are none of the device's
    # pieces wait for the next tick of this timer and arrive together (USB converters: 16 ms as delivered)
    latency_s: float = 0.0
    # (time, duration); nothing arrives meanwhile; what was due comes at the end
    stalls: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class VirtualDevice:
    """A run that speaks."""

    run: SimulatedRun  # what is sent
    form: Form = "text"  # "text", "frame" or "packet"; how
    samples: int = 20  # per frame or packet
    unit: str = "N·m"  # of the text lines; frames and packets are in N·m
    wire: Wire = field(default_factory=Wire)  # what happens on the way

    @property
    def description(self) -> Description:
        """The description that decodes it."""
        return describe(self.run, self.form, samples=self.samples, unit=self.unit)

    def __iter__(self) -> Iterator[Piece]:
        """Give ``(due time in seconds from the run's start, bytes)``, in order of time."""
        pieces = self._text() if self.form == "text" else self._binary()
        return iter(pieces if self.wire == Wire() else _on_the_way(pieces, self.wire, self.run.seed))

    def _text(self) -> list[Piece]:
        run = self.run
        factor = torque_factor(self.unit)
        digits = decimals(run.scenario.sensor.resolution_nm / factor)
        unit = self.unit.replace("·", "").replace("²", "2")
        words = np.array(["OK", "OL", "ERR", "ERR", "LB", "OL", "ERR", "ERR"])[run.status & 7]
        torque = [
            f"{value:+.{digits}f}" if value == value else "OL" if word == "OL" else "---"
            for value, word in zip((run.torque_nm / factor).tolist(), words.tolist(), strict=True)
        ]
        heads = [f"{MARK},{count:06d}," for count in (run.counter % TEXT_COUNTER).tolist()]
        tails = [f" {unit},{word}" for word in words.tolist()]
        if run.angle_deg is not None:
            tails = [f"{tail},{angle:+.2f}" for tail, angle in zip(tails, run.angle_deg.tolist(), strict=True)]
        lines = (f"{a}{b}{c}\r\n".encode("ascii") for a, b, c in zip(heads, torque, tails, strict=True))
        return list(zip(run.time_s.tolist(), lines, strict=True))

    def _binary(self) -> list[Piece]:
        rows, last = self._packed()
        due = self.run.time_s[last].tolist()
        return [(time, row.tobytes()) for time, row in zip(due, rows, strict=True)]

    def _packed(self) -> tuple[NDArray[np.uint8], NDArray[np.int64]]:
        """Pack whole groups of ``samples``; a group that lost a sample is not sent."""
        run, size = self.run, self.samples
        groups, first, count = np.unique(run.counter // size, return_index=True, return_counts=True)
        groups, first = groups[count == size], first[count == size]
        index = first[:, None] + np.arange(size)
        framed = self.form == "frame"
        sample = [("torque", "<i4")] + ([] if run.angle_deg is None else [("angle", "<i2")])
        head = ([("sync", "S2")] if framed else []) + [("counter", "<u2"), ("status", "u1")]
        packed = np.zeros(groups.size, np.dtype([*head, ("samples", sample, (size,)), ("check", "<u2")]))
        torque = run.torque_nm[index]
        raw = np.rint(np.where(np.isfinite(torque), torque, 0.0) / TORQUE_SCALE)
        packed["samples"]["torque"] = np.where(np.isfinite(torque), raw, NO_VALUE).astype(np.int64)
        if run.angle_deg is not None:
            packed["samples"]["angle"] = np.clip(np.rint(run.angle_deg[index] / ANGLE_SCALE), -32768, 32767)
        packed["counter"] = (groups * size) % BINARY_COUNTER
        packed["status"] = np.bitwise_or.reduce(run.status[index], axis=1) | int(Status.SIMULATED)
        if framed:
            packed["sync"] = SYNC
        rows = packed.view(np.uint8).reshape(groups.size, -1)
        packed["check"] = checks(rows[:, :-2], CHECK)
        return rows, index[:, -1]


def decimals(step: float) -> int:
    """Give how many decimals show a step in full.

    >>> decimals(0.01), decimals(0.5), decimals(2.0)
    (2, 1, 0)
    """
    return max(0, ceil(-log10(step) - 1e-9)) if step > 0 else 6


def describe(run: SimulatedRun, form: Form, *, samples: int = 20, unit: str = "N·m") -> Description:
    """Give the description of a virtual transducer; see the class for the parameters."""
    sensor = run.scenario.sensor
    facts = TransducerFacts(
        name="virtual transducer (simulated)",
        serial="SIM-1",
        unit=unit if form == "text" else "N·m",
        sign="none" if sensor.signless else "signed",
        capacity_nm=sensor.capacity_nm,
        resolution_nm=sensor.resolution_nm,
        accuracy_percent_of_reading=sensor.accuracy_percent,
        gain=sensor.gain if sensor.gain_known else None,
        filter_delay_s=sensor.group_delay_s,
        rate_hz=sensor.rate_hz,
    )
    name = f"virtual transducer, {form} (simulated)"
    described = partial(Description, name=name, link="virtual", transducer=facts)
    angle = run.angle_deg is not None
    if form == "text":
        lines = LineFormat(
            template=f"{MARK},{{counter}},{{torque}} {{unit}},{{status}}" + (",{angle}" if angle else ""),
            terminator="CRLF",
            fields={"angle": NumberField(unit="°")} if angle else {},
            error=("---",),
            status=StatusWords(ok=("OK",), overload=("OL",), error=("ERR",), battery_low=("LB",)),
            counter_modulus=TEXT_COUNTER,
        )
        return described(lines=lines, serial=SerialSettings(baud=115200), simulated_mark=MARK)
    head = 2 if form == "frame" else 0
    fields = [PlacedNumber(name="torque", type="s32", unit="N·m", scale=TORQUE_SCALE, missing=NO_VALUE)]
    if angle:
        fields.append(PlacedNumber(name="angle", type="s16", at=4, unit="°", scale=ANGLE_SCALE))
    packet = Packet(
        fields=tuple(fields),
        samples=samples,
        samples_at=head + 3,
        tail_bytes=2,
        counter=CounterField(at=head, counts="samples"),
        status=StatusField(
            at=head + 2,
            error=int(Status.ERROR),
            battery_low=int(Status.BATTERY),
            simulated=int(Status.SIMULATED),
        ),
        check=CheckSum(name=CHECK),
    )
    if form == "frame":
        return described(frame=Frame(sync="AA 55", packet=packet), serial=SerialSettings(baud=115200))
    return described(notification=packet, ble=BleSettings(service=SERVICE, characteristic=STREAM))


def _on_the_way(pieces: list[Piece], wire: Wire, seed: int) -> list[Piece]:
    """Lose, double, swap, spoil, delay."""
    rng = np.random.default_rng([seed, 7])
    sent: list[Piece] = []
    for due, data in pieces:
        luck = rng.random(5)
        if luck[0] < wire.lost:
            continue
        if luck[1] < wire.garbage:
            sent.append((due, rng.integers(0, 256, int(rng.integers(1, 40)), dtype=np.uint8).tobytes()))
        if luck[2] < wire.spoiled:
            at = int(rng.integers(len(data)))
            data = data[:at] + bytes([data[at] ^ int(rng.integers(1, 256))]) + data[at + 1 :]
        sent.append((due, data))
        if luck[3] < wire.doubled:
            sent.append((due, data))
        if luck[4] < wire.swapped and len(sent) > 1:
            (early, a), (late, b) = sent[-2:]
            sent[-2:] = [(early, b), (late, a)]
    return [(_arrival(due, wire), data) for due, data in sent]


def _arrival(due: float, wire: Wire) -> float:
    if wire.latency_s:
        due = ceil(due / wire.latency_s) * wire.latency_s
    for start, duration in wire.stalls:
        if start <= due < start + duration:
            due = start + duration
    return due
