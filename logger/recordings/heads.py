"""The header of a recording by itself, without its samples: for lists of thousands."""

from __future__ import annotations

import os
import tomllib
from pathlib import Path
from typing import TYPE_CHECKING, Final

import msgspec

from logger.edges.small_file import open_regular
from logger.edges.toml_file import parse_toml
from logger.errors import HeldwheelError
from logger.header import Header
from logger.recordings.axles import tag_key
from logger.recordings.dialled import is_dialled, read_dialled
from logger.recordings.sidecar import merged, read_sidecar

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import datetime

HEAD_BYTES: Final = 1 << 16  # a header is a few kilobytes
OURS: Final = b"# heldwheel recording"  # how every recording of this program begins


def header_of(head: bytes, name: str) -> Header:
    """Read the header in the first bytes of a recording: the short way; one with faults goes the long way.

    Raises:
        DescriptionError: It has faults; the text names them.
    """
    text = _text(head)
    try:
        return msgspec.convert(tomllib.loads(text), Header)
    except (ValueError, RecursionError):
        return parse_toml(text, Header, name)


def _text(head: bytes) -> str:
    """Give the TOML of a recording's header without its marks."""
    lines = []
    for line in head.decode("utf-8", "replace").splitlines()[1:]:
        if not line.startswith("#") or line.startswith(("# batch rows=", "# event time_s=", "# closed ")):
            break
        lines.append(line[2:])
    return "\n".join(lines)


def read_header(path: Path | str) -> Header:
    """Read what is known of a recording or of a job read from a dial, with its sidecar; of a foreign table the sidecar.

    Raises:
        FileError, DescriptionError: It cannot be read.
        OSError: There is none.
    """
    if is_dialled(path):
        header = read_dialled(path)[0].header
    else:
        with open_regular(path) as file:
            head = file.read(HEAD_BYTES)
        header = header_of(head, os.path.basename(path)) if head.startswith(OURS) else Header()
    return merged(header, read_sidecar(path))


def tests_in(folder: Path | str) -> Iterator[tuple[Path, Header, datetime]]:
    """Give the tests of axles that have a tag in a folder, in order of name: file, header, when it was started.

    Drag, zero, weighing and practice recordings are no tests of an axle. What cannot be read is passed over: the lists
    of recordings name it.
    """
    for name in sorted(os.listdir(folder)):
        if name.startswith(".") or not (name.endswith(".csv") or is_dialled(name)):
            continue
        path = Path(folder) / name
        try:
            header = read_header(path)
        except (HeldwheelError, OSError):
            continue
        if tag_key(header.axle.tag) and header.started is not None and header.test.purpose in (None, "pulls"):
            yield path, header, header.started


def axle_tests(folder: Path | str) -> dict[str, list[datetime]]:
    """Give the times of the tests of every axle in a folder, by its ``tag_key``.

    Simulated ones count only for an axle that has no other.
    """
    found: dict[str, dict[bool, list[datetime]]] = {}
    for _, header, started in tests_in(folder):
        found.setdefault(tag_key(header.axle.tag), {}).setdefault(header.simulated, []).append(started)
    return {tag: kinds.get(False) or kinds[True] for tag, kinds in found.items()}
