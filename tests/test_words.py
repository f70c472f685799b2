"""Texts follow VOCABULARY.md: what was dropped there stands in no text that somebody reads."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGES = ("logger", "analysis", "gui")
PAGE = (ROOT / "VOCABULARY.md").read_text("utf-8")
CODE = re.compile(r"[\w.:/-]*")  # a key, a file name, a unit: no words
TICKED = re.compile(r"`([^`]+)`")


def dropped() -> list[str]:
    """Give the dropped words: what stands in backticks in the last column of the second table."""
    table = PAGE.partition("## One thing, one name")[2].partition("These keep")[0]
    return [word for row in table.splitlines() if row.startswith("|") for word in TICKED.findall(row.split("|")[3])]


def kept() -> list[str]:
    """Give the phrases that keep a dropped word."""
    return TICKED.findall(PAGE.partition("These keep a dropped word")[2].partition("Data keys")[0])


def texts_of(path: Path) -> Iterator[tuple[int, str]]:
    """Give the texts of a module that may be read by a user, f-strings without what they insert."""
    tree = ast.parse(path.read_text("utf-8"))
    silent = {id(n.value) for n in ast.walk(tree) if isinstance(n, ast.Expr) and isinstance(n.value, ast.Constant)}
    if "doors" in path.parts or path.name == "door.py":  # there the module's docstring is the command's help
        silent -= {id(n.value) for n in tree.body[:1] if isinstance(n, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            silent |= {id(part) for part in node.values}
            yield node.lineno, "".join(p.value if isinstance(p, ast.Constant) else "{}" for p in node.values)
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in silent:
            yield node.lineno, node.value


def all_texts() -> Iterator[tuple[str, str]]:
    for package in PACKAGES:
        for path in sorted((ROOT / package).rglob("*.py")):
            for line, text in texts_of(path):
                if not CODE.fullmatch(text.strip()):
                    yield f"{path.relative_to(ROOT)}:{line}", text
        for path in sorted((ROOT / package).rglob("*.html")):
            yield (
                str(path.relative_to(ROOT)),
                re.sub(r"<style>.*?</style>|<[^>]*>|{[{%].*?[}%]}", " ", path.read_text("utf-8"), flags=re.S),
            )
    readme = re.sub(r"```.*?```", "", (ROOT / "README.md").read_text("utf-8"), flags=re.S)
    for number, line in enumerate(readme.splitlines(), 1):
        yield f"README.md, about line {number}", re.sub(r"`[^`]*`", "", line)


def found(text: str, words: list[str], exceptions: list[str]) -> list[str]:
    """Give the dropped words of a text, the excepted phrases aside."""
    for phrase in exceptions:
        text = re.sub(re.escape(phrase), "", text, flags=re.I)
    text = re.sub(r"(--[\w-]+|\w+ ?=|\w+_\w+|\w+[.:/]\w+)", " ", text)  # options, keys, files
    return [word for word in words if re.search(rf"(?<!\w){re.escape(word)}s?(?!\w)", text, re.I)]


def test_the_page_names_words_to_drop():
    words = dropped()
    assert len(words) > 35
    assert {"gauge", "counter-clockwise", "let go", "additive", "dwell"} <= set(words)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("pull counter-clockwise", ["counter-clockwise"]),
        ("the gauges are off", ["gauge"]),
        ("a strain gauge at the sensor", []),
        ("Enough: let go gently", ["let go"]),
        ("an outlet goes", []),
        ("the key dwell_s = 15", []),
    ],
)
def test_a_dropped_word_is_found(text: str, said: list[str]):
    assert found(text, dropped(), kept()) == said


def test_no_text_holds_a_dropped_word():
    words, exceptions = dropped(), kept()
    wrong = [
        f"{where}: {', '.join(said)}: {text[:90]!r}"
        for where, text in all_texts()
        if (said := found(text, words, exceptions))
    ]
    assert not wrong, "\n".join(wrong)
