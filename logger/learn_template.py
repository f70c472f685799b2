"""The template that fits an unknown device's lines: fields, status words, marks, check sum."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Final

from logger.decoder.template import LineFormat, NumberField, StatusWords
from logger.learn_columns import NumberColumn, counter_step
from logger.learn_lines import Family, Notes, find_terminator, significant, without_star

MAX_STATUS_WORDS: Final = 8
_OVERLOAD_WORDS: Final = ("OL", "O", "OV", "OVER", "OVL", "OVERLOAD", ">", ">>", "HI")
_ERROR_WORDS: Final = ("E", "ER", "ERR", "ERROR", "NAN", "FAIL", "X")
_BATTERY_WORDS: Final = ("LB", "BAT", "LOBAT", "LOWBAT", "BATT")


def line_format(
    family: Family,
    columns: list[NumberColumn],
    lines: Sequence[str],
    data: bytes,
    decimal: str,
    scale: float,
    notes: Notes,
) -> LineFormat:
    """Write down how the lines are laid out."""
    template, status = _template(family, columns, notes)
    counter = next((c for c in columns if c.name == "counter"), None)
    step, modulus = counter_step(counter.values) if counter is not None else (1, None)
    if counter is not None:
        modulus = modulus or _modulus_of_width(counter, notes)
        notes.found.append(f"a counter that steps by {step}" + (f" and wraps at {modulus}" if modulus else ""))
    fields = {c.name: NumberField(unit=c.unit) for c in columns if c.unit and c.name not in ("torque", "literal")}
    if scale != 1.0:
        fields["torque"] = NumberField(scale=scale)
    overload, error = _marks(family, notes)
    ignore = _banners(family, notes)
    starred = sum(without_star(line) != line for line in lines) > 0.9 * len(lines)
    if starred:
        notes.found.append("each line ends in a check sum")
    return LineFormat(
        template=template,
        terminator=find_terminator(data),  # type: ignore[arg-type]
        decimal=decimal,  # type: ignore[arg-type]
        fields=fields,
        overload=overload,
        error=error,
        status=status,
        ignore=ignore,
        counter_modulus=modulus,
        counter_step=max(1, step),
        checksum="xor" if starred else "none",
    )


def _modulus_of_width(counter: NumberColumn, notes: Notes) -> int | None:
    widths = {len(text) for text in counter.texts}
    if len(widths) == 1 and any(text.startswith("0") and len(text) > 1 for text in counter.texts):
        return int(10 ** widths.pop())
    notes.unknown.append("where the counter wraps was not seen: listen longer if you can")
    return None


def _template(family: Family, columns: list[NumberColumn], notes: Notes) -> tuple[str, StatusWords]:
    """Write the template, and find what the status words may mean."""
    rows = [significant(line) for line in family.lines]
    words = [Counter(row[place].text for row in rows) for place in range(len(family.shape))]
    fields = {c.place: _number_field(c, family) for c in columns}
    unit_place = _unit_place(family, columns)
    status: StatusWords | None = None
    parts: list[str] = []
    place = -1
    for token in family.lines[0]:
        if token.kind in ("blank", "sign"):
            parts += [" "] if token.kind == "blank" else []
            continue
        place += 1
        if place in fields:
            parts.append(fields[place] or _escaped(token.text))
        elif place == unit_place:
            parts.append("{unit}")
        elif len(words[place]) == 1:
            parts.append(_escaped(token.text))
        elif token.kind == "text" and status is None and len(words[place]) <= MAX_STATUS_WORDS:
            parts.append("{status}")
            status = _status(words[place], notes)
        else:
            parts.append("{skip}")
            notes.unknown.append(f"a text that changes ('{token.text}' and others) is passed over")
    template = "".join(parts).strip(" ").replace(" {sign}", "{sign}")
    return template, status or StatusWords()


def _number_field(column: NumberColumn, family: Family) -> str:
    """Give the template's field for a number; empty for one that is part of the frame."""
    if column.name == "literal":
        return ""
    apart = column.name == "torque" and any(t.kind == "sign" for line in family.lines for t in line)
    return "{sign} {torque}" if apart else f"{{{column.name}}}"


def _unit_place(family: Family, columns: list[NumberColumn]) -> int:
    """Give the place of the text that is the torque's unit: behind it, or behind the separator that follows; or -1."""
    torque = next(c for c in columns if c.name == "torque")
    behind = [place for place in (torque.place + 1, torque.place + 2) if place < len(family.shape)]
    return next((place for place in behind if torque.unit and family.shape[place] == "text"), -1)


def _escaped(text: str) -> str:
    return text.replace("{", "{{").replace("}", "}}")


def _status(words: Counter[str], notes: Notes) -> StatusWords:
    meaning: dict[str, list[str]] = {"ok": [], "overload": [], "error": [], "battery_low": []}
    for word, _count in words.most_common():
        plain = word.strip(",;:. ").upper()
        if plain in _OVERLOAD_WORDS:
            meaning["overload"].append(word)
        elif plain in _ERROR_WORDS:
            meaning["error"].append(word)
        elif plain in _BATTERY_WORDS:
            meaning["battery_low"].append(word)
        else:
            meaning["ok"].append(word)
    doubtful = ", ".join(f"'{word}'" for word in meaning["ok"])
    notes.unknown.append(f"what the status words mean: {doubtful} are taken as good readings; look them up")
    return StatusWords(**{name: tuple(found) for name, found in meaning.items()})


def _marks(family: Family, notes: Notes) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Words that stand where a number should: overload by name, everything else an error."""
    words = Counter(significant(line)[place].text for line, place in family.marked)
    if not words:
        return LineFormat.__struct_defaults__[3], ()
    overload = tuple(w for w in words if w.lstrip("+-").upper() in _OVERLOAD_WORDS)
    error = tuple(w for w in words if w not in overload)
    told = ", ".join(f"'{word}'" for word in words)
    notes.found.append(f"words in the place of a reading: {told}")
    if error:
        notes.unknown.append(f"whether {', '.join(repr(w) for w in error)} means overload; it is taken as an error")
    return overload or ("OL", "+OL", "-OL"), error


def _banners(family: Family, notes: Notes) -> tuple[str, ...]:
    """Lines without any number that come again: banners and comments."""
    heads = Counter(line[:4] for line in family.others if line and not any(c.isdigit() for c in line[:1]))
    ignore = tuple(head for head, _ in heads.most_common(5) if head.strip() and head[0] in "#%;!/")
    if family.others:
        notes.unknown.append(f"{len(family.others)} lines are built otherwise, such as '{family.others[0][:40]}'")
    return ignore
