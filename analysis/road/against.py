"""Two recordings of one microphone at one place: the difference of their levels, its interval from their scatter."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from analysis.uncertainty.budget import t_factor, welch_satterthwaite
from logger.errors import InputError

if TYPE_CHECKING:
    from analysis.road.levels import Found, Levels

BATCH_S = 5.0
"""Scatter is that of means over so long, so that one event is not counted as many."""

LEAST_BATCHES = 4
DB = 10 / math.log(10)


@dataclass(frozen=True, slots=True)
class Against:
    """One recording less another."""

    # db, u95_db: difference of the levels of the whole, and its 95 % half-width by the scatter within each recording
    # alone
    db: float
    u95_db: float
    # difference of the quiet backgrounds: far from 0, microphone, gain, speed or road were not the same
    background_db: float
    share: float  # difference of the shares of time with chatter


def against(one: tuple[Levels, Found], other: tuple[Levels, Found]) -> Against:
    """Give ``one`` less ``other``.

    The half-width is by the law of propagation through 10 lg of two means (JCGM 100, 5.1.2), each with the scatter of
    its means over 5 s, and Student's t (G.6.4).

    Raises:
        InputError: They are of unlike kinds or bands, or one is shorter than 20 s.
    """
    (levels, found), (before, found_before) = one, other
    if levels.kind != before.kind or levels.band_hz != before.band_hz:
        raise InputError(
            "a sound and an acceleration, or two frequency bands, have no difference in dB: compare like with like"
        )
    mean, u, dof = _mean(levels)
    mean_before, u_before, dof_before = _mean(before)
    parts = (DB * u / mean, DB * u_before / mean_before)
    factor = t_factor(welch_satterthwaite(((parts[0], dof), (parts[1], dof_before))))
    return Against(
        levels.mean_db - before.mean_db,
        factor * math.hypot(*parts),
        found.background_db - found_before.background_db,
        found.share - found_before.share,
    )


def _mean(levels: Levels) -> tuple[float, float, float]:
    """Give the mean square, its standard uncertainty by the scatter of means over 5 s, its degrees of freedom."""
    power = levels.power[np.isfinite(levels.power)]
    width = round(BATCH_S / levels.block_s)
    count = len(power) // width
    if count < LEAST_BATCHES:
        raise InputError(f"{levels.heard_s:.0f} s are too short to compare: {BATCH_S * LEAST_BATCHES:g} s at least")
    means = power[: count * width].reshape(count, width).mean(axis=1)
    return float(power.mean()), float(means.std(ddof=1)) / math.sqrt(count), count - 1.0
