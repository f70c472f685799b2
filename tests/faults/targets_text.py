"""Fuzz targets: what people and files give as text: numbers, units, TOML records, levers, limits."""

from __future__ import annotations

import json
import math
import random
from decimal import Decimal
from typing import get_args, get_type_hints

import msgspec

from analysis.identify.ratio import CandidateList
from analysis.to_axle.fixtures import fixture_from
from analysis.verdict.limits import bounds_from, decide
from gui.models.settings import Choices
from logger.decoder.description import Description
from logger.edges.toml_file import format_toml, parse_toml
from logger.edges.units import (
    canonical_unit,
    column_unit,
    format_torque,
    parse_number,
    parse_quantity,
    parse_stud_circle,
    torque_factor,
)
from logger.errors import DescriptionError
from logger.header import Axle, Header, Lever, Limit, Sidecar
from tests.faults.fuzz import Target
from tests.faults.mutate import mutated, noise

_NUMBERS = [b"12", b"-.5", b"2.73E+2", b"3,25", b"-456.789E+6", b"+0012.340", b"1e-3", b"\xe2\x88\x9212"]
_QUANTITIES = [
    b"450mm", b"18 lbf\xc2\xb7ft", b"17,5 in", b"27.4 N\xc2\xb7m", b"-3 \xc2\xb0F", b"90 deg", b"12 kgf-cm",
    b"1.2e3 in_lb", b"2.5\"", b"40 kg", b"12 ms",
]  # fmt: skip
_UNITS = [b"Nm", b"N\xc2\xb7m", b"lbf\xc2\xb7ft", b"ft-lb", b"lbf_in", b"kgf cm", b"oz in", b"mN.m", b"dyn*cm"]
_CIRCLES = [b"5x114.3mm", b"4 x 4.25 in", b"114.3mm", b"5\xc3\x97100 mm", b"10X335mm"]


def _text(data: bytes) -> str:
    return data.decode("utf-8", "surrogateescape" if len(data) % 2 else "replace")


def _either(rng: random.Random, seeds: list[bytes]) -> str:
    return _text(noise(rng, 40) if rng.random() < 0.1 else mutated(rng, seeds, seeds))


def numbers(rng: random.Random) -> str:
    """A number is read as it is written, or refused."""
    text = _either(rng, _NUMBERS)
    value = parse_number(text)
    assert math.isfinite(value)
    written = text.strip().replace("\u2212", "-").replace(",", ".")
    if len(written.upper().partition("E")[2]) < 6:  # beyond that the oracle gives up
        assert value == float(Decimal(written)), f"{text!r} was read as {value}"
    return "read"


def quantities(rng: random.Random) -> str:
    """A quantity is finite and of the kind asked for, or refused."""
    kind = rng.choice(("torque", "length", "angle", "mass", "force", "time", "temperature"))
    value = parse_quantity(_either(rng, _QUANTITIES), kind, rng.choice((None, None, "mm", "N·m")))
    assert math.isfinite(value), "a quantity that is no finite number"
    return "read"


def units(rng: random.Random) -> str:
    """A unit is known or refused; what is known has one spelling, one factor and a plain column name."""
    text = _either(rng, _UNITS)
    assert all(c.isascii() and (c.isalnum() or c == "_") for c in column_unit(text))
    name, factor = canonical_unit(text), torque_factor(text)
    assert (canonical_unit(name), torque_factor(name)) == (name, factor)
    assert canonical_unit(column_unit(name)) == name
    assert "\n" not in format_torque(rng.uniform(-1e9, 1e9) * 10 ** rng.randint(-12, 12), text, rng.choice((None, 0.3)))
    return "read"


def stud_circles(rng: random.Random) -> str:
    """A stud circle has 3 to 10 studs and a positive, finite diameter, or is refused."""
    studs, diameter_m = parse_stud_circle(_either(rng, _CIRCLES))
    assert studs is None or 3 <= studs <= 10
    assert 0 < diameter_m < math.inf
    return "read"


# --- TOML -----------------------------------------------------------------------------------------------------------

HEADER = b"""schema = "heldwheel recording 1"
started = 2026-05-01T10:00:00+02:00
simulated = true
time_from = "device counter"
[job]
number = "A-17"
vehicle = "hill-climb saloon, yellow"
tags = {shim = 1.2, fill = "third"}
[axle]
tag = "rear 2"
ratio = 3.73
[test]
place = "car"
held = "other side"
gear = "neutral"
side = "left"
[lever]
fixture = "one stud"
length_mm = 450
length_mm_u = 2
stud_circle_mm = 114.3
studs = 5
angle_deg = 0
[limit]
quantity = "breakaway"
kind = "band"
unit = "lbf\xc2\xb7ft"
lower = 20
upper = 60
source = "club rule book, invented for this test"
page = "12"
[transducer]
unit = "lbf\xc2\xb7in"
sign = "signed"
capacity_nm = 200
accuracy_percent_of_reading = 0.5
gain = 1.002
certificate_date = 2026-01-31
[zero]
at = 2026-05-01T09:59:00+02:00
value_nm = 0.12
how = "lever off"
"""
SIDECAR = b"""simulated = true
tags = {fill = "third", cycles = 12}
[transducer]
capacity_nm = 135.6
gain = 0.998
[lever]
fixture = "hub centre"
[[corrections]]
at = 2026-05-02T08:00:00+02:00
reason = "the socket was not seated"
pull_start_s = 1.25
exclude = true
[[corrections]]
at = 2026-05-02T08:01:00+02:00
reason = "plateau begins later"
rotating_start_s = 3.5
rotating_end_s = 9
"""
DESCRIPTION = b"""schema = "heldwheel transducer 1"
name = "gauge with frames"
link = "serial"
[transducer]
unit = "N\xc2\xb7m"
capacity_nm = 200
[serial]
baud = 115200
parity = "none"
[frame]
sync = "AA 55"
[frame.packet]
samples = 4
samples_at = 5
tail_bytes = 2
fields = [{name = "torque", type = "s16", scale = 0.01, overload = 30000},
  {name = "angle", type = "u16", at = 2, unit = "deg"}]
counter = {at = 2, type = "u16", counts = "samples"}
status = {at = 4, overload = 1, battery_low = 2, simulated = 128}
check = {name = "crc-16/modbus", covers_from = 2}
[commands.zero]
send = 'ZERO\\r\\n'
does = "takes zero"
[commands.start]
send = "hex: 02 53 03"
"""
LINES = b"""name = "text gauge"
[transducer]
unit = "lbf\xc2\xb7in"
[lines]
template = "{counter},{torque} {unit},{angle},{status}"
terminator = "CRLF"
decimal = "."
overload = ["OL", "----"]
ignore = ["#"]
counter_modulus = 65536
checksum = "xor"
fields = {angle = {unit = "deg", scale = 0.1}}
[lines.status]
ok = ["", "ST"]
overload = ["OV"]
"""
MODBUS = b"""name = "panel"
link = "modbus"
[modbus]
device = 3
registers = [{name = "torque", address = 10, type = "s32", scale = 0.001, missing = 2147483647},
  {name = "angle", address = 12}]
"""
NOTIFICATION = b"""name = "radio gauge"
link = "ble"
[ble]
service = "0000185a-0000-1000-8000-00805f9b34fb"
characteristic = "00002c0b-0000-1000-8000-00805f9b34fb"
[notification]
samples = 2
samples_at = 3
count_at = 2
fields = [{name = "torque", type = "s32", scale = 0.01, missing = 2147483647}]
counter = {at = 0, type = "u16"}
"""
_LIMIT = [
    b'quantity = "rotating mean"\nkind = "min"\nunit = "N.m"\nlower = 27.1\nsource = "x"\n',
    b'quantity = "breakaway"\nkind = "ratio min"\nunit = "1"\nlower = 2\nsource = "s"\n',
]
_LEVER = [
    b'fixture = "force at radius"\nradius_mm = 400\npull_angle_deg = 5\nweight_kg = 1\ncentroid_mm = 200\n',
    b'fixture = "one stud"\nlength_mm = 450\nchord_mm = 67.2\nchord_apart = 1\nstuds = 5\n'
    b"grip_mark_mm = 500\ngauge_mm = 90\n",
]
_CHOICES = [b'palette = "dark"\nscale = 1.25\nwindow = [0, 0, 900, 700]\nseen = ["a"]\n']
_AXLE = [
    b'tag = "rear"\ntype = "clutch plate"\nratio = 3.73\npropshaft_turns = 7.5\nleft_turns = 2\nright_turns = 2.01\n'
]
SEEDS_OF: dict[type[msgspec.Struct], list[bytes]] = {
    Header: [HEADER],
    Sidecar: [SIDECAR],
    Description: [DESCRIPTION, LINES, MODBUS, NOTIFICATION],
    Limit: _LIMIT,
    Lever: _LEVER,
    Axle: _AXLE,
    Choices: _CHOICES,
    CandidateList: [b'[[axle]]\nname = "A"\nratio = 3.73\n'],
}
TOML_SEEDS = [seed for seeds in SEEDS_OF.values() for seed in seeds]
_TOKENS = [
    b"[job]\n", b"[[corrections]]\n", b"1979-05-27T07:32:00Z", b"1979-05-27", b"07:32:00", b"true", b'"""', b"{a=1}",
    b"[1,2]", b"a.b.c = 1\n", b"[" * 300, b"{a=" * 150, b"\\u0000", b"inf", b"nan", b"0b1", b"1e400", b"x = 1\n" * 50,
]  # fmt: skip


def _tree(rng: random.Random, depth: int = 0) -> object:
    """Give a random value that TOML can hold; keys that records know are likely."""
    kind = rng.randrange(7 if depth < 4 else 5)
    if kind == 0:
        return rng.choice((0, 1, -1, 2**63, 10**30, 0.0, -0.0, 1e308, 5e-324, math.nan, math.inf, 27.1, 0.1))
    if kind == 1:
        return rng.choice(
            ("", "N·m", "lbf·ft", "one stud", "a" * 300, "\x7f\u202e", "breakaway", "band", "torque", "AA 55")
        )
    if kind == 2:
        return rng.random() < 0.5
    if kind in (3, 4):
        return rng.randrange(-3, 70000)
    if kind == 5:
        return [_tree(rng, depth + 1) for _ in range(rng.randrange(4))]
    return {rng.choice(_KEYS): _tree(rng, depth + 1) for _ in range(rng.randrange(6))}


def _all_keys() -> list[str]:
    keys = {"a", "torque", ""}
    waiting: list[type] = list(SEEDS_OF)
    for record in waiting:
        for field in msgspec.structs.fields(record):
            keys.add(field.encode_name)
            inner = msgspec.inspect.type_info(field.type)
            for part in (inner, *getattr(inner, "types", ())):
                struct = getattr(part, "cls", None)
                if isinstance(struct, type) and issubclass(struct, msgspec.Struct) and struct not in waiting:
                    waiting.append(struct)
    return sorted(keys)


_KEYS = _all_keys()


def _made_toml(rng: random.Random) -> str:
    import tomli_w

    return tomli_w.dumps({rng.choice(_KEYS): _tree(rng, 1) for _ in range(rng.randrange(8))})


def toml(rng: random.Random) -> str:
    """A TOML file becomes a record that can be written and read back equal, or all its faults are told, with places."""
    record = rng.choice(list(SEEDS_OF))
    near = SEEDS_OF[record] if rng.random() < 0.8 else TOML_SEEDS  # mostly of its own kind, to get further
    text = _made_toml(rng) if rng.random() < 0.2 else mutated(rng, near, _TOKENS).decode("utf-8", "replace")
    try:
        value = parse_toml(text, record, "x.toml")
    except DescriptionError as error:
        told = str(error)
        if not error.faults or len(told) > 40_000 or not all(c == "\n" or c.isprintable() for c in told):
            raise ValueError(f"empty, endless or with control characters: {told[:300]!r}") from error
        raise
    written = format_toml(value)  # an empty table says nothing and is not written
    assert format_toml(parse_toml(written, record, "again")) == written
    return "read"


def _made(rng: random.Random, record: type[msgspec.Struct], texts: dict[str, list[object]]) -> msgspec.Struct:
    """Fill a record with values of its types, sensible, absurd or absent."""
    values: dict[str, object] = {}
    for field in msgspec.structs.fields(record):
        if field.name in texts:
            values[field.name] = rng.choice(texts[field.name])
            continue
        if not field.required and rng.random() < 0.4:
            continue
        odd = rng.choice((0.0, -1.0, 1e300, 1e-300, -1e300, 5e-324, 450.0, 114.3, 90.0, 45.0, 1e-3, 12.0))
        try:
            values[field.name] = msgspec.convert(rng.choice((odd, int(odd) if abs(odd) < 1e9 else 5)), field.type)
        except msgspec.ValidationError:
            options = getattr(field.type, "__args__", ())
            words = [w for option in options for w in getattr(option, "__args__", (option,)) if isinstance(w, str)]
            if words:
                values[field.name] = rng.choice(words)
    return record(**values)


_FIXTURES: dict[str, list[object]] = {
    "fixture": list(get_args(get_type_hints(Lever)["fixture"])),
}
_LIMITS: dict[str, list[object]] = {
    "quantity": ["breakaway", "rotating mean", "rotating maximum"],
    "kind": ["min", "max", "band", "ratio min"],
    "unit": ["N·m", "lbf·ft", "lbf.in", "furlong", "", "1", "kgf·cm"],
    "source": ["manual, invented", "", " "],
}


def levers(rng: random.Random) -> str:
    """A lever becomes a fixture with finite factor, slopes and rest of weight, or its faults are told."""
    fixture = fixture_from(_made(rng, Lever, _FIXTURES))
    assert math.isfinite(fixture.factor)
    assert fixture.factor > 0
    assert all(math.isfinite(slope) for slope in fixture.slopes.values())
    assert all(math.isfinite(i.value) and math.isfinite(i.u) and i.u >= 0 for i in fixture.inputs)
    assert math.isfinite(fixture.unsensed_most_nm)
    return "read"


def limits(rng: random.Random) -> str:
    """A limit becomes positive finite bounds that give a result with a probability, or its faults are told."""
    bounds = bounds_from(_made(rng, Limit, _LIMITS))
    assert all(b is None or 0 < b < math.inf for b in (bounds.lower, bounds.upper))
    value, u = rng.choice((0.0, -5.0, 27.1, 1e300, 1e-300)), rng.choice((0.0, 0.3, 1e-300, 1e300))
    result = decide(value, u, bounds, dof=rng.choice((1, 2, 9, math.inf)))
    assert 0 <= result.probability <= 1
    json.dumps(result.to_json(), allow_nan=False)
    return "read"


TARGETS = [
    Target("numbers", numbers, long_s=6),
    Target("quantities", quantities, long_s=8),
    Target("units", units, long_s=2),
    Target("stud circles", stud_circles, long_s=2),
    Target("TOML records", toml, long_s=14),
    Target("levers", levers, long_s=30),
    Target("limits", limits, long_s=21),
]
