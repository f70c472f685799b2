"""The true zeros of a test: taken before the pulls, and once more after them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import msgspec

from logger.header import Zero

if TYPE_CHECKING:
    from gui.models.zeroing import ZeroValue


@dataclass(slots=True)
class Zeros:
    """What was taken."""

    # first, again: at the transducer; before, and after the pulls
    first: ZeroValue | None = None
    again: ZeroValue | None = None
    written: Zero | None = None  # as it stands in a recording: the first, and by how much the second differs

    @property
    def in_use_nm(self) -> float:
        """The one that counts; 0 before one is taken."""
        return self.first.value_nm if self.first is not None else 0.0

    @property
    def moved_nm(self) -> float | None:
        """By how much the zero differs at the end; None before it was taken twice."""
        return self.again.value_nm - self.first.value_nm if self.again is not None and self.first is not None else None

    def take(self, taken: ZeroValue) -> None:
        """Count from a zero from now on."""
        self.first = taken
        self.written = Zero(value_nm=taken.value_nm, value_nm_u=taken.u_nm, how="lever hanging")

    def take_again(self, taken: ZeroValue) -> Zero | None:
        """Keep the zero at the end beside it; give both as they are written."""
        self.again = taken
        if self.written is not None:
            self.written = msgspec.structs.replace(self.written, after_nm=taken.value_nm)
        return self.written
