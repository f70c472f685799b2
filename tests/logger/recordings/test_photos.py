"""Photographs of a test: taken in by content, never outside their folder, recognised by their hash."""

from __future__ import annotations

import hashlib
from datetime import UTC, datetime

import pytest

from logger.edges.small_file import beside, hash_of, read_bounded
from logger.errors import FileError, InputError
from logger.header import Header, Photo, Sidecar
from logger.recordings.photos import PhotoState, photo_state, take_in
from logger.recordings.sidecar import merged

PICTURE = b"\xff\xd8\xff\xe0 not really a picture"


@pytest.fixture
def photo(tmp_path):
    path = tmp_path / "camera" / "IMG 0042 (Tag).JPG"
    path.parent.mkdir()
    path.write_bytes(PICTURE)
    return path


def test_taken_in_beside_the_recordings(tmp_path, photo):
    folder = tmp_path / "recordings"
    taken = take_in(photo, folder, "  the tag\n on the cover ")
    digest = hashlib.sha256(PICTURE).hexdigest()
    assert taken == Photo(file=f"photo-img-0042-tag-{digest[:8]}.jpg", sha256=digest, caption="the tag on the cover")
    assert (folder / taken.file).read_bytes() == PICTURE
    assert photo.read_bytes() == PICTURE
    assert take_in(photo, folder).file == taken.file, "the same photo is kept once"
    assert [path.name for path in folder.iterdir()] == [taken.file], "nothing else is left behind"


def test_another_file_of_that_name_is_never_overwritten(tmp_path, photo):
    taken = take_in(photo, tmp_path)
    (tmp_path / taken.file).write_bytes(b"something else")
    with pytest.raises(FileError, match="another file of this name"):
        take_in(photo, tmp_path)
    assert (tmp_path / taken.file).read_bytes() == b"something else"


def test_what_is_no_photo_is_refused(tmp_path, photo, monkeypatch):
    text = tmp_path / "notes.txt"
    text.write_text("x")
    with pytest.raises(InputError, match="no photograph"):
        take_in(text, tmp_path)
    with pytest.raises(FileError, match="no such file"):
        take_in(tmp_path / "gone.png", tmp_path)
    (tmp_path / "folder.jpg").mkdir()
    with pytest.raises(FileError):
        take_in(tmp_path / "folder.jpg", tmp_path)
    monkeypatch.setattr("logger.recordings.photos.MAX_BYTES", 4)
    with pytest.raises(FileError, match="larger"):
        take_in(photo, tmp_path)


def test_state_beside_a_recording(tmp_path, photo):
    taken, recording = take_in(photo, tmp_path), tmp_path / "left.csv"
    assert photo_state(recording, taken) is PhotoState.SAME
    (tmp_path / taken.file).write_bytes(PICTURE + b"!")
    assert photo_state(recording, taken) is PhotoState.CHANGED
    (tmp_path / taken.file).unlink()
    assert photo_state(recording, taken) is PhotoState.MISSING


@pytest.mark.parametrize(
    "name",
    [
        "../secret.jpg",
        "/etc/passwd",
        "..\\secret.jpg",
        "C:\\secret.jpg",
        "sub/../../secret.jpg",
        "..",
        ".",
        "",
        "a\x00b",
    ],
)
def test_a_name_never_leaves_its_folder(tmp_path, name):
    (tmp_path / "secret.jpg").write_bytes(PICTURE)
    inside = tmp_path / "recordings"
    inside.mkdir()
    path = beside(inside / "left.csv", name)
    assert path is None or path.parent == inside
    photo = Photo(file=name, sha256=hashlib.sha256(PICTURE).hexdigest())
    assert photo_state(inside / "left.csv", photo) is PhotoState.MISSING


def test_bounds(tmp_path):
    path = tmp_path / "x"
    path.write_bytes(b"12345")
    assert read_bounded(path, 5, "") == b"12345"
    with pytest.raises(FileError, match="larger than 4 bytes; it is no x"):
        read_bounded(path, 4, "it is no x")
    with pytest.raises(FileError, match="larger"):
        hash_of(path, 4)
    assert photo_state(path, Photo(file="n" * 5000, sha256="")) is PhotoState.MISSING


def test_photos_of_header_and_sidecar_are_joined():
    one, two = Photo(file="a.jpg", sha256="1"), Photo(file="b.jpg", sha256="2", caption="hold")
    assert merged(Header(photos=(one,)), Sidecar(photos=(one, two))).photos == (one, two)
    assert merged(Header(photos=(one,)), Sidecar()).photos == (one,)


def test_the_start_of_a_trace_comes_from_its_sidecar_only_where_it_says_none():
    said, other = datetime(2026, 5, 16, 10, tzinfo=UTC), datetime(2026, 1, 1, tzinfo=UTC)
    assert merged(Header(), Sidecar(started=said)).started == said
    assert merged(Header(started=said), Sidecar(started=other)).started == said
