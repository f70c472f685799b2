"""Reading traces: our recordings, closed or not, and foreign tables with their sidecars.

Conventions:
- ``torque`` is as the device delivered it, in ``unit``; ``torque_nm`` is the same in N·m with the described sign
  applied (``reversed`` is turned round). A value that was not delivered is NaN.
- ``state`` is ``closed`` (our recording, its hash and every batch check), ``recovered`` (our recording, but unclosed or
  damaged: only rows whose batch checks are here) or ``foreign``.
- ``problems`` are lines for the user; what is not in order with a file is there or raised, never passed over.
"""

from __future__ import annotations

import hashlib
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal

import msgspec

from logger.edges.small_file import hash_of, open_regular
from logger.edges.units import is_force, reading_factor
from logger.errors import FileError
from logger.foreign.choices import laid_over
from logger.foreign.reading import read_foreign
from logger.header import Header, Table
from logger.recordings.second import Second, split
from logger.recordings.sidecar import merged, read_sidecar, sidecar_path
from logger.recordings.stored import is_recording, read_recording
from logger.samples import EventKind

if TYPE_CHECKING:
    from logger.header import Sidecar
    from logger.samples import Event, Floats


STANDARD_INPUT: Final = "-"
"""The name under which a trace is read from standard input; it has no sidecar."""


@dataclass(frozen=True, slots=True)
class Trace:
    """A trace as read."""

    file: str  # its path as the user named it
    header: Header  # the recording's, with the sidecar's values over it
    time_s: Floats  # shape (n,); increasing
    torque: Floats  # shape (n,); as delivered, in ``unit``
    unit: str  # canonical: ``lbf·in``
    # shape (n,); the other columns by their names in the file (``angle_deg``, ``counter``, ``late_ms``,
    # ``temperature_degC``)
    columns: dict[str, Floats]
    events: tuple[Event, ...]  # with their times; ``index`` is the row that an event stands before
    state: Literal["closed", "recovered", "foreign"]  # ``closed``, ``recovered`` or ``foreign``
    sha256: str  # of all bytes of the file, computed: what ``sha256sum`` prints
    sidecar: Sidecar | None  # as it stands beside the file
    problems: tuple[str, ...]  # what is not in order, for the user
    # the samples of a second source, where one was recorded along; ``columns`` has its values at ``time_s``
    second: Second | None = None
    # of a recording's bytes above its closing line, computed; by this hash, too, other files have named it
    above_sha256: str = ""
    sidecar_sha256: str = ""  # of all its bytes; empty where there is none

    @property
    def is_force(self) -> bool:
        """Whether it is a force that was recorded: on a lever it becomes a torque (``analysis.to_axle.force``)."""
        return is_force(self.unit)

    @property
    def si(self) -> Floats:
        """Torque in N·m or force in N, clockwise positive, shape (n,); computed anew with each call."""
        sign = -1.0 if self.header.transducer.sign == "reversed" else 1.0
        return self.torque * (sign * reading_factor(self.unit))

    @property
    def torque_nm(self) -> Floats:
        """Torque in N·m, clockwise positive, shape (n,).

        Raises:
            FileError: It is a force, which only a lever makes a torque.
        """
        if self.is_force:
            raise FileError(f"{self.file}: holds a force in {self.unit}, not a torque; it needs its lever")
        return self.si

    @property
    def angle_deg(self) -> Floats | None:
        """The wheel's angle in degrees, shape (n,), where the trace has it."""
        return self.columns.get("angle_deg")

    @property
    def held_deg(self) -> Floats | None:
        """The held wheel's angle in degrees, shape (n,), where it was recorded, too."""
        return self.columns.get("held_angle_deg")


def read_trace(path: Path | str, table: Table | None = None) -> Trace:
    """Read a recording or a foreign table, with its sidecar.

    Args:
        path: The file.
        table: What a foreign table does not say of itself; it wins over what its sidecar says.

    Raises:
        TableQuestionsError: A foreign table leaves something open.
        FileError: It cannot be read; the text names file, line, column, what is wrong and the fix.
        DescriptionError: Its sidecar has faults.
    """
    path = Path(path)
    data = _bytes(path)
    sidecar = None if str(path) == STANDARD_INPUT else read_sidecar(path)
    sidecar_sha256 = hash_of(sidecar_path(path)) if sidecar is not None else ""
    if is_recording(data):
        return _recording(data, str(path), sidecar, sidecar_sha256)
    kept = sidecar.table if sidecar is not None and sidecar.table is not None else Table()
    stated = sidecar.transducer.unit if sidecar is not None and sidecar.transducer is not None else ""
    foreign = read_foreign(data, str(path), laid_over(kept, table), stated)
    return Trace(
        file=str(path),
        header=merged(Header(time_from="file"), sidecar),
        time_s=foreign.time_s,
        torque=foreign.torque,
        unit=foreign.unit,
        columns=foreign.columns,
        events=foreign.events,
        state="foreign",
        sha256=hashlib.sha256(data).hexdigest(),
        sidecar=sidecar,
        problems=foreign.problems,
        sidecar_sha256=sidecar_sha256,
    )


def _bytes(path: Path) -> bytes:
    try:
        if str(path) == STANDARD_INPUT:
            return sys.stdin.buffer.read()
        if path.is_dir():
            raise FileError(f"{path}: is a folder; name a recording in it")
        with open_regular(path) as file:
            return file.read()
    except FileNotFoundError:
        raise FileError(f"{path}: there is no such file: look at its name and folder") from None
    except FileError:
        raise
    except (OSError, ValueError) as error:  # ValueError: a name with a null character
        raise FileError(f"{path}: cannot be read: {getattr(error, 'strerror', None) or error}") from error


def _recording(data: bytes, file: str, sidecar: Sidecar | None, sidecar_sha256: str) -> Trace:
    stored = read_recording(data, file)
    header = stored.header
    if any(event.kind is EventKind.SIMULATED for event in stored.events):
        header = msgspec.structs.replace(header, simulated=True)
    columns, events, second = split(stored.columns, stored.events)
    time_name, torque_name = stored.names[:2]
    return Trace(
        file=file,
        header=merged(header, sidecar),
        time_s=columns.pop(time_name),
        torque=columns.pop(torque_name),
        unit=stored.unit,
        columns=columns,
        events=tuple(events),
        state="closed" if stored.closed else "recovered",
        sha256=stored.sha256,
        sidecar=sidecar,
        problems=tuple(stored.problems),
        second=second,
        above_sha256=stored.above_sha256,
        sidecar_sha256=sidecar_sha256,
    )
