"""Recordings as data frames, in one line from Python.

::

    import heldwheel

    frame = heldwheel.read("recordings/05-event-1.csv")

    level = heldwheel.chatter("eights.wav", before="before.wav", axle="43-11")

Offered: ``read``, ``chatter``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from os import PathLike

    import pandas as pd

__all__ = ["chatter", "read"]

_UNITS = {"angle_deg": "°", "counter": "1", "late_ms": "ms"}


def read(path: str | PathLike[str], **table: str | float) -> pd.DataFrame:
    """Read a recording, or a table of another program, to one frame.

    Args:
        path: The file; its sidecar is read with it.
        **table: What a table of another program does not say of itself: ``time``, ``time_unit``, ``rate_hz``,
            ``torque``, ``unit``, ``angle``, ``decimal``, ``sheet``; see ``logger.header.Table``.

    Returns:
        Indexed by ``time_s`` (s). ``torque`` (or ``force``) is as the device delivered it, ``torque_nm`` (or
            ``force_n``) the same in SI, clockwise positive; the other columns are the recording's. ``frame.attrs``
            holds - ``units``: the unit of each column, and of the index; - ``events``: what happened, each with
            ``time_s``, ``kind``, ``count``, ``text``; - ``header``: what is known of the test, as plain values; -
            ``problems``, ``state``, ``sha256``, ``simulated``: as the commands say them.

    Raises:
        HeldwheelError: It cannot be read, or leaves something open; the text says what to do.
    """
    import msgspec
    import pandas as pd

    from logger.errors import InputError
    from logger.header import Table
    from logger.recordings.files import read_trace

    try:
        said = msgspec.convert(table, Table) if table else None
    except msgspec.ValidationError as error:
        raise InputError(f"read({path!s}): {error}; there are: {', '.join(Table.__struct_fields__)}") from None
    trace = read_trace(str(path), said)
    main, si = ("force", "force_n") if trace.is_force else ("torque", "torque_nm")
    columns = {main: trace.torque, si: trace.si, **trace.columns}
    frame = pd.DataFrame(columns, index=pd.Index(trace.time_s, name="time_s"))
    units = {main: trace.unit, si: "N" if trace.is_force else "N·m", "time_s": "s"}
    frame.attrs = {
        "units": units | {name: _UNITS.get(name, name.rpartition("_")[2]) for name in trace.columns},
        "events": [{"time_s": e.time_s, "kind": str(e.kind), "count": e.count, "text": e.text} for e in trace.events],
        "header": msgspec.to_builtins(trace.header),
        "problems": list(trace.problems),
        "state": trace.state,
        "sha256": trace.sha256,
        "simulated": trace.header.simulated,
    }
    return frame


def chatter(
    path: str | PathLike[str],
    before: str | PathLike[str] = "",
    *,
    band: tuple[float, float] | None = None,
    axle: str = "",
    recordings: str | PathLike[str] = "",
) -> pd.DataFrame:
    """Read a sound or an acceleration from figure-eights to its band level against time; it is no torque.

    Args:
        path, before: WAV, or a table of acceleration; ``before`` is one to compare with, made alike.
        band: Hz.
        axle: Tag of the axle whose chatter index on the bench stands beside.
        recordings: Folder of its recordings; beside ``path`` otherwise.

    Returns:
        Indexed by ``time_s`` (s): ``level_db``, ``clipped``. ``frame.attrs`` is what ``heldwheel-read chatter --json``
            prints: ``events``, ``share``, ``against``, ``bench``, ``problems`` ...

    Raises:
        HeldwheelError: A file cannot be read, or the two cannot be compared.
    """
    import pandas as pd

    from analysis.rows.road import road_test, to_json

    test = road_test(str(path), str(before), band, axle, str(recordings))
    levels = test.levels
    frame = pd.DataFrame(
        {"level_db": levels.db, "clipped": levels.clipped}, index=pd.Index(levels.time_s, name="time_s")
    )
    frame.attrs.update(to_json(test))
    return frame
