"""A pull in which nothing was received for a while counts, with a remark: what the torque did then is not known."""

import numpy as np
import pytest

from analysis.trace.reading import read_torque


def pulled(gap: tuple[float, float]) -> tuple[np.ndarray, np.ndarray]:
    """Give one pull at 50 Hz with a hole in it, and a little noise."""
    time_s = np.arange(0, 14, 0.02)
    torque = np.interp(time_s, [0, 2, 4, 4.2, 10, 10.5, 14], [0, 0, 60, 48, 48, 0, 0])
    torque = torque + np.random.default_rng(1).normal(0, 0.05, len(time_s))
    kept = (time_s < gap[0]) | (time_s > gap[1])
    return time_s[kept], torque[kept]


@pytest.mark.parametrize(("gap", "said"), [((6.0, 8.0), "2.0 s"), ((4.5, 9.5), "5.0 s"), ((2.5, 3.5), "1.0 s")])
def test_a_gap_within_a_pull_is_told_with_it(gap: tuple[float, float], said: str) -> None:
    (pull,) = read_torque(*pulled(gap)).pulls
    assert any(note.startswith(f"nothing was received for {said}") for note in pull.notes)


@pytest.mark.parametrize("gap", [(12.0, 13.0), (0.2, 1.0), (6.0, 6.1)])
def test_a_gap_beside_it_or_a_short_one_is_not(gap: tuple[float, float]) -> None:
    (pull,) = read_torque(*pulled(gap)).pulls
    assert not any("nothing was received" in note for note in pull.notes)
