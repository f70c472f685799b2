"""The reference of a description's keys, made from the record types themselves, so that it cannot be out of date.

What a key means stands in its record, as a comment behind it or in the docstring; what it may hold is its type.
"""

from __future__ import annotations

import inspect
import re
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from typing import TYPE_CHECKING, Annotated, Any, Final, Literal, Union, get_args, get_origin, get_type_hints

import msgspec

from logger.decoder.description import Description, shipped

if TYPE_CHECKING:
    from collections.abc import Iterator

# Which shipped description shows each layout.
EXAMPLES: Final = {
    "lines": "counted-text",
    "frame": "binary-frame",
    "notification": "ble-packets",
    "modbus": "modbus",
    "poll": "comma-frame-text",
}
_WORDS: Final = {str: "text", float: "number", int: "whole number", bool: "true or false", date: "date"}


@dataclass(frozen=True, slots=True)
class Key:
    """One key."""

    name: str
    holds: str  # what it may hold, in words
    default: str  # what stands for it when it is left out; empty: it must be given
    about: str  # what it means


@dataclass(frozen=True, slots=True)
class KeyTable:
    """A table of a description: its name as it stands in the file, what it is, its keys."""

    name: str
    about: str
    keys: tuple[Key, ...]


def tables() -> list[KeyTable]:
    """Give every table that a description may have, the whole file first."""
    return list(_tables(Description, ""))


def _tables(record: type[msgspec.Struct], name: str) -> Iterator[KeyTable]:
    texts, below, keys = _texts(record), [], []
    hints = get_type_hints(record, include_extras=True)
    for field in msgspec.structs.fields(record):
        kind = hints[field.name]
        inner, many, named = _record_in(kind)
        if inner is not None:
            path = f"{name}.{field.name}" if name else field.name
            below.append((inner, f"[{path}]" if many else f"{path}.NAME" if named else path))
        keys.append(
            Key(field.encode_name, _holds(kind, many=many, named=named), _default(field), texts.get(field.name, ""))
        )
    yield KeyTable(name or "(the file)", (inspect.getdoc(record) and _first(record)) or "", tuple(keys))
    for inner, path in below:
        yield from _tables(inner, path)


def _first(record: type[msgspec.Struct]) -> str:
    """Give the first paragraph of a record's docstring."""
    return " ".join((inspect.getdoc(record) or "").split("\n\n")[0].split())


@lru_cache
def _texts(record: type[msgspec.Struct]) -> dict[str, str]:
    """Give what each key means: from the Attributes of the docstring, or the comment behind it."""
    found: dict[str, str] = {}
    _, _, attributes = (inspect.getdoc(record) or "").partition("Attributes:\n")
    for names, text in re.findall(r"^    ([a-z][\w, ]*): (.*\n?(?:        .*\n?)*)", attributes, re.MULTILINE):
        for name in names.split(","):
            found[name.strip()] = " ".join(text.split())
    for name, text in re.findall(r"^    (\w+): [^\n#]*#\s*([^\n]+)$", inspect.getsource(record), re.MULTILINE):
        found.setdefault(name, text.replace("\\\\", "\\"))
    return found


def _plain(kind: Any) -> tuple[Any, tuple[msgspec.Meta, ...]]:
    """Take away what may be absent and what bounds it."""
    bounds: tuple[msgspec.Meta, ...] = ()
    while True:
        if get_origin(kind) is Annotated:
            bounds += tuple(m for m in kind.__metadata__ if isinstance(m, msgspec.Meta))
            kind = get_args(kind)[0]
        elif get_origin(kind) is Union or type(kind).__name__ == "UnionType":
            kind = next(one for one in get_args(kind) if one is not type(None))
        else:
            return kind, bounds


def _record_in(kind: Any) -> tuple[type[msgspec.Struct] | None, bool, bool]:
    """Give the record that a key holds, whether it holds several, and whether they have names."""
    plain, _ = _plain(kind)
    origin = get_origin(plain)
    inner = (
        _plain(get_args(plain)[0])[0] if origin is tuple else _plain(get_args(plain)[1])[0] if origin is dict else plain
    )
    if isinstance(inner, type) and issubclass(inner, msgspec.Struct):
        return inner, origin is tuple, origin is dict
    return None, False, False


def _holds(kind: Any, *, many: bool, named: bool) -> str:
    if many:
        return "one table each: [[...]]"
    if named:
        return "one table each, by name"
    plain, bounds = _plain(kind)
    if isinstance(plain, type) and issubclass(plain, msgspec.Struct):
        return "a table"
    if get_origin(plain) is Literal:
        return ", ".join(f'"{one}"' if isinstance(one, str) else str(one) for one in get_args(plain))
    if get_origin(plain) is tuple:
        return "list of texts"
    return " ".join((_WORDS.get(plain, "text"), *_bounds(bounds))).strip()


def _bounds(bounds: tuple[msgspec.Meta, ...]) -> list[str]:
    words = []
    for meta in bounds:
        for sign, value in (("from", meta.ge), ("above", meta.gt), ("to", meta.le), ("below", meta.lt)):
            if value is not None:
                words.append(f"{sign} {value:g}")
        if meta.max_length is not None:
            words.append(f"of at most {meta.max_length} characters")
    return words


def _default(field: msgspec.structs.FieldInfo) -> str:
    if field.default_factory is not msgspec.NODEFAULT:
        return "none"
    if field.default is msgspec.NODEFAULT:
        return ""
    if field.default is None or field.default in ("", ()):
        return "none"
    if isinstance(field.default, bool):
        return str(field.default).lower()
    return ", ".join(map(str, field.default)) if isinstance(field.default, tuple) else str(field.default)


def example(layout: str) -> str:
    """Give a shipped description that shows a layout."""
    return shipped()[EXAMPLES[layout]].read_text(encoding="utf-8")


def markdown() -> str:
    """Give the whole reference as a page."""
    parts = [
        "# Keys of a transducer's description\n",
        "Made by `heldwheel-log describe keys --markdown` from the types that read the file; a test compares the two. "
        "Exactly one of `lines`, `frame`, `notification`, `modbus` says how readings are laid out.\n",
    ]
    for table in tables():
        title = table.name if table.name.startswith("(") else f"[{table.name}]"
        parts.append(f"## {title}\n\n{table.about}\n\n| key | holds | if not given | meaning |\n|---|---|---|---|")
        parts += [
            f"| `{k.name}` | {_cell(k.holds)} | {_cell(k.default) or 'must be given'} | {_cell(k.about)} |"
            for k in table.keys
        ]
        parts.append("")
    for layout, name in EXAMPLES.items():
        parts.append(f"## Example of `{layout}`: `{name}`\n\n```toml\n{example(layout).rstrip()}\n```\n")
    return "\n".join(parts)


def _cell(text: str) -> str:
    return text.replace("|", "\\|").replace("``", "`")
