"""What a test plays: a pull was caught, the limit is reached, the wheel turns too slowly or too fast."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gui.models.flow import Step
from gui.models.pace import Pacer, Zone
from gui.sound import Sound

if TYPE_CHECKING:
    from gui.models.caught import CaughtPull
    from gui.models.run import TestRun
    from gui.sound import Sounds


class TestSounds:
    """Plays each once, when it begins to be true."""

    __test__ = False  # it is no test case

    def __init__(self, sounds: Sounds) -> None:
        self._sounds, self._inside, self._pacer = sounds, False, Pacer()

    def caught(self, caught: CaughtPull) -> None:
        """Tell that a pull was caught, and whether it is one."""
        self._sounds.play(Sound.CAUGHT if caught.valid else Sound.NOT_VALID)

    def follow(self, run: TestRun) -> None:
        """Tell when the torque has reached the limit, and how to turn."""
        lower, upper = run.card.limit_nm()
        now = abs(run.axle_now() or 0.0)
        limited = (lower is not None or upper is not None) and not run.silent
        inside = limited and now >= (lower or upper or 0.0)
        if inside and not self._inside and run.flow.now is Step.PULLS:
            self._sounds.play(Sound.ZONE)
        self._inside = inside
        told = self._pacer.due(run.pace, run.hint, run.trace.end_s)
        if told is not None:
            self._sounds.play(Sound.FASTER if told is Zone.SLOW else Sound.SLOWER)
