"""A second opinion of one axle: by another operator or transducer, blind, judged by the combined interval."""

from __future__ import annotations

import json
import shutil
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from analysis.__main__ import COMMANDS
from analysis.uncertainty.budget import Budget, BudgetRow, Input
from analysis.verdict.confirm import confirmation
from analysis.verdict.recorded import RecordingReading
from analysis.verdict.repeats import job_value
from logger.edges.door import run_door
from logger.edges.toml_file import write_toml
from logger.errors import InputError
from logger.header import Axle, Header, JobFacts, Sidecar, Test, TransducerFacts

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


# ---------------------------------------------------------------------- two tests put together by hand
def reading(value: float = 30.0, *, quantity: str = "breakaway", operator: str = "", serial: str = "", **parts: object):
    """Give a test of one pull, 1 N·m of standard uncertainty, by an operator with a transducer."""
    header = Header(job=JobFacts(operator=operator), transducer=TransducerFacts(serial=serial))
    job = job_value([Budget(quantity, value, "N·m", (BudgetRow(Input("trace", value, 1.0), 1.0),))])
    name = f"{value}{quantity}{operator}{serial}"
    return RecordingReading(name, True, header=msgspec.structs.replace(header, **parts), job=(job,), sha256=name)


@pytest.mark.parametrize(
    ("second", "word", "other"),
    [
        (reading(31.0, operator="B", serial="1"), "agrees", ("operator A, then B",)),
        (reading(31.0, operator="B"), "agrees", ("operator A, then B",)),
        (reading(31.0, operator="B", serial="2"), "agrees", ("operator A, then B", "transducer 1, then 2")),
        (reading(31.0, serial="1"), "cannot be told", ()),
        (reading(60.0, operator="B", serial="1"), "does not agree", ("operator A, then B",)),
        (reading(60.0, serial="1"), "does not agree", ()),
    ],
)
def test_what_a_second_test_says(second, word, other):
    found = confirmation(reading(operator="A", serial="1"), second)
    assert (found.word, found.other) == (word, other)
    missing = [what for what in ("operator", "transducer") if not any(what in one for one in other)]
    said = second.header
    stated = {"operator": said.job.operator, "transducer": said.transducer.serial}
    assert found.notes == tuple(f"the {what} is not stated in both" for what in missing if not stated[what])


def test_what_one_of_both_does_not_state_is_noted():
    first = reading(operator="A", axle=Axle(tag="T1"), test=Test(held="case"))
    found = confirmation(first, reading(31.0, operator="B", test=Test(held="case")))
    assert found.notes == ("the transducer is not stated in both", "axle tag is not stated in both")


def test_spelling_makes_no_other_operator():
    with pytest.raises(InputError, match="no second opinion"):
        confirmation(reading(operator="Ann", serial="1"), reading(31.0, operator=" ANN ", serial="1"))


def test_both_are_named_where_one_cannot_be_read():
    good, bad = reading(operator="A"), RecordingReading("b.csv", False, ("b is empty",))
    for pair in ((good, bad), (bad, good)):
        with pytest.raises(InputError, match="cannot be read: b is empty"):
            confirmation(*pair)


def test_no_value_in_common():
    with pytest.raises(InputError, match="no value"):
        confirmation(reading(operator="A"), reading(operator="B", quantity="rotating mean"))
