"""One text line against its template, exactly: the slow path that decides what a line says.

A line that does not fit in every character is garbage; nothing is guessed.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from logger.decoder.crc import check
from logger.decoder.template import (
    MAX_LINE,
    LineCheck,
    LineFormat,
    StatusWords,
    TemplatePart,
    compile_template,
    number_names,
)
from logger.edges.units import is_force, reading_factor, reading_unit
from logger.errors import QuantityError

if TYPE_CHECKING:
    from collections.abc import Callable

# Values that stand for "no value" in the open command standard for instruments: not a number, and infinity.
NOT_A_NUMBER: Final = 9.91e37
INFINITE: Final = 9.9e37

_BLANKS: Final = b" \t\r\n"  # a stray half of a line's end is as good as a blank
_DIGITS: Final = frozenset(b"0123456789")
_NUMBER_STARTS: Final = _DIGITS | frozenset(b"+-.,")
_HEX_DIGITS: Final = frozenset(b"0123456789abcdefABCDEF")
_MARK_SIGNS: Final = b"-*_#?>"  # a run of one of these in a number's place: no instrument writes a number so
_NUMERIC: Final = ("number", "counter")
MAX_COUNTER_DIGITS: Final = 15  # exact as a float
MAX_HEX_DIGITS: Final = 12
MAX_WORDS: Final = 20  # unknown words and misfits told in one run: a device that makes them up must not fill the memory
NAN: Final = float("nan")


@dataclass(slots=True)
class MatchedLine:
    """What one line says."""

    # raw number per numeric field, before scale and offset; NaN where a mark stands
    values: dict[str, float] = field(default_factory=dict)
    counter: int = 0
    unit: str = ""
    flags: set[str] = field(default_factory=set)  # ``overload``, ``error``, ``stale``, ``battery_low``
    # (int, int); where the numbers stand, in the order of the line: for the fast path
    spans: list[tuple[int, int]] = field(default_factory=list)
    unlisted: str = ""  # a word that the description does not list, and where it stands; empty: none
    direction: float = 1.0  # of the torque, by a word
    sign: float = 1.0
    factor: float = 1.0  # from the line's unit to the column's


class LineMatcher:
    """Matches lines of one format.

    Args:
        lines: Checked with ``template_faults``.
        unit: The torque column's unit: a reading in another unit is converted to it.
    """

    def __init__(self, lines: LineFormat, unit: str) -> None:
        self._parts = compile_template(lines.template)
        self._names = number_names(lines)
        self._check = lines.line_check
        self._decimal = lines.decimal.encode()
        self._thousands = lines.thousands.encode()
        self._forms = {name: field.form for name, field in lines.fields.items() if field.form != "decimal"}
        self.misfit = ""  # which part of the template the last line that did not fit came to grief at
        self._overload = _longest_first(lines.overload)
        self._error = _longest_first(lines.error)
        self._status = {name: _meanings(words) for name, words in {"status": lines.status, **lines.words}.items()}
        self._unit = reading_unit(unit)
        self._factors: dict[bytes, float | None] = {}
        self._steps: dict[str, Callable[[bytes, int, TemplatePart, TemplatePart | None, MatchedLine], int]] = {
            "number": self._number,
            "counter": self._counter,
            "unit": self._take_unit,
            "status": self._take_status,
        }

    def match(self, line: bytes) -> MatchedLine | None:
        """Give what a line says; None if it does not fit."""
        if len(line) > MAX_LINE:
            self.misfit = "it is too long"
            return None
        if self._check is not None:
            checked = _without_check(line, self._check)
            if checked is None:
                self.misfit = f"its check sum ({self._check.name}) does not hold"
                return None
            line = checked
        found = MatchedLine()
        i = 0
        for n, part in enumerate(self._parts):
            after = self._parts[n + 1] if n + 1 < len(self._parts) else None
            begin = i
            before = self._parts[n - 1] if n else None
            i = -1 if self._glued(line, i, before, part, after) else self._step(line, i, part, after, found)
            if i < 0:
                self._tell_misfit(part, line[begin:])
                return None
        if line[i:].strip(_BLANKS):
            self._tell_misfit(None, line[i:])
            return None
        found.values["torque"] *= found.factor * found.direction
        return found

    def _tell_misfit(self, part: TemplatePart | None, rest: bytes) -> None:
        came = "".join(c if c.isprintable() else "?" for c in rest.decode("utf-8", "replace"))[:30]
        wanted = "its end" if part is None else f"{{{part.name}}}" if part.name else f"'{part.text.decode()}'"
        wanted = "a blank between two numbers" if part is not None and part.kind == "blank" else wanted
        self.misfit = f"where {wanted} should be came '{came}'"

    @staticmethod
    def _glued(
        line: bytes, i: int, before: TemplatePart | None, part: TemplatePart, after: TemplatePart | None
    ) -> bool:
        """Tell whether nothing separates two numbers: no blank, no sign."""
        if (
            part.kind != "blank"
            or before is None
            or after is None
            or before.kind not in _NUMERIC
            or before.width is not None
        ):
            return False
        return after.kind in (*_NUMERIC, "sign") and line[i : i + 1] not in (b" ", b"\t", b"+", b"-")

    def _step(self, line: bytes, i: int, part: TemplatePart, after: TemplatePart | None, found: MatchedLine) -> int:
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

    def _number(self, line: bytes, i: int, part: TemplatePart, after: TemplatePart | None, found: MatchedLine) -> int:
        begin = _past_blanks(line, i)
        form = self._forms.get(part.name)
        stop = None if part.width is None else i + part.width
        within = line if stop is None else line[:stop]
        end = _scan_hex(within, begin) if form else scan_number(within, begin, self._decimal, self._thousands)
        word = line[begin:end]
        if stop is not None and (stop > len(line) or end > stop or line[end:stop].strip(_BLANKS)):
            word = b""
        mark = word if word in self._overload or word in self._error else b""
        if not word:
            mark = next((m for m in (*self._overload, *self._error) if line.startswith(m, begin)), b"")
            mark = _sign_run(line, begin) or mark if mark[:1] in _MARK_SIGNS or not mark else mark
            if not mark:
                return -1
            end = begin + len(mark)
            if stop is not None and (stop > len(line) or end > stop or line[end:stop].strip(_BLANKS)):
                return -1
        if mark:
            self._flag(part, "overload" if mark in self._overload else "error", found)
        else:
            self._value(part, _hex_value(word, form) if form else self._float(word), found)
            found.spans.append((begin, end))
        return end if stop is None else stop

    def _float(self, word: bytes) -> float:
        plain = word.replace(self._thousands, b"") if self._thousands else word
        return float(plain.replace(self._decimal, b"."))

    def _flag(self, part: TemplatePart, name: str, found: MatchedLine) -> None:
        found.values[part.name] = NAN
        if part.name == "torque":
            found.flags.add(name)

    def _value(self, part: TemplatePart, value: float, found: MatchedLine) -> None:
        if abs(value) >= INFINITE:
            return self._flag(part, "error" if abs(value) == NOT_A_NUMBER else "overload", found)
        found.values[part.name] = value * found.sign
        found.sign = 1.0
        return None

    def _counter(self, line: bytes, i: int, part: TemplatePart, after: TemplatePart | None, found: MatchedLine) -> int:
        begin = end = _past_blanks(line, i)
        stop = len(line) if part.width is None else min(len(line), i + part.width)
        while end < stop and line[end] in _DIGITS:
            end += 1
        if not 0 < end - begin <= MAX_COUNTER_DIGITS or (part.width is not None and end != i + part.width):
            return -1
        found.counter = int(line[begin:end])
        found.spans.append((begin, end))
        return end

    def _take_unit(
        self, line: bytes, i: int, part: TemplatePart, after: TemplatePart | None, found: MatchedLine
    ) -> int:
        end = _text_end(line, i, part, after)
        if end < 0:
            return -1
        word = line[i:end].strip(_BLANKS)
        if word[:1] in (b",", b";", b"|", b".") or any(c in _DIGITS for c in word):
            return -1  # the rest of a number is no unit
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

    def _take_status(
        self, line: bytes, i: int, part: TemplatePart, after: TemplatePart | None, found: MatchedLine
    ) -> int:
        end = _text_end(line, i, part, after)
        if end < 0:
            return -1
        word = line[i:end].strip(_BLANKS)
        meaning = self._status.get(part.name, {}).get(word)
        if meaning is None:
            shown = "".join(c if c.isprintable() else "?" for c in word.decode("utf-8", "replace"))[:20]
            found.unlisted = f"'{shown}' at {{{part.name}}}"
        if meaning == "negative":
            found.direction = -1.0
        elif meaning != "ok":
            found.flags.add(meaning or "error")
        return end


def _meanings(words: StatusWords) -> dict[bytes, str]:
    return {
        word.strip().encode(): name
        for name in ("ok", "negative", "overload", "error", "stale", "battery_low")
        for word in getattr(words, name)
    }


def _longest_first(marks: tuple[str, ...]) -> tuple[bytes, ...]:
    return tuple(sorted((mark.strip().encode() for mark in marks if mark.strip()), key=len, reverse=True))


def _past_blanks(line: bytes, i: int) -> int:
    while i < len(line) and line[i] in _BLANKS:
        i += 1
    return i


def _text_end(line: bytes, i: int, part: TemplatePart, after: TemplatePart | None) -> int:
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


def _scan_hex(line: bytes, i: int) -> int:
    """Give where the hexadecimal digits that begin at ``i`` end."""
    end = i
    while end < len(line) and end - i < MAX_HEX_DIGITS and line[end] in _HEX_DIGITS:
        end += 1
    return end


def _hex_value(word: bytes, form: str) -> float:
    value, full = int(word, 16), 1 << (4 * len(word))
    return float(value - full if form == "signed hex" and 2 * value >= full else value)


def _sign_run(line: bytes, i: int) -> bytes:
    """Give the dashes, stars ... that stand at ``i``, if there are two or more of one kind."""
    end = i
    while end < len(line) and line[end] == line[i] and line[end] in _MARK_SIGNS:
        end += 1
    return line[i:end] if end - i >= 2 else b""


def scan_number(line: bytes, i: int, decimal: bytes, thousands: bytes = b"") -> int:
    """Give where the number that begins at ``i`` ends (NR1, NR2 or NR3 of IEEE 488.2); ``i`` if none begins there.

    Groups of three digits behind ``thousands`` belong to it where one to three digits stand before the first.
    """
    j = i + 1 if line[i : i + 1] in (b"+", b"-") else i
    whole = j
    while j < len(line) and line[j] in _DIGITS:
        j += 1
    digits = j - whole
    if thousands and 0 < digits <= 3:
        while line[j : j + 1] == thousands and _three_digits(line, j + 1):
            j += 4
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


def _three_digits(line: bytes, i: int) -> bool:
    """Tell whether three digits, and no fourth one, stand at ``i``."""
    group = line[i : i + 4]
    return len(group) >= 3 and group[:3].isdigit() and not group[3:].isdigit()


def _without_check(line: bytes, form: LineCheck) -> bytes | None:
    """Give a line without its mark and check sum; None if the check sum differs.

    Of one sent as bytes the last may be a carriage return itself, or stand before that of the line's end.
    """
    if form.form != "bytes":
        return _checked(line.rstrip(_BLANKS), form)
    body = _checked(line, form)
    return _checked(line[:-1], form) if body is None and line.endswith(b"\r") else body


def _checked(line: bytes, form: LineCheck) -> bytes | None:
    stated, mark = line[len(line) - form.size :], form.mark.encode()
    covered = line[: len(line) - form.size]
    body = covered.removesuffix(mark)
    if len(line) <= form.size or not body or (mark and body == covered):
        return None
    try:
        value = stated if form.form == "bytes" else bytes.fromhex(stated.decode("ascii"))
    except (ValueError, UnicodeDecodeError):
        return None
    total = check((covered if form.covers_mark else body)[form.covers_from :], form.name)
    return body if int.from_bytes(value, form.order) == total else None
