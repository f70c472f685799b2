"""An index of a season's reports in one folder: one page with every report's name, SHA-256 and what its record says.

The index carries its list as JSON in the page (no script). Checking it hashes every file again and sets the page again:
it holds if every byte of it is what this program writes from its list, and every report is there with its hash. What
the list says of a report is the report's own record; whether a report holds, ``report --verify`` says of each. The
workshop's key signs an index like a page (``analysis.report.signature``).
"""

from __future__ import annotations

import html
import json
import os
from collections.abc import Callable
from dataclasses import asdict, dataclass
from datetime import datetime
from pathlib import Path
from typing import Final

from analysis.report.content import clean
from analysis.report.verify import MAX_BYTES, read_record
from logger.edges.small_file import beside, hash_of, read_bounded, write_whole
from logger.errors import FileError, HeldwheelError, InputError

SCHEMA: Final = "heldwheel index 1"
OPENS: Final = '<script type="application/json" id="heldwheel-index">'
CLOSES: Final = "</script>"
ENDINGS: Final = (".html", ".pdf")
MOST: Final = 20_000  # reports of a folder
TITLE: Final = "Reports"
NAME: Final = "index.html"

Tell = Callable[[int, int], object]


def _tell_nobody(_done: int, _total: int) -> None:
    """Go on."""


@dataclass(frozen=True, slots=True)
class IndexEntry:
    """One report: its file name, the hash of its bytes, and what its record says."""

    file: str
    sha256: str
    identity: str
    issued: str
    revision: int
    recording: str
    result: str


def entries_in(folder: Path | str, tell: Tell = _tell_nobody) -> tuple[list[IndexEntry], list[str]]:
    """Give the reports of a folder in order of issue, and the pages there that are none of ours.

    ``tell`` is called with how many pages were read, and of how many, after each.

    Raises:
        FileError: The folder cannot be read.
    """
    found, other = [], []
    pages = _pages(folder)
    for count, path in enumerate(pages, 1):
        try:
            found.append(_entry(path))
        except HeldwheelError as error:
            if OPENS.encode() not in read_bounded(path, MAX_BYTES, "this is no report"):  # an index is no report
                other.append(str(error))
        tell(count, len(pages))
    return sorted(found, key=lambda entry: (entry.issued, entry.file))[:MOST], other


def _pages(folder: Path | str) -> list[Path]:
    try:
        names = sorted(os.listdir(folder))
    except OSError as error:
        raise FileError(f"{folder}: cannot be read: {error.strerror or error}") from error
    return [Path(folder) / name for name in names if not name.startswith(".") and name.lower().endswith(ENDINGS)]


def _is_report(path: Path | str) -> bool:
    try:
        read_record(path)
    except HeldwheelError:
        return False
    return True


def _entry(path: Path) -> IndexEntry:
    record = read_record(path)
    issue, recording, claims = (record.get(key) for key in ("issue", "recording", "claims"))
    issue = issue if isinstance(issue, dict) else {}
    revision = issue.get("revision", 0)
    return IndexEntry(
        path.name,
        hash_of(path, MAX_BYTES),
        clean(str(record.get("id", "")), 80),
        clean(str(issue.get("issued", "")), 40),
        revision if isinstance(revision, int) else 0,
        clean(str(recording.get("file", "")), 120) if isinstance(recording, dict) else "",
        clean(str(claims.get("state") or "no limit"), 40) if isinstance(claims, dict) else "",
    )


def index_page(entries: list[IndexEntry], title: str, made: datetime) -> str:
    """Set the page; the same list gives the same page, byte for byte."""
    title, day = clean(title, 120), made.isoformat(timespec="seconds")
    record = {"schema": SCHEMA, "title": title, "made": day, "reports": [asdict(entry) for entry in entries]}
    heads = ("Report", "Issued", "Revision", "Recording", "Result", "Identity", "SHA-256")
    rows = "\n".join(
        "<tr>" + "".join(f"<td>{html.escape(text)}</td>" for text in _cells(entry)) + "</tr>" for entry in entries
    )
    simulated = any(entry.identity.startswith("HW-SIM") for entry in entries)
    mark = "<p><strong>SIMULATED: this list holds reports of simulated data.</strong></p>\n" if simulated else ""
    text = json.dumps(record, sort_keys=True, ensure_ascii=True).replace("<", "\\u003c")
    return f"""<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>{html.escape(title)}</title>
<style>
body {{ font: 15px/1.45 sans-serif; margin: 2em; color: #1c2024; }}
table {{ border-collapse: collapse; }}
th, td {{ text-align: left; padding: .3em .8em .3em 0; border-bottom: 1px solid #b8bcc0; vertical-align: top; }}
td:nth-last-child(-n+2) {{ font-family: monospace; font-size: 12px; overflow-wrap: anywhere; }}
</style></head><body>
<h1>{html.escape(title)}</h1>
{mark}<p>{len(entries)} reports; list of {html.escape(day)}. A hash shows that a file is unchanged since this
list was made. What stands beside it is the report's own word: heldwheel-read report --verify does the work again.</p>
<table><thead><tr>{"".join(f"<th>{head}</th>" for head in heads)}</tr></thead><tbody>
{rows}
</tbody></table>
{OPENS}{text}{CLOSES}
</body></html>
"""


def _cells(entry: IndexEntry) -> tuple[str, ...]:
    revision = str(entry.revision) if entry.revision else ""
    return (entry.file, entry.issued, revision, entry.recording, entry.result, entry.identity, entry.sha256)


def write_index(
    folder: Path | str, out: Path | str, title: str, made: datetime, tell: Tell = _tell_nobody
) -> tuple[int, list[str]]:
    """Write the index of a folder; give how many reports it lists, and what there is none.

    Raises:
        InputError: The folder holds no report, or the page would lie elsewhere than its reports.
        FileError: The folder cannot be read or the page not be written.
    """
    if Path(out).resolve().parent != Path(folder).resolve():
        raise InputError(f"{out}: an index lies in the folder of its reports, {folder}")
    if _is_report(out):
        raise InputError(f"{out}: is a report; an index is not written over it")
    entries, other = entries_in(folder, tell)
    if not entries:
        raise InputError(f"{folder}: holds no report written by this program")
    write_whole(out, index_page(entries, title, made).encode())
    return len(entries), other


def make_index(
    folder: Path | str, title: str = TITLE, name: str = NAME, tell: Tell = _tell_nobody
) -> tuple[Path, int, list[str]]:
    """Write the index of a folder now: what the command and the window do; give its path as well.

    Raises:
        InputError, FileError: As ``write_index``.
    """
    out = Path(folder) / name
    count, other = write_index(folder, out, title, datetime.now().astimezone().replace(microsecond=0), tell)
    return out, count, other


def check_index(path: Path | str) -> tuple[bool, list[str]]:
    """Check an index: whether it holds, and what was found, a line each.

    Raises:
        FileError, InputError: It cannot be read, or is no index.
    """
    data = read_bounded(Path(path), MAX_BYTES, "this is no index")
    entries, title, made = _listed(data, path)
    said = []
    if index_page(entries, title, made).encode(errors="surrogatepass") != data:
        said.append("the page is not what its list gives: it was changed after it was written")
    for entry in entries:
        file = beside(path, entry.file)
        if file is None or not file.is_file():
            said.append(f"{clean(entry.file, 80)}: is missing")
        elif hash_of(file, MAX_BYTES) != entry.sha256:
            said.append(f"{clean(entry.file, 80)}: was changed since: its SHA-256 differs")
    wrong = bool(said)
    listed = {entry.file for entry in entries}
    new = [page.name for page in _pages(Path(path).parent) if page.name not in listed and _is_report(page)]
    said += [f"{clean(name, 80)}: lies here and is not in the list" for name in new]
    if not wrong:
        said.insert(0, f"{len(entries)} reports: every one is there with the hash that the list names")
    return not wrong, said


def _listed(data: bytes, path: Path | str) -> tuple[list[IndexEntry], str, datetime]:
    start, _, rest = data.partition(OPENS.encode())
    text, closes, _ = rest.partition(CLOSES.encode())
    try:
        record = json.loads(text) if closes and start else None
        if not isinstance(record, dict) or record.get("schema") != SCHEMA:
            raise ValueError("no list")
        entries = [IndexEntry(**entry) for entry in record["reports"]]
        if not all(isinstance(v, str) or k == "revision" for e in entries for k, v in asdict(e).items()):
            raise TypeError("a text is none")
        return entries, str(record["title"]), datetime.fromisoformat(record["made"])
    except (ValueError, TypeError, KeyError, RecursionError) as error:
        raise InputError(f"{path}: is no index written by this program, or its list is damaged ({error})") from None
