"""Check sums of frames: cyclic redundancy checks by catalogue name, and the plain sums.

The parameters (width, polynomial, start, reflection, final xor) of the named checks are those of the public catalogue
of CRC algorithms; each entry's check value over ``123456789`` is tested. All frames of a drain that have the same
length are checked together, one table look-up per byte position.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.decoder.floats import Bytes

CheckName = Literal[
    "crc-8/smbus", "crc-8/maxim", "crc-16/modbus", "crc-16/usb", "crc-16/arc", "crc-16/kermit", "crc-16/ccitt-false",
    "crc-16/xmodem", "crc-16/dnp", "crc-32", "crc-32c", "xor-8", "sum-8", "lrc-8", "sum-16",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Crc:
    """Parameters of one cyclic redundancy check."""

    width: int
    poly: int
    start: int
    reflected: bool
    xor_out: int


_CRC: Final[dict[str, Crc]] = {
    "crc-8/smbus": Crc(8, 0x07, 0x00, False, 0x00),
    "crc-8/maxim": Crc(8, 0x31, 0x00, True, 0x00),
    "crc-16/modbus": Crc(16, 0x8005, 0xFFFF, True, 0x0000),
    "crc-16/usb": Crc(16, 0x8005, 0xFFFF, True, 0xFFFF),
    "crc-16/arc": Crc(16, 0x8005, 0x0000, True, 0x0000),
    "crc-16/kermit": Crc(16, 0x1021, 0x0000, True, 0x0000),
    "crc-16/ccitt-false": Crc(16, 0x1021, 0xFFFF, False, 0x0000),
    "crc-16/xmodem": Crc(16, 0x1021, 0x0000, False, 0x0000),
    "crc-16/dnp": Crc(16, 0x3D65, 0x0000, True, 0xFFFF),
    "crc-32": Crc(32, 0x04C11DB7, 0xFFFFFFFF, True, 0xFFFFFFFF),
    "crc-32c": Crc(32, 0x1EDC6F41, 0xFFFFFFFF, True, 0xFFFFFFFF),
}
CHECK_BYTES: Final[dict[str, int]] = {
    **{name: crc.width // 8 for name, crc in _CRC.items()},
    "xor-8": 1,
    "sum-8": 1,
    "lrc-8": 1,
    "sum-16": 2,
}
# Mask and sign of the plain sums; lrc-8 is the two's complement, so that all bytes and the check add up to nothing.
_SUMS: Final = {"sum-8": (0xFF, 1), "lrc-8": (0xFF, -1), "sum-16": (0xFFFF, 1)}


def _mirror(value: int, width: int) -> int:
    return int(f"{value:0{width}b}"[::-1], 2)


# So few rows are checked faster byte by byte than by columns; a stream of false sync bytes brings them one at a time.
FEW_ROWS: Final = 8


@lru_cache
def _table(crc: Crc) -> NDArray[np.uint32]:
    """Remainder of each byte value."""
    top = 1 << (crc.width - 1)
    mask = (1 << crc.width) - 1
    entries = []
    for byte in range(256):
        if crc.reflected:
            poly, value = _mirror(crc.poly, crc.width), byte
            for _ in range(8):
                value = (value >> 1) ^ poly if value & 1 else value >> 1
        else:
            value = byte << (crc.width - 8)
            for _ in range(8):
                value = ((value << 1) ^ crc.poly if value & top else value << 1) & mask
        entries.append(value)
    return np.array(entries, np.uint32)


def checks(rows: Bytes, name: str) -> NDArray[np.int64]:
    """Compute the check of every row.

    Args:
        rows: shape (n, length); The bytes that each check covers.
        name: A ``CheckName``.

    Returns:
        shape (n,)
    """
    if name == "xor-8":
        folded: NDArray[np.int64] = np.bitwise_xor.reduce(rows, axis=1).astype(np.int64)
        return folded
    if name in _SUMS:
        mask, sign = _SUMS[name]
        summed: NDArray[np.int64] = sign * rows.sum(axis=1, dtype=np.int64) & mask
        return summed
    crc = _CRC[name]
    start = _mirror(crc.start, crc.width) if crc.reflected else crc.start
    if len(rows) <= FEW_ROWS:
        return np.array([_one(row.tobytes(), crc, start) for row in rows], np.int64)
    table = _table(crc)
    value = np.full(len(rows), start, np.uint32)
    for column in rows.T:
        if crc.reflected:
            value = table[(value ^ column) & 0xFF] ^ (value >> np.uint32(8))
        else:
            value = table[(value >> np.uint32(crc.width - 8)) ^ column] ^ _shifted(value, crc.width)
    return (value ^ np.uint32(crc.xor_out)).astype(np.int64)


@lru_cache
def _entries(crc: Crc) -> list[int]:
    return [int(entry) for entry in _table(crc)]


def _one(data: bytes, crc: Crc, value: int) -> int:
    table, shift, mask = _entries(crc), crc.width - 8, (1 << crc.width) - 1
    if crc.reflected:
        for byte in data:
            value = table[(value ^ byte) & 0xFF] ^ (value >> 8)
    else:
        for byte in data:
            value = table[(value >> shift) ^ byte] ^ ((value << 8) & mask)
    return value ^ crc.xor_out


def _shifted(value: NDArray[np.uint32], width: int) -> NDArray[np.uint32]:
    return (value << np.uint32(8)) & np.uint32((1 << width) - 1)


def check(data: bytes, name: str) -> int:
    """Compute the check of one string of bytes.

    >>> hex(check(b"123456789", "crc-16/modbus"))
    '0x4b37'
    """
    return int(checks(np.frombuffer(data, np.uint8)[None, :], name)[0])
