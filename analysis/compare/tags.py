"""What recordings can be found, grouped and followed by: the facts of a header as tags, and what to call them."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from analysis.compare.runs import Tag
    from logger.header import Header

WORDS = {
    "tag": "axle tag",
    "shims_left_mm": "shims left, mm",
    "shims_right_mm": "shims right, mm",
    "stack_left_mm": "stack left, mm",
    "stack_right_mm": "stack right, mm",
    "pack_build": "pack build",
    "shim_mm": "shim, mm",
    "fluid": "oil",
    "modifier_percent": "modifier, %",
    "oil_temperature_c": "oil temperature, °C",
    "distance_km": "distance, km",
}
"""Of tags whose key is no word; the user's own tags are called as the user named them."""


def tag_words(tag: str) -> str:
    """Give what a tag is called.

    >>> tag_words("modifier_percent"), tag_words("fill")
    ('modifier, %', 'fill')
    """
    return WORDS.get(tag, tag)


def tags_of_header(header: Header, name: str) -> dict[str, Tag]:
    """Give everything a recording can be grouped by; the user's own tags win over the header's facts."""
    job, axle, test, conditions = header.job, header.axle, header.test, header.conditions
    facts: dict[str, Tag | None] = {
        "file": name,
        "date": f"{header.started:%Y-%m-%d}" if header.started else None,
        "job": job.number,
        "customer": job.customer,
        "vehicle": job.vehicle,
        "axle": job.axle,
        "operator": job.operator,
        "tag": axle.tag,
        "type": axle.type,
        "pack_build": axle.pack_build,
        "shim_mm": axle.shim_mm,
        "side": test.side,
        "direction": test.direction,
        "place": test.place,
        "fluid": conditions.fluid,
        "modifier": conditions.modifier,
        "modifier_percent": conditions.modifier_percent,
        "oil_temperature_c": conditions.oil_temperature_c,
        "distance_km": conditions.distance_km,
        "condition": conditions.condition,
    }
    return {key: value for key, value in facts.items() if value is not None and value != ""} | dict(job.tags)
