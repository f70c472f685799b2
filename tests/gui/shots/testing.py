"""The Test page, step by step, and what goes wrong there."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tests.gui.shots.studio import Studio


def empty(studio: Studio) -> None:
    pass


def checks(studio: Studio) -> None:
    studio.practise()


def real_checks(studio: Studio) -> None:
    studio.practise()
    studio.tester.card.practice = False
    for index in range(4):
        studio.tester.run.tick(index)
    studio.tick()


def zero(studio: Studio) -> None:
    studio.practise()
    studio.page.act()
    studio.stream.idle(1.0)
    studio.tick()
    studio.page.act()
    studio.stream.idle(0.9)
    studio.tick()


def busy(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.stream.pull()
    studio.tick()
    studio.stream.half_a_pull()
    studio.tick()


def busy_angle(studio: Studio) -> None:
    """A transducer that sends the wheel's angle along, in the middle of a pull."""
    studio.stream.with_angle = True
    studio.to_pulls()
    studio.stream.pull()
    studio.stream.pull()
    studio.tick()
    studio.stream.half_a_pull(8.0)
    studio.tick()


def warning(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.stream.pull(stop_nm=30.0, hold_s=1.5)
    studio.stream.pull(turn_rad_s=((0.5, 0.25),))
    studio.tick()
    studio.tester.run.battery = "low"
    studio.tester.run.lost = 34
    studio.tick()
    studio.stream.half_a_pull(2.6)
    studio.tick()


def failed(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.tick()
    studio.stream.half_a_pull(3.0)
    studio.tick()
    studio.stream.fail_disk()
    studio.tick()


def lost(studio: Studio) -> None:
    studio.to_pulls()
    studio.stream.pull()
    studio.tick()
    studio.stream.lose()
    studio.tick()


def finished(studio: Studio) -> None:
    studio.to_pulls()
    studio.three_pulls()
    studio.take_zero()


def with_drag(studio: Studio) -> None:
    """The end of a test that measured the drag first: torque as read, and the pack mean."""
    from gui.models.practice import free_of

    studio.tester.card.with_drag = True
    studio.practise()
    studio.page.act()
    studio.take_zero()
    held = studio.stream.scenario
    studio.stream.scenario = free_of(held)
    studio.stream.pull(ramp_nm_s=12.0, turn_rad_s=((0.6, 6.0),))
    studio.tick()
    studio.page.act()
    studio.tick()
    studio.stream.scenario = held
    studio.three_pulls()
    studio.take_zero()


def outside(studio: Studio) -> None:
    import msgspec

    studio.to_pulls()
    card = studio.tester.card
    card.put(limit=msgspec.structs.replace(card.limit, lower=70.0))
    studio.three_pulls()


def expired(studio: Studio) -> None:
    """A certificate that ran out before today."""
    import datetime

    import msgspec

    studio.to_pulls()
    card = studio.tester.card
    own = msgspec.structs.replace(card.description.transducer, certificate_due=datetime.date(2026, 4, 30))
    card.put(description=msgspec.structs.replace(card.description, transducer=own))
    studio.three_pulls()


def far(studio: Studio) -> None:
    from gui.pages.far_view import FarView

    busy_angle(studio)
    studio.page.far = FarView(studio.page._shared)
    studio.page.far.resize(studio.window.size())
    studio.page.far.show()
    studio.tick()
    studio.settle()


STATES: dict[str, Callable[[Studio], None]] = {
    "empty": empty,
    "checks": checks,
    "checks-real": real_checks,
    "zero": zero,
    "busy": busy,
    "busy-angle": busy_angle,
    "warning": warning,
    "failed": failed,
    "lost": lost,
    "outside": outside,
    "finished": finished,
    "with-drag": with_drag,
    "expired": expired,
    "far": far,
}
