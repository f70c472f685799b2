"""The times that clocks give to arrivals of many kinds, held against what was kept (see ``tests.kept``)."""

from __future__ import annotations

import numpy as np
import pytest

from logger.decoder.description import read_description, shipped
from logger.stream.clock import ArrivalClock, CounterClock, build_clock
from tests.kept import kept
from tests.steps import steps

DRAINS = {
    "even": [([0.1, 0.1, 0.1], 0), ([0.2, 0.2, 0.2], 3), ([0.3, 0.3], 6), ([], 8), ([0.4] * 5, 8)],
    "single": [([0.01 * k], k) for k in range(7)],
    "late": [([0.1] * 4, 0), ([0.5] * 4, 4), ([0.5] * 4 + [0.52] * 4, 8), ([0.7] * 4 + [0.71] * 4 + [0.8] * 4, 16)],
    "bursts": [([0.1, 0.1, 0.12, 0.12, 0.2, 0.2], 0), ([0.21, 0.3, 0.3, 0.31, 0.31, 0.31], 6), ([6.0] * 3, 12)],
    "pause": [([0.1] * 3, 0), ([5.0] * 3, 3), ([5.0] * 2 + [5.2], 6), ([11.5, 11.6], 9), ([17.0] * 2, 11)],
    "early": [([1.0] * 3, 10), ([1.02] * 3, 13), ([1.04] * 3, 16), ([1.05] * 3, 19), ([1.06] * 3, 22)],
    "lost": [([0.1] * 3, 0), ([0.2] * 3, 20), ([0.3] * 3, 21), ([0.4] * 2, 5), ([0.5] * 2, 7)],
    "a window": [([0.0] * 2, 0), ([1.0] * 3, 2), ([2.0] * 5, 5), ([6.0] * 2, 10), ([7.0] * 4, 12), ([12.5], 16)],
    "ties": [([0.25, 0.25, 0.5, 0.5], 0), ([0.75, 0.75, 1.0, 1.0], 4), ([1.0, 1.0, 1.25, 1.5], 8), ([2.0] * 4, 12)],
    "many": [([0.1 * k + 0.003 * (k * k % 7)] * (k % 4 + 1), 4 * k) for k in range(80)],
}


@pytest.mark.parametrize("name", DRAINS)
@pytest.mark.parametrize("period_s", [0.25, 0.01, 0.001, None])
def test_kept_times(name, period_s):
    answers = []
    with steps("logger.stream.clock") as said:
        for restart_at in (-1, 2):
            clocks = [ArrivalClock(period_s)] + ([CounterClock(period_s)] if period_s else [])
            for clock in clocks:
                answers.append([clock.at(3.0), clock.time_from])
                for i, (arrivals, first) in enumerate(DRAINS[name]):
                    if i == restart_at:
                        clock.restart()
                    times = clock.date(np.array(arrivals, float), first + np.arange(len(arrivals)))
                    answers[-1] += [[round(float(t), 9) for t in times], clock.at(3.0)]
    kept("clock", f"{name} {period_s}", [answers, said])


def test_kept_choice_of_a_clock():
    clocks = {name: build_clock(read_description(name)) for name in shipped()}
    periods = {name: vars(clock).get("_period_s", vars(clock).get("_nominal_s")) for name, clock in clocks.items()}
    kept("clock", "choice", {name: [type(clock).__name__, periods[name]] for name, clock in clocks.items()})
