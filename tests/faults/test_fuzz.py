"""The short form of the fuzzing: 2,000 cases a target; ``make torture`` runs 100,000."""

import pytest

from tests.faults.campaigns import TARGETS
from tests.faults.fuzz import Target, run


@pytest.mark.parametrize("target", TARGETS, ids=lambda target: target.name)
def test_hostile_input_is_read_or_refused_and_nothing_else(target: Target) -> None:
    tally = run(target, target.short)
    assert not tally.failed, "\n".join(tally.failures)
    got_through = tally.counts["read"] + tally.counts["pulls"]
    assert got_through > target.short / 200 or target.name == "path names"  # the cases get past the first check
