"""What is written beside a recording when a test is signed: who made it, and which pulls were left out, and why."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

import msgspec

from logger.header import Correction, Sidecar
from logger.sidecar import add_correction, read_sidecar, write_sidecar

if TYPE_CHECKING:
    from pathlib import Path

    from gui.models.run import TestRun


def write_signature(recording: Path, run: TestRun) -> None:
    """Write the sidecar of a recording: operator, second zero, and an exclusion for each pull that was left out.

    Raises
    ------
    HeldwheelError
        It cannot be read or written; the recording itself is not touched.
    """
    sidecar = read_sidecar(recording) or Sidecar()
    job = msgspec.structs.replace(run.card.job, operator=run.signed_by.strip())
    write_sidecar(recording, msgspec.structs.replace(sidecar, job=job, zero=run.true_zero))
    last = max((caught.start_s for caught in run.pulls.pulls), default=0.0)
    for caught in run.pulls.pulls:
        if caught.rejected and caught.start_s == last:
            add_correction(
                recording,
                Correction(
                    at=datetime.now().astimezone().replace(microsecond=0),
                    reason=caught.rejected,
                    by=run.signed_by.strip(),
                    pull_start_s=caught.pull.start_s,
                    exclude=True,
                ),
            )
