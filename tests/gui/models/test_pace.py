"""The wheel's speed against its zone, from the angle of the virtual axle and from lines known by formula."""

from __future__ import annotations

from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from analysis.trace.results import Elastic
from analysis.verdict.elastic import elastic_words
from gui.models.coach import Hint
from gui.models.display import Display
from gui.models.flow import Step
from gui.models.pace import LEAST_S, Pace, Pacer, Zone, pace_of, zone_for
from gui.pages.live_panel import coach_words
from gui.sound import Sound, wave
from gui.translation import install, tr
from logger.virtual.hand import HandPull
from logger.virtual.physics import Rest, Scenario, simulate
from logger.virtual.scenarios import axle, pack


def test_speed_is_that_of_the_virtual_wheel() -> None:
    pull = HandPull(turn_rad_s=((0.5, 4.0),), wander=0.0, tremor=0.0)
    run = simulate(Scenario("turn", "", axle(pack(40.0), pack(40.0, seed=2)), (Rest(0.5), pull), angle_step_deg=0.1), 1)
    truth = run.truth[0]
    end = truth.steady[-1][1]
    last = (run.time_s > end - 1.0) & (run.time_s < end)
    found = pace_of(run.time_s[last], run.angle_deg[last])
    grid = slice(round((end - 1.0) / run.mechanics.step_s), round(end / run.mechanics.step_s))
    true_rpm = abs(float(run.mechanics.wheel_rad_s[grid].mean())) * 30 / np.pi
    assert found.rpm == pytest.approx(true_rpm, rel=0.02)
    assert found.zone is Zone.IN


@pytest.mark.parametrize(("rpm", "zone"), [(1.9, Zone.SLOW), (2.0, Zone.IN), (10.0, Zone.IN), (10.1, Zone.FAST)])
def test_usual_zone(rpm: float, zone: Zone) -> None:
    assert Pace(rpm).zone is zone


def test_a_job_with_its_own_speed_has_its_own_zone() -> None:
    assert zone_for(4.0) == (2.0, 6.0)
    assert zone_for(None) == zone_for(0.0) == (2.0, 10.0)
    time_s = np.linspace(0, 1, 50)
    assert pace_of(time_s, -48.0 * time_s, 4.0).zone is Zone.FAST  # 8 turns a minute backwards, 4 asked for


def test_too_little_angle_says_nothing() -> None:
    time_s = np.linspace(0, 0.3, 20)
    assert pace_of(time_s, time_s) is None
    assert pace_of(time_s[:1], time_s[:1]) is None


def test_the_pacer_tells_on_leaving_again_after_a_while_and_only_while_turning_is_wanted() -> None:
    pacer, fast = Pacer(), Pace(14.0)
    assert pacer.due(Pace(5.0), Hint.KEEP_TURNING, 0.0) is None
    assert pacer.due(fast, Hint.KEEP_TURNING, 0.1) is Zone.FAST
    assert pacer.due(fast, Hint.KEEP_TURNING, 0.5) is None
    assert pacer.due(fast, Hint.KEEP_TURNING, 1.7) is Zone.FAST
    assert pacer.due(Pace(1.0), Hint.KEEP_TURNING, 1.8) is Zone.SLOW
    for hint in Hint:
        if hint is not Hint.KEEP_TURNING:
            assert pacer.due(fast, hint, 9.0) is None
    assert pacer.due(None, Hint.KEEP_TURNING, 9.0) is None


def test_its_sounds_can_be_told_apart() -> None:
    assert wave(Sound.FASTER) != wave(Sound.SLOWER)


def words_at(hint: Hint, pace: Pace | None) -> str:
    run = SimpleNamespace(
        link=None, silent=False, zeroing=None, flow=SimpleNamespace(now=Step.PULLS), hint=hint, pace=pace,
        pulls=SimpleNamespace(counting=[]), card=SimpleNamespace(pulls_wanted=5), dwell_left_s=None,
        coach=SimpleNamespace(loaded=True),
    )  # fmt: skip
    return coach_words(cast("object", run), Display())  # type: ignore[arg-type]


def test_the_speed_stands_beside_keep_turning_and_never_in_the_place_of_a_hint() -> None:
    assert words_at(Hint.KEEP_TURNING, Pace(4.2)) == "Keep turning · 4.2 turns a minute, good (2 to 10)"
    assert words_at(Hint.KEEP_TURNING, None) == "Keep turning"
    for hint in Hint:
        if hint is not Hint.KEEP_TURNING:
            assert words_at(hint, Pace(14.0)) == str(hint)


def test_speed_and_elastic_line_are_told_in_german_and_spanish(qapp) -> None:
    elastic = Elastic(38.2, 2.9, 1.44, 0.11, 1.79, 0.21, 0.0, 1)
    line = elastic_words(1, elastic, None, lambda nm, u95: f"{nm:g} ± {u95:g} N·m", lambda v, n: f"{v:.{n}f}")
    told = "Keep turning · 12.0 turns a minute, too fast (2 to 10)"
    try:
        for language, speed, wound in (
            (
                "de",
                "Weiterdrehen · 12.0 Umdrehungen je Minute, zu schnell (2 bis 10)",
                "je Grad, Verdrehung 1.44 ± 0.11°",
            ),
            ("es", "12.0 vueltas por minuto, demasiado rápido (2 a 10)", "por grado, torsión 1.44 ± 0.11°"),
        ):
            install(language)
            assert speed in tr(told)
            assert wound in tr(line)
            assert "38.2 ± 2.9 N·m" in tr(line)
    finally:
        install("en")


def test_a_speed_needs_four_tenths_of_a_second_whenever_it_is() -> None:
    """24 degrees in 0.4 s are ten turns a minute."""
    assert pace_of(np.array([0.0, LEAST_S]), np.array([0.0, 24.0])).rpm == pytest.approx(10.0)
    assert pace_of(np.array([0.0, 0.399]), np.array([0.0, 24.0])) is None
    assert pace_of(np.array([900.0, 900.25]), np.array([0.0, 24.0])) is None
