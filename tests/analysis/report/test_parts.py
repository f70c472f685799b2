"""The build that was in the axle and a second test, on the engineer's page, in its record and verified again."""

from __future__ import annotations

import hashlib
import shutil
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from analysis.__main__ import COMMANDS
from analysis.language.translator import catalogue
from analysis.pipeline import Asked
from analysis.report import spoken
from analysis.report.gather import read_material
from analysis.report.material import Issue, PageKind
from analysis.report.verify import read_record
from analysis.report.write import content_of
from gui.models.loading import export
from logger.edges.door import run_door
from logger.edges.toml_file import write_toml
from logger.header import Axle, Sidecar
from logger.recordings.axles import AxleFile, Build, Pack, PackPart, change_axle, put_build
from tests.analysis.report.reading import text_of, texts_of_pdf
from tests.analysis.report.test_language import says
from tests.analysis.report.test_time_stamp import authority
from tests.noting import Noting

SEASON = Path(__file__).parents[3] / "recordings"
SIGNED = datetime(2026, 10, 3, 17, tzinfo=UTC)
ISSUED = datetime(2026, 10, 4, 9, tzinfo=UTC)


def pack(discs: int, thick: float) -> Pack:
    one = (PackPart(kind="friction disc", thickness_mm=thick), PackPart(kind="steel plate", thickness_mm=2.0))
    return Pack(parts=(*one * discs, PackPart(kind="shim", thickness_mm=0.3)))


FIRST = Build(
    built=datetime(2025, 1, 2, 9, tzinfo=UTC),
    spring_n=1400.0,
    left=pack(3, 1.9),
    right=pack(3, 1.9),
    oil="reference",
    oil_l=1.15,
)
SECOND = msgspec.structs.replace(
    FIRST,
    built=datetime(2026, 1, 2, 9, tzinfo=UTC),
    by="operator C",
    reason="low breakaway",
    left=pack(3, 1.98),
    right=pack(3, 1.98),
    spring="wave spring",
    spring_n=1500.0,
    spring_n_u=50.0,
    face_outer_mm=98.0,
    face_inner_mm=70.0,
    pinion_nm=1.2,
    modifier="modifier B",
    modifier_l=0.05,
)
LATER = msgspec.structs.replace(FIRST, built=datetime(2027, 1, 2, 9, tzinfo=UTC), oil="another")


def door(*words: object) -> int:
    return run_door("heldwheel-read", "", COMMANDS, "analysis.doors", ("report", *map(str, words)))


@pytest.fixture
def tests(tmp_path: Path) -> list[Path]:
    """Give one axle tested by operators A and B, both signed, with its sheet of two builds beside them."""
    found = []
    for name in ("1a1", "1b1"):
        found.append(Path(shutil.copy(SEASON / f"07-study-{name}.csv", tmp_path)))
        write_toml(
            found[-1].with_name(f"{found[-1].stem}.sidecar.toml"),
            Sidecar(simulated=True, signed=SIGNED, axle=Axle(tag="43/11", ratio=3.909)),
        )
    write_toml(tmp_path / "43-11.axle.toml", AxleFile(tag="43/11", builds=(FIRST, SECOND)))
    return found


@pytest.fixture
def page(tests: list[Path], tmp_path: Path) -> Path:
    out = tmp_path / "page.html"
    words = (tests[0], "--kind", "engineer", "--confirmed-by", tests[1], "--out", out, "--issued", ISSUED.isoformat())
    assert door(*words) == 0
    return out


def test_the_page_shows_build_and_second_test(tests: list[Path]):
    material, _ = read_material(tests[0], Asked(), second=tests[1])
    content = content_of(material, Issue(ISSUED, PageKind.ENGINEER))
    text = text_of(content)
    assert "3 friction discs, 3 steel plates, 1 shim, 5 friction surfaces, stack 12.24 mm" in text  # 3 × 3.98 + 0.3
    assert "each pack: friction disc at 1, 3, 5: 1.9 mm → 1.98 mm" in text
    assert "spring load: 1400 N → 1500 N" in text
    assert "reference 1.15 l, modifier B 0.05 l, 4.2 % of the fill" in text  # 0.05 / 1.20
    assert "0.112 ± 0.008 (95 %)" in text
    line = material.confirmed.lines[0]
    (a, ua), (b, ub), (d, u), e_n = *line[2:5], line[5]
    assert (d, u) == pytest.approx((b - a, (ua * ua + ub * ub) ** 0.5))
    assert e_n == pytest.approx(d / u)  # ISO 13528, from memory
    assert f"{e_n:+.2f}".replace("-", "−") in text
    assert "Second test: agrees" in text
    assert "operator A" in text
    assert "operator B" in text


def test_with_a_build_the_page_is_one_sheet(tests: list[Path], monkeypatch):
    material, _ = read_material(tests[0], Asked())
    assert texts_of_pdf(content_of(material, Issue(ISSUED, PageKind.ENGINEER)), monkeypatch)[1] == 1


@pytest.mark.parametrize("language", ["de", "es"])
def test_build_and_second_test_are_told_in_the_pages_language(tests: list[Path], language: str, monkeypatch):
    noting = Noting(catalogue(language), says)
    monkeypatch.setattr(spoken, "translator", lambda _: noting)
    m, _ = read_material(tests[0], Asked(), second=tests[1])
    assert m.confirmed is not None
    notes = ("the operator is not stated in both", "the transducer is not stated in both")
    unknown = replace(m.confirmed, who=(("", ""), ("", "")), notes=notes, word="cannot be told")
    for made in (replace(m, budget=None), replace(m, budget=None, confirmed=unknown)):
        content_of(made, Issue(ISSUED, PageKind.ENGINEER, language=language))
    assert noting.left == []


def test_a_customer_sees_neither(tests: list[Path], tmp_path: Path, capsys):
    material, _ = read_material(tests[0], Asked())
    text = text_of(content_of(material, Issue(ISSUED)))
    assert "Build in the axle" not in text
    assert "axle.toml" not in text
    assert door(tests[0], "--confirmed-by", tests[1], "--out", tmp_path / "c.html") == 2
    assert "--kind engineer" in capsys.readouterr().err


def test_it_is_verified_again(page: Path, capsys):
    record = read_record(page)
    assert record["build"]["file"] == "43-11.axle.toml"
    assert record["confirmed_by"]["file"] == "07-study-1b1.csv"
    assert door("--verify", page) == 0
    said = capsys.readouterr().out
    assert "build sheet 43-11.axle.toml: the entries that the report names\n" in said
    assert "second test 07-study-1b1.csv: the bytes that the report names" in said


def test_a_sheet_that_grows_leaves_the_report_as_it_was(page: Path, capsys):
    change_axle(page.parent, "43/11", lambda axle: put_build(axle, LATER))
    assert door("--verify", page) == 0
    assert "other entries of the file have changed since" in capsys.readouterr().out


def test_other_entries_do_not_hold(page: Path, capsys):
    other = msgspec.structs.replace(SECOND, spring_n=1600.0)
    change_axle(page.parent, "43/11", lambda axle: put_build(axle, other, instead_of=SECOND.built))
    assert door("--verify", page) == 1
    assert "build sheet's entries are not those" in capsys.readouterr().out
    (page.parent / "43-11.axle.toml").unlink()
    assert door("--verify", page) == 1


def test_another_second_test_does_not_hold(page: Path, tests: list[Path], capsys):
    second = tests[1].with_name(f"{tests[1].stem}.sidecar.toml")
    second.write_text(second.read_text("utf-8") + "\n[job]\nnotes = 'later'\n", "utf-8")
    assert door("--verify", page) == 1
    assert "second test's sidecar" in capsys.readouterr().out


def test_an_unsigned_second_test_shows_nothing(tests: list[Path], tmp_path: Path, capsys):
    write_toml(tests[1].with_name(f"{tests[1].stem}.sidecar.toml"), Sidecar(simulated=True))
    out = tmp_path / "page.html"
    assert door(tests[0], "--kind", "engineer", "--confirmed-by", tests[1], "--out", out) == 2
    shown = capsys.readouterr()
    assert "not signed yet" in shown.err
    assert "N·m" not in shown.out + shown.err
    assert not out.exists()


def test_command_and_window_write_the_same_page(page: Path, tests: list[Path], tmp_path: Path):
    target = tmp_path / "window.html"
    export(str(tests[0]), str(target), Issue(ISSUED, PageKind.ENGINEER), second=str(tests[1]))
    assert target.read_bytes() == page.read_bytes()


def test_a_sheet_from_elsewhere_is_named(tests: list[Path], tmp_path: Path, capsys):
    sheet = tmp_path / "elsewhere" / "sheet.toml"
    sheet.parent.mkdir()
    shutil.move(tmp_path / "43-11.axle.toml", sheet)
    assert read_material(tests[0], Asked())[0].build is None
    found = read_material(tests[0], replace(Asked(), build_sheet=sheet))[0].build
    assert found is not None
    assert found.build == SECOND
    write_toml(sheet, AxleFile(tag="7", builds=(FIRST,)))
    assert door(tests[0], "--build-sheet", sheet, "--out", tmp_path / "x.html") == 2
    assert "is the sheet of axle 7" in capsys.readouterr().err


def test_a_time_stamp_is_asked_for_and_missed_by_the_command(tests: list[Path], tmp_path: Path, capsys):
    out = tmp_path / "stamped.html"
    assert door(tests[0], "--out", out, "--stamp-request") == 0
    assert hashlib.sha256(out.read_bytes()).digest() in (tmp_path / "stamped.html.tsq").read_bytes()  # RFC 3161, 2.4.1
    assert door("--verify", out) == 0
    assert door("--verify", out, "--authority", authority(tmp_path, "ours")) == 1
    assert "NO TIME-STAMP" in capsys.readouterr().out
