"""Many text lines at once: the fast path for lines that all look like one that was matched exactly.

``Layout.read`` vouches only for lines that the exact path would read alike, and leaves every other line to it:

1. what stands before, between and behind the numbers is what stood there in the model line, byte by byte; only the
   blanks before a number may differ;
2. a number is an optional sign, digits and at most one decimal mark, with at most 15 digits. As whole number and power
   of ten are then exact, their quotient is the float nearest to the text, as ``float`` gives it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, NamedTuple

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from logger.samples import Floats, Ints

    Bools = NDArray[np.bool_]
    Bytes = NDArray[np.uint8]

MAX_DIGITS: Final = 15  # 10^15 < 2^53
_POWERS: Final = 10.0 ** np.arange(MAX_DIGITS + 1)
_BLANK, _PLUS, _MINUS = 32, 43, 45


class Read(NamedTuple):
    """Lines read at once.

    Attributes
    ----------
    good : ndarray of bool, shape (n,)
        Lines that this path vouches for.
    values : ndarray, shape (m, k)
        Their numbers.
    """

    good: Bools
    values: Floats


@dataclass(frozen=True, slots=True)
class Layout:
    """The look of a line.

    Attributes
    ----------
    gaps : tuple of bytes
        What stands before the first number, between two, and behind the last; blanks before a number left out.
    widths : tuple of int or None
        Characters that a number takes with the blanks before it, where the template fixes them.
    integers : tuple of bool
        Which numbers have digits only.
    decimal : int
        The decimal mark.
    """

    gaps: tuple[bytes, ...]
    widths: tuple[int | None, ...]
    integers: tuple[bool, ...]
    decimal: int

    def read(self, data: Bytes, starts: Ints, stops: Ints) -> Read:
        """Read the lines ``data[starts[i]:stops[i]]`` as far as they have this look.

        Parameters
        ----------
        data : ndarray of uint8, shape (b,)
            Begins and ends with a line's end.
        starts, stops : ndarray of int, shape (n,)
            Borders of the lines, in order.
        """
        digit = (data - 48) < 10
        numeric = digit | (data == self.decimal) | (data == _PLUS) | (data == _MINUS)
        for j in range(len(self.gaps[0])):  # a prefix such as "CH1 " is no number,
            numeric[np.minimum(starts + j, stops)] = False
        for j in range(1, len(self.gaps[-1]) + 1):  # nor is the point in a suffix such as "N.m"
            numeric[np.maximum(stops - j, starts)] = False
        begins, ends, good = self._runs(numeric, starts, stops)
        before = np.zeros(len(data) + 1, np.int32)  # digits before each byte
        np.cumsum(digit, out=before[1:])
        texts = np.zeros(len(data) + 1, np.int32)  # what is neither number nor blank, before each byte
        np.cumsum(~numeric & (data != _BLANK), out=texts[1:])
        fit = self._gaps_fit(data, texts, starts[good], stops[good], begins, ends)
        digits = before[ends] - before[begins]
        sign = data[begins]
        signed = (sign == _PLUS) | (sign == _MINUS)
        fraction = ends - begins - digits - signed  # bytes that are neither digit nor leading sign: the decimal mark
        fit &= ((digits > 0) & (digits <= MAX_DIGITS) & (fraction <= 1)).all(1)
        for j, whole in enumerate(self.integers):
            if whole:
                fit &= ends[:, j] - begins[:, j] == digits[:, j]
        places, marked = self._decimals(data, before, begins, ends, fraction)
        fit &= marked.all(1)
        if not fit.all():
            good[good] = fit
            begins, ends, digits, sign, places = (a[fit] for a in (begins, ends, digits, sign, places))
        whole_numbers = _whole_numbers(data, digit, before, begins, ends, digits)
        values = whole_numbers / _POWERS[places]
        np.negative(values, out=values, where=sign == _MINUS)
        return Read(good, values)

    def _runs(self, numeric: Bools, starts: Ints, stops: Ints) -> tuple[Ints, Ints, Bools]:
        """Find the numeric runs of every line that has as many as the model: borders (m, k) and which lines."""
        edges = np.flatnonzero(numeric[1:] != numeric[:-1]) + 1
        begins, ends = edges[0::2], edges[1::2]
        count = len(self.integers)
        if len(begins) == count * len(starts):
            first, last = begins[::count], ends[count - 1 :: count]
            if (first >= starts).all() and (last <= stops).all():
                return begins.reshape(-1, count), ends.reshape(-1, count), np.ones(len(starts), bool)
        low = np.searchsorted(begins, starts)
        good = np.searchsorted(begins, stops) - low == count
        index = low[good][:, None] + np.arange(count)
        return begins[index], ends[index], good

    def _gaps_fit(
        self, data: Bytes, texts: NDArray[np.int32], starts: Ints, stops: Ints, begins: Ints, ends: Ints
    ) -> Bools:
        fit = np.ones(len(starts), bool)
        for j, gap in enumerate(self.gaps):
            left = starts if j == 0 else ends[:, j - 1]
            for k, byte in enumerate(gap):
                fit &= data.take(left + k, mode="clip") == byte
            left = left + len(gap)
            if j == len(self.integers):
                fit &= left == stops
                continue
            right = begins[:, j]
            fit &= (left <= right) & (texts.take(left, mode="clip") == texts[right])  # the rest is blanks
            width = self.widths[j]
            if width is not None:
                fit &= ends[:, j] - left == width
        return fit

    def _decimals(
        self, data: Bytes, before: NDArray[np.int32], begins: Ints, ends: Ints, fraction: Ints
    ) -> tuple[Ints, Bools]:
        """Give the digits behind each decimal mark, and whether the mark is what it is taken for."""
        marks = np.flatnonzero(data == self.decimal)
        if not len(marks):
            return np.zeros_like(fraction), fraction == 0
        at = marks.take(np.searchsorted(marks, begins), mode="clip")
        inside = (at >= begins) & (at < ends)
        return np.where(inside, before[ends] - before[at], 0), inside == (fraction == 1)


def _whole_numbers(
    data: Bytes, digit: Bools, before: NDArray[np.int32], begins: Ints, ends: Ints, digits: Ints
) -> Floats:
    """Give the digits of each run as a whole number, shape (m, k)."""
    if not len(begins):
        return np.empty(begins.shape)
    at = np.flatnonzero(digit)
    if len(at) == digits.sum():
        left = before[begins].ravel()
        order = before[ends].ravel()
    else:  # some digits belong to lines that do not fit
        inside = np.zeros(len(data) + 1, np.int8)
        inside[begins.ravel()] += 1
        inside[ends.ravel()] -= 1
        at = at[np.cumsum(inside, dtype=np.int8)[at] > 0]
        order = np.cumsum(digits)
        left = order - digits.ravel()
    power = np.repeat(order, digits.ravel()) - np.arange(1, len(at) + 1)
    products = (data[at] - 48.0) * _POWERS[power]
    return np.add.reduceat(products, left).reshape(begins.shape)


def learn(
    line: bytes, spans: Sequence[tuple[int, int]], widths: Sequence[int | None], integers: Sequence[bool], decimal: int
) -> Layout | None:
    """Take the look of a line that was matched exactly; None if its other text could be taken for numbers."""
    borders = [0, *(edge for span in spans for edge in span), len(line)]
    gaps = [line[borders[i] : borders[i + 1]] for i in range(0, len(borders), 2)]
    gaps[:-1] = [gap.rstrip(b" ") for gap in gaps[:-1]]
    numeric = frozenset(b"0123456789+-" + bytes([decimal]))
    if any(numeric.intersection(gap) for gap in gaps[1:-1]) or b"\t" in line:
        return None
    return Layout(tuple(gaps), tuple(widths), tuple(integers), decimal)
