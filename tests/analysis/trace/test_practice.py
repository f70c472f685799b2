"""The reading against recordings whose truth is known: a floor that no change may fall through."""

from __future__ import annotations

import pytest
from scipy.stats import binom

from analysis.trace.reading import read_torque
from tests.analysis import practice, scoring

FLOOR, FAMILY_FLOOR = 90.0, 84.0


@pytest.fixture(scope="module")
def accounts() -> dict[str, scoring.Family]:
    found = scoring.families()
    assert len(practice.names()) == 18
    for name in practice.names():
        recording = practice.load(name)
        reading = read_torque(
            recording.time_s, recording.torque_nm, angle_deg=recording.angle_deg, sensor=recording.sensor
        )
        scoring.add(found[recording.family], recording.truth, reading.pulls)
    return found


def test_score(accounts):
    assert scoring.overall(accounts) >= FLOOR, scoring.table(accounts)
    assert min(family.score() for family in accounts.values()) >= FAMILY_FLOOR, scoring.table(accounts)


def test_nothing_is_found_where_nothing_is(accounts):
    assert accounts["adversarial"].false == 0
    assert sum(family.false for family in accounts.values()) == 0


def test_every_pull_is_found(accounts):
    assert all(family.found == family.pulls for family in accounts.values())


def test_intervals_hold_what_they_say(accounts):
    """No more misses than chance explains (99 %) if 95 % of the intervals hold the truth."""
    inside, stated = (sum(n) for n in zip(*(
        errors.covered() for family in accounts.values() for errors in (family.breakaway, family.rotating)
    ), strict=True))  # fmt: skip
    assert stated >= 50
    assert stated - inside <= binom.ppf(0.99, stated, 0.05)


class TestScoring:
    """The scorer itself: the truth scores 100, silence and noise do not."""

    def test_silence(self):
        accounts = scoring.families()
        for name in practice.names():
            recording = practice.load(name)
            scoring.add(accounts[recording.family], recording.truth, ())
        assert accounts.pop("adversarial").score() == 100
        assert max(family.score() for family in accounts.values()) <= 10

    def test_truth(self):
        from analysis.trace.results import Breakaway, Pull, Rotating

        accounts = scoring.families()
        for name in practice.names():
            truth = practice.load(name).truth
            pulls = tuple(
                Pull(
                    t["t_start"],
                    t["t_end"],
                    t["direction"],
                    0.0,
                    None
                    if t["breakaway"] is None
                    else Breakaway(t["t_breakaway"], t["breakaway"], 0.0, 0.0, t["peak_class"] == "distinct"),
                    None if t["plateau"] is None else Rotating(0.0, 1.0, t["plateau"], 0.0, 0.0, 0.0),
                )
                for t in truth["pulls"]
                if t["valid"]
            )
            scoring.add(accounts[truth["family"]], truth, pulls)
        assert scoring.overall(accounts) > 99
