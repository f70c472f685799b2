"""Files that somebody has changed on purpose, with every check put right: recordings, pages, texts, settings, pipes."""

from __future__ import annotations

import hashlib
import json
import os
import random
import signal
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import msgspec

from analysis.pipeline import read_file
from analysis.report import verify
from analysis.report.html import RECORD_CLOSES, RECORD_OPENS
from analysis.report.verify import Holds
from analysis.report.write import content_of, write_report, writer
from analysis.rows.batch import batch
from gui.models.settings import Choices, Settings
from logger.edges.toml_file import parse_toml, read_toml
from logger.errors import HeldwheelError
from logger.header import Header, JobFacts
from logger.instruments.saved import read_lever, read_limit
from logger.recordings.files import read_trace
from logger.recordings.recording_text import format_event, format_header
from logger.samples import Event, EventKind
from tests.analysis.sample import issue, material
from tests.faults import recordings
from tests.faults.forged import forged
from tests.faults.tally import Campaign, Tally

WAIT_S = 20
FORMULA = ("=", "+", "-", "@")


def changed(cases: int, seed: int) -> Tally:
    """Change the rows of closed recordings, put every batch's check right and keep the closing line."""
    tally = Tally("recordings changed behind their closing line", cases)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "a.csv"
        whole = recordings.write(path, 400)
        before = read_trace(path)
        for number in range(cases):
            rng = random.Random(f"{seed} {number}")
            data = forged(whole, rng.choice([3.0, -1.0, rng.uniform(0.5, 2.0), 1.001]))
            path.write_bytes(data)
            trace = read_trace(path)
            computed = hashlib.sha256(data).hexdigest()
            tally.require(trace.sha256 == computed, f"a hash that is not computed ({number})")
            tally.require(
                before.above_sha256 not in (trace.sha256, trace.above_sha256), f"the stated hash is given ({number})"
            )
            tally.require(trace.state == "recovered" and "changed" in trace.problems[0], f"not told ({number})")
            tally.counts["told"] += 1
    tally.outcome = f"{tally.counts['told']:,} of {cases:,} told; no hash is taken from the file"
    return tally


def _page(text: str, rng: random.Random) -> tuple[str, bool]:
    """Change a page as somebody would who knows how it is made; tell whether what is critical is another."""
    start = text.index(RECORD_OPENS) + len(RECORD_OPENS)
    end = text.index(RECORD_CLOSES, start)
    record: dict[str, Any] = json.loads(text[start:end])
    before, shown, rest = record.pop("id"), text[:start], text[end:]
    edits: list[tuple[str, str, bool]] = [
        ("within</div>", "outside</div>", True), ("55.3 ±", "65.3 ±", True), ("2026-05-17", "2020-05-17", True),
        ("Hillfoot", "Another", True), ("<h1>", "<p>safe to drive</p><h1>", False),
        ("</style>", ".verdict { display: none } </style>", False), ("</main>", "<p>checked twice</p></main>", False),
    ]  # fmt: skip
    critical = False
    for old, new, matters in rng.sample(edits, rng.randint(1, 3)):
        assert old in shown + rest, old
        shown, rest = shown.replace(old, new), rest.replace(old, new)
        critical |= matters
    claims = [writer(), writer().replace("jinja2 ", "jinja2 0."), "Heldwheel 0.2.9, jinja2 3", "Heldwheel 9.9", "", "x"]
    record["writer"] = rng.choice(claims)
    now = verify.identity_of(record, verify.issue_of(record))
    whole = shown + json.dumps({"id": now, **record}, sort_keys=True, ensure_ascii=False) + rest
    return whole.replace(before, now).replace(verify.short_of(before), verify.short_of(now)), critical


def pages(cases: int, seed: int) -> Tally:
    """Change what pages show, claim another version, make the record's identity fit."""
    tally = Tally("pages changed, and the verifier talked down", cases)
    with tempfile.TemporaryDirectory() as folder:
        page = write_report(content_of(material(), issue()), Path(folder) / "r.html")
        sound = page.read_text("utf-8")
        tally.require(verify.verify(page, lambda _: material()).holds is Holds.YES, "a sound page does not hold")
        for number in range(cases):
            text, critical = _page(sound, random.Random(f"{seed} {number}"))
            page.write_text(text, "utf-8")
            found = verify.verify(page, lambda _: material())
            tally.counts[found.holds.name.lower()] += 1
            tally.require(found.holds is not Holds.YES, f"a changed page holds ({number})")
            tally.require(found.holds is Holds.NO or not critical, f"a changed result or name is let by ({number})")
    tally.outcome = (
        f"none holds: {tally.counts['no']:,} do not hold, {tally.counts['figures']:,} lead with PAGE NOT CHECKED; a "
        "changed result, value, name or date never passes"
    )
    return tally


def formulas(cases: int, seed: int) -> Tally:
    """Put texts into headers and events that a spreadsheet would run if it split them."""
    tally = Tally("formulas in the texts of recordings", cases)
    rng = random.Random(seed)
    for number in range(cases):
        note = "".join(rng.choices("a,;=+-@ '\"\\\t\nc0ä", k=rng.randint(1, 14)))
        header = msgspec.structs.replace(recordings.HEADER, job=JobFacts(notes=note))
        text = format_header(header)
        again = parse_toml("\n".join(line[2:] for line in text.split("\n")[1:]), Header, "x")
        tally.require(again == header, f"{note!r} is not read as it was written (seed {seed}, {number})")
        text += format_event(Event(EventKind.NOTE, text=note, time_s=0.0))
        cells = [cell for line in text.splitlines() for separator in ",;\t" for cell in line.split(separator)[1:]]
        run = [cell for cell in cells if cell.strip(" '\"").startswith(FORMULA)]
        tally.require(not run, f"{run} of {note!r} (seed {seed}, {number})")
    tally.outcome = "none becomes a cell that a spreadsheet runs, whichever separator it splits at"
    return tally


def settings(cases: int, seed: int) -> Tally:
    """Open and change settings that are damaged, of another version, or no settings at all."""
    tally = Tally("settings from the future and from the gutter", cases)
    good = b'shop = "Hillfoot Workshop"\nunit = "lbf\xc2\xb7ft"\n'
    odd = (b"wheel = 4\n", b'scale = "large"\n', b"scale = nan\n", b"window = [0, 0, 9000000000000000000, 1]\n", b"[")
    for number in range(cases):
        rng = random.Random(f"{seed} {number}")
        data = b"".join(rng.sample([good, *odd, rng.randbytes(rng.randint(0, 40))], rng.randint(1, 4)))
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder) / "window.toml"
            file.write_bytes(data)
            found = Settings(Path(folder))
            well = not found.problem
            found.remember(operator="A")
            now = read_toml(file, Choices)
            kept = [path.read_bytes() for path in Path(folder).glob("*.kept*")]
            tally.require(now.operator == "A", f"not remembered (seed {seed}, {number})")
            tally.require(well or kept == [data], f"not kept (seed {seed}, {number})")
            tally.counts["kept aside" if kept else "in order"] += 1
    tally.outcome = f"none: {tally.counts['kept aside']:,} that were not in order are kept aside byte for byte"
    return tally


def _hangs(_number: int, _frame: object) -> None:
    raise TimeoutError("hangs")


READERS: Mapping[str, Callable[[Path], object]] = {
    "a.csv": lambda folder: read_trace(folder / "a.csv"),
    "a.sidecar.toml": lambda folder: read_file(folder / "a.csv"),
    "free.csv": lambda folder: read_file(folder / "free.csv"),
    "l.toml": lambda folder: (read_lever if folder.name[-1] < "h" else read_limit)(folder / "l.toml"),
    "window.toml": lambda folder: Settings(folder).remember(operator="A"),
    "b.csv": lambda folder: batch([str(folder / "b.csv"), str(folder / "a.csv")], folder / "t.csv", workers=1),
    "r.html": lambda folder: verify.read_record(folder / "r.html"),
}
REFUSED = {"window.toml", "b.csv"}  # these go on without it


def pipes(cases: int) -> Tally:
    """Put a pipe that nobody writes into the place of every kind of file."""
    tally = Tally("pipes in the place of files", cases)
    before = signal.signal(signal.SIGALRM, _hangs)
    try:
        for number in range(cases):
            name = list(READERS)[number % len(READERS)]
            with tempfile.TemporaryDirectory() as folder:
                recordings.write(Path(folder) / "a.csv", 100)
                (Path(folder) / name).unlink(missing_ok=True)
                os.mkfifo(Path(folder) / name)
                signal.alarm(WAIT_S)
                try:
                    READERS[name](Path(folder))
                    tally.require(name in REFUSED, f"{name}: a pipe is read")
                except HeldwheelError as error:
                    tally.require("no regular file" in str(error), f"{name}: {error}")
                except TimeoutError:
                    tally.fail(f"{name}: hangs")
                finally:
                    signal.alarm(0)
                tally.counts[name] += 1
    finally:
        signal.signal(signal.SIGALRM, before)
    tally.outcome = f"none is waited for: {len(READERS)} kinds of files are refused in words or gone on without"
    return tally


CAMPAIGNS = [
    Campaign("changed behind the closing line", changed, 10, 1_000, seeded=True, long_s=20),
    Campaign("pages talked down", pages, 20, 1_000, seeded=True, long_s=60),
    Campaign("formulas", formulas, 1_000, 100_000, seeded=True, long_s=60),
    Campaign("settings", settings, 20, 2_000, seeded=True, long_s=30),
    Campaign("pipes", pipes, len(READERS), 10 * len(READERS), long_s=20),
]
