"""What holds answers against a file: it tells any change with its place, and nothing else."""

from __future__ import annotations

import threading
from dataclasses import dataclass
from enum import Enum

import numpy as np
import pytest

from tests import kept as module
from tests.kept import changes, names_of, plain
from tests.steps import steps


class Side(Enum):
    LEFT = 1


@dataclass
class Wheel:
    side: Side
    torque_nm: float
    notes: tuple[str, ...] = ()
    inner: Wheel | None = None


WHEEL = Wheel(Side.LEFT, 41.25, ("calm",), Wheel(Side.LEFT, 3.0))


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.setattr(module, "FOLDER", tmp_path)
    monkeypatch.setattr(module, "_renewed", {})
    module._room.cache_clear()
    monkeypatch.setenv(module.RENEW, str(tmp_path / "changes.txt"))
    module.kept("room", "wheel", WHEEL)
    monkeypatch.delenv(module.RENEW)
    module._room.cache_clear()
    yield tmp_path
    module._room.cache_clear()


def test_kept_is_what_was_written(folder):
    module.kept("room", "wheel", WHEEL)
    module.kept("room", "wheel", Wheel(Side.LEFT, 41.25 * (1 + 1e-8), ("calm",), Wheel(Side.LEFT, 3.0)))
    with pytest.raises(AssertionError, match=r"\.inner\.torque_nm: was 3\.0, is 3\.1"):
        module.kept("room", "wheel", Wheel(Side.LEFT, 41.25, ("calm",), Wheel(Side.LEFT, 3.1)))
    with pytest.raises(AssertionError, match="nothing is kept of axle"):
        module.kept("room", "axle", WHEEL)


def test_kept_once_only(folder, monkeypatch):
    monkeypatch.setenv(module.RENEW, str(folder / "changes.txt"))
    with pytest.raises(AssertionError, match="kept twice"):
        module.kept("room", "wheel", WHEEL)
    assert (folder / "changes.txt").read_text("utf-8") == "room, wheel: new\n"


@pytest.mark.parametrize(
    ("was", "now", "said"),
    [
        ({"a": 1.0}, {"a": 1.000002}, [".a: was 1.0, is 1.000002"]),
        ({"a": 1.0}, {"a": 1.0000002}, []),
        ({"a": 0.0}, {"a": 1e-10}, []),
        ({"a": 1}, {}, [".a: is not there any more"]),
        ({}, {"a": 1}, [".a: was not there"]),
        ([1, [2, 3]], [1, [2, 4]], ["[1][1]: was 3, is 4"]),
        ([1], [1, "x"], ['[1]: was null, is "x"']),
        (True, 1.0, ["it: was true, is 1.0"]),
    ],
)
def test_kept_changes_name_the_place(was, now, said):
    assert changes(was, now) == said


def test_kept_arrays_tell_any_value_but_take_little_room():
    values = np.linspace(-1, 1, 5000)
    other = values.copy()
    other[[77, 1700]] = other[[1700, 77]]
    assert len(str(plain(values))) < 100
    assert changes(plain(values), plain(other))
    assert plain(np.array([1.5, np.nan])) == [1.5, "nan"]
    assert names_of(WHEEL)[0][1][0] == "torque_nm"
    with pytest.raises(TypeError, match="object is not kept"):
        plain(object())


def test_kept_steps_tell_what_a_function_gave():
    from analysis.trace import smooth

    with steps("analysis.trace.smooth") as said:
        assert smooth.quantile(np.arange(5.0), 0.5) == 2.0
    with steps("analysis.trace.smooth") as other:
        smooth.quantile(np.arange(5.0), 0.7)
    assert list(said) == ["smooth.quantile"]
    assert said != other
    assert not hasattr(smooth.quantile, "__wrapped__")


def test_kept_steps_are_deaf_to_threads_that_were_at_something_else():
    from analysis.trace import smooth

    go, done = threading.Event(), threading.Event()

    def other():
        go.wait(10)
        smooth.quantile(np.arange(5.0), 0.7)
        done.set()

    thread = threading.Thread(target=other)
    thread.start()
    with steps("analysis.trace.smooth") as said:
        go.set()
        assert done.wait(10)
    thread.join()
    assert not said
