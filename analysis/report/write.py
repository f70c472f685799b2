"""The page that someone can sign: one content, written as HTML or PDF.

Conventions:
- ``content_of`` turns ``Material`` (what was read) and ``Issue`` (what the shop decides) into ``Content``: plain text
  in the order of the page, and one drawing. Both renderers show that content and nothing else.
- The same material and issue give the same page, byte for byte: ``analysis.report.verify`` rests on it.
- The identity ``HW-<date>-<32 hex>`` (simulated: ``HW-SIM-…``), 128 bits, depends on the recording, the reading and the
  issue. The page shows it whole once, and on every sheet its short form, eight of them.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from analysis.report import words
from analysis.report.build_part import build_record
from analysis.report.confirm_part import confirm_claims, confirm_record
from analysis.report.content import Content, clean, own
from analysis.report.dial_page import DialPage
from analysis.report.material import DragPart, Figure, Issue, Material, PackLine, PageKind, PullLine
from analysis.report.page import Page
from analysis.report.ratio_page import RatioPage
from analysis.report.spoken import check_language, spoken
from logger.edges.small_file import write_whole
from logger.edges.units import canonical_unit
from logger.errors import InputError
from logger.version import VERSION

if TYPE_CHECKING:
    from logger.header import Header

SCHEMA = "heldwheel report 2"

SHORT = 8
"""Hex digits of an identity's short form."""


def content_of(material: Material, issue: Issue, record: Mapping[str, object] | None = None) -> Content:
    """Give the content of a report.

    Args:
        material: What was read.
        issue: What the shop decides.
        record: The record of a page that exists, instead of a new one: for comparing.

    Raises:
        InputError: A revision below 1, an issue time without time zone, or a language without a catalogue.
        QuantityError: An unknown unit.
    """
    if issue.revision < 1:
        raise InputError("the revision of a report starts at 1")
    if issue.issued.tzinfo is None:
        raise InputError("the time of issue needs its time zone")
    if material.confirmed is not None and issue.kind is not PageKind.ENGINEER:
        raise InputError("a second test stands on the engineer's page (--kind engineer)")
    if record is None:
        record = _record(material, issue)
    whole = str(record["id"])
    identity = short_of(whole)
    page_of = DialPage if material.dial else Page if material.neutral is None else RatioPage
    page = page_of(material, issue, canonical_unit(issue.unit))
    made = Content(
        identity,
        issue.issued,
        words.TITLE if material.neutral is None else words.TITLE_RATIO,
        issue.kind,
        own(issue.shop or material.header.job.shop) or "(workshop not stated)",
        tuple(own(line) for line in issue.address.splitlines() if line.strip()),
        material.simulated,
        page.facts(),
        page.verdict(),
        page.headlines(),
        page.drawing(),
        page.legend(),
        tuple(page.sections(full=issue.kind is PageKind.ENGINEER)),
        words.STATEMENTS,
        _signatures(material, issue),
        f"{own(identity)} · revision {issue.revision} · issued {issue.issued:%Y-%m-%d %H:%M %z} · "
        f"{own(f'Heldwheel {VERSION}')}",
        json.dumps(record, sort_keys=True, ensure_ascii=False, allow_nan=False),
        tuple(clean(text) for text in page.alerts()),
        issue.paper,
        clean(whole, 80),
    )
    return spoken(made, check_language(issue.language))


def _signatures(material: Material, issue: Issue) -> tuple[str, ...]:
    """Give what stands under the lines that are signed, with names where they are known."""
    tested = clean(f"tested by {own(material.header.job.operator)}", 60).strip()
    authorised = clean(f"authorised by {own(issue.authorised)}", 60).strip()
    both = issue.kind is PageKind.ENGINEER or issue.authorised.strip()
    return (tested, authorised, "date") if both else (tested, "date")


def claims_of(material: Material) -> dict[str, object]:
    """Give every figure that a report states, in N·m: what a verifier recomputes."""
    result = material.result
    neutral = material.neutral
    ratio = None if neutral is None else material.budget
    return {
        "pulls": [_pull_claim(pull) for pull in material.pulls],
        "neutral": [] if neutral is None else [_pull_claim(pull) for pull in neutral.pulls],
        "ratio": [] if ratio is None else [[round(ratio.value, 6), round(ratio.u95, 6)]],
        "job": [
            {
                "quantity": line.quantity,
                "direction": line.direction,
                "value_nm": round(line.value_nm, 6),
                "u95_nm": None if line.u95_nm is None else round(line.u95_nm, 6),
                "pulls": line.pulls,
            }
            for line in material.job
        ],
        "packs": [] if material.drag is None else [_pack_claim(line) for line in material.drag.lines],
        "second": confirm_claims(material),
        "state": None if result is None else str(result.state),
        "probability": None
        if result is None or result.probability != result.probability
        else round(result.probability, 6),
    }


def _pull_claim(pull: PullLine) -> dict[str, object]:
    return {
        "start_s": round(pull.start_s, 4),
        "used": pull.used,
        "breakaway": _figure_claim(pull.breakaway),
        "rotating": _figure_claim(pull.rotating),
    }


def _pack_claim(line: PackLine) -> dict[str, object]:
    mean = None if line.mean is None else [round(value, 6) for value in line.mean]
    return {"quantity": line.quantity, "way": line.way, "mean_nm": mean}


def _figure_claim(figure: Figure | None) -> list[float] | None:
    if figure is None:
        return None
    axle = figure.at_axle_nm is not None and figure.u95_axle_nm is not None
    pair = (figure.at_axle_nm, figure.u95_axle_nm) if axle else (figure.at_sensor_nm, figure.u95_sensor_nm)
    return [round(float(value or 0.0), 6) for value in pair]


def both_free_of(material: Material) -> dict[str, str] | None:
    """Name the baseline that a report rests on, by file and hash; None where there is none."""
    drag = material.drag
    return None if drag is None else _file_of(drag)


def _file_of(part: Material | DragPart) -> dict[str, str]:
    """Name a recording by its file, the hash of its bytes, and that of its sidecar's (empty where there is none)."""
    return {"file": Path(part.file).name, "sha256": part.sha256, "sidecar_sha256": part.sidecar_sha256}


def neutral_of(material: Material) -> dict[str, object] | None:
    """Name the half in neutral of a ratio; None where the report is of one recording."""
    half = material.neutral
    if half is None:
        return None
    return {
        **_file_of(half),
        "header_sha256": header_hash(half.header),
        "corrections": len(half.corrections),
    }


def header_hash(header: Header) -> str:
    """Give the SHA-256 of everything that is known about a test, whatever the order in which it was written."""
    return hashlib.sha256(msgspec.json.encode(header, order="sorted")).hexdigest()


def _record(material: Material, issue: Issue) -> dict[str, object]:
    """Give what is needed to do the work again, as plain values; its ``id`` covers the rest."""
    body: dict[str, object] = {
        "schema": SCHEMA,
        "recording": _file_of(material),
        "both_free": both_free_of(material),
        "neutral": neutral_of(material),
        "header_sha256": header_hash(material.header),
        "build": build_record(material, issue),
        "confirmed_by": confirm_record(material),
        "asked": dict(material.asked),
        "corrections": len(material.corrections),
        "issue": {
            "kind": str(issue.kind),
            "unit": issue.unit,
            "shop": issue.shop,
            "address": issue.address,
            "issued": issue.issued.isoformat(),
            "revision": issue.revision,
            "remarks": issue.remarks,
            "authorised": issue.authorised,
            "paper": str(issue.paper),
            "lengths": issue.lengths,
            **({"language": issue.language} if issue.language != "en" else {}),
        },
        "claims": claims_of(material),
        "simulated": material.simulated,
        "writer": writer(),
    }
    return {"id": identity_of(body, issue), **body}


def identity_of(body: Mapping[str, object], issue: Issue) -> str:
    """Give the identity: a mark if it is simulated, the day of issue, 128 bits of the SHA-256 of the whole record."""
    mark = "SIM-" if body.get("simulated") else ""
    text = json.dumps(body, sort_keys=True, ensure_ascii=False)
    return f"HW-{mark}{issue.issued:%Y%m%d}-{hashlib.sha256(text.encode('utf-8', 'replace')).hexdigest()[:32]}"


def short_of(identity: str) -> str:
    """Give the short form of an identity, as it stands on every sheet."""
    start, _, digits = identity.rpartition("-")
    return f"{start}-{digits[:SHORT]}"


def writer() -> str:
    """Name the program and the libraries that set a page: only the same ones set it the same, byte for byte."""
    import zlib
    from importlib.metadata import version

    libraries = (f"{name} {version(name)}" for name in ("jinja2", "fpdf2", "fonttools"))
    return f"Heldwheel {VERSION}, {', '.join(libraries)}, zlib {zlib.ZLIB_RUNTIME_VERSION}"


def write_report(content: Content, path: Path | str) -> Path:
    """Write a report as HTML or PDF, by the ending of its name.

    Raises:
        InputError: Another ending.
        FileError: It cannot be written; what was there is unchanged.
    """
    path = Path(path)
    ending = path.suffix.lower()
    if ending not in (".html", ".pdf"):
        raise InputError(f"{path}: a report is written as .html or .pdf")
    write_whole(path, render(content, ending[1:]))
    return path


def render(content: Content, form: str) -> bytes:
    """Give the bytes of a report as ``html`` or ``pdf``."""
    if form == "html":
        from analysis.report.html import to_html

        return to_html(content).encode("utf-8")
    from analysis.report.pdf import to_pdf

    return to_pdf(content)
