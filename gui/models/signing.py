"""What is written beside a recording when a test is signed.

Who made it, which pulls were excluded and why, and what of the card was changed after the recording had begun: the
file must say what the window said.
"""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

import msgspec

from analysis.verdict.setup import JUDGED_BY
from logger.edges.small_file import hash_of
from logger.header import Correction, RecordingSource
from logger.recordings.sidecar import add_correction, change_sidecar

if TYPE_CHECKING:
    from pathlib import Path

    from gui.models.run import TestRun
    from logger.header import Header


def write_signature(recording: Path, run: TestRun, header: Header | None = None, baseline: Path | None = None) -> None:
    """Write the sidecar of a recording: operator, second zero, photographs, an exclusion for each pull excluded.

    Args:
        recording: The recording.
        run: What happened.
        header: What the recording began with: fixture, limit or rule that were changed since are written down, too.
        baseline: The recording of its drag: named by file and hash, so that reading and report take it along.

    Raises:
        HeldwheelError: It cannot be read or written; the recording itself is not touched.
    """
    job = msgspec.structs.replace(run.card.job, operator=run.signed_by.strip())
    changed: dict[str, object] = {}
    if header is not None:
        last = run.pulls.pulls[-1].job.header if run.pulls.pulls else run.card.judged_by("pulls")
        now = msgspec.structs.replace(last, test=msgspec.structs.replace(last.test, purpose=header.test.purpose))
        changed = {name: getattr(now, name) for name in JUDGED_BY if getattr(now, name) != getattr(header, name)}
    changed |= {"photos": run.card.photos, "both_free": _source(baseline) if run.drag.counting else None}
    signed = datetime.now().astimezone().replace(microsecond=0)
    changed |= {"job": job, "zero": run.zeros.written, "signed": signed}
    change_sidecar(recording, lambda found: msgspec.structs.replace(found, **changed))
    begun_s = max((caught.start_s for caught in run.pulls.pulls), default=0.0)
    for caught in run.pulls.pulls:
        if caught.rejected and caught.start_s == begun_s:
            add_correction(
                recording,
                Correction(
                    at=signed,
                    reason=caught.rejected,
                    by=run.signed_by.strip(),
                    pull_start_s=caught.pull.start_s,
                    exclude=True,
                ),
            )


def _source(recording: Path | None) -> RecordingSource | None:
    """Name a recording by its file and the hash of its bytes; None where there is none."""
    if recording is None or not recording.exists():
        return None
    return RecordingSource(file=recording.name, sha256=hash_of(recording))
