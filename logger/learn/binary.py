"""The layout of an unknown device's binary frames or packets: sync bytes, check sum, counter, numbers.

A number is recognised by its course: read at the right place, with the right width and byte order, a torque under load
moves smoothly; at any wrong place its fast low byte passes for a high one. So the device must be loaded meanwhile.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from logger.decoder.crc import CHECK_BYTES
from logger.decoder.floats import WIDTH, numbers
from logger.decoder.layouts import CheckSum, CounterField, Frame, Packet, PlacedNumber
from logger.decoder.standard import presentation_format
from logger.learn.columns import NumberColumn, candidates, name_columns, pick_torque
from logger.learn.frames import MOST_FRAMES, cut_frames, find_check_bytes
from logger.learn.lines import MIN_LINES, Notes
from logger.learn.series import MOST_HEAD, Series, best_series, cover

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.decoder.floats import Bytes
    from logger.decoder.standard import PresentationFormat
    from logger.learn.learn import Wanted
    from logger.links.ble_pick import Offer

MOST_STEP: Final = 1024  # of a counter, from packet to packet


@dataclass(frozen=True, slots=True)
class BinaryLayout:
    """What frames or packets hold; as ``TextLayout``."""

    packet: Packet | None  # None while the torque is not chosen
    sync: bytes  # of a frame; empty for packets of a radio
    torque: NumberColumn | None
    able: list[tuple[int, NumberColumn]]
    sent_unit: str
    samples: int
    needs_scale: bool = False  # what a count is worth is not known

    def tables(self, wanted: Wanted, measures: str) -> dict[str, Any]:
        """Give the tables of a description that hold this layout."""
        packet = self.packet
        if packet is None:
            return {}
        first, *rest = packet.fields
        scale = first.scale if wanted.scale is None else wanted.scale
        first = PlacedNumber(
            name=measures,
            type=first.type,
            at=first.at,
            order=first.order,
            scale=scale,
            unit=first.unit or "",
            per=first.per,
        )
        packet = _with_fields(packet, (first, *rest))
        return (
            {"frame": Frame(sync=self.sync.hex(" ").upper(), packet=packet)} if self.sync else {"notification": packet}
        )


def _with_fields(packet: Packet, fields: tuple[PlacedNumber, ...]) -> Packet:
    import msgspec

    return msgspec.structs.replace(packet, fields=fields)


def binary_layout(
    data: bytes | list[bytes], wanted: Wanted, notes: Notes, offer: Offer | None = None
) -> BinaryLayout | None:
    """Find the layout of frames in a stream, or of a radio's packets; None if it does not show.

    Args:
        data: A stream, or packets.
        offer: The characteristic that the packets came from.
    """
    if isinstance(data, bytes):
        framed = cut_frames(data, notes)
        if framed is None:
            return None
        rows, sync, check = framed
        return _layout(rows, len(sync), sync, check, wanted, notes, None)
    lengths, counts = np.unique([len(packet) for packet in data], return_counts=True)
    length = int(lengths[np.argmax(counts)])
    packets = [packet for packet in data if len(packet) == length][:MOST_FRAMES]
    if len(packets) < MIN_LINES or length == 0:
        notes.unknown.append(f"only {len(packets)} packets of one length came; listen longer")
        return None
    notes.found.append(
        f"packets of {length} bytes" + ("" if len(lengths) == 1 else f"; {len(data) - len(packets)} have others")
    )
    rows = np.frombuffer(b"".join(packets), np.uint8).reshape(len(packets), length)
    form = _format_of(offer)
    if form is not None and form.type is not None and length == WIDTH[form.type]:
        return _single(rows, form, notes)
    return _layout(rows, 0, b"", find_check_bytes(rows), wanted, notes, form)


def _single(rows: Bytes, form: PresentationFormat, notes: Notes) -> BinaryLayout:
    """Give the layout of packets that hold the one value that their Presentation Format explains."""
    one = Series(0, rows.shape[1], 1, form.type or "s16", "little", 0.0)
    column, _ = _number_column(rows, one, 0)
    column.name = "value1"
    notes.found.append(
        f"one value a packet; its Presentation Format says {form.type} x {form.scale:g} {form.unit_name}"
    )
    packet = _packet(rows, one, [], None, None, 0, form)
    return BinaryLayout(packet, b"", column, [(1, column)], _form_unit(form), len(rows))


def _form_unit(form: PresentationFormat | None) -> str:
    """Give the unit that a Presentation Format names; empty if it names none."""
    if form is None or form.unit_name == "1" or form.unit_name.startswith("0x"):
        return ""
    return form.unit_name


def _format_of(offer: Offer | None) -> PresentationFormat | None:
    forms = [
        form for raw in (offer.formats if offer is not None else ()) if (form := presentation_format(raw)) is not None
    ]
    return forms[0] if len(forms) == 1 and forms[0].type is not None else None


# --- what a packet holds ----------------------------------------------------------------------------------------------


def _layout(
    rows: Bytes,
    head: int,
    sync: bytes,
    check: CheckSum | None,
    wanted: Wanted,
    notes: Notes,
    form: PresentationFormat | None,
) -> BinaryLayout | None:
    tail = CHECK_BYTES[check.name] if check is not None else 0
    if check is not None:
        notes.found.append(f"each ends in a check sum ({check.name})")
    counter = _find_counter(rows, head, tail)
    after = counter.at + WIDTH[counter.type] if counter is not None else head
    best = best_series(rows, after, tail, form)
    if best is None and counter is not None and counter.at > head:  # a counter behind the numbers
        after, tail = head, rows.shape[1] - counter.at
        best = best_series(rows, after, tail, form)
    if best is None:
        notes.unknown.append("no number in it moves smoothly: load and unload it slowly while it is listened to")
        return None
    if best.count > 1:
        columns = [_number_column(rows, best, 0)]
    else:
        columns = [_number_column(rows, one, index) for index, one in enumerate(cover(rows, after, tail, best))]
    if counter is not None:
        counter = _counted(counter, rows, best.count, notes)
    fields = {id(column): one for column, one in columns}
    found = [column for column, _ in columns]
    name_columns(found, notes)
    for column in found:
        column.name = column.name or f"value{found.index(column) + 1}"
    torque = pick_torque(found, wanted.field, notes)
    able = [(found.index(c) + 1, c) for c in candidates(found)]
    samples = len(rows) * best.count
    if torque is None:
        return BinaryLayout(None, sync, None, able, "", samples) if able and notes.missing else None
    chosen = fields[id(torque)]
    _tell_width(rows, chosen, notes)
    packet = _packet(rows, chosen, [(c, fields[id(c)]) for c in found if c is not torque], counter, check, tail, form)
    unit = _form_unit(form)
    if form is not None:
        notes.found.append(f"its Presentation Format says {form.type} x {form.scale:g} {form.unit_name}")
    needs = form is None and not chosen.kind.startswith("float")
    return BinaryLayout(packet, sync, torque, able, unit, samples, needs)


def _find_counter(rows: Bytes, head: int, tail: int) -> CounterField | None:
    """Find a counter in front: the first bytes that step evenly."""
    end = min(rows.shape[1] - tail, head + MOST_HEAD)
    found: list[tuple[int, int, CounterField]] = []
    for at in range(head, end):
        for kind, order in (("u32", "little"), ("u32", "big"), ("u16", "little"), ("u16", "big"), ("u8", "little")):
            width = WIDTH[kind]
            if at + width > rows.shape[1] - tail:
                continue
            values = numbers(np.ascontiguousarray(rows[:, at : at + width]), kind, order)  # type: ignore[arg-type]
            steps = np.diff(values) % 256.0**width
            step, count = _commonest(steps)
            # Four bytes only if all are seen to count: of a counter with still bytes the lower two tell as much.
            high = rows[:, at + (width - 1 if order == "little" else 0)]
            sure = width < 4 or (count == len(steps) and len(np.unique(high)) > 1)
            if 0 < step < MOST_STEP and count > 0.9 * len(steps) and sure:
                field = CounterField(at=at, type=kind, order=order)  # type: ignore[arg-type]
                found.append((width, -at, field))
    if not found:
        return None
    return max(found, key=lambda one: (one[0], one[1]))[2]


def _commonest(steps: NDArray[np.float64]) -> tuple[int, int]:
    values, counts = np.unique(steps, return_counts=True)
    return (int(values[np.argmax(counts)]), int(counts.max())) if len(values) else (0, 0)


def _counted(counter: CounterField, rows: Bytes, samples: int, notes: Notes) -> CounterField:
    """Say whether a counter counts packets or samples, and by which step."""
    values = numbers(
        np.ascontiguousarray(rows[:, counter.at : counter.at + WIDTH[counter.type]]), counter.type, counter.order
    )
    step, _ = _commonest(np.diff(values) % 256.0 ** WIDTH[counter.type])
    by_samples = samples > 1 and step % samples == 0
    notes.found.append(f"a counter of {'samples' if by_samples else 'packets'} at byte {counter.at} ({counter.type})")
    return CounterField(
        at=counter.at, type=counter.type, order=counter.order,
        counts="samples" if by_samples else "packets", step=step // samples if by_samples else step,
    )  # fmt: skip


def _number_column(rows: Bytes, one: Series, index: int) -> tuple[NumberColumn, Series]:
    values = one.values(rows)
    texts = [f"{value:g}" for value in values]
    return NumberColumn(index, texts, values, form="decimal" if one.kind.startswith("float") else "hex"), one


def _tell_width(rows: Bytes, one: Series, notes: Notes) -> None:
    """Ask for a load the other way where only that shows how wide a whole number is."""
    if one.kind.startswith("float"):
        return
    values = one.values(rows)
    width = WIDTH[one.kind]
    most = float(np.abs(values).max())
    notes.found.append(
        f"{one.kind}, {one.order} end first, from byte {one.begin}"
        + (f", {one.count} samples" if one.count > 1 else "")
    )
    if (values >= 0).all() and width > 2 and most < 256.0 ** (width - 1) / 2:
        notes.missing.append("both ways")
        notes.unknown.append(
            "how wide the number is: its upper bytes stood still. Load it the other way too: then they move"
        )


def _packet(
    rows: Bytes,
    torque: Series,
    others: Sequence[tuple[NumberColumn, Series]],
    counter: CounterField | None,
    check: CheckSum | None,
    tail: int,
    form: PresentationFormat | None,
) -> Packet:
    """Write the layout down."""
    first = torque.begin if torque.count > 1 else min([torque.begin, *(one.begin for _, one in others)])
    scale = form.scale if form is not None else 1.0
    unit = _form_unit(form)
    fields = [
        PlacedNumber(
            name="torque", type=torque.kind, at=torque.begin - first, order=torque.order, scale=scale, unit=unit
        )
    ]
    fields += [
        PlacedNumber(name=c.name, type=one.kind, at=one.begin - first, order=one.order)
        for c, one in others
        if not _is_counter(one, counter)
    ]
    stride = torque.stride if torque.count > 1 else rows.shape[1] - tail - first
    spare = rows.shape[1] - first - torque.count * stride
    return Packet(
        fields=tuple(fields), samples=torque.count, samples_at=first, sample_bytes=stride, tail_bytes=spare,
        counter=counter, check=check,
    )  # fmt: skip


def _is_counter(one: Series, counter: CounterField | None) -> bool:
    return counter is not None and one.begin <= counter.at < one.begin + WIDTH[one.kind]
