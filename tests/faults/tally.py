"""What a fault campaign counted: how many cases, what became of them, and every failure that can be made again."""

from __future__ import annotations

import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field

SHOWN = 20  # failures kept with their text; more are only counted


@dataclass(slots=True)
class Tally:
    """The count of one campaign.

    Attributes
    ----------
    cases : int
        Faults tried.
    failed : int
        Of them, those that went wrong.
    failures : list of str
        The first of them in words, with what makes them again.
    counts : Counter
        What became of the cases (read, refused ...).
    figures : dict of str to float
        The worst seen: seconds, bytes.
    outcome : str
        What was lost, in words.
    counted : str
        What ``cases`` counts, if not faults of this kind.
    """

    name: str
    cases: int = 0
    failed: int = 0
    failures: list[str] = field(default_factory=list)
    counts: Counter[str] = field(default_factory=Counter)
    figures: dict[str, float] = field(default_factory=dict)
    seconds: float = 0.0
    outcome: str = ""
    counted: str = ""

    def fail(self, text: str) -> None:
        """Count a failure."""
        self.failed += 1
        if len(self.failures) < SHOWN:
            self.failures.append(text)

    def require(self, holds: bool, text: str) -> None:
        """Count a failure if something does not hold."""
        if not holds:
            self.fail(text)

    def most(self, figure: str, value: float) -> None:
        """Keep the greatest value of a figure."""
        self.figures[figure] = max(value, self.figures.get(figure, value))

    def plain(self) -> dict[str, object]:
        """Give it as JSON-ready values."""
        return {
            "name": self.name, "cases": self.cases, "failed": self.failed, "failures": self.failures,
            "outcome": self.outcome, "counts": dict(self.counts), "figures": self.figures,
            "seconds": round(self.seconds, 1),
        }  # fmt: skip

    def line(self) -> str:
        """Give it as one line of the printed table."""
        told = ", ".join(f"{value} {name}" for name, value in sorted(self.counts.items()))
        worst = ", ".join(f"{name} {value:.3g}" for name, value in self.figures.items())
        state = "ok" if not self.failed else f"{self.failed} FAILED"
        return f"{self.name:<44}{self.cases:>9} cases {state:>12} {self.seconds:>7.1f} s  {'; '.join((told, worst))}"


@dataclass(frozen=True, slots=True)
class Campaign:
    """One kind of fault: the short form runs in the tests, the long one in the torture.

    Attributes
    ----------
    run : callable
        Takes the number of cases (and the seed, if ``seeded``), gives the tally.
    short, long : int
        How many cases.
    seeded : bool
        Its cases are drawn: another seed draws others.
    long_s : float
        What the long form takes, roughly, on the machine of the README: the longest is begun first.
    """

    name: str
    run: Callable[..., Tally]
    short: int
    long: int
    seeded: bool = False
    long_s: float = 10.0

    def tally(self, cases: int, seed: int = 0) -> Tally:
        """Run it with so many cases, and take the time."""
        begun = time.perf_counter()
        tally = self.run(cases, seed) if self.seeded else self.run(cases)
        tally.seconds = time.perf_counter() - begun
        return tally
