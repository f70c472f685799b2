"""Learning from lines that no example in the program knows: invented formats, each with a variation people meet.

Every format is written by a function of (count, reading in its unit). Learned is right when decoding the same bytes
with the learned description gives exactly the readings that were written.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.decoder.build import build_decoder
from logger.decoder.description import SerialSettings
from logger.edges.toml_file import parse_toml, write_toml
from logger.errors import InputError
from logger.learn.learn import Wanted, learn, usable
from logger.samples import Chunk, EventKind

COUNT = 400


def pull(n=COUNT, peak=41.0, both_ways=True):
    """A pull and, the other way, a second one; rounded as a gauge shows it."""
    t = np.arange(n) / n
    shape = np.where(t < 0.5, np.sin(2 * np.pi * t) ** 2, -0.8 * np.sin(2 * np.pi * t) ** 2)
    values = np.round(peak * shape + 0.05 * np.sin(40 * t), 2) + 0.0
    return values if both_ways else np.abs(values)


def nmea(body):
    total = 0
    for byte in body.encode():
        total ^= byte
    return f"${body}*{total:02X}\r\n"


def heard(lines, rate=100.0, per_chunk=3):
    """Chunks as a port gives them: a few lines at a time, cut anywhere, beginning in the middle of a line."""
    data = "".join(lines).encode()[3:]
    size = max(1, len(data) * per_chunk // len(lines))
    cut = [data[i : i + size] for i in range(0, len(data), size)]
    return [Chunk(5.0 + (i + 1) * size / len(data) * len(lines) / rate, chunk) for i, chunk in enumerate(cut)]


# name: (line writer, unit, readings, nominal rate)
FORMATS = {
    "bare number, LF": (lambda i, v: f"{v:.2f}\n", "N·m", pull(), 50),
    "bare number, CR only": (lambda i, v: f"{v:+08.2f}\r", "lbf·in", pull(), 10),
    "unit suffix, blank padded": (lambda i, v: f"{v:9.2f} kgf.cm\r\n", "kgf·cm", pull(), 25),
    "unit touching the number": (lambda i, v: f"{v:.2f}Nm\r\n", "N·m", pull(), 100),
    "decimal comma, semicolons": (lambda i, v: f"{i};{v:.2f};21,5\r\n".replace(".", ","), "N·m", pull(), 100),
    "decimal comma alone": (lambda i, v: f"{v:.2f}\r\n".replace(".", ","), "N·m", pull(), 20),
    "counter that wraps, commas": (
        lambda i, v: f"{(7 * i + 200) % 256},{v:.2f},{0.1 * i:.1f}\n", "lbf·ft", pull(), 500),
    "zero padded counter": (lambda i, v: f"{(i + 9900) % 10000:04d} {v:.2f}\n", "N·m", pull(), 200),
    "sign apart, status, unit": (
        lambda i, v: f"{'MV' if 50 < i < 350 else 'ST'},{'-' if v < 0 else '+'}{abs(v):8.2f} in-lb\r\n",
        "lbf·in", pull(), 10),
    "frame marks": (lambda i, v: f"\x02{v:+07.2f}N.m\x03\r\n", "N·m", pull(), 80),
    "label and channel": (lambda i, v: f"CH1: T={v:.2f} Nm\r\n", "N·m", pull(), 40),
    "tabs, temperature and battery": (
        lambda i, v: f"{v:.2f}\tNm\t{21.5 + 0.1 * (i % 2):.1f}\t°C\t{87:d}%\r\n", "N·m", pull(), 10),
    "check sum": (lambda i, v: nmea(f"TQ,{i % 1000:03d},{v:.2f},Nm"), "N·m", pull(), 100),
    "exponents": (lambda i, v: f"{v:+.3E}\r\n", "N·m", np.array([float(f"{v:.3E}") for v in pull()]), 10),
    "magnitude only": (lambda i, v: f"{v:.2f} ft-lb\r\n", "lbf·ft", pull(both_ways=False), 10),
    "raw counts": (lambda i, v: f"{v:.0f}\n", "N·m", np.round(pull() * 1000) + 8_388_608, 80),
}  # fmt: skip
SENDS_UNIT = {name for name, (write, *_) in FORMATS.items() if any(c.isalpha() for c in write(1, 1.0).replace("E", ""))}


def decoded_by(description, chunks):
    decoder = build_decoder(description)
    decoder.reset()  # the stream is joined in the middle of a line
    parts = [decoder.feed(chunk.data) for chunk in chunks]
    torque = np.concatenate([part.columns["torque"] for part in parts])
    return torque, [event for part in parts for event in part.events], parts


@pytest.mark.parametrize("name", FORMATS)
def test_the_learned_description_reads_what_was_written(name):
    write, unit, readings, rate = FORMATS[name]
    chunks = heard([write(i, v) for i, v in enumerate(readings)], rate)
    learned = learn(chunks, wanted=Wanted(unit="" if name in SENDS_UNIT else unit))
    description = usable(learned)
    assert description.unit == unit
    torque, events, _ = decoded_by(description, chunks)
    written = readings[-len(torque) :]
    assert len(torque) >= len(readings) - 1
    assert np.allclose(torque[1:], written[1:], rtol=0, atol=1e-9)
    lost = [event for event in events if event.kind not in (EventKind.GARBAGE,)]
    assert not lost
    assert sum(e.count for e in events if e.kind is EventKind.GARBAGE) <= 40  # the line joined in its middle
    assert description.transducer.rate_hz == rate
    assert description.transducer.sign == (None if name in ("magnitude only", "raw counts") else "signed")
    assert learned.shown
    assert all(values != "not a reading" for _, values in learned.shown)


@pytest.mark.parametrize("name", FORMATS)
def test_it_can_be_written_down_and_read_again(name, tmp_path):
    write, unit, readings, rate = FORMATS[name]
    description = usable(learn(heard([write(i, v) for i, v in enumerate(readings)], rate), wanted=Wanted(unit=unit)))
    path = tmp_path / "learned.toml"
    write_toml(path, description)
    assert parse_toml(path.read_text(encoding="utf-8"), type(description), "learned.toml") == description


@pytest.mark.parametrize("name", sorted(set(FORMATS) - SENDS_UNIT))
def test_without_a_unit_nothing_is_written(name):
    write, _, readings, rate = FORMATS[name]
    learned = learn(heard([write(i, v) for i, v in enumerate(readings)], rate))
    assert learned.missing == ("unit",)
    with pytest.raises(InputError, match="calibrate it with two" if name == "raw counts" else "--unit"):
        usable(learned)


def test_extra_columns_are_named():
    def columns(name):
        write, unit, readings, rate = FORMATS[name]
        description = usable(
            learn(heard([write(i, v) for i, v in enumerate(readings)], rate), wanted=Wanted(unit=unit))
        )
        return [(c.name, c.unit) for c in build_decoder(description).columns], description

    named, description = columns("tabs, temperature and battery")
    assert named == [("torque", "N·m"), ("temperature", "°C"), ("battery", "%")]
    named, description = columns("counter that wraps, commas")
    assert (description.lines.counter_modulus, description.lines.counter_step) == (256, 7)
    _, description = columns("zero padded counter")
    assert description.lines.counter_modulus == 10_000
    _, description = columns("check sum")
    assert (description.lines.check.name, description.lines.check.covers_from) == ("xor-8", 1)


def test_counters_count_losses_afterwards():
    write, unit, readings, rate = FORMATS["counter that wraps, commas"]
    lines = [write(i, v) for i, v in enumerate(readings)]
    description = usable(learn(heard(lines, rate), wanted=Wanted(unit=unit)))
    _, events, _ = decoded_by(description, [Chunk(0.0, "".join(lines[:100] + lines[117:]).encode())])
    assert sum(e.count for e in events if e.kind is EventKind.GAP) == 17


def test_overload_marks_and_doubts_are_told():
    readings = pull()
    lines = [("   OL   Nm\r\n" if 80 < i < 90 else "   ----  Nm\r\n" if i == 300 else f"{v:8.2f} Nm\r\n")
             for i, v in enumerate(readings)]  # fmt: skip
    learned = learn(heard(lines))
    description = usable(learned)
    assert "OL" in description.lines.overload
    assert "----" in description.lines.error
    assert any("----" in doubt for doubt in learned.unknown)
    torque, events, _ = decoded_by(description, heard(lines))
    assert np.isnan(torque).sum() == 10
    assert [e.kind for e in events if e.kind is not EventKind.GARBAGE] == [EventKind.OVERLOAD, EventKind.DEVICE_ERROR]


def test_status_words_are_listed_as_a_doubt():
    write, _, readings, rate = FORMATS["sign apart, status, unit"]
    learned = learn(heard([write(i, v) for i, v in enumerate(readings)], rate))
    assert any("'MV'" in doubt and "'ST'" in doubt for doubt in learned.unknown)


def test_banners_do_not_disturb():
    readings = pull()
    lines = ["# workshop gauge 3.1\r\n", "# units: newton metres\r\n"] + [f"{v:.2f} Nm\r\n" for v in readings]
    learned = learn(heard(["xx\r\n", *lines]))
    assert usable(learned).lines.ignore
    torque, events, _ = decoded_by(usable(learned), heard(["xx\r\n", *lines]))
    assert np.allclose(torque, readings)
    assert not [e for e in events if e.count > 5]


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "--poll"),
        (b"12.3 12.4 12.5 12.6 " * 30, "nothing ends a line"),
        (bytes([0xAA, 0x55, 0x01, 0x90, 0x00, 0xFF]) * 100, "moves smoothly"),
        (np.random.default_rng(1).integers(0, 256, 4000, np.uint8).tobytes(), "baud"),
        (b"hello\r\n" * 50, "lines are built alike"),
        (b"0.00 Nm\r\n" * 50, "no number moves"),
        (b"1.0\r\n2.0\r\n3.0\r\n", "lines are built alike"),
    ],
)
def test_what_cannot_be_learned_is_said(data, words):
    size = max(1, len(data) // 10)
    chunks = [Chunk(0.1 * i, data[i : i + size]) for i in range(0, len(data), size)]
    learned = learn(chunks, wanted=Wanted(unit="N·m"))
    assert learned.description is None
    assert any(words in doubt for doubt in learned.unknown)


@pytest.mark.parametrize(("parity", "odd"), [("even", 1), ("odd", 0)])
def test_seven_bits_with_parity_heard_as_eight(parity, odd):
    readings = pull()
    lines = [f"{v:.2f} Nm\r\n" for v in readings]
    chunks = [
        Chunk(c.arrival_s, bytes(b | 0x80 if b.bit_count() % 2 == odd else b for b in c.data)) for c in heard(lines)
    ]
    learned = learn(chunks, serial=SerialSettings(baud=9600))
    assert (usable(learned).serial.bits, usable(learned).serial.parity) == (7, parity)
    assert np.allclose(decoded_by(usable(learned), heard(lines))[0], readings[1:])


def test_everything_at_once_gives_no_rate():
    learned = learn([Chunk(1.0, b"".join(f"{v:.2f} Nm\n".encode() for v in pull()))])
    assert usable(learned).transducer.rate_hz is None
    assert any("rate" in doubt for doubt in learned.unknown)


def test_an_unusual_rate_is_kept_as_measured():
    learned = learn(heard([f"{v:.2f} Nm\r\n" for v in pull()], rate=37.0))
    assert math.isclose(usable(learned).transducer.rate_hz, 37.0, rel_tol=0.02)


MARKS = [b"Nm", b"OL", b"----", b"ST", b"\x02", b"\x03", b"{", b"}", b"*4F", b"\xff", b"."]
NUMBERS = [b"12.5", b"-3", b"+0.00", b"1,5", b"000017", b"e9", b"1e999"]
WORDS = st.sampled_from([*MARKS, *NUMBERS, b",", b";", b" ", b"\t", b"\r\n", b"\n", b"\r"])


@given(st.lists(st.one_of(WORDS, st.binary(max_size=6)), max_size=300), st.integers(1, 60))
def test_whatever_is_heard_is_survived(words, size):
    data = b"".join(words)
    chunks = [Chunk(0.01 * i, data[i : i + size]) for i in range(0, len(data), size)]
    learned = learn(chunks, wanted=Wanted(unit="N·m"))
    assert learned.found or learned.unknown


@given(st.lists(WORDS, min_size=1, max_size=6), st.integers(8, 40))
def test_the_same_line_again_and_again(words, count):
    line = b"".join(words).replace(b"\r", b"").replace(b"\n", b"") + b"\r\n"
    chunks = [Chunk(0.01 * i, line.replace(b"12.5", str(i).encode())) for i in range(count)]
    learned = learn(chunks, wanted=Wanted(unit="N·m"))
    if learned.description is not None:  # what is offered can be used
        build_decoder(learned.description).feed(line)
