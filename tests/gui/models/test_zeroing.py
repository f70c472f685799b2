"""Taking the true zero: how long it must be quiet, to the sample."""

from __future__ import annotations

import numpy as np
import pytest

from gui.models.zeroing import QUIET_S, Zeroing


@pytest.mark.parametrize(("short_s", "taken"), [(0.0, True), (1e-6, False)])
def test_a_zero_is_taken_when_almost_all_of_its_time_is_there(short_s: float, *, taken: bool) -> None:
    """0.98 of 1.5 s."""
    zeroing = Zeroing()
    time_s = np.linspace(0.0, QUIET_S * 0.98 - short_s, 20)
    assert (zeroing.feed(time_s, np.full(20, 0.25)) is not None) is taken
    assert zeroing.share == pytest.approx(0.98)


def test_a_zero_may_differ_by_a_hundredth_of_the_least_torque_of_interest() -> None:
    """1 % of 20 N·m: common practice, no source."""
    assert Zeroing().steady_nm == 0.2
