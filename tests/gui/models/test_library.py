"""Lists of fixtures and limits: names that are taken, what is brought in, sent out, and taken back."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from gui.models.library import Library, Shelf
from logger.edges.toml_file import write_toml
from logger.errors import FileError
from logger.header import Lever

if TYPE_CHECKING:
    from pathlib import Path


def lever(name: str, length_mm: float = 450.0) -> Lever:
    return Lever(fixture="cross-bar", name=name, length_mm=length_mm)


@pytest.fixture
def shelf(tmp_path: Path) -> Shelf[Lever]:
    return Library(tmp_path).fixtures


def test_one_of_the_same_name_is_replaced_and_comes_back(shelf: Shelf[Lever]) -> None:
    assert not shelf.can_undo
    first = shelf.save(lever("long"))
    assert shelf.save(lever("long")) == first, "nothing has changed"
    assert shelf.save(lever("long", 500.0)) == first
    shelf.save(lever("Another"))
    assert list(shelf.entries()) == ["Another", "long"]
    assert shelf.name_of(first) == "long"
    assert shelf.name_of(first.with_name("none.toml")) == ""
    shelf.undo()
    shelf.undo()
    assert shelf.entries() == {"long": lever("long")}
    assert shelf.can_undo
    shelf.undo()
    assert (shelf.entries(), shelf.can_undo) == ({}, False)
    shelf.undo()


def test_what_is_removed_comes_back_and_what_is_not_there_is_no_step(shelf: Shelf[Lever]) -> None:
    shelf.remove("none")
    assert not shelf.can_undo
    shelf.save(lever("long"))
    shelf.remove("long")
    assert shelf.entries() == {}
    shelf.undo()
    assert shelf.entries() == {"long": lever("long")}


def test_another_of_the_same_name_is_brought_in_beside_it(shelf: Shelf[Lever], tmp_path: Path) -> None:
    names = []
    for length_mm in (450.0, 500.0, 550.0, 500.0, 450.0):
        write_toml(tmp_path / "theirs.toml", lever("long", length_mm))
        names.append(shelf.bring_in(tmp_path / "theirs.toml").name)
    assert names == ["long", "long (2)", "long (3)", "long (2)", "long"], "what is there already comes once"
    write_toml(tmp_path / "nameless.toml", lever(""))
    assert shelf.bring_in(tmp_path / "nameless.toml").name == "nameless"


def test_two_files_that_say_one_name_are_both_offered(shelf: Shelf[Lever]) -> None:
    first = shelf.save(lever("long"))
    write_toml(first.with_name("zz.toml"), lever("long", 500.0))
    write_toml(first.with_name("zzz.toml"), lever(""))
    assert list(shelf.entries()) == ["long", "long (zz.toml)", "zzz"]
    first.with_name("bad.toml").write_text("x = ", "utf-8")
    assert len(shelf.entries()) == 3
    assert len(shelf.problems) == 1


def test_an_entry_is_sent_out_as_it_is(shelf: Shelf[Lever], tmp_path: Path) -> None:
    saved = shelf.save(lever("long"))
    shelf.send_out("long", tmp_path / "out.toml")
    assert (tmp_path / "out.toml").read_bytes() == saved.read_bytes()
    with pytest.raises(FileError, match="is not in the list"):
        shelf.send_out("short", tmp_path / "none.toml")
