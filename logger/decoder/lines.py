"""Text lines to samples: however the stream is cut, the same samples come out.

Conventions
-----------
- A line that does not fit its template, is longer than ``MAX_LINE`` bytes or holds other bytes is garbage: counted in
  bytes, told in one event per run of such lines, never guessed at.
- After ``reset`` the stream may have been joined in the middle of a line: everything up to the first line's end is
  left out, because the rest of a number is still a number.
- Most chunks take the fast path of ``logger.decoder.bulk``; whatever it does not vouch for is matched exactly.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from logger.decoder.bulk import Layout, learn
from logger.decoder.counter import LATE_PACKETS, Unwrapper
from logger.decoder.marks import TOLD, VOIDS, Marks
from logger.decoder.match import NAN, LineMatcher
from logger.decoder.packets import counter_events, joined
from logger.decoder.template import MAX_LINE, LineFormat, compile_template, number_names
from logger.samples import Column, Decoded, Event, EventKind, empty

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.samples import Floats, Ints

SLICE: Final = 1 << 16  # bytes decoded at a time: bounds the memory that one huge chunk takes
NEVER_WRAPS: Final = 1 << 60
_LF, _CR = 10, 13


class LineDecoder:
    """A stream decoder for text lines.

    Parameters
    ----------
    lines : LineFormat
        Checked with ``template_faults``.
    unit : str
        Unit of the torque column.
    simulated_mark : str
        Text that only a simulated device sends.
    """

    def __init__(self, lines: LineFormat, unit: str, simulated_mark: str = "") -> None:
        parts = compile_template(lines.template)
        self._lines = lines
        self._matcher = LineMatcher(lines, unit)
        names = number_names(lines)
        fields = lines.fields
        self._names = names
        self._scales = {n: (fields[n].scale, fields[n].offset) for n in names if n in fields}
        self.columns = tuple(Column(n, unit if n == "torque" else fields[n].unit if n in fields else "") for n in names)
        numbers = [part for part in parts if part.kind in ("number", "counter")]
        self._order = [part.name for part in numbers]  # of the numbers within a line
        self._widths = [part.width for part in numbers]
        self._integers = [part.kind == "counter" for part in numbers]
        marks = (*lines.overload, *lines.error)
        self._fast = lines.checksum == "none" and not any(c.isdigit() for mark in marks for c in mark)
        self._layout: Layout | None = None
        self._ignore = tuple(text.encode() for text in lines.ignore)
        self._simulated_mark = simulated_mark.encode()
        self.simulated = False
        self._unwrapper = (
            Unwrapper(lines.counter_modulus or NEVER_WRAPS, counts_samples=True, step=lines.counter_step)
            if "counter" in self._order
            else None
        )
        self._last_counter: int | None = None
        self._marks = Marks()
        self._flagged = False  # a mark stands
        self._unit = ""
        self._tail = b""
        self._skipping = False  # within a line that is too long, or was joined in its middle

    def expect(self, samples: float) -> None:
        """Say that about this many samples were due during a silence."""
        if self._unwrapper is not None:
            self._unwrapper.expect(samples)

    def reset(self) -> Decoded:
        """Begin again in what may be the middle of a line."""
        dropped, self._tail = len(self._tail), b""
        self._skipping = True
        return empty(self.columns, events=_garbage(0, dropped, "a half-received line") if dropped else ())

    def feed(self, *chunks: bytes) -> Decoded:
        """Decode the lines that end in these chunks."""
        data = b"".join((self._tail, *chunks))
        end = self._last_end(data)
        borders = np.cumsum([len(chunk) for chunk in chunks]) + len(self._tail)
        dropped = 0
        begin = 0
        if self._skipping:
            first = self._first_end(data)
            dropped = first if first >= 0 else len(data)
            begin = dropped
            self._skipping = first < 0
        parts = []
        if begin < end:
            parts = [self._decode(data, a, b, borders) for a, b in self._slices(data, begin, end)]
        self._tail = data[max(begin, end) :]
        if len(self._tail) > MAX_LINE:
            parts.append(empty(self.columns, events=_garbage(0, len(self._tail), "a line that is too long")))
            self._tail, self._skipping = b"", True
        if dropped:
            parts.insert(0, empty(self.columns, events=_garbage(0, dropped, "an incomplete line")))
        return joined(parts, self.columns)

    # --- lines --------------------------------------------------------------------------------------------------------

    def _last_end(self, data: bytes) -> int:
        """Give the index behind the last line's end; 0 if there is none."""
        ends = {"CR": (b"\r",), "any": (b"\r", b"\n")}.get(self._lines.terminator, (b"\n",))
        return max(data.rfind(end) for end in ends) + 1

    def _first_end(self, data: bytes) -> int:
        ends = {"CR": (b"\r",), "any": (b"\r", b"\n")}.get(self._lines.terminator, (b"\n",))
        return min((at for end in ends if (at := data.find(end)) >= 0), default=-1)

    def _slices(self, data: bytes, begin: int, end: int) -> list[tuple[int, int]]:
        """Cut a long drain at line ends."""
        slices = []
        while end - begin > SLICE:
            cut = begin + self._last_end(data[begin : begin + SLICE])
            if cut == begin:  # one line longer than a slice
                cut = begin + SLICE + self._first_end(data[begin + SLICE : end]) + 1
            slices.append((begin, cut))
            begin = cut
        if begin < end:
            slices.append((begin, end))
        return slices

    def _borders(self, data: NDArray[np.uint8]) -> tuple[Ints, Ints, Ints]:
        """Give starts and stops of the lines, and where each one's end stands."""
        terminator = self._lines.terminator
        if terminator == "CR":
            ends = np.flatnonzero(data == _CR)
        elif terminator == "any":
            ends = np.flatnonzero((data == _LF) | (data == _CR))
        else:
            ends = np.flatnonzero(data == _LF)
        starts, ends = ends[:-1] + 1, ends[1:]
        stops = ends
        if terminator == "CR":
            starts = np.minimum(starts + (data[starts] == _LF), ends)
        elif terminator != "any":
            stops = np.maximum(ends - (data[ends - 1] == _CR), starts)
        filled = stops > starts
        if not filled.all():
            starts, stops, ends = starts[filled], stops[filled], ends[filled]
        return starts, stops, ends

    def _decode(self, data: bytes, begin: int, end: int, borders: Ints) -> Decoded:
        """Decode whole lines ``data[begin:end]``."""
        last = b"\r" if self._lines.terminator == "CR" else b"\n"
        text = last + data[begin:end]  # an end before the first line makes all lines alike
        if self._simulated_mark and not self.simulated:
            self.simulated = self._simulated_mark in text
        array = np.frombuffer(text, np.uint8)
        starts, stops, ends = self._borders(array)
        n = len(starts)
        values = np.empty((n, len(self._order)))
        good = np.zeros(n, bool)
        if self._layout is None and self._fast and n:
            self._learn(text, starts, stops)
        if self._layout is not None and n:
            good, read = self._layout.read(array, starts, stops)
            values[good] = read
        flags: dict[str, NDArray[np.bool_]] = {}
        events: list[Event] = []
        if not good.all():
            flags, events = self._exactly(text, starts, stops, good, values)
            values, ends = values[good], ends[good]
        if len(borders) > 1:
            chunk_of = np.searchsorted(borders, ends + (begin - 1), side="right")
        else:
            chunk_of = np.zeros(len(ends), np.int64)
        return self._finished(values, chunk_of, flags, events)

    def _learn(self, text: bytes, starts: Ints, stops: Ints) -> None:
        """Take the look of the first line that says a plain reading."""
        for start, stop in zip(starts[:20].tolist(), stops[:20].tolist(), strict=True):
            line = text[start:stop]
            found = self._matcher.match(line)
            if found and not found.flags and not found.unit and len(found.spans) == len(self._order):
                self._layout = learn(line, found.spans, self._widths, self._integers, ord(self._lines.decimal))
                return

    def _exactly(
        self, text: bytes, starts: Ints, stops: Ints, good: NDArray[np.bool_], values: Floats
    ) -> tuple[dict[str, NDArray[np.bool_]], list[Event]]:
        """Match the lines that are not good yet; fill their values in, and give flags and events of the good ones."""
        told: dict[str, list[int]] = {}
        events: list[Event] = []
        count = 0  # good lines before the one in hand
        previous = -1
        for line in np.flatnonzero(~good).tolist():
            count += line - previous - 1
            previous = line
            content = text[starts[line] : stops[line]]
            if self._ignore and content.startswith(self._ignore):
                continue
            found = self._matcher.match(content)
            if found is None:
                events = _added(events, count, len(content))
                continue
            good[line] = True
            values[line] = [found.counter if n == "counter" else found.values.get(n, NAN) for n in self._order]
            for flag in found.flags:
                told.setdefault(flag, []).append(count)
            if found.unit != self._unit:
                events.append(self._unit_event(found.unit, count))
            count += 1
        total = int(good.sum())
        flags = {name: np.zeros(total, bool) for name in TOLD}
        for name, at in told.items():
            flags[name][at] = True
        return flags, events

    def _unit_event(self, unit: str, index: int) -> Event:
        self._unit = unit
        ours = self.columns[0].unit
        shown = "".join(c if c.isprintable() else "?" for c in unit)[:20]
        text = f"the device now sends {shown}; recorded in {ours}" if unit else f"the device sends {ours} again"
        return Event(EventKind.UNIT, index, 0, text)

    # --- samples ------------------------------------------------------------------------------------------------------

    def _finished(
        self, values: Floats, chunk_of: Ints, flags: dict[str, NDArray[np.bool_]], events: list[Event]
    ) -> Decoded:
        """Apply counter, scales and marks."""
        counter = None
        if self._unwrapper is not None:
            raw = values[:, self._order.index("counter")].astype(np.int64)
            keep, counter, found = self._count(self._unwrapper, raw)
            if keep is not None:
                values, chunk_of = values[keep], np.maximum.accumulate(chunk_of[keep])
                flags = {name: flag[keep] for name, flag in flags.items()}
                places = np.searchsorted(np.sort(keep), [e.index for e in events])
                events = [_moved(e, int(at)) for e, at in zip(events, places, strict=True)]
            events = events + found
        columns = {name: values[:, self._order.index(name)] for name in self._names}
        for name, (scale, offset) in self._scales.items():
            columns[name] = columns[name] * scale + offset
        if not flags and self._flagged:
            flags = {name: np.zeros(len(values), bool) for name in TOLD}
        if flags and len(values):
            void = np.logical_or.reduce([flags[name] for name in VOIDS])
            columns["torque"] = np.where(void, NAN, columns["torque"])
            events = events + self._marks.events(flags)
            self._flagged = any(bool(flag[-1]) for flag in flags.values())
        events.sort(key=lambda event: event.index)
        return Decoded(columns, chunk_of, counter, tuple(events))

    def _count(self, unwrapper: Unwrapper, raw: Ints) -> tuple[Ints | None, Ints, list[Event]]:
        """Unwrap the counter: which lines to keep (None: all), their counters, and gaps."""
        parts: list[tuple[Ints, Ints]] = []
        events: list[Event] = []
        base = kept = 0
        for run, anew in self._runs(raw):
            if anew:
                unwrapper.expect(0)
                events.append(Event(EventKind.NOTE, kept, 0, "the device's counter began anew"))
            placed = unwrapper.feed(run, np.ones(len(run), np.int64))
            events += [_moved(event, event.index + kept) for event in counter_events(placed, 1)]
            parts.append((placed.keep + base, placed.first))
            base += len(run)
            kept += len(placed.keep)
        keep = np.concatenate([part[0] for part in parts]) if parts else np.empty(0, np.int64)
        first = np.concatenate([part[1] for part in parts]) if parts else keep
        whole = len(keep) == len(raw) and bool((keep[1:] > keep[:-1]).all())
        return None if whole else keep, first, events

    def _runs(self, raw: Ints) -> list[tuple[Ints, bool]]:
        """Cut where a counter that never wraps goes far back: the device has begun anew."""
        if not len(raw) or self._lines.counter_modulus is not None:
            return [(raw, False)] if len(raw) else []
        before = np.concatenate(([raw[0] if self._last_counter is None else self._last_counter], raw[:-1]))
        self._last_counter = int(raw[-1])
        back = np.flatnonzero(raw < before - LATE_PACKETS * self._lines.counter_step)
        if not len(back):
            return [(raw, False)]
        runs = [(run, True) for run in np.split(raw, back)]
        runs[0] = (runs[0][0], False)
        return [run for run in runs if len(run[0])]


def _moved(event: Event, index: int) -> Event:
    return Event(event.kind, index, event.count, event.text)


def _garbage(index: int, count: int, what: str) -> tuple[Event, ...]:
    return (Event(EventKind.GARBAGE, index, count, f"{count} bytes that are no reading: {what}"),)


def _added(events: list[Event], index: int, count: int) -> list[Event]:
    """Add garbage to the run of garbage at the same place, or begin a new one."""
    if events and events[-1].kind is EventKind.GARBAGE and events[-1].index == index:
        count += events[-1].count
        events = events[:-1]
    return [*events, *_garbage(index, count, "lines that do not fit the template")]
