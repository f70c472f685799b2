"""Tables of results: columns with units, CSV that a spreadsheet opens safely, JSON with a published schema.

Conventions:
- A column's name carries its unit (``breakaway_axle_nm``); ``TableColumn.unit`` says it again in words.
- A cell is a number, a text, a truth value, or None where there is nothing; it is never NaN.
- In CSV a *text* that begins with ``= + - @``, tab or carriage return is put behind an apostrophe: a spreadsheet would
  run it as a formula. Numbers stay numbers, negative ones too.
"""

from __future__ import annotations

import csv
import io
import json
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import Literal

from analysis.rows.export import check_data_set, to_parquet, to_workbook, write_data_set
from logger.edges.small_file import write_whole
from logger.errors import InputError
from logger.version import VERSION

Cell = str | float | int | bool | None
Row = Mapping[str, Cell]

SCHEMA = "heldwheel table 1"

DIGITS = 9
"""Significant digits of a number: far beyond any transducer, and free of the last bits of binary arithmetic."""

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


@dataclass(frozen=True, slots=True)
class TableColumn:
    """One column: name, type of its cells, unit, what it holds."""

    name: str
    type: Literal["text", "number", "count", "truth"]
    unit: str
    about: str


def _columns(*rows: tuple[str, str, str, str]) -> tuple[TableColumn, ...]:
    return tuple(TableColumn(name, kind, unit, about) for name, kind, unit, about in rows)  # type: ignore[arg-type]


_ITEM = _columns(
    ("file", "text", "", "the recording's name"),
    ("state", "text", "", "closed, recovered or foreign"),
    ("sha256", "text", "", "the recording's hash"),
    ("simulated", "truth", "", "whether the data are simulated"),
    ("started", "text", "ISO 8601", "when the recording began"),
    ("job", "text", "", "job number"),
    ("customer", "text", "", "customer"),
    ("vehicle", "text", "", "vehicle"),
    ("axle", "text", "", "axle"),
    ("operator", "text", "", "operator"),
    ("tags", "text", "", "the user's tags, key=value; ..."),
    ("place", "text", "", "car or bench"),
    ("held", "text", "", "what was held"),
    ("gear", "text", "", "neutral or in gear"),
    ("side", "text", "", "side turned"),
    ("fluid", "text", "", "oil"),
    ("modifier", "text", "", "friction modifier"),
    ("modifier_percent", "number", "%", "share of modifier in the fill"),
    ("oil_temperature_c", "number", "°C", "oil temperature"),
    ("distance_km", "number", "km", "distance driven"),
    ("shim_mm", "number", "mm", "shim thickness"),
    ("dwell_s", "number", "s", "rest before each pull"),
    ("fixture", "text", "", "how torque gets to the axle"),
    ("lever_factor", "number", "1", "torque at the axle over torque at the sensor"),
)

_FIGURES = _columns(
    ("breakaway_axle_nm", "number", "N·m", "breakaway torque at the axle"),
    ("breakaway_axle_u95_nm", "number", "N·m", "its expanded uncertainty, 95 %"),
    ("breakaway_sensor_nm", "number", "N·m", "breakaway torque at the sensor, from the hand-off level"),
    ("rotating_axle_nm", "number", "N·m", "rotating torque at the axle"),
    ("rotating_axle_u95_nm", "number", "N·m", "its expanded uncertainty, 95 %"),
    ("rotating_sensor_nm", "number", "N·m", "rotating torque at the sensor, from the hand-off level"),
    ("static_dynamic_ratio", "number", "1", "breakaway over rotating torque"),
    ("chatter_index", "number", "1", "stick-slip: strength of chatter"),
)

_RESULT = _columns(
    ("result", "text", "", "within, outside, too close to call, not valid; empty without a limit"),
    ("limit", "text", "", "the limit as written"),
    ("limit_source", "text", "", "where the limit comes from"),
    ("rule", "text", "", "decision rule"),
    ("probability", "number", "1", "probability of conformity"),
)

RECORDING_COLUMNS = (
    *_ITEM,
    *_columns(
        ("rate_hz", "number", "1/s", "samples per second"),
        ("noise_nm", "number", "N·m", "noise at rest"),
        ("pulls", "count", "", "pulls found"),
        ("pulls_used", "count", "", "pulls that entered the values"),
        ("direction", "text", "", "direction of the value, seen from outside the car"),
    ),
    *_FIGURES,
    *_RESULT,
    *_columns(("problems", "text", "", "what is not in order")),
)
"""One row per recording: its values are those of the job."""

PULL_COLUMNS = (
    *_ITEM,
    *_columns(
        ("pull", "count", "", "number of the pull, from 1"),
        ("start_s", "number", "s", "begin of the pull"),
        ("end_s", "number", "s", "end of the pull"),
        ("direction", "text", "", "clockwise or anticlockwise, seen from outside the car"),
        ("valid", "truth", "", "whether nothing speaks against using it"),
        ("used", "truth", "", "whether it entered the job's value"),
    ),
    *_FIGURES,
    *_columns(("reasons", "text", "", "why it is not valid or was excluded")),
)
"""One row per pull."""


@dataclass(frozen=True, slots=True)
class BadFile:
    """A file that could not be read, and why."""

    file: str
    error: str


def neutral(text: str) -> str:
    """Make a text cell harmless in a spreadsheet.

    >>> neutral("=HYPERLINK(1)"), neutral("rear axle")
    ("'=HYPERLINK(1)", 'rear axle')
    """
    return f"'{text}" if text.startswith(FORMULA_STARTS) else text


def _csv_cell(cell: Cell) -> str | float | int:
    if cell is None or (isinstance(cell, float) and not math.isfinite(cell)):
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, float):
        return float(f"{cell:.{DIGITS}g}")
    return neutral(" ".join(cell.splitlines())) if isinstance(cell, str) else cell


def to_csv(columns: Sequence[TableColumn], rows: Iterable[Row]) -> str:
    """Write rows as CSV text: one line of column names, then one line per row; decimal points."""
    return "".join(_csv_lines(columns, rows))


def _csv_lines(columns: Sequence[TableColumn], rows: Iterable[Row]) -> Iterator[str]:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([column.name for column in columns])
    for row in rows:
        yield out.getvalue()
        out.seek(0)
        out.truncate()
        writer.writerow([_csv_cell(row.get(column.name)) for column in columns])
    yield out.getvalue()


def to_json(columns: Sequence[TableColumn], rows: Iterable[Row], bad: Iterable[BadFile] = ()) -> str:
    """Write rows as JSON by the published schema (``schema``): columns, rows, files that could not be read."""
    return "".join(_json_pieces(columns, rows, bad))


def _json_pieces(columns: Sequence[TableColumn], rows: Iterable[Row], bad: Iterable[BadFile]) -> Iterator[str]:
    names = [column.name for column in columns]
    body = {
        "schema": SCHEMA,
        "program": f"Heldwheel {VERSION}",
        "columns": [{"name": c.name, "type": c.type, "unit": c.unit, "about": c.about} for c in columns],
        "bad_files": [{"file": b.file, "error": b.error} for b in bad],
    }
    yield _json_text(body).removesuffix("\n}") + ',\n "rows": ['
    before = "\n"
    for row in rows:
        yield before + _json_text({name: _json_cell(row.get(name)) for name in names})
        before = ",\n"
    yield "\n ]\n}\n"


def _json_text(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False, indent=1)


def _json_cell(cell: Cell) -> Cell:
    if isinstance(cell, float):
        return float(f"{cell:.{DIGITS}g}") if math.isfinite(cell) else None
    return cell


def write_table(
    path: Path | str, columns: Sequence[TableColumn], rows: Iterable[Row], bad: Sequence[BadFile] = ()
) -> Path:
    """Write a table whole or not at all, row by row, in the form that its name says; see ``check_ending``.

    Raises:
        InputError: Another ending.
        FileError: It cannot be written; what was there is unchanged.
    """
    path = Path(path)
    check_ending(path)
    if not path.suffix:
        return write_data_set(path, columns, rows, bad)
    write_whole(path, _written(path.suffix.lower(), columns, rows, bad))
    return path


def _written(
    ending: str, columns: Sequence[TableColumn], rows: Iterable[Row], bad: Sequence[BadFile]
) -> bytes | Iterator[bytes]:
    if ending == ".parquet":
        return to_parquet(columns, rows, bad)
    if ending == ".xlsx":
        return to_workbook(columns, rows, bad)
    pieces = _csv_lines(columns, rows) if ending == ".csv" else _json_pieces(columns, rows, bad)
    return (piece.encode("utf-8", "replace") for piece in pieces)  # a file's odd name must not cost the table


def check_ending(path: Path) -> None:
    """Refuse a table of another kind than CSV, JSON, Parquet, a workbook, or (a folder's name) a data set by month.

    Raises:
        InputError: Another ending, or a folder that holds something else.
    """
    if not path.suffix:
        check_data_set(path)
    elif path.suffix.lower() not in (".csv", ".json", ".parquet", ".xlsx"):
        raise InputError(
            f"{path}: a table is written as .csv, .json, .parquet or .xlsx, or as a folder of Parquet by month"
        )


def schema() -> dict[str, object]:
    """Give the published JSON schema of a table."""
    text = files("analysis.schemas").joinpath("table.schema.json").read_text("utf-8")
    return dict(json.loads(text))
