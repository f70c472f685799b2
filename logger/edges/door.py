"""How a command-line door works: one small module per command, imported only when it is called.

A command is a module with three names::

    def add_arguments(parser: argparse.ArgumentParser) -> None: ...
    def run(args: argparse.Namespace) -> int: ...     # gives an ``Exit``

and a line in its door's table, so that ``--help`` answers at once. Slow libraries are imported inside ``run``.
"""

from __future__ import annotations

import argparse
import contextlib
import errno
import json
import os
import signal
import sys
from collections.abc import Callable, Mapping, Sequence
from enum import IntEnum
from importlib import import_module
from io import TextIOWrapper
from types import ModuleType
from typing import Final, NoReturn

from logger.edges.console import UNSHOWN, collected, note
from logger.errors import HeldwheelError, InputError


class Exit(IntEnum):
    """Exit codes of every door; none means two things."""

    OK = 0  # within the limit, or no limit asked
    OUTSIDE = 1
    BAD_INPUT = 2
    TOO_CLOSE = 3  # too close to call
    NOT_VALID = 4
    DEFECT = 70  # of the program itself; BSD's sysexits.h calls it EX_SOFTWARE
    NO_OUTPUT = 74  # the results could not be written: a full disk; sysexits.h calls it EX_IOERR
    INTERRUPTED = 130


class _Parser(argparse.ArgumentParser):
    """A parser that says what is wrong in one line."""

    def error(self, message: str) -> NoReturn:
        self.exit(Exit.BAD_INPUT, f"{self.prog}: {message}; '{self.prog} --help' lists what there is\n")


class _Help(argparse.RawDescriptionHelpFormatter):
    """Help that keeps the layout of examples, at a readable width."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, max_help_position=28, width=min(100, _columns()))


def _columns() -> int:
    try:
        return os.get_terminal_size().columns
    except OSError:
        return 100


def _with_negative_values(words: Sequence[str]) -> list[str]:
    """Join ``--zero -0.4Nm`` to ``--zero=-0.4Nm``: alone, a value with a minus would be taken for an option."""
    joined: list[str] = []
    for word in words:
        if joined and joined[-1].startswith("--") and "=" not in joined[-1] and word[:1] == "-" and word[1:2].isdigit():
            joined[-1] += f"={word}"
        else:
            joined.append(word)
    return joined


def run_door(
    prog: str, about: str, commands: Mapping[str, str], package: str, argv: Sequence[str] | None = None
) -> int:
    """Run one command of a door and give its exit code.

    Args:
        prog, about: The door's name and its description for ``--help``.
        commands: One line of help per command name; command ``weigh`` lives in ``<package>.weigh``.
        package: Package of the command modules.
        argv: Arguments instead of the process's own.

    Returns:
        int: An ``Exit``. A ``HeldwheelError`` becomes one message on standard error and ``Exit.BAD_INPUT``; anything
            else that is raised is a defect of the program, shown with its traceback, and ``Exit.DEFECT``.
    """
    words = list(sys.argv[1:] if argv is None else argv)
    known = {**commands, COMPLETION: "print what makes a shell complete these commands: bash or zsh"}
    parser = _top_parser(prog, about, known)
    if not words or words[0].startswith("-"):
        if parser.parse_args(words).version:
            from logger.version import VERSION

            sys.stdout.write(f"{prog} {VERSION}\n")
            return Exit.OK
        parser.print_help()
        return Exit.BAD_INPUT
    name = words[0]
    if name not in known:
        parser.exit(Exit.BAD_INPUT, f"{prog}: there is no command '{name}'; there are: {', '.join(known)}\n")

    def work() -> int:
        if name == COMPLETION:
            from logger.edges.completion import completion_script

            sys.stdout.write(completion_script(prog, commands, package, words[1] if len(words) > 1 else "") + "\n")
            return Exit.OK
        module = import_module(f"{package}.{name.replace('-', '_')}")
        code = _run_command(prog, name, module, words[1:])
        if sys.stdout is not None and not getattr(module, "RESULT_IS_A_FILE", False):
            sys.stdout.flush()
        return code

    return _guarded(f"{prog} {name}", work)


def _top_parser(prog: str, about: str, known: Mapping[str, str]) -> _Parser:
    parser = _Parser(prog=prog, description=about, formatter_class=_Help)
    parser.add_argument("--version", action="store_true", help="show the program's version and stop")
    listed = "\n".join(f"  {name:<10} {text}" for name, text in known.items())
    parser.epilog = f"commands:\n{listed}\n\n'{prog} COMMAND --help' explains one."
    parser.usage = f"{prog} COMMAND [options]"
    return parser


COMPLETION: Final = "completion"


def _run_command(prog: str, name: str, module: ModuleType, words: Sequence[str]) -> int:
    """Run a command's module. One that has no JSON of its own gives its tables and lines as JSON."""
    sub = _Parser(prog=f"{prog} {name}", description=module.__doc__, formatter_class=_Help)
    module.add_arguments(sub)
    own = "--json" in sub._option_string_actions  # noqa: SLF001 - argparse has no other way to ask
    if not own:
        sub.add_argument("--json", action="store_true", help="print tables and lines as JSON")
    args = sub.parse_args(_with_negative_values(words))
    for out in args.out if isinstance(getattr(args, "out", None), list) else [getattr(args, "out", None)]:
        if str(out) == "-":
            raise InputError("--out -: name a file; what a command prints goes to standard output by itself")
    if own or not args.json:
        return int(module.run(args))
    with collected() as found:
        code = int(module.run(args))
    shown = {"schema": f"heldwheel {name} 1", **found}
    sys.stdout.write(json.dumps(shown, ensure_ascii=False, indent=1) + "\n")
    return code


def _guarded(who: str, work: Callable[[], int]) -> int:
    """Run something and turn what goes wrong into one message and its own exit code."""
    try:
        return work()
    except HeldwheelError as error:
        note(f"{who}: {error}")
        return Exit.BAD_INPUT
    except KeyboardInterrupt:
        note("\nstopped")
        return Exit.INTERRUPTED
    except BrokenPipeError:
        _forget_output()  # its reader went away (``| head``): not an error of the test
        return Exit.OK
    except OSError as error:
        if error.errno not in (errno.ENOSPC, errno.EIO, errno.EDQUOT):
            return _defect(who)
        _forget_output()
        note(f"{who}: the results could not be written: {error.strerror}; free some space")
        return Exit.NO_OUTPUT
    except Exception:  # noqa: BLE001 - it must not end with the exit code of a result
        return _defect(who)


def _defect(who: str) -> int:
    """Show an error that nobody expected."""
    import traceback

    note(traceback.format_exc())
    note(f"{who}: this is a defect of the program; please report it with the lines above")
    return Exit.DEFECT


def enter(door: Callable[[], int]) -> int:
    """Run a door as a program of its own: with a display of whatever kind, and an end that nothing disturbs."""
    for number in range(3):
        try:
            os.fstat(number)
        except OSError:  # closed: the next file opened would take its place, and be written to as if it were a display
            os.open(os.devnull, os.O_RDWR)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")  # whatever the locale: a sign may be ugly, not fatal
    code = door()
    for name in ("SIGINT", "SIGTERM", "SIGHUP", "SIGBREAK"):  # all is done: there is nothing left to stop
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), signal.SIG_IGN)
    try:
        if sys.stdout is not None:
            sys.stdout.flush()
    except UNSHOWN:
        _forget_output()
    return code


def _forget_output() -> None:
    """Keep the interpreter's last flush from complaining."""
    with contextlib.suppress(*UNSHOWN):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
