"""What a device says about its own values: overload, error, not renewed, battery low."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from logger.samples import Event, EventKind

if TYPE_CHECKING:
    from numpy.typing import NDArray

TOLD: Final[dict[str, tuple[EventKind, str]]] = {
    "overload": (EventKind.OVERLOAD, "the device is beyond its range"),
    "error": (EventKind.DEVICE_ERROR, "the device marks its value as not valid"),
    "stale": (EventKind.DEVICE_ERROR, "the device has not renewed its value"),
    "battery_low": (EventKind.BATTERY, "the device says its battery is low"),
}
# A torque under one of these marks is no reading.
VOIDS: Final = ("overload", "error", "stale")


class Marks:
    """Follows the marks from drain to drain, so that an event stands where a mark begins and nowhere else."""

    def __init__(self) -> None:
        self._standing = dict.fromkeys(TOLD, False)

    def events(self, flags: dict[str, NDArray[np.bool_]]) -> list[Event]:
        """Give an event for every mark that begins; its count is how many samples of this drain it covers."""
        return [event for name, flag in flags.items() if len(flag) for event in self._begun(name, flag)]

    def _begun(self, name: str, flag: NDArray[np.bool_]) -> list[Event]:
        before = np.concatenate(([self._standing[name]], flag[:-1]))
        self._standing[name] = bool(flag[-1])
        begins = np.flatnonzero(flag & ~before)
        if not len(begins):
            return []
        ends = np.concatenate((np.flatnonzero(before & ~flag), [len(flag)]))
        lasts = ends[np.searchsorted(ends, begins, "right")]
        kind, text = TOLD[name]
        return [Event(kind, int(b), int(e - b), text) for b, e in zip(begins, lasts, strict=True)]
