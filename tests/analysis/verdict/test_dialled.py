"""Readings of a dial, and what a header says, brought to the axle by hand."""

from __future__ import annotations

import math

import pytest

from analysis.verdict.dialled import dial_of, judge_dialled
from analysis.verdict.setup import setup_of
from logger.errors import DescriptionError
from logger.header import Header, Lever, Limit, Test, TransducerFacts, Zero
from logger.recordings.dialled import DialReading

ARM = Lever(fixture="force at radius", radius_mm=500.0, radius_mm_u=0.0, pull_angle_deg=0.0, pull_angle_deg_u=0.0)
HUB = Lever(fixture="hub centre", weight_kg=0.8, centroid_mm=180.0)


@pytest.mark.parametrize(("way", "direction"), [("clockwise", 1), ("counter-clockwise", -1), (None, 1)])
def test_a_force_at_half_a_metre(way, direction):
    """60 N at 0.5 m; the dial's zero is as set, and nothing else of a transducer is in it."""
    header = Header(lever=ARM, test=Test(direction=way))
    found = judge_dialled("a", header, [DialReading(shown=60.0, unit="N", division=1.0)])
    assert found.ok
    (value,) = found.job
    assert value.budget.value == pytest.approx(30.0)
    assert (value.direction, found.pulls[0].pull.direction) == (direction, direction)
    assert (found.at.level.known, found.at.level.zero_nm, found.at.level.u_nm) == (True, 0.0, 0.0)
    assert found.at.instrument.relative_u == 0.0


def test_without_a_fixture_a_dial_says_nothing_of_the_axle():
    found = judge_dialled("a", Header(), [DialReading(shown=60.0)])
    assert found.ok
    assert found.job == ()
    assert "fixture is not known" in found.problems[0]


def test_a_dial_in_si():
    """1 lbf·ft = 1.355 818 N·m (NIST SP 811, appendix B.8); a class of 2 % stays a share."""
    shown, dial = dial_of(DialReading(shown=20.0, unit="lbf·ft", division=1.0, error_percent=2.0, full_scale=100.0))
    assert shown == pytest.approx(27.11636)
    assert (dial.marks, dial.full_scale) == (pytest.approx(1.355818), pytest.approx(135.5818))
    assert dial.limit_of_error == pytest.approx(0.02)


@pytest.mark.parametrize(
    ("step", "stated", "u"), [(None, None, 0.0), (0.12, None, 0.12 / math.sqrt(12)), (0.12, 0.01, 0.01)]
)
def test_a_zero_is_known_to_its_step_where_nothing_is_stated(step, stated, u):
    zero = Zero(value_nm=0.5, value_nm_u=stated, how="lever off")
    level = setup_of(Header(lever=HUB, zero=zero, transducer=TransducerFacts(resolution_nm=step))).at.level
    assert (level.zero_nm, level.u_nm) == (0.5, pytest.approx(u))


@pytest.mark.parametrize(("file", "named"), [("job.csv", "job.csv"), ("", "limit")])
def test_a_limit_that_cannot_be_used_names_its_file(file, named):
    limit = Limit(quantity="breakaway", kind="min", unit="N·m", lower=27.0, source=" ")
    with pytest.raises(DescriptionError, match=f"^{named}: limit.source"):
        setup_of(Header(lever=HUB, limit=limit), file=file)
