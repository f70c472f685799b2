"""What brings the readings of one recording to the axle and judges them, put together from what is written down."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import msgspec

from analysis.to_axle.at_axle import instrument_from, level_from
from analysis.to_axle.axle_scale import AxleScale
from analysis.to_axle.calibration import calibration_of
from analysis.verdict.judge import AtAxle
from analysis.verdict.limits import bounds_from, decided_by

if TYPE_CHECKING:
    from analysis.to_axle.calibration import Calibration
    from analysis.verdict.limits import Bounds, Guard, Rule
    from logger.header import Header

# Parts of a header that a result depends on and that may be stated otherwise after the recording has begun. What
# the transducer is stays as it was: it is what was read with.
JUDGED_BY = ("axle", "test", "conditions", "lever", "limit", "decision")


NO_ZERO = (
    "no true zero (lever hanging or off): at the axle the torque counts from the hand-off level, and the lever's "
    "weight is in the interval"
)
NO_ZERO_NO_WEIGHT = (
    "no true zero (lever hanging or off): at the axle the torque counts from the hand-off level, and the lever's "
    "weight, not stated, is assumed in the interval"
)


@dataclass(frozen=True, slots=True)
class Setup:
    """From what is delivered to a result."""

    header: Header  # what was tested, and how; capacity and resolution of a force in N·m
    calibration: Calibration  # from what is delivered to N·m
    at: AtAxle | None  # fixture, transducer, true zero; None where the lever is not known or reads no torque
    bounds: Bounds | None  # the limit
    # rule, guard: how uncertainty decides
    rule: Rule
    guard: Guard
    notes: tuple[str, ...] = ()  # what had to be assumed

    def scale(self, zero_nm: float = 0.0) -> AxleScale:
        """Give how what is read, in N·m, stands at the axle from a zero."""
        factor = self.at.fixture.factor if self.at is not None else 1.0
        return AxleScale(zero_nm, factor / self.calibration.gain, self.at is not None)

    def as_read(self, axle_nm: float) -> float:
        """Give what the transducer reads at a torque at the axle: ``scale``, the other way."""
        return axle_nm / self.scale().axle_per_read


def setup_of(
    header: Header, unit: str = "N·m", *, file: str = "", rule: Rule | None = None, guard: Guard | None = None
) -> Setup:
    """Put together what a header says.

    Args:
        header: With everything that was stated later laid over it.
        unit: Of what the transducer delivers.
        file: Named in messages.
        rule, guard: Instead of the header's own.

    Raises:
        HeldwheelError: Its lever, limit or transducer cannot be used.
    """
    calibration = calibration_of(header.transducer, unit, header.lever, file=file)
    header = msgspec.structs.replace(header, transducer=calibration.facts(header.transducer))
    at, notes = _at_axle(header, calibration)
    bounds = bounds_from(header.limit, file=file or "limit") if header.limit is not None else None
    return Setup(header, calibration, at, bounds, *decided_by(header.decision, rule, guard), notes)


def _at_axle(header: Header, calibration: Calibration) -> tuple[AtAxle | None, tuple[str, ...]]:
    """Give what brings a pull to the axle, and what had to be assumed; None where the lever is not known."""
    if header.lever is None:
        return None, (
            "the lever is not known: torque at the axle is not stated; give --lever, or [lever] in a sidecar",
        )
    fixture = calibration.fixture(header.lever)
    notes = list(fixture.notes)
    if fixture.reads != "torque" and calibration.arm_m is None:
        return None, (*notes, f"a '{fixture.kind}' fixture takes a {fixture.reads}, but the trace holds a torque")
    facts = header.transducer
    instrument = instrument_from(facts)
    if instrument.assumed:
        notes.append(f"the transducer's {instrument.note}")
    level = level_from(header.zero, gain=calibration.gain, resolution_nm=facts.resolution_nm or 0.0)
    if not level.known:
        assumed = fixture.weight is None or fixture.weight.assumed
        notes.append(NO_ZERO_NO_WEIGHT if assumed else NO_ZERO)
    return AtAxle(fixture, instrument, level), tuple(notes)
