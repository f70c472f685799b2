"""Work that takes longer than a frame, in another process, its answers brought back to the window's thread.

A thread would not do: reading text and writing JSON hold the interpreter's lock for seconds. The process is started
with the first question and ends with the window.
"""

from __future__ import annotations

import contextlib
import shutil
import tempfile
import threading
from collections.abc import Callable
from concurrent.futures import Future, ProcessPoolExecutor
from multiprocessing import get_context
from typing import Any, TypeVar

from PySide6.QtCore import QObject, Qt, Signal, Slot

from analysis.rows.batch import end_with_parent
from logger.errors import HeldwheelError

T = TypeVar("T")


class Worker(QObject):
    """Asks questions of one worker process."""

    answered = Signal(object)  # queued into the window's thread; for this class alone

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool: ProcessPoolExecutor | None = None
        self._waiting: dict[Future[Any], tuple[Callable[[Any], object], Callable[[str], object]]] = {}
        self.room = tempfile.mkdtemp(prefix="heldwheel-")
        self.answered.connect(self._deliver, Qt.ConnectionType.QueuedConnection)

    def ask(
        self,
        question: Callable[..., T],
        *arguments: object,
        then: Callable[[T], object],
        failed: Callable[[str], object] = lambda _text: None,
    ) -> Future[T]:
        """Have a function run in the worker; ``then`` or ``failed`` is called later, in the window's thread."""
        if self._pool is None:
            self._pool = ProcessPoolExecutor(1, mp_context=get_context("spawn"), initializer=end_with_parent)
        future: Future[T] = self._pool.submit(question, *arguments)
        self._waiting[future] = (then, failed)
        future.add_done_callback(self.answered.emit)
        return future

    def forget(self, future: Future[Any]) -> None:
        """No longer want an answer; a question that has not begun is not begun."""
        self._waiting.pop(future, None)
        future.cancel()

    @property
    def busy(self) -> bool:
        """Whether an answer is still wanted."""
        return bool(self._waiting)

    @Slot(object)
    def _deliver(self, future: Future[Any]) -> None:
        wanted = self._waiting.pop(future, None)
        if wanted is None or future.cancelled():
            return
        then, failed = wanted
        error = future.exception()
        if error is None:
            then(future.result())
        elif isinstance(error, HeldwheelError):
            failed(str(error))
        else:
            self._pool = None  # a process that died is replaced with the next question
            failed(f"Reading it has failed ({type(error).__name__}: {error}).")

    def close(self) -> None:
        """End the process, in the middle of its work if need be, and remove its files."""
        busy, pool = self.busy, self._pool
        self._waiting.clear()
        self._pool = None
        if pool is not None:
            if busy:  # half a gigabyte may be on its way: nobody waits for it any more
                for process in list((getattr(pool, "_processes", None) or {}).values()):
                    process.terminate()
            pool.shutdown(wait=True, cancel_futures=True)
        shutil.rmtree(self.room, ignore_errors=True)


class Errand(QObject):
    """Looks at a folder in a thread of its own: a folder that answers is waited for, one that hangs is not."""

    back = Signal(object)  # queued into the window's thread; for this class alone

    def __init__(self, then: Callable[[Any], object], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._then = then
        self._latest: Future[Any] | None = None
        self.back.connect(self._deliver, Qt.ConnectionType.QueuedConnection)

    def run(self, question: Callable[..., Any], *arguments: object, patience_s: float) -> bool:
        """Ask; give whether the answer came within the patience. Otherwise it comes later, or never."""
        future: Future[Any] = Future()
        self._latest = future

        def go() -> None:
            try:
                future.set_result(question(*arguments))
            except Exception as error:  # noqa: BLE001 - handed on to whoever asked
                future.set_exception(error)

        threading.Thread(target=go, name="errand", daemon=True).start()
        try:
            answer = future.result(patience_s)
        except TimeoutError:
            future.add_done_callback(self._bring)
            return False
        self._then(answer)
        return True

    def _bring(self, future: Future[Any]) -> None:
        with contextlib.suppress(RuntimeError):  # the window was closed meanwhile
            self.back.emit(future)

    @Slot(object)
    def _deliver(self, future: Future[Any]) -> None:
        if future is self._latest and future.exception() is None:
            self._then(future.result())
