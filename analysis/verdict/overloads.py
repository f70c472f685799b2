"""Pulls during which the transducer was beyond its range: what it did not show is no lost sample.

Offered: ``overloaded``.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from analysis.trace.results import Code, Reason
from logger.samples import EventKind

if TYPE_CHECKING:
    from analysis.trace.results import Pull, TraceReading
    from logger.samples import Event


def overloaded(reading: TraceReading, events: Iterable[Event]) -> TraceReading:
    """Mark every pull in which the transducer said that it was beyond its range.

    Parameters
    ----------
    reading : TraceReading
    events : iterable of Event
        With their times; ``count`` readings from then on were beyond.
    """
    at = [(event.time_s, event.count) for event in events if event.kind is EventKind.OVERLOAD]
    return replace(reading, pulls=tuple(_marked(pull, at) for pull in reading.pulls)) if at else reading


def _marked(pull: Pull, at: list[tuple[float, int]]) -> Pull:
    within = [count for time_s, count in at if pull.start_s <= time_s <= pull.end_s]
    if not within:
        return pull
    text = f"{sum(within) or 'some'} readings beyond the transducer's range: use a larger one"
    others = tuple(r for r in pull.reasons if r.code not in (Code.LOST, Code.CLIPPED))
    return replace(pull, reasons=(Reason(Code.CLIPPED, text), *others))
