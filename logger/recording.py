"""Writing a recording: one text file that a spreadsheet, ``pandas.read_csv(comment="#")`` and a person can read.

::

    # heldwheel recording 1
    # schema = "heldwheel recording 1"              header: TOML behind "# "
    # started = 2026-05-01T10:00:00+02:00
    # [transducer]
    # unit = "lbf·in"
    time_s,torque_lbf_in,counter,late_ms            columns with their units
    # batch rows=0 crc32=9A3F2C10                   CRC-32 of all bytes since the last batch line
    0.000000,12.3,100,0
    # event time_s=0.001000 kind=gap count=20 text=20 samples lost
    0.021000,12.4,121,1.25
    # batch rows=2 crc32=0B1C2D3E
    # closed samples=2 sha256=…                     of all bytes above this line

Rules
-----
1. Append only; an existing file is never overwritten. Values stand as the device delivered them, with as many digits.
2. A sample counts as saved when its batch line has been handed to the system: at least each 0.25 s. The system is
   told to put it on the disk each second, from another thread.
3. A batch is whole or not there: a number cut short is still a number, so without its batch line a row is not used.
4. A value that the device did not deliver is an empty cell, never 0.

Offered: ``RecordingWriter``, ``column_names``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from logger.header import Header
    from logger.samples import Block, Column, Ending


class RecordingWriter:
    """A subscriber that writes a recording.

    Parameters
    ----------
    path : Path
        A new file.
    header : Header
        What is known at the start. ``started`` and ``simulated`` are completed from the first samples.
    columns : sequence of Column
        ``session.columns``.

    Raises
    ------
    FileError
        The file exists, or cannot be made.
    """

    def __init__(self, path: Path | str, header: Header, columns: Sequence[Column]) -> None:
        raise NotImplementedError

    @property
    def saved(self) -> int:
        """Samples handed to the system whole, batch line included: what a kill of the program cannot take back."""
        raise NotImplementedError

    @property
    def unsaved(self) -> int:
        """Samples received but not yet (or, after a failure, never) saved."""
        raise NotImplementedError

    def on_block(self, block: Block) -> None:
        """Take samples and events.

        Raises
        ------
        FileError
            Writing has failed; the text says how many samples are safe and how many are kept in memory.
        """
        raise NotImplementedError

    def on_end(self, ending: Ending) -> None:
        """Write what is left and the closing line."""
        raise NotImplementedError

    def rescue(self, folder: Path) -> Path:
        """After a failure: write everything, saved or not, as a new recording elsewhere and give its path."""
        raise NotImplementedError
