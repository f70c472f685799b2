"""A recording of a transducer that does not send what was described ends with an error, and says which part differs."""

from __future__ import annotations

import pytest

from logger.__main__ import COMMANDS
from logger.edges.door import Exit, run_door
from logger.recordings.files import read_trace
from logger.virtual.port import VirtualPort

GAUGE = """\
name = "bench gauge"
[transducer]
unit = "N·m"
rate_hz = 200
[serial]
baud = 115200
[lines]
template = "T=21 {torque} {unit},{status}"
[lines.status]
ok = ["OK"]
"""


@pytest.fixture
def record(tmp_path, capsys):
    described = tmp_path / "gauge.toml"
    described.write_text(GAUGE, encoding="utf-8")

    def run(pieces, seconds="2"):
        out = tmp_path / "a.csv"
        with VirtualPort(pieces) as port:
            words = ["record", port.path, "--transducer", str(described), "--out", str(out), "--seconds", seconds]
            code = run_door("heldwheel-log", "about", COMMANDS, "logger.doors", words)
        return code, capsys.readouterr(), out

    return run


def lines(write, count=400):
    return [(0.2 + i / 200, write(i).encode()) for i in range(count)]


def test_what_fits_ends_well(record):
    code, _, out = record(lines(lambda i: f"T=21 {i / 10:.1f} Nm,OK\n"))
    assert code == Exit.OK
    assert len(read_trace(out).torque) > 200


def test_most_lines_do_not_fit(record):
    code, said, _ = record(lines(lambda i: f"T={21 + (i > 50)} {i / 10:.1f} Nm,OK\n"))
    assert code == Exit.BAD_INPUT
    assert "most of what came does not fit the description" in said.err
    assert "where 'T=21' should be came 'T=22" in said.err
    assert "learn the transducer again" in said.err


def test_from_some_moment_on_nothing_fits(record):
    code, said, out = record(lines(lambda i: f"T={21 + (i > 300)} {i / 10:.1f} Nm,OK\n"))
    assert code == Exit.BAD_INPUT
    assert "on nothing fits the description any more" in said.err
    assert read_trace(out).torque[-1] == 30.0


def test_a_word_that_is_not_listed(record):
    code, said, out = record(lines(lambda i: f"T=21 {i / 10:.1f} Nm,{'OK' if i < 50 else 'MM'}\n"))
    assert code == Exit.BAD_INPUT
    assert "most readings are not valid. 'MM' at {status} is not listed" in said.err
    assert len(read_trace(out).torque) > 200, "they are there, without a value"


def test_nothing_received_is_no_success(record):
    code, said, _ = record([], "1")
    assert code == Exit.BAD_INPUT
    assert "no sample was received" in said.err
    code, said, _ = record(lines(lambda i: f"T=22 {i} Nm,OK\n"), "1")
    assert code == Exit.BAD_INPUT
    assert "no sample was received" in said.err
    assert "where 'T=21' should be" in said.err


def test_seconds_count_from_the_first_sample(record):
    late = [(1.0 + t, data) for t, data in lines(lambda i: f"T=21 {i / 10:.1f} Nm,OK\n")]
    code, _, out = record(late, "1.6")
    assert code == Exit.OK
    assert read_trace(out).time_s[-1] >= 1.3
