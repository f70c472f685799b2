"""A clock that stands still, and a job card that is filled in, for answers that are kept."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import TYPE_CHECKING

import msgspec

from gui.models.job import JobCard
from logger.decoder.description import Description
from logger.decoder.template import LineFormat
from logger.edges.toml_file import _hints
from logger.header import (
    Axle,
    JobFacts,
    TransducerFacts,
)
from logger.header import Test as Kind
from tests.gui.models.test_kept_run import HUB, MINIMUM

if TYPE_CHECKING:
    import pytest


NOW = datetime(2026, 5, 16, 10, 42, 31, 250, tzinfo=UTC)


@dataclass(frozen=True)
class _Local:
    at: datetime

    def astimezone(self) -> datetime:
        return self.at


class Clock:
    """Stands for ``datetime`` in a module: always the same moment, a fraction of a second after the full one."""

    @staticmethod
    def now(*_: object) -> _Local:
        return _Local(NOW)

    @staticmethod
    def strptime(text: str, form: str) -> _Local:
        return _Local(datetime.strptime(text, form).replace(tzinfo=UTC))


def stop_clock(monkeypatch: pytest.MonkeyPatch, *modules: object) -> None:
    """Have modules believe that it is ``NOW``.

    A record looks its types up when it is read first, and keeps them: before the name is taken for a while.
    """
    for one in modules:
        for kind in vars(one).values():
            if isinstance(kind, type) and issubclass(kind, msgspec.Struct):
                msgspec.json.Decoder(kind)
                _hints(kind)
        monkeypatch.setattr(one, "datetime", Clock)


def full_card() -> JobCard:
    card = JobCard()
    described = Description(name="g", transducer=TransducerFacts(unit="N·m"), lines=LineFormat(template="{torque}"))
    card.put(
        job=JobFacts(vehicle="blue car", number="7"),
        axle=Axle(tag="R1", type="clutch plate", ratio=3.9),
        test=Kind(side="left", held="other side", place="car"),
        lever=HUB,
        limit=MINIMUM,
        description=described,
        address="there",
    )
    return card
