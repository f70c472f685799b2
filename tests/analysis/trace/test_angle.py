"""What the wheel's angle adds, on pulls whose angle and torque are known by formula."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace.angle import describe_turning, find_slip, plausible_angle
from analysis.trace.reading import read_torque
from analysis.trace.results import Code
from analysis.trace.traces import Sensor
from tests.analysis.made import Shape, trace

RATE = 200.0
STIFFNESS = 6400.0  # N·m/rad: a half shaft of 28 mm


def wound(torque_nm):
    return np.degrees(torque_nm / STIFFNESS)


def pulled(turn_s=4.0, rpm=5.0, hold_s=0.0, way=1.0):
    """Ramp to 46 N·m in 1.5 s, perhaps held, then slipping at 40 N·m; give time, torque and angle."""
    t = np.arange(0, 1.5 + hold_s + turn_s, 1 / RATE)
    begin = 1.5 + hold_s
    slip = np.maximum(t - begin, 0)
    x = np.where(t < 1.5, 46 * t / 1.5, np.where(t < begin, 46.0, 40 + 6 * np.exp(-slip / 0.05)))
    return t, x, way * (wound(x) + 6 * rpm * slip)


class TestSlip:
    @pytest.mark.parametrize("way", [1.0, -1.0])
    def test_onset_and_wind_up(self, way):
        slip = find_slip(*pulled(way=way), 40.0)
        assert slip.onset_s == pytest.approx(1.5, abs=0.03)
        assert slip.turned_deg == pytest.approx(120.0, rel=0.02)
        assert np.degrees(1 / slip.wind_up_deg_per_nm / 1.0) == pytest.approx(np.degrees(1 / wound(1.0)), rel=0.01)

    def test_held_below_slip(self):
        t, x, angle = pulled(turn_s=0.0, hold_s=3.0)
        assert find_slip(t, x, angle, 46.0).onset_s is None

    def test_hold_then_slip(self):
        assert find_slip(*pulled(hold_s=2.0), 40.0).onset_s == pytest.approx(3.5, abs=0.05)

    def test_coarse_angle(self):
        t, x, angle = pulled()
        assert find_slip(t, x, np.round(angle * 2) / 2, 40.0).onset_s == pytest.approx(1.5, abs=0.1)

    def test_plausible(self):
        assert plausible_angle(np.array([0.0, 1.0, 2.0]))
        assert not plausible_angle(np.zeros(5))
        assert not plausible_angle(np.array([0.0, np.nan, 2.0]))


class TestTurning:
    def turning(self, rpm=6.0, seconds=25.0, once=0.0, half=0.0, slope=0.0, swing=0.0, inertia=0.0, drop=0.0):
        t = np.arange(0, seconds, 1 / RATE)
        mean = rpm * 2 * np.pi / 60
        speed = mean * (1 + swing * np.sin(2 * np.pi * t / 5)) - drop * t
        alpha = mean * swing * 2 * np.pi / 5 * np.cos(2 * np.pi * t / 5) - drop
        turn = np.cumsum(speed) / RATE
        x = 40 + once * np.cos(turn + 0.3) + half * np.sin(turn / 2) + slope * (speed - mean) + inertia * alpha
        return describe_turning(t, x, np.degrees(turn), np.ones(len(t), bool), wound(1.0))

    def test_speed_and_turns(self):
        turning = self.turning()
        assert turning.speed_rpm == pytest.approx(6.0, rel=0.01)
        assert turning.whole_turns == 2
        assert turning.turned_deg == pytest.approx(900, rel=0.02)
        assert turning.stiffness_nm_rad == pytest.approx(STIFFNESS, rel=1e-3)

    def test_mean_over_two_whole_turns_is_free_of_both(self):
        """Two and a half turns of which the mean over all is off by the waves, the mean over two is not."""
        turning = self.turning(once=4.0, half=4.0)
        assert turning.mean_over_turns_nm == pytest.approx(40.0, abs=0.1)

    def test_under_one_turn_there_is_no_mean_over_turns(self):
        assert self.turning(seconds=8.0).mean_over_turns_nm is None

    def test_torque_against_speed(self):
        turning = self.turning(slope=-3.0, swing=0.3)
        assert abs(turning.slope_nms + 3.0) < turning.slope_u95_nms + 0.05
        assert turning.slope_u95_nms < 1.0

    def test_even_speed_tells_no_slope(self):
        assert self.turning().slope_nms is None

    def test_acceleration_error(self):
        """1.2 kg·m² that slows down by 0.01 rad/s² adds 12 mN·m to the mean."""
        turning = self.turning(swing=0.3, inertia=1.2, drop=0.01)
        assert turning.acceleration_nm == pytest.approx(0.012, rel=0.5)

    def test_several_speeds_of_a_drive(self):
        t = np.arange(0, 24, 1 / RATE)
        speed = np.select([t < 8, t < 16], [0.2, 0.5], 1.0)
        x = 40 + 5 * speed
        turning = describe_turning(t, x, np.degrees(np.cumsum(speed) / RATE), np.ones(len(t), bool), None)
        assert [level.speed_rad_s for level in turning.levels] == pytest.approx([0.2, 0.5, 1.0], rel=0.02)
        assert [level.torque_nm for level in turning.levels] == pytest.approx([41.0, 42.5, 45.0], rel=0.002)

    def test_too_little(self):
        t = np.arange(0, 1, 1 / RATE)
        assert describe_turning(t, 0 * t + 40, 30 * t, np.ones(len(t), bool), None) is None


class TestReadingWithAngle:
    def pulled_trace(self, turn):
        t, y = trace(Shape(turning_s=4.0), rate_hz=RATE)
        since = np.clip(t - 4.5, 0, 4.0)
        return t, y, wound(y) + (30 * since if turn else 0.0)

    def test_slipped(self):
        t, y, angle = self.pulled_trace(turn=True)
        (pull,) = read_torque(t, y, angle_deg=angle, sensor=Sensor(capacity_nm=200.0)).pulls
        assert pull.valid
        assert pull.turning.speed_rpm == pytest.approx(5.0, rel=0.03)

    def test_held_below_slip_states_nothing(self):
        """The same torque: only the angle shows that the wheel never turned."""
        t, y, angle = self.pulled_trace(turn=False)
        (pull,) = read_torque(t, y, angle_deg=angle, sensor=Sensor(capacity_nm=200.0)).pulls
        assert (pull.breakaway, pull.rotating) == (None, None)
        assert [reason.code for reason in pull.reasons] == [Code.NEVER_SLIPPED]
        assert "did not turn" in pull.reasons[0].text

    def test_without_angle_the_ambiguity_is_said(self):
        t, y = trace(Shape(breakaway_nm=40.0), rate_hz=RATE)
        (pull,) = read_torque(t, y, sensor=Sensor(capacity_nm=200.0)).pulls
        assert "held below the slip" in pull.notes[0]

    def test_angle_that_never_moves_is_no_angle(self):
        t, y, _ = self.pulled_trace(turn=True)
        (pull,) = read_torque(t, y, angle_deg=np.zeros(len(t)), sensor=Sensor(capacity_nm=200.0)).pulls
        assert pull.rotating is not None
        assert pull.turning is None
