"""Time stamps as loggers write them: several rows with one stamp, rows out of order, rows written twice, clocks set.

Only what leaves the order of the samples certain is put right, and all of it is said. Rows that share a stamp and
clocks that were set back keep their stamps here: whoever reads the trace spreads or shifts them
(``analysis.trace.traces``).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

CLOCK_STEP_S = 1.0
"""A step back by less is a row out of order, a longer one a clock that was set back (s)."""

TWICE = 0.95
"""Rows that share a stamp are repeated ones if this share of them equal their neighbour in everything."""

MUDDLED = 0.02
"""Where the clock is set back in more than this share of the rows, nobody can say in which order they were taken."""


FROM_BELOW = "its last reading stands first: it is read from below"


@dataclass(frozen=True, slots=True)
class Stamps:
    """Which rows to take, in which order, and what was done to them; ``refused`` says why none can be taken."""

    rows: NDArray[np.intp]
    notes: tuple[str, ...] = ()
    refused: str = ""


def put_in_order(time_s: Floats, *values: Floats) -> Stamps:
    """Find the order in which rows were taken.

    Args:
        time_s: shape (n,); As written.
        values: shape (n,); The other columns: a row that equals its neighbour in all of them was written twice.
    """
    rows = np.arange(len(time_s))
    steps = np.diff(time_s)
    if len(steps) and not (steps != 0).any():
        return Stamps(rows, refused="every row has the same time: the sampling rate is not in the file")
    if len(steps) and bool((steps <= 0).all()):
        return replace(_in_order(time_s[::-1], [column[::-1] for column in values], rows[::-1]), notes=(FROM_BELOW,))
    return _in_order(time_s, list(values), rows)


def _in_order(time_s: Floats, values: list[Floats], taken: NDArray[np.intp]) -> Stamps:
    """Put rows in order; ``taken`` are their numbers in the file."""
    rows, steps, notes = np.arange(len(time_s)), np.diff(time_s), list[str]()
    back = steps < 0
    if back.any():
        far = np.flatnonzero(steps < -CLOCK_STEP_S) + 1
        if len(far) > max(MUDDLED * len(time_s), 3):
            text = f"the time goes back {len(far)} times by more than {CLOCK_STEP_S:g} s: the order of the rows is lost"
            return Stamps(rows, refused=text)
        rows = np.concatenate([part[np.argsort(time_s[part], kind="stable")] for part in np.split(rows, far)])
        late = int(back.sum()) - len(far)
        if late:
            notes.append(f"{late} times a row was earlier than the one before it: the rows were put in order of time")
    same = np.diff(time_s[rows]) == 0
    if same.any():
        twice = same & np.all([np.diff(column[rows]) == 0 for column in values], axis=0)
        if twice.sum() > TWICE * same.sum():
            notes.append(f"{int(twice.sum())} rows were written twice and are taken once")
            rows = rows[np.concatenate([[True], ~twice])]
    return Stamps(taken[rows], tuple(notes))
