"""Reading traces: our recordings, closed or not, and foreign CSV files with their sidecars.

Conventions
-----------
- ``torque`` is as the device delivered it, in ``unit``; ``torque_nm`` is the same in N·m with the described sign
  applied (``reversed`` is turned round). A value that was not delivered is NaN.
- ``state`` is ``closed`` (our recording, its hash and every batch check), ``recovered`` (our recording, but unclosed or
  damaged: only rows whose batch checks are here) or ``foreign``.
- ``problems`` are lines for the user; what is not in order with a file is there or raised, never passed over.

Offered: ``read_trace``, ``Trace``.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from pathlib import Path

    from logger.header import Header, Sidecar
    from logger.samples import Event, Floats


@dataclass(frozen=True, slots=True)
class Trace:
    """A trace as read.

    Attributes
    ----------
    file : str
        Its path as the user named it.
    header : Header
        The recording's, with the sidecar's values over it.
    time_s : ndarray, shape (n,)
        Increasing.
    torque : ndarray, shape (n,)
        As delivered, in ``unit``.
    unit : str
        Canonical: ``lbf·in``.
    columns : dict of str to ndarray, shape (n,)
        The other columns by their names in the file (``angle_deg``, ``counter``, ``late_ms``, ``temperature_degC``).
    events : tuple of Event
        With their times; ``index`` is the row that an event stands before.
    state : str
        ``closed``, ``recovered`` or ``foreign``.
    sha256 : str
        Of a closed recording the hash in its closing line; of any other file that of all its bytes.
    sidecar : Sidecar or None
        As it stands beside the file.
    problems : tuple of str
        What is not in order, for the user.
    """

    file: str
    header: Header
    time_s: Floats
    torque: Floats
    unit: str
    columns: dict[str, Floats]
    events: tuple[Event, ...]
    state: Literal["closed", "recovered", "foreign"]
    sha256: str
    sidecar: Sidecar | None
    problems: tuple[str, ...]

    @property
    def torque_nm(self) -> Floats:
        """Torque in N·m, clockwise positive, shape (n,); computed anew with each call."""
        raise NotImplementedError

    @property
    def angle_deg(self) -> Floats | None:
        """The wheel's angle in degrees, shape (n,), where the trace has it."""
        return self.columns.get("angle_deg")


def read_trace(
    path: Path | str,
    *,
    time_column: str | None = None,
    torque_column: str | None = None,
    angle_column: str | None = None,
    unit: str | None = None,
) -> Trace:
    """Read a recording or a foreign CSV trace, with its sidecar.

    Parameters
    ----------
    path : Path or str
        The file.
    time_column, torque_column, angle_column : str, optional
        Names of a foreign trace's columns, where they are not ``time_s``, ``torque_<unit>`` and ``angle_deg``.
    unit : str, optional
        Torque unit of a foreign trace whose column does not name it.

    Raises
    ------
    FileError
        It cannot be read; the text names file, line, column, what is wrong and the fix.
    DescriptionError
        Its sidecar has faults.
    """
    raise NotImplementedError
