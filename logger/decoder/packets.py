"""Binary packets of one layout to samples: all packets of a drain together, in strided arrays.

This is what notifications and frames share. It knows no stream: a packet arrives here whole or not at all.
"""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

import numpy as np

from logger.decoder.counter import Placed, Unwrapper
from logger.decoder.crc import CHECK_BYTES, checks
from logger.decoder.floats import WIDTH, Bytes, integers, numbers, scaled
from logger.decoder.marks import TOLD, VOIDS, Marks
from logger.errors import DeviceError
from logger.samples import Column, Decoded, Event, EventKind, Floats, Ints, empty

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from logger.decoder.layouts import Packet, PlacedNumber, StatusField


class PacketDecoder:
    """Decodes packets of one layout.

    Args:
        layout: Checked with ``layout_faults``.
        unit: Unit of the torque where its field names none.
    """

    def __init__(self, layout: Packet, unit: str = "") -> None:
        self._layout = layout
        units = {"torque": unit}
        self.columns = tuple(
            Column(f.name, "N·m" if f.radius_mm else f.unit or units.get(f.name, "")) for f in layout.fields
        )
        counter = layout.counter
        self._unwrapper = (
            Unwrapper(counter.wraps_at, counts_samples=counter.counts == "samples", step=counter.step)
            if counter
            else None
        )
        self._marks = Marks()
        self.simulated = False  # the device has said that it is a simulation

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due during a silence, give or take: it settles whole wraps of the counter."""
        if self._unwrapper is not None:
            self._unwrapper.expect(samples, leeway)

    def forget(self) -> None:
        """Begin again after a reconnect: what was received does not come again."""
        if self._unwrapper is not None:
            self._unwrapper.forget()

    def decode(self, packets: Sequence[bytes], chunk_of: Ints) -> Decoded:
        """Decode the packets of one drain.

        Args:
            packets: Whole packets, of any lengths.
            chunk_of: shape (n,); Which chunk completed each packet.
        """
        if len(set(map(len, packets))) == 1:
            rows = np.frombuffer(b"".join(packets), np.uint8).reshape(len(packets), -1)
            return self.decode_rows(rows, chunk_of)
        parts = []
        start = 0
        for length, group in groupby(packets, len):
            end = start + sum(1 for _ in group)
            rows = np.frombuffer(b"".join(packets[start:end]), np.uint8).reshape(end - start, length)
            parts.append(self.decode_rows(rows, chunk_of[start:end]))
            start = end
        return joined(parts, self.columns)

    def decode_rows(self, rows: Bytes, chunk_of: Ints) -> Decoded:
        """Decode packets of equal length, one per row."""
        size = self._layout.samples_in(rows.shape[1])
        if not size:
            return empty(self.columns, events=(self._wrong_length(rows),))
        rows, chunk_of, rejected = self._checked(rows, chunk_of, size)
        placed = self._place(rows, size)
        if placed.lost is not None:
            rows, chunk_of = rows[placed.keep], np.maximum.accumulate(chunk_of[placed.keep])
        columns = {field.name: self._column(field, rows, size) for field in self._layout.fields}
        events = [*rejected, *counter_events(placed, size), *self._void(rows, size, columns)]
        counter = None
        if self._unwrapper is not None and placed.lost is None:
            counter = np.arange(placed.first[0], placed.first[0] + len(rows) * size) if len(rows) else placed.first
        elif self._unwrapper is not None:
            counter = (placed.first[:, None] + np.arange(size)).ravel()
        events.sort(key=lambda event: event.index)
        return Decoded(columns, np.repeat(chunk_of, size), counter, tuple(events))

    def _wrong_length(self, rows: Bytes) -> Event:
        count, length = rows.shape
        described = self._layout.length
        told = f"{described} bytes" if described else "whole samples"
        return Event(EventKind.GARBAGE, 0, count, f"{count} packets of {length} bytes, where {told} are described")

    def _checked(self, rows: Bytes, chunk_of: Ints, size: int) -> tuple[Bytes, Ints, list[Event]]:
        """Drop the packets whose check sum or number of samples is wrong."""
        good = np.ones(len(rows), bool)
        reasons = []
        check, count_at = self._layout.check, self._layout.count_at
        if check is not None:
            good &= check_holds(rows, check.name, check.order == "big", check.covers_from)
            reasons.append("check sum")
        if count_at is not None:
            good &= rows[:, count_at] == size
            reasons.append("number of samples")
        if good.all():
            return rows, chunk_of, []
        bad = int((~good).sum())
        event = Event(EventKind.GARBAGE, 0, bad, f"{bad} packets rejected: wrong {' or '.join(reasons)}")
        return rows[good], chunk_of[good], [event]

    def _place(self, rows: Bytes, size: int) -> Placed:
        field = self._layout.counter
        if self._unwrapper is None or field is None:
            keep = np.arange(len(rows))
            return Placed(keep, keep * size)
        raw = integers(rows[:, field.at : field.at + WIDTH[field.type]], field.type, field.order)
        if field.modulus is not None:
            raw %= field.modulus
        return self._unwrapper.feed(raw, np.full(len(rows), size, np.int64))

    def _column(self, field: PlacedNumber, rows: Bytes, size: int) -> Floats:
        raw = self._raw(field, rows, size)
        value = scaled(raw, field.scale, field.offset)
        if field.radius_mm:
            value = scaled(value, field.radius_mm / 1000.0)
        if field.missing is not None:
            value = np.where(raw == field.missing, np.nan, value)
        return value

    def _void(self, rows: Bytes, size: int, columns: dict[str, Floats]) -> list[Event]:
        """Make every torque that the device marks NaN, and give the events of marks that begin."""
        field, status = self._layout.fields[0], self._layout.status
        torque = columns[field.name]
        if status is None and field.overload is None and field.missing is None and "float" not in field.type:
            return []
        flags = self._bits(status, rows, size) if status is not None else {}
        if field.overload is not None:
            over = (np.abs(self._raw(field, rows, size)) >= field.overload) & np.isfinite(torque)
            flags["overload"] = flags.get("overload", False) | over
        invalid = ~np.isfinite(torque)
        told = [flags[name] for name in ("overload", "stale") if name in flags]
        flags["error"] = flags.get("error", False) | (invalid & ~np.logical_or.reduce(told) if told else invalid)
        if any(flags[name].any() for name in VOIDS if name in flags):
            voided = np.logical_or.reduce([flags[name] for name in VOIDS if name in flags])
            columns[field.name] = np.where(voided, np.nan, torque)
        return self._marks.events(flags)

    def _bits(self, status: StatusField, rows: Bytes, size: int) -> dict[str, NDArray[np.bool_]]:
        width = WIDTH[status.type]
        if status.per == "packet":
            bits = np.repeat(integers(rows[:, status.at : status.at + width], status.type, status.order), size)
        else:
            places = self._samples(rows, size)[:, :, status.at : status.at + width]
            bits = integers(places, status.type, status.order).ravel()
        self.simulated |= bool((bits & status.simulated).any())
        return {name: (bits & mask) != 0 for name in TOLD if (mask := getattr(status, name))}

    def _raw(self, field: PlacedNumber, rows: Bytes, size: int) -> Floats:
        width = WIDTH[field.type]
        if field.per == "packet":
            return np.repeat(numbers(rows[:, field.at : field.at + width], field.type, field.order), size)
        places = self._samples(rows, size)[:, :, field.at : field.at + width]
        return numbers(places, field.type, field.order).ravel()

    def _samples(self, rows: Bytes, size: int) -> Bytes:
        begin = self._layout.samples_at
        return rows[:, begin : begin + size * self._layout.stride].reshape(len(rows), size, self._layout.stride)


def check_holds(rows: Bytes, name: str, big: bool, covers_from: int) -> NDArray[np.bool_]:
    """Tell for every row whether the check sum in its last bytes is right."""
    width = CHECK_BYTES[name]
    if rows.shape[1] < covers_from + width:
        raise DeviceError(f"a packet of {rows.shape[1]} bytes has no room for its {name} check")
    weights = 256 ** np.arange(width, dtype=np.int64)
    stated = rows[:, -width:].astype(np.int64) @ (weights[::-1] if big else weights)
    same: NDArray[np.bool_] = checks(rows[:, covers_from:-width], name) == stated
    return same


def counter_events(placed: Placed, size: int) -> list[Event]:
    """Events for what the counter shows."""
    if placed.lost is None:
        return []
    events = []
    for packet in np.flatnonzero(placed.lost).tolist():
        lost = int(placed.lost[packet])
        told = f"{lost} samples lost"
        if packet == placed.unsure_at:
            began = f"began anew at {placed.anew_at}" if placed.anew_at is not None else "may have begun anew meanwhile"
            told = f"about {told}; the device's counter {began}"
        events.append(Event(EventKind.GAP, packet * size, lost, told))
    if placed.duplicates:
        events.append(Event(EventKind.DUPLICATE, 0, placed.duplicates, "packets received twice and dropped"))
    if placed.late:
        events.append(Event(EventKind.REORDERED, 0, placed.late, "packets came too late and were dropped"))
    if placed.reordered:
        events.append(Event(EventKind.REORDERED, 0, placed.reordered, "packets came late and were put back in order"))
    return events


def joined(parts: Sequence[Decoded], columns: Sequence[Column]) -> Decoded:
    """Join decoded parts, one behind another."""
    if not parts:
        return empty(columns)
    if len(parts) == 1:
        return parts[0]
    starts = np.cumsum([0, *(len(part) for part in parts)]).tolist()
    events = [
        Event(e.kind, e.index + start, e.count, e.text, e.time_s)
        for start, part in zip(starts, parts, strict=False)
        for e in part.events
    ]
    counters = [part.counter for part in parts if part.counter is not None]
    return Decoded(
        {c.name: np.concatenate([part.columns[c.name] for part in parts]) for c in columns},
        np.concatenate([part.chunk_of for part in parts]),
        np.concatenate(counters) if counters else None,
        tuple(events),
    )
