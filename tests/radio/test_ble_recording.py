"""Recordings over Bluetooth, on both tiers: whatever the radio does, the file goes on and its counts are exact."""

import asyncio
import contextlib
import struct

import numpy as np
import pytest

from logger.decoder.build import build_decoder
from logger.decoder.description import BleSettings, Description, Poll
from logger.decoder.layouts import CounterField, Packet, PlacedNumber, StatusField
from logger.decoder.template import LineFormat, NumberField
from logger.header import Header, TransducerFacts
from logger.links.ble import BleLink
from logger.links.polled import PolledLink
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.samples import EndReason, EventKind
from logger.stream.session import ConfirmedCommand, build_session
from tests.radio.gauges import OWN_COMMAND, OWN_STREAM, play, stream_gauge

ONE = "F0:00:00:00:00:01"
SIZE, RATE = 20, 1000.0
PERIOD = SIZE / RATE

BINARY = Description(
    name="stream transducer",
    link="ble",
    ble=BleSettings(characteristic=OWN_STREAM),
    notification=Packet(
        fields=(PlacedNumber(name="torque", type="s16", unit="N·m", scale=0.01),),
        samples=SIZE,
        samples_at=3,
        counter=CounterField(at=0, counts="samples"),
        status=StatusField(at=2, overload=1, simulated=128),
    ),
    transducer=TransducerFacts(rate_hz=RATE, capacity_nm=200.0),
    silence_s=0.6,
)


def packet(number, status=128):
    first = number * SIZE
    return struct.pack(f"<HB{SIZE}h", first % 65536, status, *(i % 5000 for i in range(first, first + SIZE)))


@contextlib.asynccontextmanager
async def recording(w, tmp_path, description=BINARY, reconnect_s=20.0):
    """A session that records; gives it, and after the block what was recorded in ``done``."""
    link = BleLink(ONE, description.ble, name="gauge", backends=w.backends)
    session = build_session(link, description, build_decoder(description), reconnect_s=reconnect_s)
    path = tmp_path / "ble.csv"
    writer = RecordingWriter(path, Header(transducer=description.transducer), session.columns)
    session.subscribe(writer)
    running = asyncio.ensure_future(session.run())
    done = {"session": session, "running": running}
    yield done
    session.stop()
    done["ending"] = await asyncio.wait_for(running, 30)
    done["trace"] = read_trace(path)


async def until(condition, seconds=15.0):
    async with asyncio.timeout(seconds):
        while not condition():  # noqa: ASYNC110 - a health value has no event to wait for
            await asyncio.sleep(0.02)


def counts(trace, kind):
    return sum(event.count for event in trace.events if event.kind is kind)


def assert_exact(trace, first=0):
    """Every sample has the value that belongs to its counter, and what is missing is what the gaps say."""
    counter = trace.columns["counter"].astype(int)
    offset = first * SIZE
    assert np.array_equal(np.round(trace.torque * 100).astype(int), (counter + offset) % 5000)
    assert counter[-1] - counter[0] + 1 - len(counter) == counts(trace, EventKind.GAP)
    assert np.all(np.diff(trace.time_s) > 0)


def test_a_plain_recording(live, tmp_path):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        async with recording(w, tmp_path) as done:
            await until(lambda: gauge.subscribers(OWN_STREAM))
            await play(gauge, OWN_STREAM, (packet(n) for n in range(100)), PERIOD)
            await asyncio.sleep(0.1)
        trace = done["trace"]
        assert done["ending"].reason is EndReason.STOPPED
        assert (len(trace.time_s), trace.state) == (2000, "closed")
        assert trace.header.simulated
        assert trace.header.transducer.rate_hz == RATE
        assert np.allclose(np.diff(trace.time_s), 1e-3, atol=2e-6 + 0.6e-3)
        assert trace.time_s[-1] - trace.time_s[0] == pytest.approx(1.999, abs=0.1)
        assert_exact(trace)

    live(scenario)


def test_lost_doubled_swapped_and_cut_packets(live, tmp_path):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        sent = [packet(n) for n in range(100)]
        sent[40] = sent[40][:20]  # cut
        del sent[20:23]  # lost
        sent.insert(60, sent[59])  # doubled
        sent[70], sent[71] = sent[71], sent[70]  # swapped
        async with recording(w, tmp_path) as done:
            await until(lambda: gauge.subscribers(OWN_STREAM))
            await play(gauge, OWN_STREAM, sent, PERIOD)
            await asyncio.sleep(0.1)
        trace = done["trace"]
        assert_exact(trace)
        late = counts(trace, EventKind.REORDERED)
        assert late == 1
        put_back = any("put back" in e.text for e in trace.events if e.kind is EventKind.REORDERED)
        assert counts(trace, EventKind.GAP) == SIZE * (3 + 1 + (0 if put_back else 1))
        assert counts(trace, EventKind.DUPLICATE) == 1
        assert counts(trace, EventKind.GARBAGE) == 1

    live(scenario)


@pytest.mark.parametrize("how", ["peripheral", "range", "adapter"])
def test_the_recording_goes_on_across_a_lost_connection(live, tmp_path, how):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        async with recording(w, tmp_path) as done:
            session = done["session"]
            await until(lambda: gauge.subscribers(OWN_STREAM))
            # 16 bits of samples wrap each 65 s; the device counts on while it is away
            playing = asyncio.create_task(play(gauge, OWN_STREAM, (packet(n) for n in range(3000, 3400)), PERIOD))
            await asyncio.sleep(1.0)
            if how == "peripheral":
                await gauge.disconnect()
            elif how == "adapter":
                await w.adapter(on=False)
            else:
                w.air.out_of_range(ONE)
                w.air.time_out(ONE)
            await until(lambda: session.health.state == "reconnecting")
            await asyncio.sleep(0.5)
            if how == "adapter":
                await w.adapter(on=True)
            w.air.out_of_range(ONE, away=False)
            await until(lambda: session.health.state == "streaming")
            await asyncio.sleep(1.0)
            playing.cancel()
        trace = done["trace"]
        assert_exact(trace, first=3000)
        kinds = [event.kind for event in trace.events]
        assert kinds.index(EventKind.DISCONNECT) < kinds.index(EventKind.RECONNECT) < kinds.index(EventKind.GAP)
        assert 200 < counts(trace, EventKind.GAP) < 6000
        assert session.health.reconnects == 1

    live(scenario)


def test_a_dead_radio_stack_is_noticed_by_its_silence(live, tmp_path):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        async with recording(w, tmp_path) as done:
            session = done["session"]
            await until(lambda: gauge.subscribers(OWN_STREAM))
            playing = asyncio.create_task(play(gauge, OWN_STREAM, (packet(n) for n in range(900)), PERIOD))
            await asyncio.sleep(0.6)
            w.strike_dumb()
            await until(lambda: session.health.state == "reconnecting")
            await w.revive()
            await until(lambda: session.health.state == "streaming" and session.health.lost > 0)
            await asyncio.sleep(0.4)
            playing.cancel()
        trace = done["trace"]
        kinds = [event.kind for event in trace.events]
        assert EventKind.SILENCE in kinds
        assert EventKind.RECONNECT in kinds
        assert_exact(trace)

    live(scenario)


def test_a_device_that_stays_away_ends_the_recording_properly(live, tmp_path, monkeypatch):
    monkeypatch.setattr("logger.links.ble.SCAN_S", 0.3)

    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        async with recording(w, tmp_path, reconnect_s=1.0) as done:
            await until(lambda: gauge.subscribers(OWN_STREAM))
            await play(gauge, OWN_STREAM, (packet(n) for n in range(20)), PERIOD)
            w.air.out_of_range(ONE)
            w.air.time_out(ONE)
            await until(done["running"].done)
        assert done["ending"].reason is EndReason.LOST
        assert done["trace"].state == "closed"
        assert len(done["trace"].time_s) == 400

    live(scenario)


def test_battery_and_overload_stand_where_they_happened(live, tmp_path):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE, battery=lambda: 10)
        await w.add(gauge)
        sent = [packet(n, 128 | (10 <= n < 13)) for n in range(30)]
        async with recording(w, tmp_path) as done:
            await until(lambda: gauge.subscribers(OWN_STREAM))
            await play(gauge, OWN_STREAM, sent, PERIOD)
            await asyncio.sleep(0.1)
        trace = done["trace"]
        assert counts(trace, EventKind.BATTERY) == 10
        overload = [e for e in trace.events if e.kind is EventKind.OVERLOAD]
        assert len(overload) == 1
        assert np.flatnonzero(np.isnan(trace.torque)).tolist() == list(range(200, 260))
        assert overload[0].time_s == pytest.approx(trace.time_s[200], abs=2e-6)

    live(scenario)


def test_a_slow_and_stalling_radio_only_makes_late(live, tmp_path):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        async with recording(w, tmp_path) as done:
            await until(lambda: gauge.subscribers(OWN_STREAM))
            w.air.interval_s = 0.03
            playing = asyncio.create_task(play(gauge, OWN_STREAM, (packet(n) for n in range(75)), PERIOD))
            await asyncio.sleep(0.7)
            w.air.hold()
            await asyncio.sleep(0.3)
            w.air.release()
            await playing
            await asyncio.sleep(0.2)
        trace = done["trace"]
        assert len(trace.time_s) == 1500
        assert_exact(trace)
        assert np.diff(trace.time_s) == pytest.approx(1e-3, abs=0.6e-3)  # dated by the counter, not by arrival
        assert trace.columns["late_ms"].max() > 150

    live(scenario)


def test_asked_over_bluetooth(live, tmp_path):
    asked = []
    answering = []
    described = Description(
        name="asked",
        link="ble",
        ble=BleSettings(characteristic=OWN_STREAM, command=OWN_COMMAND),
        poll=Poll(request="D", interval_s=0.02, timeout_s=0.5),
        lines=LineFormat(template="{torque} {unit}", terminator="CR"),
        transducer=TransducerFacts(unit="N·m"),
    )

    async def scenario(w):
        def on_command(data):
            asked.append(data)
            answer = f"{len(asked) / 10:.1f} Nm\r".encode()
            answering.append(asyncio.get_running_loop().create_task(gauge.notify(OWN_STREAM, answer)))

        gauge = stream_gauge(w.air, ONE, on_command=on_command, battery=lambda: 7)
        await w.add(gauge)
        path = tmp_path / "asked.csv"
        link = PolledLink(BleLink(ONE, described.ble, backends=w.backends), b"D", 0.02, 0.5)
        session = build_session(link, described)
        session.subscribe(RecordingWriter(path, Header(), session.columns))
        running = asyncio.ensure_future(session.run())
        await until(lambda: session.health.samples >= 20)
        session.stop()
        await asyncio.wait_for(running, 10)
        trace = read_trace(path)
        assert trace.torque.tolist() == [n / 10 for n in range(1, len(trace.torque) + 1)]
        assert set(asked) == {b"D"}
        assert counts(trace, EventKind.BATTERY) == 7
        assert trace.header.simulated

    live(scenario)


def test_start_at_every_opening_zero_once_stop_at_the_end(live, tmp_path):
    """A device that streams only when told: also after a reconnect; but it must not zero itself there, under load."""

    async def scenario(w):
        received = []
        streaming = asyncio.Event()

        def on_command(data):
            received.append(data)
            if data == b"start":
                streaming.set()
            elif data == b"stop":
                streaming.clear()

        gauge = stream_gauge(w.air, ONE, on_command=on_command)
        await w.add(gauge)

        async def device():
            number = 0
            while True:
                await streaming.wait()
                await gauge.notify(OWN_STREAM, packet(number))
                number += 1
                await asyncio.sleep(PERIOD)

        link = BleLink(ONE, BleSettings(characteristic=OWN_STREAM, command=OWN_COMMAND), backends=w.backends)
        session = build_session(link, BINARY)
        for data, when in ((b"zero", "once"), (b"start", "each"), (b"stop", "end")):
            session.arrange(ConfirmedCommand(data, data.decode(), when))
        path = tmp_path / "told.csv"
        session.subscribe(RecordingWriter(path, Header(), session.columns))
        running, playing = asyncio.ensure_future(session.run()), asyncio.ensure_future(device())
        await until(lambda: session.health.samples > 200)
        streaming.clear()
        await gauge.disconnect()
        await until(lambda: session.health.reconnects == 1)
        before = session.health.samples
        await until(lambda: session.health.samples > before + 200)
        session.stop()
        assert (await asyncio.wait_for(running, 20)).reason is EndReason.STOPPED
        playing.cancel()
        await asyncio.sleep(0.1)
        assert received == [b"zero", b"start", b"start", b"stop"]
        sent = [event.text for event in read_trace(path).events if event.kind is EventKind.SENT]
        assert sent == ["zero: zero", "start: start", "start: start", "stop: stop"]

    live(scenario)


def test_a_silence_before_the_first_sample_stands_behind_the_header(live, tmp_path):
    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        async with recording(w, tmp_path) as done:
            await until(lambda: done["session"].health.state == "reconnecting")
            await until(lambda: gauge.subscribers(OWN_STREAM))
            await asyncio.sleep(0.4)
            await play(gauge, OWN_STREAM, (packet(n) for n in range(30)), PERIOD)
        trace = done["trace"]
        assert not trace.problems
        assert trace.header.transducer.rate_hz == RATE
        assert len(trace.time_s) == 600
        assert EventKind.SILENCE in {event.kind for event in trace.events}

    live(scenario)


@pytest.mark.parametrize("mtu", [23, 247])
def test_text_lines_split_over_packets_and_several_in_one(live, tmp_path, mtu):
    text = Description(
        name="text gauge",
        link="ble",
        ble=BleSettings(),
        lines=LineFormat(
            template="{counter};{torque};{angle}", terminator="LF", decimal=",", counter_modulus=1000,
            fields={"angle": NumberField(unit="°")},
        ),
        transducer=TransducerFacts(unit="lbf·in", rate_hz=500.0),
    )  # fmt: skip

    async def scenario(w):
        gauge = stream_gauge(w.air, ONE, max_mtu=mtu)
        await w.add(gauge)
        lines = "".join(f"{n % 1000:03d};{n / 8:+.3f};{n * 0.1:.1f}\n" for n in range(1500)).replace(".", ",").encode()
        size = mtu - 3
        pieces = [lines[i : i + size] for i in range(0, len(lines), size)]
        async with recording(w, tmp_path, text) as done:
            await until(lambda: gauge.subscribers(OWN_STREAM))
            await play(gauge, OWN_STREAM, pieces, 3.0 / len(pieces))
            await asyncio.sleep(0.1)
        trace = done["trace"]
        # Whether the first line was whole nobody can know who has just subscribed; it is told.
        assert np.array_equal(trace.torque, np.arange(1, 1500) / 8)
        assert trace.unit == "lbf·in"
        assert {event.kind for event in trace.events} == {EventKind.SIMULATED, EventKind.GARBAGE}
        assert counts(trace, EventKind.GARBAGE) == len(lines.split(b"\n")[0])
        assert trace.angle_deg is not None

    live(scenario)


@pytest.mark.parametrize("wait_s", [0.0, 0.5])
def test_who_subscribes_in_the_middle_of_a_line_reads_no_part_of_it(live, tmp_path, wait_s):
    """``142.75 Nm`` whose beginning was sent before we subscribed must not become 2.75 N·m."""
    described = Description(
        name="text",
        link="ble",
        ble=BleSettings(characteristic=OWN_STREAM),
        lines=LineFormat(template="{torque} {unit}", terminator="CRLF"),
        transducer=TransducerFacts(unit="N·m"),
    )

    async def scenario(w):
        gauge = stream_gauge(w.air, ONE)
        await w.add(gauge)
        async with recording(w, tmp_path, described) as done:
            await until(lambda: gauge.subscribers(OWN_STREAM))
            await asyncio.sleep(wait_s)  # a connection interval later
            await gauge.notify(OWN_STREAM, b"2.75 Nm\r\n143.")
            for rest in (b"50 Nm\r\n", b"144.25 Nm\r\n"):
                await gauge.notify(OWN_STREAM, rest)
            await until(lambda: done["session"].health.samples >= 2)
        trace = done["trace"]
        assert trace.torque.tolist() == [143.5, 144.25]
        assert counts(trace, EventKind.GARBAGE) == len(b"2.75 Nm\r")

    live(scenario)
