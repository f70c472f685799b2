"""Without a lever a trace is drawn as the transducer showed it, and named so."""

from __future__ import annotations

from analysis.to_axle.axle_scale import AxleScale


def test_without_a_lever_nothing_is_at_the_axle():
    shown = AxleScale(2.0)
    assert not shown.at_axle
    assert shown.torque(12.0) == 10.0
    assert AxleScale(2.0, 1.5, at_axle=True).torque(12.0) == 15.0
