"""The layout of an unknown device's text: from bytes to a line format, and which number is the torque."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Any, Final, Literal

import msgspec
import numpy as np

from logger.decoder.template import LineFormat, NumberField, compile_template
from logger.learn.check_sum import find_check, without_check
from logger.learn.columns import (
    NumberColumn,
    candidates,
    counter_step,
    is_reading_unit,
    name_columns,
    number_columns,
    pick_torque,
)
from logger.learn.kinds import ask_kind, of_kind
from logger.learn.lines import (
    FRAMED,
    MIN_LINES,
    Family,
    Notes,
    Style,
    find_family,
    find_terminator,
    significant,
    split_frames,
    split_lines,
    word_at,
)
from logger.learn.style import find_style
from logger.learn.template import banners, draft, marks, unit_place

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.decoder.template import LineCheck
    from logger.learn.learn import Wanted

_SEVEN_BITS: Final = bytes(byte & 0x7F for byte in range(256))
GLUED: Final = 7  # digits without a mark: fields of fixed width may have no gap


@dataclass(frozen=True, slots=True)
class TextLayout:
    """What lines hold."""

    format: LineFormat | None  # None while the torque is not chosen
    torque: NumberColumn | None
    # (int, NumberColumn); those that may be the torque, with their number in a line
    able: list[tuple[int, NumberColumn]]
    sent_unit: str  # the torque's unit, as sent
    samples: int  # lines

    def tables(self, wanted: Wanted, measures: str) -> dict[str, Any]:
        """Give the tables of a description that hold this layout."""
        lines = self.format
        if lines is not None and measures != "torque":
            fields = {(measures if name == "torque" else name): field for name, field in lines.fields.items()}
            template = lines.template.replace("{torque", f"{{{measures}")
            lines = msgspec.structs.replace(lines, template=template, fields=fields)
        return {"lines": lines}


def looks_like_text(data: bytes) -> bool:
    """Tell whether bytes are text: hardly any that no text has."""
    odd = sum(byte >= 0x80 or byte == 0 for byte in data) / len(data)
    control = sum(byte < 32 and byte not in b"\t\r\n\x02\x03\x04\x05\x06" for byte in data) / len(data)
    return odd + control <= 0.2


def parity_of(data: bytes) -> Literal["even", "odd", ""]:
    """Tell whether bytes are text of seven bits whose eighth is a parity: heard with eight, it looks like no text."""
    if not looks_like_text(without_parity(data)):
        return ""
    odd = sum(byte.bit_count() % 2 for byte in data) / len(data)
    return "even" if odd < 0.02 else "odd" if odd > 0.98 else ""


def without_parity(data: bytes) -> bytes:
    """Give the lower seven bits of each byte."""
    return data.translate(_SEVEN_BITS)


def text_layout(data: bytes, wanted: Wanted, notes: Notes) -> TextLayout | None:
    """Find the layout of text; None if it does not show."""
    terminator = find_terminator(data)
    if not terminator:
        notes.unknown.append(
            "nothing ends a line (no CR, no LF, no ETX): set the device to send line ends, or give --poll if it answers"
        )
        return None
    raw, tail = split_frames(data) if terminator == FRAMED else (split_lines(data), 0)
    notes.found.append("frames from STX to ETX" if terminator == FRAMED else f"lines end with {terminator}")
    check = find_check(raw, tail)
    if check is None and terminator == FRAMED and tail == 0:
        check = find_check([frame[1:-1] for frame in raw])
    if check is not None:
        notes.found.append(f"each line ends in a check sum ({check.name})")
    elif tail:
        notes.unknown.append(
            f"each frame ends in {tail} bytes behind the ETX that are no check sum we know: switch it off"
        )
        return None
    lines = _bodies(raw, check, tail, framed=terminator == FRAMED)
    ignore: tuple[str, ...] = ()
    if wanted.lines:
        lines, ignore = of_kind(lines, wanted.lines)
    if wanted.template:
        return _given(lines, terminator, check, ignore, wanted, notes)
    return _found(lines, terminator, check, ignore, wanted, notes)


def _bodies(raw: Sequence[bytes], check: LineCheck | None, tail: int, *, framed: bool) -> list[str]:
    """Give the lines as text, without frame marks and check sum."""
    lines = []
    for line in raw:
        body = line[1 : len(line) - tail - 1] if framed else line
        if check is not None and not tail:
            body = without_check(body, check)
        lines.append(body.decode("utf-8", "surrogateescape"))
    return lines


def _found(
    lines: list[str], terminator: str, check: LineCheck | None, ignore: tuple[str, ...], wanted: Wanted, notes: Notes
) -> TextLayout | None:
    style = find_style(lines, wanted.decimal, _thousands(wanted.thousands), notes)
    family = find_family(lines, style)
    if len(family.lines) < MIN_LINES:
        notes.unknown.append(
            f"only {len(family.lines)} lines are built alike; listen longer, or it is no text transducer"
        )
        return None
    if not wanted.lines:
        ignore = ask_kind(lines, family, style, notes)
    columns = number_columns(family, style)
    name_columns(columns, notes)
    _ask_widths(columns, family, notes)
    torque = pick_torque(columns, wanted.field, notes)
    able = [(columns.index(c) + 1, c) for c in candidates(columns)]
    count = len(family.lines) + len(family.marked)
    if torque is None or set(notes.missing) & {"lines", "decimal", "thousands", "template"}:
        return TextLayout(None, None, able, "", count) if able and notes.missing else None
    line_format = _format(family, columns, torque, style, terminator, check, ignore, wanted, notes)
    return TextLayout(line_format, torque, able, _sent_unit(family, torque), count)


def _thousands(given: str | None) -> str | None:
    return "" if given == "none" else given


def _sent_unit(family: Family, torque: NumberColumn) -> str:
    """Give the torque's unit as sent."""
    rows = [significant(line) for line in family.lines]
    words = [Counter(word_at(row, place) for row in rows) for place in range(len(family.shape))]
    place = unit_place(family, words, torque)
    return words[place].most_common(1)[0][0] if place >= 0 else ""


def _ask_widths(columns: Sequence[NumberColumn], family: Family, notes: Notes) -> None:
    """Ask for the layout where numbers of fixed width seem to touch."""
    for column in columns:
        lengths = {len(text) for text in column.texts}
        digits = column.form == "decimal" and all(text.lstrip("+-").isdigit() for text in column.texts)
        padded = any(text.lstrip("+-").startswith("0") for text in column.texts)
        if digits and padded and len(lengths) == 1 and max(lengths) >= GLUED and _two_in_one(column.texts):
            notes.missing.append("template")
            notes.unknown.append(
                f"'{column.texts[-1]}' may be several numbers of fixed width that touch: say where each ends, such as "
                "--template '{torque:6}{temperature:4}'"
            )
    for place, (a, b) in enumerate(zip(family.shape, family.shape[1:], strict=False)):
        touch = a == "number" == b and any(
            r[place + 1].at == r[place].at + len(r[place].text) and r[place + 1].text[:1] not in "+-"
            for r in (significant(line) for line in family.lines)
        )
        if touch:
            notes.missing.append("template")
            notes.unknown.append(
                "two numbers touch, at least sometimes: say how wide each is: --template '{torque:8}{temperature:6}'"
            )
            return


def _two_in_one(texts: Sequence[str]) -> bool:
    """Tell whether a digit that changes seldom follows one that changes often: there another number begins."""
    length = min(map(len, texts))
    busy = [len({text[place] for text in texts}) for place in range(length)]
    changes = [np.mean([a[place] != b[place] for a, b in pairwise(texts)]) for place in range(length)]
    most, seen = 0.0, 0
    for place in range(length):
        if most > 0.2 and seen >= 4 and (changes[place] < most / 4 or busy[place] <= 2):
            return True
        most, seen = max(most, float(changes[place])), max(seen, busy[place])
    return False


def _format(
    family: Family,
    columns: Sequence[NumberColumn],
    torque: NumberColumn,
    style: Style,
    terminator: str,
    check: LineCheck | None,
    ignore: tuple[str, ...],
    wanted: Wanted,
    notes: Notes,
) -> LineFormat:
    """Write down how the lines are laid out."""
    drafted = draft(family, columns, torque, notes)
    counter = next((c for c in columns if c.name == "counter" and c is not torque), None)
    step, modulus = counter_step(counter.values) if counter is not None else (1, None)
    if counter is not None:
        modulus = modulus or _modulus_of_width(counter, notes)
        notes.found.append(f"a counter that steps by {step}" + (f" and wraps at {modulus}" if modulus else ""))
    fields = drafted.fields
    if wanted.scale not in (None, 1.0):
        fields["torque"] = msgspec.structs.replace(fields.get("torque", NumberField()), scale=float(wanted.scale or 1))
    still = [c.name for c in columns if c is not torque and not c.moves and f"{{{c.name}" in drafted.template]
    if still:
        notes.found.append("stood still, and is kept as a number of its own: " + ", ".join(still))
    overload, error = marks(family, notes)
    head = banners(family, notes)
    return LineFormat(
        template=drafted.template,
        terminator=terminator,  # type: ignore[arg-type]
        decimal=style.decimal,  # type: ignore[arg-type]
        thousands=style.thousands,  # type: ignore[arg-type]
        fields=fields,
        overload=overload,
        error=error,
        status=drafted.status.pop("status", LineFormat(template="{torque}").status),
        words=drafted.status,
        ignore=tuple(text[:40] for text in (*head, *ignore) if text.isprintable()),  # no bytes that are no UTF-8
        counter_modulus=modulus,
        counter_step=max(1, step),
        check=check,
    )


def _modulus_of_width(counter: NumberColumn, notes: Notes) -> int | None:
    lengths = {len(text) for text in counter.texts}
    if len(lengths) == 1 and any(text.startswith("0") and len(text) > 1 for text in counter.texts):
        return int(10 ** lengths.pop())
    notes.unknown.append("where the counter wraps was not seen: listen longer if you can")
    return None


def _given(
    lines: list[str], terminator: str, check: LineCheck | None, ignore: tuple[str, ...], wanted: Wanted, notes: Notes
) -> TextLayout | None:
    """Take the template that the user gives, and read the torque by it."""
    from logger.decoder.match import LineMatcher

    names = {part.name for part in compile_template(wanted.template)}
    if "torque" not in names:
        notes.missing.append("template")
        notes.unknown.append("the template must have the field {torque}")
        return None
    scale = {"torque": NumberField(scale=wanted.scale)} if wanted.scale not in (None, 1.0) else {}
    decimal = wanted.decimal or (
        "," if not re.search(r"\d\.\d", "\n".join(lines)) and re.search(r"\d,\d", "\n".join(lines)) else "."
    )
    line_format = LineFormat(
        template=wanted.template, terminator=terminator, decimal=decimal, fields=scale, check=check,  # type: ignore[arg-type]
        thousands=_thousands(wanted.thousands) or "", ignore=tuple(text for text in ignore if text.isprintable()),  # type: ignore[arg-type]
    )  # fmt: skip
    matcher = LineMatcher(msgspec.structs.replace(line_format, check=None), "N·m")
    read = [(line, found) for line in lines if (found := matcher.match(line.encode("utf-8", "surrogateescape")))]
    values = np.array([found.values["torque"] for _, found in read])
    if len(read) < MIN_LINES:
        notes.missing.append("template")
        notes.unknown.append(f"the template fits {len(read)} of {len(lines)} lines: {matcher.misfit}")
        return None
    unit = next(
        (word for word in re.findall(r"[^\W\d_]\S*", read[-1][0]) if "unit" in names and is_reading_unit(word)), ""
    )
    texts = [f"{value:g}" for value in values]
    torque = NumberColumn(0, texts, values[np.isfinite(values)], unit=unit, name="torque")
    return TextLayout(line_format, torque, [(1, torque)], unit, len(read))
