"""A lever that swings or rings beside a pull, grips close together, and gauges of few readings: made by formula."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.trace.live import _steps
from analysis.trace.reading import read_torque
from analysis.trace.traces import Sensor
from logger.virtual.hand import HandPull
from tests.analysis.made import Shape, trace
from tests.analysis.simulated import simulate
from tests.analysis.unseen import draw

SENSOR = Sensor(capacity_nm=100.0)


def stated(reading):
    return [p for p in reading.pulls if p.breakaway or p.rotating]


def noisy(t, y, noise_nm=0.01):
    return y + noise_nm * np.random.default_rng(5).standard_normal(len(t))


@pytest.mark.parametrize("hangs_nm", [1.5, 3.0, 4.5])
@pytest.mark.parametrize("decay_s", [0.3, 0.8])
def test_lever_that_swings_over_after_a_release_hangs_at_its_new_level(hangs_nm, decay_s):
    """The first stroke goes the other way; behind it the lever swings up by twice what it then hangs at."""
    t = np.arange(0, 24, 0.002)
    since = np.clip(t - 8.1, 0, None)
    first = np.interp(t, [2, 2.8, 8.0, 8.1], [0, -21, -21, 0])
    rest = (t > 8.1) * hangs_nm * (1 + 0.9 * np.exp(-since / decay_s) * np.cos(2 * np.pi * 2.5 * since))
    second = np.interp(t, [11, 12.5, 20, 20.1], [0, 20, 20, 0])
    pulls = stated(read_torque(t, noisy(t, first + rest + second), sensor=SENSOR))
    assert [p.direction for p in pulls] == [-1, 1]
    assert pulls[1].handoff_nm == pytest.approx(hangs_nm, abs=0.15)
    assert pulls[1].rotating.at_sensor_nm == pytest.approx(20.0, rel=0.01)


@pytest.mark.parametrize("weight_nm", [4.0, 6.0])
def test_ramp_begins_behind_a_lever_that_rings_beyond_half_of_the_pull(weight_nm):
    """A worn pack: the ring of the lever, put on a second before, is above half of the pull for a moment."""
    t = np.arange(0, 16, 0.002)
    since = np.clip(t - 6, 0, None)
    lever = (t > 6) * weight_nm * (1 + 1.4 * np.exp(-since / 0.15) * np.sin(2 * np.pi * 9 * since))
    pull = np.interp(t, [7.6, 9.0, 9.1, 13, 13.2], [0, 15, 13, 13, 0]) * (1 + 0.004 * np.sin(2 * np.pi * 9.3 * t))
    (only,) = stated(read_torque(t, noisy(t, lever + pull), sensor=SENSOR))
    assert only.handoff_nm == pytest.approx(weight_nm, abs=0.1)
    assert only.rotating.at_sensor_nm == pytest.approx(13.0, rel=0.02)


@pytest.mark.parametrize("phase_s", [0.0, 0.1, 0.2, 0.3, 0.4])
@pytest.mark.parametrize("rest_s", [1.4, 2.0])
def test_release_is_no_pull_where_a_gauge_is_read_twice_a_second(phase_s, rest_s):
    """The first second and a half of rest are three readings; the plateaus are longer than the rests."""
    t = np.arange(phase_s, 40, 0.5)
    edges = np.cumsum([0, rest_s, 1.6, 7, 0.8, 3.6, 1.6, 7, 0.8, 3.6, 1.6, 7, 0.8, 4])
    y = np.interp(t, edges, [0, 0, 40, 40, 0, 0, 40, 40, 0, 0, 40, 40, 0, 0])
    y = np.round(noisy(t, y, 0.02) / 0.05) * 0.05
    reading = read_torque(t, y, sensor=SENSOR)
    assert [p.direction for p in stated(reading)] == [1, 1, 1]
    assert [p.rotating.at_sensor_nm for p in stated(reading)] == pytest.approx([40.0] * 3, rel=0.02)


@pytest.mark.parametrize("rest_s", [0.3, 0.5, 0.8, 1.1, 1.4])
@pytest.mark.parametrize("turning_s", [0.45, 0.6, 0.9])
def test_every_grip_of_a_series_is_stated_or_named(rest_s, turning_s):
    shapes = [Shape(ramp_s=0.2, turning_s=turning_s)] * 5
    t, y = trace(*shapes, rest_s=rest_s)
    said = read_torque(t, y, sensor=SENSOR).pulls
    for n in range(5):
        middle = rest_s + n * (shapes[0].length_s + rest_s) + shapes[0].length_s / 2
        assert any(p.start_s < middle < p.end_s for p in said), n


@pytest.mark.parametrize("rate_hz", [2.0, 2.5, 4.0])
@pytest.mark.parametrize("phase", np.linspace(0, 0.9, 7))
def test_peak_between_two_readings_is_within_the_interval(rate_hz, phase):
    t = np.arange(phase / rate_hz, 22, 1 / rate_hz)
    y = np.interp(t, [0, 3, 5, 5.5, 6.2, 13, 13.4, 22], [0, 0, 45, 41, 40, 40, 0, 0])
    y = np.round(noisy(t, y, 0.02) / 0.05) * 0.05
    (only,) = stated(read_torque(t, y, sensor=SENSOR))
    assert only.breakaway is not None
    assert abs(only.breakaway.at_sensor_nm - 45.0) < 1.1 * only.breakaway.u95_sensor_nm


@pytest.mark.parametrize("later", [1.06, 1.12, 1.2])
def test_higher_peak_within_a_second_is_reached(later):
    """The weaker part gave way first, or the pack broke and the wheel swung: torque alone cannot tell."""
    t = np.arange(0, 16, 0.005)
    y = np.interp(t, [0, 2, 4, 4.15, 4.6, 4.75, 5.2, 12, 12.2, 16], [0, 0, 40, 33, 40 * later, 38, 37, 37, 0, 0])
    (only,) = stated(read_torque(t, noisy(t, y, 0.05), sensor=SENSOR))
    low, high = (only.breakaway.at_sensor_nm + s * only.breakaway.u95_sensor_nm for s in (-1, 1))
    assert low < 40.0 * 1.005
    assert high > 40.0 * later * 0.995


@pytest.mark.parametrize("step_nm", [0.5, 1.0])
@pytest.mark.parametrize("rate_hz", [50.0, 100.0])
def test_display_of_coarse_steps_may_repeat_itself(step_nm, rate_hz):
    """A plateau quieter than a step of the display shows one reading for seconds: no link was lost."""
    t = np.arange(0, 9, 1 / rate_hz)
    y = noisy(t, np.interp(t, [2, 3.5, 3.6, 6, 6.3], [0, 62, 55, 55, 0]), 0.02)
    (only,) = stated(read_torque(t, np.round(y / step_nm) * step_nm, sensor=SENSOR))
    assert only.valid
    assert only.rotating.at_sensor_nm == pytest.approx(55, abs=only.rotating.u95_sensor_nm)


def test_display_of_fine_steps_may_not():
    t = np.arange(0, 9, 0.01)
    y = noisy(t, np.interp(t, [2, 3.5, 3.6, 6, 6.3], [0, 62, 55, 55, 0]), 0.05)
    y[(t > 4) & (t < 5.6)] = y[400]
    (only,) = read_torque(t, np.round(y, 2), sensor=SENSOR).pulls
    assert not only.valid
    assert "stood still for 1.6 s under load" in only.reasons[0].text


@pytest.mark.parametrize("seed", [20106, 20230])
def test_lever_that_hangs_anew_is_no_pull_where_the_first_readings_are_few_and_a_ramp(seed):
    """What lies between two readings on the first ramp, 2 to 3 N·m, is not the display's step, nor what a load must
    exceed.
    """
    run = simulate(draw("display", seed), seed)
    sensor = Sensor(capacity_nm=run.scenario.sensor.capacity_nm)
    pulls = sum(isinstance(action, HandPull) for action in run.scenario.actions)
    assert len(stated(read_torque(run.time_s, run.torque_nm, sensor=sensor))) == pulls


@pytest.mark.parametrize(
    ("readings", "least", "likely"),
    [
        ([3.0, 3.0, 3.0], 0.0, 0.0),
        ([3.0, 3.5, 3.0, 3.5], 0.5, 0.5),
        ([0.0, 0.5, 1.5, 3.0, 3.52], 0.5, 0.5),  # whole steps within what a conversion of units leaves
        ([-2.4, -2.4, 0.7, 7.6, 13.9], 3.1, 0.155),
        ([0.0, 5e-324, 1.0], 5e-324, 5e-324),
        (list(np.linspace(0, 6, 41) ** 2), 0.0225, 0.0225),  # small beside the range: as good as none
    ],
)
def test_step_that_few_readings_make_likely(readings, least, likely):
    assert _steps(np.array(readings)) == pytest.approx((least, likely))


def rings(t, on_s, weight_nm, *, swing=1.0, decay_s=0.3, hz=7.0):
    """A lever put on: it falls from nothing and swings about where it then hangs."""
    since = np.clip(t - on_s, 0, None)
    return (t > on_s) * weight_nm * (1 - swing * np.exp(-since / decay_s) * np.cos(2 * np.pi * hz * since))


@pytest.mark.parametrize("before_s", [0.75, 0.85, 1.0, 1.15])
@pytest.mark.parametrize("weight_nm", [4.0, 5.5, 6.5])
def test_lever_may_swing_beyond_what_a_lever_weighs(weight_nm, before_s):
    """Let go it swings to twice its weight, which alone would be too much for a lever on a pull of 20 N·m."""
    t = np.arange(0, 12, 0.005)
    begin = 3.0 + before_s
    pull = np.interp(t, [begin, begin + 0.6, begin + 0.75, 8, 8.2], [0, 15.5, 13.5, 13.5, 0])
    y = rings(t, 3.0, weight_nm) * (t < 8.2) + pull
    (only,) = stated(read_torque(t, noisy(t, y), sensor=SENSOR))
    assert abs(only.rotating.at_sensor_nm - 13.5) < only.rotating.u95_sensor_nm
    if (weight_nm, before_s) != (6.5, 0.85):  # there it shakes too much for a level: the interval reaches it
        assert only.handoff_nm == pytest.approx(weight_nm, abs=0.2)


@pytest.mark.parametrize("weight_nm", [2.5, 4.0, 6.0, 7.0, 8.0, 9.0])
def test_interval_reaches_a_lever_put_on_too_late_to_hang(weight_nm):
    """A third of a second before the ramp: no level shows, but no hand is as quick."""
    t = np.arange(0, 12, 0.002)
    pull = np.interp(t, [3.35, 5.2, 5.4, 9, 9.3], [0, 18, 13, 13, 0])
    y = rings(t, 3.0, weight_nm) * (t < 9.3) + pull
    (only,) = stated(read_torque(t, noisy(t, y), sensor=SENSOR))
    assert abs(only.breakaway.at_sensor_nm - 18.0) < 1.06 * only.breakaway.u95_sensor_nm
    assert abs(only.rotating.at_sensor_nm - 13.0) < 1.06 * only.rotating.u95_sensor_nm


def test_quick_start_of_a_hand_widens_nothing():
    t = np.arange(0, 12, 0.002)
    y = np.interp(t, [3.0, 3.3, 5.0, 5.2, 9, 9.3], [0, 5.0, 18, 13, 13, 0])
    (only,) = stated(read_torque(t, noisy(t, y), sensor=SENSOR))
    assert only.rotating.at_sensor_nm == pytest.approx(13.0, rel=0.01)
    assert only.rotating.u95_sensor_nm < 0.3


def test_lever_off_and_on_between_two_pulls_counts_from_where_it_then_hangs():
    """Both hand-off levels lie within four seconds; in between the lever was off, long enough to show it."""
    t = np.arange(0, 16, 0.002)
    first = np.interp(t, [2, 3, 3.1, 5, 5.1], [0, 20, 16, 16, 0]) + rings(t, 1.2, 5.0) * (t < 5.1)
    second = np.interp(t, [9.1, 11, 11.2, 14, 14.2], [0, 19, 15, 15, 0]) + rings(t, 8.1, 3.7) * (t < 14.2)
    y = first - 4.2 * ((t > 5.1) & (t < 6.6)) + second
    pulls = stated(read_torque(t, noisy(t, y), sensor=SENSOR))
    assert [p.handoff_nm for p in pulls] == pytest.approx([5.0, 3.7], abs=0.2)
    assert [p.rotating.at_sensor_nm for p in pulls] == pytest.approx([16.0, 15.0], rel=0.02)


@pytest.mark.parametrize(("rest_s", "pulls"), [(0.5, 1), (0.9, 2), (1.1, 2)])
def test_lever_that_lies_still_between_two_grips_is_at_rest(rest_s, pulls):
    """It hangs a little lower each time: counted from the level before, the second pull would be read low."""
    t = np.arange(0, 14, 0.005)
    again = 6.1 + rest_s
    y = np.interp(
        t,
        [2, 3.0, 5.9, 6.1, again, again + 1.0, again + 3.9, again + 4.1],
        [0, 24.0, 24.0, -1.2, -1.2, 24.0, 24.0, -2.4],
    )
    said = read_torque(t, noisy(t, y), sensor=SENSOR).pulls
    ended = {round(p.start_s, 1): p for p in said}  # a pull that goes on is said again, with all of it
    assert len(ended) == pulls
    if pulls == 2:
        assert [p.rotating.at_sensor_nm for p in ended.values()] == pytest.approx([24.0, 25.2], rel=0.005)
        assert all(p.valid for p in ended.values())


def test_lever_off_and_on_after_a_worn_pack_is_no_second_grip():
    """It hung at a third of the pull, which keeps the load open, until it was taken off a second before the next."""
    t = np.arange(0, 18, 0.002)
    hangs = 6.0
    first = np.interp(t, [2, 3.4, 3.6, 6, 6.2], [0, 16, 12.5, 12.5, 0]) + rings(t, 1.15, hangs)
    shake = np.exp(-np.clip(t - 6.2, 0, None) / 0.9) * 1.8 * np.sin(2 * np.pi * 7 * t) * (t > 6.2)
    second = np.interp(t, [10.2, 11.6, 11.8, 15, 15.2], [0, 16, 12.5, 12.5, 0])
    y = np.where((t > 8.7) & (t < 9.4), 0.0, first + shake + second) * (t < 15.2)
    pulls = stated(read_torque(t, noisy(t, y), sensor=SENSOR))
    assert [p.rotating.at_sensor_nm for p in pulls] == pytest.approx([12.5, 12.5], rel=0.03)
    assert [p.handoff_nm for p in pulls] == pytest.approx([hangs, hangs], abs=0.3)


def test_interval_reaches_the_first_level_of_a_stream_that_may_have_begun_under_load():
    """A lever of 8 N·m that still swings looks like a load that was cut off at the start; a slow pull comes straight
    out of it the other way.
    """
    t = np.arange(0, 11, 0.01)
    begins = 8.2 + 0.6 * np.exp(-t / 2) * np.sin(2 * np.pi * 4 * t)
    pull = np.interp(t, [2.1, 4.8, 5.0, 6.8, 7.0], [0, -37.5, -35.0, -35.0, 0])
    y = np.where(t < 7.0, begins + pull, -4.3)
    said = stated(read_torque(t, noisy(t, y, 0.03), sensor=SENSOR))
    whole = said[-1]
    assert not any(pull.valid for pull in said[:-1])
    assert abs(whole.breakaway.at_sensor_nm - 37.5) < whole.breakaway.u95_sensor_nm
    assert abs(whole.rotating.at_sensor_nm - 35.0) < whole.rotating.u95_sensor_nm


@pytest.mark.parametrize("from_s", [0.3, 0.4, 0.5])
def test_recording_that_begins_on_the_ramp_reaches_the_level_after_it(from_s):
    t = np.arange(0, 12, 0.002)
    y = np.interp(t, [0, 2.5, 2.7, 7, 7.2], [1, 26, 22, 22, 1.5]) * (1 + 0.004 * np.sin(2 * np.pi * 9 * t))
    cut = t > from_s
    (only,) = stated(read_torque(t[cut], noisy(t, y, 0.05)[cut], sensor=SENSOR))
    assert abs(only.rotating.at_sensor_nm - 21.0) < 1.15 * only.rotating.u95_sensor_nm
    assert only.rotating.u95_sensor_nm > 0.7 * 10 * from_s


@pytest.mark.parametrize("seed", [5, 6, 7, 8])
@pytest.mark.parametrize("at", [0.4, 0.5, 0.6])
@pytest.mark.parametrize("pause_s", [0.6, 0.8, 1.0])
def test_hand_that_hesitates_trembling_half_way_up_is_no_rest(seed, at, pause_s):
    """Its tremor parts the hesitation: no part confirms another."""
    t = np.arange(0, 16, 0.005)
    y = np.interp(t, [3, 4, 4 + pause_s, 5 + pause_s, 11, 11.3], [0, 80 * at, 80 * at, 80, 80, 0])
    shake = np.random.default_rng(seed).standard_normal(len(t))
    tremor = np.convolve(shake, np.hanning(11) * np.cos(np.linspace(-3, 3, 11)), "same")
    (only,) = stated(read_torque(t, noisy(t, y * (1 + 0.004 * tremor), 0.3), sensor=SENSOR))
    assert only.rotating.at_sensor_nm == pytest.approx(80.0, rel=0.02)
