"""Tables as Parquet, workbooks and data sets, read back by the libraries of others; batches on a given executor."""

from __future__ import annotations

import io
import json
import os
import re
import shutil
import signal
import zipfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np
import pandas as pd
import pyarrow.parquet as pq
import pytest
from python_calamine import CalamineWorkbook

from analysis.rows.batch import batch, read_many, read_one
from analysis.rows.cluster import cluster
from analysis.rows.export import to_parquet, to_workbook, write_data_set
from analysis.rows.tables import RECORDING_COLUMNS, BadFile, write_table
from logger.errors import FileError, InputError

SEASON = sorted(Path("recordings").glob("0[1-5]-*.csv"))[:10]
EVIL = {"file": "=HYPERLINK(1)", "started": "2026-05-01T10:00:00+02:00", "breakaway_axle_nm": -1.25, "simulated": True}


@pytest.fixture(scope="module")
def tables(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("tables")
    for name in ("season.csv", "season.parquet", "season.xlsx", "season"):
        done = batch(SEASON, folder / name, workers=1)
        assert (done.rows, done.bad) == (len(SEASON), ())
    return folder


def test_parquet_holds_what_csv_holds_with_types_and_units(tables):
    plain, typed = pd.read_csv(tables / "season.csv"), pd.read_parquet(tables / "season.parquet")
    assert list(plain.columns) == list(typed.columns) == [c.name for c in RECORDING_COLUMNS]
    for column in RECORDING_COLUMNS:
        if column.type == "number":
            assert np.allclose(plain[column.name], typed[column.name].astype(float), rtol=1e-8, equal_nan=True)
    schema = pq.read_schema(tables / "season.parquet")
    for column in RECORDING_COLUMNS:
        assert schema.field(column.name).metadata[b"unit"].decode() == column.unit


def test_a_workbook_holds_what_csv_holds(tables):
    book = CalamineWorkbook.from_path(str(tables / "season.xlsx"))
    assert book.sheet_names == ["table", "columns"]
    rows = book.get_sheet_by_name("table").to_python()
    plain = pd.read_csv(tables / "season.csv")
    assert rows[0] == list(plain.columns)
    at = rows[0].index("breakaway_axle_nm")
    read = [float(row[at]) if row[at] != "" else np.nan for row in rows[1:]]
    assert np.allclose(read, plain["breakaway_axle_nm"], rtol=1e-8, equal_nan=True)
    said = book.get_sheet_by_name("columns").to_python()
    assert said[0] == ["column", "type", "unit", "holds"]
    assert said[1:] == [[c.name, c.type, c.unit, c.about] for c in RECORDING_COLUMNS]


def test_a_text_in_a_workbook_is_no_formula(tmp_path):
    write_table(tmp_path / "t.xlsx", RECORDING_COLUMNS, [EVIL], [BadFile("x.csv", "=1+1")])
    book = CalamineWorkbook.from_path(str(tmp_path / "t.xlsx"))
    row = dict(zip(*book.get_sheet_by_name("table").to_python()[:2], strict=True))
    assert row["file"] == "=HYPERLINK(1)"
    assert row["breakaway_axle_nm"] == -1.25
    assert book.get_sheet_by_name("could not be read").to_python() == [["file", "why"], ["x.csv", "=1+1"]]
    sheet = zipfile.ZipFile(tmp_path / "t.xlsx").read("xl/worksheets/sheet1.xml")
    assert b"<f>" not in sheet


def test_a_workbook_keeps_texts_as_they_are_and_its_heads_in_sight():
    """A job number keeps its zeros, an address is no link, and the cells of another type are of that type."""
    row = {"file": "https://a.b/c", "job": "0012", "pulls": 3, "pulls_used": 2, "simulated": False, "noise_nm": 2}
    data = to_workbook(RECORDING_COLUMNS, [row, {"file": "b", "rate_hz": np.inf, "noise_nm": np.nan}])
    head, first, second = CalamineWorkbook.from_filelike(io.BytesIO(data)).get_sheet_by_name("table").to_python()
    read = dict(zip(head, first, strict=True))
    assert {name: read[name] for name in row} == row
    assert (read["job"], read["simulated"]) == ("0012", False)
    assert {name for name, cell in zip(head, second, strict=True) if cell != ""} == {"file"}
    with zipfile.ZipFile(io.BytesIO(data)) as book:
        assert {n for n in book.namelist() if n.endswith(".rels") and "worksheets" in n} == set(), "a link has one"
        sheets = [book.read(f"xl/worksheets/sheet{n}.xml").decode() for n in (1, 2)]
        assert re.search(r'<pane xSplit="1" ySplit="1"', sheets[0])
        assert "<b/>" in book.read("xl/styles.xml").decode()
    for sheet, cells in zip(sheets, (len(RECORDING_COLUMNS), 4), strict=True):
        heads = re.search(r'<row r="1".*?</row>', sheet)[0]
        assert heads.count(' s="1"') == heads.count("<c ") == cells


def test_parquet_has_a_type_for_each_column():
    row = {"file": 7, "pulls": 3.0, "simulated": 1, "noise_nm": 2, "rate_hz": np.inf}
    read = pq.read_table(io.BytesIO(to_parquet(RECORDING_COLUMNS, [row, {}], [BadFile("x.csv", "torn")])))
    assert {name: read[name].to_pylist() for name in row} == {
        "file": ["7", None],
        "pulls": [3, None],
        "simulated": [True, None],
        "noise_nm": [2.0, None],
        "rate_hz": [None, None],
    }
    assert json.loads(read.schema.metadata[b"heldwheel"])["bad_files"] == [{"file": "x.csv", "error": "torn"}]


@pytest.mark.parametrize(
    ("started", "month"),
    [
        ("2026-05-01T10:00:00+02:00", "2026-05"),
        ("2026-05", "2026-05"),
        *[(other, "unknown") for other in ("2026-5", "2026/05/01", "abcd-05-01", "20265-01-", "", None)],
    ],
)
def test_the_month_of_a_row(tmp_path, started, month):
    write_data_set(tmp_path / "a" / "b" / "set", RECORDING_COLUMNS, [{"file": "a", "started": started}])
    assert [p.name for p in (tmp_path / "a" / "b" / "set").iterdir()] == [f"month={month}"]


@pytest.mark.parametrize("gone", [False, True])
def test_a_data_set_that_cannot_be_written_leaves_what_was_there(tmp_path, gone):
    write_data_set(tmp_path / "set", RECORDING_COLUMNS, [EVIL])

    def rows():
        yield EVIL
        if gone:  # the folder that is being written is taken away, too
            shutil.rmtree(next(tmp_path.glob(".set.*.part")))
        raise OSError(28, "No space left on device")

    with pytest.raises(FileError, match="set: cannot be written: No space left"):
        write_data_set(tmp_path / "set", RECORDING_COLUMNS, rows())
    assert [p.name for p in tmp_path.iterdir()] == ["set"]
    assert len(pd.read_parquet(tmp_path / "set")) == 1


def test_a_data_set_is_a_folder(tmp_path):
    (tmp_path / "set").write_text("x", encoding="utf-8")
    with pytest.raises(InputError, match="is a file"):
        write_data_set(tmp_path / "set", RECORDING_COLUMNS, [EVIL])
    (tmp_path / "other" / "within").mkdir(parents=True)
    (tmp_path / "other" / "within" / "b.parquet").write_bytes(b"")
    assert len(pd.read_parquet(write_data_set(tmp_path / "other", RECORDING_COLUMNS, [EVIL]))) == 1


def test_a_data_set_is_one_table_by_month(tables):
    whole = pd.read_parquet(tables / "season")
    assert set(whole["month"].astype(str)) == {str(s)[:7] for s in pd.read_csv(tables / "season.csv")["started"]}
    assert sorted(whole["file"]) == sorted(pd.read_csv(tables / "season.csv")["file"])
    one = sorted(set(whole["month"].astype(str)))[0]
    assert len(pd.read_parquet(tables / "season", filters=[("month", "==", one)])) == sum(
        whole["month"].astype(str) == one
    )


def test_a_data_set_replaces_its_own_and_nothing_else(tmp_path):
    folder = tmp_path / "set"
    write_data_set(folder, RECORDING_COLUMNS, [EVIL, {**EVIL, "started": None}])
    assert sorted(p.name for p in folder.iterdir()) == ["month=2026-05", "month=unknown"]
    write_data_set(folder, RECORDING_COLUMNS, [EVIL])
    assert sorted(p.name for p in folder.iterdir()) == ["month=2026-05"]
    (folder / "letter.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(InputError, match=r"holds letter\.txt"):
        write_data_set(folder, RECORDING_COLUMNS, [EVIL])
    assert (folder / "letter.txt").read_text(encoding="utf-8") == "mine"


def test_any_executor_reads(tmp_path):
    with ThreadPoolExecutor(2) as threads:
        found = sorted(read_many(SEASON, workers=2, executor=threads), key=lambda outcome: outcome.number)
    assert [o.rows for o in found] == [read_one(n, str(p), "recording", None).rows for n, p in enumerate(SEASON)]


class _Spoilt(ThreadPoolExecutor):
    """Loses some work, as a cluster whose machine dies over it."""

    def submit(self, fn, /, *args, **kwargs):
        if args and any(Path(path).name == SEASON[3].name for _, path in args[0]):

            def fails():
                raise RuntimeError("the worker died")

            return super().submit(fails)
        return super().submit(fn, *args, **kwargs)


def test_work_that_fails_takes_only_its_own_file_with_it():
    with _Spoilt(2) as spoilt:
        found = {o.number: o for o in read_many(SEASON, workers=2, executor=spoilt)}
    assert len(found) == len(SEASON)
    assert [n for n, o in found.items() if o.error] == [3]


@pytest.mark.filterwarnings("ignore")
def test_a_cluster_whose_worker_is_killed_loses_nothing(tmp_path):
    """A local cluster of two processes; one is killed in the middle, the table is the same."""
    distributed = pytest.importorskip("distributed")
    files = []
    for n in range(6):
        for path in SEASON:
            files.append(tmp_path / f"{n}-{path.name}")
            shutil.copy(path, files[-1])
    batch(files, tmp_path / "here.csv", workers=2)
    local = distributed.LocalCluster(n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None)
    try:
        pids = [nanny.pid for nanny in local.workers.values()]
        killed = []

        def progress(done: int, _total: int, _bad: int) -> None:
            if done >= 8 and not killed:
                killed.append(pids[0])
                os.kill(pids[0], signal.SIGKILL)

        with cluster(local.scheduler_address) as (executor, workers):
            assert workers == 2
            done = batch(files, tmp_path / "there.csv", workers=workers, executor=executor, progress=progress)
    finally:
        local.close()
    assert killed
    assert done.bad == ()
    assert (tmp_path / "there.csv").read_bytes() == (tmp_path / "here.csv").read_bytes()


@pytest.mark.filterwarnings("ignore")
def test_no_cluster_there_is_one_clear_message():
    pytest.importorskip("distributed")
    with pytest.raises(InputError, match="no scheduler answers"), cluster("tcp://127.0.0.1:1"):
        pass
