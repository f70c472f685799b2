"""Texts in the user's language: models write English, and what shows a text asks for its translation here.

The window's catalogues are Qt's own (``translations/heldwheel_<language>.ts``, released as ``.qm``); what the analysis
says stands in the analysis's, which its pages use, too. How a text is found: ``analysis.language.translator``.
"""

from __future__ import annotations

from importlib.resources import as_file, files

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from analysis.language.translator import COMMA, LANGUAGES, Translator, catalogue, read_catalogue, unbroken

__all__ = ["COMMA", "LANGUAGES", "by_locale", "install", "sentence", "spoken_language", "tr"]

CONTEXT = "Heldwheel"

_installed: list[QTranslator] = []
_language = "en"
_translator: Translator | None = None


def install(language: str) -> bool:
    """Show texts in a language from now on; tells whether its catalogue was found. English needs none."""
    global _translator, _language
    for old in _installed:
        QCoreApplication.removeTranslator(old)
    _installed.clear()
    _translator, _language = None, "en"
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
    if not found:
        return False
    QCoreApplication.installTranslator(made)
    _installed.append(made)
    theirs = catalogue(language)
    ours = read_catalogue(folder.joinpath(f"heldwheel_{language}.ts").read_text("utf-8"))

    def exactly(text: str) -> str:
        said = QCoreApplication.translate(CONTEXT, text)
        return said if said != text else theirs.get(text) or text

    _translator, _language = Translator(exactly, (*ours, *theirs)), language
    return True


def by_locale(locale: QLocale) -> dict[str, object]:
    """Give language, decimal mark and units as somebody from there expects them, until they are chosen.

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


def tr(text: str) -> str:
    """Give a text in the user's language; one that is not in the catalogue stays as it is."""
    return unbroken(text if _translator is None else _translator.tr(text))


def spoken_language() -> str:
    """Give the language in which texts are shown: what is drawn by the analysis comes in it."""
    return _language


def sentence(text: str) -> str:
    """Give a text in the user's language, its first letter a capital."""
    told = tr(text)
    return told[:1].upper() + told[1:]
