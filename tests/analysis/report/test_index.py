"""An index of reports in one folder: hashed, checked, signed; nothing changed passes."""

from __future__ import annotations

import hashlib
import html.parser
import json
import shutil
from pathlib import Path

import pytest

from analysis.__main__ import COMMANDS
from analysis.report.index import OPENS, check_index
from logger.edges.door import run_door
from logger.errors import InputError

SEASON = Path(__file__).parents[3] / "recordings"


def door(*words: str) -> int:
    return run_door("heldwheel-read", "", COMMANDS, "analysis.doors", words)


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("reports")
    for name, ending in (("01-arrival-left", "html"), ("01-arrival-right", "pdf")):
        shutil.copy(SEASON / f"{name}.csv", folder)
        door("report", str(folder / f"{name}.csv"), "--out", str(folder / f"{name}.{ending}"))
    (folder / "other.html").write_text("<p>no report</p>", "utf-8")
    assert door("report", "--new-key", str(folder / "shop.key")) == 0
    assert door("index", str(folder), "--title", "Season <2026>", "--sign", str(folder / "shop.key")) == 0
    return folder


@pytest.fixture
def folder(made: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(made, tmp_path / "copy"))


class Cells(html.parser.HTMLParser):
    """What a general parser of HTML finds in the table's cells."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.cells: list[str] = []
        self._in = False
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._in = tag == "td"

    def handle_endtag(self, tag: str) -> None:
        self._in = False

    def handle_data(self, data: str) -> None:
        if self._in:
            self.cells.append(data)


def test_it_lists_every_report_with_the_hash_that_sha256_gives(folder: Path, capsys):
    cells = Cells((folder / "index.html").read_text("utf-8")).cells
    for name in ("01-arrival-left.html", "01-arrival-right.pdf"):
        assert name in cells
        assert hashlib.sha256((folder / name).read_bytes()).hexdigest() in cells
    assert "other.html" not in cells
    assert "index.html" not in cells
    text = (folder / "index.html").read_text("utf-8")
    assert "SIMULATED" in text
    assert "Season &lt;2026&gt;" in text
    assert door("index", "--verify", str(folder / "index.html"), "--key", str(folder / "shop.key.pub")) == 0
    assert "2 reports: every one is there" in capsys.readouterr().out


def test_written_again_it_does_not_list_itself(folder: Path):
    assert door("index", str(folder)) == 0
    assert "index.html" not in Cells((folder / "index.html").read_text("utf-8")).cells


def test_a_report_that_was_changed_or_is_missing_is_named(folder: Path):
    page = folder / "01-arrival-left.html"
    page.write_bytes(page.read_bytes().replace(b"N", b"M", 1))
    holds, said = check_index(folder / "index.html")
    assert not holds
    assert any("01-arrival-left.html: was changed" in text for text in said)
    page.unlink()
    assert any("01-arrival-left.html: is missing" in text for text in check_index(folder / "index.html")[1])


def test_a_report_that_came_later_is_told_and_speaks_not_against_it(folder: Path):
    shutil.copy(folder / "01-arrival-left.html", folder / "later.html")
    holds, said = check_index(folder / "index.html")
    assert holds
    assert "later.html: lies here and is not in the list" in said


@pytest.mark.parametrize("change", ["row", "list", "both"])
def test_an_index_that_was_changed_does_not_hold(folder: Path, change: str, capsys):
    """A row alone, the list alone, or both made to agree: then the hash of the file, or the signature, tells."""
    path = folder / "index.html"
    text = path.read_text("utf-8")
    digest = hashlib.sha256((folder / "01-arrival-left.html").read_bytes()).hexdigest()
    head, opens, tail = text.partition(OPENS)
    fake = "0" * 64
    if change in ("row", "both"):
        head = head.replace(digest, fake)
    if change in ("list", "both"):
        tail = tail.replace(digest, fake)
    path.write_text(head + opens + tail, "utf-8")
    assert path.read_text("utf-8") != text
    assert not check_index(path)[0]
    assert door("index", "--verify", str(path)) == 1
    assert "does not hold" in capsys.readouterr().out


def test_an_index_made_anew_by_somebody_else_fails_by_its_signature(folder: Path):
    page = folder / "01-arrival-left.html"
    page.write_bytes(page.read_bytes() + b"<!-- -->")
    signature = (folder / "index.html.signature.toml").read_bytes()
    assert door("index", str(folder)) == 0
    assert (folder / "index.html.signature.toml").read_bytes() == signature
    assert check_index(folder / "index.html")[0]
    assert door("index", "--verify", str(folder / "index.html"), "--key", str(folder / "shop.key.pub")) == 1


@pytest.mark.parametrize("list_", ["", "[]", '{"schema": "heldwheel index 1"}', "{" * 5000])
def test_a_damaged_list_is_refused_in_words(tmp_path: Path, list_: str):
    path = tmp_path / "index.html"
    path.write_text(f"<p>{OPENS}{list_}</script>", "utf-8")
    with pytest.raises(InputError, match="no index"):
        check_index(path)


@pytest.mark.parametrize("name", ["../../../etc/passwd", "x" * 300 + ".html", "\ud800.html"])
def test_a_name_never_leads_out_of_the_folder_or_to_an_error(folder: Path, name: str):
    path = folder / "index.html"
    text = path.read_text("utf-8")
    record = json.loads(text.partition(OPENS)[2].partition("</script>")[0])
    record["reports"][0]["file"] = name
    head, opens, _ = text.partition(OPENS)
    path.write_text(f"{head}{opens}{json.dumps(record)}</script>", "utf-8")
    holds, said = check_index(path)
    assert not holds
    assert any("is missing" in line for line in said)


def test_a_report_is_not_written_over_and_an_empty_folder_is_refused(folder: Path, tmp_path: Path):
    assert door("index", str(folder), "--name", "01-arrival-left.html") == 2
    assert door("index", str(folder), "--name", "../index.html") == 2
    (tmp_path / "empty").mkdir()
    assert door("index", str(tmp_path / "empty")) == 2
    assert not list((tmp_path / "empty").iterdir())
