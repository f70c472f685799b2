"""Layouts of many kinds and the bytes that such devices send, sound and broken, put together by counting."""

from __future__ import annotations

import struct
from itertools import product

from logger.decoder.crc import CHECK_BYTES, check
from logger.decoder.layouts import CheckSum, CounterField, Frame, LengthField, Packet, PlacedNumber, StatusField
from logger.decoder.template import LineCheck, LineFormat, NumberField, StatusWords

# ---------------------------------------------------------------------- lines: a format and the lines sent
WORDS = StatusWords(
    ok=("ST", "US"), negative=("CCW",), overload=("OL", "HI"), error=("ER",), stale=("H",), battery_low=("LB",)
)
SIDES = StatusWords(ok=("CW",), negative=("CCW",))
LINES: dict[str, tuple[LineFormat, list[bytes]]] = {
    "plain": (
        LineFormat(template="{torque}"),
        [
            b"1.5",
            b"-2.25",
            b"+3",
            b" 4.0 ",
            b"",
            b".5",
            b"-.5",
            b"5.",
            b"1e3",
            b"1.2.3",
            b"OL",
            b"+OL",
            b"-OL",
            b"OLX",
            b"----",
            b"___",
            b"9.91e37",
            b"-9.9e37",
            b"9.9E+37",
            b"nan",
            b"inf",
            b"12,5",
            b"--1",
            b"+-1",
            b"1 2",
            b"x",
            b"0001.500",
            b"1" * 20,
            b"1" * 600,
            b"99.9",
            b"7\x00",
            b"\xff8",
            b"8",
        ],
    ),
    "comma": (
        LineFormat(template="{torque};{angle}", decimal=",", thousands=".", fields={"angle": NumberField(unit="°")}),
        [
            b"1,5;2",
            b"1.234,5;3",
            b"12.34,5;3",
            b"1.234.567,25;0,5",
            b"1234,5;1",
            b"1.23;2",
            b"1,5",
            b"1,5;",
            b";1",
            b"-0,25;-1,5",
            b"1,5;2;3",
            b".123;4",
            b"1.2345;6",
            b"OL;7",
            b"1,5;OL",
        ],
    ),
    "quote": (
        LineFormat(template="{torque} {unit}", thousands="'"),
        [
            b"1'234.5 N.m",
            b"12'34 Nm",
            b"1'000'000 Nm",
            b"7Nm",
            b"7 lbf.in",
            b"8 kgf.cm",
            b"9 ft-lb",
            b"10 furlong",
            b"11",
            b"12 Nm ",
            b"OL Nm",
            b"13 lbf.ft",
            b"'1 Nm",
            b"1' Nm",
        ],
    ),
    "counted": (
        LineFormat(
            template="{counter},{torque},{angle}",
            terminator="CRLF",
            counter_modulus=10,
            fields={"angle": NumberField(unit="°", scale=0.1, offset=-5)},
        ),
        [
            b"8,1,10",
            b"9,2,20",
            b"0,3,30",
            b"1,4,40",
            b"4,5,50",
            b"4,5,50",
            b"3,6,60",
            b"5,7,70",
            b"15,8,80",
            b"-1,9,9",
            b"6,9,90",
            b"7.0,1,1",
            b"7,10,100",
            b"8,11,110",
            b"2,12,120",
            b"3,13,130",
        ],
    ),
    "twos": (
        LineFormat(template="N{counter:3} {torque}", counter_modulus=1000, counter_step=2),
        [b"N994 1", b"N996 2", b"N998 3", b"N000 4", b"N002 5", b"N008 6", b"N009 7", b"N010 8", b"N8 9", b"N012 1.5"],
    ),
    "status": (
        LineFormat(template="{status},{sign}{torque} {unit}", status=WORDS, overload=("OL", "------")),
        [
            b"ST,+  12.34 lbf.in",
            b"US,-0.50 lbf.in",
            b"CCW, 7 lbf.in",
            b"OL,+999.99 lbf.in",
            b"HI,------ lbf.in",
            b"ER,+0 lbf.in",
            b"H,+  1.00 lbf.in",
            b"LB,-  2.00 lbf.in",
            b"LB,-  3.00 lbf.in",
            b"??,+4.00 lbf.in",
            b"ST,+OL lbf.in",
            b"ST, OL lbf.in",
            b"ST,--5 lbf.in",
            b"ST,5 Nm",
            b"ST,5 in",
            b",5 lbf.in",
            b"st,5 lbf.in",
        ],
    ),
    "words": (
        LineFormat(
            template="{status:2},{torque:7}{unit},{status2}",
            status=StatusWords(ok=("ST",), overload=("OL",)),
            words={"status2": SIDES},
        ),
        [
            b"ST,+001.50N.m,CW",
            b"ST,+001.50N.m,CCW",
            b"OL,+000.00N.m,CW",
            b"ST,-001.5N.m,CW",
            b"ST,   2.25N.m,CW",
            b"ST,+001.50N.m,UP",
            b"XX,+001.50N.m,CW",
            b"ST,+001.50N.m",
        ],
    ),
    "hex": (
        LineFormat(
            template="{torque} {raw} {skip},{temperature}",
            fields={
                "torque": NumberField(form="signed hex", scale=0.01),
                "raw": NumberField(form="hex"),
                "temperature": NumberField(unit="°C", scale=0.5, offset=1),
            },
        ),
        [
            b"0FA0 FF x,20",
            b"F060 0 any thing,21",
            b"8000 7f ,22",
            b"7FFF a y,23",
            b"FFFFFFFFFFFF 1 z,24",
            b"G 1 z,2",
            b"1FFFFFFFFFFFF 1 z,24",
            b"10 20 z",
            b"80 1 z,-3",
            b"7 1 z,1",
        ],
    ),
    "xor": (
        LineFormat(template="${torque},{angle}", checksum="xor", ignore=("#", "!boot"), error=("?",)),
        [
            b"#1",
            b"!boot 1.2",
            *(b"$%s*%02X" % (text, check(text, "xor-8")) for text in (b"1.5,2", b"-3,4", b"?,1", b"OL,2", b"5,6,7")),
            b"$1.5,2*00",
            b"$1.5,2",
            b"$1.5,2*7",
            b"*00",
        ],
    ),
    "marks": (
        LineFormat(template="A{{1}}{torque}Z"),
        [b"A{1}5Z", b"A{1} 6 Z", b"A1 7Z", b"A{1}8", b"a{1}9Z", b"A{1}Z"],
    ),
}
for name, mark, form, covers in (
    ("crc-8/smbus", "*", "hex", True),
    ("crc-16/modbus", "", "bytes", False),
    ("sum-8", ";", "hex", False),
    ("lrc-8", "*", "bytes", True),
    ("crc-16/xmodem", "*", "hex", False),
    ("sum-16", "/", "bytes", False),
):
    for order in ("big", "little"):
        shape = LineCheck(name=name, mark=mark, form=form, covers_mark=covers, covers_from=1, order=order)
        sent = []
        for text in (b":1.5", b":-22.25", b":OL", b":+3"):
            value = check((text + (mark.encode() if covers else b""))[1:], name).to_bytes(CHECK_BYTES[name], order)
            if b"\n" not in value and b"\r" not in value:
                sent.append(text + mark.encode() + (value.hex().upper().encode() if form == "hex" else value))
        sent += [sent[0][:-1], sent[0][:-1] + b"!", sent[1].replace(b"2", b"3"), b":9"]
        LINES[f"{name} {order}"] = LineFormat(template=":{torque}", check=shape), sent

ENDS = {"CR": b"\r", "LF": b"\n", "CRLF": b"\r\n", "any": b"\n", "ETX": b"\r\n"}

# ---------------------------------------------------------------------- packets: a layout and its packets
TORQUE = PlacedNumber(name="torque", type="s16", unit="N·m", scale=0.01)
STATUS = StatusField(at=2, overload=1, error=2, stale=4, battery_low=8, simulated=128)
COUNTS = (0, 1, 2, 5, 5, 4, 6, 7, 65535, 0, 1, 300, 301, 302, 303, 9, 10, 11)


def _stream(layout: Packet) -> list[bytes]:
    flags = (0, 0, 1, 1, 2, 0, 4, 4, 8, 8, 0, 3, 0, 0, 128, 0, 0, 0)
    return [
        struct.pack(f"<HB{n}h", count, flag, *((37 * i + 411 * k) % 60000 - 30000 for k in range(n)))
        for i, (count, flag, n) in enumerate(zip(COUNTS, flags, (3, 1, 2, 3, 3) * 4, strict=False))
    ]


PACKETS: dict[str, tuple[Packet, list[bytes]]] = {}
_streamed = Packet(fields=(TORQUE,), samples=0, samples_at=3, counter=CounterField(at=0), status=STATUS)
PACKETS["stream"] = (_streamed, [*_stream(_streamed), b"", b"\x01", b"\x00\x00\x00\x01"])
_by_samples = Packet(
    fields=(TORQUE,), samples=0, samples_at=3, counter=CounterField(at=0, counts="samples", step=1, modulus=1000)
)
PACKETS["by samples"] = (
    _by_samples,
    [
        struct.pack(f"<HB{n}h", at % 1000, 0, *range(n))
        for at, n in (
            (990, 4),
            (994, 4),
            (998, 4),
            (1002, 2),
            (1004, 3),
            (1017, 2),
            (1019, 1),
            (1019, 1),
            (1012, 2),
            (1020, 5),
        )
    ],
)
_fixed = Packet(
    fields=(
        PlacedNumber(name="torque", type="s24", order="big", unit="lbf·ft", scale=0.001, overload=8_000_000),
        PlacedNumber(name="angle", type="u16", at=3, unit="°", scale=0.1, missing=0xFFFF, offset=-10),
        PlacedNumber(name="temperature", type="s8", at=1, per="packet", unit="°C", scale=0.5),
    ),
    samples=2,
    samples_at=3,
    tail_bytes=3,
    count_at=0,
    status=StatusField(at=5, per="sample", overload=1, error=6),
    counter=CounterField(at=2, type="u8", step=3, modulus=240),
    check=CheckSum(name="crc-16/kermit", order="big"),
)


def _fixed_packet(count: int, torque: int, angle: int, bits: int, samples: int = 2) -> bytes:
    body = bytes([samples, (count * 7) % 256, count % 240])
    for k in range(2):
        body += ((torque + k) & 0xFFFFFF).to_bytes(3, "big") + struct.pack("<HB", angle + k, bits if k else 0)
    body += b"\x55"
    return body + check(body, "crc-16/kermit").to_bytes(2, "big")


PACKETS["fixed"] = (
    _fixed,
    [
        *(
            _fixed_packet(3 * i, t, a, b)
            for i, t, a, b in (
                (0, 1000, 3, 0),
                (1, -2000, 0xFFFE, 0),
                (2, 7_999_999, 5, 1),
                (3, 8_388_606, 7, 2),
                (5, -8_000_001, 1, 4),
                (79, 17, 2, 1),
                (80, 18, 2, 0),
                (81, 19, 2, 0),
            )
        ),
        _fixed_packet(3, 5, 5, 0, samples=1),
        _fixed_packet(6, 5, 5, 0)[:-1],
        _fixed_packet(9, 5, 5, 0)[:-1] + b"\x00",
    ],
)
for kind, order in product(
    ("u8", "u16", "u24", "u32", "s8", "s16", "s24", "s32", "float32", "float64", "sfloat", "float"), ("little", "big")
):
    _field = PlacedNumber(name="torque", type=kind, order=order, unit="N", radius_mm=450.0, scale=0.25)
    _raw = bytes((29 * i + 7) % 256 for i in range(96)) + b"\xff\x07\xfe\x07\x00\x08\x7f\x80\x00\xf0" + bytes(14)
    _special = bytes.fromhex("ff7f0700000080007ffffe008000020080000201000000")
    PACKETS[f"{kind} {order}"] = Packet(fields=(_field,), samples=0), [_raw, _special + b"\x00"]

# ---------------------------------------------------------------------- frames of a stream
FRAMES: dict[str, tuple[Frame, bytes]] = {}


def _checked(count: int, *torques: int, sync: bytes = b"\xaa\x55") -> bytes:
    body = bytes([2 * len(torques) + 1, count % 256]) + struct.pack(f"<{len(torques)}h", *torques)
    return sync + body + struct.pack("<H", check(body, "crc-16/modbus"))


FRAMES["checked"] = (
    Frame(
        sync="AA 55",
        length=LengthField(at=2, adds=5),
        packet=Packet(
            fields=(TORQUE,),
            samples=0,
            samples_at=4,
            tail_bytes=2,
            counter=CounterField(at=3, type="u8"),
            check=CheckSum(name="crc-16/modbus", covers_from=2),
        ),
    ),
    b"\x00\xaa\x00"
    + b"".join(_checked(i, 100 * i, -i) for i in range(6))
    + _checked(6, 1)[:-1]
    + b"\x00"
    + _checked(7, 5, 6, 7)
    + b"\xaa\x55\xff\x00"
    + _checked(8, 9)
    + b"\xaa"
    + _checked(12, 3)
    + b"\xaa\x55\x00"
    + _checked(12, 3)
    + _checked(11, 2)
    + b"\x13" * 900
    + _checked(13, 0x55AA - 65536 + 32768)
    + _checked(14, 4)[:4],
)
FRAMES["plain"] = (
    Frame(
        sync="7E",
        packet=Packet(
            fields=(PlacedNumber(name="torque", type="s16", order="big"),),
            samples=1,
            samples_at=2,
            counter=CounterField(at=1, type="u8"),
        ),
    ),
    b"\x7e\x00\x01"
    + b"".join(struct.pack(">BBh", 0x7E, i, 0x7E7E if i == 3 else i) for i in range(12))
    + b"\x7e"
    + b"".join(struct.pack(">BBh", 0x7E, 20 + i, -i) for i in range(5))
    + b"\x00" * 50
    + b"\x7e\x01",
)
FRAMES["long length"] = (
    Frame(
        sync="01 02 03",
        length=LengthField(at=3, type="u16", order="big", adds=0),
        packet=Packet(fields=(PlacedNumber(name="torque", type="float32"),), samples=0, samples_at=5),
    ),
    b"".join(
        b"\x01\x02\x03" + struct.pack(">H", 5 + 4 * n) + struct.pack(f"<{n}f", *(i + k / 8 for k in range(n)))
        for i, n in enumerate((1, 2, 3, 1, 1, 20))
    )
    + b"\x01\x02\x03\x00\x03"
    + b"\x01\x02\x01\x02\x03\xff\xff"
    + b"\x01\x02\x03\x00\x09"
    + struct.pack("<f", 2.5)
    + b"\x01\x02\x03\x00\x07xxxx",
)

FRAMES["nothing but garbage"] = (FRAMES["checked"][0], b"\x13" * 512)
