"""Recordings that were cut, spoilt or left behind by a killed program: the short forms of the torture."""

import pytest

from tests.faults import damage, kills
from tests.faults.tally import Campaign


@pytest.mark.parametrize("campaign", [*damage.CAMPAIGNS, *kills.CAMPAIGNS], ids=lambda campaign: campaign.name)
def test_nothing_is_lost_and_no_row_is_silently_wrong(campaign: Campaign) -> None:
    tally = campaign.tally(campaign.short)
    assert tally.cases >= campaign.short
    assert not tally.failed, "\n".join(tally.failures)
    if campaign in damage.CAMPAIGNS:  # the faults are real: a reader without checks takes some for good rows
        assert tally.counts["plain reader wrong"]
