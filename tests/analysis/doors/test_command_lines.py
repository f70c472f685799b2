"""Wrong command lines and hostile surroundings: one clear message, an exit code that means one thing."""

from __future__ import annotations

import io
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from types import ModuleType, SimpleNamespace

import pytest

from analysis.__main__ import COMMANDS as READ
from gui.__main__ import main as window
from logger.__main__ import COMMANDS as LOG
from logger.edges.completion import SHELLS
from logger.edges.door import Exit, run_door
from logger.recordings.sidecar import read_sidecar

EVENT = Path("recordings/05-event-1.csv")
ONE_STUD = ("--lever", "450mm", "--stud-circle", "5x114.3mm")


def read(*words: object) -> int:
    return run_door("heldwheel-read", "", READ, "analysis.doors", [str(word) for word in words])


def log(*words: object) -> int:
    return run_door("heldwheel-log", "", LOG, "logger.doors", [str(word) for word in words])


@pytest.fixture
def copy(tmp_path):
    """Copy a recording of the season, with what its card says changed."""

    def make(name: str, source: Path = EVENT, **test: str) -> Path:
        path = tmp_path / f"{name}.csv"
        shutil.copy(source, path)
        lines = "".join(f'{key} = "{value}"\n' for key, value in test.items())
        if lines:
            path.with_name(f"{name}.sidecar.toml").write_text(f"[test]\n{lines}", encoding="utf-8")
        return path

    return make


@pytest.mark.parametrize("words", [["--nosuch"], ["nosuch.csv"], ["--practice"]])
def test_the_window_refuses_what_it_does_not_understand(words, capsys):
    assert window(words) == Exit.BAD_INPUT
    assert f"'{words[0]}' is not understood" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("lever", "--lever", "450mm±-3mm", "--stud-circle", "5x114.3mm"), "write it without a sign"),
        (("stud-circle", "--studs", "5", "--chord", "67"), "has no unit"),
        (("pulls", EVENT, "--both-free", EVENT), "is the recording itself"),
        (("report", EVENT, "--neutral", EVENT, "--out", "never.html"), "are the same recording"),
        (("drag", "--in-gear", EVENT, "--neutral", EVENT), "are the same recording"),
        (("pulls", "nosuch.csv"), "there is no such file: look at its name and folder"),
        (("pulls", EVENT, "--limit", "nosuch.toml"), "there is no such file: look at its name and folder"),
        (("report", EVENT, "--out", "-"), "--out -: name a file"),
        (("pulls", EVENT, "--rate", "fast"), "is no number"),
        (("pulls", EVENT, "--rate", "0Hz"), "write how many readings a second"),
        (("pulls", EVENT, "--time-unit", "fortnight"), "use s, ms, us"),
        (("pulls", EVENT, "--torque-unit", "psi"), "'psi' is no torque unit"),
        (("completion", "fish-and-chips"), "name your shell: bash, zsh"),
    ],
)
def test_one_clear_message(words, told, capsys, tmp_path, monkeypatch):
    paths = [word.resolve() if isinstance(word, Path) else word for word in words]
    monkeypatch.chdir(tmp_path)
    assert read(*paths) == Exit.BAD_INPUT
    shown = capsys.readouterr()
    assert told in shown.err
    assert "Traceback" not in shown.err
    assert not list(tmp_path.iterdir())


def test_weigh_asks_for_the_unit_of_the_arm_first(capsys):
    assert log("weigh", "--arm", "500") == Exit.BAD_INPUT
    assert "length '500' has no unit" in capsys.readouterr().err


@pytest.mark.parametrize("command", ["trend", "groups", "pulls"])
def test_an_unknown_option_is_one_line(command, capsys):
    with pytest.raises(SystemExit) as stopped:
        read(command, "--nosuch")
    assert stopped.value.code == Exit.BAD_INPUT
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_a_baseline_or_a_side_that_its_card_denies_is_refused(copy, capsys):
    right, other = copy("right", side="right"), copy("other", Path("recordings/05-event-2.csv"), held="other side")
    assert read("drag", "--right", right, "--both-free", other) == Exit.BAD_INPUT
    assert "its card says that the other side was held" in capsys.readouterr().err
    assert read("drag", "--left", right) == Exit.BAD_INPUT
    assert "its card says right side, but it is given as the left one" in capsys.readouterr().err


def test_verifying_against_another_recording_says_so(copy, tmp_path, capsys):
    page = tmp_path / "page.html"
    assert read("report", EVENT, "--out", page) in (Exit.OK, Exit.OUTSIDE, Exit.TOO_CLOSE)
    other = copy("other", Path("recordings/02-build-shim-10.csv"))
    capsys.readouterr()
    read("report", "--verify", page, "--against", other)
    assert "another recording than the report was made from" in capsys.readouterr().out


def test_a_limit_below_zero_is_named_once(capsys):
    read("pulls", EVENT, "--limit", "breakaway >= -35 N·m", "--source", "test")
    said = capsys.readouterr().err
    assert "-35 N·m is -35" not in said


def test_pulls_of_standard_input_are_those_of_the_file(monkeypatch, capsys):
    monkeypatch.setattr(sys, "stdin", SimpleNamespace(buffer=io.BytesIO(EVENT.read_bytes())))
    read("pulls", "-", "--json")
    piped = json.loads(capsys.readouterr().out)["recordings"][0]
    read("pulls", EVENT, "--json")
    filed = json.loads(capsys.readouterr().out)["recordings"][0]
    assert piped["file"] == "-"
    assert piped["pulls"] == filed["pulls"] != []


def test_what_is_said_of_a_table_is_kept_and_asked_once(tmp_path, capsys):
    table = tmp_path / "old.csv"
    table.write_text("Sample,Value\n" + "".join(f"{n},{n % 7}\n" for n in range(300)), encoding="utf-8")
    assert read("pulls", table) == Exit.BAD_INPUT
    said = capsys.readouterr().err
    assert "--torque-column" in said
    assert "--torque-unit" in said
    assert "--rate" in said
    assert read("pulls", table, "--torque-column", "Value", "--torque-unit", "Nm", "--rate", "100Hz") == Exit.OK
    assert "is kept in old.sidecar.toml" in capsys.readouterr().err
    assert read("pulls", table) == Exit.OK
    sidecar = read_sidecar(table)
    assert sidecar is not None
    assert sidecar.table is not None
    assert sidecar.table.rate_hz == 100.0


# --- exit codes -------------------------------------------------------------------------------------------------------


def test_every_exit_code_means_one_thing():
    assert len({int(code) for code in Exit}) == len(Exit.__members__) == 8
    assert not {70, 74} & {0, 1, 2, 3, 4, 130}


def test_an_internal_error_is_no_result(monkeypatch, capsys):
    broken = ModuleType("analysis.doors.broken")
    broken.add_arguments = lambda parser: None

    def run(_args: object) -> int:
        raise StopIteration

    broken.run = run
    monkeypatch.setitem(sys.modules, "analysis.doors.broken", broken)
    assert run_door("heldwheel-read", "", {"broken": "breaks"}, "analysis.doors", ["broken"]) == Exit.DEFECT == 70
    assert "a defect of the program" in capsys.readouterr().err


def _door(*words: str, out) -> int:
    command = [sys.executable, "-m", "analysis", *words]
    return subprocess.run(command, stdout=out, stderr=subprocess.PIPE, check=False, timeout=100).returncode


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no full device here")
def test_a_full_output_is_no_result():
    with open("/dev/full", "w") as full:
        assert _door("cautions", out=full) == Exit.NO_OUTPUT


def test_a_reader_that_went_away_is_no_error():
    ours, theirs = os.pipe()
    os.close(ours)
    assert _door("cautions", out=theirs) == Exit.OK
    os.close(theirs)


# --- JSON and completion ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("command", ["find", "register"])
def test_every_table_comes_as_json(command, capsys, monkeypatch, tmp_path):
    monkeypatch.setenv("HELDWHEEL_HOME", str(tmp_path))
    assert log(command, "--json") == Exit.OK
    shown = json.loads(capsys.readouterr().out)
    assert shown["schema"] == f"heldwheel {command} 1"
    assert shown["lines"] or shown["tables"]


def test_weighing_comes_as_json_and_keeps_its_exit_code(capsys):
    words = ("weigh", "--arm", "500mm", "--load", "10kg", "60Nm", "--accuracy", "1", "--json")
    assert log(*words) == Exit.OUTSIDE
    table = json.loads(capsys.readouterr().out)["tables"][0]
    assert table["title"] == "Dead-weight check"
    row = table["rows"][0]
    assert (row["reading"], row["reading unit"]) == (60, "N·m")  # a number, and its unit beside it


def test_every_command_has_json():
    for commands, package in ((READ, "analysis"), (LOG, "logger")):
        for name in commands:
            done = subprocess.run(
                [sys.executable, "-m", package, name, "--help"], capture_output=True, text=True, check=True, timeout=100
            )
            assert "--json" in done.stdout, name


@pytest.mark.parametrize("shell", SHELLS)
def test_completion_knows_every_command_and_option(shell, capsys):
    assert read("completion", shell) == Exit.OK
    script = capsys.readouterr().out
    assert all(command in script for command in READ)
    assert "--stud-circle" in script


@pytest.mark.skipif(shutil.which("bash") is None, reason="no bash here")
def test_bash_completes_a_command(capsys, tmp_path):
    read("completion", "bash")
    script = tmp_path / "completion.sh"
    script.write_text(capsys.readouterr().out, encoding="utf-8")
    asked = (
        f"source {script}; COMP_WORDS=(heldwheel-read stu); COMP_CWORD=1; "
        "$(complete -p heldwheel-read | sed 's/.*-F \\([^ ]*\\).*/\\1/'); echo ${COMPREPLY[@]}"
    )
    done = subprocess.run(["bash", "-c", asked], capture_output=True, text=True, check=False, timeout=100)
    assert done.stdout.split() == ["stud-circle"], done.stderr
