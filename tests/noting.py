"""A translator that notes what it leaves in English."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from analysis.language.translator import Translator


class Noting(Translator):
    """Translates by a catalogue; ``left`` are the texts that say something and are not in it, parts by themselves.

    What is only tried, as a row of words, is not noted.
    """

    def __init__(self, known: Mapping[str, str], says: Callable[[str], bool]) -> None:
        super().__init__(lambda text: known.get(text) or text, known)
        self._in, self._says, self._tried = known, says, 0
        self.left: list[str] = []

    def tr(self, text: str) -> str:
        """Give a text in the language."""
        said = super().tr(text)
        if not self._tried and said == text and text not in self._in and self._says(text):
            self.left.append(text)
        return said

    def _listed(self, text: str) -> str:
        self._tried += 1
        try:
            return super()._listed(text)
        finally:
            self._tried -= 1
