"""Which tests run which line, and how long each computes: recorded once, read by ``tests.mutants``.

Loaded as a pytest plugin (``-p tests.touched``) it gives every test a coverage context of its own and writes a map of
lines to tests. Only tests that passed are in the map; what runs in a process of its own is not seen. Times are of the
processor, fixtures included, so that a busy machine makes no test slow.
"""

from __future__ import annotations

import json
import os
import time
from collections.abc import Iterator
from pathlib import Path

import coverage
import pytest

ROOT = Path(__file__).resolve().parents[1]
OUT = "HELDWHEEL_TOUCHED"
"""The environment's name for the file that the map is written to."""


class Recorder:
    """One recording: a context per test, the processor time of each that passed."""

    def __init__(self, out: Path) -> None:
        self.out = out
        self.seconds: dict[str, float] = {}
        self.failed: set[str] = set()
        self.cover = coverage.Coverage(
            data_file=None, config_file=False, source=[str(ROOT / room) for room in ("analysis", "logger", "gui")]
        )
        self.cover.start()

    @pytest.hookimpl(hookwrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        """Give the test a context of its own."""
        self.cover.switch_context(item.nodeid)
        begun = time.process_time()
        yield
        self.seconds[item.nodeid] = time.process_time() - begun
        self.cover.switch_context("")

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Keep in mind which did not pass."""
        if not report.passed:
            self.failed.add(report.nodeid)

    def pytest_sessionfinish(self) -> None:
        """Write the map."""
        self.cover.stop()
        data = self.cover.get_data()
        passed = {test: round(s, 4) for test, s in self.seconds.items() if test not in self.failed}
        number = {test: i for i, test in enumerate(passed)}
        lines = {
            str(Path(file).relative_to(ROOT)): {
                str(line): [number[test] for test in tests if test in number]
                for line, tests in data.contexts_by_lineno(file).items()
            }
            for file in data.measured_files()
        }
        failed = sorted(self.failed)
        if failed:
            print(f"left out, since they do not pass while they are recorded: {', '.join(failed)}")
        said = {"seconds": passed, "failed": failed, "lines": lines}
        self.out.write_text(json.dumps(said), encoding="utf-8")


def pytest_configure(config: pytest.Config) -> None:
    """Record where a file to write to is named."""
    if out := os.environ.get(OUT):
        config.pluginmanager.register(Recorder(Path(out)))
