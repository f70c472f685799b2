"""Raw integers and floats from bytes, for whole columns at once.

Conventions:
- ``rows`` is an array of bytes of shape (n, width): n numbers of the same type, not necessarily contiguous.
- Integers come back as float64: a 32-bit count is exact in it, and a value that is missing can be NaN.

The two medical float formats are those of IEEE 11073-20601, which the Bluetooth data types ``medfloat16`` (SFLOAT)
and ``medfloat32`` (FLOAT) name: a two's complement exponent to the base ten above a two's complement mantissa.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Literal

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from logger.samples import Floats

Bytes = NDArray[np.uint8]

NumberType = Literal[
    "u8", "u16", "u24", "u32", "s8", "s16", "s24", "s32", "float32", "float64", "sfloat", "float"
]  # fmt: skip
Order = Literal["little", "big"]

WIDTH: Final[dict[str, int]] = {
    "u8": 1, "s8": 1, "u16": 2, "s16": 2, "u24": 3, "s24": 3, "u32": 4, "s32": 4,
    "float32": 4, "float64": 8, "sfloat": 2, "float": 4,
}  # fmt: skip

# Reserved mantissas of IEEE 11073-20601: not a number, not at this resolution, +infinity, -infinity, reserved.
_SFLOAT_SPECIAL: Final = {0x07FF: np.nan, 0x0800: np.nan, 0x0801: np.nan, 0x07FE: np.inf, 0x0802: -np.inf}
_FLOAT_SPECIAL: Final = {
    0x7FFFFF: np.nan, 0x800000: np.nan, 0x800001: np.nan, 0x7FFFFE: np.inf, 0x800002: -np.inf,
}  # fmt: skip

_NATIVE: Final = {
    "u8": "u1", "s8": "i1", "u16": "u2", "s16": "i2", "u32": "u4", "s32": "i4", "float32": "f4", "float64": "f8",
    "sfloat": "u2", "float": "u4",
}  # fmt: skip
_DTYPE: Final = {
    (kind, order): np.dtype(mark + code)
    for kind, code in _NATIVE.items()
    for order, mark in (("little", "<"), ("big", ">"))
}


def numbers(rows: Bytes, kind: NumberType, order: Order = "little") -> Floats:
    """Turn rows of bytes into numbers.

    Args:
        rows: shape (..., width); The bytes of each number, which lie side by side; other strides are free.
        kind: One of ``u8 ... s32``, ``float32``, ``float64``, ``sfloat``, ``float``.
        order: Byte order.

    Returns:
        shape (...); NaN for the formats' "not a number" and "not at this resolution".

    >>> numbers(np.array([[0x10, 0x27, 0, 0]], np.uint8), "s32").tolist()
    [10000.0]
    """
    if kind in {"u24", "s24"}:
        return _three_bytes(rows, signed=kind == "s24", order=order)
    raw = rows.view(_DTYPE[kind, order])[..., 0]
    if kind == "sfloat":
        return sfloat(raw)
    if kind == "float":
        return float32_11073(raw)
    if kind[0] == "f":
        with np.errstate(invalid="ignore"):
            value: Floats = raw.astype(np.float64)
        value[np.isnan(value)] = np.nan  # also one that signals: whoever reckons with it gets a NaN, not an alarm
        return value
    whole: Floats = raw.astype(np.float64)
    return whole


def integers(rows: Bytes, kind: NumberType, order: Order = "little") -> NDArray[np.int64]:
    """Give the same as ``numbers`` for the integer types, as int64: for counters and status bits."""
    if kind in {"u24", "s24"}:
        return numbers(rows, kind, order).astype(np.int64)
    value: NDArray[np.int64] = rows.view(_DTYPE[kind, order])[..., 0].astype(np.int64)
    return value


def _three_bytes(rows: Bytes, *, signed: bool, order: Order) -> Floats:
    wide = rows.astype(np.int32)
    low, middle, high = (wide[..., i] for i in ((0, 1, 2) if order == "little" else (2, 1, 0)))
    value = low | (middle << 8) | (high << 16)
    if signed:
        value = np.where(value & 0x800000, value - 0x1000000, value)
    return value.astype(np.float64)


def sfloat(raw: NDArray[np.unsignedinteger]) -> Floats:
    """Decode 16-bit SFLOAT: 4-bit exponent, 12-bit mantissa, both two's complement.

    >>> sfloat(np.array([0xF16C, 0xF00A, 0x07FE], np.uint16)).tolist()
    [36.4, 1.0, inf]
    """
    word = raw.astype(np.int64)
    return _decimal(_signed(word & 0x0FFF, 12), _signed(word >> 12, 4), word, _SFLOAT_SPECIAL)


def float32_11073(raw: NDArray[np.unsignedinteger]) -> Floats:
    """Decode 32-bit FLOAT: 8-bit exponent, 24-bit mantissa, both two's complement.

    >>> float32_11073(np.array([0xFF00016C], np.uint32)).tolist()
    [36.4]
    """
    word = raw.astype(np.int64)
    return _decimal(_signed(word & 0xFFFFFF, 24), _signed(word >> 24, 8), word, _FLOAT_SPECIAL)


def _signed(value: NDArray[np.int64], bits: int) -> NDArray[np.int64]:
    return np.where(value >= 1 << (bits - 1), value - (1 << bits), value)


def _decimal(
    mantissa: NDArray[np.int64], exponent: NDArray[np.int64], word: NDArray[np.int64], special: dict[int, float]
) -> Floats:
    """Mantissa times ten to the exponent, rounded once; the special values hold with exponent zero."""
    power = np.power(10.0, np.abs(exponent))
    with np.errstate(over="ignore"):
        value = np.where(exponent < 0, mantissa / power, mantissa * power)
    for code, meaning in special.items():
        value[word == code] = meaning
    return value


def scaled(raw: Floats, scale: float, offset: float = 0.0) -> Floats:
    """Scale raw values; a scale of 0.01 divides by 100, so that 2700 becomes exactly 27.0.

    >>> scaled(np.array([3892.0]), 0.001).tolist()
    [3.892]
    """
    with np.errstate(over="ignore", invalid="ignore"):  # a device's float at its end: what comes of it is not valid
        if scale == 1.0:
            value = raw
        else:
            inverse = round(1.0 / scale) if abs(scale) >= 1e-12 else 0
            value = raw / inverse if abs(inverse * scale - 1.0) < 1e-12 else raw * scale
        return value + offset if offset else value
