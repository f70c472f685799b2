"""Photographs of a test: kept beside the recording, named by their content, recognised by their hash.

A photo is never opened as a picture here: it is bytes with a name and a caption.
"""

from __future__ import annotations

import os
import re
import shutil
import tempfile
from enum import StrEnum
from pathlib import Path

from logger.edges.small_file import beside, hash_of, sync_folder
from logger.errors import FileError, InputError
from logger.header import Photo

MAX_BYTES = 100_000_000
"""The largest photograph that is taken in: well above what a telephone writes."""

ENDINGS = (".jpg", ".jpeg", ".png", ".heic", ".webp")
LONGEST_STEM = 40  # characters kept of its name


class PhotoState(StrEnum):
    """How a photo stands that a record names."""

    SAME = "unchanged"
    MISSING = "not beside the recording"
    CHANGED = "changed since"


def take_in(photo: Path | str, folder: Path | str, caption: str = "") -> Photo:
    """Copy a photograph into the folder of recordings, and give its record.

    Its new name holds part of its hash: no other photo is ever overwritten, and the same one is kept once.

    Raises:
        InputError: Its name does not end as a photograph's does.
        FileError: It cannot be read or copied, or is too large.
    """
    photo, folder = Path(photo), Path(folder)
    ending = photo.suffix.lower()
    if ending not in ENDINGS:
        raise InputError(f"{photo.name}: is no photograph; names end in {', '.join(ENDINGS)}")
    sha256 = hash_of(photo, MAX_BYTES)
    stem = re.sub(r"[^a-z0-9]+", "-", photo.stem.lower()[:LONGEST_STEM]).strip("-") or "photo"
    target = folder / f"photo-{stem}-{sha256[:8]}{ending}"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if not target.exists():
            with tempfile.TemporaryDirectory(dir=folder, prefix=".photo-") as room:
                os.replace(shutil.copyfile(photo, Path(room) / "part"), target)
            sync_folder(folder)
    except OSError as error:
        raise FileError(f"{target}: cannot be written: {error.strerror or error}") from error
    if hash_of(target, MAX_BYTES) != sha256:
        raise FileError(f"{target}: is another file of this name; move it away")
    return Photo(file=target.name, sha256=sha256, caption=" ".join(caption.split()))


def photo_state(recording: Path | str, photo: Photo) -> PhotoState:
    """Say whether a photo lies beside its recording with the hash that was written down."""
    path = beside(recording, photo.file)
    try:
        found = None if path is None else hash_of(path, MAX_BYTES)
    except FileError:
        found = None
    if found is None:
        return PhotoState.MISSING
    return PhotoState.SAME if found == photo.sha256.lower() else PhotoState.CHANGED
