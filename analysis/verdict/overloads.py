"""Pulls during which the transducer was beyond its range: what it did not show is no lost sample."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from analysis.trace.results import Code, Reason

if TYPE_CHECKING:
    from analysis.trace.results import Pull
    from logger.samples import Event


def overloaded(pull: Pull, beyond: Iterable[Event]) -> Pull:
    """Mark a pull in which the transducer said that it was beyond its range.

    Args:
        pull: As read.
        beyond: Overloads with their times; ``count`` readings from then on were beyond.
    """
    within = [event.count for event in beyond if pull.start_s <= event.time_s <= pull.end_s]
    if not within:
        return pull
    text = f"{sum(within) or 'some'} readings beyond the transducer's range: use a larger one"
    others = tuple(r for r in pull.reasons if r.code not in (Code.LOST, Code.CLIPPED))
    return replace(pull, reasons=(Reason(Code.CLIPPED, text), *others))
