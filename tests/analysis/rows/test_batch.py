"""Batch: order, bad files, several processes, resuming, a reader that dies."""

from __future__ import annotations

import csv
import io
import json
import shutil
import subprocess
import sys
import time
from concurrent.futures import Executor, Future
from pathlib import Path

import pytest

from analysis.rows import batch as module
from analysis.rows.batch import batch, read_many, read_table
from analysis.rows.journal import Journal
from analysis.rows.tables import PULL_COLUMNS, RECORDING_COLUMNS
from logger.errors import FileError, InputError

RECORDINGS = Path(__file__).resolve().parents[3] / "recordings"


@pytest.fixture
def files(tmp_path):
    """Give three recordings and two files that are none, bad ones between."""
    for name in ("01-arrival-left", "02-build-shim-10", "05-event-5"):
        shutil.copyfile(RECORDINGS / f"{name}.csv", tmp_path / f"{name}.csv")
    (tmp_path / "bad.csv").write_text("no torque\n1\n", "utf-8")
    names = ("01-arrival-left.csv", "bad.csv", "02-build-shim-10.csv", "missing.csv", "05-event-5.csv")
    return [tmp_path / name for name in names]


def rows_of(table):
    return list(csv.DictReader(io.StringIO(table.read_text("utf-8"))))


def test_one_row_per_recording_in_order(files, tmp_path):
    done = batch(files, tmp_path / "t.csv", workers=1)
    rows = rows_of(tmp_path / "t.csv")
    assert [row["file"] for row in rows] == ["01-arrival-left.csv", "02-build-shim-10.csv", "05-event-5.csv"]
    assert [Path(bad.file).name for bad in done.bad] == ["bad.csv", "missing.csv"]
    assert "torque" in done.bad[0].error
    assert (done.files, done.rows, done.resumed) == (5, 3, 0)
    assert [row["result"] for row in rows] == ["outside", "", "too close to call"]
    assert all(row["simulated"] == "yes" for row in rows)
    assert float(rows[0]["breakaway_axle_nm"]) == pytest.approx(28.4, abs=0.8)
    assert not (tmp_path / "t.csv.part").exists()


def test_processes_give_the_same_table(files, tmp_path):
    batch(files, tmp_path / "one.json", workers=1)
    seen = []
    batch(files, tmp_path / "two.json", workers=2, progress=lambda *state: seen.append(state))
    one, two = (json.loads((tmp_path / name).read_text("utf-8")) for name in ("one.json", "two.json"))
    assert one == two
    assert [done for done, _, _ in seen] == [1, 2, 3, 4, 5]
    assert seen[-1] == (5, 5, 2)
    assert len(two["bad_files"]) == 2


def test_pulls(files, tmp_path):
    batch(files, tmp_path / "p.csv", by="pull", workers=1)
    rows = rows_of(tmp_path / "p.csv")
    assert list(rows[0]) == [column.name for column in PULL_COLUMNS]
    assert [row["pull"] for row in rows if row["file"].startswith("05")] == ["1", "2", "3", "4"]


def stop_after(count):
    def progress(done, _total, _bad):
        if done == count:
            raise KeyboardInterrupt

    return progress


def test_a_stopped_run_goes_on(files, tmp_path, monkeypatch):
    table = tmp_path / "t.csv"
    with pytest.raises(KeyboardInterrupt):
        batch(files, table, workers=1, progress=stop_after(3))
    assert not table.exists()
    read = []
    old = module.read_one
    monkeypatch.setattr(module, "read_one", lambda number, *rest: read.append(number) or old(number, *rest))
    done = batch(files, table, workers=1)
    assert done.resumed == 3
    assert read == [3, 4]
    assert [row["file"][:2] for row in rows_of(table)] == ["01", "02", "05"]


def test_a_torn_journal_and_changed_files_are_read_again(files, tmp_path):
    table = tmp_path / "t.csv"
    with pytest.raises(KeyboardInterrupt):
        batch(files, table, workers=1, progress=stop_after(5))
    journal = tmp_path / "t.csv.part"
    journal.write_bytes(journal.read_bytes()[:-20])  # killed while writing the last line
    shutil.copyfile(RECORDINGS / "01-arrival-right.csv", files[0])
    done = batch(files, table, workers=1)
    assert done.resumed == 2  # bad.csv and the second recording; missing.csv is looked for again
    assert len(rows_of(table)) == 3


def test_other_settings_do_not_resume(files, tmp_path):
    with pytest.raises(KeyboardInterrupt):
        batch(files, tmp_path / "t.csv", workers=1, progress=stop_after(3))
    assert batch(files, tmp_path / "t.csv", by="pull", workers=1).resumed == 0


def test_a_changed_sidecar_is_read_again(files, tmp_path):
    with pytest.raises(KeyboardInterrupt):
        batch(files, tmp_path / "t.csv", workers=1, progress=stop_after(1))
    (tmp_path / "01-arrival-left.sidecar.toml").write_text('[conditions]\nfluid = "another"\n', "utf-8")
    assert batch(files, tmp_path / "t.csv", workers=1).resumed == 0
    assert rows_of(tmp_path / "t.csv")[0]["fluid"] == "another"


def test_our_own_errors_do_not_stop_the_others(files, monkeypatch):
    def broken(*_):
        raise ZeroDivisionError("x")

    monkeypatch.setattr("analysis.rows.summary.recording_row", broken)
    outcomes = list(read_many(files, workers=1))
    assert [o.number for o in outcomes] == [0, 1, 2, 3, 4]
    assert "our error" in outcomes[0].error


def test_a_file_that_kills_its_reader_is_bad_and_the_others_go_on(files, monkeypatch, tmp_path):
    # The module that a worker imports dies over one file: as the system's memory guard would do it.
    monkeypatch.setattr(module, "read_one", deadly)
    monkeypatch.setattr(module, "_read_chunk", deadly_chunk)
    done = batch(files, tmp_path / "t.csv", workers=2)
    assert done.rows == 2
    assert any("died over it" in bad.error for bad in done.bad)


def deadly(number, path, by, asked):
    import os

    if path.endswith("02-build-shim-10.csv"):
        os._exit(9)
    return module.Outcome(
        number, path, ({"file": path},) if "-" in Path(path).name else (), "" if "-" in path else "bad"
    )


def deadly_chunk(chunk, by, asked):
    return [deadly(number, path, by, asked) for number, path in chunk]


def test_read_table(files):
    frame = read_table(files)
    assert list(frame.columns) == [column.name for column in RECORDING_COLUMNS]
    assert len(frame) == 3
    assert len(frame.attrs["bad_files"]) == 2
    assert frame.groupby("fluid")["rotating_axle_nm"].median()["reference"] > 20


def test_raises(files, tmp_path):
    with pytest.raises(InputError, match="no recordings"):
        batch([], tmp_path / "t.csv")
    with pytest.raises(InputError, match=r"written as \.csv, \.json, \.parquet or \.xlsx"):
        batch(files, tmp_path / "t.xls")
    with pytest.raises(InputError, match="worker"):
        list(read_many(files, workers=0))
    with pytest.raises(FileError):
        batch(files, tmp_path / "none" / "t.csv", workers=1)


def test_readers_end_with_a_killed_batch():
    words = (
        "import os, time; from analysis.rows.batch import _pool\n"
        "if __name__ == '__main__':\n"
        "    print(_pool(1).submit(os.getpid).result(), flush=True); time.sleep(60)\n"
    )
    parent = subprocess.Popen([sys.executable, "-c", words], stdout=subprocess.PIPE, text=True)
    reader = int(parent.stdout.readline())
    assert alive(reader)
    parent.kill()
    parent.wait()
    parent.stdout.close()
    until = time.monotonic() + 20
    while alive(reader) and time.monotonic() < until:
        time.sleep(0.05)
    assert not alive(reader)


def alive(pid):
    """Tell whether a process runs; one that has ended and waits to be collected does not."""
    try:
        return Path(f"/proc/{pid}/stat").read_text("utf-8").rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False


def test_a_journal_that_somebody_removed_is_no_fault_of_a_written_table(tmp_path: Path):
    Journal(tmp_path / "table.csv.part", "s").remove()


@pytest.mark.parametrize(("deaths", "ends"), [([1] * 9 + [0] + [1] * 9, False), ([0] + [1] * 10, True)])
def test_ten_deaths_in_a_row_are_no_fault_of_the_files(monkeypatch, deaths, ends):
    """Files that each killed a process are told; ten one after the other mean that no process can run."""

    def alone(number, path, _by, _asked):
        return module.Outcome(number, path, error=f"{path}: {module.DIED}" if deaths[number] else "")

    monkeypatch.setattr(module, "_read_alone", alone)
    told = module._one_by_one([(n, f"{n}.csv") for n in range(len(deaths))], "recording", None)
    if ends:
        with pytest.raises(InputError, match="the program is damaged"):
            list(told)
    else:
        assert [bool(outcome.error) for outcome in told] == [bool(died) for died in deaths]


def test_files_are_handed_over_by_fours_and_some_ahead(monkeypatch):
    """An executor that does all at once; two read at a time, so that six chunks may wait in line."""
    waiting, most = [], []

    class AtOnce(Executor):
        def submit(self, fn, /, *args):
            waiting.append(len(args[0]))
            done = Future()
            done.set_result(fn(*args))
            return done

    def wait_for_one(running, return_when):
        most.append(len(running))
        return {next(iter(running))}, set()

    monkeypatch.setattr(module, "wait", wait_for_one)
    monkeypatch.setattr(module, "read_one", lambda number, path, *_: module.Outcome(number, path))
    found = list(read_many([f"{n}.csv" for n in range(30)], workers=2, skip=frozenset({3}), executor=AtOnce()))
    assert sorted(outcome.number for outcome in found) == [n for n in range(30) if n != 3]
    assert waiting == [4] * 7 + [1]
    assert max(most) == 6


def test_settings_that_change_a_row_are_another_run():
    from analysis.pipeline import Asked

    keys = {module._settings_key(by, asked) for by in ("recording", "pull") for asked in (None, Asked(held="case"))}
    assert len(keys) == 4
    assert module._settings_key("pull", None) == module._settings_key("pull", Asked())
    assert {len(key) for key in keys} == {16}
