"""Which column of a foreign table is which: by what it is called, its unit, and what stands in it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Final

import numpy as np

from logger.edges.units import parse_number
from logger.errors import FileError, QuantityError
from logger.foreign.cells import Numbers, decimal_mark, numbers, plain
from logger.foreign.choices import ColumnUnit, TableQuestion, read_unit
from logger.foreign.grid import Grid, looks_like
from logger.foreign.headings import DEGREES, SECONDS, Heading, heading, unit_kind
from logger.foreign.times import is_time

if TYPE_CHECKING:
    from collections.abc import Sequence

    from logger.foreign.cells import Cell
    from logger.header import Table
    from logger.samples import Floats

_RATE_WORDS: Final = ("rate", "frequency", "abtastrate", "abtastfrequenz", "messrate", "fréquence", "frecuencia", "hz")
_STEP_WORDS: Final = ("interval", "period", "dt", "delta t", "abtastintervall", "time step", "sample time", "intervall")


@dataclass(slots=True)
class Roles:
    """Places of the columns, from 0; -1 where there is none."""

    time: int = -1
    date: int = -1  # joined with a clock time
    part: int = -1  # of the second, beside a clock time in whole seconds
    torque: int = -1
    angle: int = -1
    direction: int = -1
    unit_column: int = -1
    unit: ColumnUnit | None = None
    degrees: float = 1.0
    rate_hz: float | None = None
    questions: list[TableQuestion] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


class Finder:
    """Finds the columns of one table."""

    def __init__(self, grid: Grid, table: Table, sidecar_unit: str, file: str) -> None:
        self.grid, self.table, self.file = grid, table, file
        self._sidecar_unit = sidecar_unit
        self.heads: tuple[Heading, ...] = tuple(heading(n, u) for n, u in zip(grid.names, grid.units, strict=True))
        self.content = tuple(self._content(n) for n in range(len(grid.names)))
        self.heads = tuple(self._by_cells(at, h) for at, h in enumerate(self.heads))
        self.roles = Roles()

    def find(self) -> Roles:
        """Give the columns, with what must be asked.

        Raises:
            FileError: A column that was named is not there, or its unit is none.
        """
        self._torque()
        self._time()
        self._angle()
        self._direction()
        return self.roles

    # --- what stands in them ---------------------------------------------------------------------------------------

    def _cells(self, place: int) -> list[Cell]:
        return [row[place] if place < len(row) else "" for row in self.grid.head]

    def _content(self, place: int) -> str:
        """Tell what a column holds: number, time, text or nothing."""
        kinds = [looks_like(cell) for cell in self._cells(place)]
        count = {kind: kinds.count(kind) for kind in ("number", "time", "text")}
        kind = max(count, key=lambda k: count[k])
        return kind if count[kind] else "nothing"

    def _by_cells(self, place: int, head: Heading) -> Heading:
        """Give the kind of a column whose heading does not say it, by the units behind its figures."""
        if head.kind != "other" or head.unit or self.content[place] != "number":
            return head
        kinds = {unit_kind(unit) for unit in self._numbers(place).units}
        kind = kinds.pop() if len(kinds) == 1 else ""
        return replace(head, kind=kind) if kind in ("time", "torque", "force", "angle") else head

    def _numbers(self, place: int) -> Numbers:
        cells = self._cells(place)
        return numbers(cells, self.table.decimal or decimal_mark([cells]) or "point")

    def _values(self, place: int) -> Floats:
        return self._numbers(place).values

    def _rises(self, place: int) -> bool:
        values = self._values(place)
        steps = np.diff(values[np.isfinite(values)])
        return len(steps) > 0 and bool((steps >= 0).mean() > 0.95) and bool((steps > 0).any())

    # --- by name ---------------------------------------------------------------------------------------------------

    def given(self, name: str, key: str) -> int:
        """Find a column that was named: by its heading, its heading without the unit, or ``column 2``."""
        names = self.grid.names
        tries: tuple[Callable[[str], str], ...] = (str, str.strip, str.casefold, lambda n: _bare(n).casefold())
        for same in tries:
            found = [at for at, n in enumerate(names) if n and same(n) == same(name)]
            if len(found) == 1:
                return found[0]
            if found:
                places = " or ".join(f"'column {at + 1}'" for at in found)
                self.ask(key, f"'{name[:40]}' stands over {len(found)} columns: say {places}")
                return found[0]
        number = name.lower().removeprefix("column").strip().lstrip("#")
        if number.isdigit() and 1 <= int(number[:6]) <= len(names):
            return int(number[:6]) - 1
        raise FileError(f"{self.file}: {self.grid.at}: has no column '{name}'; there are: {self.listed()}")

    def listed(self, places: Sequence[int] | None = None) -> str:
        """Give the headings for a message."""
        places = range(len(self.grid.names)) if places is None else places
        names = self.grid.names
        shown = [
            f"'{names[p][:40]}'" if names[p] and names.count(names[p]) == 1 else f"'column {p + 1}'" for p in places
        ]
        return "".join(c if c.isprintable() else "?" for c in ", ".join(shown[:12]))

    def ask(self, key: str, text: str) -> None:
        """Note a question, once a key."""
        if all(q.key != key for q in self.roles.questions):
            self.roles.questions.append(TableQuestion(key, text))

    # --- torque ----------------------------------------------------------------------------------------------------

    def _torque(self) -> None:
        if self.table.torque is not None:
            self.roles.torque = self.given(self.table.torque, "torque")
        else:
            self.roles.torque = self._the_torque()
        if self.roles.torque >= 0:
            self.roles.unit = self._unit(self.roles.torque)

    def _the_torque(self) -> int:
        for kind in ("torque", "force"):
            found = [
                at for at, h in enumerate(self.heads) if h.kind == kind and self.content[at] in ("number", "nothing")
            ]
            now = [at for at in found if not self.heads[at].extreme]
            known = [at for at in now if unit_kind(self.heads[at].unit) == kind] or now
            if len(known) > 1:
                known = self._same(known)
            if len(known) == 1:
                return known[0]
            if known or found:
                self.ask("torque", f"which column is the {kind} of the moment: {self.listed(known or found)}")
                return -1
        return self._unnamed()

    def _same(self, places: list[int]) -> list[int]:
        """Leave out columns that show the same in another unit."""
        try:
            units = [read_unit(self.heads[at].unit) for at in places]
        except QuantityError:
            return places
        first = self._values(places[0])
        for at, unit in zip(places[1:], units[1:], strict=True):
            ratio = _newtons(units[0]) / _newtons(unit)
            other = self._values(at)
            size = float(np.nanmax(np.abs(other), initial=0.0))
            if unit.name == units[0].name or not np.allclose(first * ratio, other, atol=0.01 * size, equal_nan=True):
                return places
        return places[:1]

    def _unnamed(self) -> int:
        """Find the torque where no heading says it: the only column of figures that is nothing else."""
        free = [
            at
            for at, h in enumerate(self.heads)
            if self.content[at] == "number" and h.kind == "other" and not unit_kind(h.unit)
        ]
        scaled = [at for at, h in enumerate(self.heads) if self.content[at] == "number" and h.unit.lower() in _SCALABLE]
        if len(scaled) == 1 and self.heads[scaled[0]].kind == "other":
            return scaled[0]
        times = [at for at in range(len(self.heads)) if self._may_be_time(at)]
        if len(free) > 1 and not any(at not in free for at in times):  # one of them is the time
            rising = [at for at in free if self._rises(at)]
            free = [at for at in free if at != (rising[0] if rising else free[0])]
        if len(free) == 1 and (not self.grid.headed or self._unit_said()):
            if self.grid.headed:
                self.roles.notes.append(
                    f"'{self.grid.names[free[0]][:40]}' is taken for the torque: no other column can be"
                )
            return free[0]
        self.ask("torque", f"which column is the torque (or force): {self.listed()}")
        if not self._unit_said():
            self.ask("unit", _UNITS)
        return -1

    def _may_be_time(self, place: int) -> bool:
        return self.heads[place].kind in ("time", "sample") or self.content[place] == "time"

    def _unit_said(self) -> str:
        """Give the unit that stands elsewhere than over the column: asked, above the table, in the sidecar."""
        return self.table.unit or self._above() or self._sidecar_unit

    def _above(self) -> str:
        words = ("unit", "units", "einheit", "einheiten", "unité", "unidad", "unità")
        others = ("time", "zeit", "angle", "winkel")
        for key, text in self.grid.meta.items():
            said = key.replace("_", " ").split()
            of_torque = any(w in words for w in said) and not any(w in others for w in said)
            if of_torque and unit_kind(text) in ("torque", "force"):
                return text
        return ""

    def _unit(self, place: int) -> ColumnUnit | None:
        head = self.heads[place]
        own = head.unit if unit_kind(head.unit) in ("torque", "force") else ""
        if not own and not self.table.unit:
            if head.odd_unit:
                read_error = self._no_unit(head.unit)
                raise FileError(f"{self.file}: {self.grid.at}, column '{head.name[:40]}': {read_error}")
            if unit_kind(head.unit) == "other":
                self.ask("unit", f'what one of \'{head.name[:40]}\' is, such as "0.0125 N·m" or "250 N·m per mV/V"')
                return None
        said = (
            self.table.unit or own or self._in_column() or self._in_cells(place) or self._above() or self._sidecar_unit
        )
        if not said:
            self.ask("unit", f"'{head.name[:40]}' has no unit; {_UNITS}")
            return None
        try:
            unit = read_unit(said)
        except QuantityError as error:
            raise FileError(f"{self.file}: {self.grid.at}, column '{head.name[:40]}': {error}") from error
        if self.table.unit and own and read_unit(own) != unit:
            self.roles.notes.append(f"'{head.name[:40]}' is read in {said}, as asked, although its heading says {own}")
        return unit

    def _no_unit(self, text: str) -> str:
        try:
            read_unit(text)
        except QuantityError as error:
            return str(error)
        return ""

    def _in_column(self) -> str:
        """Give the unit that stands in a column of units."""
        for at, head in enumerate(self.heads):
            if self.content[at] == "text" and (head.kind == "unit" or not head.worded):
                cells = {plain(c) for c in self._cells(at)} - {""}
                if cells and all(unit_kind(c) in ("torque", "force") for c in cells):
                    self.roles.unit_column = at
                    return plain(next(c for c in self._cells(at) if plain(c)))
        return ""

    def _in_cells(self, place: int) -> str:
        known = [u for u in self._numbers(place).units if unit_kind(u) in ("torque", "force")]
        return max(known, key=lambda u: _newtons(read_unit(u)), default="")

    # --- time, angle, direction -------------------------------------------------------------------------------------

    def _time(self) -> None:
        roles = self.roles
        samples = [at for at, h in enumerate(self.heads) if h.kind == "sample" and self.content[at] == "number"]
        if self.table.time is not None:
            roles.time = self.given(self.table.time, "time")
        elif self.table.rate_hz is None:
            roles.time, roles.date = self._the_time()
        roles.rate_hz = self.table.rate_hz or self._rate_above()
        counted = roles.time in samples or (roles.time < 0 and self.table.time is None)
        if not counted:
            if self.table.time_unit is None:
                roles.rate_hz = self.table.rate_hz
            return
        if roles.time < 0 and samples:
            roles.time = samples[0]
        if self.table.time_unit is not None and roles.time >= 0:
            return
        if roles.rate_hz is None:
            what = f"'{self.grid.names[roles.time]}' numbers the samples" if roles.time >= 0 else "it has no times"
            self.ask("rate_hz", f"{what}: how many a second (or --time-column NAME; there are: {self.listed()})")
        elif self.table.rate_hz is None:
            roles.notes.append(f"times are counted at {roles.rate_hz:g} readings a second, as stated above the table")

    def _the_time(self) -> tuple[int, int]:
        named = [at for at, h in enumerate(self.heads) if h.kind == "time" and self.content[at] in ("number", "time")]
        others = [at for at in range(len(self.heads)) if self.content[at] == "time" and at not in named]
        found = [at for at in named if at != self.roles.torque] or others
        days = [at for at in (*found, *others) if self._written(at) == "date"]
        found = [at for at in found if at not in days] or [at for at in others if at not in days]
        if not found and days:
            return (days[0], -1) if len(days) == 1 else (-1, -1)
        clock = next((at for at in found if self._written(at) == "clock"), -1)
        parts = [at for at in found if clock >= 0 and self._part_of_second(at)]
        if len(parts) == 1:
            self.roles.part = parts[0]
            return clock, days[0] if len(days) == 1 else -1
        figures = [at for at in found if self.content[at] == "number"]
        with_unit = [at for at in figures if unit_kind(self.heads[at].unit) == "time"]
        for some in (with_unit, figures, found):
            if len(some) > 1 and self.roles.torque >= 0:
                before = [at for at in some if at < self.roles.torque]
                chosen = before[-1] if before else some[0]
                self.roles.notes.append(f"of {len(some)} columns of times '{self.grid.names[chosen][:40]}' is read")
                return chosen, -1
            if some:
                joined = self._written(some[0]) == "clock" and len(days) == 1
                return some[0], days[0] if joined else -1
        if not self.grid.headed or all(h.kind in ("other", "torque", "force") and not h.worded for h in self.heads):
            rising = [
                at
                for at, what in enumerate(self.content)
                if what == "number" and at != self.roles.torque and self._rises(at)
            ]
            if rising and (not self.grid.headed or len(self.heads) == 2):
                return rising[0], -1
        return -1, -1

    def _part_of_second(self, place: int) -> bool:
        """Whether a column counts up to a second and begins anew."""
        scale = SECONDS.get(self.heads[place].unit.lower())
        if scale is None or self.content[place] != "number":
            return False
        values = self._values(place) * scale
        values = values[np.isfinite(values)]
        return bool((values >= 0).all() and (values < 1).all() and (np.diff(values) < 0).any())

    def counts_steps(self, place: int) -> bool:
        """Whether a column gives the time since the row before: it is called so and does not rise."""
        words = self.grid.names[place].lower().replace("_", " ")
        named = any(words == w or words.startswith((f"{w} ", f"{w}(", f"{w}[")) for w in _STEP_WORDS)
        return named and not self._rises(place) and bool((self._values(place) > 0).all())

    def _written(self, place: int) -> str:
        return next((kind for cell in self._cells(place) if (kind := is_time(cell))), "")

    def _rate_above(self) -> float | None:
        for key, text in self.grid.meta.items():
            number, unit = _quantity(text)
            if number is None or number <= 0:
                continue
            if any(w in key for w in _RATE_WORDS) and unit in ("", "hz", "s/s", "samples/s", "1/s", "sps", "/s", "khz"):
                return number * (1000 if unit == "khz" else 1)
            if any(w == key or w in key.split("(")[0] for w in _STEP_WORDS) and unit in ("s", "ms", "us", "µs"):
                return 1 / (number * {"s": 1.0, "ms": 1e-3}.get(unit, 1e-6))
        return None

    def _angle(self) -> None:
        roles = self.roles
        if self.table.angle is not None:
            roles.angle = self.given(self.table.angle, "angle")
        else:
            found = [
                at
                for at, h in enumerate(self.heads)
                if h.kind == "angle" and h.unit.lower() in DEGREES and not h.extreme
            ]
            roles.angle = found[0] if found and self.content[found[0]] == "number" else -1
        if roles.angle >= 0:
            roles.degrees = DEGREES.get(self.heads[roles.angle].unit.lower(), 1.0)

    def _direction(self) -> None:
        """Find a column that says which way round, beside torques without a sign."""
        for at, head in enumerate(self.heads):
            if head.kind == "direction" and self.content[at] == "text" and self.roles.torque >= 0:
                values = self._values(self.roles.torque)
                if not (values[np.isfinite(values)] < 0).any():
                    self.roles.direction = at


_SCALABLE: Final = ("mv/v", "mv", "v", "ma", "counts", "count", "raw", "digits", "lsb", "adc", "bit", "bits")
_UNITS: Final = "its unit: N·m, lbf·ft, lbf·in, kgf·m; of a force N, kgf, lbf"


def _bare(name: str) -> str:
    """Give a heading without its unit."""
    unit = heading(name).unit
    return name[: name.rfind(unit)].strip(" _-/,([{<") if unit and unit in name else name.strip()


def _newtons(unit: ColumnUnit) -> float:
    from logger.edges.units import force_factor, torque_factor

    return unit.scale * (torque_factor(unit.name) if unit.kind == "torque" else force_factor(unit.name))


def _quantity(text: str) -> tuple[float | None, str]:
    """Read ``500 Hz`` above a table."""
    number, _, unit = text.strip().replace("\t", " ").partition(" ")
    if not unit:
        at = next((n for n, c in enumerate(number) if c.isalpha() and c not in "eE"), len(number))
        number, unit = number[:at], number[at:]
    try:
        return parse_number(number), unit.strip().lower()
    except QuantityError:
        return None, ""
