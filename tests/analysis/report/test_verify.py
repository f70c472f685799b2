"""Verifying a report: it holds when nothing was changed, and does not when anything was."""

from __future__ import annotations

import base64
import json
from dataclasses import replace

import pytest

from analysis.report import verify
from analysis.report import write as report
from analysis.report.html import RECORD_CLOSES, RECORD_OPENS
from analysis.report.material import Kind
from analysis.report.verify import Holds, read_record
from analysis.report.write import content_of, write_report
from logger.errors import FileError, InputError
from tests.analysis.sample import header, issue, material

FORMS = ("html", "pdf")


@pytest.fixture(params=FORMS)
def page(request, tmp_path):
    return write_report(
        content_of(material(), issue(Kind.ENGINEER, remarks="as found")), tmp_path / f"r.{request.param}"
    )


def check(page, found=None):
    return verify.verify(page, lambda _: material() if found is None else found)


def test_holds(page):
    found = check(page)
    assert found.holds is Holds.YES
    assert found.identity.startswith("HW-20260517-")
    assert any("unchanged" in line for line in found.lines)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"sha256": "cd" * 32}, "SHA-256 differs"),
        ({"head": header(simulated=False)}, "header and sidecar"),
        ({"corrections": ()}, "corrections"),
        ({"pulls": 5}, "pulls: 4 then, 5 now"),
        ({"budget": None, "job": ()}, "job: 2 then, 0 now"),
        ({"limit": None}, "result: the report says within"),
    ],
)
def test_another_recording_does_not_hold(page, changes, said):
    found = check(page, material(**changes))
    assert found.holds is Holds.NO
    assert any(said in line for line in found.lines), found.lines


def test_a_changed_torque_does_not_hold(page):
    m = material()
    first = m.pulls[0]
    moved = replace(first, breakaway=replace(first.breakaway, at_axle_nm=first.breakaway.at_axle_nm + 0.01))
    found = check(page, replace(m, pulls=(moved, *m.pulls[1:])))
    assert found.holds is Holds.NO
    assert any(line.startswith("pulls 1") for line in found.lines)


def test_changed_words_do_not_hold(tmp_path):
    page = write_report(content_of(material(), issue()), tmp_path / "r.html")
    text = page.read_text("utf-8")
    assert "55.3 ±" in text
    page.write_text(text.replace("55.3 ±", "65.3 ±"), "utf-8")
    found = check(page)
    assert found.holds is Holds.NO
    assert "text of the page" in found.lines[0]


def test_changed_bytes_do_not_hold(page):
    data = page.read_bytes()
    at = data.rindex(b"end of") if b"end of" in data else data.rindex(b"stream") - 40
    page.write_bytes(data[:at] + bytes([data[at] ^ 1]) + data[at + 1 :])
    assert check(page).holds is Holds.NO


def test_changed_record_does_not_hold(tmp_path):
    page = write_report(content_of(material(), issue()), tmp_path / "r.html")
    text = page.read_text("utf-8")
    start = text.index(RECORD_OPENS) + len(RECORD_OPENS)
    end = text.index(RECORD_CLOSES, start)
    record = json.loads(text[start:end])
    record["claims"]["job"][0]["value_nm"] += 10
    page.write_text(text[:start] + json.dumps(record, sort_keys=True) + text[end:], "utf-8")
    found = check(page)
    assert found.holds is Holds.NO
    assert any("job 1" in line for line in found.lines)
    assert any("identity" in line for line in found.lines)


def test_page_of_another_version_is_compared_by_its_figures(page, monkeypatch):
    monkeypatch.setattr(verify, "writer", lambda: "Heldwheel 9.9")
    found = check(page)
    assert found.holds is Holds.FIGURES
    assert any("9.9" in line for line in found.lines)
    assert check(page, material(pulls=5)).holds is Holds.NO
    assert report.writer() in "".join(found.lines)


def test_recording_that_is_gone(page):
    def gone(_):
        raise FileError("left.csv: there is no such file")

    found = verify.verify(page, gone)
    assert found.holds is Holds.NO
    assert "no such file" in found.lines[0]


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"<html>a page</html>",
        b"%PDF-1.7 nothing",
        RECORD_OPENS.encode() + b"{not json}" + RECORD_CLOSES.encode(),
        RECORD_OPENS.encode() + b"[1]" + RECORD_CLOSES.encode(),
        RECORD_OPENS.encode() + b"[" * 5000 + RECORD_CLOSES.encode(),
        (RECORD_OPENS.encode() + b"{}" + RECORD_CLOSES.encode()) * 2,
        b"%PDF <hw:record>***</hw:record>",
        b"%PDF <hw:record>" + base64.b64encode(b'{"schema": "other"}') + b"</hw:record>",
    ],
)
def test_no_report(tmp_path, data):
    path = tmp_path / "x.html"
    path.write_bytes(data)
    with pytest.raises(InputError, match="no report"):
        read_record(path)


def test_damaged_issue(tmp_path):
    path = tmp_path / "x.html"
    path.write_text(RECORD_OPENS + '{"schema": "heldwheel report 1"}' + RECORD_CLOSES, "utf-8")
    with pytest.raises(InputError, match="damaged"):
        check(path)
    with pytest.raises(FileError):
        check(tmp_path / "none.html")
