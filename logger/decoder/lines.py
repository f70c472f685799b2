"""Text lines to samples: however the stream is cut, the same samples come out.

Conventions:
- A line that does not fit its template, is longer than ``MAX_LINE`` bytes or holds other bytes is garbage: counted in
  bytes, told in one event per run of such lines, never guessed at.
- After ``reset`` the stream may have been joined in the middle of a line: everything up to the first line's end is
  excluded, because the rest of a number is still a number.
- Most chunks take the fast path of ``logger.decoder.bulk``; whatever it does not vouch for is matched exactly.
"""

from __future__ import annotations

from itertools import accumulate
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.decoder.bulk import LineShape, learn
from logger.decoder.counter import LATE_PACKETS, Unwrapper
from logger.decoder.marks import TOLD, VOIDS, Marks
from logger.decoder.match import MAX_WORDS, NAN, LineMatcher, MatchedLine
from logger.decoder.packets import counter_events, joined
from logger.decoder.template import MAX_LINE, LineFormat, compile_template, number_names
from logger.samples import Column, Decoded, Event, EventKind, empty

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.samples import Floats, Ints

SLICE: Final = 1 << 16  # bytes decoded at a time: bounds the memory that one huge chunk takes
UNLISTED: Final = "is not listed in the description"
NEVER_WRAPS: Final = 1 << 60
_LF, _CR = 10, 13
_ENDS: Final = {"CR": (b"\r",), "any": (b"\n", b"\r")}


class LineDecoder:
    """A stream decoder for text lines.

    Args:
        lines: Checked with ``template_faults``.
        unit: Unit of the torque column.
        simulated_mark: Text that only a simulated device sends.
    """

    def __init__(self, lines: LineFormat, unit: str, simulated_mark: str = "") -> None:
        parts = compile_template(lines.template)
        self._lines = lines
        self._matcher = LineMatcher(lines, unit)
        self._ends = _ENDS.get(lines.terminator, (b"\n",))
        names = number_names(lines)
        fields = lines.fields
        self._names = names
        self._scales = {n: (fields[n].scale, fields[n].offset) for n in names if n in fields}
        self.columns = tuple(Column(n, unit if n == "torque" else fields[n].unit if n in fields else "") for n in names)
        numbers = [part for part in parts if part.kind in ("number", "counter")]
        self._order = [part.name for part in numbers]  # of the numbers within a line
        self._integers = [part.kind == "counter" for part in numbers]
        marks = (*lines.overload, *lines.error)
        self._fast = (  # it knows no check sum, thousands, hex, sign apart, width, marks like numbers
            lines.line_check is None
            and not lines.thousands
            and all(field.form == "decimal" for field in fields.values())
            and all(part.kind != "sign" for part in parts)
            and all(part.width is None for part in numbers)
            and not any(c.isdigit() for mark in marks for c in mark)
        )
        self._look: LineShape | None = None
        self._ignore = tuple(text.encode() for text in lines.ignore)
        self._simulated_mark = simulated_mark.encode()
        self.simulated = False
        self._unwrapper = (
            Unwrapper(lines.counter_modulus or NEVER_WRAPS, counts_samples=True, step=lines.counter_step)
            if "counter" in self._order
            else None
        )
        self._due = 0  # the counter that is due next, where it never wraps
        self._marks = Marks()
        self._flagged = False  # a mark stands
        self._unlisted: set[str] = set()  # words that were told
        self._unit = ""
        self._tail = b""
        self._skipping = False  # within a line that is too long, or was joined in its middle

    def expect(self, samples: float, leeway: float = 0.0) -> None:
        """Say that this many samples were due during a silence; a counter that never wraps knows better."""
        if self._unwrapper is not None and self._lines.counter_modulus is not None:
            self._unwrapper.expect(samples, leeway)

    def reset(self, *, midway: bool = True) -> Decoded:
        """Begin again; midway: in what may be the middle of a line, so that nothing is read up to its end."""
        dropped, self._tail = len(self._tail), b""
        self._skipping = midway
        if self._unwrapper is not None:
            self._unwrapper.forget()
        return empty(self.columns, events=_garbage(0, dropped, "a half-received line") if dropped else ())

    def feed(self, *chunks: bytes) -> Decoded:
        """Decode the lines that end in these chunks."""
        data = b"".join((self._tail, *chunks))
        end = self._last_end(data)
        borders = [end + len(self._tail) for end in accumulate(map(len, chunks))]
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
        last = data.rfind(self._ends[0])
        return 1 + (last if len(self._ends) == 1 else max(last, data.rfind(self._ends[1])))

    def _first_end(self, data: bytes) -> int:
        """Give the index of the first line's end; -1 if there is none."""
        return min((at for end in self._ends if (at := data.find(end)) >= 0), default=-1)

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

    def _decode(self, data: bytes, begin: int, end: int, borders: list[int]) -> Decoded:
        """Decode whole lines ``data[begin:end]``."""
        text = data[begin:end]
        if self._simulated_mark and not self.simulated:
            self.simulated = self._simulated_mark in text
        array = np.frombuffer(text, np.uint8)
        terminator = text[-2:] if text.endswith(b"\r\n") else text[-1:]
        ends = np.flatnonzero(array == terminator[-1])
        values = None
        if self._look is None and self._fast:
            first = text[: ends[0]]
            self._learn(first, self._matcher.match(first))
        if self._look is not None and self._ends_alike(text, terminator, len(ends)):
            longest = max(int(ends[0]), int((ends[1:] - ends[:-1]).max(initial=0)))
            values = self._look.read(text, terminator, len(ends), longest) if longest <= MAX_LINE else None
        flags: dict[str, NDArray[np.bool_]] = {}
        events: list[Event] = []
        if values is None:
            values, ends, flags, events = self._exactly(text, array)
        elif len(terminator) == 2 and self._lines.terminator == "any":
            ends = ends - 1  # such a line is whole at its first end, whatever comes behind
        if len(borders) > 1:
            chunk_of = np.searchsorted(borders, ends + begin, side="right")
        else:
            chunk_of = np.zeros(len(ends), np.int64)
        return self._finished(values, chunk_of, flags, events)

    def _ends_alike(self, text: bytes, terminator: bytes, count: int) -> bool:
        """Tell whether every line ends with the same bytes."""
        if self._lines.terminator != "any":
            return True
        other = text.count(b"\n" if terminator == b"\r" else b"\r")
        return other == (count if len(terminator) == 2 else 0)

    def _borders(self, array: NDArray[np.uint8]) -> tuple[Ints, Ints]:
        """Give starts and stops of the lines that are not empty."""
        line_end = array == (_CR if self._lines.terminator == "CR" else _LF)
        if self._lines.terminator == "any":
            line_end |= array == _CR
        stops = np.flatnonzero(line_end)
        starts = np.concatenate(([0], stops[:-1] + 1))
        filled = stops > starts
        return starts[filled], stops[filled]

    def _exactly(
        self, text: bytes, array: NDArray[np.uint8]
    ) -> tuple[Floats, Ints, dict[str, NDArray[np.bool_]], list[Event]]:
        """Match line by line: values, where each reading ends, flags, and events of what is none."""
        starts, stops = self._borders(array)
        rows: list[list[float]] = []
        ends: list[int] = []
        told: dict[str, list[int]] = {}
        events: list[Event] = []
        model: tuple[bytes, MatchedLine | None] = b"", None
        for start, stop in zip(starts.tolist(), stops.tolist(), strict=True):
            content = text[start:stop]
            if not content.strip() or (self._ignore and content.startswith(self._ignore)):
                continue
            found = self._matcher.match(content)
            if found is None:
                events = _added(events, len(rows), len(content), self._matcher.misfit)
                continue
            if found.unlisted and found.unlisted not in self._unlisted and len(self._unlisted) < MAX_WORDS:
                events.append(self._unlisted_event(found.unlisted, len(rows)))
            for flag in found.flags:
                told.setdefault(flag, []).append(len(rows))
            if found.unit != self._unit:
                events.append(self._unit_event(found.unit, len(rows)))
            model = content, found
            rows.append([found.counter if n == "counter" else found.values.get(n, NAN) for n in self._order])
            ends.append(stop)
        self._learn(*model)
        flags = {name: np.zeros(len(rows), bool) for name in TOLD}
        for name, at in told.items():
            flags[name][at] = True
        values = np.array(rows, np.float64).reshape(-1, len(self._order))
        return values, np.array(ends, np.int64), flags, events

    def _learn(self, line: bytes, found: MatchedLine | None) -> None:
        """Take the look of a line that says a plain reading."""
        plain = found and not found.flags and not found.unit and found.direction == 1.0
        if found and plain and self._fast and len(found.spans) == len(self._order):
            self._look = learn(line, found.spans, self._integers, self._lines.decimal == ",")

    def _unlisted_event(self, what: str, index: int) -> Event:
        self._unlisted.add(what)
        text = f"{what} {UNLISTED}: readings with it are not valid until the description says what it means"
        return Event(EventKind.DEVICE_ERROR, index, 0, text)

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
        if not len(raw):
            return None, raw, []
        due = unwrapper.run_on(raw)
        if due is not None:
            self._due = int(raw[-1]) + self._lines.counter_step
            return None, due, []
        parts: list[tuple[Ints, Ints]] = []
        events: list[Event] = []
        base = kept = 0
        for run, anew in self._runs(raw):
            if anew:
                unwrapper.expect(0)
                events.append(Event(EventKind.NOTE, kept, 0, f"the device's counter began anew at {int(run[0])}"))
            placed = unwrapper.feed(run, np.ones(len(run), np.int64))
            events += [_moved(event, event.index + kept) for event in counter_events(placed, 1)]
            parts.append((placed.keep + base, placed.first))
            base += len(run)
            kept += len(placed.keep)
        keep = np.concatenate([part[0] for part in parts])
        first = np.concatenate([part[1] for part in parts])
        whole = len(keep) == len(raw) and bool((keep[1:] > keep[:-1]).all())
        return None if whole else keep, first, events

    def _runs(self, raw: Ints) -> list[tuple[Ints, bool]]:
        """Cut where a counter that never wraps goes far back: the device has begun anew."""
        if self._lines.counter_modulus is not None:
            return [(raw, False)]
        step, due, cuts = self._lines.counter_step, self._due, []
        for place, value in enumerate(raw.tolist()):
            if value < due - LATE_PACKETS * step:
                cuts.append(place)
                due = value
            due = max(due, value + step)
        self._due = due
        return [(run, n > 0) for n, run in enumerate(np.split(raw, cuts))]


def _moved(event: Event, index: int) -> Event:
    return Event(event.kind, index, event.count, event.text)


def _garbage(index: int, count: int, what: str) -> tuple[Event, ...]:
    return (Event(EventKind.GARBAGE, index, count, f"{count} bytes that are no reading: {what}"),)


def _added(events: list[Event], index: int, count: int, why: str) -> list[Event]:
    """Add garbage to the run of garbage at the same place, or begin a new one."""
    if events and events[-1].kind is EventKind.GARBAGE and events[-1].index == index:
        count += events[-1].count
        events = events[:-1]
    return [*events, *_garbage(index, count, f"lines that do not fit the template: {why}")]
