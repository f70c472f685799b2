"""Many text lines at once: the fast path for lines that all look like one that was matched exactly.

All that stands between the numbers is replaced by the punctuation of a JSON array, whose parser (compiled, strict) then
reads the numbers. ``LineShape.read`` gives values only if the exact path would read every single line alike, and
nothing otherwise: a text that is not replaced, a number too many or too few, a mark or an odd character make it fail.

Measured on 4 KiB chunks: about ten times as fast as a pattern per line, three times as fast as ``split`` and ``float``.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import chain
from typing import TYPE_CHECKING, Any, Final

import msgspec
import numpy as np

from logger.decoder.match import INFINITE, MAX_COUNTER_DIGITS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.samples import Floats

_NUMERIC: Final = b"0123456789+-.,[] \t\r\n"  # what is left of lines that are read without an exponent
_PLAIN_LENGTH: Final = 37  # without an exponent, a shorter number stays far below INFINITE
_READERS: Final[dict[tuple[bool, ...], msgspec.json.Decoder[Any]]] = {}


@dataclass(frozen=True, slots=True)
class LineShape:
    """What stands around the numbers of a line."""

    # prefix, gap, suffix: before the first number, between each two, behind the last; blanks before a number excluded
    prefix: bytes
    gap: bytes
    suffix: bytes
    integers: tuple[bool, ...]  # which numbers are counters: digits only
    comma: bool  # the decimal mark is a comma

    def read(self, text: bytes, end: bytes, count: int, longest: int) -> Floats | None:
        """Read whole lines.

        Args:
            text: Lines, the last one with its end.
            end: What ends each line.
            count, longest: How many lines there are, and the bytes of the longest one.

        Returns:
            shape (count, k); The numbers of each line; None if any line does not have this look.
        """
        last = self.suffix + end
        if not text.startswith(self.prefix) or not text.endswith(last):
            return None
        body = self._punctuated(text[len(self.prefix) : len(text) - len(last)], last + self.prefix, count)
        if body is None:
            return None
        values = self._parsed(b"[[" + body + b"]]" if len(self.integers) > 1 else b"[" + body + b"]", count)
        if values is None:
            values = self._padded(body, count)
        large = longest > _PLAIN_LENGTH or b"e" in body or b"E" in body
        if values is None or (large and not np.abs(values).max() < INFINITE):
            return None
        return values if self._counters_fit(values, body) else None

    def _punctuated(self, body: bytes, joint: bytes, count: int) -> bytes | None:
        """Replace what stands between numbers; None if it does not stand between all of them.

        Without these counts a line's end or a comma that stands alone would pass for what it becomes.
        """
        if body.count(joint) != count - 1:
            return None
        gaps = len(self.integers) - 1
        if not self.comma:
            body = body.replace(joint, b"],[" if gaps else b",")
            if not gaps or self.gap == b",":
                return body
            return body.replace(self.gap, b",") if body.count(self.gap) == gaps * count else None
        body = body.replace(joint, b"\n")
        if gaps and body.count(self.gap) != gaps * count:
            return None
        body = body.replace(self.gap, b"\t") if gaps else body
        body = body.replace(b".", b"?").replace(b",", b".")  # a point would be no decimal mark here
        return body.replace(b"\n", b"],[" if gaps else b",").replace(b"\t", b",")

    def _parsed(self, text: bytes, count: int) -> Floats | None:
        try:
            rows = _reader(self.integers).decode(text)
        except (msgspec.DecodeError, UnicodeDecodeError):
            return None
        return _array(rows, count, len(self.integers))

    def _padded(self, body: bytes, count: int) -> Floats | None:
        """Read numbers that are none in JSON: ``+1.5``, ``007.5``, ``.5``."""
        if body.translate(None, _NUMERIC):
            return None
        try:
            if len(self.integers) == 1:
                return _array(list(map(float, body.split(b","))), count, 1)
            rows = [row.split(b",") for row in body.split(b"],[")]
            if any(len(row) != len(self.integers) for row in rows):
                return None
            if not all(_counts(row[j].strip()) for j, whole in enumerate(self.integers) if whole for row in rows):
                return None
            return _array([tuple(map(float, row)) for row in rows], count, len(self.integers))
        except ValueError:
            return None

    def _counters_fit(self, values: Floats, body: bytes) -> bool:
        """Tell whether the counters are digits only, and not too many of them."""
        for j, whole in enumerate(self.integers):
            column = values[:, j]
            if whole and (
                column.min() < 0 or column.max() >= 10.0**MAX_COUNTER_DIGITS or (b"-0" in body and not column.all())
            ):
                return False
        return True


def _counts(word: bytes) -> bool:
    """Tell whether a word is a counter: as ``logger.decoder.match`` reads it, zeros in front included."""
    return word.isdigit() and len(word) <= MAX_COUNTER_DIGITS


def _reader(integers: tuple[bool, ...]) -> msgspec.json.Decoder[Any]:
    if integers not in _READERS:
        types = tuple(int if whole else float for whole in integers)
        wanted: Any = list[tuple[types]] if len(types) > 1 else list[types[0]]  # type: ignore[valid-type]
        _READERS[integers] = msgspec.json.Decoder(wanted)
    return _READERS[integers]


def _array(rows: Sequence[Any], count: int, width: int) -> Floats | None:
    if len(rows) != count:
        return None
    flat = chain.from_iterable(rows) if width > 1 else rows
    return np.fromiter(flat, np.float64, count * width).reshape(count, width)


def learn(line: bytes, spans: Sequence[tuple[int, int]], integers: Sequence[bool], comma: bool) -> LineShape | None:
    """Take the look of a line that was matched exactly; None if the fast path cannot tell such lines apart."""
    borders = [0, *(edge for span in spans for edge in span), len(line)]
    prefix, *gaps, suffix = (line[borders[i] : borders[i + 1]] for i in range(0, len(borders), 2))
    gaps = [gap.rstrip(b" ") or gap for gap in gaps]
    if len(set(gaps)) > 1 or b"" in gaps or any(c in b"\t\r\n" for gap in gaps for c in gap):
        return None
    return LineShape(prefix.rstrip(b" "), gaps[0] if gaps else b"", suffix.rstrip(b"\r"), tuple(integers), comma)
