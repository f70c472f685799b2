"""Tables that are no text: spreadsheets, Parquet, JSON. A library reads the file; here it becomes a grid."""

from __future__ import annotations

import gzip
import io
import json
import zipfile
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from logger.errors import FileError
from logger.foreign.grid import HEAD_ROWS, Grid, begin_of, grid_of_rows
from logger.foreign.text import decoded, text_grid

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from logger.foreign.cells import Cell

UNPACKED_MOST: Final = 1 << 30  # bytes of a packed file
_NO_TABLES: Final = {
    b"SQLite format 3\x00": "a database (SQLite)",
    b"\x89HDF\r\n\x1a\n": "an HDF5 file",
    b"%PDF": "a PDF page",
    b"\x89PNG": "a picture",
    b"MATLAB 5.0": "a MAT file",
    b"{\\rtf": "a text document (RTF)",
}


def grid_of(data: bytes, file: str, sheet: str | None = None) -> Grid:
    """Make a grid of any table.

    Args:
        data: The file.
        file: What messages call it.
        sheet: Which sheet of a workbook.

    Raises:
        FileError: It is none that can be read; the text says what it is and how to export it.
    """
    for magic, what in _NO_TABLES.items():
        if data.startswith(magic):
            raise FileError(f"{file}: is {what}; export the trace as CSV, xlsx or Parquet")
    if data[:2] == b"\x1f\x8b":
        return grid_of(_unpacked(data, file), file, sheet)
    if data[:4] == b"PAR1":
        return _parquet(data, file)
    if data[:4] == b"PK\x03\x04" or data[:8] == b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1":
        return _workbook(data, file, sheet)
    start = data[:400].lstrip(b"\xef\xbb\xbf \t\r\n")
    if start[:1] == b"{" or (start[:1] == b"[" and start[1:].lstrip()[:1] in (b"{", b"[")):
        return _json(decoded(data, file), file)
    if start[:1] == b"<":
        raise FileError(
            f"{file}: is a page or document with tags (HTML, XML); export the trace as CSV, xlsx or Parquet"
        )
    return text_grid(data, file)


def _unpacked(data: bytes, file: str) -> bytes:
    try:
        with gzip.open(io.BytesIO(data)) as packed:
            found = packed.read(UNPACKED_MOST + 1)
    except (OSError, EOFError) as error:
        raise FileError(f"{file}: cannot be unpacked: {error}; export it anew") from error
    if len(found) > UNPACKED_MOST:
        raise FileError(f"{file}: is larger than {UNPACKED_MOST >> 20} MiB unpacked; split it")
    return found


def _workbook(data: bytes, file: str, sheet: str | None) -> Grid:
    from python_calamine import CalamineError, CalamineWorkbook

    if data[:2] == b"PK":
        try:
            with zipfile.ZipFile(io.BytesIO(data)) as packed:
                size = sum(part.file_size for part in packed.infolist())
        except (zipfile.BadZipFile, NotImplementedError) as error:  # the latter: of a later version than ours
            raise FileError(f"{file}: is a damaged workbook; export it anew") from error
        if size > UNPACKED_MOST:
            raise FileError(f"{file}: is larger than {UNPACKED_MOST >> 20} MiB unpacked; split it")
    try:
        book = CalamineWorkbook.from_filelike(io.BytesIO(data))
        names = book.sheet_names
        if sheet is not None and sheet not in names:
            raise FileError(f"{file}: has no sheet '{sheet[:60]}'; there are: {', '.join(map(repr, names))}")
        sheets = {n: book.get_sheet_by_name(n).to_python(skip_empty_area=False) for n in ([sheet] if sheet else names)}
    except (CalamineError, ValueError, OSError) as error:
        if isinstance(error, FileError):
            raise
        raise FileError(f"{file}: cannot be read as a workbook: {error}; export it as CSV") from error
    tables = [n for n, rows in sheets.items() if begin_of(_strip(rows)[:HEAD_ROWS]) is not None]
    if len(tables) > 1:
        from logger.foreign.choices import TableQuestion, TableQuestionsError

        raise TableQuestionsError(
            file, [TableQuestion("sheet", f"which sheet holds the trace: {', '.join(map(repr, tables))}")]
        )
    if not sheets:
        raise FileError(f"{file}: is a workbook without a sheet")
    chosen = tables[0] if tables else next(iter(sheets))
    return grid_of_rows(_strip(sheets[chosen]), file, lambda row: f"sheet '{chosen}', row {row + 1}")


def _strip(rows: Sequence[Sequence[Cell]]) -> list[Sequence[Cell]]:
    """Leave out empty columns on the left, which a table that does not begin at A has."""
    used = [n for row in rows[:HEAD_ROWS] for n, cell in enumerate(row[:200]) if cell not in ("", None)]
    left = min(used, default=0)
    return [row[left:] for row in rows]


def _parquet(data: bytes, file: str) -> Grid:
    import pyarrow as pa
    import pyarrow.parquet as pq

    try:
        parquet = pq.ParquetFile(io.BytesIO(data))
        sizes = parquet.metadata
        total = sum(sizes.row_group(n).total_byte_size for n in range(sizes.num_row_groups))
        if total > UNPACKED_MOST:
            raise FileError(f"{file}: is larger than {UNPACKED_MOST >> 20} MiB unpacked; split it")
        table = parquet.read()
    except (pa.ArrowException, OSError, ValueError) as error:
        if isinstance(error, FileError):
            raise
        raise FileError(f"{file}: cannot be read as Parquet: {error}; export it anew") from error
    columns = {
        name: _arrow(table.column(name))
        for name in table.column_names
        if not pa.types.is_nested(table.schema.field(name).type)
    }
    meta = {k.decode("utf-8", "replace").lower(): v.decode("utf-8", "replace")[:200]
            for k, v in (table.schema.metadata or {}).items()}  # fmt: skip
    units = {n: _field_unit(table.schema.field(n).metadata) for n in columns}
    return _grid_of_columns(columns, meta, file, units)


def _field_unit(meta: dict[bytes, bytes] | None) -> str:
    found = {k.decode("utf-8", "replace").lower(): v.decode("utf-8", "replace") for k, v in (meta or {}).items()}
    return found.get("unit", found.get("units", ""))[:40]


def _arrow(column: Any) -> Sequence[Cell] | NDArray[Any]:
    import pyarrow as pa

    kind = column.type
    if pa.types.is_timestamp(kind):
        return np.asarray(column.cast(pa.timestamp("ns")).to_numpy(), "datetime64[ns]")
    if pa.types.is_duration(kind):
        return np.asarray(column.cast(pa.duration("ns")).to_numpy(), "timedelta64[ns]") / np.timedelta64(1, "s")
    if pa.types.is_floating(kind) or pa.types.is_integer(kind) or pa.types.is_decimal(kind):
        return np.asarray(column.cast(pa.float64(), safe=False).to_numpy(zero_copy_only=False), np.float64)
    return [None if cell is None else cell for cell in column.to_pylist()]


def _grid_of_columns(
    columns: dict[str, Sequence[Cell] | NDArray[Any]], meta: dict[str, str], file: str, units: dict[str, str]
) -> Grid:
    lengths = {len(c) for c in columns.values()}
    if not columns or len(lengths) != 1 or lengths == {0}:
        raise FileError(f"{file}: holds no columns of one length; a trace needs a time and a torque column")
    names = tuple(columns)
    rows: list[Sequence[Cell]] = [[_cell(columns[n][at]) for n in names] for at in range(min(HEAD_ROWS, *lengths))]
    return Grid(
        names=names,
        units=tuple(units.get(n, "") for n in names),
        head=rows,
        load=lambda places: [columns[names[p]] for p in places],
        place=lambda row: f"row {row + 1}",
        meta=meta,
        at="its columns",
    )


def _cell(value: Any) -> Cell:
    """Give a value of an array as a cell."""
    if isinstance(value, np.datetime64):
        return None if np.isnat(value) else value.astype("datetime64[us]").item()
    return value.item() if isinstance(value, np.generic) else value


def _json(text: str, file: str) -> Grid:
    try:
        try:
            value = json.loads(text)
        except json.JSONDecodeError:
            value = [json.loads(line) for line in text.splitlines() if line.strip()]
    except (json.JSONDecodeError, RecursionError) as error:
        raise FileError(f"{file}: cannot be read as JSON: {error}; export it anew") from error
    meta: dict[str, str] = {}
    columns = _json_columns(value, meta)
    if columns is None:
        raise FileError(
            f"{file}: holds no table: write a list of objects with equal keys, or an object of equally long lists"
        )
    return _grid_of_columns(columns, meta, file, {n: meta.get(f"unit of {n.lower()}", "") for n in columns})


def _json_columns(value: Any, meta: dict[str, str], depth: int = 0) -> dict[str, Sequence[Cell] | NDArray[Any]] | None:
    """Find the table in a JSON value: records, columns, or names and rows; what stands beside it is ``meta``."""
    if isinstance(value, list):
        return _records(value, meta)
    if not isinstance(value, dict) or depth > 3:
        return None
    lists = {str(k): v for k, v in value.items() if isinstance(v, list)}
    flat = {k: v for k, v in lists.items() if v and not any(isinstance(c, (list, dict)) for c in v)}
    names = next((v for k, v in flat.items() if all(isinstance(c, str) for c in v)), None)
    for key, item in value.items():
        if isinstance(item, (str, int, float)):
            meta[str(key).lower()] = str(item)[:200]
        elif isinstance(item, dict) and all(isinstance(v, str) for v in item.values()):
            meta |= {f"unit of {str(k).lower()}": v for k, v in item.items()}
            meta |= {str(k).lower(): v[:200] for k, v in item.items()}
    long = {k: list(v) for k, v in flat.items() if len(v) > 1}
    if len(long) > 1 and len({len(v) for v in long.values()}) == 1:
        return dict(long)
    rows = next((v for v in lists.values() if v and all(isinstance(r, list) for r in v)), None)
    if rows is not None:
        return _named_rows(rows, names)
    for item in (*lists.values(), *(v for v in value.values() if isinstance(v, dict))):
        found = _json_columns(item, meta, depth + 1)
        if found is not None:
            return found
    return None


def _records(value: list[Any], meta: dict[str, str]) -> dict[str, Sequence[Cell] | NDArray[Any]] | None:
    if value and all(isinstance(row, list) for row in value):
        head = value[0] if all(isinstance(c, str) for c in value[0]) else None
        return _named_rows(value[1:] if head else value, head)
    rows = [_flat(row) for row in value if isinstance(row, dict)]
    if len(rows) != len(value) or len(rows) < 1:
        return None
    channels = _channels(rows, meta)
    if channels is not None:
        return channels
    names = list(dict.fromkeys(str(k) for row in rows[:HEAD_ROWS] for k in row))
    return {n: [_scalar(row.get(n)) for row in rows] for n in names}


def _flat(row: dict[str, Any]) -> dict[str, Any]:
    """Lay values with names of their own side by side; one with its unit becomes the value with the unit behind it."""
    found: dict[str, Any] = {}
    for name, item in row.items():
        if not isinstance(item, dict):
            found[name] = item
            continue
        low = {str(k).lower(): v for k, v in item.items()}
        value, unit = low.get("value"), low.get("unit", low.get("units"))
        if value is not None and isinstance(unit, str) and not isinstance(value, (dict, list)):
            found[name] = f"{value} {unit}"
        else:
            found |= {f"{name} {key}": v for key, v in item.items()}
    return found


def _channels(rows: list[dict[str, Any]], meta: dict[str, str]) -> dict[str, Sequence[Cell] | NDArray[Any]] | None:
    """Read a list of channels, each with its name, its unit and its values."""
    found: dict[str, Sequence[Cell] | NDArray[Any]] = {}
    for at, row in enumerate(rows):
        lists = [v for v in row.values() if isinstance(v, list) and len(v) > 1]
        if len(lists) != 1:
            return None
        name = next(
            (str(row[k]) for k in row if str(k).lower() in ("name", "channel", "label", "id")), f"column {at + 1}"
        )
        meta[f"unit of {name.lower()}"] = next((str(row[k]) for k in row if str(k).lower() in ("unit", "units")), "")
        found[name] = [_scalar(v) for v in lists[0]]
    return found if len({len(v) for v in found.values()}) == 1 else None


def _named_rows(rows: list[Any], names: list[str] | None) -> dict[str, Sequence[Cell] | NDArray[Any]] | None:
    width = max((len(row) for row in rows), default=0)
    if not width:
        return None
    names = names if names is not None and len(names) == width else [f"column {n + 1}" for n in range(width)]
    return {n: [_scalar(row[p]) if p < len(row) else None for row in rows] for p, n in enumerate(names)}


def _scalar(value: Any) -> Cell:
    return value if isinstance(value, (str, int, float)) and not isinstance(value, bool) else None
