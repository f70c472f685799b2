"""Foreign CSV traces: found by name or named, units never assumed, and errors that name line, column and fix."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.errors import FileError
from logger.header import Table
from logger.recordings.files import read_trace
from logger.recordings.sidecar import keep_table, read_sidecar, sidecar_path


def read(tmp_path, text: str | bytes, **more):
    path = tmp_path / "t.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_trace(path, Table(**more) if more else None)


@pytest.mark.parametrize(
    ("names", "unit", "newton_metres"),
    [
        ("time_s,torque_Nm", "N·m", 2.0),
        ("time_s,torque_lbf_ft", "lbf·ft", 2 * 1.3558179483314004),
        ("time_s,torque_lbf_in", "lbf·in", 2 * 0.1129848290276167),
        ("time_s,torque (lbf·ft)", "lbf·ft", 2 * 1.3558179483314004),
        ("Time (s),Torque [kgf·m]", "kgf·m", 2 * 9.80665),
        ("t/s,torque N.m", "N·m", 2.0),
        ('"time_s","torque_ft-lb"', "lbf·ft", 2 * 1.3558179483314004),
        ("# a comment\ntime_s,torque_Nm", "N·m", 2.0),
        ("\ufefftime_s,torque_Nm", "N·m", 2.0),
    ],
)
def test_columns_and_units(tmp_path, names, unit, newton_metres):
    trace = read(tmp_path, f"{names}\n0,1\n0.5,2\n")
    assert trace.state == "foreign"
    assert trace.unit == unit
    assert trace.torque_nm[1] == pytest.approx(newton_metres, rel=1e-12)
    assert trace.time_s.tolist() == [0.0, 0.5]
    assert trace.problems == ()
    assert trace.header.time_from == "file"
    assert len(trace.sha256) == 64


def test_milliseconds_angles_and_other_columns(tmp_path):
    trace = read(tmp_path, "n,time_ms,angle_deg,torque_Nm,remark\n0,0,1,5,a\n1,250,2,6,b\n")
    assert trace.time_s.tolist() == [0.0, 0.25]
    assert trace.torque.tolist() == [5.0, 6.0]
    assert trace.angle_deg is not None
    assert trace.angle_deg.tolist() == [1.0, 2.0]
    radians = read(tmp_path, "time_s,torque_Nm,angle_rad\n0,1,0\n1,2,3.141592653589793\n")
    assert radians.angle_deg is not None
    assert radians.angle_deg[1] == pytest.approx(180.0)


def test_decimal_commas_and_semicolons(tmp_path):
    trace = read(tmp_path, "time_s;torque_Nm\r\n0,0;1,25\r\n0,5;-2,5\r\n")
    assert trace.torque.tolist() == [1.25, -2.5]
    tabs = read(tmp_path, "time_s\ttorque_Nm\n0\t1.5\n1\t2.5\n")
    assert tabs.torque.tolist() == [1.5, 2.5]


def test_named_columns_and_units_from_options_and_sidecar(tmp_path):
    text = "clock,load,turn\n0,1,0\n1,2,90\n"
    trace = read(tmp_path, text, time="clock", time_unit="s", torque="load", angle="turn", unit="lbf·ft")
    assert trace.unit == "lbf·ft"
    assert trace.angle_deg is not None
    sidecar_path(tmp_path / "t.csv").write_text('[transducer]\nunit = "lbf·in"\ncapacity_nm = 50\n', encoding="utf-8")
    trace = read(tmp_path, "time_s,torque\n0,1\n1,2\n")
    assert trace.unit == "lbf·in"
    assert trace.header.transducer.capacity_nm == 50


@pytest.mark.parametrize(
    ("text", "more", "told"),
    [
        ("", {}, "is empty"),
        ("   \n\n", {}, "is empty"),
        ("time_s,torque_Nm\n", {}, "has 0 samples"),
        ("torque_Nm\n1\n2\n", {}, "--rate: it has no times: how many a second"),
        ("time_s,torque\n0,1\n1,2\n", {}, "--torque-unit: 'torque' has no unit; its unit: N·m"),
        ("time_s,torque_furlong\n0,1\n1,2\n", {}, "column 'torque_furlong': 'furlong' is no torque unit"),
        ("time_s,torque_Nm\n0,1\n1,2\n", {"unit": "psi"}, "'psi' is no torque unit"),
        ("time_s,torque_Nm\n0,1\n1,2\n", {"torque": "load"}, "has no column 'load'; there are: 'time_s'"),
        ("time_s,torque_Nm\n0,1\n1,abc\n2,3\n", {}, "line 3, column 'torque_Nm': 'abc' is no number"),
        ("time_s,torque_Nm\n0,1\nnan,2\n2,3\n", {}, "line 3, column 'time_s': 'nan' is no time"),
        ("time_s,torque_Nm\n0,1\n1\n2,3\n", {}, "line 3: has 1 of 2 columns: complete or delete it"),
        ("time_s,torque_Nm\n0,1,5\n1,2,5\n", {}, "line 2: has 3 cells where 2 columns are named; a decimal comma?"),
        ("time_s,torque_Nm\n0,1\n1,2,5\n2,3\n", {}, "line 3: has 3 cells where 2 columns are named"),
        ("time_s,torque_Nm\n0,1\n1,2\n2,3,5\n", {}, "line 4: has 3 cells where 2 columns are named"),
        (b"time_s,torque_Nm\n0,1\n1,\xff\n2,3\n", {}, "line 3, column 'torque_Nm'"),
        ("time_s,torque_Nm\n0,1\n".encode("utf-16"), {}, "has 1 samples"),
        (b"\x7fELF\x00\x00\x01\x02\x03", {}, "is no text, but binary"),
        (b"SQLite format 3\x00...", {}, "is a database"),
        ("<html><table></table></html>", {}, "is a page or document with tags"),
        ("x" * 300_000, {}, "has no column names"),
        ("Operator: A\n" + "1" * 300_000 + "\n", {}, "line 2: is 300000 characters long and no row"),
        ("time_s," + "a," * 1000 + "1" * 300_000, {}, "has no column names"),
    ],
)
def test_errors_name_line_column_and_fix(tmp_path, text, more, told):
    with pytest.raises(FileError) as caught:
        read(tmp_path, text, **more)
    assert told in str(caught.value)
    assert str(caught.value).startswith(str(tmp_path / "t.csv"))


def test_separators_at_the_ends_of_lines(tmp_path):
    trace = read(tmp_path, "time_s,torque_Nm\n0,1,\n1,2,\n")
    assert trace.torque.tolist() == [1.0, 2.0]
    trace = read(tmp_path, "time_s,torque_Nm,\n0,1,\n1,2,\n")
    assert trace.torque.tolist() == [1.0, 2.0]


def test_missing_values_are_told_and_stay_missing(tmp_path):
    trace = read(tmp_path, "time_s,torque_Nm\n0,1\n1,NaN\n2,\n3,4\n")
    assert np.isnan(trace.torque).tolist() == [False, True, True, False]
    assert trace.problems == ("2 of 4 values of 'torque_Nm' are NaN, empty or dashes (first: line 3)",)


def test_a_last_line_without_end_may_be_cut_short(tmp_path):
    trace = read(tmp_path, "time_s,torque_Nm\n0,1\n1,2\n2,34")
    assert trace.torque.tolist() == [1.0, 2.0]
    assert "may be cut short" in trace.problems[0]


@given(st.lists(st.floats(-1e6, 1e6), min_size=2, max_size=30), st.sampled_from([",", ";", "\t"]))
def test_any_values_come_back(tmp_path_factory, values, separator):
    folder = tmp_path_factory.mktemp("any")
    rows = "".join(f"{i}{separator}{v!r}\n" for i, v in enumerate(values))
    trace = read(folder, f"time_s{separator}torque_Nm\n{rows}")
    assert trace.torque == pytest.approx(np.array(values), rel=1e-14, abs=1e-300)


class TestStamps:
    """Time stamps as loggers write them: what leaves the order certain is put right and said."""

    def test_rows_out_of_order(self, tmp_path):
        trace = read(tmp_path, "time_s,torque_Nm\n0,1\n0.2,3\n0.1,2\n0.3,4\n")
        assert trace.time_s.tolist() == [0.0, 0.1, 0.2, 0.3]
        assert trace.torque.tolist() == [1.0, 2.0, 3.0, 4.0]
        assert "put in order of time" in trace.problems[0]

    def test_packets_of_one_stamp_are_given_as_they_stand(self, tmp_path):
        trace = read(tmp_path, "time_s,torque_Nm\n0,1\n1,2\n\n1,3\n2,5\n2,6\n")
        assert trace.time_s.tolist() == [0.0, 1.0, 1.0, 2.0, 2.0]

    def test_rows_written_twice(self, tmp_path):
        trace = read(tmp_path, "time_s,torque_Nm\n0,1\n0,1\n1,2\n1,2\n2,3\n2,3\n")
        assert trace.time_s.tolist() == [0.0, 1.0, 2.0]
        assert trace.problems == ("3 rows were written twice and are taken once",)

    def test_clock_set_back(self, tmp_path):
        """The rows stay in their order: whoever reads the trace counts on from the row before."""
        rows = "".join(f"{t},{i}\n" for i, t in enumerate([*range(90, 120), *range(40, 70)]))
        trace = read(tmp_path, f"time_s,torque_Nm\n{rows}")
        assert trace.torque.tolist() == list(range(60))

    def test_last_first(self, tmp_path):
        trace = read(tmp_path, "time_s,torque_Nm\n3,1\n2,2\n1,3\n")
        assert trace.torque.tolist() == [3.0, 2.0, 1.0]
        assert "from below" in trace.problems[0]

    @pytest.mark.parametrize(
        ("times", "what"),
        [([5.0] * 40, "every row has the same time"), ([9.0, 0.0, 50.0, 20.0] * 10, "order of the rows")],
    )
    def test_refused_where_the_order_cannot_be_known(self, tmp_path, times, what):
        rows = "".join(f"{t},{i}\n" for i, t in enumerate(times))
        with pytest.raises(FileError, match=what):
            read(tmp_path, f"time_s,torque_Nm\n{rows}")


def test_a_last_row_cut_short_is_left_out(tmp_path):
    trace = read(tmp_path, "time_s,torque_Nm\n0,1\n1,2\n2\n")
    assert trace.torque.tolist() == [1.0, 2.0]
    assert trace.problems == ("line 4, the last, is cut short: it is excluded",)


def test_a_unit_asked_against_the_heading_is_told(tmp_path):
    trace = read(tmp_path, "time_s,torque_Nm\n0,1\n1,2\n", unit="lbf·ft")
    assert trace.unit == "lbf·ft"
    assert "although its heading says Nm" in trace.problems[0]


def test_answers_are_kept_beside_the_file_and_need_no_second_asking(tmp_path):
    path = tmp_path / "t.csv"
    path.write_text("Time (s),Value\n0,1\n1,2\n", encoding="utf-8")
    keep_table(path, Table(torque="Value", unit="lbf·ft"))
    assert read_trace(path).unit == "lbf·ft"
    keep_table(path, Table(unit="N·m"))
    assert read_trace(path).unit == "N·m"
    sidecar = read_sidecar(path)
    assert sidecar is not None
    assert sidecar.table == Table(torque="Value", unit="N·m")
