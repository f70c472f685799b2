"""A trace of torque against time, read: the pulls in it and what each says."""

from __future__ import annotations

from typing import TYPE_CHECKING

from analysis.trace.live import LiveReader

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

    from analysis.trace.results import TraceReading
    from analysis.trace.traces import Sensor


def read_torque(
    time_s: ArrayLike, torque_nm: ArrayLike, *, angle_deg: ArrayLike | None = None, sensor: Sensor | None = None
) -> TraceReading:
    """Read a whole trace.

    Args:
        time_s, torque_nm: shape (n,); Seconds on any origin; N·m, signed, as the transducer delivered them.
        angle_deg: shape (n,); Angle of the turned wheel (degrees).
        sensor: What is known of the transducer.

    Raises:
        InputError: If the arrays are not columns of one length.
    """
    reader = LiveReader(sensor)
    reader.feed(time_s, torque_nm, angle_deg)
    reader.finish()
    return reader.reading()
