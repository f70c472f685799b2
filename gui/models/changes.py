"""How a model tells its views that it changed, and what a form was before."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable

D = TypeVar("D")
KEPT = 200  # steps of a form that can be taken back


class Changes:
    """A list of listeners; a model calls ``tell`` after each change, in the thread that made it.

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


class History(Generic[D]):
    """What a form was before each change; letters typed into one field one after the other are one change.

    >>> history = History[str]()
    >>> history.remember("", "name"); history.remember("a", "name"); history.remember("ab")
    >>> history.back(), history.back(), bool(history)
    ('ab', '', False)
    """

    def __init__(self) -> None:
        self._past: list[D] = []
        self._typing = ""

    def __bool__(self) -> bool:
        return bool(self._past)

    def remember(self, draft: D, typing: str = "") -> None:
        """Keep what the form is before a change; ``typing`` names the field whose letters belong together."""
        if not typing or typing != self._typing:
            self._past = [*self._past[-KEPT:], draft]
        self._typing = typing

    def back(self) -> D:
        """Give what the form was before the last change, and forget that change."""
        self._typing = ""
        return self._past.pop()

    def pause(self) -> None:
        """Let what is typed next be a change of its own."""
        self._typing = ""

    def clear(self) -> None:
        """Forget everything."""
        self._past, self._typing = [], ""
