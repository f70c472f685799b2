"""A second source recorded with the torque: aligned in time, never interpolated in the file, taken apart on reading."""

import asyncio
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.__main__ import main
from logger.decoder.description import Description, SerialSettings
from logger.decoder.template import LineFormat, NumberField
from logger.edges.toml_file import parse_toml, write_toml
from logger.errors import DescriptionError
from logger.header import Header, TransducerFacts
from logger.links.build import build_link
from logger.recordings.files import read_trace
from logger.recordings.recording import RecordingWriter
from logger.recordings.second import between, split
from logger.samples import EndReason, EventKind
from logger.stream.merge import PairedSession
from logger.stream.session import build_session
from logger.virtual.port import VirtualPort

GAUGE = Description(
    name="gauge",
    serial=SerialSettings(baud=115200),
    lines=LineFormat(template="{counter},{torque}", terminator="LF"),
    transducer=TransducerFacts(unit="N·m", rate_hz=500.0),
)
ENCODER = Description(
    name="encoder",
    measures="angle",
    lines=LineFormat(
        template="A={angle} t={temperature}", terminator="LF", fields={"temperature": NumberField(unit="°C")}
    ),
    transducer=TransducerFacts(unit="°", rate_hz=100.0),
)  # fmt: skip


def gauge(seconds=2.0, rate=500.0):
    """The torque is the time itself, so that alignment can be seen."""
    return [(n / rate, f"{n},{n / rate:.4f}\n".encode()) for n in range(int(seconds * rate))]


def encoder(seconds=2.0, rate=100.0, away=(9.0, 9.0)):
    """The angle is 90° a second."""
    times = [n / rate for n in range(int(seconds * rate)) if not away[0] <= n / rate < away[1]]
    return [(t, f"A={90 * t:.2f} t=21.5\n".encode()) for t in times]


async def record_both(path, first_port, second_port, seconds, second=ENCODER):
    sessions = [
        build_session(build_link(d, p.path), d, reconnect_s=5.0)
        for d, p in ((GAUGE, first_port), (second, second_port))
    ]
    pair = PairedSession(*sessions, second.measures, second.unit)
    pair.subscribe(RecordingWriter(path, Header(), pair.columns))
    running = asyncio.ensure_future(pair.run())
    await asyncio.sleep(0.2)
    first_port.go()
    second_port.go()
    await asyncio.sleep(seconds)
    pair.stop()
    return await asyncio.wait_for(running, 10), pair


def test_rows_of_both_in_order_of_time_and_nothing_invented(tmp_path):
    path = tmp_path / "both.csv"
    with VirtualPort(gauge(), held=True) as one, VirtualPort(encoder(), held=True) as two:
        ending, pair = asyncio.run(record_both(path, one, two, 2.6))
    assert ending.reason is EndReason.STOPPED
    assert [c.name for c in pair.columns] == [
        "torque", "counter", "late", "source", "angle", "temperature", "second_late"]  # fmt: skip
    rows = [line.split(",") for line in path.read_text(encoding="utf-8").splitlines() if line[0] in "-0123456789"]
    times = [float(row[0]) for row in rows]
    assert times == sorted(times)
    mine = [row for row in rows if row[4] == "1"]
    theirs = [row for row in rows if row[4] == "2"]
    assert len(mine) + len(theirs) == len(rows)
    assert all(row[5:] == ["", "", ""] and row[1] for row in mine)
    assert all(row[1:4] == ["", "", ""] and row[5] and row[6] == "21.5" for row in theirs)
    assert [float(row[1]) for row in mine] == [n / 500 for n in range(1000)]
    assert [float(row[5]) for row in theirs] == pytest.approx([0.9 * n for n in range(200)])


def test_reading_takes_them_apart(tmp_path):
    path = tmp_path / "both.csv"
    with VirtualPort(gauge(), held=True) as one, VirtualPort(encoder(), held=True) as two:
        asyncio.run(record_both(path, one, two, 2.6))
    trace = read_trace(path)
    assert (len(trace.time_s), trace.state, trace.problems) == (1000, "closed", ())
    assert trace.second is not None
    assert len(trace.second.time_s) == 200
    assert set(trace.second.columns) == {"angle_deg", "temperature_degC", "second_late_ms"}
    known = np.isfinite(trace.angle_deg)
    assert known.sum() > 900
    # both sources were started together: 90° a second against the torque that is the time
    off_s = trace.angle_deg[known] / 90 - trace.torque[known]
    assert abs(np.median(off_s)) < 0.03
    assert np.all(np.diff(trace.time_s) > 0)


def test_a_second_source_that_ends_is_told_and_the_torque_goes_on(tmp_path):
    path = tmp_path / "both.csv"

    async def scenario(one, two):
        both = ((GAUGE, one), (ENCODER, two))
        sessions = [build_session(build_link(d, p.path), d, reconnect_s=0.0) for d, p in both]
        pair = PairedSession(*sessions, "angle", "°")
        pair.subscribe(RecordingWriter(path, Header(), pair.columns))
        running = asyncio.ensure_future(pair.run())
        await asyncio.sleep(0.8)
        two.unplug()
        await asyncio.sleep(0.8)
        assert "second source" in pair.health.advice
        pair.stop()
        return await asyncio.wait_for(running, 10)

    with VirtualPort(gauge(4.0)) as one, VirtualPort(encoder(4.0)) as two:
        ending = asyncio.run(scenario(one, two))
    assert ending.reason is EndReason.STOPPED
    trace = read_trace(path)
    assert trace.time_s[-1] > 1.4
    assert any(e.kind is EventKind.NOTE and "second source ended" in e.text for e in trace.events)
    assert np.isnan(trace.angle_deg[-100:]).all()


def test_a_gap_of_the_second_source_is_not_bridged(tmp_path):
    path = tmp_path / "both.csv"
    with VirtualPort(gauge(), held=True) as one, VirtualPort(encoder(away=(0.8, 1.4)), held=True) as two:
        asyncio.run(record_both(path, one, two, 2.6))
    trace = read_trace(path)
    inside = (trace.torque > 0.9) & (trace.torque < 1.3)
    assert np.isnan(trace.angle_deg[inside]).all()
    assert np.isfinite(trace.angle_deg[(trace.torque > 0.1) & (trace.torque < 0.7)]).all()


def test_the_door(tmp_path, monkeypatch, capsys):
    for name, description in (("transducer", GAUGE), ("encoder", ENCODER)):
        write_toml(tmp_path / f"{name}.toml", description)
    out = tmp_path / "both.csv"
    with VirtualPort(gauge(20.0)) as one, VirtualPort(encoder(20.0)) as two:
        words = ["record", one.path, "--transducer", str(tmp_path / "transducer.toml"), "--out", str(out)]
        words += ["--seconds", "1.5", "--second", str(tmp_path / "encoder.toml"), "--second-port", two.path]
        monkeypatch.setattr(sys, "argv", ["heldwheel-log", *words])
        assert main() == 0
        monkeypatch.setattr(sys, "argv", ["heldwheel-log", *words[:-2]])
        assert main() == 2
    trace = read_trace(out)
    assert trace.header.second.unit == "°"
    assert trace.angle_deg is not None
    assert "samples" in capsys.readouterr().out


def test_a_second_torque_is_called_that_of_the_held_end():
    session = build_session(build_link(GAUGE, "/dev/ttyUSB0"), GAUGE)
    other = build_session(build_link(GAUGE, "/dev/ttyUSB1"), GAUGE)
    names = [(c.name, c.unit) for c in PairedSession(session, other, "torque", "N·m").columns]
    assert names == [("torque", "N·m"), ("counter", ""), ("late", "ms"), ("source", ""), ("held_torque", "N·m"),
                     ("second_counter", ""), ("second_late", "ms")]  # fmt: skip


def test_descriptions_of_other_quantities(tmp_path):
    write_toml(tmp_path / "encoder.toml", ENCODER)
    text = (tmp_path / "encoder.toml").read_text(encoding="utf-8")
    assert parse_toml(text, Description, "encoder.toml") == ENCODER
    with pytest.raises(DescriptionError, match="unit"):
        parse_toml(text.replace('unit = "°"\n', ""), Description, "encoder.toml")
    with pytest.raises(DescriptionError, match="angle"):
        parse_toml(text.replace("{angle}", "{other}"), Description, "encoder.toml")


@given(st.integers(2, 40), st.integers(1, 60), st.integers(0, 1000))
def test_between_against_a_loop(samples, wanted, seed):
    rng = np.random.default_rng(seed)
    time_s = np.cumsum(rng.uniform(0.01, 0.4, samples))
    values = rng.normal(size=samples)
    at_s = np.sort(rng.uniform(time_s[0] - 0.2, time_s[-1] + 0.2, wanted))
    expected = []
    for at in at_s:
        found = np.nan
        for a, b, va, vb in zip(time_s, time_s[1:], values, values[1:], strict=False):
            if a <= at <= b and b - a <= 0.25:
                found = va + (vb - va) * (at - a) / (b - a)
        expected.append(found)
    assert np.allclose(between(at_s, time_s, values), expected, equal_nan=True)


def test_one_source_is_left_as_it_is():
    columns = {"time_s": np.arange(3.0), "torque_Nm": np.ones(3)}
    assert split(columns, []) == (columns, [], None)
    assert np.isnan(between(np.arange(3.0), np.empty(0), np.empty(0))).all()
