"""The program itself against a radio in another process: the real commands, the real system-bus path, killed peers."""

import contextlib
import os
import signal
import subprocess
import sys
import time

import numpy as np
import pytest

from logger.decoder.description import read_description
from logger.recordings.files import read_trace
from logger.samples import EventKind

ADDRESS = "F0:00:00:00:00:01"
LOG = "import sys; from logger.__main__ import main; sys.exit(main())"


@contextlib.contextmanager
def radio(*words):
    """A gauge in a process of its own; gives the process and the environment that leads to it."""
    served = subprocess.Popen(
        [sys.executable, "-m", "tests.radio", "--scenario", "locked", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    )
    try:
        told = dict(served.stdout.readline().strip().split("=", 1) for _ in range(2))
        assert told["ADDRESS"] == ADDRESS
        yield served, os.environ | {"DBUS_SYSTEM_BUS_ADDRESS": told["DBUS_SYSTEM_BUS_ADDRESS"]}
    finally:
        served.terminate()
        served.wait(10)
        served.stdout.close()


def log(env, *words, timeout=60):
    return subprocess.run(
        [sys.executable, "-c", LOG, *words], env=env, capture_output=True, text=True, timeout=timeout, check=False
    )


def test_find_and_record_without_a_description(tmp_path):
    out = tmp_path / "standard.csv"
    with radio() as (_, env):
        found = log(env, "find", "--ble", "--seconds", "1")
        assert ADDRESS in found.stdout
        recorded = log(env, "record", "--ble", ADDRESS, "--seconds", "2", "--out", str(out))
    assert recorded.returncode == 0, recorded.stderr
    assert "SIMULATED" in recorded.stdout
    trace = read_trace(out)
    assert (trace.state, trace.unit, trace.header.simulated) == ("closed", "N·m", True)
    assert trace.header.transducer.serial == "S-0001"
    assert len(trace.time_s) > 120  # 100 a second


def test_record_with_a_description_and_the_counter(tmp_path):
    out, described = tmp_path / "packet.csv", tmp_path / "transducer.toml"
    with radio("--gauge", "packet", "--describe", str(described)) as (_, env):
        words = ("record", "--ble", ADDRESS, "--transducer", str(described), "--seconds", "2", "--out", str(out))
        recorded = log(env, *words)
    assert recorded.returncode == 0, recorded.stderr
    trace = read_trace(out)
    assert trace.header.time_from == "device counter"
    assert np.array_equal(np.diff(trace.columns["counter"]), np.ones(len(trace.time_s) - 1))
    assert not [event for event in trace.events if event.kind is EventKind.GAP]


def test_packets_that_do_not_fit_are_told_before_anything_is_recorded(tmp_path):
    out, described = tmp_path / "cut.csv", tmp_path / "transducer.toml"
    with radio("--gauge", "packet", "--describe", str(described), "--mtu", "23") as (_, env):
        words = ("record", "--ble", ADDRESS, "--transducer", str(described), "--seconds", "1", "--out", str(out))
        recorded = log(env, *words)
    assert "do not fit this connection (20 bytes)" in recorded.stderr
    assert "no sample was received" in recorded.stderr
    assert recorded.returncode == 2
    assert not out.exists() or not len(read_trace(out).time_s)


def test_learn_listens_to_bluetooth_text(tmp_path):
    out = tmp_path / "learned.toml"
    with radio("--gauge", "text") as (_, env):
        learned = log(env, "learn", "--ble", ADDRESS, "--seconds", "4", "--out", str(out))
    assert learned.returncode == 0, learned.stdout + learned.stderr
    description = read_description(out)
    assert description.link == "ble"
    assert description.unit == "N·m"
    assert "{counter}" in description.lines.template


def test_commands_are_sent_after_a_yes_and_stand_in_the_recording(tmp_path):
    described, out = tmp_path / "transducer.toml", tmp_path / "text.csv"
    words = ("record", "--ble", ADDRESS, "--transducer", str(described), "--seconds", "1.5", "--out", str(out))
    with radio("--gauge", "text", "--describe", str(described)) as (served, env):
        refused = log(env, *words, "--send", "zero")
        assert refused.returncode == 2
        assert "Nobody is here to confirm" in refused.stderr
        sent = log(env, *words, "--send", "zero", "--yes")
        assert sent.returncode == 0, sent.stderr
        assert served.stdout.readline() == "RECEIVED=7a65726f0a\n"
    events = [event for event in read_trace(out).events if event.kind is EventKind.SENT]
    assert [event.text for event in events] == [r"takes the present torque as zero: zero\x0A"]


@pytest.mark.parametrize("way", ["peripheral", "recorder"])
def test_killed(tmp_path, way):
    """Without warning: the recorder ends properly when its peer dies, and loses nothing saved when it dies itself."""
    out = tmp_path / "killed.csv"
    with radio() as (served, env):
        words = ("record", "--ble", ADDRESS, "--seconds", "60", "--reconnect", "1", "--out", str(out))
        recorder = subprocess.Popen(
            [sys.executable, "-c", LOG, *words], env=env, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True
        )
        deadline = time.monotonic() + 30
        while time.monotonic() < deadline and not (out.exists() and b"\n1." in out.read_bytes()):
            time.sleep(0.05)
        if way == "peripheral":
            served.send_signal(signal.SIGKILL)
        else:
            recorder.send_signal(signal.SIGKILL)
        _, told = recorder.communicate(timeout=60)
    trace = read_trace(out)
    assert len(trace.time_s) > 90
    if way == "peripheral":
        assert recorder.returncode == 2
        assert trace.state == "closed"
        assert EventKind.DISCONNECT in {event.kind for event in trace.events}
    else:
        assert trace.state == "recovered"
        assert "never closed" in trace.problems[0]
    assert "Traceback" not in told


def test_no_bluetooth_at_all_is_one_sentence(tmp_path):
    env = os.environ | {"DBUS_SYSTEM_BUS_ADDRESS": f"unix:path={tmp_path}/nothing"}
    for words in (
        ("find", "--ble", "--seconds", "0.5"),
        ("record", "--ble", ADDRESS, "--out", str(tmp_path / "x.csv")),
    ):
        result = log(env, *words)
        assert result.returncode == 2
        assert "Bluetooth" in result.stderr
        assert "Traceback" not in result.stderr
