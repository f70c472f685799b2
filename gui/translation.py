"""Texts in the user's language: models write English, and what shows a text asks for its translation here.

The catalogues are Qt's own (``translations/heldwheel_<language>.ts``, released as ``.qm``). A text with figures in it
is found by its template, ``Pull %1 of %2``; words that are inserted are translated, too. A text without a translation
stays English.

Offers ``LANGUAGES``, ``by_locale``, ``install``, ``tr``, ``sentence``.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from functools import lru_cache
from importlib.resources import as_file, files

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

CONTEXT = "Heldwheel"
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

_templates: list[tuple[str, re.Pattern[str], str]] = []  # its longest words of its own, its pattern, the template
_installed: list[QTranslator] = []


def install(language: str) -> bool:
    """Show texts in a language from now on; tells whether its catalogue was found. English needs none."""
    for old in _installed:
        QCoreApplication.removeTranslator(old)
    _installed.clear()
    _templates.clear()
    tr.cache_clear()
    if language not in LANGUAGES or language == "en":
        return language == "en"
    folder = files("gui.translations")
    made = QTranslator()
    with as_file(folder.joinpath(f"heldwheel_{language}.qm")) as path:
        found = made.load(str(path))
    own = QTranslator()  # what Qt itself says: buttons of its dialogs, the file dialog
    if own.load(f"qtbase_{language}", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
        QCoreApplication.installTranslator(own)
        _installed.append(own)
    if found:
        QCoreApplication.installTranslator(made)
        _installed.append(made)
        _templates.extend(_read_templates(folder.joinpath(f"heldwheel_{language}.ts").read_text("utf-8")))
    return found


def _read_templates(catalogue: str) -> list[tuple[str, re.Pattern[str], str]]:
    """Give the texts of a catalogue that hold places for figures, those with most words first."""
    sources = [node.findtext("source") or "" for node in ET.fromstring(catalogue).iter("message")]
    sources = sorted((s for s in sources if "%1" in s), key=lambda s: -len(re.sub(r"%\d", "", s)))
    found = []
    for source in sources:
        own = re.split(r"%\d", source)
        found.append((max(own, key=len), re.compile(_place(source).join(map(re.escape, own)), re.DOTALL), source))
    return found


def _place(source: str) -> str:
    """Give what may stand in a template's places: anything, but only figures where it has little of its own.

    ``%1 of %2`` is of counts: it must not be found in every sentence with an "of".
    """
    own = re.sub(r"%\d|\s", "", source)
    return "(.+)" if len(own) >= FEW_CHARACTERS or HEADED.match(source) else FIGURE


def by_locale(locale: QLocale) -> dict[str, object]:
    """Give language, decimal mark and units as somebody from there expects them, until they are chosen.

    Examples
    --------
    >>> by_locale(QLocale("de_DE"))
    {'language': 'de', 'comma': True, 'unit': 'N·m', 'lengths': 'mm'}
    >>> by_locale(QLocale("en_US"))
    {'language': 'en', 'comma': False, 'unit': 'lbf·ft', 'lengths': 'in'}
    """
    language = locale.name().partition("_")[0]
    inches = locale.measurementSystem() is QLocale.MeasurementSystem.ImperialUSSystem and locale.name() != "C"
    return {
        "language": language if language in LANGUAGES else "en",
        "comma": locale.decimalPoint() == ",",
        "unit": "lbf·ft" if inches else "N·m",
        "lengths": "in" if inches else "mm",
    }


@lru_cache(4096)
def tr(text: str) -> str:
    """Give a text in the user's language; one that is not in the catalogue stays as it is."""
    if not _installed or not any(letter.isalpha() for letter in text):
        return text
    for look_up in (_exactly, _apart, _by_template, _listed):
        found = look_up(text)
        if found != text:
            return found
    within = text[0].lower() + text[1:]  # at a sentence's beginning stands what the catalogue has in its middle
    for look_up in (_exactly, _by_template) if within != text else ():
        found = look_up(within)
        if found != within:
            return found[0].upper() + found[1:]
    return text


def _exactly(text: str) -> str:
    return QCoreApplication.translate(CONTEXT, text)


def _apart(text: str) -> str:
    """Give a text of several parts, each by itself: behind a mark, in lines, between dots."""
    for mark in MARKS:
        if text.startswith(mark):
            return mark + tr(text.removeprefix(mark))
    for between in ("\n", JOINED):
        if between in text:
            return between.join(tr(part) for part in text.split(between))
    return text


def _by_template(text: str) -> str:
    for own, pattern, source in _templates:
        match = pattern.fullmatch(text) if own in text else None
        if match is not None:
            return _filled(_exactly(source), match.groups())
    return text


def sentence(text: str) -> str:
    """Give a text in the user's language, its first letter a capital."""
    told = tr(text)
    return told[:1].upper() + told[1:]


def _listed(text: str) -> str:
    """Give words in a row, ``cone, ramp plate or open``, each by itself where every one is known; else the text."""
    for between in LISTS:
        parts = text.split(between)
        if len(parts) > 1 and all(_known(part) for part in parts):
            return between.join(tr(part) for part in parts)
    aside = re.fullmatch(r"(.+) \((.+)\)", text)
    if aside is not None and _known(aside[1]) and _known(aside[2]):
        return f"{tr(aside[1])} ({tr(aside[2])})"
    for pair in PAIRS:
        places = [found.start() for found in re.finditer(pair, text)]
        for place in places:
            parts = [text[:place], text[place + len(pair) :]]
            if all(_known(part) for part in parts):
                return _filled(_exactly(f"%1{pair}%2"), tuple(parts))
    return text


def _known(text: str) -> bool:
    return tr(text) != text or re.fullmatch(FIGURE, text) is not None


def _filled(template: str, parts: tuple[str, ...]) -> str:
    """Put figures and words, translated, into the places of a template."""
    return re.sub(r"%(\d)", lambda place: tr(parts[int(place[1]) - 1]), template)
