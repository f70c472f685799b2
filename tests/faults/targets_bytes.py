"""Fuzz targets: bytes from a device: text lines, frames, notifications, with honest and hostile descriptions."""

from __future__ import annotations

import random
import struct
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from logger.decoder.build import build_decoder
from logger.decoder.crc import CHECK_BYTES, check
from logger.decoder.description import Description, command_bytes
from logger.decoder.floats import WIDTH
from logger.decoder.lines import LineDecoder
from logger.decoder.notifications import NotificationDecoder
from logger.decoder.registers import RegisterDecoder, plan
from logger.decoder.standard import TORQUE, presentation_format, uuid
from logger.edges.toml_file import format_toml, parse_toml
from logger.learn.learn import learn
from logger.links.ble_pick import Offer, pick_standard
from logger.samples import Chunk, Decoded, Decoder, EventKind
from tests.faults.fuzz import Target
from tests.faults.mutate import mutated, noise
from tests.faults.targets_text import DESCRIPTION, NOTIFICATION

MOST = 1_500  # bytes of a stream: a hundred lines show what a hundred thousand would
MOST_FRAMES = 500  # bytes: twenty frames; every false start costs
LINE_SEEDS = [
    b"12.34\r\n12.35\r\n12.36\r\n-0.5\r\nOL\r\n13.0\r\n" * 3,
    b"".join(b"%d,%.2f lbf.in,%.1f,ST\r\n" % (n, 20 + n / 9, n) for n in range(65530, 65550)),
    b"ST,-  12.34 lbf.in\r\nST,+  12.34 lbf.in\r\nUS,   0.00 Nm\r\nOL,      0 N.m\r\n",
    b"+000.123N.m\n+000.124N.m\n+OL\n----\n9.9E37\n9.91E37\n1.5e-3 kgf cm\n",
    b"0,1.0\r1,1.1\r2,1,2\r\n\x003,1.3\n\x02 4,1.4\x03\n",
    b"1,27.10 lbf.in,5,ST*00\r\n",
]  # fmt: skip
LINE_FORMATS = [
    'template = "{torque}"',
    'template = "{torque}"\nterminator = "CRLF"\nerror = ["----"]',
    'template = "{counter},{torque} {unit},{angle},{status}"\ncounter_modulus = 65536',
    'template = "{counter},{torque} {unit},{angle},{status}"\nchecksum = "xor"',
    'template = "{status:2},{sign}{torque:7} {unit}"\nterminator = "any"',
    'template = "{torque}{unit}"\nterminator = "LF"',
    'template = "{counter},{torque}"\nterminator = "CR"\nignore = ["#"]',
    'template = "{counter},{torque}"\ndecimal = ","',
    'template = "{torque} {skip}"',
]
_TEMPLATE_TOKENS = [
    b"{torque}", b"{counter}", b"{unit}", b"{status}", b"{sign}", b"{skip}", b"{angle}", b"{torque:7}", b"{status:2}",
    b"{", b"}", b"{}", b"{:}", b"{torque:0}", b"{torque:99999}", b" ", b",", b";", b"\\t", b"\\\\u0002", b"{x:-1}",
    b"{torque!r}", b"{__class__}",
    b"*", b"(a+)+$", b".*", b"%s", b"0", b"-", b"OL",
]  # fmt: skip


def sound(decoder: Decoder, decoded: Decoded, chunks: int) -> None:
    """Check everything that a ``Decoded`` promises."""
    n = len(decoded)
    assert list(decoded.columns) == [c.name for c in decoder.columns]
    assert all(column.shape == (n,) and column.dtype == np.float64 for column in decoded.columns.values())
    assert not np.isinf(decoded.columns["torque"]).any(), "an infinite torque"
    assert n == 0 or (decoded.chunk_of.min() >= 0 and decoded.chunk_of.max() < chunks)
    assert (np.diff(decoded.chunk_of) >= 0).all()
    if decoded.counter is not None:
        assert decoded.counter.shape == (n,)
        assert (np.diff(decoded.counter) > 0).all(), "the counter does not advance"
    places = [event.index for event in decoded.events]
    assert all(0 <= place <= n for place in places), f"an event at {places} of {n} samples"
    assert places == sorted(places)
    assert all(event.text.isprintable() and len(event.text) < 400 for event in decoded.events), "a hostile event text"
    assert all(event.count >= 0 for event in decoded.events)


def cut(rng: random.Random, data: bytes) -> list[bytes]:
    """Cut a stream anywhere, also into single bytes."""
    if len(data) < 500 and rng.random() < 0.1:
        return [data[i : i + 1] for i in range(len(data))]
    places = sorted(rng.randrange(len(data) + 1) for _ in range(rng.randrange(8)))
    return [data[a:b] for a, b in zip([0, *places], [*places, len(data)], strict=True)]


@dataclass(frozen=True, slots=True)
class Stream:
    """All that a decoder made of a stream."""

    columns: dict[str, np.ndarray]
    counter: np.ndarray | None
    events: frozenset[EventKind]


def drained(rng: random.Random, decoder: Decoder, chunks: Sequence[bytes]) -> Stream:
    """Feed chunks in drains of any number, checking each, and give all samples and counters."""
    parts: list[Decoded] = []
    i = 0
    while i < len(chunks):
        drain = chunks[i : i + rng.choice((1, 1, 2, 5, 50))]
        parts.append(decoder.feed(*drain))
        sound(decoder, parts[-1], len(drain))
        i += len(drain)
    sound(decoder, decoder.feed(), 1)
    columns = {c.name: np.concatenate([p.columns[c.name] for p in parts] or [np.empty(0)]) for c in decoder.columns}
    counters = [p.counter for p in parts if p.counter is not None and len(p)]
    told = frozenset(event.kind for part in parts for event in part.events)
    return Stream(columns, np.concatenate(counters) if counters else None, told)


def _alike(rng: random.Random, description: Description, data: bytes) -> str:
    """However a stream is cut, the samples are the same; after a reset the decoder still works.

    What comes late is put back in its place within a drain, and dropped and told when its place is already given out:
    only then may the samples depend on the cuts.
    """
    data = data[:MOST]
    first, second = build_decoder(description), build_decoder(description)
    whole, parts = drained(rng, first, [data]), drained(rng, second, cut(rng, data))
    late = EventKind.REORDERED in whole.events | parts.events
    if not late:
        for name, column in whole.columns.items():
            assert np.array_equal(column, parts.columns[name], equal_nan=True), f"{name} depends on the cuts"
        assert np.array_equal(whole.counter, parts.counter), "the counter depends on the cuts"
        assert first.simulated == second.simulated
    if description.lines is not None:  # what is read fast is what the exact path reads, line by line
        exact = LineDecoder(description.lines, description.unit, description.simulated_mark)
        exact._fast = False
        slow = drained(rng, exact, [data])
        for name, column in whole.columns.items():
            assert np.array_equal(column, slow.columns[name], equal_nan=True), f"{name}: read fast is not read exactly"
        assert np.array_equal(whole.counter, slow.counter), "counters: read fast is not read exactly"
    if rng.random() < 0.2:
        first.expect(rng.choice((0.0, 3.5, 1e9)))
        sound(first, first.reset(), 1)
        drained(rng, first, [data])
    return "late" if late else "read" if len(whole.columns["torque"]) else "no sample"


@cache
def _described(layout: str) -> Description:
    status = '[lines.status]\nok = ["", "ST"]\noverload = ["OL"]\n'
    return parse_toml(f'name = "x"\n[lines]\n{layout}\n{status}', Description, "x")


def lines(rng: random.Random) -> str:
    """Text lines of honest descriptions, hostile bytes."""
    data = noise(rng) if rng.random() < 0.1 else mutated(rng, LINE_SEEDS, LINE_SEEDS)
    return _alike(rng, _described(rng.choice(LINE_FORMATS)), data)


def templates(rng: random.Random) -> str:
    """Hostile templates and hostile lines that nearly fit them."""
    template = b"".join(rng.choices(_TEMPLATE_TOKENS, k=rng.randrange(1, 7)))
    if b"torque" not in template and rng.random() < 0.9:
        template += b"{torque}"
    text = (b'name = "x"\n[lines]\ntemplate = "%s"\n' % template).decode("utf-8", "replace")
    if rng.random() < 0.3:
        text += 'overload = ["OL", "0"]\nerror = ["-", "e"]\n'
    description = parse_toml(text, Description, "x.toml")
    line = template
    for name in (b"{torque}", b"{torque:7}", b"{counter}", b"{angle}"):
        line = line.replace(name, rng.choice((b"12.5", b"  -3.25", b"OL", b"0", b"1e5")))
    line = line.replace(b"{unit}", rng.choice((b"Nm", b"lbf.in"))).replace(b"{sign}", rng.choice((b"-", b"+", b" ")))
    line += rng.choice((b"\r\n", b"\n"))
    return _alike(rng, description, mutated(rng, [line * 4, b" " * 500 + line], [line]))


# --- binary ---------------------------------------------------------------------------------------------------------

_FRAMED = parse_toml(DESCRIPTION.decode(), Description, "x")
_NOTIFIED = parse_toml(NOTIFICATION.decode(), Description, "x")


def _frame(number: int) -> bytes:
    body = struct.pack("<HB", (4 * number) & 0xFFFF, 128 if number % 9 == 0 else 0)
    body += b"".join(struct.pack("<hH", 2700 + number + k, 10 * number % 65536) for k in range(4))
    return b"\xaa\x55" + body + struct.pack("<H", check(body, "crc-16/modbus"))


FRAMES = [b"".join(_frame(n) for n in range(16380, 16390)), _frame(0) + b"\xaa\xaa\x55" + _frame(1), b"\xaa\x55" * 40]


def frames(rng: random.Random) -> str:
    """Frames of an honest description, hostile bytes; a damaged frame is never read."""
    data = noise(rng) if rng.random() < 0.1 else mutated(rng, FRAMES, [b"\xaa\x55", b"\xaa"])
    return _alike(rng, _FRAMED, data[:MOST_FRAMES])


def notifications(rng: random.Random) -> str:
    """A Bluetooth device that lies: wrong lengths, counts and counters, values at the edges, packets twice or late."""
    packets = [struct.pack("<HB", n & 0xFFFF, 2) + struct.pack("<2i", 2700 + n, 2701 + n) for n in range(65530, 65550)]
    for _ in range(rng.randrange(6)):
        at = rng.randrange(len(packets))
        change = rng.randrange(5)
        if change == 0:
            packets[at] = mutated(rng, packets)
        elif change == 1:
            packets.insert(at, packets[rng.randrange(len(packets))])
        elif change == 2:
            packets[at] = packets[at][: rng.randrange(12)]
        elif change == 3:
            packets[at] = packets[at][:3] + struct.pack("<2i", rng.choice((0x7FFFFFFF, -(2**31), 0, -1)), 0x7FFFFFFF)
        elif len(packets) > 1:
            del packets[at]
    decoder = build_decoder(_NOTIFIED)
    torque = drained(rng, decoder, packets).columns["torque"]
    assert np.nanmax(np.abs(torque), initial=0) <= 2**31 / 100
    decoder.reset()
    drained(rng, decoder, packets[:5])
    return "read" if len(torque) else "no sample"


_TYPES = ("u8", "u16", "u24", "u32", "s8", "s16", "s24", "s32", "float32", "float64", "sfloat", "float")
_ODD = {
    "at": (511, 3, 20), "samples_at": (0, 511), "tail_bytes": (0, 511), "samples": (0, 512), "sample_bytes": (1, 512),
    "count_at": (9, 511), "scale": (1e300, -1.0, 5e-324, 0.0), "offset": (1.5, -1e308), "missing": (-1, 2**70),
    "radius_mm": (350.0, 0.0, 1e308, -1.0),
    "overload": (1, 2**80), "step": (2, 2**40, 2**64), "modulus": (2, 3, 2**64),
    "covers_from": (9, 511), "per": ("packet", "sample"),
    "type": _TYPES, "order": ("big", "little"), "adds": (0, 9, 600),
}  # fmt: skip


def _layout(rng: random.Random) -> dict[str, object]:
    """Give a sound random packet layout."""
    fields: list[dict[str, object]] = []
    at = 0
    for name in ["torque", *rng.sample(["angle", "rate", "temperature"], rng.randrange(3))]:
        kind = rng.choice(_TYPES)
        fields.append({"name": name, "type": kind, "at": at, "order": rng.choice(("big", "little")), "scale": 0.01})
        at += WIDTH[kind] + rng.randrange(2)
    packet: dict[str, object] = {
        "fields": fields,
        "samples_at": 12,
        "samples": rng.choice((1, 2, 5)),
        "sample_bytes": at,
    }
    checks = rng.choice(("crc-16/modbus", "crc-32", "xor-8", "sum-8", "crc-8/smbus"))
    for key, value in {
        "count_at": 2,
        "counter": {"at": 3, "type": rng.choice(_TYPES[:4]), "counts": rng.choice(("packets", "samples"))},
        "status": {"at": 8, "type": rng.choice(_TYPES[:4]), "per": rng.choice(("packet", "packet", "sample")),
                   "overload": rng.choice((0, 1, 2**32 - 1)), "error": 2, "stale": 4, "battery_low": 8,
                   "simulated": 16},
        "check": {"name": checks, "covers_from": rng.choice((0, 2))},
    }.items():  # fmt: skip
        if rng.random() < 0.4:
            packet[key] = value
    packet["tail_bytes"] = CHECK_BYTES[checks] if "check" in packet else rng.randrange(3)
    return packet


def _spoil(rng: random.Random, tree: dict[str, object]) -> None:
    """Make some of a layout's numbers absurd, add keys, drop keys."""
    for key, value in list(tree.items()):
        for part in value if isinstance(value, list) else [value]:
            if isinstance(part, dict):
                _spoil(rng, part)
        if rng.random() < 0.06:
            del tree[key]
        elif key in _ODD and rng.random() < 0.15:
            tree[key] = rng.choice(_ODD[key])
    if rng.random() < 0.15:
        key = rng.choice(list(_ODD))
        tree[key] = rng.choice(_ODD[key])


def layouts(rng: random.Random) -> str:
    """Hostile binary layouts are refused with reasons, or decode any bytes without trouble."""
    packet = _layout(rng)
    tree: dict[str, object] = {"name": "x", "link": "ble", "notification": packet}
    if rng.random() < 0.5:
        sync = rng.choice(("AA", "AA 55", "00", "zz", "", "00" * 9))
        tree = {"name": "x", "frame": {"sync": sync, "packet": packet}}
        if rng.random() < 0.3:
            tree["frame"] |= {"length": {"at": 2, "type": rng.choice(("u8", "u16")), "adds": 0}}  # type: ignore[operator]
    if rng.random() < 0.6:
        _spoil(rng, packet)
    import tomli_w

    description = parse_toml(tomli_w.dumps(tree), Description, "x.toml")
    layout = description.notification or description.frame.packet  # type: ignore[union-attr]
    length = layout.length or rng.randrange(1, 80)
    if description.notification is not None:
        decoder = build_decoder(description)
        lengths = [length if rng.random() < 0.9 else rng.randrange(600) for _ in range(rng.randrange(1, 12))]
        packets = [rng.randbytes(n) for n in lengths]
        return "read" if len(drained(rng, decoder, packets).columns["torque"]) else "no sample"
    head = description.frame.sync_bytes  # type: ignore[union-attr]
    data = b"".join(head + rng.randbytes(max(0, length - len(head))) for _ in range(6))
    return _alike(rng, description, mutated(rng, [data], [head]) if rng.random() < 0.5 else data)


def descriptors(rng: random.Random) -> str:
    """What a device says about its own format (0x2904), and texts that stand for bytes."""
    found = presentation_format(rng.randbytes(rng.choice((7, 7, 7, 7, rng.randrange(40)))))
    text = mutated(rng, [b"ZERO\\r\\n", b"hex: 02 53 03", b"\\x02S\\x03"]).decode("utf-8", "replace")
    if found is None:
        assert 0 < len(command_bytes(text)) <= 256
        return "command"
    assert found.scale > 0
    assert found.unit_name.isprintable()
    return "read"


def standards(rng: random.Random) -> str:
    """A device that describes itself by the open standards, and lies: any format, any exponent, any bytes."""
    offers = []
    for handle in range(rng.randrange(1, 4)):
        number = rng.choice((TORQUE, TORQUE, 0x2A6E, 0x2A19))
        name = uuid(number) if rng.random() < 0.5 else f"{rng.getrandbits(32):08x}-0000-1000-8000-000000000000"
        code = rng.choice((0x04, 0x06, 0x0E, 0x10, 0x14, 0x15, 0x16, 0x17, 0x07, 0x0F, rng.randrange(256)))
        unit = rng.choice((0x2741, 0x2741, 0x2723, rng.getrandbits(16)))
        said = struct.pack("<BbHBH", code, rng.choice((-2, -128, 127, 0, rng.randrange(-128, 128))), unit, 1, 0)
        formats = tuple(
            said if rng.random() < 0.8 else rng.randbytes(rng.randrange(12)) for _ in range(rng.randrange(3))
        )
        offers.append(Offer(uuid(0x185A), name, handle, rng.random() < 0.9, formats))
    pick = pick_standard(offers, rng.choice((None, 350.0)))
    if pick.packet is None:
        return "no packet"
    decoder = NotificationDecoder(pick.packet)
    right = pick.packet.length or 4
    packets = [rng.randbytes(right if rng.random() < 0.8 else rng.randrange(30)) for _ in range(rng.randrange(1, 20))]
    return "read" if len(drained(rng, decoder, packets).columns["torque"]) else "no sample"


_KINDS = ("s16", "u16", "s32", "u32", "float32", "float64")


def registers(rng: random.Random) -> str:
    """Hostile register maps are refused with reasons, or decode any answers without trouble."""
    parts = []
    for name in ["torque", *rng.sample(["angle", "rate", "temperature"], rng.randrange(4))]:
        part: dict[str, object] = {
            "name": name,
            "address": rng.choice((0, 1, 2, 7, 300, 65535)),
            "type": rng.choice(_KINDS),
        }
        for key, values in {
            "table": ("holding", "input"), "word_order": ("big", "little"), "byte_order": ("big", "little"),
            "scale": (0.001, 0.0, 1e300, -1.0, 5e-324), "offset": (1.5, 1e308), "missing": (-1, 32767, 2**70),
            "overload": (30000, 2**80, 0), "name": ("torque", "=1", "late", ""),
        }.items():  # fmt: skip
            if rng.random() < (0.15 if key != "name" else 0.03):
                part[key] = rng.choice(values)
        parts.append(part)
    import tomli_w

    text = tomli_w.dumps({"name": "x", "link": "modbus", "modbus": {"registers": parts}})
    description = parse_toml(text, Description, "x.toml")
    assert description.modbus is not None
    decoder = RegisterDecoder(description.modbus.registers)
    length = 2 * sum(block.count for block in plan(description.modbus.registers))
    answers = [rng.randbytes(length if rng.random() < 0.8 else rng.randrange(40)) for _ in range(rng.randrange(1, 12))]
    return "read" if len(drained(rng, decoder, answers).columns["torque"]) else "no sample"


def learning(rng: random.Random) -> str:
    """Whatever an unknown device sends, a sound description is proposed, or what is missing is said."""
    data = (
        noise(rng, 2000) if rng.random() < 0.2 else mutated(rng, [seed * 4 for seed in LINE_SEEDS], LINE_SEEDS)[:4000]
    )
    chunks = [Chunk(n / 50, part) for n, part in enumerate(cut(rng, data))]
    learned = learn(chunks)
    if learned.description is None:
        assert learned.unknown
        return "nothing learned"
    assert parse_toml(format_toml(learned.description), Description, "learned.toml") == learned.description
    drained(rng, build_decoder(learned.description), [data])
    return "read"


TARGETS = [
    Target("register maps", registers, long_s=35),
    Target("learning a device", learning, long_s=210),
    Target("Bluetooth standards", standards, long_s=18),
    Target("text lines", lines, long_s=56),
    Target("line templates", templates, long_s=18),
    Target("frames", frames, long_s=208),
    Target("notifications", notifications, long_s=162),
    Target("binary layouts", layouts, long_s=51),
    Target("descriptors and commands", descriptors, long_s=2),
]
