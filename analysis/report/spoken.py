"""A page in its reader's language: made in English, put into the language as a whole before it is drawn.

What somebody wrote down (``content.own``) stays as it is, and so do names, hashes and versions; figures get the
language's decimal sign.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from analysis.language.translator import COMMA, LANGUAGES, Translator, translator, unbroken
from analysis.report.content import APART, CLOSES, OPENS, Content, Headline, Section
from analysis.report.drawing import Drawing, Text
from logger.errors import InputError

if TYPE_CHECKING:
    from collections.abc import Iterable

Tell = Callable[[str], str]

OWN = re.compile(f"{OPENS}([^{OPENS}{CLOSES}]*){CLOSES}")
FIRST_PLACE = 0xE100
"""Own words wait behind characters of a private area while the sentence around them is translated."""

POINT = re.compile(r"(?<![\d.])(\d+)\.(\d+)(?![\d.]*\.\d)")


def check_language(language: str) -> str:
    """Give a language that pages can be written in.

    Raises:
        InputError: There is no catalogue of it.
    """
    if language not in LANGUAGES:
        raise InputError(f"language {language!r}: pages are written in {', '.join(LANGUAGES)}")
    return language


def said(text: str, language: str) -> str:
    """Give one text of a page in a language, without the marks round somebody's own words.

    >>> said("interval 95 %, 44.8 ± 0.7 N·m, scatter 1.5 %", "de")
    '95-%-Intervall, 44,8 ± 0,7 N·m, Streuung 1,5 %'
    """
    kept = [found[1] for found in OWN.finditer(text)]
    places = iter(range(FIRST_PLACE, FIRST_PLACE + len(kept)))
    text = OWN.sub(lambda _: chr(next(places)), text)
    speaker = translator(language)
    if speaker is not None:
        text = "".join(_part(part, speaker) for part in text.split(APART))
    text = text.replace(APART, "")
    if language in COMMA:
        text = POINT.sub(r"\1,\2", text)
    text = unbroken(text)
    for place, words in enumerate(kept, FIRST_PLACE):
        text = text.replace(chr(place), words)
    return text


def _part(text: str, speaker: Translator) -> str:
    """Give one part in a language, with the blanks and commas round it."""
    core = text.strip(" ,")
    if not core or text == core:
        return speaker.tr(text)
    before, _, after = text.partition(core)
    return before + speaker.tr(core) + after


def spoken(content: Content, language: str) -> Content:
    """Give a page in a language."""

    def tell(text: str) -> str:
        return said(text, language)

    verdict = content.verdict
    if verdict is not None:
        verdict = replace(
            verdict,
            meaning=tell(verdict.meaning),
            limit=tell(verdict.limit),
            rule=tell(verdict.rule),
            chance=tell(verdict.chance),
        )
    return replace(
        content,
        language=language,
        title=tell(content.title),
        shop=tell(content.shop),
        address=_all(tell, content.address),
        facts=_pairs(tell, content.facts),
        verdict=verdict,
        headlines=tuple(Headline(tell(h.label), tell(h.value), tell(h.remark)) for h in content.headlines),
        drawing=drawn(content.drawing, language),
        legend=tell(content.legend),
        sections=tuple(_section(tell, section) for section in content.sections),
        statements=_all(tell, content.statements),
        signatures=_all(tell, content.signatures),
        footer=tell(content.footer),
        alerts=_all(tell, content.alerts),
    )


def drawn(drawing: Drawing, language: str) -> Drawing:
    """Give a drawing with its words in a language."""
    shapes = tuple(
        replace(shape, text=said(shape.text, language)) if isinstance(shape, Text) else shape
        for shape in drawing.shapes
    )
    return replace(drawing, shapes=shapes, about=said(drawing.about, language))


def _section(tell: Tell, section: Section) -> Section:
    table = section.table
    if table is not None:
        longest = dict(table.cut)
        rows = tuple(
            tuple(_cut(tell(cell), longest.get(column)) for column, cell in enumerate(row)) for row in table.rows
        )
        table = replace(table, headings=_all(tell, table.headings), rows=rows)
    return replace(
        section,
        heading=tell(section.heading),
        fields=_pairs(tell, section.fields),
        lines=_all(tell, section.lines),
        table=table,
    )


def _cut(text: str, longest: int | None) -> str:
    return text if longest is None or len(text) <= longest else text[: longest - 1] + "…"


def _all(tell: Tell, texts: Iterable[str]) -> tuple[str, ...]:
    return tuple(map(tell, texts))


def _pairs(tell: Tell, pairs: Iterable[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    return tuple((tell(label), tell(value)) for label, value in pairs)
