"""``make torture``: faults by the hundred and hostile input by the hundred thousand, with counts.

Prints one line per campaign, the totals, and a table of what was broken on purpose; writes ``torture.json`` and
``torture.md``; exit code 1 if anything failed. Campaigns that are judged by the moment come first, alone. Then two
processes share the work, and beside them run those that mostly sleep. The longest begin first.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections.abc import Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from contextlib import ExitStack
from multiprocessing import get_context
from pathlib import Path
from typing import TYPE_CHECKING

from tests.bench.__main__ import machine
from tests.faults.campaigns import ALONE, BY_NAME, WAITING, WORKING, tallied
from tests.faults.table import table

if TYPE_CHECKING:
    from tests.faults.tally import Tally


def all_tallies(names: Iterable[str], share: float, workers: int, seed: int) -> Iterator[Tally]:
    """Run campaigns: those that must be alone, then all others."""
    wanted = set(names)
    for beside in (((ALONE, 1),), ((WORKING, workers), (WAITING, 2))):
        with ExitStack() as stack:
            running = []
            for group, processes in beside:
                pool = ProcessPoolExecutor(processes, mp_context=get_context("spawn"), max_tasks_per_child=1)
                stack.enter_context(pool)
                chosen = sorted((c for c in group if c.name in wanted), key=lambda c: -c.long_s)
                running += [pool.submit(tallied, campaign.name, share, seed) for campaign in chosen]
            for done in as_completed(running):
                yield done.result()


def main() -> int:
    """Run the torture and write the counts."""
    parser = argparse.ArgumentParser(prog="python -m tests.faults", description=__doc__)
    parser.add_argument("only", nargs="*", help="parts of the names of campaigns (all without)")
    parser.add_argument("--out", type=Path, default=Path("torture-output"))
    parser.add_argument("--share", type=float, default=1.0, help="share of the long form's cases (default 1)")
    parser.add_argument("--workers", type=int, default=2, help="processes side by side (default 2)")
    parser.add_argument("--seed", type=int, default=0, help="another seed draws other cases (default 0)")
    args = parser.parse_args()
    names = [name for name in BY_NAME if not args.only or any(part in name for part in args.only)]
    if not names:
        sys.stderr.write(f"no such campaign; there are: {', '.join(BY_NAME)}\n")
        return 2
    about = machine()
    print(", ".join(f"{k}: {v}" for k, v in about.items()), flush=True)
    begun = time.perf_counter()
    args.out.mkdir(parents=True, exist_ok=True)
    target = args.out / "torture.json"
    tallies: list[Tally] = []
    for tally in all_tallies(names, args.share, args.workers, args.seed):
        tallies.append(tally)
        print(tally.line(), *(f"    {failure}" for failure in tally.failures), sep="\n", flush=True)
        body = {
            "machine": about, "share": args.share, "seed": args.seed, "seconds": round(time.perf_counter() - begun),
            "campaigns": [t.plain() for t in tallies],
        }  # fmt: skip
        target.write_text(json.dumps(body, indent=1, ensure_ascii=False), encoding="utf-8", newline="")
    shown = table(tallies)
    (args.out / "torture.md").write_text(shown, encoding="utf-8", newline="")
    cases, failed = sum(t.cases for t in tallies), sum(t.failed for t in tallies)
    print(f"\n{shown}\n{len(tallies)} campaigns, {cases} cases, {failed} failed, {time.perf_counter() - begun:.0f} s")
    print(f"written: {target}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
