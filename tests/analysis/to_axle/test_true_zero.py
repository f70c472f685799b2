"""The true zero from a recording that begins with nothing on the transducer."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.to_axle.true_zero import zero_at_start
from logger.errors import InputError

RNG = np.random.default_rng(3)
TIME = np.arange(4000) / 500.0


def _trace(on_at_s: float, off: float = -0.3, fitted: float = 2.2) -> np.ndarray:
    return np.where(on_at_s > TIME, off, fitted) + RNG.normal(0, 0.02, TIME.size)


def test_basic() -> None:
    level, u = zero_at_start(TIME, _trace(2.0), 0.02, 0.01)
    assert level == pytest.approx(-0.3, abs=4 * u)
    assert u == pytest.approx(np.hypot(0.02 / np.sqrt(1000), 0.01 / np.sqrt(12)), rel=0.05)


def test_the_lever_put_on_later_does_not_count() -> None:
    level, _ = zero_at_start(TIME, _trace(0.8), 0.02)
    assert level == pytest.approx(-0.3, abs=0.01)


def test_missing_readings_are_passed_over() -> None:
    torque = _trace(2.0)
    torque[:5] = np.nan
    level, _ = zero_at_start(TIME, torque, 0.02)
    assert level == pytest.approx(-0.3, abs=0.01)


@pytest.mark.parametrize("torque", [_trace(0.2), TIME * 3.0, np.array([]), np.full(4000, np.nan)])
def test_raises_where_nothing_is_still(torque: np.ndarray) -> None:
    with pytest.raises(InputError, match="half a second of stillness"):
        zero_at_start(TIME[: torque.size], torque, 0.02)
