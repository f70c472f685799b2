"""The notebook-style example runs as it is written; its figures may move a little when the analysis improves."""

from __future__ import annotations

import doctest
import re
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pytest

ROOT = Path(__file__).resolve().parents[2]
NUMBER = re.compile(r"[-+]?\d+(?:\.\d+)?")


class Close(doctest.OutputChecker):
    """Takes output whose words are the same and whose numbers lie within 4 % or 0.5 of those printed."""

    def check_output(self, want: str, got: str, optionflags: int) -> bool:
        if super().check_output(want, got, optionflags):
            return True
        if NUMBER.sub("#", " ".join(want.split())) != NUMBER.sub("#", " ".join(got.split())):
            return False
        pairs = zip(NUMBER.findall(want), NUMBER.findall(got), strict=True)
        return all(abs(float(a) - float(b)) <= max(0.04 * abs(float(a)), 0.5) for a, b in pairs)


def test_notebook(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    text = (ROOT / "recordings" / "notebook.md").read_text("utf-8")
    example = doctest.DocTestParser().get_doctest(text, {}, "notebook", "recordings/notebook.md", 0)
    said: list[str] = []
    found = doctest.DocTestRunner(checker=Close(), verbose=False).run(example, out=said.append)
    assert found.attempted > 20
    assert found.failed == 0, "".join(said)


def test_checker_can_fail() -> None:
    close = Close()
    assert close.check_output("57.1 ± 1.0\n", "57.9 ± 1.1\n", 0)
    assert not close.check_output("57.1 ± 1.0\n", "61.9 ± 1.1\n", 0)
    assert not close.check_output("within\n", "outside\n", 0)
