"""``<stem>.sidecar.toml`` beside a trace: what the trace lacks, and what was decided about it later.

A recording is never altered. Corrections are appended here with their time and reason; the reader merges the two, and
a sidecar's values win over the header's, key by key.

Several programs may write it: every change is made to what stands there, under the folder's lock.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import msgspec

from logger.edges.small_file import locked
from logger.edges.toml_file import read_toml, write_toml
from logger.errors import InputError
from logger.foreign.choices import laid_over
from logger.header import Correction, Header, Sidecar, Table

if TYPE_CHECKING:
    from collections.abc import Callable

R = TypeVar("R", bound=msgspec.Struct)


def sidecar_path(trace: Path | str) -> Path:
    """Give where the sidecar of a trace is: ``pull-1.csv`` has ``pull-1.sidecar.toml``."""
    trace = Path(trace)
    return trace.with_name(f"{trace.stem}.sidecar.toml")


def read_sidecar(trace: Path | str) -> Sidecar | None:
    """Read the sidecar of a trace; None where there is none.

    Raises:
        FileError, DescriptionError: There is one, but it cannot be read.
    """
    path = sidecar_path(trace)
    return read_toml(path, Sidecar) if os.path.exists(path) else None  # a name too long is no file


def change_sidecar(trace: Path | str, change: Callable[[Sidecar], Sidecar]) -> Sidecar:
    """Write the sidecar of a trace anew from what stands there, and give it.

    Raises:
        FileError, DescriptionError: It cannot be read or written; what was there is unchanged.
    """
    path = sidecar_path(trace)
    with locked(path.parent):
        sidecar = change(read_sidecar(trace) or Sidecar())
        write_toml(path, sidecar)
    return sidecar


def add_correction(trace: Path | str, correction: Correction) -> Sidecar:
    """Append one decision to the sidecar of a trace; nothing that stands there is changed.

    Raises:
        InputError: The correction has no reason.
        FileError, DescriptionError: The sidecar cannot be read or written.
    """
    if not correction.reason.strip():
        raise InputError("a correction needs a reason: say why the recording is read differently")
    return change_sidecar(
        trace, lambda found: msgspec.structs.replace(found, corrections=(*found.corrections, correction))
    )


def keep_table(trace: Path | str, table: Table) -> Path | None:
    """Write how a foreign table is read into its sidecar, over what stood there; give the sidecar where it changed.

    Raises:
        FileError, DescriptionError: The sidecar cannot be read or written.
    """
    before = read_sidecar(trace) or Sidecar()
    if laid_over(before.table or Table(), table) == (before.table or Table()):
        return None
    change_sidecar(trace, lambda found: msgspec.structs.replace(found, table=laid_over(found.table or Table(), table)))
    return sidecar_path(trace)


def revision_of(sidecar: Sidecar | None) -> int:
    """Give the revision of what a recording says: 1 as it was signed, one more with each decision made after that.

    >>> revision_of(None)
    1
    """
    if sidecar is None or sidecar.signed is None:
        return 1
    return 1 + len({correction.at for correction in sidecar.corrections if correction.at > sidecar.signed})


def merged(header: Header, sidecar: Sidecar | None) -> Header:
    """Give the header with a sidecar's values over its own; tags are joined into ``job.tags``, photos to its photos."""
    if sidecar is None:
        return header
    changes: dict[str, object] = {}
    for name in ("job", "axle", "test", "conditions", "lever", "limit", "decision", "transducer", "zero", "both_free"):
        over = getattr(sidecar, name)
        if over is not None:
            changes[name] = _overlaid(getattr(header, name), over)
    if header.started is None and sidecar.started is not None:
        changes["started"] = sidecar.started
    if sidecar.simulated:  # a mark in the bytes can be added to, never taken away
        changes["simulated"] = True
    photos = tuple(photo for photo in sidecar.photos if photo not in header.photos)
    result = msgspec.structs.replace(header, **changes, photos=(*header.photos, *photos))
    if sidecar.tags:
        job = msgspec.structs.replace(result.job, tags={**result.job.tags, **sidecar.tags})
        result = msgspec.structs.replace(result, job=job)
    return result


def _overlaid(under: R | None, over: R) -> R:
    """Give ``over`` with what it leaves at its default taken from ``under``. A lever or limit is taken whole."""
    if under is None or any(f.required for f in msgspec.structs.fields(over)):
        return over
    given = {
        f.name: getattr(over, f.name) for f in msgspec.structs.fields(over) if getattr(over, f.name) != _default(f)
    }
    return msgspec.structs.replace(under, **given)


def _default(field: msgspec.structs.FieldInfo) -> object:
    return field.default_factory() if field.default_factory is not msgspec.NODEFAULT else field.default
