"""The check sum at the end of an unknown device's lines: found by trying the known ones on what came."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final, Literal, get_args

from logger.decoder.crc import CHECK_BYTES, CheckName, check
from logger.decoder.template import LineCheck
from logger.learn.lines import MIN_LINES

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from logger.decoder.floats import Order

TRIED: Final = 40  # distinct lines: an 8-bit check holds by chance once in 256
HOLD: Final = 0.9  # of the lines; some may have been hurt on the way
_HEX: Final = re.compile(rb"[0-9A-Fa-f]+")
_NAMES: Final[tuple[CheckName, ...]] = get_args(CheckName)
_ORDERS: Final[tuple[Order, ...]] = ("big", "little")


def find_check(lines: Sequence[bytes], tail: int = 0) -> LineCheck | None:
    """Find the check sum that these lines end in.

    Args:
        lines: Without their ends; frames with STX, ETX and what follows.
        tail: Bytes behind the ETX of a frame.

    Returns:
        None: none of those that we know.
    """
    distinct = list(dict.fromkeys(lines))[:TRIED]
    if len(distinct) < MIN_LINES:
        return None
    return next((form for form in _forms(distinct, tail) if _holds(distinct, form)), None)


def without_check(line: bytes, form: LineCheck) -> bytes:
    """Give a line without its mark and check."""
    return line[: len(line) - form.size].removesuffix(form.mark.encode())


def _forms(lines: Sequence[bytes], tail: int) -> Iterator[LineCheck]:
    """Give the forms that are worth trying, the usual ones first."""
    for name in _NAMES:
        for kind in ("hex", "bytes"):
            size = CHECK_BYTES[name] * (2 if kind == "hex" else 1)
            if tail and size != tail:
                continue
            if kind == "hex" and not all(
                _HEX.fullmatch(line[-size:]) and len(line) > size for line in lines[:MIN_LINES]
            ):
                continue
            orders = _ORDERS if CHECK_BYTES[name] > 1 else _ORDERS[:1]
            for mark in ["\x03"] if tail else _marks(lines, size):
                for start in (0, 1, 2):
                    for covers_mark in (False, True) if mark else (False,):
                        for order in orders:
                            yield LineCheck(
                                name=name,
                                form=_form(kind),
                                mark=mark,
                                covers_from=start,
                                covers_mark=covers_mark,
                                order=order,
                            )


def _form(kind: str) -> Literal["hex", "bytes"]:
    return "hex" if kind == "hex" else "bytes"


def _marks(lines: Sequence[bytes], size: int) -> list[str]:
    """Give what may set the check apart: the character before it, if it always is the same and no digit or letter."""
    before = {line[-size - 1 : -size] for line in lines}
    one = before.pop() if len(before) == 1 else b""
    return [one.decode("ascii"), ""] if one and one.isascii() and not one.isalnum() else [""]


def _holds(lines: Sequence[bytes], form: LineCheck) -> bool:
    """Tell whether the check holds in nearly all lines; the first few must not all fail."""
    if not any(_one_holds(line, form) for line in lines[:3]):
        return False
    return sum(_one_holds(line, form) for line in lines) >= HOLD * len(lines)


def _one_holds(line: bytes, form: LineCheck) -> bool:
    covered, stated = line[: len(line) - form.size], line[len(line) - form.size :]
    body = covered.removesuffix(form.mark.encode())
    if len(body) <= form.covers_from or (form.mark and body == covered):
        return False
    try:
        value = stated if form.form == "bytes" else bytes.fromhex(stated.decode("ascii"))
    except (ValueError, UnicodeDecodeError):
        return False
    total = check((covered if form.covers_mark else body)[form.covers_from :], form.name)
    return int.from_bytes(value, form.order) == total
