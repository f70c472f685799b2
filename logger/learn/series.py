"""Numbers in binary frames or packets of one length: every way to read one, and which is meant.

A number is recognised by its course: read at the right place, with the right width and byte order, a torque under load
moves smoothly, and is as noisy at rest as under load.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.decoder.floats import WIDTH, NumberType, Order, numbers
from logger.learn.frames import ORDERS, SMOOTH, rough
from logger.learn.lines import MIN_LINES

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.decoder.floats import Bytes
    from logger.decoder.standard import PresentationFormat

AS_GOOD: Final = 1.6  # roughness of hypotheses that are held alike
MORE_EVEN: Final = 0.5  # of the logarithm of noise at rest to noise under load
MOST_HEAD: Final = 8
_TYPES: Final[tuple[NumberType, ...]] = ("float64", "float32", "s32", "s24", "s16", "u16")


@dataclass(frozen=True, slots=True)
class Series:
    """One number read at one place: of ``count`` samples, ``stride`` bytes apart, from ``begin``."""

    begin: int
    stride: int
    count: int
    kind: NumberType
    order: Order
    rough: float

    @property
    def covered(self) -> int:
        """Bytes of a packet that it explains."""
        return self.count * WIDTH[self.kind]

    def values(self, rows: Bytes) -> NDArray[np.float64]:
        """Read it in packets, shape (n, length); gives n times ``count`` values."""
        return _series(rows, self.begin, self.stride, self.count, self.kind, self.order)


def _series(rows: Bytes, begin: int, stride: int, count: int, kind: NumberType, order: Order) -> NDArray[np.float64]:
    width = WIDTH[kind]
    parts = [
        numbers(np.ascontiguousarray(rows[:, begin + i * stride : begin + i * stride + width]), kind, order)
        for i in range(count)
    ]
    return np.stack(parts, axis=1).reshape(-1)


def _uses_bytes(rows: Bytes, begin: int, kind: NumberType, order: Order) -> bool:
    """Tell whether a number there would use its bytes.

    Of a whole number the lowest is busy, the highest no other, still number; of a float the mantissa moves where it
    begins, below the exponent.
    """
    if kind.startswith("float"):
        return len(np.unique(rows[:, begin + (WIDTH[kind] - 2 if order == "little" else 1)])) > 3
    ends = rows[:, begin], rows[:, begin + WIDTH[kind] - 1]
    low, high = ends if order == "little" else ends[::-1]
    still = len(np.unique(high)) == 1
    return len(np.unique(low)) > 3 and not (still and int(high[0]) not in (0x00, 0xFF))


def _is_one(rows: Bytes, begin: int, kind: NumberType, order: Order) -> bool:
    """Tell whether 64 bits are one number: the lower half moves, and is none of its own; fewer bits are one."""
    if kind != "float64":
        return True
    low = begin if order == "little" else begin + 4
    halves: tuple[NumberType, ...] = ("float32", "u32")
    own = [rough(_series(rows[:600], low, 4, 1, half, order)) for half in halves]
    smooth = any(r is not None and r < SMOOTH for r in own)
    return not smooth and len(np.unique(rows[:600, low : low + 4], axis=0)) >= MIN_LINES


def _hypotheses(rows: Bytes, after: int, tail: int, form: PresentationFormat | None) -> Iterator[Series]:
    """Read the packet in every way that may be meant, and give those in which something moves smoothly."""
    end = rows.shape[1] - tail
    told = form.type if form is not None else None
    kinds = (told,) if told is not None else _TYPES
    for kind, order in product(kinds, ORDERS):
        width = WIDTH[kind]
        for begin in range(after, min(end - width, after + MOST_HEAD) + 1):
            room = end - begin
            for stride in {width, *(s for s in (4, 6, 8, 12) if s > width)}:
                for spare in (0, 1, 2):
                    count = (room - spare) // stride
                    if (
                        count < 1
                        or (count > 1 and (room - spare) % stride)
                        or (count > 1 and stride != width and count < 3)
                    ):
                        continue
                    if not _uses_bytes(rows, begin, kind, order):
                        continue
                    if told is None and not _is_one(rows, begin, kind, order):
                        continue
                    roughness = rough(_series(rows, begin, stride, count, kind, order))
                    if roughness is not None and roughness < SMOOTH:
                        yield Series(begin, stride, count, kind, order, roughness)


def best_series(rows: Bytes, after: int, tail: int, form: PresentationFormat | None) -> Series | None:
    """Choose how the packet is read: among the smoothest, the one that explains most of its bytes."""
    found = _likely(rows[:600], list(_hypotheses(rows[:600], after, tail, form)))
    if not found:
        return None
    several = [one for one in found if one.count > 1]
    pool = several if several and _continuous(rows, several) else [one for one in found if one.count == 1]
    if not pool:
        return None
    least = min(one.rough for one in pool)
    alike = [one for one in pool if one.rough <= AS_GOOD * least]
    return max(alike, key=lambda one: (one.covered, -one.rough, -one.begin))


def _likely(rows: Bytes, found: list[Series]) -> list[Series]:
    """Leave out whole numbers that share bytes with a float as even as they are, and floats far less even than it.

    A torque is as noisy at rest as under load. The bits of a float read as a whole number, or a part of them, go by its
    logarithm: smoother than the float itself, and far noisier at rest. Whole numbers read as a float are hardly ever of
    the size of a torque.
    """
    uneven = [_unevenness(one.values(rows)) for one in found]
    floats = [(one, own) for one, own in zip(found, uneven, strict=True) if one.kind.startswith("float")]
    return [
        one
        for one, own in zip(found, uneven, strict=True)
        if not any(
            even < own + (-MORE_EVEN if one.kind.startswith("float") else MORE_EVEN) and _overlap(one, other)
            for other, even in floats
        )
    ]


def _overlap(one: Series, other: Series) -> bool:
    ends = [it.begin + it.stride * (it.count - 1) + WIDTH[it.kind] for it in (one, other)]
    return one.begin < ends[1] and other.begin < ends[0]


def _unevenness(values: NDArray[np.float64]) -> float:
    """Give how much more a course moves from reading to reading at rest than under load, or less; 0 if it does not."""
    steps, size = np.abs(np.diff(values)), np.abs(values[1:])
    low, high = np.quantile(size, (0.3, 0.7))
    at_rest, loaded = (float(np.mean(steps[part])) for part in (size <= low, size >= high))
    return abs(float(np.log(max(at_rest, 1e-300) / max(loaded, 1e-300))))


def _continuous(rows: Bytes, several: Sequence[Series]) -> bool:
    """Tell whether a packet's numbers are samples of one course: they move less inside it than across."""
    best = min(several, key=lambda one: one.rough)
    table = best.values(rows).reshape(len(rows), best.count)
    inside = float(np.mean(np.abs(np.diff(table, axis=1))))
    across = float(np.mean(np.abs(np.diff(table, axis=0))))
    return inside <= across


def cover(rows: Bytes, after: int, tail: int, best: Series) -> list[Series]:
    """Give the numbers of a packet of one sample: the smoothest first, none overlapping another."""
    taken = set(range(best.begin, best.begin + WIDTH[best.kind]))
    found = [best]
    end = rows.shape[1] - tail
    options = []
    for kind, order in product(_TYPES, ORDERS):
        for begin in range(after, end - WIDTH[kind] + 1):
            if not _uses_bytes(rows, begin, kind, order) or not _is_one(rows, begin, kind, order):
                continue
            roughness = rough(_series(rows[:600], begin, WIDTH[kind], 1, kind, order))
            if roughness is not None and roughness < SMOOTH:
                options.append(Series(begin, WIDTH[kind], 1, kind, order, roughness))
    while options:
        options = [one for one in options if not taken & set(range(one.begin, one.begin + WIDTH[one.kind]))]
        if not options:
            break
        least = min(one.rough for one in options)
        following = max(
            (one for one in options if one.rough <= AS_GOOD * least),
            key=lambda one: (one.covered, one.order == best.order),
        )
        found.append(following)
        taken |= set(range(following.begin, following.begin + WIDTH[following.kind]))
    return sorted(found, key=lambda one: one.begin)
