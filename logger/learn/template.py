"""The template that fits an unknown device's lines: fields, words, units, marks, widths.

Nothing that may move is baked in: a word that stood still is a listed word, a number that stood still is a number. Only
what names a number (``T=``) and punctuation must stay as they are.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from logger.decoder.template import MORE_STATUS, NumberField, StatusWords
from logger.learn.columns import NumberColumn, is_reading_unit, is_torque_unit
from logger.learn.lines import NUMBERS, Family, Notes, Token, significant, word_at

MAX_STATUS_WORDS: Final = 8
OVERLOAD_WORDS: Final = ("OL", "OVER", "OVL", "OVLD", "OVERLOAD", "OVR", "O.L")
ERROR_WORDS: Final = ("ERR", "ERROR", "FAIL", "NAN")
BATTERY_WORDS: Final = ("LB", "BAT", "LOBAT", "LOWBAT", "BATT")
_OTHER_OVERLOAD: Final = ("O", "OV", ">", ">>", "HI", "OF", "RANGE")
_OTHER_ERROR: Final = ("E", "ER", "X")
_BACKWARD: Final = {"CCW": "CW", "L": "R", "LEFT": "RIGHT", "ANTICLOCKWISE": "CLOCKWISE", "ACW": "CW"}
OVERLOAD_MARKS: Final = ("OL", "+OL", "-OL", "O.L", "OVER", "OVLD", "OVERLOAD")
ERROR_MARKS: Final = ("ERR", "Err", "NaN", "nan")


@dataclass(slots=True)
class TemplateDraft:
    """A template in the making."""

    template: str = ""
    status: dict[str, StatusWords] = field(default_factory=dict)  # per word of the template
    fields: dict[str, NumberField] = field(default_factory=dict)


def draft(family: Family, columns: Sequence[NumberColumn], torque: NumberColumn, notes: Notes) -> TemplateDraft:
    """Write the template and what its fields mean."""
    writer = _Writer(family, columns, torque, notes)
    template = "".join(writer.parts()).strip(" ")
    while "  " in template:
        template = template.replace("  ", " ")
    fields = {}
    for column in columns:
        unit = "" if column is torque else column.unit
        name = _field_name(column, torque)
        if (unit or column.form != "decimal") and f"{{{name}" in template and name != "counter":
            fields[name] = NumberField(unit=unit, form=column.form)  # type: ignore[arg-type]
    return TemplateDraft(template, writer.status, fields)


def _field_name(column: NumberColumn, torque: NumberColumn) -> str:
    return "torque" if column is torque else column.name


class _Writer:
    """Writes one template, piece by piece of the fullest line."""

    def __init__(self, family: Family, columns: Sequence[NumberColumn], torque: NumberColumn, notes: Notes) -> None:
        self._family = family
        self._notes = notes
        self._torque = torque
        self._columns = {column.place: column for column in columns}
        self._rows = [significant(line) for line in family.lines]
        self._words = [Counter(word_at(row, place) for row in self._rows) for place in range(len(family.shape))]
        self._unit_place = unit_place(family, self._words, torque)
        self._sign_apart = any(t.kind == "sign" for line in family.lines for t in line)
        self._widths = widths(family)
        self._blank = blanks(family)
        self.status: dict[str, StatusWords] = {}

    def parts(self) -> Iterator[str]:
        model = max(self._rows, key=len)
        named = 0  # pieces that the word before has taken along: the 1 of CH1
        for place, token in enumerate(model):
            if place in self._blank and place not in self._widths:
                yield " "
            if named:
                named -= 1
            elif place in self._columns:
                yield self._number(place)
            elif token.kind == "stamp":
                yield self._stamp(place)
            elif token.kind == "word":
                text = self._word(place, model)
                named = self._takes_along(place, model)
                yield text
            elif not token.text.isprintable() and token.kind == "text":
                yield f"{{skip:{len(token.text)}}}"  # bytes that are no UTF-8, such as a degree sign of older devices
            elif len(self._words[place]) == 1:
                yield escaped(token.text)
            else:
                yield "{skip}"

    def _number(self, place: int) -> str:
        column = self._columns[place]
        name = _field_name(column, self._torque)
        width = self._widths.get(place, len(column.texts[0]) if column.form != "decimal" else 0)
        shown = f"{{{name}:{width}}}" if width else f"{{{name}}}"
        before = self._family.shape[place - 1] if place else ""
        if before in NUMBERS and place not in self._blank and not width:
            shown = " " + shown  # two numbers with a sign between
        return "{sign} " + shown if column is self._torque and self._sign_apart else shown

    def _stamp(self, place: int) -> str:
        lengths = {len(row[place].text) for row in self._rows}
        self._notes.found.append(f"a time or date ('{self._rows[-1][place].text}'), which is passed over")
        return f"{{skip:{lengths.pop()}}}" if len(lengths) == 1 else "{skip}"

    def _word(self, place: int, model: Sequence[Token]) -> str:
        """Give the field of a word, or the word itself where it names a number."""
        words = self._words[place]
        if place == self._unit_place:
            return "{unit}"
        if _names_a_number(model, place) and len(words) == 1:
            return escaped(model[place].text)
        along = self._takes_along(place, model)
        if along:
            words = Counter("".join(word_at(row, at) for at in range(place, place + along + 1)) for row in self._rows)
        free = [name for name in ("status", *MORE_STATUS) if name not in self.status]
        if not free or len(words) > MAX_STATUS_WORDS:
            shown = next(iter(words))
            self._notes.unknown.append(f"a text that changes ('{shown}' and others) is passed over")
            return "{skip}"
        is_unit = is_reading_unit(next(iter(words))) or self._is_side_unit(place)
        self.status[free[0]] = meanings(words, self._notes, unit=is_unit)
        return f"{{{free[0]}}}"

    def _is_side_unit(self, place: int) -> bool:
        return any(column.unit and column.unit in self._words[place] for column in self._columns.values())

    def _takes_along(self, place: int, model: Sequence[Token]) -> int:
        """Tell whether the number behind a word is part of it: short, whole, touching and always the same."""
        number = self._columns.get(place + 1)
        if number is None or number is self._torque or number.moves or not number.integer or len(number.texts[0]) > 2:
            return 0
        touches = model[place + 1].at == model[place].at + len(model[place].text)
        return int(touches and model[place + 1].text.isdigit())


def _names_a_number(model: Sequence[Token], place: int) -> bool:
    """Tell whether ``=`` or ``:`` follows, behind a quote or not."""
    for token in model[place + 1 : place + 4]:
        if token.kind != "text" or token.text not in "\"'=:":
            return False
        if token.text in "=:":
            return True
    return False


def unit_place(family: Family, words: Sequence[Counter[str]], torque: NumberColumn) -> int:
    """Give the place of the text that is the torque's unit: behind it, or the only such text of the line; or -1."""
    places = [
        p for p, kind in enumerate(family.shape) if kind == "word" and is_reading_unit(words[p].most_common(1)[0][0])
    ]
    behind = [p for p in places if torque.place < p <= torque.place + 2]
    if behind:
        return behind[0]
    # Anywhere else only a unit of torque: the N of "N1234" is a letter before a number.
    apart = [p for p in places if is_torque_unit(words[p].most_common(1)[0][0])]
    return apart[0] if len(apart) == 1 else -1


def blanks(family: Family) -> set[int]:
    """Give the places before which a blank stands, in any line."""
    found: set[int] = set()
    for line in family.lines:
        place, blank = -1, False
        for token in line:
            if token.kind in ("blank", "sign"):
                blank |= token.kind == "blank"
                continue
            place += 1
            if blank:
                found.add(place)
            blank = False
    return found


def widths(family: Family) -> dict[int, int]:
    """Give the width of each number that only blanks set apart from the next, where the columns are of fixed width.

    All lines are equally long, numbers end at the same place in each and blanks fill what is left. A number that grows
    fills its blanks and touches its neighbour: only the width then tells where it ends.
    """
    rows = [significant(line) for line in family.lines]
    pairs = [
        p
        for p, (a, b) in enumerate(zip(family.shape, family.shape[1:], strict=False))
        if a in NUMBERS and b in NUMBERS and all(r[p + 1].at > r[p].at + len(r[p].text) for r in rows)
    ]
    lengths = Counter(line[-1].at + len(line[-1].text) for line in family.lines if line)
    if not pairs or len(lengths) != 1 or any(t.kind == "sign" for line in family.lines for t in line):
        return {}
    found: dict[int, int] = {}
    for place in sorted({p for pair in pairs for p in (pair, pair + 1)}):
        ends = {row[place].at + len(row[place].text) for row in rows}
        before = {row[place - 1].at + len(row[place - 1].text) for row in rows} if place else {0}
        if len(ends) != 1 or len(before) != 1:
            return {}
        found[place] = ends.pop() - before.pop()
    return found


def escaped(text: str) -> str:
    """Give text as it stands in a template."""
    return text.replace("{", "{{").replace("}", "}}")


def meanings(words: Counter[str], notes: Notes, *, unit: bool = False) -> StatusWords:
    """Say what words may mean: those that we know, and the rest as good readings, which is told."""
    meaning: dict[str, list[str]] = {"ok": [], "negative": [], "overload": [], "error": [], "battery_low": []}
    plain = {word: word.strip(",;:. ").upper() for word, _ in words.most_common()}
    for word, upper in plain.items():
        if upper in OVERLOAD_WORDS or (len(words) > 1 and upper in _OTHER_OVERLOAD):
            meaning["overload"].append(word)
        elif upper in ERROR_WORDS or (len(words) > 1 and upper in _OTHER_ERROR):
            meaning["error"].append(word)
        elif upper in BATTERY_WORDS:
            meaning["battery_low"].append(word)
        elif _BACKWARD.get(upper) in plain.values():
            meaning["negative"].append(word)
        else:
            meaning["ok"].append(word)
    good = ", ".join(f"'{word}'" for word in meaning["ok"] if word)
    if meaning["negative"]:
        notes.found.append(f"the direction is a word: with '{meaning['negative'][0]}' the reading counts negative")
    elif len(words) == 1:
        notes.found.append(f"the word {good} stood still: any other makes a reading not valid, and is told")
    else:
        notes.unknown.append(f"what the status words mean: {good} are taken as good readings; look them up")
    if not unit:  # what was not heard today and is known all the same
        for name, known in (("overload", OVERLOAD_WORDS), ("error", ERROR_WORDS), ("battery_low", BATTERY_WORDS)):
            meaning[name] += [word for word in known if word not in plain.values()]
    return StatusWords(**{name: tuple(found) for name, found in meaning.items()})


def marks(family: Family, notes: Notes) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Words that stand where a number should: overload by name, everything else an error."""
    words = Counter(significant(line)[place].text for line, place in family.marked)
    overload = tuple(w for w in words if w.lstrip("+-").upper() in (*OVERLOAD_WORDS, *_OTHER_OVERLOAD))
    error = tuple(w for w in words if w not in overload)
    if words:
        notes.found.append("words in the place of a reading: " + ", ".join(f"'{word}'" for word in words))
    if error:
        notes.unknown.append(f"whether {', '.join(repr(w) for w in error)} means overload; it is taken as an error")
    more = tuple(word for word in OVERLOAD_MARKS if word not in overload)
    return (*overload, *more), (*error, *(word for word in ERROR_MARKS if word not in error))


def banners(family: Family, notes: Notes) -> tuple[str, ...]:
    """Lines without any number that come again: banners and comments."""
    heads = Counter(line[:4] for line in family.others if line and not any(c.isdigit() for c in line[:1]))
    ignore = tuple(head for head, _ in heads.most_common(5) if head.strip() and head[0] in "#%;!/")
    if family.others:
        notes.unknown.append(f"{len(family.others)} lines are built otherwise, such as '{family.others[0][:40]}'")
    return ignore
