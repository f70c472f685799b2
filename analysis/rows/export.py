"""Tables as Parquet and as workbooks, and a data set of Parquet files by month.

Conventions:
- Columns, their order and types are those of ``analysis.rows.tables``; in Parquet unit and meaning stand at each
  column.
- In a workbook a text stays a text: none is ever read as a formula.
- A data set is a folder with one folder a month (``month=2026-05``, ``month=unknown``), as readers of Parquet take it.
- Rows are taken one by one; only some thousand are held at once.
"""

from __future__ import annotations

import contextlib
import io
import itertools
import json
import math
import os
import shutil
import tempfile
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from logger.errors import FileError, InputError
from logger.version import VERSION

if TYPE_CHECKING:
    from analysis.rows.tables import BadFile, Cell, Row, TableColumn

MONTH = "month"
UNKNOWN = "unknown"
ABOUT = b"heldwheel"
HELD = 5000  # rows at once


def _schema(columns: Sequence[TableColumn], bad: Iterable[BadFile]) -> Any:
    """Give the columns as an Arrow schema; its metadata name the program and the files that could not be read."""
    import pyarrow as pa

    kinds = {"text": pa.string(), "number": pa.float64(), "count": pa.int64(), "truth": pa.bool_()}
    fields = [pa.field(c.name, kinds[c.type], metadata={"unit": c.unit, "about": c.about}) for c in columns]
    said = json.dumps(
        {"program": f"Heldwheel {VERSION}", "bad_files": [{"file": b.file, "error": b.error} for b in bad]}
    )
    return pa.schema(fields, metadata={ABOUT: said.encode()})


def _arrow(columns: Sequence[TableColumn], rows: Sequence[Row], schema: Any) -> Any:
    """Give rows as an Arrow table."""
    import pyarrow as pa

    cells = [[_cell(row.get(c.name), c.type) for row in rows] for c in columns]
    return pa.Table.from_arrays(
        [pa.array(v, field.type) for v, field in zip(cells, schema, strict=True)], schema=schema
    )


def _cell(cell: Cell, kind: str) -> Cell:
    if isinstance(cell, float) and not math.isfinite(cell):
        return None
    if cell is None:
        return None
    if kind == "text":
        return str(cell)
    return float(cell) if kind == "number" else int(cell) if kind == "count" else bool(cell)


def to_parquet(columns: Sequence[TableColumn], rows: Iterable[Row], bad: Iterable[BadFile] = ()) -> bytes:
    """Give rows as a Parquet file."""
    import pyarrow.parquet as pq

    out, schema, waiting = io.BytesIO(), _schema(columns, bad), iter(rows)
    with pq.ParquetWriter(out, schema) as file:
        while some := list(itertools.islice(waiting, HELD)):
            file.write_table(_arrow(columns, some, schema))
    return out.getvalue()


def to_workbook(columns: Sequence[TableColumn], rows: Iterable[Row], bad: Iterable[BadFile] = ()) -> bytes:
    """Give rows as a workbook: the table, what its columns hold, and the files that could not be read."""
    import xlsxwriter

    out = io.BytesIO()
    texts = {"strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}
    with xlsxwriter.Workbook(out, {"constant_memory": True, **texts}) as book:
        bold = book.add_format({"bold": True})
        sheet = book.add_worksheet("table")
        sheet.write_row(0, 0, [c.name for c in columns], bold)
        for at, row in enumerate(rows, 1):
            for place, column in enumerate(columns):
                cell = _cell(row.get(column.name), column.type)
                if cell is not None:
                    sheet.write(at, place, cell)
        sheet.freeze_panes(1, 1)
        told = book.add_worksheet("columns")
        told.write_row(0, 0, ["column", "type", "unit", "holds"], bold)
        for at, column in enumerate(columns, 1):
            told.write_row(at, 0, [column.name, column.type, column.unit, column.about])
        missing = list(bad)
        if missing:
            left = book.add_worksheet("could not be read")
            left.write_row(0, 0, ["file", "why"], bold)
            for at, one in enumerate(missing, 1):
                left.write_row(at, 0, [one.file, one.error])
    return out.getvalue()


def write_data_set(
    folder: Path | str, columns: Sequence[TableColumn], rows: Iterable[Row], bad: Iterable[BadFile] = ()
) -> Path:
    """Write rows as a data set by month of their start, whole or not at all; one that stands there is replaced.

    Raises:
        InputError: The folder holds something else.
        FileError: It cannot be written; what was there is unchanged.
    """
    folder = Path(folder)
    check_data_set(folder)
    made = ""
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        made = tempfile.mkdtemp(dir=folder.parent, prefix=f".{folder.name[:40]}.", suffix=".part")
        _write_months(Path(made), columns, rows, bad)
        os.chmod(made, 0o755 & ~_umask())
        if folder.exists():
            before = tempfile.mkdtemp(dir=folder.parent, prefix=f".{folder.name[:40]}.", suffix=".old")
            os.replace(folder, before)
            os.replace(made, folder)
            shutil.rmtree(before)
        else:
            os.replace(made, folder)
    except OSError as error:
        if made:
            shutil.rmtree(made, ignore_errors=True)
        raise FileError(f"{folder}: cannot be written: {error.strerror or error}") from error
    return folder


def _write_months(made: Path, columns: Sequence[TableColumn], rows: Iterable[Row], bad: Iterable[BadFile]) -> None:
    import pyarrow.parquet as pq

    schema, waiting = _schema(columns, bad), iter(rows)
    with contextlib.ExitStack() as stack:
        files: dict[str, Any] = {}
        while some := list(itertools.islice(waiting, HELD)):
            months: dict[str, list[Row]] = {}
            for row in some:
                months.setdefault(_month(row), []).append(row)
            for month, part in months.items():
                if month not in files:
                    place = made / f"{MONTH}={month}"
                    place.mkdir()
                    files[month] = stack.enter_context(pq.ParquetWriter(place / "part-0.parquet", schema))
                files[month].write_table(_arrow(columns, part, schema))


def check_data_set(folder: Path) -> None:
    """Refuse a folder that holds anything but a data set.

    Raises:
        InputError: It does, or it is no folder.
    """
    if folder.exists() and not folder.is_dir():
        raise InputError(f"{folder}: is a file; a table ends in .csv, .json, .parquet or .xlsx, a data set is a folder")
    if folder.is_dir():
        other = next((p for p in folder.rglob("*") if p.is_file() and p.suffix != ".parquet"), None)
        if other is not None:
            raise InputError(f"{folder}: holds {other.name}, which is no part of a data set; name another folder")


def _month(row: Row) -> str:
    started = str(row.get("started") or "")
    return started[:7] if len(started) >= 7 and started[:4].isdigit() and started[4] == "-" else UNKNOWN


def _umask() -> int:
    before = os.umask(0o077)
    os.umask(before)
    return before
