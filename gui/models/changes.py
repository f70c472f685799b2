"""How a model tells its views that it changed."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable


class Changes:
    """A list of listeners; a model calls ``tell`` after each change, in the thread that made it.

    Examples
    --------
    >>> seen = []
    >>> changes = Changes()
    >>> forget = changes.listen(lambda: seen.append(1))
    >>> changes.tell(); forget(); changes.tell()
    >>> seen
    [1]
    """

    def __init__(self) -> None:
        self._listeners: list[Callable[[], object]] = []

    def listen(self, listener: Callable[[], object]) -> Callable[[], None]:
        """Call ``listener`` after every change; the answer is a function that stops it."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener) if listener in self._listeners else None

    def tell(self) -> None:
        """Tell every listener."""
        for listener in tuple(self._listeners):
            listener()
