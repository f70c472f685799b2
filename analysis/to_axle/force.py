"""A force on a lever read as a torque: load cells, crane scales, weighing indicators.

Conventions
-----------
- The recording keeps the force as it was delivered. Reading multiplies it with the arm R cos(delta) of its lever
  (radius R from the axle to the hook, delta the obliqueness of the pull), or of its cord drum, at the estimates; from
  there on it is a torque at the axle like any other, and radius and obliqueness are rows of its budget.
- Capacity and resolution that are stated in newtons turn into newton metres by the same arm.

Offered: ``ForceLever``, ``force_lever``.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import msgspec

from analysis.to_axle.fixtures import fixture_from
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.to_axle.lever import Fixture
    from logger.header import Header, TransducerFacts


@dataclass(frozen=True, slots=True)
class ForceLever:
    """The lever that a force pulls on.

    Attributes
    ----------
    fixture : Fixture
        For readings that are torques already: its factor is 1.
    arm_m : float
        Torque at the axle per newton.
    """

    fixture: Fixture
    arm_m: float

    def facts(self, facts: TransducerFacts) -> TransducerFacts:
        """Give what is known of the transducer with its newtons turned into newton metres."""
        capacity = None if facts.capacity_n is None else facts.capacity_n * self.arm_m
        resolution = None if facts.resolution_n is None else facts.resolution_n * self.arm_m
        return msgspec.structs.replace(
            facts, capacity_nm=capacity, resolution_nm=resolution, capacity_n=None, resolution_n=None
        )


def force_lever(header: Header, unit: str, file: str) -> ForceLever:
    """Give the lever of a recorded force.

    Raises
    ------
    InputError
        There is none, or it is one that a torque transducer sits on.
    DescriptionError
        It has faults.
    """
    how = '--fixture "force at radius" --radius 400mm±2mm (or [lever] in its sidecar)'
    if header.lever is None:
        raise InputError(f"{file}: holds a force in {unit}: say the lever that it pulls on: {how}")
    fixture = fixture_from(header.lever)
    if fixture.reads != "force":
        raise InputError(
            f"{file}: holds a force in {unit}, but a '{fixture.kind}' fixture takes a {fixture.reads}; say: {how}"
        )
    return ForceLever(replace(fixture, arm_m=fixture.factor), fixture.factor)
