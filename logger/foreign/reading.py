"""Reading traces that other programs wrote: any table with a time and a torque or force.

Conventions:
- Columns are found by heading and unit, or named by the caller. Nothing is assumed about a unit; what the table leaves
  open is asked by name, all at once (``TableQuestionsError``).
- Values are given as they stand; times too, even where they stand still or step.
- An empty cell or a dash is a value that is missing: told, NaN. ``OL`` is an overload: NaN, told, and an event.
- A cell that is no number is an error that names line, column and fix; words below the readings are excluded and told.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from logger.edges.units import force_factor, torque_factor
from logger.errors import FileError, QuantityError
from logger.foreign.cells import Numbers, decimal_mark, numbers, plain
from logger.foreign.choices import ColumnUnit, TableQuestionsError, read_unit
from logger.foreign.columns import Finder, Roles
from logger.foreign.files import grid_of
from logger.foreign.grid import Grid, looks_like
from logger.foreign.headings import SECONDS, unit_kind
from logger.foreign.stamps import put_in_order
from logger.foreign.times import clock_seconds, implied_unit
from logger.header import Table
from logger.samples import Event, EventKind

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from logger.foreign.cells import Bools, Cell
    from logger.samples import Floats

_ROUND: Final = {
    **dict.fromkeys(("cw", "clockwise", "c.w.", "right", "r", "rechts", "+", "uzs", "horaire"), 1.0),
    **dict.fromkeys(
        ("ccw", "counter-clockwise", "counterclockwise", "anticlockwise", "anti-clockwise", "acw", "left", "l", "links",
         "-", "guzs", "antihoraire"), -1.0),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Foreign:
    """What a foreign trace holds."""

    time_s: Floats  # shape (n,); as it stands; clock times and dates from the first row on
    torque: Floats  # shape (n,); in ``unit``, which is one of torque or of force
    unit: str
    columns: dict[str, Floats] = field(default_factory=dict)  # shape (n,); ``angle_deg``, where there is one
    problems: tuple[str, ...] = ()
    events: tuple[Event, ...] = ()  # overloads
    table: Table = field(default_factory=Table)  # how it was read: its columns by their headings


def read_foreign(data: bytes, file: str, table: Table | None = None, sidecar_unit: str = "") -> Foreign:
    """Read a foreign trace's bytes.

    Args:
        data: The file.
        file: What messages call it.
        table: What the caller says of it.
        sidecar_unit: Unit from the trace's sidecar, for a column that does not name one.

    Raises:
        TableQuestionsError: It leaves something open.
        FileError: See the module.
    """
    table = table or Table()
    grid = grid_of(data, file, table.sheet)
    finder = Finder(grid, table, sidecar_unit, file)
    roles = finder.find()
    _asked(file, roles)
    reader = _Reader(grid, finder, roles, table, file)
    return reader.read()


def _asked(file: str, roles: Roles) -> None:
    if roles.questions:
        raise TableQuestionsError(file, roles.questions)


class _Reader:
    """Reads the columns that were found."""

    def __init__(self, grid: Grid, finder: Finder, roles: Roles, table: Table, file: str) -> None:
        self.grid, self.finder, self.roles, self.table, self.file = grid, finder, roles, table, file
        wanted = dict.fromkeys(
            p
            for p in (roles.time, roles.date, roles.part, roles.torque, roles.angle, roles.direction, roles.unit_column)
            if p >= 0
        )
        self.raw = dict(zip(wanted, grid.load(list(wanted)), strict=True))
        self.problems = [*grid.problems, *roles.notes]
        figures = [c for p, c in self.raw.items() if finder.content[p] == "number" and not isinstance(c, np.ndarray)]
        decimal = table.decimal or decimal_mark(figures)
        if decimal is None:
            cell = next(plain(c) for column in figures for c in column if any(m in plain(c) for m in ".,"))
            finder.ask(
                "decimal", f"whether '{cell[:40]}' has a decimal mark or thousands: point or comma is the decimal one"
            )
        self.decimal = decimal or "point"

    def read(self) -> Foreign:
        """Do it."""
        torque = self._figures(self.roles.torque)
        time_s = self._times(len(torque.values))
        angle = self._figures(self.roles.angle) if self.roles.angle >= 0 else None
        _asked(self.file, self.roles)
        rows = self._rows(time_s, torque)
        values = self._in_unit(torque)[rows]
        if len(values) < 2:
            raise FileError(f"{self.file}: has {len(values)} samples below its column names; export the trace anew")
        if not np.isfinite(values).any():
            raise FileError(f"{self.file}: '{self._name(self.roles.torque)}' holds no value at all")
        turns = [] if angle is None else [angle.values[rows]]
        stamps = put_in_order(time_s[rows], values, *turns)
        if stamps.refused:
            name = self._name(self.roles.time)
            raise FileError(f"{self.file}: '{name}': {stamps.refused}; export the trace anew, with a time a row")
        self.problems += stamps.notes
        order = stamps.rows
        time_s = time_s[rows][order]
        self._tell(self.roles.torque, torque, rows)
        columns = {}
        if angle is not None:
            self._tell(self.roles.angle, angle, rows)
            columns["angle_deg"] = (angle.values[rows] * self.roles.degrees)[order]
        over = torque.overload[rows][order]
        unit = self.roles.unit
        assert_unit = unit if unit is not None else ColumnUnit("torque", "N·m")
        return Foreign(
            time_s=time_s,
            torque=values[order],
            unit=assert_unit.name,
            columns=columns,
            problems=tuple(dict.fromkeys(self.problems)),
            events=_overloads(over, time_s),
            table=self._used(),
        )

    def _name(self, place: int) -> str:
        return self.grid.names[place][:40]

    def _figures(self, place: int) -> Numbers:
        return numbers(self.raw[place], self.decimal)

    # --- times -----------------------------------------------------------------------------------------------------

    def _times(self, n: int) -> Floats:
        roles, place = self.roles, self.roles.time
        if roles.rate_hz is not None:
            if place < 0:
                return np.arange(n) / roles.rate_hz
            count = self._figures(place).values
            counted: Floats = (count - count[np.isfinite(count)][:1].sum()) / roles.rate_hz
            return counted
        unit = self.table.time_unit or ""
        column = self.raw[place]
        if self.finder.content[place] == "time" or (isinstance(column, np.ndarray) and column.dtype.kind == "M"):
            return self._clock(column, unit)
        figures = self._figures(place)
        if figures.units:
            return self._with_units(figures, place)
        values = figures.values
        head = self.finder.heads[place]
        unit = unit or (head.unit if unit_kind(head.unit) == "time" else "")
        from_zero = unit == "d"
        if not unit:
            unit, why = implied_unit(values)
            if not unit:
                text = f"what '{self._name(place)}' is: {why}; s, ms, us, min, h or d, or --rate if it counts samples"
                self.finder.ask("time_unit", text)
                return values
            self.problems.append(f"'{self._name(place)}' {why.removeprefix('names no unit: ')}"
                                 + (", as it names no unit" if why.startswith("names") else ""))  # fmt: skip
            from_zero = unit != "s" or "1970" in why
        if unit.lower() not in SECONDS:
            raise FileError(
                f"{self.file}: '{unit}' is no unit of time for '{self._name(place)}'; use s, ms, us, min, h, d"
            )
        if self.finder.counts_steps(place):
            self.problems.append(f"'{self._name(place)}' is read as the time since the row before")
            values, from_zero = np.cumsum(np.where(np.isfinite(values), values, 0.0)), True
        scaled: Floats = (values - values[np.isfinite(values)][:1].sum() if from_zero else values) * SECONDS[
            unit.lower()
        ]
        return scaled

    def _with_units(self, figures: Numbers, place: int) -> Floats:
        """Give times that have their units in the cells."""
        odd = next((u for u in figures.units if u.lower() not in SECONDS), "")
        if odd or (figures.unit_at < 0)[~figures.missing & ~figures.bad].any():
            raise FileError(f"{self.file}: '{self._name(place)}' has cells with and without a unit of time, or '{odd}'")
        scale = np.array([SECONDS[u.lower()] for u in figures.units])
        times: Floats = figures.values * scale[figures.unit_at]
        return times

    def _clock(self, column: Sequence[Cell] | NDArray[Any], unit: str) -> Floats:
        two = unit if unit in ("hh:mm", "mm:ss") else self.finder.heads[self.roles.time].unit.lower()
        times, question = clock_seconds(column, two_parts=two if two in ("hh:mm", "mm:ss") else "")
        if question:
            self.finder.ask("time_unit", f"{question}, in '{self._name(self.roles.time)}': hh:mm or mm:ss")
            return times
        if self.roles.date >= 0:
            days, _ = clock_seconds(self.raw[self.roles.date])
            first = days[np.isfinite(days)][:1].sum()
            # The date says when a day is over: what was unrolled at midnight is taken back.
            times = np.mod(times, 86400.0) + days - first
        if self.roles.part >= 0:
            part = self.roles.part
            times = times + self._figures(part).values * SECONDS[self.finder.heads[part].unit.lower()]
        finite = times[np.isfinite(times)]
        return times - finite[0] if len(finite) else times

    # --- rows ------------------------------------------------------------------------------------------------------

    def _rows(self, time_s: Floats, torque: Numbers) -> Bools:
        """Give the rows that are readings; say what was excluded, or raise for what is not in order."""
        no_time = ~np.isfinite(time_s)
        empty = [row for row in np.flatnonzero(no_time).tolist() if not plain(self._cell(self.roles.time, row))]
        blank = np.zeros(len(time_s), bool)
        blank[empty] = torque.missing[empty]
        keep = ~no_time
        odd = np.flatnonzero(no_time & ~blank)
        last = int(np.flatnonzero(keep)[-1]) if keep.any() else -1
        left = []
        for row in odd.tolist():
            if row > last or self._repeats(row):
                left.append(row)
                continue
            cell = plain(self._cell(self.roles.time, row))[:40]
            raise FileError(
                f"{self.file}: {self.grid.place(row)}, column '{self._name(self.roles.time)}': "
                f"'{_shown(cell)}' is no time; delete the line"
            )
        bad = np.flatnonzero(torque.bad & keep)
        for row in bad.tolist():
            self._bad_figure(row, last)
        ends = [r for r in bad.tolist() if r > self._last_figure(torque, keep)]
        keep[ends] = False
        left += ends
        if left:
            words = plain(self._cell(self.roles.time, left[0])) or plain(self._cell(self.roles.torque, left[0]))
            self.problems.append(
                f"{len(left)} rows that are no readings are excluded (first: {self.grid.place(left[0])}, "
                f"'{_shown(words)[:40]}')"
            )
        return keep

    def _last_figure(self, torque: Numbers, keep: Bools) -> int:
        good = np.flatnonzero(keep & ~torque.bad)
        return int(good[-1]) if len(good) else -1

    def _bad_figure(self, row: int, last: int) -> None:
        cell = _shown(plain(self._cell(self.roles.torque, row)))[:40]
        if row < last or looks_like(cell) == "number":
            raise FileError(
                f"{self.file}: {self.grid.place(row)}, column '{self._name(self.roles.torque)}': "
                f"'{cell}' is no number; delete the line or correct it"
            )

    def _cell(self, place: int, row: int) -> Cell:
        return self.raw[place][row] if place >= 0 else ""

    def _repeats(self, row: int) -> bool:
        """Whether a row is the heading, or the row of units, once more."""
        time, torque = (plain(self._cell(p, row)) for p in (self.roles.time, self.roles.torque))
        names, units = self.grid.names, self.grid.units
        return any(
            (time, torque) == (plain(row_[self.roles.time]), plain(row_[self.roles.torque])) for row_ in (names, units)
        ) or (bool(unit_kind(time.strip("[]()"))) and bool(unit_kind(torque.strip("[]()"))))

    def _tell(self, place: int, column: Numbers, rows: Bools) -> None:
        """Tell of values that are not there."""
        for flag, what in ((column.missing, "missing"), (column.overload, "overloads: beyond the range of the device")):
            gone = np.flatnonzero(flag & rows)
            if len(gone):
                at = self.grid.place(int(gone[0]))
                verb = "are NaN, empty or dashes" if what == "missing" else f"are {what}"
                self.problems.append(
                    f"{len(gone)} of {int(rows.sum())} values of '{self._name(place)}' {verb} (first: {at})"
                )
        if place == self.roles.angle and (column.bad & rows).any():
            row = int(np.flatnonzero(column.bad & rows)[0])
            raise FileError(
                f"{self.file}: {self.grid.place(row)}, column '{self._name(place)}': is no number; correct it"
            )

    # --- units -----------------------------------------------------------------------------------------------------

    def _in_unit(self, torque: Numbers) -> Floats:
        """Give the values in the unit of the column: counts scaled, each row's own unit turned into it."""
        unit = self.roles.unit
        if unit is None:
            return torque.values
        values = torque.values * unit.scale if unit.scale != 1.0 else torque.values
        factors = self._row_factors(torque, unit)
        if factors is not None:
            values = values * factors
        if self.roles.direction >= 0:
            values = self._signed(values)
        return values

    def _row_factors(self, torque: Numbers, unit: ColumnUnit) -> Floats | None:
        if self.roles.unit_column >= 0:
            texts = [plain(c) for c in self.raw[self.roles.unit_column]]
        elif torque.units:
            texts = [torque.units[at] if at >= 0 else "" for at in torque.unit_at.tolist()]
        else:
            return None
        known = {text: self._factor(text, unit, texts) for text in dict.fromkeys(texts)}
        if len({f for t, f in known.items() if t}) > 1:
            self.problems.append(
                f"'{self._name(self.roles.torque)}' changes its unit: all of it is given in {unit.name}"
            )
        return np.array([known[text] for text in texts])

    def _factor(self, text: str, unit: ColumnUnit, texts: list[str]) -> float:
        if not text:
            return 1.0
        try:
            own = read_unit(text)
        except QuantityError as error:
            raise FileError(f"{self.file}: {self.grid.place(texts.index(text))}: {error}") from error
        if own.kind != unit.kind:
            raise FileError(f"{self.file}: {self.grid.place(texts.index(text))}: '{text}' is no unit of {unit.kind}")
        to_si = torque_factor if unit.kind == "torque" else force_factor
        return to_si(own.name) / to_si(unit.name)

    def _signed(self, values: Floats) -> Floats:
        words = [plain(c).lower() for c in self.raw[self.roles.direction]]
        odd = next((w for w in words if w and w not in _ROUND), "")
        name = self._name(self.roles.direction)
        if odd:
            self.problems.append(f"'{name}' is not read: '{odd[:20]}' is no direction; write cw or ccw")
            return values
        self.problems.append(f"'{name}' gives the torque its sign: clockwise is positive")
        signed: Floats = values * np.array([_ROUND.get(w, 1.0) for w in words])
        return signed

    def _used(self) -> Table:
        name = self.grid.names
        r = self.roles
        return Table(
            time=name[r.time] if r.time >= 0 else None,
            torque=name[r.torque],
            angle=name[r.angle] if r.angle >= 0 else None,
            rate_hz=r.rate_hz,
            unit=r.unit.name if r.unit is not None else None,
            decimal=self.table.decimal,
        )


def _shown(text: str) -> str:
    return "".join(c if c.isprintable() else "?" for c in text)


def _overloads(over: Bools, time_s: Floats) -> tuple[Event, ...]:
    """Give an event for each run of overloads."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], over, [False]])))
    return tuple(
        Event(EventKind.OVERLOAD, a, b - a, f"{b - a} readings beyond the range of the device", float(time_s[a]))
        for a, b in zip(edges[::2].tolist(), edges[1::2].tolist(), strict=True)
    )


__all__ = ["Foreign", "read_foreign"]
