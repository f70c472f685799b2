"""What may be wrong with the columns that a description names, whatever its layout.

Their names become names in the recording's file, where they must not play tricks; their scales must not overflow.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Iterable

_NAME: Final = re.compile(r"[A-Za-z][A-Za-z0-9_]{0,39}")
# Columns that a session adds itself.
RESERVED: Final = frozenset({"time_s", "counter", "late", "late_ms"})
# No scale or offset of this job is beyond these; within them no reading overflows or loses its digits.
SCALE_MOST: Final = 1e12


def name_faults(names: Iterable[str]) -> list[str]:
    """Give what is wrong with the names of columns; one line for the user each.

    >>> name_faults(["torque", "angle_2"])
    []
    >>> name_faults(["=1+1"])
    ["'=1+1' is no name of a column: use letters, digits and _, and begin with a letter"]
    """
    faults = []
    for name in names:
        if not _NAME.fullmatch(name):
            faults.append(f"{name[:40]!r} is no name of a column: use letters, digits and _, and begin with a letter")
        elif name in RESERVED:
            faults.append(f"'{name}' is a column that every recording may have: give this one another name")
    return faults


def scale_faults(name: str, scale: float, offset: float) -> list[str]:
    """Give what is wrong with the scale and offset of a column."""
    if 1 / SCALE_MOST <= abs(scale) <= SCALE_MOST and abs(offset) <= SCALE_MOST:
        return []
    return [f"{name[:40]} has the scale {scale:g} and the offset {offset:g}: the scale must not be 0 nor absurd"]
