"""The shipped descriptions and the reference of their keys, as a user asks for them."""

from pathlib import Path

import pytest

from logger.__main__ import COMMANDS
from logger.decoder.description import read_description, shipped
from logger.decoder.description_keys import EXAMPLES, example, markdown, tables
from logger.edges.door import Exit, run_door

PAGE = Path(__file__).parents[3] / "DESCRIPTIONS.md"


def describe(*words):
    return run_door("heldwheel-log", "about", COMMANDS, "logger.doors", ["describe", *words])


def test_every_key_says_what_it_means_and_holds():
    found = tables()
    assert {"lines", "frame", "notification", "modbus", "poll", "serial", "ble"} <= {one.name for one in found}
    for one in found:
        assert one.about, one.name
        for key in one.keys:
            assert key.about, (one.name, key.name)
            assert key.holds, (one.name, key.name)
    keys = {(one.name, key.name): key for one in found for key in one.keys}
    assert keys["lines", "terminator"].holds == '"CR", "LF", "CRLF", "any", "ETX"'
    assert keys["serial", "baud"].holds == "whole number from 50 to 4e+06"
    assert keys["lines", "template"].default == ""
    assert ("[notification.fields]", "scale") in keys


def test_the_page_is_what_the_types_say():
    """Written anew by: heldwheel-log describe keys --markdown > DESCRIPTIONS.md."""
    assert PAGE.read_text(encoding="utf-8").strip() == markdown().strip()


@pytest.mark.parametrize("layout", EXAMPLES)
def test_every_layout_has_an_example_that_shows_it(layout):
    assert f"[{layout}]" in example(layout)


def test_list_show_copy_check(tmp_path, capsys):
    assert describe() == Exit.OK
    listed = capsys.readouterr().out
    assert all(name in listed for name in shipped())
    assert describe("show", "counted-text") == Exit.OK
    assert 'template = "{counter},{torque},{angle}"' in capsys.readouterr().out
    mine = tmp_path / "mine.toml"
    assert describe("copy", "counted-text", str(mine)) == Exit.OK
    assert read_description(mine) == read_description("counted-text")
    assert describe("copy", "counted-text", str(mine)) == Exit.BAD_INPUT, "never overwritten"
    capsys.readouterr()
    assert describe("check", "comma-frame-text") == Exit.OK
    assert "every 0.1 s" in capsys.readouterr().out, "what it sends is said"
    mine.write_text('name = "x"\n[lines]\ntemplate = "{torqe}"\n', encoding="utf-8")
    assert describe("check", str(mine)) == Exit.BAD_INPUT
    assert "must have the field {torque}" in capsys.readouterr().err


@pytest.mark.parametrize(
    "words", [("show",), ("show", "nosuch"), ("copy", "counted-text"), ("check",), ("keys", "nosuch")]
)
def test_bad_input(words, capsys):
    assert describe(*words) == Exit.BAD_INPUT
    assert capsys.readouterr().err


def test_keys_of_one_table_come_with_an_example(capsys):
    assert describe("keys", "notification") == Exit.OK
    shown = capsys.readouterr().out
    assert "samples_at" in shown
    assert "[[notification.fields]]" in shown
