"""What a page shows, as words, whichever program set it: for comparing two pages that cannot agree byte for byte.

Words are not all that is visible: how they are set, a picture over them or a style that hides them is not seen here.
"""

from __future__ import annotations

import io
from html.parser import HTMLParser

UNREADABLE = "(its text cannot be read)"


class _Texts(HTMLParser):
    """Collects the texts of a page; what stands in a head, a style or a script is not shown."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self._hidden = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Count what is not shown."""
        self._hidden += tag in ("style", "script", "title")

    def handle_endtag(self, tag: str) -> None:
        """Count it back."""
        self._hidden -= tag in ("style", "script", "title")

    def handle_data(self, data: str) -> None:
        """Keep a text."""
        text = " ".join(data.split())
        if text and not self._hidden:
            self.texts.append(text)


def texts_of(page: bytes) -> tuple[str, ...]:
    """Give the texts that a page shows, in its order; of a PDF line by line."""
    if page.startswith(b"%PDF"):
        return _of_pdf(page)
    reader = _Texts()
    reader.feed(page.decode("utf-8", "replace"))
    reader.close()
    return tuple(reader.texts)


def _of_pdf(page: bytes) -> tuple[str, ...]:
    import logging

    from pypdf import PdfReader

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # what is odd about a page is told as its difference
    try:
        lines = [line for sheet in PdfReader(io.BytesIO(page)).pages for line in sheet.extract_text().splitlines()]
    except Exception:  # noqa: BLE001 - a page from anybody: whatever its parser stumbles over, it cannot be read
        return (UNREADABLE,)
    return tuple(text for line in lines if (text := " ".join(line.split())))
