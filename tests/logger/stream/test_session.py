"""The session: one error path, nothing lost, silence, reconnect, commands, clocks that are stepped."""

from __future__ import annotations

import asyncio
import time

import pytest

from logger.decoder.description import Description
from logger.decoder.lines import LineDecoder
from logger.decoder.template import LineFormat
from logger.errors import LinkError
from logger.header import TransducerFacts
from logger.samples import EndReason, EventKind
from logger.stream.clock import ArrivalClock, CounterClock
from logger.stream.health import SessionState
from logger.stream.session import Session, build_session
from tests.logger.scripted import Kept, Pause, ScriptedLink, lost


def lines(first: int, count: int) -> bytes:
    return b"".join(b"%d,%d.5\n" % (i, i) for i in range(first, first + count))


def counted(link, **more) -> Session:
    decoder = LineDecoder(LineFormat(template="{counter},{torque}"), "N·m", "SIM")
    return Session(link, decoder, CounterClock(0.001), has_counter=True, nominal_hz=1000.0, **more)


async def until(true) -> None:
    """Wait until something holds."""
    async with asyncio.timeout(5):
        while not true():  # noqa: ASYNC110 - what is waited for has no event
            await asyncio.sleep(0.005)


def run(session: Session, *subscribers):
    for subscriber in subscribers:
        session.subscribe(subscriber)
    return asyncio.run(session.run())


def test_a_source_that_ends():
    kept = Kept()
    session = counted(ScriptedLink([lines(0, 5), lines(5, 3)]))
    ending = run(session, kept)
    assert ending.reason is EndReason.FINISHED
    assert kept.ending == ending
    assert kept.torque == [i + 0.5 for i in range(8)]
    assert kept.time_s == pytest.approx([i / 1000 for i in range(8)])
    assert [c.name for c in session.columns] == ["torque", "counter", "late"]
    assert set(kept.blocks[0].columns) == {"torque", "counter", "late"}
    assert session.health.samples == 8
    assert session.health.state is SessionState.ENDED


def test_the_counter_is_the_devices_own_and_time_begins_at_zero():
    kept = Kept()
    first = 4_294_967_290  # a device that has been on for weeks
    run(counted(ScriptedLink([lines(first, 3), lines(first + 3, 2)])), kept)
    assert [v for block in kept.blocks for v in block.columns["counter"].tolist()] == [first + i for i in range(5)]
    assert kept.time_s == pytest.approx([i / 1000 for i in range(5)], abs=1e-9)


def test_a_link_that_does_not_open_ends_failed():
    class Closed(ScriptedLink):
        async def open(self):
            raise LinkError("/dev/ttyX: there is no such port")

    kept = Kept()
    ending = run(counted(Closed()), kept)
    assert ending.reason is EndReason.FAILED
    assert ending.text == "/dev/ttyX: there is no such port"
    assert isinstance(ending.error, LinkError)
    assert kept.ending == ending


def test_a_bug_of_ours_is_an_ending_too():
    ending = run(counted(ScriptedLink([lines(0, 2), ZeroDivisionError("oops")])), kept := Kept())
    assert ending.reason is EndReason.FAILED
    assert "internal error: ZeroDivisionError: oops" in ending.text
    assert kept.torque == [0.5, 1.5]


def test_a_subscriber_that_fails_ends_it_and_the_others_get_everything():
    good, bad, last = Kept(), Kept(fail_at=1), Kept()
    ending = run(counted(ScriptedLink([lines(0, 2), lines(2, 2), lines(4, 2)])), good, bad, last)
    assert ending.reason is EndReason.FAILED
    assert "has had enough" in ending.text
    assert good.torque == last.torque == [0.5, 1.5, 2.5, 3.5]
    assert good.ending == bad.ending == last.ending == ending


def test_a_subscriber_that_fails_at_the_end():
    class Sore(Kept):
        def on_end(self, ending):
            raise OSError("no space left")

    after = Kept()
    ending = run(counted(ScriptedLink([lines(0, 2)])), Sore(), after)
    assert ending.reason is EndReason.FAILED
    assert after.ending == ending


def test_stop_keeps_what_has_arrived():
    kept = Kept()
    session = counted(ScriptedLink([lines(0, 100), lines(100, 100)], hold=True))

    async def stopped():
        running = asyncio.ensure_future(session.run())
        await until(lambda: session.health.samples >= 200)
        session.stop()
        return await running

    session.subscribe(kept)
    assert asyncio.run(stopped()).reason is EndReason.STOPPED
    assert len(kept.torque) == 200


def test_stop_before_run():
    session = counted(ScriptedLink([], hold=True))
    session.stop()
    assert run(session).reason is EndReason.STOPPED


def test_lost_and_back_with_an_exact_gap_count():
    link = ScriptedLink([lines(0, 10), b"10,10", lost()], [b"9.5\n", lines(300, 5)], refusals=1)
    kept = Kept()
    session = counted(link)
    ending = run(session, kept)
    assert ending.reason is EndReason.FINISHED
    assert kept.torque == [*(i + 0.5 for i in range(10)), *(i + 0.5 for i in range(300, 305))]
    assert kept.kinds[:2] == ["disconnect", "garbage"]
    assert "reconnect" in kept.kinds
    gaps = [e for e in kept.events if e.kind is EventKind.GAP]
    assert [e.count for e in gaps] == [290]
    assert session.health.lost == 290
    assert session.health.reconnects == 1
    assert kept.time_s == sorted(kept.time_s)
    assert link.opened == 2


def test_lost_for_good():
    kept = Kept()
    ending = run(counted(ScriptedLink([lines(0, 3), lost()], refusals=1000), reconnect_s=0.3), kept)
    assert ending.reason is EndReason.LOST
    assert "the port is gone" in ending.text
    assert kept.torque == [0.5, 1.5, 2.5]


def test_stop_while_the_device_is_away():
    session = counted(ScriptedLink([lines(0, 3), lost()], refusals=1000))

    async def stopped():
        running = asyncio.ensure_future(session.run())
        await until(lambda: session.health.state is SessionState.RECONNECTING)
        session.stop()
        return await asyncio.wait_for(running, 2)

    assert asyncio.run(stopped()).reason is EndReason.STOPPED


def test_why_it_does_not_come_back_is_shown_and_kept():
    kept = Kept()
    ending = run(counted(ScriptedLink([lines(0, 3), lost()], refusals=1000), reconnect_s=0.3), kept)
    assert ending.text == "scripted: the port is gone; it does not come back: scripted: not there yet"
    assert [e.text for e in kept.events if e.kind is EventKind.NOTE] == [
        "it does not come back: scripted: not there yet"
    ]


def test_stop_does_not_wait_for_a_link_that_opens_slowly():
    class Slow(ScriptedLink):
        async def open(self):
            await asyncio.sleep(3600)

    session = counted(Slow())

    async def stopped():
        running = asyncio.ensure_future(session.run())
        await asyncio.sleep(0.05)
        session.stop()
        return await asyncio.wait_for(running, 5)

    assert asyncio.run(stopped()).reason is EndReason.STOPPED


def test_silence_is_told_once_and_serial_ports_stay_open():
    link = ScriptedLink([lines(0, 3), Pause(0.6), lines(3, 3)])
    kept = Kept()
    run(counted(link, silence_s=0.2), kept)
    assert kept.kinds == ["silence"]
    assert "nothing has arrived for 0 s" in kept.events[0].text
    assert link.opened == 1
    assert len(kept.torque) == 6


def test_nothing_ever_arrives():
    kept = Kept()
    run(counted(ScriptedLink([Pause(0.5)]), silence_s=0.2), kept)
    assert "is it switched on" in kept.events[0].text


def test_a_silent_radio_link_is_opened_again():
    link = ScriptedLink([lines(0, 3), Pause(5)], [b"9.5\n", lines(500, 3)])
    kept = Kept()
    run(counted(link, silence_s=0.2, reopen_after_silence=True), kept)
    assert kept.kinds[:2] == ["silence", "disconnect"]
    assert link.opened == 2
    assert len(kept.torque) == 6


def test_the_simulated_mark_in_the_bytes_is_told():
    decoder = LineDecoder(LineFormat(template="SIM,{torque}"), "N·m", "SIM")
    session = Session(ScriptedLink([b"SIM,1.0\n"]), decoder, ArrivalClock())
    run(session, kept := Kept())
    assert kept.kinds == ["simulated"]
    assert session.health.simulated


def test_notes_and_commands_become_events():
    link = ScriptedLink([lines(0, 3)], hold=True)
    session = counted(link)
    session.subscribe(kept := Kept())

    async def used():
        running = asyncio.ensure_future(session.run())
        await until(lambda: session.health.samples)
        session.mark(EventKind.NOTE, "lever changed")
        await session.send(b"Z\r", "zeroes the display")
        await asyncio.sleep(0.2)
        session.stop()
        return await running

    asyncio.run(used())
    assert link.sent == [b"Z\r"]
    assert [(e.kind, e.text) for e in kept.events] == [
        (EventKind.NOTE, "lever changed"),
        (EventKind.SENT, "zeroes the display: Z\\x0D"),
    ]


def test_a_link_is_never_written_to_unasked():
    link = ScriptedLink([lines(0, 3), lost()], [lines(3, 3)])
    run(counted(link))
    assert link.sent == []


def test_mostly_garbage_says_what_to_check():
    kept = Kept()
    session = counted(ScriptedLink([b"\xf0\x0f\x80" * 200 + b"\n", b"\xf0\x0f" * 200 + b"\n", Pause(0.3), b"1,1\n"]))
    run(session, kept)
    told = [e.text for e in kept.events if e.kind is EventKind.NOTE]
    assert len(told) == 1
    assert "check the baud rate" in told[0]


def test_a_stepped_wall_clock_is_told_and_changes_no_time(monkeypatch):
    true = time.time
    jump = 0.0
    monkeypatch.setattr("logger.stream.health.time.time", lambda: true() + jump)
    kept = Kept()
    session = counted(ScriptedLink([lines(0, 5), Pause(0.3), lines(5, 5), Pause(0.3), lines(10, 5)]))
    session.subscribe(kept)

    async def stepped():
        nonlocal jump
        running = asyncio.ensure_future(session.run())
        await until(lambda: session.health.samples >= 5)
        jump = 3600.0
        await until(lambda: session.health.samples >= 10)
        jump = -3600.0
        return await running

    asyncio.run(stepped())
    assert kept.kinds == ["clock", "clock"]
    assert "set by +3600.0 s" in kept.events[0].text
    assert "set by -7200.0 s" in kept.events[1].text
    assert kept.time_s == pytest.approx([i / 1000 for i in range(15)])


def test_a_computer_that_slept_leaves_a_gap_in_time(monkeypatch):
    slept, true = 0.0, time.time
    monkeypatch.setattr("logger.stream.health._asleep", lambda: slept)
    monkeypatch.setattr("logger.stream.health.time.time", lambda: true() + slept)
    decoder = LineDecoder(LineFormat(template="{torque}"), "N·m")
    session = Session(ScriptedLink([b"1\n2\n", Pause(0.3), b"3\n4\n"]), decoder, ArrivalClock(0.001))
    session.subscribe(kept := Kept())

    async def sleeping():
        nonlocal slept
        running = asyncio.ensure_future(session.run())
        await until(lambda: session.health.samples >= 2)
        slept = 1000.0
        return await running

    asyncio.run(sleeping())
    assert [e.kind for e in kept.events] == [EventKind.CLOCK]
    assert "slept for 1000.0 s" in kept.events[0].text
    assert kept.time_s[2] - kept.time_s[1] > 1000


def test_a_stopped_program_is_told(monkeypatch):
    monkeypatch.setattr("logger.stream.health.STALL_S", 0.2)
    kept = Kept()
    session = counted(ScriptedLink([lines(0, 5), Pause(0.4), lines(5, 5)]))
    session.subscribe(kept)

    async def stalled():
        running = asyncio.ensure_future(session.run())
        await until(lambda: session.health.samples >= 5)
        time.sleep(0.5)  # noqa: ASYNC251 - the whole program stands still
        return await running

    asyncio.run(stalled())
    assert set(kept.kinds) == {"clock"}  # a machine under load may hold it up once more
    assert "the program was stopped" in kept.events[0].text


def test_built_from_a_description():
    description = Description(
        name="x",
        lines=LineFormat(template="{counter},{torque}"),
        transducer=TransducerFacts(rate_hz=100, unit="lbf·in"),
    )
    session = build_session(ScriptedLink([lines(0, 3)]), description)
    assert session.time_from == "device counter"
    assert session.columns[0].unit == "lbf·in"
    without_rate = Description(name="x", lines=LineFormat(template="{counter},{torque}"))
    assert build_session(ScriptedLink(), without_rate).time_from == "arrival"
    assert [c.name for c in build_session(ScriptedLink(), without_rate).columns] == ["torque", "counter", "late"]
