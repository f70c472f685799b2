"""All campaigns by name, for whatever process runs them."""

from __future__ import annotations

import traceback

from tests.faults import (
    damage,
    disk,
    displays,
    floods,
    forgeries,
    kills,
    plausible,
    plugs,
    schedules,
    soak,
    streams,
    taken,
    targets_analysis,
    targets_bytes,
    targets_files,
    targets_kept,
    targets_reports,
    targets_text,
    together,
    volume,
)
from tests.faults.tally import Tally

MODULES = (targets_text, targets_bytes, targets_files, targets_kept, targets_analysis, targets_reports)
TARGETS = [target for module in MODULES for target in module.TARGETS]

ALONE = list(kills.CAMPAIGNS)  # judged by the moment: nothing of ours may run beside them
WAITING = [
    *streams.CAMPAIGNS,
    *plugs.CAMPAIGNS,
    disk.CAMPAIGN,
    displays.CAMPAIGN,
    floods.CAMPAIGN,
    together.CAMPAIGN,
    *taken.CAMPAIGNS,
]  # they mostly sleep
WORKING = [
    *volume.CAMPAIGNS,
    *soak.CAMPAIGNS,
    schedules.CAMPAIGN,
    *(target.campaign for target in TARGETS),
    *damage.CAMPAIGNS,
    *forgeries.CAMPAIGNS,
    *plausible.CAMPAIGNS,
]
BY_NAME = {campaign.name: campaign for campaign in (*ALONE, *WAITING, *WORKING)}


def tallied(name: str, share: float, seed: int) -> Tally:
    """Run one campaign, by its name, in whatever process this is; one that breaks is a failure like any other."""
    campaign = BY_NAME[name]
    try:
        return campaign.tally(max(campaign.short, round(campaign.long * share)), seed)
    except Exception:  # noqa: BLE001 - the others go on
        return Tally(campaign.name, 1, 1, [traceback.format_exc(limit=-4)])
