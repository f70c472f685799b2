"""What a transducer delivers as a torque on it: factor of its unit × sign × arm of a force, ÷ a known gain.

Conventions:
- A recording keeps what was delivered. ``as_read`` makes it N·m, clockwise positive, as the transducer reads; ``true``
  divides a known gain (reading / true) out. Traces, zeros, live figures and pictures are brought to N·m here only.
- A force is multiplied with the arm R cos(delta) of its lever (radius R from the axle to the hook, delta the
  obliqueness of the pull), or of its cord drum, at the estimates; from there on it is a torque at the axle like any
  other, and radius and obliqueness are rows of its budget.
- Capacity and resolution that are stated in newtons turn into newton metres by the same arm.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import msgspec

from analysis.to_axle.fixtures import fixture_from
from logger.edges.units import is_force, reading_factor
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.to_axle.lever import Fixture
    from logger.header import Lever, TransducerFacts
    from logger.samples import Floats


@dataclass(frozen=True, slots=True)
class Calibration:
    """From what is delivered to N·m."""

    # N·m, or N of a force, per unit delivered; negative where the transducer shows clockwise as negative
    per_unit: float = 1.0
    gain: float = 1.0  # reading / true
    arm_m: float | None = None  # torque at the axle per newton; None where a torque is read

    def as_read(self, delivered: Floats) -> Floats:
        """Give N·m as the transducer reads, shape (n,): clockwise positive, a known gain still in it."""
        read = delivered * self.per_unit
        return read if self.arm_m is None else read * self.arm_m

    def delivered(self, read_nm: float) -> float:
        """Give what the transducer delivers for a torque as it reads: ``as_read``, the other way."""
        return read_nm / self.per_unit / (1.0 if self.arm_m is None else self.arm_m)

    def true(self, delivered: Floats) -> Floats:
        """Give N·m with a known gain divided out, shape (n,)."""
        return self.as_read(delivered) / self.gain

    def facts(self, facts: TransducerFacts) -> TransducerFacts:
        """Give what is known of the transducer with its newtons turned into newton metres."""
        if self.arm_m is None:
            return facts
        capacity = None if facts.capacity_n is None else facts.capacity_n * self.arm_m
        resolution = None if facts.resolution_n is None else facts.resolution_n * self.arm_m
        return msgspec.structs.replace(
            facts, capacity_nm=capacity, resolution_nm=resolution, capacity_n=None, resolution_n=None
        )

    def fixture(self, lever: Lever) -> Fixture:
        """Give the fixture for readings in N·m: of a force they are at the axle already, and its factor is 1.

        Raises:
            DescriptionError: The lever has faults.
        """
        return replace(fixture_from(lever), arm_m=self.arm_m)


def unlevered(facts: TransducerFacts, unit: str) -> Calibration:
    """Give the calibration of a transducer; a force stays one, in N."""
    sign = -1.0 if facts.sign == "reversed" else 1.0
    return Calibration(sign * reading_factor(unit), facts.gain or 1.0)


def calibration_of(facts: TransducerFacts, unit: str, lever: Lever | None = None, *, file: str = "") -> Calibration:
    """Give the calibration of a transducer, of a force with its lever.

    Args:
        facts: Sign and gain.
        unit: Of what is delivered.
        lever: What a force pulls on.
        file: Named in the message.

    Raises:
        InputError: A force without a lever, or with one that a torque transducer sits on.
        DescriptionError: The lever has faults.
    """
    found = unlevered(facts, unit)
    if not is_force(unit):
        return found
    said = f"{file or 'the transducer'}: holds a force in {unit}"
    how = '--fixture "force at radius" --radius 400mm±2mm (or [lever] in its sidecar)'
    if lever is None:
        raise InputError(f"{said}: say the lever that it pulls on: {how}")
    fixture = fixture_from(lever)
    if fixture.reads != "force":
        raise InputError(f"{said}, but a '{fixture.kind}' fixture takes a {fixture.reads}; say: {how}")
    return replace(found, arm_m=fixture.factor)
