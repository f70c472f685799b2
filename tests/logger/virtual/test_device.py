"""The virtual transducer's bytes: what a run says is what the ordinary decoders read."""

import os
import time
from dataclasses import replace

import msgspec
import numpy as np
import pytest

from logger.decoder.build import build_decoder
from logger.decoder.description import Description, shipped
from logger.decoder.frames import FrameDecoder
from logger.edges.toml_file import read_toml
from logger.edges.units import torque_factor
from logger.errors import LinkError
from logger.samples import EventKind
from logger.virtual.device import VirtualDevice, Wire, decimals
from logger.virtual.physics import LeverOff, simulate
from logger.virtual.port import VirtualPort
from logger.virtual.scenarios import scenario
from logger.virtual.sensor import SensorFault


def short(**sensor):
    """A run of two seconds with the lever off: only the transducer matters here."""
    base = scenario("healthy")
    return simulate(replace(base, actions=(LeverOff(2.0),), sensor=replace(base.sensor, zero_nm=0.37, **sensor)), 3)


def test_text_lines_carry_mark_counter_and_reading():
    run = short()
    pieces = list(VirtualDevice(run))
    assert len(pieces) == run.time_s.size
    due, line = pieces[41]
    assert due == run.time_s[41]
    mark, counter, torque, status = line.decode("ascii").rstrip("\r\n").split(",")
    assert (mark, int(counter), status) == ("SIM", 41, "OK")
    assert torque.endswith(" Nm")
    assert float(torque.split()[0]) == pytest.approx(run.torque_nm[41], abs=1e-9)
    assert line.endswith(b"\r\n")


def test_text_unit_is_converted_with_its_digits():
    run = short(resolution_nm=0.1)
    line = list(VirtualDevice(run, unit="lbf·in"))[5][1].decode("ascii")
    value, unit = line.split(",")[2].split()
    assert unit == "lbfin"
    # 1 lbf·in = 0.112 984 829 N·m (NIST SP 811, appendix B).
    assert float(value) * 0.112984829 == pytest.approx(run.torque_nm[5], abs=0.06)


def test_overload_and_error_are_marks_not_numbers():
    run = short(capacity_nm=0.3, overload="mark", faults=(SensorFault("error", 1.0, 0.1),))
    lines = [piece.decode("ascii") for _, piece in VirtualDevice(run)]
    assert ",OL Nm,OL" in lines[0]
    at = int(np.searchsorted(run.time_s, 1.05))
    assert ",--- Nm,ERR" in lines[at] or ",OL Nm,ERR" in lines[at]


@pytest.mark.parametrize(("unit", "angle"), [("N·m", None), ("lbf·in", 0.1), ("lbf·ft", None)])
def test_text_lines_decode_to_the_run(unit, angle):
    base = scenario("healthy")
    sensor = replace(base.sensor, zero_nm=-1.5, faults=(SensorFault("error", 1.0, 0.02),))
    run = simulate(replace(base, actions=(LeverOff(2.0),), sensor=sensor, angle_step_deg=angle), 3)
    device = VirtualDevice(run, unit=unit)
    decoder = build_decoder(device.description)
    decoded = decoder.feed(*(data for _, data in device))
    assert len(decoded) == run.time_s.size
    factor = torque_factor(unit)
    np.testing.assert_allclose(decoded.columns["torque"] * factor, run.torque_nm, atol=0.02, equal_nan=True)
    np.testing.assert_array_equal(decoded.counter, run.counter)
    assert np.isnan(decoded.columns["torque"]).sum() == pytest.approx(20, abs=1)
    assert ("angle" in decoded.columns) == (angle is not None)
    assert not [event for event in decoded.events if event.kind in (EventKind.GARBAGE, EventKind.UNIT, EventKind.GAP)]


def test_every_lost_line_is_counted_from_the_counter():
    run = short()
    device = VirtualDevice(run, wire=Wire(lost=0.05))
    pieces = list(device)
    decoded = build_decoder(device.description).feed(*(data for _, data in pieces))
    gaps = sum(event.count for event in decoded.events if event.kind == EventKind.GAP)
    assert gaps + len(pieces) == int(decoded.counter[-1] - decoded.counter[0]) + 1
    assert gaps > 40


@pytest.mark.parametrize("form", ["text", "frame"])
def test_a_bad_line_is_survived(form):
    """Doubled, swapped, spoiled and foreign bytes: no wrong value comes through, what is lost is told."""
    run = short()
    wire = Wire(lost=0.02, doubled=0.02, swapped=0.02, spoiled=0.02, garbage=0.02)
    device = VirtualDevice(run, form, samples=5, wire=wire)
    decoded = build_decoder(device.description).feed(*(data for _, data in device))
    assert len(decoded) > 0.85 * run.time_s.size
    told = {event.kind for event in decoded.events}
    assert EventKind.GAP in told
    assert EventKind.GARBAGE in told
    if form == "frame":  # its check sum lets nothing wrong through; a digit flipped in a text line nobody can see
        index = np.searchsorted(run.counter, decoded.counter)
        np.testing.assert_allclose(decoded.columns["torque"], run.torque_nm[index], atol=5e-4)


@pytest.mark.parametrize("angle", [None, 0.1])
def test_frames_decode_to_the_run(angle):
    base = scenario("healthy")
    run = simulate(replace(base, actions=(LeverOff(2.0),), angle_step_deg=angle), 3)
    device = VirtualDevice(run, "frame")
    decoder = FrameDecoder(device.description.frame)
    decoded = decoder.feed(*(data for _, data in device))
    count = run.time_s.size // 20 * 20
    assert len(decoded) == count
    np.testing.assert_allclose(decoded.columns["torque"], run.torque_nm[:count], atol=5e-4)
    np.testing.assert_array_equal(decoded.counter, run.counter[:count])
    assert ("angle" in decoded.columns) == (angle is not None)


def test_lost_samples_leave_a_gap_in_the_counter():
    run = short(faults=(SensorFault("gap", 0.5, 0.105),))
    assert run.counter[-1] + 1 - run.counter.size == pytest.approx(105, abs=1)
    decoded = FrameDecoder(VirtualDevice(run, "frame").description.frame).feed(
        *(data for _, data in VirtualDevice(run, "frame"))
    )
    assert sum(event.count for event in decoded.events if event.kind == "gap") == 120  # whole frames of 20 are missing


def test_wire_faults_happen_and_repeat_with_the_seed():
    run = short()
    wire = Wire(
        lost=0.05, doubled=0.05, spoiled=0.05, garbage=0.02, swapped=0.05, latency_s=0.016, stalls=((1.0, 0.4),)
    )
    sent = list(VirtualDevice(run, wire=wire))
    assert sent == list(VirtualDevice(run, wire=wire))
    clean = {data for _, data in VirtualDevice(run)}
    whole = [data for _, data in sent if data in clean]
    assert 0.8 * len(clean) < len(set(whole)) < 0.97 * len(clean)
    assert len(whole) > len(set(whole))
    due = np.array([due for due, _ in sent])
    assert np.all(np.diff(due) >= 0)
    assert not np.any((due > 1.01) & (due < 1.39))


def test_shipped_descriptions_are_the_device():
    run = simulate(replace(scenario("healthy"), actions=(LeverOff(1.0),)), 1)
    for form in ("text", "frame", "packet"):
        written = msgspec.to_builtins(read_toml(shipped()[f"virtual-{form}"], Description))
        made = msgspec.to_builtins(VirtualDevice(run, form).description)
        for key in ("lines", "frame", "notification", "ble", "simulated_mark"):
            assert written.get(key) == made.get(key), (form, key)
        assert written["transducer"]["capacity_nm"] == made["transducer"]["capacity_nm"]


@pytest.mark.parametrize(("step", "digits"), [(0.01, 2), (0.02, 2), (0.1, 1), (5.0, 0), (0.0, 6)])
def test_decimals(step, digits):
    assert decimals(step) == digits


posix = pytest.mark.skipif(os.name != "posix", reason="pseudo-terminals are a POSIX thing")


def read_all(port, path=None):
    """Read a port to the end through the real serial library."""
    import serial

    got = bytearray()
    with serial.Serial(path or port.path, 115200, timeout=0.1) as device:
        port.go()
        more = b"?"
        while more or not port.finished.is_set():
            more = device.read(device.in_waiting or 1)
            got += more
    return bytes(got)


def drain(device):
    for _ in range(50):
        device.read(64)


@posix
def test_port_delivers_every_byte():
    pieces = list(VirtualDevice(short()))
    with VirtualPort(pieces, speed=float("inf"), held=True) as port:
        got = read_all(port)
    assert got == b"".join(data for _, data in pieces)
    assert port.lost_bytes == 0


@posix
def test_port_keeps_the_baud_rate():
    # Pacing is the port's function, not its speed: 1200 bytes at 12000 baud (ten bits a byte) take a second.
    data = bytes(range(256)) * 5
    begun = time.monotonic()
    with VirtualPort([(0.0, data[:1200])], baud=12000, held=True) as port:
        got = read_all(port)
        took = time.monotonic() - begun
    assert got == data[:1200]
    assert took > 0.9


@posix
def test_port_unplugged_and_plugged_in_again(tmp_path):
    import serial

    pieces = [(0.01 * i, b"%03d\n" % i) for i in range(100)]
    link = tmp_path / "port"
    with VirtualPort(pieces, link=link, held=True) as port:
        first = serial.Serial(str(link), timeout=1)
        port.go()
        assert first.read(4) == b"000\n"
        port.unplug()
        with pytest.raises(serial.SerialException):
            drain(first)
        first.close()
        assert not link.exists()
        time.sleep(0.1)
        port.plug()
        rest = read_all(port, str(link))
    assert rest.endswith(b"099\n")
    assert port.lost_bytes > 0


def test_port_needs_posix_and_says_so(monkeypatch):
    with monkeypatch.context() as patched:
        patched.setattr(os, "name", "nt")
        with pytest.raises(LinkError, match="in-process"):
            VirtualPort([])


@pytest.mark.parametrize("form", ["text", "frame", "packet"])
def test_low_battery_is_told_and_costs_no_reading(form):
    run = short(faults=(SensorFault("battery", 1.0, 9.0),))
    device = VirtualDevice(run, form)
    decoded = build_decoder(device.description).feed(*(data for _, data in device))
    told = [event for event in decoded.events if event.kind == EventKind.BATTERY]
    assert len(told) == 1
    assert told[0].index == pytest.approx(1000, abs=20)
    assert np.isfinite(decoded.columns["torque"]).all()
