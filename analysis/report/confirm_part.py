"""A second test by another operator or transducer, on the engineer's page and in a report's record."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from analysis.report.content import APART, LONGEST_NOTE, PageTable, Section, clean, in_a_row, listed, own
from analysis.report.material import ConfirmPart
from logger.edges.units import format_torque, minus

if TYPE_CHECKING:
    from analysis.report.material import Material
    from analysis.verdict.confirm import Confirmation
    from analysis.verdict.recorded import RecordingReading

NOBODY, NO_DEVICE = "operator not stated", "transducer not stated"
JUDGED = "Agrees: |E_n| ≤ 1, by √(U₁² + U₂²) (ISO 13528); what both share counts twice."
BLIND = "Not compared by the program before the second was signed."


def confirm_part(first: RecordingReading, second: RecordingReading, found: Confirmation) -> ConfirmPart:
    """Give what a report shows of a second test."""
    who = []
    for reading in (first, second):
        header = reading.header
        if header is None:
            who.append(("", ""))
            continue
        device = header.transducer
        name = " ".join(text for text in (device.name.strip(), device.serial.strip()) if text)
        who.append((header.job.operator.strip(), name))
    lines = tuple(
        (
            line.quantity,
            line.direction,
            (line.first.value, line.first.u95),
            (line.second.value, line.second.u95),
            (line.against.difference, line.against.u95),
            line.against.e_n,
            line.against.agrees,
        )
        for line in found.lines
    )
    return ConfirmPart(
        second.file,
        second.sha256,
        lines,
        found.word,
        (who[0], who[1]),
        found.notes,
        second.sidecar_sha256,
        second.state,
        simulated=second.simulated,
    )


def confirm_section(part: ConfirmPart, unit: str) -> Section:
    """Set both tests side by side."""

    def cell(torque: tuple[float, float]) -> str:
        return minus(format_torque(torque[0], unit, torque[1]).removesuffix(f" {unit}"))

    def difference(torque: tuple[float, float]) -> str:
        return f"{'+' if torque[0] >= 0 else '−'}{cell((abs(torque[0]), torque[1]))}"

    rows = tuple(
        (
            quantity,
            direction,
            cell(first),
            cell(second),
            difference(against),
            minus(f"{e_n:+.2f}"),
            "agrees" if agrees else "does not agree",
        )
        for quantity, direction, first, second, against, e_n, agrees in part.lines
    )
    heads = ("quantity", "turn", "first", "second", "second − first", "E_n", "")
    said = [
        f"{which}{APART}: {APART}{listed(own(operator) or NOBODY, own(device) or NO_DEVICE)}{APART}."
        for which, (operator, device) in zip(("First", "Second"), part.who, strict=True)
    ]
    notes = [f"Mind{APART}: {APART}{note}{APART}." for note in part.notes]
    line = clean(in_a_row(*said, *notes, JUDGED, BLIND), 2 * LONGEST_NOTE)
    return Section(
        f"Second test{APART}: {APART}{part.word}{APART} ({unit})",
        lines=(line,),
        table=PageTable(heads, rows, (2, 3, 4, 5)),
    )


def confirm_record(material: Material) -> dict[str, str] | None:
    """Name the second test in a report's record by file and hashes; None where there is none."""
    part = material.confirmed
    if part is None:
        return None
    return {"file": Path(part.file).name, "sha256": part.sha256, "sidecar_sha256": part.sidecar_sha256}


def confirm_claims(material: Material) -> list[dict[str, object]]:
    """Give the figures that a report states of the second test, N·m."""
    lines = () if material.confirmed is None else material.confirmed.lines
    return [
        {
            "quantity": quantity,
            "direction": direction,
            "second_nm": [round(value, 6) for value in second],
            "difference_nm": [round(value, 6) for value in against],
            "agrees": agrees,
        }
        for quantity, direction, _, second, against, _, agrees in lines
    ]


def compare_confirmed(record: Mapping[str, Any], material: Material) -> list[str]:
    """Say what is otherwise with the second test than when the report was made."""
    said, found = record.get("confirmed_by"), confirm_record(material)
    if said is None and found is None:
        return []
    if said is None or found is None:
        return ["the report was made without a second test" if said is None else "the second test is missing"]
    if not isinstance(said, dict) or said.get("sha256") != found["sha256"]:
        return ["the second test is not the one that the report was made with: its SHA-256 differs"]
    if said.get("sidecar_sha256") != found["sidecar_sha256"]:
        return ["the second test's sidecar is not the one that the report was made with: its SHA-256 differs"]
    return []
