"""The table of what was broken on purpose, how often, and what was lost: for the README."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.faults.tally import Tally

FUZZ = "fuzz: "


def table(tallies: Sequence[Tally]) -> str:
    """Give a Markdown table: a row for each campaign, one for all fuzzing."""
    lines = ["| broken on purpose | how often | what was lost |", "|---|---:|---|"]
    plain = [tally for tally in tallies if not tally.name.startswith(FUZZ)]
    fuzzed = [tally for tally in tallies if tally.name.startswith(FUZZ)]
    lines += [
        f"| {t.name} | {f'{t.cases:,} {t.counted}'.strip()} | {_failed(t.failed)}{t.outcome or 'nothing'} |"
        for t in plain
    ]
    if fuzzed:
        cases, failed = sum(t.cases for t in fuzzed), sum(t.failed for t in fuzzed)
        slowest = max(t.figures.get("slowest s", 0.0) for t in fuzzed)
        grown = max(t.figures.get("grown MB", 0.0) for t in fuzzed)
        said = f"read or refused in words; slowest {slowest:.2f} s, grown by at most {grown:.0f} MB"
        lines.append(f"| hostile input, {len(fuzzed)} readers and decoders | {cases:,} | {_failed(failed)}{said} |")
    return "\n".join(lines) + "\n"


def _failed(count: int) -> str:
    return f"**{count:,} FAILED**; " if count else ""
