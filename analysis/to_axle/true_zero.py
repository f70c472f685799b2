"""The true zero out of a recording that begins with the lever off or hanging.

The unloaded level of a trace in general is *not* a true zero: between pulls the lever is fitted, and its weight is
real torque on the wheel. Only a user can say that the recording's first still stretch was taken with nothing on the
transducer; then its level is the true zero.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

LEAST_S = 0.5
"""A shorter stretch does not show that nothing moves (s)."""

MOST_S = 5.0
"""Longer than this nobody waits before the lever goes on; more of it adds nothing (s)."""

STILL_NOISES = 6.0
"""A reading beyond this many deviations of noise from the level ends the stretch: the lever was put on."""


def zero_at_start(
    time_s: Floats, torque_nm: Floats, noise_nm: float, resolution_nm: float = 0.0
) -> tuple[float, float]:
    """Give the level of the first still stretch and its standard uncertainty.

    Args:
        time_s, torque_nm: shape (n,); The trace from its start.
        noise_nm: Noise of one reading at rest.
        resolution_nm: Step of the readings; a rectangular input (JCGM 100 F.2.2.1).

    Returns:
        Level and standard uncertainty in N·m.

    Raises:
        InputError: The recording does not begin with half a second of stillness.

    1. The level is the median of the first ``LEAST_S``.
    2. The stretch goes on while readings stay within ``STILL_NOISES`` of it, at most ``MOST_S``.
    3. Value: mean of the stretch; uncertainty: noise over the root of its length, and resolution.
    """
    finite = np.isfinite(torque_nm)
    time, torque = time_s[finite], torque_nm[finite]
    begin = time[:1].sum()
    first = int(np.searchsorted(time, begin + LEAST_S))
    text = (
        "zero 'start': the recording must begin with at least half a second of stillness, lever off or hanging. "
        "Give the zero as a torque instead, or leave it out"
    )
    if first < 3 or first >= len(time):
        raise InputError(text)
    level = float(np.median(torque[:first]))
    near = STILL_NOISES * noise_nm + resolution_nm
    beyond = np.abs(torque[: int(np.searchsorted(time, begin + MOST_S))] - level) > near
    end = int(np.argmax(beyond)) if beyond.any() else len(beyond)
    if end < first:
        raise InputError(text)
    u = float(np.hypot(noise_nm / np.sqrt(end), resolution_nm / np.sqrt(12)))
    return float(torque[:end].mean()), u
