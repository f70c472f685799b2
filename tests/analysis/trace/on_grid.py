"""Traces on a grid: whole newton metres at even times, so that readings lie on the borders of rules exactly.

A measured float meets a border once in a lifetime; a share of a whole number does so in every trace. ``made(i)`` gives
the i-th trace, put together from whole numbers by counting, not by drawing at random.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

if TYPE_CHECKING:
    from analysis.trace.traces import Floats

OneOf = Callable[[Sequence[Any]], Any]

RATES = (20, 10, 50, 100, 5, 40, 200)
TOPS = (100, 40, 20, 200, 60)
LEVELS = (100, 95, 80, 90, 50, 97, 100, 85, 70)
"""Steady torque in per cent of the peak."""


def made(number: int) -> tuple[Floats, Floats]:
    """Give times (s) and torques (N·m), shape (n,) each."""
    dice, values = _counter(number), []
    rate = RATES[number % len(RATES)]
    rest = (0, 0, 2, -4, 10)[number % 5]
    values += [rest] * round(rate * dice((0.2, 1.0, 1.5, 3.0)))
    for _ in range(1 + dice((0, 1, 2))):
        values += _pull(rate, rest, dice)
        values += [rest + dice((0, 0, 1, 4))] * round(rate * dice((0.4, 1.2, 2.0, 0.1)))
    if dice((0, 0, 0, 1)):
        values = values[: -round(2.5 * rate)]
    y = np.array(values, float)
    if dice((0, 1, 0)):
        y[:: dice((3, 4, 7))] += 1
    return np.arange(len(y)) / rate, y


def _counter(number: int) -> OneOf:
    state = [number + 1]

    def one_of(choices: Sequence[Any]) -> Any:
        state[0] = (state[0] * 48271) % 2147483647
        return choices[(state[0] >> 7) % len(choices)]

    return one_of


def _pull(rate: int, rest: int, dice: OneOf) -> list[int]:
    top, way = dice(TOPS), dice((1, 1, 1, -1))
    level = top * dice(LEVELS) // 100
    up = max(1, round(rate * dice((0.2, 0.5, 1.0, 2.0, 3.0))))
    ramp = [top * k // up for k in range(up)]
    at = dice((0, 0, up // 8, up // 4, up // 2, 4 * up // 5))
    if at:  # a hand hesitates
        ramp[at:at] = [ramp[at]] * round(rate * dice((0.2, 0.5, 0.7, 1.2)))
    turning = round(rate * dice((0.1, 0.2, 0.5, 1.0, 2.0, 4.0)))
    fall = max(1, round(rate * dice((0.05, 0.1, 0.2))))
    steady = [level + (top - level) * max(fall - k, 0) // fall for k in range(turning)]
    kind = dice(("", "", "waves", "chatter", "climbs", "halves", "let go", "yank"))
    if kind == "waves":
        steady = [v + (k // max(1, rate // 4)) % 2 * max(1, level // 50) for k, v in enumerate(steady)]
    elif kind == "chatter":
        steady = [v - level * (k % max(2, rate // 3)) // (3 * max(2, rate // 3)) for k, v in enumerate(steady)]
    elif kind == "climbs":
        steady = [v + level * k // (10 * max(1, turning)) for k, v in enumerate(steady)]
    elif kind == "halves":
        steady = [v - (level // 10 if k > turning // 2 else 0) for k, v in enumerate(steady)]
    elif kind == "let go":
        steady[turning // 2 : turning // 2] = [0] * round(rate * dice((0.1, 0.3, 0.6, 1.2)))
    elif kind == "yank":
        steady = [v + (level // 4 if k % max(3, rate) < 2 else 0) for k, v in enumerate(steady)]
    off = max(1, round(rate * dice((0.05, 0.1, 0.3, 0.6))))
    down = [(steady[-1] if steady else top) * (off - k) // off for k in range(off)]
    return [rest + way * v for v in (*ramp, *steady, *down)]
