"""A reading typed in from a dial, a click wrench or a scale: the same lever, budget and decision as a recording."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from analysis.to_axle.at_axle import ASSUMED_ACCURACY, Instrument, Level, TracedTorque, at_axle
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.to_axle.lever import Fixture
    from analysis.uncertainty.budget import Budget

# A torque tool's class holds from a fifth of its range upwards; below, the error of that point is taken as it stands
# (TM 1-1500-204-23-9, table 8-1: ± 4 % of reading from 20 % to 100 % of full scale).
CERTIFIED_FROM = 0.20
# The same table: marks no wider than a tenth of the reading.
WIDEST_MARKS = 0.10


@dataclass(frozen=True, slots=True)
class Dial:
    """A hand instrument."""

    # distance of two marks of the scale, in the unit of the reading (SI); read to the nearest mark
    marks: float | None = None
    limit_of_error: float | None = None  # its class: greatest error as a fraction of the reading, 0.04 for 4 %
    full_scale: float | None = None  # upper end of its range

    def __post_init__(self) -> None:
        for name, value in (
            ("mark spacing", self.marks),
            ("class", self.limit_of_error),
            ("full scale", self.full_scale),
        ):
            if value is not None and not (math.isfinite(value) and value > 0):
                raise InputError(f"the dial's {name} must be positive")
        if self.limit_of_error is not None and self.limit_of_error >= 1:
            raise InputError("the dial's class is a part of the reading: 4 %, not 400 %")

    def half_width(self, reading: float) -> float:
        """Give the greatest error at a reading; below the certified part of the range, that of its lower end."""
        limit = ASSUMED_ACCURACY if self.limit_of_error is None else self.limit_of_error
        floor = CERTIFIED_FROM * self.full_scale if self.full_scale is not None else 0.0
        return limit * max(abs(reading), floor)

    def doubts(self, reading: float) -> tuple[str, ...]:
        """Say what makes the instrument a poor choice for this reading."""
        found = []
        if self.limit_of_error is None:
            found.append(f"the dial's class is not stated: assumed within ± {ASSUMED_ACCURACY * 100:g} % of reading")
        if self.full_scale is not None:
            share = abs(reading) / self.full_scale
            if share > 1:
                raise InputError("the reading is beyond the dial's full scale")
            if share < CERTIFIED_FROM:
                found.append(
                    f"the reading is {share * 100:.0f} % of full scale, below the certified part of the range (from "
                    f"{CERTIFIED_FROM * 100:.0f} %): its error there is taken as that of the lower end"
                )
        if self.marks is None:
            found.append("the spacing of the marks is not stated: assumed a tenth of the reading, the widest usual")
        elif self.marks > WIDEST_MARKS * abs(reading):
            found.append(
                f"the marks are {self.marks / abs(reading) * 100:.0f} % of the reading apart (at most 10 % is usual)"
            )
        return tuple(found)


def dial_reading(shown: float, dial: Dial, fixture: Fixture, *, quantity: str = "breakaway") -> Budget:
    """Give the torque at the axle of a reading, with its budget.

    Args:
        shown: In N·m, N or kg, as the fixture reads; the instrument's zero is where the user set it.
        dial: The instrument.
        fixture: How the torque gets to the axle.
        quantity: What was read.

    Raises:
        InputError: A reading that is not positive, or beyond full scale.
    """
    if not (math.isfinite(shown) and shown > 0):
        raise InputError("a reading must be positive: its direction is told apart")
    dial.doubts(shown)
    note = "class, as a rectangle" if dial.limit_of_error is not None else "class not stated: assumed"
    instrument = Instrument(dial.half_width(shown) / math.sqrt(3) / shown, note=note)
    marks = WIDEST_MARKS * shown if dial.marks is None else dial.marks
    reading = TracedTorque(quantity, shown, marks / math.sqrt(12), turn_rad=None)
    return at_axle(reading, fixture, instrument, Level(0.0, 0.0, True, "zero as set on the dial"))
