"""A null-modem cable between two pseudo-terminals, for tests in which both ends are real serial programs."""

from __future__ import annotations

import contextlib
import os
import select
import tempfile
import threading
import tty
from pathlib import Path


class Cable:
    """Two serial ports, joined. ``cut`` unplugs the end named ``b``, as pulling an adapter does.

    The ends are links: the number of a closed terminal goes to the next program that asks for one, which would then be
    opened in its place.
    """

    def __enter__(self) -> Cable:
        self._ends = []
        self._far = []
        for _ in range(2):
            near, far = os.openpty()
            tty.setraw(far)
            self._ends.append(near)
            self._far.append(far)
        self._names = tempfile.TemporaryDirectory(prefix="cable")
        self.a, self.b = (str(Path(self._names.name, name)) for name in ("a", "b"))
        for name, far in zip((self.a, self.b), self._far, strict=True):
            Path(name).symlink_to(os.ttyname(far))
        self._stop = threading.Event()
        self.silent = threading.Event()  # nothing gets through any more
        self._thread = threading.Thread(target=self._carry, daemon=True)
        self._thread.start()
        return self

    def __exit__(self, *_error: object) -> None:
        self._stop.set()
        self._thread.join(2)
        self._names.cleanup()
        for end in (*self._ends, *self._far):
            with contextlib.suppress(OSError):
                os.close(end)

    def cut(self) -> None:
        """Unplug."""
        self._stop.set()
        self._thread.join(2)
        Path(self.b).unlink()
        for end in (self._ends[1], self._far[1]):
            os.close(end)
        self._ends, self._far = self._ends[:1], self._far[:1]

    def _carry(self) -> None:
        other = {self._ends[0]: self._ends[1], self._ends[1]: self._ends[0]}
        while not self._stop.is_set():
            for end in select.select(list(other), [], [], 0.02)[0]:
                with contextlib.suppress(OSError):
                    data = os.read(end, 4096)
                    if not self.silent.is_set():
                        os.write(other[end], data)
