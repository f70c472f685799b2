"""What the Bluetooth standards say themselves: units, number formats and the torque characteristic.

Codes are those of the public assigned-numbers lists and of the GATT specification supplement. With them a device
that follows the standards needs no description file.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from logger.decoder.floats import NumberType

_BASE_UUID: Final = "-0000-1000-8000-00805f9b34fb"

# 0x2C0B: sint32, 0.01 N·m, clockwise positive.
TORQUE: Final = 0x2C0B
TORQUE_SCALE: Final = 0.01
TORQUE_NOT_KNOWN: Final = 0x7FFFFFFF
INDUSTRIAL_MEASUREMENT_SERVICE: Final = 0x185A
DEVICE_INFORMATION_SERVICE: Final = 0x180A
BATTERY_SERVICE: Final = 0x180F
BATTERY_LEVEL: Final = 0x2A19
PRESENTATION_FORMAT: Final = 0x2904
DEVICE_INFORMATION: Final[dict[int, str]] = {
    0x2A24: "model",
    0x2A25: "serial",
    0x2A26: "firmware",
    0x2A27: "hardware",
    0x2A29: "maker",
}

UNITS: Final[dict[int, str]] = {
    0x2700: "1", 0x2703: "s", 0x2723: "N", 0x2741: "N·m", 0x2743: "rad/s", 0x272F: "°C", 0x2763: "°",
    0x27A8: "1/min", 0x27AD: "%",
}  # fmt: skip
NEWTON: Final = 0x2723
NEWTON_METRE: Final = 0x2741

_FORMATS: Final[dict[int, NumberType]] = {
    0x04: "u8", 0x06: "u16", 0x07: "u24", 0x08: "u32", 0x0C: "s8", 0x0E: "s16", 0x0F: "s24", 0x10: "s32",
    0x14: "float32", 0x15: "float64", 0x16: "sfloat", 0x17: "float",
}  # fmt: skip


def uuid(short: int) -> str:
    """Give the full identifier of a short assigned one.

    >>> uuid(0x2C0B)
    '00002c0b-0000-1000-8000-00805f9b34fb'
    """
    return f"{short:08x}{_BASE_UUID}"


@dataclass(frozen=True, slots=True)
class PresentationFormat:
    """Descriptor 0x2904: how the value of a characteristic is to be read."""

    format: int  # code of the number format
    exponent: int  # the value is raw × 10^exponent; for integer formats only
    unit: int  # code of the unit
    # namespace, description: which of several equal sensors it is, where the device says so
    namespace: int
    description: int

    @property
    def type(self) -> NumberType | None:
        """The number's type, or None for a format that is no single number (text, structures, 48 bit and more)."""
        return _FORMATS.get(self.format)

    @property
    def scale(self) -> float:
        """Factor from raw to value."""
        return float(10.0**self.exponent) if (self.type or "f")[0] in "us" and self.type != "sfloat" else 1.0

    @property
    def unit_name(self) -> str:
        """The unit as we write it, or its code."""
        return UNITS.get(self.unit, f"0x{self.unit:04X}")


def presentation_format(data: bytes) -> PresentationFormat | None:
    """Read descriptor 0x2904; None if it is not the seven bytes that it must be.

    >>> presentation_format(bytes([0x0E, 0xFE, 0x41, 0x27, 1, 0, 0]))
    PresentationFormat(format=14, exponent=-2, unit=10049, namespace=1, description=0)
    """
    if len(data) != 7:
        return None
    code, exponent, unit, namespace, description = struct.unpack("<BbHBH", data)
    return PresentationFormat(code, exponent, unit, namespace, description)
