"""Puts a text into another language: a sentence is its own key, found whole, in parts or by its template.

A text with figures in it is found by its template, ``Pull %1 of %2``; words that are inserted are translated, too. A
text without a translation stays English. The catalogues ``analysis_<language>.ts`` hold what the analysis says and what
stands on its pages; the window looks into its own first (``gui.translation``).
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterable, Mapping
from functools import cache
from importlib.resources import files

LANGUAGES = {
    "en": "English",
    "de": "Deutsch",
    "es": "Español",
}
COMMA = frozenset({"de", "es"})  # languages that write a decimal comma
JOINED = " · "  # between parts that are translated each by itself
FEW_CHARACTERS = 8
HEADED = re.compile(r"[A-Za-z][A-Za-z ]+[:,] ")  # "Limit: %1" heads whatever follows
UNITS = "N·m|lbf·ft|lbf·in|kgf·m|kgf·cm|mm|in|kg|g|lb|km|m|min|ms|s|h|N|l|Hz|°C|%|V"
FIGURE = rf"([^A-Za-z]*(?:(?:{UNITS})(?:/[a-z]+²?)?)?)"
LISTS = ("; ", " → ", ", ", " / ", ": ")  # between words in a row
PAIRS = (" or ", " and ", " for ")
MARKS = ("▲ ", "•  ", "• ")  # before a text, in every language
MOST_KEPT = 4096


class Translator:
    """Finds the translation of a text.

    Args:
        exactly: Gives the translation of a whole text or template; the text itself where there is none.
        sources: Every text that has one: those with places ``%1`` are templates.
    """

    def __init__(self, exactly: Callable[[str], str], sources: Iterable[str] = ()) -> None:
        self._exactly = exactly
        self._templates = _templates(sources)
        self._told: dict[str, str] = {}

    def tr(self, text: str) -> str:
        """Give a text in this language; one that is not known stays as it is."""
        if text not in self._told:
            if len(self._told) >= MOST_KEPT:
                self._told.clear()
            self._told[text] = self._looked_up(text)
        return self._told[text]

    def _looked_up(self, text: str) -> str:
        if not any(letter.isalpha() for letter in text):
            return text
        for look_up in (self._exactly, self._apart, self._by_template, self._listed):
            found = look_up(text)
            if found != text:
                return found
        within = text[0].lower() + text[1:]  # at a sentence's beginning stands what the catalogue has in its middle
        for look_up in (self._exactly, self._by_template) if within != text else ():
            found = look_up(within)
            if found != within:
                return found[0].upper() + found[1:]
        return text

    def _apart(self, text: str) -> str:
        """Give a text of several parts, each by itself: behind a mark, in lines, between dots."""
        for mark in MARKS:
            if text.startswith(mark):
                return mark + self.tr(text.removeprefix(mark))
        for between in ("\n", JOINED):
            if between in text:
                return between.join(self.tr(part) for part in text.split(between))
        return text

    def _by_template(self, text: str) -> str:
        for own, pattern, source in self._templates:
            match = pattern.fullmatch(text) if own in text else None
            if match is not None:
                return self._filled(self._exactly(source), match.groups())
        return text

    def _listed(self, text: str) -> str:
        """Give words in a row, ``cone, ramp plate or open``, each by itself where every one is known; else the text."""
        for between in LISTS:
            parts = text.split(between)
            if len(parts) > 1 and all(self._known(part) for part in parts):
                return between.join(self.tr(part) for part in parts)
        aside = re.fullmatch(r"(.+) \((.+)\)", text)
        if aside is not None and self._known(aside[1]) and self._known(aside[2]):
            return f"{self.tr(aside[1])} ({self.tr(aside[2])})"
        for pair in PAIRS:
            places = [found.start() for found in re.finditer(pair, text)]
            for place in places:
                parts = [text[:place], text[place + len(pair) :]]
                if all(self._known(part) for part in parts):
                    return self._filled(self._exactly(f"%1{pair}%2"), tuple(parts))
        return text

    def _known(self, text: str) -> bool:
        return self.tr(text) != text or re.fullmatch(FIGURE, text) is not None

    def _filled(self, template: str, parts: tuple[str, ...]) -> str:
        """Put figures and words, translated, into the places of a template."""
        return re.sub(r"%(\d)", lambda place: self.tr(parts[int(place[1]) - 1]), template)


def _templates(sources: Iterable[str]) -> list[tuple[str, re.Pattern[str], str]]:
    """Give the texts that hold places for figures, those with most words first: longest part, pattern, text."""
    found = []
    for source in sorted((s for s in sources if "%1" in s), key=lambda s: -len(re.sub(r"%\d", "", s))):
        own = re.split(r"%\d", source)
        found.append((max(own, key=len), re.compile(_place(source).join(map(re.escape, own)), re.DOTALL), source))
    return found


def _place(source: str) -> str:
    """Give what may stand in a template's places: anything, but only figures where it has little of its own.

    ``%1 of %2`` is of counts: it must not be found in every sentence with an "of".
    """
    own = re.sub(r"%\d|\s", "", source)
    return "(.+)" if len(own) >= FEW_CHARACTERS or HEADED.match(source) else FIGURE


def unbroken(text: str) -> str:
    """Keep "(95 %)" with its number at the end of a line."""
    return text.replace(" (95 %", "\u00a0(95\u00a0%")


def read_catalogue(written: str) -> dict[str, str]:
    """Give the texts of a catalogue with their translations."""
    return {m.findtext("source") or "": m.findtext("translation") or "" for m in ET.fromstring(written).iter("message")}


@cache
def catalogue(language: str) -> Mapping[str, str]:
    """Give what the analysis says in a language, by the English text; nothing for English."""
    if language not in LANGUAGES or language == "en":
        return {}
    return read_catalogue(files("analysis.language").joinpath(f"analysis_{language}.ts").read_text("utf-8"))


@cache
def translator(language: str) -> Translator | None:
    """Give the translator of the pages; None for English, which needs none."""
    known = catalogue(language)
    return Translator(lambda text: known.get(text) or text, known) if known else None
