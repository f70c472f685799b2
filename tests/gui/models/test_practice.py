"""The virtual transducer of a practice: what it sends and when, what hangs on it, how far ahead it is made."""

from __future__ import annotations

import threading

import numpy as np
import pytest

from gui.models.practice import FRAME, HandWish, PracticeLink, scenario_for_practice
from logger.decoder.build import build_decoder


def link(speed: float = 1.0) -> PracticeLink:
    return PracticeLink(scenario_for_practice(), speed=speed)


def sent(of: PracticeLink) -> np.ndarray:
    """Decode what is queued."""
    return build_decoder(of.description).feed(*(data for _, data in of._pieces)).columns["torque"]


@pytest.mark.parametrize(
    ("speed", "now_s", "end_s"),
    [(1.0, 0.0, 0.4), (1.0, 0.1, 0.4), (1.0, 0.125, 0.6), (8.0, 0.0, 0.6), (20.0, 0.0, 1.6)],
)
def test_idle_time_is_made_three_tenths_of_a_second_ahead_and_more_at_speed(
    speed: float, now_s: float, end_s: float
) -> None:
    """In pieces of a fifth of a second; at more than fourfold speed as much more as a quarter of it."""
    of = link(speed)
    of._prepare(now_s)
    assert of._end_s == pytest.approx(end_s)
    times = [at for at, _ in of._pieces]
    assert times == pytest.approx(list(np.arange(1, len(times) + 1) * FRAME / of._scenario.sensor.rate_hz))


def test_a_pull_is_sent_from_its_first_sample_in_whole_frames() -> None:
    of = link()
    run = of._idle_run()
    of._queue(run, None)
    whole = len(run.time_s) - len(run.time_s) % FRAME
    assert of._count == whole
    assert sent(of) == pytest.approx(run.torque_nm[:whole], abs=0.01)
    assert np.ptp(run.torque_nm) > 0.05, "a shift by a sample would show"


def test_what_hangs_is_added_to_what_is_sent() -> None:
    of = link()
    assert of._weight(np.arange(3)).tolist() == [0.0, 0.0, 0.0]
    of.hang(30.0)
    of._queue(of._idle_run(), None)
    assert np.median(sent(of)[-200:]) == pytest.approx(np.median(of._idle_run().torque_nm) + 30.0, abs=0.2)


def test_the_hand_pulls_unless_a_drag_is_wished_for_and_ends_with_the_program() -> None:
    assert HandWish().drag is False
    of, wait, wished = link(), threading.Event(), []

    def simulate(wish: HandWish) -> None:
        wished.append((wish, threading.current_thread().daemon))
        wait.set()

    of._simulate = simulate
    of.ask(HandWish(drag=True))
    of.ask(HandWish())
    assert wait.wait(5)
    assert wished == [(HandWish(drag=True), True)], "one at a time"
