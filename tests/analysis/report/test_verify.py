"""Verifying a report: it holds when nothing was changed, and does not when anything was."""

from __future__ import annotations

import base64
import hashlib
import json
from dataclasses import replace

import pytest

from analysis.report import verify
from analysis.report import write as report
from analysis.report.html import RECORD_CLOSES, RECORD_OPENS
from analysis.report.material import DragPart, PackLine, PageKind, PaperSize
from analysis.report.verify import Holds, read_record
from analysis.report.write import content_of, write_report
from logger.errors import FileError, InputError
from logger.header import Photo
from tests.analysis.sample import header, issue, material

FORMS = ("html", "pdf")


@pytest.fixture(params=FORMS)
def page(request, tmp_path):
    return write_report(
        content_of(material(), issue(PageKind.ENGINEER, remarks="as found")), tmp_path / f"r.{request.param}"
    )


def check(page, found=None):
    return verify.verify(page, lambda _: material() if found is None else found)


def test_holds(page):
    found = check(page)
    assert found.holds is Holds.YES
    assert found.identity.startswith("HW-SIM-20260517-")
    assert any("the bytes that the report names" in line for line in found.lines)


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
    assert "changed after it was written" in found.lines[0]
    assert any(line.startswith("on the page: 65.3") for line in found.lines), found.lines


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


def other(page, change, text=lambda t: t):
    """Give the page with its record changed and its identity made to fit, as anybody can."""
    data = page.read_text("utf-8")
    start = data.index(RECORD_OPENS) + len(RECORD_OPENS)
    end = data.index(RECORD_CLOSES, start)
    record = json.loads(data[start:end])
    before = record.pop("id")
    change(record)
    now = verify.identity_of(record, verify.issue_of(record))
    changed = text(data[:start]) + json.dumps({"id": now, **record}, sort_keys=True, ensure_ascii=False) + data[end:]
    changed = changed.replace(before, now).replace(verify.short_of(before), verify.short_of(now))
    page.write_text(changed, "utf-8")
    return page


@pytest.fixture
def simple(tmp_path):
    return write_report(content_of(material(), issue()), tmp_path / "r.html")


def by(name):
    return lambda record: record.update(writer=name)


LIBRARIES = report.writer().replace("jinja2", "jinja2 0")
OLDER = "Heldwheel 0.2.9, jinja2 3"


def test_a_page_set_by_other_libraries_is_compared_all_the_same(simple):
    assert check(other(simple, by(LIBRARIES))).holds is Holds.YES, "nothing else of the page is another"


@pytest.mark.parametrize("claimed", [LIBRARIES, OLDER, "Heldwheel 9.9", "", 5])
@pytest.mark.parametrize(
    ("before", "after"),
    [("within</div>", "outside</div>"), ("55.3 ±", "65.3 ±"), ("2026-05-17", "2020-05-17"), ("Hillfoot", "Another")],
)
def test_no_claim_of_a_version_excuses_what_a_page_shows(simple, claimed, before, after):
    text = simple.read_text("utf-8")
    assert before in text
    found = check(other(simple, by(claimed), lambda t: t.replace(before, after)))
    assert found.holds is Holds.NO, found.lines


@pytest.mark.parametrize("claimed", [LIBRARIES, OLDER])
def test_what_cannot_be_compared_leads_and_is_shown(simple, claimed):
    """A style that hides the words: never 'holds'."""
    found = check(other(simple, by(claimed), lambda t: t.replace("</style>", ".verdict { display: none } </style>")))
    assert found.holds is Holds.FIGURES
    assert found.holds.value.startswith("PAGE NOT CHECKED: anything visible")


def test_words_put_beside_the_true_ones_are_shown(simple):
    found = check(other(simple, by(OLDER), lambda t: t.replace("<h1>", "<p>safe to drive</p><h1>")))
    assert found.holds is Holds.FIGURES
    assert "on the page: safe to drive" in found.lines


def test_a_pdf_by_other_libraries_is_compared_by_its_words(tmp_path, monkeypatch):
    page = write_report(content_of(material(), issue()), tmp_path / "r.pdf")
    monkeypatch.setattr(verify, "writer", lambda: LIBRARIES)
    monkeypatch.setattr(verify, "render", lambda content, form: report.render(content, form) + b"% set otherwise")
    found = check(page)
    assert found.holds is Holds.FIGURES
    assert any("its words are the same" in line for line in found.lines), found.lines
    assert check(page, material(pulls=5)).holds is Holds.NO


def test_what_is_computed_and_what_is_stated_stand_apart(simple):
    found = check(simple)
    assert dict(found.computed)["result"].startswith("within")
    stated = dict(found.stated)
    assert {"limit", "customer", "issued", "fixture"} <= stated.keys()
    assert not {"result", "breakaway"} & stated.keys()
    text = simple.read_text("utf-8")
    assert "Torques and result: computed, and again by" in text
    assert "Limit and all else: the issuer&#39;s word." in text


def test_the_identity_has_128_bits_and_a_short_form(simple):
    """Birthday bound: two alike of 32 bits are found among some 77,000 pages, of 128 bits among 2 x 10^19."""
    whole = read_record(simple)["id"]
    assert len(whole.removeprefix("HW-SIM-20260517-")) * 4 == 128
    text = simple.read_text("utf-8").split(RECORD_OPENS)[0]
    assert text.count(whole) == 1
    assert text.count(verify.short_of(whole)) > 3


@pytest.mark.parametrize("key", ["sha256", "sidecar_sha256"])
def test_another_sidecar_or_recording_does_not_hold(simple, key):
    found = check(simple, replace(material(), **{key: "cd" * 32}))
    assert found.holds is Holds.NO
    assert any("SHA-256 differs" in line for line in found.lines)


def test_a_report_of_the_first_schema_is_read_and_not_taken_for_checked(simple):
    def older(record):
        record.update(schema="heldwheel report 1", writer="Heldwheel 0.2.0, jinja2 3.1.6")
        record["recording"] = {"file": "left.csv", "sha256": "12" * 32}

    first = other(simple, older)
    record = read_record(first)
    first.write_text(first.read_text("utf-8").replace(record["id"], verify.short_of(record["id"])), "utf-8")
    found = check(first, replace(material(), above_sha256="12" * 32))
    assert found.holds is Holds.FIGURES, found.lines
    assert check(first, replace(material(), above_sha256="13" * 32)).holds is Holds.NO


DRAG = DragPart(
    "free.csv", "ef" * 32, (PackLine("rotating mean", "forwards", (46.2, 0.8), (8.0, 0.4), (42.2, 0.9), "h"),)
)


@pytest.fixture(params=FORMS)
def dragged(request, tmp_path):
    return write_report(content_of(material(drag=DRAG), issue(PageKind.ENGINEER)), tmp_path / f"d.{request.param}")


def test_a_report_with_a_baseline_holds(dragged):
    assert read_record(dragged)["both_free"] == {"file": "free.csv", "sha256": "ef" * 32, "sidecar_sha256": ""}
    found = check(dragged, material(drag=DRAG))
    assert found.holds is Holds.YES
    assert any("both-free baseline free.csv: the bytes that the report names" in line for line in found.lines)


@pytest.mark.parametrize(
    ("drag", "said"),
    [
        (replace(DRAG, sha256="00" * 32), "baseline is not the one"),
        (replace(DRAG, lines=(replace(DRAG.lines[0], mean=(43.2, 0.9)),)), "packs 1"),
        (replace(DRAG, lines=(replace(DRAG.lines[0], mean=None),)), "packs 1"),
        (None, "cannot be used any more"),
    ],
)
def test_another_baseline_does_not_hold(dragged, drag, said):
    found = check(dragged, material(drag=drag))
    assert found.holds is Holds.NO
    assert any(said in line for line in found.lines), found.lines


def test_a_baseline_that_came_later_is_told(page):
    found = check(page, material(drag=DRAG))
    assert found.holds is Holds.NO
    assert any("made without" in line for line in found.lines)


@pytest.fixture
def pictured(tmp_path):
    """Give a material whose two photos lie beside its recording, with the folder."""
    for name in ("tag.jpg", "hold.png"):
        (tmp_path / name).write_bytes(name.encode())
    photos = tuple(
        Photo(file=path.name, sha256=hashlib.sha256(path.read_bytes()).hexdigest(), caption="as found")
        for path in (tmp_path / "tag.jpg", tmp_path / "hold.png")
    )
    return material(head=header(photos=photos), file=str(tmp_path / "left.csv")), tmp_path


@pytest.mark.parametrize("form", FORMS)
def test_photos_beside_the_recording(pictured, form):
    found, folder = pictured
    page = write_report(content_of(found, issue(PageKind.ENGINEER)), folder / f"r.{form}")
    said = check(page, found)
    assert said.holds is Holds.YES
    assert "photo tag.jpg: unchanged" in said.lines
    (folder / "hold.png").unlink()
    said = check(page, found)
    assert said.holds is Holds.YES, "a photo that is missing is said, the figures hold without it"
    assert "photo hold.png: not beside the recording" in said.lines
    (folder / "tag.jpg").write_bytes(b"another picture")
    said = check(page, found)
    assert said.holds is Holds.NO
    assert said.lines == ("photo tag.jpg: changed since, its SHA-256 differs",)


def test_a_photo_is_looked_for_in_its_folder_only(tmp_path):
    (tmp_path / "secret.jpg").write_bytes(b"secret")
    folder = tmp_path / "recordings"
    folder.mkdir()
    digest = hashlib.sha256(b"secret").hexdigest()
    names = ("../secret.jpg", str(tmp_path / "secret.jpg"), "..\\secret.jpg")
    photos = tuple(Photo(file=name, sha256=digest) for name in names)
    found = material(head=header(photos=photos), file=str(folder / "left.csv"))
    said = check(write_report(content_of(found, issue()), folder / "r.html"), found)
    assert sum("not beside the recording" in line for line in said.lines) == 3


def test_a_report_without_the_later_keys_is_still_read(page):
    record = read_record(page)
    del record["issue"]["authorised"], record["issue"]["paper"], record["both_free"], record["neutral"]
    del record["claims"]["packs"], record["claims"]["neutral"], record["claims"]["ratio"]
    assert (verify.issue_of(record).authorised, verify.issue_of(record).paper) == ("", PaperSize.A4)
    assert verify._compare_claims(record["claims"], report.claims_of(material())) == []


@pytest.mark.parametrize("form", FORMS)
def test_the_verifier_sets_the_page_on_the_same_paper(tmp_path, form):
    page = write_report(
        content_of(material(), issue(PageKind.ENGINEER, paper=PaperSize.LETTER)), tmp_path / f"r.{form}"
    )
    assert check(page).holds is Holds.YES


@pytest.mark.parametrize("paper", ["A5", "} body { display: none", "", None, 5, ["A4"], {}])
def test_a_paper_that_is_none_is_a_damaged_record(page, paper):
    record = read_record(page)
    record["issue"]["paper"] = paper
    with pytest.raises(InputError, match="damaged"):
        verify.issue_of(record)


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
