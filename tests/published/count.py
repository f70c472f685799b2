"""Count the published values that the tests reproduce, by source.

``python tests/published/count.py`` runs every test marked ``published`` (see README.md here) and prints a Markdown
table; ``--list`` prints each row with its tests. Exit code 1 if a marked test did not pass.
"""

from __future__ import annotations

import argparse
import re
import sys
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest

STATUSES = {
    "READ-P": "read in the primary text",
    "READ-S": "read in a secondary copy",
    "MEM": "from memory",
    "CALC": "computed by us, not counted",
}
ROW = re.compile(r"\d+\.\d+[a-z]*")
TESTS = Path(__file__).resolve().parents[1]


@dataclass(frozen=True, slots=True)
class Claim:
    """One test's claim to reproduce rows of a source."""

    test: str
    source: str
    rows: tuple[str, ...]
    status: str


def claims_of(item: pytest.Item) -> Iterator[Claim]:
    """Give the claims that a test's markers make.

    Raises
    ------
    ValueError
        A marker without source, rows or a known status.
    """
    for mark in item.iter_markers("published"):
        rows, status = mark.kwargs.get("rows"), mark.kwargs.get("status")
        if len(mark.args) != 1 or not isinstance(rows, tuple) or not rows or status not in STATUSES:
            raise ValueError(f"{item.nodeid}: published(source, rows=(...), status={'|'.join(STATUSES)})")
        wrong = [row for row in rows if not ROW.fullmatch(row)]
        if wrong:
            raise ValueError(f"{item.nodeid}: no row numbers: {wrong}")
        yield Claim(item.nodeid, mark.args[0], rows, status)


@dataclass(slots=True, eq=False)
class Register:
    """A pytest plugin that notes every claim and whether its test passed."""

    claims: list[Claim] = field(default_factory=list)
    passed: set[str] = field(default_factory=set)

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, config: pytest.Config, items: list[pytest.Item]) -> None:
        """Keep the marked tests only."""
        marked = [item for item in items if item.get_closest_marker("published")]
        self.claims = [claim for item in marked for claim in claims_of(item)]
        config.hook.pytest_deselected(items=[item for item in items if item not in set(marked)])
        items[:] = marked

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note what passed."""
        if report.when == "call" and report.passed:
            self.passed.add(report.nodeid)

    def reproduced(self) -> dict[str, tuple[str, str]]:
        """Give (source, status) of every row all of whose tests passed."""
        failed = {row for claim in self.claims if claim.test not in self.passed for row in claim.rows}
        found: dict[str, tuple[str, str]] = {}
        for claim in self.claims:
            for row in claim.rows:
                if row not in failed:
                    found.setdefault(row, (claim.source, claim.status))
        return found


def _row_key(row: str) -> tuple[int, int, str]:
    chapter, number = row.split(".")
    digits = re.match(r"\d+", number)
    assert digits
    return int(chapter), int(digits.group()), number[digits.end() :]


def table(reproduced: dict[str, tuple[str, str]]) -> str:
    """Give the Markdown table of rows by source, and the total."""
    by_source: dict[tuple[str, str], list[str]] = defaultdict(list)
    for row, (source, status) in reproduced.items():
        by_source[source, status].append(row)
    lines = ["| source | status | rows | which |", "|---|---|---:|---|"]
    for (source, status), rows in sorted(by_source.items(), key=lambda pair: _row_key(min(pair[1], key=_row_key))):
        lines.append(f"| {source} | {status} | {len(rows)} | {', '.join(sorted(rows, key=_row_key))} |")
    counts = {s: sum(status == s for _, status in reproduced.values()) for s in STATUSES}
    total = sum(n for s, n in counts.items() if s != "CALC")
    parts = ", ".join(f"{counts[s]} {text}" for s, text in STATUSES.items())
    return "\n".join([*lines, "", f"{total} published rows reproduced ({parts})."])


def listing(claims: Iterable[Claim]) -> str:
    """Give one line per row and test."""
    lines = [f"{row:<8} {c.status:<7} {c.source}  [{c.test}]" for c in claims for row in c.rows]
    return "\n".join(sorted(lines, key=lambda line: _row_key(line.split()[0])))


def main() -> int:
    """Run the marked tests and print what they reproduce."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--list", action="store_true", help="print each row with its tests")
    args = parser.parse_args()
    register = Register()
    options = [str(TESTS), "-q", "--no-header", "-p", "no:cacheprovider", "-m", "published"]
    code = pytest.main(options, plugins=[register])
    print(listing(register.claims) if args.list else table(register.reproduced()))
    return int(code)


if __name__ == "__main__":
    sys.exit(main())
