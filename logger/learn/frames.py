"""Frames of equal length in an unknown device's bytes: sync bytes, check sum; and how smoothly a number moves."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING, Final, get_args

import numpy as np

from logger.decoder.crc import CHECK_BYTES, CheckName, checks
from logger.decoder.floats import NumberType, Order, numbers
from logger.decoder.layouts import CheckSum
from logger.learn.lines import MIN_LINES, Notes

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.decoder.floats import Bytes

STEADY: Final = 0.98  # of the frames have the same byte here: a mark
MOST_FRAMES: Final = 3000
LONGEST: Final = 160
_CHECKED: Final = 40
_LEADS: Final = (0xAA, 0x55, 0xA5, 0x5A, 0x7E, 0xFE, 0xFF, 0xF0, 0xEB, 0x02, 0x24)  # usual first bytes of a frame
_NEEDED: Final = (
    "set the device to text, to frames with two mark bytes or a check sum, or ask it for each reading (--poll)"
)
SMOOTH: Final = 0.08  # mean step of a number read rightly, of its range; at a wrong place it is about a third
ORDERS: Final[tuple[Order, ...]] = ("little", "big")


def cut_frames(data: bytes, notes: Notes) -> tuple[Bytes, bytes, CheckSum | None] | None:
    """Cut a stream into frames: rows, sync bytes, check."""
    array = np.frombuffer(data[: MOST_FRAMES * 32], np.uint8)
    for length in _periods(array):
        rows = array[: len(array) // length * length].reshape(-1, length)
        steady = _steady(rows)
        for start in _starts(rows, steady):
            turned = np.roll(array, -start)[: (len(array) - start) // length * length].reshape(-1, length)
            run = _run(turned)
            check = find_check_bytes(turned)
            if not run or (len(run) < 2 and check is None and _elsewhere(turned)):
                continue
            notes.found.append(f"frames of {length} bytes that begin with {run.hex(' ').upper()}")
            return turned[:MOST_FRAMES], run, check
    _tell_unmarked(array, notes)
    return None


def _periods(array: Bytes) -> list[int]:
    """Give the lengths after which bytes repeat most, the shortest first."""
    same = {n: float(np.mean(array[n:] == array[:-n])) for n in range(2, min(LONGEST, len(array) // MIN_LINES))}
    best = max(same.values(), default=0.0)
    return [n for n, share in same.items() if share > 0.12 and share >= 0.9 * best][:4]


def _steady(rows: Bytes) -> NDArray[np.bool_]:
    """Tell which bytes are the same in nearly all rows."""
    first = np.array([np.bincount(column).argmax() for column in rows.T], np.uint8)
    return np.asarray((rows == first).mean(axis=0) >= STEADY)


def _starts(rows: Bytes, steady: NDArray[np.bool_]) -> list[int]:
    """Give where a frame may begin: where a check sum then holds at its end, usual first bytes, longest runs."""
    length = rows.shape[1]
    value = [int(np.bincount(column).argmax()) for column in rows.T]
    able = [at for at in range(length) if steady[at] and value[at]]
    able.sort(key=lambda at: (value[at] not in _LEADS, -_run_length(steady, at), steady[at - 1]))
    for at in able[:8]:
        turned = np.roll(rows.reshape(-1), -at)[: (rows.size - at) // length * length].reshape(-1, length)
        if find_check_bytes(turned) is not None:
            return [at]
    return able


def _run_length(steady: NDArray[np.bool_], at: int) -> int:
    count = 0
    while count < len(steady) and steady[(at + count) % len(steady)]:
        count += 1
    return count


def _run(rows: Bytes) -> bytes:
    """Give the bytes that all frames begin with: two at most that are no zero, as marks are."""
    steady = _steady(rows)
    run = bytearray()
    for at in range(min(2, rows.shape[1] - 1)):
        value = int(np.bincount(rows[:, at]).argmax())
        if not steady[at] or (run and value == 0):
            break
        run.append(value)
    return bytes(run)


def _elsewhere(rows: Bytes) -> bool:
    """Tell whether the first byte also comes elsewhere in the frames: alone it marks nothing then."""
    return bool((rows[:, 1:] == rows[0, 0]).any())


def _tell_unmarked(array: Bytes, notes: Notes) -> None:
    best = min(
        ((roughness, width, order, start) for width in (4, 2, 8) for order in ORDERS for start in range(width)
         if (roughness := rough(_column(array, start, width, order))) is not None),
        default=None,
    )  # fmt: skip
    if best is not None and best[0] < SMOOTH:
        _, width, order, _start = best
        kind = {4: "numbers of 4 bytes (float32 or s32)", 2: "numbers of 2 bytes", 8: "numbers of 8 bytes (float64)"}[
            width
        ]
        notes.unknown.append(
            f"this is no text; it looks like {kind}, {order} end first, but nothing marks where one begins: a lost "
            f"byte would shift every reading after it. {_NEEDED[0].upper() + _NEEDED[1:]}"
        )
        return
    notes.unknown.append(
        "this is no text, and no frame repeats in it: most likely the speed (baud) is wrong; if it sends frames "
        f"of changing length, {_NEEDED}"
    )


def _column(array: Bytes, start: int, width: int, order: Order) -> NDArray[np.float64]:
    rows = array[start : start + (len(array) - start) // width * width].reshape(-1, width)
    kind: NumberType = {2: "s16", 4: "float32", 8: "float64"}[width]  # type: ignore[assignment]
    return numbers(np.ascontiguousarray(rows), kind, order)


def find_check_bytes(rows: Bytes) -> CheckSum | None:
    """Find the check sum in the last bytes."""
    sample = np.unique(rows[:MOST_FRAMES], axis=0)[:_CHECKED]
    if len(sample) < MIN_LINES:
        return None
    for name, start in product(get_args(CheckName), (0, 1, 2, 3)):
        size = CHECK_BYTES[name]
        if sample.shape[1] <= size + start + 1:
            continue
        want = checks(np.ascontiguousarray(sample[:, start:-size]), name)
        for order in ORDERS if size > 1 else ORDERS[:1]:
            weights = 256 ** np.arange(size)
            stated = sample[:, -size:].astype(np.int64) @ (weights if order == "little" else weights[::-1])
            if (stated == want).mean() > 0.9 and len(np.unique(stated)) > 2:
                return CheckSum(name=name, order=order, covers_from=start)
    return None


def rough(values: NDArray[np.float64]) -> float | None:
    """Give the mean step of a series, of its range; None if it is no series of readings."""
    with np.errstate(all="ignore"):
        if len(values) < MIN_LINES or not np.isfinite(values).all() or np.abs(values).max(initial=0.0) > 1e12:
            return None
        spread = float(np.ptp(values))
        if spread <= 0 or len(np.unique(values[:2000])) < 6:
            return None
        tiny = (values != 0) & (np.abs(values) < 1e-6)
        return None if tiny.any() else float(np.mean(np.abs(np.diff(values)))) / spread
