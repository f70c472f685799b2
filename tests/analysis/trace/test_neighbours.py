"""Which reads of a recording are stated: by their heights, put together by hand."""

from __future__ import annotations

import pytest

from analysis.trace.gates import LAY_STILL, TOO_SMALL, ZERO_MOVED
from analysis.trace.neighbours import Neighbours
from analysis.trace.pulls import Read
from analysis.trace.results import Breakaway, Code, Pull
from analysis.trace.traces import Sensor


def read(
    height: float, at: float = 0.0, *, direction: int = 1, states: bool = True, reasons=(), **keys: object
) -> Read:
    """Give a read of two seconds that states its height as a breakaway."""
    slip = Breakaway(at + 1, height, 0.1, 0.2, True, 0.1) if states else None
    return Read(Pull(at, at + 2, direction, 0.0, slip, None, reasons=reasons), height_nm=height, **keys)


def told(reads, capacity=200.0):
    """Take reads one after the other; give the heights that are stated in the end, and the places taken back."""
    known = Neighbours(Sensor(capacity_nm=capacity))
    for one in reads:
        known.take(one)
    known.finish()
    stated = [pull.breakaway.at_sensor_nm for pull in known.pulls if pull.breakaway]
    return stated, [i for i, pull in enumerate(known.pulls) if pull.taken_back]


@pytest.mark.parametrize(
    ("height", "keys", "stated"),
    [
        (25.0, {}, True),  # a quarter of the usual pull
        (24.9, {}, False),
        (35.0, {"still": True}, True),  # what lies still: 35 hundredths
        (34.9, {"still": True}, False),
        (34.9, {"rang": True}, False),
        (27.0, {"still": True}, False),
        (50.0, {"handled": True}, True),  # what was there at once: half
        (49.9, {"handled": True}, False),
        (49.9, {"handled": True, "still": True}, False),
    ],
)
def test_what_is_small_beside_the_usual_pull_is_none(height, keys, stated):
    assert told([read(100.0), read(height, 10.0, **keys)]) == ([100.0, height] if stated else [100.0], [])


@pytest.mark.parametrize(
    ("height", "keys", "back"),
    [
        (25.0, {}, False),
        (24.9, {}, True),
        (35.0, {"rang": True}, False),
        (34.9, {"rang": True}, True),
        (49.9, {"handled": True}, True),
    ],
)
def test_what_proves_small_later_is_taken_back(height, keys, back):
    """The usual pull is the middle one of those that slipped: of two the higher."""
    assert told([read(height, **keys), read(100.0, 10.0)]) == (
        [100.0] if back else [height, 100.0],
        [0] if back else [],
    )


def test_all_that_prove_small_are_taken_back_in_their_order():
    known = Neighbours(Sensor(capacity_nm=1000.0))
    for at, height in enumerate((20.0, 12.0, 15.0, 10.0)):  # 15: the middle of three
        known.take(read(height, 10.0 * at))
    back = [pull for at in range(4, 9) for pull in known.take(read(300.0, 10.0 * at)) if pull.taken_back]
    assert [pull.start_s for pull in back] == [0.0, 10.0, 20.0, 30.0]
    assert all(pull.breakaway is None and pull.reasons[0].code is Code.NEVER_SLIPPED for pull in back)


@pytest.mark.parametrize(("height", "stated"), [(30.0, True), (29.9, False)])
def test_fifteen_hundredths_of_the_largest_load_are_no_pull_either(height, stated):
    """Of 200 N·m, which slipped once; the usual pull is 40 N·m. Beyond its capacity a transducer shows nothing."""
    usual = [read(40.0, 10.0 * at) for at in range(4)]
    found, _ = told([*usual, read(260.0, 50.0), read(height, 60.0)])
    assert (height in found) is stated


@pytest.mark.parametrize(
    ("height", "capacity", "keys", "waits"),
    [
        (29.9, 1000.0, {"still": True}, True),  # as much as a lever weighs: 30 N·m at most
        (30.0, 1000.0, {"still": True}, False),
        (14.9, 100.0, {"still": True}, True),  # ... or 15 hundredths of the capacity
        (15.0, 100.0, {"still": True}, False),
        (90.0, 100.0, {"still": True, "handled": True}, True),  # it was there at once
        (14.9, 100.0, {}, False),
        (14.9, 100.0, {"reasons": (TOO_SMALL,), "states": False}, True),
    ],
)
def test_what_may_be_a_lever_waits_for_the_first_that_slips(height, capacity, keys, waits):
    known = Neighbours(Sensor(capacity_nm=capacity))
    first = read(height, **keys)
    assert (known.take(first) == ()) is waits
    left = known.finish()
    assert len(known.pulls) == 1
    if waits and first.pull.breakaway:
        assert left[0].reasons == (LAY_STILL,)
        assert left[0].breakaway is None


@pytest.mark.parametrize(
    ("height", "handled", "first", "stated"),
    [(27.9, False, 80.0, False), (28.0, False, 80.0, True), (49.9, True, 100.0, False), (50.0, True, 100.0, True)],
)
def test_what_waited_is_stated_beside_the_first_that_slips(height, handled, first, stated):
    """35 hundredths of what lies still, half of what was there at once, too."""
    waits = read(height, still=True, handled=handled)
    assert told([waits, read(first, 10.0)])[0] == ([height, first] if stated else [first])


@pytest.mark.parametrize(
    ("at", "height", "direction", "stated", "moved"),
    [
        (11.9, 50.0, -1, False, False),  # the release of the load under which the zero was set
        (12.0, 50.0, -1, True, True),  # ten seconds after its end
        (11.9, 129.9, -1, False, False),
        (11.9, 130.0, -1, True, True),  # 1.3 times as large is none
        (11.9, 50.0, 1, True, False),
    ],
)
def test_the_release_of_a_load_under_which_the_zero_was_set(at, height, direction, stated, moved):
    known = Neighbours(Sensor(capacity_nm=1000.0))
    known.take(read(100.0, 0.0, reasons=(ZERO_MOVED,)))
    found = known.take(read(height, at, direction=direction))
    assert bool(found) is stated
    assert (bool(found) and ZERO_MOVED in found[-1].reasons) is moved


def test_what_goes_on_with_a_pull_is_no_further_one():
    """100 and 40 N·m, that in three grips, are two heights: the upper one counts; one more of 40 makes that usual."""
    known = Neighbours(Sensor(capacity_nm=1000.0))
    for at, (height, again) in enumerate(((100.0, False), (40.0, False), (40.0, True), (40.0, True))):
        known.take(read(height, 10.0 * at, again=again))
    assert known._usual_nm == 100.0
    known.take(read(40.0, 50.0))
    assert known._usual_nm == 40.0


def test_the_first_pull_of_all_is_compared_with_nothing():
    assert told([read(0.2)]) == ([0.2], [])
