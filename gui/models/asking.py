"""What a transducer that sends nothing by itself would be asked, and what the user has agreed to.

A yes holds for exactly what was shown: the content of the description and the port or address. It is forgotten with
the window, and a description that has changed is another one.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from typing import TYPE_CHECKING

from logger.edges.confirm import shown_bytes
from logger.edges.console import clean
from logger.edges.toml_file import format_toml

if TYPE_CHECKING:
    from collections.abc import Iterable

    from logger.decoder.description import Description

SHOWN_NOTES = 300  # characters of a description's own words


@dataclass(frozen=True, slots=True)
class Question:
    """What the user is asked before anything is sent."""

    key: str  # stands for this content and this address
    to: str  # where it goes
    what: str  # what is sent, in words, and how often
    # (str, str); each request as hexadecimal digits and, where it is a text, as that
    requests: tuple[tuple[str, str], ...]
    made: str  # who made the description
    own_words: str  # what the description says about itself: its writer's words


def content_key(description: Description, address: str) -> str:
    """Give what stands for a description's content and an address: SHA-256 of both."""
    return hashlib.sha256(f"{address}\n{format_toml(description)}".encode()).hexdigest()


def question_of(description: Description, address: str, saved: Iterable[Description] = ()) -> Question | None:
    """Give what must be answered before a transducer is opened; None for one that sends by itself.

    Args:
        description: The transducer.
        address: Its port or Bluetooth identity.
        saved: The user's own list.
    """
    from logger.links.build import asked_bytes, asks  # here: the window opens without a transducer

    if not asks(description):
        return None
    text = shown_bytes if description.modbus is None else lambda _data: ""
    name, notes = clean(description.name, 80), clean(description.notes, SHOWN_NOTES)
    return Question(
        content_key(description, address),
        clean(address, 80) or "no port chosen yet",
        asks(description),
        tuple((data.hex(" ").upper(), text(data)) for data in asked_bytes(description)),
        made_words(description, saved),
        f"“{name}”" + (f": {notes}" if notes else ""),
    )


def made_words(description: Description, saved: Iterable[Description] = ()) -> str:
    """Say who made a description, as far as its content can tell."""
    from logger.decoder.description import read_description, shipped

    for name, path in shipped().items():
        if read_description(path) == description:
            return f"Comes with this program: the invented example {name}. It fits your device only by chance."
    if any(one == description for one in saved):
        return "From your own list of transducers, unchanged since it was saved there."
    return "Not in your list: imported, or changed since. Nothing proves who wrote it."


class Agreements:
    """What the user has agreed to since the window was opened."""

    def __init__(self) -> None:
        self._agreed: set[str] = set()

    def agree(self, question: Question) -> None:
        """Remember a yes."""
        self._agreed.add(question.key)

    def cover(self, description: Description, address: str) -> bool:
        """Whether this very content may be sent to this address."""
        return content_key(description, address) in self._agreed
