"""The mutation runner: what it draws is Python that says something else, and its list of equals is of this program."""

from __future__ import annotations

import ast
import random
import subprocess
import sys

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


def test_a_constant_is_tried_where_it_is_used(tmp_path, monkeypatch):
    """By way of another constant and of a default, in its own module and in one that imports it."""
    monkeypatch.setattr(mutants, "ROOT", tmp_path)
    for room in ("analysis", "logger", "gui"):
        (tmp_path / room).mkdir()
    text = "A = 1\nB = (\n    A,\n    2,\n)\n\n\ndef f(\n    a,\n    b=B,\n):\n    c = a + 1\n    return c\n"
    (tmp_path / "analysis" / "m.py").write_text(text, "utf-8")
    (tmp_path / "gui" / "n.py").write_text("from analysis.m import A\n\n\ndef g(x):\n    return A < x\n", "utf-8")
    body = (("analysis/m.py", 12), ("analysis/m.py", 13))
    assert mutants.uses_of("analysis/m.py", 4) == body
    assert mutants.uses_of("analysis/m.py", 1) == (*body, ("gui/n.py", 5))
    assert mutants.uses_of("analysis/m.py", 12) is None


def test_the_nearest_tests_are_the_modules_own():
    assert mutants.names("tests/analysis/identify/test_ratio.py::test_half_count", "analysis/identify/ratio.py")
    assert mutants.names("tests/analysis/test_borders.py::x", "analysis/verdict/adequacy.py")
    assert not mutants.names("tests/analysis/test_borders.py::x", "analysis/identify/ratio.py")
    assert mutants.names("tests/analysis/trace/test_kept.py::x", "analysis/trace/tail.py")
    assert not mutants.names("tests/analysis/trace/test_kept.py::x", "analysis/verdict/job.py")


def test_an_example_in_a_docstring_notices_a_change_and_passes_without_it():
    """Of a module that imports a function whose name begins as a test's does: it is not taken for one."""
    file, example = "analysis/rows/road.py", "analysis/rows/road.py::analysis.rows.road.parse_band"
    text = (mutants.ROOT / file).read_text(encoding="utf-8")
    assert " import tests_in" in text
    assert "if not plain:" in text
    assert _first_that_failed(file, text, example) == "None"
    assert _first_that_failed(file, text.replace("if not plain:", "if plain:"), example) == example


def _first_that_failed(file, text, test):
    """In a process of its own: the runner forks."""
    words = f"from tests import mutants\nprint(mutants.run({file!r}, {text!r}, [{test!r}], 60))"
    done = subprocess.run(
        [sys.executable, "-c", words], cwd=mutants.ROOT, capture_output=True, text=True, check=True, timeout=300
    )
    return done.stdout.strip()
