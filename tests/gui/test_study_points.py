"""Pointing at a reading of a repeatability study says whose it is, of which axle, and what it was."""

import pytest

from tests.gui.shots.comparing import compare_pairs, compare_study
from tests.gui.shots.studio import Studio


def said(qtbot, monkeypatch: pytest.MonkeyPatch, state) -> list[str]:
    assert qtbot is not None
    monkeypatch.setenv("HELDWHEEL_HOME", "")  # the studio sets its own and it ends with the test
    studio = Studio("dark", (1366, 900))
    try:
        state(studio)
        studio.window.set_unit("N·m")
        picture = studio.window.pages["Compare"].panel.picture
        picture.grab()
        return [spot.words for spot in picture.spots]
    finally:
        studio.close()


def test_every_reading_of_a_study_names_operator_axle_and_torque(qtbot, monkeypatch: pytest.MonkeyPatch) -> None:
    words = said(qtbot, monkeypatch, compare_study)
    assert len(words) == len(set(words)) >= 12
    assert {"operator A, axle 1", "operator B, axle 3"} <= {one.partition(":")[0] for one in words}
    assert all(one.endswith(" N·m") for one in words)


def test_a_pair_says_both_readings(qtbot, monkeypatch: pytest.MonkeyPatch) -> None:
    words = said(qtbot, monkeypatch, compare_pairs)
    assert len(words) == 3
    assert all(one.startswith("operator A ") and ", operator B " in one for one in words)
