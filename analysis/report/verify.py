"""Does a report still hold? Do its work again from the raw recording and compare.

A report carries what it was made from (``analysis.report.write``): the recording's hash, the settings, every figure it
states. Verifying reads that record, finds the recording, reads it again with the same settings, and compares hash,
header, figures, result, and finally the page itself, byte for byte.

A verified report is what this program would write about that file; who recorded the file it cannot say.
"""

from __future__ import annotations

import base64
import binascii
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Any

from analysis.report import html as report_html
from analysis.report import pdf as report_pdf
from analysis.report.content import clean
from analysis.report.material import Issue, Kind, PaperSize
from analysis.report.write import (
    SCHEMA,
    both_free_of,
    claims_of,
    content_of,
    header_hash,
    identity_of,
    neutral_of,
    render,
    writer,
)
from logger.errors import HeldwheelError, InputError
from logger.photos import PhotoState, photo_state
from logger.small_file import read_bounded

if TYPE_CHECKING:
    from analysis.report.material import Material

MAX_BYTES = 20_000_000
"""A report of thousands of pulls stays far below."""

LARGEST = 1e300
SAME_NM = 2e-6
"""Two figures of one reading agree to the digits that a report keeps."""


class Holds(StrEnum):
    """Whether a report holds."""

    YES = "holds"
    FIGURES = "the figures hold, the page could not be compared"
    NO = "does not hold"


@dataclass(frozen=True, slots=True)
class Verification:
    """Whether a report holds.

    Attributes
    ----------
    identity : str
        The report's.
    holds : Holds
        Whether everything was found again.
    lines : tuple of str
        What does not hold, or what was compared and found.
    """

    identity: str
    holds: Holds
    lines: tuple[str, ...]


def read_record(path: Path | str) -> dict[str, Any]:
    """Read the machine-readable part of a report.

    Raises
    ------
    FileError
        It cannot be read.
    InputError
        It is no report of this program.
    """
    path = Path(path)
    data = read_bounded(path, MAX_BYTES, "this is no report")
    if data.startswith(b"%PDF"):
        text = _between(data, report_pdf.RECORD_OPENS, report_pdf.RECORD_CLOSES)
        found = None if text is None else _decoded(text)
    else:
        opens, closes = report_html.RECORD_OPENS.encode(), report_html.RECORD_CLOSES.encode()
        found = _between(data, opens, closes)
    try:
        record = json.loads(found.decode("utf-8"), parse_constant=_no_number) if found is not None else None
    except (ValueError, RecursionError):
        record = None
    if not isinstance(record, dict) or record.get("schema") != SCHEMA:
        raise InputError(f"{path}: is no report written by this program, or its record was taken out")
    return record


def _no_number(text: str) -> float:
    raise ValueError(f"{text} is no JSON number")


def _between(data: bytes, opens: bytes, closes: bytes) -> bytes | None:
    """Give what stands between the only opening mark and the next closing one."""
    if data.count(opens) != 1:
        return None
    start = data.index(opens) + len(opens)
    end = data.find(closes, start)
    return data[start:end] if end >= 0 else None


def _decoded(text: bytes) -> bytes | None:
    try:
        return base64.b64decode(text, validate=True)
    except binascii.Error:
        return None


def issue_of(record: Mapping[str, Any]) -> Issue:
    """Give the issue that a record states.

    Raises
    ------
    InputError
        It is incomplete.
    """
    try:
        said = record["issue"]
        return Issue(
            datetime.fromisoformat(said["issued"]),
            Kind(said["kind"]),
            str(said["unit"]),
            str(said["shop"]),
            str(said["address"]),
            int(said["revision"]),
            str(said["remarks"]),
            str(said.get("authorised", "")),
            PaperSize(said.get("paper", "A4")),
        )
    except (KeyError, TypeError, ValueError, OverflowError) as error:
        raise InputError(f"the report's record is damaged: {error!r}") from None


def verify(path: Path | str, read: Callable[[Mapping[str, Any]], Material]) -> Verification:
    """Verify a report.

    Parameters
    ----------
    path : Path or str
        The report, HTML or PDF.
    read : callable
        Gives the material of the recording that a record names, read with the record's settings; raises a
        ``HeldwheelError`` where it cannot.

    Raises
    ------
    FileError, InputError
        The report itself cannot be read.
    """
    path = Path(path)
    record = read_record(path)
    identity = str(record.get("id", ""))
    issue = issue_of(record)
    try:
        material = read(record)
    except HeldwheelError as error:
        return Verification(identity, Holds.NO, (f"the recording cannot be read again: {error}",))
    wrong = [*_compare_sources(record, material), *_compare_claims(record.get("claims"), claims_of(material))]
    photos = _photos(material)
    wrong += [f"photo {name}: {PhotoState.CHANGED}, its SHA-256 differs" for name in photos[PhotoState.CHANGED]]
    comparable = record.get("writer") == writer()
    wrong += _compare_page(path, record, material, issue, bytewise=comparable)
    if wrong:
        return Verification(identity, Holds.NO, tuple(wrong))
    pulls = sum(len(half.pulls) for half in material.halves)
    lines = [
        *(f"recording {Path(half.file).name}: unchanged, SHA-256 {half.sha256}" for half in material.halves),
        f"{pulls} pull{'s' * (pulls != 1)}, {len(material.job)} values and the result found again",
    ]
    if material.drag is not None:
        lines.append(f"both-free baseline {Path(material.drag.file).name}: unchanged, SHA-256 {material.drag.sha256}")
    lines += [f"photo {name}: {state}" for state, names in photos.items() for name in names]
    if not comparable:
        lines.append(f"the page was set by {record.get('writer')}, this is {writer()}: its text was not compared")
        return Verification(identity, Holds.FIGURES, tuple(lines))
    lines.append("the page is what this program writes about that recording; the workshop's own words are its own")
    return Verification(identity, Holds.YES, tuple(lines))


def _compare_sources(record: Mapping[str, Any], material: Material) -> list[str]:
    wrong = []
    said = record.get("recording")
    if not isinstance(said, dict) or said.get("sha256") != material.sha256:
        wrong.append("the recording is not the one that the report was made from: its SHA-256 differs")
    for half in material.halves:
        if half.state == "closed" and any("hash" in problem.lower() for problem in half.problems):
            wrong.append(f"the recording {Path(half.file).name} does not match its own closing line")
    wrong += _compare_baseline(record.get("both_free"), material)
    wrong += _compare_neutral(record.get("neutral"), neutral_of(material))
    if record.get("header_sha256") != header_hash(material.header):
        wrong.append("what is known about the test (header and sidecar) has changed since")
    corrections = record.get("corrections")
    if corrections != len(material.corrections):
        wrong.append(f"{corrections} corrections then, {len(material.corrections)} now")
    return wrong


def _compare_baseline(said: Any, material: Material) -> list[str]:
    found = both_free_of(material)
    if said is None and found is None:
        return []
    if said is None:
        return ["the report was made without the both-free baseline that is here now"]
    if found is None:
        return ["the both-free baseline that the report was made with cannot be used any more"]
    if not isinstance(said, dict) or said.get("sha256") != found["sha256"]:
        return ["the both-free baseline is not the one that the report was made with: its SHA-256 differs"]
    return []


def _compare_neutral(said: Any, found: Mapping[str, Any] | None) -> list[str]:
    """Compare the half in neutral of a ratio."""
    if said is None and found is None:
        return []
    if said is None or found is None:
        return ["the report is of one recording, not of a ratio" if said is None else "the half in neutral is missing"]
    if not isinstance(said, dict) or said.get("sha256") != found["sha256"]:
        return ["the half in neutral is not the one that the report was made from: its SHA-256 differs"]
    wrong = []
    if said.get("header_sha256") != found["header_sha256"]:
        wrong.append("what is known about the test in neutral (header and sidecar) has changed since")
    if said.get("corrections") != found["corrections"]:
        wrong.append(f"in neutral: {said.get('corrections')} corrections then, {found['corrections']} now")
    return wrong


def _photos(material: Material) -> dict[PhotoState, list[str]]:
    """Give the names of the photos by how they stand; each file is hashed once."""
    named = {(p.file, p.sha256): (half.file, p) for half in material.halves for p in half.header.photos}
    found: dict[PhotoState, list[str]] = {state: [] for state in PhotoState}
    for recording, photo in named.values():
        found[photo_state(recording, photo)].append(clean(photo.file, 80))
    return found


def _compare_claims(said: Any, found: Mapping[str, Any]) -> list[str]:
    if not isinstance(said, dict):
        return ["the report states no figures"]
    wrong = []
    for key in ("pulls", "job", "packs", "neutral", "ratio"):
        then, now = said.get(key, None if key in ("pulls", "job") else []), found[key]  # the others came later
        if not isinstance(then, list) or len(then) != len(now):
            wrong.append(f"{key}: {len(then) if isinstance(then, list) else 'no'} then, {len(now)} now")
            continue
        wrong += [f"{key} {i + 1}: the report says {_brief(a)}, the recording {_brief(b)}"
                  for i, (a, b) in enumerate(zip(then, now, strict=True)) if not _same(a, b)]  # fmt: skip
    if said.get("state") != found["state"]:
        wrong.append(f"result: the report says {said.get('state')}, the recording {found['state']}")
    elif not _same(said.get("probability"), found["probability"]):
        wrong.append("the probability of conformity differs")
    return wrong


def _same(a: Any, b: Any) -> bool:
    if isinstance(a, bool) or isinstance(b, bool):
        return a is b
    if isinstance(a, int | float) and isinstance(b, int | float):
        if max(abs(a), abs(b)) > LARGEST:  # a whole number in JSON may be too large for any arithmetic
            return bool(a == b)
        return abs(a - b) <= SAME_NM * max(1.0, abs(b))
    if isinstance(a, dict) and isinstance(b, dict):
        return a.keys() == b.keys() and all(_same(a[key], b[key]) for key in a)
    if isinstance(a, list) and isinstance(b, list):
        return len(a) == len(b) and all(_same(x, y) for x, y in zip(a, b, strict=True))
    return bool(a == b)


def _brief(value: Any) -> str:
    text = json.dumps(value, ensure_ascii=False)
    return text if len(text) <= 160 else text[:159] + "…"


def _compare_page(
    path: Path, record: Mapping[str, Any], material: Material, issue: Issue, *, bytewise: bool
) -> list[str]:
    """Check the record's identity, then write the page again and compare it byte for byte."""
    body = {key: value for key, value in record.items() if key != "id"}
    if str(record.get("id", "")) != identity_of(body, issue):
        return ["the report's record was changed: it does not match its identity"]
    data = read_bounded(path, MAX_BYTES, "this is no report")
    if not bytewise or data == render(content_of(material, issue), "pdf" if data.startswith(b"%PDF") else "html"):
        return []
    return ["the text of the page is not what the recording gives: it was changed after it was written"]
