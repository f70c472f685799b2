"""Does a report still hold? Do its work again from the raw recording and compare.

A report carries what it was made from (``analysis.report.write``): the recording's hash, the settings, every figure it
states. Verifying reads that record, finds the recording, reads it again with the same settings, and compares computed
hashes, header, figures, result, and finally the page itself: byte for byte, and where that cannot be, because another
version or other libraries set it, word for word.

What a record says of the version that wrote it is anybody's word: it never excuses a result, a value, a limit or a name
on the page that is not what the work done again gives. A page that holds is what this program writes about these files
*and its issuer's word*: customer, dates, limit, lever and settings are whatever the issuer chose, so the verifier says
them apart from what it computed. Who recorded the files it cannot say; who issued the page a signature says
(``analysis.report.signature``).
"""

from __future__ import annotations

import base64
import binascii
import difflib
import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Any

from analysis.report import html as report_html
from analysis.report import pdf as report_pdf
from analysis.report.build_part import build_told, compare_build
from analysis.report.confirm_part import compare_confirmed
from analysis.report.content import clean
from analysis.report.material import Issue, Material, PageKind, PaperSize
from analysis.report.spoken import check_language
from analysis.report.spoken import said as told_in
from analysis.report.visible import texts_of
from analysis.report.write import (
    SCHEMA,
    both_free_of,
    claims_of,
    content_of,
    header_hash,
    identity_of,
    neutral_of,
    render,
    short_of,
    writer,
)
from logger.edges.small_file import read_bounded
from logger.errors import HeldwheelError, InputError
from logger.recordings.photos import PhotoState, photo_state
from logger.version import VERSION

if TYPE_CHECKING:
    from analysis.report.content import Content
    from analysis.report.material import ConfirmPart, DragPart

MAX_BYTES = 20_000_000
"""A report of thousands of pulls stays far below."""

LARGEST = 1e300
FIRST_SCHEMA = "heldwheel report 1"
"""Of reports up to 0.2.0: identities of 32 bits, no hash of a sidecar."""

MOST_DIFFERENCES = 20
"""Lines told of a page that differs."""

SAME_NM = 2e-6
"""Two figures of one reading agree to the digits that a report keeps."""


class Holds(StrEnum):
    """Whether a report holds."""

    YES = "holds"
    FIGURES = "PAGE NOT CHECKED: anything visible on it may have been changed; the figures in its record hold"
    NO = "does not hold"


@dataclass(frozen=True, slots=True)
class Verification:
    """Whether a report holds."""

    identity: str  # the report's
    holds: Holds  # whether everything was found again
    lines: tuple[str, ...]  # what does not hold, or what was compared and found
    # (str, str); what this program reads from the recording, by labels: result and values
    computed: tuple[tuple[str, str], ...] = ()
    # (str, str); what the issuer chose, by labels: limit, customer, dates, lever, settings
    stated: tuple[tuple[str, str], ...] = ()


def read_record(path: Path | str) -> dict[str, Any]:
    """Read the machine-readable part of a report.

    Raises:
        FileError: It cannot be read.
        InputError: It is no report of this program.
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
    if not isinstance(record, dict) or record.get("schema") not in (SCHEMA, FIRST_SCHEMA):
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

    Raises:
        InputError: It is incomplete.
    """
    try:
        said = record["issue"]
        return Issue(
            datetime.fromisoformat(said["issued"]),
            PageKind(said["kind"]),
            str(said["unit"]),
            str(said["shop"]),
            str(said["address"]),
            int(said["revision"]),
            str(said["remarks"]),
            str(said.get("authorised", "")),
            PaperSize(said.get("paper", "A4")),
            "in" if said.get("lengths") == "in" else "mm",
            check_language(str(said.get("language", "en"))),
        )
    except (KeyError, TypeError, ValueError, OverflowError) as error:
        raise InputError(f"the report's record is damaged: {error!r}") from None


def verify(path: Path | str, read: Callable[[Mapping[str, Any]], Material]) -> Verification:
    """Verify a report.

    Args:
        path: The report, HTML or PDF.
        read: Gives the material of the recording that a record names, read with the record's settings; raises a
            ``HeldwheelError`` where it cannot.

    Raises:
        FileError, InputError: The report itself cannot be read.
    """
    path = Path(path)
    record = read_record(path)
    identity = str(record.get("id", ""))
    issue = issue_of(record)
    try:
        material = read(record)
        if record.get("build") is None:  # made before there was a sheet, or by a version that showed none
            material = replace(material, build=None)
    except HeldwheelError as error:
        return Verification(identity, Holds.NO, (f"the recording cannot be read again: {error}",))
    again = content_of(material, replace(issue, language="en"))  # what is told here is English
    computed, stated = _computed(again), _stated(again, material, record)
    wrong = [*_compare_sources(record, material), *compare_build(record, material, issue)]
    wrong += [*compare_confirmed(record, material), *_compare_claims(record.get("claims"), claims_of(material))]
    photos = _photos(material)
    wrong += [f"photo {name}: {PhotoState.CHANGED}, its SHA-256 differs" for name in photos[PhotoState.CHANGED]]
    seen, found = _compare_page(path, record, material, issue)
    if wrong or seen is Holds.NO:
        told = found if seen is not Holds.YES else ()
        return Verification(identity, Holds.NO, (*wrong, *told), computed, stated)
    pulls = sum(len(half.pulls) for half in material.halves)
    lines = [*found] if seen is Holds.FIGURES else []
    lines += (_unchanged("recording", half) for half in material.halves)
    lines.append(f"{pulls} pull{'s' * (pulls != 1)}, {len(material.job)} values and the result found again")
    if material.drag is not None:
        lines.append(_unchanged("both-free baseline", material.drag))
    lines += build_told(record, material, issue)
    if material.confirmed is not None:
        lines.append(_unchanged("second test", material.confirmed))
    lines += [f"photo {name}: {state}" for state, names in photos.items() for name in names]
    lines += found if seen is Holds.YES else ()
    return Verification(identity, seen, tuple(lines), computed, stated)


def _unchanged(what: str, part: Material | DragPart | ConfirmPart) -> str:
    """Say that a file has the hash that the report states, and whether it is as it was closed."""
    state = "" if part.state == "closed" else f"; it is {part.state}: no closing line vouches for it"
    return f"{what} {clean(Path(part.file).name, 80)}: the bytes that the report names, SHA-256 {part.sha256}{state}"


def _computed(again: Content) -> tuple[tuple[str, str], ...]:
    """Give what this program reads from the recording."""
    verdict = again.verdict
    result = (("result", f"{verdict.state}, by the stated limit and rule"),) if verdict is not None else ()
    return (*result, *((line.label, f"{line.value} ({line.remark})") for line in again.headlines))


def _stated(again: Content, material: Material, record: Mapping[str, Any]) -> tuple[tuple[str, str], ...]:
    """Give what its issuer chose, as the page must show it."""
    asked = ", ".join(f"{key} {_brief(value)}" for key, value in sorted(material.asked.items()) if value)
    limit = (("limit", again.verdict.limit), ("rule", again.verdict.rule)) if again.verdict is not None else ()
    return (
        ("shop", again.shop),
        *again.facts,
        *limit,
        ("fixture", clean(material.fixture)),
        ("true zero", clean(material.zero_from)),
        *((("settings of the reading", clean(asked, 300)),) if asked else ()),
        ("written by", clean(str(record.get("writer")), 200)),
    )


def _compare_sources(record: Mapping[str, Any], material: Material) -> list[str]:
    wrong = []
    wrong += _compare_file("recording", record.get("recording"), material, record)
    wrong += _compare_baseline(record, material)
    wrong += _compare_neutral(record, material)
    if record.get("header_sha256") != header_hash(material.header):
        wrong.append("what is known about the test (header and sidecar) has changed since")
    corrections = record.get("corrections")
    if corrections != len(material.corrections):
        wrong.append(f"{corrections} corrections then, {len(material.corrections)} now")
    return wrong


def _compare_file(what: str, said: Any, found: Material | DragPart, record: Mapping[str, Any]) -> list[str]:
    """Compare computed hashes of a recording and of its sidecar with those that the record states."""
    first = record.get("schema") == FIRST_SCHEMA  # it named closed recordings by the hash above their closing line
    known = (found.sha256, *([found.above_sha256] if first and isinstance(found, Material) else ()))
    if not isinstance(said, dict) or said.get("sha256") not in known:
        return [f"the {what} is not the one that the report was made from: its SHA-256 differs"]
    if not first and said.get("sidecar_sha256") != found.sidecar_sha256:
        return [f"the {what}'s sidecar is not the one that the report was made with: its SHA-256 differs"]
    return []


def _compare_baseline(record: Mapping[str, Any], material: Material) -> list[str]:
    said, found = record.get("both_free"), both_free_of(material)
    if said is None and found is None:
        return []
    if said is None:
        return ["the report was made without the both-free baseline that is here now"]
    if material.drag is None:
        return ["the both-free baseline that the report was made with cannot be used any more"]
    return _compare_file("both-free baseline", said, material.drag, record)


def _compare_neutral(record: Mapping[str, Any], material: Material) -> list[str]:
    """Compare the half in neutral of a ratio."""
    said, found = record.get("neutral"), neutral_of(material)
    if said is None and found is None:
        return []
    if said is None or found is None:
        return ["the report is of one recording, not of a ratio" if said is None else "the half in neutral is missing"]
    wrong = _compare_file("half in neutral", said, material.halves[-1], record)
    if not isinstance(said, dict):
        return wrong
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
    for key in ("pulls", "job", "packs", "neutral", "ratio", "second"):
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
    path: Path, record: Mapping[str, Any], material: Material, issue: Issue
) -> tuple[Holds, tuple[str, ...]]:
    """Check the record's identity, write the page again with that record, and compare what is seen."""
    if not _is_own(record, issue):
        return Holds.NO, ("the report's record was changed: it does not match its identity",)
    data = read_bounded(path, MAX_BYTES, "this is no report")
    try:
        again = content_of(material, issue, record)
        ours = render(again, "pdf" if data.startswith(b"%PDF") else "html")
    except ValueError:  # a number in its record that no JSON can hold
        return Holds.NO, ("the report's record is damaged",)
    if data == ours and record.get("schema") == SCHEMA:
        return Holds.YES, ("every byte of the page is what this program writes from these files and its issuer's word",)
    text, wanted = texts_of(data), texts_of(ours)
    other = [line for line in difflib.ndiff(wanted, text) if line[0] in "+-"][:MOST_DIFFERENCES]
    told = tuple(f"{'on the page' if line[0] == '+' else 'expected'}: {line[2:]}" for line in other)
    claimed = str(record.get("writer"))
    if claimed == writer():
        return Holds.NO, ("the page is not what these files give: it was changed after it was written", *told)
    if text != wanted and claimed.startswith(f"Heldwheel {VERSION},"):
        return Holds.NO, ("the words of the page are not what these files give", *told)
    shown = " ".join(text)
    missing = [value for _, value in _must_show(again) if " ".join(value.split()) not in shown]
    if missing:
        return Holds.NO, tuple(f"the page does not show what these files give: {clean(value)}" for value in missing)
    what = "its words are the same, how they are set could not be compared" if text == wanted else "its words differ:"
    return Holds.FIGURES, (f"the page says it was set by {clean(claimed)}, this is {writer()}; {what}", *told)


def _must_show(again: Content) -> Iterator[tuple[str, str]]:
    """Give what no page may show otherwise, whichever version set it: result, limit, values, names, dates."""
    if again.verdict is not None:
        state = told_in(again.verdict.state, again.language)
        yield from (("result", f"{again.verdict.shape} {state}"), ("limit", again.verdict.limit))
    yield from ((line.label, line.value) for line in again.headlines)
    yield from again.facts
    yield "shop", again.shop
    yield "identity", again.identity


def _is_own(record: Mapping[str, Any], issue: Issue) -> bool:
    """Tell whether a record's identity is the digest of the record; the first schema had eight digits of it."""
    body = {key: value for key, value in record.items() if key != "id"}
    wanted = identity_of(body, issue)
    return str(record.get("id", "")) == (short_of(wanted) if record.get("schema") == FIRST_SCHEMA else wanted)
