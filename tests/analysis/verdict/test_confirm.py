"""A second opinion of one axle: by another operator or transducer, blind, judged by the combined interval."""

from __future__ import annotations

import json
import shutil
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from analysis.__main__ import COMMANDS
from logger.edges.door import run_door
from logger.edges.toml_file import write_toml
from logger.header import JobFacts, Sidecar, Test, TransducerFacts

SEASON = Path(__file__).parents[3] / "recordings"
SIGNED = datetime(2026, 10, 3, 17, tzinfo=UTC)


def door(*words: str) -> int:
    return run_door("heldwheel-read", "", COMMANDS, "analysis.doors", ("confirm", *words))


@pytest.fixture
def tests(tmp_path: Path) -> dict[str, Path]:
    """Give three tests of the study: one axle by operators A and B, and another axle by B; all signed."""
    found = {}
    for name in ("1a1", "1b1", "3b1", "1a2"):
        found[name] = Path(shutil.copy(SEASON / f"07-study-{name}.csv", tmp_path))
        write_toml(found[name].with_name(f"{found[name].stem}.sidecar.toml"), Sidecar(simulated=True, signed=SIGNED))
    return found


def put(path: Path, **records: object) -> None:
    sidecar = Sidecar(simulated=True, signed=SIGNED)
    write_toml(path.with_name(f"{path.stem}.sidecar.toml"), msgspec.structs.replace(sidecar, **records))


def test_two_operators_of_one_axle(tests: dict[str, Path], capsys):
    code = door(str(tests["1a1"]), str(tests["1b1"]), "--json")
    said = json.loads(capsys.readouterr().out)
    assert said["simulated"]
    assert any(text.startswith("operator") for text in said["other"])
    for line in said["lines"]:
        (a, ua), (b, ub), (d, u) = line["first_nm"], line["second_nm"], line["difference_nm"]
        assert d == pytest.approx(b - a)
        assert u == pytest.approx((ua * ua + ub * ub) ** 0.5)
        assert line["e_n"] == pytest.approx(d / u)
        assert line["agrees"] == (abs(d) <= u)
    assert code == (0 if said["confirmed"] else 1)
    assert said["confirmed"]  # one axle, whose truth is the same for both


def test_nothing_is_shown_before_the_second_is_signed(tests: dict[str, Path], capsys):
    put(tests["1b1"], signed=None)
    assert door(str(tests["1a1"]), str(tests["1b1"])) == 2
    shown = capsys.readouterr()
    assert "not signed yet" in shown.err
    assert "N·m" not in shown.out + shown.err


def test_what_is_not_alike_does_not_agree(tests: dict[str, Path], capsys):
    """Another axle's recording passed off as this one: its torque is nearly twice as high."""
    for name in ("1a1", "3b1"):
        put(tests[name], job=JobFacts(operator=name[1], axle="the same"))
    assert door(str(tests["1a1"]), str(tests["3b1"])) == 1
    assert "DO NOT AGREE" in capsys.readouterr().out


def test_a_repeat_is_no_second_opinion(tests: dict[str, Path], capsys):
    assert door(str(tests["1a1"]), str(tests["1a2"])) == 2
    assert "that is a repeat" in capsys.readouterr().err
    put(tests["1a2"], transducer=TransducerFacts(serial="another"))
    assert door(str(tests["1a1"]), str(tests["1a2"])) == 0
    assert door(str(tests["1a1"]), str(tests["1a1"])) == 2


def test_other_axles_and_kinds_are_refused(tests: dict[str, Path], capsys):
    assert door(str(tests["1a1"]), str(tests["3b1"])) == 2
    assert "axle axle 1 and axle 3" in capsys.readouterr().err
    put(tests["1b1"], test=Test(held="case"))
    assert door(str(tests["1a1"]), str(tests["1b1"])) == 2
    assert "held other side and case" in capsys.readouterr().err
