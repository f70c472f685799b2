"""Calibrating a bare amplifier by two loads: what it sends is no torque yet, so nothing tells a weight from a bump.

So the user says when it hangs still, and a mean is taken, as on the command line. The arithmetic is
``logger.instruments.weigh``'s.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

import msgspec
import numpy as np

from analysis.to_axle.calibration import unlevered
from gui.models.weighing import Weighing, WeighingPlan
from logger.instruments.measure import MEAN_S, calibrated
from logger.instruments.weigh import two_point

if TYPE_CHECKING:
    from collections.abc import Iterable

    from gui.models.weighing import WeighedStep
    from logger.decoder.description import Description
    from logger.instruments.weigh import TwoPoint
    from logger.samples import Floats


class Calibrating(Weighing):
    """Nothing, then the heaviest load of a plan; each is measured when ``insist`` says that it hangs.

    Args:
        plan: Its heaviest load is hung.
        description: What sends the numbers.
    """

    raw = True

    def __init__(self, plan: WeighingPlan, description: Description) -> None:
        self._description = description
        loads = [load for load in plan.steps if load is not None]
        super().__init__(replace(plan, steps=(None, max(loads, key=lambda load: load.weight.mass_kg))))

    def _begin(self) -> None:
        self._heavy, self.waited_s = False, 0.0
        self._parts: list[Floats] = []
        self._from_s: float | None = None
        self._share = 0.0

    @property
    def share(self) -> float:
        """How much of the mean is there, 0 to 1."""
        return self._share

    @property
    def moving(self) -> bool:
        """Whether it swings: cannot be told."""
        return False

    @property
    def rows(self) -> tuple[WeighedStep, ...]:
        """Nothing is compared with anything."""
        return ()

    def feed(self, time_s: Floats, delivered: Floats) -> bool:
        """Take the next samples as delivered; whether they make a mean. A mark instead of a reading begins anew."""
        if self.done or not len(time_s):
            return False
        known = delivered[np.isfinite(delivered)]
        self.now_nm = float(np.median(known)) if len(known) else None
        if not self._heavy:
            return False
        if len(known) < len(delivered) or self._from_s is None:
            self._parts, self._from_s = [], float(time_s[-1])
            return False
        self._parts.append(known)
        self._share = (float(time_s[-1]) - self._from_s) / MEAN_S
        if self._share < 1.0:
            return False
        self._levels.append(float(np.concatenate(self._parts).mean()))
        self._begin()
        return True

    @property
    def made(self) -> TwoPoint:
        """The calibration.

        Raises:
            InputError: Both loads gave the same number.
        """
        load = self.plan.steps[1]
        torque_u = 0.0 if load is None else load.weight.torque_nm_u
        own = unlevered(self._description.transducer, "N·m")  # as the calibrated one will be read
        low, high = (self._levels[0], 0.0), (self._levels[1], own.delivered(self.plan.torque_nm(1)))
        return two_point(low, high, high_nm_u=torque_u)

    def description(self, taken: Iterable[str]) -> Description:
        """Give the calibrated description under a name of its own.

        Raises:
            InputError: It cannot be calibrated.
        """
        load = self.plan.steps[1]
        words = "" if load is None else f"0 kg and {load.words} at {load.weight.arm_m * 1e3:g} mm"
        made = calibrated(self._description, self.made, words)
        today, known = datetime.now().astimezone().date(), set(taken)
        name = wanted = f"{self._description.name}, calibrated {today}"
        number = 2
        while name in known:
            name, number = f"{wanted} ({number})", number + 1
        return msgspec.structs.replace(made, name=name)
