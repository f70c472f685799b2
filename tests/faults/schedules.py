"""Random schedules in simulated time: stalls, losses, late answers, half-opened links, bursts, clock steps, sleep."""

from __future__ import annotations

from logger.samples import EventKind
from tests.faults.tally import Campaign, Tally
from tests.simulated.schedules import faults, play


def schedules(cases: int, seed: int = 0) -> Tally:
    """Play so many schedules; a failure names the seed that plays it again."""
    tally = Tally("random schedules in simulated time", cases)
    hours = 0.0
    for number in range(seed * 1_000_000, seed * 1_000_000 + cases):
        played = play(number)
        found = faults(played)
        tally.require(not found, f"tests.simulated.schedules.play({number}): {'; '.join(found)}")
        hours += played.gauge.clocks.true_s / 3600
        tally.counts["samples that came"] += len(played.gauge.truth.came)
        tally.counts["lost and counted"] += sum(
            event.count for _, _, event in played.kept.events if event.kind is EventKind.GAP
        )
        tally.counts["connections"] += played.gauge.truth.connected
    came, lost = tally.counts["samples that came"], tally.counts["lost and counted"]
    tally.outcome = (
        f"none of {came:,} samples that came; {lost:,} lost on the way, each counted once; every event true, "
        f"every session ended; {hours:,.0f} h in {tally.counts['connections']:,} connections"
    )
    return tally


CAMPAIGN = Campaign("random schedules in simulated time", schedules, 40, 10_000, seeded=True, long_s=1500)
