"""All that decoders make of kept bytes, sound and broken, held against what was kept (see ``tests.kept``)."""

from __future__ import annotations

import hashlib
from itertools import product

import msgspec
import numpy as np
import pytest

from logger.decoder import crc, description_keys, rows, standard
from logger.decoder.autozero import AutoZeroWatch
from logger.decoder.build import build_decoder
from logger.decoder.column_faults import name_faults, scale_faults
from logger.decoder.counter import Unwrapper
from logger.decoder.description import Description, as_torque, command_bytes, description_faults, shipped
from logger.decoder.framed_text import FramedTextDecoder
from logger.decoder.frames import FrameDecoder
from logger.decoder.layouts import Packet, PlacedNumber, Register, frame_faults, layout_faults, register_faults
from logger.decoder.lines import LineDecoder
from logger.decoder.notifications import NotificationDecoder
from logger.decoder.registers import RegisterDecoder, plan
from logger.decoder.template import LineCheck, LineFormat, template_faults
from logger.edges.toml_file import read_toml
from logger.errors import HeldwheelError
from logger.samples import Column, Decoded, empty
from tests.kept import kept
from tests.logger.decoder.kept_streams import ENDS, FRAMES, LINES, PACKETS
from tests.steps import steps

ROOM = "logger.decoder"


def said_of(decoder, parts: list[list[bytes]], *, silent_at: int = -1) -> list[object]:
    """Feed drains of chunks; once between them there was a silence, and half of what was received is given up."""
    said: list[object] = [decoder.columns]
    for i, chunks in enumerate(parts):
        if i == silent_at:
            decoder.expect(12.5, 3.0)
            said.append(decoder.reset(midway=i % 2 == 0))
        said.append(decoder.feed(*chunks))
    return [*said, decoder.reset(), decoder.simulated]


def cut(data: bytes, size: int) -> list[bytes]:
    return [data[at : at + size] for at in range(0, len(data), size)]


@pytest.mark.parametrize("name", LINES)
def test_kept_lines(name):
    form, lines = LINES[name]
    answers = {}
    with steps(ROOM) as said:
        for end in ("LF", "CRLF", "any", "CR"):
            kind = msgspec.structs.replace(form, terminator=end)
            data = b"\xfe junk" + ENDS[end] + b"".join(line + ENDS[end] for line in lines) + b"1.5"
            unit = "lbf·in" if name == "status" else "N·m"
            answers[end] = said_of(LineDecoder(kind, unit, "8"), [[data]])
            if end == "CRLF":
                answers["cut"] = said_of(LineDecoder(kind, unit), [cut(part, 5) for part in cut(data, 61)], silent_at=3)
        repeated = b"".join(line + b"\n" for line in lines[:2] * 40) + lines[-1] + b"\n"
        answers["many"] = said_of(LineDecoder(form, "N·m"), [[repeated], [repeated, repeated]])
    kept("decoder-lines", name, [answers, said])


@pytest.mark.parametrize("name", [name for name in LINES if name != "xor"])
def test_kept_framed_text(name):
    form, lines = LINES[name]
    kind = msgspec.structs.replace(form, terminator="ETX")
    data = (
        b"\x00 " + b"".join(b"\x02" + line + b"\x03\r\n" for line in lines) + b"x\x02" + lines[0] + b"\x02" + lines[1]
    )
    with steps(ROOM) as said:
        answers = [
            said_of(FramedTextDecoder(kind, "N·m"), [[data], [b"\x03"]]),
            said_of(FramedTextDecoder(kind, "N·m"), [cut(part, 4) for part in cut(data, 50)], silent_at=2),
        ]
    kept("decoder-framed", name, [answers, said])


CHECKED = {
    "hex": LineCheck(name="sum-8", mark="\x03"),
    "hex with its mark": LineCheck(name="xor-8", mark="\x03", covers_mark=True, covers_from=1),
    "bytes": LineCheck(name="crc-16/modbus", form="bytes", mark="\x03", covers_from=1, order="big"),
    "bytes with their mark": LineCheck(name="crc-16/modbus", form="bytes", mark="\x03", covers_mark=True),
}


@pytest.mark.parametrize("name", CHECKED)
def test_kept_framed_text_with_a_check(name):
    """Sound frames, one with its check spoilt, one without, noise between; cut everywhere."""
    own = CHECKED[name]
    form = LineFormat(template="{torque}", terminator="ETX", check=own)
    data = b"x"
    for n, body in enumerate((b"1.5", b"-2", b"3\r\n4", b"OL", b"5.25", b"6")):
        frame = b"\x02" + body + b"\x03"
        covered = frame[own.covers_from : len(frame) - (not own.covers_mark)]
        value = crc.check(covered, own.name) ^ (n == 1)
        stated = value.to_bytes(own.size if own.form == "bytes" else own.size // 2, own.order)
        data += frame + (stated if own.form == "bytes" else stated.hex().upper().encode()) + b"\r\n"
    data += b"noise\x03 zz\x02 7\x03ZZ\x02" + b"8" * 600
    answers = [said_of(FramedTextDecoder(form, "N·m"), [cut(data, size)]) for size in (1, 3, 7, 1000)]
    answers += [said_of(FramedTextDecoder(form, "N·m"), [[part] for part in cut(data, 5)])]
    answers.append(template_faults(form))
    kept("decoder-framed", f"check {name}", answers)


@pytest.mark.parametrize("name", PACKETS)
def test_kept_packets(name):
    layout, packets = PACKETS[name]
    with steps(ROOM) as said:
        answers = [
            said_of(NotificationDecoder(layout, "N·m"), [packets]),
            said_of(NotificationDecoder(layout, "N·m"), [[one] for one in packets], silent_at=8),
            said_of(
                NotificationDecoder(layout, "N·m"), [packets[i : i + 3] for i in range(0, len(packets), 3)], silent_at=2
            ),
            said_of(NotificationDecoder(layout, "N·m"), [packets[::-1], packets, packets[1::2]]),
            layout_faults(layout),
        ]
    kept("decoder-packets", name, [answers, said])


@pytest.mark.parametrize("name", FRAMES)
def test_kept_frames(name):
    layout, data = FRAMES[name]
    with steps(ROOM) as said:
        answers = [
            frame_faults(layout),
            said_of(FrameDecoder(layout, "N·m"), [[data], [data]]),
            *(
                said_of(FrameDecoder(layout, "N·m"), [cut(part, size) for part in cut(data, 10 * size)], silent_at=2)
                for size in (1, 3, 7, 64)
            ),
        ]
    kept("decoder-frames", name, [answers, said])


REGISTERS = tuple(
    Register(name=name, address=at, type=kind, word_order=words, byte_order=order, table=table, scale=0.01, offset=off)
    for name, at, kind, words, order, table, off in (
        ("torque", 100, "s32", "little", "big", "holding", 0.0),
        ("angle", 102, "u16", "big", "little", "holding", 1.5),
        ("rate", 111, "float32", "little", "little", "holding", 0.0),
        ("speed", 122, "s16", "big", "big", "holding", 0.0),
        ("power", 7, "float64", "big", "big", "input", 0.0),
        ("count", 11, "u32", "big", "big", "input", 0.0),
        ("far", 130, "s16", "big", "big", "input", 0.0),
    )
)


def test_kept_registers():
    registers = (
        msgspec.structs.replace(REGISTERS[0], missing=-5, overload=1_000_000),
        *REGISTERS[1:3],
        msgspec.structs.replace(REGISTERS[3], overload=30_000, missing=0),
        *REGISTERS[4:],
    )
    size = sum(2 * block.count for block in plan(registers))
    polls = [bytes((17 * i + 31 * k * k + k) % 256 if k else 0 for i in range(size)) for k in range(12)]
    minus_5 = b"\xff\xfb\xff\xff" + polls[0][4:]
    with steps(ROOM) as said:
        answers = [
            plan(registers),
            [plan([msgspec.structs.replace(one, address=one.address * k) for one in registers]) for k in (2, 3, 11)],
            plan([Register(name=f"r{i}", address=i) for i in range(300)]),
            said_of(RegisterDecoder(registers, "N·m"), [[*polls, minus_5], [polls[3][:-1], polls[4]], [minus_5] * 2]),
            register_faults(registers),
            register_faults(registers[1:] * 2),
            register_faults([Register(name="torque", address=65535, type="s32", scale=0.0)]),
        ]
    kept("decoder-other", "registers", [answers, said])


class Given:
    """A decoder whose torques are given."""

    columns, simulated = (Column("torque", "N·m"),), False

    def __init__(self, parts):
        self._parts = iter(parts)

    def expect(self, samples, leeway=0.0):
        pass

    def reset(self, *, midway=True):
        return empty(self.columns)

    def feed(self, *chunks):
        torque = np.array(next(self._parts), float)
        return Decoded({"torque": torque}, np.zeros(len(torque), np.int64))


LOADED = {
    "vanishes": [[0] * 9, [0, 10, 20, 40] + [40, 41, 40, 39, 40] * 3, [40, 0, 0.2, 0, 0.1, 0], [0] * 9],
    "let go": [[0] * 9, [40, 41, 40, 39, 40] * 3 + [30, 20, 10, 4, 0, 0, 0], [0] * 9],
    "shaky": [[0] * 9, [40, 46, 40, 34, 40] * 3 + [0, 0, 0, 0, 0, 0]],
    "light": [[0] * 9, [5, 5, 5, 5, 5] * 3 + [0, 0, 0, 0, 0, 0], [100, 99, 5, 5, 5, 5, 5, 5, 0, 0, 0, 0, 0]],
    "break": [[40, 41, 40, 39, 40] * 3, None, [0.3] * 7, [40] * 9, None, [40] * 9, None, [39, 0.5], [0.4] * 5],
    "break of little": [
        [2, 2, 2, 2, 2, 2],
        None,
        [0] * 6,
        [np.nan, -60, -60, np.nan, -60, -60, -60, -61, 0, 0, 0, 0, 0],
    ],
    "borders": [
        [10.0] * 9,
        [0.2] * 6,
        [10.0] * 4 + [10.5] * 2 + [0.2] * 7,
        None,
        [0.21] * 6,
        [-10.0] * 9,
        [0, 0, 0, 0, 0, 0],
    ],
    "few": [[40, 40, 40], [40, 40], [0], [0], [0, 0], None, [0], [0], [40] * 7, None, [0.8] * 3, [0.8] * 2, [0.81] * 9],
}


@pytest.mark.parametrize("name", LOADED)
@pytest.mark.parametrize(("capacity", "rate"), [(None, 1000.0), (200.0, 100.0), (100.0, 99.0), (1000.0, None)])
def test_kept_zeros_under_load(name, capacity, rate):
    parts = LOADED[name]
    with steps(ROOM) as said:
        watch = AutoZeroWatch(Given([one for one in parts if one is not None]), capacity, rate, least=2.0)
        answers = [watch.reset() if one is None else watch.feed(b"x") for one in parts]
    kept("decoder-zero", f"{name} {capacity} {rate}", [answers, said])


COUNTERS = {
    "on": [0, 1, 2, 3],
    "wraps": [13, 14, 15, 0, 1],
    "lost": [3, 4, 9, 10],
    "twice": [3, 4, 4, 5],
    "late": [3, 5, 4, 6],
    "very late": [5, 1, 6, 0, 7],
    "anew": [9, 0, 1, 2],
    "far": [1, 12, 13],
    "back": [12, 11, 10, 13],
    "one": [7],
    "mixed": [1, 3, 2, 2, 5, 4, 15, 14, 0],
}


@pytest.mark.parametrize("name", COUNTERS)
@pytest.mark.parametrize(
    ("modulus", "by_samples", "step"), [(16, False, 1), (16, True, 1), (32, False, 2), (65536, True, 3)]
)
def test_kept_counters(name, modulus, by_samples, step):
    raw = np.array(COUNTERS[name]) * step % modulus
    sizes = np.arange(len(raw)) % 3 + 1 if by_samples else np.full(len(raw), 2)
    answers = []
    with steps(ROOM) as said:
        for silence in ((), (4.0, 1.0), (16.0, 2.0), (100.0, 40.0), (1000.0, 0.0)):
            follow = Unwrapper(modulus, counts_samples=by_samples, step=step)
            follow.feed(np.array([0, step]) % modulus, np.full(2, 2))
            if silence:
                follow.expect(*silence)
            answers.append(follow.feed(raw, sizes))
            follow.forget()
            answers.append(follow.feed((raw + 3 * step) % modulus, sizes))
            answers.append(follow.run_on((raw[-1] + 3 * step + np.arange(1, 4) * step) % modulus))
    kept("decoder-counter", f"{name} {modulus} {step} {by_samples}", [answers, said])


def test_kept_check_sums():
    data = bytes((73 * i + 11) % 256 for i in range(64))
    table = np.frombuffer(data, np.uint8).reshape(4, 16)
    names = crc.CHECK_BYTES
    kept(
        "decoder-other",
        "check sums",
        {name: [crc.check(data[:n], name) for n in (0, 1, 5, 64)] + [crc.checks(table, name)] for name in names},
    )


def test_kept_rows_of_a_replay():
    data = b"0.0,1.5,\n# event GAP 3 three lost\n0.1,2.5,7\n0.2,-3,8\n# event NOTE 0 said\n0.3,4,9\n0.4,5"
    columns = (Column("torque", "N·m"), Column("angle", "°"))
    with steps(ROOM) as said:
        answers = [said_of(rows.RowDecoder(columns), [cut(data, size)], silent_at=9) for size in (1, 9, 1000)]
        try:
            rows.RowDecoder(columns).feed(b"1,2\n")
        except HeldwheelError as error:
            answers.append(error)
    kept("decoder-other", "rows", [answers, said])


def test_kept_standard_formats():
    data = [
        bytes([code, exponent, unit & 255, unit >> 8, 1, 2, 3])
        for code, exponent, unit in product(
            (0, 1, 4, 6, 8, 12, 14, 16, 20, 22, 25), (0, 2, 0xFE), (0x2725, 0x2741, 0x1234)
        )
    ]
    found = [standard.presentation_format(one) for one in (*data, b"", b"123456")]
    kept("decoder-other", "formats", [(f, f and (f.type, f.scale, f.unit_name)) for f in found])
    kept("decoder-other", "uuid", [standard.uuid(one) for one in (0, 0x2A19, 0xFFFF)])


# ---------------------------------------------------------------------- descriptions, and what is wrong with them
@pytest.mark.parametrize("name", shipped())
def test_kept_description(name):
    description = read_toml(shipped()[name], Description)
    data = bytes(range(1, 250)) * 3 + b"12.5\r\n+1,2\n"
    with steps(ROOM) as said:
        answers = [description.unit, description.has_counter, as_torque(description), description_faults(description)]
        if description.measures == "torque":
            answers.append(said_of(build_decoder(description), [cut(data, 20)]))
    kept("decoder-descriptions", name, [answers, said])


def variants(value, key=""):
    """Give (place, changed) for every value of a nested description, each changed in ways of its kind."""
    if isinstance(value, dict):
        for name, each in value.items():
            yield f"{key}.{name} missing", {k: v for k, v in value.items() if k != name}
            yield from ((place, value | {name: new}) for place, new in variants(each, f"{key}.{name}"))
    elif isinstance(value, list):
        for i, each in enumerate(value):
            yield f"{key}[{i}] twice", [*value, each]
            yield from ((p, [*value[:i], new, *value[i + 1 :]]) for p, new in variants(each, f"{key}[{i}]"))
    elif isinstance(value, bool):
        yield key, not value
    elif isinstance(value, int | float):
        yield from ((f"{key} {new}", new) for new in (0, -1, 1, 2, 3, 7, 255, 511, 512, 513, 65535, 65536, 1e13))
    else:
        yield from (
            (f"{key} {new!r}", new)
            for new in (
                "",
                "x",
                "{torque}",
                "{torque}{unit}",
                "{a}{b}",
                "{torque:0}",
                "{torque",
                "hex: 1",
                r"\x0",
                r"\q",
                "angle",
                "time_s",
                "=1",
                "AA ZZ",
                "u32",
                "float64",
                "N",
                "deg",
                "a" * 300,
            )
        )


@pytest.mark.parametrize("name", ["binary-frame", "ble-packets", "modbus", "display-text", "counted-text", "gyro"])
def test_kept_faults_of_a_spoilt_description(name):
    whole = msgspec.to_builtins(read_toml(shipped()[name], Description))
    whole = {k: v for k, v in whole.items() if v is not None}
    answers = {}
    with steps(ROOM) as said:
        for place, changed in variants(whole):
            try:
                msgspec.convert(changed, Description)
            except (msgspec.ValidationError, ValueError) as error:
                answers[place] = hashlib.sha256(str(error).encode()).hexdigest()[:8]
    kept("decoder-faults", name, [answers, said])


def test_kept_faults_of_lines_and_names():
    templates = (
        "{torque}{angle}",
        "{torque}5",
        "{torque}.",
        "{torque} {torque}",
        "{angle}",
        "{skip}{torque}",
        "{unit}{torque}",
        "{torque}{status}",
        "{sign}{torque}",
        "{counter}{torque}",
        "a}b",
        "{{}}{torque}",
        "{torque:7}{unit}",
        "{Torque}",
        "{torque:101}",
        "{torque:100}x",
        "{torque}\n",
        "{status}{status2} {torque}",
        "{torque},",
    )
    form = LINES["plain"][0]
    replace = msgspec.structs.replace
    kept("decoder-other", "templates", {t: template_faults(replace(form, template=t)) for t in templates})
    more = [
        {"thousands": ".", "decimal": "."},
        {"counter_step": 5, "counter_modulus": 5},
        {"counter_modulus": 10**15},
        {"counter_modulus": 10**15 + 1},
        {"checksum": "xor", "check": LINES["sum-8 big"][0].check},
    ]
    kept("decoder-other", "lines", [template_faults(replace(form, **one)) for one in more])
    kept("decoder-other", "names", name_faults(["a", "A" * 40, "A" * 41, "1a", "a-b", "late", "counter", ""]))
    sizes = (0.0, 1e-12, 0.9e-12, 1e12, 1.1e12, -1e12, 1.0)
    kept("decoder-other", "scales", [scale_faults("x", a, b) for a, b in product(sizes, sizes)])


@pytest.mark.parametrize(
    "text",
    [
        "",
        "ZERO\\r\\n",
        "hex: 02 53 03",
        "hex:2",
        "\\x41\\t\\\\",
        "\\x4",
        "\\x",
        "\\",
        "é",
        "a" * 256,
        "a" * 257,
        "\\x4g",
        "hex:" + "00" * 257,
    ],
)
def test_kept_command_bytes(text):
    try:
        answer = command_bytes(text)
    except HeldwheelError as error:
        answer = str(error)
    kept("decoder-commands", text, answer)


def test_kept_reference_of_the_keys():
    tables = description_keys.tables()
    kept(
        "decoder-other",
        "keys",
        [(t.name, t.about[:20], [(k.name, k.holds, k.default) for k in t.keys]) for t in tables],
    )
    kept("decoder-other", "page", hashlib.sha256(description_keys.markdown().encode()).hexdigest())


def test_kept_ends_of_what_is_told_and_taken():
    """As many words as are told, as long a unit as is shown, as large a packet as is possible."""
    form, _ = LINES["status"]
    words = b"".join(b"W%d,+1.00 lbf.in\r\n" % n for n in range(23))
    units = b"".join(b"ST,+1.00 %s\r\n" % (b"u" * n) for n in (19, 20, 21, 22))
    answers = [said_of(LineDecoder(form, "lbf·in"), [[data]]) for data in (words, units)]
    torque = PlacedNumber(name="torque", type="s16")
    for size in (255, 256, 257, 511, 512):
        for head in (0, 1):
            try:
                answers.append(layout_faults(Packet(fields=(torque,), samples=size, samples_at=head)))
            except (msgspec.ValidationError, ValueError) as error:
                answers.append(str(error)[:60])
    lone = PlacedNumber(name="torque", type="s16", per="packet")
    whole = Packet(fields=(lone,), samples=1, samples_at=2)
    answers += [
        [whole.stride, whole.length],
        layout_faults(whole),
        said_of(NotificationDecoder(whole), [[b"\x01\x02\x03", b"\x01\x02"]]),
    ]
    counted, _ = LINES["counted"]
    for bad in (b"-1,2,30", b"-0,2,30", b"1000000000000000,2,30", b"999999999999999,2,30", b"00,2,30"):
        sent = b"".join(b"%d,%d,10\r\n" % (n % 10, n) for n in range(40))
        large = msgspec.structs.replace(counted, counter_modulus=None)
        answers.append(said_of(LineDecoder(large, "N·m"), [[sent], [sent + bad + b"\r\n" + sent]]))
    kept("decoder-other", "ends", answers)
