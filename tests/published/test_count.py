"""The counter itself: it must not count what did not pass, nor what nobody printed."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path

import pytest

_spec = importlib.util.spec_from_file_location("published_count", Path(__file__).with_name("count.py"))
assert _spec is not None
assert _spec.loader is not None
count = importlib.util.module_from_spec(_spec)
sys.modules[_spec.name] = count
_spec.loader.exec_module(count)


def _register(*claims, passed):
    return count.Register(claims=[count.Claim(*claim) for claim in claims], passed=set(passed))


def test_row_counts_once_and_only_if_all_its_tests_passed():
    register = _register(
        ("t1", "A", ("1.1", "1.2"), "READ-P"),
        ("t2", "A", ("1.2",), "READ-P"),
        ("t3", "A", ("1.1",), "READ-P"),
        passed=("t1", "t3"),
    )
    assert register.reproduced() == {"1.1": ("A", "READ-P")}


def test_computed_rows_are_not_published():
    register = _register(("t1", "A", ("1.1",), "READ-P"), ("t2", "B", ("6.6",), "CALC"), passed=("t1", "t2"))
    text = count.table(register.reproduced())
    assert "| B | CALC | 1 | 6.6 |" in text
    assert "1 published rows reproduced" in text


@pytest.mark.parametrize("kwargs", [{}, {"rows": ("x",), "status": "MEM"}, {"rows": ("1.1",), "status": "READ"}])
def test_marker_with_faults_is_refused(kwargs):
    class Item:
        nodeid = "t"

        def iter_markers(self, name):
            return [pytest.mark.published("A", **kwargs).mark]

    with pytest.raises(ValueError, match="t: "):
        list(count.claims_of(Item()))


def test_register_is_a_plugin_that_pytest_can_hold():
    """Pytest keeps its plugins in sets."""
    assert len({count.Register(), count.Register()}) == 2
