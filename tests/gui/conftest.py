"""Every window test has a folder of its own for choices, lists and recordings, and makes no sound."""

import gc
import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.gui.fakes import FakeStream
from tests.gui.hand import Hand

QUIET = [
    "propagateSizeHints",  # the offscreen platform says that it has no window manager
    "multimedia",
]


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if "/tests/gui/" in str(item.path).replace("\\", "/"):
            item.add_marker(pytest.mark.qt_log_ignore(*QUIET, extend=True))


@pytest.fixture(autouse=True, scope="module")
def collected_in_the_windows_thread() -> Iterator[None]:
    """Parts of windows that are gone are not destroyed by other tests' threads."""
    gc.disable()
    yield
    gc.collect()
    gc.enable()


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "home"
    monkeypatch.setenv("HELDWHEEL_HOME", str(folder))
    return folder


@pytest.fixture
def hand(qtbot, home: Path) -> Iterator[Hand]:
    """A person at the window, with a stream that a test drives."""
    person = Hand(qtbot)
    yield person
    person.close()


@pytest.fixture
def stream(hand: Hand) -> FakeStream:
    return hand.stream
