"""When each sample was taken: from the device's counter where it has one, else from the arrival of its bytes.

Conventions
-----------
- Arrivals are ``time.monotonic()`` seconds; times are seconds since the first sample's arrival, or a little before 0
  where a later sample shows that the first one came late.
- Bytes can only ever be late. So the earliest arrival seen, relative to the counter, dates all samples.
- The rate is never learnt from a short record: over the first minutes a fit finds the connection's clock, not the
  device's. The nominal period holds; counter and arrival are recorded, so a fit can be made when reading.
- Times never go back within one stream.

Offered: ``CounterClock``, ``ArrivalClock``, ``build_clock``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, Protocol

if TYPE_CHECKING:
    from logger.samples import Floats, Ints


class Clock(Protocol):
    """Dates samples."""

    @property
    def time_from(self) -> Literal["device counter", "arrival"]:
        """What the times rest on; goes into the recording's header."""
        ...

    def date(self, arrival_s: Floats, counter: Ints | None) -> Floats:
        """Give the time of each sample of one drain.

        Parameters
        ----------
        arrival_s : ndarray, shape (n,)
            Monotonic arrival of the chunk that completed each sample; never decreasing.
        counter : ndarray of int, shape (n,), or None
            Unwrapped sample counter.
        """
        ...

    def at(self, arrival_s: float) -> float:
        """Give the time of something that was seen to happen at this monotonic moment."""
        ...

    def restart(self) -> None:
        """Anchor the counter anew: the device was away and may have begun again."""
        ...
