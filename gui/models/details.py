"""What a recording lacks or has wrong, put right later: beside it, with time and reason, never in it."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

import msgspec

from gui.models.job import JobCard
from logger.errors import InputError
from logger.header import Correction, Decision, Header
from logger.recordings.sidecar import change_sidecar

if TYPE_CHECKING:
    from pathlib import Path

    from logger.header import Sidecar

NAMED = {
    "job": "job", "axle": "axle", "test": "kind of test", "conditions": "conditions", "lever": "fixture",
    "limit": "limit", "decision": "decision rule",
}  # fmt: skip
"""Parts of a header that can be put right, in words."""


def card_of(header: Header | None) -> JobCard:
    """Give a job card that says what a recording's header and its sidecar say."""
    card = JobCard()
    if header is not None:
        parts = {name: getattr(header, name) for name in NAMED}
        card.swap({**parts, "decision": header.decision or Decision(rule="three-way"), "photos": header.photos})
    return card


def keep_details(recording: Path | str, before: JobCard, after: JobCard, reason: str, by: str) -> tuple[str, ...]:
    """Write what has been changed beside a recording, and that it was, when, by whom and why.

    Returns:
        changed: The parts that were changed, in words.

    Raises:
        InputError: Nothing was changed, or there is no reason.
        HeldwheelError: It cannot be written; the recording itself is not touched.
    """
    parts = {name: getattr(after, name) for name in NAMED if getattr(after, name) != getattr(before, name)}
    if not parts:
        raise InputError("Nothing has been changed yet.")
    if not reason.strip():
        raise InputError("Say why: the reason is kept with the change.")
    words = tuple(NAMED[name] for name in parts)
    note = Correction(
        at=datetime.now().astimezone().replace(microsecond=0),
        reason=f"{', '.join(words)} changed: {reason.strip()}",
        by=by,
    )

    def change(sidecar: Sidecar) -> Sidecar:
        return msgspec.structs.replace(sidecar, **parts, corrections=(*sidecar.corrections, note))

    change_sidecar(recording, change)
    return words
