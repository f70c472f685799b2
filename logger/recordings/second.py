"""Reading a recording of two sources: each one's own samples, and an angle beside the torque.

``logger.stream.merge`` writes such files. Here the rows are taken apart again; what the second source measured is
brought to the torque's times by interpolation between its own samples, for reading only and never across its gaps.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.samples import Event, Floats

SOURCE: Final = "source"
# A wheel turned by hand at 10 revolutions a minute turns 15° in a quarter of a second: beyond that a straight line
# between two samples is no reading any more.
MAX_GAP_S: Final = 0.25


@dataclass(frozen=True, slots=True)
class Second:
    """The second source's own samples."""

    time_s: Floats  # shape (m,); on the recording's time
    columns: dict[str, Floats]  # shape (m,); by their names in the file


def split(columns: dict[str, Floats], events: Sequence[Event]) -> tuple[dict[str, Floats], list[Event], Second | None]:
    """Take the rows of two sources apart.

    Args:
        columns: shape (n,); As they stand in the file, ``time_s`` among them.
        events: With ``index`` the row that each stands before.

    Returns:
        columns, events: Of the torque alone; a column of the second source is interpolated at the torque's times, NaN
            across a gap of more than ``MAX_GAP_S`` and outside.
        second: None: the recording has one source, and nothing was changed.
    """
    source = columns.get(SOURCE)
    if source is None:
        return columns, list(events), None
    mine, other = source == 1, source == 2
    time_s = columns["time_s"]
    belongs = {n: not np.isfinite(v[mine]).any() and np.isfinite(v[other]).any() for n, v in columns.items()}
    theirs = {n: v[other] for n, v in columns.items() if belongs[n]}
    second = Second(time_s[other], theirs)
    kept: dict[str, Floats] = {}
    for name, values in columns.items():
        if name == SOURCE:
            continue
        if not belongs[name]:
            kept[name] = values[mine]
        elif not name.startswith("second_"):
            kept[name] = between(time_s[mine], second.time_s, theirs[name])
    before = np.concatenate(([0], np.cumsum(mine)))
    moved = [replace(event, index=int(before[min(event.index, len(mine))])) for event in events]
    return kept, moved, second


def between(at_s: Floats, time_s: Floats, values: Floats) -> Floats:
    """Interpolate linearly between samples; NaN outside them and within gaps."""
    known = np.isfinite(values)
    time_s, values = time_s[known], values[known]
    if not len(time_s):
        return np.full(len(at_s), np.nan)
    result = np.interp(at_s, time_s, values, left=np.nan, right=np.nan)
    # A single sample has itself on both sides.
    after = np.clip(np.searchsorted(time_s, at_s, "left"), 1, len(time_s) - 1)
    gap = time_s[after] - time_s[after - 1]
    exact = np.isin(at_s, time_s)
    return np.where((gap > MAX_GAP_S) & ~exact, np.nan, result)


class Alongside:
    """Brings an angle that is recorded along to the torque's times while both grow: as ``between`` does for a file.

    A torque row waits until the angle has gone past it, or has been away for so long that there is none.
    """

    def __init__(self) -> None:
        self._rows = np.empty((2, 0))  # time and torque that wait
        self._angles = [np.empty((2, 0))]  # of each, time and value, from just before the first row that waits

    def feed(self, time_s: Floats, source: Floats, torque: Floats, *angles: Floats) -> tuple[Floats, ...]:
        """Take the next rows of both sources, in the order of time, and give time, torque and angles of those decided.

        Args:
            time_s, source, torque, *angles: shape (n,); As they are merged: ``source`` is 1 for the torque's rows. One
                angle or more, the same ones each time.
        """
        mine = source == 1
        self._rows = np.concatenate((self._rows, np.array([time_s[mine], torque[mine]])), axis=1)
        self._angles += [np.empty((2, 0)) for _ in angles[len(self._angles) :]]
        for place, angle in enumerate(angles):
            known = np.isfinite(angle)
            new = np.array([time_s[known], angle[known]])
            self._angles[place] = np.concatenate((self._angles[place], new), axis=1)
        now_s = time_s[-1] if len(time_s) else -np.inf
        count = min(self._decided(angle[0, -1] if angle.shape[1] else -np.inf, now_s) for angle in self._angles)
        return self._give(count)

    def _decided(self, latest_s: float, now_s: float) -> int:
        """Count the rows that wait for nothing more of an angle: it has gone past them, or is away for too long."""
        if now_s - latest_s > MAX_GAP_S:  # a sample of this very moment may still come
            return int(np.searchsorted(self._rows[0], now_s, "left"))
        return int(np.searchsorted(self._rows[0], latest_s, "right"))

    def rest(self) -> tuple[Floats, ...]:
        """Give what still waits: nothing more comes."""
        return self._give(self._rows.shape[1])

    def _give(self, count: int) -> tuple[Floats, ...]:
        (time_s, torque), self._rows = self._rows[:, :count], self._rows[:, count:]
        first = self._rows[0, 0] if self._rows.shape[1] else np.inf
        given = []
        for place, angle in enumerate(self._angles):
            given.append(between(time_s, *angle))
            kept = max(0, int(np.searchsorted(angle[0], first)) - 2)
            self._angles[place] = angle[:, kept:]
        return time_s, torque, *given
