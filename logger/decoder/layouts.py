"""How the bytes of a packet, or of a register map, are laid out: the binary part of a transducer's description.

Conventions:
- ``at`` is a byte offset from the packet's start; for a field that repeats with every sample, from the first sample's.
- A packet has a head, then its samples one behind another, then a tail.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated, Final, Literal

import msgspec

from logger.decoder.column_faults import name_faults, scale_faults
from logger.decoder.crc import CHECK_BYTES, CheckName
from logger.decoder.floats import WIDTH, NumberType, Order
from logger.header import Record

# A Bluetooth notification carries 512 bytes at most, and a text line may have as many.
MAX_PACKET: Final = 512

RADIUS_MOST_MM: Final = 1e5  # no lever of this job is longer
RAW_MOST: Final = 1 << 53  # exact as a float

At = Annotated[int, msgspec.Meta(ge=0, lt=MAX_PACKET)]
Mask = Annotated[int, msgspec.Meta(ge=0, lt=1 << 32)]
IntegerType = Literal["u8", "u16", "u24", "u32"]


class PlacedNumber(Record, frozen=True, kw_only=True):
    """One number: its place, type and meaning.

    Attributes:
        name: The column: ``torque``, ``angle``, ``rate``, ``temperature`` ...
        scale, offset: The value is raw × scale + offset.
        radius_mm: The device delivers a force in newtons at this radius; the column becomes torque in N·m.
        missing: Raw value that means "not known".
        overload: Magnitude of the raw value from which on the device is beyond its range.
    """

    name: str
    type: NumberType  # how the number is coded
    at: At = 0  # first byte, from the sample's or packet's start
    order: Order = "little"  # which end comes first
    unit: str = ""  # of the column
    scale: float = 1.0
    offset: float = 0.0
    radius_mm: float | None = None
    missing: Annotated[int, msgspec.Meta(ge=-RAW_MOST, le=RAW_MOST)] | None = None
    overload: Annotated[int, msgspec.Meta(gt=0, le=RAW_MOST)] | None = None
    per: Literal["sample", "packet"] = "sample"  # once a packet, or with every sample


class CounterField(Record, frozen=True, kw_only=True):
    """The wrap-around counter in each packet."""

    at: At  # first byte
    type: IntegerType = "u16"  # how it is coded
    order: Order = "little"  # which end comes first
    counts: Literal["packets", "samples"] = "packets"  # what it counts
    step: Annotated[int, msgspec.Meta(ge=1)] = 1  # what it advances by
    modulus: Annotated[int, msgspec.Meta(ge=2)] | None = None  # where it wraps, if before its type does

    @property
    def wraps_at(self) -> int:
        """The modulus in force."""
        return self.modulus or 1 << (8 * WIDTH[self.type])


class StatusField(Record, frozen=True, kw_only=True):
    """Status bits: which mask means what; a mask of 0 means that the device has no such bit."""

    at: At  # first byte
    type: IntegerType = "u8"  # how it is coded
    order: Order = "little"  # which end comes first
    per: Literal["packet", "sample"] = "packet"  # once a packet, or with every sample
    overload: Mask = 0  # bits: beyond its range
    error: Mask = 0  # bits: not valid
    stale: Mask = 0  # bits: not renewed
    battery_low: Mask = 0  # bits
    simulated: Mask = 0  # bits: the device is a simulation


class CheckSum(Record, frozen=True, kw_only=True):
    """A check sum in the last bytes of a packet, over everything from ``covers_from`` up to itself."""

    name: CheckName  # which check
    order: Order = "little"  # which end comes first
    covers_from: At = 0  # first byte that it covers


class Packet(Record, frozen=True, kw_only=True):
    """A binary packet: one notification, or the frame of a serial stream.

    Attributes:
        fields: Torque first.
        samples: Samples in every packet; 0: as many as its length holds.
        samples_at: Where the first sample begins.
        sample_bytes: From one sample to the next; None: just behind its last field.
        tail_bytes: Bytes behind the last sample, the check sum included.
        count_at: A byte that says how many samples the packet has.
    """

    fields: tuple[PlacedNumber, ...]
    samples: Annotated[int, msgspec.Meta(ge=0, le=MAX_PACKET)] = 1
    samples_at: At = 0
    sample_bytes: Annotated[int, msgspec.Meta(ge=1, le=MAX_PACKET)] | None = None
    tail_bytes: At = 0
    count_at: At | None = None
    counter: CounterField | None = None  # the device's own counter
    status: StatusField | None = None  # its status bits
    check: CheckSum | None = None  # a check sum at the end

    @property
    def stride(self) -> int:
        """Bytes from one sample to the next."""
        ends = [field.at + WIDTH[field.type] for field in self.fields if field.per == "sample"]
        if self.status is not None and self.status.per == "sample":
            ends.append(self.status.at + WIDTH[self.status.type])
        return self.sample_bytes or max(ends, default=1)

    @property
    def length(self) -> int | None:
        """Bytes of the whole packet, or None if it varies."""
        return self.samples_at + self.samples * self.stride + self.tail_bytes if self.samples else None

    def samples_in(self, length: int) -> int:
        """Give how many samples a packet of this length holds; 0 if it has no such length."""
        if self.samples:
            return self.samples if length == self.length else 0
        whole, rest = divmod(length - self.samples_at - self.tail_bytes, self.stride)
        return max(whole, 0) if rest == 0 else 0


def _head_faults(packet: Packet) -> list[str]:
    """Give what is wrong with counter, status, number of samples and check."""
    faults = []
    begin, status, counter, check = packet.samples_at, packet.status, packet.counter, packet.check
    ends = {
        "counter": counter and counter.at + WIDTH[counter.type],
        "status": status and status.per == "packet" and status.at + WIDTH[status.type],
        "count_at": None if packet.count_at is None else packet.count_at + 1,
    }
    for name, end in ends.items():
        if end and end > begin:
            faults.append(f"{name}: it must lie before the samples, which begin at byte {begin}")
    if status is not None and status.per == "sample" and status.at + WIDTH[status.type] > packet.stride:
        faults.append(f"status: it ends outside a sample of {packet.stride} bytes")
    if counter is not None and not counter.step < counter.wraps_at <= 1 << (8 * WIDTH[counter.type]):
        faults.append(f"counter: it cannot advance by {counter.step} and wrap at {counter.wraps_at}")
    if check is not None and packet.tail_bytes < CHECK_BYTES[check.name]:
        faults.append(f"check: {check.name} needs tail_bytes of at least {CHECK_BYTES[check.name]}")
    if check is not None and check.covers_from > begin:
        faults.append("check: it must cover the samples")
    return faults


class LengthField(Record, frozen=True, kw_only=True):
    """Where a frame states its length; the whole frame has ``value + adds`` bytes."""

    at: At  # first byte
    type: Literal["u8", "u16"] = "u8"  # how it is coded
    order: Order = "little"  # which end comes first
    adds: Annotated[int, msgspec.Meta(ge=0, le=MAX_PACKET)] = 0  # bytes of the frame that the number leaves out


class Frame(Record, frozen=True, kw_only=True):
    """A frame of a serial stream: sync bytes, then as the packet says (its offsets count from the sync bytes)."""

    sync: str  # hexadecimal: "AA 55"
    packet: Packet  # what is in it; offsets count from the sync bytes
    length: LengthField | None = None  # None: every frame has the packet's fixed length

    @property
    def sync_bytes(self) -> bytes:
        """The sync bytes."""
        return bytes.fromhex(self.sync)


def layout_faults(packet: Packet) -> list[str]:
    """Give everything that contradicts itself in a packet's layout; one line for the user each."""
    faults = []
    if not packet.fields or packet.fields[0].name != "torque":
        faults.append("fields: the first field must be named torque")
    names = [field.name for field in packet.fields]
    faults += [f"fields: {fault}" for fault in name_faults(names)]
    faults += [f"fields: {name} is there twice" for name in sorted({n for n in names if names.count(n) > 1})]
    for field in packet.fields:
        end = field.at + WIDTH[field.type]
        if field.per == "sample" and end > packet.stride:
            faults.append(f"fields: {field.name} ends at byte {end} of a sample of {packet.stride} bytes")
        if field.per == "packet" and end > (packet.samples_at if packet.length is None else packet.length):
            where = f"the packet of {packet.length} bytes" if packet.length else "the part before the samples"
            faults.append(f"fields: {field.name} lies outside {where}")
        faults += [f"fields: {fault}" for fault in scale_faults(field.name, field.scale, field.offset)]
        if field.radius_mm is not None and not 0 < field.radius_mm <= RADIUS_MOST_MM:
            faults.append(f"fields: {field.name} has the radius {field.radius_mm:g} mm")
    faults += _head_faults(packet)
    if packet.length is not None and packet.length > MAX_PACKET:
        faults.append(f"the packet has {packet.length} bytes; at most {MAX_PACKET} are possible")
    return faults


def frame_faults(frame: Frame) -> list[str]:
    """Give everything that contradicts itself in a frame's layout; one line for the user each."""
    faults = layout_faults(frame.packet)
    try:
        sync = frame.sync_bytes
    except ValueError:
        return [*faults, f'sync: {frame.sync!r} is not hexadecimal; write bytes such as "AA 55"']
    if not 1 <= len(sync) <= 8:
        faults.append("sync: one to eight bytes are needed")
    stated = frame.length
    if stated is not None and not len(sync) <= stated.at <= frame.packet.samples_at - WIDTH[stated.type]:
        faults.append("length: it must lie between the sync bytes and the samples")
    if frame.length is None and frame.packet.length is None:
        faults.append("length: it is needed when the number of samples varies")
    return faults


class Register(Record, frozen=True, kw_only=True):
    """One value in a Modbus register map."""

    name: str  # the column
    address: Annotated[int, msgspec.Meta(ge=0, le=65535)]  # of its first register, from 0
    type: Literal["s16", "u16", "s32", "u32", "float32", "float64"] = "s16"  # how the number is coded
    table: Literal["holding", "input"] = "holding"  # which of the two tables
    word_order: Literal["big", "little"] = "big"  # which register comes first
    byte_order: Literal["big", "little"] = "big"  # within a register
    unit: str = ""  # of the column
    scale: float = 1.0  # the value is raw x scale + offset
    offset: float = 0.0  # see scale
    missing: int | None = None  # raw value that means "not known"
    overload: Annotated[int, msgspec.Meta(gt=0)] | None = None  # magnitude of the raw value


def words_of(register: Register) -> int:
    """Give the number of 16-bit registers of a value."""
    return WIDTH[register.type] // 2


def register_faults(registers: Sequence[Register]) -> list[str]:
    """Give what contradicts itself in a register map; one line for the user each."""
    faults = [] if [r.name for r in registers][:1] == ["torque"] else ["the first register must be named torque"]
    names = [r.name for r in registers]
    faults += [f"{name} is there twice" for name in sorted({n for n in names if names.count(n) > 1})]
    faults += name_faults(names)
    faults += [fault for r in registers for fault in scale_faults(r.name, r.scale, r.offset)]
    faults += [f"{r.name} ends beyond register 65535" for r in registers if r.address + words_of(r) > 1 << 16]
    return faults
