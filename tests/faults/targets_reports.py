"""Fuzz targets: whole readings, reports and the JSON that we read back."""

from __future__ import annotations

import argparse
import contextlib
import io
import json
import random
import shutil
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar, get_type_hints

import msgspec
import numpy as np

from analysis.doors import report
from analysis.pipeline import read_file
from analysis.report.gather import material_of
from analysis.report.html import to_html
from analysis.report.material import Issue, PageKind
from analysis.report.pdf import to_pdf
from analysis.report.verify import _compare_claims, issue_of, read_record
from analysis.report.write import claims_of, content_of
from analysis.rows.journal import Journal
from analysis.rows.summary import asked_from
from analysis.rows.tables import PULL_COLUMNS, RECORDING_COLUMNS, to_csv, to_json
from logger.header import (
    Axle,
    Conditions,
    Header,
    JobFacts,
    Lever,
    Limit,
    Photo,
    RecordingSource,
    Test,
    TransducerFacts,
)
from logger.recordings.recording import RecordingWriter
from logger.recordings.sidecar import sidecar_path
from logger.samples import Block, Column, Ending, EndReason, Event, EventKind
from tests.faults.fuzz import Target
from tests.faults.mutate import mutated
from tests.faults.targets_analysis import _spoilt, pull
from tests.faults.targets_files import folder
from tests.faults.targets_text import SIDECAR

if TYPE_CHECKING:
    from datetime import datetime


R = TypeVar("R", bound=msgspec.Struct)
ROOT = Path(__file__).parents[2]
EVIL = [
    "<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "'; DROP TABLE jobs; --", "=HYPERLINK(\"http://x\")",
    "+1+1", "-1+1", "@SUM(A1)", "\t=1+1", "\r=1+1", "\n=1+1", "{{ 7*7 }}", "{% raw %}", "</script><script>", "]]>",
    "<!--", "&lt;b&gt;", "javascript:alert(1)", "\u202egnp.exe", "\x1b[31mred\x1b[0m", "a" * 5000, "\x00", "\ud7ff",
    "%s%n", "${x}", "</svg><style>*{display:none}</style>", "../../etc/passwd", "c:\\con\\nul",
    "é\u0301\u200b", "\U0001f9a0",
]  # fmt: skip


def evil_header(rng: random.Random) -> Header:
    """Fill every text of a header with something hostile, whatever fields its records have."""

    def text() -> str:
        return rng.choice(EVIL)

    def fill(record: R) -> R:
        names = [name for name, kind in get_type_hints(type(record)).items() if kind is str]
        return msgspec.structs.replace(record, **{name: text() for name in names})

    limit = fill(Limit(quantity="breakaway", kind=rng.choice(("min", "max")), unit="N·m", source="x"))
    limit = msgspec.structs.replace(limit, unit="N·m", **{"lower" if limit.kind == "min" else "upper": 20.0})
    facts = TransducerFacts(capacity_nm=200, accuracy_percent_of_reading=0.5)
    return Header(
        program=text(),
        simulated=True,
        job=fill(JobFacts(tags={text(): text(), "shim": 1.2})),
        axle=fill(Axle()),
        test=fill(Test(place="car", held="other side", gear="neutral")),
        conditions=fill(Conditions()),
        lever=fill(Lever(fixture="one stud", length_mm=450, stud_circle_mm=114.3, studs=5, angle_deg=0)),
        limit=limit if rng.random() < 0.7 else None,
        transducer=msgspec.structs.replace(fill(facts), unit="N·m"),
        both_free=fill(RecordingSource(file="x", sha256="x")) if rng.random() < 0.3 else None,
        photos=tuple(fill(Photo(file="x", sha256="x")) for _ in range(rng.randrange(4))),
    )


def evil_recording(rng: random.Random, path: Path) -> None:
    """Record a spoilt trace with a hostile header and hostile notes, closed as it should be."""
    path.unlink(missing_ok=True)
    header = evil_header(rng)
    columns = (Column("torque", "N·m"), Column("counter", ""))
    writer = RecordingWriter(path, header, columns)
    time_s, torque = pull(rng, rng.choice((50.0, 200.0)), rng.choice((27.0, -27.0)))
    if rng.random() < 0.5:
        again_s, again = pull(rng, 1 / (time_s[1] - time_s[0]), 28.0)
        time_s, torque = np.concatenate([time_s, again_s + time_s[-1] + 0.01]), np.concatenate([torque, again])
    spoilt_s = time_s.copy()
    for _ in range(rng.randrange(3)):
        _spoilt(rng, spoilt_s, torque)
    torque = np.where(np.isfinite(torque), torque, np.nan)
    events = (Event(EventKind.NOTE, rng.randrange(len(time_s)), 0, rng.choice(EVIL)),)
    writer.on_block(Block(time_s, {"torque": torque, "counter": np.arange(len(time_s), dtype=float)}, events))
    writer.on_end(Ending(EndReason.STOPPED))


def readings(rng: random.Random) -> str:
    """A recording read whole gives JSON without NaN and tables that start no formula, or is refused."""
    path = folder() / "reading.csv"
    evil_recording(rng, path)
    sidecar_path(path).unlink(missing_ok=True)
    if rng.random() < 0.3:
        sidecar_path(path).write_bytes(mutated(rng, [SIDECAR]))
    found = read_file(path)
    json.loads(json.dumps(found.to_json(budgets=True), allow_nan=False))
    return "pulls" if found.pulls else "no pull"


class Page(HTMLParser):
    """Collects what a browser would run or load."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.bad: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note tags and attributes that could run something."""
        self.tags.append(tag)
        if tag in ("img", "iframe", "object", "embed", "form", "a", "b-evil", "base"):
            self.bad.append(tag)
        if tag == "script" and dict(attrs).get("type") != "application/json":
            self.bad.append("script")
        self.bad += [f"{tag} {name}" for name, value in attrs if name.startswith("on") or "javascript" in (value or "")]


def pages(rng: random.Random) -> str:
    """Hostile texts in every field reach the page as text: no tag, attribute, script or formula comes of them."""
    from datetime import UTC, datetime

    path = folder() / f"{rng.choice(('page', '<b>', 'a=b', '@x'))}.csv"
    evil_recording(rng, path)
    found = read_file(path)
    words = [rng.choice(EVIL) for _ in range(3)]
    issue = Issue(datetime(2026, 5, 1, tzinfo=UTC), rng.choice(list(PageKind)), "N·m", words[0], words[1], 1, words[2])
    content = content_of(material_of(found), issue)
    if rng.random() < 0.1:
        assert to_pdf(content).startswith(b"%PDF")
    html = to_html(content)
    page = Page()
    page.feed(html)
    page.close()
    assert not page.bad, f"the page would run or load {page.bad}"
    assert page.tags.count("script") == 1
    assert page.tags.count("style") == 1
    assert page.tags.count("html") == 1
    assert "\x00" not in html
    assert "\x1b" not in html
    _tables(rng)
    return "pulls" if found.pulls else "no pull"


def _tables(rng: random.Random) -> None:
    import csv

    for columns in (RECORDING_COLUMNS, PULL_COLUMNS):
        row: dict[str, Any] = {
            c.name: rng.choice(EVIL) if c.type == "text" else rng.choice((-1.5, float("nan"), None, 3)) for c in columns
        }
        text = to_csv(columns, [row])
        read = list(csv.reader(io.StringIO(text)))
        assert len(read) == 2, "a text broke the row"
        for column, cell in zip(columns, read[1], strict=True):
            if column.type == "text":
                assert not cell.startswith(("=", "+", "-", "@", "\t", "\r")), f"a formula in {column.name}: {cell!r}"
        json.loads(to_json(columns, [row]))


@cache
def report_bytes() -> bytes:
    """Write a sound report of an example recording."""
    from datetime import UTC, datetime

    here = folder() / "verified"
    here.mkdir(exist_ok=True)
    shutil.copy(ROOT / "recordings" / "01-arrival-left.csv", here / "seed.csv")
    when: datetime = datetime(2026, 5, 1, tzinfo=UTC)
    return to_html(
        content_of(material_of(read_file(here / "seed.csv")), Issue(when, PageKind("customer"), "N·m", "", "", 1, ""))
    ).encode()


_JSON_TOKENS = [
    b"null",
    b"[]",
    b"{}",
    b'""',
    b"-1",
    b"true",
    b'{"file": "../../x"}',
    b'{"recording": 5}',
    b"[" * 3000,
    b'"revision": 0,',
    b"1e999",
]


def _changed_page(rng: random.Random) -> tuple[Path, bool]:
    """Write a report with something changed; tell whether anything was."""
    whole = report_bytes()
    begin = whole.index(b'id="heldwheel-report">')
    data = bytearray(whole)
    if rng.random() < 0.7:  # in its record
        record = (
            mutated(rng, [whole[begin:][:6000]], _JSON_TOKENS)
            if rng.random() < 0.5
            else _other_record(rng, whole[begin:])
        )
        data[begin : begin + 6000] = record
    else:
        at = rng.randrange(begin)
        data[at : at + rng.randrange(3)] = rng.randbytes(rng.randrange(1, 4))
    page = folder() / "verified" / "page.html"
    page.write_bytes(bytes(data))
    return page, bytes(data) != whole


@cache
def _claims() -> dict[str, Any]:
    report_bytes()
    return claims_of(material_of(read_file(folder() / "verified" / "seed.csv")))


def reports(rng: random.Random) -> str:
    """The record of a report that was changed is read and compared, or refused."""
    page, _ = _changed_page(rng)
    record = read_record(page)
    issue_of(record)
    asked_from(record.get("asked"))
    assert all(line.strip() for line in _compare_claims(record.get("claims"), _claims()))
    return "read"


def report_door(rng: random.Random) -> str:
    """A report that was changed does not hold, or is refused; the command looks for the recording that it names."""
    page, changed = _changed_page(rng)
    parser = argparse.ArgumentParser()
    report.add_arguments(parser)
    with contextlib.redirect_stdout(io.StringIO()):
        code = report.run(parser.parse_args(["--verify", str(page)]))
    assert code != 0 or not changed, "a changed report holds"
    return "read"


def _other_record(rng: random.Random, text: bytes) -> bytes:
    """Put another value of another type somewhere into the record."""
    head, tail = text.index(b">") + 1, text.index(b"</script>")
    tree = json.loads(text[head:tail])
    node: Any = tree
    for _ in range(rng.randrange(1, 5)):
        keys = list(node) if isinstance(node, dict) else list(range(len(node)))
        if not keys:
            break
        key = rng.choice(keys)
        if not isinstance(node[key], dict | list) or rng.random() < 0.3:
            node[key] = rng.choice((None, 5, -1, "", "..", "x" * 300, [], {}, [1], {"a": 1}, True, "2026-05-01"))
            break
        node = node[key]
    return text[:head] + json.dumps(tree).encode() + text[tail:]


_JOURNAL = b"".join(
    b'{"settings": "s", "key": ["%s", 3, 5], "rows": [{"file": "a", "rate_hz": 500.0}], "error": ""}\n' % name
    for name in (b"/a.csv", b"/b.csv")
)


def journals(rng: random.Random) -> str:
    """The journal of a batch that was stopped: lines that do not hold are as if they were not there."""
    path = folder() / "journal.jsonl"
    target = folder() / "batch.csv"
    target.write_bytes(b"x")
    stat = target.stat()
    key = json.dumps([str(target), stat.st_size, stat.st_mtime_ns]).encode()
    good = b'{"settings": "s", "key": %s, "rows": [{"file": "a", "rate_hz": 500.0}], "error": ""}\n' % key
    path.write_bytes(mutated(rng, [good, _JOURNAL, good + good], _JSON_TOKENS))
    journal = Journal(path, "s")
    journal.load([target])
    rows = list(journal.rows())
    if len(rows) != journal.count or set(journal.done) - {0}:
        raise AssertionError(f"{len(rows)} rows of {journal.count}, {journal.done}")
    to_csv(RECORDING_COLUMNS, rows)
    to_json(RECORDING_COLUMNS, rows)
    return "read"


TARGETS = [
    Target("whole readings", readings, long=5_000, short=100, long_s=48),
    Target("report pages", pages, long=2_000, short=30, long_s=44),
    Target("reports to verify (JSON)", reports, long_s=35),
    Target("command that verifies", report_door, long=1_500, short=20, long_s=26),
    Target("journals of a batch (JSON)", journals, long_s=31),
]
