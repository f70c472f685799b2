"""Auto-zero under load is noticed; hands that let go are not taken for it."""

import numpy as np
import pytest

from logger.decoder.autozero import AutoZeroWatch
from logger.decoder.build import build_decoder
from logger.decoder.description import Description
from logger.decoder.layouts import Packet, PlacedNumber
from logger.decoder.notifications import NotificationDecoder
from logger.header import TransducerFacts
from logger.samples import EventKind


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
