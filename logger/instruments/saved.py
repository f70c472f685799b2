"""Limits and levers that are saved once and picked later: TOML files with the keys of ``logger.header``.

A limit file holds the keys of ``Limit``, a lever file those of ``Lever``, at the top; a sidecar or any file with a
``[limit]`` or ``[lever]`` table will do as well.
"""

from __future__ import annotations

from pathlib import Path
from typing import TypeVar

from logger.edges.toml_file import read_toml
from logger.errors import DescriptionError, InputError
from logger.header import Lever, Limit, Sidecar

R = TypeVar("R", Lever, Limit)


def read_limit(path: Path | str) -> Limit:
    """Read a limit.

    Raises:
        FileError, DescriptionError, InputError: It cannot be read, has faults, or holds no limit.
    """
    return _read(path, Limit, "limit")


def read_lever(path: Path | str) -> Lever:
    """Read a lever (fixture).

    Raises:
        FileError, DescriptionError, InputError: It cannot be read, has faults, or holds no lever.
    """
    return _read(path, Lever, "lever")


def _read(path: Path | str, record: type[R], table: str) -> R:
    try:
        return read_toml(path, record)
    except DescriptionError as error:
        try:
            found = getattr(read_toml(path, Sidecar), table)
        except DescriptionError:
            raise error from None
        if found is None:
            raise InputError(f"{path}: holds no [{table}]") from error
        if not isinstance(found, record):
            raise TypeError(f"a sidecar's {table} is a {type(found).__name__}") from error
        return found
