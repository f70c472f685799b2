"""Settings from the future, from the gutter and from two windows: kept aside, never lost, and the window starts."""

from __future__ import annotations

import os

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gui.models.settings import Choices, Settings
from logger.edges.toml_file import read_toml

SHOP = 'shop = "Hillfoot Workshop"\naddress = "Quarry Road"\n'
ODD = {
    "a newer version's key": SHOP + "wheel_colour = 4\n",
    "a value of another type": SHOP + 'scale = "large"\n',
    "a window beyond every screen": SHOP + "window = [0, 0, 9000000000000000000, 1]\n",
    "a number that is none": SHOP + "scale = nan\n",
    "a palette of the future": SHOP + 'palette = "dawn"\nunit = "furlong"\npage = "Moon"\n',
    "no folder": SHOP + 'recordings = "\\u0000"\nlooked_at = "\\u0000"\n',
}


@pytest.mark.parametrize("odd", ODD)
def test_what_can_be_used_is_used_and_nothing_is_written_over(tmp_path, odd):
    (tmp_path / "window.toml").write_text(ODD[odd], "utf-8")
    found = Settings(tmp_path)
    assert (found.choices.shop, found.choices.address) == ("Hillfoot Workshop", "Quarry Road")
    found.remember(unit="lbf·ft")
    now = read_toml(tmp_path / "window.toml", Choices)
    assert (now.shop, now.unit) == ("Hillfoot Workshop", "lbf·ft")
    kept = tmp_path / "window.toml.kept"
    if found.problem:
        assert kept.read_text("utf-8") == ODD[odd]
        assert "window.toml.kept" in found.problem


@pytest.mark.parametrize("data", [b"", b"\x00\xff", b"shop = [", b"[" * 5000, b"shop = 1"])
def test_a_file_that_is_none_is_kept_aside(tmp_path, data):
    (tmp_path / "window.toml").write_bytes(data)
    found = Settings(tmp_path)
    found.remember(shop="Hillfoot")
    found.remember(shop="Hillfoot Workshop")
    assert read_toml(tmp_path / "window.toml", Choices).shop == "Hillfoot Workshop"
    assert [path.read_bytes() for path in tmp_path.glob("*.kept*")] == ([data] if data else [])


@pytest.mark.skipif(os.name == "nt", reason="pipes have names on POSIX only")
def test_a_pipe_or_folder_in_its_place_is_put_aside_and_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "window.toml")
    Settings(tmp_path).remember(shop="Hillfoot")
    (tmp_path / "window.toml").unlink()
    (tmp_path / "window.toml").mkdir()
    Settings(tmp_path).remember(shop="Hillfoot")
    assert read_toml(tmp_path / "window.toml", Choices).shop == "Hillfoot"
    assert {path.name for path in tmp_path.glob("*.kept*")} == {"window.toml.kept", "window.toml.kept-2"}


def test_two_windows_keep_what_each_has_changed(tmp_path):
    first, second = Settings(tmp_path), Settings(tmp_path)
    first.remember(shop="Hillfoot Workshop")
    second.remember(unit="lbf·ft")
    first.remember(comma=True)
    now = read_toml(tmp_path / "window.toml", Choices)
    assert (now.shop, now.unit, now.comma) == ("Hillfoot Workshop", "lbf·ft", True)


@given(data=st.binary(max_size=200) | st.text(alphabet='shopwindw=[]"1e9,\n#\\', max_size=60).map(str.encode))
@settings(max_examples=50, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_no_bytes_stop_the_window_or_are_lost(tmp_path, data):
    for path in tmp_path.iterdir():
        path.unlink()
    (tmp_path / "window.toml").write_bytes(data)
    found = Settings(tmp_path)
    well = not found.problem
    found.remember(operator="A")
    assert read_toml(tmp_path / "window.toml", Choices).operator == "A"
    assert well or [path.read_bytes() for path in tmp_path.glob("*.kept*")] == [data]


@pytest.mark.parametrize("odd", ODD)
def test_the_window_starts(tmp_path, odd, monkeypatch, qtbot):
    from gui.__main__ import build

    monkeypatch.setenv("HELDWHEEL_HOME", str(tmp_path))
    (tmp_path / "window.toml").write_text(ODD[odd], "utf-8")
    window = build()
    qtbot.addWidget(window)
    window.show()
    assert 100 < window.width() < 10_000
    window.close()


def test_what_is_chosen_before_anything_is() -> None:
    """A sound tells what nobody looks at, so it is on."""
    first = Choices()
    assert (first.scale, first.comma, first.sounds, first.maximised, first.window) == (1.0, False, True, False, None)
