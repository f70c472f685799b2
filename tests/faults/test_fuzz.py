"""The short form of the fuzzing: 2,000 cases a target; ``make torture`` runs 100,000."""

import pytest

from tests.faults import targets_bytes, targets_text
from tests.faults.fuzz import Target, run

TARGETS = [*targets_text.TARGETS, *targets_bytes.TARGETS]


@pytest.mark.parametrize("target", TARGETS, ids=lambda target: target.name)
def test_hostile_input_is_read_or_refused_and_nothing_else(target: Target) -> None:
    tally = run(target, target.short)
    assert not tally.failed, "\n".join(tally.failures)
    assert tally.counts["read"] > target.short / 200  # the cases get past the first check
