"""Serial formats that nobody described: learned right, asked and then right, or refused. None wrong in silence.

Every format is invented. It is learned from two pulls; then the same device goes on, with what was not seen while
it was listened to: the minute changes, it gets warmer, the range is exceeded, the torque goes beyond a thousand. Each
reading of both parts is compared with what was sent.
"""

import binascii
import struct
from collections import Counter
from dataclasses import dataclass, field

import numpy as np
import pytest

from logger.decoder.build import build_decoder
from logger.decoder.crc import check
from logger.learn.learn import Wanted, learn
from logger.samples import Chunk, EventKind

LEARNT = 600  # readings heard
RATE = 100.0
NAN = float("nan")


def course(n=LEARNT, peak=41.0):
    """Two pulls one way and a smaller one the other way, with the noise of a gauge; in hundredths."""
    rng = np.random.default_rng(3)
    t = np.linspace(0, 3, n)
    shape = np.where(t < 1, np.sin(np.pi * t) ** 2, np.where(t < 2, -0.6, 0.8) * np.sin(np.pi * t) ** 2)
    return np.round(peak * shape + rng.normal(0, 0.03, n), 2) + 0.0


@dataclass
class Format:
    """A device: what it writes for reading i of value v, what it is to be read as, and what happens later.

    ``asked`` names what is missing first; ``told`` is what the user then says; ``refused`` are words of a refusal.
    ``later`` gives readings after those learned from; ``lost`` allows so many of them to be left out, if it is told.
    """

    write: object
    unit: str = "N·m"
    told: dict = field(default_factory=dict)
    asked: tuple = ()
    refused: str = ""
    values: np.ndarray = field(default_factory=course)
    later: np.ndarray = field(default_factory=lambda: course(300, 60.0))
    truth: object = staticmethod(lambda i, v: v)
    measures: str = "torque"
    rate: float | None = RATE
    says: str = ""


def clock(i, start=12 * 3600 + 35 * 60 + 50):
    s = start + i / RATE
    return f"{int(s // 3600):02d}:{int(s // 60) % 60:02d}:{s % 60:06.3f}"


def warm(i):
    return 21.4 + 0.1 * (i % 3 == 0) + (1.3 if i > LEARNT else 0)


def stars(body):
    return f"${body}*{check(body.encode(), 'xor-8'):02X}\r\n"


def hexcrc(body):
    return f"{body},{check((body + ',').encode(), 'crc-16/modbus'):04X}\r\n"


def rawcrc(i, v):
    body = f"{v:+08.2f} Nm".encode()
    return body + check(body, "crc-16/xmodem").to_bytes(2, "big") + b"\r\n"


def bcc(i, v):
    body = f"{v:+08.2f}".encode() + b"\x03"
    return b"\x02" + body + bytes([check(body, "xor-8")])


def lrc_hex(i, v):
    body = f"{v:+07.2f};A".encode()
    return b"\x02" + body + b"\x03" + f"{check(body, 'lrc-8'):02X}".encode() + b"\r\n"


def frame(i, v, tail="crc-16/modbus"):
    body = struct.pack("<BBHhH", 0xAA, 0x55, i & 0xFFFF, round(v * 100), 215)
    return body + check(body, tail).to_bytes(2, "little")


def frame_sum(i, v):
    body = struct.pack(">BBhB", 0x7E, i & 0xFF, round(v * 100), 0)
    return body + bytes([check(body, "sum-8")])


def single(i, v):
    return float(np.float32(v))


def frame_float(i, v):
    return struct.pack("<BBf", 0xA5, 0x5A, v)


class Peak:
    """A column that holds the highest magnitude since the last reset."""

    def __init__(self):
        self.highest = 0.0

    def __call__(self, i, v, form):
        self.highest = abs(v) if i % 300 == 0 else max(self.highest, abs(v))
        return form.format(v=v, p=self.highest).encode()


PEAK = Peak()


def two_channels(i, v):
    other = 5 + 7 * np.sin(i / 40)
    return f"{v:.2f};{other:.2f}\r\n".encode()


def over(i, v):
    return "OL" if abs(v) > 50 else f"{v:.2f}"


def beyond(limit):
    return lambda i, v: NAN if abs(v) > limit else v


FORMATS = {
    # --- what moves between the numbers -----------------------------------------------------------
    "clock time in front": Format(lambda i, v: f"{clock(i)},{v:.2f} Nm\r\n".encode()),
    "date and time, ISO": Format(lambda i, v: f"2031-04-05T{clock(i)}Z;{v:.2f};Nm\r\n".encode()),
    "date and time, day first": Format(lambda i, v: f"05.04.2031 {clock(i)[:8]} {v:+.2f} Nm\r\n".encode()),
    "clock with a decimal comma": Format(
        lambda i, v: f"{clock(i)};{v:.2f};Nm\r\n".replace(".", ",").encode()),
    "milliseconds since the start": Format(lambda i, v: f"{10 * i + i % 2} {v:.2f} Nm\n".encode()),
    "seconds since the start": Format(lambda i, v: f"{i / RATE:.3f}\t{v:.2f}\tNm\n".encode()),
    "whole temperature behind T=": Format(
        lambda i, v: f"M={v:.2f} T={21 + (i > LEARNT)}\r\n".encode(), told={"unit": "N·m"}, asked=("unit",)),
    "a word that says OK, later OL": Format(
        lambda i, v: f"{v:.2f} Nm stat={'OL' if abs(v) > 50 else 'OK'}\r\n".encode(), truth=beyond(50),
        says="any other makes a reading not valid"),
    "OL where the number stands, not seen before": Format(
        lambda i, v: f"{over(i, v)} Nm\r\n".encode(), truth=beyond(50)),
    "dashes where the number stands, not seen before": Format(
        lambda i, v: (f"{v:8.2f} Nm\r\n" if abs(v) <= 50 else "  ------ Nm\r\n").encode(), truth=beyond(50)),
    "range digit that stood still": Format(
        lambda i, v: f"{v:.2f},{1 + (i > LEARNT)},Nm\r\n".encode()),
    "channel that stood still": Format(lambda i, v: f"CH1 {v:.2f} Nm\r\n".encode()),
    "whole number that stood still": Format(
        lambda i, v: f"7 {v:.2f} Nm {100 - (i > LEARNT)}%\r\n".encode()),
    "stable or moving": Format(
        lambda i, v: f"{'ST' if i % 50 < 30 else 'US'},{v:.2f},Nm\r\n".encode()),
    "direction as a word": Format(
        lambda i, v: f"{abs(v):.2f} Nm {'CCW' if v < 0 else 'CW'}\r\n".encode()),
    "a degree sign that is no UTF-8": Format(lambda i, v: f"{v:.2f} Nm {warm(i):.1f}".encode() + b"\xb0C\r\n"),
    # --- two numbers that could be it -------------------------------------------------------------
    "live and peak hold": Format(lambda i, v: PEAK(i, v, "{v:.2f},{p:.2f} Nm\r\n"), says="holds the peak"),
    "two torques": Format(two_channels, asked=("field", "unit"), told={"field": "1", "unit": "N·m"}),
    "two torques with units": Format(
        lambda i, v: f"{v:.2f} Nm {5 + 7 * np.sin(i / 40):.2f} Nm\r\n".encode(), asked=("field",), told={"field": "1"}),
    "angle that comes and goes": Format(
        lambda i, v: f"{40 * abs(np.sin(i / 90)):.1f},{v:.2f}\n".encode(),
        asked=("field", "unit"), told={"field": "2", "unit": "lbf·ft"}, unit="lbf·ft"),
    "temperature without a unit": Format(
        lambda i, v: f"{v:.2f} {warm(i):.1f}\n".encode(), asked=("unit",), told={"unit": "N·m"}, says="hardly moved"),
    "two channels in turn": Format(
        lambda i, v: f"A {v:.2f} Nm\r\nB {0.3 * v + 9:.2f} Nm\r\n".encode(), asked=("lines",), told={"lines": "A"}),
    "lines of another kind between": Format(
        lambda i, v: f"TQ {v:.2f} Nm\r\n".encode() + (f"TEMP {warm(i):.1f} C\r\n".encode() if i % 4 == 0 else b""),
        asked=("lines",), told={"lines": "TQ"}),
    # --- how numbers are written ------------------------------------------------------------------
    "thousands, seen": Format(
        lambda i, v: f"{v:,.1f} Nmm\r\n".encode(), values=course(peak=4100), later=course(300, 6000), unit="N·mm",
        truth=lambda i, v: float(f"{v:.1f}")),
    "thousands, not seen": Format(
        lambda i, v: f"{v:,.1f} Nmm\r\n".encode(), values=course(peak=900), later=course(300, 4000), unit="N·mm",
        truth=lambda i, v: float(f"{v:.1f}")),
    "thousands, German": Format(
        lambda i, v: f"{v:,.1f} Nmm\r\n".translate(str.maketrans(",.", ".,")).encode(), values=course(peak=4100),
        unit="N·mm", truth=lambda i, v: float(f"{v:.1f}"), later=course(300, 6000)),
    "decimal comma": Format(
        lambda i, v: f"{v:.1f}\r\n".replace(".", ",").encode(), asked=("unit",), told={"unit": "N·m"},
        truth=lambda i, v: float(f"{v:.1f}")),
    "two whole numbers and a comma": Format(
        lambda i, v: f"{v:.0f},{20 + i % 3}\r\n".encode(), asked=("unit",), told={"unit": "N·m"},
        values=np.round(course(peak=600)), later=np.round(course(300, 900))),
    "whole number that never shows a decimal": Format(
        lambda i, v: f"N{v * 100:.0f}\r\n".encode(), asked=("unit",),
        told={"unit": "N·m", "scale": 0.01}, says="--scale"),
    "hexadecimal counts": Format(
        lambda i, v: f"{round(v * 500) & 0xFFFF:04X}\r\n".encode(), asked=("unit",),
        told={"unit": "N·m", "scale": 0.002}),
    "hexadecimal counts, 0x, 24 bits about the middle": Format(
        lambda i, v: f"0x{round(v * 5000) + 0x800000:06x}\n".encode(), asked=("unit",),
        told={"unit": "N·m"}, truth=lambda i, v: round(v * 5000) + 0x800000, says="raw counts"),
    "counter and hexadecimal": Format(
        lambda i, v: f"{i % 10000:04d} {round(v * 500) & 0xFFFF:04X}\r\n".encode(), asked=("unit",),
        told={"unit": "N·m", "scale": 0.002}),
    "exponents": Format(lambda i, v: f"{v:+.4E},Nm\r\n".encode()),
    # --- fixed width ------------------------------------------------------------------------------
    "fixed width that grows together later": Format(
        lambda i, v: f"{v:8.2f}{warm(i):6.1f}\r\n".encode(), asked=("unit",), told={"unit": "N·m"},
        later=np.where(np.arange(300) % 2, -1234.56, 12345.67)),
    "fixed width without a gap": Format(
        lambda i, v: f"{round(abs(v) * 100):06d}{2150 + (i > LEARNT):04d}\r\n".encode(), asked=("template",),
        told={"template": "{torque:6}{temperature:4}", "scale": 0.01, "unit": "N·m"}, truth=lambda i, v: abs(v)),
    "numbers that touch": Format(
        lambda i, v: f"{v:08.2f}{warm(i):05.2f}\r\n".encode(), asked=("template",),
        told={"template": "{torque:8}{temperature:5}", "unit": "N·m"}),
    # --- frames and check sums --------------------------------------------------------------------
    "STX to ETX without line ends": Format(
        lambda i, v: f"\x02{v:+08.2f} Nm\x03".encode()),
    "STX to ETX with line ends": Format(lambda i, v: f"\x02{v:+08.2f} Nm\x03\r\n".encode()),
    "STX to ETX and a check byte": Format(bcc, asked=("unit",), told={"unit": "N·m"}, says="xor-8"),
    "STX to ETX, check in digits, line ends": Format(lrc_hex, asked=("unit",), told={"unit": "N·m"}, says="lrc-8"),
    "star and check digits": Format(lambda i, v: stars(f"TRQ,{v:.2f},Nm").encode(), says="xor-8"),
    "CRC-16 in digits": Format(lambda i, v: hexcrc(f"{v:.2f},Nm").encode(), says="crc-16/modbus"),
    "CRC-16 in bytes": Format(rawcrc, says="crc-16/xmodem"),
    "a check sum nobody knows": Format(
        lambda i, v: f"{v:.2f} Nm #{binascii.crc_hqx(f'{v:.2f}salt{i}'.encode(), 7):04X}\r\n".encode(),
        says="not checked"),
    "JSON": Format(lambda i, v: f'{{"t":{10 * i},"tq":{v:.2f},"u":"N.m","ok":"yes"}}\n'.encode()),
    # --- binary -----------------------------------------------------------------------------------
    "binary frame, counter, CRC": Format(frame, asked=("scale", "unit"), told={"scale": 0.01, "unit": "N·m"}),
    "binary frame, one mark byte, sum": Format(frame_sum, asked=("scale", "unit"), told={"scale": 0.01, "unit": "N·m"}),
    "float32 behind two mark bytes": Format(
        frame_float, asked=("unit",), told={"unit": "N·m"}, truth=single),
    "float32 of large torques": Format(
        lambda i, v: b"\xa5\x5a" + struct.pack(">f", v), asked=("unit",), told={"unit": "N·m"}, truth=single,
        values=course(peak=400), later=course(300, 600)),
    "float32 and bytes that stay zero": Format(
        lambda i, v: b"\xa5\x5a" + struct.pack("<fI", v, 0), asked=("unit",), told={"unit": "N·m"}, truth=single,
        values=course(peak=0.8), later=course(300, 1.2)),
    "float32 and a check that nobody knows": Format(
        lambda i, v: b"\xa5\x5a" + struct.pack(">fI", v, binascii.crc32(struct.pack("<fI", v, 7))),
        asked=("unit",), told={"unit": "N·m"}, truth=single),
    "float64": Format(
        lambda i, v: b"\xa5\x5a" + struct.pack("<d", v), asked=("unit",), told={"unit": "N·m"}),
    "float64, big end first, made of float32": Format(
        lambda i, v: b"\xa5\x5a" + struct.pack(">dh", np.float32(v), 215), asked=("unit",), told={"unit": "N·m"},
        truth=single, values=course(peak=5), later=course(300, 8)),
    "float32 without a mark": Format(lambda i, v: struct.pack("<f", v), refused="nothing marks where one begins"),
    "16 bits without a mark": Format(
        lambda i, v: struct.pack(">h", round(v * 100)), refused="nothing marks where one begins"),
    "numbers with blanks and no line ends": Format(lambda i, v: f"{v:.2f} ".encode(), refused="nothing ends a line"),
    # --- forces -----------------------------------------------------------------------------------
    "weighing indicator": Format(
        lambda i, v: f"ST,GS,{'-' if v < 0 else '+'}{abs(v):8.2f}kg\r\n".encode(), unit="kgf", measures="force"),
    "load cell": Format(lambda i, v: f"{v:.2f} N\r\n".encode(), unit="N", measures="force"),
}  # fmt: skip


def sent(form):
    """Give the bytes of each reading, in two parts, and what each is to be read as."""
    every = np.concatenate((form.values, form.later))
    pieces = [form.write(i, v) for i, v in enumerate(every)]
    truth = np.array([form.truth(i, v) for i, v in enumerate(every)])
    return pieces[: len(form.values)], pieces[len(form.values) :], truth


def heard(pieces):
    """Chunks as a port gives them: some readings at a time, cut anywhere, beginning in the middle of one."""
    data = b"".join(pieces)
    size = max(1, 3 * len(data) // len(pieces))
    cut = [data[i : i + size] for i in range(0, len(data), size)]
    cut[0] = cut[0][2:]
    jitter = np.random.default_rng(1).uniform(0, 0.004, len(cut))
    return [
        Chunk(5.0 + (i + 1) * size / len(data) * len(pieces) / RATE + j, c)
        for i, (c, j) in enumerate(zip(cut, jitter, strict=True))
    ]


def outcome(name):
    """Learn a format; ask as often as it is asked. Gives the outcome, the description and all that was said."""
    form = FORMATS[name]
    first, later, truth = sent(form)
    chunks = heard(first)
    learned = learn(chunks)
    said = " | ".join((*learned.found, *learned.unknown))
    kind = "right"
    if learned.description is None and learned.missing:
        kind, asked = "asked", set(learned.missing)
        learned = learn(chunks, wanted=Wanted(**form.told))
        for _ in range(2):
            if learned.description is None and learned.missing:
                asked |= set(learned.missing)
        said += " | " + " | ".join((*learned.found, *learned.unknown))
        assert set(form.asked) == asked, (asked, said)
    if learned.description is None:
        return "refused", None, said, (first, later, truth)
    return kind, learned, said, (first, later, truth)


@pytest.mark.parametrize("name", FORMATS)
def test_learned_right_asked_or_refused(name):
    form = FORMATS[name]
    kind, learned, said, (first, later, truth) = outcome(name)
    expected = "refused" if form.refused else "asked" if form.asked else "right"
    assert kind == expected, said
    assert form.says in said
    if form.refused:
        assert form.refused in said
        return
    description = learned.description
    assert description.measures == form.measures
    assert description.unit == form.unit, said
    if form.rate is not None:
        assert description.transducer.rate_hz == form.rate, said
    decoder = build_decoder(description)
    decoder.reset()
    data = b"".join(first)[2:] + b"".join(later) + first[0]
    parts = [decoder.feed(data[i : i + 97]) for i in range(0, len(data), 97)]
    torque = np.concatenate([part.columns["torque"] for part in parts])
    events = [event for part in parts for event in part.events]
    garbage = sum(event.count for event in events if event.kind is EventKind.GARBAGE)
    if name == "thousands, not seen":  # left out, counted and said, never another number
        whole = truth[np.abs(truth) < 1000]
        assert set(np.round(torque, 1)) <= set(np.round(whole, 1))
        assert garbage > 100
        assert any("where {unit} should be came ',0" in event.text for event in events)
        return
    if name == "CRC-16 in bytes":  # a check that looks like a line's end costs its line
        assert len(torque) > 0.95 * len(truth)
        assert set(torque) <= set(truth)
        return
    got, want = _aligned(torque, truth)
    assert np.array_equal(np.isnan(got), np.isnan(want)), said
    assert np.allclose(got, want, rtol=0, atol=1e-9, equal_nan=True), said
    assert garbage <= 60, events  # the reading that was joined in its middle


def _aligned(torque, truth):
    """The stream was joined in its first reading, and its first reading came once more at the end."""
    want = np.concatenate((truth[1:], truth[:1])) if len(torque) >= len(truth) else truth[1:]
    return torque[-len(want) :], want


def test_counts_of_outcomes():
    """At least 34 kinds; the counts are for the record, the kinds are asserted one by one above."""
    kinds = Counter("refused" if f.refused else "asked" if f.asked else "right" for f in FORMATS.values())
    assert sum(kinds.values()) == len(FORMATS) >= 34
    assert kinds["refused"] <= 5
