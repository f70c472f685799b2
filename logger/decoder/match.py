"""One text line against its template, exactly: the slow path that decides what a line says.

A line that does not fit in every character is garbage; nothing is guessed.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from logger.decoder.template import MAX_LINE, LineFormat, Part, compile_template, number_names
from logger.errors import QuantityError
from logger.units import is_force, reading_factor, reading_unit

if TYPE_CHECKING:
    from collections.abc import Callable

# Values that stand for "no value" in the open command standard for instruments: not a number, and infinity.
NOT_A_NUMBER: Final = 9.91e37
INFINITE: Final = 9.9e37

_BLANKS: Final = b" \t\r\n"  # a stray half of a line's end is as good as a blank
_DIGITS: Final = frozenset(b"0123456789")
_NUMBER_STARTS: Final = _DIGITS | frozenset(b"+-.,")
MAX_COUNTER_DIGITS: Final = 15  # exact as a float
NAN: Final = float("nan")


@dataclass(slots=True)
class Line:
    """What one line says.

    Attributes
    ----------
    values : dict of str to float
        Raw number per numeric field, before scale and offset; NaN where a mark stands.
    flags : set of str
        ``overload``, ``error``, ``stale``, ``battery_low``.
    spans : list of (int, int)
        Where the numbers stand, in the order of the line: for the fast path.
    """

    values: dict[str, float] = field(default_factory=dict)
    counter: int = 0
    unit: str = ""
    flags: set[str] = field(default_factory=set)
    spans: list[tuple[int, int]] = field(default_factory=list)
    sign: float = 1.0
    factor: float = 1.0  # from the line's unit to the column's


class LineMatcher:
    """Matches lines of one format.

    Parameters
    ----------
    lines : LineFormat
        Checked with ``template_faults``.
    unit : str
        The torque column's unit: a reading in another unit is converted to it.
    """

    def __init__(self, lines: LineFormat, unit: str) -> None:
        self._parts = compile_template(lines.template)
        self._names = number_names(lines)
        self._checksum = lines.checksum == "xor"
        self._decimal = lines.decimal.encode()
        self._overload = _longest_first(lines.overload)
        self._error = _longest_first(lines.error)
        words = lines.status
        self._status = {
            word.strip().encode(): name
            for name in ("ok", "overload", "error", "stale", "battery_low")
            for word in getattr(words, name)
        }
        self._unit = reading_unit(unit)
        self._factors: dict[bytes, float | None] = {}
        self._steps: dict[str, Callable[[bytes, int, Part, Part | None, Line], int]] = {
            "number": self._number,
            "counter": self._counter,
            "unit": self._take_unit,
            "status": self._take_status,
        }

    def match(self, line: bytes) -> Line | None:
        """Give what a line says; None if it does not fit."""
        if len(line) > MAX_LINE:
            return None
        if self._checksum:
            checked = _without_checksum(line)
            if checked is None:
                return None
            line = checked
        found = Line()
        i = 0
        for n, part in enumerate(self._parts):
            after = self._parts[n + 1] if n + 1 < len(self._parts) else None
            i = self._step(line, i, part, after, found)
            if i < 0:
                return None
        if line[i:].strip(_BLANKS):
            return None
        if found.factor != 1.0:
            found.values["torque"] *= found.factor
        return found

    def _step(self, line: bytes, i: int, part: Part, after: Part | None, found: Line) -> int:
        """Take one part at ``i`` and give where it ends; -1 if it does not fit."""
        if part.kind == "text":
            if not line.startswith(part.text, i):
                i = _past_blanks(line, i)
            return i + len(part.text) if line.startswith(part.text, i) else -1
        if part.kind == "blank":
            return _past_blanks(line, i)
        if part.kind == "sign":
            if line[i : i + 1] in (b"+", b"-", b" "):
                found.sign = -1.0 if line[i : i + 1] == b"-" else 1.0
                return i + 1
            return i
        if part.kind == "skip":
            return _text_end(line, i, part, after)
        return self._steps[part.kind](line, i, part, after, found)

    def _number(self, line: bytes, i: int, part: Part, after: Part | None, found: Line) -> int:
        begin = _past_blanks(line, i)
        end = scan_number(line, begin, self._decimal)
        word = line[begin:end]
        stop = None if part.width is None else i + part.width
        if stop is not None and (stop > len(line) or end > stop or line[end:stop].strip(_BLANKS)):
            word = b""
        mark = word if word in self._overload or word in self._error else b""
        if not word:
            mark = next((m for m in (*self._overload, *self._error) if line.startswith(m, begin)), b"")
            if not mark:
                return -1
            end = begin + len(mark)
            if stop is not None and (stop > len(line) or end > stop or line[end:stop].strip(_BLANKS)):
                return -1
        if mark:
            self._flag(part, "overload" if mark in self._overload else "error", found)
        else:
            self._value(part, float(word.replace(self._decimal, b".")), found)
            found.spans.append((begin, end))
        return end if stop is None else stop

    def _flag(self, part: Part, name: str, found: Line) -> None:
        found.values[part.name] = NAN
        if part.name == "torque":
            found.flags.add(name)

    def _value(self, part: Part, value: float, found: Line) -> None:
        if abs(value) >= INFINITE:
            return self._flag(part, "error" if abs(value) == NOT_A_NUMBER else "overload", found)
        found.values[part.name] = value * found.sign
        found.sign = 1.0
        return None

    def _counter(self, line: bytes, i: int, part: Part, after: Part | None, found: Line) -> int:
        begin = end = _past_blanks(line, i)
        stop = len(line) if part.width is None else min(len(line), i + part.width)
        while end < stop and line[end] in _DIGITS:
            end += 1
        if not 0 < end - begin <= MAX_COUNTER_DIGITS or (part.width is not None and end != i + part.width):
            return -1
        found.counter = int(line[begin:end])
        found.spans.append((begin, end))
        return end

    def _take_unit(self, line: bytes, i: int, part: Part, after: Part | None, found: Line) -> int:
        end = _text_end(line, i, part, after)
        if end < 0:
            return -1
        word = line[i:end].strip(_BLANKS)
        if word not in self._factors:
            if len(self._factors) > 100:  # a device that makes up units must not fill the memory
                self._factors.clear()
            self._factors[word] = self._factor(word)
        factor = self._factors[word]
        if factor != 1.0:
            found.unit = word.decode("utf-8", "replace")
        if factor is None:
            found.flags.add("error")
        found.factor = NAN if factor is None else factor
        return end

    def _factor(self, word: bytes) -> float | None:
        """Give what turns a reading with this unit into the column's unit; None if the unit is not known."""
        try:
            unit = reading_unit(word.decode("utf-8"))
            if is_force(unit) != is_force(self._unit):
                return None
        except (QuantityError, UnicodeDecodeError):
            return None
        return 1.0 if unit == self._unit else reading_factor(unit) / reading_factor(self._unit)

    def _take_status(self, line: bytes, i: int, part: Part, after: Part | None, found: Line) -> int:
        end = _text_end(line, i, part, after)
        if end < 0:
            return -1
        found.flags.add(self._status.get(line[i:end].strip(_BLANKS), "error"))
        found.flags.discard("ok")
        return end


def _longest_first(marks: tuple[str, ...]) -> tuple[bytes, ...]:
    return tuple(sorted((mark.strip().encode() for mark in marks if mark.strip()), key=len, reverse=True))


def _past_blanks(line: bytes, i: int) -> int:
    while i < len(line) and line[i] in _BLANKS:
        i += 1
    return i


def _text_end(line: bytes, i: int, part: Part, after: Part | None) -> int:
    """Give where a text field that begins at ``i`` ends; -1 if its end is not there."""
    if part.width is not None:
        return i + part.width if i + part.width <= len(line) else -1
    if after is None:
        return len(line)
    if after.kind == "text":
        return line.find(after.text, i)
    i = _past_blanks(line, i)
    stops = frozenset(_BLANKS) if after.kind == "blank" else _NUMBER_STARTS | frozenset(_BLANKS)
    while i < len(line) and line[i] not in stops:
        i += 1
    return i


def scan_number(line: bytes, i: int, decimal: bytes) -> int:
    """Give where the number that begins at ``i`` ends (NR1, NR2 or NR3 of IEEE 488.2); ``i`` if none begins there."""
    j = i + 1 if line[i : i + 1] in (b"+", b"-") else i
    whole = j
    while j < len(line) and line[j] in _DIGITS:
        j += 1
    digits = j - whole
    if line[j : j + 1] == decimal:
        fraction = j + 1
        j = fraction
        while j < len(line) and line[j] in _DIGITS:
            j += 1
        digits += j - fraction
    if digits == 0:
        return i
    if line[j : j + 1] in (b"e", b"E"):
        k = j + 2 if line[j + 1 : j + 2] in (b"+", b"-") else j + 1
        last = k
        while last < len(line) and line[last] in _DIGITS:
            last += 1
        if last > k:
            return last
    return j


def _without_checksum(line: bytes) -> bytes | None:
    """Give a line without its ``*hh``; None if the XOR of all between its first character and ``*`` differs."""
    body, star, stated = line.rstrip(_BLANKS).rpartition(b"*")
    if not star or len(stated) != 2 or not body:
        return None
    total = 0
    for byte in body[1:]:
        total ^= byte
    try:
        return body if total == int(stated.decode("ascii"), 16) else None
    except (ValueError, UnicodeDecodeError):
        return None
