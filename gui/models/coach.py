"""One short line for the person on the lever, from what the trace does right now.

The figures behind the lines are the quality gates of the analysis, told while there is still time to act. One line at a
time: the most urgent one wins, and a line stays long enough to be read from three metres away.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum, StrEnum
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from logger.samples import Floats

READ_S = 1.2  # a line stays at least this long
# Common practice, no source: two to three seconds to the first slip, so a ramp that reaches the torque of interest
# in under a second is too fast to read a peak and fast enough for inertia to show.
FASTEST_RISE_S = 0.7
NEAR_CAPACITY = 0.8  # of the transducer's range; common practice, no source
OVER_CAPACITY = 1.0
LOADED_SHARE = 0.15  # of the torque of interest: less than this is rest
LOADED_FLOOR_NM = 1.5
LOOK_S = 0.25  # stretch that a slope is judged on
SLIP_LIKELY_S = 2.0  # two to three seconds to the first slip (common practice, no source)
SLIPPED_SHARE = 0.97  # of the highest torque of this load: below it, and still loaded, something has given way
RISES = 0.05  # of the torque of interest in a second: it is still being loaded
TURNS_DEG = 1.0  # over the last look, beyond which a wheel whose angle is known turns
NOTHING_TURNS_S = 6.0  # of load without motion: wind-up or a bound axle; common practice, no source
SHORTEST_TURN_S = 1.5  # a steady stretch under a second is marked short; half a second more until the pull shows it


class Hint(StrEnum):
    """What the coach may say."""

    NONE = ""
    LOADING = "Load smoothly until it slips"
    STOP = "STOP: transducer's rated torque reached"
    CAPACITY = "Ease off: near the transducer's rated torque"
    SLOWER = "Load more slowly"
    KEEP_TURNING = "Keep turning"
    IF_IT_TURNS = "Keep turning only if the wheel moves; otherwise stop"
    NOTHING_TURNS = "Nothing turns: ease the load off, keep hold"
    LET_REST = "Let it rest"
    READY = "Ready: pull when you like"
    RELEASE = "Enough: ease the load off, keep hold of the lever"


class HintUrgency(IntEnum):
    """How loudly a hint is shown."""

    CALM = 0
    ACT = 1
    STOP = 2


URGENCY = {
    Hint.STOP: HintUrgency.STOP,
    Hint.CAPACITY: HintUrgency.ACT,
    Hint.SLOWER: HintUrgency.ACT,
    Hint.NOTHING_TURNS: HintUrgency.ACT,
}


@dataclass(slots=True)
class Coach:
    """Watches the last moments of the trace.

    Args:
        capacity_nm: The transducer's range, N·m at the transducer.
        interest_nm: The torque that matters here (the limit, or a typical pull), N·m at the transducer.
        enough_s: Steady turning that a rotating torque needs.
        turned_deg: By how much the wheel has turned over the last second; None where its angle is not known.
    """

    capacity_nm: float | None = None
    interest_nm: float = 20.0
    enough_s: float = 5.0
    turned_deg: float | None = None
    hint: Hint = Hint.NONE
    loaded: bool = False
    _highest_nm: float = 0.0  # of this load
    _slipped: bool = False
    _since_s: float = 0.0
    _loaded_from_s: float = 0.0

    def feed(self, time_s: Floats, torque_nm: Floats, resting_for_s: float | None, dwell_s: float) -> Hint:
        """Look at the last second.

        Args:
            time_s, torque_nm: shape (n,); The last second or so; torque relative to the zero, N·m at the transducer.
            resting_for_s: Time since the last pull ended; None before the first.
            dwell_s: The rest that this job asks for.
        """
        if not len(time_s):
            return self.hint
        now = float(time_s[-1])
        level = float(np.nanmax(np.abs(torque_nm[-3:]))) if np.isfinite(torque_nm[-3:]).any() else 0.0
        self._load(now, level)
        wanted = self._wanted(time_s, torque_nm, level, resting_for_s, dwell_s)
        urgent = URGENCY.get(wanted, HintUrgency.CALM) > URGENCY.get(self.hint, HintUrgency.CALM)
        silent = self.hint is Hint.NONE
        if wanted is not self.hint and (urgent or silent or now - self._since_s >= READ_S or now < self._since_s):
            self.hint, self._since_s = wanted, now
        return self.hint

    def _load(self, now: float, level: float) -> None:
        threshold = max(LOADED_FLOOR_NM, LOADED_SHARE * self.interest_nm)
        if self.loaded:
            self.loaded = level > 0.6 * threshold
        elif level > threshold:
            self.loaded, self._loaded_from_s = True, now
            self._highest_nm, self._slipped = level, False
        self._highest_nm = max(self._highest_nm, level)
        self._slipped = self._slipped or level < SLIPPED_SHARE * self._highest_nm

    def _turning(self) -> bool | None:
        """Say whether the wheel turns; None where nothing tells: torque alone may rise and stand without motion."""
        if self.turned_deg is not None:
            return abs(self.turned_deg) >= TURNS_DEG
        return True if self._slipped else None

    def _wanted(
        self, time_s: Floats, torque_nm: Floats, level: float, resting_for_s: float | None, dwell_s: float
    ) -> Hint:
        now = float(time_s[-1])
        if self.capacity_nm:
            if level >= OVER_CAPACITY * self.capacity_nm:
                return Hint.STOP
            if level >= NEAR_CAPACITY * self.capacity_nm:
                return Hint.CAPACITY
        if self.loaded:
            held_s = now - self._loaded_from_s
            if _rise(time_s, torque_nm) > self.interest_nm / FASTEST_RISE_S:
                return Hint.SLOWER
            if held_s > SHORTEST_TURN_S + self.enough_s and self._turning() is not False:
                return Hint.RELEASE
            if held_s <= SLIP_LIKELY_S:
                return Hint.LOADING
            turning = self._turning()
            if turning is False:
                return Hint.NOTHING_TURNS if held_s > NOTHING_TURNS_S else Hint.LOADING
            if turning is None and held_s < NOTHING_TURNS_S and _rise(time_s, torque_nm) > RISES * self.interest_nm:
                return Hint.LOADING
            return Hint.KEEP_TURNING if turning else Hint.IF_IT_TURNS
        if resting_for_s is not None and resting_for_s < dwell_s:
            return Hint.LET_REST
        return Hint.READY


def _rise(time_s: Floats, torque_nm: Floats) -> float:
    """Give the slope of the torque's magnitude over the last ``LOOK_S``, N·m/s; 0 where there is too little to say."""
    late = time_s > time_s[-1] - LOOK_S
    times, torques = time_s[late], np.abs(torque_nm[late])
    finite = np.isfinite(torques)
    times, torques = times[finite], torques[finite]
    if len(times) < 4 or times[-1] - times[0] < 0.5 * LOOK_S:
        return 0.0
    times = times - times.mean()
    return float(times @ torques / (times @ times))  # least squares
