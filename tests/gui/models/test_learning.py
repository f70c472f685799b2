"""Learning an unknown transducer: a number as it is shown, which one stands for the torque, what is proposed."""

from __future__ import annotations

import math
import struct
from typing import TYPE_CHECKING

import numpy as np
import pytest

from gui.models import learning
from gui.models.learning import LearningState, Naming
from logger.decoder.description import BleSettings, Description
from logger.decoder.layouts import Packet, PlacedNumber
from logger.decoder.template import LineFormat
from logger.header import TransducerFacts
from logger.learn.hear import Heard
from logger.learn.learn import Learned, TorqueCandidate, Wanted
from logger.learn.lines import FRAMED
from logger.links.ble_pick import Offer
from logger.samples import Chunk

if TYPE_CHECKING:
    from collections.abc import Callable

LINE = Description(name="x", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}"))
FIRST, SECOND = (f"0000fff{n}-0000-1000-8000-00805f9b34fb" for n in (1, 2))


def heard(line: Callable[[int], str], lines: int = 120) -> Heard:
    return Heard([Chunk(n / 20, f"{line(n)}\r\n".encode()) for n in range(lines)])


def on_air(**streams: tuple[int, Callable[[int], bytes]]) -> Heard:
    """Give what came of characteristics by the number of their packets."""
    uuids = {"first": FIRST, "second": SECOND}
    return Heard(
        radio={
            uuids[name]: (Offer("", uuids[name], 3, True), [Chunk(n / 20, packet(n)) for n in range(count)])
            for name, (count, packet) in streams.items()
        }
    )


def counts(n: int) -> bytes:
    """Give a counter and a number that swings about 1000."""
    return struct.pack("<Bh", n % 256, round(1000 + 900 * math.sin(n / 9)))


# ---------------------------------------------------------------------- a number that may be the torque
@pytest.mark.parametrize(
    ("elapsed_s", "moving"),
    [(0.0, 1.0), (2.0, 1.0), (4.0, 24 / 50), (8.0, 11 / 50), (16.0, 5 / 50), (1000.0, 4 / 50)],
)
def test_how_much_of_its_movement_a_number_made_just_now(elapsed_s: float, moving: float) -> None:
    """It rises from 0 to 20 in 50 equal steps; the last 2 s are looked at, five readings at the least."""
    values = np.concatenate(([np.nan], np.linspace(0.0, 20.0, 51)))
    chunks = [Chunk(0.0, b"0")] if elapsed_s == 0 else [Chunk(10.0, b"0"), Chunk(10.0 + elapsed_s, b"0")]
    shown = learning._candidate(TorqueCandidate("a", 2, "Nm", values), Heard(chunks))
    assert (shown.name, shown.number, shown.unit) == ("a", 2, "Nm")
    assert (shown.least, shown.greatest, shown.now) == (0.0, 20.0, 20.0)
    assert shown.moving == pytest.approx(moving)


def test_a_number_that_stands_still_does_not_move() -> None:
    """Its time is that of the characteristic of which most came."""
    still, falls = np.full(9, 3.0), np.arange(100.0, 0.0, -1.0)
    streams = on_air(first=(100, counts), second=(2, counts))
    assert learning._candidate(TorqueCandidate("a", 1, "", still), streams).moving == 0.0
    # 4.95 s: the last 40 of 100.
    assert learning._candidate(TorqueCandidate("a", 1, "", falls), streams).moving == pytest.approx(39 / 99)


@pytest.mark.parametrize(
    ("line", "chosen", "unit"),
    [
        (lambda n: f"{5 * math.sin(n / 5):.1f};{100_000 + 50 * math.sin(n / 7):.1f}", "value1", "N·m"),
        (lambda n: f"{5 * math.sin(n / 5):.1f};{10 + 90 * math.sin(n / 7):.1f}", "value2", "N·m"),
        # Ranges of 10 about 0 and of 95 about 9: 10/1 against 95/10, and 10/1.1 against 95/10.1 the other way round.
        (lambda n: f"{(-5, 0, 5)[n % 3]};{(-40, 9, 55)[n // 3 % 3]}", "value1", "N·m"),
        (lambda n: f"{5 * math.sin(n / 5):.1f} lbf.in;{100_000 + 50 * math.sin(n / 7):.1f}", "value1", "lbf·in"),
    ],
)
def test_the_number_that_moves_most_for_its_size_is_shown_until_one_is_chosen(
    line: Callable[[int], str], chosen: str, unit: str
) -> None:
    state = learning.look_at(heard(line))
    assert "field" in state.asked
    assert (state.chosen, state.draft.unit) == (chosen, unit)


def test_counts_are_shown_as_they_come_until_their_worth_is_said() -> None:
    """A unit that was given stays."""
    state = learning.look_at(on_air(first=(120, counts)))
    assert (state.asked, state.draft.unit, state.unit_sent) == (("scale",), "N·m", False)
    last = struct.unpack("<Bh", counts(119))[1]
    assert (state.now, state.readings, state.first_load) == (last, 120, 1)
    assert state.raw == counts(119).hex(" ").upper()
    state = learning.look_at(on_air(first=(120, counts)), Wanted(unit="lbf·in"))
    assert (state.draft.unit, state.now) == ("lbf·in", last)
    state = learning.look_at(on_air(first=(120, counts)), Wanted(scale=0.5))
    assert (state.draft.unit, state.now) == ("N·m", last / 2)


def test_readings_are_those_of_the_characteristic_that_is_described() -> None:
    state = learning.look_at(on_air(second=(300, lambda _: b"\x01\x02"), first=(120, counts)))
    assert state.draft.ble.characteristic == FIRST
    assert state.readings == 120
    # A port on which a Bluetooth device was heard as one stream.
    bytes_alone = heard(lambda n: f"{20 * math.sin(n / 9):.2f} Nm")
    bytes_alone.ble = BleSettings(characteristic=FIRST)
    assert learning.look_at(bytes_alone).readings == 120


def test_nothing_comes_of_nothing() -> None:
    state = learning.look_at(Heard())
    assert (state.draft, state.candidates, state.asked) == (None, (), state.asked)
    assert (state.unit_sent, state.chosen, state.readings, state.fits) == (False, "", 0, 0.0)
    assert (state.now, state.first_load, state.raw) == (None, 0, "")
    # What the comma means is asked first: no figure is shown that may be a thousand times another.
    state = learning.look_at(heard(lambda n: f"1,{round(500 + 300 * math.sin(n / 5)):03}"))
    assert (state.asked, state.draft, state.readings) == (("decimal",), None, 0)


# ---------------------------------------------------------------------- the last one as it came
def test_the_last_packet_is_shown_in_its_first_32_bytes() -> None:
    number = PlacedNumber(name="torque", type="s16", at=0)
    packet = Description(name="x", transducer=TransducerFacts(unit="N·m"), notification=Packet(fields=(number,)))
    chunks = [Chunk(0.0, bytes(40)), Chunk(1.0, bytes(range(1, 41)))]
    assert learning._last_raw(packet, chunks) == bytes(range(1, 33)).hex(" ").upper()
    assert learning._last_raw(packet, []) == ""


def test_the_last_line_is_sought_in_fifty_pieces() -> None:
    for digits, found in ((48, "1" * 48), (49, "")):
        chunks = [Chunk(0.0, piece) for piece in (b"\n", *[b"1"] * digits, b"\n")]
        assert learning._last_raw(LINE, chunks) == found
    framed = Description(
        name="x", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}", terminator=FRAMED)
    )
    assert learning._last_raw(framed, [Chunk(0.0, b"\x021.0\x03\r\n\x022.0\x03\r\n\x023.")]) == "\x022.0\x03"


# ---------------------------------------------------------------------- which way it was loaded first
@pytest.mark.parametrize(
    ("torque", "sign"),
    [
        ([], 0),
        ([5.0], 0),
        ([0.0, 5.0], 1),
        ([0.0, -5.0], -1),
        ([0.0, -1.0, 2.0], 1),  # half of the greatest departure is a twitch, more is the load
        ([0.0, -1.01, 2.0], -1),
        # Where it began is the median of the first twentieth: of 60 readings three, so that one wild one is nothing.
        ([0.0, 9.0, 0.0] + [4.0] * 57, 1),
        ([9.0, 9.0, 0.0] + [4.0] * 57, -1),
    ],
)
def test_the_sign_of_the_first_load(torque: list[float], sign: int) -> None:
    assert learning._first_load(np.array(torque)) == sign


@pytest.mark.parametrize(
    ("first_load", "shows", "sign"),
    [(0, "signed", "signed"), (1, "signed", "signed"), (-1, "signed", "reversed"), (-1, None, "none")],
)
def test_the_first_load_was_to_be_clockwise(first_load: int, shows: str | None, sign: str) -> None:
    draft = Description(
        name="x", transducer=TransducerFacts(unit="lbf·ft", sign=shows), lines=LineFormat(template="{torque}")
    )
    state = LearningState(Learned(draft), draft, first_load=first_load)
    assert learning.proposed(state) == Naming(unit="", sign=sign)
    state = LearningState(Learned(draft), draft, unit_sent=True, first_load=first_load)
    assert learning.proposed(state).unit == "lbf·ft"


# ---------------------------------------------------------------------- what is added
def test_what_is_typed_is_taken_or_blamed() -> None:
    state = LearningState(Learned(LINE), LINE)
    typed = {"name": " mine ", "unit": "lbf·ft", "sign": "reversed", "accuracy": "± 0,5 %", "serial": " 7 "}
    made, wrong = learning.complete(state, Naming(**typed, capacity="100"), request="D")
    assert wrong == {}
    facts = made.transducer
    assert (made.name, facts.name, facts.serial, facts.unit, facts.sign) == ("mine", "mine", "7", "lbf·ft", "reversed")
    assert facts.capacity_nm == pytest.approx(135.58179483)  # 1 lbf·ft is 1.355 817 948 3 N·m (NIST SP 811, B.8)
    assert facts.accuracy_percent_of_reading == 0.5
    assert (made.poll.request, made.poll.interval_s) == ("D", 0.1)
    made, _ = learning.complete(state, Naming(**typed))
    assert (made.poll, made.transducer.capacity_nm) == (None, None)
    for capacity in ("0", "-1", "many"):
        assert set(learning.complete(state, Naming(**typed, capacity=capacity))[1]) == {"capacity"}
    assert learning.complete(state, Naming(**typed, capacity="0.1"))[1] == {}
    assert set(learning.complete(state, Naming())[1]) == {"name", "unit"}
