"""Plain ways to read a torque trace, as people write them in an afternoon: what our reading is shown beside.

Each takes time and torque and gives pulls; none states an interval, since none of them has one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

import numpy as np
import ruptures
from scipy.signal import find_peaks, savgol_filter

from analysis.trace.results import Breakaway, Pull, Rotating

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

Method = Callable[["Floats", "Floats"], tuple[Pull, ...]]

THRESHOLD, LEAST_S = 0.25, 0.7
"""A pull is where the torque is above this share of the trace's maximum, for this long (s)."""
POINTS = 300
"""Change points are searched in at most so many points of one pull: the search is quadratic or worse."""


def maximum_and_mean(time_s: Floats, torque_nm: Floats) -> tuple[Pull, ...]:
    """The highest torque of the trace is the breakaway; the mean of its last half the rotating torque."""
    x = torque_nm - np.median(torque_nm[: max(len(torque_nm) // 50, 1)])
    sign = 1 if x.max() >= -x.min() else -1
    x = sign * x
    return (_pull(time_s, 0, len(x), sign, int(np.argmax(x)), float(x.max()), float(x[len(x) // 2 :].mean())),)


def prominent_peak_and_median(time_s: Floats, torque_nm: Floats) -> tuple[Pull, ...]:
    """The first peak that stands out by 3 %, and the median after it."""
    pulls = []
    for low, high, sign, x in _loads(time_s, torque_nm):
        top = float(x[low:high].max())
        peaks, _ = find_peaks(x[low:high], prominence=0.03 * top, height=0.5 * top)
        at = low + (int(peaks[0]) if len(peaks) else int(np.argmax(x[low:high])))
        pulls.append(_pull(time_s, low, high, sign, at, float(x[at]), float(np.median(x[at:high]))))
    return tuple(pulls)


def change_points(time_s: Floats, torque_nm: Floats) -> tuple[Pull, ...]:
    """Change points of the mean within one pull: the longest segment is the rotating torque."""
    pulls = []
    for low, high, sign, x in _loads(time_s, torque_nm):
        stride = max(1, (high - low) // POINTS)
        part = x[low:high:stride]
        noise = np.median(np.abs(np.diff(part))) + 1e-6 * part.max()
        ends = ruptures.Pelt("l2", min_size=3, jump=2).fit(part).predict(pen=60 * noise**2 + 0.002 * part.max() ** 2)
        segments = [(a, b) for a, b in zip([0, *ends[:-1]], ends, strict=True) if part[a:b].mean() > 0.5 * part.max()]
        if segments:
            a, b = max(segments, key=lambda s: s[1] - s[0])
            at = low + int(np.argmax(x[low : low + max(a * stride, 1) + stride]))
            pulls.append(_pull(time_s, low, high, sign, at, float(x[at]), float(part[a:b].mean())))
    return tuple(pulls)


def smoothed_maximum(time_s: Floats, torque_nm: Floats) -> tuple[Pull, ...]:
    """The maximum after an 80 ms Savitzky-Golay filter, and a trimmed mean."""
    pulls = []
    for low, high, sign, x in _loads(time_s, torque_nm):
        window = 2 * int(0.04 / np.median(np.diff(time_s[low:high]))) + 1
        smooth = savgol_filter(x[low:high], window, 2) if 5 <= window < high - low else x[low:high]
        at = int(np.argmax(smooth))
        after = np.sort(smooth[at:])
        trimmed = after[len(after) // 5 : max(4 * len(after) // 5, len(after) // 5 + 1)]
        pulls.append(_pull(time_s, low, high, sign, low + at, float(smooth[at]), float(trimmed.mean())))
    return tuple(pulls)


METHODS: dict[str, Method] = {
    "maximum and mean": maximum_and_mean,
    "prominent peak and median": prominent_peak_and_median,
    "change points": change_points,
    "smoothed maximum": smoothed_maximum,
}


def _loads(time_s: Floats, torque_nm: Floats) -> Iterator[tuple[int, int, int, Floats]]:
    """Stretches above the threshold, their sign, and the torque from the median of the half second before them."""
    x = torque_nm - np.median(torque_nm)
    x = torque_nm - np.median(torque_nm[np.abs(x) <= np.median(np.abs(x))])
    limit = THRESHOLD * np.abs(x).max()
    for sign in (1, -1):
        inside = np.concatenate([[False], sign * x > limit, [False]])
        edges = np.flatnonzero(np.diff(inside.astype(int)))
        for low, high in zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True):
            if high - low >= 4 and time_s[high - 1] - time_s[low] >= LEAST_S:
                foot = int(np.searchsorted(time_s, time_s[low] - 2.0))
                rest = int(np.searchsorted(time_s, time_s[low] - 1.5))
                yield low, high, sign, sign * (torque_nm - np.median(torque_nm[foot : max(rest, foot + 1)]))


def _pull(time_s: Floats, low: int, high: int, sign: int, at: int, peak: float, level: float) -> Pull:
    start, end = float(time_s[low]), float(time_s[high - 1])
    rotating = Rotating(start, end, level, 0.0, 0.0, level)
    return Pull(start, end, sign, 0.0, Breakaway(float(time_s[at]), peak, 0.0, 0.0, peak > 1.045 * level), rotating)
