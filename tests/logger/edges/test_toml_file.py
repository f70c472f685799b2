"""TOML files: every fault at once with its line and what is allowed; hostile files; writing whole or not at all."""

from __future__ import annotations

import math
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.edges.toml_file import MAX_BYTES, format_toml, parse_toml, read_toml, write_toml
from logger.errors import DescriptionError, FileError
from logger.header import Correction, Limit, Sidecar

FAULTY = """\
[limt]
[limit]
kind = "mn"
quantity = "breakaway"
[lever]
fixture = "one stud"
lenght_mm = 3
length_mm = nan
"""


def test_all_faults_at_once():
    with pytest.raises(DescriptionError) as caught:
        parse_toml(FAULTY, Sidecar, "x.toml")
    text = str(caught.value)
    assert "x.toml: line 1, limt: is not a key here; did you mean 'limit'?" in text
    assert "x.toml: line 3, limit.kind: 'mn' is not allowed; did you mean 'min'? allowed: 'min', 'max', 'band'" in text
    assert "limit.unit: is missing" in text
    assert "limit.source: is missing" in text
    assert "line 7, lever.lenght_mm: is not a key here; did you mean 'length_mm'?" in text
    assert "line 8, lever.length_mm: must be a finite number" in text
    assert len(caught.value.faults) == 6


@pytest.mark.parametrize(
    "text",
    [
        "a=",
        "a=" + "[" * 100_000,
        "a=1" + "0" * 5000,
        "corrections=3",
        "a='''",
        "\x00",
        "[a]\n[a]",
        "x" * (MAX_BYTES + 1),
    ],
)
def test_hostile_text_is_a_description_error(text):
    with pytest.raises(DescriptionError):
        parse_toml(text, Sidecar, "x.toml")


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(text):
    try:
        assert isinstance(parse_toml(text, Sidecar, "x.toml"), Sidecar)
    except DescriptionError:
        return


def test_files_that_cannot_be_read(tmp_path):
    with pytest.raises(FileError, match="there is no such file"):
        read_toml(tmp_path / "no.toml", Sidecar)
    big = tmp_path / "big.toml"
    big.write_bytes(b"#" * (MAX_BYTES + 2))
    with pytest.raises(FileError, match="larger than"):
        read_toml(big, Sidecar)
    latin = tmp_path / "latin.toml"
    latin.write_bytes(b"[job]\nshop = '\xe9'\n")
    with pytest.raises(FileError, match="line 2: is not UTF-8"):
        read_toml(latin, Sidecar)


def test_written_and_read_again(tmp_path):
    record = Sidecar(
        limit=Limit(quantity="breakaway", kind="min", unit="lbf·ft", source="the shop's own rule", lower=20.0),
        corrections=(Correction(at=datetime(2026, 5, 1, tzinfo=UTC), reason="socket slipped", exclude=True),),
    )
    path = tmp_path / "a.sidecar.toml"
    write_toml(path, record)
    assert read_toml(path, Sidecar) == record
    assert "None" not in path.read_text(encoding="utf-8")
    assert path.stat().st_mode & 0o777 == 0o644
    assert [p.name for p in tmp_path.iterdir()] == ["a.sidecar.toml"]


def test_a_failed_write_changes_nothing(tmp_path, monkeypatch):
    path = tmp_path / "a.toml"
    write_toml(path, Sidecar(simulated=True))
    before = path.read_bytes()
    monkeypatch.setattr("os.fsync", _no_space)
    with pytest.raises(FileError, match="No space left on device; what was there is unchanged"):
        write_toml(path, Sidecar(simulated=False))
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]


def _no_space(_handle):
    raise OSError(28, "No space left on device")


@given(st.dictionaries(st.text(max_size=20), st.one_of(st.text(max_size=30), st.floats(allow_nan=False)), max_size=5))
def test_tags_come_back(tags):
    tags = {k: v for k, v in tags.items() if not isinstance(v, float) or math.isfinite(v)}
    record = Sidecar(tags=tags)
    assert parse_toml(format_toml(record), Sidecar, "x") == record
