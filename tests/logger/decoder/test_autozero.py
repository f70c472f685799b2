"""Auto-zero under load is noticed; hands that let go are not taken for it."""

import numpy as np
import pytest

from logger.decoder.autozero import AutoZeroWatch
from logger.decoder.build import build_decoder
from logger.decoder.description import Description
from logger.decoder.layouts import Packet, PlacedNumber
from logger.decoder.notifications import NotificationDecoder
from logger.header import TransducerFacts
from logger.samples import Column, Decoded, Event, EventKind, empty


def watch(capacity=100.0, rate_hz=1000.0):
    layout = Packet(fields=(PlacedNumber(name="torque", type="float64", unit="N·m"),), samples=0)
    return AutoZeroWatch(NotificationDecoder(layout), capacity, rate_hz)


def feed(decoder, values, size=20):
    values = np.asarray(values, float)
    parts = [decoder.feed(values[i : i + size].tobytes()) for i in range(0, len(values), size)]
    begins = np.cumsum([0, *(len(p) for p in parts)])
    return [(e.kind, int(b) + e.index) for b, p in zip(begins, parts, strict=False) for e in p.events]


LOAD = 24.0 + 0.05 * np.sin(np.arange(200))


@pytest.mark.parametrize("size", [1, 7, 20, 1000])
def test_a_vanished_load_is_noticed_where_it_vanishes(size):
    decoder = watch()
    found = feed(decoder, np.concatenate((LOAD, 0.01 * np.sin(np.arange(100)))), size)
    ((kind, place),) = found
    assert kind is EventKind.AUTO_ZERO
    assert 200 <= place < 205  # a drain that ends at the step must wait for what follows


def test_values_that_were_not_delivered_do_not_move_the_place():
    values = np.concatenate((LOAD, 0.01 * np.sin(np.arange(100))))
    values[[3, 50, 51, 120]] = np.nan
    found = [place for kind, place in feed(watch(), values, 1000) if kind is EventKind.AUTO_ZERO]
    assert found == [200]


@pytest.mark.parametrize("rate", [100.0, 1000.0])
def test_a_hand_that_lets_go_is_not(rate):
    decoder = watch(rate_hz=rate)
    release = 24.0 * np.exp(-np.arange(int(0.3 * rate)) / (0.02 * rate))
    assert not feed(decoder, np.concatenate((LOAD, release, np.zeros(50))))


def test_a_slow_gauge_cannot_tell():
    assert not feed(watch(rate_hz=10.0), np.concatenate((LOAD, np.zeros(50))))
    assert not feed(watch(rate_hz=None), np.concatenate((LOAD, np.zeros(50))))


@pytest.mark.parametrize("size", [1, 2, 3, 20, 200])
def test_a_short_drop_out_is_not(size):
    assert not feed(watch(), np.concatenate((LOAD, [0.0, 0.0], LOAD)), size)


def test_nothing_after_a_break_where_a_load_was():
    decoder = watch(rate_hz=10.0)
    feed(decoder, LOAD)
    decoder.reset()
    assert feed(decoder, 0.01 * np.ones(3), 1) == []
    found = feed(decoder, 0.01 * np.ones(50), 1)
    assert [kind for kind, _ in found] == [EventKind.AUTO_ZERO]
    decoder.reset()
    assert not feed(decoder, np.zeros(50))


@pytest.mark.parametrize("after", [LOAD, 0.5 * LOAD, -LOAD])
def test_still_loaded_after_a_break_is_no_doubt(after):
    decoder = watch()
    feed(decoder, LOAD)
    decoder.reset()
    assert not feed(decoder, after)


def test_without_a_capacity_the_highest_torque_serves():
    decoder = watch(capacity=None)
    feed(decoder, np.concatenate((60.0 * np.ones(5), LOAD)))
    decoder.reset()
    assert feed(decoder, np.zeros(20))
    idle = watch(capacity=None)
    assert not feed(idle, np.concatenate((0.01 * np.ones(50), np.zeros(50))))


def test_what_the_other_decoder_does_stays():
    decoder = watch()
    assert decoder.columns[0].name == "torque"
    assert not decoder.simulated
    decoder.expect(5.0)
    decoded = decoder.feed(np.array([np.nan]).tobytes())
    assert len(decoded) == 1
    assert [e.kind for e in decoded.events] == [EventKind.DEVICE_ERROR]


@pytest.mark.parametrize(("unit", "per_nm"), [("N·m", 1.0), ("lbf·in", 8.8507458), ("N·cm", 100.0)])
def test_least_load_is_the_same_torque_in_every_unit(unit, per_nm):
    """What vanishes below 1 N·m is no auto-zero, whatever the unit (1 N·m = 8.850 745 8 lbf·in, NIST SP 811)."""
    layout = Packet(fields=(PlacedNumber(name="torque", type="float64", unit=unit),), samples=0)
    facts = TransducerFacts(rate_hz=1000.0, unit=unit, capacity_nm=100.0)
    found = build_decoder(Description(name="gauge", link="ble", notification=layout, transducer=facts))
    assert isinstance(found, AutoZeroWatch)
    assert found._least == pytest.approx(per_nm, rel=1e-6)
    assert found._loaded == pytest.approx(5 * per_nm, rel=1e-6)  # a twentieth of the capacity


class Told:
    """A decoder whose torques are given, and which remembers what it was told."""

    columns, simulated = (Column("torque", "N·m"),), False

    def __init__(self, *parts, events=()):
        self.parts, self.events, self.said = iter(parts), events, []

    def expect(self, samples, leeway=0.0):
        self.said.append((samples, leeway))

    def reset(self, *, midway=True):
        self.said.append(midway)
        return empty(self.columns)

    def feed(self, *chunks):
        torque = np.array(next(self.parts), float)
        return Decoded({"torque": torque}, np.zeros(len(torque), np.int64), None, self.events)


def test_what_is_said_to_it_reaches_the_other_decoder():
    other = Told()
    made = AutoZeroWatch(other)
    made.expect(5.0)
    made.expect(7.0, 2.0)
    made.reset()
    made.reset(midway=False)
    assert other.said == [(5.0, 0.0), (7.0, 2.0), True, False]


def places(parts, capacity=100.0, rate_hz=1000.0, least=1.0):
    """Where auto-zeros are told, by drain; None among the drains is a break."""
    made, found = AutoZeroWatch(Told(*(p for p in parts if p is not None)), capacity, rate_hz, least=least), []
    for part in parts:
        found.append([e.index for e in (made.reset() if part is None else made.feed()).events])
    return found


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        # a level of 50, whose tenth is 5 and whose fiftieth is 1: these numbers are exact in binary
        ([55, 50, 50, 50, 50], [0, 0, 0, 0, 0], True),
        ([55.5, 50, 50, 50, 50], [0, 0, 0, 0, 0], False),
        ([50, 50, 50, 50, 50], [1, -1, 0.5, -1, 1], True),
        ([50, 50, 50, 50, 50], [0, 0, 0, 0, 1.125], False),
        ([50, 50, 50, 50, 50], [-1.125, 0, 0, 0, 0], False),
        ([-50, -50, -50, -50, -50], [0, 0, 0, 0, 0], True),
        # a twentieth of the capacity of 100 is no load yet
        ([5, 5, 5, 5, 5], [0, 0, 0, 0, 0], False),
        ([5.125, 5.125, 5.125, 5.125, 5.125], [0, 0, 0, 0, 0], True),
        ([5.125, 5.125, 5, 5, 5.125], [0, 0, 0, 0, 0], True),  # half of them and one more: the middle one counts
        ([5.125, 5, 5, 5, 5.125], [0, 0, 0, 0, 0], False),
        ([50, 50, 50, 50], [0, 0, 0, 0, 0], False),  # five make a level
        ([0, 50, 50, 50, 50, 50], [0, 0, 0, 0, 0], True),
    ],
)
def test_the_borders_behind_a_break(before, after, told):
    assert places([before, None, after], rate_hz=None) == [[], [], [0] if told else []]


def test_behind_a_break_five_samples_are_waited_for_and_told_once():
    assert places([[50] * 5, None, [0, 0], [0, 0], [0], [0] * 9, None, [0] * 5], rate_hz=None) == [
        [], [], [], [], [0], [], [], [],
    ]  # fmt: skip
    # only the first five count: a load that is put on behind them is no sign that the zero is right
    assert places([[50] * 5, None, [0, 0, 0, 0, 0, 50]], rate_hz=None)[-1] == [0]
    assert places([[50] * 5, None, [0, 0, 0, 0], [50, 0]], rate_hz=None)[-1] == []
    # a second break before enough has come forgets nothing
    assert places([[50] * 5, None, [0, 0], None, [0] * 5], rate_hz=None)[-1] == [0]
    made = AutoZeroWatch(Told([50, 50, 50.5, 50, 50], [0.5, 0.5, 0.5, 0.5, 0.25]))
    made.feed()
    made.reset()
    (event,) = made.feed().events
    assert (event.kind, event.count) == (EventKind.AUTO_ZERO, 0)
    assert "it read 50, now 0.25:" in event.text


@pytest.mark.parametrize(
    ("values", "place"),
    [
        ([50] * 5 + [0] * 5, 5),
        ([50] * 4 + [0] * 5, None),
        ([50] * 5 + [0] * 4, None),
        ([0] + [50] * 5 + [0] * 9, 6),
        ([55] + [50] * 4 + [0] * 5, 5),
        ([55.5] + [50] * 4 + [0] * 5, None),
        ([55.5] + [50] * 5 + [0] * 5, 6),  # only the five before the step
        ([50] * 4 + [56] + [0] * 5, None),  # a tenth of the last
        ([50] * 5 + [1] + [0] * 4, None),  # one is a fiftieth of it
        ([50] * 5 + [0.875] * 5, 5),
        ([50] * 5 + [0, 0, 0, 0, 1], None),
        ([50] * 5 + [0, 0, 0, 0, -1], None),
        ([50] * 5 + [0, 0, 0, 0, 0, 50], 5),  # what comes behind five is another matter
        ([-50] * 5 + [0] * 5, 5),
        ([-50] * 5 + [-0.875] * 5, 5),
        ([5] * 5 + [0] * 5, None),
        ([5.125] * 5 + [0] * 5, 5),
        ([5.125] * 5 + [5] + [0] * 5, None),
    ],
)
def test_the_borders_of_a_step(values, place):
    assert places([values]) == [[] if place is None else [place]]


@pytest.mark.parametrize("cut", range(1, 15))
def test_a_step_is_told_once_wherever_the_drains_end(cut):
    """In the drain that brings the fifth sample behind it, at its place or, where that has gone, at the first one."""
    values = [0] + [50] * 5 + [0] * 9  # the step at 6, judged with the sample at 10
    late = cut <= 10
    assert places([values[:cut], values[cut:]]) == ([[], [max(0, 6 - cut)]] if late else [[6], []])


@pytest.mark.parametrize("size", [1, 2, 3, 4, 5, 6])
def test_a_step_is_told_once_in_drains_of_few_samples(size):
    values = [50] * 12 + [0] * 20
    found = places([values[i : i + size] for i in range(0, len(values), size)])
    assert sum(map(len, found)) == 1
    assert found[(12 + 4) // size] == [max(0, 12 - (12 + 4) // size * size)]


@pytest.mark.parametrize(("rate_hz", "told"), [(100.0, True), (99.9, False), (None, False)])
def test_steps_are_looked_for_from_a_hundred_samples_a_second_on(rate_hz, told):
    assert places([[50] * 5 + [0] * 5], rate_hz=rate_hz) == [[5] if told else []]


@pytest.mark.parametrize(
    ("values", "least", "place"),
    [
        ([100] * 9 + [40] + [20] * 5 + [0] * 5, 1.0, None),  # a fifth of the highest is no load yet
        ([100] * 9 + [40] + [20.25] * 5 + [0] * 5, 1.0, 15),
        ([-100] * 9 + [40] + [20] * 5 + [0] * 5, 1.0, None),
        ([1] * 5 + [0] * 5, 1.0, None),
        ([1.125] * 5 + [0] * 5, 1.0, 5),
        ([0.15] * 5 + [0] * 5, 0.1, 5),
    ],
)
def test_without_a_capacity_at_the_border_itself(values, least, place):
    # The highest torque counts from the drain behind it on.
    parts = [values[:9], values[9:]] if len(values) > 10 else [values]
    told = places(parts, capacity=None, least=least)[-1]
    assert told == ([] if place is None else [place - 9 * (len(parts) - 1)])


def test_events_of_both_stand_in_order_and_values_that_are_none_do_not_count():
    nan = float("nan")
    own = (Event(EventKind.GAP, 2, 1, "x"), Event(EventKind.NOTE, 9, 0, "y"))
    made = AutoZeroWatch(Told([nan, 50, 50, 50, 50, nan, 50, 0, nan, 0, 0, 0, 0], events=own), 100.0, 1000.0)
    found = made.feed().events
    assert [(e.kind, e.index) for e in found] == [(EventKind.GAP, 2), (EventKind.AUTO_ZERO, 7), (EventKind.NOTE, 9)]
    assert "a load of 50 vanished" in found[1].text
    assert found[1].count == 0


def test_fewer_than_five_samples_are_no_level_however_small_a_load_may_be():
    assert places([[0.5] * 4, None, [0] * 5], capacity=None, rate_hz=None, least=0.125)[-1] == []
    assert places([[0.5] * 5, None, [0] * 5], capacity=None, rate_hz=None, least=0.125)[-1] == [0]


def test_without_more_said_a_load_is_more_than_one():
    for load, told in ((1.0625, 1), (1.0, 0)):
        made = AutoZeroWatch(Told([load] * 5, [0] * 5))
        made.feed()
        made.reset()
        assert len(made.feed().events) == told
