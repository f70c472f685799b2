"""Taking the true zero by hand: the lever hangs or is off, nothing touches it, and a quiet second is averaged.

The true zero is not the level at hand-off: the weight of a fitted lever is real torque on the wheel (see
``analysis.to_axle.lever``). So the zero is taken once with the lever hanging or off, and once more at the end.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from logger.samples import Floats

QUIET_S = 1.5  # a zero window of at least 1 s (common practice, no source), half a second more for a hand's tremor
FEWEST = 8  # samples: slow gauges send 5 to 10 a second
# A zero counts as quiet while its ends agree within this share of the limit or of the smallest torque of interest.
MOVED_SHARE = 0.01
SMALLEST_NM = 20.0  # torque of interest where no limit says better: the lowest in common use, no source
FLOOR_NM = 0.15  # steadiness that any of these transducers can show


class ZeroState(StrEnum):
    """How a zero stands."""

    WAITING = "waiting"
    MOVING = "moving"
    TAKEN = "taken"


@dataclass(frozen=True, slots=True)
class ZeroValue:
    """A zero that was taken."""

    value_nm: float  # the transducer's reading with nothing on it
    u_nm: float  # its standard uncertainty: scatter of the mean of one window's tenths, so that slow wander counts
    at_s: float  # when, on the recording's time axis


class Zeroing:
    """Collects samples until a quiet window is found.

    Args:
        steady_nm: By how much the window's parts may differ, N·m at the transducer.
    """

    def __init__(self, steady_nm: float = MOVED_SHARE * SMALLEST_NM) -> None:
        self.steady_nm = max(steady_nm, FLOOR_NM)
        self.state = ZeroState.WAITING
        self.taken: ZeroValue | None = None
        self.share = 0.0  # of the quiet window that is there
        self._times: list[Floats] = []
        self._torques: list[Floats] = []

    def feed(self, time_s: Floats, torque_nm: Floats) -> ZeroValue | None:
        """Take the next samples, shape (n,) each; give the zero once it is found."""
        if self.taken is not None or not len(time_s):
            return self.taken
        self._times.append(time_s)
        self._torques.append(torque_nm)
        times, torques = np.concatenate(self._times), np.concatenate(self._torques)
        kept = times > times[-1] - QUIET_S
        span = float(times[-1] - times[0])
        times, torques = times[kept], torques[kept]
        self._times, self._torques = [times], [torques]
        self.share = min(1.0, span / QUIET_S) if self.state is not ZeroState.MOVING else 0.0
        finite = np.isfinite(torques)
        if finite.sum() < FEWEST:
            return None
        parts = [float(np.median(p)) for p in np.array_split(torques[finite], 6)]
        if max(parts) - min(parts) > self.steady_nm + 3 * _noise(torques[finite]) / np.sqrt(finite.sum() / 6):
            self.state = ZeroState.MOVING
            self._times, self._torques = [times[-1:]], [torques[-1:]]
            return None
        self.state = ZeroState.WAITING
        if span < QUIET_S * 0.98:
            return None
        tenths = [float(np.mean(p)) for p in np.array_split(torques[finite], min(10, int(finite.sum())))]
        u = float(np.std(tenths, ddof=1) / np.sqrt(len(tenths)))
        self.taken = ZeroValue(float(np.mean(torques[finite])), u, float(times[-1]))
        self.state = ZeroState.TAKEN
        return self.taken


def _noise(values: Floats) -> float:
    """Give the standard deviation of the sample noise from differences, robust against a slope."""
    return float(1.4826 * np.median(np.abs(np.diff(values))) / np.sqrt(2))
