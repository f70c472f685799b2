"""Tables: columns with units, safe cells, the published schema."""

from __future__ import annotations

import csv
import io
import json

import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.rows.tables import (
    PULL_COLUMNS,
    RECORDING_COLUMNS,
    BadFile,
    TableColumn,
    neutral,
    schema,
    to_csv,
    to_json,
    write_table,
)
from logger.errors import FileError, InputError

UNIT_ENDINGS = {"_nm": "N·m", "_hz": "1/s", "_s": "s", "_c": "°C", "_km": "km", "_mm": "mm", "_percent": "%"}


def fits(value, rule, where="$"):
    """Check a value against the keywords that our schema uses; an unknown keyword is an error of the test."""
    known = {"$schema", "$id", "title", "description", "type", "required", "additionalProperties", "properties"}
    assert set(rule) <= known | {"const", "enum", "items", "minItems"}, where
    names = {"object": dict, "array": list, "string": str, "number": (int, float), "boolean": bool, "null": type(None)}
    if "type" in rule:
        kinds = rule["type"] if isinstance(rule["type"], list) else [rule["type"]]
        assert any(isinstance(value, names[kind]) for kind in kinds), f"{where}: {value!r} is no {kinds}"
    if "const" in rule:
        assert value == rule["const"], where
    if "enum" in rule:
        assert value in rule["enum"], where
    if isinstance(value, dict):
        assert set(rule.get("required", ())) <= set(value), where
        for key, item in value.items():
            inner = rule.get("properties", {}).get(key, rule.get("additionalProperties", {}))
            assert inner is not False, f"{where}.{key} is not allowed"
            fits(item, {} if inner is True else inner, f"{where}.{key}")
    if isinstance(value, list):
        assert len(value) >= rule.get("minItems", 0), where
        for i, item in enumerate(value):
            fits(item, rule.get("items", {}), f"{where}[{i}]")


@pytest.mark.parametrize("columns", [RECORDING_COLUMNS, PULL_COLUMNS])
def test_columns_carry_their_units(columns):
    names = [column.name for column in columns]
    assert len(set(names)) == len(names)
    for column in columns:
        for ending, unit in UNIT_ENDINGS.items():
            if column.name.endswith(ending):
                assert column.unit == unit, column.name
        assert (column.unit != "") == (column.type == "number" or column.name == "started")


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r"])
def test_formula_starts_are_neutralised(start):
    text = to_csv(RECORDING_COLUMNS, [{"file": f"{start}cmd|' /C calc'!A0", "noise_nm": -0.5}])
    (row,) = csv.DictReader(io.StringIO(text))
    assert not row["file"].startswith(("=", "+", "-", "@", "\t", "\r"))
    assert row["noise_nm"] == "-0.5"  # a number stays a number


@given(st.text(max_size=60))
def test_no_text_cell_starts_a_formula(text):
    (row,) = csv.DictReader(io.StringIO(to_csv(RECORDING_COLUMNS, [{"file": text}])))
    assert not row["file"].startswith(("=", "+", "-", "@", "\t", "\r"))
    assert neutral(neutral(text)) == neutral(text)


@given(st.lists(st.floats(allow_nan=True, allow_infinity=True), max_size=5))
def test_numbers_come_back(values):
    rows = [{"file": "a", "noise_nm": value} for value in values]
    back = list(csv.DictReader(io.StringIO(to_csv(RECORDING_COLUMNS, rows))))
    for row, value in zip(back, values, strict=True):
        if value - value == 0:
            assert float(row["noise_nm"]) == pytest.approx(value, rel=1e-8)
        else:
            assert row["noise_nm"] == ""
    json.loads(to_json(RECORDING_COLUMNS, rows))


def test_pandas_reads_it():
    rows = [{"file": "a.csv", "simulated": True, "breakaway_axle_nm": 54.25, "pulls": 3}, {"file": "b.csv"}]
    frame = pd.read_csv(io.StringIO(to_csv(RECORDING_COLUMNS, rows)))
    assert list(frame.columns) == [column.name for column in RECORDING_COLUMNS]
    assert frame["breakaway_axle_nm"][0] == 54.25
    assert frame["breakaway_axle_nm"].isna()[1]
    assert frame["simulated"][0] == "yes"


def test_json_fits_its_schema():
    text = to_json(
        RECORDING_COLUMNS, [{"file": "a", "probability": float("nan")}], [BadFile("b.csv", "no torque column")]
    )
    value = json.loads(text)
    fits(value, schema())
    assert value["rows"][0]["probability"] is None
    assert value["bad_files"] == [{"file": "b.csv", "error": "no torque column"}]
    with pytest.raises(AssertionError):
        fits({**value, "more": 1}, schema())


def test_write(tmp_path):
    columns = (TableColumn("file", "text", "", "name"),)
    path = write_table(tmp_path / "t.csv", columns, [{"file": "ä"}])
    assert path.read_bytes() == "file\nä\n".encode()
    write_table(tmp_path / "t.json", columns, [])
    assert sorted(p.name for p in tmp_path.iterdir()) == ["t.csv", "t.json"]
    with pytest.raises(InputError):
        write_table(tmp_path / "t.xls", columns, [])
    with pytest.raises(FileError):
        write_table(tmp_path / "none" / "t.csv", columns, [])


COLUMNS = (TableColumn("file", "text", "", "name"), TableColumn("nm", "number", "N·m", "torque"))


def test_numbers_have_nine_digits_and_texts_one_line():
    rows = [{"file": "a\nb\rc", "nm": 0.123456789123}, {"file": "ä", "nm": 123456789123.0}, {"nm": float("inf")}]
    assert to_csv(COLUMNS, rows) == "file,nm\na b c,0.123456789\nä,123456789000.0\n,\n"
    read = json.loads(to_json(COLUMNS, rows))["rows"]
    assert [row["nm"] for row in read] == [0.123456789, 123456789000.0, None]
    assert [row["file"] for row in read] == ["a\nb\rc", "ä", None]


def test_json_is_laid_out_to_be_read():
    text = to_json(COLUMNS, [{"file": "ä", "nm": 1.0}, {"file": "b"}])
    lines = text.splitlines()
    assert lines[:2] == ["{", ' "schema": "heldwheel table 1",']
    at = lines.index(' "rows": [')
    assert lines[at + 1 :] == [
        "{",
        ' "file": "ä",',
        ' "nm": 1.0',
        "},",
        "{",
        ' "file": "b",',
        ' "nm": null',
        "}",
        " ]",
        "}",
    ]
    assert json.loads(to_json(COLUMNS, []))["rows"] == []
