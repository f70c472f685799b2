"""Disks, clocks, ports and suspended programs: the short forms of the torture."""

import os

import pytest

from tests.faults import disk, plugs, streams
from tests.faults.tally import Campaign

pytestmark = pytest.mark.skipif(os.name != "posix", reason="needs pseudo-terminals and POSIX signals")


CAMPAIGNS = [disk.CAMPAIGN, *streams.CAMPAIGNS, *plugs.CAMPAIGNS]


@pytest.mark.parametrize("campaign", CAMPAIGNS, ids=lambda campaign: campaign.name)
def test_a_stream_survives_or_ends_in_words(campaign: Campaign) -> None:
    tally = campaign.tally(campaign.short)
    assert tally.cases >= 1
    assert not tally.failed, "\n".join(tally.failures)
