"""TOML files that people write and send each other: read with bounds, every fault at once, and written safely.

Conventions:
- A record type is a frozen ``msgspec.Struct`` (see ``logger.header``); its fields are the keys allowed.
- A fault names the file, the line where it can be found, the key path and what is allowed there.
- Files from others are hostile: size, nesting and numbers are bounded, nothing is ever executed.
"""

from __future__ import annotations

import difflib
import math
import tomllib
import types
from datetime import date, datetime
from functools import lru_cache
from pathlib import Path
from typing import Annotated, Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

import msgspec

from logger.edges.small_file import read_bounded, write_whole
from logger.errors import DescriptionError, Fault, FileError

T = TypeVar("T", bound=msgspec.Struct)

MAX_BYTES = 1_000_000  # a sidecar with thousands of corrections stays below; larger is no file of ours
MAX_FAULTS = 50  # shown at once
_Path = tuple[str | int, ...]


def read_toml(path: Path | str, record: type[T]) -> T:
    """Read a TOML file as a record.

    Raises:
        FileError: It cannot be opened, is too large or is no text.
        DescriptionError: It has faults; all of them are in the text.
    """
    path = Path(path)
    data = read_bounded(path, MAX_BYTES, "this is not a file written for Heldwheel")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        raise FileError(f"{path}: line {line}: is not UTF-8 text; save it with UTF-8 encoding") from error
    return parse_toml(text, record, str(path))


def parse_toml(text: str, record: type[T], file: str) -> T:
    """Read TOML text as a record; ``file`` is what messages call it.

    Raises:
        DescriptionError: It is no TOML, or its keys or values are not allowed; all faults at once.
    """
    if len(text) > MAX_BYTES:
        raise DescriptionError(file, [Fault("", f"is longer than {MAX_BYTES} characters")])
    try:
        tree = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise DescriptionError(file, [Fault("", f"is not valid TOML: {error}")]) from error
    except (RecursionError, ValueError, OverflowError) as error:
        raise DescriptionError(
            file, [Fault("", "is not valid TOML: nested too deeply, or an absurd number")]
        ) from error
    found: list[tuple[_Path, str]] = []
    _check(tree, record, (), found)
    if not found:
        try:
            return msgspec.convert(tree, record)
        except (msgspec.ValidationError, RecursionError) as error:
            found.append(((), str(error)))
    lines = _key_lines(text)
    raise DescriptionError(file, [Fault(_where(path, lines), what) for path, what in found[:MAX_FAULTS]])


def format_toml(record: msgspec.Struct) -> str:
    """Give a record as TOML text; absent keys are excluded."""
    import tomli_w

    tree = msgspec.to_builtins(record, builtin_types=(datetime, date))
    return tomli_w.dumps(_filled(tree))


def write_toml(path: Path | str, record: msgspec.Struct, above: str = "") -> None:
    """Write a record whole or not at all: an existing file is replaced only by a complete new one.

    ``above`` is put before it: comment lines for whoever reads the file.

    Raises:
        FileError: It cannot be written; what was there is unchanged.
    """
    try:
        data = (above + format_toml(record)).encode()
    except UnicodeEncodeError as error:
        raise FileError(f"{path}: cannot be written: a text in it is no UTF-8; type it anew") from error
    write_whole(path, data)


def _filled(value: Any) -> Any:
    """Leave out what is not known: absent values and empty tables."""
    if isinstance(value, dict):
        filled = {key: _filled(v) for key, v in value.items() if v is not None}
        return {key: v for key, v in filled.items() if v != {}}
    if isinstance(value, list | tuple):
        return [_filled(v) for v in value]
    return value


# --- checking -------------------------------------------------------------------------------------------------------


def _check(value: Any, wanted: Any, path: _Path, found: list[tuple[_Path, str]]) -> None:
    """Append every fault of ``value`` against the type ``wanted``."""
    plain = get_args(wanted)[0] if get_origin(wanted) is Annotated else wanted
    options = [a for a in get_args(plain) if a is not type(None)] if _is_union(plain) else [plain]
    if len(options) == 1 and options[0] is not plain:
        return _check(value, options[0], path, found)
    origin = get_origin(plain)
    if isinstance(plain, type) and issubclass(plain, msgspec.Struct):
        return _check_struct(value, plain, path, found)
    if origin is dict and isinstance(value, dict):
        for key, item in value.items():
            _check(item, get_args(plain)[1], (*path, key), found)
        return None
    if origin in (tuple, list) and isinstance(value, list) and get_args(plain)[-1] in (..., get_args(plain)[0]):
        for i, item in enumerate(value):
            _check(item, get_args(plain)[0], (*path, i), found)
        return None
    if isinstance(value, float) and not math.isfinite(value):
        found.append((path, "must be a finite number"))
        return None
    try:
        msgspec.convert(value, wanted)
    except msgspec.ValidationError as error:
        found.append((path, _sentence(value, plain, str(error))))
    return None


def _check_struct(value: Any, record: type[msgspec.Struct], path: _Path, found: list[tuple[_Path, str]]) -> None:
    fields = _fields(record)
    if not isinstance(value, dict):
        found.append((path, f"must be a table with keys among: {', '.join(fields)}"))
        return
    hints = _hints(record)
    for key, item in value.items():
        if key in fields:
            _check(item, hints[fields[key].name], (*path, key), found)
        else:
            found.append(((*path, key), _unknown_key(key, list(fields))))
    before = len(found)
    for key, field in fields.items():
        if field.required and key not in value:
            found.append(((*path, key), f"is missing; {_allowed(hints[field.name])}"))
    if len(found) == before and not any(p[: len(path)] == path for p, _ in found):
        try:
            msgspec.convert(value, record)  # what the record itself checks across keys
        except msgspec.ValidationError as error:
            found.append((path, str(error).split(" - at `$")[0]))


@lru_cache(maxsize=256)
def _fields(record: type[msgspec.Struct]) -> dict[str, msgspec.structs.FieldInfo]:
    """Give the fields of a record by key; worked out once, as thousands of headers are read for a list."""
    return {f.encode_name: f for f in msgspec.structs.fields(record)}


@lru_cache(maxsize=256)
def _hints(record: type[msgspec.Struct]) -> dict[str, Any]:
    return get_type_hints(record, include_extras=True)


def _is_union(wanted: Any) -> bool:
    return get_origin(wanted) in (Union, types.UnionType)


def _unknown_key(key: str, allowed: list[str]) -> str:
    near = difflib.get_close_matches(key[:60], allowed, n=1, cutoff=0.6)
    hint = f"did you mean '{near[0]}'? " if near else ""
    return f"is not a key here; {hint}allowed: {', '.join(allowed)}"


def _sentence(value: Any, wanted: Any, error: str) -> str:
    """Put a validation error into words, with what is allowed."""
    shown = repr(value)
    shown = shown if len(shown) <= 60 else shown[:57] + "..."
    if get_origin(wanted) is Literal or "`" not in error:
        allowed = _allowed(wanted)
        near = difflib.get_close_matches(str(value)[:60], [str(a) for a in get_args(wanted)], n=1, cutoff=0.6)
        hint = f"did you mean '{near[0]}'? " if near else ""
        return f"{shown} is not allowed; {hint}{allowed}"
    return f"{shown} is not allowed; {error.split(' - at ')[0].replace('Expected', 'expected')}; {_allowed(wanted)}"


_PLAIN = {
    str: "a text",
    float: "a number",
    int: "a whole number",
    bool: "true or false",
    date: "a date",
    bytes: "bytes",
}


def _allowed(wanted: Any) -> str:
    """Say what a key may hold."""
    return "allowed: " + _type_words(wanted)


def _type_words(wanted: Any) -> str:
    origin = get_origin(wanted)
    if origin is Annotated:
        return _type_words(get_args(wanted)[0])
    if origin is Literal:
        return ", ".join(repr(a) for a in get_args(wanted))
    if _is_union(wanted):
        return " or ".join(_type_words(a) for a in get_args(wanted) if a is not type(None))
    if origin in (tuple, list):
        return f"a list, each {_type_words(get_args(wanted)[0])}"
    if wanted is datetime:
        return "a date and time such as 2026-05-01T10:00:00+02:00"
    if isinstance(wanted, type) and issubclass(wanted, msgspec.Struct):
        return "a table"
    return _PLAIN.get(wanted, "a table")


# --- where ----------------------------------------------------------------------------------------------------------


def _where(path: _Path, lines: dict[_Path, int]) -> str:
    name = "".join(f"[{p + 1}]" if isinstance(p, int) else f".{_clean(p)}" for p in path).lstrip(".")
    at = next((lines[path[:n]] for n in range(len(path), 0, -1) if path[:n] in lines), None)
    return ", ".join(part for part in (f"line {at}" if at else "", name) if part)


def _clean(key: str) -> str:
    return "".join(c if c.isprintable() else "?" for c in key)[:60]


def _key_lines(text: str) -> dict[_Path, int]:
    """Find the line of each plainly written key: good enough to point at, never used to read values."""
    lines: dict[_Path, int] = {}
    counts: dict[_Path, int] = {}
    table: _Path = ()
    for number, raw in enumerate(text.splitlines(), 1):
        line = raw.strip()
        if line.startswith("["):
            many = line.startswith("[[")
            table = tuple(part.strip().strip("\"'") for part in line.strip("[]").split("]")[0].split("."))
            if many:
                counts[table] = counts.get(table, -1) + 1
                table = (*table, counts[table])
            lines.setdefault(table, number)
        elif "=" in line and not line.startswith("#"):
            keys = tuple(part.strip().strip("\"'") for part in line.split("=")[0].split("."))
            lines.setdefault((*table, *keys), number)
    return lines
