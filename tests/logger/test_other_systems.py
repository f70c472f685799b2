"""What Windows and macOS answer otherwise, put in place of this system's answers.

The answers are those that Python's documentation and pyserial's source state (serialwin32.py: a port that cannot be
opened is a SerialException whose text holds the WinError); where a line says "from memory" they are not read.
"""

from __future__ import annotations

import ast
import errno
import os
import signal
import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from logger.doors import recording
from logger.edges import small_file
from logger.edges.small_file import locked, write_whole
from logger.errors import FileError, InputError
from logger.links.ports import local_port
from logger.links.serial_port import open_failure
from logger.stream import health

ROOT = Path(__file__).parents[2]
POSIX_ONLY = ("termios", "fcntl", "grp", "pwd", "resource", "tty", "pty", "posix", "syslog")


def windows_error(number: int, text: str, winerror: int) -> OSError:
    error = PermissionError(number, text) if number == errno.EACCES else OSError(number, text)
    error.winerror = winerror
    return error


@pytest.mark.parametrize(
    ("error", "told"),
    [
        # CreateFile on a port that is open elsewhere: ERROR_ACCESS_DENIED 5, which Python maps to EACCES.
        (
            windows_error(errno.EACCES, "Access is denied", 5),
            "COM3: is in use by another program; close it there first",
        ),
        (
            OSError("could not open port 'COM3': PermissionError(13, 'Access is denied.', None, 5)"),
            "COM3: is in use by another program; close it there first",
        ),
        (
            OSError("could not open port 'COM3': FileNotFoundError(2, 'The system cannot find the file.', None, 2)"),
            "COM3: there is no such port",
        ),
        # A USB adapter that hangs: ERROR_GEN_FAILURE 31 (from memory).
        (
            OSError("could not open port 'COM3': OSError(22, 'The device does not exist.', None, 433)"),
            "COM3: cannot be opened",
        ),
    ],
)
def test_why_a_windows_port_does_not_open(error, told, monkeypatch):
    def no_such_thing(_self):
        raise NotImplementedError("Path.group() is unsupported on this system")

    monkeypatch.setattr("logger.links.serial_port.Path.group", no_such_thing)
    monkeypatch.setattr("logger.links.serial_port.serial_ports", list)
    assert open_failure("COM3", error).startswith(told)


def test_a_mac_port_in_use_or_forbidden(monkeypatch):
    monkeypatch.setattr("logger.links.serial_port.Path.group", lambda _self: "wheel")
    name = "/dev/cu.usbserial-110"
    assert "is in use" in open_failure(name, OSError(errno.EBUSY, "Resource busy"))
    assert "belongs to the group 'wheel'" in open_failure(name, OSError(errno.EACCES, "Permission denied"))


@pytest.mark.parametrize("name", ["COM1", "com12", r"\\.\COM20"])
def test_names_of_windows_ports(name):
    assert local_port(name, system="nt") == name


@pytest.mark.parametrize("name", ["COM0", "LPT1", "CON", r"\\server\COM1", "COM1:\\x", "socket://h:1", "/dev/ttyUSB0"])
def test_what_is_no_windows_port(name):
    with pytest.raises(InputError, match="serial port"):
        local_port(name, system="nt")


def test_the_signals_that_windows_has_end_a_recording(monkeypatch):
    """Windows has no hang-up; Ctrl-Break ends like Ctrl-C. (signal module: SIGBREAK "Availability: Windows".)"""
    kept: dict[int, object] = {2: "before", 15: "before", 21: "before"}
    told = []
    fake = SimpleNamespace(
        SIGINT=2,
        SIGTERM=15,
        SIGBREAK=21,
        SIG_IGN=signal.SIG_IGN,
        getsignal=kept.__getitem__,
        signal=kept.__setitem__,
    )
    monkeypatch.setattr(recording, "signal", fake)
    with recording._stopped_by_signals(lambda: told.append("stop")):
        kept[21](21, None)
    assert told == ["stop"]
    assert kept[2] == kept[15] == "before"
    assert kept[21] != "before", "what has come stays taken"


@pytest.fixture
def windows_disk(monkeypatch):
    """The os module as ``small_file`` sees it: folders cannot be opened, text mode unless O_BINARY is asked for."""
    flags: list[int] = []

    def opened(path, flag, mode=0o777):
        if os.path.isdir(path):
            raise PermissionError(errno.EACCES, "Permission denied")
        flags.append(flag)
        return os.open(path, flag & ~0x8000, mode)

    fake = SimpleNamespace(**{name: getattr(os, name) for name in dir(os) if not name.startswith("__")})
    fake.name, fake.O_BINARY, fake.open, fake.flags = "nt", 0x8000, opened, flags
    del fake.O_NONBLOCK
    monkeypatch.setattr(small_file, "os", fake)
    return fake


def test_a_file_is_written_whole_on_windows(windows_disk, tmp_path):
    write_whole(tmp_path / "a.toml", b"one\ntwo\n")
    write_whole(tmp_path / "a.toml", b"three\n")
    assert small_file.read_bounded(tmp_path / "a.toml", 100, "x") == b"three\n"
    assert all(flag & 0x8000 for flag in windows_disk.flags), "without O_BINARY Windows writes other line ends"
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]


def test_a_file_that_another_windows_program_has_open_is_not_replaced(windows_disk, tmp_path):
    """MoveFileEx on an open file: ERROR_ACCESS_DENIED or ERROR_SHARING_VIOLATION 32 (from memory)."""
    (tmp_path / "a.toml").write_bytes(b"before")

    def refused(_source, _target):
        raise windows_error(errno.EACCES, "The process cannot access the file", 32)

    windows_disk.replace = refused
    with pytest.raises(FileError, match="what was there is unchanged"):
        write_whole(tmp_path / "a.toml", b"after")
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]
    assert (tmp_path / "a.toml").read_bytes() == b"before"


@pytest.mark.parametrize(
    ("error", "told"),
    [
        (windows_error(errno.EACCES, "Access is denied", 5), "cannot be written to: Access is denied"),
        (OSError(errno.EROFS, "Read-only file system"), "cannot be written to: Read-only"),
        (NotImplementedError("no locks on this share"), "cannot be written to: no locks"),
    ],
)
def test_a_folder_that_cannot_be_locked(error, told, monkeypatch, tmp_path):
    def acquire(*_args, **_kw):
        raise error

    monkeypatch.setattr("filelock.FileLock.acquire", acquire)
    with pytest.raises(FileError, match=told), locked(tmp_path):
        pass


@pytest.mark.parametrize("system", ["win32", "darwin"])
def test_a_sleep_that_the_system_does_not_tell_is_none(system, monkeypatch):
    """CLOCK_BOOTTIME: "Availability: Linux" (time module). Elsewhere a sleep shows as a stop of the program."""
    monkeypatch.setattr(health, "sys", SimpleNamespace(platform=system))
    monkeypatch.setattr(health, "time", SimpleNamespace(time=lambda: 0.0, monotonic=lambda: 0.0))
    assert health._asleep() == 0.0


WITHOUT_POSIX = """
import builtins, importlib, sys
import asyncio, multiprocessing, subprocess, serial, filelock
blocked, plain = set(sys.argv[1].split(",")), builtins.__import__
def guarded(name, globals=None, locals=None, fromlist=(), level=0):
    by = (globals or {}).get("__name__", "").split(".")[0]
    if by in {"logger", "analysis", "gui", "heldwheel"} and name.split(".")[0] in blocked:
        raise ImportError(f"{name} is not there on Windows")
    return plain(name, globals, locals, fromlist, level)
builtins.__import__ = guarded
sys.platform = "win32"
for name in sys.argv[2:]:
    importlib.import_module(name)
"""


def test_our_modules_import_nothing_that_only_posix_has():
    """Every module of the reader and the recorder, seen by itself as on Windows."""
    names = []
    for package in ("logger", "analysis"):
        for path in sorted((ROOT / package).rglob("*.py")):
            tree = ast.parse(path.read_text(encoding="utf-8"))
            at_top = {alias.name for node in tree.body if isinstance(node, ast.Import) for alias in node.names}
            assert not at_top & set(POSIX_ONLY), f"{path}: imported on every system"
            names.append(".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"))
    names = [name for name in names if name.split(".")[1:2] in (["links"], ["edges"], ["stream"], ["recordings"])]
    done = subprocess.run(
        [sys.executable, "-c", WITHOUT_POSIX, ",".join(POSIX_ONLY), *names],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert done.returncode == 0, done.stderr
    assert len(names) > 10


def test_processes_start_as_on_windows_everywhere():
    """Windows knows only "spawn": a pool that forks here would hide what cannot be handed over there."""
    for path in (*(ROOT / "analysis").rglob("*.py"), *(ROOT / "gui").rglob("*.py")):
        text = path.read_text(encoding="utf-8")
        if "ProcessPoolExecutor(" in text:
            assert 'get_context("spawn")' in text, path


def test_types_are_checked_for_the_other_systems():
    made = (ROOT / "Makefile").read_text(encoding="utf-8")
    assert "--platform $$system" in made
    assert "for system in win32 darwin" in made
