"""Completion scripts for shells: made of every command's own parser, so that they are never out of date."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from importlib import import_module

from logger.errors import InputError

SHELLS = ("bash", "zsh")


def completion_script(prog: str, commands: Mapping[str, str], package: str, shell: str) -> str:
    """Give the script that a shell reads.

    Raises:
        InputError: There is none for this shell.
    """
    import shtab

    if shell not in SHELLS:
        raise InputError(f"completion '{shell[:40]}': name your shell: {', '.join(SHELLS)}")
    parser = argparse.ArgumentParser(prog=prog, add_help=True)
    offered = parser.add_subparsers()
    for name, about in commands.items():
        module = import_module(f"{package}.{name.replace('-', '_')}")
        sub = offered.add_parser(name, help=about.replace("%", "%%"))
        module.add_arguments(sub)
        for action in sub._actions:  # noqa: SLF001 - the library's own way of marking file names
            if not action.choices and action.metavar in ("FILE", "RECORDING", "TABLE"):
                action.complete = shtab.FILE  # type: ignore[attr-defined]
    return str(shtab.complete(parser, shell))
