"""The mutation runner: what it draws is Python that says something else, and its list of equals is of this program."""

from __future__ import annotations

import ast
import random

import pytest

from tests import mutants


def test_every_entry_of_the_list_is_a_mutation_of_the_program():
    known = mutants.alike()
    assert known
    assert all(why for why in known.values())


def test_an_entry_for_a_line_that_has_become_another_is_told(tmp_path):
    path = tmp_path / "a.toml"
    path.write_text('[[alike]]\nfile = "logger/decoder/floats.py"\nline = "x = 1"\ntoken = "1"\nwhy = "x"\n', "utf-8")
    with pytest.raises(ValueError, match="no such mutation any more"):
        mutants.alike(path)


def test_a_mutation_changes_one_token_and_is_still_python():
    paths = sorted((mutants.ROOT / "analysis" / "verdict").glob("*.py"))
    every = [one for path in paths for one in mutants.mutations(path)]
    assert {one.before for one in every} >= {"+", "-", "*", "/", "<", "<=", ">", ">=", "==", "and", "or", "not", "min"}
    for one in random.Random(3).sample(every, 60):
        plain = (mutants.ROOT / one.file).read_text(encoding="utf-8")
        text = mutants.mutated(one)
        assert ast.dump(ast.parse(text)) != ast.dump(ast.parse(plain)), one
        changed = [n for n, (a, b) in enumerate(zip(text.split("\n"), plain.split("\n"), strict=True), 1) if a != b]
        assert changed == [one.line]


def test_texts_annotations_and_imports_are_left_alone(tmp_path, monkeypatch):
    monkeypatch.setattr(mutants, "ROOT", tmp_path)
    path = tmp_path / "a.py"
    path.write_text(
        '"""a < b"""\nfrom x import *\n\n\ndef f(a, *, b=-1) -> "c + 1":\n    return [*a, b * 2.0, not b]\n', "utf-8"
    )
    found = [(one.line, one.before, one.after) for one in mutants.mutations(path)]
    assert found == [(6, "*", "/"), (6, "2.0", "2.2"), (6, "not", "")]
