"""Turns good input into hostile input: bytes flipped, cut, repeated, spliced, numbers made absurd."""

from __future__ import annotations

import random
import re
from collections.abc import Sequence

MOST_BYTES = 20_000  # a case stays small, so that there can be many of them

_NUMBER = re.compile(rb"[-+]?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?")
_ODD_NUMBERS = (
    b"0", b"-0", b"-1", b"1e308", b"-1e308", b"1e-320", b"1e999", b"nan", b"inf", b"-inf", b"9223372036854775807",
    b"9223372036854775808", b"18446744073709551616", b"-2147483649", b"0x7FFFFFFF", b"1_000", b"1,234", b"1.234,5",
    b"00012", b"1e", b".", b"-", b"", b"1" * 400, b"0." + b"0" * 400 + b"1", "١٢٣".encode(),
)  # fmt: skip
_ODD_TEXTS = (
    b"\x00", b"\xff\xfe", b"\xef\xbb\xbf", b"\r", b"\n", b"\r\n", b"\x1a", b"\xc0\xaf", b"\xed\xa0\x80", b"\x85",
    "\u2028".encode(), "\u202e".encode(), "﻿".encode(), b'"', b"'", b"'''", b'"""', b"\\", b"#", b",", b";", b"\t",
    b"=", b"[", b"]", b"[[", b"{", b"}", b"..", b"../../../../etc/passwd", b"=cmd|' /C calc'!A0",
    b"<script>alert(1)</script>", b"%s%n", b"${x}", b"{0}", b"{{7*7}}", b"__import__('os')",
    b"# batch rows=1 crc32=00000000\n", b"# closed samples=0 sha256=\n",
)  # fmt: skip


def mutated(rng: random.Random, seeds: Sequence[bytes], tokens: Sequence[bytes] = ()) -> bytes:
    """Give one hostile variant of one of the seeds; or what a guided source of chance gives instead."""
    given = getattr(rng, "raw", lambda: None)()
    if given:
        return bytes(given[:MOST_BYTES])
    data = bytearray(rng.choice(seeds))
    for _ in range(1 + int(rng.expovariate(0.5))):
        _STEPS[rng.randrange(len(_STEPS))](rng, data, seeds, tokens)
    return bytes(data[:MOST_BYTES])


def noise(rng: random.Random, most: int = 600) -> bytes:
    """Give random bytes, or bytes of a small alphabet (which get further into a parser)."""
    length = rng.randrange(most)
    if rng.random() < 0.5:
        return rng.randbytes(length)
    alphabet = rng.choice((b"0123456789.,+-eE \r\n", b"\x00\x01\x7f\x80\xff", b"[]{}=\"'#\n ab1.,", b"OL-+ \r\n"))
    return bytes(rng.choices(alphabet, k=length))


def _span(rng: random.Random, data: bytearray) -> tuple[int, int]:
    begin = rng.randrange(len(data) + 1)
    return begin, min(len(data), begin + int(rng.expovariate(0.1)) + 1)


def _flip(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    if data:
        data[rng.randrange(len(data))] ^= 1 << rng.randrange(8)


def _set(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    if data:
        data[rng.randrange(len(data))] = rng.randrange(256)


def _cut(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    begin, end = _span(rng, data)
    del data[begin:end]


def _truncate(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    del data[rng.randrange(len(data) + 1) :]


def _repeat(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    begin, end = _span(rng, data)
    data[begin:begin] = data[begin:end] * rng.choice((1, 1, 2, 10, 200))


def _move(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    begin, end = _span(rng, data)
    taken = data[begin:end]
    del data[begin:end]
    at = rng.randrange(len(data) + 1)
    data[at:at] = taken


def _splice(rng: random.Random, data: bytearray, seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    other = rng.choice(seeds)
    data[rng.randrange(len(data) + 1) :] = other[rng.randrange(len(other) + 1) :]


def _insert(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], tokens: Sequence[bytes]) -> None:
    at = rng.randrange(len(data) + 1)
    data[at:at] = rng.choice((*_ODD_TEXTS, *_ODD_NUMBERS, *tokens, rng.randbytes(rng.randrange(9))))


def _renumber(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    found = list(_NUMBER.finditer(data))
    if found:
        one = rng.choice(found)
        data[one.start() : one.end()] = rng.choice((*_ODD_NUMBERS, str(rng.randrange(-5, 300)).encode()))


def _drop_line(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    lines = data.split(b"\n")
    del lines[rng.randrange(len(lines))]
    data[:] = b"\n".join(lines)


def _swap_lines(rng: random.Random, data: bytearray, _seeds: Sequence[bytes], _tokens: Sequence[bytes]) -> None:
    lines = data.split(b"\n")
    i, j = rng.randrange(len(lines)), rng.randrange(len(lines))
    lines[i], lines[j] = lines[j], lines[i]
    data[:] = b"\n".join(lines)


_STEPS = (
    _flip, _set, _cut, _truncate, _repeat, _move, _splice, _insert, _insert, _renumber, _renumber,
    _drop_line, _swap_lines,
)  # fmt: skip
