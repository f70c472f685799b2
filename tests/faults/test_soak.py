"""The short forms of a day of recording, and of hours in simulated time."""

import pytest

from tests.faults import schedules, soak
from tests.faults.tally import Campaign


@pytest.mark.parametrize("campaign", [*soak.CAMPAIGNS, schedules.CAMPAIGN], ids=lambda campaign: campaign.name)
def test_constant_memory_constant_cost_every_sample(campaign: Campaign) -> None:
    tally = campaign.tally(campaign.short)
    assert not tally.failed, "\n".join(tally.failures)
