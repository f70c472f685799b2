"""A gauge on a pseudo-terminal that answers when it is asked; for tests."""

from __future__ import annotations

import contextlib
import os
import select
import threading
import tty
from collections.abc import Callable


class AnsweringPort:
    """Gives ``answer(request line)`` for every request that ends in ``end``."""

    def __init__(self, answer: Callable[[bytes], bytes], end: bytes = b"\r") -> None:
        self._answer, self._end = answer, end
        self.received: list[bytes] = []
        self.silent = threading.Event()

    def __enter__(self) -> AnsweringPort:
        self._near, self._far = os.openpty()
        tty.setraw(self._far)
        self.path = os.ttyname(self._far)
        self._stop = threading.Event()
        self._thread = threading.Thread(target=self._serve, daemon=True)
        self._thread.start()
        return self

    def __exit__(self, *_error: object) -> None:
        self._stop.set()
        self._thread.join(2)
        for end in (self._near, self._far):
            with contextlib.suppress(OSError):
                os.close(end)

    def _serve(self) -> None:
        waiting = b""
        while not self._stop.is_set():
            if not select.select([self._near], [], [], 0.02)[0]:
                continue
            waiting += os.read(self._near, 4096)
            while self._end in waiting:
                request, waiting = waiting.split(self._end, 1)
                self.received.append(request + self._end)
                if not self.silent.is_set():
                    os.write(self._near, self._answer(request))
